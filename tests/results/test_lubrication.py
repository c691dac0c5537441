"""Lives as dirt and film leave them: by hand from the standard's formula, and what a class may and may not change."""

from typing import cast

import pytest

from hubwright.results import solve
from hubwright.results.export import as_csv, as_json
from hubwright.results.model import Results
from hubwright.results.printing import Page
from hubwright.setup import Setup, load_text
from hubwright.setup.model import Contamination
from wagon_text import FIXED_BALLS as BALLS
from wagon_text import WAGON

ROLLERS = """
[bearing]
kind = "tapered pair"
rollers_per_row = 30
roller_diameter = "9.6 mm"
roller_length = "15.5 mm"
pitch_diameter = "120 mm"
contact_angle = "15 deg"
row_spacing = "34 mm"
dynamic_rating = "100 kN"
static_rating = "150 kN"
"""
REST = """
[[case]]
name = "corner"
kind = "cornering"
lateral_g = 0.3
[[case]]
name = "fall"
kind = "drop"
height = "100 mm"
[[duty]]
case = "standing"
share = 0.8
[[duty]]
case = "corner"
share = 0.2
"""


def wagon(contamination: Contamination | None, *, bearing: str = BALLS) -> Results:
    grease = "" if contamination is None else f'[lubrication]\nviscosity_ratio = 0.7\ncontamination = "{contamination}"'
    return solve(cast(Setup, load_text(f"{WAGON}{bearing}{grease}{REST}", "wagon.toml")))


def factor_by_hand(P: float, *, e_C: float, tapered: bool) -> float:
    """ISO 281:2007 (recalled) at κ = 0.7, between 0.4 and 1, its constants written out once more."""
    if tapered:  # pitch diameter 120 mm, above the border of 100 mm
        C_u = 75e3 / 8.2 * (100 / 120) ** 0.3
        return float(0.1 * (1 - (1.5859 - 1.2348 / 0.7**0.19087) * (e_C * C_u / P) ** 0.4) ** -9.185)
    C_u = 25e3 / 22
    return float(0.1 * (1 - (2.5671 - 1.9987 / 0.7**0.19087) ** 0.83 * (e_C * C_u / P) ** (1 / 3)) ** -9.3)


@pytest.mark.parametrize("tapered", [False, True])
def test_each_row_has_its_own_factor_on_its_detailed_life(tapered: bool) -> None:
    results = wagon("typical contamination", bearing=ROLLERS if tapered else BALLS)
    assert results.life is not None
    case = results.life.cases["corner left"]
    assert case.life_factor is not None
    assert case.modified is not None
    assert case.detailed is not None
    e_C = 0.3 if tapered else 0.2  # middle of the band, for large and for small bearings
    for row in ("outboard", "inboard"):
        by_hand = factor_by_hand(getattr(case.equivalent_load, row), e_C=e_C, tapered=tapered)
        assert getattr(case.life_factor, row) == pytest.approx(by_hand, rel=1e-9)
    # the pair lives between what the two factors would make of it
    ends = sorted((case.life_factor.outboard, case.life_factor.inboard))
    assert ends[0] < case.modified / case.detailed < ends[1]


def test_a_factor_alike_in_both_rows_is_the_factor_of_the_life() -> None:
    life = wagon("very severe contamination").life
    assert life is not None
    assert life.duty is not None
    for case in life.cases.values():
        if case.detailed is not None:
            assert case.modified == pytest.approx(0.1 * case.detailed)  # the standard's least factor
    assert life.duty.modified_distance == pytest.approx(0.1 * life.duty.distance)


def test_dirt_shortens_the_modified_life_and_leaves_the_basic_ones_alone() -> None:
    clean, dirty, silent = (wagon(name).life for name in ("high cleanliness", "severe contamination", None))
    assert clean is not None
    assert dirty is not None
    assert silent is not None
    for name in ("standing", "corner left", "corner right"):
        mine, theirs, basic = (life.cases[name] for life in (clean, dirty, silent))
        assert (mine.quick, mine.detailed, mine.valid) == (theirs.quick, theirs.detailed, theirs.valid)
        assert (basic.quick, basic.detailed) == (mine.quick, mine.detailed)
        assert mine.modified is not None
        assert theirs.modified is not None
        assert mine.modified > theirs.modified
        assert basic.modified is None


def test_json_and_csv_name_the_grease_and_leave_it_out_where_it_is_not_said() -> None:
    results = wagon("slight contamination")
    entry = as_json(results)
    assert entry["lubrication"]["contamination_factor"] == {"value": 0.4, "unit": "1", "low": 0.3, "high": 0.5}
    assert entry["lubrication"]["row_fatigue_load_limit"]["value"] == pytest.approx(25e3 / 22)
    assert set(entry["life"]["standing"]) >= {"quick", "detailed", "life_factor", "modified"}
    assert set(entry["life"]["duty"]) == {
        "revolutions",
        "distance",
        "modified_revolutions",
        "modified_distance",
        "valid",
    }
    assert "modified" not in entry["life"]["fall"]
    assert "life.standing.life_factor.outboard," in as_csv(entry)
    silent = as_json(wagon(None))
    assert silent["lubrication"] is None
    assert not [name for name in silent["life"]["standing"] if name in ("modified", "life_factor")]


def test_reliability_is_printed_beside_the_lives() -> None:
    # ISO 281:2007, Table 12: 1, 0.64, 0.25
    factors = {part["survivors"]["value"]: part["factor"]["value"] for part in as_json(wagon(None))["reliability"]}
    assert {share: round(factor, 2) for share, factor in factors.items()} == {0.9: 1.0, 0.95: 0.64, 0.99: 0.25}


def test_the_class_is_a_band_of_which_the_draws_make_a_span() -> None:
    results = wagon("slight contamination")  # nothing else of it has a range but the estimated suspension
    span = results.spans["life.corner left.life_factor.outboard"]
    load = results.life.cases["corner left"].equivalent_load.outboard  # type: ignore[union-attr]
    # evenly over the band from 0.3 to 0.5: the 5th percentile lies near 0.31, the 95th near 0.49
    low, high = (factor_by_hand(load, e_C=e_C, tapered=False) for e_C in (0.31, 0.49))
    assert span.low == pytest.approx(low, rel=0.01)
    assert span.high == pytest.approx(high, rel=0.01)
    assert "life.corner left.detailed" not in results.spans
    nothing = wagon("extreme cleanliness")  # a band of one value
    assert not [name for name in nothing.spans if not name.startswith(("cases.fall", "life.fall"))]


def test_the_terminal_tells_class_film_and_reliability() -> None:
    text = Page("si").results(wagon("slight contamination"))
    assert "Detailed life as dirt and film leave it" in text
    assert "slight contamination, factor e_C 0.30 to 0.50" in " ".join(text.split())
    assert "95 % reach × 0.64" in " ".join(text.split())
    assert "dirt and film" not in Page("si").results(wagon(None))


def test_rollers_are_told_what_one_slice_leaves_out() -> None:
    tapered = " ".join(Page("si").results(wagon(None, bearing=ROLLERS)).split())
    assert "differ by about (C/P)^(2/3); one slice to a roller sees no edge stress" in tapered
    assert "edge stress" not in Page("si").results(wagon(None))

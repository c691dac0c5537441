"""Setups beside each other: ratios, spans, verdicts, and the split into what each change does."""

import dataclasses
import json
import math
from pathlib import Path
from typing import Any, cast

import numpy as np
import pytest
from click.testing import CliRunner, Result

from hubwright.cli import main
from hubwright.results import solve
from hubwright.results.changes import Change, NotComparableError, changes_between
from hubwright.results.comparison import Compared, Comparison, compare, lopsided_cases
from hubwright.results.contributions import EXACT, Between, contributions
from hubwright.results.draws import Span
from hubwright.setup import Setup, load, load_text, vary

CONTENT = Path(__file__).parents[2] / "content"
WAGON = """
name = "Wagon"
[chassis]
front_axle_mass = "1120 kg ± 10 kg"
rear_axle_mass = "1010 kg"
wheelbase = "2.78 m"
front_track = "1.60 m"
centre_of_mass_height = "0.69 m ± 0.05 m"
front_roll_share = "0.55 ± 0.07"
[tire]
size = "245/75R16"
mass = "17 kg"
vertical_stiffness = "260 N/mm"
[wheel]
rim_width = "7 in"
offset = "30 mm"
mass = "9 kg"
[hub]
face_to_bearing_centre = "42 mm ± 3 mm"
rotating_mass = "14 kg"
[bearing]
kind = "two-row ball"
balls_per_row = 13
ball_diameter = "12.7 mm"
pitch_diameter = "62 mm"
contact_angle = "35 deg ± 3 deg"
row_spacing = "24 mm"
preload = "0 um ± 10 um"
[[case]]
name = "corner"
kind = "cornering"
lateral_g = 0.3
[[duty]]
case = "standing"
share = "0.9 ± 0.05"
[[duty]]
case = "corner"
share = "0.1 ± 0.05"
"""
GREASE = '[lubrication]\nviscosity_ratio = 1.2\ncontamination = "slight contamination"\n[[case]]\nname = "corner"'
WINCH = {"name": "winch", "mass": "62 kg", "behind_front_axle": "-0.72 m", "above_ground": "0.75 m"}
BOX = {
    "name": "box",
    "mass": "80 kg",
    "behind_front_axle": "2.6 m",
    "above_ground": "1.0 m",
    "left_of_centre": "-0.3 m",
}


def wagon(**replaced: str) -> Setup:
    text = WAGON
    for old, new in replaced.items():
        assert old in text
        text = text.replace(old, new)
    return cast(Setup, load_text(text, "wagon.toml"))


def changed(setup: Setup, changes: dict[str, Any], name: str = "Changed") -> Setup:
    return vary(setup, changes, name=name)


def every(comparison: Comparison) -> list[Compared]:
    duty = [each for each in (comparison.revolutions, comparison.distance) if each is not None]
    return [*comparison.row_loads.values(), *comparison.lives.values(), *duty]


def test_a_setup_beside_itself_has_ratio_one_and_no_span() -> None:
    comparison = compare(wagon(), wagon())
    assert comparison.changes == ()
    for each in every(comparison):
        assert each.ratio == 1
        assert each.span is None
        assert each.verdict == "unchanged"


def test_a_spacer_and_an_offset_wheel_of_one_load_line_bear_alike() -> None:
    spacer = changed(wagon(), {"wheel.spacer": "25 mm"})
    offset = changed(wagon(), {"wheel.offset": "5 mm"})
    comparison = compare(spacer, offset)
    for each in every(comparison):
        assert each.verdict == "unchanged"
        assert each.span is None
    assert [change.name for change in comparison.changes] == ["wheel", "spacer"]
    for parts in comparison.parts.values():
        assert math.prod(part.factor for part in parts) == pytest.approx(1, rel=1e-9)
        assert not parts[0].nothing


def test_ratios_are_those_of_two_solved_setups() -> None:
    base, other = wagon(), changed(wagon(), {"wheel.spacer": "25 mm", "gear": [WINCH]})
    comparison = compare(base, other)
    before, after = solve(base, comparison.wheel), solve(other, comparison.wheel)
    assert before.life is not None
    assert after.life is not None
    for case in ("standing", "corner left", "corner right"):
        rows = [results.cases[case].row_radial_load for results in (before, after)]
        loads = [max(row.outboard, row.inboard) for row in rows if row is not None]
        assert comparison.row_loads[case].ratio == pytest.approx(loads[1] / loads[0])
        lives = [cast(float, results.life.cases[case].detailed) for results in (before, after) if results.life]
        assert comparison.lives[case].ratio == pytest.approx(lives[1] / lives[0])
    assert before.life.duty is not None
    assert after.life.duty is not None
    assert comparison.distance is not None
    assert comparison.distance.ratio == pytest.approx(after.life.duty.distance / before.life.duty.distance)


def test_ratios_do_not_depend_on_given_ratings() -> None:
    given = {"bearing.dynamic_rating": "70 kN", "bearing.static_rating": "60 kN"}
    larger = {"bearing.dynamic_rating": "90 kN", "bearing.static_rating": "80 kN"}
    change = {"wheel.spacer": "25 mm"}
    found = [
        compare(changed(wagon(), ratings), changed(wagon(), {**ratings, **change})) for ratings in (given, larger, {})
    ]
    for one, other in zip(every(found[0]), every(found[1]), strict=True):
        assert one.ratio == pytest.approx(other.ratio, rel=1e-9)
        assert one.span is not None
        assert other.span is not None
        assert one.span.low == pytest.approx(other.span.low, rel=1e-9)
    # nor on their being computed and drawn: both setups have the same bearing
    for one, other in zip(every(found[0]), every(found[2]), strict=True):
        assert one.span is not None
        assert other.span is not None
        assert (one.ratio, one.span.high) == (
            pytest.approx(other.ratio, rel=1e-9),
            pytest.approx(other.span.high, rel=1e-9),
        )


def test_common_draws_make_the_span_of_a_ratio_narrower_than_that_of_its_lives() -> None:
    comparison = compare(wagon(), changed(wagon(), {"wheel.spacer": "25 mm"}))
    ratio = comparison.lives["standing"].span
    life = comparison.base.spans["life.standing.detailed"]
    assert ratio is not None
    assert ratio.high / ratio.low < 0.5 * life.high / life.low


def test_a_wider_range_widens_the_span_of_a_ratio() -> None:
    spans = []
    for face in ("42 mm ± 3 mm", "42 mm ± 6 mm"):
        base = wagon(**{"42 mm ± 3 mm": face})
        spans.append(compare(base, changed(base, {"wheel.spacer": "25 mm"})).row_loads["standing"].span)
    assert spans[1].high - spans[1].low > spans[0].high - spans[0].low


def test_two_changes_share_by_the_average_of_both_orders() -> None:
    base = wagon()
    spacer, winch = {"wheel.spacer": "25 mm"}, {"gear": [WINCH]}
    setups = [base, changed(base, spacer), changed(base, winch), changed(base, {**spacer, **winch})]
    comparison = compare(base, setups[3])

    def life(setup: Setup) -> float:
        results = solve(setup, comparison.wheel)
        assert results.life is not None
        assert results.life.duty is not None
        return results.life.duty.distance

    none, first, second, both = (life(setup) for setup in setups)
    parts = {part.change: part.factor for part in comparison.parts["distance"]}
    assert parts == {
        "spacer": pytest.approx(math.sqrt(first / none * both / second), rel=1e-6),
        "winch": pytest.approx(math.sqrt(second / none * both / first), rel=1e-6),
    }


def test_parts_multiply_to_the_whole() -> None:
    hill, van = (cast(Setup, load(CONTENT / "vehicles" / f"{name}.toml")) for name in ("hill-wagon", "supply-van"))
    winter = cast(Setup, load(CONTENT / "setups" / "winter-fit-out.toml"))
    for base, other in ((hill, winter), (winter, hill), (van, hill)):
        comparison = compare(base, other)
        assert comparison.distance is not None
        whole = {
            "distance": comparison.distance.ratio,
            **{f"row load, {case}": each.ratio for case, each in comparison.row_loads.items()},
            **{f"life, {case}": each.ratio for case, each in comparison.lives.items()},
        }
        for name, ratio in whole.items():
            parts = comparison.parts[name]
            assert len(parts) == len(comparison.changes)
            assert math.prod(part.factor for part in parts) == pytest.approx(ratio, rel=1e-7)


def test_a_change_that_does_nothing_is_called_so() -> None:
    other = changed(wagon(), {"tire.size": "265/75R16", "tire.mass": "20 kg", "wheel.spacer": "25 mm"})
    comparison = compare(wagon(), other)
    # a larger tire moves neither the load line nor, standing, the load on the bearing
    tire, spacer = comparison.parts["row load, standing"]
    assert (tire.change, tire.nothing) == ("tire", True)
    assert not spacer.nothing
    # but a corner tips the hub at a longer lever
    assert not comparison.parts["row load, corner right"][0].nothing


def test_above_eight_changes_orders_are_drawn_and_the_parts_still_multiply_to_the_whole() -> None:
    gear = [
        {**WINCH, "name": f"item {i}", "mass": f"{3 + i} kg", "behind_front_axle": f"{0.3 * i:.1f} m"} for i in range(8)
    ]
    comparison = compare(wagon(), changed(wagon(), {"gear": gear, "wheel.spacer": "20 mm", "tire.size": "265/75R16"}))
    assert len(comparison.changes) == 10 > EXACT
    parts = comparison.parts["distance"]
    assert comparison.distance is not None
    assert math.prod(part.factor for part in parts) == pytest.approx(comparison.distance.ratio, rel=1e-7)
    assert any(part.error > 0 for part in parts)


def test_drawn_orders_meet_the_average_of_all_within_their_error() -> None:
    """Nine changes of which pairs act on each other: the average over all orders halves what a pair does together."""
    count = 9
    generator = np.random.default_rng(3)
    alone, together = generator.normal(size=count), np.triu(generator.normal(size=(count, count)), 1)
    changes = [Change(f"{place}", "gear", lambda setup: setup) for place in range(count)]
    has = (np.arange(2**count)[:, np.newaxis] >> np.arange(count) & 1).astype(bool)
    logarithm = has @ alone + np.einsum("si,ij,sj->s", has, together, has)
    parts = contributions(Between(has, {}, True), np.exp(logarithm), changes)
    exact = alone + (together.sum(axis=0) + together.sum(axis=1)) / 2
    for part, expected in zip(parts, exact, strict=True):
        # an order and its reverse together average a pair exactly
        assert math.log(part.factor) == pytest.approx(expected, abs=4 * part.error + 1e-9)


def test_exact_average_of_eight_changes_is_that_of_all_orders() -> None:
    """Three of them act together: each has a third of it, whatever the order."""
    count = 8
    changes = [Change(f"{place}", "gear", lambda setup: setup) for place in range(count)]
    has = (np.arange(2**count)[:, np.newaxis] >> np.arange(count) & 1).astype(bool)
    logarithm = np.where(has[:, [1, 4, 6]].all(axis=1), math.log(8), 0.0) + has[:, 0] * math.log(3)
    factors = [part.factor for part in contributions(Between(has, {}, True), np.exp(logarithm), changes)]
    assert factors == pytest.approx([3, 2, 1, 1, 2, 1, 2, 1])


def test_one_change_has_the_span_of_the_whole_ratio() -> None:
    base = wagon(**{'[[case]]\nname = "corner"': GREASE})
    comparison = compare(base, changed(base, {"wheel.spacer": "25 mm"}))
    wholes = {
        "distance": comparison.distance,
        "row load, standing": comparison.row_loads["standing"],
        "modified distance": comparison.modified_distance,
    }
    for name, whole in wholes.items():
        assert whole is not None
        (part,) = comparison.part_spans.spans[name]
        assert part is not None
        assert whole.span is not None
        assert dataclasses.astuple(part) == pytest.approx(dataclasses.astuple(whole.span))
    assert comparison.part_spans.draws == comparison.draws


def test_the_span_of_a_part_is_what_the_ends_of_a_range_make_of_it() -> None:
    # one input alone has a range, and every part goes one way with it
    fixed = wagon(
        **{
            "1120 kg ± 10 kg": "1120 kg",
            "0.69 m ± 0.05 m": "0.69 m",
            "0.55 ± 0.07": "0.55",
            "35 deg ± 3 deg": "35 deg",
            "0 um ± 10 um": "0 um",
            "0.9 ± 0.05": "0.9",
            "0.1 ± 0.05": "0.1",
            "row_spacing": 'dynamic_rating = "60 kN"\nstatic_rating = "50 kN"\nrow_spacing',
        }
    )
    changes = {"wheel.spacer": "25 mm", "gear": [WINCH]}
    found = compare(fixed, changed(fixed, changes)).part_spans
    assert found.draws == 400  # four setups between

    def at(face: float) -> dict[str, list[float]]:
        setup = changed(fixed, {"hub.face_to_bearing_centre": f"{face} mm"}, name="Wagon")
        parts = compare(setup, changed(setup, changes)).parts
        return {name: [part.factor for part in parts[name]] for name in ("row load, standing", "life, standing")}

    ends = [at(face) for face in (39.3, 44.7)]  # 5th and 95th percentile of an even range from 39 to 45
    for name in ("row load, standing", "life, standing"):
        for place, span in enumerate(found.spans[name]):
            assert span is not None
            low, high = sorted(end[name][place] for end in ends)
            assert span.low == pytest.approx(low, rel=0.01)
            assert span.high == pytest.approx(high, rel=0.01)


def test_a_change_that_does_nothing_has_no_span_of_its_own() -> None:
    comparison = compare(wagon(), changed(wagon(), {"tire.mass": "22 kg", "wheel.spacer": "10 mm"}))
    places = {change.name: place for place, change in enumerate(comparison.changes)}
    row_load = comparison.part_spans.spans["row load, standing"]
    assert row_load[places["tire"]] is None
    assert row_load[places["spacer"]] is not None


def test_drawn_numbers_of_balls_find_the_bearing_of_their_own_setup() -> None:
    estimated = wagon(**{"balls_per_row = 13\n": 'balls_per_row = "13 ± 1"\n'})
    other = changed(estimated, {"bearing.balls_per_row": "12 ± 1", "wheel.spacer": "10 mm"})
    found = compare(estimated, other).part_spans
    bearing, spacer = found.spans["distance"][1], found.spans["distance"][0]
    assert bearing is not None
    assert spacer is not None
    assert bearing.high < 1  # a ball less in every draw


def test_above_eight_changes_parts_have_no_span_but_a_sampling_error() -> None:
    gear = [{**BOX, "name": f"box {number}", "mass": f"{5 + number} kg"} for number in range(9)]
    comparison = compare(wagon(), changed(wagon(), {"gear": gear}))
    assert len(comparison.changes) > EXACT
    assert comparison.part_spans.spans == {}
    assert any(part.error > 0 for part in comparison.parts["distance"])


def test_a_dirtier_class_is_a_change_that_acts_on_the_modified_lives_alone() -> None:
    greased = wagon(**{'[[case]]\nname = "corner"': GREASE})
    comparison = compare(greased, changed(greased, {"lubrication.contamination": "severe contamination"}))
    assert [change.kind for change in comparison.changes] == ["lubrication"]
    assert comparison.modified_distance is not None
    assert comparison.modified_distance.verdict == "lowers"
    assert comparison.distance is not None
    assert comparison.distance.verdict == "unchanged"
    assert {each.verdict for each in comparison.row_loads.values()} == {"unchanged"}
    assert comparison.parts["distance"][0].nothing
    factor = comparison.parts["modified distance"][0].factor
    assert factor == pytest.approx(comparison.modified_distance.ratio)
    assert factor < 0.7


def test_the_same_class_has_the_same_place_in_its_band_before_and_after() -> None:
    greased = wagon(**{'[[case]]\nname = "corner"': GREASE})
    same = compare(greased, greased)
    assert same.modified_distance is not None
    assert (same.modified_distance.ratio, same.modified_distance.span) == (1.0, None)


def test_grease_that_one_file_alone_tells_of_is_left_out_and_said() -> None:
    comparison = compare(wagon(), wagon(**{'[[case]]\nname = "corner"': GREASE, 'name = "Wagon"': 'name = "Greased"'}))
    assert comparison.changes == ()
    assert comparison.modified_lives == {}
    assert any("Only Greased says what dirt and film" in warning for warning in comparison.warnings)


def test_a_moment_with_a_base_near_zero_is_given_as_a_difference() -> None:
    near = changed(wagon(), {"wheel.offset": "36 mm"})
    comparison = compare(near, changed(near, {"wheel.spacer": "25 mm"}))
    standing = comparison.moments["standing"]
    spread = 0.024 + 0.062 * math.tan(math.radians(35))
    assert 0 < standing.base < solve(near).cases["standing"].bearing_force.z * spread / 8
    assert standing.ratio is None
    assert standing.span is not None
    assert standing.span.low < standing.difference < standing.span.high
    corner = comparison.moments["corner left"]
    assert corner.ratio == pytest.approx(corner.other / corner.base)
    # 12 mm of load line are more than an eighth of the spread
    assert compare(wagon(), changed(wagon(), {"wheel.spacer": "25 mm"})).moments["standing"].ratio is not None


def test_a_change_of_sign_has_no_ratio() -> None:
    inboard = changed(wagon(), {"wheel.offset": "90 mm"})
    standing = compare(changed(wagon(), {"wheel.offset": "-10 mm"}), inboard).moments["standing"]
    assert standing.base > 0 > standing.other
    assert standing.ratio is None
    # 52 mm outboard before, 48 mm inboard after, each 3 mm either way: turned round, and about as large
    assert standing.verdict == "not settled"


def test_a_difference_is_judged_by_size_whatever_its_sign() -> None:
    unknown = {"bearing": {"kind": "tapered pair"}}  # beside a spread that is not known there is no ratio
    base = changed(wagon(), unknown)
    moments = compare(base, changed(base, {"wheel.spacer": "25 mm"})).moments
    inner, outer = moments["corner left"], moments["corner right"]
    assert inner.ratio is None
    assert outer.ratio is None
    assert 0 < inner.base < inner.other
    assert inner.verdict == "raises"
    assert outer.base < outer.other < 0
    assert outer.verdict == "lowers"


@pytest.mark.parametrize(
    ("low", "high", "verdict"),
    [(1.1, 1.3, "raises"), (0.7, 0.9, "lowers"), (0.9, 1.2, "not settled"), (1.0, 1.2, "not settled")],
)
def test_verdicts(low: float, high: float, verdict: str) -> None:
    assert Compared(1.0, 1.1, 1.1, Span(low, high, 0.0, 0.0, 400)).verdict == verdict


def test_opposing_cases_of_an_uncertain_duty_are_not_settled() -> None:
    """A spacer costs life standing and saves it at the outer wheel: at some duty it does neither."""
    base = wagon(
        **{
            '"0.9 ± 0.05"': '"0.8 ± 0.15"',
            '"0.1 ± 0.05"': '"0.2 ± 0.15"',
            "lateral_g = 0.3": 'lateral_g = "0.25 ± 0.1"',
        }
    )
    comparison = compare(base, changed(base, {"wheel.spacer": "6 mm"}))
    assert comparison.lives["standing"].verdict == "lowers"
    assert comparison.lives["corner right"].verdict == "raises"
    assert comparison.revolutions is not None
    assert comparison.revolutions.verdict == "not settled"


def test_the_worst_wheel_of_the_axle_leads_and_is_named() -> None:
    right = {**WINCH, "left_of_centre": "-0.5 m"}
    comparison = compare(wagon(), changed(wagon(), {"gear": [right]}))
    assert comparison.wheel == "front_right"
    assert comparison.worst_wheel == {"base": "front_left", "other": "front_right"}
    assert comparison.base.wheel == "front_right"
    assert compare(wagon(), changed(wagon(), {"gear": [right]}), "front_left").wheel == "front_left"


def test_a_duty_that_leans_to_one_side_is_warned_of() -> None:
    even = wagon()
    assert lopsided_cases(even) == []
    left = wagon(**{"lateral_g = 0.3": 'lateral_g = 0.3\ntoward = "left"'})
    assert lopsided_cases(left) == ["corner"]
    assert any("'corner'" in warning for warning in compare(left, left).warnings)


def test_every_sort_of_change_is_found() -> None:
    base = wagon()
    other = changed(
        base,
        {
            "tire.size": "265/75R16",
            "wheel.mass": "11 kg",
            "wheel.spacer": "5 mm",
            "gear": [WINCH, BOX],
            "hub.rotating_mass": "15 kg",
            "bearing.row_spacing": "26 mm",
            "duty": [{"case": "standing", "share": 1.0}],
        },
    )
    assert [change.name for change in changes_between(base, other)] == [
        "tire", "wheel", "spacer", "winch", "box", "hub", "bearing", "duty",
    ]  # fmt: skip
    # and back again, gear taken off
    assert [change.name for change in changes_between(other, base)] == [
        "tire", "wheel", "spacer", "winch", "box", "hub", "bearing", "duty",
    ]  # fmt: skip


def hubwright(*arguments: object) -> Result:
    return CliRunner().invoke(main, [str(argument) for argument in arguments])


def test_compare_prints_tables_in_both_unit_systems() -> None:
    files = (CONTENT / "vehicles/hill-wagon.toml", CONTENT / "setups/winter-fit-out.toml")
    si, us = (hubwright("compare", *files, "--units", units) for units in ("si", "us"))
    assert si.exit_code == us.exit_code == 0
    for text in (si.stdout, us.stdout):
        assert "Worst wheel of the axle in both: front left." in text
        assert "the factors multiply to the ratio" in text
    assert "kN" in si.stdout
    assert "lbf" in us.stdout
    # a life never stands alone: of lives only ratios are printed
    assert "million" not in si.stdout


def test_compare_prints_json() -> None:
    stems = ("winter-fit-out", "winter-offset-wheels")
    result = hubwright(
        "compare", CONTENT / "vehicles/hill-wagon.toml", *(CONTENT / f"setups/{stem}.toml" for stem in stems), "--json"
    )
    assert result.exit_code == 0
    entry = json.loads(result.stdout)
    assert len(entry["comparisons"]) == 2
    first = entry["comparisons"][0]
    ratio = first["life"]["duty"]["distance"]["ratio"]
    assert ratio["low"] < ratio["value"] < ratio["high"]
    factors = [part["factor"] for part in first["contributions"]["distance"]]
    assert math.prod(factors) == pytest.approx(ratio["value"])
    spacer = next(part for part in first["contributions"]["distance"] if part["change"] == "spacer")
    assert spacer["low"] < spacer["factor"] < spacer["high"]
    assert first["spans"]["draws_of_contributions"] == 200  # eight setups between
    modified = first["modified_life"]["duty"]["distance"]["ratio"]
    assert modified["low"] < modified["value"] < modified["high"]


def test_several_setups_have_an_overview_beside_the_base() -> None:
    stems = ("winter-fit-out", "winter-offset-wheels", "summer-fit-out")
    files = [CONTENT / "vehicles/hill-wagon.toml", *(CONTENT / f"setups/{stem}.toml" for stem in stems)]
    overview = hubwright("compare", *files).stdout.split("\n\nHill wagon, winter fit-out beside")[0]
    assert overview.startswith("Beside Hill wagon: load of the worst row standing, and distance over the duty")
    assert overview.count("lowers") == 3
    alone = hubwright("compare", *files[:2]).stdout
    assert not alone.startswith("Beside")
    assert "each percentile known to ± 1.1 points" in alone
    assert "200 of them, each percentile known to ± 1.5 points" in alone


def test_what_the_file_does_not_say_of_a_bearing_is_named(tmp_path: Path) -> None:
    bare = WAGON.split("[bearing]")[0] + '[bearing]\nkind = "tapered pair"\n'
    (tmp_path / "bare.toml").write_text(bare, encoding="utf-8")
    (tmp_path / "spaced.toml").write_text('extends = "bare"\nname = "Spaced"\n[wheel]\nspacer = "20 mm"\n', "utf-8")
    text = " ".join(hubwright("compare", tmp_path / "bare.toml", tmp_path / "spaced.toml").stdout.split())
    assert "Spaced: the bearing's life needs 'bearing.rollers_per_row'" in text
    assert "Life" not in text


@pytest.mark.parametrize(
    ("files", "message"),
    [
        (["vehicles/hill-wagon.toml"], "at least two files"),
        (["vehicles/hill-wagon.toml", "vehicles/kit-trailer.toml"], "Kit trailer a trailer: they cannot be compared"),
        (["vehicles/hill-wagon.toml", "beams/plank-bridge.toml"], "plank-bridge.toml is a beam"),
        (["vehicles/hill-wagon.toml", "vehicles/none.toml"], "cannot be read"),
    ],
)
def test_what_cannot_be_compared_is_said_with_exit_code_two(files: list[str], message: str) -> None:
    result = hubwright("compare", *(CONTENT / file for file in files))
    assert result.exit_code == 2
    assert message in result.stderr
    assert result.stdout == ""


def test_hubs_of_different_axles_are_not_compared() -> None:
    rear = wagon(**{'name = "Wagon"': 'name = "Rear wagon"\nwheel_end = "rear"'})
    with pytest.raises(NotComparableError, match="another axle's hub"):
        compare(wagon(), rear)

"""Lives of a setup: numbers by hand, what must hold for every bearing, and the shape of the JSON."""

import json
import math
import subprocess
import sys
from typing import cast

import numpy as np
import pytest

from hubwright.errors import CaseError, SetupErrors
from hubwright.mechanics.vector import Vector
from hubwright.results import solve
from hubwright.results.export import as_csv, as_json, number
from hubwright.results.life import life_of, refuse_drops
from hubwright.results.model import Results, Wheel
from hubwright.results.printing import Page
from hubwright.results.wear import Carried, wear
from hubwright.setup import Setup, load_text
from hubwright.setup.model import BallBearing, DutyShare
from wagon_text import FIXED_BALLS as BALLS
from wagon_text import WAGON

ROLLERS = """
[bearing]
kind = "tapered pair"
rollers_per_row = 21
roller_diameter = "9.6 mm"
roller_length = "15.5 mm"
pitch_diameter = "70 mm"
contact_angle = "15 deg"
row_spacing = "34 mm"
dynamic_rating = "100 kN"
static_rating = "150 kN"
"""
CORNER = """
[[case]]
name = "corner"
kind = "cornering"
lateral_g = 0.3
"""
DUTY = """
[[duty]]
case = "standing"
share = 0.8
[[duty]]
case = "corner"
share = 0.2
"""


def setup_of(text: str) -> Setup:
    return cast(Setup, load_text(text, "wagon.toml"))


def wagon(text: str, wheel: Wheel | None = None) -> Results:
    return solve(setup_of(text), wheel)


def quick_by_hand(results: Results, case: str, *, tapered: bool = False) -> float:
    """The textbook way for a left wheel, written out with the standard's factors at 35° (tapered: 15°)."""
    tangent = math.tan(math.radians(15))
    e, X, Y = (1.5 * tangent, 0.4, 0.4 / tangent) if tapered else (0.95, 0.37, 0.66)
    power, slope, rows = (10 / 3, 9 / 8, 7 / 9) if tapered else (3, 10 / 9, 0.7)
    radial = results.cases[case].row_radial_load
    assert radial is not None
    F_A, F_B, K = radial.outboard, radial.inboard, -results.cases[case].bearing_force.y
    S_A, S_B = (F_A / (2 * Y), F_B / (2 * Y)) if tapered else (e * F_A, e * F_B)

    def combined(F: float, F_a: float) -> float:
        return max(F, X * F + Y * F_a) if F_a > e * F else F

    if S_B + K >= S_A:
        P_A, P_B = combined(F_A, S_B + K), F_B
    else:
        P_A, P_B = F_A, combined(F_B, S_A - K)
    C_1 = (100e3 if tapered else 60e3) / 2**rows
    lives = [(C_1 / P) ** power * 1e6 for P in (P_A, P_B)]
    return sum(life**-slope for life in lives) ** (-1 / slope)


@pytest.mark.parametrize("case", ["standing", "corner left", "corner right"])
@pytest.mark.parametrize("tapered", [False, True])
def test_quick_life_is_that_of_the_textbook(case: str, tapered: bool) -> None:
    results = wagon(WAGON + (ROLLERS if tapered else BALLS) + CORNER)
    assert results.life is not None
    assert results.life.cases[case].quick == pytest.approx(quick_by_hand(results, case, tapered=tapered), rel=1e-12)


def test_both_ways_to_a_ball_bearings_life_stay_near_each_other() -> None:
    life = wagon(WAGON + BALLS + CORNER).life
    assert life is not None
    for case in life.cases.values():
        assert case.quick is not None
        assert case.detailed is not None
        # the textbook's load zone of half a ring against the true one
        assert 0.5 < case.detailed / case.quick < 2


def test_catalogue_rating_wins_and_life_goes_with_its_cube() -> None:
    small, large = (wagon(WAGON + BALLS.replace("60 kN", rating)).life for rating in ("30 kN", "60 kN"))
    assert small is not None
    assert large is not None
    for method in ("quick", "detailed"):
        ratio = getattr(large.cases["standing"], method) / getattr(small.cases["standing"], method)
        assert ratio == pytest.approx(8, rel=1e-9)


def test_grooves_closer_than_the_standards_are_remarked_where_the_rating_is_computed() -> None:
    # ISO 281 grants no higher rating to conformities below 0.52 (recalled)
    computed = BALLS.replace('dynamic_rating = "60 kN"\n', "")
    close = computed + "inner_conformity = 0.515\n"
    assert "higher than ISO 281 grants" in as_json(wagon(WAGON + close))["bearing"]["remark"]
    assert "higher than ISO 281 grants" in " ".join(Page("si").results(wagon(WAGON + close)).split())
    for text in (computed, BALLS + "inner_conformity = 0.515\n", ROLLERS):
        assert "remark" not in as_json(wagon(WAGON + text))["bearing"]
        assert "higher than ISO 281 grants" not in Page("si").results(wagon(WAGON + text))


def test_duty_adds_damage_by_distance() -> None:
    results = wagon(WAGON + BALLS + CORNER + DUTY)
    life = results.life
    assert life is not None
    assert life.duty is not None
    standing, left, right = (life.cases[name].detailed or 0 for name in ("standing", "corner left", "corner right"))
    revolutions = 1 / (0.8 / standing + 0.1 / left + 0.1 / right)
    diameter = 16 * 0.0254 + 2 * 0.75 * 0.245
    assert life.duty.revolutions == pytest.approx(revolutions, rel=1e-12)
    assert life.duty.distance == pytest.approx(revolutions * 3.05 * diameter, rel=1e-12)
    parts = {part.case: part.damage_share for part in life.duty.parts}
    assert sum(parts.values()) == pytest.approx(1)
    assert parts["standing"] == pytest.approx(0.8 / standing * revolutions)


def test_duty_counts_a_case_outside_the_range_and_is_marked() -> None:
    life = wagon(WAGON + BALLS.replace("60 kN", "20 kN") + CORNER + DUTY).life
    assert life is not None
    assert life.duty is not None
    assert life.cases["standing"].valid  # 3.4 kN under half of 20 kN/2^0.7
    assert not life.cases["corner right"].valid
    assert not life.duty.valid
    assert 0 < life.duty.revolutions < math.inf


def test_range_ends_at_the_static_rating_of_a_row_too() -> None:
    life = wagon(WAGON + BALLS.replace("50 kN", "6 kN")).life  # 3 kN per row, and 3.4 kN stands on the outboard one
    assert life is not None
    assert not life.cases["standing"].valid


def test_no_case_is_called_duty() -> None:
    with pytest.raises(SetupErrors, match=r"'case\.1\.name' must be another name"):
        setup_of(WAGON + BALLS + '[[case]]\nname = "duty"\nkind = "braking"\nbraking_g = 0.3\n')


def test_a_drop_in_a_duty_is_refused() -> None:
    with pytest.raises(CaseError, match="'rock': a drop dents rather than wears"):
        refuse_drops([DutyShare("rock", 1.0)], {"rock": "drop"})


def test_a_drop_has_no_life_but_a_dent_margin() -> None:
    entry = as_json(wagon(WAGON + BALLS + '[[case]]\nname = "rock"\nkind = "drop"\nheight = "100 mm"\n'))
    rock, standing = entry["life"]["rock"], entry["life"]["standing"]
    assert "quick" not in rock
    assert "detailed" not in rock
    assert rock["static_safety"]["outboard"]["value"] < standing["static_safety"]["outboard"]["value"]
    assert rock["peak_contact_pressure"]["outboard"]["unit"] == "Pa"


def test_a_tapered_pair_without_data_has_loads_and_says_what_its_life_needs() -> None:
    results = wagon(WAGON + ROLLERS.replace('roller_length = "15.5 mm"\n', ""))
    assert results.life is None
    entry = as_json(results)
    assert entry["life"] is None
    assert "'bearing.roller_length'" in entry["life_error"]
    assert entry["cases"]["standing"]["row_radial_load"] is not None
    with pytest.raises(LookupError, match="roller_length"):
        life_of(results)


def test_json_has_the_shape_that_scripts_rely_on() -> None:
    entry = as_json(wagon(WAGON + BALLS + CORNER + DUTY))
    json.dumps(entry, allow_nan=False)
    assert set(entry["life"]) == {"standing", "corner left", "corner right", "duty"}
    case = entry["life"]["corner left"]
    assert set(case) == {
        "quick",
        "detailed",
        "valid",
        "largest_ball_load",
        "peak_contact_pressure",
        "static_safety",
    }
    assert case["valid"] is True
    assert case["detailed"]["unit"] == "1"
    assert set(entry["life"]["duty"]) == {"revolutions", "distance", "valid"}
    assert "life.duty.distance," in as_csv(entry)
    assert as_json(wagon(WAGON + BALLS))["life"]["duty"] is None  # no duty given


def test_infinite_life_is_null() -> None:
    assert number(math.inf, "1") is None


def test_right_wheel_lives_as_the_left_one_in_the_mirrored_corner() -> None:
    text = WAGON + BALLS + CORNER
    left, right = wagon(text, "front_left").life, wagon(text, "front_right").life
    assert left is not None
    assert right is not None
    for one, other in (("corner left", "corner right"), ("corner right", "corner left")):
        assert left.cases[one].quick == pytest.approx(right.cases[other].quick, rel=1e-9)
        assert left.cases[one].detailed == pytest.approx(right.cases[other].detailed, rel=1e-6)


def carried(force: np.ndarray, moment: np.ndarray, spread: float) -> Carried:
    up, forward = moment[0] / spread, -moment[2] / spread
    return Carried(
        force=Vector(*force),
        moment=Vector(*moment),
        outboard=np.hypot(force[2] / 2 + up, force[0] / 2 + forward),
        inboard=np.hypot(force[2] / 2 - up, force[0] / 2 - forward),
    )


@pytest.mark.parametrize("bearing", [BALLS, ROLLERS])
def test_life_falls_when_all_loads_grow_together(bearing: str) -> None:
    results = wagon(WAGON + bearing)
    spread = results.bearing.effective_spread
    assert spread is not None
    generator = np.random.default_rng(4)
    force = generator.uniform(-1, 1, (3, 300)) * np.array([[5e3], [4e3], [9e3]])
    moment = generator.uniform(-1, 1, (3, 300)) * np.array([[800.0], [0.0], [300.0]])
    before = wear(results.setup.bearing, carried(force, moment, spread), side=1)
    factor = generator.uniform(1.02, 2.0, 300)
    after = wear(results.setup.bearing, carried(force * factor, moment * factor, spread), side=1)
    assert (after.quick < before.quick).all()
    assert (after.detailed < before.detailed).all()
    # by the textbook a life goes with the third (rollers 10/3) power of the load, whatever its direction
    power = 3 if bearing is BALLS else 10 / 3
    np.testing.assert_allclose(before.quick / after.quick, factor**power, rtol=1e-9)


def test_one_load_alone_may_raise_life() -> None:
    """On an outboard load line more weight on the outer wheel opposes what the side force does to the hub."""
    results = wagon(WAGON + BALLS)
    spread = results.bearing.effective_spread
    assert spread is not None
    side_force, load_line, radius = -2000.0, 0.05, 0.37
    load = np.array([6000.0, 7500.0])
    zero = np.zeros(2)
    moment = np.array([load_line * load + radius * side_force, zero, zero])
    worn = wear(results.setup.bearing, carried(np.array([zero, zero + side_force, load]), moment, spread), side=1)
    assert worn.quick[1] > worn.quick[0]
    assert worn.detailed[1] > worn.detailed[0]


def test_a_spacer_shortens_life_standing_and_lengthens_it_at_the_outer_wheel_of_a_corner() -> None:
    plain = wagon(WAGON + BALLS + CORNER).life
    spaced = wagon(WAGON.replace('offset = "30 mm"', 'offset = "30 mm"\nspacer = "25 mm"') + BALLS + CORNER).life
    assert plain is not None
    assert spaced is not None
    for method in ("quick", "detailed"):
        assert getattr(spaced.cases["standing"], method) < getattr(plain.cases["standing"], method)
        assert getattr(spaced.cases["corner right"], method) > getattr(plain.cases["corner right"], method)


def test_without_load_life_never_ends() -> None:
    zero = np.zeros((3, 2))
    bearing = cast(BallBearing, setup_of(WAGON + BALLS).bearing)
    worn = wear(bearing, carried(zero, zero, 0.06), side=1)
    assert np.isinf(worn.quick).all()
    assert np.isinf(worn.detailed).all()
    assert np.isinf(worn.margin).all()
    assert worn.valid.all()


def test_solve_leaves_the_optimizers_alone() -> None:
    code = (
        "import sys; from hubwright.setup import load_text; from hubwright.results import solve;"
        "from hubwright.results.export import as_json;"
        f"as_json(solve(load_text({WAGON + BALLS + CORNER + DUTY!r})));"
        "assert not [name for name in sys.modules if name.startswith(('scipy.optimize', 'matplotlib', 'mkdocs'))]"
    )
    subprocess.run([sys.executable, "-c", code], check=True)

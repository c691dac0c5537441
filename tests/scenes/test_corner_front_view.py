"""The vehicle from the rear: closed in every direction, load transfer as the textbook says, words of the numbers."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hubwright.drawing.closure import left_over
from hubwright.errors import CaseError
from hubwright.results import Results, solve
from hubwright.scenes.corner_front_view import corner_front_view
from hubwright.scenes.roll_body import roll_body
from hubwright.scenes.vocabulary import Force
from hubwright.setup import load
from hubwright.setup.model import Setup, VehicleChassis
from scene_checks import check_scene, check_written_scales, is_round
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
SLOW = settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
KINDS = ("standing", "cornering", "side_slope")
G = 9.80665  # standard gravity, CGPM 1901


def shown(results: Results) -> list[str]:
    return [name for name, state in results.cases.items() if state.kind in KINDS]


def forces(results: Results, case: str) -> dict[str, Force]:
    return {item.name: item for item in corner_front_view(results, case=case).items if isinstance(item, Force)}


@given(chosen=setups(rows_known=False), data=st.data())
@SLOW
def test_every_valid_setup_has_its_figure(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen)
    case = data.draw(st.sampled_from(shown(results)))
    scene = corner_front_view(results, case=case, units=data.draw(st.sampled_from(("si", "us"))))
    check_scene(scene)
    assert is_round(scene.view("vehicle").newtons_per_mm or 0.0)


@given(chosen=setups(rows_known=False))
@SLOW
def test_the_body_closes_in_all_six_equations(chosen: Setup) -> None:
    results = solve(chosen)
    for case in shown(results):
        force, moment, largest, largest_moment = left_over(roll_body(results, results.cases[case]).closed())
        assert force <= 1e-9 * largest
        assert moment <= 1e-9 * largest_moment


@given(chosen=setups(rows_known=False))
@SLOW
def test_what_moves_times_the_tracks_is_the_pull_times_its_height(chosen: Setup) -> None:
    results = solve(chosen)
    for case in shown(results):
        body = roll_body(results, results.cases[case])
        pull = body.inertia.y + body.weight.y
        held = sum(wheel.gained * wheel.y for wheel in body.wheels)  # N·mm
        assert held == pytest.approx(pull * body.centre[2], abs=1e-6 * abs(body.weight.z) * 1e3)


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn_to_scale(vehicle: str, units) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    for case in shown(results):
        scene = corner_front_view(results, case=case, units=units)
        check_scene(scene)
        assert check_written_scales(scene) >= 5


def test_sides_are_the_sums_of_their_wheels() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    state = results.cases["brisk corner right"]
    drawn = forces(results, "brisk corner right")
    contacts = state.wheel_contacts
    assert drawn["reaction-left"].vector[1] == pytest.approx(contacts["front_left"].z + contacts["rear_left"].z)
    assert drawn["reaction-front_left"].vector[1] == pytest.approx(contacts["front_left"].z)


def test_cornering_moves_load_as_the_textbook_says() -> None:
    # n M g h over the track; the front axle takes its share
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    state, chassis = results.cases["brisk corner right"], results.setup.chassis
    assert isinstance(chassis, VehicleChassis)
    body = roll_body(results, state)
    moved = 0.3 * results.weight.total_mass * G * results.weight.centre_of_mass_height / chassis.front_track
    assert body.moved() == pytest.approx(moved)
    front = body.of_axle("front")[0].gained
    assert front == pytest.approx(chassis.front_roll_share * moved)


def test_the_slope_pulls_downhill_and_presses_less() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    drawn = forces(results, "cross slope left")
    weight = results.weight.total_mass * G
    # 15 degrees: sin 0.2588, cos 0.9659 (four-figure tables)
    assert drawn["force-weight-y"].vector[0] == pytest.approx(-0.2588 * weight, rel=2e-4)
    assert drawn["force-weight-z"].vector[1] == pytest.approx(-0.9659 * weight, rel=1e-4)


def test_titles_name_the_side_that_gains() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    assert "outer wheels, on the left" in corner_front_view(results, case="brisk corner right").title
    assert "downhill wheels, on the right" in corner_front_view(results, case="cross slope left").title
    assert "nothing moves" in corner_front_view(results, case="standing").title
    trailer = solve(load(CONTENT / "vehicles/kit-trailer.toml"))
    assert "the coupling takes no part" in corner_front_view(trailer, case="brisk corner left").title


def test_cases_along_the_road_are_refused() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    with pytest.raises(CaseError, match="round a bend"):
        corner_front_view(results, case="firm braking")

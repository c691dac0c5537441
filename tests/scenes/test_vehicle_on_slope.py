"""A vehicle across a slope: its weight's line, plumb forces, a static angle that never goes without its warning."""

import math

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from dropped import demonstration
from hubwright.drawing.closure import left_over
from hubwright.errors import CaseError
from hubwright.results import solve
from hubwright.scenes.vehicle_on_slope import OnSlope, vehicle_on_slope
from hubwright.scenes.vocabulary import Force
from scene_checks import check_scene, is_round
from strategies import built, setup_data

SLOW = settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
VEHICLES = ("vehicles/hill-wagon.toml", "vehicles/supply-van.toml", "vehicles/kit-trailer.toml")


@given(
    data=setup_data(rows_known=False),
    angle=st.floats(0.5, 12.0),
    uphill=st.sampled_from(("left", "right")),
    units=st.sampled_from(("si", "us")),
)
@SLOW
def test_every_slope_has_its_figure(data, angle: float, uphill: str, units) -> None:
    data["case"] = [{"name": "slope", "kind": "side_slope", "angle": f"{angle:.2f} deg", "uphill": uphill}]
    data.pop("duty", None)
    scene = vehicle_on_slope(solve(built(data)), units=units)
    check_scene(scene)
    assert is_round(scene.view("slope").newtons_per_mm or 0.0)


@pytest.mark.parametrize("file", VEHICLES)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn(file: str, units) -> None:
    results = demonstration(file)
    for case in (name for name, state in results.cases.items() if state.kind == "side_slope"):
        check_scene(vehicle_on_slope(results, case=case, units=units))


def test_all_forces_are_plumb_and_close() -> None:
    results = demonstration(VEHICLES[0])
    scene = vehicle_on_slope(results, case="cross slope left")
    forces = [item for item in scene.items if isinstance(item, Force)]
    largest = max(abs(force.vector[1]) for force in forces)
    assert sum(force.vector[1] for force in forces) == pytest.approx(0.0, abs=1e-9 * largest)
    assert all(force.vector[0] == 0.0 for force in forces)
    # about any point of the sheet
    turned = sum(force.at[0] * force.vector[1] for force in forces)
    assert turned == pytest.approx(0.0, abs=1e-6 * largest * 1e3)
    assert scene.body is not None
    force, moment, biggest, biggest_moment = left_over(scene.body)
    assert force <= 1e-9 * biggest
    assert moment <= 1e-9 * biggest_moment


def test_what_is_left_and_the_static_angle_are_those_of_the_triangle() -> None:
    # half the track 0.8 m over 0.69 m: tan φ = 1.159; level distance left = 0.8 cos 15° − 0.69 sin 15°
    results = demonstration(VEHICLES[0])
    on = OnSlope.of(results, results.cases["cross slope left"])
    assert on.tipping == pytest.approx(math.atan(0.8 / 0.69))
    assert on.spare == pytest.approx(800 * math.cos(math.radians(15)) - 690 * math.sin(math.radians(15)))


def test_the_angle_never_goes_without_its_warning() -> None:
    scene = vehicle_on_slope(demonstration(VEHICLES[0]))
    assert "tips well before" in scene.caption
    assert "Not a driving limit" in scene.caption
    assert "tips well before" in scene.description


def test_other_cases_are_refused() -> None:
    with pytest.raises(CaseError, match="across a slope"):
        vehicle_on_slope(demonstration(VEHICLES[0]), case="standing")

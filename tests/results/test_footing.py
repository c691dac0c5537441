"""Slopes, diagonals and ledges of a setup: against its own load cases, and by hand."""

import dataclasses
from pathlib import Path

import numpy as np
import pytest

from hubwright.errors import CaseError, MissingDataError
from hubwright.results import solve
from hubwright.results.footing import diagonal_result, drive_at_ledge, ledge_result, slope_result
from hubwright.setup import load, vary
from hubwright.setup.model import Ledge, SideSlope

VEHICLES = Path(__file__).parents[2] / "content" / "vehicles"
NAMES = ("hill-wagon", "supply-van", "kit-trailer")


def on_slope(setup, angle, uphill):
    return dataclasses.replace(setup, cases=(*setup.cases, SideSlope("slope", "slope", angle, uphill)), duty=())


@pytest.fixture(scope="module")
def wagon():
    return load(VEHICLES / "hill-wagon.toml")


def test_the_figure_of_the_wagon_by_hand(wagon):
    slope = slope_result(solve(wagon))
    assert slope.static_stability_figure == pytest.approx(1.60 / (2 * 0.69))
    assert np.tan(slope.tipping["left"]) == pytest.approx(1.60 / (2 * 0.69))


def loaded(name, beside):
    """Return a demonstration vehicle with a load to its left."""
    setup = load(VEHICLES / f"{name}.toml")
    keys = ("behind_axle", "behind_front_axle")
    where = {keys[0] if setup.kind == "trailer" else keys[1]: "0.3 m"}
    box = {"name": "Sand", "mass": "90 kg", "left_of_centre": f"{beside} m", "above_ground": "1.2 m", **where}
    return vary(setup, {"gear": [box]})


@pytest.mark.parametrize("beside", [0.0, 0.5, -0.5])
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(("uphill", "downhill"), [("right", "left"), ("left", "right")])
def test_the_first_wheel_lifts_where_the_case_on_the_slope_says(name, uphill, downhill, beside):
    setup = loaded(name, beside)
    slope = slope_result(solve(setup))
    first = min(angle for wheel, angle in slope.lifting.items() if wheel.endswith(uphill))
    assert first <= slope.tipping[downhill] + 1e-9
    assert "slope" in solve(on_slope(setup, first - 1e-6, uphill)).cases
    with pytest.raises(CaseError, match="lifts off"):
        solve(on_slope(setup, first + 1e-6, uphill))


def test_a_diagonal_carries_the_vehicle_with_its_third_wheel(wagon):
    results = solve(wagon)
    held = diagonal_result(results, "front_left+rear_right")
    assert sum(held.loads.values()) == pytest.approx(sum(results.weight.wheel_loads.values()))
    # nose-heavy: it leans on the other front wheel
    assert held.loads["front_right"] > 0
    assert held.loads["rear_left"] == 0


def test_a_trailer_has_no_diagonal():
    trailer = solve(load(VEHICLES / "kit-trailer.toml"))
    with pytest.raises(MissingDataError, match="Kit trailer is a trailer"):
        diagonal_result(trailer, "front_left+rear_right")


def test_a_ledge_is_that_of_the_case(wagon):
    results = solve(wagon)
    ledge = ledge_result(results, height=0.12, friction=0.8)
    case = results.cases["stone ledge"]
    assert ledge.normal == pytest.approx(case.extras["contact_normal"])
    assert ledge.push == pytest.approx(case.extras["push"])


def test_the_highest_ledge_of_a_friction_needs_that_friction(wagon):
    highest = ledge_result(solve(wagon), height=0.1, friction=0.8).highest
    case = dataclasses.replace(wagon, cases=(*wagon.cases, Ledge("top", "top", highest)), duty=())
    state = solve(case).cases["top"]
    assert -state.contact_force.x / state.contact_force.z == pytest.approx(0.8)


def test_drive_takes_the_push_away(wagon):
    results = solve(wagon)
    needed = drive_at_ledge(results, height=0.12, torque=np.array([0.0])).climbs_by_itself
    driven = drive_at_ledge(results, height=0.12, torque=np.linspace(0.0, needed, 5))
    assert driven.push[0] == pytest.approx(results.cases["stone ledge"].extras["push"])
    assert driven.push[-1] == pytest.approx(0.0, abs=1e-9)
    assert np.all(np.diff(driven.push) < 0)
    assert np.all(np.diff(driven.needed_friction) > 0)
    assert driven.needed_friction[-1] == pytest.approx(ledge_result(results, height=0.12, friction=1.0).needed_friction)

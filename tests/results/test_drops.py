"""Drops of a setup: what the results hold, what is refused, what the free body closes with."""

import dataclasses
from pathlib import Path

import numpy as np
import pytest

from hubwright.errors import CaseError, MissingDataError
from hubwright.mechanics.impact import drop, tire_on_rim
from hubwright.results import solve
from hubwright.results.drops import drop_history, quarter_car
from hubwright.results.export import as_json
from hubwright.setup import load, vary
from hubwright.setup.model import Drop

G = 9.80665
VEHICLES = Path(__file__).parents[2] / "content" / "vehicles"
CASE = "drop off a rock"


@pytest.fixture(scope="module")
def wagon():
    return load(VEHICLES / "hill-wagon.toml")


@pytest.fixture(scope="module")
def dropped(wagon):
    return solve(wagon)


def with_drop(setup, height="150 mm"):
    return vary(setup, {"case": [{"name": "fall", "kind": "drop", "height": height}], "duty": "hill roads"})


def test_a_drop_has_its_extras_with_their_units(dropped):
    case = as_json(dropped)["cases"][CASE]
    assert case["peak_tire_force"]["unit"] == case["peak_bearing_force"]["unit"] == "N"
    assert case["impact_factor"]["unit"] == "1"
    assert case["tire_on_rim"] is False
    assert case["impact_factor"]["value"] == pytest.approx(
        case["peak_tire_force"]["value"] / dropped.weight.wheel_loads["front_left"]
    )


def test_the_free_body_of_a_drop_closes_with_the_inertia_of_the_wheel(dropped):
    case = dropped.cases[CASE]
    assert case.closure.force < 1e-9 * case.contact_force.z
    assert case.closure.moment < 1e-9 * case.contact_force.z
    inertia = sum(case.free_body.force(name).force.z for name in ("inertia_wheel", "inertia_hub"))
    weight = sum(case.free_body.force(name).force.z for name in ("weight_wheel", "weight_hub"))
    assert weight == pytest.approx(-40.0 * G)
    assert case.bearing_force.z == pytest.approx(case.contact_force.z + weight + inertia)


def test_the_bearing_values_are_those_of_the_largest_bearing_force(dropped):
    case = dropped.cases[CASE]
    assert case.bearing_force.z == pytest.approx(case.extras["peak_bearing_force"], rel=1e-9)
    assert case.contact_force.z <= case.extras["peak_tire_force"]


def test_the_history_is_that_of_the_case(dropped):
    history = drop_history(dropped, CASE)
    assert history.height == 0.15
    assert history.peak_tire_force == dropped.cases[CASE].extras["peak_tire_force"]
    assert history.impact_factor == dropped.cases[CASE].extras["impact_factor"]
    assert history.touch_speed == pytest.approx(np.sqrt(2 * G * 0.15))
    assert history.fall_energy == pytest.approx(history.standing_load * 0.15)
    near = np.abs(history.time - history.peak_time).argmin()
    assert history.bearing_force[near] == pytest.approx(history.peak_bearing_force, rel=0.02)
    # k · δ with W from the energy: k δ²/2 = W (s + δ)
    k, W = history.car.tire_stiffness, history.standing_load
    give = history.energy_bound / k
    assert k * give**2 / 2 == pytest.approx(W * (0.15 + give))


def test_masses_of_the_corner_are_those_of_the_file(dropped):
    car = drop_history(dropped, CASE).car
    assert car.unsprung_mass == 52.0
    assert car.sprung_mass == pytest.approx(1120 / 2 - 52)
    assert car.turning_mass == 17 + 9 + 14


def test_a_heavier_tire_joins_the_unsprung_mass_unless_the_setup_gives_that_itself(wagon):
    heavier = vary(wagon, {"tire.mass": "23 kg"})
    results = solve(heavier)
    assert drop_history(results, CASE).car.unsprung_mass == pytest.approx(58.0)
    stated = solve(vary(wagon, {"tire.mass": "23 kg", "suspension.unsprung_mass": "60 kg"}))
    assert drop_history(stated, CASE).car.unsprung_mass == 60.0


def test_an_estimated_suspension_drops_too():
    van = with_drop(load(VEHICLES / "supply-van.toml"))
    results = solve(van)
    car = drop_history(results, "fall").car
    assert car.wheel_rate == results.inputs["suspension.wheel_rate"].value
    # mechanics.md, estimates: ride frequency 1.3 Hz
    assert np.sqrt(car.wheel_rate / car.sprung_mass) / (2 * np.pi) == pytest.approx(1.3)
    assert results.cases["fall"].extras["impact_factor"] > 1


@pytest.mark.parametrize("name", ["hill-wagon", "supply-van"])
def test_peaks_of_the_demonstration_vehicles_grow_with_height(name):
    results = solve(load(VEHICLES / f"{name}.toml"))
    standing_load = results.weight.wheel_loads[results.wheel]
    car = quarter_car(results.setup, results.inputs, standing_load=standing_load, case="drop")
    landed = drop(car, height=np.linspace(0.0, 2.0, 81))
    for peaks in (landed.peak_tire_force, landed.peak_bearing_force):
        assert np.all(np.diff(peaks) > 0)
    section_height = results.setup.tire.section_height
    on_rim = tire_on_rim(deflection=landed.largest_deflection, section_height=section_height)
    assert not on_rim[0]
    assert on_rim[-1]
    # once on the rim, a higher fall does not lift the tire off it
    assert np.all(np.diff(on_rim.astype(int)) >= 0)


def test_a_tire_on_its_rim_is_said(wagon):
    fallen = solve(with_drop(wagon, "1.5 m"))
    case = fallen.cases["fall"]
    assert as_json(fallen)["cases"]["fall"]["tire_on_rim"] is True
    assert case.extras["peak_tire_force"] > drop_history(fallen, "fall").rim_force


def test_a_trailer_without_suspension_is_refused_with_the_reason():
    trailer = load(VEHICLES / "kit-trailer.toml")
    falling = dataclasses.replace(trailer, cases=(*trailer.cases, Drop("fall", "fall", 0.1)))
    results = solve(falling)
    assert "fall" not in results.cases
    assert "standing" in results.cases
    assert results.left_out["fall"] == (
        "the drop 'fall' needs 'suspension', which the file does not give. Nothing is estimated for a trailer's springs"
    )
    with pytest.raises(MissingDataError, match="needs 'suspension'"):
        quarter_car(falling, results.inputs, standing_load=5000.0, case="fall")


def test_an_unsprung_mass_that_is_the_whole_corner_is_refused(wagon):
    heavy = vary(wagon, {"suspension.unsprung_mass": "600 kg"})
    with pytest.raises(CaseError, match="unsprung mass of 600 kg is all that stands on the wheel"):
        solve(heavy)


def test_only_a_drop_has_a_history(dropped):
    with pytest.raises(CaseError, match="no drop but a case of the kind 'standing'"):
        drop_history(dropped, "standing")


def test_the_corner_is_that_of_the_wheel_asked_for(wagon):
    both = vary(wagon, {"wheel_end": "both"})
    rear = solve(both, "rear_left")
    car = quarter_car(both, rear.inputs, standing_load=rear.weight.wheel_loads["rear_left"], case=CASE)
    assert car.sprung_mass == pytest.approx(1010 / 2 - 52)
    assert rear.cases[CASE].extras["impact_factor"] > 1

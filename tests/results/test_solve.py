"""Solving a setup: numbers by hand, the shape of the JSON, and what must hold for every valid setup."""

import json
import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import HealthCheck, assume, given, settings

from hubwright.errors import CaseError, HubwrightError, MissingDataError
from hubwright.results import described_wheels, solve
from hubwright.results.export import as_csv, as_json
from hubwright.results.model import Results
from hubwright.setup import load_text
from strategies import setups
from wagon_text import BALLS, WAGON

G = 9.80665


def wagon(more: str = "") -> Results:
    return solve(load_text(WAGON + BALLS + more, "wagon.toml"))


def test_standing_loads_are_those_of_paper_and_pencil() -> None:
    case = wagon().cases["standing"]
    road = 1120 * G / 2
    assert case.contact_force.z == pytest.approx(road)
    assert case.bearing_force.z == pytest.approx(road - (17 + 9 + 14) * G)
    # load line 42 − 30 = 12 mm outboard; tire and wheel hang there, hub and disc at the 42 mm face
    moment = 0.012 * road - 0.012 * 26 * G - 0.042 * 14 * G
    assert case.bearing_moment.x == pytest.approx(moment)
    spread = 0.024 + 0.062 * math.tan(math.radians(35))
    assert case.row_load is not None
    assert case.row_load.outboard.z == pytest.approx(case.bearing_force.z / 2 + moment / spread)
    assert case.row_load.inboard.z == pytest.approx(case.bearing_force.z / 2 - moment / spread)


def test_outer_wheel_of_a_corner_is_tipped_the_other_way() -> None:
    case = wagon('[[case]]\nname = "bend"\nkind = "cornering"\nlateral_g = 0.4\ntoward = "right"\n').cases["bend"]
    road = 1120 * G / 2 + 0.55 * 2130 * 0.4 * G * 0.69 / 1.60
    radius = (16 * 0.0254 + 2 * 0.75 * 0.245) / 2 - 1120 * G / 2 / 260e3
    moment = 0.012 * road - radius * 0.4 * road - 0.012 * 26 * G - 0.042 * 14 * G
    assert case.bearing_moment.x == pytest.approx(moment)
    assert moment < 0 < wagon().cases["standing"].bearing_moment.x


def test_gear_ahead_of_the_axle_adds_more_than_its_weight_there() -> None:
    gear = '[[gear]]\nname = "winch"\nmass = "62 kg"\nbehind_front_axle = "-0.72 m"\nabove_ground = "0.75 m"\n'
    bare, loaded = wagon().weight.axle_loads, wagon(gear).weight.axle_loads
    assert loaded["front"] - bare["front"] == pytest.approx(62 * G * (1 + 0.72 / 2.78))
    assert loaded["rear"] - bare["rear"] == pytest.approx(-62 * G * 0.72 / 2.78)


def test_a_spacer_and_an_offset_less_by_its_thickness_load_the_bearing_alike() -> None:
    text = WAGON + BALLS
    spaced = solve(load_text(text.replace('offset = "30 mm"', 'offset = "30 mm"\nspacer = "25 mm"'), "a.toml"))
    offset = solve(load_text(text.replace('offset = "30 mm"', 'offset = "5 mm"'), "b.toml"))
    for name in spaced.cases:
        assert flat(spaced, name) == pytest.approx(flat(offset, name), rel=1e-12)


def flat(results: Results, case: str) -> list[float]:
    c = results.cases[case]
    vectors = (c.contact_force, c.bearing_force, c.bearing_moment)
    return [getattr(vector, axis) for vector in vectors for axis in "xyz"]


def test_heavier_wheels_reach_the_ground_and_not_the_bearing() -> None:
    root = load_text(WAGON + BALLS, "wagon.toml")
    heavier = replace(root, tire=replace(root.tire, mass=root.tire.mass + 10), weighed_as_it_stands=False)
    light, heavy = solve(root).cases["standing"], solve(heavier).cases["standing"]
    assert heavy.contact_force.z - light.contact_force.z == pytest.approx(10 * G)
    assert heavy.bearing_force.z == pytest.approx(light.bearing_force.z)


@pytest.mark.parametrize(
    ("case", "reason"),
    [
        ('kind = "cornering"\nlateral_g = 1.4\ntoward = "left"', "the front left wheel lifts off"),
        ('kind = "ledge"\nheight = "380 mm"', "the ledge is as high as the axle"),
        ('kind = "side_slope"\nangle = "60 deg"\nuphill = "right"', "the slope is past tipping"),
    ],
)
def test_a_case_that_cannot_stand_is_an_error_that_names_it(case: str, reason: str) -> None:
    with pytest.raises(CaseError, match=f"case 'too far'.*{reason}"):
        wagon(f'[[case]]\nname = "too far"\n{case}\n')


def test_a_wheel_whose_hub_is_not_described_is_refused_with_the_repair() -> None:
    with pytest.raises(MissingDataError, match='write wheel_end = "both"'):
        solve(load_text(WAGON + BALLS, "wagon.toml"), "rear_left")


def test_json_has_the_shape_that_scripts_rely_on() -> None:
    ledge = '[[case]]\nname = "kerb"\nkind = "ledge"\nheight = "100 mm"\n'
    entry = json.loads(json.dumps(as_json(wagon(ledge))))
    assert {"setup", "inputs", "wheel_geometry", "weight", "cases", "bearing"} <= set(entry)
    assert set(entry["wheel_geometry"]) == {
        "free_diameter", "section_width", "loaded_radius", "load_line_offset", "backspacing",
    }  # fmt: skip
    assert set(entry["weight"]) == {
        "front_axle_load", "rear_axle_load", "front_left", "front_right", "rear_left", "rear_right",
    }  # fmt: skip
    assert set(entry["bearing"]) >= {"dynamic_rating", "static_rating", "effective_spread"}
    kerb = entry["cases"]["kerb"]
    assert set(kerb["contact_force"]) == set("xyz")
    assert set(kerb["row_load"]["outboard"]) == set("xz")
    assert kerb["push"]["unit"] == kerb["contact_normal"]["unit"] == "N"
    assert kerb["bearing_moment"]["x"]["unit"] == "N*m"
    assert kerb["bearing_moment"]["y"]["value"] == pytest.approx(0, abs=1e-9)
    wheelbase = entry["inputs"]["chassis.wheelbase"]
    assert wheelbase == {"value": 2.78, "unit": "m", "low": None, "high": None, "origin": "given"}


def test_csv_holds_the_same_numbers() -> None:
    results = wagon()
    rows = dict(line.rsplit(",", 1)[0].split(",", 1) for line in as_csv(as_json(results)).splitlines()[1:])
    assert float(rows["cases.standing.bearing_moment.x"]) == results.cases["standing"].bearing_moment.x


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(setups())
def test_every_free_body_of_every_setup_closes(setup) -> None:  # type: ignore[no-untyped-def]
    for wheel in described_wheels(setup):
        try:
            results = solve(setup, wheel)
        except HubwrightError:
            assume(False)
        for case in results.cases.values():
            forces = [np.array([s.force.x, s.force.y, s.force.z]) for s in case.free_body.forces]
            points = [np.array([s.point.x, s.point.y, s.point.z]) for s in case.free_body.forces]
            couples = [np.array([c.moment.x, c.moment.y, c.moment.z]) for c in case.free_body.couples]
            largest = max(float(np.linalg.norm(force)) for force in forces)
            assert np.linalg.norm(np.sum(forces, axis=0)) <= 1e-9 * largest
            moment = np.sum([np.cross(r, F) for r, F in zip(points, forces, strict=True)], axis=0)
            assert np.linalg.norm(moment + np.sum(couples, axis=0)) <= 1e-9 * largest


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(setups())
def test_wheel_loads_sum_to_the_weight(setup) -> None:  # type: ignore[no-untyped-def]
    try:
        weight = solve(setup).weight
    except HubwrightError:
        assume(False)
    carried = sum(weight.wheel_loads.values()) + weight.axle_loads.get("coupling", 0.0)
    assert carried == pytest.approx(weight.total_mass * G, rel=1e-12)

"""Water, joint, steering, play and noise of a setup: numbers by hand, and what is missing is named."""

import dataclasses
import math
from pathlib import Path

import numpy as np
import pytest

from hubwright.errors import MissingDataError
from hubwright.results import solve
from hubwright.results.joint import joint_result
from hubwright.results.steering import steering_result
from hubwright.results.symptoms import noise_result, own_end_play, play_from_tread, play_result
from hubwright.results.water import lubrication_result, sealing_result
from hubwright.setup import load, vary
from hubwright.setup.model import Lubrication, Sealing

VEHICLES = Path(__file__).parents[2] / "content" / "vehicles"
G = 9.80665


@pytest.fixture(scope="module")
def wagon():
    return load(VEHICLES / "hill-wagon.toml")


@pytest.fixture(scope="module")
def solved(wagon):
    return solve(wagon)


@pytest.fixture(scope="module", params=["supply-van", "kit-trailer"])
def sparse(request):
    """Return a vehicle whose file says nothing of joint, water and steering."""
    return solve(load(VEHICLES / f"{request.param}.toml"))


def test_the_ford_of_the_wagon(solved):
    water = sealing_result(solved)
    assert water.depth_pressure == pytest.approx(1000 * G * 0.25)
    # 65 °C into 8 °C
    assert water.suction == pytest.approx(101325 * (65 - 8) / (65 + 273.15))
    assert water.together == pytest.approx(water.depth_pressure + water.suction)
    assert water.suction_over_depth > 1
    assert water.missing == ()


def test_without_sealing_the_keys_are_named(sparse):
    water = sealing_result(sparse)
    assert water.suction is None
    assert water.suction_over_depth is None
    assert water.missing == ("sealing.hub_temperature", "sealing.water_temperature", "sealing.depth")


def test_half_the_sealing_gives_half_the_result(wagon):
    half = dataclasses.replace(wagon, sealing=Sealing(hub_temperature=None, water_temperature=None, depth=0.5))
    water = sealing_result(solve(half))
    assert water.depth_pressure == pytest.approx(1000 * G * 0.5)
    assert (water.suction, water.together) == (None, None)
    assert water.missing == ("sealing.hub_temperature", "sealing.water_temperature")


def test_a_heavier_case_has_the_smaller_life_factor(solved):
    grease = lubrication_result(solved)
    assert grease.contamination_factor == (0.3, 0.5)
    assert grease.life_factor["brisk corner right"].high < grease.life_factor["standing"].low
    assert "drop off a rock" not in grease.life_factor


def test_without_lubrication_the_keys_are_named(sparse):
    grease = lubrication_result(sparse)
    assert grease.life_factor == {}
    assert grease.missing == ("lubrication.viscosity_ratio", "lubrication.contamination")


def test_dirt_that_one_feels_leaves_a_tenth_in_every_case(wagon):
    dirty = dataclasses.replace(wagon, lubrication=Lubrication(1.6, "very severe contamination"))
    factors = lubrication_result(solve(dirty)).life_factor
    assert len(factors) > 5
    for factor in factors.values():
        assert (factor.low, factor.high) == pytest.approx((0.1, 0.1))


def test_the_joint_of_the_wagon_by_hand(solved):
    joint = joint_result(solved)
    # 150 N·m / (0.2 × 14 mm), a quarter either way; six studs on 140 mm, friction 0.15
    assert joint.clamp.value == pytest.approx(150 / (0.2 * 0.014))
    assert (joint.clamp.low, joint.clamp.high) == pytest.approx((0.75 * joint.clamp.value, 1.25 * joint.clamp.value))
    assert joint.capacity.low == pytest.approx(6 * 0.15 * 0.070 * joint.clamp.low)
    assert joint.proof_load == pytest.approx(104e3, rel=0.0075)  # ISO 898-1, M14x1.5 of 10.9; half a unit of As too
    assert joint.engaged_turns == pytest.approx(20 / 1.5)
    assert joint.clamp_over_proof.high < 1
    assert joint.stripping_over_breaking > 1
    standing = joint.cases["standing"]
    assert standing.demand == pytest.approx((1120 / 2 - 26) * G * 0.070)
    assert standing.margin.low == pytest.approx(joint.capacity.low / standing.demand)
    assert standing.bending == pytest.approx(560 * G * 0.030)
    assert joint.missing == ()


def test_braking_asks_more_of_the_joint_than_standing(solved):
    cases = joint_result(solved).cases
    torque = abs(solved.cases["firm braking"].contact_force.x) * solved.wheel_geometry.loaded_radius
    assert cases["firm braking"].demand > torque > cases["standing"].demand


def test_a_spacer_adds_a_joint_and_leaves_the_bearing_as_a_wheel_of_less_offset_does(wagon):
    spaced = solve(vary(wagon, {"wheel.spacer": "25 mm"}))
    other = solve(vary(wagon, {"wheel.offset": "5 mm"}))
    assert joint_result(spaced).joints == 2
    assert joint_result(other).joints == 1
    for name, case in spaced.cases.items():
        assert case.bearing_moment.x == pytest.approx(other.cases[name].bearing_moment.x)
    # the wheel itself bends as its own offset says
    assert joint_result(spaced).cases["standing"].bending == pytest.approx(560 * G * 0.030)
    assert joint_result(other).cases["standing"].bending == pytest.approx(560 * G * 0.005)


def test_without_a_joint_it_is_named(sparse):
    joint = joint_result(sparse)
    assert joint.capacity is None
    assert joint.cases == {}
    assert joint.missing == ("joint", "limits.wheel_rating")


def test_a_joint_without_friction_names_it_and_keeps_the_rest(wagon):
    bare = dataclasses.replace(wagon, joint=dataclasses.replace(wagon.joint, face_friction=None, engagement=None))
    joint = joint_result(solve(bare))
    assert joint.missing == ("joint.face_friction", "joint.engagement")
    assert joint.clamp.value > 0
    assert joint.capacity is None
    assert joint.cases["standing"].margin is None
    assert joint.cases["standing"].demand > 0


def test_the_test_moment_by_hand(solved):
    radius = 3.05 * solved.wheel_geometry.free_diameter / (2 * math.pi)
    assert joint_result(solved).test_moment == pytest.approx(2.0 * 900 * G * (0.9 * radius + 0.030))


def test_the_scrub_radius_moves_with_the_load_line_and_the_track_twice(wagon, solved):
    moved = steering_result(solve(vary(wagon, {"wheel.spacer": "25 mm"})), solved)
    assert moved.load_line_change == pytest.approx(0.025)
    assert moved.scrub_radius == pytest.approx(0.033)
    assert moved.track == pytest.approx(1.65)
    kick = moved.kick_back["firm braking"]
    assert kick.moment == pytest.approx(abs(kick.force) * 0.033)
    assert kick.tie_rod_force == pytest.approx(kick.moment / 0.135)


def test_a_scrub_radius_of_its_own_stands(wagon, solved):
    own = solve(vary(wagon, {"wheel.spacer": "25 mm", "steering.scrub_radius": "30 mm"}))
    assert steering_result(own, solved).scrub_radius == pytest.approx(0.030)


def test_without_steering_the_track_is_still_there(sparse):
    steering = steering_result(sparse)
    assert steering.track > 1
    assert steering.scrub_radius is None
    assert steering.missing == ("steering.scrub_radius", "steering.steering_arm")


def test_play_there_and_back(solved):
    play = play_result(solved, 30e-6)
    assert play.tread_travel == pytest.approx(2 * solved.wheel_geometry.free_diameter / 2 * play.rocking_angle)
    assert play_from_tread(solved, play.tread_travel).end_play == pytest.approx(30e-6)


def test_the_preloads_range_gives_the_end_plays(solved):
    # 0 ± 15 µm for each of two rows
    assert own_end_play(solved) == pytest.approx((0.0, 0.0, 30e-6))


def test_noise_follows_road_speed_and_the_turning_ring(wagon, solved):
    speeds = np.array([10.0, 20.0])
    heard = noise_result(solved, speeds)
    assert heard.outer_ring[1] == pytest.approx(2 * heard.outer_ring[0])
    assert heard.wheel == pytest.approx(speeds / solved.wheel_geometry.rolling_circumference)
    outer = noise_result(solve(vary(wagon, {"bearing.turning_ring": "outer"})), speeds)
    assert np.all(outer.cage > heard.cage)


def test_rows_that_are_not_known_are_named():
    van = load(VEHICLES / "supply-van.toml")
    bare = solve(dataclasses.replace(van, bearing=dataclasses.replace(van.bearing, row_spacing=None)))
    with pytest.raises(MissingDataError, match=r"play at the tread needs 'bearing.row_spacing'"):
        play_result(bare, 30e-6)
    few = solve(dataclasses.replace(van, bearing=dataclasses.replace(van.bearing, rollers_per_row=None)))
    with pytest.raises(MissingDataError, match=r"frequencies needs 'bearing.rollers_per_row'"):
        noise_result(few, 20.0)

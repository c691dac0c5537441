"""Tipping on a slope, and three wheels under a vehicle that stands on a diagonal."""

import numpy as np
import pytest
from hypothesis import given
from mechanics_strategies import between, vehicles
from scipy.optimize import brentq

from hubwright.mechanics import load_cases
from hubwright.mechanics.load_transfer import StandingVehicle
from hubwright.mechanics.slope import (
    diagonal_support,
    downhill_lever,
    lifting_angle,
    static_stability_figure,
    tipping_angle,
)
from hubwright.mechanics.weight import MassPoint, combined, vehicle_loads

SIZES = {"wheelbase": 2.5, "front_track": 1.6, "rear_track": 1.6}
DIAGONALS = ["front_left+rear_right", "front_right+rear_left"]


def vehicle(*points, front_roll_share=0.5):
    return StandingVehicle(vehicle_loads(points, **SIZES), combined(points), front_roll_share=front_roll_share, **SIZES)


@pytest.mark.parametrize("left", [0.0, 0.06, -0.06])  # of the centre of mass
@pytest.mark.parametrize("share", [0.5, 0.62])
def test_a_wheel_lifts_at_the_slope_where_the_load_case_loses_it(share, left):
    car = vehicle(MassPoint(1800.0, behind=1.25, left=left, height=0.7), front_roll_share=share)

    def front_right(angle):
        return float(load_cases.side_slope(car, angle=angle, uphill="right").contact_force["front_right"].z)

    load = car.loads.front_right
    alone = lifting_angle(wheel_load=load, roll_share=share, track=1.6, weight=car.loads.total, height=0.7)
    assert alone == pytest.approx(brentq(front_right, 0.1, 1.0), rel=1e-9)
    # the load hangs less over the downhill side's wheels, the more of it is uphill
    assert alone <= tipping_angle(lever=0.8 - left, centre_of_mass_height=0.7) + 1e-12


def test_the_figure_is_the_tangent_of_the_tipping_slope():
    angle = tipping_angle(lever=0.8, centre_of_mass_height=0.65)
    assert np.tan(angle) == pytest.approx(static_stability_figure(track=1.6, centre_of_mass_height=0.65))


def test_at_tipping_the_weight_has_no_moment_about_the_downhill_wheels():
    car = vehicle(MassPoint(1800.0, 1.0, 0.05, 0.7))
    lever = downhill_lever(car, downhill=1)
    angle = tipping_angle(lever=lever, centre_of_mass_height=car.centre.height)
    W = car.loads.total
    # the part along the slope turns over by h, the part into it holds by the lever
    assert W * np.sin(angle) * car.centre.height == pytest.approx(W * np.cos(angle) * lever)
    assert lever == pytest.approx(0.75)


@pytest.mark.parametrize("supported", DIAGONALS)
@given(body=vehicles())
def test_three_wheels_hold_the_vehicle(supported, body):
    held = diagonal_support(body, supported=supported)
    loads, points = held.loads, body.points
    W = body.loads.total
    assert sum(loads.values()) == pytest.approx(W)
    assert sum(loads[name] * points[name].x for name in loads) == pytest.approx(-W * body.centre.behind, abs=1e-6 * W)
    assert sum(loads[name] * points[name].y for name in loads) == pytest.approx(W * body.centre.left, abs=1e-6 * W)
    others = [loads[name] for name in loads if name not in supported.split("+")]
    assert min(others) == 0
    assert held.third_share == pytest.approx(max(others) / W)


def test_the_same_by_a_general_solver():
    car = vehicle(MassPoint(1500.0, 1.05, 0.03, 0.7))
    held = diagonal_support(car, supported="front_left+rear_right")
    names = ["front_left", "rear_right", "front_right"]
    points = [car.points[name] for name in names]
    sums = np.array([[1.0] * 3, [p.x for p in points], [p.y for p in points]])
    alone = np.linalg.solve(sums, car.loads.total * np.array([1.0, -1.05, 0.03]))
    assert [held.loads[name] for name in names] == pytest.approx(list(alone))
    assert held.off_line < 0  # toward the right


@given(between(0.01, 0.6))
def test_a_centre_on_the_line_leaves_the_third_wheel_empty(share):
    car = vehicle(MassPoint(1500.0, 2.5 * share, 0.8 - 1.6 * share, 0.7))
    held = diagonal_support(car, supported="front_left+rear_right")
    assert held.third_share == pytest.approx(0.0, abs=1e-9)
    assert held.tipping_angle == pytest.approx(0.0, abs=1e-9)


def test_tilted_by_its_angle_the_weight_passes_through_the_line():
    car = vehicle(MassPoint(1500.0, 1.0, 0.0, 0.7))
    held = diagonal_support(car, supported="front_left+rear_right")
    assert 0.7 * np.tan(held.tipping_angle) == pytest.approx(abs(held.off_line))
    # distance of the point (-1.0, 0) from the line through (0, 0.8) and (-2.5, -0.8), by its equation
    assert abs(held.off_line) == pytest.approx(abs(1.6 * -1.0 - 2.5 * 0.0 + 2.5 * 0.8) / np.hypot(1.6, 2.5))

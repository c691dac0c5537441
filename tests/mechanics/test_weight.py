"""Weights of vehicles and trailers: the trade's own sums, and levers done another way."""

import numpy as np
import pytest
from hypothesis import given
from mechanics_strategies import between, gear

from hubwright.mechanics.trailer_weight import trailer_loads, trailer_mass_point
from hubwright.mechanics.weight import (
    MassPoint,
    combined,
    equal_share,
    height_from_stability_figure,
    static_stability_figure,
    vehicle_loads,
    vehicle_mass_point,
    vehicle_wheel_changes,
)

SIZES = {"wheelbase": 2.5, "front_track": 1.6, "rear_track": 1.5}
g = 9.80665


# Common practice, no source: sums that the trade does in its head.
def test_four_thousand_pounds_shared_equally_is_a_thousand_a_wheel():
    assert equal_share(total=4000.0) == 1000.0


def test_twelve_hundred_pounds_of_gear_shared_equally_is_three_hundred_a_wheel_and_thirty_percent_more():
    added = equal_share(total=1200.0)
    assert added == 300.0
    assert added / equal_share(total=4000.0) == pytest.approx(0.30)


def test_equal_share_is_the_real_one_when_the_centre_of_mass_is_in_the_middle():
    middle = vehicle_loads([MassPoint(1800.0, behind=1.25)], **SIZES)
    for load in middle.wheels.values():
        assert load == pytest.approx(equal_share(total=1800.0 * g))


def test_axle_masses_stand_as_measured():
    bare = vehicle_mass_point(front_axle_mass=1120.0, rear_axle_mass=1010.0, wheelbase=2.78, centre_of_mass_height=0.7)
    loads = vehicle_loads([bare], wheelbase=2.78, front_track=1.6, rear_track=1.6)
    assert loads.front == pytest.approx(1120.0 * g)
    assert loads.rear == pytest.approx(1010.0 * g)
    assert loads.front_left == loads.front_right


def test_gear_ahead_of_the_front_axle_lifts_the_rear():
    loads = vehicle_loads([MassPoint(60.0, behind=-0.5)], **SIZES)
    assert loads.front > 60.0 * g
    assert loads.rear < 0


def test_gear_over_one_wheel_loads_that_wheel_alone():
    loads = vehicle_loads([MassPoint(60.0, behind=2.5, left=-0.75)], **SIZES)
    assert loads.rear_right == pytest.approx(60.0 * g)
    assert [loads.front_left, loads.front_right, loads.rear_left] == pytest.approx([0, 0, 0], abs=1e-9)


def test_heavier_tires_load_each_wheel_by_their_own_mass():
    changes = vehicle_wheel_changes(mass_per_corner=9.0, free_radius=0.42, **SIZES)
    for load in vehicle_loads(changes, **SIZES).wheels.values():
        assert load == pytest.approx(9.0 * g)


@given(gear)
def test_wheel_loads_have_the_moments_of_the_masses(points):
    loads = vehicle_loads(points, **SIZES)
    # second road: moments of all weights about the front axle and the centre line
    assert loads.rear * 2.5 == pytest.approx(sum(p.mass * g * p.behind for p in points), abs=1e-6)
    left_moment = (loads.front_left - loads.front_right) * 0.8 + (loads.rear_left - loads.rear_right) * 0.75
    assert left_moment == pytest.approx(sum(p.mass * g * p.left for p in points), abs=1e-6)


def test_trailer_gear_behind_the_axle_lifts_the_coupling():
    loads = trailer_loads([MassPoint(100.0, behind=0.6)], coupling_ahead_of_axle=3.0, track=1.6)
    assert loads.coupling == pytest.approx(-20.0 * g)
    assert loads.axle == pytest.approx(120.0 * g)


def test_trailer_masses_stand_as_measured():
    bare = trailer_mass_point(axle_mass=800.0, coupling_mass=70.0, coupling_ahead_of_axle=3.2, centre_of_mass_height=1)
    loads = trailer_loads([bare], coupling_ahead_of_axle=3.2, track=1.6)
    assert (loads.axle, loads.coupling) == pytest.approx((800.0 * g, 70.0 * g))


@given(between(0.5, 2), between(0.2, 1.5))
def test_a_rigid_vehicle_tips_at_its_static_stability_figure(half_track, height):
    figure = static_stability_figure(track=2 * half_track, centre_of_mass_height=height)
    # at that many g the resultant of weight and inertia points at the outer wheels
    assert half_track * -1.0 - (-height) * figure == pytest.approx(0, abs=1e-12)
    assert height_from_stability_figure(track=2 * half_track, static_stability_figure=figure) == pytest.approx(height)


def test_a_hollow_cube_of_masses_balances_at_its_centre():
    corners = [MassPoint(7.0, x, y, z) for x in (0, 2) for y in (-1, 1) for z in (1, 3)]
    assert combined(corners) == MassPoint(56.0, 1.0, 0.0, 2.0)


def test_arrays_and_loops_agree():
    masses = np.array([10.0, 60.0, 200.0])
    place = {"behind": 0.7, "left": 0.3, "height": 1.0}
    together = vehicle_loads([MassPoint(masses, **place)], **SIZES)
    axle = trailer_loads([MassPoint(masses, **place)], coupling_ahead_of_axle=3.0, track=1.6)
    for i, mass in enumerate(masses):
        alone = vehicle_loads([MassPoint(float(mass), **place)], **SIZES)
        for name, load in together.wheels.items():
            assert load[i] == alone.wheels[name]
        assert (
            axle.left[i] == trailer_loads([MassPoint(float(mass), **place)], coupling_ahead_of_axle=3.0, track=1.6).left
        )

"""The wheel joint: against a sum over single studs, a cross product, and trivial chains."""

import numpy as np
import pytest
from hypothesis import given
from mechanics_strategies import between

from hubwright.mechanics.vector import Vector
from hubwright.mechanics.wheel_joint import (
    bending_test_moment,
    chance_of_either,
    face_bending,
    friction_capacity,
    joint_demand,
    series_margin,
)


def worst_stud(torque, shear_x, shear_z, studs, circle, start):
    """Return the largest force across at one of the studs, each drawn by itself."""
    angles = start + 2 * np.pi * np.arange(studs) / studs
    turning = torque / (studs * circle / 2)
    return np.max(np.hypot(shear_x / studs - turning * np.sin(angles), shear_z / studs + turning * np.cos(angles)))


@given(between(-5e3, 5e3), between(0, 1e4), between(0, 6.2))
def test_the_demand_is_the_worst_over_all_places_of_a_stud(push, load, start):
    contact = Vector(push, 0.0, load)
    demand = joint_demand(contact_force=contact, wheel_force=Vector(), loaded_radius=0.37, stud_circle=0.14)
    one = worst_stud(0.37 * push, push, load, 5, 0.14, start)
    assert one <= demand / (5 * 0.07) + 1e-9
    # many studs: one of them stands where torque and shear agree
    many = worst_stud(0.37 * push, push, load, 3600, 0.14, start) * 3600 * 0.07
    assert demand == pytest.approx(many, rel=1e-5, abs=1e-6)


def test_the_wheels_own_weight_does_not_go_through_the_joint():
    contact, weight = Vector(0.0, 0.0, 5000.0), Vector(0.0, 0.0, -255.0)
    demand = joint_demand(contact_force=contact, wheel_force=weight, loaded_radius=0.37, stud_circle=0.14)
    assert demand == pytest.approx(4745.0 * 0.07)


@given(between(0.1, 1.4))
def test_at_a_ledge_without_drive_the_joint_passes_no_torque(angle):
    contact = Vector(-5000.0 * np.tan(angle), 0.0, 5000.0)
    demand = joint_demand(
        contact_force=contact, wheel_force=Vector(), loaded_radius=0.37, stud_circle=0.14, ledge_angle=angle
    )
    assert demand == pytest.approx(0.07 * 5000.0 / np.cos(angle))


def test_capacity_is_the_sum_over_studs():
    one = friction_capacity(studs=1, clamp_force=40e3, face_friction=0.15, stud_circle=0.14)
    assert one == pytest.approx(40e3 * 0.15 * 0.07)
    assert friction_capacity(studs=6, clamp_force=40e3, face_friction=0.15, stud_circle=0.14) == pytest.approx(6 * one)


def test_a_chain_is_as_good_as_its_worst_link():
    assert series_margin([3.0, 1.2, 2.0]) == 1.2
    assert list(series_margin([np.array([1.0, 5.0]), np.array([2.0, 4.0])])) == [1.0, 4.0]


@given(between(0, 1))
def test_two_joints_by_their_four_cases(p):
    assert chance_of_either(chance=p) == pytest.approx(p * p + p * (1 - p) + (1 - p) * p, abs=1e-12)


@given(between(1e3, 1e4), between(0.25, 0.5), between(-0.05, 0.08), between(0, 1))
def test_the_test_moment_is_a_corner_hard_to_the_inside_at_the_rated_load(load, radius, offset, friction):
    # outer left wheel: side force toward the vehicle, contact inboard of the face by the offset
    corner = face_bending(
        contact_force=Vector(0.0, -friction * load, load), contact_point=Vector(0.0, -offset, -radius)
    )
    moment = bending_test_moment(wheel_load=load, tire_radius=radius, offset=offset, friction=friction, factor=1.0)
    assert corner == pytest.approx(abs(moment), abs=1e-9)

"""A wheel at a ledge: the triangle of forces, moments about the edge, and limits."""

import numpy as np
import pytest
from hypothesis import given
from mechanics_strategies import between

from hubwright.mechanics import load_cases
from hubwright.mechanics.ledge import climbing_friction, edge_forces, highest_ledge, ledge_angle
from hubwright.mechanics.load_transfer import StandingTrailer
from hubwright.mechanics.trailer_weight import TrailerLoads
from hubwright.mechanics.vector import total
from hubwright.mechanics.weight import MassPoint

R = 0.37


@given(between(1e3, 1e4), between(0.01, 0.36), between(-500, 3000))
def test_the_triangle_of_forces_closes(load, height, torque):
    at_edge = edge_forces(
        load=load, angle=ledge_angle(height=height, loaded_radius=R), drive_torque=torque, loaded_radius=R
    )
    left_over = total([at_edge.load, at_edge.pushing, at_edge.contact])
    assert left_over.length() <= 1e-9 * (load + at_edge.contact.length())


@given(between(1e3, 1e4), between(0.01, 0.36), between(-500, 3000))
def test_moments_about_the_edge_and_about_the_axle_balance(load, height, torque):
    angle = ledge_angle(height=height, loaded_radius=R)
    at_edge = edge_forces(load=load, angle=angle, drive_torque=torque, loaded_radius=R)
    # about the edge: the load has the half chord for lever, the push the height of the axle above the edge
    chord = np.sqrt(R**2 - (R - height) ** 2)
    assert load * chord == pytest.approx(at_edge.push * (R - height) + torque, rel=1e-9, abs=1e-6)
    # about the axle: what the drive turns the wheel with, the edge holds by its moment
    x, z = R * np.sin(angle), -R * np.cos(angle)
    turning = z * at_edge.contact.x - x * at_edge.contact.z
    assert turning == pytest.approx(-torque, rel=1e-9, abs=1e-6)


@given(between(0.01, 0.36))
def test_without_drive_it_is_the_load_case_of_a_ledge(height):
    cart = StandingTrailer(TrailerLoads(4000.0, 4000.0, 0.0), MassPoint(8000 / 9.80665), 3.0, 1.5)
    case = load_cases.ledge(cart, height=height, loaded_radius={"left": R, "right": R})
    alone = edge_forces(load=4000.0, angle=ledge_angle(height=height, loaded_radius=R), loaded_radius=R)
    assert alone.normal == pytest.approx(case.ledge["left"].normal)
    assert alone.push == pytest.approx(case.ledge["left"].push)
    assert climbing_friction(height=height, loaded_radius=R) == pytest.approx(case.ledge["left"].needed_friction)


@given(between(0.01, 0.36))
def test_a_wheel_that_climbs_by_itself_stands_on_an_upright_force(height):
    angle = ledge_angle(height=height, loaded_radius=R)
    # the torque at which nobody needs to push
    by_itself = edge_forces(load=5000.0, angle=angle, drive_torque=5000.0 * R * np.sin(angle), loaded_radius=R)
    assert by_itself.push == pytest.approx(0.0, abs=1e-9)
    assert by_itself.contact.z == pytest.approx(5000.0)
    assert by_itself.contact.x == pytest.approx(0.0, abs=1e-9)
    assert by_itself.needed_friction == pytest.approx(climbing_friction(height=height, loaded_radius=R))


@given(between(0.05, 2.0))
def test_the_highest_ledge_needs_just_that_friction(friction):
    height = highest_ledge(friction=friction, loaded_radius=R)
    assert 0 < height < R
    assert climbing_friction(height=height, loaded_radius=R) == pytest.approx(friction, rel=1e-9)


def test_no_friction_climbs_to_the_height_of_the_axle():
    assert climbing_friction(height=R, loaded_radius=R) == np.inf
    assert highest_ledge(friction=1e9, loaded_radius=R) == pytest.approx(R)

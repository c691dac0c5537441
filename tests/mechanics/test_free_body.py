"""The free body of a wheel end: it closes, its moments are cross products, and signs are what a hand finds."""

import dataclasses

import hypothesis.strategies as st
import numpy as np
import pytest
from hypothesis import given
from mechanics_strategies import between, cases, hubs, trailers, vehicles

from hubwright.mechanics.bearing_rating import effective_spread
from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.mechanics.free_body import Caliper, balanced_lateral_g, wheel_end
from hubwright.mechanics.vector import Vector
from hubwright.mechanics.wheel_geometry import load_line_offset

NAMES = [
    "contact",
    "weight_wheel",
    "weight_hub",
    "inertia_wheel",
    "inertia_hub",
    "caliper",
    "row_outboard",
    "row_inboard",
    "axial",
]
DOWN = Vector(0.0, 0.0, -STANDARD_GRAVITY)
PLAIN = {
    "side": 1,
    "gravity": DOWN,
    "acceleration": Vector(),
    "load_line_offset": 0.02,
    "loaded_radius": 0.37,
    "face_to_bearing_centre": 0.042,
    "wheel_mass": 0.0,
    "rotating_mass": 0.0,
    "effective_spread": 0.06,
}


def array(vector: Vector) -> np.ndarray:
    return np.array([vector.x, vector.y, vector.z], dtype=float)


@st.composite
def ends(draw):
    case = draw(cases(draw(st.one_of(vehicles(), trailers()))))
    wheel = draw(st.sampled_from(sorted(case.contact_force)))
    hub = draw(hubs)
    return case, wheel, hub, hub.under(case, wheel)


@given(ends())
def test_every_wheel_end_closes(end):
    *_, solved = end
    force, moment = solved.body.closure
    assert force <= 1e-9 * solved.body.largest_force
    # a moment is compared with the largest force at the arm of a metre
    assert moment <= 1e-9 * solved.body.largest_force


@given(ends())
def test_closure_is_what_numpy_sums_from_the_single_forces(end):
    *_, solved = end
    force = sum(array(single.force) for single in solved.body.forces)
    moment = sum(np.cross(array(single.point), array(single.force)) for single in solved.body.forces)
    moment = moment + sum(array(couple.moment) for couple in solved.body.couples)
    assert array(solved.body.residual_force) == pytest.approx(force, abs=1e-9)
    assert array(solved.body.residual_moment) == pytest.approx(moment, abs=1e-9)


@given(ends())
def test_bearing_moment_is_the_cross_product_of_every_applied_force(end):
    *_, solved = end
    applied = [single for single in solved.body.forces if single.kind == "applied"]
    moment = sum(np.cross(array(single.point), array(single.force)) for single in applied)
    assert array(solved.bearing_moment) == pytest.approx(moment, rel=1e-9, abs=1e-6)
    assert array(solved.bearing_force) == pytest.approx(sum(array(single.force) for single in applied), abs=1e-6)


@given(ends())
def test_the_rows_pass_on_exactly_what_the_bearing_carries(end):
    _, wheel, hub, solved = end
    arm = np.array([0.0, hub.effective_spread / 2 * (1 if wheel.endswith("left") else -1), 0.0])
    outboard, inboard = array(solved.row_load_outboard), array(solved.row_load_inboard)
    carried = array(solved.bearing_force)
    assert (outboard + inboard)[[0, 2]] == pytest.approx(carried[[0, 2]], rel=1e-9, abs=1e-6)
    moment = np.cross(arm, outboard) + np.cross(-arm, inboard)
    assert moment[[0, 2]] == pytest.approx(array(solved.bearing_moment)[[0, 2]], rel=1e-9, abs=1e-6)


@given(ends())
def test_every_single_force_is_listed_zero_or_not(end):
    case, *_, solved = end
    assert [single.name for single in solved.body.forces] == NAMES
    assert [couple.name for couple in solved.body.couples] == ["brake" if case.kind == "braking" else "shaft"]


@given(ends())
def test_a_ledge_puts_no_moment_on_the_axle(end):
    case, *_, solved = end
    if case.kind == "ledge":
        assert solved.bearing_moment.y == pytest.approx(0.0, abs=1e-9 * solved.body.largest_force)


@given(ends())
def test_the_right_wheel_is_the_left_ones_mirror_image(end):
    case, wheel, hub, here = end
    force = case.contact_force[wheel]
    turned = dataclasses.replace(
        case,
        contact_force={wheel: Vector(force.x, -force.y, force.z)},
        gravity=Vector(case.gravity.x, -case.gravity.y, case.gravity.z),
        acceleration=Vector(case.acceleration.x, -case.acceleration.y, case.acceleration.z),
    )
    there = hub.under(turned, wheel, side=-1 if wheel.endswith("left") else 1)
    for row in ("row_load_outboard", "row_load_inboard"):
        assert array(getattr(here, row)) == pytest.approx(array(getattr(there, row)), rel=1e-12, abs=1e-9)
    # a mirror keeps a force's part along it and turns a moment's part across it
    assert array(here.bearing_force) == pytest.approx(array(there.bearing_force) * [1, -1, 1], abs=1e-9)
    assert array(here.bearing_moment) == pytest.approx(array(there.bearing_moment) * [-1, 1, -1], abs=1e-9)


@given(hubs, between(0.005, 0.06), st.data())
def test_a_spacer_and_an_offset_smaller_by_its_thickness_load_the_bearing_alike(hub, thickness, data):
    # common practice, no source
    case = data.draw(cases(data.draw(vehicles())))
    lines = [
        load_line_offset(face_to_bearing_centre=0.042, spacer=thickness, offset=0.03),
        load_line_offset(face_to_bearing_centre=0.042, spacer=0.0, offset=0.03 - thickness),
    ]
    spacer, wheel = (dataclasses.replace(hub, load_line_offset=line).under(case, "front_left") for line in lines)
    assert array(spacer.bearing_force) == pytest.approx(array(wheel.bearing_force), abs=1e-9)
    assert array(spacer.bearing_moment) == pytest.approx(array(wheel.bearing_moment), abs=1e-9)


def test_a_load_line_outboard_loads_the_outboard_row_more():
    end = wheel_end(contact_force=Vector(0.0, 0.0, 5000.0), **PLAIN)
    assert end.row_load_outboard.z > end.row_load_inboard.z > 0


def test_a_load_line_through_a_pressure_centre_loads_that_row_alone():
    end = wheel_end(contact_force=Vector(0.0, 0.0, 5000.0), **PLAIN | {"load_line_offset": 0.03})
    assert end.row_load_outboard.z == pytest.approx(5000.0)
    assert end.row_load_inboard.z == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(("side", "inward"), [(1, -1.0), (-1, 1.0)])
def test_the_outer_wheels_side_force_unloads_the_outboard_row(side, inward):
    straight = wheel_end(contact_force=Vector(0.0, 0.0, 5000.0), **PLAIN | {"side": side})
    corner = wheel_end(contact_force=Vector(0.0, inward * 1500.0, 5000.0), **PLAIN | {"side": side})
    assert corner.row_load_outboard.z < straight.row_load_outboard.z
    assert corner.row_load_inboard.z > straight.row_load_inboard.z


def test_at_the_balanced_lateral_acceleration_both_rows_carry_alike():
    n = balanced_lateral_g(load_line_offset=0.02, loaded_radius=0.37)
    end = wheel_end(contact_force=Vector(0.0, -n * 5000.0, 5000.0), **PLAIN)
    assert end.row_load_outboard.z == pytest.approx(end.row_load_inboard.z)


@pytest.mark.parametrize("side", [1, -1])
@given(position=between(-3.1, 3.1), disc=between(-0.04, 0.04), friction=between(0, 5000))
def test_the_caliper_does_what_its_friction_at_the_pads_does(side, position, disc, friction):
    caliper = Caliper(effective_radius=0.12, position=position, disc_to_bearing_centre=disc)
    contact = Vector(-friction, 0.0, 5000.0)
    end = wheel_end(contact_force=contact, caliper=caliper, **PLAIN | {"side": side})
    # second road: the friction where it is, at the pads, and against the disc's motion there
    pads = np.array([0.12 * np.sin(position), side * disc, 0.12 * np.cos(position)])
    turning = np.cross([0.0, 1.0, 0.0], pads) / 0.12  # a wheel rolling forward turns about +y
    at_pads = -turning * friction * 0.37 / 0.12
    assert array(end.body.force("caliper").force) == pytest.approx(at_pads, abs=1e-9)
    moment = np.cross([0.0, side * 0.02, -0.37], array(contact)) + np.cross(pads, at_pads)
    assert moment[1] == pytest.approx(0.0, abs=1e-6)  # the brake holds what the road turns
    assert array(end.bearing_moment)[[0, 2]] == pytest.approx(moment[[0, 2]], abs=1e-6)


def test_a_caliper_ahead_of_the_axle_adds_to_the_vertical_load_and_one_behind_relieves_it():
    contact = Vector(-2000.0, 0.0, 5000.0)
    ahead, behind = (
        wheel_end(contact_force=contact, caliper=Caliper(0.12, place, 0.0), **PLAIN) for place in (1.57, -1.57)
    )
    assert ahead.bearing_force.z > 5000.0 > behind.bearing_force.z


def test_the_turning_parts_own_weight_is_not_carried_by_the_bearing():
    end = wheel_end(contact_force=Vector(0.0, 0.0, 5000.0), **PLAIN | {"wheel_mass": 30.0, "rotating_mass": 14.0})
    assert end.bearing_force.z == pytest.approx(5000.0 - 44.0 * STANDARD_GRAVITY)


def test_pressure_centres_lie_outside_the_rows_where_the_contact_lines_meet_the_axis():
    # second road: intersect the line through the ball centre with the axis
    row, radius, angle = 0.012, 0.031, np.radians(35.0)
    meets_axis = row + radius * np.sin(angle) / np.cos(angle)
    spread = effective_spread(row_spacing=0.024, pitch_diameter=0.062, contact_angle=angle)
    assert spread == pytest.approx(2 * meets_axis)


def test_arrays_and_loops_agree():
    loads, lines = np.array([4000.0, 6000.0, 9000.0]), np.array([-0.03, 0.01, 0.05])
    sizes = PLAIN | {"wheel_mass": 30.0, "rotating_mass": 14.0}
    together = wheel_end(contact_force=Vector(-0.3 * loads, 0.2 * loads, loads), **sizes | {"load_line_offset": lines})
    assert np.all(together.body.closure[0] < 1e-9 * together.body.largest_force)
    for i, (load, line) in enumerate(zip(loads, lines, strict=True)):
        alone = wheel_end(
            contact_force=Vector(-0.3 * load, 0.2 * load, load), **sizes | {"load_line_offset": float(line)}
        )
        assert together.row_radial_load_outboard[i] == pytest.approx(alone.row_radial_load_outboard, rel=1e-12)
        assert together.row_radial_load_inboard[i] == pytest.approx(alone.row_radial_load_inboard, rel=1e-12)

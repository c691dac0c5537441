"""The whole vehicle must stand on the forces that each case gives its wheels."""

import hypothesis.strategies as st
import pytest
from hypothesis import given
from mechanics_strategies import cases, loaded_radii, trailers, vehicles

from hubwright.mechanics import load_cases
from hubwright.mechanics.load_transfer import Standing, StandingTrailer, StandingVehicle
from hubwright.mechanics.trailer_weight import trailer_loads
from hubwright.mechanics.vehicle_body import equations_left_out, vehicle_body
from hubwright.mechanics.weight import MassPoint, combined, vehicle_loads

ROUNDING = 1e-9  # of the largest force; a dozen sums of doubles


def standing_on(data: st.DataObject) -> Standing:
    return data.draw(st.one_of(vehicles(), trailers()))


@given(st.data())
def test_the_vehicle_closes_in_every_case_but_for_the_equations_it_says_it_leaves_out(data):
    body = standing_on(data)
    case = data.draw(cases(body))
    at_ledge = data.draw(st.sampled_from(sorted(body.loads.wheels)))
    whole = vehicle_body(case, body, ledge_wheel=at_ledge, loaded_radius=loaded_radii(body))
    force, moment = whole.residual_force, whole.residual_moment
    left_over = {
        "force_x": force.x,
        "force_y": force.y,
        "force_z": force.z,
        "roll": moment.x,
        "pitch": moment.y,
        "yaw": moment.z,
    }
    for equation in set(left_over) - set(equations_left_out(case)):
        assert abs(left_over[equation]) <= ROUNDING * whole.largest_force, equation


@given(st.one_of(vehicles(), trailers()))
def test_standing_loads_sum_to_the_weight(body):
    assert body.loads.total == pytest.approx(body.centre.mass * 9.80665, rel=1e-12)


@pytest.mark.parametrize("braking_g", [0.0, 0.5])
def test_a_trailer_with_a_box_beside_its_draw_bar_closes(braking_g):
    points = [MassPoint(900.0, behind=-0.2, height=0.8), MassPoint(80.0, behind=-2.0, left=0.6, height=0.7)]
    loads = trailer_loads(points, coupling_ahead_of_axle=3.0, track=1.6)
    body = StandingTrailer(loads, combined(points), coupling_ahead_of_axle=3.0, track=1.6)
    force, moment = vehicle_body(load_cases.braking(body, braking_g=braking_g), body).closure
    assert force == pytest.approx(0.0, abs=1e-9)
    assert moment == pytest.approx(0.0, abs=1e-9)


@given(vehicles())
def test_two_wheel_leaves_a_roll_only_where_axles_differ(body):
    case = load_cases.two_wheel(body, supported="front_left+rear_right")
    roll = vehicle_body(case, body).residual_moment.x
    # lever of each axle's whole load at one wheel, and of the weight where it is
    expected = (
        body.loads.front * body.front_track / 2
        - body.loads.rear * body.rear_track / 2
        - body.centre.mass * 9.80665 * body.centre.left
    )
    assert roll == pytest.approx(expected, abs=1e-6)


def test_a_ledge_needs_to_know_which_wheel_is_at_it():
    mass = MassPoint(1800.0, behind=1.0, height=0.6)
    sizes = {"wheelbase": 2.5, "front_track": 1.5, "rear_track": 1.5}
    body = StandingVehicle(vehicle_loads([mass], **sizes), mass, front_roll_share=0.5, **sizes)
    case = load_cases.ledge(body, height=0.05, loaded_radius=loaded_radii(body))
    with pytest.raises(ValueError, match="needs ledge_wheel"):
        vehicle_body(case, body)

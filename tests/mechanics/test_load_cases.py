"""Contact forces of every case: signs, sizes, what cannot stand, mirror images, arrays."""

import hypothesis.strategies as st
import numpy as np
import pytest
from hypothesis import given, settings
from mechanics_strategies import between, cases, loaded_radii, trailers, vehicles

from hubwright.mechanics import load_cases
from hubwright.mechanics.load_transfer import StandingTrailer, StandingVehicle
from hubwright.mechanics.trailer_weight import trailer_loads
from hubwright.mechanics.weight import MassPoint, combined, vehicle_loads

SIZES = {"wheelbase": 2.5, "front_track": 1.6, "rear_track": 1.6}


def vehicle(*points: MassPoint, front_roll_share=0.5) -> StandingVehicle:
    points = points or (MassPoint(1800.0, behind=1.25, height=0.64),)
    return StandingVehicle(vehicle_loads(points, **SIZES), combined(points), front_roll_share=front_roll_share, **SIZES)


def vertical(case):
    return {name: force.z for name, force in case.contact_force.items()}


@given(vehicles())
def test_vertical_loads_of_every_level_case_sum_to_the_weight(body):
    level = [
        load_cases.standing(body),
        load_cases.braking(body, braking_g=0.5),
        load_cases.driving(body, driving_g=0.3, driven="all"),
        load_cases.cornering(body, lateral_g=0.3, toward="left"),
        load_cases.two_wheel(body, supported="front_right+rear_left"),
        load_cases.ledge(body, height=0.1, loaded_radius=loaded_radii(body)),
    ]
    for case in level:
        assert sum(vertical(case).values()) == pytest.approx(body.loads.total, rel=1e-12)


# Common practice, no source.
def test_two_diagonal_wheels_carry_their_axles():
    body = vehicle(MassPoint(1800.0, behind=1.0, height=0.6))
    case = load_cases.two_wheel(body, supported="front_right+rear_left")
    assert vertical(case) == {
        "front_left": 0.0,
        "front_right": body.loads.front,
        "rear_left": body.loads.rear,
        "rear_right": 0.0,
    }


def test_a_corner_loads_the_outer_wheels_and_pushes_toward_the_inside():
    case = load_cases.cornering(vehicle(), lateral_g=0.3, toward="right")
    standing = 1800.0 * 9.80665 / 4
    assert case.contact_force["front_left"].z > standing > case.contact_force["front_right"].z
    assert case.contact_force["front_left"].y < 0
    assert case.acceleration.y < 0


def test_a_slope_loads_the_downhill_wheels_and_holds_toward_uphill():
    case = load_cases.side_slope(vehicle(), angle=0.2, uphill="right")
    assert case.contact_force["rear_left"].z > case.contact_force["rear_right"].z
    assert case.contact_force["rear_left"].y < 0
    assert case.gravity.y > 0
    assert case.gravity.length() == pytest.approx(9.80665)
    assert case.acceleration.length() == 0


def test_a_slope_and_a_corner_with_the_tilt_of_gravity_are_one_thing():
    # a tilted frame of reference: cornering with n = tan φ, all forces times cos φ
    angle = 0.25
    slope = load_cases.side_slope(vehicle(), angle=angle, uphill="left")
    corner = load_cases.cornering(vehicle(), lateral_g=np.tan(angle), toward="left")
    for name, force in slope.contact_force.items():
        assert force.y == pytest.approx(corner.contact_force[name].y * np.cos(angle))
        assert force.z == pytest.approx(corner.contact_force[name].z * np.cos(angle))


def test_roll_share_decides_which_axle_takes_the_transfer():
    case = load_cases.cornering(vehicle(front_roll_share=1.0), lateral_g=0.3, toward="left")
    assert case.contact_force["rear_left"].z == pytest.approx(case.contact_force["rear_right"].z)
    assert case.contact_force["front_left"].z < case.contact_force["front_right"].z


@pytest.mark.parametrize("driven", ["front", "rear"])
def test_only_driven_wheels_push(driven):
    case = load_cases.driving(vehicle(), driving_g=0.2, driven=driven)
    for name, force in case.contact_force.items():
        assert (force.x > 0) == name.startswith(driven)
    assert sum(force.x for force in case.contact_force.values()) == pytest.approx(1800.0 * 9.80665 * 0.2)


@given(between(0.001, 0.36))
def test_the_force_triangle_of_a_ledge_closes_and_points_at_the_wheel_centre(height):
    body = vehicle()
    case = load_cases.ledge(body, height=height, loaded_radius=loaded_radii(body))
    force, edge = case.contact_force["front_left"], case.ledge["front_left"]
    assert np.hypot(force.x, force.z) == pytest.approx(edge.normal)
    assert -force.x == pytest.approx(edge.push)
    # from the edge to the centre: back by the half chord, up by what is left of the radius
    chord = np.sqrt(0.37**2 - (0.37 - height) ** 2)
    assert force.x / force.z == pytest.approx(-chord / (0.37 - height))
    assert edge.needed_friction == pytest.approx(chord / (0.37 - height))


@pytest.mark.parametrize(
    ("case", "reason"),
    [
        (load_cases.cornering(vehicle(), lateral_g=1.3, toward="left"), "the front left wheel lifts off"),
        (load_cases.braking(vehicle(MassPoint(1800.0, 0.4, 0.0, 1.2)), braking_g=0.8), "the rear left wheel lifts off"),
        (load_cases.side_slope(vehicle(), angle=0.91, uphill="left"), "the slope is past tipping"),
        (
            load_cases.ledge(vehicle(), height=0.37, loaded_radius=loaded_radii(vehicle())),
            r"the ledge is as high as the axle \(front left wheel\)",
        ),
        (load_cases.standing(vehicle(MassPoint(1000.0, -0.1))), "the rear left wheel lifts off"),
    ],
)
def test_what_cannot_stand_says_why(case, reason):
    assert not case.stands
    with pytest.raises(RuntimeError, match=reason):
        raise RuntimeError(case.reason)


def test_a_rigid_vehicle_tips_on_the_slope_of_its_stability_figure():
    # symmetric, so that both axles lift together: tan φ = t/(2h) = 1.25
    tipping = np.arctan(1.6 / (2 * 0.64))
    assert load_cases.side_slope(vehicle(), angle=tipping - 1e-6, uphill="left").stands
    assert not load_cases.side_slope(vehicle(), angle=tipping + 1e-6, uphill="left").stands


def test_a_ledge_that_cannot_be_climbed_gives_no_number():
    case = load_cases.ledge(vehicle(), height=0.5, loaded_radius=loaded_radii(vehicle()))
    assert np.isnan(case.ledge["front_left"].push)


def test_arrays_say_element_by_element_what_stands():
    case = load_cases.cornering(vehicle(), lateral_g=np.array([0.2, 1.3, 0.4]), toward="left")
    assert list(case.stands) == [True, False, True]


def mirrored(body):
    """Return the same body with left and right exchanged."""
    centre = MassPoint(body.centre.mass, body.centre.behind, -body.centre.left, body.centre.height)
    loads = body.loads
    if isinstance(body, StandingVehicle):
        turned = type(loads)(loads.front_right, loads.front_left, loads.rear_right, loads.rear_left)
        return StandingVehicle(turned, centre, body.wheelbase, body.front_track, body.rear_track, body.front_roll_share)
    turned = type(loads)(loads.right, loads.left, loads.coupling, -loads.coupling_roll)
    return StandingTrailer(turned, centre, body.coupling_ahead_of_axle, body.track)


@given(st.one_of(vehicles(), trailers()), between(0, 0.6))
def test_a_mirrored_vehicle_turning_the_other_way_has_mirrored_forces(body, amount):
    pairs = [
        (
            load_cases.cornering(body, lateral_g=amount, toward="left"),
            load_cases.cornering(mirrored(body), lateral_g=amount, toward="right"),
        ),
        (
            load_cases.side_slope(body, angle=amount, uphill="left"),
            load_cases.side_slope(mirrored(body), angle=amount, uphill="right"),
        ),
    ]
    for here, there in pairs:
        for name, force in here.contact_force.items():
            other = name.replace("left", "?").replace("right", "left").replace("?", "right")
            image = there.contact_force[other]
            assert (force.x, force.y, force.z) == pytest.approx((image.x, -image.y, image.z), abs=1e-9)


@given(st.data(), between(0.1, 10))
def test_scaling_all_masses_scales_all_forces(data, factor):
    body = data.draw(vehicles())
    heavier = StandingVehicle(
        type(body.loads)(*(load * factor for load in body.loads.wheels.values())),
        MassPoint(body.centre.mass * factor, body.centre.behind, body.centre.left, body.centre.height),
        body.wheelbase,
        body.front_track,
        body.rear_track,
        body.front_roll_share,
    )
    for make in (
        lambda b: load_cases.braking(b, braking_g=0.6),
        lambda b: load_cases.driving(b, driving_g=0.3, driven="rear"),
        lambda b: load_cases.cornering(b, lateral_g=0.4, toward="left"),
        lambda b: load_cases.side_slope(b, angle=0.3, uphill="left"),
        lambda b: load_cases.two_wheel(b, supported="front_left+rear_right"),
        lambda b: load_cases.ledge(b, height=0.1, loaded_radius=loaded_radii(b)),
    ):
        light, heavy = make(body), make(heavier)
        for name, force in light.contact_force.items():
            scaled = heavy.contact_force[name]
            assert (scaled.x, scaled.y, scaled.z) == pytest.approx(
                (force.x * factor, force.y * factor, force.z * factor), rel=1e-9, abs=1e-6
            )


@settings(max_examples=25)
@given(st.data())
def test_arrays_and_loops_agree(data):
    single = [data.draw(vehicles()) for _ in range(3)]
    stack = StandingVehicle(
        type(single[0].loads)(*(np.array(v) for v in zip(*(b.loads.wheels.values() for b in single), strict=True))),
        MassPoint(
            *(np.array([getattr(b.centre, key) for b in single]) for key in ("mass", "behind", "left", "height"))
        ),
        *(
            np.array([getattr(b, key) for b in single])
            for key in ("wheelbase", "front_track", "rear_track", "front_roll_share")
        ),
    )
    for make in (
        lambda b: load_cases.standing(b),
        lambda b: load_cases.braking(b, braking_g=0.6),
        lambda b: load_cases.driving(b, driving_g=0.3, driven="rear"),
        lambda b: load_cases.driving(b, driving_g=0.3, driven="all"),
        lambda b: load_cases.cornering(b, lateral_g=0.4, toward="left"),
        lambda b: load_cases.side_slope(b, angle=0.3, uphill="left"),
        lambda b: load_cases.two_wheel(b, supported="front_left+rear_right"),
        lambda b: load_cases.ledge(b, height=0.1, loaded_radius=loaded_radii(b)),
    ):
        together = make(stack)
        for i, body in enumerate(single):
            alone = make(body)
            for name, force in alone.contact_force.items():
                many = together.contact_force[name]
                here = tuple(np.broadcast_to(part, (3,))[i] for part in (many.x, many.y, many.z))
                assert here == pytest.approx((force.x, force.y, force.z), rel=1e-12, abs=1e-9)
            assert np.broadcast_to(together.stands, (3,))[i] == alone.stands


@given(trailers(), between(0, 0.4))
def test_a_trailers_coupling_takes_pitch_but_no_roll(body, amount):
    corner = load_cases.cornering(body, lateral_g=amount, toward="left")
    assert corner.coupling_force.z == pytest.approx(body.loads.coupling)
    brake = load_cases.braking(body, braking_g=amount)
    moved = body.centre.mass * 9.80665 * amount * body.centre.height / body.coupling_ahead_of_axle
    assert brake.coupling_force.z == pytest.approx(body.loads.coupling + moved)


def test_a_nose_light_trailer_stands():
    points = (MassPoint(900.0, behind=0.1, height=0.8),)
    loads = trailer_loads(points, coupling_ahead_of_axle=3.0, track=1.6)
    case = load_cases.standing(StandingTrailer(loads, combined(points), 3.0, 1.6))
    assert case.coupling_force.z < 0
    assert case.stands


@given(st.data())
def test_every_case_stands_or_names_a_reason(data):
    case = data.draw(cases(data.draw(st.one_of(vehicles(), trailers()))))
    assert bool(case.stands) == (case.reason == "")

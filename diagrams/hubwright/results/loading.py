"""A setup on the road, as the mechanics give it: numbers, or arrays where the setup's values are drawn or varied.

`solve` turns these into plain results; `draws` and `comparison` keep the arrays. SI units.
"""

from collections.abc import Mapping
from typing import Literal

from hubwright.errors import CaseError
from hubwright.mechanics import load_cases
from hubwright.mechanics.constants import Value
from hubwright.mechanics.contact_forces import LoadCase
from hubwright.mechanics.free_body import Caliper, WheelEnd, wheel_end
from hubwright.mechanics.load_transfer import Standing, StandingVehicle
from hubwright.mechanics.tire_geometry import loaded_radius, rolling_circumference, usual_loaded_radius
from hubwright.mechanics.wheel_geometry import backspacing, load_line_offset
from hubwright.results.model import Wheel
from hubwright.setup.model import Braking, Case, Cornering, Driving, Ledge, Setup, SideSlope, TwoWheel
from hubwright.setup.model import Standing as AtRest


def side_of(wheel: Wheel) -> Literal[1, -1]:
    """Return +1 for a left wheel and −1 for a right one: the sign of outboard on the y axis."""
    return 1 if wheel.endswith("left") else -1


def loaded_radius_of(setup: Setup, standing_load: Value) -> Value:
    """Return the loaded radius of a wheel: given, or from its stiffness, or the usual one."""
    tire = setup.tire
    free_radius = tire.free_diameter / 2
    if tire.loaded_radius is not None:
        return tire.loaded_radius
    if tire.vertical_stiffness is not None:
        return loaded_radius(
            free_radius=free_radius, standing_load=standing_load, vertical_stiffness=tire.vertical_stiffness
        )
    return usual_loaded_radius(free_radius=free_radius)


def geometry_values(setup: Setup, radius: Value) -> dict[str, Value]:
    """Return the sizes and places of tire and wheel [m], by the names of `WheelGeometry`."""
    tire, wheel = setup.tire, setup.wheel
    return {
        "free_diameter": tire.free_diameter,
        "section_width": tire.section_width,
        "loaded_radius": radius,
        "load_line_offset": load_line_offset(
            face_to_bearing_centre=setup.hub.face_to_bearing_centre, spacer=wheel.spacer, offset=wheel.offset
        ),
        "backspacing": backspacing(rim_width=wheel.rim_width, offset=wheel.offset),
        "section_height": tire.section_height,
        "rim_diameter": tire.rim_diameter,
        "rim_width": wheel.rim_width,
        "offset": wheel.offset,
        "rolling_circumference": rolling_circumference(free_diameter=tire.free_diameter),
        "tire_deflection": tire.free_diameter / 2 - radius,
    }


def load_case(case: Case, body: Standing, radii: Mapping[str, Value]) -> LoadCase:
    """Return what the road does to every wheel in a quasi-static case."""
    if isinstance(case, AtRest):
        return load_cases.standing(body)
    if isinstance(case, Braking):
        return load_cases.braking(body, braking_g=case.braking_g)
    if isinstance(case, Cornering):
        return load_cases.cornering(body, lateral_g=case.lateral_g, toward=case.toward)
    if isinstance(case, SideSlope):
        return load_cases.side_slope(body, angle=case.angle, uphill=case.uphill)
    if isinstance(case, Ledge):
        return load_cases.ledge(body, height=case.height, loaded_radius=radii)
    if isinstance(body, StandingVehicle):
        if isinstance(case, Driving):
            return load_cases.driving(body, driving_g=case.driving_g, driven=case.driven)
        if isinstance(case, TwoWheel):
            return load_cases.two_wheel(body, supported=case.supported)
    raise CaseError(case=case.name, reason=f"a trailer has no case of the kind '{case.kind}'")


def wheel_end_of(
    setup: Setup, case: Case, loads: LoadCase, wheel: Wheel, *, geometry: Mapping[str, Value], spread: Value | None
) -> WheelEnd:
    """Return the free body of a wheel end in a case; rows of an unknown spread are taken a metre apart."""
    edge = loads.ledge.get(wheel)
    caliper = None
    if isinstance(case, Braking) and setup.brake is not None:
        brake = setup.brake
        caliper = Caliper(brake.effective_radius, brake.caliper_position, brake.disc_to_bearing_centre)
    return wheel_end(
        side=side_of(wheel),
        contact_force=loads.contact_force[wheel],
        gravity=loads.gravity,
        acceleration=loads.acceleration,
        load_line_offset=geometry["load_line_offset"],
        loaded_radius=geometry["loaded_radius"],
        face_to_bearing_centre=setup.hub.face_to_bearing_centre,
        wheel_mass=setup.tire.mass + setup.wheel.mass,
        rotating_mass=setup.hub.rotating_mass,
        effective_spread=1.0 if spread is None else spread,
        ledge_angle=0.0 if edge is None else edge.angle,
        caliper=caliper,
    )

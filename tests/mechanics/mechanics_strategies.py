"""Random vehicles, trailers, wheel ends and cases for the property tests of the mechanics."""

from __future__ import annotations

from dataclasses import dataclass

import hypothesis.strategies as st

from hubwright.mechanics import load_cases
from hubwright.mechanics.contact_forces import LoadCase
from hubwright.mechanics.free_body import Caliper, WheelEnd, wheel_end
from hubwright.mechanics.load_transfer import Standing, StandingTrailer, StandingVehicle
from hubwright.mechanics.trailer_weight import trailer_loads, trailer_mass_point, trailer_wheel_changes
from hubwright.mechanics.weight import MassPoint, combined, vehicle_loads, vehicle_mass_point, vehicle_wheel_changes


def between(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False, allow_subnormal=False).map(lambda value: round(value, 6))


gear = st.lists(
    st.builds(MassPoint, mass=between(1, 300), behind=between(-1, 4), left=between(-0.8, 0.8), height=between(0.3, 2)),
    max_size=4,
)


@st.composite
def vehicles(draw: st.DrawFn) -> StandingVehicle:
    sizes = {
        "wheelbase": draw(between(2.0, 4.0)),
        "front_track": draw(between(1.2, 2.0)),
        "rear_track": draw(between(1.2, 2.0)),
    }
    bare = vehicle_mass_point(
        front_axle_mass=draw(between(500, 2000)),
        rear_axle_mass=draw(between(500, 2000)),
        wheelbase=sizes["wheelbase"],
        centre_of_mass_height=draw(between(0.4, 1.2)),
    )
    changes = vehicle_wheel_changes(
        mass_per_corner=draw(between(-10, 25)), free_radius=draw(between(0.3, 0.5)), **sizes
    )
    points = [bare, *draw(gear), *changes]
    return StandingVehicle(
        loads=vehicle_loads(points, **sizes),
        centre=combined(points),
        front_roll_share=draw(between(0.4, 0.7)),
        **sizes,
    )


@st.composite
def trailers(draw: st.DrawFn) -> StandingTrailer:
    ahead, track = draw(between(2.0, 5.0)), draw(between(1.2, 2.2))
    bare = trailer_mass_point(
        axle_mass=draw(between(300, 2000)),
        coupling_mass=draw(between(10, 150)),
        coupling_ahead_of_axle=ahead,
        centre_of_mass_height=draw(between(0.4, 1.5)),
    )
    changes = trailer_wheel_changes(
        mass_per_corner=draw(between(-10, 25)), track=track, free_radius=draw(between(0.3, 0.5))
    )
    points = [bare, *draw(gear), *changes]
    return StandingTrailer(
        loads=trailer_loads(points, coupling_ahead_of_axle=ahead, track=track),
        centre=combined(points),
        coupling_ahead_of_axle=ahead,
        track=track,
    )


def loaded_radii(body: Standing, radius: float = 0.37) -> dict[str, float]:
    return dict.fromkeys(body.loads.wheels, radius)


@st.composite
def cases(draw: st.DrawFn, body: Standing) -> LoadCase:
    side = draw(st.sampled_from(["left", "right"]))
    kinds = ["standing", "braking", "cornering", "side_slope", "ledge"]
    if isinstance(body, StandingVehicle):
        kinds += ["driving", "two_wheel"]
    match draw(st.sampled_from(kinds)):
        case "standing":
            return load_cases.standing(body)
        case "braking":
            return load_cases.braking(body, braking_g=draw(between(0, 0.9)))
        case "cornering":
            return load_cases.cornering(body, lateral_g=draw(between(0, 0.8)), toward=side)
        case "side_slope":
            return load_cases.side_slope(body, angle=draw(between(0, 0.6)), uphill=side)
        case "ledge":
            return load_cases.ledge(body, height=draw(between(0, 0.3)), loaded_radius=loaded_radii(body))
        case "driving":
            driven = draw(st.sampled_from(["front", "rear", "all"]))
            return load_cases.driving(body, driving_g=draw(between(0, 0.6)), driven=driven)
        case _:
            supported = draw(st.sampled_from(["front_left+rear_right", "front_right+rear_left"]))
            return load_cases.two_wheel(body, supported=supported)


@dataclass(frozen=True)
class Hub:
    """Everything that a wheel end needs besides the case."""

    load_line_offset: float
    loaded_radius: float
    face_to_bearing_centre: float
    wheel_mass: float
    rotating_mass: float
    effective_spread: float
    caliper: Caliper

    def under(self, case: LoadCase, wheel: str, side: int | None = None) -> WheelEnd:
        ledge = case.ledge.get(wheel)
        return wheel_end(
            side=side or (1 if wheel.endswith("left") else -1),
            contact_force=case.contact_force[wheel],
            gravity=case.gravity,
            acceleration=case.acceleration,
            load_line_offset=self.load_line_offset,
            loaded_radius=self.loaded_radius,
            face_to_bearing_centre=self.face_to_bearing_centre,
            wheel_mass=self.wheel_mass,
            rotating_mass=self.rotating_mass,
            effective_spread=self.effective_spread,
            ledge_angle=ledge.angle if ledge else 0.0,
            caliper=self.caliper if case.kind == "braking" else None,
        )


hubs = st.builds(
    Hub,
    load_line_offset=between(-0.08, 0.12),  # inboard load lines included
    loaded_radius=st.just(0.37),
    face_to_bearing_centre=between(0.0, 0.08),
    wheel_mass=between(10, 70),
    rotating_mass=between(0, 30),
    effective_spread=between(0.03, 0.12),
    caliper=st.builds(
        Caliper,
        effective_radius=between(0.08, 0.18),
        position=between(-3.1, 3.1),
        disc_to_bearing_centre=between(-0.05, 0.05),
    ),
)

"""A setup on its wheels: all masses at their places, and what stands on every axle and wheel."""

from hubwright.errors import CaseError
from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.mechanics.load_transfer import Standing, StandingTrailer, StandingVehicle
from hubwright.mechanics.trailer_weight import trailer_loads, trailer_mass_point, trailer_wheel_changes
from hubwright.mechanics.weight import (
    MassPoint,
    combined,
    equal_share,
    vehicle_loads,
    vehicle_mass_point,
    vehicle_wheel_changes,
)
from hubwright.results.model import Weight
from hubwright.setup.model import Setup, TrailerChassis


def standing_body(setup: Setup) -> Standing:
    """Return the vehicle or trailer with its gear and wheels, standing on level ground."""
    chassis = setup.chassis
    gear = [MassPoint(item.mass, item.behind, item.left_of_centre, item.above_ground) for item in setup.gear]
    free_radius = setup.tire.free_diameter / 2
    change = setup.corner_mass_change
    if isinstance(chassis, TrailerChassis):
        own = trailer_mass_point(
            axle_mass=chassis.axle_mass,
            coupling_mass=chassis.coupling_mass,
            coupling_ahead_of_axle=chassis.coupling_ahead_of_axle,
            centre_of_mass_height=chassis.centre_of_mass_height,
        )
        wheels = trailer_wheel_changes(mass_per_corner=change, track=chassis.track, free_radius=free_radius)
        points = [own, *gear, *wheels]
        ahead, track = chassis.coupling_ahead_of_axle, chassis.track
        trailer = trailer_loads(points, coupling_ahead_of_axle=ahead, track=track)
        return StandingTrailer(trailer, combined(points), ahead, track)
    own = vehicle_mass_point(
        front_axle_mass=chassis.front_axle_mass,
        rear_axle_mass=chassis.rear_axle_mass,
        wheelbase=chassis.wheelbase,
        centre_of_mass_height=chassis.centre_of_mass_height,
    )
    corners = vehicle_wheel_changes(
        mass_per_corner=change,
        wheelbase=chassis.wheelbase,
        front_track=chassis.front_track,
        rear_track=chassis.rear_track,
        free_radius=free_radius,
    )
    points = [own, *gear, *corners]
    loads = vehicle_loads(
        points, wheelbase=chassis.wheelbase, front_track=chassis.front_track, rear_track=chassis.rear_track
    )
    return StandingVehicle(
        loads, combined(points), chassis.wheelbase, chassis.front_track, chassis.rear_track, chassis.front_roll_share
    )


def weigh(setup: Setup) -> Weight:
    """Return what stands on every axle and wheel; a wheel that would have to be held down is an error."""
    body = standing_body(setup)
    chassis = setup.chassis
    wheels = {name: float(load) for name, load in body.loads.wheels.items()}
    lifted = [name.replace("_", " ") for name, load in wheels.items() if load <= 0]
    if lifted:
        raise CaseError(
            case="standing", reason=f"the {' and the '.join(lifted)} wheel would lift: move or reduce the gear"
        )
    if isinstance(body, StandingTrailer) and isinstance(chassis, TrailerChassis):
        axles = {"axle": float(body.loads.axle), "coupling": float(body.loads.coupling)}
        bare = {"axle": chassis.axle_mass * STANDARD_GRAVITY, "coupling": chassis.coupling_mass * STANDARD_GRAVITY}
    elif isinstance(body, StandingVehicle) and not isinstance(chassis, TrailerChassis):
        axles = {"front": float(body.loads.front), "rear": float(body.loads.rear)}
        bare = {
            "front": chassis.front_axle_mass * STANDARD_GRAVITY,
            "rear": chassis.rear_axle_mass * STANDARD_GRAVITY,
        }
    total = float(body.loads.total)
    return Weight(
        axle_loads=axles,
        wheel_loads=wheels,
        bare_axle_loads=bare,
        total_mass=float(body.centre.mass),
        centre_of_mass_height=float(body.centre.height),
        centre_of_mass_behind=float(body.centre.behind),
        equal_share=float(equal_share(total=total, wheels=len(wheels))),
    )

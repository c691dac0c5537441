"""What a setup's load line does to the steering, beside the setup it came from. SI units."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from hubwright.mechanics.steering import kick_back_moment, moved_scrub_radius, moved_track, tie_rod_force
from hubwright.results.model import Results
from hubwright.setup.model import TrailerChassis


@dataclass(frozen=True)
class KickBack:
    """A force along the road on this wheel alone [N], its moment about the steering axis [N·m], the tie rod's [N]."""

    force: float
    moment: float
    tie_rod_force: float | None


@dataclass(frozen=True)
class SteeringResult:
    """Track of the wheel's axle and scrub radius [m]; kick-back by case where the force on one wheel is one-sided.

    Parts are None or empty where `missing` names what the file does not say.
    """

    load_line_change: float
    track: float
    scrub_radius: float | None
    kick_back: Mapping[str, KickBack] = field(default_factory=dict)
    missing: tuple[str, ...] = ()


def steering_result(results: Results, base: Results | None = None) -> SteeringResult:
    """Return track, scrub radius and kick-back of a setup; `base` is the setup whose steering lengths were taken.

    Where the setup states a scrub radius other than its base's, that is taken as it stands.
    """
    steering, chassis = results.setup.steering, results.setup.chassis
    change = 0.0
    if base is not None:
        change = results.wheel_geometry.load_line_offset - base.wheel_geometry.load_line_offset
    if isinstance(chassis, TrailerChassis):
        own_track = chassis.track
    else:
        own_track = chassis.rear_track if results.wheel.startswith("rear") else chassis.front_track
    track = float(moved_track(track=own_track, load_line_change=change))
    scrub = None if steering is None else steering.scrub_radius
    arm = None if steering is None else steering.steering_arm
    missing = tuple(
        key for key, value in (("steering.scrub_radius", scrub), ("steering.steering_arm", arm)) if value is None
    )
    if scrub is None:
        return SteeringResult(change, track, None, missing=missing)
    inherited = base is not None and base.setup.steering is not None and base.setup.steering.scrub_radius == scrub
    if inherited:
        scrub = float(moved_scrub_radius(scrub_radius=scrub, load_line_change=change))
    kicks = {}
    for name, case in results.cases.items():
        force = case.contact_force.x
        if case.kind not in ("braking", "ledge") or force == 0:
            continue
        moment = float(kick_back_moment(longitudinal_force=force, scrub_radius=scrub))
        rod = None if arm is None else float(tie_rod_force(kick_back_moment=moment, steering_arm=arm))
        kicks[name] = KickBack(force, moment, rod)
    return SteeringResult(change, track, scrub, kicks, missing)

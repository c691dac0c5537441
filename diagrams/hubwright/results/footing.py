"""How a setup stands on slopes, on two wheels and at ledges: where it tips, what a third wheel takes, what it climbs.

SI units; angles in radians. A vehicle tips well before its static angle: comparisons, no driving limits.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from hubwright.errors import MissingDataError
from hubwright.mechanics.ledge import climbing_friction, edge_forces, highest_ledge, ledge_angle
from hubwright.mechanics.load_cases import Diagonal
from hubwright.mechanics.load_transfer import StandingVehicle
from hubwright.mechanics.slope import (
    DiagonalSupport,
    diagonal_support,
    downhill_lever,
    lifting_angle,
    static_stability_figure,
    tipping_angle,
)
from hubwright.results.model import Results
from hubwright.results.weighing import standing_body


@dataclass(frozen=True)
class SlopeResult:
    """Static stability figure [1], slopes at which the rigid vehicle tips by the side that is downhill [rad], and at
    which a wheel that is uphill leaves the ground, by the wheel [rad]."""

    static_stability_figure: float
    tipping: Mapping[str, float]
    lifting: Mapping[str, float]


@dataclass(frozen=True)
class LedgeResult:
    """A wheel at a ledge of one height [m]: angle [rad], normal force and push without drive [N], needed friction;
    and the highest ledge that a given friction climbs [m]."""

    height: float
    angle: float
    normal: float
    push: float
    needed_friction: float
    friction: float
    highest: float


@dataclass(frozen=True)
class DriveAtLedge:
    """The push that is left over drive torque at the wheel [N·m, N], and the friction that the drive needs [1]."""

    torque: NDArray[np.float64]
    push: NDArray[np.float64]
    needed_friction: NDArray[np.float64]
    climbs_by_itself: float  # torque at which no push is left


def slope_result(results: Results) -> SlopeResult:
    """Return where a setup tips on a side slope, and where its wheels lift."""
    body = standing_body(results.setup)
    height = body.centre.height
    if isinstance(body, StandingVehicle):
        track = float(body.front_track + body.rear_track) / 2
        levers = {name: downhill_lever(body, downhill=way) for name, way in (("left", 1), ("right", -1))}
        rolls = {
            "front": (body.front_roll_share, body.front_track),
            "rear": (1 - body.front_roll_share, body.rear_track),
        }
    else:
        track = float(body.track)
        # the coupling takes no roll: a trailer goes over when its uphill wheel has nothing left to carry
        uphill = {"left": body.loads.right, "right": body.loads.left}
        levers = {name: load * track / body.loads.total for name, load in uphill.items()}
        rolls = dict.fromkeys(("left", "right"), (1.0, body.track))
    return SlopeResult(
        static_stability_figure=float(static_stability_figure(track=track, centre_of_mass_height=height)),
        tipping={
            name: float(tipping_angle(lever=lever, centre_of_mass_height=height)) for name, lever in levers.items()
        },
        lifting={
            wheel: float(
                lifting_angle(wheel_load=load, roll_share=part, track=wide, weight=body.loads.total, height=height)
            )
            for wheel, load in body.loads.wheels.items()
            for part, wide in [rolls[wheel.split("_")[0]]]
        },
    )


def diagonal_result(results: Results, supported: Diagonal) -> DiagonalSupport:
    """Return what two diagonal wheels and the third carry; raises `MissingDataError` for a trailer."""
    body = standing_body(results.setup)
    if not isinstance(body, StandingVehicle):
        raise MissingDataError(
            result="the support on two diagonal wheels",
            missing=["a second axle"],
            reason=f"{results.setup.name} is a trailer",
        )
    return diagonal_support(body, supported=supported)


def ledge_result(results: Results, *, height: float, friction: float) -> LedgeResult:
    """Return how the wheel meets a ledge of a height, and what a friction climbs."""
    radius = results.wheel_geometry.loaded_radius
    load = results.weight.wheel_loads[results.wheel]
    angle = ledge_angle(height=height, loaded_radius=radius)
    edge = edge_forces(load=load, angle=angle, loaded_radius=radius)
    return LedgeResult(
        height=height,
        angle=float(angle),
        normal=float(edge.normal),
        push=float(edge.push),
        needed_friction=float(climbing_friction(height=height, loaded_radius=radius)),
        friction=friction,
        highest=float(highest_ledge(friction=friction, loaded_radius=radius)),
    )


def drive_at_ledge(results: Results, *, height: float, torque: NDArray[np.float64]) -> DriveAtLedge:
    """Return what drive torques at the wheel leave to push at a ledge."""
    radius = results.wheel_geometry.loaded_radius
    load = results.weight.wheel_loads[results.wheel]
    angle = ledge_angle(height=height, loaded_radius=radius)
    edge = edge_forces(load=load, angle=angle, drive_torque=torque, loaded_radius=radius)
    return DriveAtLedge(
        torque=torque,
        push=np.asarray(edge.push),
        needed_friction=np.asarray(edge.needed_friction),
        climbs_by_itself=float(load * radius * np.sin(angle)),
    )

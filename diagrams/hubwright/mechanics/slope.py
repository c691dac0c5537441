"""Standing askew: on a side slope up to tipping, and on two diagonal wheels with the centre of mass off their line.

Axes of the vehicle: x forward, y to the left. A rigid vehicle: springs and tires let a real one tip sooner.
Metres, newtons, radians.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from hubwright.mechanics.constants import STANDARD_GRAVITY, Value
from hubwright.mechanics.load_cases import Diagonal
from hubwright.mechanics.load_transfer import StandingVehicle, Supports


@dataclass(frozen=True)
class DiagonalSupport:
    """A vehicle on two diagonal wheels and what rests on a third.

    `loads` of all four wheels [N]; `off_line` is how far the centre of mass stands from the line between
    the two supports, positive toward the left one of the other two wheels [m]; `third_share` of the weight
    on that third wheel [1]; `tipping_angle` is the tilt away from it that brings the centre of mass over the
    line: past it the vehicle falls over to the fourth wheel [rad].
    """

    loads: Supports
    off_line: Value
    third_share: Value
    tipping_angle: Value


def static_stability_figure(*, track: Value, centre_of_mass_height: Value) -> Value:
    """Return half the track over the height of the centre of mass.

    The lateral acceleration over g at which a rigid vehicle would tip, and the tangent of such a slope.

        SSF = t/(2 h)

    Parameters
    ----------
    track
        t [m].
    centre_of_mass_height
        h [m].

    Returns
    -------
    Value
        The figure [1].

    Notes
    -----
    A comparison of vehicles, no driving limit: springs, tires and bumps take a good part of it away.

    Examples
    --------
    >>> round(static_stability_figure(track=1.6, centre_of_mass_height=0.64), 6)
    1.25

    References
    ----------
    Common definition in road-safety ratings (from memory).
    """
    return track / (2 * centre_of_mass_height)


def tipping_angle(*, lever: Value, centre_of_mass_height: Value) -> Value:
    """Return the slope at which the weight's line passes through the downhill wheels.

    Roof loads raise h and tip the vehicle sooner; what sits low does the opposite.

        tan φ = e/h

    Parameters
    ----------
    lever
        e, from the centre of mass across to the line through the downhill wheels' contacts [m].
    centre_of_mass_height
        h [m].

    Returns
    -------
    Value
        φ [rad].

    Notes
    -----
    Rigid and standing still; with the centre of mass in the middle e is half the track.

    Examples
    --------
    >>> round(float(np.degrees(tipping_angle(lever=0.7, centre_of_mass_height=0.7))), 6)
    45.0

    References
    ----------
    Moments about the downhill contacts, in any text on engineering statics.
    """
    return np.arctan2(lever, centre_of_mass_height)


def lifting_angle(*, wheel_load: Value, roll_share: Value, track: Value, weight: Value, height: Value) -> Value:
    """Return the slope at which a wheel on the uphill side leaves the ground.

    The axle that takes more of the roll than of the weight lifts first, well before the vehicle tips.

        tan φ = F t/(λ W h)

    Parameters
    ----------
    wheel_load
        F, standing, of the wheel on the uphill side, with gear to one side counted [N].
    roll_share
        λ, its axle's share of the load transfer [1].
    track
        t, of the axle [m].
    weight
        W, of the whole [N].
    height
        h, of the centre of mass [m].

    Returns
    -------
    Value
        φ [rad].

    Notes
    -----
    Up to the first wheel that lifts: from there the other axle takes all further roll.

    Examples
    --------
    >>> angle = lifting_angle(wheel_load=5e3, roll_share=0.5, track=1.6, weight=20e3, height=0.8)
    >>> round(float(np.degrees(angle)), 6)  # all wheels alike: when it tips
    45.0

    References
    ----------
    Load transfer on a slope, see `load_cases.side_slope`.
    """
    return np.arctan2(wheel_load * track, roll_share * weight * height)


def downhill_lever(body: StandingVehicle, *, downhill: int) -> Value:
    """Return how far across the centre of mass stands from the line through the downhill wheels.

    A load to one side is the same as a smaller track there.

        e = ((1 − x/L) t_f + x/L t_r)/2 ∓ y

    Parameters
    ----------
    body
        Vehicle on its wheels [m].
    downhill
        +1 where the left side is downhill, −1 for the right [1].

    Returns
    -------
    Value
        e [m].

    Notes
    -----
    The small angle between the line and the vehicle's axis, of unlike tracks, is left out.

    Examples
    --------
    >>> from hubwright.mechanics.weight import MassPoint, VehicleLoads
    >>> centre = MassPoint(2000.0, 1.25, 0.1, 0.7)
    >>> car = StandingVehicle(VehicleLoads(0.0, 0.0, 0.0, 0.0), centre, 2.5, 1.6, 1.6, 0.5)
    >>> round(downhill_lever(car, downhill=1), 6), round(downhill_lever(car, downhill=-1), 6)
    (0.7, 0.9)

    References
    ----------
    Geometry.
    """
    along = body.centre.behind / body.wheelbase
    return ((1 - along) * body.front_track + along * body.rear_track) / 2 - downhill * body.centre.left


def diagonal_support(body: StandingVehicle, *, supported: Diagonal) -> DiagonalSupport:
    """Return what stands on two diagonal wheels, and on the third that the vehicle leans on.

    The centre of mass seldom lies on the line between them. What it lies beside it, a third wheel must take,
    or the vehicle goes over until it does.

        d = (B − A) × (G − A)/|B − A|,    third = W d/d₃

    Parameters
    ----------
    body
        Vehicle on its wheels [N, m].
    supported
        The two diagonal wheels on the ground.

    Returns
    -------
    DiagonalSupport
        Loads [N], distance from the line [m], share of the third wheel [1], angle [rad].

    Notes
    -----
    Level, rigid, at rest. The case `two_wheel` is the balance that a driver may hold for a moment, without
    the third wheel.

    Examples
    --------
    >>> from hubwright.mechanics.weight import MassPoint, VehicleLoads
    >>> centre = MassPoint(1000.0, 1.0, 0.0, 0.7)  # half a metre ahead of the middle
    >>> car = StandingVehicle(VehicleLoads(0.0, 0.0, 0.0, 0.0), centre, 3.0, 1.6, 1.6, 0.5)
    >>> held = diagonal_support(car, supported="front_left+rear_right")
    >>> round(float(held.third_share), 6), float(held.loads["rear_left"])  # a sixth, on the right front wheel
    (0.166667, 0.0)

    References
    ----------
    Equilibrium of a body on three points.
    """
    points = body.points
    front, rear = supported.split("+")
    others = {"front_left", "front_right", "rear_left", "rear_right"} - {front, rear}
    A, B = points[front], points[rear]
    W = body.centre.mass * STANDARD_GRAVITY
    x, y = -body.centre.behind - A.x, body.centre.left - A.y
    line_x, line_y = B.x - A.x, B.y - A.y
    length = np.hypot(line_x, line_y)
    # on the way rearward the vehicle's left is on the right hand: turned, so that left is positive
    d = -(line_x * y - line_y * x) / length
    loads: Supports = {}
    rest_x, rest_y, rest = W * x, W * y, W
    for name in sorted(others):
        third = points[name]
        to_x, to_y = third.x - A.x, third.y - A.y
        d_third = -(line_x * to_y - line_y * to_x) / length
        loads[name] = W * np.maximum(d / d_third, 0.0)
        rest_x, rest_y, rest = rest_x - loads[name] * to_x, rest_y - loads[name] * to_y, rest - loads[name]
    loads[rear] = (rest_x * line_x + rest_y * line_y) / length**2
    loads[front] = rest - loads[rear]
    third_share = sum(loads[name] for name in others) / W
    return DiagonalSupport(loads, d, third_share, np.arctan2(np.abs(d), body.centre.height))

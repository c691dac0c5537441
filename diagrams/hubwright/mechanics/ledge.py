"""A wheel against a square ledge: what it needs to climb, with and without drive at the wheel itself.

θ is the angle of the contact before straight down under the axle. x forward, z up. Newtons, metres, radians.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from hubwright.mechanics.constants import Value
from hubwright.mechanics.vector import Vector


@dataclass(frozen=True)
class EdgeForces:
    """What acts on a wheel that stands against an edge, all below it just unloaded.

    `normal` toward the wheel's centre and `drive` along the tread, up and forward [N]; `push` of the
    vehicle on the axle, forward positive [N]; `needed_friction` drive over normal force [1]. The three
    forces of the triangle: `load` of the vehicle, `pushing`, and the edge's `contact` force.
    """

    normal: Value
    drive: Value
    push: Value
    needed_friction: Value
    load: Vector
    pushing: Vector
    contact: Vector


def ledge_angle(*, height: Value, loaded_radius: Value) -> Value:
    """Return the angle at which a wheel meets the edge of a ledge.

    All else follows from it: at 45 degrees the push is as large as the load.

        cos θ = (R_l − s)/R_l

    Parameters
    ----------
    height
        s, of the ledge [m].
    loaded_radius
        R_l [m].

    Returns
    -------
    Value
        θ [rad]; a quarter turn or more where the ledge is as high as the axle or higher.

    Notes
    -----
    A rigid circle of the loaded radius: a soft tire wraps itself round the edge and climbs a little more.

    Examples
    --------
    >>> round(float(np.cos(ledge_angle(height=0.08, loaded_radius=0.4))), 6)
    0.8

    References
    ----------
    Roller over a step, in any text on engineering statics.
    """
    return np.arccos((loaded_radius - height) / loaded_radius)


def climbing_friction(*, height: Value, loaded_radius: Value) -> Value:
    """Return the friction that a driven wheel needs to climb a ledge by itself.

    Then the contact force stands straight up, θ off the line to the wheel's centre.

        μ = tan θ

    Parameters
    ----------
    height
        s [m].
    loaded_radius
        R_l [m].

    Returns
    -------
    Value
        μ [1]; infinite at the height of the axle.

    Notes
    -----
    No push from the other wheels. Rubber on rock or concrete holds 0.6 to 1 (common practice).

    Examples
    --------
    >>> round(float(climbing_friction(height=0.08, loaded_radius=0.4)), 6)  # tan of arccos 0.8
    0.75

    References
    ----------
    Angle of friction, in any text on engineering statics.
    """
    level = (loaded_radius - height) / loaded_radius
    with np.errstate(divide="ignore"):
        return np.sqrt(1 - level**2) / level


def highest_ledge(*, friction: Value, loaded_radius: Value) -> Value:
    """Return the highest ledge that a friction climbs.

    Put the friction of a driven wheel for what it climbs by itself, or the push over the wheel's load for
    what a vehicle pushes an undriven wheel over: both are the tangent of one angle.

        s = R_l (1 − 1/√(1 + μ²))

    Parameters
    ----------
    friction
        μ, or push over load [1].
    loaded_radius
        R_l [m].

    Returns
    -------
    Value
        s [m]; always below the axle.

    Notes
    -----
    One wheel at a time, standing load; a run-up helps by its energy and hits by its force.

    Examples
    --------
    >>> round(float(highest_ledge(friction=0.75, loaded_radius=0.4)), 6)
    0.08

    References
    ----------
    `climbing_friction` turned round.
    """
    return loaded_radius * (1 - 1 / np.sqrt(1 + friction**2))


def edge_forces(*, load: Value, angle: Value, drive_torque: Value = 0.0, loaded_radius: Value) -> EdgeForces:
    """Return what acts on a wheel at the edge of a ledge while its own drive turns it.

    Drive at the edge lifts and pulls at once: the push falls by 1/cos θ for each newton of it.

        T = M_d/R_l,    N = (F₀ − T sin θ)/cos θ,    push = F₀ tan θ − T/cos θ

    Parameters
    ----------
    load
        F₀, of the vehicle on the wheel, standing [N].
    angle
        θ, below a quarter turn [rad].
    drive_torque
        M_d, at the wheel, forward positive [N·m].
    loaded_radius
        R_l, also the lever of the drive at the edge [m].

    Returns
    -------
    EdgeForces
        Forces [N] and needed friction [1].

    Notes
    -----
    The push's own load transfer is left out. Where the drive alone is more than enough the push is negative:
    the axle then pulls the vehicle. A friction below `needed_friction` lets the wheel spin.

    Examples
    --------
    >>> pushed = edge_forces(load=4000.0, angle=np.arccos(0.8), loaded_radius=0.4)
    >>> round(float(pushed.normal)), round(float(pushed.push))
    (5000, 3000)
    >>> driven = edge_forces(load=4000.0, angle=np.arccos(0.8), drive_torque=960.0, loaded_radius=0.4)  # F₀ R_l sin θ
    >>> abs(round(float(driven.push), 6)), round(float(driven.needed_friction), 6)  # climbs by itself with tan θ
    (0.0, 0.75)

    References
    ----------
    Equilibrium of three forces, in any text on engineering statics.
    """
    sine, cosine = np.sin(angle), np.cos(angle)
    T = drive_torque / loaded_radius
    N = (load - T * sine) / cosine
    push = load * np.tan(angle) - T / cosine
    return EdgeForces(
        normal=N,
        drive=T,
        push=push,
        needed_friction=np.abs(T) / N,
        load=Vector(0.0, 0.0, -load),
        pushing=Vector(push, 0.0, 0.0),
        contact=Vector(T * cosine - N * sine, 0.0, N * cosine + T * sine),
    )

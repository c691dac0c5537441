"""The wheel on its hub: what friction between the clamped faces can pass, what it must, and the wheel's bending.

Studs on one circle about the axle. Axes of the vehicle: x forward, y to the left, z up. N, m, N·m.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from hubwright.mechanics.constants import Value
from hubwright.mechanics.vector import Vector

TEST_FRICTION = 0.9  # UN Regulation No. 124, Annex 6 (from memory)
TEST_FACTOR = 2.0  # same


def friction_capacity(*, studs: Value, clamp_force: Value, face_friction: Value, stud_circle: Value) -> Value:
    """Return the torque that the clamped faces hold by friction before they slip.

    The studs clamp; it is the faces that drive and brake. A stud that has to stop a slipping wheel bends
    at every turn.

        T = n F μ r,    r = half the stud circle

    Parameters
    ----------
    studs
        n [1].
    clamp_force
        F, of each stud [N].
    face_friction
        μ, between the faces [1].
    stud_circle
        Diameter of the circle through the studs [m].

    Returns
    -------
    Value
        T [N·m].

    Notes
    -----
    All friction at the stud circle; cones or balls of the seats and the pilot are left out.

    Examples
    --------
    >>> round(friction_capacity(studs=5, clamp_force=50e3, face_friction=0.2, stud_circle=0.12), 6)
    3000.0

    References
    ----------
    Friction joint, in any text on machine design.
    """
    return studs * clamp_force * face_friction * stud_circle / 2


def joint_demand(
    *, contact_force: Vector, wheel_force: Vector, loaded_radius: Value, stud_circle: Value, ledge_angle: Value = 0.0
) -> Value:
    """Return the torque that the joint must pass, with the shear counted at the stud circle.

    Driving and braking turn the wheel on its face; weight and push move it across. At one stud both add.

        T = |M_y| + V r,    V = |(F + m (g − a))_xz|,    M_y = z_c F_x − x_c F_z

    Parameters
    ----------
    contact_force
        F, of the road on the tire [N].
    wheel_force
        m (g − a), weight and inertia of tire and wheel [N].
    loaded_radius
        R_l [m].
    stud_circle
        Twice r [m].
    ledge_angle
        θ, contact before straight down under the axle; zero on the road [rad].

    Returns
    -------
    Value
        T, to set beside `friction_capacity` [N·m].

    Notes
    -----
    Worst stud: as if torque and shear met there in one direction. The side force and the tipping moment press
    the faces more on one side and less on the other: they leave the sum alone and are left out.

    Examples
    --------
    >>> pull = Vector(-3000.0, 0.0, 4000.0)  # 5000 N across, 3000 N at 0.4 m about the axle
    >>> round(float(joint_demand(contact_force=pull, wheel_force=Vector(), loaded_radius=0.4, stud_circle=0.12)), 6)
    1500.0

    References
    ----------
    Eccentrically loaded group of fasteners, in any text on machine design.
    """
    shear = np.hypot(contact_force.x + wheel_force.x, contact_force.z + wheel_force.z)
    x_c, z_c = loaded_radius * np.sin(ledge_angle), -loaded_radius * np.cos(ledge_angle)
    return np.abs(z_c * contact_force.x - x_c * contact_force.z) + shear * stud_circle / 2


def series_margin(margins: Sequence[Value]) -> Value:
    """Return the margin of joints that pass the same load one after the other.

    A bolted-on spacer makes two of one: the chain is as good as its worse link.

        m = min(m₁, m₂, …)

    Parameters
    ----------
    margins
        Capacity over demand of each joint [1].

    Returns
    -------
    Value
        The smallest [1].

    Notes
    -----
    Each joint with its own fasteners and faces.

    Examples
    --------
    >>> float(series_margin([2.5, 1.8]))
    1.8

    References
    ----------
    Load path in series.
    """
    return np.asarray(np.min(np.stack(np.broadcast_arrays(*margins)), axis=0))


def chance_of_either(*, chance: Value, joints: Value = 2) -> Value:
    """Return how likely it is that at least one of several joints is at fault.

    However small the chance of a nut left loose, a second joint nearly doubles it: that, and not the load
    on the bearing, is what a spacer adds against a wheel of the same load line.

        P = 1 − (1 − p)ⁿ

    Parameters
    ----------
    chance
        p, of each joint [1].
    joints
        n [1].

    Returns
    -------
    Value
        P [1].

    Notes
    -----
    Faults that do not depend on one another.

    Examples
    --------
    >>> round(chance_of_either(chance=0.1), 6)
    0.19

    References
    ----------
    Probability of independent events.
    """
    return 1 - (1 - chance) ** joints


def face_bending(*, contact_force: Vector, contact_point: Vector) -> Value:
    """Return the moment that bends the wheel at its mounting face.

    A side force at the tire's radius bends far more than the load's own lever.

        M = √(M_x² + M_z²),    (M_x, M_y, M_z) = r × F

    Parameters
    ----------
    contact_force
        F, of the road on the tire [N].
    contact_point
        r, of the contact from the middle of the mounting face [m].

    Returns
    -------
    Value
        M [N·m].

    Notes
    -----
    The wheel's own weight is left out. M_y is the torque that the joint passes, no bending.

    Examples
    --------
    >>> float(face_bending(contact_force=Vector(0.0, -3000.0, 5000.0), contact_point=Vector(0.0, -0.04, -0.4)))
    1400.0

    References
    ----------
    Vector product.
    """
    moment = contact_point.cross(contact_force)
    return np.hypot(moment.x, moment.z)


def bending_test_moment(
    *,
    wheel_load: Value,
    tire_radius: Value,
    offset: Value,
    friction: Value = TEST_FRICTION,
    factor: Value = TEST_FACTOR,
) -> Value:
    """Return the moment that a wheel's rotating-bending test is run with: a yardstick for its loads.

    A wheel rated for a load has to stand many turns of it. Other wheels, other offsets, other ratings.

        M = S F (μ R + e)

    Parameters
    ----------
    wheel_load
        F, the wheel's rated load [N].
    tire_radius
        R, of the largest tire for the wheel [m].
    offset
        e, mounting face outboard of the rim's middle: positive, and adds [m].
    friction
        μ [1].
    factor
        S [1].

    Returns
    -------
    Value
        M [N·m].

    Notes
    -----
    From memory, the regulation was not opened: its highest moment, of which the test is run at a half and
    at three quarters for fixed numbers of turns. Not an assessment of any wheel.

    Examples
    --------
    >>> round(bending_test_moment(wheel_load=8000.0, tire_radius=0.35, offset=0.035), 6)  # 16000 × 0.35
    5600.0

    References
    ----------
    UN Regulation No. 124, Annex 6 (from memory).
    """
    return factor * wheel_load * (friction * tire_radius + offset)

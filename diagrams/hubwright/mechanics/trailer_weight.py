"""How the weight of a trailer with one axle reaches its wheels and its coupling.

Masses in kg at points in metres: `behind` is measured backward from the axle, `left` from the centre
line, `height` from the road. Loads in newtons, pressing on the road or on the coupling.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from hubwright.mechanics.constants import STANDARD_GRAVITY, Value
from hubwright.mechanics.weight import MassPoint


@dataclass(frozen=True)
class TrailerLoads:
    """Vertical load of each wheel of a trailer with one axle and of its coupling [N].

    `coupling_roll` is the moment about the forward axis that items beside the centre line leave
    at the coupling, because only the axle's part of an item is shared by its wheels [N·m].
    """

    left: Value
    right: Value
    coupling: Value
    coupling_roll: Value = 0.0

    @property
    def axle(self) -> Value:
        """Load of the axle [N]."""
        return self.left + self.right

    @property
    def total(self) -> Value:
        """Weight of the whole trailer [N]."""
        return self.axle + self.coupling

    @property
    def wheels(self) -> dict[str, Value]:
        """Loads by the name of the wheel [N]."""
        return {"left": self.left, "right": self.right}


def trailer_mass_point(
    *, axle_mass: Value, coupling_mass: Value, coupling_ahead_of_axle: Value, centre_of_mass_height: Value
) -> MassPoint:
    """Return the trailer as weighed, as one mass at its centre of mass.

    What the coupling weighs says how far ahead of the axle the centre of mass lies.

        m = m_A + m_C,    x = −L_C m_C/m    (behind the axle)

    Parameters
    ----------
    axle_mass
        m_A, what a level scale shows under the axle [kg].
    coupling_mass
        m_C, the same under the coupling [kg].
    coupling_ahead_of_axle
        L_C, distance of coupling and axle [m].
    centre_of_mass_height
        h, above the road [m].

    Returns
    -------
    MassPoint
        Mass [kg] and its place behind the axle, negative: ahead of it [m].

    Notes
    -----
    The trailer itself is symmetric; what stands beside the centre line is gear.

    Examples
    --------
    >>> trailer_mass_point(axle_mass=900.0, coupling_mass=100.0, coupling_ahead_of_axle=3.0, centre_of_mass_height=0.8)
    MassPoint(mass=1000.0, behind=-0.3, left=0.0, height=0.8)

    References
    ----------
    Law of the lever.
    """
    mass = axle_mass + coupling_mass
    return MassPoint(mass=mass, behind=-coupling_ahead_of_axle * coupling_mass / mass, height=centre_of_mass_height)


def trailer_wheel_changes(*, mass_per_corner: Value, track: Value, free_radius: Value) -> tuple[MassPoint, MassPoint]:
    """Return the mass that other tires and wheels add to a trailer, one point in each wheel.

        m at x = 0, y = ±t/2, h = R_free

    It reaches the road through its own wheel and is not carried by the bearing.

    Parameters
    ----------
    mass_per_corner
        Tire and wheel now less tire and wheel when weighed; negative: lighter [kg].
    track
        t, distance of the wheels [m].
    free_radius
        R_free of the tire now on the trailer [m].

    Returns
    -------
    tuple[MassPoint, MassPoint]
        Left, right [kg, m].

    Notes
    -----
    Only for a trailer that was weighed on its former wheels.

    Examples
    --------
    >>> trailer_wheel_changes(mass_per_corner=9.0, track=1.6, free_radius=0.42)[1]
    MassPoint(mass=9.0, behind=0.0, left=-0.8, height=0.42)

    References
    ----------
    Geometry.
    """
    return (
        MassPoint(mass_per_corner, 0.0, track / 2, free_radius),
        MassPoint(mass_per_corner, 0.0, -track / 2, free_radius),
    )


def trailer_loads(points: Sequence[MassPoint], *, coupling_ahead_of_axle: Value, track: Value) -> TrailerLoads:
    """Return the standing load of each wheel and of the coupling of a trailer by the law of the lever.

    Gear behind the axle lifts the coupling and adds more than its own weight to the axle.

        F_C = −m g x/L_C,    F_A = m g − F_C,    left wheel: F_A (1/2 + y/t)

    Parameters
    ----------
    points
        Trailer, gear and wheel changes; `behind` from the axle [kg, m].
    coupling_ahead_of_axle
        L_C, distance of coupling and axle [m].
    track
        t, distance of the wheels [m].

    Returns
    -------
    TrailerLoads
        Load of each wheel and of the coupling [N], roll left at the coupling [N·m].

    Notes
    -----
    The axle's part of an item beside the centre line is shared by the wheels; the coupling's
    part leaves its moment m g y at the coupling.

    Examples
    --------
    >>> loads = trailer_loads([MassPoint(100.0, behind=-0.6, left=0.0)], coupling_ahead_of_axle=3.0, track=1.6)
    >>> round(loads.coupling / 9.80665, 6), round(loads.left / 9.80665, 6)
    (20.0, 40.0)

    References
    ----------
    Law of the lever.
    """
    left: Value = 0.0
    right: Value = 0.0
    coupling: Value = 0.0
    coupling_roll: Value = 0.0
    for point in points:
        weight = point.mass * STANDARD_GRAVITY
        at_coupling = -weight * point.behind / coupling_ahead_of_axle
        at_axle = weight - at_coupling
        left = left + at_axle * (0.5 + point.left / track)
        right = right + at_axle * (0.5 - point.left / track)
        coupling = coupling + at_coupling
        coupling_roll = coupling_roll + at_coupling * point.left
    return TrailerLoads(left, right, coupling, coupling_roll)

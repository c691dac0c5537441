"""How the weight of a vehicle with its gear reaches each wheel, standing on level ground.

Masses in kg at points in metres: `behind` is measured backward from the front axle,
`left` from the centre line, `height` from the road. Loads in newtons, pressing on the road.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from hubwright.mechanics.constants import STANDARD_GRAVITY, Value


@dataclass(frozen=True)
class MassPoint:
    """A mass and where its centre is [kg, m]; a negative mass is something taken off."""

    mass: Value
    behind: Value = 0.0
    left: Value = 0.0
    height: Value = 0.0


@dataclass(frozen=True)
class VehicleLoads:
    """Vertical load of each wheel of a vehicle with two axles [N]."""

    front_left: Value
    front_right: Value
    rear_left: Value
    rear_right: Value

    @property
    def front(self) -> Value:
        """Load of the front axle [N]."""
        return self.front_left + self.front_right

    @property
    def rear(self) -> Value:
        """Load of the rear axle [N]."""
        return self.rear_left + self.rear_right

    @property
    def total(self) -> Value:
        """Weight of the whole vehicle [N]."""
        return self.front + self.rear

    @property
    def wheels(self) -> dict[str, Value]:
        """Loads by the name of the wheel [N]."""
        return {
            "front_left": self.front_left,
            "front_right": self.front_right,
            "rear_left": self.rear_left,
            "rear_right": self.rear_right,
        }


def vehicle_mass_point(
    *, front_axle_mass: Value, rear_axle_mass: Value, wheelbase: Value, centre_of_mass_height: Value
) -> MassPoint:
    """Return the vehicle as weighed, as one mass at its centre of mass.

    The two axle masses say where between the axles it lies; left and right are taken as alike.

        m = m_F + m_R,    x = L m_R/m

    Parameters
    ----------
    front_axle_mass
        m_F, what a level scale shows under the front axle [kg].
    rear_axle_mass
        m_R, the same under the rear axle [kg].
    wheelbase
        L, distance of the axles [m].
    centre_of_mass_height
        h, above the road [m].

    Returns
    -------
    MassPoint
        Mass [kg] and its place behind the front axle [m].

    Notes
    -----
    The vehicle itself is symmetric; what stands beside the centre line is gear.

    Examples
    --------
    >>> vehicle_mass_point(front_axle_mass=1200.0, rear_axle_mass=800.0, wheelbase=2.5, centre_of_mass_height=0.7)
    MassPoint(mass=2000.0, behind=1.0, left=0.0, height=0.7)

    References
    ----------
    Law of the lever.
    """
    mass = front_axle_mass + rear_axle_mass
    return MassPoint(mass=mass, behind=wheelbase * rear_axle_mass / mass, height=centre_of_mass_height)


def vehicle_wheel_changes(
    *, mass_per_corner: Value, wheelbase: Value, front_track: Value, rear_track: Value, free_radius: Value
) -> tuple[MassPoint, MassPoint, MassPoint, MassPoint]:
    """Return the mass that other tires and wheels add, one point in the middle of each wheel.

    It reaches the road through its own wheel and is not carried by the bearing.

        m at x = 0 and L, y = ±t/2, h = R_free

    Parameters
    ----------
    mass_per_corner
        Tire and wheel now less tire and wheel when weighed; negative: lighter [kg].
    wheelbase
        L, distance of the axles [m].
    front_track
        t of the front axle [m].
    rear_track
        t of the rear axle [m].
    free_radius
        R_free of the tire now on the vehicle [m].

    Returns
    -------
    tuple[MassPoint, MassPoint, MassPoint, MassPoint]
        Front left, front right, rear left, rear right [kg, m].

    Notes
    -----
    Only for a vehicle that was weighed on its former wheels.

    Examples
    --------
    >>> points = vehicle_wheel_changes(
    ...     mass_per_corner=9.0, wheelbase=2.5, front_track=1.6, rear_track=1.5, free_radius=0.42
    ... )
    >>> points[3]
    MassPoint(mass=9.0, behind=2.5, left=-0.75, height=0.42)

    References
    ----------
    Geometry.
    """
    return (
        MassPoint(mass_per_corner, 0.0, front_track / 2, free_radius),
        MassPoint(mass_per_corner, 0.0, -front_track / 2, free_radius),
        MassPoint(mass_per_corner, wheelbase, rear_track / 2, free_radius),
        MassPoint(mass_per_corner, wheelbase, -rear_track / 2, free_radius),
    )


def combined(points: Sequence[MassPoint]) -> MassPoint:
    """Return all masses together at their common centre of mass.

    Load transfer in a corner or under braking depends on this mass and this height.

        m = Σ mᵢ,    r = Σ mᵢ rᵢ/m

    Parameters
    ----------
    points
        Vehicle, gear and wheel changes [kg, m].

    Returns
    -------
    MassPoint
        Total mass [kg] at the common centre [m].

    Notes
    -----
    Heights are those above the road on the vehicle's own tires; the rise on taller tires is left out.

    Examples
    --------
    >>> combined([MassPoint(1500.0, 1.0, 0.0, 0.6), MassPoint(500.0, 3.0, 0.4, 1.4)])
    MassPoint(mass=2000.0, behind=1.5, left=0.1, height=0.8)

    References
    ----------
    Definition of the centre of mass.
    """
    mass: Value = 0.0
    behind: Value = 0.0
    left: Value = 0.0
    height: Value = 0.0
    for point in points:
        mass = mass + point.mass
        behind = behind + point.mass * point.behind
        left = left + point.mass * point.left
        height = height + point.mass * point.height
    return MassPoint(mass, behind / mass, left / mass, height / mass)


def vehicle_loads(
    points: Sequence[MassPoint], *, wheelbase: Value, front_track: Value, rear_track: Value
) -> VehicleLoads:
    """Return the standing load of each wheel by the law of the lever.

    Gear ahead of the front axle adds more than its own weight there and lifts the rear.

        F_R = m g x/L,    F_F = m g (1 − x/L),    left wheel of an axle: F (1/2 + y/t)

    Parameters
    ----------
    points
        Vehicle, gear and wheel changes; `behind` from the front axle [kg, m].
    wheelbase
        L, distance of the axles [m].
    front_track
        t of the front axle [m].
    rear_track
        t of the rear axle [m].

    Returns
    -------
    VehicleLoads
        Load of each wheel; below zero is a wheel that would have to be held down [N].

    Notes
    -----
    Each axle's part of an item is shared by its own wheels: a body stiff against twist would
    share it otherwise.

    Examples
    --------
    >>> loads = vehicle_loads(
    ...     [MassPoint(100.0, behind=-0.5, left=0.4)], wheelbase=2.5, front_track=1.6, rear_track=1.6
    ... )
    >>> round(loads.front / 9.80665, 6), round(loads.rear / 9.80665, 6)  # 120 % of it in front, −20 % behind
    (120.0, -20.0)
    >>> round(loads.front_left / loads.front, 6)  # a quarter of the track off centre
    0.75

    References
    ----------
    Law of the lever.
    """
    front_left: Value = 0.0
    front_right: Value = 0.0
    rear_left: Value = 0.0
    rear_right: Value = 0.0
    for point in points:
        weight = point.mass * STANDARD_GRAVITY
        rear = weight * point.behind / wheelbase
        front = weight - rear
        front_left = front_left + front * (0.5 + point.left / front_track)
        front_right = front_right + front * (0.5 - point.left / front_track)
        rear_left = rear_left + rear * (0.5 + point.left / rear_track)
        rear_right = rear_right + rear * (0.5 - point.left / rear_track)
    return VehicleLoads(front_left, front_right, rear_left, rear_right)


def axle_masses(*, total_mass: Value, front_share: Value) -> tuple[Value, Value]:
    """Return the two axle masses of a vehicle of which the total is known.

        m_F = s m,    m_R = (1 − s) m

    A rule of thumb where no axle was put on a scale by itself.

    Parameters
    ----------
    total_mass
        m, ready to drive [kg].
    front_share
        s, part of it on the front axle [1].

    Returns
    -------
    tuple[Value, Value]
        Front and rear axle mass [kg].

    Notes
    -----
    0.55 is usual with the engine in front; the scale decides.

    Examples
    --------
    >>> front, rear = axle_masses(total_mass=2000.0, front_share=0.55)
    >>> round(front), round(rear)
    (1100, 900)

    References
    ----------
    Common practice.
    """
    return total_mass * front_share, total_mass * (1 - front_share)


def static_stability_figure(*, track: Value, centre_of_mass_height: Value) -> Value:
    """Return the static stability figure: half the track over the height of the centre of mass.

    It is the sideways acceleration in g at which a rigid vehicle would tip, and the slope.

        SSF = t/(2 h)

    Parameters
    ----------
    track
        t, distance of left and right wheels; mean of both axles [m].
    centre_of_mass_height
        h, above the road [m].

    Returns
    -------
    Value
        SSF [1].

    Notes
    -----
    A vehicle on springs and tires tips earlier. Not a driving limit.

    Examples
    --------
    >>> round(static_stability_figure(track=1.6, centre_of_mass_height=0.64), 6)
    1.25

    References
    ----------
    Definition used in published rollover ratings (recalled, document not opened).
    """
    return track / (2 * centre_of_mass_height)


def height_from_stability_figure(*, track: Value, static_stability_figure: Value) -> Value:
    """Return the height of the centre of mass from a published static stability figure.

    The inverse of `static_stability_figure`.

        h = t/(2 SSF)

    Parameters
    ----------
    track
        t, distance of left and right wheels; mean of both axles [m].
    static_stability_figure
        SSF, as published [1].

    Returns
    -------
    Value
        h, above the road [m].

    Notes
    -----
    Published figures hold for the vehicle as tested, without gear.

    Examples
    --------
    >>> round(height_from_stability_figure(track=1.6, static_stability_figure=1.25), 6)
    0.64

    References
    ----------
    Definition used in published rollover ratings (recalled, document not opened).
    """
    return track / (2 * static_stability_figure)


def equal_share(*, total: Value, wheels: int = 4) -> Value:
    """Return what each wheel would carry if all carried alike.

        F = total/4

    The rule of thumb that is heard most; shown beside the real shares, never instead of them.

    Parameters
    ----------
    total
        Weight or mass of the vehicle or of its gear [N or kg].
    wheels
        Number of wheels that share it [1].

    Returns
    -------
    Value
        The share of one wheel [unit of total].

    Notes
    -----
    True only of a vehicle whose centre of mass lies in the middle between its wheels.

    Examples
    --------
    >>> equal_share(total=2000.0)
    500.0

    References
    ----------
    Common practice, no source.
    """
    return total / wheels

"""The free body of a wheel end: every single force on the parts that turn with the wheel, and the row loads.

The body is cut at the rolling elements; the origin is the bearing centre. Axes of the vehicle, ISO 8855:
x forward, y to the left, z up; `side` is +1 at a left and −1 at a right wheel. Metres, newtons, N·m.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from hubwright.mechanics.constants import Value
from hubwright.mechanics.vector import Vector, total

Acts = Literal["applied", "reaction"]


@dataclass(frozen=True)
class SingleForce:
    """One force on the body [N] and the point at which it acts [m]."""

    name: str
    kind: Acts
    force: Vector
    point: Vector

    @property
    def moment(self) -> Vector:
        """Its moment about the origin, r × F [N·m]."""
        return self.point.cross(self.force)


@dataclass(frozen=True)
class SingleCouple:
    """One couple on the body [N·m]."""

    name: str
    kind: Acts
    moment: Vector


@dataclass(frozen=True)
class FreeBody:
    """All forces and couples on one body, zero ones included; the list that a figure draws."""

    forces: tuple[SingleForce, ...]
    couples: tuple[SingleCouple, ...] = ()

    def force(self, name: str) -> SingleForce:
        """Return the single force of that name."""
        return next(single for single in self.forces if single.name == name)

    @property
    def residual_force(self) -> Vector:
        """What the forces leave over; zero in a body that closes [N]."""
        return total(single.force for single in self.forces)

    @property
    def residual_moment(self) -> Vector:
        """What the moments about the origin leave over; zero in a body that closes [N·m]."""
        return total([*(single.moment for single in self.forces), *(couple.moment for couple in self.couples)])

    @property
    def largest_force(self) -> Value:
        """Length of the largest single force, the measure for what is left over [N]."""
        largest: Value = 0.0
        for single in self.forces:
            largest = np.maximum(largest, single.force.length())
        return largest

    @property
    def closure(self) -> tuple[Value, Value]:
        """Length of the force and of the moment left over [N, N·m]."""
        return self.residual_force.length(), self.residual_moment.length()


@dataclass(frozen=True)
class Caliper:
    """A disc brake's caliper: radius of its friction force [m], its place from straight up toward the
    front [rad], and the disc outboard of the bearing centre [m]."""

    effective_radius: Value
    position: Value
    disc_to_bearing_centre: Value


@dataclass(frozen=True)
class WheelEnd:
    """The free body of a wheel end with the bearing's force, moment and row loads [N, N·m]."""

    body: FreeBody
    bearing_force: Vector
    bearing_moment: Vector
    row_load_outboard: Vector
    row_load_inboard: Vector

    @property
    def row_radial_load_outboard(self) -> Value:
        """Length of the outboard row's load [N]."""
        return np.hypot(self.row_load_outboard.x, self.row_load_outboard.z)

    @property
    def row_radial_load_inboard(self) -> Value:
        """Length of the inboard row's load [N]."""
        return np.hypot(self.row_load_inboard.x, self.row_load_inboard.z)


def wheel_end(
    *,
    side: Literal[1, -1],
    contact_force: Vector,
    gravity: Vector,
    acceleration: Vector,
    load_line_offset: Value,
    loaded_radius: Value,
    face_to_bearing_centre: Value,
    wheel_mass: Value,
    rotating_mass: Value,
    effective_spread: Value,
    ledge_angle: Value = 0.0,
    caliper: Caliper | None = None,
) -> WheelEnd:
    """Return the free body of a wheel end and what its bearing carries.

    The load line's lever and the tire's radius turn the contact force into a moment on the bearing; in
    a corner the two parts of M_x oppose each other on an outboard load line at the outer wheel.

        B = F + Σ mᵢ (g − a) + C
        M_x = y_L F_z − z_c F_y + Σ yᵢ Pᵢz + y_d C_z
        M_y = z_c F_x − x_c F_z          (shaft or brake takes it, not the bearing)
        M_z = x_c F_y − y_L F_x − Σ yᵢ Pᵢx − y_d C_x
        rows:  vertical B_z/2 ± M_x/ℓ,  horizontal B_x/2 ∓ M_z/ℓ

    with P = m (g − a), outboard lengths counted along +y at a left and −y at a right wheel.

    Parameters
    ----------
    side
        +1 at a left wheel, −1 at a right one [1].
    contact_force
        F, of the road on the tire [N].
    gravity
        g in the axes of the vehicle; two components on a side slope [m/s²].
    acceleration
        a of the vehicle [m/s²].
    load_line_offset
        y_L, tire's centreline outboard of the bearing centre: positive [m].
    loaded_radius
        R_l, wheel centre above the road [m].
    face_to_bearing_centre
        Mounting face of the hub outboard of the bearing centre: positive; a spacer does not move it [m].
    wheel_mass
        Tire and wheel together, at the tire's centreline [kg].
    rotating_mass
        Hub flange and disc, at the hub's mounting face [kg].
    effective_spread
        ℓ, between the pressure centres of the two rows [m].
    ledge_angle
        θ, contact before straight down under the axle; zero on the road [rad].
    caliper
        The brake while it brakes; None without one or while not braking.

    Returns
    -------
    WheelEnd
        Single forces with their points, bearing force [N] and moment [N·m], row loads [N].

    Notes
    -----
    Row loads go from the turning parts to the row; the reactions in the free body are the opposite.
    Left out: the wheel's gyroscopic moment, the shift of the contact patch, camber, spin inertia.

    Examples
    --------
    >>> from hubwright.mechanics.constants import STANDARD_GRAVITY as g
    >>> end = wheel_end(
    ...     side=1, contact_force=Vector(0.0, 0.0, 5000.0), gravity=Vector(0.0, 0.0, -g), acceleration=Vector(),
    ...     load_line_offset=0.012, loaded_radius=0.37, face_to_bearing_centre=0.042, wheel_mass=0.0,
    ...     rotating_mass=0.0, effective_spread=0.06,
    ... )
    >>> round(float(end.bearing_moment.x), 6)  # 5000 N × 12 mm
    60.0
    >>> round(float(end.row_load_outboard.z), 6), round(float(end.row_load_inboard.z), 6)  # 2500 ± 60/0.06
    (3500.0, 1500.0)

    References
    ----------
    Equilibrium; quasi-static, after d'Alembert.
    """
    y_L = side * load_line_offset
    y_hub = side * face_to_bearing_centre
    y_disc = side * (caliper.disc_to_bearing_centre if caliper else 0.0)
    x_c = loaded_radius * np.sin(ledge_angle)
    z_c = -loaded_radius * np.cos(ledge_angle)
    F = contact_force
    C = _caliper_force(F, loaded_radius, caliper)
    P_wheel = wheel_mass * (gravity - acceleration)
    P_hub = rotating_mass * (gravity - acceleration)

    B = F + P_wheel + P_hub + C
    M_x = y_L * F.z - z_c * F.y + y_L * P_wheel.z + y_hub * P_hub.z + y_disc * C.z
    M_y = z_c * F.x - x_c * F.z
    M_z = x_c * F.y - y_L * F.x - y_L * P_wheel.x - y_hub * P_hub.x - y_disc * C.x
    # a right wheel's outboard row stands at −y: the same formula with the moments' signs turned
    outboard = Vector(B.x / 2 - side * M_z / effective_spread, 0.0, B.z / 2 + side * M_x / effective_spread)
    inboard = Vector(B.x / 2 + side * M_z / effective_spread, 0.0, B.z / 2 - side * M_x / effective_spread)

    # subtracted from zero rather than negated: nothing is then printed as −0
    tire_centre = Vector(0.0, y_L, 0.0)
    hub_face = Vector(0.0, y_hub, 0.0)
    pressure_centre = Vector(0.0, side * effective_spread / 2, 0.0)
    body = FreeBody(
        forces=(
            SingleForce("contact", "applied", F, Vector(x_c, y_L, z_c)),
            SingleForce("weight_wheel", "applied", wheel_mass * gravity, tire_centre),
            SingleForce("weight_hub", "applied", rotating_mass * gravity, hub_face),
            SingleForce("inertia_wheel", "applied", Vector() - wheel_mass * acceleration, tire_centre),
            SingleForce("inertia_hub", "applied", Vector() - rotating_mass * acceleration, hub_face),
            SingleForce("caliper", "applied", C, Vector(0.0, y_disc, 0.0)),
            SingleForce("row_outboard", "reaction", Vector() - outboard, pressure_centre),
            SingleForce("row_inboard", "reaction", Vector() - inboard, -pressure_centre),
            SingleForce("axial", "reaction", Vector(0.0, 0.0 - B.y, 0.0), Vector()),
        ),
        couples=(SingleCouple("brake" if caliper else "shaft", "reaction", Vector(0.0, 0.0 - M_y, 0.0)),),
    )
    return WheelEnd(body, B, Vector(M_x, M_y, M_z), outboard, inboard)


def balanced_lateral_g(*, load_line_offset: Value, loaded_radius: Value) -> Value:
    """Return the lateral acceleration at which the outer wheel's side force just cancels its load's moment.

    Below it the vertical load on an outboard load line rules, above it the side force at the tire's radius.

        n = y_L/R_l

    Parameters
    ----------
    load_line_offset
        y_L, outboard positive [m].
    loaded_radius
        R_l [m].

    Returns
    -------
    Value
        n, lateral acceleration over g [1].

    Notes
    -----
    Of the contact force alone; the weights of the turning parts shift it a little. Negative for a load
    line inboard: both parts then tip the same way at the outer wheel.

    Examples
    --------
    >>> round(balanced_lateral_g(load_line_offset=0.037, loaded_radius=0.37), 6)
    0.1

    References
    ----------
    From y_L F_z = R_l n F_z.
    """
    return load_line_offset / loaded_radius


def _caliper_force(contact_force: Vector, loaded_radius: Value, caliper: Caliper | None) -> Vector:
    if caliper is None:
        return Vector()
    friction = loaded_radius * np.abs(contact_force.x) / caliper.effective_radius
    return Vector(-friction * np.cos(caliper.position), 0.0, friction * np.sin(caliper.position))

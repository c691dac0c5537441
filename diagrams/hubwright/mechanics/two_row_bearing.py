"""The two-row bearing under load: how much every ball or roller of both rows carries.

Rigid rings, five degrees of freedom, Hertz contact at every element, many cases and geometries at once.
The bearing centre is the origin; x forward, y outboard, z up (the mirror image at a right wheel).
Metres, newtons, radians. Loads of elements are (…, row, element), row 0 the outboard one.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from hubwright.errors import HubwrightError
from hubwright.mechanics.bearing_rows import Array, BallRows, Contact, Geometry, RollerRows
from hubwright.mechanics.constants import Value
from hubwright.mechanics.equivalent_load import TurningRing

TOLERANCE = 1e-9  # of the largest load, left over in the equilibrium of the rings
MOST_STEPS = 200
SOFTENING = 1e-12  # of the stiffness of a ring full of loaded elements; keeps free directions solvable


@dataclass(frozen=True)
class RowLoads:
    """What every element carries [N] and at which contact angle [rad]: (…, row, element).

    `displacement` of the turning ring: x, y, z [m], and about x and z [rad]: (…, 5). `energy` is stored
    in the contacts [J]. With a direction free, as under thrust alone with clearance, the loads are
    unique, the displacement need not be.
    """

    load: Array
    angle: Array
    displacement: Array
    energy: Array


class NotConvergedError(HubwrightError, ArithmeticError):
    """Loads for which the rings found no equilibrium."""

    def __init__(self, *, case: int, load: Array) -> None:
        """Keep which of the cases it was and its load."""
        self.case = case
        self.load = load
        x, y, z, about_x, about_z = (float(part) for part in load)
        super().__init__(
            f"the rings of case {case} found no equilibrium under {x:.6g}, {y:.6g}, {z:.6g} N "
            f"and {about_x:.6g}, {about_z:.6g} N·m"
        )


def row_loads(
    rows: BallRows | RollerRows,
    *,
    force_x: Value,
    force_y: Value,
    force_z: Value,
    moment_x: Value,
    moment_z: Value,
    side: Literal[1, -1] = 1,
    turning_ring: TurningRing = "inner",
) -> RowLoads:
    """Return the load of every element of both rows under a bearing force and moment.

    The rings move until the elements hold the load: the potential energy Π has its only minimum there.

        Π = Σ (2/5) K δ^(5/2) − load·displacement   (balls; rollers Σ (9/19) K δ^(19/9))
        δ = |groove centre to groove centre| − (rᵢ + rₑ − 1) Dw   (balls)
        δ = radial approach · cos α + axial approach · sin α   (rollers)

    Parameters
    ----------
    rows
        Geometry of both rows [m, rad].
    force_x
        B_x, bearing force forward [N].
    force_y
        B_y, to the left [N].
    force_z
        B_z, up [N].
    moment_x
        M_x about the bearing centre [N·m].
    moment_z
        M_z about the bearing centre [N·m].
    side
        +1 at a left wheel, −1 at a right one [1].
    turning_ring
        "inner" where the hub turns with the inner rings; with "outer" thrust toward the vehicle loads the
        inboard row instead of the outboard one.

    Returns
    -------
    RowLoads
        Load [N] and contact angle [rad] of every element, displacement, energy.

    Raises
    ------
    NotConvergedError
        Naming the case, when no equilibrium was found.

    Notes
    -----
    δ of a ball is the norm of an affine map of the displacements, so Π is convex and Newton's method with
    a line search finds the minimum from anywhere, clearance and unloaded rows included. Left out:
    centrifugal force, cage, friction, bending of the rings. Rollers in one slice, without tilt against
    the raceway.

    Examples
    --------
    >>> from hubwright.mechanics.bearing_rows import INBOARD, OUTBOARD
    >>> rows = BallRows(13, ball_diameter=0.0127, pitch_diameter=0.062, contact_angle=0.6, row_spacing=0.024)
    >>> thrust = row_loads(rows, force_x=0.0, force_y=-5000.0, force_z=0.0, moment_x=0.0, moment_z=0.0)
    >>> bool(np.ptp(thrust.load[OUTBOARD]) < 1e-6), float(thrust.load[INBOARD].max())  # all balls alike, one row
    (True, 0.0)

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., chapter 7; Jones (1960), J. Basic Eng. 82; ISO/TS 16281
    (recalled, documents not opened).
    """
    thrust = side * force_y if turning_ring == "inner" else -side * force_y
    parts = (force_x, thrust, force_z, side * moment_x, side * moment_z)
    geometry = Geometry.of_rows(rows)
    shape = np.broadcast_shapes(*(np.shape(part) for part in parts), geometry.shape)
    load = np.stack([np.broadcast_to(part, shape).astype(float).ravel() for part in parts], axis=-1)
    cases = geometry.raveled(shape)
    displacement, contact = _equilibrium(cases, load)
    elements = (*shape, 2, geometry.sines.size)
    return RowLoads(
        load=contact.load.reshape(elements),
        angle=np.broadcast_to(contact.angle, contact.load.shape).reshape(elements),
        displacement=(displacement * cases.unscaled).reshape((*shape, 5)),
        energy=contact.energy.reshape(shape),
    )


def loads_at_displacement(rows: BallRows | RollerRows, *, displacement: Array) -> RowLoads:
    """Return the load of every element when the turning ring is held at a displacement.

    The other way round from `row_loads`; for one row alone, look at one row of the result.

        Q = K δ^(3/2)  (balls),   K δ^(10/9)  (rollers)

    Parameters
    ----------
    rows
        Geometry of both rows [m, rad].
    displacement
        x, y, z [m] and about x and z [rad] of the inner rings, y outboard: (…, 5).

    Returns
    -------
    RowLoads
        Load [N] and contact angle [rad] of every element, displacement, energy.

    Notes
    -----
    Small angles: the ring turns along its tangent.

    Examples
    --------
    >>> from hubwright.mechanics.bearing_rows import INBOARD
    >>> rows = RollerRows(15, 0.008, 0.012, pitch_diameter=0.05, contact_angle=0.35, row_spacing=0.03)
    >>> outward = loads_at_displacement(rows, displacement=np.array([0.0, -1e-5, 0.0, 0.0, 0.0]))
    >>> float(outward.load[INBOARD].max())  # thrust toward the vehicle loads the outboard row
    0.0

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., chapter 7 (recalled, document not opened).
    """
    geometry = Geometry.of_rows(rows)
    shape = np.broadcast_shapes(displacement.shape[:-1], geometry.shape)
    cases = geometry.raveled(shape)
    flat = np.broadcast_to(displacement, (*shape, 5)).reshape(-1, 5)
    contact = cases.contact(flat / cases.unscaled)
    elements = (*shape, 2, geometry.sines.size)
    return RowLoads(
        load=contact.load.reshape(elements),
        angle=np.broadcast_to(contact.angle, contact.load.shape).reshape(elements),
        displacement=flat.reshape((*shape, 5)),
        energy=contact.energy.reshape(shape),
    )


def _equilibrium(geometry: Geometry, load: Array) -> tuple[Array, Contact]:
    """Return scaled displacements (case, 5) at which the elements push back with the load, and the elements."""
    target = load * geometry.unscaled  # moments over R, to match scaled angles
    size = np.max(np.abs(target), axis=-1)
    displacement, reference, longest = _start(geometry, target, size)

    todo = np.arange(len(load))
    d = displacement.copy()
    here, contact = geometry, geometry.contact(d)
    residual = here.forces(contact) - target
    potential = contact.energy - np.sum(target * d, axis=-1)
    for _ in range(MOST_STEPS):
        scale = np.maximum(size[todo], contact.load.max(axis=(1, 2)))
        open_ = np.max(np.abs(residual), axis=-1) > TOLERANCE * scale
        if not open_.all():
            displacement[todo] = d
            if not open_.any():
                return displacement, geometry.contact(displacement)
            todo, here, d = todo[open_], here.of(np.flatnonzero(open_)), d[open_]
            residual, potential = residual[open_], potential[open_]
            contact = here.contact(d)
        step = _newton_step(here, contact, residual, reference[todo], longest[todo])
        d, contact, residual, potential = _searched(here, d, step, residual, potential, target[todo])
    raise NotConvergedError(case=int(todo[0]), load=load[todo[0]])


def _start(geometry: Geometry, target: Array, size: Array) -> tuple[Array, Array, Array]:
    """Return a first displacement, the stiffness of a ring with all elements loaded, and the longest step."""
    count = geometry.sines.size
    power = 1.5 if geometry.balls else 10 / 9
    K = geometry.stiffness[:, 0, 0]
    approach = (np.maximum(size, 1.0) / (K * count)) ** (1 / power)
    stiffness = power * K * approach ** (power - 1) * count
    clearance = np.maximum(-geometry.preload[:, 0, 0], 0.0)
    # the way through the clearance, along the axis or across it
    c, s = geometry.rest_radial[:, 0, 0], geometry.rest_axial[:, 0, 0]
    longest = 20 * approach + 3 * clearance * (1 + s / c)
    return (
        target / stiffness[:, np.newaxis],
        np.broadcast_to(stiffness, size.shape),
        np.broadcast_to(longest, size.shape),
    )


def _newton_step(geometry: Geometry, contact: Contact, residual: Array, reference: Array, longest: Array) -> Array:
    tangent = geometry.tangent(contact)
    tangent[:, np.arange(5), np.arange(5)] += SOFTENING * reference[:, np.newaxis]
    step = np.asarray(np.linalg.solve(tangent, -residual[..., np.newaxis])[..., 0], dtype=np.float64)
    length: Array = np.max(np.abs(step), axis=-1)
    allowed: Array = np.where(length > longest, longest / np.where(length > 0, length, 1.0), 1.0)
    return step * allowed[:, np.newaxis]


def _searched(
    geometry: Geometry, start: Array, step: Array, residual: Array, potential: Array, target: Array
) -> tuple[Array, Contact, Array, Array]:
    """Return the cases moved along their step, shortened where the potential energy would not fall."""
    slope = np.sum(residual * step, axis=-1)  # of the potential energy along the step: negative
    share = np.ones(len(start))
    while True:
        d = start + share[:, np.newaxis] * step
        contact = geometry.contact(d)
        new_residual = geometry.forces(contact) - target
        new_potential = contact.energy - np.sum(target * d, axis=-1)
        # near the end the energy no longer tells steps apart: then the slope decides
        rounding = 1e-13 * (np.abs(contact.energy) + np.abs(contact.energy - new_potential))
        falls = new_potential <= potential + 1e-4 * share * slope + rounding
        too_far = np.sum(new_residual * step, axis=-1) > 0.9 * np.abs(slope)
        bad = (~falls | too_far) & (share > 1e-12)
        if not bad.any():
            return d, contact, new_residual, new_potential
        share = np.where(bad, share / 2, share)

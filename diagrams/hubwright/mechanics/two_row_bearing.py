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
from hubwright.mechanics.bearing_rows import Array, BallRows, Geometry, RollerRows
from hubwright.mechanics.constants import Value
from hubwright.mechanics.equivalent_load import TurningRing
from hubwright.mechanics.ring_equilibrium import equilibrium

BATCH = 1024  # cases solved together: few enough that their elements stay in the processor's cache


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
    every = geometry.raveled(shape)
    held = []
    for batch in _batches(len(load)):
        some = every.of(batch)
        motion, restless = equilibrium(some, some.target(load[batch]))
        if restless.size:
            case = batch.start + int(restless[0])
            raise NotConvergedError(case=case, load=load[case])
        held.append(_held(some, motion))
    return _row_loads(shape, held)


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
    every = geometry.raveled(shape)
    flat = np.broadcast_to(displacement, (*shape, 5)).reshape(-1, 5)
    held = []
    for batch in _batches(len(flat)):
        some = every.of(batch)
        held.append(_held(some, some.motion(flat[batch])))
    return _row_loads(shape, held)


def _held(geometry: Geometry, motion: Array) -> tuple[Array, Array, Array, Array]:
    """Return load and angle of every element (case, row, element), the ring's displacement, and the energy."""
    contact = geometry.contact(motion)
    load, cosine, sine, _, _ = contact.parts
    return (
        np.transpose(geometry.stiffness * load),
        np.transpose(np.arctan2(sine, cosine)),
        geometry.displacement(motion),
        contact.energy,
    )


def _row_loads(shape: tuple[int, ...], held: list[tuple[Array, Array, Array, Array]]) -> RowLoads:
    load, angle, displacement, energy = (np.concatenate(part) for part in zip(*held, strict=True))
    return RowLoads(
        load=load.reshape((*shape, *load.shape[1:])),
        angle=angle.reshape((*shape, *angle.shape[1:])),
        displacement=displacement.reshape((*shape, 5)),
        energy=energy.reshape(shape),
    )


def _batches(cases: int) -> list[slice]:
    return [slice(start, start + BATCH) for start in range(0, cases, BATCH)] or [slice(0)]

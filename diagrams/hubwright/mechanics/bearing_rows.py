"""Both rows of a back-to-back bearing: their geometry, and what their elements push back with when a ring moves.

The bearing centre is the origin; x forward, y outboard, z up. Metres, newtons, radians. Row 0 is the
outboard one. Element j stands at ψ = 2πj/Z from straight up toward the front.

Within, the case comes last, so that numpy runs along it: elements are (element, row, case). A ring's motion is
x, z, and the way that loads the outboard row −y, −θ_z R, θ_x R, all lengths, R the radius at which elements touch.
The inboard row is loaded by the last three reversed, and by nothing else it differs.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from hubwright.mechanics.bearing_contact import Ring, ball_curvature, ball_stiffness, point_contact_stiffness
from hubwright.mechanics.bearing_rating import gamma
from hubwright.mechanics.constants import Value
from hubwright.mechanics.roller_contact import roller_stiffness

Array: TypeAlias = NDArray[np.float64]
Chosen: TypeAlias = slice | NDArray[np.intp] | NDArray[np.bool_]  # of the cases

OUTBOARD, INBOARD = 0, 1
ORDER = [0, 2, 1, 4, 3]  # from x, y, z, about x, about z to x, z, −y, about −z, about x, and back again
SIGNS = np.array([1.0, 1.0, -1.0, -1.0, 1.0])
SECOND = [[3, 4], [4, 5]]  # squares and product of sine and cosine among 1, s, c, s², s c, c²


@dataclass(frozen=True)
class BallRows:
    """Both rows of a back-to-back ball bearing; every value but the number of balls may be an array.

    `preload` is the axial approach of each row when unloaded, negative: clearance. Conformities are
    groove radii over the ball's diameter.
    """

    balls_per_row: int
    ball_diameter: Value
    pitch_diameter: Value
    contact_angle: Value
    row_spacing: Value
    inner_conformity: Value = 0.52
    outer_conformity: Value = 0.52
    preload: Value = 0.0


@dataclass(frozen=True)
class RollerRows:
    """Both rows of a back-to-back pair of tapered rollers; every value but their number may be an array."""

    rollers_per_row: int
    roller_diameter: Value
    roller_length: Value
    pitch_diameter: Value
    contact_angle: Value
    row_spacing: Value
    preload: Value = 0.0


@dataclass(frozen=True)
class Contact:
    """All elements at one motion of the ring, and the energy in them [J] (case,).

    `parts` (5, element, row, case) are load, cosine and sine of the contact angle, and stiffness along the contact
    line and across it; load and stiffness are those for K = 1.
    """

    parts: Array
    energy: Array

    def of(self, chosen: Chosen) -> Contact:
        """Return some of the cases."""
        return Contact(self.parts[..., chosen], self.energy[chosen])

    def put(self, chosen: Chosen, other: Contact) -> None:
        """Put others in the place of some of the cases."""
        self.parts[..., chosen] = other.parts
        self.energy[chosen] = other.energy


@dataclass(frozen=True)
class Geometry:
    """Both rows, as arrays of any shape at the door and (case,) within, or (1,) for all cases."""

    balls: bool
    sines: Array
    cosines: Array
    radius: Array
    lever: Array  # of the row's plane over the radius
    rest_radial: Array  # of the vector from groove centre to groove centre; rollers: cos α
    rest_axial: Array  # the same; rollers: sin α
    rest_length: Array  # balls only
    preload: Array
    stiffness: Array

    @classmethod
    def of_rows(cls, rows: BallRows | RollerRows) -> Geometry:
        """Return the geometry of both rows, as the arrays that the rows were given."""
        rest: Value = 1.0
        beyond: Value = 0.0
        if isinstance(rows, BallRows):
            count = rows.balls_per_row
            rest = (rows.inner_conformity + rows.outer_conformity - 1) * rows.ball_diameter
            # of the inner ring's groove centres, which lie beyond the balls
            beyond = (rows.inner_conformity - 0.5) * rows.ball_diameter * np.cos(rows.contact_angle)
            stiffness = ball_stiffness(
                inner_stiffness=_raceway_stiffness(rows, rows.inner_conformity, "inner"),
                outer_stiffness=_raceway_stiffness(rows, rows.outer_conformity, "outer"),
            )
        else:
            count = rows.rollers_per_row
            stiffness = roller_stiffness(roller_length=rows.roller_length)
        psi = 2 * np.pi * np.arange(count) / count
        radius = rows.pitch_diameter / 2 + beyond
        lengths = (
            radius,
            rows.row_spacing / 2 / radius,
            rest * np.cos(rows.contact_angle),
            rest * np.sin(rows.contact_angle),
            rest,
            rows.preload,
            stiffness,
        )
        return cls(
            isinstance(rows, BallRows), np.sin(psi), np.cos(psi), *(np.asarray(part, dtype=float) for part in lengths)
        )

    @property
    def shape(self) -> tuple[int, ...]:
        """Shape of what varies from case to case."""
        return np.broadcast_shapes(*(np.shape(part) for part in self._lengths()))

    @property
    def power(self) -> float:
        """Of the approach in the load: 3/2 of balls, 10/9 of rollers."""
        return 1.5 if self.balls else 10 / 9

    def _lengths(self) -> tuple[Array, ...]:
        return (
            self.radius,
            self.lever,
            self.rest_radial,
            self.rest_axial,
            self.rest_length,
            self.preload,
            self.stiffness,
        )

    def raveled(self, shape: tuple[int, ...]) -> Geometry:
        """Return the geometry of all cases in a row, or one for all where there is only one."""
        one_for_all = self.shape == ()
        lengths = (np.ravel(part if one_for_all else np.broadcast_to(part, shape)) for part in self._lengths())
        return Geometry(self.balls, self.sines, self.cosines, *lengths)

    def of(self, chosen: Chosen) -> Geometry:
        """Return the geometry of some of the cases."""
        if self.radius.size == 1:
            return self
        return Geometry(self.balls, self.sines, self.cosines, *(part[chosen] for part in self._lengths()))

    def motion(self, displacement: Array) -> Array:
        """Return the ring's motion (5, case) from x, y, z and about x and z (case, 5)."""
        motion: Array = (displacement[:, ORDER] * SIGNS).T * self._scale()
        return motion

    def displacement(self, motion: Array) -> Array:
        """Return x, y, z and about x and z (case, 5) from the ring's motion (5, case)."""
        displacement: Array = ((motion / self._scale()).T * SIGNS)[:, ORDER]
        return displacement

    def target(self, load: Array) -> Array:
        """Return what works along the ring's motion (5, case) from forces and moments (case, 5)."""
        target: Array = (load[:, ORDER] * SIGNS).T / self._scale()
        return target

    def _scale(self) -> Array:
        one = np.ones_like(self.radius)
        return np.stack([one, one, one, self.radius, self.radius])

    def contact(self, motion: Array) -> Contact:
        """Return all elements at a motion of the ring (5, case)."""
        cases = motion.shape[1]
        x, z, y, turn_s, turn_c = motion
        lean_s, lean_c = self.lever * turn_s, self.lever * turn_c
        waves = np.empty((2, 3, 2, cases))  # radial and axial; steady, sine, cosine; row; case
        waves[0, 0] = 0.0
        waves[0, 1] = x + lean_s, x - lean_s
        waves[0, 2] = z + lean_c, z - lean_c
        waves[1, 0] = self.preload + y, self.preload - y
        waves[1, 1] = turn_s, -turn_s
        waves[1, 2] = turn_c, -turn_c
        radial, axial = self._sums(self._trigonometric().T, waves)
        return self._ball_contact(radial, axial) if self.balls else self._roller_contact(radial, axial)

    def _ball_contact(self, radial: Array, axial: Array) -> Contact:
        parts = np.empty((5, *radial.shape))
        load, cosine, sine, along, across = parts
        # length less rest length from the difference of their squares: exact for the smallest approach
        grown = radial * (radial + 2 * self.rest_radial)
        grown += axial * (axial + 2 * self.rest_axial)
        length = np.sqrt(grown + self.rest_length**2)
        grown /= length + self.rest_length
        approach = np.maximum(grown, 0.0, out=grown)
        root = np.sqrt(approach)
        np.multiply(root, approach, out=load)
        np.divide(radial + self.rest_radial, length, out=cosine)
        np.divide(axial + self.rest_axial, length, out=sine)
        np.multiply(root, 1.5, out=along)
        np.divide(load, length, out=across)
        return Contact(parts, 0.4 * self.stiffness * np.einsum("erc,erc->c", load, approach))

    def _roller_contact(self, radial: Array, axial: Array) -> Contact:
        parts = np.empty((5, *radial.shape))
        load, cosine, sine, along, across = parts
        cosine[:], sine[:], across[:] = self.rest_radial, self.rest_axial, 0.0
        approach = np.maximum(radial * cosine + axial * sine, 0.0)
        ninth = approach ** (1 / 9)
        np.multiply(ninth, approach, out=load)
        np.multiply(ninth, 10 / 9, out=along)
        return Contact(parts, 9 / 19 * self.stiffness * np.einsum("erc,erc->c", load, approach))

    def forces(self, contact: Contact) -> Array:
        """Return what all elements push back with along the ring's motion, (5, case)."""
        load, cosine, sine, _, _ = contact.parts
        pushes = np.empty((2, *load.shape))
        np.multiply(load, cosine, out=pushes[0])
        np.multiply(load, sine, out=pushes[1])
        outboard, inboard = np.moveaxis(self._sums(self._trigonometric(), pushes), 2, 0)
        radial = outboard[0] + inboard[0]
        leaning, axial = outboard - inboard
        turning = axial[1:] + self.lever * leaning[1:]
        forces: Array = self.stiffness * np.stack([radial[1], radial[2], axial[0], *turning])
        return forces

    def tangent(self, contact: Contact) -> Array:
        """Return the stiffness of the rings against their motion, (5, 5, case)."""
        _, cosine, sine, along, across = contact.parts
        turned = along - across
        kinds = np.empty((3, *turned.shape))  # along the radius, across the two, along the axis
        leaned = turned * cosine
        np.multiply(leaned, cosine, out=kinds[0])
        np.multiply(leaned, sine, out=kinds[1])
        np.multiply(turned * sine, sine, out=kinds[2])
        kinds[0] += across
        kinds[2] += across
        outboard, inboard = np.moveaxis(self._sums(self._squares(), kinds), 2, 0)
        (rr, ra, aa), (rr_apart, ra_apart, _) = outboard + inboard, outboard - inboard
        h = self.lever
        # an element moves by (s, c, 0, h s, h c) along the radius and (0, 0, 1, s, c) along the axis
        leaning = ra_apart + h * rr_apart
        arm = aa + h * ra
        turning = arm + h * (ra + h * rr)
        K = np.empty((5, 5, along.shape[-1]))
        K[:2, :2] = rr[SECOND]
        K[2, :2] = K[:2, 2] = ra_apart[1:3]
        K[:2, 3:] = K[3:, :2] = leaning[SECOND]
        K[2, 2] = aa[0]
        K[2, 3:] = K[3:, 2] = arm[1:3]
        K[3:, 3:] = turning[SECOND]
        K *= self.stiffness
        return K

    def _trigonometric(self) -> Array:
        return np.stack([np.ones_like(self.sines), self.sines, self.cosines])

    def _squares(self) -> Array:
        s, c = self.sines, self.cosines
        return np.concatenate([self._trigonometric(), [s * s, s * c, c * c]])

    @staticmethod
    def _sums(weights: Array, values: Array) -> Array:
        """Return weighted sums over the second axis of values (kind, axis, row, case), as one product of matrices."""
        kinds, along, *rest = values.shape
        sums: Array = np.matmul(weights, values.reshape(kinds, along, math.prod(rest))).reshape(
            kinds, len(weights), *rest
        )
        return sums


def _raceway_stiffness(rows: BallRows, conformity: Value, ring: Ring) -> Value:
    ratio = gamma(
        element_diameter=rows.ball_diameter, pitch_diameter=rows.pitch_diameter, contact_angle=rows.contact_angle
    )
    fit = ball_curvature(ball_diameter=rows.ball_diameter, conformity=conformity, gamma=ratio, ring=ring)
    return point_contact_stiffness(curvature=fit)

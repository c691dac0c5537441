"""Both rows of a back-to-back bearing: their geometry, and what their elements push back with when a ring moves.

The bearing centre is the origin; x forward, y outboard, z up. Metres, newtons, radians. Row 0 is the
outboard one. Element j stands at ψ = 2πj/Z from straight up toward the front.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from hubwright.mechanics.bearing_contact import Ring, ball_curvature, ball_stiffness, point_contact_stiffness
from hubwright.mechanics.bearing_rating import gamma
from hubwright.mechanics.constants import Value
from hubwright.mechanics.roller_contact import roller_stiffness

Array: TypeAlias = NDArray[np.float64]

OUTBOARD, INBOARD = 0, 1
ROW_SIDE = np.array([1.0, -1.0])[:, np.newaxis]  # of the row's plane on the y axis
ROW_PUSH = -ROW_SIDE  # way of the inner ring that loads the row: back to back, each row stops the other's


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
    """All elements at one displacement: (case, row, element); force and stiffness along radius and axis."""

    load: Array
    angle: Array
    radial: Array
    axial: Array
    radial_stiffness: Array
    axial_stiffness: Array
    cross_stiffness: Array
    energy: Array  # (case,)


@dataclass(frozen=True)
class Geometry:
    """Lengths as (case, 1, 1) arrays, or one case for all.

    Displacements are scaled: the two angles times the radius at which elements touch, so that all five
    are lengths of one size.
    """

    balls: bool
    sines: Array
    cosines: Array
    radius: Array
    half_spacing: Array
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
        lengths = (
            rows.pitch_diameter / 2 + beyond,
            rows.row_spacing / 2,
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

    def _lengths(self) -> tuple[Array, ...]:
        return (
            self.radius,
            self.half_spacing,
            self.rest_radial,
            self.rest_axial,
            self.rest_length,
            self.preload,
            self.stiffness,
        )

    def raveled(self, shape: tuple[int, ...]) -> Geometry:
        """Return the geometry of all cases in a row, or one for all where there is only one."""
        one_for_all = self.shape == ()
        lengths = (
            np.reshape(part if one_for_all else np.broadcast_to(part, shape), (-1, 1, 1)) for part in self._lengths()
        )
        return Geometry(self.balls, self.sines, self.cosines, *lengths)

    def of(self, chosen: NDArray[np.intp]) -> Geometry:
        """Return the geometry of some of the cases."""
        if self.radius.shape[0] == 1:
            return self
        return Geometry(self.balls, self.sines, self.cosines, *(part[chosen] for part in self._lengths()))

    @property
    def unscaled(self) -> Array:
        """What a scaled displacement is multiplied by: 1, 1, 1, 1/R, 1/R, (case, 5)."""
        turn = 1 / self.radius[:, 0, 0]
        one = np.ones_like(turn)
        return np.stack([one, one, one, turn, turn], axis=-1)

    def contact(self, displacement: Array) -> Contact:
        """Return all elements at a scaled displacement (case, 5)."""
        x, y, z, about_x, about_z = (displacement[:, i, np.newaxis, np.newaxis] for i in range(5))
        lever = ROW_SIDE * self.half_spacing / self.radius
        radial = (x - lever * about_z) * self.sines + (z + lever * about_x) * self.cosines
        axial = y + about_z * self.sines - about_x * self.cosines
        return self._ball_contact(radial, axial) if self.balls else self._roller_contact(radial, axial)

    def _ball_contact(self, radial: Array, axial: Array) -> Contact:
        moved = axial + ROW_PUSH * self.preload
        radial_now, axial_now = radial + self.rest_radial, moved + ROW_PUSH * self.rest_axial
        length = np.sqrt(radial_now**2 + axial_now**2)
        # length less rest length from the difference of their squares: exact for the smallest approach
        grown = radial * (radial_now + self.rest_radial) + moved * (axial_now + ROW_PUSH * self.rest_axial)
        approach = np.maximum(grown / (length + self.rest_length), 0.0)
        root = self.stiffness * np.sqrt(approach)
        load = root * approach
        along, across = 1.5 * root, load / length  # stiffness along the contact line and across it
        c, s = radial_now / length, axial_now / length
        turned = along - across
        return Contact(
            load=load,
            angle=np.arctan2(ROW_PUSH * axial_now, radial_now),
            radial=load * c,
            axial=load * s,
            radial_stiffness=across + turned * c**2,
            axial_stiffness=across + turned * s**2,
            cross_stiffness=turned * c * s,
            energy=0.4 * np.sum(load * approach, axis=(1, 2)),
        )

    def _roller_contact(self, radial: Array, axial: Array) -> Contact:
        c, s = self.rest_radial, ROW_PUSH * self.rest_axial
        approach = np.maximum(radial * c + axial * s + self.preload * self.rest_axial, 0.0)
        ninth = approach ** (1 / 9)
        load = self.stiffness * ninth * approach
        along = 10 / 9 * self.stiffness * ninth
        return Contact(
            load=load,
            angle=np.arctan2(self.rest_axial, self.rest_radial) + 0.0 * load,
            radial=load * c,
            axial=load * s,
            radial_stiffness=along * c**2,
            axial_stiffness=along * s**2,
            cross_stiffness=along * c * s,
            energy=9 / 19 * np.sum(load * approach, axis=(1, 2)),
        )

    def forces(self, contact: Contact) -> Array:
        """Return what all elements push back with: x, y, z and moments over R, (case, 5)."""
        lever = (ROW_SIDE * self.half_spacing / self.radius)[..., 0]
        up, forward = contact.radial @ self.cosines, contact.radial @ self.sines
        tilt_x = lever * up - contact.axial @ self.cosines
        tilt_z = contact.axial @ self.sines - lever * forward
        parts = (forward, contact.axial.sum(axis=2), up, tilt_x, tilt_z)
        return np.stack([part.sum(axis=1) for part in parts], axis=-1)

    def tangent(self, contact: Contact) -> Array:
        """Return the stiffness of the rings against scaled displacements, (case, 5, 5)."""
        s, c = self.sines, self.cosines
        basis = np.stack([np.ones_like(s), s, c, s * s, s * c, c * c], axis=-1)
        lever = (ROW_SIDE * self.half_spacing / self.radius)[..., 0]
        _, _, _, Sss, Ssc, Scc = np.moveaxis(contact.radial_stiffness @ basis, -1, 0)
        T1, Ts, Tc, Tss, Tsc, Tcc = np.moveaxis(contact.axial_stiffness @ basis, -1, 0)
        _, Us, Uc, Uss, Usc, Ucc = np.moveaxis(contact.cross_stiffness @ basis, -1, 0)
        # of a degree of freedom, radial and axial motion of an element: x (s, 0), y (0, 1), z (c, 0),
        # about x (h c, −c), about z (−h s, s), with the row's lever h over R
        h = lever
        rows = (
            (Sss, Us, Ssc, h * Ssc - Usc, Uss - h * Sss),
            (Us, T1, Uc, h * Uc - Tc, Ts - h * Us),
            (Ssc, Uc, Scc, h * Scc - Ucc, Usc - h * Ssc),
            (
                h * Ssc - Usc,
                h * Uc - Tc,
                h * Scc - Ucc,
                h * h * Scc - 2 * h * Ucc + Tcc,
                2 * h * Usc - h * h * Ssc - Tsc,
            ),
            (
                Uss - h * Sss,
                Ts - h * Us,
                Usc - h * Ssc,
                2 * h * Usc - h * h * Ssc - Tsc,
                h * h * Sss - 2 * h * Uss + Tss,
            ),
        )
        return np.stack([np.stack([entry.sum(axis=1) for entry in row], axis=-1) for row in rows], axis=-2)


def _raceway_stiffness(rows: BallRows, conformity: Value, ring: Ring) -> Value:
    ratio = gamma(
        element_diameter=rows.ball_diameter, pitch_diameter=rows.pitch_diameter, contact_angle=rows.contact_angle
    )
    fit = ball_curvature(ball_diameter=rows.ball_diameter, conformity=conformity, gamma=ratio, ring=ring)
    return point_contact_stiffness(curvature=fit)

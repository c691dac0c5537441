"""The wheel end as a beam: the spindle on its two pressure centres under the wheel's load, in closed form.

x runs inboard from the outboard pressure centre. Forces and deflections are positive upward, V is the
sum of the upward forces outboard of the cut, M is positive when sagging: dM/dx = V. Metres, newtons.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from hubwright.mechanics.constants import STEEL_YOUNGS_MODULUS, Value


@dataclass(frozen=True)
class SpindleBeam:
    """A spindle on two supports `spread` apart [m] with one upward load [N] at `load_at` [m]."""

    load: Value
    load_at: Value
    spread: Value

    @property
    def reaction_outboard(self) -> Value:
        """Force of the outboard support on the spindle, upward positive: the row load's opposite [N]."""
        return -self.load * (1 - self.load_at / self.spread)

    @property
    def reaction_inboard(self) -> Value:
        """Force of the inboard support on the spindle, upward positive [N]."""
        return -self.load * self.load_at / self.spread

    @property
    def peak_at(self) -> Value:
        """Where the bending moment is largest: at the load, or at the near support when it is overhung [m]."""
        return np.clip(self.load_at, 0.0, self.spread)

    @property
    def peak_moment(self) -> Value:
        """The largest bending moment, with its sign [N·m]."""
        return self.moment(self.peak_at)

    @property
    def overhang(self) -> Value:
        """How far the load lies outside the supports; zero between them [m]."""
        return np.maximum(0.0, np.maximum(-self.load_at, self.load_at - self.spread))

    def shear(self, x: Value) -> Value:
        """Return V at x, right of a step [N]."""
        return self._brackets(x, 0)

    def moment(self, x: Value) -> Value:
        """Return M at x [N·m]."""
        return self._brackets(x, 1)

    def shape(self, x: Value) -> Value:
        """Return E·I times the deflection at x, for a drawing without a known diameter [N·m³]."""
        # the straight line that makes the deflection zero at both supports
        at_outboard = self._brackets(0.0, 3)
        at_inboard = self._brackets(self.spread, 3)
        return self._brackets(x, 3) - at_outboard - (at_inboard - at_outboard) * x / self.spread

    def slope(self, x: Value, *, flexural_rigidity: Value) -> Value:
        """Return the slope dv/dx at x for a given E·I [rad]."""
        chord = (self._brackets(self.spread, 3) - self._brackets(0.0, 3)) / self.spread
        return (self._brackets(x, 2) - chord) / flexural_rigidity

    def deflection(self, x: Value, *, flexural_rigidity: Value) -> Value:
        """Return the deflection at x for a given E·I, upward positive [m]."""
        return self.shape(x) / flexural_rigidity

    def _brackets(self, x: Value, power: int) -> Value:
        """Return Σ F⟨x − a⟩^p/p! over the load and both reactions."""
        forces = (
            (self.load, self.load_at),
            (self.reaction_outboard, 0.0),
            (self.reaction_inboard, self.spread),
        )
        result: Value = 0.0
        for force, at in forces:
            bracket = np.where(x >= at, 1.0, 0.0) * np.maximum(x - at, 0.0) ** power / math.factorial(power)
            result = result + force * bracket
        return result


def spindle_beam(*, bearing_force: Value, bearing_moment: Value, side: Value, effective_spread: Value) -> SpindleBeam:
    """Return the spindle as a beam on its two pressure centres, loaded by the vertical bearing force.

    Force and moment of the bearing together are one force off the bearing centre. Its place decides:
    between the pressure centres the bending peaks at the load, outside them at the near support, and
    the far row's load reverses. Spindle bending is not the moment about the bearing centre.

        u = s M_x/B_z outboard of the centre,    load_at = ℓ/2 − u

    Parameters
    ----------
    bearing_force
        B_z, vertical bearing force [N].
    bearing_moment
        M_x about the bearing centre [N·m].
    side
        s, +1 at a left wheel and −1 at a right one [1].
    effective_spread
        ℓ, between the two pressure centres [m].

    Returns
    -------
    SpindleBeam
        Reactions, shear, moment and deflection [N, N·m, m].

    Notes
    -----
    The vertical plane only; all of the load acts at one place. Without a vertical bearing force there is
    no such place and the result is not finite.

    Examples
    --------
    >>> beam = spindle_beam(bearing_force=6000.0, bearing_moment=60.0, side=1, effective_spread=0.06)
    >>> round(float(beam.load_at), 6)  # 10 mm outboard of the centre: 20 mm inboard of the outboard row
    0.02
    >>> round(float(beam.reaction_outboard), 6), round(float(beam.reaction_inboard), 6)  # 2/3 and 1/3
    (-4000.0, -2000.0)
    >>> round(float(beam.peak_moment), 6)  # −6000·0.02·0.04/0.06
    -80.0

    References
    ----------
    Bernoulli's beam on two supports, as in any text on mechanics of materials.
    """
    outboard = side * bearing_moment / bearing_force
    return SpindleBeam(load=bearing_force, load_at=effective_spread / 2 - outboard, spread=effective_spread)


def flexural_rigidity(*, diameter: Value, youngs_modulus: Value = STEEL_YOUNGS_MODULUS) -> Value:
    """Return the bending stiffness E·I of a round spindle.

    It goes with the fourth power of the diameter.

        E I = E π d⁴/64

    Parameters
    ----------
    diameter
        d, of the solid round spindle [m].
    youngs_modulus
        E, steel by default [Pa].

    Returns
    -------
    Value
        E·I [N·m²].

    Notes
    -----
    A solid spindle of one diameter; a hub bored through or stepped is not this.

    Examples
    --------
    >>> round(flexural_rigidity(diameter=0.04, youngs_modulus=200e9))  # 200e9·π·0.04⁴/64
    25133

    References
    ----------
    Second moment of area of a circle.
    """
    return youngs_modulus * math.pi * diameter**4 / 64


def cantilever_deflection(*, load: Value, overhang: Value, flexural_rigidity: Value) -> Value:
    """Return how far the end of a cantilever moves under a load at its end.

    The limiting simplification of an overhung spindle: the supports hold its root without turning.

        v = F a³/(3 E I)

    Parameters
    ----------
    load
        F, upward positive [N].
    overhang
        a, from the root to the load [m].
    flexural_rigidity
        E·I [N·m²].

    Returns
    -------
    Value
        v, upward positive [m].

    Notes
    -----
    Less than the overhung spindle on two supports moves, whose root turns: a²(ℓ + a) there, a³ here.

    Examples
    --------
    >>> cantilever_deflection(load=600.0, overhang=1.0, flexural_rigidity=200.0)
    1.0

    References
    ----------
    Any text on mechanics of materials.
    """
    return load * overhang**3 / (3 * flexural_rigidity)

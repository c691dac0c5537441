"""The textbook way from the loads of a pair of rows to one equivalent load per row, ISO 281.

Each row's radial load makes a thrust of its own, the pair shares the outer thrust, and factors X and Y
turn radial and axial load into one. Newtons, radians.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from hubwright.mechanics.bearing_rating import Elements
from hubwright.mechanics.constants import Flag, Value

TurningRing = Literal["inner", "outer"]

# ISO 281:2007 Table 3, single-row angular contact (e from memory, X and Y recomputed; document not opened)
ANGLES = np.radians([20.0, 25.0, 30.0, 35.0, 40.0, 45.0])
FACTOR_E = (0.57, 0.68, 0.80, 0.95, 1.14, 1.34)
FACTOR_X = (0.43, 0.41, 0.39, 0.37, 0.35, 0.33)
FACTOR_Y = (1.00, 0.87, 0.76, 0.66, 0.57, 0.50)


@dataclass(frozen=True)
class LoadFactors:
    """Factors e, X and Y of ISO 281: above F_a/F_r = e the axial load counts [1]."""

    e: Value
    X: Value
    Y: Value


@dataclass(frozen=True)
class RowThrusts:
    """Axial load of each row [N], and whether a row carries no more than its own induced thrust."""

    outboard: Value
    inboard: Value
    outboard_own: Flag
    inboard_own: Flag


def load_factors(*, contact_angle: Value, elements: Elements) -> LoadFactors:
    """Return the factors with which a row's radial and axial load become one equivalent load.

    A steep contact angle takes thrust easily: its axial load counts late and little.

        balls: the standard's table, linear between its rows;  rollers: e = 1.5 tan α, X = 0.4, Y = 0.4 cot α

    Parameters
    ----------
    contact_angle
        α, nominal [rad].
    elements
        "balls" or "rollers".

    Returns
    -------
    LoadFactors
        e, X and Y [1].

    Notes
    -----
    Balls from 20° to 45°, where the table is; outside it the factors are not a number.

    Examples
    --------
    >>> factors = load_factors(contact_angle=np.radians(32.5), elements="balls")
    >>> round(float(factors.e), 4), round(float(factors.X), 4), round(float(factors.Y), 4)  # midway of 30° and 35°
    (0.875, 0.38, 0.71)

    References
    ----------
    ISO 281:2007, Tables 3 and 8 (recalled, document not opened).
    """
    if elements == "rollers":
        tangent = np.tan(contact_angle)
        return LoadFactors(e=1.5 * tangent, X=0.4, Y=0.4 / tangent)
    e, X, Y = (
        np.interp(contact_angle, ANGLES, column, left=np.nan, right=np.nan) for column in (FACTOR_E, FACTOR_X, FACTOR_Y)
    )
    return LoadFactors(e=e, X=X, Y=Y)


def induced_thrust(*, radial_load: Value, factors: LoadFactors, elements: Elements) -> Value:
    """Return the thrust that a row's radial load makes by itself.

    The contact lines are inclined, so a radial load pushes the rings apart; the other row must hold it.

        balls: S = e F;  tapered rollers: S = F/(2 Y)

    Parameters
    ----------
    radial_load
        F, row radial load [N].
    factors
        e, X and Y of the row [1].
    elements
        "balls" or "rollers".

    Returns
    -------
    Value
        S [N].

    Notes
    -----
    Of a row whose load zone is about half of it.

    Examples
    --------
    >>> induced_thrust(radial_load=1000.0, factors=LoadFactors(e=0.8, X=0.39, Y=0.76), elements="balls")
    800.0
    >>> induced_thrust(radial_load=1000.0, factors=LoadFactors(e=0.45, X=0.4, Y=1.25), elements="rollers")
    400.0

    References
    ----------
    Common practice of the trade's catalogues, no source.
    """
    return factors.e * radial_load if elements == "balls" else radial_load / (2 * factors.Y)


def row_thrusts(
    *, induced_outboard: Value, induced_inboard: Value, thrust: Value, turning_ring: TurningRing = "inner"
) -> RowThrusts:
    """Return the axial load of each row of a back-to-back pair.

    One row carries its own induced thrust, the other that and the outer thrust.

        S_B + K ≥ S_A:  F_aA = S_B + K, F_aB = S_B;   else  F_aA = S_A, F_aB = S_A − K

    Parameters
    ----------
    induced_outboard
        S_A of the outboard row [N].
    induced_inboard
        S_B of the inboard row [N].
    thrust
        K, bearing force toward the vehicle: −B_y at a left, +B_y at a right wheel [N].
    turning_ring
        "inner" where the hub turns with the inner rings; on a stub axle the "outer" rings turn, and
        thrust toward the vehicle loads row B instead.

    Returns
    -------
    RowThrusts
        F_aA and F_aB [N], and which row carries its own S only.

    Notes
    -----
    Holds for either sign of K. No preload.

    Examples
    --------
    >>> rows = row_thrusts(induced_outboard=500.0, induced_inboard=300.0, thrust=1000.0)
    >>> float(rows.outboard), float(rows.inboard)
    (1300.0, 300.0)

    References
    ----------
    Common practice of the trade's catalogues, no source; equilibrium along the axis.
    """
    if turning_ring == "outer":
        turned = row_thrusts(induced_outboard=induced_inboard, induced_inboard=induced_outboard, thrust=thrust)
        return RowThrusts(turned.inboard, turned.outboard, turned.inboard_own, turned.outboard_own)
    pushed = induced_inboard + thrust >= induced_outboard
    return RowThrusts(
        outboard=np.where(pushed, induced_inboard + thrust, induced_outboard),
        inboard=np.where(pushed, induced_inboard, induced_outboard - thrust),
        outboard_own=np.logical_not(pushed),
        inboard_own=pushed,
    )


def equivalent_load(*, radial_load: Value, axial_load: Value, factors: LoadFactors, own_thrust: Flag = False) -> Value:
    """Return the radial load that would tire a row as its radial and axial load together do.

        P = max(F, X F + Y F_a)  where F_a > e F and more than its own thrust, else  P = F

    It is what the rating is compared with.

    Parameters
    ----------
    radial_load
        F, row radial load [N].
    axial_load
        F_a, axial load of the row [N].
    factors
        e, X and Y of the row [1].
    own_thrust
        Whether the row carries no more than its own induced thrust.

    Returns
    -------
    Value
        P [N].

    Notes
    -----
    A row's own thrust is part of its radial rating.

    Examples
    --------
    >>> factors = LoadFactors(e=0.95, X=0.37, Y=0.66)
    >>> float(equivalent_load(radial_load=1000.0, axial_load=2000.0, factors=factors))  # 370 + 1320
    1690.0

    References
    ----------
    ISO 281:2007, 5.2 (recalled, document not opened).
    """
    counts = (axial_load > factors.e * radial_load) & np.logical_not(own_thrust)
    combined = factors.X * radial_load + factors.Y * axial_load
    return np.where(counts, np.maximum(radial_load, combined), radial_load)

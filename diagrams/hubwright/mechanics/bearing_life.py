"""From a row's equivalent load to life: one row, two rows, a whole duty, and when the standard holds.

Lives in revolutions with ten in a hundred such bearings flaked. A life without load is infinite.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from hubwright.mechanics.bearing_rating import Elements
from hubwright.mechanics.constants import Flag, Value

MILLION = 1e6
LOAD_EXPONENT = {"balls": 3.0, "rollers": 10 / 3}  # ISO 281:2007 (recalled, document not opened)
WEIBULL_SLOPE = {"balls": 10 / 9, "rollers": 9 / 8}  # ISO/TR 1281-1 (recalled, document not opened)
SURVIVORS = (0.90, 0.95, 0.99)  # of which factors for reliability are told
LARGEST_SHARE_OF_RATING = 0.5  # P/C₁ above which ISO 281 does not hold (from memory)


def row_life(*, dynamic_rating: Value, equivalent_load: Value, elements: Elements) -> Value:
    """Return the basic life of one row.

    Balls: twice the load is an eighth of the life.

        L = (C₁/P)^p million revolutions,   p = 3 (balls), 10/3 (rollers)

    Parameters
    ----------
    dynamic_rating
        C₁ of the row [N].
    equivalent_load
        P of the row [N].
    elements
        "balls" or "rollers".

    Returns
    -------
    Value
        L, infinite without load [revolutions].

    Notes
    -----
    See `within_range` for where it holds.

    Examples
    --------
    >>> float(row_life(dynamic_rating=20e3, equivalent_load=10e3, elements="balls"))
    8000000.0

    References
    ----------
    ISO 281:2007, 5.3 and 7.3 (recalled, document not opened).
    """
    with np.errstate(divide="ignore"):
        return MILLION * np.divide(dynamic_rating, equivalent_load) ** LOAD_EXPONENT[elements]


def system_life(lives: Sequence[Value], *, elements: Elements) -> Value:
    """Return the life of rows of which the first to flake ends them all.

    Shorter than the shortest: two equal rows live 0.54 times as long as one.

        L = (Σ Lᵢ^(−e))^(−1/e),   e = 10/9 (balls), 9/8 (rollers)

    Parameters
    ----------
    lives
        Lᵢ of each row [revolutions].
    elements
        "balls" or "rollers".

    Returns
    -------
    Value
        L of all together [revolutions].

    Notes
    -----
    The lives of the rows scatter independently with one Weibull slope.

    Examples
    --------
    >>> round(float(system_life([1e6, 1e6], elements="balls")) / 1e6, 4)  # 2^(−9/10)
    0.5359

    References
    ----------
    ISO/TR 1281-1 (recalled, document not opened).
    """
    slope = WEIBULL_SLOPE[elements]
    wear: Value = 0.0
    with np.errstate(divide="ignore"):
        for life in lives:
            wear = wear + np.power(life, -slope)
        result: Value = np.power(wear, -1 / slope)
    return result


def within_range(*, equivalent_load: Value, dynamic_rating: Value, static_rating: Value) -> Flag:
    """Return whether a row's load lies in the range for which the life formula holds.

    Beyond it no life is stated, only that the load is severe.

        P ≤ 0.5 C₁  and  P ≤ C0₁

    Parameters
    ----------
    equivalent_load
        P of the row [N].
    dynamic_rating
        C₁ of the row [N].
    static_rating
        C0₁ of the row [N].

    Returns
    -------
    Flag
        True where it holds [1].

    Notes
    -----
    A duty counts such a case all the same, and is marked.

    Examples
    --------
    >>> within_range(equivalent_load=9e3, dynamic_rating=20e3, static_rating=12e3)
    True

    References
    ----------
    ISO 281:2007 (from memory).
    """
    return (equivalent_load <= LARGEST_SHARE_OF_RATING * dynamic_rating) & (equivalent_load <= static_rating)


def duty_life(*, shares: Sequence[Value], lives: Sequence[Value]) -> Value:
    """Return the life over a mixture of cases.

    Each case uses up its share of the life that it alone would allow.

        1/L = Σ shareᵢ/Lᵢ

    Parameters
    ----------
    shares
        Shares of the revolutions, sum 1 [1].
    lives
        Lᵢ under each case alone [revolutions].

    Returns
    -------
    Value
        L [revolutions].

    Notes
    -----
    The order of the cases does not matter; an unloaded case uses up nothing.

    Examples
    --------
    >>> float(duty_life(shares=[0.5, 0.5], lives=[1e6, 3e6]))
    1500000.0

    References
    ----------
    Palmgren (1924), Miner (1945): linear damage.
    """
    used: Value = 0.0
    for share, life in zip(shares, lives, strict=True):
        used = used + np.divide(share, life)
    with np.errstate(divide="ignore"):
        result: Value = np.divide(1.0, used)
    return result


def life_distance(*, life: Value, rolling_circumference: Value) -> Value:
    """Return the distance that a life is worth.

        s = L U

    Shown to one digit, and only with its span.

    Parameters
    ----------
    life
        L [revolutions].
    rolling_circumference
        U, distance per turn of the wheel [m].

    Returns
    -------
    Value
        s [m].

    Notes
    -----
    Water, dents and slack usually end a hub sooner.

    Examples
    --------
    >>> life_distance(life=100e6, rolling_circumference=2.5)
    250000000.0

    References
    ----------
    Geometry.
    """
    return life * rolling_circumference


def reliability_factor(*, survivors: Value) -> Value:
    """Return how much of the basic life is left when more than nine in ten are to survive.

        a1 = 0.05 + 0.95·(ln(100/S)/ln(100/90))^(1/1.5)

    Bearings scatter: one in a hundred flakes after a quarter of the basic life.

    Parameters
    ----------
    survivors
        S/100, from 0.9 up [1].

    Returns
    -------
    Value
        a1 [1].

    Notes
    -----
    A twentieth of the basic life is taken to be free of flaking.

    Examples
    --------
    >>> round(float(reliability_factor(survivors=0.99)), 2)
    0.25

    References
    ----------
    ISO 281:2007, Table 12; derivation ISO/TR 1281-2 (recalled, documents not opened).
    """
    failing_share: Value = np.log(survivors) / np.log(0.9)
    return 0.05 + 0.95 * failing_share ** (1 / 1.5)

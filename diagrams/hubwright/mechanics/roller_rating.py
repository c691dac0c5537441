"""Dynamic and static ratings of tapered roller bearings from their geometry, ISO 281 and ISO 76.

SI at the door; inside the standard's formulas N and mm, as they are printed. Angles in radians.
"""

from __future__ import annotations

import numpy as np

from hubwright.mechanics.bearing_rating import gamma as gamma_of
from hubwright.mechanics.constants import Value

MATERIAL_FACTOR = 1.1  # bm of tapered rollers, ISO 281:2007 (recalled, document not opened)
STATIC_PRESSURE = 4000e6  # Pa, ISO 76: a dent of a ten-thousandth of the roller


def roller_rating_factor(*, gamma: Value) -> Value:
    """Return the factor fc of the dynamic rating of a roller bearing.

        fc = 207.9·0.83·[1 + (1.04((1−γ)/(1+γ))^(143/108))^(9/2)]^(−2/9)
             · γ^(2/9)·(1−γ)^(29/27)/(1+γ)^(1/4)

    What geometry other than size and number of rollers does to the rating.

    Parameters
    ----------
    gamma
        γ, see `gamma` [1].

    Returns
    -------
    Value
        fc, for N and mm [1].

    Notes
    -----
    The largest value, for rollers and raceways whose load is spread evenly along the roller.

    Examples
    --------
    >>> round(float(roller_rating_factor(gamma=0.01)), 1)  # the standard's table says 52.1
    52.1

    References
    ----------
    ISO 281:2007, Table 7; formula ISO/TR 1281-1 (recalled, documents not opened).
    """
    rings = 1.04 * ((1 - gamma) / (1 + gamma)) ** (143 / 108)
    size = gamma ** (2 / 9) * (1 - gamma) ** (29 / 27) / (1 + gamma) ** 0.25
    return 207.9 * 0.83 * (1 + rings**4.5) ** (-2 / 9) * size


def roller_dynamic_rating(
    *,
    rows: Value,
    rollers_per_row: Value,
    roller_diameter: Value,
    roller_length: Value,
    pitch_diameter: Value,
    contact_angle: Value,
) -> Value:
    """Return the basic dynamic rating of a tapered roller bearing.

    The radial load that nine in ten of such bearings bear for a million turns.

        C = bm·fc·(i L cos α)^(7/9)·Z^(3/4)·D^(29/27)   (N, mm)

    Parameters
    ----------
    rows
        i, number of rows [1].
    rollers_per_row
        Z [1].
    roller_diameter
        D, mean [m].
    roller_length
        L, effective [m].
    pitch_diameter
        D_pw [m].
    contact_angle
        α, half the cup angle [rad].

    Returns
    -------
    Value
        C of the whole bearing [N].

    Notes
    -----
    Two rows bear 2^(7/9) times one row.

    Examples
    --------
    >>> sizes = dict(rollers_per_row=17, roller_diameter=0.008, roller_length=0.012, pitch_diameter=0.05)
    >>> ratio = roller_dynamic_rating(rows=2, contact_angle=0.3, **sizes) / roller_dynamic_rating(
    ...     rows=1, contact_angle=0.3, **sizes
    ... )
    >>> round(float(ratio), 6)  # 2^(7/9)
    1.714488

    References
    ----------
    ISO 281:2007, 7.1 (recalled, document not opened).
    """
    fc = roller_rating_factor(
        gamma=gamma_of(element_diameter=roller_diameter, pitch_diameter=pitch_diameter, contact_angle=contact_angle)
    )
    length = (rows * roller_length * 1e3 * np.cos(contact_angle)) ** (7 / 9)
    return MATERIAL_FACTOR * fc * length * rollers_per_row**0.75 * (roller_diameter * 1e3) ** (29 / 27)


def roller_static_rating(
    *,
    rows: Value,
    rollers_per_row: Value,
    roller_diameter: Value,
    roller_length: Value,
    pitch_diameter: Value,
    contact_angle: Value,
) -> Value:
    """Return the basic static rating of a tapered roller bearing.

    From 4000 MPa under the most loaded roller.

        C0 = 44·(1 − γ)·i·Z·L·D·cos α   (N, mm)

    Parameters
    ----------
    rows
        i, number of rows [1].
    rollers_per_row
        Z [1].
    roller_diameter
        D, mean [m].
    roller_length
        L, effective [m].
    pitch_diameter
        D_pw [m].
    contact_angle
        α, half the cup angle [rad].

    Returns
    -------
    Value
        C0 of the whole bearing [N].

    Notes
    -----
    No edge stress.

    Examples
    --------
    >>> sizes = dict(rollers_per_row=10, roller_diameter=0.01, roller_length=0.01, pitch_diameter=0.05)
    >>> float(roller_static_rating(rows=1, contact_angle=0.0, **sizes))  # 44·0.8·10·10·10
    35200.0

    References
    ----------
    ISO 76:2006, 6.1 (recalled, document not opened).
    """
    flat = 1 - gamma_of(element_diameter=roller_diameter, pitch_diameter=pitch_diameter, contact_angle=contact_angle)
    return 44 * flat * rows * rollers_per_row * roller_length * roller_diameter * 1e6 * np.cos(contact_angle)

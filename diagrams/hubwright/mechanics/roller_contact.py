"""Hertz contact of a roller with its raceways: pressure and stiffness of a line contact.

Metres, newtons, pascals, radians.
"""

from __future__ import annotations

import math

import numpy as np

from hubwright.mechanics.bearing_contact import Ring
from hubwright.mechanics.constants import STEEL_POISSONS_RATIO, STEEL_YOUNGS_MODULUS, Value

ROLLER_COEFFICIENT = 35948.0  # N, mm: Q = 35948 L^(8/9) δ^(10/9), ISO/TS 16281 (from memory)


def roller_curvature_sum(*, roller_diameter: Value, gamma: Value, ring: Ring) -> Value:
    """Return the sum of curvatures of a roller on a raceway.

        Σρ = 2/(D (1 ∓ γ)),   − at the inner, + at the outer ring

    Parameters
    ----------
    roller_diameter
        D, mean diameter of the roller [m].
    gamma
        γ = D cos α/D_pw [1].
    ring
        Which raceway.

    Returns
    -------
    Value
        Σρ [1/m].

    Notes
    -----
    No crowning.

    Examples
    --------
    >>> round(roller_curvature_sum(roller_diameter=0.01, gamma=0.2, ring="inner"), 6)
    250.0

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., chapter 2 (recalled, document not opened).
    """
    return 2 / (roller_diameter * (1 - gamma if ring == "inner" else 1 + gamma))


def line_contact_pressure(
    *,
    load: Value,
    roller_length: Value,
    curvature_sum: Value,
    youngs_modulus: Value = STEEL_YOUNGS_MODULUS,
    poissons_ratio: Value = STEEL_POISSONS_RATIO,
) -> Value:
    """Return the largest pressure between a roller and its raceway.

    It grows with the square root of the load.

        p = √(Q E Σρ/(2 π (1 − ν²) L))

    Parameters
    ----------
    load
        Q [N].
    roller_length
        L, effective length of the roller [m].
    curvature_sum
        Σρ [1/m].
    youngs_modulus
        E of both bodies, bearing steel by default [Pa].
    poissons_ratio
        ν of both bodies [1].

    Returns
    -------
    Value
        p, in the middle of the strip [Pa].

    Notes
    -----
    The same along the whole roller: no tilt, no edge stress.

    Examples
    --------
    >>> strip = {"roller_length": 0.015, "curvature_sum": 250.0}
    >>> one, four = (float(line_contact_pressure(load=Q, **strip)) for Q in (1000.0, 4000.0))
    >>> round(four / one, 9)
    2.0

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., eq. 6.48 to 6.52 (recalled, document not opened).
    """
    compliance = 2 * math.pi * (1 - poissons_ratio**2) * roller_length / (youngs_modulus * curvature_sum)
    return np.sqrt(load / compliance)


def load_at_line_contact_pressure(
    *,
    pressure: Value,
    roller_length: Value,
    curvature_sum: Value,
    youngs_modulus: Value = STEEL_YOUNGS_MODULUS,
    poissons_ratio: Value = STEEL_POISSONS_RATIO,
) -> Value:
    """Return the load at which the largest pressure under a roller reaches a value.

        Q = 2 π (1 − ν²) L p²/(E Σρ)

    The inverse of `line_contact_pressure`.

    Parameters
    ----------
    pressure
        p [Pa].
    roller_length
        L, effective length of the roller [m].
    curvature_sum
        Σρ [1/m].
    youngs_modulus
        E of both bodies, bearing steel by default [Pa].
    poissons_ratio
        ν of both bodies [1].

    Returns
    -------
    Value
        Q [N].

    Notes
    -----
    The same along the whole roller: no tilt, no edge stress.

    Examples
    --------
    >>> strip = {"roller_length": 0.015, "curvature_sum": 250.0}
    >>> pressure = line_contact_pressure(load=1000.0, **strip)
    >>> round(float(load_at_line_contact_pressure(pressure=pressure, **strip)), 6)
    1000.0

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., eq. 6.48 to 6.52 (recalled, document not opened).
    """
    return 2 * math.pi * (1 - poissons_ratio**2) * roller_length * pressure**2 / (youngs_modulus * curvature_sum)


def roller_stiffness(*, roller_length: Value) -> Value:
    """Return the stiffness of a roller between both raceways.

    Nearly a straight line, far stiffer than a ball, and hardly dependent on the diameter.

        Q = K δ^(10/9),   K = 35948 L^(8/9)   in N and mm

    Parameters
    ----------
    roller_length
        L, effective length of the roller [m].

    Returns
    -------
    Value
        K [N/m^(10/9)].

    Notes
    -----
    Both contacts together, steel.

    Examples
    --------
    >>> load = roller_stiffness(roller_length=0.001) * 1e-3 ** (10 / 9)  # 1 mm of roller, 1 mm of approach
    >>> round(float(load), 6)
    35948.0

    References
    ----------
    ISO/TS 16281:2008, 5.3 (from memory).
    """
    millimetre = 1e-3
    stiffness: Value = ROLLER_COEFFICIENT * np.power(roller_length / millimetre, 8 / 9) / millimetre ** (10 / 9)
    return stiffness

"""Hertz contact of a ball with its raceways: approach, patch, pressure, stiffness.

Point contact with exact elliptic integrals. Metres, newtons, pascals, radians.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np

from hubwright.mechanics.constants import STEEL_POISSONS_RATIO, STEEL_YOUNGS_MODULUS, Value

Ring = Literal["inner", "outer"]

NEWTON_STEPS = 7  # from the power law, a ratio of curvatures of 1e6 included
NEARLY_ROUND = 1e-4  # below this the integrals cancel, and the series errs by its cube


@dataclass(frozen=True)
class Curvature:
    """Sum of the four principal curvatures of two bodies in contact [1/m], and their relative difference [1]."""

    sum: Value
    difference: Value


@dataclass(frozen=True)
class ContactShape:
    """Dimensionless semiaxes and approach of an elliptic contact, a*, b*, δ* in Harris's letters [1]."""

    semimajor: Value
    semiminor: Value
    approach: Value


def ball_curvature(*, ball_diameter: Value, conformity: Value, gamma: Value, ring: Ring) -> Curvature:
    """Return how closely a ball fits the groove of a raceway.

    The closer the fit, the larger the patch and the lower the pressure.

        inner:  Σρ = (4 − 1/f + 2γ/(1 − γ))/D,   F = (1/f + 2γ/(1 − γ))/(D Σρ)
        outer:  Σρ = (4 − 1/f − 2γ/(1 + γ))/D,   F = (1/f − 2γ/(1 + γ))/(D Σρ)

    Parameters
    ----------
    ball_diameter
        D [m].
    conformity
        f, groove radius over ball diameter, above 0.5 [1].
    gamma
        γ = D cos α/D_pw [1].
    ring
        Which raceway.

    Returns
    -------
    Curvature
        Σρ [1/m] and F(ρ) [1].

    Notes
    -----
    At the nominal contact angle.

    Examples
    --------
    >>> fit = ball_curvature(ball_diameter=0.0125, conformity=0.5, gamma=0.0, ring="inner")
    >>> fit.sum, fit.difference  # 2/12.5 mm, and a groove that fits round the whole ball
    (160.0, 1.0)

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., eq. 2.28 to 2.31 (recalled, document not opened).
    """
    turn = 2 * gamma / (1 - gamma) if ring == "inner" else -2 * gamma / (1 + gamma)
    total = 4 - 1 / conformity + turn
    return Curvature(sum=total / ball_diameter, difference=(1 / conformity + turn) / total)


def contact_shape(*, curvature_difference: Value) -> ContactShape:
    """Return the shape of an elliptic contact from the difference of curvatures.

    Everything else about a point contact is this shape times a size.

        F(ρ) = ((κ² + 1)E − 2K)/((κ² − 1)E),   κ = a/b
        a* = (2κ²E/π)^(1/3),  b* = (2E/(πκ))^(1/3),  δ* = (2K/π)·(π/(2κ²E))^(1/3)

    with the complete elliptic integrals K and E of the parameter 1 − 1/κ².

    Parameters
    ----------
    curvature_difference
        F(ρ), from 0 (round) to below 1 (a line) [1].

    Returns
    -------
    ContactShape
        a*, b* and δ* [1].

    Notes
    -----
    κ is found by Newton's method on ln((κ²E − K)/(K − E)) = ln((1 + F)/(1 − F)), nearly a straight line
    in ln κ.

    Examples
    --------
    >>> shape = contact_shape(curvature_difference=0.0)
    >>> float(shape.semimajor), float(shape.semiminor), float(shape.approach)
    (1.0, 1.0, 1.0)

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., eq. 6.24 to 6.38 (recalled, document not opened).
    """
    from scipy.special import ellipe, ellipk  # slow to import, and most of the mechanics does without

    target = np.log((1 + curvature_difference) / (1 - curvature_difference))
    nearly_round = curvature_difference < NEARLY_ROUND
    aim = np.where(nearly_round, 1.0, target)  # where the loop would divide by nothing it solves something else
    log_kappa = 0.64 * aim
    for _ in range(NEWTON_STEPS):
        square = np.exp(2 * log_kappa)
        m = 1 - 1 / square
        K, E = ellipk(m), ellipe(m)
        dK = (E - K / square) / m  # derivatives with respect to ln κ
        dE = (E - K) / m / square
        upper, lower = square * E - K, K - E
        slope = (2 * square * E + square * dE - dK) / upper - (dK - dE) / lower
        log_kappa = log_kappa - (np.log(upper / lower) - aim) / slope
    log_kappa = np.where(nearly_round, 2 / 3 * target, log_kappa)
    square = np.exp(2 * log_kappa)
    K, E = ellipk(1 - 1 / square), ellipe(1 - 1 / square)
    a = np.cbrt(2 * square * E / math.pi)
    return ContactShape(semimajor=a, semiminor=a * np.exp(-log_kappa), approach=2 * K / math.pi / a)


def point_contact_stiffness(
    *,
    curvature: Curvature,
    youngs_modulus: Value = STEEL_YOUNGS_MODULUS,
    poissons_ratio: Value = STEEL_POISSONS_RATIO,
) -> Value:
    """Return the stiffness of a point contact: its load at an approach of one metre to the power 3/2.

    A ball hardens: twice the approach takes 2.8 times the load.

        Q = K δ^(3/2),   K = (2 E/(3 (1 − ν²)))·(2/Σρ)^(1/2)·δ*^(−3/2)

    Parameters
    ----------
    curvature
        Σρ [1/m] and F(ρ) [1] of the two bodies.
    youngs_modulus
        E of both bodies, bearing steel by default [Pa].
    poissons_ratio
        ν of both bodies [1].

    Returns
    -------
    Value
        K [N/m^1.5].

    Notes
    -----
    Smooth elastic bodies, patch small against their radii.

    Examples
    --------
    >>> round_bodies = Curvature(sum=2.0, difference=0.0)
    >>> round(float(point_contact_stiffness(curvature=round_bodies, youngs_modulus=3.0, poissons_ratio=0.0)), 9)
    2.0

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., eq. 6.39 to 6.43 (recalled, document not opened).
    """
    shape = contact_shape(curvature_difference=curvature.difference)
    modulus = 2 * youngs_modulus / (3 * (1 - poissons_ratio**2))
    return modulus * np.sqrt(2 / curvature.sum) * shape.approach**-1.5


def ball_stiffness(*, inner_stiffness: Value, outer_stiffness: Value) -> Value:
    """Return the stiffness of a ball between both raceways: its two contacts one behind the other.

        K = (K_i^(−2/3) + K_e^(−2/3))^(−3/2)

    At one load the approaches of both contacts add.

    Parameters
    ----------
    inner_stiffness
        K_i, at the inner ring [N/m^1.5].
    outer_stiffness
        K_e, at the outer ring [N/m^1.5].

    Returns
    -------
    Value
        K [N/m^1.5].

    Notes
    -----
    Centrifugal force is left out: both contacts carry the same load.

    Examples
    --------
    >>> round(ball_stiffness(inner_stiffness=1.0, outer_stiffness=1.0), 6)  # 2^(−3/2)
    0.353553

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., eq. 7.5 (recalled, document not opened).
    """
    return (inner_stiffness ** (-2 / 3) + outer_stiffness ** (-2 / 3)) ** -1.5


def point_contact_approach(*, load: Value, stiffness: Value) -> Value:
    """Return how far two bodies in point contact approach each other under a load.

        δ = (Q/K)^(2/3)

    The inverse of Q = K δ^(3/2).

    Parameters
    ----------
    load
        Q, not negative [N].
    stiffness
        K [N/m^1.5].

    Returns
    -------
    Value
        δ [m].

    Notes
    -----
    Without load there is no approach.

    Examples
    --------
    >>> round(float(point_contact_approach(load=8.0, stiffness=1.0)), 9)
    4.0

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., eq. 7.1 (recalled, document not opened).
    """
    return np.cbrt(load / stiffness) ** 2


def point_contact_semiaxes(
    *,
    load: Value,
    curvature: Curvature,
    youngs_modulus: Value = STEEL_YOUNGS_MODULUS,
    poissons_ratio: Value = STEEL_POISSONS_RATIO,
) -> tuple[Value, Value]:
    """Return the half axes of the contact patch.

        a = a* s,  b = b* s,   s = (3 Q (1 − ν²)/(Σρ E))^(1/3)

    They grow with the cube root of the load.

    Parameters
    ----------
    load
        Q [N].
    curvature
        Σρ [1/m] and F(ρ) [1] of the two bodies.
    youngs_modulus
        E of both bodies, bearing steel by default [Pa].
    poissons_ratio
        ν of both bodies [1].

    Returns
    -------
    tuple[Value, Value]
        a and b, across and along the direction of rolling for a ball in a groove [m].

    Notes
    -----
    The patch is drawn on the undeformed bodies.

    Examples
    --------
    >>> round_bodies = Curvature(sum=3.0, difference=0.0)
    >>> a, b = point_contact_semiaxes(load=8.0, curvature=round_bodies, youngs_modulus=1.0, poissons_ratio=0.0)
    >>> round(float(a), 9), round(float(b), 9)  # (3·8/3)^(1/3)
    (2.0, 2.0)

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., eq. 6.39 and 6.41 (recalled, document not opened).
    """
    shape = contact_shape(curvature_difference=curvature.difference)
    size = np.cbrt(3 * load * (1 - poissons_ratio**2) / (curvature.sum * youngs_modulus))
    return shape.semimajor * size, shape.semiminor * size


def point_contact_pressure(
    *,
    load: Value,
    curvature: Curvature,
    youngs_modulus: Value = STEEL_YOUNGS_MODULUS,
    poissons_ratio: Value = STEEL_POISSONS_RATIO,
) -> Value:
    """Return the largest pressure in the contact patch.

    It grows only with the cube root of the load: half again the pressure is more than three times the load.

        p = 3 Q/(2 π a b)

    Parameters
    ----------
    load
        Q [N].
    curvature
        Σρ [1/m] and F(ρ) [1] of the two bodies.
    youngs_modulus
        E of both bodies, bearing steel by default [Pa].
    poissons_ratio
        ν of both bodies [1].

    Returns
    -------
    Value
        p, in the middle of the patch [Pa].

    Notes
    -----
    Elastic; bearing steel starts to dent for good near 4200 MPa.

    Examples
    --------
    >>> fit = ball_curvature(ball_diameter=0.0127, conformity=0.52, gamma=0.17, ring="inner")
    >>> one, eight = (float(point_contact_pressure(load=Q, curvature=fit)) for Q in (1000.0, 8000.0))
    >>> round(eight / one, 9)
    2.0

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., eq. 6.47 (recalled, document not opened).
    """
    # from a b = a* b* s², so that no load is no pressure rather than 0/0
    shape = contact_shape(curvature_difference=curvature.difference)
    modulus = curvature.sum * youngs_modulus / (3 * (1 - poissons_ratio**2))
    return 1.5 * np.cbrt(load * modulus**2) / (math.pi * shape.semimajor * shape.semiminor)


def load_at_point_contact_pressure(
    *,
    pressure: Value,
    curvature: Curvature,
    youngs_modulus: Value = STEEL_YOUNGS_MODULUS,
    poissons_ratio: Value = STEEL_POISSONS_RATIO,
) -> Value:
    """Return the load at which the largest pressure of a point contact reaches a value.

    What a ball bears before it dents the raceway.

        Q = (2 π a* b* p/3)³·(3 (1 − ν²)/(Σρ E))²

    Parameters
    ----------
    pressure
        p [Pa].
    curvature
        Σρ [1/m] and F(ρ) [1] of the two bodies.
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
    The inverse of `point_contact_pressure`.

    Examples
    --------
    >>> fit = ball_curvature(ball_diameter=0.0127, conformity=0.52, gamma=0.17, ring="inner")
    >>> pressure = point_contact_pressure(load=1000.0, curvature=fit)
    >>> round(float(load_at_point_contact_pressure(pressure=pressure, curvature=fit)), 6)
    1000.0

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., eq. 6.39 to 6.47 (recalled, document not opened).
    """
    shape = contact_shape(curvature_difference=curvature.difference)
    compliance = 3 * (1 - poissons_ratio**2) / (curvature.sum * youngs_modulus)
    return (2 * math.pi * shape.semimajor * shape.semiminor * pressure / 3) ** 3 * compliance**2

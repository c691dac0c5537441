"""Dynamic and static ratings of ball bearings from their geometry, ISO 281 and ISO 76.

SI at the door; inside the standard's formulas N and mm, as they are printed. Angles in radians.
"""

from __future__ import annotations

import numpy as np

from hubwright.mechanics.bearing_contact import ball_curvature, load_at_point_contact_pressure
from hubwright.mechanics.bearing_rating import gamma as gamma_of
from hubwright.mechanics.constants import Flag, Value

MATERIAL_FACTOR = 1.3  # bm, contemporary bearing steel, ISO 281:2007 (recalled, document not opened)
REDUCTION = 0.95  # λ of single-row radial and angular contact balls; reproduces Table 2 of ISO 281
STANDARD_CONFORMITY = 0.52  # groove radius over ball diameter at which the standard's factors hold
STATIC_INNER_CONFORMITY, STATIC_OUTER_CONFORMITY = 0.52, 0.53  # ISO/TR 10657 (recalled)
STATIC_PRESSURE = 4200e6  # Pa, ISO 76: a dent of a ten-thousandth of the ball
LARGE_BALL = 0.0254  # m, where Dw^1.4 takes over from Dw^1.8


def ball_rating_factor(
    *,
    gamma: Value,
    inner_conformity: Value = STANDARD_CONFORMITY,
    outer_conformity: Value = STANDARD_CONFORMITY,
    reduction: Value = REDUCTION,
) -> Value:
    """Return the factor fc of the dynamic rating of a ball bearing.

    What geometry other than size and number of balls does to the rating.

        fc = 0.41·98.0665·λ·[1 + (1.04·((1−γ)/(1+γ))^1.72·(rᵢ(2rₑ−1)/(rₑ(2rᵢ−1)))^0.41)^(10/3)]^(−0.3)
             · γ^0.3·(1−γ)^1.39/(1+γ)^(1/3)·(2rᵢ/(2rᵢ−1))^0.41

    Parameters
    ----------
    gamma
        γ, see `gamma` [1].
    inner_conformity
        rᵢ, groove radius of the inner ring over ball diameter, above 0.5 [1].
    outer_conformity
        rₑ, the same of the outer ring [1].
    reduction
        λ, 0.95 for single-row radial, single- and double-row angular contact [1].

    Returns
    -------
    Value
        fc, for N and mm [1].

    Notes
    -----
    Conformities below 0.52 raise the factor; the standard does not grant that, see
    `closer_than_the_standard`.

    Examples
    --------
    >>> round(float(ball_rating_factor(gamma=0.2)), 1)  # the standard's table says 59.9
    59.9

    References
    ----------
    ISO 281:2007, Table 2; formula ISO/TR 1281-1 (recalled, documents not opened).
    """
    ratio = inner_conformity * (2 * outer_conformity - 1) / (outer_conformity * (2 * inner_conformity - 1))
    rings = 1.04 * ((1 - gamma) / (1 + gamma)) ** 1.72 * ratio**0.41
    size = gamma**0.3 * (1 - gamma) ** 1.39 / (1 + gamma) ** (1 / 3)
    groove = (2 * inner_conformity / (2 * inner_conformity - 1)) ** 0.41
    return 0.41 * 98.0665 * reduction * (1 + rings ** (10 / 3)) ** -0.3 * size * groove


def closer_than_the_standard(*, inner_conformity: Value, outer_conformity: Value) -> Flag:
    """Return whether a groove is closer to its ball than the standard's factors allow for.

    Such a bearing's computed rating is higher than the standard grants, and a page must say so.

        rᵢ < 0.52 or rₑ < 0.52

    Parameters
    ----------
    inner_conformity
        rᵢ, groove radius of the inner ring over ball diameter [1].
    outer_conformity
        rₑ, the same of the outer ring [1].

    Returns
    -------
    Flag
        True where either is [1].

    Notes
    -----
    At 0.5 a groove would touch the whole ball, and the formulas end.

    Examples
    --------
    >>> closer_than_the_standard(inner_conformity=0.515, outer_conformity=0.53)
    True

    References
    ----------
    ISO 281:2007, 5.1 (recalled, document not opened).
    """
    return (inner_conformity < STANDARD_CONFORMITY) | (outer_conformity < STANDARD_CONFORMITY)


def ball_dynamic_rating(
    *,
    rows: Value,
    balls_per_row: Value,
    ball_diameter: Value,
    pitch_diameter: Value,
    contact_angle: Value,
    inner_conformity: Value = STANDARD_CONFORMITY,
    outer_conformity: Value = STANDARD_CONFORMITY,
) -> Value:
    """Return the basic dynamic rating of a radial or angular contact ball bearing.

    The radial load that nine in ten of such bearings bear for a million turns.

        C = bm·fc·(i cos α)^0.7·Z^(2/3)·Dw^1.8   (Dw ≤ 25.4 mm, above 3.647·Dw^1.4; N, mm)

    Parameters
    ----------
    rows
        i, number of rows [1].
    balls_per_row
        Z [1].
    ball_diameter
        Dw [m].
    pitch_diameter
        D_pw [m].
    contact_angle
        α, nominal [rad].
    inner_conformity
        rᵢ, groove radius of the inner ring over ball diameter [1].
    outer_conformity
        rₑ, the same of the outer ring [1].

    Returns
    -------
    Value
        C of the whole bearing [N].

    Notes
    -----
    Two rows bear 2^0.7 times one row, not twice: the first flake ends both.

    Examples
    --------
    >>> sizes = dict(balls_per_row=13, ball_diameter=0.0127, pitch_diameter=0.062, contact_angle=0.6)
    >>> ratio = ball_dynamic_rating(rows=2, **sizes) / ball_dynamic_rating(rows=1, **sizes)
    >>> round(float(ratio), 6)  # 2^0.7
    1.624505

    References
    ----------
    ISO 281:2007, 5.1 (recalled, document not opened).
    """
    fc = ball_rating_factor(
        gamma=gamma_of(element_diameter=ball_diameter, pitch_diameter=pitch_diameter, contact_angle=contact_angle),
        inner_conformity=inner_conformity,
        outer_conformity=outer_conformity,
    )
    Dw = ball_diameter * 1e3
    size = np.where(ball_diameter <= LARGE_BALL, Dw**1.8, 3.647 * Dw**1.4)
    return MATERIAL_FACTOR * fc * (rows * np.cos(contact_angle)) ** 0.7 * balls_per_row ** (2 / 3) * size


def ball_static_factor(*, gamma: Value) -> Value:
    """Return the factor f0 of the static rating of a ball bearing.

    From the load at which the worse of the two raceways reaches 4200 MPa.

        f0 = min(Q_i, Q_e)/(5 Dw²)   (N, mm)

    Parameters
    ----------
    gamma
        γ, see `gamma` [1].

    Returns
    -------
    Value
        f0, for N and mm [1].

    Notes
    -----
    Conformities 0.52 inner and 0.53 outer, whatever the bearing has. The fifth is the largest ball load
    of a bearing of Z balls under a radial load, 5 F/Z.

    Examples
    --------
    >>> round(float(ball_static_factor(gamma=0.0)), 1)  # the standard's table says 14.7
    14.7

    References
    ----------
    ISO 76:2006, Table 1; derivation ISO/TR 10657 (recalled, documents not opened).
    """
    unit_ball = 1e-3  # m: then the load in newtons is that over Dw² in mm²
    inner = ball_curvature(ball_diameter=unit_ball, conformity=STATIC_INNER_CONFORMITY, gamma=gamma, ring="inner")
    outer = ball_curvature(ball_diameter=unit_ball, conformity=STATIC_OUTER_CONFORMITY, gamma=gamma, ring="outer")
    return (
        np.minimum(
            load_at_point_contact_pressure(pressure=STATIC_PRESSURE, curvature=inner),
            load_at_point_contact_pressure(pressure=STATIC_PRESSURE, curvature=outer),
        )
        / 5
    )


def ball_static_rating(
    *, rows: Value, balls_per_row: Value, ball_diameter: Value, pitch_diameter: Value, contact_angle: Value
) -> Value:
    """Return the basic static rating of a radial or angular contact ball bearing.

    The radial load whose largest ball load leaves a dent of a ten-thousandth of the ball.

        C0 = f0·i·Z·Dw²·cos α   (N, mm)

    Parameters
    ----------
    rows
        i, number of rows [1].
    balls_per_row
        Z [1].
    ball_diameter
        Dw [m].
    pitch_diameter
        D_pw [m].
    contact_angle
        α, nominal [rad].

    Returns
    -------
    Value
        C0 of the whole bearing [N].

    Notes
    -----
    Says nothing of fatigue.

    Examples
    --------
    >>> sizes = dict(rows=2, balls_per_row=10, ball_diameter=0.01, contact_angle=0.0)
    >>> rating = float(ball_static_rating(pitch_diameter=0.05, **sizes))
    >>> round(rating / ball_static_factor(gamma=0.2))  # f0·2·10·10²
    2000

    References
    ----------
    ISO 76:2006, 5.1 (recalled, document not opened).
    """
    f0 = ball_static_factor(
        gamma=gamma_of(element_diameter=ball_diameter, pitch_diameter=pitch_diameter, contact_angle=contact_angle)
    )
    return f0 * rows * balls_per_row * (ball_diameter * 1e3) ** 2 * np.cos(contact_angle)

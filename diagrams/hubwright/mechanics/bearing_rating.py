"""What the ratings of balls and rollers share: pressure centres, the ratio γ, one row of two.

Metres, newtons, radians.
"""

from __future__ import annotations

from typing import Literal

import numpy as np

from hubwright.mechanics.constants import Value

Elements = Literal["balls", "rollers"]


def effective_spread(*, row_spacing: Value, pitch_diameter: Value, contact_angle: Value) -> Value:
    """Return the distance between the two pressure centres of rows mounted back to back.

    The lines of contact meet the axis outside the rows, so that the bearing holds a moment with a
    longer lever than the rows are apart.

        ℓ = row_spacing + D_pw tan α

    Parameters
    ----------
    row_spacing
        Between the planes of the ball centres of the two rows [m].
    pitch_diameter
        D_pw, of the circle of ball centres [m].
    contact_angle
        α, nominal, against the plane of the row [rad].

    Returns
    -------
    Value
        ℓ [m].

    Notes
    -----
    Back to back only: face to face the contact lines would meet inside the rows. Under load the
    contact angles change and the pressure centres move a little.

    Examples
    --------
    >>> round(float(effective_spread(row_spacing=0.024, pitch_diameter=0.060, contact_angle=np.arctan(0.75))), 6)
    0.069

    References
    ----------
    Geometry.
    """
    return row_spacing + pitch_diameter * np.tan(contact_angle)


def gamma(*, element_diameter: Value, pitch_diameter: Value, contact_angle: Value) -> Value:
    """Return the ratio that says how strongly the raceways are curved against the elements.

    Every rating factor is a function of it.

        γ = D cos α/D_pw

    Parameters
    ----------
    element_diameter
        D, of a ball, or mean of a roller [m].
    pitch_diameter
        D_pw, of the circle of element centres [m].
    contact_angle
        α, nominal [rad].

    Returns
    -------
    Value
        γ [1].

    Notes
    -----
    At the nominal contact angle, also when the bearing is loaded.

    Examples
    --------
    >>> round(float(gamma(element_diameter=0.01, pitch_diameter=0.05, contact_angle=0.0)), 6)
    0.2

    References
    ----------
    ISO 281:2007, symbols (recalled, document not opened).
    """
    return element_diameter * np.cos(contact_angle) / pitch_diameter


def one_row_dynamic_rating(*, dynamic_rating: Value, elements: Elements) -> Value:
    """Return the dynamic rating of one row of a two-row bearing.

    A catalogue states the rating of the whole.

        C₁ = C/2^0.7 (balls),   C/2^(7/9) (rollers)

    Parameters
    ----------
    dynamic_rating
        C of the two-row bearing [N].
    elements
        "balls" or "rollers".

    Returns
    -------
    Value
        C₁ [N].

    Notes
    -----
    More than half, because one row has half as many places where the first flake can start.

    Examples
    --------
    >>> round(one_row_dynamic_rating(dynamic_rating=2**0.7, elements="balls"), 9)
    1.0

    References
    ----------
    ISO 281:2007, 5.1 and 7.1, exponent of the number of rows (recalled, document not opened).
    """
    return dynamic_rating / 2 ** (0.7 if elements == "balls" else 7 / 9)


def one_row_static_rating(*, static_rating: Value) -> Value:
    """Return the static rating of one row of a two-row bearing.

        C0₁ = C0/2

    A dent knows only the load of its own row.

    Parameters
    ----------
    static_rating
        C0 of the two-row bearing [N].

    Returns
    -------
    Value
        C0₁ [N].

    Notes
    -----
    Balls and rollers alike.

    Examples
    --------
    >>> one_row_static_rating(static_rating=60e3)
    30000.0

    References
    ----------
    ISO 76:2006, number of rows (recalled, document not opened).
    """
    return static_rating / 2

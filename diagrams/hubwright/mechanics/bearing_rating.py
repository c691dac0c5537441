"""What a bearing's geometry is worth: pressure centres, dynamic and static ratings.

SI at the door; inside the standards' formulas N and mm, as they are printed. Angles in radians.
"""

from __future__ import annotations

import numpy as np

from hubwright.mechanics.constants import Value


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

"""Play of a back-to-back bearing: what end play does at the pressure centres, at the hub and at the tread.

End play is the whole axial travel of the hub between its two stops. Metres, radians.
"""

from __future__ import annotations

import numpy as np

from hubwright.mechanics.constants import Value


def end_play(*, preload: Value) -> Value:
    """Return the whole axial travel of a hub whose rows stand off their raceways.

    Each way one row stops it; a preloaded bearing has none.

        δ = 2 max(0, −preload)

    Parameters
    ----------
    preload
        Axial approach of each row when unloaded; negative: clearance [m].

    Returns
    -------
    Value
        δ [m].

    Notes
    -----
    Between the first contacts: what the rings give under a hand's force is left out.

    Examples
    --------
    >>> float(end_play(preload=-20e-6)), float(end_play(preload=5e-6))
    (4e-05, 0.0)

    References
    ----------
    From the meaning of the clearance of each row.
    """
    return 2 * np.maximum(-preload, 0.0)


def radial_play(*, end_play: Value, contact_angle: Value) -> Value:
    """Return the radial play at each pressure centre that an end play comes with.

    A row that is e off its stop along the axis is e tan α off it across the axis.

        δ_r = δ tan α

    Parameters
    ----------
    end_play
        δ, whole axial travel [m].
    contact_angle
        α [rad].

    Returns
    -------
    Value
        δ_r, whole travel across the axis [m].

    Notes
    -----
    Small against the groove: the contact angle does not change on the way.

    Examples
    --------
    >>> round(float(radial_play(end_play=50e-6, contact_angle=np.pi / 4)), 9)
    5e-05

    References
    ----------
    Geometry of the contact line; common practice.
    """
    return end_play * np.tan(contact_angle)


def rocking_angle(*, end_play: Value, contact_angle: Value, effective_spread: Value) -> Value:
    """Return how far a hub with end play rocks to either side.

    One pressure centre goes up by half its play while the other goes down by half its own.

        θ = δ tan α/ℓ

    Parameters
    ----------
    end_play
        δ, whole axial travel [m].
    contact_angle
        α [rad].
    effective_spread
        ℓ, between the pressure centres [m].

    Returns
    -------
    Value
        θ, to either side of the middle [rad].

    Notes
    -----
    Small angles; the play of ball joints and bushings adds to what a hand feels.

    Examples
    --------
    >>> round(float(rocking_angle(end_play=60e-6, contact_angle=np.pi / 4, effective_spread=0.06)), 9)
    0.001

    References
    ----------
    Geometry; common practice.
    """
    return radial_play(end_play=end_play, contact_angle=contact_angle) / effective_spread


def tread_travel(*, end_play: Value, contact_angle: Value, effective_spread: Value, free_radius: Value) -> Value:
    """Return how far the tread of a raised wheel moves between pushing and pulling.

    The tire's radius over the spread magnifies a play that no eye would see.

        s = 2 R δ tan α/ℓ

    Parameters
    ----------
    end_play
        δ, whole axial travel [m].
    contact_angle
        α [rad].
    effective_spread
        ℓ [m].
    free_radius
        R, of the tire: the wheel is off the ground [m].

    Returns
    -------
    Value
        s, at the tread, top against bottom held still at the axle [m].

    Notes
    -----
    Small angles; tire, ball joints and bushings give too.

    Examples
    --------
    >>> round(float(tread_travel(end_play=60e-6, contact_angle=np.pi / 4, effective_spread=0.06, free_radius=0.4)), 9)
    0.0008

    References
    ----------
    Geometry; common practice.
    """
    return (
        2
        * free_radius
        * rocking_angle(end_play=end_play, contact_angle=contact_angle, effective_spread=effective_spread)
    )


def end_play_from_tread(
    *, tread_travel: Value, contact_angle: Value, effective_spread: Value, free_radius: Value
) -> Value:
    """Return the end play that a travel at the tread comes from: the same lever turned round.

    What is felt at the tread is a small part of it at the rows.

        δ = s ℓ/(2 R tan α)

    Parameters
    ----------
    tread_travel
        s, between pushing and pulling [m].
    contact_angle
        α [rad].
    effective_spread
        ℓ [m].
    free_radius
        R [m].

    Returns
    -------
    Value
        δ, whole axial travel [m].

    Notes
    -----
    Upper bound of the bearing's own play: all else that gives is in the travel too.

    Examples
    --------
    >>> round(float(end_play_from_tread(
    ...     tread_travel=0.0008, contact_angle=np.pi / 4, effective_spread=0.06, free_radius=0.4)), 9)
    6e-05

    References
    ----------
    Geometry; common practice.
    """
    return tread_travel * effective_spread / (2 * free_radius * np.tan(contact_angle))

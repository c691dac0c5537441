"""Where a wheel puts its load line: offset, spacer, backspacing, and what they do to the track.

Lengths in metres. An offset, a face or a load line outboard of what it is measured from is positive.
"""

from __future__ import annotations

from hubwright.mechanics.constants import INCH, Value

RIM_FLANGES_TOGETHER = 1.0 * INCH  # two flanges of about half an inch: common practice


def load_line_offset(*, face_to_bearing_centre: Value, spacer: Value, offset: Value) -> Value:
    """Return how far outboard of the bearing centre the tire's centreline runs.

    This is the lever of the wheel's load about the bearing. Spacer and offset enter with
    opposite signs: a spacer and an offset smaller by its thickness are the same lever.

        y_L = face_to_bearing_centre + spacer − offset

    Parameters
    ----------
    face_to_bearing_centre
        Mounting face of the hub outboard of the midplane between the rows: positive [m].
    spacer
        Thickness of the spacer, zero without one [m].
    offset
        Mounting face of the wheel outboard of its rim centreline: positive [m].

    Returns
    -------
    Value
        y_L, positive when the tire's centreline is outboard of the bearing centre [m].

    Notes
    -----
    The tire is taken as symmetric about the rim's centreline, so its size does not enter.
    Camber and the shift of the contact patch in a corner are left out.

    Examples
    --------
    >>> round(load_line_offset(face_to_bearing_centre=0.042, spacer=0.0, offset=0.030), 6)
    0.012
    >>> round(load_line_offset(face_to_bearing_centre=0.042, spacer=0.025, offset=0.030), 6)
    0.037

    References
    ----------
    Geometry.
    """
    return face_to_bearing_centre + spacer - offset


def backspacing(*, rim_width: Value, offset: Value) -> Value:
    """Return the distance from the rim's inner edge to its mounting face.

    A tape measures this on a wheel that lies on the floor; the offset is then known too.

        backspacing = (rim_width + 25.4 mm)/2 + offset

    Parameters
    ----------
    rim_width
        Nominal width between the bead seats [m].
    offset
        Mounting face outboard of the rim's centreline: positive [m].

    Returns
    -------
    Value
        Backspacing [m].

    Notes
    -----
    Two rim flanges of about half an inch are added to the nominal width.

    Examples
    --------
    >>> round(backspacing(rim_width=7 * 0.0254, offset=0.030), 4)  # 8 in / 2 + 30 mm
    0.1316

    References
    ----------
    Common practice.
    """
    return (rim_width + RIM_FLANGES_TOGETHER) / 2 + offset


def offset_from_backspacing(*, rim_width: Value, backspacing: Value) -> Value:
    """Return the offset of a wheel whose backspacing was measured.

    The inverse of `backspacing`.

        offset = backspacing − (rim_width + 25.4 mm)/2

    Parameters
    ----------
    rim_width
        Nominal width between the bead seats [m].
    backspacing
        From the rim's inner edge to the mounting face [m].

    Returns
    -------
    Value
        Offset, mounting face outboard of the rim's centreline: positive [m].

    Notes
    -----
    Two rim flanges of about half an inch are part of what the tape measured.

    Examples
    --------
    >>> round(offset_from_backspacing(rim_width=7 * 0.0254, backspacing=0.1316), 4)
    0.03

    References
    ----------
    Common practice.
    """
    return backspacing - (rim_width + RIM_FLANGES_TOGETHER) / 2


def track_change(*, load_line_change: Value) -> Value:
    """Return how much the track grows when both load lines of an axle move outboard.

        Δt = 2 Δy_L

    Weight shares and load transfer keep using the track as given; the growth is reported.

    Parameters
    ----------
    load_line_change
        Δy_L, outboard positive [m].

    Returns
    -------
    Value
        Δt [m].

    Notes
    -----
    Both wheels of the axle carry the same change.

    Examples
    --------
    >>> track_change(load_line_change=0.025)
    0.05

    References
    ----------
    Geometry.
    """
    return 2 * load_line_change


def scrub_radius_change(*, load_line_change: Value) -> Value:
    """Return how much the scrub radius grows when the load line moves outboard.

        Δr = Δy_L

    The scrub radius is the lever with which a one-sided braking force pulls the steering.

    Parameters
    ----------
    load_line_change
        Δy_L, outboard positive [m].

    Returns
    -------
    Value
        Δr [m].

    Notes
    -----
    The steering axis and the loaded radius stay where they are.

    Examples
    --------
    >>> scrub_radius_change(load_line_change=0.025)
    0.025

    References
    ----------
    Geometry.
    """
    return load_line_change

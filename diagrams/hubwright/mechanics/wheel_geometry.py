"""Where the tire meets the road: diameters from a tire's size, the load line, the loaded radius.

Lengths in metres. An offset, a face or a load line outboard of what it is measured from is positive.
"""

from __future__ import annotations

import math

from hubwright.mechanics.constants import INCH, Flag, Value

USUAL_LOADED_SHARE = 0.93  # loaded over free radius of radial tires: common practice
ROLLING_CIRCUMFERENCE_OVER_DIAMETER = 3.05  # radial tires: common practice
RIM_FLANGES_TOGETHER = 1.0 * INCH  # two flanges of about half an inch: common practice
TIRE_MASS_PER_ENVELOPE = 200.0  # kg/m³ of the ring between rim and tread: engineering judgement


def section_height(*, section_width: Value, aspect_ratio: Value) -> Value:
    """Return the height of a tire's section from its width and aspect ratio.

    The section height is what a tire adds to the rim's radius and what it can give before
    the rim meets the road.

        H = aspect_ratio · S

    Parameters
    ----------
    section_width
        S, section width as in the size code [m].
    aspect_ratio
        H/S as a fraction: 0.75 for the code 245/75R16 [1].

    Returns
    -------
    Value
        H, section height [m].

    Notes
    -----
    Nothing is rounded; the regulation's tables round to the millimetre.

    Examples
    --------
    >>> section_height(section_width=0.2, aspect_ratio=0.75)  # 200/75: 150 mm
    0.15000000000000002

    References
    ----------
    UN Regulation No. 30, 6.1.2 (recalled, document not opened).
    """
    return aspect_ratio * section_width


def free_diameter(*, rim_diameter: Value, section_height: Value) -> Value:
    """Return the diameter of the unloaded tire.

    Half of it is the lever of every side force before the tire gives.

        D = d + 2 H

    Parameters
    ----------
    rim_diameter
        d, nominal diameter of the rim [m].
    section_height
        H, height of the tire's section [m].

    Returns
    -------
    Value
        D, free diameter [m].

    Notes
    -----
    Nominal geometry; a new tire may differ by a few millimetres.

    Examples
    --------
    >>> free_diameter(rim_diameter=0.4, section_height=0.15)
    0.7

    References
    ----------
    UN Regulation No. 30, 6.1.2 (recalled, document not opened).
    """
    return rim_diameter + 2 * section_height


def flotation_free_diameter(*, nominal_diameter_in_inches: Value) -> Value:
    """Return the free diameter that a flotation size code states.

    In a code such as 33x12.50R15 the first number is the diameter itself.

        D = 25.4 mm · code

    Parameters
    ----------
    nominal_diameter_in_inches
        First number of the code: 33 for 33x12.50R15 [1].

    Returns
    -------
    Value
        D, free diameter [m].

    Notes
    -----
    The nominal inches are taken as they stand. A yearbook's design diameter is half an inch
    less, and real tires lie on either side.

    Examples
    --------
    >>> flotation_free_diameter(nominal_diameter_in_inches=30.0)  # 30 × 25.4 mm
    0.762

    References
    ----------
    Common practice.
    """
    return nominal_diameter_in_inches * INCH


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


def loaded_radius(*, free_radius: Value, standing_load: Value, vertical_stiffness: Value) -> Value:
    """Return the height of the wheel's centre above the road from the tire's stiffness.

    The side force in a corner tips the hub with this lever.

        R_l = R_free − F₀/k

    Parameters
    ----------
    free_radius
        R_free, half the free diameter [m].
    standing_load
        F₀, contact force of this wheel when the vehicle stands [N].
    vertical_stiffness
        k, vertical stiffness of the tire [N/m].

    Returns
    -------
    Value
        R_l [m]; see `loaded_radius_is_possible`.

    Notes
    -----
    A linear tire; the same radius serves every load case.

    Examples
    --------
    >>> loaded_radius(free_radius=0.4, standing_load=5000.0, vertical_stiffness=250e3)  # 400 − 20 mm
    0.38

    References
    ----------
    Common practice.
    """
    return free_radius - standing_load / vertical_stiffness


def usual_loaded_radius(*, free_radius: Value) -> Value:
    """Return the loaded radius of a radial tire of which only the size is known.

    Used when neither a measured radius nor a stiffness is given.

        R_l = 0.93 R_free

    Parameters
    ----------
    free_radius
        R_free, half the free diameter [m].

    Returns
    -------
    Value
        R_l [m].

    Notes
    -----
    A tire under its usual load and pressure.

    Examples
    --------
    >>> usual_loaded_radius(free_radius=0.4)
    0.37200000000000005

    References
    ----------
    Common practice, radial tires.
    """
    return USUAL_LOADED_SHARE * free_radius


def loaded_radius_is_possible(*, loaded_radius: Value, free_radius: Value) -> Flag:
    """Return whether a loaded radius can belong to a tire of this free radius.

    A wheel's centre cannot lie below the road, nor higher than the free tire holds it.

        0 < R_l ≤ R_free

    Parameters
    ----------
    loaded_radius
        R_l, wheel centre above the road [m].
    free_radius
        R_free, half the free diameter [m].

    Returns
    -------
    Flag
        True where it can be; element by element for arrays [1].

    Notes
    -----
    A flag and no exception, so that many setups can go through together; who reads one
    setup raises the error that names it.

    Examples
    --------
    >>> loaded_radius_is_possible(loaded_radius=0.37, free_radius=0.4)
    True

    References
    ----------
    Geometry.
    """
    return (loaded_radius > 0) & (loaded_radius <= free_radius)


def vertical_stiffness(*, free_radius: Value, loaded_radius: Value, standing_load: Value) -> Value:
    """Return the tire's vertical stiffness from a tape measure.

    Ground to hub centre is easy to measure; the stiffness follows.

        k = F₀/(R_free − R_l)

    Parameters
    ----------
    free_radius
        R_free, half the free diameter [m].
    loaded_radius
        R_l, ground to wheel centre, standing [m].
    standing_load
        F₀, contact force of this wheel when the vehicle stands [N].

    Returns
    -------
    Value
        k [N/m].

    Notes
    -----
    A small difference of two lengths: a few millimetres of error in either matter.

    Examples
    --------
    >>> round(vertical_stiffness(free_radius=0.4, loaded_radius=0.38, standing_load=5000.0))
    250000

    References
    ----------
    Common practice.
    """
    return standing_load / (free_radius - loaded_radius)


def rolling_circumference(*, free_diameter: Value) -> Value:
    """Return the distance that the wheel rolls in one turn.

    Turns it into the distance that a life in revolutions is worth.

        U = 3.05 D

    Parameters
    ----------
    free_diameter
        D, diameter of the unloaded tire [m].

    Returns
    -------
    Value
        U, distance per turn [m].

    Notes
    -----
    Less than π D because the tread is shortened on its way through the contact patch.

    Examples
    --------
    >>> round(rolling_circumference(free_diameter=0.8), 6)
    2.44

    References
    ----------
    Common practice, radial tires.
    """
    return ROLLING_CIRCUMFERENCE_OVER_DIAMETER * free_diameter


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


def tire_mass_estimate(*, free_diameter: Value, rim_diameter: Value, section_width: Value) -> Value:
    """Return a tire's mass estimated from its size.

    For owners who have no shipping weight at hand.

        m = 200 kg/m³ · π/4 · (D² − d²) · S

    Parameters
    ----------
    free_diameter
        D, diameter of the unloaded tire [m].
    rim_diameter
        d, nominal diameter of the rim [m].
    section_width
        S, section width [m].

    Returns
    -------
    Value
        m, mass of the tire without wheel [kg].

    Notes
    -----
    Good to about a fifth.

    Examples
    --------
    >>> round(tire_mass_estimate(free_diameter=0.8, rim_diameter=0.4, section_width=0.25), 2)  # 50·π/4·0.48
    18.85

    References
    ----------
    Engineering judgement (common practice, no source).
    """
    return TIRE_MASS_PER_ENVELOPE * math.pi / 4 * (free_diameter**2 - rim_diameter**2) * section_width

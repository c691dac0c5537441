"""A tire's diameters from its size, and how high it holds the wheel's centre above the road.

Lengths in metres, stiffness in N/m.
"""

from __future__ import annotations

import math

from hubwright.mechanics.constants import INCH, Flag, Value

USUAL_LOADED_SHARE = 0.93  # loaded over free radius of radial tires: common practice
ROLLING_CIRCUMFERENCE_OVER_DIAMETER = 3.05  # radial tires: common practice
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

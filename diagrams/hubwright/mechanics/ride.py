"""How stiffly a corner stands on its springs, and how it swings. N/m, kg, Hz."""

from __future__ import annotations

import numpy as np

from hubwright.mechanics.constants import Value


def ride_rate(*, wheel_rate: Value, tire_stiffness: Value) -> Value:
    """Return the stiffness between body and road: strut and tire one above the other.

    The softer of the two rules.

        K = k k_t/(k + k_t)

    Parameters
    ----------
    wheel_rate
        k, of the strut at the wheel [N/m].
    tire_stiffness
        k_t [N/m].

    Returns
    -------
    Value
        Ride rate [N/m].

    Notes
    -----
    Two springs in series.

    Examples
    --------
    >>> ride_rate(wheel_rate=30e3, tire_stiffness=270e3)
    27000.0

    References
    ----------
    Gillespie, Fundamentals of Vehicle Dynamics, ride (from memory).
    """
    return wheel_rate * tire_stiffness / (wheel_rate + tire_stiffness)


def natural_frequency(*, stiffness: Value, mass: Value) -> Value:
    """Return how often a mass on a spring swings in a second.

    With the ride rate and the sprung mass: how the body heaves.

        f = √(k/m)/(2π)

    Parameters
    ----------
    stiffness
        k [N/m].
    mass
        m [kg].

    Returns
    -------
    Value
        Frequency [Hz].

    Notes
    -----
    No damping.

    Examples
    --------
    >>> round(float(natural_frequency(stiffness=4 * np.pi**2 * 100.0, mass=100.0)), 6)
    1.0

    References
    ----------
    Harmonic motion, in any text on dynamics.
    """
    return np.sqrt(stiffness / mass) / (2 * np.pi)


def corner_frequencies(
    *, sprung_mass: Value, unsprung_mass: Value, wheel_rate: Value, tire_stiffness: Value
) -> tuple[Value, Value]:
    """Return the two natural frequencies of a corner: body on the strut, wheel hopping between strut and tire.

    They lie about ten times apart, which is why wheel and body hardly know of one another in a landing.

        ω² = a/2 ∓ √(a²/4 − b),    a = k/m_s + (k + k_t)/m_u,    b = k k_t/(m_s m_u)

    Parameters
    ----------
    sprung_mass
        m_s [kg].
    unsprung_mass
        m_u [kg].
    wheel_rate
        k [N/m].
    tire_stiffness
        k_t [N/m].

    Returns
    -------
    tuple
        Body's and wheel's frequency [Hz].

    Notes
    -----
    Small swings about the standing position, no damping, no stops.

    Examples
    --------
    >>> pair = corner_frequencies(sprung_mass=1.0, unsprung_mass=1.0, wheel_rate=2.0, tire_stiffness=3.0)
    >>> [round(float((2 * np.pi * f) ** 2), 6) for f in pair]  # a = 7, b = 6
    [1.0, 6.0]

    References
    ----------
    Eigenvalues of two masses and two springs, in any text on vibration.
    """
    a = wheel_rate / sprung_mass + (wheel_rate + tire_stiffness) / unsprung_mass
    b = wheel_rate * tire_stiffness / (sprung_mass * unsprung_mass)
    fast = a / 2 + np.sqrt(a**2 / 4 - b)
    # the small root by the product of the two: their difference would lose digits
    return np.sqrt(b / fast) / (2 * np.pi), np.sqrt(fast) / (2 * np.pi)

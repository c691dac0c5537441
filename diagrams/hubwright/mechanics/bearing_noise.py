"""How often a damaged place in a bearing is struck: frequencies from geometry and road speed.

The elements roll without slip; f is the wheel's turns in a second. Hz.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from hubwright.mechanics.bearing_rating import gamma
from hubwright.mechanics.constants import Value


@dataclass(frozen=True)
class DefectFrequencies:
    """How often a second each part goes round or is struck [Hz]; a damaged element strikes both rings in a turn."""

    wheel: Value
    cage: Value
    outer_ring: Value
    inner_ring: Value
    element: Value


def wheel_frequency(*, speed: Value, rolling_circumference: Value) -> Value:
    """Return how often a second a wheel turns.

    Everything in the bearing keeps a fixed ratio to it, and so its pitch rises with road speed.

        f = v/U

    Parameters
    ----------
    speed
        v, over the road [m/s].
    rolling_circumference
        U [m].

    Returns
    -------
    Value
        f [Hz].

    Notes
    -----
    Without slip.

    Examples
    --------
    >>> wheel_frequency(speed=24.0, rolling_circumference=2.4)
    10.0

    References
    ----------
    Definition.
    """
    return speed / rolling_circumference


def defect_frequencies(
    *,
    wheel_frequency: Value,
    elements_per_row: Value,
    element_diameter: Value,
    pitch_diameter: Value,
    contact_angle: Value,
    turning_ring: Literal["inner", "outer"] = "inner",
) -> DefectFrequencies:
    """Return how often each damaged part of a row is heard.

    Which ring turns changes the cage's speed, but not how often a ring is struck: that counts from the cage.

        cage  f/2 (1 ∓ γ)   (inner ring turning −, outer +)
        outer ring  Z f/2 (1 − γ),    inner ring  Z f/2 (1 + γ)
        element  f D_pw/D (1 − γ²),  both its strikes in a turn of its own
        γ = D cos α/D_pw

    Parameters
    ----------
    wheel_frequency
        f, of the ring that turns [Hz].
    elements_per_row
        Z [1].
    element_diameter
        D, of a ball, or mean of a roller [m].
    pitch_diameter
        D_pw [m].
    contact_angle
        α [rad].
    turning_ring
        "inner" where the hub turns with the inner rings, "outer" on a stub axle.

    Returns
    -------
    DefectFrequencies
        Of each part [Hz].

    Notes
    -----
    Rolling without slip at the nominal contact angle. Real marks lie a percent or two off.

    Examples
    --------
    >>> heard = defect_frequencies(
    ...     wheel_frequency=10.0, elements_per_row=12, element_diameter=0.01, pitch_diameter=0.05, contact_angle=0.0
    ... )
    >>> [round(float(part), 6) for part in (heard.cage, heard.outer_ring, heard.inner_ring, heard.element)]  # γ = 0.2
    [4.0, 48.0, 72.0, 48.0]

    References
    ----------
    Harris, Rolling Bearing Analysis, 4th ed., chapter 8 (from memory).
    """
    f, Z = wheel_frequency, elements_per_row
    γ = gamma(element_diameter=element_diameter, pitch_diameter=pitch_diameter, contact_angle=contact_angle)
    return DefectFrequencies(
        wheel=f,
        cage=f / 2 * (1 - γ if turning_ring == "inner" else 1 + γ),
        outer_ring=Z * f / 2 * (1 - γ),
        inner_ring=Z * f / 2 * (1 + γ),
        element=f * pitch_diameter / element_diameter * (1 - γ**2),
    )

"""Water at the seals of a hub: the pressure of depth, the suction of a warm hub quenched, and wet grease.

Pascals, metres, kelvins.
"""

from __future__ import annotations

import numpy as np

from hubwright.mechanics.constants import STANDARD_GRAVITY, Value

WATER_DENSITY = 1000.0  # kg/m³, fresh water, near 4 °C
ATMOSPHERE = 101325.0  # Pa, standard atmosphere
REFERENCE_WATER = 100e-6  # share of water at which the life factor is one: Cantley (1977), from memory
_WATER_EXPONENT = 0.6  # same


def depth_pressure(*, depth: Value, density: Value = WATER_DENSITY) -> Value:
    """Return the pressure that standing water adds at a depth.

    What people fear of a ford. It is small beside what the warm hub does by itself.

        p = ρ g d

    Parameters
    ----------
    depth
        d, below the surface [m].
    density
        ρ [kg/m³].

    Returns
    -------
    Value
        p, above that of the air [Pa].

    Notes
    -----
    Water at rest; a bow wave adds a little, spray of a jet far more.

    Examples
    --------
    >>> round(depth_pressure(depth=0.5), 3)
    4903.325

    References
    ----------
    Hydrostatics, in any text on fluid mechanics.
    """
    return density * STANDARD_GRAVITY * depth


def equivalent_depth(*, pressure: Value, density: Value = WATER_DENSITY) -> Value:
    """Return the depth of water whose pressure is this: to set a suction beside a ford.

    The same relation turned round.

        d = p/(ρ g)

    Parameters
    ----------
    pressure
        p [Pa].
    density
        ρ [kg/m³].

    Returns
    -------
    Value
        d [m].

    Notes
    -----
    Water at rest.

    Examples
    --------
    >>> round(equivalent_depth(pressure=9806.65), 6)
    1.0

    References
    ----------
    Hydrostatics, in any text on fluid mechanics.
    """
    return pressure / (density * STANDARD_GRAVITY)


def quench_suction(*, hub_temperature: Value, water_temperature: Value, pressure: Value = ATMOSPHERE) -> Value:
    """Return the pressure that the air in a sealed hub loses when cold water cools it.

    The seal then has the whole difference across it, and the water lies outside: waiting until the hub is
    cool does more than a shallower ford.

        Δp = p (1 − T₂/T₁)

    Parameters
    ----------
    hub_temperature
        T₁, absolute, before [K].
    water_temperature
        T₂, absolute [K].
    pressure
        p, of the air in the warm hub [Pa].

    Returns
    -------
    Value
        Δp, below the outside; negative where the water is the warmer [Pa].

    Notes
    -----
    Upper estimate: closed from the moment it is wet, cooled all the way, ideal gas of one volume. Grease
    and steel take longer to cool, and a lip that lets in air ends it.

    Examples
    --------
    >>> round(quench_suction(hub_temperature=350.0, water_temperature=280.0), 3)  # a fifth of an atmosphere
    20265.0

    References
    ----------
    Gas law at constant volume (Amontons), in any text on physics.
    """
    return pressure * (1 - water_temperature / hub_temperature)


def water_life_factor(*, water_content: Value) -> Value:
    """Return how water in the lubricant changes the life that a bearing has at 100 parts in a million.

    Water too little to see halves it: hydrogen in the steel and a thinner film.

        L/L₁₀₀ = (100 ppm/X)^0.6

    Parameters
    ----------
    water_content
        X, share of water in the lubricant [1].

    Returns
    -------
    Value
        Life factor [1].

    Notes
    -----
    Tapered rollers in a mineral oil, some 25 to 400 parts in a million; for greases the trend only.

    Examples
    --------
    >>> round(float(water_life_factor(water_content=100e-6 * 2 ** (1 / 0.6))), 6)
    0.5

    References
    ----------
    Cantley (1977), The effect of water in lubricating oil on bearing fatigue life, ASLE Trans. 20 (3)
    (from memory).
    """
    return np.power(REFERENCE_WATER / water_content, _WATER_EXPONENT)

"""The energy of a fall, and the force of a landing if only one spring gives. Newtons, metres."""

from __future__ import annotations

import numpy as np

from hubwright.mechanics.constants import Value


def impact_factor(*, height: Value, static_deflection: Value) -> Value:
    """Return how many times its weight a body presses that falls on a spring, if nothing else gives.

    The fall and the spring's own give feed the spring. Let go from no height at all it is two.

        F/W = 1 + √(1 + 2 s/δ)

    Parameters
    ----------
    height
        s, of the fall before the spring is touched [m].
    static_deflection
        δ, of the spring under the resting body [m].

    Returns
    -------
    Value
        Largest force over the weight [1].

    Notes
    -----
    Rigid body, linear spring, no loss.

    Examples
    --------
    >>> [float(impact_factor(height=s, static_deflection=0.01)) for s in (0.0, 0.12)]  # √1, √25
    [2.0, 6.0]

    References
    ----------
    Gere, Mechanics of Materials, 7th ed., impact loading (from memory).
    """
    return 1 + np.sqrt(1 + 2 * height / static_deflection)


def energy_bound(*, weight: Value, stiffness: Value, height: Value) -> Value:
    """Return the force of a landing on the tire alone, all of the corner's weight being rigid above it.

    Drawn beside the quarter-car's peak, it shows what the suspension spares the bearing.

        F = W (1 + √(1 + 2 s/δ)),    δ = W/k

    Parameters
    ----------
    weight
        W, standing load of the wheel [N].
    stiffness
        k, of the tire [N/m].
    height
        s [m].

    Returns
    -------
    Value
        Largest force [N].

    Notes
    -----
    The tire is taken as linear past its rim too, where the real force is higher. It is no strict ceiling of the
    quarter-car: from small heights a body that lands late, on a wheel that bounces back, can press a little more.

    Examples
    --------
    >>> round(float(energy_bound(weight=5000.0, stiffness=250e3, height=0.24)), 6)  # δ = 20 mm, √25
    30000.0

    References
    ----------
    Work and energy; see `impact_factor`.
    """
    return weight * impact_factor(height=height, static_deflection=weight / stiffness)


def fall_energy(*, weight: Value, height: Value) -> Value:
    """Return the energy of a fall: a weight times a height is no force, whatever the two are.

    Only what it is spent over, so many millimetres of tire and travel, makes a force of it.

        E = W s

    Parameters
    ----------
    weight
        W [N].
    height
        s [m].

    Returns
    -------
    Value
        Energy [J, that is N·m].

    Notes
    -----
    Divided by the way over which it is taken in, it is a mean force. The peak is larger.

    Examples
    --------
    >>> fall_energy(weight=5000.0, height=0.2)
    1000.0

    References
    ----------
    Definition of work.
    """
    return weight * height

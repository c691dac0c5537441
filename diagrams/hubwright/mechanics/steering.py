"""What a moved load line does to the steering: scrub radius, kick-back, track. Metres, newtons, N·m."""

from __future__ import annotations

import numpy as np

from hubwright.mechanics.constants import Value


def moved_scrub_radius(*, scrub_radius: Value, load_line_change: Value) -> Value:
    """Return the scrub radius after the load line has moved.

    The steering axis stays, the tire's middle moves: every millimetre outboard is one of scrub radius.

        r = r₀ + Δy_L

    Parameters
    ----------
    scrub_radius
        r₀, tire's middle outboard of the steering axis at the ground: positive [m].
    load_line_change
        Δy_L, outboard positive [m].

    Returns
    -------
    Value
        r [m].

    Notes
    -----
    A taller tire moves it too, where the steering axis leans: left out.

    Examples
    --------
    >>> round(moved_scrub_radius(scrub_radius=0.008, load_line_change=0.025), 6)
    0.033

    References
    ----------
    Geometry of a steering axis, in any text on vehicle dynamics.
    """
    return scrub_radius + load_line_change


def kick_back_moment(*, longitudinal_force: Value, scrub_radius: Value) -> Value:
    """Return the moment about the steering axis of a force along the road on one wheel alone.

    The driver's hands have to hold what the two wheels do not balance: a brake that pulls, a stone on one side.

        M = |F_x r|

    Parameters
    ----------
    longitudinal_force
        F_x, on one wheel more than on the other [N].
    scrub_radius
        r [m].

    Returns
    -------
    Value
        M [N·m].

    Notes
    -----
    Upright steering axis, so that the lever is the scrub radius for a braking force at the ground as for a
    bump at the height of the axle. With a leaning axis a bump's lever is longer.

    Examples
    --------
    >>> round(float(kick_back_moment(longitudinal_force=-2500.0, scrub_radius=0.033)), 6)
    82.5

    References
    ----------
    Gillespie, Fundamentals of Vehicle Dynamics, steering system (from memory).
    """
    return np.abs(longitudinal_force * scrub_radius)


def tie_rod_force(*, kick_back_moment: Value, steering_arm: Value) -> Value:
    """Return the force in the tie rod that holds a moment about the steering axis.

    It goes on through the steering gear to the rim of the steering wheel.

        F = M/a

    Parameters
    ----------
    kick_back_moment
        M [N·m].
    steering_arm
        a, from the steering axis to the tie rod [m].

    Returns
    -------
    Value
        F [N].

    Notes
    -----
    Rod square to its arm.

    Examples
    --------
    >>> round(tie_rod_force(kick_back_moment=81.0, steering_arm=0.135), 6)
    600.0

    References
    ----------
    Law of the lever.
    """
    return kick_back_moment / steering_arm


def moved_track(*, track: Value, load_line_change: Value) -> Value:
    """Return the track after both load lines of the axle have moved.

    Wider by twice the change: it helps a little against tipping, and asks for room under the fender.

        t = t₀ + 2 Δy_L

    Parameters
    ----------
    track
        t₀ [m].
    load_line_change
        Δy_L of each wheel, outboard positive [m].

    Returns
    -------
    Value
        t [m].

    Notes
    -----
    Reported, not fed back into the load transfer.

    Examples
    --------
    >>> round(moved_track(track=1.6, load_line_change=0.025), 6)
    1.65

    References
    ----------
    Geometry.
    """
    return track + 2 * load_line_change

"""A corner of the vehicle dropped onto its tire: the quarter-car, its courses over time and its peak forces.

Counted downward from the first touch of the tire; strut compression positive; forces of tire and bearing upward on
the wheel positive. Masses kg, lengths m, forces N, stiffnesses N/m, damping N·s/m, time s.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from hubwright.errors import ImpossibleError
from hubwright.mechanics.bilinear_motion import Element, Motion, bilinear_motion
from hubwright.mechanics.constants import STANDARD_GRAVITY, Flag, Value
from hubwright.mechanics.ride import natural_frequency, ride_rate

Array: TypeAlias = NDArray[np.float64]

DROOP_STOP_OVER_WHEEL_RATE = 20.0  # common practice, no source
RIM_SHARE_OF_SECTION_HEIGHT = 0.6  # deflection at which the tire is on its rim; common practice, no source
_PERIODS = 1.25  # of the ride: the first landing and the return
_STEP = 0.5  # over the fastest rate; see the notes of `drop`
_BODY, _WHEEL, _BODY_SPEED, _WHEEL_SPEED = range(4)  # the state
_TIRE, _SPRING, _DROOP_STOP, _BUMP_STOP, _DAMPER = range(5)  # the elements


@dataclass(frozen=True)
class QuarterCar:
    """One corner: the body's share on its strut, the wheel with all that is unsprung, and the tire.

    `turning_mass` is the part of the unsprung mass that the bearing does not carry: tire, wheel, hub
    flange, disc. Travels count from the standing position. Numbers, or arrays that broadcast with the heights.
    """

    sprung_mass: Value
    unsprung_mass: Value
    turning_mass: Value
    tire_stiffness: Value
    wheel_rate: Value
    bump_damping: Value
    rebound_damping: Value
    droop_travel: Value
    bump_travel: Value
    bump_stop_stiffness: Value

    @property
    def standing_load(self) -> Value:
        """F₀, contact force standing [N]."""
        return (self.sprung_mass + self.unsprung_mass) * STANDARD_GRAVITY

    @property
    def standing_compression(self) -> Value:
        """Compression of the spring standing: sprung weight over wheel rate [m]."""
        return self.sprung_mass * STANDARD_GRAVITY / self.wheel_rate

    @property
    def droop_compression(self) -> Value:
        """c₀, below which the droop stop pulls: the spring is then still compressed, or just slack [m]."""
        return np.maximum(self.standing_compression - self.droop_travel, 0.0)

    @property
    def compression_in_the_air(self) -> Value:
        """Compression at which spring and droop stop balance, the wheel hanging free of weight [m]."""
        # c₀ − k c₀/(k + stop)
        return self.droop_compression * DROOP_STOP_OVER_WHEEL_RATE / (1 + DROOP_STOP_OVER_WHEEL_RATE)


@dataclass(frozen=True)
class Instant:
    """One moment of a drop: when [s], and what stands there; the wheel's acceleration is upward positive [m/s²]."""

    time: Value
    tire_force: Value
    bearing_force: Value
    wheel_acceleration: Value
    compression: Value


@dataclass(frozen=True)
class Landing:
    """The peaks of one drop or many, shaped as heights and corners together [N, m]."""

    peak_tire_force: Value
    peak_bearing_force: Value
    largest_deflection: Value
    at_peak: Instant  # of the bearing force


@dataclass(frozen=True)
class DropMotion(Landing):
    """One drop or many: courses over time, the last axis, and their peaks.

    `body_travel` and `wheel_travel` count downward from the first touch, so that the wheel's is also the
    tire's deflection where positive; `bearing_force` is upward on the turning parts' side of the bearing:
    what the contact leaves after weight and inertia of what turns.
    """

    time: Array
    tire_force: Array
    bearing_force: Array
    strut_force: Array
    compression: Array
    body_travel: Array
    wheel_travel: Array
    body_speed: Array
    wheel_speed: Array


def drop(car: QuarterCar, *, height: Value, step: float = _STEP) -> DropMotion:
    """Return how a corner lands after falling from a height, for one height and corner or many at once.

    Its weight is nearly the same at every height: what grows is the energy that tire, strut and stops have
    to take in, and the force that they do it with.

        v₀ = √(2 g s)
        m_s z_s'' = m_s g − S,    m_u z_u'' = m_u g + S − F_t
        F_t = k_t z_u,    S = k c + d(c')·c' + bump stop + droop stop
        B = F_t − m_r (g − z_u'')

    Parameters
    ----------
    car
        The corner [kg, N/m, N·s/m, m].
    height
        s, from the road to the tire hanging free; zero: let down to the road and let go [m].
    step
        Longest step over the fastest rate of the corner [1].

    Returns
    -------
    DropMotion
        Courses over time [s, N, m, m/s] and peaks [N].

    Raises
    ------
    ImpossibleError
        For a mass, tire stiffness or wheel rate that is not positive, a negative damping, stop or height.

    Notes
    -----
    Tire: compression only. Spring: never in tension; the damper may pull. Droop stop 20 times the wheel
    rate. Start: tire just touching, strut in balance. No friction, no lever of the suspension, no give of
    the ground or of the rim: past the rim the real force is higher. The steps between the thresholds of
    stops, tire and damper are exact (`bilinear_motion`): half the step moves no peak by 1e-4 of itself.

    Examples
    --------
    >>> car = QuarterCar(400.0, 50.0, 40.0, 250e3, 1e8, 0.0, 0.0, 0.0, 0.0, 0.0)  # nearly rigid strut
    >>> landed = drop(car, height=0.0)
    >>> round(float(landed.peak_tire_force / car.standing_load), 2)  # let go on the tire alone: twice the weight
    2.0

    References
    ----------
    Quarter-car, in any text on vehicle dynamics (Gillespie, Fundamentals of Vehicle Dynamics, ride; from
    memory). Stops and rim: common practice.
    """
    shape, car, motion = _landed(car, height, step)
    strut = [motion.force(element) for element in (_SPRING, _DROOP_STOP, _BUMP_STOP, _DAMPER)]
    body, wheel, body_speed, wheel_speed = np.moveaxis(motion.state, -1, 0)

    def course(values: Array) -> Array:
        return np.reshape(values, (*shape, values.shape[1]))

    return DropMotion(
        **vars(_peaks(shape, car, motion)),
        time=course(motion.time),
        tire_force=course(motion.force(_TIRE)),
        bearing_force=course(motion.values(_bearing_rows(car, motion))),
        strut_force=course(np.sum(strut, axis=0)),
        compression=course(np.asarray(car.compression_in_the_air)[:, np.newaxis] + body - wheel),
        body_travel=course(body),
        wheel_travel=course(wheel),
        body_speed=course(body_speed),
        wheel_speed=course(wheel_speed),
    )


def landing(car: QuarterCar, *, height: Value) -> Landing:
    """Return the peaks of a drop alone, which takes half the time where there are many.

    A landing is told by its hardest moment; what leads to it is in `drop`.

        max F_t,   max B,   max δ = max F_t/k_t

    Parameters
    ----------
    car
        The corner [kg, N/m, N·s/m, m].
    height
        s, from the road to the tire hanging free [m].

    Returns
    -------
    Landing
        Peaks [N, m] and the instant of the largest bearing force.

    Raises
    ------
    ImpossibleError
        As `drop`.

    Notes
    -----
    The motion is that of `drop`.

    Examples
    --------
    >>> car = QuarterCar(400.0, 50.0, 40.0, 250e3, 1e8, 0.0, 0.0, 0.0, 0.0, 0.0)  # nearly rigid strut
    >>> bool(landing(car, height=0.0).peak_tire_force == drop(car, height=0.0).peak_tire_force)
    True

    References
    ----------
    See `drop`.
    """
    return _peaks(*_landed(car, height, _STEP))


def tire_on_rim(*, deflection: Value, section_height: Value) -> Flag:
    """Return whether a tire pressed in so far stands on its rim.

    From there on the force is not the tire's any more: the real one is higher than any spring says.

        δ > 0.6 H

    Parameters
    ----------
    deflection
        δ, of the tire [m].
    section_height
        H, from rim to tread [m].

    Returns
    -------
    Flag
        True where the tire is on the rim [1].

    Notes
    -----
    Tires differ in wall and inflation: a mark, not a limit.

    Examples
    --------
    >>> bool(tire_on_rim(deflection=0.08, section_height=0.12)), bool(tire_on_rim(deflection=0.07, section_height=0.12))
    (True, False)

    References
    ----------
    Common practice, no source.
    """
    return np.asarray(deflection) > RIM_SHARE_OF_SECTION_HEIGHT * np.asarray(section_height)


def _check(car: QuarterCar, height: Array) -> None:
    for name in ("sprung_mass", "unsprung_mass", "turning_mass", "tire_stiffness", "wheel_rate"):
        if not np.all(getattr(car, name) > 0):
            raise ImpossibleError(f"a drop needs a positive {name.replace('_', ' ')}")
    for name in ("bump_damping", "rebound_damping", "bump_stop_stiffness"):
        if not np.all(getattr(car, name) >= 0):
            raise ImpossibleError(f"a drop needs a {name.replace('_', ' ')} that is not negative")
    if not np.all(height >= 0):
        raise ImpossibleError("a drop is from a height that is not negative")


def _landed(car: QuarterCar, height: Value, step: float) -> tuple[tuple[int, ...], QuarterCar, Motion]:
    """Return the shape of heights and corners together, and corners and motions in one row."""
    shape = np.broadcast_shapes(np.shape(height), *(np.shape(part) for part in vars(car).values()))
    s, *parts = (np.broadcast_to(part, shape).astype(float).ravel() for part in (height, *vars(car).values()))
    car = QuarterCar(*parts)
    _check(car, s)
    return shape, car, _motion(car, s, step)


def _peaks(shape: tuple[int, ...], car: QuarterCar, motion: Motion) -> Landing:
    tire_peak, peak = motion.peak(motion.force_rows(_TIRE)), motion.peak(_bearing_rows(car, motion))

    def shaped(values: Value) -> Value:
        whole = np.reshape(values, shape)
        return float(whole) if whole.ndim == 0 else whole

    F_t = car.tire_stiffness * np.maximum(peak.state[:, _WHEEL], 0.0)
    closed = car.compression_in_the_air + peak.state[:, _BODY] - peak.state[:, _WHEEL]
    return Landing(
        peak_tire_force=shaped(tire_peak.value),
        peak_bearing_force=shaped(peak.value),
        largest_deflection=shaped(tire_peak.value / car.tire_stiffness),
        at_peak=Instant(
            time=shaped(peak.time),
            tire_force=shaped(F_t),
            bearing_force=shaped(peak.value),
            wheel_acceleration=shaped((F_t - peak.value) / car.turning_mass - STANDARD_GRAVITY),
            compression=shaped(closed),
        ),
    )


def _bearing_rows(car: QuarterCar, motion: Motion) -> Array:
    """Return the weights that make the bearing force of the state and 1."""
    rows = motion.force_rows(_TIRE) + _column(car.turning_mass) * motion.rate_rows(_WHEEL_SPEED)
    rows[:, :, -1] -= _column(car.turning_mass)[:, :, 0] * STANDARD_GRAVITY
    return rows


def _motion(car: QuarterCar, height: Array, step: float) -> Motion:
    on_wheel = np.stack([0 * height, 0 * height, 0 * height, 1 / car.unsprung_mass], axis=1)
    between = np.stack([0 * height, 0 * height, -1 / car.sprung_mass, 1 / car.unsprung_mass], axis=1)
    squeeze, closing = np.array([1.0, -1.0, 0.0, 0.0]), np.array([0.0, 0.0, 1.0, -1.0])
    hanging = np.asarray(car.compression_in_the_air)
    stop = DROOP_STOP_OVER_WHEEL_RATE * car.wheel_rate
    bump_stop_at = car.standing_compression + car.bump_travel
    elements = [
        Element(np.array([0.0, 1.0, 0.0, 0.0]), 0.0, car.tire_stiffness, 0.0, -on_wheel),
        Element(squeeze, hanging, car.wheel_rate, 0.0, between),
        Element(squeeze, hanging - car.droop_compression, 0.0, stop, between),
        Element(squeeze, hanging - bump_stop_at, car.bump_stop_stiffness, 0.0, between),
        Element(closing, 0.0, car.bump_damping, car.rebound_damping, between),
    ]
    speed = np.sqrt(2 * STANDARD_GRAVITY * height)
    stiffest = car.wheel_rate + np.maximum(car.bump_stop_stiffness, stop)
    swinging = np.sqrt((car.tire_stiffness + stiffest) / car.unsprung_mass + stiffest / car.sprung_mass)
    creeping = np.maximum(car.bump_damping, car.rebound_damping) * (1 / car.unsprung_mass + 1 / car.sprung_mass)
    rate = ride_rate(wheel_rate=car.wheel_rate, tire_stiffness=car.tire_stiffness)
    return bilinear_motion(
        elements,
        start=np.stack([0 * speed, 0 * speed, speed, speed], axis=1),
        kinematics=np.eye(4, k=2),
        steady=np.tile([0.0, 0.0, STANDARD_GRAVITY, STANDARD_GRAVITY], (len(height), 1)),
        step=step / (swinging + creeping),
        duration=np.asarray(_PERIODS / natural_frequency(stiffness=rate, mass=car.sprung_mass)),
    )


def _column(values: Value) -> Array:
    return np.asarray(values)[:, np.newaxis, np.newaxis]

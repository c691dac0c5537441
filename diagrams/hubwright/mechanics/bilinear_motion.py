"""Motion of masses held by springs, stops and dampers that are linear on either side of a threshold; many at once.

Between two thresholds the motion is linear and its series converges at once, so each step is exact to rounding;
a step that would cross a threshold ends there. State and units are the caller's. Time in seconds.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from hubwright.mechanics.constants import Value

Array: TypeAlias = NDArray[np.float64]

_TERMS = 12  # of the series: the next one is below 1e-12 at a step of 0.5 over the fastest rate
_LEAST_PART = 0.02  # of a step: the least that is taken to a threshold, so that the motion always goes on
_SAME_MOMENT = 1e-6  # of a step


@dataclass(frozen=True)
class Element:
    """A force by the gauge g = row · state + offset: `above` · g where g > 0, `below` · g elsewhere.

    `effect` is what one newton of it does to the rate of each state. Row and effect (state,) or
    (case, state); the rest one number for each case or for all.
    """

    row: Value
    offset: Value
    above: Value
    below: Value
    effect: Value


@dataclass(frozen=True)
class Peak:
    """The largest value of a quantity in each case, when it is reached [s] and the state then (case, state)."""

    value: Array
    time: Array
    state: Array


@dataclass(frozen=True)
class Motion:
    """A motion from step to step: time (case, step) [s] and state (case, step, state).

    A case that has reached its end stands still while others go on.
    """

    time: Array
    state: Array
    _regime: NDArray[np.intp]  # (case, step): sides of all thresholds, as one number
    _gauges: Array  # (case, element, state and 1)
    _slopes: Array  # (case, regime, element)
    _rates: Array  # (case, regime, state and 1, state and 1)

    def force(self, element: int) -> Array:
        """Return the force of one element at every step, (case, step)."""
        return _along(self.force_rows(element), self._regime, _with_one(self.state))

    def force_rows(self, element: int) -> Array:
        """Return the weights that make an element's force of the state and 1, (case, regime, state and 1)."""
        return self._slopes[:, :, element, np.newaxis] * self._gauges[:, np.newaxis, element, :]

    def rate_rows(self, index: int) -> Array:
        """Return the weights that make the rate of one state of the state and 1, (case, regime, state and 1)."""
        return self._rates[:, :, index, :]

    def values(self, rows: Array) -> Array:
        """Return at every step what such weights make of the state, (case, step)."""
        return _along(rows, self._regime, _with_one(self.state))

    def peak(self, rows: Array) -> Peak:
        """Return the largest value of what such weights make of the state, between the steps too."""
        cases = np.arange(len(self.time))
        states = _with_one(self.state)
        at_steps = _along(rows, self._regime, states)
        highest = at_steps.argmax(axis=1)
        value, time, state = at_steps[cases, highest], self.time[cases, highest], states[cases, highest]
        for begin in (np.maximum(highest - 1, 0), np.minimum(highest, self.time.shape[1] - 2)):
            regime = self._regime[cases, begin]
            series = _series(self._rates[cases, regime], states[cases, begin])
            course = np.einsum("ci,cmi->cm", rows[cases, regime], series)
            growth = course[:, 1:] * np.arange(1, course.shape[1])
            part = _root(growth, self.time[cases, begin + 1] - self.time[cases, begin])
            there = _sum(course, part)
            better = there > value
            value = np.where(better, there, value)
            time = np.where(better, self.time[cases, begin] + part, time)
            state = np.where(better[:, np.newaxis], _sum(np.swapaxes(series, 1, 2), part[:, np.newaxis]), state)
        return Peak(value, time, state[:, :-1])


def bilinear_motion(
    elements: Sequence[Element], *, start: Array, kinematics: Array, steady: Array, step: Array, duration: Array
) -> Motion:
    """Return the motion that starts from a state under elements of two slopes, for many cases at once.

    Which sides its gauges are on makes the rate of the state linear in it; the solution is then a series
    in the length of the step, and the first gauge to pass zero ends the step and changes its side.

        x' = K x + c + Σ eⱼ·kⱼ(gⱼ)·gⱼ,    gⱼ = rⱼ·x + oⱼ

    Parameters
    ----------
    elements
        What acts on the masses [N for each unit of its gauge].
    start
        State of each case at time zero, (case, state) [unit of the state].
    kinematics
        K, rates by the state itself, (state, state) [1/s].
    steady
        c, rates that are always there, (case, state) [unit of the state/s].
    step
        Longest step of each case [s].
    duration
        At least so long, each case [s].

    Returns
    -------
    Motion
        Time [s] and state at every step.

    Notes
    -----
    A gauge that passes zero and returns within one step is not seen. The force has no jump there, so
    the error is of the third order in that step. A gauge that starts at zero counts as above it.

    Examples
    --------
    >>> spring = Element(row=np.array([1.0, 0.0]), offset=0.0, above=4.0, below=4.0, effect=np.array([0.0, -1.0]))
    >>> swing = bilinear_motion(
    ...     [spring], start=np.array([[1.0, 0.0]]), kinematics=np.array([[0.0, 1.0], [0.0, 0.0]]),
    ...     steady=np.zeros((1, 2)), step=np.array([0.1]), duration=np.array([2.0]),
    ... )
    >>> bool(np.allclose(swing.state[0, :, 0], np.cos(2 * swing.time[0]), atol=1e-10))  # ω² = 4
    True

    References
    ----------
    Piecewise linear systems, in any text on ordinary differential equations; common practice.
    """
    count, size = start.shape
    gauges = np.stack([_gauge(element, count, size) for element in elements], axis=1)
    slopes, rates = _regimes(elements, gauges, kinematics, steady)
    whole_steps = _step_matrices(rates * step[:, np.newaxis, np.newaxis, np.newaxis])
    weights = 1 << np.arange(len(elements))
    cases = np.arange(count)

    state, time = _with_one(start), np.zeros(count)
    above = _values(gauges, state) >= 0
    times, states, regimes = [time], [state], []
    while True:
        regime = above @ weights
        regimes.append(regime)
        running = time < duration
        if not running.any():
            break
        new = np.where(running[:, np.newaxis], _values(whole_steps[cases, regime], state), state)
        time = time + np.where(running, step, 0.0)
        passed = (running[:, np.newaxis]) & ((_values(gauges, new) > 0) != above)
        if passed.any():
            hit = passed.any(axis=1)
            part, turned = _first_passed(gauges[hit], rates[hit, regime[hit]], state[hit], passed[hit], step[hit])
            new[hit] = _sum(np.swapaxes(_series(rates[hit, regime[hit]], state[hit]), 1, 2), part[:, np.newaxis])
            time[hit] += part - step[hit]
            above[hit] ^= turned
        state = new
        times.append(time)
        states.append(state)
    return Motion(
        np.stack(times, axis=1),
        np.stack(states, axis=1)[..., :-1],
        np.stack(regimes, axis=1),
        gauges,
        slopes,
        rates,
    )


def _gauge(element: Element, count: int, size: int) -> Array:
    gauge = np.empty((count, size + 1))
    gauge[:, :-1] = element.row
    gauge[:, -1] = element.offset
    return gauge


def _regimes(elements: Sequence[Element], gauges: Array, kinematics: Array, steady: Array) -> tuple[Array, Array]:
    """Return the slopes of the elements and the rate matrix for every combination of sides."""
    count, number, width = gauges.shape
    sides = (np.arange(1 << number)[:, np.newaxis] >> np.arange(number)) & 1
    slopes = np.empty((count, len(sides), number))
    effects = np.empty((count, number, width - 1))
    for place, element in enumerate(elements):
        above, below = (np.broadcast_to(slope, (count,))[:, np.newaxis] for slope in (element.above, element.below))
        slopes[:, :, place] = np.where(sides[:, place], above, below)
        effects[:, place] = element.effect
    rates = np.zeros((count, len(sides), width, width))
    rates[:, :, :-1, :-1] = kinematics
    rates[:, :, :-1, -1] = steady[:, np.newaxis, :]
    rates[:, :, :-1, :] += np.einsum("crk,cki,ckj->crij", slopes, effects, gauges, optimize=True)
    return slopes, rates


def _step_matrices(rates: Array) -> Array:
    """Return the matrices that carry a state over one whole step."""
    total = term = np.broadcast_to(np.eye(rates.shape[-1]), rates.shape)
    for order in range(1, _TERMS):
        term = term @ rates / order
        total = total + term
    return total


def _series(rates: Array, state: Array) -> Array:
    """Return the coefficients of the state's powers of time, (case, power, state and 1)."""
    terms = [state]
    for order in range(1, _TERMS):
        terms.append(_values(rates, terms[-1]) / order)
    return np.stack(terms, axis=1)


def _first_passed(
    gauges: Array, rates: Array, state: Array, passed: NDArray[np.bool_], step: Array
) -> tuple[Array, NDArray[np.bool_]]:
    """Return when within the step the first gauge passes zero, and which do at that moment."""
    courses = np.einsum("cki,cmi->ckm", gauges, _series(rates, state))
    parts = np.where(passed, _root(courses, step[:, np.newaxis]), np.inf)
    part = np.clip(parts.min(axis=1), _LEAST_PART * step, step)
    # elements may share a threshold, as a slack spring and a stop do
    return part, parts <= (part + _SAME_MOMENT * step)[:, np.newaxis]


def _root(coefficients: Array, length: Array) -> Array:
    """Return where a polynomial is zero between 0 and `length`, if its ends differ in sign; else some place there."""
    slopes = coefficients[..., 1:] * np.arange(1, coefficients.shape[-1])
    with np.errstate(divide="ignore", invalid="ignore"):
        fall = coefficients[..., 0] - _sum(coefficients, length)
        place = np.clip(np.nan_to_num(length * coefficients[..., 0] / fall), 0.0, length)
        for _ in range(4):  # within one step a gauge is nearly straight
            place = place - _sum(coefficients, place) / _sum(slopes, place)
            place = np.clip(np.nan_to_num(place), 0.0, length)
    return place


def _sum(coefficients: Array, place: Array) -> Array:
    """Return the polynomial's value, its coefficients standing last, lowest power first."""
    total = coefficients[..., -1]
    for power in range(coefficients.shape[-1] - 2, -1, -1):
        total = total * place + coefficients[..., power]
    return total


def _values(rows: Array, state: Array) -> Array:
    return np.asarray((rows @ state[..., np.newaxis])[..., 0])


def _along(rows: Array, regime: NDArray[np.intp], states: Array) -> Array:
    cases = np.arange(len(states))[:, np.newaxis]
    return np.asarray(np.einsum("cmi,cmi->cm", rows[cases, regime], states))


def _with_one(state: Array) -> Array:
    """Return states with a 1 behind them, so that what is always there is a weight like the others."""
    return np.concatenate([state, np.ones((*state.shape[:-1], 1))], axis=-1)

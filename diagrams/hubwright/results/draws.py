"""Draws the inputs of a setup within their ranges, and what comes out: spans from the 5th to the 95th percentile.

Every input with a range is drawn by itself, evenly between its low and its high value (counts: every whole number
alike). A draw is fixed by the name of the input, so that two setups that share an input share its draws. Ratings
computed from geometry are drawn too.
"""

import dataclasses
import math
import zlib
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from hubwright.errors import SetupErrors
from hubwright.results.bearings import bearing_values
from hubwright.results.lubrication import CLEANLINESS, grease_of
from hubwright.results.many import Many, solve_many
from hubwright.results.model import Results
from hubwright.results.wear import Array
from hubwright.setup.building import build_setup
from hubwright.setup.document import Document
from hubwright.setup.estimates import RATING_RANGE
from hubwright.setup.model import Drop, Input, Setup
from hubwright.setup.variants import with_inputs

DRAWS = 400
SEED = 1709
LOW, HIGH = 0.05, 0.95
LEAST_SHARE = 0.5  # of draws that must stand; else the ranges say little of the setup

_NOTHING = 1e-9  # of any SI unit that results come in: far below all of them

# the tables that loads and life follow from; drops take the suspension too
_ACTING = ("chassis", "tire", "wheel", "hub", "bearing", "brake", "lubrication", "gear", "case", "duty")
_COUNTS = ("bearing.balls_per_row", "bearing.rollers_per_row")


@dataclass(frozen=True)
class Span:
    """The 5th and the 95th percentile of the draws, each with its own standard error from their number."""

    low: float
    high: float
    low_error: float
    high_error: float
    draws: int


def span(values: Array) -> Span:
    """Return the span of drawn values.

    A percentile is the value at its rank. Its error is half the way between the values whose ranks lie a standard
    deviation to either side, √(n p (1 − p)).
    """
    ordered = np.sort(values)

    def at(rank: float) -> float:
        return float(ordered[min(max(math.ceil(rank - 1e-9), 1), len(ordered)) - 1])

    def error(share: float) -> float:
        rank, deviation = len(ordered) * share, math.sqrt(len(ordered) * share * (1 - share))
        below, above = at(rank - deviation), at(rank + deviation)
        return 0.0 if below == above else (above - below) / 2

    return Span(at(len(ordered) * LOW), at(len(ordered) * HIGH), error(LOW), error(HIGH), len(ordered))


def spans_of(results: Results) -> dict[str, Span]:
    """Return the span of every value that the ranges move, by the dotted names of `solve`'s JSON.

    Empty where more than half of the draws cannot stand.
    """
    drops = any(isinstance(case, Drop) for case in results.setup.cases)
    if not is_drawn(results, drops=drops) and grease_of(results.setup) is None:
        return {}
    drawn = draws_of(results, drops=drops)
    if drawn.stands.mean() < LEAST_SHARE:
        return {}
    kept = {name: value[drawn.stands] for name, value in drawn.values.items()}
    return {name: span(value) for name, value in kept.items() if _moves(value)}


def is_drawn(results: Results, *, drops: bool = False) -> bool:
    """Return whether anything has a range that loads and basic lives follow from; with what acts in drops alone."""
    return bool(_varied(results.inputs, drops=drops) or _unrated(results.setup))


class Draws:
    """What is drawn for a solved setup, before anything is solved with it; the same each time for the same inputs.

    Draws of one array setup share their number of balls or rollers, which no array can hold.
    """

    def __init__(self, results: Results, *, number: int = DRAWS, seed: int = SEED, drops: bool = False) -> None:
        """Draw every input with a range, the ratings that are computed, and the place in the class of the grease."""
        setup = results.setup
        self._whole = dataclasses.replace(setup, inputs=results.inputs)  # with what is estimated late
        self._inputs = drawn_inputs(results, number=number, seed=seed, drops=drops)
        self._factors = {
            name: 1 + RATING_RANGE * (2 * uniform(f"bearing.{name}", number, seed) - 1) for name in _unrated(setup)
        }
        self._weighed = _weighed_masses(setup, number, seed)
        self._count = next((key for key in _COUNTS if key in self._inputs), None)
        self.cleanliness = uniform(CLEANLINESS, number, seed)
        self.counts: Array = self._inputs[self._count] if self._count else np.zeros(number)

    def setup(self, chosen: NDArray[np.intp]) -> Setup:
        """Return the setup of arrays of some draws, alike in their number of balls or rollers."""
        values: dict[str, Any] = {name: value[chosen] for name, value in self._inputs.items()}
        if self._count:
            values[self._count] = int(self.counts[chosen[0]])
        drawn = _with_whole_duty(with_inputs(self._whole, values))
        drawn = dataclasses.replace(drawn, **{name: value[chosen] for name, value in self._weighed.items()})
        computed = vars(bearing_values(drawn.bearing))
        rated = {name: computed[name] * factor[chosen] for name, factor in self._factors.items()}
        return dataclasses.replace(drawn, bearing=dataclasses.replace(drawn.bearing, **rated))


def draws_of(results: Results, *, number: int = DRAWS, seed: int = SEED, drops: bool = False) -> Many:
    """Return what the draws of a solved setup give, one entry for each draw; drops where they are asked for."""
    drawn = Draws(results, number=number, seed=seed, drops=drops)
    stands = np.empty(number, dtype=bool)
    values: dict[str, Array] = {}
    valid: dict[str, NDArray[np.bool_]] = {}
    for count in np.unique(drawn.counts):
        chosen = np.flatnonzero(drawn.counts == count)
        solved = solve_many(
            drawn.setup(chosen), results.wheel, len(chosen), cleanliness=drawn.cleanliness[chosen], drops=drops
        )
        stands[chosen] = solved.stands
        for name, value in solved.values.items():
            values.setdefault(name, np.empty(number))[chosen] = value
        for name, flag in solved.valid.items():
            valid.setdefault(name, np.empty(number, dtype=bool))[chosen] = flag
    return Many(values, stands, valid)


def drawn_inputs(results: Results, *, number: int = DRAWS, seed: int = SEED, drops: bool = False) -> dict[str, Array]:
    """Return the values of every input with a range, by dotted key, one for each draw."""
    return {
        key: _drawn(entry, key, uniform(_draw_name(results.setup, key), number, seed))
        for key, entry in _varied(results.inputs, drops=drops).items()
    }


def uniform(name: str, number: int, seed: int = SEED) -> Array:
    """Return numbers from 0 to 1 that follow from a name and a seed alone."""
    return np.random.default_rng([seed, zlib.crc32(name.encode())]).random(number)


def _moves(values: Array) -> bool:
    """Return whether values differ by more than what rounding leaves, of a moment that cancels to nothing too."""
    low, high = float(values.min()), float(values.max())
    largest = max(abs(low), abs(high))
    return high - low > 1e-12 * largest and largest > _NOTHING if math.isfinite(high) else low < high


def _varied(inputs: Mapping[str, Input], *, drops: bool = False) -> dict[str, Input]:
    acting = (*_ACTING, "suspension") if drops else _ACTING
    return {
        key: entry
        for key, entry in inputs.items()
        if key.split(".")[0] in acting and entry.has_range and entry.low != entry.high and not entry.derived_from
    }


def _unrated(setup: Setup) -> list[str]:
    """Return the ratings that are computed from geometry."""
    computed = vars(bearing_values(setup.bearing))
    return [
        name
        for name in ("dynamic_rating", "static_rating")
        if getattr(setup.bearing, name) is None and computed[name] is not None
    ]


def _draw_name(setup: Setup, key: str) -> str:
    """Return the name by which an input is drawn: gear goes by its own name, not by its place in the file."""
    table, _, rest = key.partition(".")
    if table != "gear":
        return key
    place, _, name = rest.partition(".")
    return f"gear.{setup.gear[int(place) - 1].name}.{name}"


def _drawn(entry: Input, key: str, share: Array) -> Array:
    low, high = entry.low or 0.0, entry.high or 0.0  # neither is None: _varied
    if key in _COUNTS:
        return round(low) + np.floor(share * (round(high) - round(low) + 1))
    return low + share * (high - low)


def _weighed_masses(setup: Setup, number: int, seed: int) -> dict[str, Any]:
    """Return the draws of the tire and wheel with which the axle masses were taken, where the setup has others."""
    document = setup.source
    if not isinstance(document, Document) or document.weighed is None:
        return {}
    try:
        inputs = build_setup(document.weighed).inputs
    except SetupErrors:  # a base that only its children complete
        return {}
    found = {}
    for table in ("tire", "wheel"):
        key, root = f"{table}.mass", f"root_{table}_mass"
        # the same tire or wheel moves along with the setup's own
        if key in _varied(inputs) and getattr(setup, root) != getattr(setup, table).mass:
            found[root] = _drawn(inputs[key], key, uniform(key, number, seed))
    return found


def _with_whole_duty(setup: Setup) -> Setup:
    """Return the setup with shares that sum to 1 again."""
    total = sum(part.share for part in setup.duty)
    duty = tuple(dataclasses.replace(part, share=part.share / total) for part in setup.duty)
    return dataclasses.replace(setup, duty=duty)

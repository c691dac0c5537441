"""How much each input with a range matters to a result: what it does alone while every other stays as given.

An input is worth measuring when it makes much of the span that all of them make together. Every input with a range
runs evenly from its low to its high value; what an input alone makes is the result's way from its 5th to its 95th
percentile then. SI units.
"""

import dataclasses
import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

import numpy as np

from hubwright.results.bearings import bearing_values
from hubwright.results.draws import HIGH, LEAST_SHARE, LOW, drawn_inputs, draws_of
from hubwright.results.many import Many, solve_many
from hubwright.results.model import Results
from hubwright.results.wear import Array
from hubwright.setup.estimates import RATING_RANGE
from hubwright.setup.model import Setup
from hubwright.setup.variants import with_inputs

Quantity = Literal["worst row load", "life", "life ratio"]
POINTS = 9  # of an input's range, from the 5th to the 95th percentile
_COUNTS = ("bearing.balls_per_row", "bearing.rollers_per_row")
_RATINGS = ("dynamic_rating", "static_rating")
_SHARES = np.linspace(LOW, HIGH, POINTS)


@dataclass(frozen=True)
class Matters:
    """What one input alone does to a result: its ends there, over the result as given, and its part of the span."""

    key: str
    low: float  # the result with the input at the 5th percentile of its range, over the result as given
    high: float  # at the 95th
    share: float  # of the logarithm of the whole span

    @property
    def matters(self) -> bool:
        """Whether the input makes a part of the span that anybody would see."""
        return self.share >= 0.005


def what_matters(results: Results, quantity: Quantity, *, beside: Results | None = None) -> tuple[Matters, ...]:
    """Return every input with a range by what it alone does to a result, what matters most first.

    The worst row's load is that standing. The life is that over the duty, without a duty the one standing; its ratio
    is that to `beside`, a setup of the same vehicle in which the inputs that both share move along. Empty where the
    file says too little of the bearing, or too many of its draws cannot stand.
    """
    solved = (results,) if beside is None else (results, beside)
    if any(each.bearing.effective_spread is None for each in solved) or (quantity == "life ratio") != bool(beside):
        return ()
    if quantity != "worst row load" and any(each.life is None for each in solved):
        return ()
    value = _VALUES[quantity]
    drawn = [draws_of(each) for each in solved]
    stands = np.logical_and.reduce([each.stands for each in drawn])
    if stands.mean() < LEAST_SHARE:
        return ()
    whole = value(drawn)[stands]
    if not _known(whole) or not _log_width(np.quantile(whole, (LOW, HIGH))) > _NOTHING:
        return ()
    spread = _log_width(np.quantile(whole, (LOW, HIGH)))
    given = value([solve_many(_whole(each), each.wheel, 1) for each in solved])[0]
    found = []
    for key in dict.fromkeys(key for each in solved for key in _ranged(each)):
        moved = _moved(solved, key, value)
        if moved is not None:
            found.append(Matters(key, float(moved[0] / given), float(moved[-1] / given), _log_width(moved) / spread))
    return tuple(sorted(found, key=lambda each: -each.share))


_NOTHING = 1e-9  # of a logarithm: what rounding leaves


def _known(values: Array) -> bool:
    return len(values) > 0 and bool(np.all(np.isfinite(values) & (values > 0)))


def _log_width(ends: Array) -> float:
    return float(math.log(ends.max() / ends.min()))


def _worst_row(many: Many) -> Array:
    return np.maximum(
        many.values["cases.standing.row_radial_load.outboard"], many.values["cases.standing.row_radial_load.inboard"]
    )


def _life(many: Many) -> Array:
    return many.values.get("life.duty.distance", many.values.get("life.standing.detailed", np.empty(0)))


_VALUES: Mapping[Quantity, Callable[[Sequence[Many]], Array]] = {
    "worst row load": lambda solved: _worst_row(solved[0]),
    "life": lambda solved: _life(solved[0]),
    "life ratio": lambda solved: _life(solved[0]) / _life(solved[1]),
}


def _whole(results: Results) -> Setup:
    """Return the setup with what is estimated late."""
    return dataclasses.replace(results.setup, inputs=results.inputs)


def _ranged(results: Results) -> list[str]:
    """Return the keys of everything that is drawn: inputs with a range, and ratings computed from geometry."""
    computed = vars(bearing_values(results.setup.bearing))
    rated = [
        f"bearing.{name}"
        for name in _RATINGS
        if getattr(results.setup.bearing, name) is None and computed[name] is not None
    ]
    return [*drawn_inputs(results, number=1), *rated]


def _moved(solved: Sequence[Results], key: str, value: Callable[[Sequence[Many]], Array]) -> Array | None:
    """Return the result along the range of one input; None where a case cannot stand there."""
    if key in _COUNTS:
        ranges = [_ends(each, key) for each in solved]
        number = max(round(high) - round(low) for low, high in ranges) + 1
        points = [
            [
                solve_many(_at(each, key, min(round(low) + step, round(high))), each.wheel, 1)
                for each, (low, high) in zip(solved, ranges, strict=True)
            ]
            for step in range(number)
        ]
    else:
        points = [[solve_many(_at(each, key, None), each.wheel, POINTS) for each in solved]]
    if not all(bool(many.stands.all()) for point in points for many in point):
        return None
    moved = np.concatenate([value(point) for point in points])
    return moved if _known(moved) else None


def _ends(results: Results, key: str) -> tuple[float, float]:
    entry = results.inputs[key]
    value = float(entry.value)
    return (value if entry.low is None else entry.low, value if entry.high is None else entry.high)


def _at(results: Results, key: str, count: int | None) -> Setup:
    """Return the setup with one input along its range, or as it is where it has none of that name."""
    whole = _whole(results)
    name = key.removeprefix("bearing.")
    if key not in _ranged(results):
        return whole
    if name in _RATINGS and key not in results.inputs:
        computed: float = vars(bearing_values(whole.bearing))[name]
        rated: Any = {name: computed * (1 + RATING_RANGE * (2 * _SHARES - 1))}
        return dataclasses.replace(whole, bearing=dataclasses.replace(whole.bearing, **rated))
    low, high = _ends(results, key)
    along: Any = low + _SHARES * (high - low) if count is None else count
    moved = with_inputs(whole, {key: along})
    total = sum(part.share for part in moved.duty)
    duty = tuple(dataclasses.replace(part, share=part.share / total) for part in moved.duty)
    return dataclasses.replace(moved, duty=duty)

"""Spans of what each change contributes: the split of a ratio, made anew in every draw of both setups.

Base and other are drawn together as for the ratio itself; every setup between them takes its values from those two.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from hubwright.results.changes import Change, with_all_gear
from hubwright.results.contributions import EXACT, Flags, every_setup, order_weights
from hubwright.results.draws import DRAWS, LEAST_SHARE, Draws, Span, span
from hubwright.results.many import Many, solve_many
from hubwright.results.model import Results
from hubwright.results.wear import Array

Values = str | tuple[str, str]  # by the names of `solve_many`: one, or two of which the larger counts
FEWEST = 50  # draws
BUDGET = 1600  # setups to solve with all their cases: fewer draws where there are many between


@dataclass(frozen=True)
class PartSpans:
    """The span of each change's factor by the name of a ratio; None where the ranges do not move it."""

    spans: Mapping[str, tuple[Span | None, ...]]
    draws: int


NONE = PartSpans({}, 0)


def part_spans(base: Results, other: Results, changes: Sequence[Change], names: Mapping[str, Values]) -> PartSpans:
    """Return the spans of the changes' factors in some ratios.

    None are given above eight changes, where the orders themselves are a sample, or where too few draws stand.
    """
    if not changes or len(changes) > EXACT:
        return NONE
    has = every_setup(len(changes))
    number = min(max(BUDGET // len(has), FEWEST), DRAWS)
    solved = _solved(base, other, changes, has, number)
    stands = np.logical_and.reduce([each.stands for each in solved])
    if stands.mean() < LEAST_SHARE:
        return NONE
    weights = order_weights(has)
    found = {}
    for name, of in names.items():
        value = np.array([_value(each, of)[stands] for each in solved])
        usable = np.all(np.isfinite(value) & (value > 0), axis=0)
        if usable.mean() >= LEAST_SHARE:
            factors = np.exp(weights @ np.log(value[:, usable]))
            found[name] = tuple(span(factor) if _moves(factor) else None for factor in factors)
    return PartSpans(found, int(stands.sum()))


def _solved(base: Results, other: Results, changes: Sequence[Change], has: Flags, number: int) -> list[Many]:
    """Return the draws of every setup between two, in the order of `has`."""
    mine, theirs = Draws(base, number=number), Draws(other, number=number)
    counts = np.stack([mine.counts, theirs.counts], axis=1)
    stands = np.empty((len(has), number), dtype=bool)
    values: list[dict[str, Array]] = [{} for _ in has]
    for pair in np.unique(counts, axis=0):
        chosen = np.flatnonzero((counts == pair).all(axis=1))
        start, end = mine.setup(chosen), theirs.setup(chosen)
        start = with_all_gear(start, end)
        for row, wanted in enumerate(has):
            setup = start
            for change, present in zip(changes, wanted, strict=True):
                setup = change.put(setup, end) if present else setup
            many = solve_many(setup, other.wheel, len(chosen), cleanliness=mine.cleanliness[chosen])
            stands[row, chosen] = many.stands
            for name, value in many.values.items():
                values[row].setdefault(name, np.full(number, np.nan))[chosen] = value
    return [Many(each, flags, {}) for each, flags in zip(values, stands, strict=True)]


def _value(many: Many, of: Values) -> Array:
    return many.values[of] if isinstance(of, str) else np.maximum(*(many.values[name] for name in of))


def _moves(factor: NDArray[np.float64]) -> bool:
    return bool(np.ptp(factor) > 1e-9)

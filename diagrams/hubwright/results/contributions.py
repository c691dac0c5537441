"""What each change contributes to a ratio: its average over the orders in which the changes can be made.

The logarithms of the parts add up to that of the whole: the parts multiply to the ratio, whatever the changes do to
each other. With n changes the average over all n! orders needs the 2^n setups between the two; above eight changes
some orders are drawn instead.

References: Shapley (1953), A value for n-person games, Contributions to the Theory of Games II.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from hubwright.results.changes import Change, stacked, with_all_gear
from hubwright.results.many import solve_many
from hubwright.results.model import Wheel
from hubwright.results.wear import Array
from hubwright.setup.model import Setup

EXACT = 8  # changes up to which every order counts
ORDERS = 64  # drawn above that, each with its reverse
SEED = 1709
NOTHING = 1e-9  # of a logarithm: what rounding leaves

Flags: TypeAlias = NDArray[np.bool_]

# stand for one value each in a stack: their numbers may be missing or count something
_WHOLE = ("tire", "bearing", "brake", "lubrication", "duty")


@dataclass(frozen=True)
class Contribution:
    """A change's factor in a ratio; `error` is the standard error of its logarithm, 0 where every order counts."""

    change: str
    kind: str
    factor: float
    error: float

    @property
    def nothing(self) -> bool:
        """Whether the change does nothing to this ratio."""
        return abs(math.log(self.factor)) <= NOTHING


@dataclass(frozen=True)
class Between:
    """The setups between two: which have which changes (setup, change), and what each gives by name."""

    has: Flags
    values: Mapping[str, Array]
    stands: bool


def solve_between(base: Setup, other: Setup, changes: Sequence[Change], wheel: Wheel) -> Between:
    """Return every setup between two that the average needs: all of them, or those of the drawn orders."""
    has = every_setup(len(changes)) if len(changes) <= EXACT else _visited(_orders(len(changes)))
    start = with_all_gear(base, other)
    groups: dict[tuple[bool, ...], list[int]] = {}
    whole = [place for place, change in enumerate(changes) if change.kind in _WHOLE]
    for number, row in enumerate(has):
        groups.setdefault(tuple(bool(row[place]) for place in whole), []).append(number)
    values: dict[str, Array] = {}
    stands = True
    for numbers in groups.values():
        setups = []
        for number in numbers:
            setup = start
            for change, chosen in zip(changes, has[number], strict=True):
                setup = change.put(setup, other) if chosen else setup
            setups.append(setup)
        solved = solve_many(stacked(setups), wheel, len(setups))
        stands = stands and bool(solved.stands.all())
        for name, value in solved.values.items():
            values.setdefault(name, np.full(len(has), np.nan))[numbers] = value
    return Between(has, values, stands)


def contributions(between: Between, value: Array, changes: Sequence[Change]) -> tuple[Contribution, ...]:
    """Return the factor of each change in the ratio of a value; the factors multiply to the ratio.

    Parameters
    ----------
    between
        The setups between.
    value
        What each of them gives, positive and finite.
    changes
        The changes, in the order of `between.has`.
    """
    logarithm = np.log(value)
    if len(changes) <= EXACT:
        parts = [(float(mean), 0.0) for mean in order_weights(between.has) @ logarithm]
    else:
        place = {row.tobytes(): number for number, row in enumerate(between.has)}
        parts = _sampled(_orders(len(changes)), logarithm, place)
    return tuple(
        Contribution(change.name, change.kind, math.exp(mean), error)
        for change, (mean, error) in zip(changes, parts, strict=True)
    )


def order_weights(has: Flags) -> Array:
    """Return the weights (change, setup) that make each change's average of the logarithms of all setups between."""
    count = has.shape[1]
    place = {row.tobytes(): number for number, row in enumerate(has)}
    weights = np.zeros((count, len(has)))
    for number, row in enumerate(has):
        size = int(row.sum())
        for change in np.flatnonzero(~row):
            # share of the orders in which just these changes come before this one
            share = math.factorial(size) * math.factorial(count - size - 1) / math.factorial(count)
            after = row.copy()
            after[change] = True
            weights[change, place[after.tobytes()]] += share
            weights[change, number] -= share
    return weights


def every_setup(count: int) -> Flags:
    """Return which of so many changes every setup between two has (setup, change)."""
    numbers = np.arange(2**count)
    return (numbers[:, np.newaxis] >> np.arange(count) & 1).astype(bool)


def _orders(count: int) -> Array:
    generator = np.random.default_rng(SEED)
    orders = [generator.permutation(count) for _ in range(ORDERS)]
    return np.array([order for drawn in orders for order in (drawn, drawn[::-1])])


def _visited(orders: Array) -> Flags:
    rows = {row.tobytes(): row for order in orders for row in _steps(order)}
    return np.array(list(rows.values()))


def _steps(order: Array) -> list[Flags]:
    row = np.zeros(len(order), dtype=bool)
    rows = [row.copy()]
    for change in order:
        row[change] = True
        rows.append(row.copy())
    return rows


def _sampled(orders: Array, logarithm: Array, place: Mapping[bytes, int]) -> list[tuple[float, float]]:
    gains = np.empty(orders.shape)
    for number, order in enumerate(orders):
        along = np.array([logarithm[place[row.tobytes()]] for row in _steps(order)])
        gains[number, order] = np.diff(along)
    pairs = (gains[::2] + gains[1::2]) / 2  # an order and its reverse belong together
    errors = pairs.std(axis=0, ddof=1) / math.sqrt(len(pairs))
    return [(float(mean), float(error)) for mean, error in zip(pairs.mean(axis=0), errors, strict=True)]

"""Values shown as the parts of a sum, rounded so that what is printed adds up to the printed total.

The total stays as it is shown elsewhere. Values that add up as they are shown elsewhere stay so; else they get one more
digit, so that what a page says in one place is never denied in another. Only where that does not do either, what
rounding leaves over goes, one unit of the last digit each, to the parts that lost most by it (the method of largest
remainders): no part is off by a whole unit of its last digit.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import get_args

from hubwright.quantities.formatting import (
    MINUS,
    Kind,
    Scale,
    Shown,
    System,
    display,
    format_number,
    last_place,
    scale_of,
)
from hubwright.quantities.printed import size_of
from hubwright.quantities.quantity import Quantity

_FACTORS = 12  # more than so many factors are not tried out
_CANCELLED = 1e-9  # of the largest part


def display_sum(
    parts: Sequence[float], kind: Kind, system: System, *, digits: int | None = None
) -> tuple[tuple[Shown, ...], Shown]:
    """Return the parts of a sum and their total as shown in a unit system; the printed parts add up exactly.

    Parameters
    ----------
    parts
        SI values, each with its sign.
    kind, system
        What they are, and the units to show them in.
    digits
        Significant digits of the total, where it is not shown with the usual ones.

    Examples
    --------
    >>> parts, total = display_sum([3764.0, 1334.9], "force", "si")
    >>> [part.number for part in parts], total.number
    (['3.76', '1.34'], '5.10')
    """
    total = math.fsum(parts)
    grid = _grid_of(parts, total, kind, system, digits)
    if _nothing(total, parts) and sum(grid.units(part) for part in parts) != 0:
        grid = replace(grid, places=grid.places + 1)
    units = apportioned([grid.exact(part) for part in parts], grid.units(total))
    decimals = 0 if all(unit * grid.step % 1 == 0 for unit in units) else max(grid.places, 0)
    whole = grid.shown(0, 0) if _nothing(total, parts) else _alone(total, kind, system, digits)
    return tuple(grid.shown(unit, decimals) for unit in units), whole


def display_terms(
    parts: Sequence[float], kind: Kind, system: System, *, digits: int | None = None
) -> tuple[tuple[Shown, ...], Shown]:
    """Return the terms of a sum that is told one by one: each as it is shown elsewhere, as long as that adds up.

    Terms may be finer than their total: 294 N and 98.1 N are 392 N together. Where they do not add up they get one more
    digit, also in pounds-force, which are whole where they stand alone.

    Examples
    --------
    >>> parts, total = display_terms([3764.5, 1334.6], "force", "si")
    >>> [part.number for part in parts], total.number
    (['3.764', '1.335'], '5.10')
    """
    told, whole = display_sum(parts, kind, system, digits=digits)
    for finer in (0, 1):
        if (alone := _closing(parts, kind, system, digits, finer)) is not None:
            return alone, whole
    return told, whole


def _closing(
    parts: Sequence[float], kind: Kind, system: System, digits: int | None, finer: int
) -> tuple[Shown, ...] | None:
    """Return terms as they are shown alone, or with one more digit; None where they do not add up so."""
    total = math.fsum(parts)
    grid = _grid_of(parts, total, kind, system, digits)
    alone = tuple(_alone(part, kind, system, digits, finer) for part in parts)
    left_over = sum((_read(each, kind, system) for each in alone), -grid.units(total) * grid.step * grid.size)
    return alone if abs(left_over) <= grid.step * grid.size / 2 else None


def format_terms(parts: Sequence[float], kind: Kind, system: System) -> tuple[str, ...]:
    """Return the terms of a sum as texts, each as it is shown elsewhere, as long as that adds up to their total.

    Examples
    --------
    >>> [text.replace("\\xa0", " ") for text in format_terms([0.475, 0.525], "percent", "si")]
    ['48 %', '52 %']
    """
    return tuple(shown.text for shown in display_terms(parts, kind, system)[0])


def format_sums(sums: Sequence[Sequence[float]], kind: Kind, system: System) -> list[tuple[str, ...]]:
    """Return the terms of sums that stand side by side: where one of them needs another digit, all have it.

    Examples
    --------
    >>> [" ".join(each).replace("\\xa0", " ") for each in format_sums([(2.4, 3.45), (2.2, 3.1)], "mass", "si")]
    ['2.4 kg 3.5 kg', '2.2 kg 3.1 kg']
    """
    for finer in (0, 1):
        told = [_closing(parts, kind, system, None, finer) for parts in sums]
        if all(each is not None for each in told):
            return [tuple(shown.text for shown in each or ()) for each in told]
    return [format_terms(parts, kind, system) for parts in sums]


def adding_up(*parts: Quantity, digits: int | None = None) -> tuple[Quantity, ...]:
    """Return quantities of one kind and, behind them, their total, to be shown so that the parts add up to it.

    Examples
    --------
    >>> [each.shown("si").number for each in adding_up(Quantity(2.4, "kg"), Quantity(3.45, "kg"))]
    ['2.4', '3.5', '6']
    """
    total = sum(parts[1:], start=parts[0])
    kind = total.kind
    if kind is None:
        return (*parts, total)
    told: dict[System, tuple[tuple[Shown, ...], Shown]] = {
        system: display_terms([part.value for part in parts], kind, system, digits=digits)
        for system in get_args(System)
    }
    return (
        *(
            part.as_kind(kind).told_as({system: shown[n] for system, (shown, _) in told.items()})
            for n, part in enumerate(parts)
        ),
        total.told_as({system: whole for system, (_, whole) in told.items()}),
    )


def apportioned(parts: Sequence[float], total: int) -> list[int]:
    """Return whole numbers next to the parts that add up to the total: what is left over goes by largest remainder.

    The total has to be the rounded sum of the parts; of like remainders the first is served first.

    Examples
    --------
    >>> apportioned([33.4, 33.3, 33.3], 100)
    [34, 33, 33]
    """
    whole = [math.floor(part) for part in parts]
    left = total - sum(whole)
    by_remainder = sorted(range(len(parts)), key=lambda n: whole[n] - parts[n])
    for n in by_remainder[:left]:
        whole[n] += 1
    return whole


def multiplied(factors: Sequence[float], places: Sequence[int], total: float, last: int) -> list[float]:
    """Return factors rounded to so many places, so that their product rounds to the total, given with its last place.

    Rounded as usual wherever that does; else up or down so that they are off by as little as can be.

    Examples
    --------
    >>> multiplied([1.054, 1.123, 1.024], [2, 2, 2], 1.21, 2)
    [1.05, 1.12, 1.03]
    """
    usual = [round(factor, place) for factor, place in zip(factors, places, strict=True)]
    if len(factors) > _FACTORS or _rounds_to(math.prod(usual), total, last):
        return usual
    steps = [10.0**-place for place in places]
    neighbours = (
        (math.floor(factor / step) * step, (math.floor(factor / step) + 1) * step)
        for factor, step in zip(factors, steps, strict=True)
    )
    holding = [choice for choice in itertools.product(*neighbours) if _rounds_to(math.prod(choice), total, last)]

    def off(choice: Sequence[float]) -> float:
        return sum(abs(told - factor) / step for told, factor, step in zip(choice, factors, steps, strict=True))

    nearest = min(holding, key=off, default=usual)
    return [round(told, place) for told, place in zip(nearest, places, strict=True)]


def _rounds_to(product: float, total: float, last: int) -> bool:
    return abs(product - total) <= 0.5 * 10.0**-last * (1 + 1e-9)


@dataclass(frozen=True, slots=True)
class _Grid:
    """What can be printed with a unit and a last digit: whole multiples of a step."""

    scale: Scale
    places: int

    @property
    def step(self) -> Decimal:
        return Decimal(10) ** -self.places

    @property
    def size(self) -> Decimal:
        return Decimal(repr(self.scale.size))

    def exact(self, value: float) -> float:
        return value / self.scale.size * 10.0**self.places

    def units(self, value: float) -> int:
        # rounded as format_number does, not as the scaled number would be
        return int(Decimal(repr(round(value / self.scale.size, self.places))) / self.step)

    def shown(self, units: int, decimals: int) -> Shown:
        text = f"{abs(units) * self.step:,.{decimals}f}" if units else "0"
        return Shown(MINUS + text if units < 0 else text, self.scale.unit)


def _grid_of(parts: Sequence[float], total: float, kind: Kind, system: System, digits: int | None) -> _Grid:
    # a total of nothing has no last digit of its own
    told = max(parts, key=abs, default=0.0) if _nothing(total, parts) else total
    scale = _with_digits(scale_of(told, kind, system), digits)
    if told == 0:
        return _Grid(scale, 0)
    number = told / scale.size
    return _Grid(scale, last_place(number, significant=scale.significant, decimals=scale.decimals, least=scale.least))


def _nothing(total: float, parts: Sequence[float]) -> bool:
    """Return whether the parts cancel, to what rounding in the arithmetic leaves."""
    return abs(total) <= _CANCELLED * max(map(abs, parts), default=0.0)


def _with_digits(scale: Scale, digits: int | None) -> Scale:
    return scale if digits is None else replace(scale, significant=digits, decimals=9, least=1)


def _alone(value: float, kind: Kind, system: System, digits: int | None, finer: int = 0) -> Shown:
    """Return a value as it is shown where it stands for itself, or with more digits."""
    scale = _with_digits(scale_of(value, kind, system), digits)
    if not finer and digits is None:
        return display(value, kind, system)
    significant, decimals = scale.significant + finer, scale.decimals + finer
    text = format_number(value / scale.size, significant=significant, decimals=decimals, least=scale.least)
    return Shown(text, scale.unit)


def _read(shown: Shown, kind: Kind, system: System) -> Decimal:
    """Return the SI value of what is printed."""
    return Decimal(shown.number.replace(",", "").replace(MINUS, "-")) * Decimal(repr(size_of(shown.unit, kind, system)))

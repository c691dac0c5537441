"""Values in whatever unit a printed source uses: pint's full registry, read only when somebody asks."""

import math
from functools import cache
from typing import Any

import pint


@cache
def _every_unit() -> pint.UnitRegistry[Any]:
    return pint.UnitRegistry()


def in_si(written: str) -> float:
    """Return a value such as "3220.0 lbf" in SI units.

    Examples
    --------
    >>> round(in_si("20 ft/s"), 9)
    6.096
    """
    return float(_every_unit().Quantity(written).to_base_units().magnitude)


def list_in_si(written: str) -> list[float]:
    """Return values that share their unit, such as "[1, 2] ft", in SI units."""
    numbers, unit = written.removeprefix("[").rsplit("]", 1)
    return [in_si(f"{number} {unit}") for number in numbers.split(",")]


def from_si(value: float, unit: str) -> float:
    """Return an SI value in a unit; "1" is a number without a unit.

    Examples
    --------
    >>> round(from_si(0.0254, "in"), 12)
    1.0
    """
    wanted = _every_unit().Quantity(1.0, "" if unit == "1" else unit)
    size = float(wanted.to_base_units().magnitude)
    return value / size if math.isfinite(size) else value

"""A value that carries its unit, so that arithmetic in a lesson is checked."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import Literal

from hubwright.errors import DimensionError
from hubwright.quantities.formatting import Kind, Shown, System, default_kind, display, format_number
from hubwright.quantities.units import si_name, unit_of

Number = int | float


class Quantity:
    """A value in SI units with its unit, a range where one is known, and how to show it.

    Adding and comparing need the same unit; multiplying and dividing make a new one, and a ratio of
    like things is a plain number of unit "1". A range survives only scaling by a plain number: two
    ranges cannot be combined without knowing whether they move together.

    Examples
    --------
    >>> force, arm = Quantity(5000, "N"), Quantity(0.012, "m")
    >>> force * arm
    Quantity(60.0, 'N*m')
    >>> force + arm
    Traceback (most recent call last):
    hubwright.errors.DimensionError: cannot add N and m: the units differ in kind
    """

    __slots__ = ("high", "kind", "low", "told", "unit", "value")

    def __init__(
        self, value: float, unit: str, *, kind: Kind | None = None, low: float | None = None, high: float | None = None
    ) -> None:
        """Keep the SI value and its unit as written in our data ("N*m", "m", "1")."""
        self.value = float(value)
        self.unit = unit or "1"
        self.kind = kind or default_kind(self.unit)
        self.low = low
        self.high = high
        self.told: Mapping[System, Shown] | None = None  # where it is shown as a part of a sum

    def shown(self, system: System, kind: Kind | None = None) -> Shown:
        """Return the value as shown in a unit system, number and unit apart."""
        if self.told is not None and kind in (None, self.kind):
            return self.told[system]
        kind = kind or self.kind
        if kind is None:
            return Shown(format_number(self.value), self.unit.replace("*", "·"))
        return display(self.value, kind, system)

    def as_kind(self, kind: Kind) -> Quantity:
        """Return the same value, to be shown as another kind."""
        return Quantity(self.value, self.unit, kind=kind, low=self.low, high=self.high)

    def told_as(self, told: Mapping[System, Shown]) -> Quantity:
        """Return the same value, to be shown with these numbers; whatever is computed from it is shown as usual."""
        same = Quantity(self.value, self.unit, kind=self.kind, low=self.low, high=self.high)
        same.told = told
        return same

    def __add__(self, other: Quantity | Number) -> Quantity:
        """Add a quantity of the same unit."""
        return Quantity(self.value + self._like(other, "add"), self.unit, kind=self.kind)

    def __sub__(self, other: Quantity | Number) -> Quantity:
        """Subtract a quantity of the same unit."""
        return Quantity(self.value - self._like(other, "subtract"), self.unit, kind=self.kind)

    def __radd__(self, other: Number) -> Quantity:
        """Add to a plain number."""
        return self + other

    def __rsub__(self, other: Number) -> Quantity:
        """Subtract from a plain number."""
        return -self + other

    def __mul__(self, other: Quantity | Number) -> Quantity:
        """Multiply by a number or a quantity."""
        if isinstance(other, Quantity):
            return self._combined(other, "*", self.value * other.value)
        return self._scaled(float(other))

    __rmul__ = __mul__

    def __truediv__(self, other: Quantity | Number) -> Quantity:
        """Divide by a number or a quantity."""
        if isinstance(other, Quantity):
            return self._combined(other, "/", self.value / other.value)
        return self._scaled(1 / other)

    def __rtruediv__(self, other: Number) -> Quantity:
        """Divide a plain number by this."""
        return Quantity(float(other), "1") / self

    def __pow__(self, exponent: int) -> Quantity:
        """Raise to a whole power."""
        unit = si_name(unit_of(self.unit) ** exponent)
        return Quantity(self.value**exponent, unit, kind=self.kind if unit == self.unit else None)

    def __neg__(self) -> Quantity:
        """Change the sign, also of what is told."""
        turned = self._scaled(-1.0)
        turned.told = self.told and {system: shown.turned for system, shown in self.told.items()}
        return turned

    def __pos__(self) -> Quantity:
        """Return the same value."""
        return self

    def __abs__(self) -> Quantity:
        """Return the size without the sign."""
        if self.low is not None and self.high is not None and self.low < 0 < self.high:
            return Quantity(abs(self.value), self.unit, kind=self.kind, low=0.0, high=max(-self.low, self.high))
        return -self if self.value < 0 else self

    def __float__(self) -> float:
        """Return the SI value of a plain number; anything with a unit refuses."""
        if self.unit != "1":
            raise DimensionError(action="take as a plain number", left=self.unit)
        return self.value

    def __eq__(self, other: object) -> bool:
        """Compare with a quantity of the same unit, or with a plain number."""
        if not isinstance(other, Quantity | int | float):
            return NotImplemented
        return self.value == self._like(other, "compare")

    def __lt__(self, other: Quantity | Number) -> bool:
        """Compare with a quantity of the same unit, or with zero."""
        return self.value < self._like(other, "compare")

    def __le__(self, other: Quantity | Number) -> bool:
        """Compare with a quantity of the same unit, or with zero."""
        return self.value <= self._like(other, "compare")

    def __gt__(self, other: Quantity | Number) -> bool:
        """Compare with a quantity of the same unit, or with zero."""
        return self.value > self._like(other, "compare")

    def __ge__(self, other: Quantity | Number) -> bool:
        """Compare with a quantity of the same unit, or with zero."""
        return self.value >= self._like(other, "compare")

    def __hash__(self) -> int:
        """Hash value and unit."""
        return hash((self.value, self.unit))

    def __bool__(self) -> bool:
        """Refuse: whether a force "is true" means nothing; compare it with zero."""
        raise DimensionError(action="take as true or false", left=self.unit)

    def __repr__(self) -> str:
        """Return how to write this quantity in code."""
        return f"Quantity({self.value!r}, {self.unit!r})"

    def __str__(self) -> str:
        """Return the value in SI units."""
        return self.shown("si").text

    def _like(self, other: Quantity | Number, action: str) -> float:
        """Return the other's value after checking its unit; zero goes with every unit."""
        if isinstance(other, Quantity):
            if not _same(self.unit, other.unit):
                raise DimensionError(action=action, left=self.unit, right=other.unit)
            return other.value
        if other != 0 and self.unit != "1":
            raise DimensionError(action=action, left=self.unit, right="a plain number")
        return float(other)

    def _scaled(self, factor: float) -> Quantity:
        ends = sorted(end * factor for end in (self.low, self.high) if end is not None)
        low, high = (ends[0], ends[1]) if len(ends) == 2 else (None, None)
        return Quantity(self.value * factor, self.unit, kind=self.kind, low=low, high=high)

    def _combined(self, other: Quantity, operation: Literal["*", "/"], value: float) -> Quantity:
        unit = _combined_unit(self.unit, other.unit, operation)
        kind = next((part.kind for part in (self, other) if part.unit == unit and unit != "1"), None)
        return Quantity(value, unit, kind=kind)


@lru_cache(maxsize=512)
def _combined_unit(left: str, right: str, operation: Literal["*", "/"]) -> str:
    a, b = unit_of(left), unit_of(right)
    return si_name(a * b if operation == "*" else a / b)


@lru_cache(maxsize=512)
def _same(left: str, right: str) -> bool:
    return left == right or unit_of(left).dimensionality == unit_of(right).dimensionality

"""The numbers of a working as they are shown: with so many digits that a reader's calculator gives what is shown.

Rounding never breaks a line: where the numbers put in with five digits do not give the result as it is shown, they
get one more.
"""

import math
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from hubwright.lessons.workings import expression as written
from hubwright.lessons.workings.model import CONVERSIONS, Line, Symbol, Working
from hubwright.quantities import System

DEGREES = 180 / math.pi
_NOTHING = 1e-9  # of an SI value: what is left of a difference of like numbers
_TOO_SMALL = 1e-3  # in the unit of a result that is nothing


class Digits(NamedTuple):
    """Significant digits of numbers put in, and of results that a later line puts in."""

    put_in: int
    on_the_way: int


DIGITS = (
    Digits(5, 5), Digits(6, 5), Digits(7, 5), Digits(7, 6), Digits(8, 6), Digits(9, 7), Digits(10, 8), Digits(12, 10),
)  # fmt: skip


@dataclass(frozen=True)
class Shown:
    """A working's numbers in one unit system."""

    made: Working
    system: System

    @cached_property
    def digits(self) -> Digits:
        """Return the fewest digits with which every line comes to what it shows."""
        if not self.made.digits:
            return DIGITS[0]
        return next((each for each in DIGITS if self._holds(each)), DIGITS[-1])

    def number(self, name: str) -> str:
        """Return a number as it is shown, without its unit: no exponent, no thousands comma."""
        return self._number(name, self.digits)

    def put_in(self, name: str) -> float:
        """Return the number that a reader puts into a calculator; an angle in radians."""
        return self._put_in(name, self.digits)

    def reached(self, line: Line) -> float:
        """Return what a reader's calculator gives for a line, in the unit of its result; an angle in degrees."""
        return self._reached(line, self.digits)

    def holds(self) -> bool:
        """Return whether the numbers put in come to the result as it is shown, to half a unit of its last digit."""
        return not self.made.digits or self._holds(self.digits)

    @cached_property
    def _numbers(self) -> dict[tuple[str, Digits], str]:
        """Return the numbers that were asked for so far."""
        return {}

    def _number(self, name: str, digits: Digits) -> str:
        asked = (name, digits)
        if asked not in self._numbers:
            self._numbers[asked] = self._rounded(name, digits)
        return self._numbers[asked]

    def _rounded(self, name: str, digits: Digits) -> str:
        if name in CONVERSIONS:
            return CONVERSIONS[name].text
        line = next((line for line in self.made.lines[:-1] if line.name == name), None)
        if line is not None:  # what the numbers before it give, so that a line on the way always holds
            return text(self._reached(line, digits), digits.on_the_way)
        significant = self.made.digits if name == self.made.lines[-1].name else digits.put_in
        return text(as_written(self.made.symbols[name], self.system), significant)

    def _put_in(self, name: str, digits: Digits) -> float:
        number = float(self._number(name, digits))
        in_degrees = name not in CONVERSIONS and self.made.symbols[name].value.unit == "rad"
        return number / DEGREES if in_degrees else number

    def _reached(self, line: Line, digits: Digits) -> float:
        expression = line.in_system(self.system)
        number = written.value(expression, {name: self._put_in(name, digits) for name in written.names(expression)})
        return number * DEGREES if self.made.symbols[line.name].value.unit == "rad" else number

    def _holds(self, digits: Digits) -> bool:
        result = self.made.lines[-1]
        told = float(self._number(result.name, digits))
        if told == 0:  # like numbers cancel, and what their rounding leaves is no result
            return abs(self._reached(result, digits)) < _TOO_SMALL
        last_digit = 10.0 ** (math.floor(math.log10(abs(told))) + 1 - self.made.digits)
        return abs(self._reached(result, digits) - told) <= 0.5 * last_digit * (1 + 1e-6)


def as_written(symbol: Symbol, system: System) -> float:
    """Return a symbol's number as it is written: an angle in degrees."""
    if abs(symbol.value.value) < _NOTHING:
        return 0.0
    return symbol.value.value * DEGREES if symbol.value.unit == "rad" else symbol.exactly_in_units(system)


def text(number: float, significant: int) -> str:
    """Return a number with so many significant digits, without exponent and without zeros at its end.

    Examples
    --------
    >>> text(5491.724, 5), text(0.0120004, 5), text(-35.0, 5), text(1234567.0, 4)
    ('5491.7', '0.012', '-35', '1235000')
    """
    number = float(f"{number:.{significant - 1}e}")
    if number == 0:
        return "0"
    exponent = int(f"{number:e}".partition("e")[2])
    digits = f"{number:.{max(0, significant - 1 - exponent)}f}"
    return digits.rstrip("0").rstrip(".") if "." in digits else digits

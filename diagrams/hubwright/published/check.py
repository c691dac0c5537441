"""A published value, with what it was computed from, and which of our functions gives it."""

import math
import tomllib
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Literal

from hubwright.quantities.any_unit import from_si, in_si, list_in_si

Provenance = Literal["recomputed", "from memory", "theory"]
_SHOWN = 9  # decimals at most


@dataclass(frozen=True)
class Check:
    """One published value, with what it was computed from and where it stands."""

    id: str
    quantity: str
    inputs: dict[str, str]
    expected: float
    unit: str
    rel_tol: float  # half a unit of the last printed digit
    source: str
    provenance: Provenance
    allowed: float = 0.0  # wider, where print and product differ by design; `because` says how
    because: str = ""

    @property
    def tolerance(self) -> float:
        """Return how far, relative to the printed value, ours may lie from it."""
        return self.allowed or self.rel_tol

    @property
    def decimals(self) -> int:
        """Return how many decimals the source prints."""
        last_digit = 2 * self.rel_tol * abs(self.expected)
        return min(_SHOWN, max(0, round(-math.log10(last_digit)))) if last_digit > 0 else _SHOWN

    @property
    def printed(self) -> str:
        """Return the value as the source prints it; what no source prints, as it is."""
        return f"{self.expected:.6g}" if self.provenance == "theory" else f"{self.expected:,.{self.decimals}f}"

    def si(self, key: str) -> float:
        """Return an input in SI units."""
        return in_si(self.inputs[key])

    def list_si(self, key: str) -> list[float]:
        """Return an input that is a list, in SI units."""
        return list_in_si(self.inputs[key])

    def in_its_unit(self, value: float) -> float:
        """Return a value of ours, in SI units, in the unit in which the source prints it."""
        return from_si(float(value), self.unit)

    def difference(self, value: float) -> float:
        """Return how far a value of ours, in SI units, lies from the printed one, relative to it."""
        return self.in_its_unit(value) / self.expected - 1

    def agrees(self, value: float) -> bool:
        """Return whether a value of ours, in SI units, is the published one within its rounding."""
        return abs(self.difference(value)) <= self.tolerance


@dataclass(frozen=True)
class Calculation:
    """How the values of some checks are computed with our functions; more than one where two roads lead there."""

    ids: tuple[str, ...]  # how the ids of its checks begin
    values: Callable[[Check], tuple[float, ...]]
    functions: tuple[Callable[..., object], ...] = field(default=())

    def covers(self, check: Check) -> bool:
        """Return whether a check is one of its."""
        return check.id.startswith(self.ids)

    @property
    def names(self) -> tuple[str, ...]:
        """Return its functions by module and name, as their reference pages call them."""
        return tuple(f"{each.__module__.rpartition('.')[2]}.{each.__qualname__}" for each in self.functions)


@dataclass(frozen=True)
class Subject:
    """Calculations of one subject, with its words for a heading."""

    words: str
    calculations: tuple[Calculation, ...]


@cache
def checks() -> tuple[Check, ...]:
    """Return every published check in the order of the file."""
    text = Path(__file__).with_name("checks.toml").read_text(encoding="utf-8")
    return tuple(Check(**entry) for entry in tomllib.loads(text)["check"])

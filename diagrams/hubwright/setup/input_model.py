"""One value that acts on the results, as a file gives it or an estimate fills it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Origin = Literal["given", "measured", "data sheet", "estimated"]


@dataclass(frozen=True, slots=True)
class Input:
    """One value that acts, with its SI unit, its range and where it comes from."""

    value: float | str
    unit: str  # SI: "kg", "m", "N/m", "rad", "1" for a pure number, "" for words
    low: float | None = None
    high: float | None = None
    origin: Origin = "given"
    note: str = ""  # how an estimate or a converted value came about
    derived_from: tuple[str, ...] = ()  # keys it follows from: vary those, not this one

    @property
    def has_range(self) -> bool:
        """Whether a low and a high value are known."""
        return self.low is not None and self.high is not None

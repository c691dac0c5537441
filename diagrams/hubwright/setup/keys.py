"""What a key of a vehicle, setup or beam file is: its meaning, its dimension, its limits, how to write it."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

from pydantic import BaseModel, ConfigDict, GetCoreSchemaHandler
from pydantic_core import CoreSchema, core_schema

from hubwright.errors import QuantityError
from hubwright.quantities import DIMENSIONS, DimensionName, Measured, parse


@dataclass(frozen=True, slots=True)
class Bound:
    """A limit that a value cannot pass, in SI units, and its words ("above zero")."""

    words: str
    low: float = -float("inf")
    high: float = float("inf")
    low_included: bool = True
    high_included: bool = True
    why: str = ""

    def holds(self, value: float) -> bool:
        """Return whether the value lies inside."""
        above = self.low <= value if self.low_included else self.low < value
        below = value <= self.high if self.high_included else value < self.high
        return above and below


POSITIVE = Bound("above zero", low=0.0, low_included=False)
NOT_NEGATIVE = Bound("not below zero", low=0.0)
SHARE = Bound("between 0 and 1", low=0.0, high=1.0)


@dataclass(frozen=True, slots=True)
class Key:
    """One key of a file: pydantic reads its value through `read`, the reference pages its texts."""

    meaning: str
    dimension: DimensionName | None = None  # None: words, or `reader`
    bound: Bound | None = None
    choices: tuple[str, ...] = ()
    reader: Callable[[object], Any] | None = None  # for notations of the trade
    example: str = ""
    required: bool = False
    find: str = ""  # how an owner finds the value
    estimate: str = ""  # what is taken where it is left out

    @property
    def phrase(self) -> str:
        """What the value must be, in words."""
        if self.choices:
            quoted = [f"'{choice}'" for choice in self.choices]
            return f"{', '.join(quoted[:-1])} or {quoted[-1]}" if len(quoted) > 1 else quoted[0]
        phrase = DIMENSIONS[self.dimension].phrase if self.dimension else "a text"
        return f"{phrase} {self.bound.words}" if self.bound else phrase

    @property
    def written(self) -> str:
        """An example of how to write the value, as it stands in a file."""
        example = self.example or (DIMENSIONS[self.dimension].example if self.dimension else "")
        return example if self.dimension in ("ratio", "acceleration", "count") else f"'{example}'"

    @property
    def unit(self) -> str:
        """SI unit in which the value is kept; empty for words."""
        return DIMENSIONS[self.dimension].unit if self.dimension else ""

    @property
    def repair(self) -> str:
        """The sentence that says how to write it."""
        return f"Write it like {self.written}."

    def read(self, given: object) -> Any:
        """Return the value given, in SI units, or raise `QuantityError`."""
        if self.reader is not None:
            return self._bounded(self.reader(given), given)
        if self.choices:
            return self._chosen(given)
        if self.dimension is None:
            if not isinstance(given, str) or not given.strip():
                raise QuantityError(needed="a text", given=given, repair=self.repair)
            return given.strip()
        try:
            measured = parse(given, self.dimension)
        except QuantityError as error:
            own = DIMENSIONS[self.dimension].example in error.repair and self.example
            raise QuantityError(needed=error.needed, given=given, repair=self.repair if own else error.repair) from None
        return self._bounded(measured, given)

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        """Let pydantic read the field through this key alone."""
        return core_schema.no_info_plain_validator_function(self.read)

    def _bounded(self, value: Any, given: object) -> Any:
        if self.bound is not None and isinstance(value, Measured):
            ends = (end for end in (value.value, value.low, value.high) if end is not None)
            if not all(map(self.bound.holds, ends)):
                repair = f"{self.bound.why} {self.repair}".strip()
                raise QuantityError(needed=self.phrase, given=given, repair=repair)
        return value

    def _chosen(self, given: object) -> str:
        text = " ".join(str(given).split()).casefold()
        for choice in self.choices:
            if text == choice.casefold():
                return choice
        close = nearest(text, self.choices)
        repair = f"Perhaps you meant '{close}'." if close else self.repair
        raise QuantityError(needed=self.phrase, given=given, repair=repair)


class Table(BaseModel):
    """Base of the tables of a file: nothing that is not a key of it may stand there."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    @classmethod
    def keys(cls) -> dict[str, Key]:
        """Return the keys of this table by the name that stands in the file."""
        found = {}
        for name, field in cls.model_fields.items():
            for part in field.metadata:
                if isinstance(part, Key):
                    found[field.alias or name] = part
        return found

    def value_of(self, key: str) -> Any:
        """Return what was given for a key of the file, None where it was left out."""
        names = {field.alias or name: name for name, field in type(self).model_fields.items()}
        return getattr(self, names[key])


def nearest(given: str, valid: Iterable[str]) -> str | None:
    """Return the valid word most like the one given, None when none is near."""
    found = difflib.get_close_matches(given, list(valid), n=1, cutoff=0.6)
    return found[0] if found else None

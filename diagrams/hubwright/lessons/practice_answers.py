"""What a practice problem asks for: a value with its tolerance, ways and known slips, or a choice."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any, get_args

from jinja2 import Undefined
from markupsafe import Markup

from hubwright.lessons.blocks import BlockError, inline
from hubwright.lessons.numbers import show
from hubwright.quantities import KINDS, Kind, Quantity, Shown, System

WITHIN = 0.006  # relative: three digits, rounded once on the way
NOTHING_WITHIN = 0.05  # of the smallest slip, where the answer is nothing
_NOTHING = 1e-7  # of the slips: what rounding in the arithmetic leaves of an answer that is nothing


class LeftOutError(Exception):
    """A problem that this setup cannot pose, with the reason; no fault of its file."""


@dataclass(frozen=True)
class Option:
    """One of the answers to choose from, and why it is not the one."""

    text: Markup
    right: bool
    why: Markup


@dataclass
class Asked:
    """What one variant of a problem asks for, as its text says it: the functions that a problem's file calls."""

    answer: Quantity | None = None
    ways: tuple[str, ...] = ()  # the way of a positive answer, and that of a negative one
    within: float = WITHIN
    right: Markup = field(default_factory=Markup)  # what is said beside "right"
    said_slips: list[tuple[Quantity, Markup]] = field(default_factory=list)
    options: list[Option] = field(default_factory=list)

    def answer_is(
        self,
        value: Quantity,
        ways: Sequence[str] = (),
        kind: Kind | None = None,
        within: float = WITHIN,
        right: str = "",
    ) -> str:
        """Set the value that is asked for; with two ways the reader gives its size and the way."""
        if not _known(value):
            raise BlockError(f"answer_is needs a quantity, got {value!r}")
        if len(ways) not in (0, 2):
            raise BlockError('answer_is needs two ways, such as ways=["up", "down"], or none')
        # without a range: a tolerance is not what the data leave open
        self.answer = Quantity(value.value, value.unit, kind=kind or value.kind)
        self.ways, self.within, self.right = tuple(ways), within, inline(right)
        return ""

    def slip(self, value: Quantity, text: str) -> str:
        """Add a wrong answer that people come to, and what to say about it."""
        if not _known(value) or (self.answer is not None and value.unit != self.answer.unit):
            raise BlockError(f"slip needs a quantity like the answer, got {value!r}")
        self.said_slips.append((value, inline(text)))
        return ""

    def option(self, text: str, right: bool, why: str = "") -> str:
        """Add an answer to choose from, whether it is the one, and what to say to those who choose it."""
        self.options.append(Option(inline(text), bool(right), inline(why)))
        return ""

    def leave_out(self, reason: str) -> str:
        """Leave the problem out for this setup."""
        raise LeftOutError(reason)

    def checked(self) -> "Asked":
        """Return this when it asks for one thing, and can be answered."""
        if (self.answer is None) == (not self.options):
            raise BlockError("a problem needs either answer_is(…) or some option(…)")
        if self.options and sum(option.right for option in self.options) != 1:
            raise BlockError("one option(…) must be right, and one only")
        if self.answer is not None and not math.isfinite(self.answer.value):
            raise LeftOutError("its answer has no value here")
        return self

    @property
    def value(self) -> float:
        """Return the answer in SI units; nothing where only rounding is left of it."""
        assert self.answer is not None
        return 0.0 if abs(self.answer.value) <= _NOTHING * self._scale else self.answer.value

    @property
    def tolerance(self) -> float:
        """Return how far an answer may be off: three digits, or the last one that the page itself would show."""
        assert self.answer is not None
        shown = max(_last_digit(self.answer, system) for system in get_args(System))
        if self.value == 0.0:
            least = min((abs(slip.value) for slip, _ in self.said_slips if slip.value), default=shown)
            return NOTHING_WITHIN * least
        return max(self.within * abs(self.value), shown)

    @property
    def slips(self) -> list[tuple[float, Markup]]:
        """Return the slips that are told from the answer; one that gives the right answer here is none."""
        return [
            (slip.value, text) for slip, text in self.said_slips if abs(slip.value - self.value) > 2 * self.tolerance
        ]

    @property
    def units(self) -> list[str]:
        """Return the names of the units in which the site shows such a value, SI first."""
        assert self.answer is not None
        kind = self.answer.kind
        scales = [scale for side in KINDS[kind] for scale in side] if kind else []
        return list(dict.fromkeys(scale.unit for scale in scales if scale.unit and scale.offset == 0.0))

    @property
    def in_words(self) -> Markup:
        """Return the answer as a key prints it."""
        if self.options:
            return next(option.text for option in self.options if option.right)
        assert self.answer is not None
        if not self.ways:
            return show(Quantity(self.value, self.answer.unit, kind=self.answer.kind))
        size = show(Quantity(abs(self.value), self.answer.unit, kind=self.answer.kind))
        return size if self.value == 0.0 else Markup("{} {}").format(size, self.ways[0 if self.value > 0 else 1])

    @property
    def _scale(self) -> float:
        """Return a size beside which an answer is nothing."""
        assert self.answer is not None
        return max([abs(slip.value) for slip, _ in self.said_slips] or [0.0]) or 1.0


def _known(value: object) -> bool:
    """Return whether a value is a quantity; a name that does not exist says so by itself."""
    if isinstance(value, Undefined):
        str(value)
    return isinstance(value, Quantity)


def _last_digit(value: Quantity, system: System) -> float:
    """Return what the last digit shown is worth in SI units."""
    shown: Shown = value.shown(system)
    scales: dict[str, Any] = {s.unit: s for s in KINDS[value.kind][0 if system == "si" else 1]} if value.kind else {}
    scale = scales.get(shown.unit)
    if scale is None or not any(digit in "123456789" for digit in shown.number):
        return 0.0
    decimals = len(shown.number.partition(".")[2])
    return float(scale.size * 10.0**-decimals)

"""Rows of level bars on one scale: values with spans, a zero line, round marks and words beside every bar.

Values in SI units; a view's abscissa is the value, its ordinate sheet millimetres.
"""

import math
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from hubwright.quantities import Kind, format_quantity
from hubwright.quantities.formatting import KINDS, MINUS, Scale
from hubwright.scenes.scales import round_scale, round_up
from hubwright.scenes.vocabulary import Axis, Item, Label, Line, Note, Point, Units, View, Words

WIDTH = 310.0
NAMES, FIRST, LAST = 84.0, 88.0, 236.0  # right edge of the names; where bars may stand
_FOOT, _AXIS = 9.0, 9.0  # below the marks; from the marks to the lowest row
_LETTERS, LINE = 36, 4.2  # letters to a line of a name; from line to line
_EVEN = 1e-9


@dataclass(frozen=True)
class BarValue:
    """A value under a name, in SI units; where its inputs have ranges, the low and high end of its span.

    In a sensitivity, `value` is the result as given, `low` and `high` the result with one input at the lower and at the
    upper end of its range, whichever of them is the larger.
    """

    name: str
    value: float
    low: float | None = None
    high: float | None = None
    kind: Kind = "force"

    @property
    def span(self) -> tuple[float, float] | None:
        """Return the span, or nothing without one."""
        return None if self.low is None or self.high is None else (self.low, self.high)

    @property
    def ends(self) -> tuple[float, ...]:
        """Return the value and the ends of its span."""
        return (self.value, *(self.span or ()))


@dataclass(frozen=True)
class Chart:
    """The view of a chart, how high each row stands, and the scale's own unit."""

    view: View
    rows: tuple[float, ...]
    names: tuple[tuple[str, ...], ...]
    unit: Scale
    low: float
    high: float
    size: Point


def chart(values: Sequence[BarValue], units: Units, *, zero: float, pitch: float, per_mm: float | None) -> Chart:
    """Return the chart's view with the finest round scale at which all bars have room, or the scale that is given."""
    if not values:
        raise ValueError("a chart needs at least one value")
    kinds = {value.kind for value in values}
    if len(kinds) > 1:
        raise ValueError(f"a chart shows one kind of value (got {', '.join(sorted(kinds))})")
    ends = [end - zero for value in values for end in value.ends]
    low, high = min(0.0, *ends), max(0.0, *ends)
    scale = per_mm or round_scale(high - low, LAST - FIRST)
    names = tuple(tuple(textwrap.wrap(value.name, _LETTERS)) or ("",) for value in values)
    rows: list[float] = []
    top = _FOOT + _AXIS + sum(max(pitch, LINE * len(name) + 3.0) for name in names)
    y = top
    for name in names:
        height = max(pitch, LINE * len(name) + 3.0)
        rows.append(y - height / 2)
        y -= height
    origin = (FIRST - low / scale, 0.0)
    view = View("chart", origin, 1.0 / scale, vertical_per_mm=1.0)
    unit = _unit(values[0].kind, max(abs(low), abs(high)), units)
    return Chart(view, tuple(rows), names, unit, low, high, (WIDTH, top + 9.0))


def axis(drawn: Chart, step: int, *, above: str = "", below: str = "") -> list[Item]:
    """Return the zero line and round marks with their values below the rows, and which side of zero is which way."""
    low, high, size = drawn.low, drawn.high, drawn.unit.size
    span = max(high - low, 1e-12 * size)
    mark = round_up(span / size / 5.0) * size
    foot, head = _FOOT + _AXIS - 3.0, drawn.size[1] - 6.0
    first, last = math.ceil(low / mark - _EVEN), math.floor(high / mark + _EVEN)
    marks = []
    decimals = max(0, -math.floor(math.log10(mark / size) + _EVEN))  # of the step, and so of every mark alike
    for number in range(first, last + 1):
        at = number * mark
        text = f"{(abs(at) if below else at) / size:,.{decimals}f}".replace("-", MINUS) if number else "0"
        if number == last:
            text += f"\u00a0{drawn.unit.unit}".rstrip("\u00a0")
        marks.append((at, text))
    items: list[Item] = [
        Line("zero", "chart", step, points=((0.0, foot), (0.0, head)), width=0.4, level=5),
        Axis("values", "chart", step, at=foot, start=low, end=high, marks=tuple(marks)),
    ]
    if low < 0 and below:
        x = drawn.view.origin[0]
        sides: tuple[tuple[str, float, Literal["left", "right"]], ...] = ((below, -2.5, "right"), (above, 2.5, "left"))
        items += [
            Words(f"words-{word}", "", step, at_sheet=(x + off, 3.4), lines=(word,), size=2.2, tone="soft", align=align)
            for word, off, align in sides
        ]
    return items


def name_label(drawn: Chart, row: int, nearest: float) -> Label:
    """Return the name of a row, its right edge in the column of names whatever the bar."""
    x = drawn.view.on_sheet((nearest, 0.0))[0]
    return Label(drawn.names[row], "left", size=2.5, nudge=(NAMES - (x - 1.6), 0.0))


def value_note(drawn: Chart, row: int, farthest: float, lines: tuple[str, ...], step: int, size: float = 2.5) -> Note:
    """Return the words at the right end of a row."""
    anchor = (max(farthest, 0.0), drawn.rows[row])
    return Note(
        f"label-value-{row + 1}", "chart", step, label=Label(lines, "right", anchor=anchor, size=size, nudge=(0.8, 0.0))
    )


def in_words(value: float, kind: Kind, units: Units, *, above: str = "", below: str = "") -> str:
    """Return a value with a direction word if there are words for it, else with its sign."""
    way = above if value > 0 else below
    if not way or value == 0:
        return format_quantity(value, kind, units)
    return f"{format_quantity(abs(value), kind, units)} {way}"


def _unit(kind: Kind, largest: float, units: Units) -> Scale:
    """Return the unit in which the marks are round numbers."""
    system: Literal[0, 1] = 0 if units == "si" else 1
    scales = KINDS[kind][system]
    return next((scale for scale in reversed(scales) if largest >= scale.size), scales[0])

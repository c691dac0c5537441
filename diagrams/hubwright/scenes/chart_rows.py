"""Rows of level bars on one scale: values with spans, a zero line, round marks and words beside every bar.

Values in SI units; a view's abscissa is the value, its ordinate sheet millimetres.
"""

import math
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from hubwright.quantities import Kind, format_quantity, format_range
from hubwright.quantities.formatting import KINDS, MINUS, Scale
from hubwright.scenes.scales import round_up
from hubwright.scenes.vocabulary import Axis, Item, Label, Line, Note, Point, Units, View

WIDTH = 310.0
NAMES, FIRST, _LAST = 74.0, 78.0, 304.0  # right edge of the names; where bars begin, and words beside them end
_LEAST = 100.0  # of the sheet's width for bars, however long the words beside them are
_LETTER = 0.76  # width of a letter of words beside a bar, of their cap height
_FOOT, _AXIS = 9.0, 9.0  # below the marks; from the marks to the lowest row
_LETTERS, LINE = 36, 4.2  # letters to a line of a name; from line to line
_AROUND = 0.5  # how far the zero line of a row stands out of its bars
TITLE = 60  # letters of an axis title: more have no room on a phone
_EVEN = 1e-9


@dataclass(frozen=True)
class BarValue:
    """A value under a name, in SI units; where its inputs have ranges, the low and high end of its span.

    In a sensitivity, `value` is the result as given, `low` and `high` the result with one input at the lower and at the
    upper end of what it runs through, whichever of them is the larger; `input_range` is the range of that input.
    """

    name: str
    value: float
    low: float | None = None
    high: float | None = None
    kind: Kind = "force"
    input_range: tuple[float, float] | None = None
    input_kind: Kind = "length"

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


def chart(
    values: Sequence[BarValue],
    units: Units,
    *,
    zero: float,
    pitch: float,
    per_mm: float | None,
    names: Sequence[tuple[str, ...]],
    beside: float,
    heading: str,
) -> Chart:
    """Return the chart's view, whose bars fill what the words beside them leave, or have the scale that is given."""
    if not values:
        raise ValueError("a chart needs at least one value")
    kinds = {value.kind for value in values}
    if len(kinds) > 1:
        raise ValueError(f"a chart shows one kind of value (got {', '.join(sorted(kinds))})")
    ends = [end - zero for value in values for end in value.ends]
    low, high = min(0.0, *ends), max(0.0, *ends)
    scale = per_mm or (high - low) / max(_LAST - beside - FIRST, _LEAST) or 1.0
    rows: list[float] = []
    top = _FOOT + _AXIS + sum(max(pitch, LINE * len(name) + 3.0) for name in names)
    y = top
    for name in names:
        height = max(pitch, LINE * len(name) + 3.0)
        rows.append(y - height / 2)
        y -= height
    origin = (FIRST - low / scale, 0.0)
    view = View("chart", origin, 1.0 / scale, vertical_per_mm=1.0, heading=heading)
    unit = _unit(values[0].kind, max(abs(low), abs(high)), units)
    return Chart(view, tuple(rows), tuple(names), unit, low, high, (WIDTH, top + 9.0))


def name_lines(name: str, more: str = "") -> tuple[str, ...]:
    """Return the lines of a row's name, and one more below it."""
    lines = tuple(textwrap.wrap(name, _LETTERS)) or ("",)
    return (*lines, more) if more else lines


def width_of(lines: Sequence[str], size: float) -> float:
    """Return about how wide words beside a bar are at most [mm]."""
    return max((len(line) for line in lines), default=0) * _LETTER * size


def axis(
    drawn: Chart, step: int, *, what: str, halves: Sequence[float], above: str = "", below: str = ""
) -> list[Item]:
    """Return the zero line and round marks with their values below the rows; the title says which way is which.

    `halves` is how far the bars of each row reach up and down from its middle.
    """
    low, high, size = drawn.low, drawn.high, drawn.unit.size
    span = max(high - low, 1e-12 * size)
    mark = round_up(span / size / 8.0) * size
    foot, head = _FOOT + _AXIS - 3.0, drawn.size[1] - 6.0
    first, last = math.ceil(low / mark - _EVEN), math.floor(high / mark + _EVEN)
    marks = []
    decimals = max(0, -math.floor(math.log10(mark / size) + _EVEN))  # of the step, and so of every mark alike
    for number in range(first, last + 1):
        at = number * mark
        text = f"{(abs(at) if below else at) / size:,.{decimals}f}".replace("-", MINUS) if number else "0"
        marks.append((at, text))
    title = _axis_title(drawn, what, above, below)
    bars = [(at - half, at + half) for at, half in zip(drawn.rows, halves, strict=True)]
    return [
        *base_lines("zero", "chart", step, (foot, head), bars),
        Axis("values", "chart", step, at=foot, start=low, end=high, marks=tuple(marks), title=title),
    ]


def _axis_title(drawn: Chart, what: str, above: str, below: str) -> str:
    """Return what is measured in which unit, and by direction words on which side of zero it is which way."""
    unit = drawn.unit.unit
    ways = ""
    if below and drawn.low < 0:
        ways = f"{below} left of 0, {above} right of it"
    elif above:
        ways = above
    for told in (what, what.partition(",")[0], ""):
        title = ": ".join(part for part in (", ".join(part for part in (told, unit) if part), ways) if part)
        if len(title) <= TITLE:
            break
    return title


def base_lines(
    name: str, view: str, step: int, ends: tuple[float, float], bars: Sequence[tuple[float, float]]
) -> list[Line]:
    """Return the line from which bars are measured, in pieces: at the bars of each row, and between them.

    On a phone words stand between the rows: there it runs along the bars alone, and from the lowest down to the axis.
    """
    foot, head = ends
    rows = sorted((low - _AROUND, high + _AROUND) for low, high in bars)
    rows[0] = (foot, rows[0][1])
    between = zip([high for _, high in rows], [*(low for low, _ in rows[1:]), head], strict=True)

    def piece(part: str, low: float, high: float, *, wide_only: bool) -> Line:
        points = ((0.0, low), (0.0, high))
        return Line(f"{name}-{part}", view, step, points=points, width=0.4, level=5, wide_only=wide_only)

    return [
        *(piece(f"{number}", low, high, wide_only=False) for number, (low, high) in enumerate(rows, 1)),
        *(
            piece(f"over-{number}", low, high, wide_only=True)
            for number, (low, high) in enumerate(between, 1)
            if high > low
        ),
    ]


def grid_lines(name: str, view: str, marks: Sequence[tuple[float, str]], ends: tuple[float, float]) -> list[Line]:
    """Return faint lines up from the marks of an axis; none on a phone, where words stand between the rows."""
    return [
        Line(
            f"{name}-{number}",
            view,
            points=((at, ends[0]), (at, ends[1])),
            style="hair",
            tone="faint",
            width=0.2,
            level=-1,
            wide_only=True,
        )
        for number, (at, text) in enumerate(marks, 1)
        if text
    ]


def name_label(drawn: Chart, row: int, nearest: float) -> Label:
    """Return the name of a row, its right edge in the column of names whatever the bar."""
    x = drawn.view.on_sheet((nearest, 0.0))[0]
    return Label(drawn.names[row], "left", size=2.5, nudge=(NAMES - (x - 1.6), 0.0))


def value_note(drawn: Chart, row: int, farthest: float, lines: tuple[str, ...], step: int, size: float) -> Note:
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


def lines_in_words(value: BarValue, units: Units, *, above: str = "", below: str = "") -> tuple[str, ...]:
    """Return a value and its span as lines; the span has direction words of its own only where it reaches zero."""
    first = in_words(value.value, value.kind, units, above=above, below=below)
    if value.span is None:
        return (first,)
    low, high = sorted(value.span)
    if not (above and below):
        told = format_range(low, high, value.kind, units)
    elif value.value * low > 0 and value.value * high > 0:
        told = format_range(min(abs(low), abs(high)), max(abs(low), abs(high)), value.kind, units)
    else:
        told = " to ".join(in_words(end, value.kind, units, above=above, below=below) for end in (low, high))
    return first, f"span {told}"


def _unit(kind: Kind, largest: float, units: Units) -> Scale:
    """Return the unit in which the marks are round numbers."""
    system: Literal[0, 1] = 0 if units == "si" else 1
    scales = KINDS[kind][system]
    return next((scale for scale in reversed(scales) if largest >= scale.size), scales[0])

"""Panels of ratios as level bars from 1 or from one another, on axes where factors add up.

A view's abscissa is the logarithm to base ten of the ratio; its ordinate sheet millimetres.
"""

import math
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

from hubwright.quantities import format_number, format_quantity
from hubwright.quantities.formatting import last_place
from hubwright.quantities.sums import multiplied
from hubwright.results.comparison import Compared
from hubwright.results.draws import Span
from hubwright.scenes.plot_frame import Marks, decade_marks, even_marks
from hubwright.scenes.vocabulary import Axis, Bar, Item, Label, Line, Point, View, Words

WIDTH = 310.0
_LEFT, _RIGHT, _NAMES = 96.0, 244.0, 90.0
_FOOT, _PITCH, _LINE, _THICK, _GAP, _HEADING = 8.0, 10.0, 4.0, 4.2, 12.0, 7.0
_AXIS = 12.0  # room for the words of an axis and its title
_LETTERS = 44
_NARROWEST = 0.04  # of a decade: ratios that go nowhere still have a scale
_TOLD = {"raises": "raised", "lowers": "lowered", "not settled": "not settled which way", "unchanged": "unchanged"}


@dataclass(frozen=True)
class RatioRow:
    """A bar between two ratios with its words on the left; the span is that of its own factor."""

    name: str
    words: str
    begin: float = 1.0
    end: float = 1.0
    span: Span | None = None
    is_open: bool = False
    is_linked: bool = False  # to where the next one begins
    step: int = 2

    @property
    def lines(self) -> tuple[str, ...]:
        """The words beside the bar, with its span."""
        lines = tuple(textwrap.wrap(self.words, _LETTERS)) or ("",)
        return lines if self.span is None else (*lines, span_words(self.span))

    @property
    def ends(self) -> tuple[float, float] | None:
        """The ends of its span, as logarithms."""
        if self.span is None or self.span.low <= 0:
            return None
        return math.log10(self.begin * self.span.low), math.log10(self.begin * self.span.high)

    @property
    def height(self) -> float:
        """Of the row, on the sheet [mm]."""
        return max(_PITCH, _LINE * len(self.lines) + 2.0)


@dataclass(frozen=True)
class RatioPanel:
    """Rows on one axis under a heading."""

    name: str  # of its view
    heading: str
    rows: tuple[RatioRow, ...]


def ratio_panels(panels: Sequence[RatioPanel]) -> tuple[tuple[View, ...], tuple[Item, ...], Point]:
    """Return the views and items of panels below one another, and the size of the sheet."""
    views: list[View] = []
    items: list[Item] = []
    low = _FOOT
    for panel in reversed(panels):
        view, high = _panel(panel, low, items)
        views.append(view)
        low = high + _GAP
    return tuple(views[::-1]), tuple(items), (WIDTH, low - _GAP + _HEADING + 4.0)


def _panel(panel: RatioPanel, low: float, items: list[Item]) -> tuple[View, float]:
    """Add one panel's items from a height of the sheet on; return its view and where it ends."""
    foot = low + _AXIS
    high = foot + sum(row.height for row in panel.rows)
    start, end = _reach(panel.rows)
    scale = (_RIGHT - _LEFT) / (end - start)
    view = View(panel.name, (_LEFT - start * scale, 0.0), scale, vertical_per_mm=1.0, heading=panel.heading)
    one = ((0.0, foot), (0.0, high))
    items += [
        Axis(
            f"axis-{panel.name}",
            panel.name,
            at=foot,
            start=start,
            end=end,
            marks=_marks(start, end),
            grid_to=high,
            title=f"{panel.heading[:1].lower()}{panel.heading[1:]}, times",
        ),
        Line(f"one-{panel.name}", panel.name, points=one, width=0.4, level=3),
        Words(f"heading-{panel.name}", "", at_sheet=(10.0, high + 3.5), lines=(f"*{panel.heading}",), size=2.5),
    ]
    top = high
    for row, below in zip(panel.rows, (*panel.rows[1:], None), strict=True):
        at = top - row.height / 2
        items.append(_bar(panel, row, view, at))
        top -= row.height
        if row.is_linked and below is not None:
            where = math.log10(row.end)
            drop = ((where, at - _THICK / 2), (where, top - below.height / 2 + _THICK / 2))
            name = f"link-{panel.name}-{row.name}"
            items.append(Line(name, panel.name, row.step, points=drop, style="hair", tone="soft", level=2))
    return view, high


def _bar(panel: RatioPanel, row: RatioRow, view: View, at: float) -> Bar:
    start, end = math.log10(row.begin), math.log10(row.end)
    nearest = view.on_sheet((min(start, end, *(row.ends or ())), 0.0))[0]
    return Bar(
        f"bar-{panel.name}-{row.name}",
        panel.name,
        row.step,
        start=start,
        end=end,
        at=at,
        thick=_THICK,
        tone="changed",
        is_open=row.is_open,
        span=row.ends,
        label=Label(row.lines, "left", size=2.3, nudge=(_NAMES - nearest + 1.6, 0.0)),
        level=1,
    )


def _reach(rows: Sequence[RatioRow]) -> tuple[float, float]:
    """Return from where to where rows and their spans need the axis, with some room."""
    places = [0.0, *(math.log10(end) for row in rows for end in (row.begin, row.end))]
    places += [end for row in rows if row.ends for end in row.ends]
    low, high = min(places), max(places)
    room = max(0.06 * (high - low), (_NARROWEST - (high - low)) / 2)
    return low - room, high + room


def _marks(low: float, high: float) -> Marks:
    """Return ratios as marks: round numbers, in decades where there are several."""
    if high - low > 1.2:
        return decade_marks(low, high)
    return tuple((math.log10(value), text) for value, text in even_marks(10**low, 10**high, about=5) if value > 0)


def times(value: float) -> str:
    """Return a ratio as text; near 1 a third decimal tells a little from nothing."""
    if 0.9 < value < 1.1:
        return format_number(value, significant=4, decimals=3)
    return format_quantity(value, "ratio", "si")


def times_together(factors: Sequence[float]) -> list[str]:
    """Return ratios that multiply to a whole as texts, so rounded that what is printed comes to the whole as printed.

    >>> times_together([1.2543, 0.8443, 1.1549]), times(1.2543 * 0.8443 * 1.1549)
    (['1.25', '0.84', '1.16'], '1.22')
    """
    whole = math.prod(factors)
    places = [_places(factor) for factor in factors]
    told = multiplied(factors, places, round(whole, _places(whole)), _places(whole))
    return [
        times(factor) if number == round(factor, place) else f"{number:.{place}f}" if place > 0 else times(number)
        for factor, number, place in zip(factors, told, places, strict=True)
    ]


def _places(ratio: float) -> int:
    return 3 if 0.9 < ratio < 1.1 else last_place(ratio, decimals=2, least=2)


def span_words(span: Span) -> str:
    """Return a span of a ratio in words; one whose ends print alike by how wide it is at most.

    >>> [span_words(Span(low, high, 0.001, 0.001, 400)) for low, high in ((0.941, 0.973), (0.9781, 0.9784))]
    ['span 0.941 to 0.973', 'span under 0.001']
    """
    low, high = times(span.low), times(span.high)
    if low == high:
        step = 10.0 ** -_places(span.high)
        return f"span under {format_number(step, significant=1)}"
    return f"span {low} to {high}"


def span_ends(span: Span | None) -> str:
    """Return both ends of a span in brackets behind a ratio; nothing without one, or where they print alike."""
    if span is None or times(span.low) == times(span.high):
        return ""
    return f" ({times(span.low)} to {times(span.high)})"


def in_brackets(span: Span | None) -> str:
    """Return a span of a ratio in brackets behind it, or nothing without one."""
    return "" if span is None else f" ({span_words(span)})"


def ratio_and_verdict(each: Compared) -> str:
    """Return a ratio with its verdict, "× 0.62, lowered"; without one, why not."""
    if not each.valid:
        return "severe, no ratio stated"
    if each.ratio is None:
        return "no ratio"
    return f"×\u00a0{times(each.ratio)}, {_TOLD[each.verdict]}"

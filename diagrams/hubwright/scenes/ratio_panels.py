"""Panels of ratios as level bars from 1 or from one another, on axes where factors add up.

A view's abscissa is the logarithm to base ten of the ratio; its ordinate sheet millimetres.
"""

import itertools
import math
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

from hubwright.quantities import format_number, format_quantity
from hubwright.quantities.formatting import last_place
from hubwright.quantities.sums import multiplied
from hubwright.results.comparison import Compared
from hubwright.results.draws import Span
from hubwright.scenes.chart_rows import TITLE, base_lines, grid_lines
from hubwright.scenes.plot_frame import Marks, decade_marks, even_marks
from hubwright.scenes.vocabulary import Axis, Bar, Item, Label, Line, Point, View, Words

WIDTH = 310.0
_LEFT, _RIGHT, _NAMES = 96.0, 244.0, 90.0
_FOOT, _PITCH, _LINE, _THICK, _GAP, _HEADING = 8.0, 10.0, 4.0, 4.2, 12.0, 7.0
_AXIS = 12.0  # room for the words of an axis and its title
_LETTERS = 44
_SCALE = "ratio (logarithmic scale)"
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
    marks = _marks(start, end)
    bars: list[tuple[float, float]] = []
    top = high
    for row in panel.rows:
        bars.append((top - (row.height + _THICK) / 2, top - (row.height - _THICK) / 2))
        top -= row.height
    items += [
        *grid_lines(f"grid-{panel.name}", panel.name, marks, (foot, high)),
        Axis(
            f"axis-{panel.name}",
            panel.name,
            at=foot,
            start=start,
            end=end,
            marks=marks,
            title=_axis_title(panel.heading),
        ),
        *base_lines(f"one-{panel.name}", panel.name, 1, (foot, high), bars),
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
            items.append(
                Line(name, panel.name, row.step, points=drop, style="hair", tone="soft", level=2, wide_only=True)
            )
    return view, high


def _axis_title(heading: str) -> str:
    """Return what an axis shows; of a heading that has no room on a phone its beginning, the panel has all of it."""
    what = heading[:1].lower() + heading[1:]
    title = f"{what}, {_SCALE}"
    return title if len(title) <= TITLE else f"{what.partition(',')[0]}, {_SCALE}"


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
    return times_alike(value)[0]


def times_alike(*ratios: float) -> list[str]:
    """Return ratios that stand side by side, with a third decimal where they are near 1 and near one another.

    >>> times_alike(0.898, 0.909), times_alike(1.06, 1.552)
    (['0.898', '0.909'], ['1.06', '1.55'])
    """
    if _are_near_one(ratios):
        return [format_number(ratio, significant=4, decimals=3) for ratio in ratios]
    return [format_quantity(ratio, "ratio", "si") for ratio in ratios]


def times_together(
    factors: Sequence[float], spans: Sequence[Span | None] = (), whole_span: Span | None = None
) -> list[str]:
    """Return ratios that multiply to a whole as texts, so rounded that what is printed comes to the whole as printed.

    >>> times_together([1.2543, 0.8443, 1.1549]), times(1.2543 * 0.8443 * 1.1549)
    (['1.25', '0.84', '1.16'], '1.22')
    """
    whole = math.prod(factors)
    beside = [_beside(factor, span) for factor, span in itertools.zip_longest(factors, spans)]
    places = [_places(*ratios) for ratios in beside]
    last = _places(*_beside(whole, whole_span))
    told = multiplied(factors, places, round(whole, last), last)
    return [
        times_alike(*ratios)[0]
        if number == round(factor, place)
        else f"{number:.{place}f}"
        if place > 0
        else times(number)
        for factor, number, place, ratios in zip(factors, told, places, beside, strict=True)
    ]


def _are_near_one(ratios: Sequence[float]) -> bool:
    return any(0.9 < ratio < 1.1 for ratio in ratios) and max(ratios) - min(ratios) < 0.2


def _places(*ratios: float) -> int:
    """Return the last place of the first of ratios that stand side by side."""
    return 3 if _are_near_one(ratios) else last_place(ratios[0], decimals=2, least=2)


def _beside(ratio: float, span: Span | None) -> tuple[float, ...]:
    return (ratio,) if span is None else (ratio, span.low, span.high)


def times_beside(ratio: float, span: Span | None) -> str:
    """Return a ratio with no more digits than the span beside it."""
    return times_alike(*_beside(ratio, span))[0]


def span_words(span: Span) -> str:
    """Return a span of a ratio in words; one whose ends print alike by how wide it is at most.

    >>> [span_words(Span(low, high, 0.001, 0.001, 400)) for low, high in ((0.941, 0.973), (0.9781, 0.9784))]
    ['span 0.941 to 0.973', 'span under 0.001']
    """
    low, high = times_alike(span.low, span.high)
    if low == high:
        step = 10.0 ** -_places(span.high, span.low)
        return f"span under {format_number(step, significant=1)}"
    return f"span {low} to {high}"


def span_ends(span: Span | None) -> str:
    """Return both ends of a span in brackets behind a ratio; nothing without one, or where they print alike."""
    if span is None:
        return ""
    low, high = times_alike(span.low, span.high)
    return "" if low == high else f" ({low} to {high})"


def in_brackets(span: Span | None) -> str:
    """Return a span of a ratio in brackets behind it, or nothing without one."""
    return "" if span is None else f" ({span_words(span)})"


def ratio_and_verdict(each: Compared) -> str:
    """Return a ratio with its verdict, "× 0.62, lowered"; without one, why not."""
    if not each.valid:
        return "severe, no ratio stated"
    if each.ratio is None:
        return "no ratio"
    return f"×\u00a0{times_beside(each.ratio, each.span)}, {_TOLD[each.verdict]}"

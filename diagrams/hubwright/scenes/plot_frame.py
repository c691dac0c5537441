"""The frame of a plot: a view over an area of the sheet and axes with round marks, linear or in decades.

On an axis of decades the view's coordinate is the logarithm to base ten.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from hubwright.quantities.formatting import MINUS
from hubwright.scenes.scales import round_up
from hubwright.scenes.vocabulary import Axis, Label, Note, Point, Tone, View

Marks = tuple[tuple[float, str], ...]
_EVEN = 1e-9
_TOGETHER = 0.6  # sheet millimetres between the ends of lines: nearer ones look like one


@dataclass(frozen=True)
class Area:
    """Where a plot stands: left, low, right and high edge on the sheet."""

    left: float
    low: float
    right: float
    high: float


@dataclass(frozen=True)
class Plot:
    """A plot's view and what its axes reach from and to."""

    view: View
    x: tuple[float, float]
    y: tuple[float, float]

    def axis(
        self,
        name: str,
        side: Literal["foot", "head", "left", "right"],
        marks: Marks,
        title: str,
        *,
        step: int = 1,
        grid: bool = False,
        lift: float = 0.0,
    ) -> Axis:
        """Return the axis along one side of the plot."""
        level = side in ("foot", "head")
        along, across = (self.x, self.y) if level else (self.y, self.x)
        at, far = across if side in ("foot", "left") else across[::-1]
        return Axis(
            name,
            self.view.name,
            step,
            direction="horizontal" if level else "vertical",
            at=at,
            start=along[0],
            end=along[1],
            marks=tuple(mark for mark in marks if along[0] - _EVEN <= mark[0] <= along[1] + _EVEN),
            side="low" if side in ("foot", "left") else "high",
            grid_to=far if grid else None,
            title=title,
            lift=lift,
        )


def plot(name: str, area: Area, x: tuple[float, float], y: tuple[float, float]) -> Plot:
    """Return a plot whose ranges fill an area."""
    scale = (area.right - area.left) / (x[1] - x[0])
    per_mm = (y[1] - y[0]) / (area.high - area.low)
    origin = (area.left - x[0] * scale, area.low - y[0] / per_mm)
    return Plot(View(name, origin, scale, vertical_per_mm=per_mm), x, y)


@dataclass(frozen=True)
class LineEnd:
    """Where a plotted line ends, and what stands there."""

    name: str
    at: Point
    lines: tuple[str, ...]
    step: int
    tone: Tone = "ink"
    also: tuple[Point, ...] = ()  # other points of the line, for a leader where two ends nearly meet


def end_labels(view: View, ends: Iterable[LineEnd]) -> list[Note]:
    """Return the words at the ends of lines, in the column right of the plot; ends that lie together share a label."""
    groups: list[list[LineEnd]] = []
    for end in sorted(ends, key=lambda each: (-view.on_sheet(each.at)[1], each.step)):
        if groups and _apart(view, groups[-1][-1], end) < _TOGETHER:
            groups[-1].append(end)
        else:
            groups.append([end])
    notes = []
    for group in groups:
        first = min(group, key=lambda each: each.step)
        step = max(each.step for each in group)
        lines = tuple(line for each in group for line in each.lines)
        label = Label(lines, "right column", anchor=first.at, also=first.also, tone=first.tone, size=2.3)
        notes.append(Note(f"label-{first.name}", view.name, step, label=label))
    return sorted(notes, key=lambda note: note.step)


def _apart(view: View, first: LineEnd, second: LineEnd) -> float:
    (x0, y0), (x1, y1) = view.on_sheet(first.at), view.on_sheet(second.at)
    return math.hypot(x1 - x0, y1 - y0)


def even_marks(low: float, high: float, *, unit: float = 1.0, about: int = 6, last: str = "") -> Marks:
    """Return marks at round numbers of a unit, about so many; the last one may carry the unit's name.

    >>> even_marks(0.0, 7.0, about=4)
    ((0.0, '0'), (2.0, '2'), (4.0, '4'), (6.0, '6'))
    """
    step = round_up((high - low) / unit / about) * unit
    first, end = math.ceil(low / step - _EVEN), math.floor(high / step + _EVEN)
    marks = [(number * step, _plain(number * step / unit)) for number in range(first, end + 1)]
    if last and marks:
        marks[-1] = (marks[-1][0], f"{marks[-1][1]}\u00a0{last}")
    return tuple(marks)


def decade_marks(low: float, high: float, *, words: Iterable[float] = (1.0, 2.0, 5.0)) -> Marks:
    """Return marks of an axis of decades between two logarithms: words at some digits, short marks at the others.

    >>> [text for _, text in decade_marks(-1.0, 1.0) if text]
    ['0.1', '0.2', '0.5', '1', '2', '5', '10']
    """
    spoken = tuple(words)
    marks = []
    for decade in range(math.floor(low + _EVEN), math.ceil(high - _EVEN) + 1):
        for digit in range(1, 10):
            at = math.log10(digit) + decade
            if low - _EVEN <= at <= high + _EVEN:
                value = digit * 10.0**decade
                text = f"{value:,.10g}" if float(digit) in spoken else ""
                marks.append((at, text))
    return tuple(marks)


def _plain(value: float) -> str:
    """Return a round number without zeros that say nothing."""
    return f"{round(value, 9) + 0.0:,.10g}".replace("-", MINUS)

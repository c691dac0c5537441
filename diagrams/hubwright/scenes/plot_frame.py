"""The frame of a plot: a view over an area of the sheet and axes with round marks, linear or in decades.

On an axis of decades the view's coordinate is the logarithm to base ten.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from hubwright.quantities.formatting import MINUS
from hubwright.scenes.scales import round_up
from hubwright.scenes.vocabulary import Axis, Label, Note, Point, Tone, View

Marks = tuple[tuple[float, str], ...]
Traced = tuple[float, float, bool]  # a place of a line: abscissa, ordinate, whether what is drawn holds there
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

    def holds(self, place: Traced) -> bool:
        """Return whether a place lies between the low and the high edge."""
        return self.y[0] - _EVEN <= place[1] <= self.y[1] + _EVEN

    def runs(self, places: Sequence[Traced]) -> list[list[Traced]]:
        """Return the runs of a line that lie in the plot, each as far as the edge."""
        runs: list[list[Traced]] = [[]]
        for place in self.with_edges(places):
            if self.holds(place):
                runs[-1].append(place)
            elif runs[-1]:
                runs.append([])
        return [run for run in runs if run]

    def with_edges(self, places: Sequence[Traced]) -> list[Traced]:
        """Return the places of a line, and those at which it crosses the low or the high edge."""
        found = list(places[:1])
        for (x0, y0, _), (x1, y1, valid) in pairwise(places):
            crossed = [edge for edge in self.y if (y0 - edge) * (y1 - edge) < 0]
            for edge in sorted(crossed, key=lambda edge: abs(edge - y0)):
                found.append((x0 + (edge - y0) / (y1 - y0) * (x1 - x0), edge, valid))
            found.append((x1, y1, valid))
        return found


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
    """Return the words at the ends of lines, in the column right of the plot; each line has words of its own."""
    notes = []
    ordered = sorted(ends, key=lambda each: -view.on_sheet(each.at)[1])
    for end in ordered:
        place = view.on_sheet(end.at)
        # leaders to ends that look like one meet at one; led to points before it, they would cross the other line
        met = [other.at for other in ordered if math.dist(view.on_sheet(other.at), place) < _TOGETHER]
        also = () if len(met) > 1 else end.also
        label = Label(end.lines, "right column", anchor=met[0], also=also, tone=end.tone, size=2.3)
        notes.append(Note(f"label-{end.name}", view.name, end.step, label=label))
    return sorted(notes, key=lambda note: note.step)


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

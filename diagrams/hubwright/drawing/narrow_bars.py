"""Charts of bars on a phone: what a bar is called and comes to stands in words above its row, not in the key.

Sheet millimetres.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from hubwright.drawing.faces import LEADING, line, wrapped
from hubwright.scenes import vocabulary as v

LEFT, _WIDTH = 4.0, 92.0
_SIZE = 2.3
_ABOVE, _BELOW = 1.4, 2.6  # from a row's bars to its words, and from the bars of the row above them
_PITCH = LEADING * _SIZE
_MARGIN, _BELOW_LINE = 0.5, 0.9  # around words; from their line down to their descenders and a little white


@dataclass(frozen=True, slots=True)
class Row:
    """Bars that share a name, between two heights of the view, and the words above them with their steps."""

    low: float
    high: float
    words: tuple[tuple[str, int, v.Tone], ...]

    @property
    def room(self) -> float:
        """Return the height that the words need above the bars."""
        return _ABOVE + _SIZE + _PITCH * (len(self.words) - 1)


def rows_of(items: Sequence[v.Item], view: v.View) -> list[Row]:
    """Return the rows of a chart from the bottom; a note belongs to the row that it stands nearest to."""
    bars = [item for item in items if isinstance(item, v.Bar)]
    named = sorted((bar for bar in bars if bar.label is not None), key=lambda bar: bar.at)
    if not named:
        return []
    unit = view.vertical_per_mm or 1.0 / view.scale
    reach = {bar.name: (bar.at, bar.at) for bar in named}
    words: dict[str, list[tuple[str, int, v.Tone]]] = {bar.name: [] for bar in named}
    for bar in bars:
        row, half = _nearest(named, bar.at).name, bar.thick / 2 * unit
        reach[row] = min(reach[row][0], bar.at - half), max(reach[row][1], bar.at + half)
    for bar in named:
        assert bar.label is not None
        words[bar.name] += _told(bar.label, bar.step)
    for note in items:
        if isinstance(note, v.Note) and note.label.anchor is not None and note.label.lines:
            words[_nearest(named, note.label.anchor[1]).name] += _told(_on_one_line(note.label), note.step)
    return [Row(*reach[bar.name], tuple(words[bar.name])) for bar in named]


def parted(items: Sequence[v.Item], rows: Sequence[Row], view: v.View) -> tuple[tuple[v.Item, ...], list[Row]]:
    """Return the items of a chart and its rows, moved up until each has room for its words; lines go along."""
    unit = view.vertical_per_mm or 1.0 / view.scale
    shifts = [0.0]
    for lower, upper in pairwise(rows):
        shifts.append(shifts[-1] + max(0.0, (lower.room + _BELOW) * unit - (upper.low - lower.high)))
    at = [edge for row in rows for edge in (row.low, row.high)]
    up = [shift for shift in shifts for _ in range(2)]

    def moved(y: float) -> float:
        return y + float(np.interp(y, at, up))

    result: list[v.Item] = []
    for item in items:
        if isinstance(item, v.Bar):
            item = replace(item, at=moved(item.at))
        elif isinstance(item, v.Line):
            item = replace(item, points=tuple((x, moved(y)) for x, y in item.points))
        elif isinstance(item, v.Axis) and item.direction == "horizontal" and item.grid_to is not None:
            item = replace(item, grid_to=moved(item.grid_to))
        elif isinstance(item, v.Axis) and item.direction == "vertical":
            item = replace(item, end=moved(item.end))
        elif isinstance(item, v.Note):
            continue
        result.append(item)
    return tuple(result), [replace(row, low=moved(row.low), high=moved(row.high)) for row in rows]


def words_of(rows: Sequence[Row], view: v.View, left: float) -> list[v.Words]:
    """Return the words above the rows of a chart, from where it begins on the sheet."""
    items = []
    for number, row in enumerate(reversed(rows)):
        top = view.on_sheet((0.0, row.high))[1] + _ABOVE
        for down, (text, step, tone) in enumerate(row.words):
            up = len(row.words) - 1 - down
            at = (max(min(left, LEFT + _WIDTH - line(text, _SIZE).width), LEFT), top + _PITCH * up)
            name = f"words-row-{number + 1}-{down + 1}"
            items.append(v.Words(name, "", step, at_sheet=at, lines=(text,), size=_SIZE, tone=tone, halo=True, level=6))
    return items


def clear_of(upright: v.Line, words: Sequence[v.Words], view: v.View) -> list[v.Line]:
    """Return an upright line in pieces that leave out the words that it would run through."""
    (x, low), *_, (_, high) = sorted(upright.points, key=lambda point: point[1])
    across, unit = view.on_sheet((x, low))[0], view.vertical_per_mm or 1.0 / view.scale
    edges = [low]
    for each in sorted(words, key=lambda each: each.at_sheet[1]):
        left, foot = each.at_sheet
        if left - _MARGIN < across < left + line(each.lines[0], each.size).width + _MARGIN:
            band = [(foot + above - view.origin[1]) * unit for above in (-_BELOW_LINE, each.size + _MARGIN)]
            edges += [min(max(edge, low), high) for edge in band]
    edges.append(high)
    pieces = [(a, b) for a, b in zip(edges[::2], edges[1::2], strict=True) if b > a]
    return [
        replace(upright, name=upright.name if not number else f"{upright.name}-{number}", points=((x, a), (x, b)))
        for number, (a, b) in enumerate(pieces)
    ]


def _told(label: v.Label, step: int) -> list[tuple[str, int, v.Tone]]:
    return [(text, step, label.tone) for line in label.lines for text in wrapped(line, _SIZE, _WIDTH)]


def _on_one_line(label: v.Label) -> v.Label:
    """Return a label of one line if the width allows it."""
    joined = ", ".join(text.removeprefix("*") for text in label.lines)
    return replace(label, lines=(joined,)) if line(joined, _SIZE).width <= _WIDTH else label


def _nearest(named: Sequence[v.Bar], at: float) -> v.Bar:
    return min(named, key=lambda bar: abs(bar.at - at))

"""Axes of plots: the line, marks with their words, faint lines across the plot, the title at the end.

Sheet millimetres. Words that would stand on one another are left out, as on a narrow sheet; their marks stay.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from hubwright.drawing.faces import DROP, TextLine, line, plain
from hubwright.drawing.geometry import Box, around
from hubwright.drawing.marks import Lettering, Mark, Shape
from hubwright.scenes import vocabulary as v

_CAP, _LONG, _SHORT = 2.2, 1.6, 0.9
_GAP = 1.0  # from a mark to its words, and the least one between words
_TITLE = 3.0  # from the words of the marks to the title
_LINE, _THIN, _FAINT = 0.35, 0.18, 0.13


@dataclass(frozen=True, slots=True)
class DrawnAxis:
    """The marks of an axis, and its words with the boxes that they fill."""

    marks: tuple[Mark, ...]
    texts: tuple[tuple[str, Box], ...]


def axis_ends(item: v.Axis, view: v.View) -> tuple[v.Point, v.Point]:
    """Return where the axis begins and ends on the sheet."""
    return _on_sheet(item, view, item.start), _on_sheet(item, view, item.end)


def axis_room(item: v.Axis, view: v.View) -> Box:
    """Return the box of the axis with the room that its words need."""
    (x0, y0), (x1, y1) = axis_ends(item, view)
    boxes = [box for _, box in draw_axis(item, view).texts]
    return around([(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)), *boxes])


def draw_axis(item: v.Axis, view: v.View) -> DrawnAxis:
    """Return an axis as it stands on the sheet."""
    outward = -1.0 if item.side == "low" else 1.0
    level = item.direction == "horizontal"
    marks: list[Mark] = []
    texts: list[tuple[str, Box]] = []
    words: list[Lettering] = []
    for at, text in _ends_first(item.marks):
        x, y = _on_sheet(item, view, at)
        if text and item.grid_to is not None:
            marks.append(_stroke((x, y), _across(item, view, at), "faint", _FAINT))
        reach = outward * (_LONG if text else _SHORT)
        marks.append(_stroke((x, y), (x, y + reach) if level else (x + reach, y), "soft", _THIN))
        if not text:
            continue
        set_line = line(text, _CAP)
        placed = _beside(set_line, (x, y), outward, level=level)
        box = _box(set_line, placed)
        if any(_near(box, other) for _, other in texts):
            continue
        words.append(Lettering(placed, set_line, "soft"))
        texts.append((plain(text), box))
    ends = axis_ends(item, view)
    marks.append(_stroke(*ends, "ink", _LINE))
    if item.title:
        title = line(item.title, _CAP)
        placed = _title_place(title, item, ends, [box for _, box in texts], outward)
        words.append(Lettering(placed, title, "soft"))
        texts.append((plain(item.title), _box(title, placed)))
    return DrawnAxis((*marks, *words), tuple(texts))


def _ends_first(marks: Sequence[tuple[float, str]]) -> list[tuple[float, str]]:
    """Return the marks with the last one first, which names the unit: where words are left out, its words stay."""
    return [*marks[-1:], *marks[:-1]]


def _title_place(
    title: TextLine, item: v.Axis, ends: tuple[v.Point, v.Point], boxes: list[Box], outward: float
) -> v.Point:
    """Return where the title begins: at the end of a level axis beyond its words, above an upright one."""
    if item.direction == "horizontal":
        x = max(end[0] for end in ends) - title.width
        if outward < 0:
            return x, min([box[1] for box in boxes], default=ends[0][1] - _LONG) - _TITLE - 0.4
        return x, max([box[3] for box in boxes], default=ends[0][1] + _LONG) + _TITLE - 1.2
    y = max(end[1] for end in ends) + _TITLE + item.lift
    if outward < 0:
        return min([box[0] for box in boxes], default=ends[0][0]), y
    return max([box[2] for box in boxes], default=ends[0][0]) - title.width, y


def _beside(set_line: TextLine, at: v.Point, outward: float, *, level: bool) -> v.Point:
    x, y = at
    if level:
        away = _LONG + _GAP
        return x - set_line.width / 2, y + away if outward > 0 else y - away - _CAP
    away = _LONG + _GAP - 0.2
    return x + away if outward > 0 else x - away - set_line.width, y - _CAP / 2


def _box(set_line: TextLine, at: v.Point) -> Box:
    return at[0], at[1] - DROP * _CAP, at[0] + set_line.width, at[1] + _CAP


def _near(box: Box, other: Box) -> bool:
    apart_x = box[0] > other[2] + _GAP or other[0] > box[2] + _GAP
    apart_y = box[1] > other[3] + _GAP / 2 or other[1] > box[3] + _GAP / 2
    return not (apart_x or apart_y)


def _stroke(start: v.Point, end: v.Point, colour: str, width: float) -> Shape:
    return Shape((np.array([start, end]),), line=colour, width=width, cap="butt")


def _on_sheet(item: v.Axis, view: v.View, along: float) -> v.Point:
    return view.on_sheet((along, item.at) if item.direction == "horizontal" else (item.at, along))


def _across(item: v.Axis, view: v.View, along: float) -> v.Point:
    assert item.grid_to is not None
    return view.on_sheet((along, item.grid_to) if item.direction == "horizontal" else (item.grid_to, along))

"""Linear dimensions after ISO 129: extension lines with a gap, slim arrows, text above the line or beside it.

Sheet millimetres.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from hubwright.drawing.arrows import thin_head
from hubwright.drawing.faces import DROP, line
from hubwright.drawing.geometry import Box, Segment
from hubwright.drawing.marks import Lettering, Mark, Shape
from hubwright.drawing.palette import line_token, text_token
from hubwright.scenes.vocabulary import Dimension, View

WIDTH = 0.18
TEXT = 2.5  # cap height
_GAP, _OVER, _ABOVE = 1.2, 1.3, 0.9
_ROOM_FOR_HEADS, _TAIL = 5.5, 5.0
_HALO = 1.0


@dataclass(frozen=True, slots=True)
class DrawnDimension:
    """A dimension on the sheet: its marks, the ends of its line, its real length and what labels must keep off."""

    marks: tuple[Mark, ...]
    ends: Segment
    millimetres: float | None
    text_box: Box
    lines: tuple[Segment, ...]


def draw_dimension(item: Dimension, view: View, cost: Callable[[Box], float]) -> DrawnDimension:
    """Return a dimension with its text where it fits best; `cost` says how badly a box for text is taken."""
    level = item.direction == "horizontal"
    i = 0 if level else 1
    first, second = view.on_sheet(item.start), view.on_sheet(item.end)
    start_is_low = first[i] <= second[i]
    low, high = (first, second) if start_is_low else (second, first)
    wanted = item.extension if start_is_low else item.extension[::-1]
    colour = line_token(item.tone) if item.tone != "ink" else "soft"

    def at(along: float, across: float) -> tuple[float, float]:
        return (along, across) if level else (across, along)

    marks: list[Mark] = []
    rules: list[Segment] = []

    def rule(a: tuple[float, float], b: tuple[float, float]) -> None:
        rules.append((*a, *b))
        marks.append(Shape((np.array([a, b]),), line=colour, width=WIDTH, cap="butt", exact=True))

    for point, on in zip((low, high), wanted, strict=True):
        if on:
            away = 1.0 if item.line_at >= point[1 - i] else -1.0
            rule(at(point[i], point[1 - i] + away * _GAP), at(point[i], item.line_at + away * _OVER))
    a, b = low[i], high[i]
    along = (1.0, 0.0) if level else (0.0, 1.0)
    back = (-along[0], -along[1])
    room = b - a > _ROOM_FOR_HEADS
    rule(at(a, item.line_at), at(b, item.line_at))
    marks.append(thin_head(at(a, item.line_at), back if room else along, colour))
    marks.append(thin_head(at(b, item.line_at), along if room else back, colour))
    text = line(item.text, TEXT)
    beside = 1.6 if room else 2.9
    places: list[tuple[float, tuple[float, float] | None]] = []  # where text starts, and the line drawn on under it
    if b - a > text.width + 2:
        places.append(((a + b - text.width) / 2, None))
    else:
        after = (b + beside, (b, b + beside + text.width + 0.5))
        before = (a - beside - text.width, (a - beside - text.width - 0.5, a))
        end_first = (item.side != "start") == start_is_low if item.side != "auto" else True
        places += [after, before] if end_first else [before, after]
    boxes = [_text_box(start, item.line_at, text.width, text.cap, level=level) for start, _ in places]
    best = min(range(len(places)), key=lambda k: cost(boxes[k]) + 0.01 * k)
    start, under = places[best]
    if under is not None:
        rule(at(under[0], item.line_at), at(under[1], item.line_at))
    if not room and not (under and under[0] < a):
        rule(at(a - _TAIL, item.line_at), at(a, item.line_at))
    if not room and not (under and under[1] > b):
        rule(at(b, item.line_at), at(b + _TAIL, item.line_at))
    baseline = (start, item.line_at + _ABOVE) if level else (item.line_at - _ABOVE, start)
    marks.append(Lettering(baseline, text, text_token(item.tone), 0.0 if level else 90.0, _HALO))
    ends = (*at(a, item.line_at), *at(b, item.line_at))
    ends = ends if start_is_low else (ends[2], ends[3], ends[0], ends[1])
    span = abs(item.end[i] - item.start[i])
    millimetres = span if level or view.vertical_per_mm is None else None
    return DrawnDimension(tuple(marks), ends, millimetres, boxes[best], tuple(rules))


def _text_box(start: float, line_at: float, width: float, cap: float, *, level: bool) -> Box:
    if level:
        return start, line_at + _ABOVE - DROP * cap * 0.6, start + width, line_at + _ABOVE + cap
    return line_at - _ABOVE - cap, start, line_at - _ABOVE + DROP * cap * 0.6, start + width

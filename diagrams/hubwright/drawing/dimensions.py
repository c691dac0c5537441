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
from hubwright.drawing.palette import dimension_token, text_token
from hubwright.scenes.vocabulary import Dimension, View

WIDTH = 0.18
TEXT = 2.5  # cap height
GAP, OVER = 1.2, 1.3  # of an extension line, from the part and beyond the dimension line
ROOM_FOR_HEADS, TAIL = 5.5, 5.0  # between heads that point outward, and of the line behind those that point inward
_ABOVE = 0.9
_HALO = 1.0
_LATER = 2.0  # what a place costs for each better one, so that a thin line is rather crossed than much moved
_WORTH_SHIFTING = 2.5
_PASSING = 2.5  # how much farther than its own width text moves that an extension line would strike


@dataclass(frozen=True, slots=True)
class DrawnDimension:
    """A dimension on the sheet: its marks, the ends of its line, its real length and what labels must keep off."""

    marks: tuple[Mark, ...]
    ends: Segment
    millimetres: float | None
    text_box: Box
    lines: tuple[Segment, ...]  # beside those of `dimension_lines`


def dimension_lines(item: Dimension, view: View) -> tuple[Segment, ...]:
    """Return the dimension line, from start to end, and its extension lines: what stands wherever the text goes."""
    i = 0 if item.direction == "horizontal" else 1
    first, second = view.on_sheet(item.start), view.on_sheet(item.end)
    lines = [(*_at(item, first[i], item.line_at), *_at(item, second[i], item.line_at))]
    for point, on in zip((first, second), item.extension, strict=True):
        if on:
            away = 1.0 if item.line_at >= point[1 - i] else -1.0
            ends = (point[1 - i] + away * GAP, item.line_at + away * OVER)
            lines.append((*_at(item, point[i], ends[0]), *_at(item, point[i], ends[1])))
    return tuple(lines)


def _at(item: Dimension, along: float, across: float) -> tuple[float, float]:
    return (along, across) if item.direction == "horizontal" else (across, along)


def draw_dimension(
    item: Dimension, view: View, cost: Callable[[Box], float], *, letter: str | None = None
) -> DrawnDimension:
    """Return a dimension with its text where it fits best; `cost` says how badly a box for text is taken.

    A letter instead of its text stands upright whatever the direction: turned, many read as others.
    """
    level = item.direction == "horizontal"
    turned = not level and letter is None
    i = 0 if level else 1
    colour = dimension_token(item.tone)
    marks: list[Mark] = []
    rules: list[Segment] = []

    def at(along: float, across: float) -> tuple[float, float]:
        return _at(item, along, across)

    def rule(a: tuple[float, float], b: tuple[float, float]) -> None:
        rules.append((*a, *b))
        marks.append(Shape((np.array([a, b]),), line=colour, width=WIDTH, cap="butt", exact=True))

    ends, *extensions = dimension_lines(item, view)
    for segment in (ends, *extensions):
        marks.append(Shape((np.array([segment[:2], segment[2:]]),), line=colour, width=WIDTH, cap="butt", exact=True))
    start_is_low = ends[i] <= ends[2 + i]
    a, b = sorted((ends[i], ends[2 + i]))
    along = (1.0, 0.0) if level else (0.0, 1.0)
    back = (-along[0], -along[1])
    room = b - a > ROOM_FOR_HEADS
    marks.append(thin_head(at(a, item.line_at), back if room else along, colour))
    marks.append(thin_head(at(b, item.line_at), along if room else back, colour))
    text = line(item.text if letter is None else letter, TEXT)
    end_first = (item.side != "start") == start_is_low if item.side != "auto" else True
    size = (text.width, text.cap) if level or turned else (text.cap, text.width)  # along the line and across
    places = _places(a, b, size[0], room=room, end_first=end_first)
    boxes = [_text_box(place, item.line_at, size, text.cap, level=level, turned=turned) for place in places]
    best = min(range(len(places)), key=lambda k: cost(boxes[k]) + _LATER * k)
    place = places[best]
    under = place.under
    if under is not None:
        rule(at(under[0], item.line_at), at(under[1], item.line_at))
    if not room and not (under and under[0] < a):
        rule(at(a - TAIL, item.line_at), at(a, item.line_at))
    if not room and not (under and under[1] > b):
        rule(at(b, item.line_at), at(b + TAIL, item.line_at))
    across = _ABOVE if place.first_side else -_ABOVE - size[1]
    left = item.line_at - across - (0.0 if turned else size[1])
    baseline = (place.start, item.line_at + across) if level else (left, place.start)
    if item.text:
        marks.append(Lettering(baseline, text, text_token(item.tone), 90.0 if turned else 0.0, _HALO))
    span = abs(item.end[i] - item.start[i])
    millimetres = span if level or view.vertical_per_mm is None else None
    return DrawnDimension(tuple(marks), ends, millimetres, boxes[best], tuple(rules))


@dataclass(frozen=True, slots=True)
class _Place:
    """Where text may stand: its start along the line, the line drawn on under it, above (left) or below (right)."""

    start: float
    under: tuple[float, float] | None = None
    first_side: bool = True


def _places(a: float, b: float, width: float, *, room: bool, end_first: bool) -> list[_Place]:
    """Return places from the best on: in the middle, off it, under the line; without room beyond either end."""
    middle, spare = (a + b - width) / 2, (b - a - width) / 2
    beside = 1.6 if room else 2.9

    def outside(beside: float) -> tuple[tuple[float, tuple[float, float]], ...]:
        after = (b + beside, (b, b + beside + width + 0.5))
        before = (a - beside - width, (a - beside - width - 0.5, a))
        return (after, before) if end_first else (before, after)

    places: list[_Place] = []
    if spare > 1:
        shifts = [0.0, *(s * share * (spare - 1) for share in (0.5, 1.0) for s in (-1, 1) if spare > _WORTH_SHIFTING)]
        places += [_Place(middle + shift, None, side) for side in (True, False) for shift in shifts]
    farther = beside + width + _PASSING  # beyond an extension line of another dimension
    return places + [
        _Place(start, under, side)
        for ends in (outside(beside), outside(farther))
        for side in (True, False)
        for start, under in ends
    ]


def _text_box(
    place: _Place, line_at: float, size: tuple[float, float], cap: float, *, level: bool, turned: bool
) -> Box:
    along, across = size
    if not level and not turned:
        left = line_at - _ABOVE - across if place.first_side else line_at + _ABOVE
        return left, place.start - DROP * cap, left + across, place.start + along
    below, above = (_ABOVE - DROP * cap * 0.6, _ABOVE + cap) if place.first_side else (-_ABOVE - cap * 1.18, -_ABOVE)
    if level:
        return place.start, line_at + below, place.start + along, line_at + above
    return line_at - above, place.start, line_at - below, place.start + along

"""How dimensions are drawn: linear ones, angles with their arc, and lengths whose text stands at a leader (ISO 129).

Sheet millimetres and degrees.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import atan2, degrees, hypot, pi
from typing import Literal

import numpy as np

from hubwright.drawing.arrows import THIN_HEAD, on_circle, thin_head
from hubwright.drawing.dimensions import GAP, OVER, ROOM_FOR_HEADS, TAIL, WIDTH, dimension_lines, draw_dimension
from hubwright.drawing.faces import plain
from hubwright.drawing.geometry import Array, Box, Segment, arc, box_of
from hubwright.drawing.marks import Group, Mark, Shape
from hubwright.drawing.palette import dimension_token
from hubwright.drawing.sheet import Sheet
from hubwright.scenes import vocabulary as v

_SHARES = (0.5, 0.3, 0.7)  # where along an arc a leader may end
_ALONG = (0.75, 0.25)  # and along a straight line


def claim_lines(item: v.Dimension, view: v.View, sheet: Sheet) -> None:
    """Make texts keep off the lines of a dimension before any dimension looks for a place for its text."""
    for segment in dimension_lines(item, view):
        sheet.keep_off(sheet.plain_name(item, "dimension-"), "dimension", segment, 0.1)


def dimension(item: v.Dimension, view: v.View, sheet: Sheet) -> Group:
    """Return a linear dimension."""
    own = sheet.plain_name(item, "dimension-")
    letter = (sheet.letters or {}).get(item.name)
    drawn = draw_dimension(item, view, lambda box: sheet.ground.cost(box, own), letter=letter)
    for segment in drawn.lines:
        sheet.keep_off(own, "dimension", segment, 0.1)
    if item.text:
        sheet.write(own, letter or plain(item.text), drawn.text_box)
    data = () if drawn.millimetres is None else (("mm", f"{drawn.millimetres:.9g}"),)
    return Group(sheet.unique(own), drawn.marks, data, drawn.ends)


def angular_dimension(item: v.AngularDimension, view: v.View, sheet: Sheet) -> Group:
    """Return an arc with slim heads from one direction to the other, the shorter way round."""
    _refuse_plot(item, view)
    name = sheet.group_name(item, "dimension-")
    centre, points = view.on_sheet(item.vertex), (view.on_sheet(item.start), view.on_sheet(item.end))
    first, sweep = _swept(item, view)
    last, sense, r = first + sweep, 1.0 if sweep >= 0 else -1.0, item.radius
    colour = dimension_token(item.tone)
    room = abs(sweep) * pi / 180.0 * r > ROOM_FOR_HEADS
    tail = 0.0 if room else degrees(TAIL / r)
    lines = [arc(centre, r, first, last, step=3.0)]
    if not room:
        lines += [arc(centre, r, end, end + way * sense * tail, step=3.0) for end, way in ((first, -1.0), (last, 1.0))]
    for on, point, angle in zip(item.extension, points, (first, last), strict=True):
        reach = hypot(point[0] - centre[0], point[1] - centre[1])
        if on and reach < r:
            lines.append(np.array([on_circle(centre, reach + GAP, angle), on_circle(centre, r + OVER, angle)]))
    marks: list[Mark] = [Shape((line,), line=colour, width=WIDTH, cap="butt", exact=True) for line in lines]
    for end, way in ((first, -1.0), (last, 1.0)):
        # a head follows the chord of its own length, so that it lies on the arc
        turn = way * sense * (1.0 if room else -1.0)
        back = on_circle(centre, r, end - turn * degrees(THIN_HEAD[0] / r))
        tip = on_circle(centre, r, end)
        head = thin_head(tip, _unit(back, tip), colour)
        marks.append(head)
        sheet.keep_off_box(name, "dimension", box_of(np.vstack(head.rings)))
    for line in lines:
        for a, b in pairwise(line[::2] if len(line) > 8 else line):
            sheet.keep_off(name, "dimension", (float(a[0]), float(a[1]), float(b[0]), float(b[1])), 0.1)
    middle = first + sweep / 2
    at = on_circle(centre, r, middle)
    ends = tuple(on_circle(centre, r, first + share * sweep) for share in _SHARES)
    if not room:
        ends = (on_circle(centre, r, last + sense * tail), on_circle(centre, r, first - sense * tail), at)
    label = item.label
    if label is not None and not label.place.endswith("column") and label.anchor is None:
        label = replace(label, place=_side(middle))
    sheet.want(item, label, owner=name, view=view, points=ends, box=(*at, *at))
    data = (("degrees", f"{_real_angle(item):.9g}"),)
    return Group(name, tuple(marks), data, (*on_circle(centre, r, first), *on_circle(centre, r, last)), centre)


def leader_dimension(item: v.LeaderDimension, view: v.View, sheet: Sheet) -> Group:
    """Return a thin line with slim heads from end to end, or to the rim; its text is a label with a leader."""
    _refuse_plot(item, view)
    name = sheet.group_name(item, "dimension-")
    a, b = view.on_sheet(item.start), view.on_sheet(item.end)
    along = _unit(a, b)
    back = (-along[0], -along[1])
    colour = dimension_token(item.tone)
    both, room = item.measures == "diameter", hypot(b[0] - a[0], b[1] - a[1]) > ROOM_FOR_HEADS
    beyond = (b[0] + along[0] * TAIL, b[1] + along[1] * TAIL)
    before = (a[0] - along[0] * TAIL, a[1] - along[1] * TAIL)
    lines: list[Segment] = [(*a, *b)]
    if not room:
        lines += [(*b, *beyond), *([(*before, *a)] if both else [])]
    marks: list[Mark] = [
        Shape((np.array([line[:2], line[2:]]),), line=colour, width=WIDTH, cap="butt", exact=True) for line in lines
    ]
    marks.append(thin_head(b, along if room else back, colour))
    if both:
        marks.append(thin_head(a, back if room else along, colour))
    for line in lines:
        sheet.keep_off(name, "dimension", line, 0.1)
    if room:
        ends = tuple((a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])) for share in _ALONG)
    else:
        ends = (beyond, before) if both else (beyond,)
    sheet.want(item, item.label, owner=name, view=view, points=ends, box=_around(lines))
    length = hypot(item.end[0] - item.start[0], item.end[1] - item.start[1])
    return Group(name, tuple(marks), (("mm", f"{length:.9g}"),), (*a, *b))


def arc_points(item: v.AngularDimension, view: v.View) -> Array:
    """Return the points of an angle's arc."""
    first, sweep = _swept(item, view)
    return arc(view.on_sheet(item.vertex), item.radius, first, first + sweep, step=3.0)


def _swept(item: v.AngularDimension, view: v.View) -> tuple[float, float]:
    """Return where an arc starts on the sheet and how far it goes, the shorter way round."""
    x, y = view.on_sheet(item.vertex)
    first, last = (degrees(atan2(b - y, a - x)) for a, b in (view.on_sheet(item.start), view.on_sheet(item.end)))
    return first, (last - first + 180.0) % 360.0 - 180.0


def _refuse_plot(item: v.Item, view: v.View) -> None:
    if view.vertical_per_mm is not None:
        raise ValueError(f"'{item.name}' measures in '{view.name}', a plot, whose ordinate is no length")


def _real_angle(item: v.AngularDimension) -> float:
    (x, y), (x0, y0), (x1, y1) = item.vertex, item.start, item.end
    turn = atan2(y1 - y, x1 - x) - atan2(y0 - y, x0 - x)
    return abs(degrees((turn + pi) % (2 * pi) - pi))


def _side(angle: float) -> Literal["right", "above", "left", "below"]:
    """Return the side on which words stand clear of an arc's middle."""
    sides: tuple[Literal["right", "above", "left", "below"], ...] = ("right", "above", "left", "below")
    return sides[round(angle / 90.0) % 4]


def _unit(start: v.Point, end: v.Point) -> v.Point:
    length = hypot(end[0] - start[0], end[1] - start[1]) or 1.0
    return (end[0] - start[0]) / length, (end[1] - start[1]) / length


def _around(lines: list[Segment]) -> Box:
    return box_of(np.array([end for line in lines for end in (line[:2], line[2:])]))

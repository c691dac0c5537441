"""Where the leaders of letters in rings end: on what a note names, as it is drawn.

Sheet millimetres. On a wide sheet the words of a note may stand beside what they name without a leader, and its place
with them; on a narrow one a leader goes there.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import dist, hypot, inf

import numpy as np

from hubwright.drawing.geometry import Array, Box
from hubwright.drawing.marks import Disc, Group, Shape, flat
from hubwright.drawing.obstacles import Wanted
from hubwright.scenes import vocabulary as v

Drawn = Sequence[tuple[v.Item, Group]]
_ON = 0.3  # within which a leader ends on a line
_EDGE = 1.2  # along a frame, where things are cut off
_ARROWS = (v.Force, v.Normal, v.Moment)
_MEASURE = (v.Dimension, v.AngularDimension, v.LeaderDimension, v.Axis, v.Words)
_PLAIN: tuple[v.Tone, ...] = ("ink", "soft", "faint")
_ALONG = (0.3, 0.5, 0.15, 0.65)  # where on an arrow a leader may end, from the tail


def on_what_they_name(wanted: Sequence[Wanted], drawn: Drawn, frames: Mapping[str, Box]) -> list[Wanted]:
    """Return the labels, the points of notes in rings moved onto the nearest thing that they can mean.

    Coloured words mean what has their colour, an arrow above all; others a part or a line.
    """
    notes = {group.name: item for item, group in drawn if isinstance(item, v.Note)}
    return [
        _on_it(each, notes[each.owner], drawn, frames) if each.balloon and each.owner in notes else each
        for each in wanted
    ]


def _on_it(wanted: Wanted, note: v.Note, drawn: Drawn, frames: Mapping[str, Box]) -> Wanted:
    seen = [(item, group) for item, group in drawn if item.view == note.view and not isinstance(item, _MEASURE)]
    seen = [(item, group) for item, group in seen if item.step <= note.step and group.children]
    if (way := _way_of_line(wanted.point, seen)) is not None:
        return replace(wanted, tail=(wanted.point, way), label=replace(wanted.label, place="tail"))
    tone = note.label.tone
    if tone in _PLAIN:
        meant = [pair for pair in seen if not isinstance(pair[0], _ARROWS)]
    else:
        meant = [pair for pair in seen if _tone(pair[0]) == tone]
    points = [end for point in wanted.points for end in _ends(point, meant or seen, frames.get(note.view))]
    return replace(wanted, points=tuple(dict.fromkeys(points)))


def _way_of_line(point: v.Point, seen: Drawn) -> v.Point | None:
    """Return which way a thin line goes that ends at a point: a letter needs no leader there but stands at its end."""
    for item, group in seen:
        if isinstance(item, v.Line) and item.style == "hair" and len(item.points) == 2:
            (line,) = (mark for mark in group.children if isinstance(mark, Shape))
            (x0, y0), (x1, y1) = line.rings[0].tolist()
            if dist(point, (x1, y1)) <= _ON:
                return x1 - x0, y1 - y0
    return None


def _tone(item: v.Item) -> v.Tone | None:
    """Return the colour in which an item is drawn."""
    if isinstance(item, v.Force | v.Normal):
        return "reaction" if item.role == "reaction" else "load"
    if isinstance(item, v.Moment):
        return "moment"
    return getattr(item, "tone", None)


def _ends(point: v.Point, meant: Drawn, frame: Box | None) -> list[v.Point]:
    """Return a point that lies on one of the things, else the nearest one that does; of an arrow several.

    For an arrow's tip too: there a leader would run beside a side of the head.
    """
    best, found = inf, [point]
    for item, group in meant:
        away, at = _nearest(point, group, frame, best)
        arrow = group.ends if isinstance(item, v.Force) and frame is None else None
        if away <= _ON and (arrow is None or dist(point, arrow[2:]) > _ON):
            return [point]
        if away < best:
            best, found = away, [at]
            if arrow is not None:
                x0, y0, x1, y1 = arrow
                found = [(x0 + share * (x1 - x0), y0 + share * (y1 - y0)) for share in _ALONG]
    return found


def _nearest(point: v.Point, group: Group, frame: Box | None, limit: float) -> tuple[float, v.Point]:
    """Return how far a point lies off what a group draws, nothing where that is filled, and the nearest point of it.

    What lies farther off than the limit is not looked at.
    """
    best = inf, point
    for mark in flat(group.children):
        if isinstance(mark, Disc):
            x, y = point[0] - mark.centre[0], point[1] - mark.centre[1]
            reach = hypot(x, y)
            share = min(1.0, mark.radius / (reach or 1.0))
            near = max(0.0, reach - mark.radius), (mark.centre[0] + share * x, mark.centre[1] + share * y)
        elif isinstance(mark, Shape) and (mark.line or mark.fill) not in (None, "paper"):
            rings = [ring for ring in mark.rings if _off_box(point, ring) <= min(limit, best[0])]
            if not rings:
                continue
            if mark.closed and mark.fill not in (None, "paper") and _within(point, mark):
                return 0.0, point
            near = min(_along(point, _ended(ring, mark), frame) for ring in rings)
        else:
            continue
        best = min(best, near)
    return best


def _off_box(point: v.Point, line: Array) -> float:
    """Return how far a point lies at least off a line: its distance from the box around it."""
    (x0, y0), (x1, y1) = line.min(axis=0), line.max(axis=0)
    return hypot(max(x0 - point[0], 0.0, point[0] - x1), max(y0 - point[1], 0.0, point[1] - y1))


def _ended(ring: Array, mark: Shape) -> Array:
    """Return a line of a shape from point to point."""
    return np.vstack([ring, ring[:1]]) if mark.closed else ring


def _within(point: v.Point, mark: Shape) -> bool:
    """Return whether a point lies within the rings of a shape, by the even-odd rule."""
    crossed = 0
    for ring in (_ended(each, mark) for each in mark.rings):
        (x0, y0), (x1, y1) = ring[:-1].T, ring[1:].T
        spans = (y0 > point[1]) != (y1 > point[1])
        at = x0[spans] + (point[1] - y0[spans]) * (x1 - x0)[spans] / (y1 - y0)[spans]
        crossed += int((at > point[0]).sum())
    return crossed % 2 == 1


def _along(point: v.Point, line: Array, frame: Box | None) -> tuple[float, v.Point]:
    """Return how far a point lies off a line of straight pieces, as far as a frame shows them, and where."""
    start, along = line[:-1], np.diff(line, axis=0)
    enter, leave = np.zeros(len(start)), np.ones(len(start))
    if frame is not None:
        for axis in (0, 1):
            for edge, inward in ((frame[axis] + _EDGE, 1.0), (frame[axis + 2] - _EDGE, -1.0)):
                inside, slope = inward * (start[:, axis] - edge), inward * along[:, axis]
                with np.errstate(divide="ignore", invalid="ignore"):
                    crossing = -inside / slope
                enter = np.where(slope > 0, np.maximum(enter, crossing), enter)
                leave = np.where(slope < 0, np.minimum(leave, crossing), leave)
                leave = np.where((slope == 0) & (inside < 0), -1.0, leave)
    length = (along**2).sum(axis=1)
    share = ((point - start) * along).sum(axis=1) / np.where(length > 0, length, 1.0)
    ends = start + np.clip(share, enter, np.maximum(enter, leave))[:, None] * along
    away = np.where(enter <= leave, np.hypot(*(ends - point).T), inf)
    if not len(away):
        return inf, point
    nearest = int(away.argmin())
    return float(away[nearest]), (float(ends[nearest, 0]), float(ends[nearest, 1]))

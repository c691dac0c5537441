"""Plane geometry of drafting: arcs, rounded rectangles, hatching as real segments, boxes and segments that meet.

Everything is in sheet millimetres, x to the right and y up.
"""

from collections.abc import Iterable
from math import hypot

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Box = tuple[float, float, float, float]  # x0, y0, x1, y1
Segment = tuple[float, float, float, float]
_SHORTEST_HATCH = 0.15  # shorter pieces print as specks


def arc(centre: tuple[float, float], radius: float, start: float, end: float, *, step: float = 6.0) -> Array:
    """Return points of an arc between two angles in degrees."""
    count = max(2, int(abs(end - start) / step) + 2)
    angle = np.radians(np.linspace(start, end, count))
    return np.column_stack([centre[0] + radius * np.cos(angle), centre[1] + radius * np.sin(angle)])


def rounded_box(box: Box, radius: float) -> Array:
    """Return a rectangle with rounded corners as a polygon."""
    x0, y0, x1, y1 = box
    radius = min(radius, (x1 - x0) / 2, (y1 - y0) / 2)
    left, right, low, high = x0 + radius, x1 - radius, y0 + radius, y1 - radius
    corners = ((right, high, 0), (left, high, 90), (left, low, 180), (right, low, 270))
    return np.vstack([arc((x, y), radius, a, a + 90, step=15) for x, y, a in corners])


def rectangle(box: Box) -> Array:
    """Return a box as a polygon."""
    x0, y0, x1, y1 = box
    return np.array([[x0, y0], [x1, y0], [x1, y1], [x0, y1]])


def hatching(rings: list[Array], pitch: float, angle: float) -> Array:
    """Return section lines inside closed rings (even-odd), shape (lines, 2, 2), on one grid for the whole sheet."""
    turn = np.radians(-angle)
    c, s = np.cos(turn), np.sin(turn)
    rotation = np.array([[c, -s], [s, c]])
    turned = [ring @ rotation.T for ring in rings]
    a = np.vstack(turned)
    b = np.vstack([np.roll(ring, -1, 0) for ring in turned])
    levels = np.arange(np.ceil(a[:, 1].min() / pitch), np.floor(a[:, 1].max() / pitch) + 1) * pitch + 1e-7
    row, edge = np.nonzero((a[None, :, 1] > levels[:, None]) != (b[None, :, 1] > levels[:, None]))
    if not row.size:
        return np.empty((0, 2, 2))
    y = levels[row]
    x = a[edge, 0] + (y - a[edge, 1]) * (b[edge, 0] - a[edge, 0]) / (b[edge, 1] - a[edge, 1])
    order = np.lexsort((x, row))
    x, y = x[order], y[order]
    keep = x[1::2] - x[::2] > _SHORTEST_HATCH
    ends = np.stack([np.column_stack([x[::2], y[::2]]), np.column_stack([x[1::2], y[1::2]])], axis=1)[keep]
    return np.asarray(ends @ rotation)


def extended(points: Array, by: float) -> Array:
    """Return a polyline lengthened at both ends."""
    if by == 0 or len(points) < 2:
        return points
    longer = points.copy()
    for end, neighbour in ((0, 1), (-1, -2)):
        along = points[end] - points[neighbour]
        length = hypot(*along)
        if length > 0:
            longer[end] = points[end] + along / length * by
    return longer


def box_of(points: Array, margin: float = 0.0) -> Box:
    """Return the box around points."""
    low, high = points.min(axis=0), points.max(axis=0)
    return float(low[0]) - margin, float(low[1]) - margin, float(high[0]) + margin, float(high[1]) + margin


def around(boxes: Iterable[Box]) -> Box:
    """Return the box around boxes."""
    corners = np.array(list(boxes))
    low, high = corners[:, :2].min(axis=0), corners[:, 2:].max(axis=0)
    return float(low[0]), float(low[1]), float(high[0]), float(high[1])


def overlap(first: Box, second: Box, margin: float = 0.0) -> bool:
    """Return whether two boxes share area, or come nearer than a margin."""
    return (
        first[0] < second[2] + margin
        and second[0] < first[2] + margin
        and first[1] < second[3] + margin
        and second[1] < first[3] + margin
    )


def grown(box: Box, by: float) -> Box:
    """Return a box grown on every side."""
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def off(point: tuple[float, float], segment: Segment) -> float:
    """Return how far a point lies off a segment."""
    px, py = point
    x0, y0, x1, y1 = segment
    dx, dy = x1 - x0, y1 - y0
    length = dx * dx + dy * dy
    share = 0.0 if length == 0 else min(1.0, max(0.0, ((px - x0) * dx + (py - y0) * dy) / length))
    return hypot(px - x0 - share * dx, py - y0 - share * dy)


def apart(first: Segment, second: Segment) -> float:
    """Return how far two segments lie apart: nothing where they cross."""
    if cross(first, second):
        return 0.0
    return min(off(first[:2], second), off(first[2:], second), off(second[:2], first), off(second[2:], first))


def inside(segment: Segment, box: Box) -> tuple[float, float] | None:
    """Return between which shares of its length a segment lies in a box (Liang and Barsky's clipping)."""
    x, y = segment[0], segment[1]
    dx, dy = segment[2] - x, segment[3] - y
    enter, leave = 0.0, 1.0
    for p, q in ((-dx, x - box[0]), (dx, box[2] - x), (-dy, y - box[1]), (dy, box[3] - y)):
        if p == 0:
            if q < 0:
                return None
        elif p < 0:
            enter = max(enter, q / p)
        else:
            leave = min(leave, q / p)
    return (enter, leave) if enter < leave else None


def meets(segment: Segment, box: Box) -> bool:
    """Return whether a segment passes through a box."""
    return inside(segment, box) is not None


def cross(first: Segment, second: Segment) -> bool:
    """Return whether two segments cross; a shared end is no crossing."""
    ax, ay, bx, by = first
    cx, cy, dx, dy = second
    # most pairs lie apart; refusing them here is what keeps label layout quick
    if (ax if ax > bx else bx) < (cx if cx < dx else dx) or (cx if cx > dx else dx) < (ax if ax < bx else bx):
        return False
    if (ay if ay > by else by) < (cy if cy < dy else dy) or (cy if cy > dy else dy) < (ay if ay < by else by):
        return False
    ux, uy, wx, wy = bx - ax, by - ay, dx - cx, dy - cy
    if (ux * (cy - ay) - uy * (cx - ax)) * (ux * (dy - ay) - uy * (dx - ax)) >= 0:
        return False
    return (wx * (ay - cy) - wy * (ax - cx)) * (wx * (by - cy) - wy * (bx - cx)) < 0

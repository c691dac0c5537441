"""Leaders of column labels that keep clear: a later knee or another point of the item where the straight way is taken.

Sheet millimetres.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from math import inf

from hubwright.drawing.columns import ELBOW, knee, start
from hubwright.drawing.geometry import Box, Segment, cross, overlap
from hubwright.drawing.obstacles import Kind, Obstacle, Placed
from hubwright.scenes.vocabulary import Column, Point

_WEIGHT: dict[Kind, float] = {"text": 40.0, "head": 25.0, "mark": 15.0, "shaft": 12.0, "anchor": 15.0, "line": 0.0}
_ALONG = 25.0  # an arrow or a line
_CROSSING = 100.0
_NEAR_ANCHOR, _ANCHOR_CLEAR = 30.0, 1.2
_OTHER_POINT, _LONGER_KNEE = 0.6, 0.2  # small, so that a clear way stays as it is
_KNEES = (ELBOW, 6.0, 10.0, 15.0, 21.0, 28.0)
_ROUNDS = 3


def pieces(leader: Sequence[Point]) -> list[Segment]:
    """Return the straight pieces of a leader."""
    return [(*a, *b) for a, b in pairwise(leader)]


def clear_leaders(placed: Sequence[Placed], column: Column, obstacles: Sequence[Obstacle]) -> list[Placed]:
    """Return labels of one column with leaders that avoid one another, other texts, arrows and other anchors."""
    result = list(placed)
    in_the_way = [each for each in obstacles if each.kind in _WEIGHT]
    reaches: dict[int, list[Obstacle]] = {}
    for _ in range(_ROUNDS):
        changed = False
        for i, each in enumerate(result):
            others = result[:i] + result[i + 1 :]
            taken = [(piece, _spread(piece)) for other in others for piece in pieces(other.leader)]
            anchors = [other.leader[-1] for other in others]
            if i not in reaches:
                reaches[i] = _within_reach(each, column, in_the_way)
            near = reaches[i]
            cost = _cost(each.leader, near, taken, anchors, inf)
            if cost == 0.0:
                continue
            for extra, leader in _ways(each, column):
                if extra >= cost:
                    continue
                other_cost = extra + _cost(leader, near, taken, anchors, cost)
                if other_cost < cost - 1e-9:
                    cost, changed = other_cost, True
                    result[i] = replace(each, leader=leader)
        if not changed:
            break
    return result


def _ways(placed: Placed, column: Column) -> list[tuple[float, tuple[Point, ...]]]:
    """Return what each other way costs beforehand, and its points: from text to item."""
    height = placed.leader[0][1]
    away = 1.0 if column.side == "left" else -1.0
    ways: list[tuple[float, tuple[Point, ...]]] = []
    for p, point in enumerate(placed.wanted.points):
        begin = start(column, height)
        for k, reach in enumerate(_KNEES):
            bend = knee(column, height, reach)
            if away * (point[0] - bend[0]) > 0.5 or k == 0:
                ways.append((p * _OTHER_POINT + k * _LONGER_KNEE, (begin, bend, point)))
            # slanting first, then level into the item
            late = (point[0] - away * reach, point[1])
            first = knee(column, height)
            if away * (late[0] - first[0]) > 2.0:
                ways.append((p * _OTHER_POINT + (k + 2) * _LONGER_KNEE, (begin, first, late, point)))
    return ways


def _within_reach(placed: Placed, column: Column, obstacles: Sequence[Obstacle]) -> list[Obstacle]:
    xs = [column.x, *(x for x, _ in placed.wanted.points)]
    ys = [placed.leader[0][1], *(y for _, y in placed.wanted.points)]
    around = (min(xs) - 1, min(ys) - 1, max(xs) + 1, max(ys) + 1)
    own = (placed.wanted.owner, placed.wanted.name)
    return [each for each in obstacles if overlap(each.box, around) and each.name not in own]


def _spread(piece: Segment) -> Box:
    """Return the box of a straight piece."""
    x0, y0, x1, y1 = piece
    return (x0 if x0 < x1 else x1, y0 if y0 < y1 else y1, x1 if x0 < x1 else x0, y1 if y0 < y1 else y0)


def _cost(
    leader: Sequence[Point],
    obstacles: Sequence[Obstacle],
    taken: Sequence[tuple[Segment, Box]],
    anchors: Sequence[Point],
    limit: float,
) -> float:
    """Return how badly a leader runs; counting stops at the limit, beyond which it does not matter."""
    cost = 0.0
    x, y = leader[-1]
    for other, box in taken:  # no other leader passes where this one ends
        near = (
            box[0] - _ANCHOR_CLEAR < x < box[2] + _ANCHOR_CLEAR and box[1] - _ANCHOR_CLEAR < y < box[3] + _ANCHOR_CLEAR
        )
        if near and _close((x, y), other):
            cost += _NEAR_ANCHOR
    for piece in pieces(leader):
        left, low, right, high = _spread(piece)
        for other, box in taken:
            apart = box[2] < left or box[0] > right or box[3] < low or box[1] > high  # as most are
            if not apart and cross(piece, other):
                cost += _CROSSING
        if cost > limit:
            break
        for each in obstacles:
            box = each.box
            if box[2] < left or box[0] > right or box[3] < low or box[1] > high:
                continue
            if each.crossed_by(piece):
                cost += _ALONG if each.runs_along(piece) else _WEIGHT[each.kind]
                if cost > limit:
                    return cost
        left, right, low, high = left - _ANCHOR_CLEAR, right + _ANCHOR_CLEAR, low - _ANCHOR_CLEAR, high + _ANCHOR_CLEAR
        for anchor in anchors:
            if left < anchor[0] < right and low < anchor[1] < high and _close(anchor, piece):
                cost += _NEAR_ANCHOR
    return cost


def _close(point: Point, segment: Segment) -> bool:
    """Return whether a point lies nearer to a segment than leaders may pass."""
    px, py = point
    x0, y0, x1, y1 = segment
    dx, dy = x1 - x0, y1 - y0
    length = dx * dx + dy * dy
    share = 0.0 if length == 0 else min(1.0, max(0.0, ((px - x0) * dx + (py - y0) * dy) / length))
    ax, ay = px - x0 - share * dx, py - y0 - share * dy
    return ax * ax + ay * ay < _ANCHOR_CLEAR * _ANCHOR_CLEAR

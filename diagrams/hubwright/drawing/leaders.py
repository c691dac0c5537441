"""Leaders of column labels that keep clear: a later knee or another point of the item where the straight way is taken.

Sheet millimetres.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from math import inf

from hubwright.drawing.columns import ELBOW, LEAST_GAP, knee, start
from hubwright.drawing.geometry import Box, Segment, cross, off, overlap
from hubwright.drawing.obstacles import Kind, Obstacle, Placed
from hubwright.scenes.vocabulary import Column, Point

_WEIGHT: dict[Kind, float] = {"text": 40.0, "head": 25.0, "mark": 15.0, "shaft": 12.0, "anchor": 15.0}
_WEIGHT |= dict.fromkeys(("line", "base"), 0.0)  # these cost only along them
# what it costs to run along an arrow, a side or the base of its head, or a line; and how near
_ALONG, _ALONG_LINE, _BESIDE = 60.0, 25.0, 0.4
_CROSSING = 100.0
_NEAR_ANCHOR, _NEAR_KNEE, _ANCHOR_CLEAR = 30.0, 14.0, 1.2
_ON_ANCHOR, _TOUCHING = 35.0, 0.5  # besides, where a leader does not only pass near another one's end but through it
_OTHER_POINT, _LONGER_KNEE = 0.6, 0.2  # small, so that a clear way stays as it is
_KNEES = (ELBOW, 6.0, 10.0, 15.0, 21.0, 28.0)
_TOLERABLE = 24.0  # what a leader may cost before unusual ways are tried: an arrow or two crossed
_STEEPEST = 2.5  # rise over run of a last piece that slants
_ROUNDS = 3
_SHIFTS = (1.0, -1.0, 2.0, -2.0, 4.0, -4.0, 7.0, -7.0)
_SHIFTED, _FARTHER = 9.0, 0.4  # what a moved label costs, and each millimetre: less than a head or an anchor
_TEXT_CLEAR = 0.5  # between a moved label and what it keeps off
_NO_GROUND: tuple[Kind, ...] = ("text", "head", "shaft", "mark", "dimension", "frame")


def pieces(leader: Sequence[Point]) -> list[Segment]:
    """Return the straight pieces of a leader."""
    return [(*a, *b) for a, b in pairwise(leader)]


def clear_leaders(placed: Sequence[Placed], column: Column, obstacles: Sequence[Obstacle]) -> list[Placed]:
    """Return labels of one column with leaders that avoid one another, other texts, arrows and other anchors.

    Where no other way is clear, a label moves up or down a little if there is room.
    """
    result = list(placed)
    own = {each.wanted.name for each in placed}
    standing = [each for each in obstacles if each.kind != "text" or each.name not in own]
    in_the_way = [each for each in standing if each.kind in _WEIGHT]
    grounds = [_Standing(_within_reach(each, column, in_the_way)) for each in placed]
    for _ in range(_ROUNDS):
        changed = False
        for i, each in enumerate(result):
            others = result[:i] + result[i + 1 :]
            taken = [(piece, _spread(piece)) for other in others for piece in pieces(other.leader)]
            anchors = [other.leader[-1] for other in others]
            texts = [Obstacle(other.wanted.name, "text", other.box) for other in others]
            cost = _cost(each.leader, grounds[i], texts, taken, anchors, inf)
            for shift in (0.0, *_SHIFTS):
                if cost <= (_SHIFTED if shift else 0.0):
                    break
                if shift and not _free(each, shift, column, others, standing):
                    continue
                for extra, leader in _ways(each, column, shift, unusual=cost > _TOLERABLE):
                    if extra >= cost:
                        continue
                    other_cost = extra + _cost(leader, grounds[i], texts, taken, anchors, cost)
                    if other_cost < cost - 1e-9:
                        cost, changed = other_cost, True
                        result[i] = replace(each, top=each.top + shift, leader=leader)
        if not changed:
            break
    return result


def _free(
    placed: Placed, shift: float, column: Column, others: Sequence[Placed], obstacles: Sequence[Obstacle]
) -> bool:
    """Return whether a label may stand so much higher in its column."""
    box = (placed.box[0], placed.box[1] + shift, placed.box[2], placed.box[3] + shift)
    if (shift > 0 and box[3] > column.high) or (shift < 0 and box[1] < column.low):
        return False
    return not any(overlap(box, other.box, LEAST_GAP) for other in others) and not any(
        each.hit(box, _TEXT_CLEAR) for each in obstacles if each.kind in _NO_GROUND
    )


def _ways(placed: Placed, column: Column, shift: float, *, unusual: bool) -> list[tuple[float, tuple[Point, ...]]]:
    """Return other ways of a label's leader, so much higher in its column, and what each costs beforehand.

    Unusual ones are level as far as the item and slant at last.
    """
    height = placed.leader[0][1] + shift
    dear = _SHIFTED + _FARTHER * abs(shift) if shift else 0.0
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
            # level as far as the item, slanting at last
            over = (late[0], height)
            if unusual and away * (over[0] - begin[0]) > _KNEES[-1] and abs(height - point[1]) < _STEEPEST * reach:
                ways.append((p * _OTHER_POINT + (k + len(_KNEES)) * _LONGER_KNEE, (begin, over, point)))
    return [(dear + extra, leader) for extra, leader in ways]


def _within_reach(placed: Placed, column: Column, obstacles: Sequence[Obstacle]) -> list[Obstacle]:
    """Return what a label's leaders may come upon, however far it moves."""
    height, farthest = placed.leader[0][1], _ROUNDS * max(_SHIFTS)
    xs = [column.x, *(x for x, _ in placed.wanted.points)]
    ys = [height - farthest, height + farthest, *(y for _, y in placed.wanted.points)]
    around = (min(xs) - 1, min(ys) - 1, max(xs) + 1, max(ys) + 1)
    own = (placed.wanted.owner, placed.wanted.name)
    near = [each for each in obstacles if overlap(each.box, around)]
    # of what the label names only an arrow's head is in the way: the leader's edge of paper would cut it in two
    return [
        each.from_neck_to_tip if each.name in own else each
        for each in near
        if each.name not in own or each.kind == "head"
    ]


def _spread(piece: Segment) -> Box:
    """Return the box of a straight piece."""
    x0, y0, x1, y1 = piece
    return (x0 if x0 < x1 else x1, y0 if y0 < y1 else y1, x1 if x0 < x1 else x0, y1 if y0 < y1 else y0)


class _Standing:
    """What stands in the way of one label's leaders, and what each straight piece that was asked for costs there."""

    def __init__(self, obstacles: Sequence[Obstacle]) -> None:
        self.obstacles = obstacles
        self.known: dict[Segment, float] = {}
        self.least: dict[Segment, float] = {}  # of pieces for which counting stopped at a limit

    def cost(self, piece: Segment, limit: float) -> float:
        """Return what a piece costs for all that it crosses or runs along; counting stops at the limit."""
        if piece in self.known:
            return self.known[piece]
        if self.least.get(piece, 0.0) > limit:
            return self.least[piece]
        cost = _along_and_across(piece, self.obstacles, limit)
        (self.least if cost > limit else self.known)[piece] = cost
        return cost


def _along_and_across(piece: Segment, obstacles: Sequence[Obstacle], limit: float = inf) -> float:
    """Return what a piece costs for all that it crosses or runs along; counting stops at the limit."""
    left, low, right, high = _spread(piece)
    left, low, right, high = left - _BESIDE, low - _BESIDE, right + _BESIDE, high + _BESIDE
    cost = 0.0
    for each in obstacles:
        x0, y0, x1, y1 = each.box
        if x1 < left or x0 > right or y1 < low or y0 > high:  # most lie apart
            continue
        if cost > limit:
            break
        if each.kind == "line":  # of which a chart has hundreds
            if each.runs_along(piece) and each.crossed_by(piece):
                cost += _ALONG_LINE
        elif each.beside(piece, _BESIDE):
            cost += _ALONG
        elif each.crossed_by(piece):
            cost += _WEIGHT[each.kind]
    return cost


def _cost(
    leader: Sequence[Point],
    standing: _Standing,
    texts: Sequence[Obstacle],
    taken: Sequence[tuple[Segment, Box]],
    anchors: Sequence[Point],
    limit: float,
) -> float:
    """Return how badly a leader runs; counting stops at the limit, beyond which it does not matter."""
    ways = pieces(leader)
    cost = 0.0
    for piece in ways:
        cost += standing.cost(piece, limit - cost)
        if cost > limit:
            return cost
    for x, y in leader[1:]:  # no other leader passes where this one ends, or touches it where it bends
        ends = (x, y) == leader[-1]
        left, right, low, high = x - _ANCHOR_CLEAR, x + _ANCHOR_CLEAR, y - _ANCHOR_CLEAR, y + _ANCHOR_CLEAR
        for other, (x0, y0, x1, y1) in taken:
            if x0 < right and x1 > left and y0 < high and y1 > low:
                away = off((x, y), other)
                if away < _ANCHOR_CLEAR:
                    cost += _near_end(away) if ends else _NEAR_KNEE
    for piece in ways:
        left, low, right, high = _spread(piece)
        for other, (x0, y0, x1, y1) in taken:
            apart = x1 < left or x0 > right or y1 < low or y0 > high  # as most are
            if not apart and cross(piece, other):
                cost += _CROSSING
        if cost > limit:
            return cost
        cost += _along_and_across(piece, texts)
        left, right, low, high = left - _ANCHOR_CLEAR, right + _ANCHOR_CLEAR, low - _ANCHOR_CLEAR, high + _ANCHOR_CLEAR
        for anchor in anchors:
            if left < anchor[0] < right and low < anchor[1] < high:
                away = off(anchor, piece)
                if away < _ANCHOR_CLEAR:
                    cost += _near_end(away)
    return cost


def _near_end(away: float) -> float:
    """Return what it costs that a leader passes so far from another one's end."""
    return _NEAR_ANCHOR + (_ON_ANCHOR if away < _TOUCHING else 0.0)

"""Where labels stand: in columns with leaders, or near their item.

Sheet millimetres.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations
from math import dist

from hubwright.drawing.columns import LEAST_GAP, Entry, arrange, knee, spread, start
from hubwright.drawing.geometry import Box, Segment, cross, meets, off, overlap
from hubwright.drawing.leaders import clear_leaders, pieces
from hubwright.drawing.near import place_near
from hubwright.drawing.obstacles import Align, Ground, Obstacle, Placed, Wanted
from hubwright.scenes.vocabulary import Column, Point, Scene

_THROUGH = 0.3  # by how much words may meet words or leaders
_ANCHOR = 0.7  # half the room around a point to which a leader goes, which others keep out of
_CROSSING = 150.0  # what a leader costs for each that it crosses when labels look for a second place
_PASSING = 0.45  # between where a leader ends and another one that passes there
_TRIES = 4  # pairs of labels that change places for the sake of their leaders


def place_labels(wanted: Sequence[Wanted], scene: Scene, ground: Ground) -> list[Placed]:
    """Return every label in its place: columns first, then the near ones in the order given."""
    placed: list[Placed] = []
    by_column: dict[int, list[Wanted]] = {}
    near: list[Wanted] = []
    for each in wanted:
        column = _column_of(each, scene.columns)
        if column is None:
            near.append(each)
        else:
            by_column.setdefault(column, []).append(each)
    for each in wanted:
        x, y = each.point
        box = (x - _ANCHOR, y - _ANCHOR, x + _ANCHOR, y + _ANCHOR)
        ground.obstacles.append(Obstacle(each.name, "anchor", box))
    for index, members in sorted(by_column.items()):
        placed += _in_column(members, scene.columns[index], scene.size)
    ground.obstacles += [Obstacle(each.wanted.name, "text", each.box) for each in placed]
    cleared: list[Placed] = []
    for index, members in sorted(by_column.items()):
        own = [each for each in placed if each.wanted in members]
        cleared += _untangled(own, scene.columns[index], scene.size, ground)
    for found in cleared:
        ground.obstacles += [_leader_obstacle(found, piece) for piece in pieces(found.leader)]
    for each in near:
        cleared.append(_stand(each, ground))
    return _parted(cleared, near, ground)


def _stand(wanted: Wanted, ground: Ground, *, through: float | None = None) -> Placed:
    """Return a label in its place near its item, which others keep off from then on."""
    found = place_near(wanted, ground) if through is None else place_near(wanted, ground, through=through)
    ground.obstacles.append(Obstacle(wanted.name, "text", found.box))
    ground.obstacles += [_leader_obstacle(found, piece) for piece in pieces(found.leader)]
    return found


def _parted(placed: list[Placed], near: Sequence[Wanted], ground: Ground) -> list[Placed]:
    """Return labels of which those near their items look for new places, one by one or two, until no leaders cross."""
    pairs = _crossings(placed)
    for _ in range(_TRIES):
        for pair in pairs:
            movable = [wanted for wanted in pair if wanted in near]
            for moved in (*((one,) for one in movable), movable, movable[::-1]):
                before = list(ground.obstacles)
                names = {wanted.name for wanted in moved}
                ground.obstacles[:] = [
                    each for each in before if each.kind not in ("text", "leader") or each.name not in names
                ]
                again = {wanted.name: _stand(wanted, ground, through=_CROSSING) for wanted in moved}
                tried = [again.get(each.wanted.name, each) for each in placed]
                if len(_crossings(tried)) < len(pairs):
                    break
                ground.obstacles[:] = before
            else:
                continue
            placed, pairs = tried, _crossings(tried)
            break
        else:
            break
    return placed


def _leader_obstacle(placed: Placed, piece: tuple[float, float, float, float]) -> Obstacle:
    box = (min(piece[0], piece[2]), min(piece[1], piece[3]), max(piece[0], piece[2]), max(piece[1], piece[3]))
    return Obstacle(placed.wanted.name, "leader", box, piece)


def _column_of(wanted: Wanted, columns: Sequence[Column]) -> int | None:
    """Return the nearest column of the side asked for, one that has the item on its inner side if possible."""
    if wanted.balloon or not wanted.label.place.endswith("column"):
        return None
    side = wanted.label.place.split()[0]
    fitting = [(i, column) for i, column in enumerate(columns) if column.side == side]
    if not fitting:
        return None
    sign = 1.0 if side == "left" else -1.0

    def distance(column: Column) -> float:
        ahead = sign * (wanted.point[0] - column.x)
        return ahead if ahead >= 0 else 1000.0 - ahead

    return min(fitting, key=lambda pair: distance(pair[1]))[0]


def _roomy(column: Column, members: Sequence[Wanted], size: Point) -> Column:
    """Return a column grown toward the edges of the sheet if its labels would not fit."""
    missing = sum(each.height for each in members) + LEAST_GAP * (len(members) - 1) - (column.high - column.low)
    if missing <= 0:
        return column
    top = size[1] - 1.0
    up = min(missing, max(top - column.high, 0.0))
    return replace(column, high=column.high + up, low=column.low - (missing - up))


def _untangled(members: Sequence[Placed], column: Column, size: Point, ground: Ground) -> list[Placed]:
    """Return labels of one column with clear leaders; those whose leaders still cross change places if that helps."""
    best = clear_leaders(members, column, ground.obstacles)
    pairs = _crossings(best)
    own = {each.wanted.name for each in members}
    others = [each for each in ground.obstacles if each.kind != "text" or each.name not in own]
    for _ in range(_TRIES):
        for first, second in pairs:
            order = sorted((each.wanted for each in best), key=lambda wanted: -_top(best, wanted))
            i, j = order.index(first), order.index(second)
            order[i], order[j] = order[j], order[i]
            tried = clear_leaders(_in_column(order, column, size, in_order=True), column, others)
            if len(_crossings(tried)) < len(pairs):
                best, pairs = tried, _crossings(tried)
                break
        else:
            break
    ground.obstacles[:] = [*others, *(Obstacle(each.wanted.name, "text", each.box) for each in best)]
    return best


def _crossings(placed: Sequence[Placed]) -> list[tuple[Wanted, Wanted]]:
    """Return the pairs of labels whose words or leaders meet, or of which one's leader ends on the other's."""
    known = []
    for each in placed:
        core, leader = _core(each), pieces(each.leader)
        xs = [core[0], core[2], *(x for x, _ in each.leader)]
        ys = [core[1], core[3], *(y for _, y in each.leader)]
        known.append((each.wanted, core, leader, (min(xs), min(ys), max(xs), max(ys))))
    return [
        (first, second)
        for (first, one, ways, reach), (second, two, others, its_reach) in combinations(known, 2)
        if overlap(reach, its_reach)
        and (
            overlap(one, two)
            or any(cross(a, b) for a in ways for b in others)
            or any(meets(piece, two) for piece in ways)
            or any(meets(piece, one) for piece in others)
            or _ends_on(ways, others)
            or _ends_on(others, ways)
        )
    ]


def _ends_on(leader: Sequence[Segment], other: Sequence[Segment]) -> bool:
    """Return whether a leader begins or ends on another one, unless both end there."""
    if not leader or not other or dist(leader[-1][2:], other[-1][2:]) < _PASSING:
        return False
    return any(off(end, piece) < _PASSING for end in (leader[0][:2], leader[-1][2:]) for piece in other)


def _core(placed: Placed) -> Box:
    x0, y0, x1, y1 = placed.box
    return x0 + _THROUGH, y0 + _THROUGH, x1 - _THROUGH, y1 - _THROUGH


def _top(placed: Sequence[Placed], wanted: Wanted) -> float:
    return next(each.top for each in placed if each.wanted is wanted)


def _in_column(members: Sequence[Wanted], column: Column, size: Point, *, in_order: bool = False) -> list[Placed]:
    column = _roomy(column, members, size)
    entries = [Entry(each.point, each.height, each.label.nudge[1]) for each in members]
    heights = spread(entries, column) if in_order else arrange(entries, column)
    placed = []
    for each, height in zip(members, heights, strict=True):
        left = column.x - each.width if column.side == "left" else column.x
        leader = (start(column, height), knee(column, height), each.point)
        align: Align = "right" if column.side == "left" else "left"
        placed.append(Placed(each, left, height + each.height / 2, align, leader))
    return placed

"""Labels that stand near their item: places tried in order, the first free one taken.

Sheet millimetres.
"""

from __future__ import annotations

from collections.abc import Iterator

from hubwright.drawing.geometry import Box, Segment, overlap
from hubwright.drawing.obstacles import Align, Ground, Obstacle, Placed, Wanted
from hubwright.scenes.vocabulary import Point

_GAP = 1.6  # from an item to its label
_FAR = (5.0, 9.0, 14.0, 20.0)  # rings of places with a leader
_BALLOON_FAR = (5.2, 7.0, 9.5, 14.0, 20.0)
_ROUND = ((1, 0.6), (-1, 0.6), (1, -0.6), (-1, -0.6), (1, 0.0), (-1, 0.0), (0.2, 1), (0.2, -1))
_RING = (*_ROUND, (0.4, 1), (-0.4, 1), (0.4, -1), (-0.4, -1), (1, 0.25), (-1, 0.25), (1, -0.25), (-1, -0.25))
_RANK = 0.3  # what a place costs for each better one that was refused
_LEADER_THROUGH = 30.0
_SIDES = {
    "left": ("left", "right", "above", "below"),
    "right": ("right", "left", "above", "below"),
    "above": ("above", "right", "left", "below"),
    "below": ("below", "right", "left", "above"),
    "tail": ("tail", "right", "left", "above", "below"),
}


def place_near(wanted: Wanted, ground: Ground, *, through: float = _LEADER_THROUGH) -> Placed:
    """Return a label in the first free place of those that it would take, else in the least bad one.

    `through` is what a leader costs for each text, head of an arrow or other leader that it runs through.
    """
    around = _reach(wanted)
    among = [obstacle for obstacle in ground.obstacles if overlap(obstacle.box, around)]
    best: tuple[float, Placed] | None = None
    for rank, candidate in enumerate(_places(wanted)):
        taken = ground.cost(candidate.box, wanted.owner, among)
        if candidate.leader:
            taken += through * _leader_hits(candidate, among)
        if best is None or taken + _RANK * rank < best[0]:
            best = taken + _RANK * rank, candidate
        if taken == 0:
            break
    assert best is not None
    return best[1]


def _reach(wanted: Wanted) -> Box:
    x0, y0, x1, y1 = wanted.box
    wide, tall = wanted.width + _FAR[-1] + 4, wanted.height + _FAR[-1] + 8
    x, y = wanted.point
    return min(x0, x) - wide, min(y0, y) - tall, max(x1, x) + wide, max(y1, y) + tall


def _leader_hits(placed: Placed, among: list[Obstacle]) -> int:
    begin, end = placed.leader
    # the last half millimetre lies on the item that the label names
    length = max(abs(end[0] - begin[0]), abs(end[1] - begin[1]), 1e-9)
    share = max(0.0, 1.0 - 0.5 / length)
    piece: Segment = (*begin, begin[0] + share * (end[0] - begin[0]), begin[1] + share * (end[1] - begin[1]))
    owner = placed.wanted.owner
    others = [each for each in among if each.kind in ("text", "head", "leader") and each.name != owner]
    return sum(1 for each in others if each.crossed_by((*begin, *end) if each.kind == "leader" else piece))


def _places(wanted: Wanted) -> Iterator[Placed]:
    """Yield places from the best on: as asked, the other sides, then farther off with a leader."""
    if wanted.balloon and wanted.tail is None:
        yield from _ringed(wanted)
        return
    sides = _SIDES[wanted.label.place.split()[0]]
    if wanted.label.nudge != (0.0, 0.0):
        yield from _beside(wanted, sides[0], wanted.label.nudge)
    for side in sides if not wanted.callout else ():
        yield from _beside(wanted, side, (0.0, 0.0))
    gap = 0.0 if wanted.callout else 0.8
    for far in _FAR:
        for x, y in wanted.points:
            for dx, dy in _ROUND:
                middle = (x + dx * far, y + dy * far)
                rightward = dx > 0
                left = middle[0] if rightward else middle[0] - wanted.width
                begin = (middle[0] - gap if rightward else middle[0] + gap, middle[1])
                align: Align = "left" if rightward else "right"
                yield Placed(wanted, left, middle[1] + wanted.height / 2, align, (begin, (x, y)))


def _ringed(wanted: Wanted) -> Iterator[Placed]:
    """Yield places of a letter around the point that it names, its leader from the middle of its ring."""
    radius = wanted.balloon
    for far in _BALLOON_FAR:
        for x, y in wanted.points:
            for dx, dy in _RING:
                length = (dx * dx + dy * dy) ** 0.5
                centre = (x + dx / length * far, y + dy / length * far)
                yield Placed(wanted, centre[0] - radius, centre[1] + radius, "centre", (centre, (x, y)))


def _beside(wanted: Wanted, side: str, nudge: Point) -> Iterator[Placed]:
    """Yield places on one side of the item, sliding along it."""
    x0, y0, x1, y1 = wanted.box
    width, height = wanted.width, wanted.height
    if side == "tail":
        if wanted.tail is None:
            return
        (x, y), (dx, dy) = wanted.tail
        if abs(dy) >= abs(dx):
            top = y - _GAP if dy < 0 else y + _GAP + height + wanted.drop
            yield Placed(wanted, x - width / 2 + nudge[0], top + nudge[1], "centre")
        else:
            left = x + _GAP if dx > 0 else x - _GAP - width
            yield Placed(wanted, left + nudge[0], y + height / 2 + nudge[1], "left" if dx > 0 else "right")
        return
    if side in ("left", "right"):
        left = x1 + _GAP if side == "right" else x0 - _GAP - width
        align: Align = "left" if side == "right" else "right"
        span = max(y1 - y0 - height, 0.0) if wanted.tail is not None else 0.0
        shares = (0.0, -0.25, 0.25, -0.5, 0.5) if span else (0.0,)
        for share in shares:
            level = (y0 + y1) / 2 + share * span
            yield Placed(wanted, left + nudge[0], level + height / 2 + nudge[1], align)
        return
    top = y1 + _GAP + height + wanted.drop if side == "above" else y0 - _GAP
    for x in ((x0 + x1) / 2, x0 + width / 2, x1 - width / 2):
        yield Placed(wanted, x - width / 2 + nudge[0], top + nudge[1], "centre")

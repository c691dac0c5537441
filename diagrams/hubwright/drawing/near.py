"""Labels that stand near their item: places tried in order, the first free one taken.

Sheet millimetres.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain
from math import hypot, inf

from hubwright.drawing.geometry import Box, Segment, grown, meets, off, overlap
from hubwright.drawing.obstacles import WEIGHT, Align, Ground, Kind, Obstacle, Placed, Wanted
from hubwright.scenes.vocabulary import Point

_GAP = 1.6  # from an item to its label
_FAR = (5.0, 9.0, 14.0, 20.0)  # rings of places with a leader
_FARTHER = (7.0, 11.5, 17.0, 25.0, 33.0, 42.0)  # where none of these is free
_BALLOON_FAR = (5.2, 7.0, 9.5, 14.0, 20.0)
_BALLOON_FARTHER = (6.0, 8.2, 11.5, 17.0, 25.0, 33.0)
_ROUND = ((1, 0.6), (-1, 0.6), (1, -0.6), (-1, -0.6), (1, 0.0), (-1, 0.0), (0.2, 1), (0.2, -1))
_RING = (*_ROUND, (0.4, 1), (-0.4, 1), (0.4, -1), (-0.4, -1), (1, 0.25), (-1, 0.25), (1, -0.25), (-1, -0.25))
_RANK, _LENGTH = 0.3, 0.6  # what a place costs for each better one beside the item, or for a millimetre of leader
_OTHER_POINT, _OTHER_WAY = 0.3, 0.1
_LEADER_THROUGH = 30.0
# what a leader costs that crosses one of these, or runs along a line
_ACROSS: dict[Kind, float] = {"shaft": 12.0, "mark": 12.0, "anchor": 12.0, "dimension": 3.0}
_ACROSS_ALL = 60.0  # what all of these cost at most: less than words on words
# what it costs to run along an arrow or a line, and how near a leader does not run beside one
_ALONG, _ALONG_LINE, _BESIDE = 60.0, 25.0, 0.6
_SAME, _PASSING = 0.4, 0.6  # between the ends of leaders; between one's end and another leader
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
    best: tuple[float, Placed] | None = None
    for reach, places in ((_FAR[-1], _places(wanted)), (_FARTHER[-1], _farther(wanted))):
        around = _reach(wanted, reach)
        among = [obstacle for obstacle in ground.obstacles if overlap(obstacle.box, around)]
        among.sort(key=lambda obstacle: -WEIGHT[obstacle.kind])  # so that counting soon comes to its limit
        for worse, candidate in places:
            if best is not None and worse >= best[0]:
                continue
            limit = inf if best is None else best[0] - worse
            taken = ground.cost(candidate.box, wanted.owner, among, limit=limit)
            if candidate.leader and taken < limit:
                taken += _leader_cost(candidate, among, through, limit - taken)
            if best is None or taken + worse < best[0]:
                best = taken + worse, candidate
            if taken == 0:
                break
        if best is not None and best[0] < WEIGHT["line"]:
            break
    assert best is not None
    return best[1]


def _reach(wanted: Wanted, far: float) -> Box:
    x0, y0, x1, y1 = wanted.box
    wide, tall = wanted.width + far + 4, wanted.height + far + 8
    x, y = wanted.point
    return min(x0, x) - wide, min(y0, y) - tall, max(x1, x) + wide, max(y1, y) + tall


def _leader_cost(placed: Placed, among: list[Obstacle], through: float, limit: float) -> float:
    """Return what a leader costs for all that it runs through, or along; counting stops at the limit."""
    begin, end = placed.leader
    # the last half millimetre lies on the item that the label names
    length = max(abs(end[0] - begin[0]), abs(end[1] - begin[1]), 1e-9)
    share = max(0.0, 1.0 - 0.5 / length)
    whole: Segment = (*begin, *end)
    piece: Segment = (*begin, begin[0] + share * (end[0] - begin[0]), begin[1] + share * (end[1] - begin[1]))
    cost, across = 0.0, 0.0
    left, right = min(begin[0], end[0]) - _BESIDE, max(begin[0], end[0]) + _BESIDE
    low, high = min(begin[1], end[1]) - _BESIDE, max(begin[1], end[1]) + _BESIDE
    for each in among:
        x0, y0, x1, y1 = each.box
        if x1 < left or x0 > right or y1 < low or y0 > high:  # most lie apart
            continue
        if cost > limit:
            return cost
        if each.name in (placed.wanted.owner, placed.wanted.name):
            continue
        if each.kind == "leader":
            cost += through * (each.crossed_by(whole) or _ends_beside(whole, each.segment))
        elif each.kind == "line":
            reached = each.crossed_by(piece) if each.segment else meets(piece, grown(each.box, _BESIDE))
            cost += _ALONG_LINE * (reached and each.runs_along(piece))
        elif each.beside(piece, _BESIDE):
            cost += _ALONG
        elif each.kind == "frame" or not each.crossed_by(piece):
            continue
        elif each.kind in ("text", "head"):
            cost += through if each.kind == "text" else _LEADER_THROUGH
        elif each.kind != "anchor":
            across += _ACROSS.get(each.kind, 0.0)
        elif not _is_at(end, each.box):
            across += _ACROSS["anchor"]
    return cost + min(across, _ACROSS_ALL)


def _ends_beside(leader: Segment, other: Segment | None) -> bool:
    """Return whether one of two leaders passes where the other ends, unless both end there."""
    if other is None or hypot(leader[2] - other[2], leader[3] - other[3]) < _SAME:
        return False
    return off(leader[2:], other) < _PASSING or off(other[2:], leader) < _PASSING


def _is_at(point: Point, anchor: Box) -> bool:
    """Return whether a leader ends at another's point itself, as those of two labels of one place do."""
    return hypot(point[0] - (anchor[0] + anchor[2]) / 2, point[1] - (anchor[1] + anchor[3]) / 2) < _SAME


def _places(wanted: Wanted) -> Iterator[tuple[float, Placed]]:
    """Yield places from the best on, with what each costs: as asked, the other sides, farther off with a leader."""
    if wanted.balloon and wanted.tail is None:
        yield from _ringed(wanted, _BALLOON_FAR, _RING)
        return
    sides = _SIDES[wanted.label.place.split()[0]]
    x, y = (0.0, 0.0) if wanted.balloon else wanted.label.nudge  # which suits words, not a letter
    beside = [_beside(wanted, sides[0], (x, y))] if (x, y) != (0.0, 0.0) else []
    if x and sides[0] in ("left", "right"):  # as far off on the other side
        beside.append(_beside(wanted, sides[1], (-x, y)))
    beside += [_beside(wanted, side, (0.0, 0.0)) for side in sides if not wanted.callout]
    for rank, placed in enumerate(chain.from_iterable(beside)):
        yield _RANK * rank, placed
    yield from _led(wanted, _FAR, _ROUND)


def _farther(wanted: Wanted) -> Iterator[tuple[float, Placed]]:
    """Yield more places with a leader, farther off and in more directions."""
    if wanted.balloon and wanted.tail is None:
        yield from _ringed(wanted, _BALLOON_FARTHER, _RING)
    else:
        yield from _led(wanted, _FARTHER, _RING)


def _led(wanted: Wanted, rings: Sequence[float], ways: Sequence[Point]) -> Iterator[tuple[float, Placed]]:
    """Yield places of words with a leader around the points at which it may end."""
    gap = 0.0 if wanted.callout else 0.8
    for far in rings:
        for p, (x, y) in enumerate(wanted.points):
            for way, (dx, dy) in enumerate(ways):
                middle = (x + dx * far, y + dy * far)
                rightward = dx > 0
                left = middle[0] if rightward else middle[0] - wanted.width
                begin = (middle[0] - gap if rightward else middle[0] + gap, middle[1])
                align: Align = "left" if rightward else "right"
                worse = _LENGTH * far + _OTHER_POINT * p + _OTHER_WAY * way
                yield worse, Placed(wanted, left, middle[1] + wanted.height / 2, align, (begin, (x, y)))


def _ringed(wanted: Wanted, rings: Sequence[float], ways: Sequence[Point]) -> Iterator[tuple[float, Placed]]:
    """Yield places of a letter around the points that it names, its leader from the middle of its ring."""
    radius = wanted.balloon
    for far in rings:
        for p, (x, y) in enumerate(wanted.points):
            for way, (dx, dy) in enumerate(ways):
                length = (dx * dx + dy * dy) ** 0.5
                centre = (x + dx / length * far, y + dy / length * far)
                worse = _LENGTH * far + _OTHER_POINT * p + _OTHER_WAY * way
                yield worse, Placed(wanted, centre[0] - radius, centre[1] + radius, "centre", (centre, (x, y)))


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

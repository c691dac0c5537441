"""What labels keep off, and labels before and after they have their place.

Sheet millimetres. An obstacle has a weight: another text above all, then heads of arrows, shafts, leaders, dimension
lines, frames and load lines.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from math import hypot, inf
from typing import Literal

from hubwright.drawing.faces import DROP, Block
from hubwright.drawing.geometry import Box, Segment, apart, cross, grown, meets, overlap
from hubwright.scenes.vocabulary import Label, Point

Kind = Literal["text", "head", "shaft", "mark", "dimension", "frame", "line", "leader", "anchor", "base"]
Align = Literal["left", "centre", "right"]
Callout = Literal["", "ring", "frame"]
WEIGHT: dict[Kind, float] = {
    "text": 100.0,
    "head": 60.0,
    "shaft": 60.0,
    "mark": 40.0,
    "dimension": 40.0,
    "frame": 45.0,
    "line": 12.0,
    "leader": 40.0,
    "anchor": 8.0,
    "base": 0.0,  # of an arrow's head: only a leader along it would hide it
}
_OFF_SHEET = 200.0
_MARGIN = 1.5  # between the words of a framed remark and its frame
_PARALLEL = 0.2  # sine of the angle below which a leader runs along a line
_CLEAR = 0.5  # between a label and what it keeps off


@dataclass(frozen=True, slots=True)
class Obstacle:
    """Something that labels keep off: a box, or a segment with its box."""

    name: str
    kind: Kind
    box: Box
    segment: Segment | None = None

    def hit(self, box: Box, margin: float = 0.0) -> bool:
        """Return whether a box stands on it."""
        if not overlap(box, self.box, margin):
            return False
        if self.segment is None:
            return True
        if self.kind in ("mark", "shaft"):  # an arc or a shaft has its width all along, a head only at its base
            margin += self.half
        return any(meets(line, grown(box, margin)) for line in self.lines)

    @property
    def from_neck_to_tip(self) -> Obstacle:
        """Return a level or upright head without the room before its tip and behind its neck."""
        x0, y0, x1, y1 = self.box
        if self.segment is not None or abs((x1 - x0) - (y1 - y0)) < _CLEAR:
            return self
        half = min(x1 - x0, y1 - y0) / 2
        box = (x0 + half, y0, x1 - half, y1) if x1 - x0 > y1 - y0 else (x0, y0 + half, x1, y1 - half)
        return replace(self, box=box)

    @property
    def half(self) -> float:
        """Return half the width of a slanting one."""
        return 0.0 if self.segment is None else min(self.segment[0], self.segment[2]) - self.box[0]

    @property
    def lines(self) -> tuple[Segment, ...]:
        """Return the lines of a slanting one: its own, and both sides of a head."""
        if self.segment is None:
            return ()
        return (self.segment, *_slopes(self.segment, self.half)) if self.kind == "head" else (self.segment,)

    def crossed_by(self, segment: Segment) -> bool:
        """Return whether a line passes through it."""
        x0, y0, x1, y1 = segment
        box = self.box
        if max(x0, x1) < box[0] or min(x0, x1) > box[2] or max(y0, y1) < box[1] or min(y0, y1) > box[3]:
            return False
        if self.segment is None:
            return meets(segment, box)
        if self.kind != "head":  # as most are
            return cross(segment, self.segment)
        return any(cross(segment, line) for line in self.lines)

    def runs_along(self, segment: Segment) -> bool:
        """Return whether a line that passes through it has nearly its direction; only arrows and lines have one."""
        if self.kind not in ("shaft", "line", "base"):
            return False
        return _parallel(segment, self.segment or _axis(self.box))

    def beside(self, segment: Segment, margin: float) -> bool:
        """Return whether a line runs along it, or along a side of a head, so near that the two look like one."""
        if self.kind not in ("shaft", "line", "base", "head"):
            return False
        lines = self.lines or (_sides(self.box) if self.kind == "head" else (_axis(self.box),))
        return any(_parallel(segment, line) and apart(segment, line) < margin + self._half_width for line in lines)

    @property
    def _half_width(self) -> float:
        """Return how far it reaches to either side of its line; a head's lines are its sides."""
        if self.kind == "head":
            return 0.0
        x0, y0, x1, y1 = self.box
        return min(x1 - x0, y1 - y0) / 2 if self.segment is None else self.half


def _parallel(one: Segment, other: Segment) -> bool:
    dx, dy, wide, high = one[2] - one[0], one[3] - one[1], other[2] - other[0], other[3] - other[1]
    return abs(dx * high - dy * wide) < _PARALLEL * hypot(dx, dy) * hypot(wide, high)


def _axis(box: Box) -> Segment:
    """Return the middle line of a level or upright box."""
    x0, y0, x1, y1 = box
    middle = (x0 + x1) / 2, (y0 + y1) / 2
    return (x0, middle[1], x1, middle[1]) if x1 - x0 > y1 - y0 else (middle[0], y0, middle[0], y1)


def _sides(box: Box) -> tuple[Segment, ...]:
    """Return the sides of a level or upright head, whichever way it points."""
    x0, y0, x1, y1 = box
    half = min(x1 - x0, y1 - y0) / 2  # its room is as wide along it as across
    if x1 - x0 > y1 - y0:
        middle, x0, x1 = (y0 + y1) / 2, x0 + half, x1 - half
        return tuple((back, y, tip, middle) for back, tip in ((x0, x1), (x1, x0)) for y in (y0, y1))
    middle, y0, y1 = (x0 + x1) / 2, y0 + half, y1 - half
    return tuple((x, back, middle, tip) for back, tip in ((y0, y1), (y1, y0)) for x in (x0, x1))


def _slopes(axis: Segment, half: float) -> tuple[Segment, Segment]:
    """Return the two sides of a head from its base, so wide to either side of its axis, to its tip."""
    x0, y0, x1, y1 = axis
    length = hypot(x1 - x0, y1 - y0) or 1.0
    across, up = -(y1 - y0) / length * half, (x1 - x0) / length * half
    return (x0 + across, y0 + up, x1, y1), (x0 - across, y0 - up, x1, y1)


@dataclass(frozen=True, slots=True)
class Wanted:
    """A label that asks for a place: points where its leader may end, the box beside which it may stand, its tail."""

    name: str
    owner: str
    label: Label
    block: Block
    points: tuple[Point, ...]
    box: Box
    tail: tuple[Point, Point] | None = None  # a force's tail, and the direction that leads away from it
    balloon: float = 0.0  # radius of the ring in which a letter stands instead of words
    callout: Callout = ""  # what points at its place, and never stands beside it without a leader

    @property
    def margin(self) -> float:
        """Return the width of the edge around framed words."""
        return _MARGIN if self.callout == "frame" and not self.balloon else 0.0

    @property
    def point(self) -> Point:
        """Return the point at which a leader ends unless another is clearer."""
        return self.points[0]

    @property
    def width(self) -> float:
        """Return the width that the label needs."""
        return 2 * self.balloon or self.block.width + 2 * self.margin

    @property
    def height(self) -> float:
        """Return the height that the label needs above its last baseline."""
        return 2 * self.balloon or self.block.height + 2 * self.margin

    @property
    def drop(self) -> float:
        """Return how far the label reaches below its last baseline."""
        return 0.0 if self.balloon else DROP * self.label.size


@dataclass(frozen=True, slots=True)
class Placed:
    """A label in its place: the left edge and top of its block, how its lines align, its leader."""

    wanted: Wanted
    left: float
    top: float
    align: Align
    leader: tuple[Point, ...] = ()
    box: Box = field(init=False)  # of the words, descenders included

    def __post_init__(self) -> None:
        """Reckon the box once: layout asks for it a hundred times."""
        wanted = self.wanted
        box = (self.left, self.top - wanted.height - wanted.drop, self.left + wanted.width, self.top)
        object.__setattr__(self, "box", box)


@dataclass
class Ground:
    """What stands already: the sheet and its obstacles."""

    size: Point
    obstacles: list[Obstacle] = field(default_factory=list)

    def cost(self, box: Box, owner: str = "", among: Iterable[Obstacle] | None = None, *, limit: float = inf) -> float:
        """Return how badly a box for words is taken; near an item's own marks it may stand, but not on them.

        Counting stops at the limit, beyond which it does not matter.
        """
        worst = 0.0
        if box[0] < 1 or box[1] < 1 or box[2] > self.size[0] - 1 or box[3] > self.size[1] - 1:
            worst = _OFF_SHEET
        left, low, right, high = box[0] - _CLEAR, box[1] - _CLEAR, box[2] + _CLEAR, box[3] + _CLEAR
        for obstacle in self.obstacles if among is None else among:
            x0, y0, x1, y1 = obstacle.box
            if x1 <= left or x0 >= right or y1 <= low or y0 >= high:  # most lie apart
                continue
            if obstacle.hit(box, 0.0 if obstacle.name == owner else _CLEAR):
                worst += WEIGHT[obstacle.kind]
                if worst > limit:
                    break
        return worst

"""Where labels stand: in columns with leaders, or near their item at the first place that is free.

Sheet millimetres. What a label keeps off is an obstacle with a weight: another text above all, then heads of arrows,
shafts, dimension lines and load lines.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Literal

from hubwright.drawing.columns import Entry, arrange, knee, start
from hubwright.drawing.faces import DROP, Block
from hubwright.drawing.geometry import Box, Segment, cross, meets, overlap
from hubwright.drawing.marks import Conflict
from hubwright.scenes.vocabulary import Column, Label, Point, Scene

Kind = Literal["text", "head", "shaft", "mark", "dimension", "line"]
Align = Literal["left", "centre", "right"]
WEIGHT: dict[Kind, float] = {"text": 100.0, "head": 60.0, "shaft": 40.0, "mark": 40.0, "dimension": 25.0, "line": 12.0}
FORBIDDEN: tuple[Kind, ...] = ("text", "head", "shaft", "mark", "dimension")
_OFF_SHEET = 200.0
_CLEAR = 0.5  # between a label and what it keeps off
_NEAR = 1.6  # from an item to its label
_FAR = (5.0, 9.0, 14.0, 20.0)  # rings of places with a leader
_TOUCH = 0.35  # boxes that overlap by less are not reported


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
        return meets(self.segment, (box[0] - margin, box[1] - margin, box[2] + margin, box[3] + margin))


@dataclass(frozen=True, slots=True)
class Wanted:
    """A label that asks for a place: the item's point for a leader, the box beside which it may stand, its tail."""

    name: str
    owner: str
    label: Label
    block: Block
    point: Point
    box: Box
    tail: tuple[Point, Point] | None = None  # a force's tail, and the direction that leads away from it


@dataclass(frozen=True, slots=True)
class Placed:
    """A label in its place: the left edge and top of its block, how its lines align, its leader."""

    wanted: Wanted
    left: float
    top: float
    align: Align
    leader: tuple[Point, ...] = ()

    @property
    def box(self) -> Box:
        """Return the box of the words, descenders included."""
        block = self.wanted.block
        return self.left, self.top - block.height - DROP * self.wanted.label.size, self.left + block.width, self.top


@dataclass
class Ground:
    """What stands already: the sheet and its obstacles."""

    size: Point
    obstacles: list[Obstacle] = field(default_factory=list)

    def cost(self, box: Box, owner: str = "") -> float:
        """Return how badly a box for words is taken."""
        worst = 0.0
        if box[0] < 1 or box[1] < 1 or box[2] > self.size[0] - 1 or box[3] > self.size[1] - 1:
            worst = _OFF_SHEET
        for obstacle in self.obstacles:
            if obstacle.hit(box, _CLEAR) and obstacle.name != owner:
                worst += WEIGHT[obstacle.kind]
        return worst


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
    for index, members in sorted(by_column.items()):
        placed += _in_column(members, scene.columns[index])
    ground.obstacles += [Obstacle(each.wanted.name, "text", each.box) for each in placed]
    for each in near:
        found = _near(each, ground)
        ground.obstacles.append(Obstacle(each.name, "text", found.box))
        placed.append(found)
    return placed


def find_conflicts(placed: Sequence[Placed], ground: Ground) -> list[Conflict]:
    """Return labels and texts on one another, on arrows, dimensions or off the sheet, and leaders that cross."""
    conflicts: list[Conflict] = []
    texts = [obstacle for obstacle in ground.obstacles if obstacle.kind == "text"]
    owners = {each.wanted.name: each.wanted.owner for each in placed}
    for i, first in enumerate(texts):
        x0, y0, x1, y1 = first.box
        if x0 < 0 or y0 < 0 or x1 > ground.size[0] or y1 > ground.size[1]:
            conflicts.append(Conflict("off the sheet", first.name))
        inner = (x0 + _TOUCH, y0 + _TOUCH, x1 - _TOUCH, y1 - _TOUCH)
        conflicts += [Conflict("texts overlap", first.name, other.name) for other in texts[i + 1 :] if other.hit(inner)]
        for other in ground.obstacles:
            if (
                other.kind in FORBIDDEN
                and other.kind != "text"
                and other.name not in (first.name, owners.get(first.name))
                and other.hit(inner)
            ):
                conflicts.append(Conflict(f"text on {other.kind}", first.name, other.name))
    leaders = [(each.wanted.name, piece) for each in placed for piece in _pieces(each.leader)]
    for i, (name, piece) in enumerate(leaders):
        conflicts += [
            Conflict("leaders cross", name, other)
            for other, second in leaders[i + 1 :]
            if other != name and cross(piece, second)
        ]
    return conflicts


def _pieces(leader: tuple[Point, ...]) -> list[Segment]:
    return [(*a, *b) for a, b in pairwise(leader)]


def _column_of(wanted: Wanted, columns: Sequence[Column]) -> int | None:
    """Return the nearest column of the side asked for, that the label's item lies on the right side of if possible."""
    if not wanted.label.place.endswith("column"):
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


def _in_column(members: Sequence[Wanted], column: Column) -> list[Placed]:
    heights = arrange([Entry(each.point, each.block.height) for each in members], column)
    placed = []
    for each, height in zip(members, heights, strict=True):
        left = column.x - each.block.width if column.side == "left" else column.x
        leader = (start(column, height), knee(column, height), each.point)
        align: Align = "right" if column.side == "left" else "left"
        placed.append(Placed(each, left, height + each.block.height / 2, align, leader))
    return placed


def _near(wanted: Wanted, ground: Ground) -> Placed:
    """Return the first free place of those that a label would take, else the least bad one."""
    best: tuple[float, Placed] | None = None
    for rank, candidate in enumerate(_places(wanted)):
        cost = ground.cost(candidate.box, wanted.owner) + 0.3 * rank
        if best is None or cost < best[0]:
            best = cost, candidate
        if cost - 0.3 * rank == 0:
            break
    assert best is not None
    return best[1]


def _places(wanted: Wanted) -> Iterator[Placed]:
    """Yield places from the best on: as asked, the other sides, then farther off with a leader."""
    asked = wanted.label.place.split()[0]
    sides = {
        "left": ("left", "right", "above", "below"),
        "right": ("right", "left", "above", "below"),
        "above": ("above", "right", "left", "below"),
        "below": ("below", "right", "left", "above"),
        "tail": ("tail", "right", "left", "above", "below"),
    }[asked]
    nudge = wanted.label.nudge
    yield from _beside(wanted, sides[0], _NEAR, nudge)
    for side in sides:
        yield from _beside(wanted, side, _NEAR, (0.0, 0.0))
    x, y = wanted.point
    block = wanted.block
    for far in _FAR:
        for dx, dy in ((1, 0.6), (-1, 0.6), (1, -0.6), (-1, -0.6), (1, 0), (-1, 0), (0.2, 1), (0.2, -1)):
            middle = (x + dx * far, y + dy * far)
            rightward = dx > 0
            left = middle[0] if rightward else middle[0] - block.width
            begin = (middle[0] - 0.8 if rightward else middle[0] + 0.8, middle[1])
            yield Placed(
                wanted, left, middle[1] + block.height / 2, "left" if rightward else "right", (begin, wanted.point)
            )


def _beside(wanted: Wanted, side: str, gap: float, nudge: Point) -> Iterator[Placed]:
    """Yield places on one side of the item, sliding along it."""
    x0, y0, x1, y1 = wanted.box
    width, height = wanted.block.width, wanted.block.height
    if side == "tail":
        if wanted.tail is None:
            return
        (x, y), (dx, dy) = wanted.tail
        if abs(dy) >= abs(dx):
            top = y - gap if dy < 0 else y + gap + height + DROP * wanted.label.size
            yield Placed(wanted, x - width / 2 + nudge[0], top + nudge[1], "centre")
        else:
            left = x + gap if dx > 0 else x - gap - width
            yield Placed(wanted, left + nudge[0], y + height / 2 + nudge[1], "left" if dx > 0 else "right")
        return
    if side in ("left", "right"):
        left = x1 + gap if side == "right" else x0 - gap - width
        align: Align = "left" if side == "right" else "right"
        span = max(y1 - y0 - height, 0.0)
        levels = [(y0 + y1) / 2 + share * span for share in (0.0, -0.25, 0.25, -0.5, 0.5)]
        if wanted.tail is None or span == 0.0:
            levels = [(y0 + y1) / 2]
        for level in levels:
            yield Placed(wanted, left + nudge[0], level + height / 2 + nudge[1], align)
        return
    top = y1 + gap + height + DROP * wanted.label.size if side == "above" else y0 - gap
    for x in ((x0 + x1) / 2, x0 + width / 2, x1 - width / 2):
        yield Placed(wanted, x - width / 2 + nudge[0], top + nudge[1], "centre")

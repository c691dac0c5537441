"""Columns of labels left and right of a drawing: heights with a least gap, and leaders that do not cross.

Heights are placed by pooling neighbours that would stand too near (one-dimensional minimum-gap placement); then pairs
whose leaders cross change places. Sorting by height alone leaves crossings: anchors lie at unlike distances.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from hubwright.drawing.geometry import Segment, cross
from hubwright.scenes.vocabulary import Column, Point

GAP, LEAST_GAP = 3.4, 1.8  # between blocks, sheet millimetres
STAND_OFF, ELBOW = 1.1, 2.5  # from text to leader, and the leader's level part
_ROUNDS = 60


@dataclass(frozen=True, slots=True)
class Entry:
    """A label for a column: where its leader ends and how high its block is."""

    anchor: Point
    height: float
    lift: float = 0.0  # how much higher than there the block wishes to stand

    @property
    def wish(self) -> float:
        """Return how high the middle of the block wishes to stand."""
        return self.anchor[1] + self.lift


def arrange(entries: Sequence[Entry], column: Column) -> list[float]:
    """Return the height of each block's middle, in the order given."""
    order = sorted(range(len(entries)), key=lambda i: -entries[i].wish)
    heights: list[float] = []
    for _ in range(_ROUNDS):
        heights = spread([entries[i] for i in order], column)
        pair = _first_crossing([entries[i] for i in order], heights, column)
        if pair is None:
            break
        upper, lower = pair
        order[upper], order[lower] = order[lower], order[upper]
    placed = [0.0] * len(entries)
    for i, height in zip(order, heights, strict=True):
        placed[i] = height
    return placed


def spread(entries: Sequence[Entry], column: Column) -> list[float]:
    """Return heights from top to bottom, each as near its anchor as the gaps allow, all within the column."""
    if not entries:
        return []
    gap = min(GAP, _largest_gap(entries, column))
    offset = [0.0]
    for above, below in pairwise(entries):
        offset.append(offset[-1] + (above.height + below.height) / 2 + gap)
    pools: list[tuple[float, int]] = []  # mean of wished heights with the gaps taken out, members
    for entry, taken in zip(entries, offset, strict=True):
        mean, members = entry.wish + taken, 1
        while pools and pools[-1][0] < mean:
            before, count = pools.pop()
            mean, members = (before * count + mean * members) / (count + members), count + members
        pools.append((mean, members))
    level = [mean for mean, members in pools for _ in range(members)]
    top = column.high - entries[0].height / 2
    bottom = column.low + entries[-1].height / 2
    return [max(min(y, top), bottom + offset[-1]) - taken for y, taken in zip(level, offset, strict=True)]


def knee(column: Column, height: float, reach: float = ELBOW) -> Point:
    """Return where a leader leaves its level part."""
    away = 1.0 if column.side == "left" else -1.0
    return column.x + away * (STAND_OFF + reach), height


def start(column: Column, height: float) -> Point:
    """Return where a leader begins beside its text."""
    return column.x + (STAND_OFF if column.side == "left" else -STAND_OFF), height


def _largest_gap(entries: Sequence[Entry], column: Column) -> float:
    if len(entries) < 2:
        return GAP
    free = column.high - column.low - sum(entry.height for entry in entries)
    return max(free / (len(entries) - 1), LEAST_GAP)


def _first_crossing(entries: Sequence[Entry], heights: Sequence[float], column: Column) -> tuple[int, int] | None:
    leaders: list[Segment] = [
        (*knee(column, height), *entry.anchor) for entry, height in zip(entries, heights, strict=True)
    ]
    for i, first in enumerate(leaders):
        for j in range(i + 1, len(leaders)):
            if cross(first, leaders[j]):
                return i, j
    return None

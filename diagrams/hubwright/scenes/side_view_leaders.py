"""Where the leader of a weight ends whose words stand in a column: off the level edges that it would run along.

View as in `side_view`: real millimetres, x forward, which is leftward on the sheet, z up.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from hubwright.scenes.small_forces import along
from hubwright.scenes.vocabulary import Force, Item, Line, Part, Point, View

_SHARES = (0.3, 0.5, 0.4, 0.6, 0.2)  # of the arrow from its tail, the usual place first
_LEVEL = 0.25  # rise over run of an edge that a level leader seems to run along
_CLEAR = 2.0  # sheet millimetres that are clear enough


def off_edges(items: Sequence[Item], view: View, name: str) -> list[Item]:
    """Return items, the leader of the force of that name where no edge runs level beside it, or least near."""
    return [_led(item, items, view) if item.name == name and isinstance(item, Force) else item for item in items]


def _led(force: Force, items: Sequence[Item], view: View) -> Force:
    """Return a force whose words stand in a column with the point at which their leader ends."""
    if force.label is None or not force.label.place.endswith("column"):
        return force
    forward = force.label.place == "left column"
    heights = [z for x, z in _level_edges(items) if (x > force.at[0]) == forward]

    def off(point: Point) -> float:
        return min(_CLEAR, *(abs(point[1] - z) * view.scale for z in heights)) if heights else _CLEAR

    points = [along(force, view, share) for share in _SHARES]
    return replace(force, label=replace(force.label, anchor=max(points, key=off)))


def _level_edges(items: Sequence[Item]) -> Iterator[Point]:
    """Yield the ends of every nearly level piece of an edge."""
    for item in items:
        rings = item.rings if isinstance(item, Part) else ()
        lines = [(*ring, ring[0]) for ring in rings] + ([item.points] if isinstance(item, Line) else [])
        for a, b in (pair for line in lines for pair in pairwise(line)):
            if abs(b[1] - a[1]) <= _LEVEL * abs(b[0] - a[0]):
                yield from (a, b)

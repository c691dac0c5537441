"""How a region of the wide sheet comes to lie on a narrow one: its scale, from a list, and where its points lie then.

Sheet millimetres.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from hubwright.drawing.geometry import Box
from hubwright.scenes import vocabulary as v

WIDTH = 100.0
_TALLEST = 175.0
_LARGEST = 2.0  # how much a small view may grow
_MARGIN = 9.0  # room for letters outside the drawing
_ROW = 8.0  # from the drawing to the nearest row of dimensions beside it, at most
# one sheet millimetre stands for this many real ones
_RATIOS = (0.2, 0.25, 0.5, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100)


@dataclass(frozen=True, slots=True)
class Fit:
    """How a region of the wide sheet comes to lie on the narrow one; a stack shrinks in its width alone."""

    region: Box
    core: Box  # what is drawn in the views themselves: beyond it, distances keep their size
    shrink: float
    rise: float
    foot: float
    stacked: bool = False
    head: float = 0.0  # room above for what the view is called

    @classmethod
    def of_plot(cls, core: Box, region: Box, *, foot: float, head: float) -> Fit:
        """Return the fit that takes all the room there is in width, with room for words above the drawing."""
        beyond = (region[2] - region[0]) - (core[2] - core[0])
        shrink = (WIDTH - 2 * _MARGIN - beyond) / max(core[2] - core[0], 1.0)
        return cls((*region[:3], max(region[3], core[3] + head - _MARGIN)), core, shrink, 1.0, foot)

    @classmethod
    def of(cls, view: v.View, core: Box, region: Box, *, stacked: bool, foot: float) -> Fit:
        """Return the fit with the largest scale of the list that the sheet has room for."""
        beyond = (region[2] - region[0]) - (core[2] - core[0])
        room = (WIDTH - 2 * _MARGIN - beyond) / max(core[2] - core[0], 1.0)
        if not stacked:
            room = min(room, _TALLEST / (region[3] - region[1]), _LARGEST)
        wanted = 1 / (view.scale * room)
        real = next((ratio for ratio in _RATIOS if ratio >= wanted - 1e-9), wanted)
        shrink = 1 / (real * view.scale)
        return cls(region, core, shrink, 1.0 if stacked else shrink, foot, stacked)

    @property
    def height(self) -> float:
        """Return the height of the narrow sheet."""
        beyond = (self.region[3] - self.region[1]) - (self.core[3] - self.core[1])
        return (self.core[3] - self.core[1]) * self.rise + beyond + 2 * _MARGIN + self.head + self.foot

    def below_top(self, level: float) -> float:
        """Return how far below the top edge a level of the wide sheet lies."""
        return self.height - self.point((0.0, level))[1]

    def point(self, point: tuple[float, float]) -> v.Point:
        """Return where a point of the wide sheet lies on the narrow one."""
        width = (self.core[2] - self.core[0]) * self.shrink
        beyond = self.core[0] - self.region[0], self.region[2] - self.core[2]
        left = (WIDTH - width - sum(beyond)) / 2 + beyond[0]
        low = self.foot + _MARGIN + self.core[1] - self.region[1]
        return left + (point[0] - self.core[0]) * self.shrink, low + (point[1] - self.core[1]) * self.rise

    def level(self, at: float, direction: str) -> float:
        """Return where a dimension line lies: beyond the core it keeps its distance, so that rows stay apart."""
        axis = 1 if direction == "horizontal" else 0
        within = min(max(at, self.core[axis]), self.core[axis + 2])
        return self.point((within, within))[axis] + (at - within)

    def view(self, view: v.View) -> v.View:
        """Return a view as it lies on the narrow sheet."""
        vertical = view.vertical_per_mm
        if vertical is None and self.stacked:  # bars, lines along tails and guides stay as high as arrows
            vertical = 1.0 / view.scale
        return replace(
            view,
            origin=self.point(view.origin),
            scale=view.scale * self.shrink,
            newtons_per_mm=None if view.newtons_per_mm is None else view.newtons_per_mm / self.rise,
            vertical_per_mm=None if vertical is None else vertical / self.rise,
            frame=None if view.frame is None else (*self.point(view.frame[:2]), *self.point(view.frame[2:])),
            title="",
        )


def closer(items: Sequence[v.Item], core: Box) -> tuple[v.Item, ...]:
    """Return items with the rows of dimensions on each side no farther off than they need be; they stay as far apart.

    On the wide sheet another view may stand between.
    """
    result = list(items)
    for direction, axis in (("horizontal", 1), ("vertical", 0)):
        for edge, away in ((core[axis], -1.0), (core[axis + 2], 1.0)):
            rows = {
                number: away * (item.line_at - edge)
                for number, item in enumerate(result)
                if isinstance(item, v.Dimension) and item.direction == direction and away * (item.line_at - edge) > 0
            }
            excess = min(rows.values(), default=0.0) - _ROW
            for number in rows if excess > 0 else ():
                item = result[number]
                assert isinstance(item, v.Dimension)
                result[number] = replace(item, line_at=item.line_at - away * excess)
    return tuple(result)

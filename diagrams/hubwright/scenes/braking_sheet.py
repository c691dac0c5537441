"""Where the views of braking seen from above stand on their sheet, and what they share.

Sheet millimetres, for a left wheel; a right wheel's sheet is the mirror image.
"""

import math
from dataclasses import dataclass
from typing import Literal

from hubwright.results.model import Results
from hubwright.scenes.braking_words import BrakingWording
from hubwright.scenes.linked_views import Plane, Seen, mirrored
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.vocabulary import Column, Point, View
from hubwright.scenes.wheel_end_actions import Action, Actions
from hubwright.scenes.wheel_end_parts.assembly import Assembly

WIDTH, HEIGHT, FOOT = 310.0, 214.0, 30.0
_WHEEL_X, INSET_X = 96.0, 200.0
BOX = (146.0, 124.0, 250.0, 206.0)
_COLUMNS = (50.0, 254.0)
_WHOLE_SCALES = ((1, 5), (1, 6), (1, 8), (1, 10))
_DETAIL_SCALES = ((4, 5), (2, 3), (1, 2), (1, 3), (1, 4))
_INSET_SCALES = ((1, 8), (1, 10), (1, 12), (1, 15), (1, 20))
_ROOM, _CALIPER_ROOM, _INSET_LOW = 26.0, 38.0, 46.0  # of the longest arrows; height of the road below the inset
_ROWS = (("row_outboard", "A"), ("row_inboard", "B"))


@dataclass(frozen=True)
class Sheet:
    """The three views and what they share."""

    results: Results
    words: BrakingWording
    parts: Assembly  # unloaded: from above nothing presses on the tire's front and rear
    actions: Actions
    rows: tuple[Action, ...]
    top: Seen
    detail: Seen
    inset: Seen
    ratios: tuple[str, str, str]

    @property
    def side(self) -> int:
        """+1 at a left wheel, -1 at a right one."""
        return self.results.side

    @property
    def least(self) -> float:
        """What is too small to be shown [N]."""
        return self.words.least

    def x(self, left: float) -> float:
        """Return a sheet abscissa, mirrored at a right wheel."""
        return left if self.side > 0 else WIDTH - left

    def column(self, outboard: bool) -> Literal["left column", "right column"]:
        """Return the place of labels in the column beside the wheel or in that beside detail and inset."""
        return "left column" if outboard == (self.side > 0) else "right column"


def braking_sheet(results: Results, words: BrakingWording, actions: Actions, parts: Assembly) -> Sheet:
    """Return the sheet with the largest scales of the lists at which everything fits."""
    m, side = parts.measures, results.side
    body = words.state.free_body
    rows: tuple[Action, ...] = ()
    if words.state.row_load is not None:
        rows = tuple(
            Action(name, symbol, "on hub", "reaction", body.force(name).force, body.force(name).point)
            for name, symbol in _ROWS
        )
    level = [(a.force.x, a.force.y) for a in (*actions.all, *rows)]
    longest = max(abs(value) for pair in level for value in pair)
    needs = [longest / _ROOM]
    scale, whole = drawing_scale(2 * m.free_radius, HEIGHT - FOOT - 20.0, _WHOLE_SCALES)
    inboard, outboard = max(44.0, m.bearing.apex + 10.0), max(m.wheel_face + 14.0, m.bearing.apex + 12.0)
    near, detail = drawing_scale(inboard + outboard, BOX[2] - BOX[0], _DETAIL_SCALES)
    small, inset = drawing_scale(2 * m.free_radius, 68.0, _INSET_SCALES)
    if actions.caliper is not None:
        force, height = actions.caliper.force, actions.caliper.point.z * 1e3
        needs.append(math.hypot(force.x, force.z) / _CALIPER_ROOM)
        needs.append(force.z / ((m.free_radius - height) * small))  # over the tire stands what the inset is called
    per_mm = round_scale(max(needs), 1.0)

    def x(left: float) -> float:
        return left if side > 0 else WIDTH - left

    box = BOX if side > 0 else (WIDTH - BOX[2], BOX[1], WIDTH - BOX[0], BOX[3])
    spare = (BOX[2] - BOX[0] - (inboard + outboard) * near) / 2
    low = results.wheel_geometry.loaded_radius * 1e3

    def seen(plane: Plane, name: str, origin: Point, at: float, heading: str, frame: bool = False) -> Seen:
        flip, edge = mirrored(plane, side), box if frame else None
        return Seen(plane, View(name, origin, at, per_mm, mirrored=flip, frame=edge, heading=heading), side)

    middle = FOOT + 6.0 + (HEIGHT - FOOT - 14.0) / 2
    of_detail = (x(BOX[0] + spare + outboard * near), (BOX[1] + BOX[3]) / 2)
    return Sheet(
        results,
        words,
        parts,
        actions,
        rows,
        seen("top", "top", (x(_WHEEL_X) + side * m.load_line * scale, middle), scale, "From above"),
        seen("top", "detail", of_detail, near, f"The rows from above   {detail}", frame=True),
        seen("side", "inset", (x(INSET_X), _INSET_LOW + low * small), small, f"From outboard   {inset}"),
        (whole, detail, inset),
    )


def columns_of(sheet: Sheet) -> tuple[Column, ...]:
    """Return the columns outboard of the wheel and inboard of detail and inset."""
    left = Column("left", _COLUMNS[0], FOOT + 4.0, HEIGHT - 6.0)
    right = Column("right", _COLUMNS[1], FOOT + 4.0, HEIGHT - 4.0)
    if sheet.side > 0:
        return left, right
    return (
        Column("right", WIDTH - _COLUMNS[0], left.low, left.high),
        Column("left", WIDTH - _COLUMNS[1], right.low, right.high),
    )

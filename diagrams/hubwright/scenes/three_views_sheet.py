"""The sheet of three linked views: one scale of lengths and one of forces, where each view stands, and the columns.

Sheet millimetres; a right wheel's sheet is the mirror image of a left wheel's.
"""

from dataclasses import dataclass
from typing import Literal

from hubwright.results.model import Results
from hubwright.scenes.linked_views import Plane, Seen, mirrored
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.three_views_places import Tire
from hubwright.scenes.three_views_words import ViewsWording
from hubwright.scenes.vocabulary import Column, Point, View
from hubwright.scenes.wheel_end_actions import Actions
from hubwright.scenes.wheel_end_parts.assembly import Assembly

WIDTH = 310.0
SIDE_X, REAR_X = 92.0, 184.0  # of axle and tire centreline, a right wheel's mirrored
_FOOT = 30.0
_COLUMNS = (44.0, 152.0, 236.0)
_BELOW, _GAP, _ABOVE = 27.0, 23.0, 12.0  # the road, between the views, over the top view
_TALL = 166.0  # what rear and top view may take together
_SCALES = ((1, 5), (1, 6), (1, 8), (1, 10), (1, 12), (1, 15))


@dataclass(frozen=True)
class Sheet:
    """The three views and what they share."""

    results: Results
    words: ViewsWording
    parts: Assembly
    actions: Actions
    seen: dict[Plane, Seen]
    ratio: str
    height: float

    @property
    def side(self) -> int:
        """+1 at a left wheel, -1 at a right one."""
        return self.results.side

    def x(self, left: float) -> float:
        """Return a sheet abscissa, mirrored at a right wheel."""
        return left if self.side > 0 else WIDTH - left

    @property
    def scale(self) -> float:
        """Sheet millimetres for one of the wheel end."""
        return self.seen["rear"].view.scale

    @property
    def tire(self) -> Tire:
        """What places beside the tire go by."""
        m = self.parts.measures
        return Tire(self.side, m.load_line, self.parts.below.half_width, m.free_radius, m.rim_radius)

    @property
    def pushed_across(self) -> bool:
        """Whether the road pushes sideways: more words then stand inboard of the view from the rear."""
        return not self.words.nothing(self.actions.contact.force.y)

    @property
    def road(self) -> float:
        """Height of the road on the sheet."""
        return _FOOT + _BELOW


def views_sheet(results: Results, words: ViewsWording, actions: Actions, parts: Assembly) -> Sheet:
    """Return the sheet for one wheel end in one case."""
    m, side = parts.measures, results.side
    low = m.loaded_radius if not words.hanging else m.free_radius
    scale, ratio = drawing_scale(low + 3 * m.free_radius, _TALL, _SCALES)
    forces = [action.force for action in actions.all]
    rooms = {"x": 24.0, "y": 22.0, "z": 24.0}
    needs = [abs(getattr(force, axis)) / room for force in forces for axis, room in rooms.items()]
    per_mm = round_scale(max(needs), 1.0)
    axle = _FOOT + _BELOW + low * scale
    above = axle + 2 * m.free_radius * scale + _GAP
    lift = m.load_line * scale

    def x(left: float) -> float:
        return left if side > 0 else WIDTH - left

    origins: dict[Plane, Point] = {
        "rear": (x(REAR_X + lift), axle),
        "side": (x(SIDE_X), axle),
        "top": (x(REAR_X + lift), above),
    }
    seen: dict[Plane, Seen] = {
        plane: Seen(
            plane,
            View(plane, origin, scale, per_mm, mirrored=mirrored(plane, side), heading=heading_of(plane, side)),
            side,
        )
        for plane, origin in origins.items()
    }
    return Sheet(results, words, parts, actions, seen, ratio, above + m.free_radius * scale + _ABOVE)


def columns_of(sheet: Sheet) -> tuple[Column, ...]:
    """Return where words stand: ahead of the view from outboard, inboard of the others, outboard of that from above."""
    across = 2 * sheet.parts.measures.free_radius * sheet.scale
    high = sheet.height - 4.0
    outward: Literal["left", "right"] = "left" if sheet.side > 0 else "right"
    inward: Literal["left", "right"] = "right" if sheet.side > 0 else "left"
    ahead, outboard, inboard = (sheet.x(left) for left in _COLUMNS)
    return (
        Column(outward, ahead, _FOOT, sheet.road + across),
        Column(outward, outboard, high - across, high),
        Column(inward, inboard, _FOOT, high),
    )


def heading_of(plane: Plane, side: int) -> str:
    """Return from where a view is seen, and which way is forward or outboard in it."""
    outward = "left" if side > 0 else "right"
    return {
        "rear": f"From the rear, outboard on the {outward}",
        "top": "From above, forward at the top",
        "side": f"From outboard, forward on the {outward}",
    }[plane]

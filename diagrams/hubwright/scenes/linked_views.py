"""Three linked views of one wheel end: from the rear, from outboard, and from above.

Each view lies on the side from which it is seen: the top view above the rear view, the view from outboard outboard of
it. Arrows lie in a view's plane; what runs along the line of sight is a dot (toward the reader) or a cross in a ring.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import hypot
from typing import Literal

from hubwright.results.model import Vector
from hubwright.scenes.small_forces import OFF_END, along, visible
from hubwright.scenes.vocabulary import Dot, Force, Item, Label, Line, Moment, Normal, Point, View
from hubwright.scenes.wheel_end_actions import Action

Plane = Literal["rear", "side", "top"]
Axis = Literal["x", "y", "z"]

_MM = 1e3
_LEVEL = 20.0
_BESIDE_SHAFT = 1.2  # from the middle of a shaft to a leader that ends just off it
_ARROWS_APART = 2.2  # sheet millimetres, of two on parallel lines
_GAP = 2.5  # from a ring to an arrow at the same point
_AXES: dict[Plane, tuple[Axis, Axis]] = {"rear": ("y", "z"), "side": ("x", "z"), "top": ("y", "x")}
_SIGHT: dict[Plane, Axis] = {"rear": "x", "side": "y", "top": "z"}


@dataclass(frozen=True)
class Seen:
    """One view, and how vectors of ISO 8855 appear in it; `side` is +1 at a left wheel."""

    plane: Plane
    view: View
    side: int

    def flat(self, vector: Vector) -> Point:
        """Return the two components in the view's plane."""
        first, second = _AXES[self.plane]
        return getattr(vector, first), getattr(vector, second)

    def point(self, vector: Vector) -> Point:
        """Return a point of the body [m] in the view [mm]."""
        first, second = self.flat(vector)
        return first * _MM, second * _MM

    def toward(self, vector: Vector) -> float:
        """Return the component toward the reader: of a force, or of a moment, then counter-clockwise."""
        signs = {"rear": -1.0, "side": float(self.side), "top": 1.0}
        return signs[self.plane] * float(getattr(vector, _SIGHT[self.plane])) + 0.0

    @property
    def sight(self) -> Axis:
        """The axis along the line of sight."""
        return _SIGHT[self.plane]

    @property
    def across(self) -> tuple[Axis, Axis]:
        """The axes to the side and upward on the sheet."""
        return _AXES[self.plane]


@dataclass(frozen=True)
class Stand:
    """How an arrow stands: with its tip or its tail at the force's point, or at another one of the force's line."""

    tip: bool
    at: Point | None = None
    gap: float = 0.0  # sheet millimetres from the point to the arrow


def mirrored(plane: Plane, side: int) -> bool:
    """Return whether a view's first axis runs to the left on the sheet."""
    return plane != "side" or side > 0


def lies_on(seen: Seen, one: Action, other: Action, axis: Axis) -> bool:
    """Return whether of two forces that point the same way along an axis one arrow would lie on the other."""
    if getattr(one.force, axis) * getattr(other.force, axis) <= 0:
        return False
    across = 1 - seen.across.index(axis)
    return abs(seen.point(one.point)[across] - seen.point(other.point)[across]) * seen.view.scale < _ARROWS_APART


def arrows(
    seen: Seen,
    action: Action,
    step: int,
    labels: dict[Axis, Label],
    *,
    least: float,
    ringed: bool,
    stands: Mapping[Axis, Stand] | None = None,
) -> list[Item]:
    """Return the two components in the plane as arrows; `ringed` where a ring stands on the point.

    An upright force ends at its point and one along the road begins there, so that neither hides the other; `stands`
    says otherwise. From a point off the arrow a thin line leads to it.
    """
    items: list[Item] = []
    stands = stands or {}
    for axis, vector in zip(seen.across, _components(seen, action), strict=True):
        if max(abs(vector[0]), abs(vector[1])) <= least:
            continue
        at, stand = seen.point(action.point), stands.get(axis)
        name = f"{'reaction' if action.role == 'reaction' else 'force'}-{action.name}-{axis}-{seen.plane}"
        if stand is not None and stand.at is not None:
            items += _lead(name, seen, action, step, at, stand.at)
        force = Force(
            name,
            seen.view.name,
            step,
            at=at if stand is None or stand.at is None else stand.at,
            vector=vector,
            role=action.role,
            tip_at_point=axis == "z" if stand is None else stand.tip,
            gap=max(stand.gap if stand else 0.0, _GAP if ringed and not (stand and stand.at) else 0.0),
            label=labels.get(axis),
            level=_LEVEL + 3,
        )
        shown = visible(force, seen.view)
        # one that is not to scale hangs from its point: on it stand those that are
        shown = shown if shown.to_scale or stand else replace(shown, tip_at_point=False)
        if shown.label is not None and shown.label.place.endswith("column"):
            # before the tip a leader may end as well: beside the shaft another arrow may stand
            ends = (along(shown, seen.view, 1.0, OFF_END), *(_beside_shaft(shown, seen) if stand else ()))
            shown = replace(shown, label=replace(shown.label, also=(*shown.label.also, *ends)))
        items.append(shown)
    return items


def _beside_shaft(shown: Force, seen: Seen) -> tuple[Point, Point]:
    """Return where a leader may end on either side of a shaft: along its line another arrow may stand."""
    x, y = along(shown, seen.view, 0.5)
    size = hypot(*shown.vector)
    off_x, off_y = (_BESIDE_SHAFT / seen.view.scale * part / size for part in (-shown.vector[1], shown.vector[0]))
    return (x + off_x, y + off_y), (x - off_x, y - off_y)


def _components(seen: Seen, action: Action) -> tuple[Point, Point]:
    first, second = seen.flat(action.force)
    return (first, 0.0), (0.0, second)


def ring(
    seen: Seen, action: Action, step: int, label: Label | None, *, least: float, slot: Point | None = None
) -> list[Item]:
    """Return the component along the line of sight; in a `slot` of its own a thin line leads to its point."""
    newtons = seen.toward(action.force)
    if abs(newtons) <= least:
        return []
    at = seen.point(action.point)
    name = f"{'reaction' if action.role == 'reaction' else 'force'}-{action.name}-{seen.sight}-{seen.plane}"
    normal = Normal(
        name, seen.view.name, step, at=slot or at, newtons=newtons, role=action.role, label=label, level=_LEVEL + 5
    )
    return [normal] if slot is None else [*_lead(name, seen, action, step, at, slot), normal]


def _lead(name: str, seen: Seen, action: Action, step: int, at: Point, there: Point) -> list[Item]:
    """Return a force's point and a thin line from it to where the force is shown."""
    tone: Literal["reaction", "load"] = "reaction" if action.role == "reaction" else "load"
    return [
        Line(f"line-{name}", seen.view.name, step, points=(at, there), style="hair", tone=tone, level=_LEVEL + 1),
        Dot(f"point-{name}", seen.view.name, step, at=at, tone=tone, radius=0.5, level=_LEVEL + 4),
    ]


def arc(seen: Seen, action: Action, step: int, label: Label | None, *, least: float, radius: float = 7.5) -> list[Item]:
    """Return the couple about the line of sight as an arc."""
    newton_metres = seen.toward(action.couple)
    if abs(newton_metres) <= least:
        return []
    return [
        Moment(
            f"moment-{action.name}-{seen.sight}-{seen.plane}",
            seen.view.name,
            step,
            at=seen.point(action.point),
            newton_metres=newton_metres,
            role=action.role,
            radius=radius,
            label=label,
            level=_LEVEL + 2,
        )
    ]

"""Where something carried stands: how far behind the axle, how far off the middle, how high.

Side view in real millimetres: x forward from the front axle (a trailer: from its axle); rear view: y to the left from
the middle plane. z up from the road. Without gear in the file an example stands there and is called one.
"""

from collections.abc import Sequence

from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.scenes.corner_front_outline import axle_seen, rear_outline
from hubwright.scenes.measuring_lengths import metres
from hubwright.scenes.scales import drawing_scale
from hubwright.scenes.vehicle_outline import Outline
from hubwright.scenes.vehicle_seen import outline_of, vehicle_seen
from hubwright.scenes.vocabulary import (
    Dimension,
    Dot,
    Ground,
    Item,
    Label,
    Line,
    Note,
    Part,
    Point,
    ScaleBar,
    Scene,
    Step,
    Units,
    View,
)
from hubwright.setup.model import Gear, TrailerChassis

_WIDTH, _FOOT, _HEAD = 310.0, 24.0, 20.0
_SIDE, _REAR = (30.0, 176.0), (204.0, 286.0)  # room of the two views on the sheet
_WATER = 1000.0  # kg/m3: drawn as a cube of its mass in water
_EXAMPLE = 40.0  # kg
_BODY = "part-body"


def measuring_gear(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of an item's place, of the heaviest one or else an example; the case plays no part."""
    outline = outline_of(results)
    item, given = _item(results, outline)
    at = (-item.behind * 1e3, item.above_ground * 1e3)
    track = _track(results)
    width = track + 2.4 * results.wheel_geometry.section_width * 1e3
    front, rear = max(outline.front, at[0] + 250.0), min(outline.rear, at[0] - 250.0)
    top = max(outline.top, at[1] + 250.0)
    across = max(width, 2 * abs(item.left_of_centre) * 1e3 + 500.0)
    scale = min(
        drawing_scale(front - rear, _SIDE[1] - _SIDE[0])[0],
        drawing_scale(across, _REAR[1] - _REAR[0])[0],
        drawing_scale(top, 95.0)[0],
    )
    road = _FOOT + 22.0
    side = View(
        "side", (sum(_SIDE) / 2 + scale * (front + rear) / 2, road), scale, mirrored=True, heading="From the side"
    )
    back = View("rear", (sum(_REAR) / 2, road), scale, mirrored=True, heading="From the rear")
    items = [*vehicle_seen(results, outline, side), *rear_outline(results, back.name)]
    reach = across / 2 + 60.0
    items.append(axle_seen(results, back.name, (track / 2, -track / 2), 1))
    items.append(Ground("ground-rear", back.name, start=(reach, 0.0), end=(-reach, 0.0)))
    items += _marked(item, given, side, back, at, units, outline=outline, seen=_body(items, back.name))
    left = side.on_sheet((front, 0.0))[0] - 7.0
    items += _dimensions(item, side, back, at, units, low=road - 12.0, left=left, ground=outline.front + 120.0)
    axle = "axle" if results.setup.kind == "trailer" else "front axle"
    title = (
        f"{item.name}: how far from the axle, from the middle and from the road"
        if given
        else ("Gear: how far from the axle, from the middle and from the road")
    )
    where = "behind" if item.behind > 0 else "ahead of"
    return Scene(
        name="measuring-gear",
        title=title,
        caption="Seen from the side and from the rear; dashed where the body hides it. "
        f"Lengths go from the {axle} and from the middle plane to the middle of the item. "
        + ("It is drawn as a cube of water of its mass." if given else "The item is an example: the file lists none."),
        description=f"{title}. Here {metres(abs(item.behind) * 1e3, units)} {where} the {axle}, "
        f"{metres(abs(item.left_of_centre) * 1e3, units)} off the middle, {metres(at[1], units)} above the road.",
        units=units,
        size=(_WIDTH, side.on_sheet((0.0, top))[1] + _HEAD),
        views=(side, back),
        items=tuple(items),
        steps=(
            Step("Find its middle", "By eye is enough: half way along, across and up."),
            Step("Measure its place", "Along the ground, off the middle, up from the road."),
        ),
        scale_bars=(ScaleBar("side", "length", f"Both views 1 : {1 / scale:.0f}"),),
    )


def _track(results: Results) -> float:
    chassis = results.setup.chassis
    return 1e3 * (chassis.track if isinstance(chassis, TrailerChassis) else chassis.rear_track)


def _item(results: Results, outline: Outline) -> tuple[Gear, bool]:
    if results.setup.gear:
        return max(results.setup.gear, key=lambda item: abs(item.mass)), True
    behind = -0.8 * outline.front if outline.coupling is None else -0.3 * outline.front
    height = 0.45 * outline.top if outline.coupling is None else 0.55 * outline.top
    return Gear("Example", _EXAMPLE, behind / 1e3, 0.15 * _track(results) / 1e3, height / 1e3), False


def _body(items: Sequence[Item], view: str) -> tuple[Point, ...]:
    """Return the outline of the body in a view."""
    return next(item.rings[0] for item in items if isinstance(item, Part) and (item.name, item.view) == (_BODY, view))


def _marked(
    item: Gear,
    given: bool,
    side: View,
    back: View,
    at: Point,
    units: Units,
    *,
    outline: Outline,
    seen: tuple[Point, ...],
) -> list[Item]:
    """Return the item in both views under its name, as hidden edges where its outline lies within the body's."""
    half = (max(abs(item.mass), 1.0) / _WATER) ** (1 / 3) * 500.0
    low = min(half, max(0.95 * at[1], 15.0))
    y = item.left_of_centre * 1e3
    name = item.name if given else "an example"
    words = (f"*{name[:28]}", format_quantity(item.mass, "mass", units))
    items: list[Item] = []
    behind = at[0] - half < outline.rear  # and so before the body to who looks from the rear
    for view, x, body in ((side, at[0], outline.body), (back, y, () if behind else seen)):
        ring = tuple((x + a * half, at[1] + b * low) for a, b in ((-1, -1), (1, -1), (1, 1), (-1, 1)))
        name = f"part-item-{view.name}"
        if body and all(_within(corner, body) for corner in ring):
            edges = (*ring, ring[0])
            items.append(Line(name, view.name, 1, points=edges, style="hidden", tone="changed", width=0.35, level=1.0))
        else:
            items.append(Part(name, view.name, 1, rings=(ring,), material="changed", level=1.0))
        items.append(Dot(f"middle-{view.name}", view.name, 1, at=(x, at[1]), kind="centre of mass", level=2.0))
    over = max(outline.top, at[1] + low)
    label = Label(words, "above", anchor=(at[0], over), tone="changed")
    leader = ((at[0], at[1] + low), (at[0], over))
    return [
        *items,
        Line("leader-item", side.name, 1, points=leader, style="thin", tone="changed", level=1.0),
        Note("label-item", side.name, 1, label=label),
    ]


def _within(point: Point, ring: tuple[Point, ...]) -> bool:
    """Return whether a point lies within a closed outline, by the even-odd rule."""
    crossed = False
    for (x0, z0), (x1, z1) in zip(ring, (*ring[1:], ring[0]), strict=True):
        if (z0 > point[1]) != (z1 > point[1]):
            crossed ^= point[0] < x0 + (point[1] - z0) * (x1 - x0) / (z1 - z0)
    return crossed


def _dimensions(
    item: Gear, side: View, back: View, at: Point, units: Units, *, low: float, left: float, ground: float
) -> list[Item]:
    """Return height and lengths; the ground, which ends at `ground` in the side view, goes on to the height's line."""
    y = item.left_of_centre * 1e3
    items: list[Item] = [
        Line("plumb-axle", side.name, 2, points=((0.0, 0.0), (0.0, 300.0)), style="centre", tone="soft", level=1.0),
        Line(
            "middle-plane",
            back.name,
            2,
            points=((0.0, 0.0), (0.0, at[1] + 200.0)),
            style="centre",
            tone="soft",
            level=1.0,
        ),
        Dimension(
            "dimension-height",
            side.name,
            2,
            start=(ground, 0.0),
            end=(at[0], at[1]),
            direction="vertical",
            line_at=left,
            text=f"{metres(at[1], units)} up",
            extension=(side.on_sheet((ground, 0.0))[0] > left, True),
        ),
    ]
    if abs(at[0]) * side.scale > 0.5:
        ends = sorted((at[0], 0.0), reverse=True)
        way = "behind" if item.behind > 0 else "ahead"
        items.append(
            Dimension(
                "dimension-behind",
                side.name,
                2,
                start=(ends[0], 0.0),
                end=(ends[1], 0.0),
                line_at=low,
                text=f"{metres(abs(at[0]), units)} {way}",
                side="end",
            )
        )
    if abs(y) * back.scale > 0.5:
        ends = sorted((y, 0.0), reverse=True)
        items.append(
            Dimension(
                "dimension-left",
                back.name,
                2,
                start=(ends[0], 0.0),
                end=(ends[1], 0.0),
                line_at=low,
                text=f"{metres(abs(y), units)} {'left' if y > 0 else 'right'}",
                side="end",
            )
        )
    return items

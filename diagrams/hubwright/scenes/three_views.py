"""The free body of a wheel end in three linked views: from the rear, from outboard and from above.

Real millimetres from the bearing centre: rear y and z, side x and z, top y and x. What runs along the line of sight of
one view is an arrow in another; the sums of all three directions stand beside the views.
"""

import math
from typing import Literal

from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.scenes.key_entries import moment_entries
from hubwright.scenes.linked_views import Axis, Plane, Seen, arc, arrows, ring
from hubwright.scenes.three_views_places import arc_radius, lies_ahead, needs_a_leader, place_of_centre, slots, stands
from hubwright.scenes.three_views_sheet import REAR_X, SIDE_X, WIDTH, Sheet, columns_of, heading_of, views_sheet
from hubwright.scenes.three_views_sums import SUMS_WIDTH, sum_tables
from hubwright.scenes.three_views_words import ViewsWording
from hubwright.scenes.vehicle_outline import circle, standing_tire
from hubwright.scenes.vocabulary import (
    Dimension,
    Dot,
    Ground,
    Item,
    KeyEntry,
    Label,
    Line,
    LineStyle,
    Note,
    Part,
    Point,
    ScaleBar,
    Scene,
    Tone,
    Units,
    View,
    Words,
)
from hubwright.scenes.wheel_end_actions import Action, actions_of
from hubwright.scenes.wheel_end_parts.assembly import assembly
from hubwright.scenes.wheel_end_parts.measures import measures
from hubwright.scenes.wheel_end_solids import solids

_HEIGHT = 9.0  # dimension of the axle's height, from the tire seen from outboard
_LETTER = 2.3  # of the bearing centre's name: seen from the rear it stands between two wheels
_OFF_ROAD = 10.0  # the road's side force seen from the rear; half as much all that stands over it
# seen from above, how much higher than a level arrow its words in the column wish to stand, sheet millimetres
_LIFTS = {"weight": 15.0, "inertia": 15.0, "bearing": -10.0}
_Align = Literal["left", "centre", "right"]
_ALIGN: dict[str, _Align] = {"left": "left", "centre": "centre", "right": "right"}
_Place = Literal["left column", "right column"]
# in which view the full label of a component stands; elsewhere its symbol alone
_HOME: dict[str, dict[Axis, Plane]] = {
    "contact": {"x": "side", "y": "rear", "z": "rear"},
    "weight": {"x": "top", "y": "rear", "z": "rear"},
    "inertia": {"x": "top", "y": "rear", "z": "rear"},
    "caliper": {"x": "top", "y": "rear", "z": "side"},
    "bearing": {"x": "top", "y": "rear", "z": "rear"},
    "shaft": {"x": "side", "y": "side", "z": "side"},
}


def three_views(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of everything on one wheel end, seen from the rear, from outboard and from above."""
    state = results.cases[case]
    actions = actions_of(results, state)
    words = ViewsWording(results, state, units, schematic=False, hanging=state.hanging)
    sheet = views_sheet(results, words, actions, assembly(measures(results, hanging=state.hanging)))
    items: list[Item] = [*_bodies(sheet), *_links(sheet, 1)]
    steps = {"contact": 2, "weight": 3, "inertia": 3, "caliper": 3, "shaft": 4, "bearing": 4}
    for seen in sheet.seen.values():
        items += _seen(sheet, seen, steps)
    items += _lengths(sheet, 5)
    left = 0.0 if sheet.side > 0 else WIDTH - SUMS_WIDTH
    items += sum_tables(words, actions, left=left, top=sheet.height - 8.0, step=6)
    return Scene(
        name="three-views",
        title=words.views_title(actions),
        caption=words.views_caption(actions),
        description=words.views_description(actions),
        units=units,
        size=(WIDTH, sheet.height),
        views=(*(seen.view for seen in sheet.seen.values()), View("sheet", (0.0, 0.0), 1.0)),
        items=tuple(items),
        steps=words.views_steps(actions),
        columns=columns_of(sheet),
        scale_bars=(
            ScaleBar("rear", "length", f"All views {sheet.ratio}"),
            ScaleBar("rear", "force", "Forces, all views"),
        ),
        key=(
            KeyEntry("load", "load"),
            KeyEntry("reaction", "reaction"),
            *moment_entries(items),
            KeyEntry("load line", "load line"),
            KeyEntry("turning", "turns: the body"),
            *((KeyEntry("hidden", "brake disc, pads"),) if any(item.name == "disc" for item in items) else ()),
        ),
        body=actions.closed(),
    )


def _bodies(sheet: Sheet) -> list[Item]:
    """Return the body in each view: cut through its axis from the rear and from above, and from outside."""
    m, side = sheet.parts.measures, sheet.side
    low = -m.loaded_radius if not sheet.words.hanging else -m.free_radius
    # from above nothing presses on the tire's front and rear
    flat = assembly(measures(sheet.results, hanging=True))
    tire = tuple((x, z + low) for x, z in standing_tire(free_radius=m.free_radius, loaded_radius=-low, at=0.0))
    rim, nave = circle((0.0, 0.0), m.rim_radius), circle((0.0, 0.0), sheet.parts.mount.flange_radius)
    items: list[Item] = [
        *solids(sheet.parts, "rear", side, "whole", body_only=True),
        *solids(flat, "top", side, "whole", body_only=True),
        Part("part-side-tire", "side", rings=(tire, rim), material="rubber", outline=0.35),
        Part("part-side-wheel", "side", rings=(rim,), material="turning", outline=0.2, level=0.1),
        Part("part-side-hub", "side", rings=(nave,), material="turning-2", outline=0.2, level=0.2),
    ]
    if sheet.actions.caliper is not None and m.disc_radius:
        items += _caliper_outline(sheet, sheet.actions.caliper)
    for plane in sheet.seen:
        x, y = sheet.seen[plane].view.origin
        lift = 0.0 if plane == "side" else sheet.side * m.load_line * sheet.scale
        high = y + m.free_radius * sheet.scale
        at, align = (x, high + 7.0), _ALIGN["centre"]
        lines: tuple[str, ...] = (heading_of(plane, side).lower(),)
        if plane != "side":
            way = -side if plane == "rear" and sheet.pushed_across else side
            at = (x - lift + way * (sheet.parts.below.half_width * sheet.scale + 3.0), high - 2.0)
            align = _ALIGN["left" if way > 0 else "right"]
            lines = tuple(lines[0].split(", "))
        items.append(Words(f"words-{plane}", "", at_sheet=at, lines=lines, size=2.3, tone="soft", align=align))
    return items


def _caliper_outline(sheet: Sheet, caliper: Action) -> list[Item]:
    """Return disc and caliper as seen from outboard: hidden behind the wheel, and no part of the body."""
    x, z = caliper.point.x * 1e3, caliper.point.z * 1e3
    radius = sheet.parts.measures.disc_radius or 0.0
    items: list[Item] = []
    disc = circle((0.0, 0.0), radius)
    items.append(Line("disc", "side", points=(*disc, disc[0]), style="hidden", tone="soft", width=0.18, level=0.3))
    long, reach = (x * x + z * z) ** 0.5, 26.0
    along, across = (x / long, z / long), (-z / long, x / long)
    corners = [
        (x + a * along[0] * reach + b * across[0] * 42.0, z + a * along[1] * reach + b * across[1] * 42.0)
        for a, b in ((-1, -1), (1, -1), (1, 1), (-1, 1))
    ]
    items.append(
        Line("caliper", "side", points=(*corners, corners[0]), style="hidden", tone="soft", width=0.18, level=0.4)
    )
    return items


def _links(sheet: Sheet, step: int) -> list[Item]:
    """Return what ties the views together: road, spindle axis and centre plane run from one to the next."""
    m = sheet.parts.measures
    rear, top, side = (sheet.seen[plane].view.origin for plane in ("rear", "top", "side"))
    half, radius = sheet.parts.below.half_width * sheet.scale, m.free_radius * sheet.scale
    inboard = sheet.x(REAR_X + half + 7.0)
    front = sheet.x(SIDE_X - radius - 5.0)
    lines: list[tuple[str, tuple[Point, Point], LineStyle, Tone]] = [
        ("axis", ((front, side[1]), (inboard, rear[1])), "centre", "soft"),
        ("axis-top", ((sheet.x(REAR_X - half - 5.0), top[1]), (inboard, top[1])), "centre", "soft"),
        ("axle-upright", ((side[0], side[1] + radius + 4.0), (side[0], sheet.road - 2.0)), "centre", "soft"),
        ("centre-plane", ((rear[0], sheet.road - 2.0), (rear[0], top[1] + radius + 3.0)), "centre", "soft"),
    ]
    items: list[Item] = [
        Line(name, "sheet", step, points=points, style=style, tone=tone, level=1.0, wide_only=True)
        for name, points, style, tone in lines
    ]
    if not sheet.words.hanging:
        for plane, left, right in (
            # under the dimension of the wheel's height
            ("side", -m.free_radius - (_HEIGHT + 2.0) / sheet.scale, m.free_radius + 40.0),
            (
                "rear",
                sheet.side * m.load_line - sheet.parts.below.half_width - 60.0,
                sheet.side * m.load_line + sheet.parts.below.half_width + 60.0,
            ),
        ):
            ends = (left, -m.loaded_radius), (right, -m.loaded_radius)
            items.append(Ground(f"ground-{plane}", plane, step, start=ends[0], end=ends[1]))
    if sheet.words.state.kind == "ledge":
        x, z = sheet.seen["side"].point(sheet.actions.contact.point)
        edge = ((x, -m.loaded_radius), (x, z), (m.free_radius + 40.0, z))
        items.append(Line("ledge", "side", step, points=edge, style="outline"))
    return items


def _seen(sheet: Sheet, seen: Seen, steps: dict[str, int]) -> list[Item]:
    """Return everything that acts as one view shows it: full label in one of them, the symbol in the others."""
    least, tire, items = sheet.words.least, sheet.tire, _centre(sheet, seen, steps["bearing"])
    slot = slots(seen, sheet.actions, tire, least=least)
    stand = stands(seen, sheet.actions, tire, least=least)
    for action in sheet.actions.all:
        step, own, beside = steps[action.name], abs(seen.toward(action.force)) > least, slot.get(action.name)
        labels = {axis: _label(sheet, action, axis, seen.plane) for axis in seen.across}
        ringed = own and beside is None
        items += arrows(seen, action, step, labels, least=least, ringed=ringed, stands=stand[action.name])
        if own:
            items += ring(seen, action, step, _label(sheet, action, seen.sight, seen.plane), least=least, slot=beside)
    radius = arc_radius(seen, items)
    for action in sheet.actions.all:
        label = _arc_label(sheet, action, seen, radius)
        items += arc(seen, action, steps[action.name], label, least=least, radius=radius)
    return items


def _centre(sheet: Sheet, seen: Seen, step: int) -> list[Item]:
    """Return the bearing centre and its name, clear of the arrows that meet there, with a thin line over them."""
    at = place_of_centre(seen, sheet.actions, sheet.tire, least=sheet.words.least)
    place: Literal["left", "right"] = "left" if (seen.plane == "side") == (sheet.side < 0) else "right"
    name, lines = f"centre-{seen.plane}", ("{C}, the bearing centre" if seen.plane == "rear" else "{C}",)
    return [
        Dot(name, seen.plane, step, at=(0.0, 0.0), radius=0.7, level=26.0),
        Line(f"line-{name}", seen.plane, step, points=((0.0, 0.0), at), style="hair", tone="ink", level=26.0),
        Note(f"label-{name}", seen.plane, step, label=Label(lines, place, anchor=at, size=_LETTER)),
    ]


def _label(sheet: Sheet, action: Action, axis: Axis, plane: Plane) -> Label:
    """Return the full label in the component's own view, the symbol alone elsewhere."""
    value, seen = getattr(action.force, axis), sheet.seen[plane]
    tone: Tone = "reaction" if action.role == "reaction" else "load"
    symbol = _symbol(sheet, action, axis)
    if _HOME[action.name][axis] != plane:
        led = seen.sight != axis and needs_a_leader(
            seen, action, axis, sheet.actions, sheet.tire, least=sheet.words.least
        )
        place = _column(sheet, plane) if led else _beside(sheet, action, axis, plane)
        return Label(
            (symbol,), place, tone=tone, size=2.3, nudge=_lift(sheet, action, axis, plane) if led else (0.0, 0.0)
        )
    ways = {"x": sheet.words.fore_and_aft, "y": sheet.words.sideways, "z": sheet.words.upright}
    lines = (f"*{symbol} = {sheet.words.force(value)}", f"{ways[axis](value)}, {action.what}")
    mass = plane == "top" and axis == "x" and action.name in ("weight", "inertia")
    outboard = mass and action.point.y * sheet.side > 0  # between it and the other column stands the bearing's answer
    place = _column(sheet, "side" if outboard else plane)
    return Label(lines, place, tone=tone, size=2.5, nudge=_lift(sheet, action, axis, plane))


def _lift(sheet: Sheet, action: Action, axis: Axis, plane: Plane) -> Point:
    """Return how much higher than its arrow a name stands, so that no leader runs along the axis or the road."""
    if plane == "top":
        lift = _LIFTS.get(action.name, 0.0)
        if axis == "x":
            ahead = lies_ahead(sheet.seen[plane], action, sheet.actions, sheet.tire, least=sheet.words.least)
            lift = max(lift, 0.0) if ahead else -max(lift, 0.0)
        return 0.0, lift
    across = plane == "rear" and sheet.pushed_across
    if not across or (action.name, axis) in (("contact", "z"), ("bearing", "z")):  # the lowest and the highest
        return 0.0, 0.0
    return 0.0, _OFF_ROAD if action.name == "contact" else _OFF_ROAD / 2


def _symbol(sheet: Sheet, action: Action, axis: Axis) -> str:
    """Return the symbol of a component: of weight and inertia the force's own, where it is all of it."""
    parts = [part for part in action.force.components if abs(part) > sheet.words.least]
    whole = action.name in ("weight", "inertia") and len(parts) == 1
    return f"{{{action.symbol}}}" if whole else f"{{{action.symbol}|{axis}}}"


def _beside(sheet: Sheet, action: Action, axis: Axis, plane: Plane) -> Literal["left", "right", "above", "below"]:
    """Return where a symbol alone stands: those of the road over, those of the bearing under a level arrow."""
    if axis == sheet.seen[plane].sight and plane == "side" and action.name != "contact":
        return "right" if sheet.side > 0 else "left"  # behind the axle
    if axis == sheet.seen[plane].across[0]:
        return "below" if action.role == "reaction" else "above"
    return "right" if plane == "side" or sheet.side < 0 else "left"


def _column(sheet: Sheet, plane: Plane) -> _Place:
    """Return the column of a view: that of the view from outboard lies outboard."""
    return "left column" if (plane == "side") == (sheet.side > 0) else "right column"


def _arc_label(sheet: Sheet, action: Action, seen: Seen, radius: float) -> Label:
    value = getattr(action.couple, seen.sight)
    place = _column(sheet, seen.plane)
    lines = (f"*{{M|{seen.sight}}} = {sheet.words.moment(value)}", action.what)
    # the end of the leader lies on the arc whichever way it turns
    angle = math.radians(-140.0 if place == "left column" else -40.0)
    x, y = (radius / sheet.scale * part for part in (math.cos(angle), math.sin(angle)))
    at, nudge = (-x if seen.view.mirrored else x, y), _lift(sheet, action, seen.sight, seen.plane)
    return Label(lines, place, anchor=at, tone="moment", size=2.5, nudge=nudge)


def _lengths(sheet: Sheet, step: int) -> list[Item]:
    """Return the levers, each between the two views that share it."""
    m, words = sheet.parts.measures, sheet.words
    geometry = sheet.results.wheel_geometry
    rear, top = sheet.seen["rear"].view, sheet.seen["top"].view
    y = sheet.side * m.load_line
    high = (top.origin[1] + (m.free_radius + 3.0 / sheet.scale) * sheet.scale - rear.origin[1]) / sheet.scale
    low = -m.loaded_radius - 2.0 / sheet.scale
    items: list[Item] = [
        Line(
            "load-line", "rear", step, points=((y, low), (y, high)), style="centre", tone="load", width=0.25, level=19.0
        )
    ]
    if abs(m.load_line) > 0.05:
        way = "outboard" if m.load_line > 0 else "inboard"
        items.append(
            Dimension(
                "dimension-load-line",
                "rear",
                step,
                start=(y, m.free_radius),
                end=(0.0, m.free_radius),
                line_at=rear.origin[1] + m.free_radius * sheet.scale + 8.0,
                text=f"{{y|L}} = {words.length(abs(geometry.load_line_offset))} {way}",
                extension=(False, False),
                side="end" if m.load_line > 0 else "start",
            )
        )
    if not words.hanging:
        text = format_quantity(geometry.loaded_radius, "length", words.units)
        edge = sheet.side * (m.load_line + sheet.parts.below.tread_half_width + 20.0)
        items.append(
            Dimension(
                "dimension-loaded-radius",
                "rear",
                step,
                start=(edge, -m.loaded_radius),
                end=(edge, 0.0),
                direction="vertical",
                line_at=sheet.x(SIDE_X + m.free_radius * sheet.scale + _HEIGHT),
                text=f"{{R|l}} = {text}",
                extension=(False, False),
            )
        )
    return items

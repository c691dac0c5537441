"""The free body of a wheel end in three linked views: from the rear, from outboard and from above.

Real millimetres from the bearing centre: rear y and z, side x and z, top y and x. What runs along the line of sight of
one view is an arrow in another; the sums of all three directions stand beside the views.
"""

import math
from dataclasses import dataclass
from typing import Literal

from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.scenes.key_entries import moment_entries
from hubwright.scenes.linked_views import Axis, Plane, Seen, arc, arrows, mirrored, ring
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.three_views_sums import SUMS_WIDTH, sum_tables
from hubwright.scenes.three_views_words import ViewsWording
from hubwright.scenes.vehicle_outline import circle, standing_tire
from hubwright.scenes.vocabulary import (
    Column,
    Dimension,
    Dot,
    Ground,
    Item,
    KeyEntry,
    Label,
    Line,
    LineStyle,
    Part,
    Point,
    ScaleBar,
    Scene,
    Tone,
    Units,
    View,
    Words,
)
from hubwright.scenes.wheel_end_actions import Action, Actions, actions_of
from hubwright.scenes.wheel_end_parts.assembly import Assembly, assembly
from hubwright.scenes.wheel_end_parts.measures import measures
from hubwright.scenes.wheel_end_solids import solids

_WIDTH, _FOOT = 310.0, 30.0
_SIDE_X, _REAR_X = 92.0, 184.0  # of axle and tire centreline, a right wheel's mirrored
_COLUMNS = (44.0, 236.0)
_BELOW, _GAP, _ABOVE = 27.0, 23.0, 12.0  # the road, between the views, over the top view
_TALL = 166.0  # what rear and top view may take together
_SCALES = ((1, 5), (1, 6), (1, 8), (1, 10), (1, 12), (1, 15))
_ARC = 7.5  # radius of moments on the sheet
_SHORT = 3.0  # an arrow beside which there is no room among the leaders that run over it
_SLOT, _PITCH = 10.5, 6.4  # of rings that stand beside the wheel, from its sidewall and from one another
_Align = Literal["left", "centre", "right"]
_ALIGN: dict[str, _Align] = {"left": "left", "centre": "centre", "right": "right"}
_Place = Literal["left column", "right column"]
# in which view the full label of a component stands; elsewhere its symbol alone
_HEADINGS: dict[Plane, str] = {"rear": "From the rear", "top": "From above", "side": "From outboard"}
_HOME: dict[str, dict[Axis, Plane]] = {
    "contact": {"x": "side", "y": "rear", "z": "rear"},
    "weight": {"x": "top", "y": "rear", "z": "rear"},
    "inertia": {"x": "top", "y": "rear", "z": "rear"},
    "caliper": {"x": "side", "y": "rear", "z": "side"},
    "bearing": {"x": "top", "y": "rear", "z": "rear"},
    "shaft": {"x": "side", "y": "side", "z": "side"},
}


@dataclass(frozen=True)
class _Sheet:
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
        return self.results.side

    def x(self, left: float) -> float:
        """Return a sheet abscissa, mirrored at a right wheel."""
        return left if self.side > 0 else _WIDTH - left

    @property
    def scale(self) -> float:
        return self.seen["rear"].view.scale

    @property
    def road(self) -> float:
        """Height of the road on the sheet."""
        return _FOOT + _BELOW


def three_views(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of everything on one wheel end, seen from the rear, from outboard and from above."""
    state = results.cases[case]
    actions = actions_of(results, state)
    words = ViewsWording(results, state, units, schematic=False, hanging=state.hanging)
    sheet = _sheet(results, words, actions, assembly(measures(results, hanging=state.hanging)))
    items: list[Item] = [*_bodies(sheet), *_links(sheet, 1)]
    steps = {"contact": 2, "weight": 3, "inertia": 3, "caliper": 3, "shaft": 4, "bearing": 4}
    for action in actions.all:
        items += _seen_thrice(sheet, action, steps[action.name])
    items += _lengths(sheet, 5)
    left = 0.0 if sheet.side > 0 else _WIDTH - SUMS_WIDTH
    items += sum_tables(words, actions, left=left, top=sheet.height - 8.0, step=6)
    return Scene(
        name="three-views",
        title=words.views_title(actions),
        caption=words.views_caption(actions),
        description=words.views_description(actions),
        units=units,
        size=(_WIDTH, sheet.height),
        views=(*(seen.view for seen in sheet.seen.values()), View("sheet", (0.0, 0.0), 1.0)),
        items=tuple(items),
        steps=words.views_steps(actions),
        columns=_columns(sheet),
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
        ),
        body=actions.closed(),
    )


def _sheet(results: Results, words: ViewsWording, actions: Actions, parts: Assembly) -> _Sheet:
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
        return left if side > 0 else _WIDTH - left

    origins: dict[Plane, Point] = {
        "rear": (x(_REAR_X + lift), axle),
        "side": (x(_SIDE_X), axle),
        "top": (x(_REAR_X + lift), above),
    }
    seen: dict[Plane, Seen] = {
        plane: Seen(
            plane, View(plane, origin, scale, per_mm, mirrored=mirrored(plane, side), heading=_HEADINGS[plane]), side
        )
        for plane, origin in origins.items()
    }
    return _Sheet(results, words, parts, actions, seen, ratio, above + m.free_radius * scale + _ABOVE)


def _columns(sheet: _Sheet) -> tuple[Column, ...]:
    top = sheet.road + 2 * sheet.parts.measures.free_radius * sheet.scale
    left, right = Column("left", _COLUMNS[0], _FOOT, top), Column("right", _COLUMNS[1], _FOOT, sheet.height - 4.0)
    if sheet.side > 0:
        return left, right
    return (
        Column("right", _WIDTH - _COLUMNS[0], left.low, left.high),
        Column("left", _WIDTH - _COLUMNS[1], right.low, right.high),
    )


def _bodies(sheet: _Sheet) -> list[Item]:
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
        items.append(Dot(f"centre-{plane}", plane, at=(0.0, 0.0), radius=0.7, level=26))
    for plane, text in _HEADINGS.items():
        x, y = sheet.seen[plane].view.origin
        lift = 0.0 if plane == "side" else sheet.side * m.load_line * sheet.scale
        high = y + m.free_radius * sheet.scale
        at, align = (x, high + 7.0), _ALIGN["centre"]
        if plane != "side":
            at = (x - lift + side * (sheet.parts.below.half_width * sheet.scale + 3.0), high - 2.0)
            align = _ALIGN["left" if side > 0 else "right"]
        items.append(
            Words(f"words-{plane}", "", at_sheet=at, lines=(text.lower(),), size=2.3, tone="soft", align=align)
        )
    return items


def _caliper_outline(sheet: _Sheet, caliper: Action) -> list[Item]:
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
    items.append(Line("caliper", "side", points=(*corners, corners[0]), style="phantom", tone="soft", level=0.4))
    return items


def _links(sheet: _Sheet, step: int) -> list[Item]:
    """Return what ties the views together: road, spindle axis and centre plane run from one to the next."""
    m = sheet.parts.measures
    rear, top, side = (sheet.seen[plane].view.origin for plane in ("rear", "top", "side"))
    half, radius = sheet.parts.below.half_width * sheet.scale, m.free_radius * sheet.scale
    inboard = sheet.x(_REAR_X + half + 7.0)
    front = sheet.x(_SIDE_X - radius - 5.0)
    lines: list[tuple[str, tuple[Point, Point], LineStyle, Tone]] = [
        ("axis", ((front, side[1]), (inboard, rear[1])), "centre", "soft"),
        ("axis-top", ((sheet.x(_REAR_X - half - 5.0), top[1]), (inboard, top[1])), "centre", "soft"),
        ("axle-upright", ((side[0], side[1] + radius + 4.0), (side[0], sheet.road - 2.0)), "centre", "soft"),
        ("centre-plane", ((rear[0], sheet.road - 2.0), (rear[0], top[1] + radius + 3.0)), "centre", "soft"),
    ]
    items: list[Item] = [
        Line(name, "sheet", step, points=points, style=style, tone=tone, level=1.0, wide_only=True)
        for name, points, style, tone in lines
    ]
    if not sheet.words.hanging:
        for plane, left, right in (
            ("side", -m.free_radius - 40.0, m.free_radius + 40.0),
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


def _seen_thrice(sheet: _Sheet, action: Action, step: int) -> list[Item]:
    """Return one action in all three views: full label in one of them, its symbol in the others."""
    words, items = sheet.words, []
    least = words.least
    slots = {plane: _slots(sheet, plane) for plane in sheet.seen}
    for plane, seen in sheet.seen.items():
        labels = {axis: _label(sheet, action, axis, plane) for axis in seen.across}
        own = abs(seen.toward(action.force)) > least
        slot = slots[plane].get(action.name)
        items += arrows(seen, action, step, labels, least=least, ringed=own and slot is None)
        if own:
            items += ring(seen, action, step, _label(sheet, action, seen.sight, plane), least=least, slot=slot)
        items += arc(seen, action, step, _arc_label(sheet, action, seen), least=least, radius=_ARC)
    return items


def _slots(sheet: _Sheet, plane: Plane) -> dict[str, Point]:
    """Return places beside the wheel for rings that would stand on one another or on arrows."""
    seen, m = sheet.seen[plane], sheet.parts.measures
    least = sheet.words.least
    crowd = [action for action in sheet.actions.all if abs(seen.toward(action.force)) > least]
    if plane != "top":  # the road's own stands at the road, away from the others
        crowd = [action for action in crowd if action.name != "contact"]
    if plane == "side":
        step = _PITCH / sheet.scale
        return {
            action.name: (0.33 * m.free_radius, 0.42 * m.free_radius + number * step)
            for number, action in enumerate(reversed(crowd))
        }
    # outboard: inboard run the leaders
    beside = sheet.side * (m.load_line + sheet.parts.below.half_width + _SLOT / sheet.scale)
    start = 6.0 if plane == "rear" else (len(crowd) - 1) * _PITCH / 2
    way = 1.0 if plane == "rear" else -1.0
    return {action.name: (beside, (start + way * number * _PITCH) / sheet.scale) for number, action in enumerate(crowd)}


def _label(sheet: _Sheet, action: Action, axis: Axis, plane: Plane) -> Label:
    """Return the full label in the component's own view, the symbol alone elsewhere."""
    value = getattr(action.force, axis)
    tone: Tone = "reaction" if action.role == "reaction" else "load"
    symbol = f"{{{action.symbol}|{axis}}}" if action.name not in ("weight", "inertia") else f"{{{action.symbol}}}"
    if _HOME[action.name][axis] != plane:
        if action.name in ("weight", "inertia") and sheet.seen[plane].sight != axis:
            return Label(())  # hardly longer than a point: named in their own view
        short = abs(value) < _SHORT * (sheet.seen[plane].view.newtons_per_mm or 1.0)
        if plane == "top" and sheet.seen[plane].sight != axis and short:
            return Label((symbol,), _column(sheet, plane), tone=tone, size=2.3)
        return Label((symbol,), _beside(sheet, action, axis, plane), tone=tone, size=2.3)
    ways = {"x": sheet.words.fore_and_aft, "y": sheet.words.sideways, "z": sheet.words.upright}
    place = _column(sheet, plane)
    lines: tuple[str, ...] = (f"*{symbol} = {sheet.words.force(value)}", f"{ways[axis](value)}, {action.what}")
    if plane == "rear" and action.name in ("weight", "inertia"):
        # short arrows from one point share one label
        if (action.name, axis) != ("weight", "z"):
            return Label(())
        lines += _across(sheet)
    return Label(lines, place, tone=tone, size=2.5)


def _across(sheet: _Sheet) -> tuple[str, ...]:
    """Return what acts across the vehicle on the masses, a line each."""
    words, shown = sheet.words, (sheet.actions.weight, sheet.actions.inertia)
    return tuple(
        f"{words.force(action.force.y)} {words.sideways(action.force.y)}, {action.what}"
        for action in shown
        if not words.nothing(action.force.y)
    )


def _beside(sheet: _Sheet, action: Action, axis: Axis, plane: Plane) -> Literal["left", "right", "above", "below"]:
    """Return where a symbol alone stands: those of the road over, those of the bearing under a level arrow."""
    if axis == sheet.seen[plane].across[0]:
        return "below" if action.role == "reaction" else "above"
    return "right" if plane == "side" or sheet.side < 0 else "left"


def _column(sheet: _Sheet, plane: Plane) -> _Place:
    """Return the column of a view: that of the view from outboard lies outboard."""
    return "left column" if (plane == "side") == (sheet.side > 0) else "right column"


def _arc_label(sheet: _Sheet, action: Action, seen: Seen) -> Label:
    value = getattr(action.couple, seen.sight)
    place = _column(sheet, seen.plane)
    lines = (f"*{{M|{seen.sight}}} = {sheet.words.moment(value)}", action.what)
    # the end of the leader lies on the arc whichever way it turns
    angle = math.radians(-140.0 if place == "left column" else -40.0)
    x, y = (_ARC / sheet.scale * part for part in (math.cos(angle), math.sin(angle)))
    return Label(lines, place, anchor=(-x if seen.view.mirrored else x, y), tone="moment", size=2.5)


def _lengths(sheet: _Sheet, step: int) -> list[Item]:
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
                line_at=sheet.x(_SIDE_X + m.free_radius * sheet.scale + 9.0),
                text=f"{{R|l}} = {text}",
                extension=(False, False),
            )
        )
    return items

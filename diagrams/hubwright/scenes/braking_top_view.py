"""Braking or driving seen from above: the wheel end cut along its axis, its rows, and the caliper from outboard.

Views from above have ISO y (to the left on the sheet) and x (upward on it), that from outboard x and z, real
millimetres from the bearing centre. Upright forces are dots and crosses in rings.
"""

import math
from dataclasses import replace
from typing import Literal

from hubwright.results.model import Results, Vector
from hubwright.scenes.braking_inset import caliper, loaded_radius, wheel_from_outboard
from hubwright.scenes.braking_sheet import BOX, HEIGHT, WIDTH, Sheet, braking_sheet, columns_of
from hubwright.scenes.braking_words import BrakingWording
from hubwright.scenes.case_choice import case_of
from hubwright.scenes.key_entries import moment_entries, standing_entries
from hubwright.scenes.linked_views import Axis, Seen, Stand, arc, arrows, lies_on, ring
from hubwright.scenes.small_forces import OFF_END, along, length, visible
from hubwright.scenes.vocabulary import (
    Dimension,
    Dot,
    Force,
    Item,
    KeyEntry,
    Label,
    Line,
    Note,
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

_ARC, _SMALL_ARC, _CLEAR = 9.0, 6.0, 2.2  # radius of the moment, the small one where the load line is so far off
_RING = {"row_outboard": 15.0, "row_inboard": 9.0}  # of the rows' upright loads, from the axis
_SLOT, _PITCH, _LOWER = 6.0, 6.6, 16.0  # place of the rings beside the wheel, under the heading of the inset
_EDGE = 2.2  # radius of a ring
_SHARES = (0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2)  # of an arrow from its tail, where its leader may end
_TAIL = 0.85  # of an arrow from its tip, where the leader of the farther row's ends
_SHORT = 0.2  # of an arrow from its tail, where its shaft is if it has hardly any
_HEAD = 5.0  # of an arrow, and what its leader keeps off it


def braking_top_view(results: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of one wheel end under a force along the road, from above."""
    state = case_of(results, case, ("braking", "driving"), "braking or driving")
    actions = actions_of(results, state)
    parts = assembly(measures(results, hanging=True))
    words = BrakingWording(results, state, units, parts.measures.bearing.schematic, hanging=False)
    sheet = braking_sheet(results, words, actions, parts)
    items: list[Item] = [
        *solids(parts, "top", sheet.side, "whole", body_only=True),
        *solids(parts, "detail", sheet.side, "detail", without=("knuckle",)),
        *_axes(sheet),
        *wheel_from_outboard(sheet),
        *_forces(sheet),
        *_rows(sheet, 6),
        *_levers(sheet, 5),
        *caliper(sheet, 3),
        loaded_radius(sheet, 5),
    ]
    return Scene(
        name="braking-top-view",
        title=words.braking_title(actions),
        caption=words.braking_caption(actions),
        description=words.braking_description(actions),
        units=units,
        size=(WIDTH, HEIGHT),
        views=(sheet.top.view, sheet.detail.view, sheet.inset.view, View("sheet", (0.0, 0.0), 1.0)),
        items=tuple(items),
        steps=words.braking_steps(actions),
        columns=columns_of(sheet),
        scale_bars=(
            ScaleBar("top", "length", f"From above {sheet.ratios[0]}"),
            ScaleBar("detail", "length", f"Detail {sheet.ratios[1]}"),
            ScaleBar("top", "force", "Forces, all views"),
        ),
        key=(
            KeyEntry("load", "load"),
            KeyEntry("reaction", "reaction"),
            *moment_entries(items),
            KeyEntry("load line", "load line"),
            KeyEntry("turning", "turns: the body"),
            *standing_entries(items),
        ),
        body=actions.closed(),
    )


def _axes(sheet: Sheet) -> list[Item]:
    """Return spindle axis, centres and headings."""
    m, side = sheet.parts.measures, sheet.side
    past = sheet.parts.above.half_width + 30.0
    y = side * m.load_line
    frame = sheet.detail.view.frame
    assert frame is not None
    half = (frame[2] - frame[0]) / 2 / sheet.detail.view.scale
    centre = -((frame[0] + frame[2]) / 2 - sheet.detail.view.origin[0]) / sheet.detail.view.scale
    align: Literal["left", "right"] = "left" if side > 0 else "right"
    return [
        Line("axis-top", "top", 1, points=((y + past, 0.0), (y - past, 0.0)), style="centre", tone="soft", level=19.0),
        Line(
            "axis-detail",
            "detail",
            1,
            points=((centre - half, 0.0), (centre + half, 0.0)),
            style="centre",
            tone="soft",
            level=19.0,
        ),
        Dot("centre-top", "top", 1, at=(0.0, 0.0), radius=0.7, level=26.0),
        Dot("centre-detail", "detail", 1, at=(0.0, 0.0), radius=0.8, level=26.0),
        Note("label-centre", "detail", 1, label=Label(("{C}",), "below", anchor=(0.0, 0.0), size=2.5)),
        Words(
            "words-top",
            "",
            1,
            at_sheet=(sheet.x(10.0), HEIGHT - 4.0),
            lines=(f"*{sheet.top.view.heading}",),
            size=2.4,
            align=align,
        ),
        Words(
            "words-detail",
            "",
            1,
            at_sheet=(sheet.x(BOX[0] + 1.0), BOX[3] + 2.2),
            lines=(f"*{sheet.detail.view.heading}",),
            size=2.4,
            align=align,
        ),
        Words(
            "words-inset",
            "",
            1,
            at_sheet=(sheet.x(BOX[0] + 1.0), BOX[1] - 12.0),
            lines=(f"*{sheet.inset.view.heading}",),
            size=2.4,
            align=align,
        ),
    ]


def _forces(sheet: Sheet) -> list[Item]:
    """Return everything on the body as seen from above: level forces as arrows, upright ones as rings."""
    steps = {"contact": 2, "weight": 3, "inertia": 3, "caliper": 3, "shaft": 4, "bearing": 4}
    seen, m, least = sheet.top, sheet.parts.measures, sheet.least
    # on the side without a column, and in the order in which their points stand, so that no line crosses another:
    # of those on the axis the nearest first
    upright = sorted(
        (a for a in sheet.actions.all if abs(a.force.z) > least),
        key=lambda a: (-round(a.point.x, 6), a.point.y * sheet.side),
    )
    beside = sheet.side * (m.load_line - sheet.parts.above.half_width - _SLOT / seen.view.scale)
    along = abs(m.load_line) * seen.view.scale
    radius = _ARC if abs(_ARC - along) > _CLEAR else _SMALL_ARC
    items: list[Item] = []
    for action in sheet.actions.all:
        step = steps[action.name]
        labels: dict[Axis, Label] = {axis: _label(sheet, action, axis) for axis in seen.across}
        stands: dict[Axis, Stand] = {}
        if action.name == "contact" and lies_on(seen, action, sheet.actions.bearing, "x"):
            stands["x"] = Stand(tip=True)  # it ends where that of the bearing begins
        drawn = arrows(seen, action, step, labels, least=least, ringed=False, stands=stands)
        items += [_led(item, seen, radius) for item in drawn]
        if action in upright:
            slot = (beside, -(_LOWER + upright.index(action) * _PITCH) / seen.view.scale)
            items += ring(seen, action, step, _upright(sheet, action), least=least, slot=slot)
        if action.name == "bearing":
            lines = (f"*{{M|z}} = {sheet.words.moment(action.couple.z)}", action.what)
            # the leader ends on the arc whichever way it turns
            at, *also = (
                (-sheet.side * reach * math.cos(angle), -reach * math.sin(angle))
                for reach, angle in ((radius / seen.view.scale, math.radians(turn)) for turn in (150.0, 120.0, 90.0))
            )
            label = Label(lines, sheet.column(outboard=True), anchor=at, also=tuple(also), tone="moment", size=2.5)
            items += arc(seen, action, step, label, least=least, radius=radius)
    return items


def _upright(sheet: Sheet, action: Action) -> Label:
    """Return the one line beside a ring."""
    tone: Tone = "reaction" if action.role == "reaction" else "load"
    symbol = f"{{{action.symbol}}}" if action.name == "weight" else f"{{{action.symbol}|z}}"
    z = action.force.z
    text = f"{symbol} = {sheet.words.force(z)} {sheet.words.upright(z)}"
    return Label((text,), "right" if sheet.side > 0 else "left", tone=tone, size=2.4)


def _led(item: Item, seen: Seen, arc_radius: float) -> Item:
    """Return an arrow at which a leader ends on the shaft, clear of the arc about the bearing centre."""
    if not isinstance(item, Force) or item.label is None or not item.to_scale:
        return item
    centre, long = seen.view.origin, math.hypot(*item.vector) / (seen.view.newtons_per_mm or 1.0)
    ends = [along(item, seen.view, share) for share in _SHARES if (1.0 - share) * long > _HEAD]
    clear = [end for end in ends if abs(math.dist(seen.view.on_sheet(end), centre) - arc_radius) > _CLEAR]
    if not clear:
        return item
    return replace(item, label=replace(item.label, anchor=clear[0], also=tuple(clear[1:])))


def _label(sheet: Sheet, action: Action, axis: Axis) -> Label:
    value = getattr(action.force, axis)
    words = sheet.words
    tone: Tone = "reaction" if action.role == "reaction" else "load"
    symbol = f"{{{action.symbol}}}" if action.name in ("weight", "inertia") else f"{{{action.symbol}|{axis}}}"
    way = {"x": words.fore_and_aft, "y": words.sideways, "z": words.upright}[axis](value)
    lines = (f"*{symbol} = {words.force(value)}", f"{way}, {action.what}")
    return Label(lines, sheet.column(outboard=True), tone=tone, size=2.5)


def _rows(sheet: Sheet, step: int) -> list[Item]:
    """Return the level loads of both rows as arrows at the pressure centres, the upright ones as rings beside."""
    items: list[Item] = []
    least = sheet.least
    told = zip(sheet.words.row_forces("x"), sheet.words.row_forces("z"), strict=True) if sheet.rows else ()
    for action, (lengthwise, upwards) in zip(sheet.rows, told, strict=True):
        x, y = action.force.x, action.point
        at = sheet.detail.point(y)
        name = action.name.replace("_", "-")
        lines = (f"*{{F|{action.symbol}x}} = {lengthwise}", f"{sheet.words.fore_and_aft(x)} on hub")
        label = Label(lines, sheet.column(outboard=False), tone="reaction", size=2.7)
        items.append(Dot(f"pressure-centre-{name}", "detail", step, at=at, tone="reaction", radius=0.6, level=25.0))
        if abs(x) > least:
            arrow = Force(
                f"reaction-{name}-x",
                "detail",
                step,
                at=at,
                vector=(0.0, x),
                role="reaction",
                label=label,
                level=23.0,
            )
            items.append(_past_the_other(visible(arrow, sheet.detail.view), sheet))
        upright = Action(name, action.symbol, "on hub", "reaction", Vector(0.0, 0.0, action.force.z), action.point)
        # away from the arrow, which ends at the point; the farther row's higher, so that its leader passes the other's
        off = _RING[action.name] / sheet.detail.view.scale
        slot = at[0], off if x > 0 else -off
        z = action.force.z
        text = (
            f"*{{F|{action.symbol}z}} = {upwards}",
            f"{sheet.words.upright(z)} on hub",
        )
        edge = slot[0] - sheet.side * _EDGE / sheet.detail.view.scale, slot[1]  # a leader would strike out dot or cross
        beside = Label(text, sheet.column(outboard=False), anchor=edge, tone="reaction", size=2.5)
        items += ring(sheet.detail, upright, step, beside, least=least, slot=slot)
    return items


def _past_the_other(arrow: Force, sheet: Sheet) -> Force:
    """Return the level load of a row with its words so placed that its leader passes the other row's head.

    The outboard one's words stand farther from the axis: they lead to its tail, the inboard one's nearer to its tip.
    """
    view, outboard = sheet.detail.view, sheet.rows[0]
    tail = _TAIL * length(outboard.force.x, view.newtons_per_mm or 1.0)
    long = length(arrow.vector[1], view.newtons_per_mm or 1.0)
    assert arrow.label is not None
    share = 0.5 if long / 2 > _HEAD else _SHORT
    shaft, tip = along(arrow, view, share), along(arrow, view, 1.0, OFF_END)
    if arrow.at == sheet.detail.point(outboard.point):
        ends = along(arrow, view, 1.0 - _TAIL), along(arrow, view, 0.0, -OFF_END)
    else:
        ends = (shaft, tip) if (1.0 - share) * long < tail else (tip, shaft)
    return replace(arrow, label=replace(arrow.label, anchor=ends[0], also=ends[1:]))


def _levers(sheet: Sheet, step: int) -> list[Item]:
    """Return load line and levers about the upright axis."""
    m, words, side = sheet.parts.measures, sheet.words, sheet.side
    view, y = sheet.top.view, sheet.side * m.load_line
    high = m.free_radius + 3.0 / view.scale
    items: list[Item] = [
        Line(
            "load-line",
            "top",
            step,
            points=((y, -high), (y, high)),
            style="centre",
            tone="load",
            width=0.25,
            level=19.0,
        ),
        Line("centre-plane", "top", step, points=((0.0, -high), (0.0, high)), style="centre", tone="soft", level=18.5),
    ]
    if abs(m.load_line) > 0.05:
        way = "outboard" if m.load_line > 0 else "inboard"
        text = f"{{y|L}} = {words.length(abs(sheet.results.wheel_geometry.load_line_offset))} {way}"
        items.append(
            Dimension(
                "dimension-load-line",
                "top",
                step,
                start=(y, -m.free_radius),
                end=(0.0, -m.free_radius),
                line_at=view.origin[1] - m.free_radius * view.scale - 6.0,
                text=text,
                extension=(False, False),
                side="end" if m.load_line > 0 else "start",
            )
        )
    # below the detail, whose heading stands above
    spread = sheet.results.bearing.effective_spread
    if spread is not None:
        half = side * spread * 500.0
        frame = sheet.detail.view.frame
        assert frame is not None
        foot = (frame[1] - sheet.detail.view.origin[1]) / sheet.detail.view.scale
        items.append(
            Dimension(
                "dimension-spread",
                "detail",
                step,
                start=(half, foot),
                end=(-half, foot),
                line_at=frame[1] - 5.5,
                text=f"{{ℓ}} = {words.length(spread)}",
            )
        )
    return items

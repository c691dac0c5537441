"""The bearing's answer in the wheel-end section: force and moment at its centre, or a force at each row.

Every arrow is a reaction of the results' free body, or their sum; all act on the turning body.
"""

from dataclasses import replace

from hubwright.results.model import Vector
from hubwright.scenes.small_forces import along, length, visible
from hubwright.scenes.vocabulary import LENGTH_OFF_SCALE, Callout, Dot, Force, Item, Label, Line, Moment, Point, View
from hubwright.scenes.wheel_end_drawn import ABOVE_PARTS, GAP, Drawn, Place, centre_note, flat, line_of_sight
from hubwright.scenes.wheel_end_layout import LABELS_INSIDE, corners
from hubwright.scenes.wheel_end_words import Wording

_ARC = 8.2  # radius of the moment's arc on the sheet
_OFF_ARC, _FARTHEST = 1.8, 11.0  # from an arrow's tail to an arc about it, and how far off one about it may begin
_OVER_ARC, _OFF_AXIS = 6.8, 5.6  # of a leader to a level arrow: over the head of the arc, and off the detail's axis
_SLANT = 0.4  # run over rise of the last piece of such a leader
_ON_SHAFT, _OFF_BREAK = 0.3, 0.42  # of an arrow from its tail, on its shaft and, if that is broken, past the break
_LEAST_OPEN = 3.0  # sheet millimetres: a shorter arrow with an open shaft shows no head
_ROOM_INSIDE = LABELS_INSIDE - 1.2  # for a row's force within the detail
_WIDTHS = (0.85, 0.79)  # of a letter of a strong line in cap heights, in kilonewtons and in pounds-force


def reaction_items(d: Drawn, step: int) -> list[Item]:
    """Return the bearing's whole reaction on the turning body: force and moment at the bearing centre."""
    words = d.words
    R = _reaction(words)
    M = words.state.bearing_moment.x
    crossed = not words.nothing(R.x)
    column = d.outboard_column
    items: list[Item] = [Dot("centre", "whole", 3, at=(0.0, 0.0), radius=0.7, level=ABOVE_PARTS + 6)]
    if not words.nothing(R.z):
        label = Label(
            (f"*{{B|z}} = {words.force(R.z)}", f"{words.upright(R.z)} on the hub"),
            column,
            tone="reaction",
            size=2.9,
        )
        items.append(_arrow("B_z", d.layout.whole, step, (0.0, 0.0), (0.0, R.z), label, GAP if crossed else 0.0))
    if not words.nothing(R.y):
        label = Label(
            (f"*{{B|y}} = {words.force(R.y)}", f"{words.sideways(R.y)} on the hub"),
            column,
            tone="reaction",
            size=2.9,
        )
        arrow = _arrow("B_y", d.layout.whole, step, (0.0, 0.0), (R.y, 0.0), label, GAP if crossed else 0.9)
        items += _led(replace(arrow, tip_at_point=False), d.layout.whole, _OVER_ARC, d.layout.side)
    if crossed:
        lines = [f"*{{B|x}} = {words.force(R.x)}", f"{words.fore_and_aft(R.x)} on the hub"]
        M_z = words.state.bearing_moment.z
        if abs(M_z) > words.least:
            sense = words.turning_from_above(-M_z)
            lines.append(f"with {{M|z}} = {words.moment(M_z)}")
            # the longer word leaves no room beside it
            lines += [f"{sense} from above"] if sense == "clockwise" else [sense, "from above"]
        label = Label(tuple(lines), column, tone="reaction", size=2.9)
        items.append(line_of_sight("B_x", "whole", step, (0.0, 0.0), R.x, "reaction", label))
    if abs(M) > words.least:
        # seen from the rear a positive moment about x turns clockwise; the reaction is its opposite
        items.append(
            Moment(
                "M_x",
                "whole",
                step,
                at=(0.0, 0.0),
                newton_metres=M,
                radius=_arc_radius(d, R.z, GAP if crossed else 0.0),
                level=ABOVE_PARTS + 2,
                label=Label(
                    (f"*{{M|x}} = {words.moment(M)}", "bearing on hub"),
                    column,
                    tone="moment",
                    size=2.9,
                ),
            )
        )
    return items


def _reaction(words: Wording) -> Vector:
    reactions = [single.force for single in words.state.free_body.forces if single.kind == "reaction"]
    return Vector(*(sum(getattr(force, axis) for force in reactions) for axis in "xyz"))


def row_items(d: Drawn, step: int) -> list[Item]:
    """Return the two row loads on the hub at the pressure centres, and the axial reaction."""
    words = d.words
    items: list[Item] = [
        Dot("centre", "detail", 4, at=(0.0, 0.0), radius=0.8, level=ABOVE_PARTS + 6),
        centre_note("label-centre", "detail", 4, d, 2.8),
    ]
    if words.state.row_load is None:
        return items
    items += _rows(d, step)
    axial = words.state.free_body.force("axial").force
    if not words.nothing(axial.y):
        axial_lines = (f"*{{B|y}} = {words.force(axial.y)}", f"{words.sideways(axial.y)} on hub")
        label = Label(axial_lines, d.inboard_column, tone="reaction", size=2.6)
        arrow = _arrow("B_y", d.layout.detail, step, (0.0, 0.0), (axial.y, 0.0), label, 1.0)
        # the leader passes the inboard row on the side where that has no arrow
        below = words.state.free_body.force("row_inboard").force.z < 0
        rise = -_OFF_AXIS if below else _OFF_AXIS
        items += _led(replace(arrow, tip_at_point=False), d.layout.detail, rise, -d.layout.side)
    return items


def _led(arrow: Force, view: View, rise: float, way: int) -> list[Item]:
    """Return a level arrow and a thin line up or down from its shaft, at whose end the leader of its words ends.

    The words stand at its height: one straight from there would run on the axis, and look like the arrow's own shaft.
    """
    assert arrow.label is not None
    shaft = along(arrow, view, _ON_SHAFT if arrow.to_scale else _OFF_BREAK)
    end = shaft[0] + way * _SLANT * abs(rise) / view.scale, shaft[1] + rise / view.scale
    thin = Line(
        f"line-{view.name}-{arrow.name}",
        view.name,
        arrow.step,
        points=(shaft, end),
        style="hair",
        tone="reaction",
        level=arrow.level + 1,
        wide_only=True,
    )
    return [replace(arrow, label=replace(arrow.label, anchor=end)), thin]


def _arc_radius(d: Drawn, upright: float, gap: float) -> float:
    """Return the radius of the moment's arc: round a short arrow from below, which it would cut in two."""
    tail = gap + length(upright, d.layout.whole.newtons_per_mm or 1.0, least=_LEAST_OPEN)
    if upright <= 0 or not _ARC - _OFF_ARC < tail < _FARTHEST:
        return _ARC
    return tail + _OFF_ARC


def _rows(d: Drawn, step: int) -> list[Item]:
    """Return the forces of both rows: upright arrows, and those along the line of sight as rings, each with its own."""
    words = d.words
    upright, level = words.row_forces("z"), words.row_forces("x")
    loads = [words.state.free_body.force(name) for name in ("row_outboard", "row_inboard")]
    crossed = any(not words.nothing(load.force.x) for load in loads)
    cap = min(2.6 if crossed else 2.9, _fitting(upright[0], "A"), _fitting(level[0], "Ax") if crossed else 2.9)
    arrows: list[Force] = []
    rings: list[Item] = []
    for n, (symbol, column) in enumerate(zip("AB", (d.outboard_column, d.inboard_column), strict=True)):
        F, at = loads[n].force, flat(loads[n].point)
        if not words.nothing(F.z):
            label = _row_label(symbol, upright[n], words.upright(F.z), column, cap)
            gap = GAP if not words.nothing(F.x) else 0.0
            arrows.append(_arrow(f"F_{symbol}", d.layout.detail, step, at, (0.0, F.z), label, gap))
        if not words.nothing(F.x):
            label = _row_label(f"{symbol}x", level[n], words.fore_and_aft(F.x), column, cap)
            rings.append(line_of_sight(f"F_{symbol}x", "detail", step, at, F.x, "reaction", label))
    return [*_alike(arrows, d.layout.detail), *rings]


def _row_label(symbol: str, size: str, way: str, column: Place, cap: float) -> Label:
    return Label((f"*{{F|{symbol}}} = {size}", f"{way} on hub"), column, tone="reaction", size=cap)


def _fitting(size: str, symbol: str) -> float:
    """Return the cap height at which symbol and size have room in one line of the column within the detail."""
    return _ROOM_INSIDE / (_WIDTHS[size.endswith("lbf")] * len(f"F{symbol} = {size}"))


def _alike(arrows: list[Force], view: View) -> list[Force]:
    """Return arrows that are read beside one another: where one is not to scale, no shorter one is to scale."""
    if all(arrow.to_scale for arrow in arrows):
        return arrows
    return [visible(arrow, view, least=LENGTH_OFF_SCALE) if arrow.to_scale else arrow for arrow in arrows]


def _arrow(name: str, view: View, step: int, at: Point, vector: Point, label: Label, gap: float) -> Force:
    """Return a reaction that ends at its point, above all parts; one too small to see says that it is not to scale."""
    level = ABOVE_PARTS + 3
    arrow = Force(name, view.name, step, at=at, vector=vector, role="reaction", label=label, gap=gap, level=level)
    return visible(arrow, view, least=_LEAST_OPEN)


def pressure_centres(d: Drawn, step: int) -> list[Item]:
    """Return the contact lines of both rows and the points where they meet the axis."""
    side, b = d.layout.side, d.parts.bearing
    items: list[Item] = []
    if d.words.results.bearing.effective_spread is None:
        return items
    for i, (start, end) in enumerate(b.contact_lines):
        for sign in (1.0, -1.0):
            points = ((side * start[0], sign * start[1]), (side * end[0], sign * end[1]))
            items.append(
                Line(
                    f"contact-line-{i}-{'upper' if sign > 0 else 'lower'}",
                    "detail",
                    step,
                    points=points,
                    style="centre",
                    tone="reaction",
                    level=ABOVE_PARTS,
                )
            )
    for i, (a, r) in enumerate(b.contact_points):
        for sign in (1.0, -1.0):
            items.append(
                Dot(
                    f"contact-{i}-{'upper' if sign > 0 else 'lower'}",
                    "detail",
                    step,
                    at=(side * a, sign * r),
                    tone="reaction",
                    radius=0.45,
                    level=ABOVE_PARTS,
                )
            )
    for i, (_, end) in enumerate(b.contact_lines):
        items.append(
            Dot(
                f"pressure-centre-{i}",
                "detail",
                step,
                at=(side * end[0], 0.0),
                tone="reaction",
                radius=0.6,
                level=ABOVE_PARTS + 5,
            )
        )
    return items


def locating_items(d: Drawn) -> list[Item]:
    """Return the window of the detail in the whole wheel, its letter, and the lines that join them."""
    whole, detail = d.layout.whole, d.layout.detail
    assert detail.frame is not None
    x0, y0, x1, y1 = detail.frame
    ratio = whole.scale / detail.scale

    def place(x: float, y: float) -> Point:
        return (
            whole.origin[0] + (x - detail.origin[0]) * ratio,
            whole.origin[1] + (y - detail.origin[1]) * ratio,
        )

    low, high = place(x0, y0), place(x1, y1)
    near, far = (high[0], x0) if d.layout.side > 0 else (low[0], x1)
    sheet = d.layout
    items: list[Item] = [
        Line("window", "sheet", 1, points=corners(low, high), style="thin", tone="soft", level=ABOVE_PARTS - 1),
        Line("window-upper", "sheet", 1, points=((near, high[1]), (far, y1 - 4.0)), style="hair", tone="faint"),
        Line("window-lower", "sheet", 1, points=((near, low[1]), (far, y0 + 4.0)), style="hair", tone="faint"),
        Callout("callout-detail", "sheet", 1, at=(near, high[1] - 0.3 * (high[1] - low[1])), label=Label(("A",))),
        sheet.words("detail-name", "sheet", 1, (sheet.x(far) + 1.0, y0 - 4.4), f"*Detail A   {sheet.detail_ratio}"),
    ]
    # where the views are drawings of their own there is no window between them
    return [replace(item, wide_only=True) for item in items]

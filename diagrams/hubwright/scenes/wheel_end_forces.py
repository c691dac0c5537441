"""The forces, moments and levers of the wheel-end section: what acts on the turning body, item by item.

Views look forward from the rear: their first axis is ISO y, their second z; x points away from the viewer. Every arrow
is a component of a single force of the results' free body, or of the sum of the bearing's reactions.
"""

from dataclasses import dataclass
from typing import Literal

from hubwright.results.model import SingleForce, Vector
from hubwright.scenes.vocabulary import (
    ClosedBody,
    Dot,
    Force,
    Ground,
    Item,
    Label,
    Line,
    Moment,
    Normal,
    Note,
    Point,
    Role,
    Tone,
)
from hubwright.scenes.wheel_end_layout import LENS, Layout, corners, fractions
from hubwright.scenes.wheel_end_parts.assembly import Assembly
from hubwright.scenes.wheel_end_words import Wording

Place = Literal["left column", "right column"]

_MM = 1e3
_ABOVE_PARTS = 20.0
_GAP = 1.9  # between a point and an arrow, where a force along the line of sight is drawn on the point
_ARROWS = 12  # of the contact pressure; an even number leaves the middle to the resultant
_ARC = 8.2


@dataclass(frozen=True)
class Drawn:
    """What the makers of items share."""

    layout: Layout
    parts: Assembly
    words: Wording

    @property
    def outboard_column(self) -> Place:
        """Return the place of labels outboard of what they name."""
        return "left column" if self.layout.side > 0 else "right column"

    @property
    def inboard_column(self) -> Place:
        """Return the place of labels inboard of what they name."""
        return "right column" if self.layout.side > 0 else "left column"


def closed_body(words: Wording) -> ClosedBody:
    """Return the results' free body for the check that every drawing makes."""
    body = words.state.free_body
    return ClosedBody(
        forces=tuple(
            (s.name, (s.force.x, s.force.y, s.force.z), (s.point.x, s.point.y, s.point.z)) for s in body.forces
        ),
        couples=tuple((c.name, (c.moment.x, c.moment.y, c.moment.z)) for c in body.couples),
    )


def contact_items(d: Drawn, step: int) -> list[Item]:
    """Return the contact pressure, its resultant, the forces across and along the road, and the ground."""
    words, parts = d.words, d.parts
    if words.hanging:
        return []
    contact = words.state.free_body.force("contact")
    F, at = contact.force, _flat(contact.point)
    below = parts.below
    y, half = at[0], 0.96 * below.tread_half_width
    road = -parts.measures.loaded_radius
    items: list[Item] = []
    items += _ground(d, y, road)
    ledge = words.state.kind == "ledge"
    surface = "edge on tire" if ledge else "road on tire"
    if ledge:
        line = ((y - half - 25.0, at[1]), (y + half + 25.0, at[1]))
        items.append(Line("ledge", "whole", step, points=line, style="phantom", level=_ABOVE_PARTS))
    else:
        items += _pressure(d, step, (y, at[1]), half, F.z)
    crossed = not words.nothing(F.x)
    # at a ledge the arrow begins within the tire: its label stands below the road
    middle = (at[1] - road) * d.layout.whole.scale - abs(F.z) / (d.layout.whole.newtons_per_mm or 1.0) / 2
    drop = max(middle + 7.0, 0.0) if ledge else 0.0
    items.append(
        Force(
            "F_z",
            "whole",
            step,
            at=at,
            vector=(0.0, F.z),
            gap=_GAP if crossed else 0.35,
            level=_ABOVE_PARTS + 3,
            label=Label(
                (f"*{{F|z}} = {words.force(F.z)}", surface), _free_side(d), tone="load", size=3.0, nudge=(0.0, -drop)
            ),
        )
    )
    if not words.nothing(F.y):
        # beside the shaft of F_z, outboard: the other side is that of its label
        along = abs(F.y) / (d.layout.whole.newtons_per_mm or 1.0) if words.sideways(F.y) == "outboard" else 0.0
        items.append(
            Force(
                "F_y",
                "whole",
                step,
                at=at,
                vector=(F.y, 0.0),
                tip_at_point=False,
                gap=_GAP if crossed else 0.0,
                level=_ABOVE_PARTS + 4,
                label=Label(
                    (f"*{{F|y}} = {words.force(F.y)}", f"{words.sideways(F.y)} on tire"),
                    "left" if d.layout.side > 0 else "right",
                    tone="load",
                    size=2.8,
                    nudge=(d.layout.side * (along - 1.3), -7.5),
                ),
            )
        )
    if crossed:
        items.append(
            _normal(
                "F_x",
                "whole",
                step,
                at,
                F.x,
                "applied",
                Label(
                    (f"*{{F|x}} = {words.force(F.x)}", f"{words.fore_and_aft(F.x)} on tire"),
                    d.outboard_column,
                    tone="load",
                    size=2.8,
                ),
            )
        )
    return items


def _ground(d: Drawn, y: float, road: float) -> list[Item]:
    """Return the road beside the tread, as far outboard as the lens leaves it room."""
    whole, half = d.layout.whole, d.parts.below.tread_half_width
    lens_edge = (d.layout.x(LENS[2] + 1.5) - whole.origin[0]) / -whole.scale * d.layout.side
    items: list[Item] = []
    for name, way in (("outboard", 1.0), ("inboard", -1.0)):
        start = d.layout.side * y + way * (half + 3.0 / whole.scale)
        end = start + way * 10.0 / whole.scale
        if way > 0:
            end = min(end, lens_edge)
        if abs(end - start) * whole.scale > 3.0 and (end - start) * way > 0:
            side = d.layout.side
            items.append(Ground(f"ground-{name}", "whole", 1, start=(side * start, road), end=(side * end, road)))
    return items


def _free_side(d: Drawn) -> Literal["left", "right"]:
    return "right" if d.layout.side > 0 else "left"


def _pressure(d: Drawn, step: int, at: Point, half: float, newtons: float) -> list[Item]:
    """Return the small arrows whose lengths add up to the contact force, and the line along their tails."""
    scale, per_mm = d.layout.whole.scale, d.layout.whole.newtons_per_mm or 1.0
    tails: list[Point] = []
    items: list[Item] = []
    for i, share in enumerate(fractions(_ARROWS)):
        y = at[0] + half * ((i + 0.5) / _ARROWS * 2 - 1)
        # arrows stand clear of the tread's outline on the sheet
        tails.append((y, at[1] - (share * newtons / per_mm + 0.35) / scale))
        items.append(
            Force(
                f"pressure-{i + 1}",
                "whole",
                step,
                at=(y, at[1]),
                vector=(0.0, share * newtons),
                slender=True,
                gap=0.35,
                level=_ABOVE_PARTS,
            )
        )
    items.append(
        Line("pressure-envelope", "whole", step, points=tuple(tails), style="thin", tone="load", level=_ABOVE_PARTS)
    )
    return items


def small_items(d: Drawn, step: int) -> list[Item]:
    """Return weights and inertia forces: to the common scale in the whole wheel, longer in the lens."""
    words = d.words
    body = words.state.free_body
    items: list[Item] = []
    for name in ("wheel", "hub"):
        for kind in ("weight", "inertia"):
            single = body.force(f"{kind}_{name}")
            items += _small(d, single, "whole", step, label=None)
            items += _small(d, single, "lens", step, label=_small_label(d, name) if kind == "weight" else None)
    return items + _lens(d, step) + _caliper(d, step)


def _small(d: Drawn, single: SingleForce, view: str, step: int, label: Label | None) -> list[Item]:
    F, at = single.force, _flat(single.point)
    items: list[Item] = []
    crossed = view == "lens" and not d.words.nothing(d.words.state.free_body.force("inertia_hub").force.x)
    if not d.words.nothing(F.y) or not d.words.nothing(F.z):
        items.append(
            Force(
                single.name,
                view,
                step,
                at=at,
                vector=(F.y, F.z),
                tip_at_point=False,
                gap=_GAP if crossed else 0.0,
                level=_ABOVE_PARTS + 2,
                label=label,
            )
        )
    if not d.words.nothing(F.x) and view == "lens":
        items.append(_normal(single.name, view, step, at, F.x, "applied", label))
    return items


def _small_label(d: Drawn, name: str) -> Label:
    """Return the label of a mass: its weight, and its inertia if it has any; the two stand apart."""
    words = d.words
    body = words.state.free_body
    other = "hub" if name == "wheel" else "wheel"
    own, across = body.force(f"weight_{name}").point.y, body.force(f"weight_{other}").point.y
    leftward = own > across or (own == across and name == "wheel")
    weight, inertia = words.weight(f"weight_{name}"), words.weight(f"inertia_{name}")
    what = "tire, wheel" if name == "wheel" else "hub"
    lines = (what, weight) if words.still else (what, f"weight {weight}", f"inertia {inertia}")
    width = 0.78 * max(len(line) for line in lines)  # half of it, on the sheet
    apart = abs(own - across) * _MM * d.layout.lens.scale / 2
    nudge = max(width + 1.0 - apart, 0.0)
    return Label(lines, "below", tone="load", size=2.1, nudge=(-nudge if leftward else nudge, 0.0))


def _lens(d: Drawn, step: int) -> list[Item]:
    """Return what the lens shows beside the forces: axis, load line, hub face, centre, and its heading."""
    m, lens = d.parts.measures, d.layout.lens
    side = d.layout.side
    assert lens.frame is not None
    x0, _, x1, y1 = lens.frame
    reach = (x1 - x0) / 2 / lens.scale
    middle = -((x0 + x1) / 2 - lens.origin[0]) / lens.scale
    high, low = 4.0 / lens.scale, -1.0 / lens.scale
    line, face = side * m.load_line, side * m.face
    what = "Weights" if d.words.still else "Weights, inertia"
    heading = f"{what}: {d.layout.lens_factor:g} times longer"
    return [
        Line(
            "lens-axis",
            "lens",
            step,
            points=((middle - reach, 0.0), (middle + reach, 0.0)),
            style="centre",
            tone="soft",
        ),
        Line("lens-load-line", "lens", step, points=((line, high), (line, low)), style="centre", tone="load"),
        Line("lens-face", "lens", step, points=((face, 2.0 / lens.scale), (face, -2.0 / lens.scale)), tone="soft"),
        Dot("lens-centre", "lens", step, at=(0.0, 0.0), radius=0.6, level=_ABOVE_PARTS),
        d.layout.words("lens-heading", step, (LENS[0] + 2.5, y1 - 4.4), (heading,), 2.1),
    ]


def _caliper(d: Drawn, step: int) -> list[Item]:
    words = d.words
    caliper = words.state.free_body.force("caliper")
    F, at = caliper.force, _flat(caliper.point)
    items: list[Item] = []
    lines: list[str] = []
    if not words.nothing(F.z):
        lines.append(f"{words.force(F.z)} {words.upright(F.z)}")
    if not words.nothing(F.x):
        lines.append(f"{words.force(F.x)} {words.fore_and_aft(F.x)}")
    if not lines:
        return []
    label = Label(("*Caliper on disc", *lines), d.outboard_column, tone="load", size=2.8)
    if not words.nothing(F.z):
        items.append(
            Force(
                "caliper_z",
                "whole",
                step,
                at=at,
                vector=(0.0, F.z),
                level=_ABOVE_PARTS + 2,
                label=label,
                gap=0.0 if words.nothing(F.x) else _GAP,
            )
        )
    if not words.nothing(F.x):
        items.append(_normal("caliper_x", "whole", step, at, F.x, "applied", None if items else label))
    return items


def reaction_items(d: Drawn, step: int) -> list[Item]:
    """Return the bearing's whole reaction on the turning body: force and moment at the bearing centre."""
    words = d.words
    R = _reaction(words)
    M = words.state.bearing_moment.x
    crossed = not words.nothing(R.x)
    column = d.outboard_column
    items: list[Item] = [Dot("centre", "whole", 3, at=(0.0, 0.0), radius=0.7, level=_ABOVE_PARTS + 6)]
    if not words.nothing(R.z):
        label = Label(
            (f"*{{B|z}} = {words.force(R.z)}", f"{words.upright(R.z)} on the hub"),
            column,
            tone="reaction",
            size=2.9,
        )
        items.append(
            Force(
                "B_z",
                "whole",
                step,
                at=(0.0, 0.0),
                vector=(0.0, R.z),
                role="reaction",
                label=label,
                gap=_GAP if crossed else 0.0,
                level=_ABOVE_PARTS + 3,
            )
        )
    if not words.nothing(R.y):
        label = Label(
            (f"*{{B|y}} = {words.force(R.y)}", f"{words.sideways(R.y)} on the hub"),
            column,
            tone="reaction",
            size=2.9,
        )
        items.append(
            Force(
                "B_y",
                "whole",
                step,
                at=(0.0, 0.0),
                vector=(R.y, 0.0),
                role="reaction",
                tip_at_point=False,
                label=label,
                gap=_GAP if crossed else 0.9,
                level=_ABOVE_PARTS + 3,
            )
        )
    if crossed:
        lines = [f"*{{B|x}} = {words.force(R.x)}", f"{words.fore_and_aft(R.x)} on the hub"]
        if abs(words.state.bearing_moment.z) > 1e-6 * words.largest:
            lines.append(f"with {{M|z}} = {words.moment(words.state.bearing_moment.z)}")
        label = Label(tuple(lines), column, tone="reaction", size=2.9)
        items.append(_normal("B_x", "whole", step, (0.0, 0.0), R.x, "reaction", label))
    if abs(M) > 1e-6 * words.largest:
        # seen from the rear a positive moment about x turns clockwise; the reaction is its opposite
        items.append(
            Moment(
                "M_x",
                "whole",
                step,
                at=(0.0, 0.0),
                newton_metres=M,
                radius=_ARC,
                level=_ABOVE_PARTS + 2,
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
        Dot("centre", "detail", 3, at=(0.0, 0.0), radius=0.8, level=_ABOVE_PARTS + 6),
        Note("label-centre", "detail", 3, label=Label(("{C}",), "below", anchor=(0.0, 0.0), size=2.8), level=30.0),
    ]
    if words.state.row_load is None:
        return items
    for name, symbol, column in (
        ("row_outboard", "A", d.outboard_column),
        ("row_inboard", "B", d.inboard_column),
    ):
        single = words.state.free_body.force(name)
        F, at = single.force, _flat(single.point)
        crossed = not words.nothing(F.x)
        lines = [f"*{{F|{symbol}}}", f"*{words.force(F.z)}", f"{words.upright(F.z)} on hub"]
        if words.nothing(F.z):
            lines = [f"*{{F|{symbol}}}"]
        if crossed:
            lines += [f"*{words.force(F.x)}", f"{words.fore_and_aft(F.x)} on hub"]
        if symbol == "B" and not words.nothing(F.z):
            lines[:2] = [f"*{{F|B}} = {words.force(F.z)}"]
        label = Label(tuple(lines), column, tone="reaction", size=2.6 if crossed else 2.9)
        if not words.nothing(F.z):
            items.append(
                Force(
                    f"F_{symbol}",
                    "detail",
                    step,
                    at=at,
                    vector=(0.0, F.z),
                    role="reaction",
                    label=label,
                    gap=_GAP if crossed else 0.0,
                    level=_ABOVE_PARTS + 3,
                )
            )
        if crossed:
            alone = words.nothing(F.z)
            items.append(_normal(f"F_{symbol}x", "detail", step, at, F.x, "reaction", label if alone else None))
    axial = words.state.free_body.force("axial").force
    if not words.nothing(axial.y):
        lines = (f"*{{B|y}} = {words.force(axial.y)}", words.sideways(axial.y))
        place, away = _free_quarter(d)
        items.append(
            Force(
                "B_y",
                "detail",
                step,
                at=(0.0, 0.0),
                vector=(axial.y, 0.0),
                role="reaction",
                tip_at_point=False,
                gap=1.0,
                level=_ABOVE_PARTS + 3,
                label=Label(lines, place, tone="reaction", size=2.4, nudge=(away, -0.8 if place == "above" else 0.4)),
            )
        )
    return items


def _free_quarter(d: Drawn) -> tuple[Literal["above", "below"], float]:
    """Return where beside the centre no arrow of a row stands, and the way on the sheet."""
    rows = [d.words.state.free_body.force(f"row_{name}").force.z for name in ("outboard", "inboard")]
    # an arrow that points up stands below the axis
    inboard = 11.5 * d.layout.side
    if rows[1] <= 0:
        return "below", inboard
    return ("below", -inboard) if rows[0] <= 0 else ("above", inboard)


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
                    level=_ABOVE_PARTS,
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
                    level=_ABOVE_PARTS,
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
                level=_ABOVE_PARTS + 5,
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
    tone: Tone = "faint"
    return [
        Line("window", "sheet", 1, points=corners(low, high), style="thin", tone="soft", level=_ABOVE_PARTS - 1),
        Line("window-upper", "sheet", 1, points=((near, high[1]), (far, y1 - 4.0)), style="hair", tone=tone),
        Line("window-lower", "sheet", 1, points=((near, low[1]), (far, y0 + 4.0)), style="hair", tone=tone),
        d.layout.words("window-letter", 1, (d.layout.x(near) + 1.0, high[1] - 3.0), ("*A",), 2.4),
        d.layout.words(
            "detail-name", 1, (d.layout.x(far) + 1.0, y0 - 4.4), (f"*Detail A   {d.layout.detail_ratio}",), 2.4
        ),
    ]


def _normal(name: str, view: str, step: int, at: Point, newtons: float, role: Role, label: Label | None) -> Normal:
    # x points away from a viewer behind the vehicle
    return Normal(name, view, step, at=at, newtons=-newtons, role=role, label=label, level=_ABOVE_PARTS + 7)


def _flat(point: Vector) -> Point:
    return point.y * _MM, point.z * _MM

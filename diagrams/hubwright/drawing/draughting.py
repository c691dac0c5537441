"""From a scene to a drawing: every item becomes named marks on the sheet, and every label finds its place.

It knows how things look and no physics; it refuses a free body that does not close.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import pairwise
from math import hypot

import numpy as np

from hubwright.drawing.arrows import (
    NORMAL_RADIUS,
    force_marks,
    head_size,
    moment_angles,
    moment_marks,
    normal_marks,
    on_circle,
)
from hubwright.drawing.closure import refuse_open_body
from hubwright.drawing.dimensions import draw_dimension
from hubwright.drawing.faces import DROP, Block, block, line, plain
from hubwright.drawing.geometry import Array, Box, Segment, box_of, extended, hatching, meets, rounded_box
from hubwright.drawing.layout import Ground, Kind, Obstacle, Placed, Wanted, find_conflicts, place_labels
from hubwright.drawing.marks import Disc, Drawing, Group, Layer, Lettering, Mark, Shape, TextBox, ViewGroup
from hubwright.drawing.palette import line_token, material_token, text_token
from hubwright.drawing.strip import draw_strip
from hubwright.drawing.symbols import STYLES, SUPPORT_HEIGHT, dot_marks, ground_marks, support_marks
from hubwright.scenes import vocabulary as v

SHEET = "sheet"  # the name of the group of what lies in no view
_PREFIXES = ("force-", "reaction-", "moment-", "dimension-", "part-", "label-")
_HATCH_WIDTH = 0.13
_LEADER, _LEADER_HALO = 0.2, 0.6
_FRAME_RADIUS = 4.0
_RANK: dict[type[v.Item], int] = {v.Part: 0, v.Curve: 1, v.Ground: 1, v.Support: 2, v.Line: 2, v.Dimension: 3, v.Dot: 5}
_ARROW_RANK = 4
_STRETCH = 0.05  # arrows shorter than this many sheet millimetres are not drawn: no printer shows them


@dataclass
class Sheet:
    """What is gathered while the items of a scene are drawn."""

    scene: v.Scene
    ground: Ground
    wanted: list[Wanted] = field(default_factory=list)
    texts: list[TextBox] = field(default_factory=list)
    names: dict[str, int] = field(default_factory=dict)

    def unique(self, name: str) -> str:
        """Return a name that no other group has."""
        self.names[name] = self.names.get(name, 0) + 1
        return name if self.names[name] == 1 else f"{name}-{self.names[name]}"

    def keep_off(self, name: str, kind: Kind, points: Segment, margin: float = 0.0) -> None:
        """Make labels keep off a segment."""
        x0, x1 = sorted((points[0], points[2]))
        y0, y1 = sorted((points[1], points[3]))
        straight = x0 == x1 or y0 == y1
        box = (x0 - margin, y0 - margin, x1 + margin, y1 + margin)
        self.ground.obstacles.append(Obstacle(name, kind, box, None if straight else points))


def draw_wide(scene: v.Scene) -> Drawing:
    """Return a scene laid out on its own sheet."""
    refuse_open_body(scene)
    sheet = Sheet(scene, Ground(scene.size))
    strip = draw_strip(scene)
    for name, box in strip.boxes:
        sheet.ground.obstacles.append(Obstacle(name, "text", box))
        sheet.texts.append(TextBox(name, "", box))
    views = {view.name: view for view in scene.views}
    drawn: list[tuple[v.Item, Group]] = []
    ordered = sorted(enumerate(scene.items), key=lambda pair: _order(pair[0], pair[1]))
    # words and dimensions claim their places before any label does
    for _, item in ordered:
        drawn.append((item, _draw(item, views.get(item.view), sheet)))
    placed = place_labels(sheet.wanted, scene, sheet.ground)
    labels = {each.wanted.owner: _label_group(each, sheet) for each in placed}
    frames = {view.name: view.frame for view in scene.views if view.frame is not None}
    layers = _layers(scene, drawn, labels, sheet)
    conflicts = find_conflicts(placed, sheet.ground)
    return Drawing(
        scene=scene,
        size=scene.size,
        layers=layers,
        foot=strip.groups,
        frames=frames,
        texts=tuple(sheet.texts),
        conflicts=tuple(conflicts),
    )


def _order(index: int, item: v.Item) -> tuple[float, int, int]:
    return item.level, _RANK.get(type(item), _ARROW_RANK), index


def _layers(
    scene: v.Scene, drawn: list[tuple[v.Item, Group]], labels: dict[str, Group], sheet: Sheet
) -> tuple[Layer, ...]:
    """Return what each step draws, view by view in the scene's order, the sheet last; labels over everything else."""
    order = [view.name for view in scene.views]
    last = max((item.step for item in scene.items), default=1)
    layers = []
    opened: set[str] = set()
    for step in range(1, max(last, len(scene.steps)) + 1):
        by_view: dict[str, list[Group]] = {}
        by_label: dict[str, list[Group]] = {}
        for item, group in drawn:
            if item.step == step:
                name = item.view if item.view in order else SHEET
                if group.children:
                    by_view.setdefault(name, []).append(group)
                if group.name in labels:
                    by_label.setdefault(name, []).append(labels[group.name])
        views = []
        for name in [*order, SHEET]:
            groups = by_view.get(name, []) + by_label.get(name, [])
            if not groups:
                continue
            data: tuple[tuple[str, str], ...] = ()
            if name != SHEET:
                view = scene.view(name)
                if name not in opened:
                    opened.add(name)
                    groups = [*_frame(view, sheet), *groups]
                data = _scales(view)
            views.append(ViewGroup(name, tuple(groups), data))
        layers.append(Layer(step, tuple(views)))
    return tuple(layers)


def _scales(view: v.View) -> tuple[tuple[str, str], ...]:
    data = [("mm-per-mm", f"{1 / view.scale:.9g}")]
    if view.newtons_per_mm is not None:
        data.append(("newtons-per-mm", f"{view.newtons_per_mm:.9g}"))
    if view.vertical_per_mm is not None:
        data.append(("units-per-mm", f"{view.vertical_per_mm:.9g}"))
    return tuple(data)


def _frame(view: v.View, sheet: Sheet) -> list[Group]:
    """Return the paper of a framed view and, over it later, nothing: the outline is drawn with it, under the parts."""
    groups: list[Group] = []
    if view.frame is not None:
        ring = rounded_box(view.frame, _FRAME_RADIUS)
        groups.append(Group(f"frame-{view.name}", (Shape((ring,), True, "paper", "soft", 0.5),)))
        if view.title:
            title = line(f"*{view.title}", 2.4)
            at = (view.frame[0] + 1.0, view.frame[1] - 1.6 - title.cap)
            groups.append(Group(f"title-{view.name}", (Lettering(at, title, "soft"),)))
            box = (at[0], at[1] - DROP * title.cap, at[0] + title.width, at[1] + title.cap)
            sheet.texts.append(TextBox(f"title-{view.name}", plain(view.title), box))
    return groups


def _draw(item: v.Item, view: v.View | None, sheet: Sheet) -> Group:
    if view is None:
        if isinstance(item, v.Words):
            return _words(item, sheet)
        raise ValueError(f"the item '{item.name}' lies in the view '{item.view}', which the scene does not have")
    for kind, draw in _DRAWERS.items():
        if isinstance(item, kind):
            return draw(item, view, sheet)
    raise TypeError(f"drawing does not know items such as {type(item).__name__}")


def _name(item: v.Item, prefix: str, sheet: Sheet) -> str:
    return sheet.unique(item.name if item.name.startswith(_PREFIXES) else prefix + item.name)


def _on_sheet(points: tuple[v.Point, ...], view: v.View) -> Array:
    array = np.asarray(points, dtype=float)
    sign = -1.0 if view.mirrored else 1.0
    rise = view.scale if view.vertical_per_mm is None else 1.0 / view.vertical_per_mm
    placed = array * (sign * view.scale, rise)
    placed += view.origin
    return np.asarray(placed)


def _part(item: v.Part, view: v.View, sheet: Sheet) -> Group:
    rings = tuple(_on_sheet(ring, view) for ring in item.rings if len(ring) > 2)
    fill = material_token(item.material)
    outline = line_token(item.tone) if item.outline > 0 else None
    marks: list[Mark]
    if item.hatch is None:
        marks = [Shape(rings, True, fill, outline, item.outline)]
    else:
        strokes = hatching(list(rings), item.hatch_pitch, item.hatch)
        marks = [Shape(rings, True, fill), Shape(tuple(strokes), line="hatch", width=_HATCH_WIDTH, cap="butt")]
        if outline:
            marks.append(Shape(rings, True, None, outline, item.outline))
    if not rings:
        marks = []
    return Group(_name(item, "part-", sheet), tuple(marks), clip=view.name if view.frame else None)


def _line(item: v.Line, view: v.View, sheet: Sheet) -> Group:
    name = _name(item, "line-", sheet)
    points = extended(_on_sheet(item.points, view), item.extend)
    width, dashes = STYLES[item.style]
    colour = line_token(item.tone)
    clipped = item.clipped and view.frame is not None
    if item.style in ("centre", "phantom") or item.tone in ("load", "reaction", "moment", "changed"):
        for a, b in pairwise(points):
            segment = (float(a[0]), float(a[1]), float(b[0]), float(b[1]))
            if not clipped or view.frame is None or meets(segment, view.frame):
                sheet.keep_off(name, "line", _within(segment, view.frame if clipped else None), 0.2)
    marks = (
        Shape((points,), line=colour, width=item.width or width, dashes=dashes, cap="butt" if dashes else "round"),
    )
    return Group(name, marks, clip=view.name if clipped else None)


def _within(segment: Segment, frame: Box | None) -> Segment:
    """Return a level or upright segment cut at a frame; others stay, their excess is outside the drawing anyway."""
    if frame is None:
        return segment
    x0, y0, x1, y1 = segment
    if x0 == x1:
        return x0, min(max(y0, frame[1]), frame[3]), x1, min(max(y1, frame[1]), frame[3])
    if y0 == y1:
        return min(max(x0, frame[0]), frame[2]), y0, min(max(x1, frame[0]), frame[2]), y1
    return segment


def _dot(item: v.Dot, view: v.View, sheet: Sheet) -> Group:
    name = _name(item, "point-", sheet)
    at = view.on_sheet(item.at)
    r = item.radius
    sheet.ground.obstacles.append(Obstacle(name, "mark", (at[0] - r, at[1] - r, at[0] + r, at[1] + r)))
    return Group(name, dot_marks(at, item))


def _force(item: v.Force, view: v.View, sheet: Sheet) -> Group:
    if view.newtons_per_mm is None:
        raise ValueError(f"the force '{item.name}' lies in the view '{view.name}', which has no force scale")
    name = _name(item, "reaction-" if item.role == "reaction" else "force-", sheet)
    size = hypot(*item.vector)
    length = size / view.newtons_per_mm
    at = view.on_sheet(item.at)
    if length < _STRETCH:
        _want(item.label, name, view, sheet, at, (at[0], at[1], at[0], at[1]))
        return Group(name, (), data=(("newtons", f"{size:.9g}"),))
    sign = -1.0 if view.mirrored else 1.0
    dx, dy = sign * item.vector[0] / size, item.vector[1] / size
    if item.tip_at_point:
        tip = (at[0] - item.gap * dx, at[1] - item.gap * dy)
        tail = (tip[0] - length * dx, tip[1] - length * dy)
    else:
        tail = (at[0] + item.gap * dx, at[1] + item.gap * dy)
        tip = (tail[0] + length * dx, tail[1] + length * dy)
    head_length, head_width = head_size(length, role=item.role, slender=item.slender)
    neck = (tip[0] - head_length * dx, tip[1] - head_length * dy)
    sheet.keep_off(name, "head", (*neck, *tip), head_width / 2 * (0.5 if item.slender else 1.0))
    sheet.keep_off(name, "shaft", (*tail, *neck), 0.4)
    half = head_width / 2
    box = box_of(np.array([tail, tip]))
    box = (box[0] - half * abs(dy), box[1] - half * abs(dx), box[2] + half * abs(dy), box[3] + half * abs(dx))
    third = (tail[0] + (tip[0] - tail[0]) * 0.3, tail[1] + (tip[1] - tail[1]) * 0.3)
    _want(item.label, name, view, sheet, third, box, tail=(tail, (-dx, -dy)))
    marks = force_marks(tail, tip, role=item.role, slender=item.slender, halo=not item.slender and item.gap == 0.0)
    return Group(name, marks, (("newtons", f"{size:.9g}"),), (*tail, *tip))


def _normal(item: v.Normal, view: v.View, sheet: Sheet) -> Group:
    name = _name(item, "reaction-" if item.role == "reaction" else "force-", sheet)
    at, r = view.on_sheet(item.at), NORMAL_RADIUS
    box = (at[0] - r, at[1] - r, at[0] + r, at[1] + r)
    _want(item.label, name, view, sheet, at, box)
    if item.newtons == 0:
        return Group(name, ())
    sheet.ground.obstacles.append(Obstacle(name, "mark", box))
    return Group(name, normal_marks(at, toward=item.newtons > 0, role=item.role))


def _moment(item: v.Moment, view: v.View, sheet: Sheet) -> Group:
    name = _name(item, "moment-", sheet)
    at, r = view.on_sheet(item.at), item.radius
    turns = item.newton_metres > 0
    start, end = moment_angles(counter_clockwise=turns)
    _want(
        item.label,
        name,
        view,
        sheet,
        on_circle(at, r, (2 * start + end) / 3 if not turns else -140.0),
        (at[0] - r, at[1] - r, at[0] + r, at[1] + r),
    )
    data = (("newton-metres", f"{item.newton_metres:.9g}"),)
    if item.newton_metres == 0:
        return Group(name, (), data)
    angles = np.linspace(start, end, 9)
    for a, b in pairwise(angles):
        sheet.keep_off(name, "mark", (*on_circle(at, r, a), *on_circle(at, r, b)), 0.4)
    tip = on_circle(at, r, end)
    sheet.ground.obstacles.append(Obstacle(name, "head", (tip[0] - 1.8, tip[1] - 1.8, tip[0] + 1.8, tip[1] + 1.8)))
    ends = (*on_circle(at, r, start), *tip)
    return Group(name, moment_marks(at, r, counter_clockwise=turns), data, ends)


def _dimension(item: v.Dimension, view: v.View, sheet: Sheet) -> Group:
    name = _name(item, "dimension-", sheet)
    drawn = draw_dimension(item, view, sheet.ground.cost)
    for segment in drawn.lines:
        sheet.keep_off(name, "dimension", segment, 0.1)
    sheet.ground.obstacles.append(Obstacle(name, "text", drawn.text_box))
    sheet.texts.append(TextBox(name, plain(item.text), drawn.text_box))
    data = () if drawn.millimetres is None else (("mm", f"{drawn.millimetres:.9g}"),)
    return Group(name, drawn.marks, data, drawn.ends)


def _note(item: v.Note, view: v.View, sheet: Sheet) -> Group:
    name = _name(item, "label-", sheet)
    at = view.on_sheet(item.label.anchor or (0.0, 0.0))
    _want(item.label, name, view, sheet, at, (at[0], at[1], at[0], at[1]))
    return Group(name, ())


def _words(item: v.Words, sheet: Sheet) -> Group:
    name = sheet.unique(item.name)
    set_block = block(item.lines, item.size)
    x, y = item.at_sheet
    share = {"left": 0.0, "centre": 0.5, "right": 1.0}[item.align]
    top = y + set_block.baselines[0] if set_block.baselines else y
    marks = tuple(
        Lettering((x - share * each.width, top - down), each, text_token(item.tone))
        for each, down in zip(set_block.lines, set_block.baselines, strict=True)
    )
    left = x - share * set_block.width
    box = (left, top - set_block.height - DROP * item.size, left + set_block.width, top)
    sheet.ground.obstacles.append(Obstacle(name, "text", box))
    sheet.texts.append(TextBox(name, " ".join(plain(text) for text in item.lines), box))
    return Group(name, marks)


def _ground(item: v.Ground, view: v.View, sheet: Sheet) -> Group:
    name = _name(item, "ground-", sheet)
    a, b = view.on_sheet(item.start), view.on_sheet(item.end)
    sheet.keep_off(name, "line", (*a, *b), 0.8)
    return Group(name, ground_marks(a, b))


def _support(item: v.Support, view: v.View, sheet: Sheet) -> Group:
    name = _name(item, "support-", sheet)
    x, y = view.on_sheet(item.at)
    up = SUPPORT_HEIGHT if item.kind == "knife edges" else 0.0
    reach = (x - 3, y - SUPPORT_HEIGHT - 1.5, x + 3, y + up)
    sheet.ground.obstacles.append(Obstacle(name, "mark", reach))
    return Group(name, support_marks((x, y), item))


def _curve(item: v.Curve, view: v.View, sheet: Sheet) -> Group:
    name = _name(item, "curve-", sheet)
    points = _on_sheet(item.points, view)
    colour = line_token(item.tone)
    marks: list[Mark] = []
    if item.filled:
        zero = view.origin[1]
        ring = np.vstack([[points[0, 0], zero], points, [points[-1, 0], zero]])
        strokes = hatching([ring], 1.6, 90.0)
        marks.append(Shape(tuple(strokes), line=colour, width=0.13, cap="butt"))
    marks.append(Shape((points,), line=colour, width=item.width))
    step = max(1, len(points) // 40)
    coarse = points[::step] if len(points) > 40 else points
    for a, b in pairwise(coarse):
        sheet.keep_off(name, "line", (float(a[0]), float(a[1]), float(b[0]), float(b[1])), 0.2)
    return Group(name, tuple(marks))


_DRAWERS: dict[type[v.Item], Callable[..., Group]] = {
    v.Part: _part,
    v.Line: _line,
    v.Dot: _dot,
    v.Force: _force,
    v.Normal: _normal,
    v.Moment: _moment,
    v.Dimension: _dimension,
    v.Note: _note,
    v.Ground: _ground,
    v.Support: _support,
    v.Curve: _curve,
    v.Words: lambda item, view, sheet: _words(item, sheet),
}


def _want(
    label: v.Label | None,
    owner: str,
    view: v.View,
    sheet: Sheet,
    point: v.Point,
    box: Box,
    tail: tuple[v.Point, v.Point] | None = None,
) -> None:
    """Ask for a place for an item's label."""
    if label is None or not label.lines:
        return
    if label.anchor is not None:
        point = view.on_sheet(label.anchor)
    name = sheet.unique(owner if owner.startswith("label-") else f"label-{owner}")
    sheet.wanted.append(Wanted(name, owner, label, _label_block(label), point, box, tail))


def _label_block(label: v.Label) -> Block:
    return block(label.lines, label.size)


def _label_group(placed: Placed, sheet: Sheet) -> Group:
    """Return the words of a label with its leader, over a paper edge that keeps both clear of what they cross."""
    label, set_block = placed.wanted.label, placed.wanted.block
    colour = text_token(label.tone)
    marks: list[Mark] = []
    if placed.leader:
        line_colour = colour if label.tone not in ("ink", "soft", "faint") else "soft"
        points = np.array(placed.leader)
        marks.append(Shape((points,), line="paper", width=_LEADER_HALO, cap="butt"))
        marks.append(Shape((points,), line=line_colour, width=_LEADER))
        if label.leader_dot:
            marks.append(Disc(placed.leader[-1], 0.42, line_colour, "paper", 0.12))
    share = {"left": 0.0, "centre": 0.5, "right": 1.0}[placed.align]
    for each, down in zip(set_block.lines, set_block.baselines, strict=True):
        x = placed.left + share * (set_block.width - each.width)
        marks.append(
            Lettering(
                (x, placed.top - down), each, colour, halo=0.0 if placed.wanted.label.place.endswith("column") else 0.9
            )
        )
    words = " ".join(plain(text) for text in label.lines)
    sheet.texts.append(TextBox(placed.wanted.name, words, placed.box))
    return Group(placed.wanted.name, tuple(marks))

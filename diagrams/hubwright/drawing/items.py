"""How each item of a scene is drawn: its marks on the sheet, what labels keep off, the label that it asks for."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from math import hypot

import numpy as np

from hubwright.drawing.arrows import (
    ARC,
    ARC_OPEN,
    NORMAL_RADIUS,
    force_marks,
    head_size,
    moment_angles,
    moment_marks,
    normal_marks,
    on_circle,
)
from hubwright.drawing.axes import axis_ends, draw_axis
from hubwright.drawing.faces import DROP, block, plain
from hubwright.drawing.geometry import Array, Box, Segment, box_of, extended, hatching, meets, rectangle
from hubwright.drawing.marks import Group, Lettering, Mark, Shape
from hubwright.drawing.measured import angular_dimension, dimension, leader_dimension
from hubwright.drawing.palette import line_token, material_token, text_token
from hubwright.drawing.sheet import TEXT_HALO, Sheet
from hubwright.drawing.symbols import (
    STYLES,
    damper_lines,
    dot_marks,
    ground_marks,
    spring_line,
    support_boxes,
    support_marks,
    whisker,
)
from hubwright.scenes import vocabulary as v

_HATCH_WIDTH = 0.13
_SYMBOL_WIDTH = 0.4  # of springs and dampers
_SPAN, _SPAN_EDGE = 0.4, 0.35  # of a bar: width of its lines and of their edge of paper
_SHORTEST_ARROW = 0.05  # sheet millimetres; shorter ones no printer shows
_BESIDE_BASE = 0.5  # within which a leader would run along the base of a head
_SHAFT_POINTS = (0.3, 0.5, 0.15, 0.65)  # where on a shaft a leader may end, from the tail
_BROKEN_POINTS = (0.42, 0.5, 0.04)  # on a shaft that is broken, off its break
_RING_POINTS = (40.0, -40.0, 140.0, -140.0, 90.0, -90.0)  # clear of the leaders of what stands in the same place
_ARC_POINTS = (-140.0, -110.0, -70.0, -40.0)


def draw_item(item: v.Item, view: v.View | None, sheet: Sheet) -> Group:
    """Return an item's named marks; what it writes and blocks is noted on the sheet."""
    if isinstance(item, v.Words):
        return _words(item, sheet)
    if view is None:
        raise ValueError(f"the item '{item.name}' lies in the view '{item.view}', which the scene does not have")
    for kind, draw in _DRAWERS.items():
        if isinstance(item, kind):
            return draw(item, view, sheet)
    raise TypeError(f"drawing does not know items such as {type(item).__name__}")


def _on_sheet(points: tuple[v.Point, ...], view: v.View) -> Array:
    array = np.asarray(points, dtype=float)
    sign = -1.0 if view.mirrored else 1.0
    rise = view.scale if view.vertical_per_mm is None else 1.0 / view.vertical_per_mm
    placed = array * (sign * view.scale, rise)
    placed += view.origin
    return np.asarray(placed)


def _part(item: v.Part, view: v.View, sheet: Sheet) -> Group:
    rings = tuple(_on_sheet(ring, view) for ring in item.rings if len(ring) > 2)
    if not rings:
        return Group(sheet.group_name(item, "part-"), ())
    name = sheet.group_name(item, "part-")
    for ring in rings:
        if item.kept_clear == "whole":
            sheet.keep_off_box(name, "mark", box_of(ring))
        elif item.kept_clear == "edge" and sheet.letters is None:  # a letter has its own ground, in its ring
            for a, b in pairwise(np.vstack([ring, ring[:1]]).tolist()):
                sheet.keep_off(name, "line", (*a, *b), item.outline / 2)
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
    return Group(name, tuple(marks), clip=view.name if view.frame else None)


def _line(item: v.Line, view: v.View, sheet: Sheet) -> Group:
    name = sheet.group_name(item, "line-")
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
    name = sheet.group_name(item, "point-")
    at = view.on_sheet(item.at)
    r = item.radius
    sheet.keep_off_box(name, "mark", (at[0] - r, at[1] - r, at[0] + r, at[1] + r))
    return Group(name, dot_marks(at, item))


def _force(item: v.Force, view: v.View, sheet: Sheet) -> Group:
    if view.newtons_per_mm is None:
        raise ValueError(f"the force '{item.name}' lies in the view '{view.name}', which has no force scale")
    name = sheet.group_name(item, "reaction-" if item.role == "reaction" else "force-")
    size = hypot(*item.vector)
    length = size / view.newtons_per_mm
    if not item.to_scale and size > 0:
        length = v.LENGTH_OFF_SCALE
    at = view.on_sheet(item.at)
    data: tuple[tuple[str, str], ...] = (("newtons", f"{size:.9g}"),) if item.to_scale else (("scale", "none"),)
    if item.role == "resultant":
        data += (("role", "resultant"),)
    if length < _SHORTEST_ARROW:
        sheet.want(item, item.label, owner=name, view=view, points=(at,), box=(*at, *at))
        return Group(name, (), data)
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
    if not item.slender:
        wide = (-dy * head_width / 2, dx * head_width / 2)
        base = (neck[0] - wide[0], neck[1] - wide[1], neck[0] + wide[0], neck[1] + wide[1])
        sheet.keep_off(name, "base", base, _BESIDE_BASE)
    sheet.keep_off(name, "shaft", (*tail, *neck), 0.4)
    half = head_width / 2
    box = box_of(np.array([tail, tip]))
    box = (box[0] - half * abs(dy), box[1] - half * abs(dx), box[2] + half * abs(dy), box[3] + half * abs(dx))
    shares = _SHAFT_POINTS if item.to_scale else _BROKEN_POINTS
    points = tuple((tail[0] + length * dx * share, tail[1] + length * dy * share) for share in shares)
    away = (tail, (-dx, -dy))
    sheet.want(item, item.label, owner=name, view=view, points=points, box=box, tail=away)
    halo, broken = not item.slender and item.gap == 0.0, not item.to_scale
    marks = force_marks(tail, tip, role=item.role, slender=item.slender, halo=halo, broken=broken)
    return Group(name, marks, data, (*tail, *tip))


def _normal(item: v.Normal, view: v.View, sheet: Sheet) -> Group:
    name = sheet.group_name(item, "reaction-" if item.role == "reaction" else "force-")
    at, r = view.on_sheet(item.at), NORMAL_RADIUS
    box = (at[0] - r, at[1] - r, at[0] + r, at[1] + r)
    points = (at, *(on_circle(at, r, angle) for angle in _RING_POINTS if item.newtons))
    sheet.want(item, item.label, owner=name, view=view, points=points, box=box)
    if item.newtons == 0:
        return Group(name, ())
    sheet.keep_off_box(name, "mark", box)
    sheet.circles[name] = (at, r)
    data = (("sight", "toward" if item.newtons > 0 else "away"),)
    return Group(name, normal_marks(at, toward=item.newtons > 0, role=item.role), data)


def _moment(item: v.Moment, view: v.View, sheet: Sheet) -> Group:
    name = sheet.group_name(item, "moment-")
    at, r = view.on_sheet(item.at), item.radius
    turns = item.newton_metres > 0
    start, end = moment_angles(counter_clockwise=turns)
    angles = _ARC_POINTS if turns else tuple(180.0 - angle for angle in _ARC_POINTS)
    points = tuple(on_circle(at, r, angle) for angle in angles)
    if item.label is not None and item.label.place.endswith("column"):  # the near side first, lest a leader cross it
        outward = 1.0 if item.label.place.startswith("right") else -1.0
        points = tuple(sorted(points, key=lambda point: -outward * round(point[0] - at[0], 6)))
    around = (at[0] - r, at[1] - r, at[0] + r, at[1] + r)
    sheet.want(item, item.label, owner=name, view=view, points=points, box=around)
    data = (("newton-metres", f"{item.newton_metres:.9g}"), ("role", item.role))
    if item.newton_metres == 0:
        return Group(name, (), data)
    half = (ARC_OPEN if item.role == "reaction" else ARC) / 2 + 0.2
    for a, b in pairwise(np.linspace(start, end, 9)):
        sheet.keep_off(name, "mark", (*on_circle(at, r, a), *on_circle(at, r, b)), half)
    tip = on_circle(at, r, end)
    sheet.keep_off_box(name, "head", (tip[0] - 1.8, tip[1] - 1.8, tip[0] + 1.8, tip[1] + 1.8))
    ends = (*on_circle(at, r, start), *tip)
    return Group(name, moment_marks(at, r, counter_clockwise=turns, role=item.role), data, ends)


def _note(item: v.Note, view: v.View, sheet: Sheet) -> Group:
    name = sheet.group_name(item, "label-")
    at = view.on_sheet(item.label.anchor or (0.0, 0.0))
    sheet.want(item, item.label, owner=name, view=view, points=(at,), box=(*at, *at))
    return Group(name, ())


def _callout(item: v.Callout, view: v.View, sheet: Sheet) -> Group:
    name = sheet.group_name(item, "callout-")
    at = view.on_sheet(item.at)
    sheet.want(item, item.label, owner=name, view=view, points=(at,), box=(*at, *at), callout=item.form)
    return Group(name, ())


def _spring(item: v.Spring, view: v.View, sheet: Sheet) -> Group:
    points = spring_line(view.on_sheet(item.start), view.on_sheet(item.end), item)
    return _symbol(sheet.group_name(item, "spring-"), (points,), item, view, sheet)


def _damper(item: v.Damper, view: v.View, sheet: Sheet) -> Group:
    lines = damper_lines(view.on_sheet(item.start), view.on_sheet(item.end), item)
    return _symbol(sheet.group_name(item, "damper-"), lines, item, view, sheet)


def _symbol(name: str, lines: tuple[Array, ...], item: v.Spring | v.Damper, view: v.View, sheet: Sheet) -> Group:
    a, b = view.on_sheet(item.start), view.on_sheet(item.end)
    sheet.keep_off(name, "shaft", (*a, *b), item.width / 2)
    shape = Shape(lines, line=line_token(item.tone), width=_SYMBOL_WIDTH, mitred=True, exact=True)
    return Group(name, (shape,), ends=(*a, *b))


def _words(item: v.Words, sheet: Sheet) -> Group:
    name = sheet.unique(item.name)
    set_block = block(item.lines, item.size)
    x, y = item.at_sheet
    share = {"left": 0.0, "centre": 0.5, "right": 1.0}[item.align]
    top = y + set_block.baselines[0] if set_block.baselines else y
    marks = tuple(
        Lettering((x - share * each.width, top - down), each, text_token(item.tone), halo=TEXT_HALO * item.halo)
        for each, down in zip(set_block.lines, set_block.baselines, strict=True)
    )
    left = x - share * set_block.width
    box = (left, top - set_block.height - DROP * item.size, left + set_block.width, top)
    sheet.write(name, " ".join(plain(text) for text in item.lines), box)
    return Group(name, marks)


def _ground(item: v.Ground, view: v.View, sheet: Sheet) -> Group:
    name = sheet.group_name(item, "ground-")
    a, b = view.on_sheet(item.start), view.on_sheet(item.end)
    sheet.keep_off(name, "line", (*a, *b), 0.8)
    return Group(name, ground_marks(a, b))


def _support(item: v.Support, view: v.View, sheet: Sheet) -> Group:
    name = sheet.group_name(item, "support-")
    at = view.on_sheet(item.at)
    for box in support_boxes(at, item):
        sheet.keep_off_box(name, "mark", box)
    return Group(name, support_marks(at, item))


def _curve(item: v.Curve, view: v.View, sheet: Sheet) -> Group:
    name = sheet.group_name(item, "curve-")
    points = _on_sheet(item.points, view)
    colour = line_token(item.tone)
    marks: list[Mark] = []
    if item.filled:
        zero = view.origin[1]
        ring = np.vstack([[points[0, 0], zero], points, [points[-1, 0], zero]])
        strokes = hatching([ring], 1.6, 90.0)
        marks.append(Shape(tuple(strokes), line=colour, width=0.13, cap="butt"))
    dashes = STYLES["hidden"][1] if item.dashed else ()
    marks.append(Shape((points,), line=colour, width=item.width, dashes=dashes, cap="butt" if dashes else "round"))
    step = max(1, len(points) // 40)
    coarse = np.vstack([points[:-1:step], points[-1:]])
    for a, b in pairwise(coarse):
        sheet.keep_off(name, "line", (float(a[0]), float(a[1]), float(b[0]), float(b[1])), 0.2)
    return Group(name, tuple(marks))


def _bar(item: v.Bar, view: v.View, sheet: Sheet) -> Group:
    name = sheet.group_name(item, "bar-")
    (x0, y), (x1, _) = view.on_sheet((item.start, item.at)), view.on_sheet((item.end, item.at))
    ends = [x0, x1, *(view.on_sheet((value, item.at))[0] for value in item.span or ())]
    half = item.thick / 2
    box = (min(ends), y - half, max(ends), y + half)
    sheet.keep_off_box(name, "mark", box)
    sheet.want(item, item.label, owner=name, view=view, points=((x1, y), ((x0 + x1) / 2, y)), box=box)
    ring = rectangle((min(x0, x1), y - half, max(x0, x1), y + half))
    colour = line_token(item.tone)
    outline = min(0.5, max(abs(x1 - x0) / 4, 0.1))  # a short open bar stays open
    fill, width = ("paper", outline) if item.is_open else (colour, 0.2)
    marks = [Shape((ring,), True, fill, colour, width, mitred=True, exact=True)]
    if item.span is not None:
        lines = whisker(ends[2], ends[3], y, 0.3 * item.thick)
        edge = Shape(lines, line="paper", width=_SPAN + 2 * _SPAN_EDGE, cap="butt")  # over a bar it would hardly show
        marks += [edge, Shape(lines, line="ink", width=_SPAN, cap="butt")]
    return Group(name, tuple(marks), (("value", f"{item.end - item.start:.9g}"),), (x0, y, x1, y))


def _axis(item: v.Axis, view: v.View, sheet: Sheet) -> Group:
    name = sheet.group_name(item, "axis-")
    drawn = draw_axis(item, view)
    for words, box in drawn.texts:
        sheet.write(name, words, box)
    a, b = axis_ends(item, view)
    sheet.keep_off(name, "line", (*a, *b), 0.2)
    return Group(name, drawn.marks)


_DRAWERS: dict[type[v.Item], Callable[..., Group]] = {
    v.Part: _part,
    v.Line: _line,
    v.Dot: _dot,
    v.Force: _force,
    v.Normal: _normal,
    v.Moment: _moment,
    v.Dimension: dimension,
    v.AngularDimension: angular_dimension,
    v.LeaderDimension: leader_dimension,
    v.Spring: _spring,
    v.Damper: _damper,
    v.Callout: _callout,
    v.Note: _note,
    v.Ground: _ground,
    v.Support: _support,
    v.Curve: _curve,
    v.Bar: _bar,
    v.Axis: _axis,
}

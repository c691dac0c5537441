"""How much of a sheet the items of a view fill.

Sheet millimetres.
"""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from hubwright.drawing.arrows import NORMAL_RADIUS
from hubwright.drawing.axes import axis_ends, axis_room
from hubwright.drawing.geometry import Array, Box, around, box_of
from hubwright.drawing.measured import arc_points
from hubwright.drawing.symbols import support_boxes
from hubwright.scenes import vocabulary as v


def view_box(items: Iterable[v.Item], view: v.View, *, dimensions: bool) -> Box | None:
    """Return the box that a view's items fill, or nothing for a view of lines and words alone."""
    boxes = [
        box
        for item in items
        if dimensions or not isinstance(item, v.Dimension | v.AngularDimension | v.LeaderDimension)
        for box in (axis_room(item, view) if dimensions and isinstance(item, v.Axis) else item_box(item, view),)
        if box is not None
    ]
    if not boxes:
        return None
    if view.frame is not None:
        boxes.append(view.frame)
    return around(boxes)


def item_box(item: v.Item, view: v.View) -> Box | None:
    """Return the box that an item fills, a part cut at the frame; lines, words and marks count for nothing."""
    points: Array
    if isinstance(item, v.Part) and item.rings:
        points = np.array([view.on_sheet(point) for ring in item.rings for point in ring])
    elif isinstance(item, v.Force) and view.newtons_per_mm is not None:
        at = np.array(view.on_sheet(item.at))
        along = np.array(item.vector) / view.newtons_per_mm * (-1.0 if view.mirrored else 1.0, 1.0)
        if not item.to_scale:
            along *= v.LENGTH_OFF_SCALE / (np.hypot(*along) or 1.0)
        points = np.array([at, at - along if item.tip_at_point else at + along])
    elif isinstance(item, v.Moment):
        x, y = view.on_sheet(item.at)
        points = np.array([[x - item.radius, y - item.radius], [x + item.radius, y + item.radius]])
    elif isinstance(item, v.Normal):
        x, y = view.on_sheet(item.at)
        points = np.array([[x - NORMAL_RADIUS, y - NORMAL_RADIUS], [x + NORMAL_RADIUS, y + NORMAL_RADIUS]])
    elif isinstance(item, v.Dimension):
        ends = [view.on_sheet(item.start), view.on_sheet(item.end)]
        level = item.direction == "horizontal"
        points = np.array([*ends, *((x, item.line_at) if level else (item.line_at, y) for x, y in ends)])
    elif isinstance(item, v.AngularDimension):
        points = arc_points(item, view)
    elif isinstance(item, v.LeaderDimension | v.Spring | v.Damper | v.Ground):
        points = np.array([view.on_sheet(item.start), view.on_sheet(item.end)])
    elif isinstance(item, v.Axis):
        points = np.array(axis_ends(item, view))
    elif isinstance(item, v.Curve) and item.points:
        points = np.array([view.on_sheet(point) for point in item.points])
    elif isinstance(item, v.Bar):
        values = (item.start, item.end, *(item.span or ()))
        y = view.on_sheet((0.0, item.at))[1]
        xs = [view.on_sheet((value, item.at))[0] for value in values]
        points = np.array([[min(xs), y - item.thick / 2], [max(xs), y + item.thick / 2]])
    elif isinstance(item, v.Support):
        boxes = support_boxes(view.on_sheet(item.at), item)
        points = np.array([corner for box in boxes for corner in (box[:2], box[2:])])
    else:
        return None
    box = box_of(points)
    if view.frame is not None and isinstance(item, v.Part):
        frame = view.frame
        box = (max(box[0], frame[0]), max(box[1], frame[1]), min(box[2], frame[2]), min(box[3], frame[3]))
        if box[0] >= box[2] or box[1] >= box[3]:
            return None
    return box

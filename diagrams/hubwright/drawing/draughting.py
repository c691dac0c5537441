"""From a scene to a drawing: every item becomes named marks on the sheet, and every label finds its place.

It knows how things look and no physics; it refuses a free body that does not close.
"""

from __future__ import annotations

from collections.abc import Mapping

from hubwright.drawing.closure import refuse_open_body
from hubwright.drawing.faces import DROP, line, plain
from hubwright.drawing.geometry import rounded_box
from hubwright.drawing.items import draw_item
from hubwright.drawing.layout import place_labels
from hubwright.drawing.marks import FRAME_RADIUS, Drawing, Group, Layer, Lettering, Shape, ViewGroup
from hubwright.drawing.measured import claim_lines
from hubwright.drawing.obstacles import Ground
from hubwright.drawing.ring_ends import on_what_they_name
from hubwright.drawing.sheet import Sheet
from hubwright.drawing.strip import draw_strip
from hubwright.scenes import vocabulary as v

SHEET = "sheet"  # the name of the group of what lies in no view
_RANK: dict[type[v.Item], int] = {v.Part: 0, v.Axis: 0, v.Support: 2, v.Line: 2, v.Dimension: 3, v.Dot: 5}
_RANK |= dict.fromkeys((v.Curve, v.Bar, v.Ground), 1)
_RANK |= dict.fromkeys((v.AngularDimension, v.LeaderDimension), 3)
_ARROW_RANK = 4


def draw_sheet(scene: v.Scene, *, letters: Mapping[str, str] | None = None) -> Drawing:
    """Return a scene laid out on its own sheet; `letters` by item stand in rings instead of labels if given."""
    refuse_open_body(scene)
    sheet = Sheet(scene, Ground(scene.size), letters)
    strip = draw_strip(scene)
    for name, box in strip.boxes:
        sheet.write(name, "", box)
    views = {view.name: view for view in scene.views}
    frames = {view.name: _frame(view, sheet) for view in scene.views if view.frame is not None}
    groups: dict[int, Group] = {}
    # words and arrows stand where they must; then dimensions find room for their text, and labels after them
    for item in scene.items:
        if isinstance(item, v.Dimension) and item.view in views:
            claim_lines(item, views[item.view], sheet)
    for index in sorted(range(len(scene.items)), key=lambda i: isinstance(scene.items[i], v.Dimension)):
        item = scene.items[index]
        groups[index] = draw_item(item, views.get(item.view), sheet)
    drawn = [(item, groups[i]) for i, item in sorted(enumerate(scene.items), key=lambda pair: _order(*pair))]
    wanted = sheet.wanted
    if letters is not None:
        wanted = on_what_they_name(wanted, drawn, {view.name: view.frame for view in scene.views if view.frame})
    placed = place_labels(wanted, scene, sheet.ground)
    labels = {each.wanted.owner: sheet.label_group(each) for each in placed}
    layers = _layers(scene, drawn, labels, frames)
    return Drawing(
        scene=scene,
        size=scene.size,
        layers=layers,
        foot=strip.groups,
        frames={view.name: view.frame for view in scene.views if view.frame is not None},
        texts=tuple(sheet.texts),
    )


def _order(index: int, item: v.Item) -> tuple[float, int, int]:
    return item.level, _RANK.get(type(item), _ARROW_RANK), index


def _layers(
    scene: v.Scene,
    drawn: list[tuple[v.Item, Group]],
    labels: dict[str, Group],
    frames: dict[str, tuple[Group, Group]],
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
        for name in dict.fromkeys((*order, SHEET)):  # a scene may have a view of that name
            below, above = by_view.get(name, []), by_label.get(name, [])
            if not below and not above:
                continue
            if name in frames and name not in opened:
                opened.add(name)
                paper, edge = frames[name]
                below = [paper, *below, edge]
            data = _scales(scene.view(name)) if name != SHEET else ()
            views.append(ViewGroup(name, (*below, *above), data))
        layers.append(Layer(step, tuple(views)))
    return tuple(layers)


def _scales(view: v.View) -> tuple[tuple[str, str], ...]:
    data = [("mm-per-mm", f"{1 / view.scale:.9g}")]
    if view.newtons_per_mm is not None:
        data.append(("newtons-per-mm", f"{view.newtons_per_mm:.9g}"))
    if view.vertical_per_mm is not None:
        data.append(("units-per-mm", f"{view.vertical_per_mm:.9g}"))
    if view.mirrored:
        data.append(("abscissa", "leftward"))
    return tuple(data)


def _frame(view: v.View, sheet: Sheet) -> tuple[Group, Group]:
    """Return the paper under a framed view and, over what is clipped by it, its edge and title."""
    assert view.frame is not None
    x0, y0, x1, y1 = view.frame
    ring = rounded_box(view.frame, FRAME_RADIUS)
    paper = Group(f"frame-{view.name}", (Shape((ring,), True, "paper"),))
    for edge in ((x0, y0, x1, y0), (x0, y1, x1, y1), (x0, y0, x0, y1), (x1, y0, x1, y1)):
        sheet.keep_off(f"frame-{view.name}", "frame", edge, 0.25)
    outline = Shape((ring,), True, None, "soft", 0.5)
    if not view.title:
        return paper, Group(f"edge-{view.name}", (outline,))
    title = line(f"*{view.title}", 2.4)
    at = (x0 + 1.0, y0 - 1.6 - title.cap)
    box = (at[0], at[1] - DROP * title.cap, at[0] + title.width, at[1] + title.cap)
    sheet.write(f"edge-{view.name}", plain(view.title), box)
    return paper, Group(f"edge-{view.name}", (outline, Lettering(at, title, "soft")))

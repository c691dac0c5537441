"""The narrow form of a scene for phones: views become sheets of their own, letters in rings for labels, a key as data.

Sheet millimetres. The same scene is laid out again; nothing about it is told twice. Views that stand one above another
on one axis of lengths, such as a beam's diagrams, stay together.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import count

from hubwright.drawing.dimensions import TEXT
from hubwright.drawing.draughting import draw_sheet
from hubwright.drawing.extents import view_box
from hubwright.drawing.faces import LEADING, line, wrapped
from hubwright.drawing.geometry import Segment, around, inside, off
from hubwright.drawing.marks import BalloonKey, Drawing
from hubwright.drawing.narrow_bars import clear_of, parted, rows_of, words_of
from hubwright.drawing.narrow_fit import WIDTH, Fit, closer
from hubwright.scenes import vocabulary as v

_FOOT, _BARE_FOOT = 21.0, 0.0
_BEYOND = 4.0  # how far centre lines may run on beyond what is drawn
_HEADING = 3.0  # between a row and its heading
_BESIDE = 8.0  # how far above or below a row its heading may stand on the wide sheet
_NAME, _TOP, _NAMED = 2.5, 6.5, 3.5  # cap height of a view's name, its first baseline from the top, room for it
_LEFT, _RIGHT = 4.0, 4.0
_UPRIGHT, _NEAR_LINE = 0.05, 2.5  # a line that leads to the end of a dimension: how upright, and how near it comes
_ROOM_FOR_NAME = 9.0  # over the words of the highest row of bars
_LABELLED = (v.Force, v.Normal, v.Moment, v.Note, v.Bar, v.AngularDimension, v.LeaderDimension, v.Callout)
_WITHIN = 2.0  # from a moment's arc to the frame around it
_LEAST_ARC = 7.0  # radius of an angle's arc
_PER_STEP = 3  # letters of part names; loads, reactions and dimensions always get theirs
_RATIO_TEXT = re.compile(r"\d+(?:\.\d+)?\s*:\s*\d+(?:\.\d+)?")
_OF_SEVERAL = re.compile(r",? (?:all|both) \w+$")  # of which views a bar speaks on the wide sheet
_DETAIL_MARK = re.compile(r"\*?[A-Z]")


def draw_narrow(scene: v.Scene) -> tuple[Drawing, ...]:
    """Return one drawing for each view or stack of views that shows something; letters run on."""
    letters = _letters()
    panels = [
        _Narrow(scene, views, letters)
        for views in _stacks(scene)
        if any(view_box(_items_of(scene, view), view, dimensions=False) for view in views)
    ]
    for panel in panels:
        panel.level_with([each for each in panels if panel.compared == each.compared])
    return tuple(panel.drawing() for panel in panels)


def _stacks(scene: v.Scene) -> list[list[v.View]]:
    """Return the views, a beam and its diagrams on one axis of lengths together; all others stand alone."""
    plotted = {_axis(view) for view in scene.views if view.vertical_per_mm is not None}
    charts = {item.view for item in scene.items if isinstance(item, v.Bar)}  # two may happen to have like axes
    stacks: dict[object, list[v.View]] = {}
    for view in scene.views:
        stacked = view.frame is None and _axis(view) in plotted and view.name not in charts
        stacks.setdefault(_axis(view) if stacked else view.name, []).append(view)
    return list(stacks.values())


def _axis(view: v.View) -> tuple[float, float, bool]:
    return view.origin[0], view.scale, view.mirrored


def _items_of(scene: v.Scene, view: v.View) -> tuple[v.Item, ...]:
    items = (item for item in scene.items if item.view == view.name and not item.wide_only)
    return tuple(item for item in items if not isinstance(item, v.Words))


def _bars_of(scene: v.Scene, views: Sequence[v.View]) -> tuple[v.ScaleBar, ...]:
    """Return the bars of views: their own, and one of lengths that on the wide sheet another view or words speak of."""
    names, first = {view.name for view in views}, views[0]
    bars = tuple(bar for bar in scene.scale_bars if bar.view in names)
    if first.vertical_per_mm is not None or any(bar.quantity == "length" for bar in bars):
        return bars  # what a plot measures are no lengths of the drawing
    if not any(isinstance(item, v.Part | v.Dimension) for item in _items_of(scene, first)):
        return bars  # forces alone, such as a polygon of them, have no scale of lengths
    lengths = [bar for bar in scene.scale_bars if bar.quantity == "length"]
    if _RATIO_TEXT.search(first.heading) or any(scene.view(bar.view).scale == first.scale for bar in lengths):
        return v.ScaleBar(first.name, "length", "Scale 1 : 1"), *bars
    return bars


def _letters() -> Iterator[str]:
    for i in count():
        yield chr(ord("a") + i % 26) * (1 + i // 26)


def _named(view: v.View) -> tuple[str, ...]:
    """Return the lines of what a view is called; what stands there of its scale is for the bar to say."""
    name = _RATIO_TEXT.sub("", view.heading).strip()
    return tuple(f"*{text}" for text in wrapped(name, _NAME, WIDTH - _LEFT - _RIGHT)) if name else ()


def _is_ring(item: v.Item) -> bool:
    return isinstance(item, v.Callout) and item.form == "ring"


def _strong(words: v.Words) -> bool:
    return words.lines[:1] != () and words.lines[0].startswith("*")


class _Narrow:
    """One narrow drawing in the making."""

    def __init__(self, scene: v.Scene, views: Sequence[v.View], letters: Iterator[str]) -> None:
        self.scene, self.wide, self.letters = scene, views, letters
        self.key: list[BalloonKey] = []
        self.rings: dict[str, str] = {}
        self.views: dict[str, v.View] = {}
        self.leads: dict[str, list[Segment]] = {}
        self.bars = _bars_of(scene, views)
        self.compared = views[0].level_with or views[0].name
        items = {view.name: _items_of(scene, view) for view in views}
        first = views[0]
        self.rows = rows_of(items[first.name], first)
        if self.rows:
            items[first.name], self.rows = parted(items[first.name], self.rows, first)
        self.items = items
        cores, regions = [], []
        for view in views:
            core = view.frame or view_box(items[view.name], view, dimensions=False)
            if core is not None:
                if len(views) == 1:
                    items[view.name] = closer(items[view.name], core)
                cores.append(core)
                regions.append(view_box(items[view.name], view, dimensions=True) or core)
        self.cores = cores
        self.forces = any(isinstance(item, v.Force) for view in views for item in items[view.name])
        self.stacked = len(views) > 1
        plot = any(isinstance(item, v.Axis) for view in views for item in items[view.name])
        foot = _FOOT if self.bars or self.forces else _BARE_FOOT
        core, region = around(cores), around(regions)
        if plot or self.rows:
            head = self.rows[-1].room + _ROOM_FOR_NAME if self.rows else 0.0
            self.fit = Fit.of_plot(core, region, foot=foot, head=head)
        else:
            self.fit = Fit.of(views[0], core, region, stacked=self.stacked, foot=foot)
        self.deeper = 0.0 if self.stacked else self._below_frame(views[0])
        x0, y0, x1, y1 = self.fit.region
        self.fit = replace(self.fit, region=(x0, y0 - self.deeper, x1, y1))
        self.named = () if self.stacked else _named(views[0])
        self.fit = replace(self.fit, head=_NAMED + LEADING * _NAME * (len(self.named) - 1) if self.named else 0.0)

    def level_with(self, compared: Sequence[_Narrow]) -> None:
        """Take the scale, and the height under the top edge, of the views to which this one is compared."""
        if len(compared) == 1:
            return
        shrink = min(each.fit.shrink for each in compared)
        for each in compared:
            each.fit = replace(each.fit, shrink=shrink, rise=shrink)
        deepest = max(each.fit.below_top(each.wide[0].origin[1]) for each in compared)
        for each in compared:
            head = each.fit.head + deepest - each.fit.below_top(each.wide[0].origin[1])
            each.fit = replace(each.fit, head=head)

    def drawing(self) -> Drawing:
        """Return the drawing with its key."""
        self.views = {view.name: self.fit.view(view) for view in self.wide}
        first = self.views[self.wide[0].name]
        if self.deeper and first.frame is not None:
            x0, y0, x1, y1 = first.frame
            self.views[first.name] = replace(first, frame=(x0, y0 - self.deeper, x1, y1))
        items: list[v.Item] = []
        flat = [(item, view) for view in self.wide for item in self.items[view.name]]
        self.leads = {view.name: self._straight(view) for view in self.wide}
        for item, view in sorted(flat, key=lambda pair: pair[0].step):
            drawn = self._drawn(item, view)
            if drawn is not None:
                items.append(drawn)
        headings = self._headings()
        items += headings
        words = words_of(self.rows, self.views[self.wide[0].name], self.fit.point(self.fit.core[:2])[0] + 1.0)
        items = [*(piece for item in items for piece in self._clear_of(item, [*headings, *words])), *words]
        sheet = replace(
            self.scene,
            size=(WIDTH, self.fit.height),
            views=tuple(self.views.values()),
            items=tuple(items),
            columns=(),
            scale_bars=self._scale_bars(),
            key=(),
            axes="none",
        )
        drawing = draw_sheet(sheet, letters=self.rings)
        return replace(drawing, balloons=tuple(self.key), view=self.wide[0].name)

    def _straight(self, wide: v.View) -> list[Segment]:
        """Return the straight lines that a view has on the narrow sheet."""
        lines: list[Segment] = []
        view = self.views[wide.name]
        for item in self.items[wide.name]:
            ends: tuple[v.Point, ...] = ()
            if isinstance(item, v.Ground):
                ends = (item.start, item.end)
            elif isinstance(item, v.Line) and len(item.points) == 2:
                cut = self._line(item, wide) if wide.frame is None or not item.clipped else item
                ends = () if cut is None else cut.points
            if ends:
                lines.append((*view.on_sheet(ends[0]), *view.on_sheet(ends[1])))
        return lines

    def _clear_of(self, item: v.Item, words: Sequence[v.Words]) -> Sequence[v.Item]:
        """Return an item, an upright line of a chart or stack in pieces where words stand."""
        if (self.rows or self.stacked) and isinstance(item, v.Line) and len({x for x, _ in item.points}) == 1:
            return clear_of(item, words, self.views[item.view])
        return (item,)

    def _drawn(self, item: v.Item, view: v.View) -> v.Item | None:
        """Return an item as it stands on the narrow sheet, its letter noted."""
        if isinstance(item, v.Dimension):
            return self._dimension(item)
        if isinstance(item, v.Line) and (view.frame is None or not item.clipped):
            return self._line(item, view)
        if self.rows and isinstance(item, v.Bar):
            return item  # its words stand above its row
        if isinstance(item, v.AngularDimension):
            item = replace(item, radius=max(item.radius * self.fit.shrink, _LEAST_ARC))
        label = item.label if isinstance(item, _LABELLED) else None
        if label is not None and (_is_ring(item) or [bool(_DETAIL_MARK.fullmatch(t)) for t in label.lines] == [True]):
            self.rings[item.name] = label.lines[0].removeprefix("*")  # it is a letter on the wide sheet already
            return item
        if label is not None and label.lines:
            taken = sum(1 for each in self.key if each.step == item.step)
            if isinstance(item, v.Note) and taken >= (_PER_STEP if self.forces else 2 * _PER_STEP):
                return None
            self.rings[item.name] = next(self.letters)
            self.key.append(BalloonKey(self.rings[item.name], label.lines, label.tone, item.step))
            if isinstance(item, v.Force | v.Normal | v.Moment):  # whose words may stand far from it when wide
                item = replace(item, label=replace(label, anchor=None, also=()))
        return item

    def _below_frame(self, view: v.View) -> float:
        """Return by how much arcs of moments, which do not shrink with their view, reach below its frame."""
        narrow = self.fit.view(view)
        if narrow.frame is None:
            return 0.0
        arcs = [item for item in self.items[view.name] if isinstance(item, v.Moment)]
        lows = [narrow.on_sheet(item.at)[1] - item.radius - _WITHIN for item in arcs]
        return max(0.0, narrow.frame[1] - min(lows, default=narrow.frame[1]))

    def _dimension(self, item: v.Dimension) -> v.Dimension:
        """Return a dimension with its line moved, and a letter where its text would not fit."""
        view = self.views[item.view]
        moved = replace(item, line_at=self.fit.level(item.line_at, item.direction))
        axis = 0 if item.direction == "horizontal" else 1
        start, end = view.on_sheet(item.start), view.on_sheet(item.end)
        met = tuple(
            on or not self._reached(moved, point[axis], item.view)
            for on, point in zip(item.extension, (start, end), strict=True)
        )
        moved = replace(moved, extension=(met[0], met[1]))
        if not item.text or abs(end[axis] - start[axis]) > line(item.text, TEXT).width + 2:
            return moved
        self.rings[item.name] = next(self.letters)
        self.key.append(BalloonKey(self.rings[item.name], (item.text,), item.tone, item.step))
        return moved

    def _reached(self, item: v.Dimension, along: float, view: str) -> bool:
        """Return whether a line of the drawing leads to the end of a dimension, which then has no extension line."""
        axis = 0 if item.direction == "horizontal" else 1
        at = (along, item.line_at) if axis == 0 else (item.line_at, along)
        for segment in self.leads.get(view, ()):
            if abs(segment[axis + 2] - segment[axis]) < _UPRIGHT and off(at, segment) < _NEAR_LINE:
                return True
        return False

    def _line(self, item: v.Line, view: v.View) -> v.Line | None:
        """Return a line cut where it would leave the drawing."""
        if len(item.points) != 2:
            return item
        x0, y0, x1, y1 = self.fit.core
        limits = (x0 - _BEYOND, y0 - _BEYOND, x1 + _BEYOND, y1 + _BEYOND)
        a, b = item.points
        share = inside((*view.on_sheet(a), *view.on_sheet(b)), limits)
        if share is None:
            return None
        ends = tuple((a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])) for t in share)
        return replace(item, points=ends)

    def _headings(self) -> list[v.Words]:
        """Return what a view is called, or the headings of the rows of a stack, which stand beside them when wide."""
        if not self.stacked:
            return self._name_of_view()
        words = [item for item in self.scene.items if isinstance(item, v.Words) and item.lines[:1]]
        strong = [item for item in words if _strong(item) and not item.wide_only]
        headings: dict[str, v.Words] = {}
        for core in self.cores:
            # of a row without height, such as the shear of couples alone, it stands higher than what is drawn
            off_core = {item.name: max(core[1] - item.at_sheet[1], item.at_sheet[1] - core[3], 0.0) for item in strong}
            beside = min(strong, key=lambda item: off_core[item.name], default=None)
            if beside is not None and off_core[beside.name] < _BESIDE:
                top = self.fit.point((core[0], core[3]))[1] + _HEADING
                known = headings.get(beside.name)  # two views may share a row
                at = (_LEFT, top if known is None else max(top, known.at_sheet[1]))
                headings[beside.name] = replace(beside, at_sheet=at, lines=beside.lines[:1], align="left")
        return list(headings.values())

    def _name_of_view(self) -> list[v.Words]:
        """Return what the view is called, at the top."""
        at = (_LEFT, self.fit.height - _TOP)
        return [v.Words(f"words-{self.wide[0].name}", "", at_sheet=at, lines=self.named, size=_NAME)] * bool(self.named)

    def _force_caption(self) -> str:
        """Return what the bar of forces is called, by one of another view with the same force scale."""
        scale = self.wide[0].newtons_per_mm
        for bar in self.scene.scale_bars:
            if bar.quantity == "force" and self.scene.view(bar.view).newtons_per_mm == scale:
                return _OF_SEVERAL.sub("", bar.caption)
        return "Forces"

    def _scale_bars(self) -> tuple[v.ScaleBar, ...]:
        real = 1 / (self.wide[0].scale * self.fit.shrink)
        ratio = f"1 : {real:g}" if real >= 1 else f"{1 / real:g} : 1"
        bars: list[v.ScaleBar] = []
        for bar in self.bars:
            if bar.quantity == "force":
                bars.append(replace(bar, caption=_OF_SEVERAL.sub("", bar.caption)))
            else:  # of a stack it is the scale along alone, as its caption says
                caption = _RATIO_TEXT.sub(ratio, bar.caption) if self.stacked else f"Scale {ratio}"
                bars.append(replace(bar, caption=caption))
        if self.forces and not any(bar.quantity == "force" for bar in bars):
            bars.append(v.ScaleBar(self.wide[0].name, "force", self._force_caption()))
        return tuple(bars)

"""The narrow form of a scene for phones: views become sheets of their own, letters in rings for labels, a key as data.

Sheet millimetres. The same scene is laid out again; nothing about it is told twice. Views that stand one above another
on one axis of lengths, such as a beam's diagrams, stay together.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import count

from hubwright.drawing.dimensions import TEXT
from hubwright.drawing.draughting import draw_sheet
from hubwright.drawing.extents import view_box
from hubwright.drawing.faces import line
from hubwright.drawing.geometry import Box, around, inside
from hubwright.drawing.marks import BalloonKey, Drawing
from hubwright.drawing.narrow_bars import clear_of, parted, rows_of, words_of
from hubwright.scenes import vocabulary as v

WIDTH = 100.0
_TALLEST = 175.0
_LARGEST = 2.0  # how much a small view may grow
_MARGIN = 9.0  # room for letters outside the drawing
_FOOT, _BARE_FOOT = 21.0, 0.0
_BEYOND = 4.0  # how far centre lines may run on beyond what is drawn
_HEADING = 3.0  # between a row and its heading
_ROOM_FOR_NAME = 9.0  # over the words of the highest row of bars
_LABELLED = (v.Force, v.Normal, v.Moment, v.Note, v.Bar, v.AngularDimension, v.LeaderDimension, v.Callout)
_LEAST_ARC = 7.0  # radius of an angle's arc
_PER_STEP = 3  # letters of part names; loads, reactions and dimensions always get theirs
# one sheet millimetre stands for this many real ones
_RATIOS = (0.2, 0.25, 0.5, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100)
_RATIO_TEXT = re.compile(r"\d+(?:\.\d+)?\s*:\s*\d+(?:\.\d+)?")


def draw_narrow(scene: v.Scene) -> tuple[Drawing, ...]:
    """Return one drawing for each view or stack of views that shows something; letters run on."""
    letters = _letters()
    return tuple(
        _Narrow(scene, views, letters).drawing()
        for views in _stacks(scene)
        if any(view_box(_items_of(scene, view), view, dimensions=False) for view in views)
    )


def _stacks(scene: v.Scene) -> list[list[v.View]]:
    """Return the views, a beam and its diagrams on one axis of lengths together; all others stand alone."""
    plotted = {_axis(view) for view in scene.views if view.vertical_per_mm is not None}
    stacks: dict[object, list[v.View]] = {}
    for view in scene.views:
        stacked = view.frame is None and _axis(view) in plotted
        stacks.setdefault(_axis(view) if stacked else view.name, []).append(view)
    return list(stacks.values())


def _axis(view: v.View) -> tuple[float, float, bool]:
    return view.origin[0], view.scale, view.mirrored


def _items_of(scene: v.Scene, view: v.View) -> tuple[v.Item, ...]:
    items = (item for item in scene.items if item.view == view.name and not item.wide_only)
    return tuple(item for item in items if not isinstance(item, v.Words))


def _bars_of_twin(scene: v.Scene, view: v.View) -> tuple[v.ScaleBar, ...]:
    """Return the bars of another view at the same scale, which on the wide sheet speak for this one too."""
    if view.vertical_per_mm is not None:  # what a plot measures are no lengths of the drawing
        return ()
    twins = (bar for bar in scene.scale_bars if bar.quantity == "length" and scene.view(bar.view).scale == view.scale)
    return tuple(replace(bar, view=view.name) for bar in list(twins)[:1])


def _letters() -> Iterator[str]:
    for i in count():
        yield chr(ord("a") + i % 26) * (1 + i // 26)


def _strong(words: v.Words) -> bool:
    return words.lines[:1] != () and words.lines[0].startswith("*")


@dataclass(frozen=True, slots=True)
class _Fit:
    """How a region of the wide sheet comes to lie on the narrow one; a stack shrinks in its width alone."""

    region: Box
    core: Box  # what is drawn in the views themselves: beyond it, distances keep their size
    shrink: float
    rise: float
    foot: float
    stacked: bool = False

    @classmethod
    def of_plot(cls, core: Box, region: Box, *, foot: float, head: float) -> _Fit:
        """Return the fit that takes all the room there is in width, with room for words above the drawing."""
        beyond = (region[2] - region[0]) - (core[2] - core[0])
        shrink = (WIDTH - 2 * _MARGIN - beyond) / max(core[2] - core[0], 1.0)
        return cls((*region[:3], max(region[3], core[3] + head - _MARGIN)), core, shrink, 1.0, foot)

    @classmethod
    def of(cls, view: v.View, core: Box, region: Box, *, stacked: bool, foot: float) -> _Fit:
        """Return the fit with the largest scale of the list that the sheet has room for."""
        beyond = (region[2] - region[0]) - (core[2] - core[0])
        room = (WIDTH - 2 * _MARGIN - beyond) / max(core[2] - core[0], 1.0)
        if not stacked:
            room = min(room, _TALLEST / (region[3] - region[1]), _LARGEST)
        wanted = 1 / (view.scale * room)
        real = next((ratio for ratio in _RATIOS if ratio >= wanted - 1e-9), wanted)
        shrink = 1 / (real * view.scale)
        return cls(region, core, shrink, 1.0 if stacked else shrink, foot, stacked)

    @property
    def height(self) -> float:
        """Return the height of the narrow sheet."""
        beyond = (self.region[3] - self.region[1]) - (self.core[3] - self.core[1])
        return (self.core[3] - self.core[1]) * self.rise + beyond + 2 * _MARGIN + self.foot

    def point(self, point: tuple[float, float]) -> v.Point:
        """Return where a point of the wide sheet lies on the narrow one."""
        width = (self.core[2] - self.core[0]) * self.shrink
        beyond = self.core[0] - self.region[0], self.region[2] - self.core[2]
        left = (WIDTH - width - sum(beyond)) / 2 + beyond[0]
        low = self.foot + _MARGIN + self.core[1] - self.region[1]
        return left + (point[0] - self.core[0]) * self.shrink, low + (point[1] - self.core[1]) * self.rise

    def level(self, at: float, direction: str) -> float:
        """Return where a dimension line lies: beyond the core it keeps its distance, so that rows stay apart."""
        axis = 1 if direction == "horizontal" else 0
        within = min(max(at, self.core[axis]), self.core[axis + 2])
        return self.point((within, within))[axis] + (at - within)

    def view(self, view: v.View) -> v.View:
        """Return a view as it lies on the narrow sheet."""
        vertical = view.vertical_per_mm
        if (
            vertical is None and self.stacked
        ):  # a bar, a line along tails, a guide stay as high as the arrows beside them
            vertical = 1.0 / view.scale
        return replace(
            view,
            origin=self.point(view.origin),
            scale=view.scale * self.shrink,
            newtons_per_mm=None if view.newtons_per_mm is None else view.newtons_per_mm / self.rise,
            vertical_per_mm=None if vertical is None else vertical / self.rise,
            frame=None if view.frame is None else (*self.point(view.frame[:2]), *self.point(view.frame[2:])),
            title="",
        )


class _Narrow:
    """One narrow drawing in the making."""

    def __init__(self, scene: v.Scene, views: Sequence[v.View], letters: Iterator[str]) -> None:
        self.scene, self.wide, self.letters = scene, views, letters
        self.key: list[BalloonKey] = []
        self.rings: dict[str, str] = {}
        names = {view.name for view in views}
        self.bars = tuple(bar for bar in scene.scale_bars if bar.view in names) or _bars_of_twin(scene, views[0])
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
            self.fit = _Fit.of_plot(core, region, foot=foot, head=head)
        else:
            self.fit = _Fit.of(views[0], core, region, stacked=self.stacked, foot=foot)
        self.views = {view.name: self.fit.view(view) for view in views}

    def drawing(self) -> Drawing:
        """Return the drawing with its key."""
        items: list[v.Item] = []
        flat = [(item, view) for view in self.wide for item in self.items[view.name]]
        for item, view in sorted(flat, key=lambda pair: pair[0].step):
            drawn = self._drawn(item, view)
            if drawn is not None:
                items.append(drawn)
        items += self._headings()
        chart = self.views[self.wide[0].name]
        words = words_of(self.rows, chart, self.fit.point(self.fit.core[:2])[0] + 1.0)
        items = [*(piece for item in items for piece in self._clear_of(item, words, chart)), *words]
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

    @staticmethod
    def _clear_of(item: v.Item, words: Sequence[v.Words], chart: v.View) -> Sequence[v.Item]:
        """Return an item, an upright line of a chart in pieces where words stand."""
        if words and isinstance(item, v.Line) and item.view == chart.name and len({x for x, _ in item.points}) == 1:
            return clear_of(item, words, chart)
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
        if isinstance(item, v.Callout) and item.form == "ring":
            self.rings[item.name] = item.label.lines[0]  # it is a letter on the wide sheet already
            return item
        label = item.label if isinstance(item, _LABELLED) else None
        if label is not None and label.lines:
            taken = sum(1 for each in self.key if each.step == item.step)
            if isinstance(item, v.Note) and taken >= (_PER_STEP if self.forces else 2 * _PER_STEP):
                return None
            self.rings[item.name] = next(self.letters)
            self.key.append(BalloonKey(self.rings[item.name], label.lines, label.tone, item.step))
        return item

    def _dimension(self, item: v.Dimension) -> v.Dimension:
        """Return a dimension with its line moved, and a letter where its text would not fit."""
        view = self.views[item.view]
        moved = replace(item, line_at=self.fit.level(item.line_at, item.direction))
        axis = 0 if item.direction == "horizontal" else 1
        start, end = view.on_sheet(item.start), view.on_sheet(item.end)
        if not item.text or abs(end[axis] - start[axis]) > line(item.text, TEXT).width + 2:
            return moved
        letter = next(self.letters)
        self.key.append(BalloonKey(letter, (item.text,), item.tone, item.step))
        return replace(moved, text=letter)

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

    def _headings(self) -> list[v.Item]:
        """Return what a view is called, or the headings of the rows of a stack, which stand beside them when wide."""
        if not self.stacked:
            return self._name_of_view()
        words = [item for item in self.scene.items if isinstance(item, v.Words) and item.lines[:1]]
        strong = [item for item in words if _strong(item) and not item.wide_only]
        headings: dict[str, v.Words] = {}
        for core in self.cores:
            beside = [item for item in strong if core[1] - 3 <= item.at_sheet[1] <= core[3] + 3]
            if beside:
                top = self.fit.point((core[0], core[3]))[1] + _HEADING
                known = headings.get(beside[0].name)  # two views may share a row
                at = (4.0, top if known is None else max(top, known.at_sheet[1]))
                headings[beside[0].name] = replace(beside[0], at_sheet=at, lines=beside[0].lines[:1], align="left")
        return list(headings.values())

    def _name_of_view(self) -> list[v.Item]:
        """Return the words that name the view on the wide sheet, as one line at the top."""
        name = f"words-{self.wide[0].name}"
        called = [
            item
            for item in self.scene.items
            if isinstance(item, v.Words) and (item.name == name or (item.name.startswith(f"{name}-") and _strong(item)))
        ]
        called.sort(key=lambda item: -item.at_sheet[1])
        if not called:
            return []
        line = " ".join(text.removeprefix("*") for item in called for text in item.lines)
        at = (4.0, self.fit.height - 5.5)
        return [replace(called[0], at_sheet=at, lines=(f"*{line}",), size=2.5, tone="ink", align="left")]

    def _scale_bars(self) -> tuple[v.ScaleBar, ...]:
        real = 1 / (self.wide[0].scale * self.fit.shrink)
        ratio = f"1 : {real:g}" if real >= 1 else f"{1 / real:g} : 1"
        bars: list[v.ScaleBar] = []
        for bar in self.bars:
            if bar.quantity == "length":
                bars.append(replace(bar, caption=_RATIO_TEXT.sub(ratio, bar.caption)))
            else:  # the first says less than on the wide sheet, where it speaks of several views
                known = any(other.quantity == "force" for other in bars)
                bars.append(bar if known else replace(bar, caption="Forces"))
        if self.forces and not any(bar.quantity == "force" for bar in bars):
            bars.append(v.ScaleBar(self.wide[0].name, "force", "Forces"))
        return tuple(bars)

"""Frames for films and slides: a figure on a picture of fixed size, its title above, the sentence of a step below.

One sheet millimetre is as many pixels in every frame of a figure, and the room for the longest sentence is kept free in
all of them: nothing that stood moves. Upright pictures take the narrow form, whose letters are larger, with its key.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import product

import numpy as np

from hubwright.drawing.draughting import draw_sheet
from hubwright.drawing.faces import CAP, DROP, Face, line, plain, wrapped
from hubwright.drawing.geometry import Box, Segment
from hubwright.drawing.marks import BalloonKey, Disc, Drawing, Group, Layer, Lettering, Mark, Shape, TextBox
from hubwright.drawing.narrow import draw_narrow
from hubwright.drawing.palette import line_token, text_token
from hubwright.scenes.label_words import in_one_line
from hubwright.scenes.vocabulary import Point, Scene, Tone

Size = tuple[int, int]
SAFE = 0.05  # of width and height on every side: what a screen may cut off
CAPTION = 0.031  # of the height: a caption's capitals; on an upright frame, whose lines are short, its letters (em)
_TITLE = 0.026  # of the side of a square as large as the frame
# letters of the key over those of the caption, and columns: the first with which the words leave room for the drawing
_KEYS = ((0.6, 1), (0.5, 1), (0.45, 2), (0.38, 2), (0.32, 2), (0.26, 2))
_WORDS = 0.42  # of the height, at most, for key and caption
_LEADING = 1.6
_GAP = 0.018  # between title, drawing, key and caption, of the height
_MOST_LINES = 3  # of the caption of a whole figure: whole sentences, as many as these lines hold
_SENTENCE_END = re.compile(r"(?<=[.:])\s+(?=[A-Z{])")


@dataclass(frozen=True, slots=True)
class _Row:
    """A line of words in pixels below the top of its block, before the scale of the frame is known."""

    text: str
    cap: float
    face: Face
    token: str
    down: float  # to the baseline
    indent: float = 0.0
    ring: tuple[str, Tone] | None = None  # a letter and its tone before the line


def frames(scene: Scene, *, size: Size = (1920, 1080), title: bool = True, steps: bool = False) -> tuple[Drawing, ...]:
    """Return a scene as pictures of a size in pixels: the whole figure, or one picture for each step.

    Captions are at least 3 % of the height. Write a frame without a title of its own and `size[0]` pixels
    wide.
    """
    upright = size[1] > size[0]
    panels = draw_narrow(scene) if upright else (draw_sheet(scene),)
    balloons = [entry for panel in panels for entry in panel.balloons]
    last = max(layer.step for panel in panels for layer in panel.layers)
    shown: list[int | None] = list(range(1, last + 1)) if steps else [None]
    layout = _Layout(scene, panels, size, title=title, words=[_words(scene, balloons, step, size) for step in shown])
    return tuple(layout.frame(i, last if step is None else step) for i, step in enumerate(shown))


def _words(scene: Scene, balloons: Sequence[BalloonKey], step: int | None, size: Size) -> list[_Row]:
    """Return the rows below a drawing: the key of a narrow drawing, then the caption."""
    cap, room = _caption_cap(size), (1 - 2 * SAFE) * size[0]
    shown = [entry for entry in balloons if step is None or entry.step == step]
    rows: list[_Row] = []
    for share, columns in _KEYS:
        rows = _key(shown, share * cap, columns, room) if shown else []
        down = max((row.down for row in rows), default=0.0) + (1.2 * cap if rows else 0.0)
        for n, (text, face, token) in enumerate(_caption(scene, step, cap, room)):
            down += _LEADING * cap if n else cap
            rows.append(_Row(text, cap, face, token, down))
        if down <= _WORDS * size[1]:
            break
    return rows


def _caption_cap(size: Size) -> float:
    return CAPTION * size[1] * (CAP["serif"] if size[1] > size[0] else 1.0)


def _key(entries: Sequence[BalloonKey], cap: float, columns: int, room: float) -> list[_Row]:
    """Return what the letters stand for, column by column."""
    rows: list[_Row] = []
    indent, width = 3.0 * cap, room / columns
    each = -(-len(entries) // columns)
    for column in range(columns):
        down = 0.0
        for entry in entries[column * each : (column + 1) * each]:
            for n, text in enumerate(wrapped(in_one_line(entry.lines), cap, width - indent - cap)):
                down += (2.5 if n == 0 else 1.5) * cap
                ring = (entry.letter, entry.tone) if n == 0 else None
                rows.append(_Row(text, cap, "lettering", "ink", down, column * width + indent, ring))
    return rows


def _caption(scene: Scene, step: int | None, cap: float, room: float) -> list[tuple[str, Face, str]]:
    if step is not None and step <= len(scene.steps):
        move = scene.steps[step - 1]
        heading = f"{step}. {move.heading}"
        rows: list[tuple[str, Face, str]] = [(text, "bold", "ink") for text in wrapped(heading, cap, room, "bold")]
        return rows + [(text, "serif", "ink") for text in wrapped(move.sentence, cap, room, "serif")]
    kept = ""
    for sentence in _SENTENCE_END.split(scene.caption):
        longer = f"{kept} {sentence}".strip()
        if kept and len(wrapped(longer, cap, room, "serif")) > _MOST_LINES:
            break
        kept = longer
    return [(text, "serif", "ink") for text in wrapped(kept, cap, room, "serif")]


class _Layout:
    """Where the drawings, title and words of all frames of a figure stand; pixels first, then sheet millimetres."""

    def __init__(
        self, scene: Scene, panels: Sequence[Drawing], size: Size, *, title: bool, words: Sequence[list[_Row]]
    ) -> None:
        self.scene, self.size, self.words = scene, size, words
        width, height = size
        self.left, self.top = SAFE * width, SAFE * height
        room = width - 2 * self.left
        self.title: list[_Row] = []
        down = 0.0
        if title:
            cap = _TITLE * (width * height) ** 0.5
            for text in wrapped(scene.title, cap, room, "bold"):
                down += cap if not self.title else _LEADING * cap
                self.title.append(_Row(text, cap, "bold", "ink", down))
        head = down + (_GAP * height if down else 0.0)
        deepest = max((row.down for rows in words for row in rows), default=0.0)
        self.words_top = height - self.top - deepest - DROP * _caption_cap(size)
        self.area = (self.left, self.top + head, width - self.left, self.words_top - _GAP * height)
        self.scale, self.places = _grid(panels, self.area)
        self.panels = [
            _moved_drawing(panel, self._sheet(corner)) for panel, corner in zip(panels, self.places, strict=True)
        ]

    def frame(self, index: int, step: int) -> Drawing:
        """Return one frame as a drawing as large as the picture."""
        layers: dict[int, list[Layer]] = {}
        for panel in self.panels:
            for layer in panel.layers:
                if layer.step <= step:
                    layers.setdefault(layer.step, []).append(layer)
        boxes: list[TextBox] = [box for panel in self.panels for box in panel.texts]
        foot = [group for panel in self.panels for group in panel.foot]
        key = [row for row in self.words[index] if row.face == "lettering"]
        caption = [row for row in self.words[index] if row.face != "lettering"]
        for name, rows, top in (
            ("heading", self.title, self.top),
            ("key", key, self.words_top),
            ("caption", caption, self.words_top),
        ):
            if rows:
                foot.append(Group(name, tuple(mark for row in rows for mark in self._row(row, top))))
                boxes += [self._box(name, row, top) for row in rows]
        return replace(
            self.panels[0],
            size=(self.size[0] / self.scale, self.size[1] / self.scale),
            layers=tuple(
                Layer(number, tuple(view for layer in parts for view in layer.views))
                for number, parts in sorted(layers.items())
            ),
            foot=tuple(foot),
            frames={name: box for panel in self.panels for name, box in panel.frames.items()},
            texts=tuple(boxes),
            balloons=tuple(entry for panel in self.panels for entry in panel.balloons),
        )

    def _sheet(self, pixel: Point) -> Point:
        return pixel[0] / self.scale, (self.size[1] - pixel[1]) / self.scale

    def _row(self, row: _Row, top: float) -> Iterable[Mark]:
        text = line(row.text, row.cap / self.scale, row.face)
        if row.ring is not None:
            letter, tone = row.ring
            middle = self._sheet((self.left + row.indent - 1.9 * row.cap, top + row.down - 0.5 * row.cap))
            radius, written = row.cap / self.scale, line(letter, row.cap / self.scale * 1.05)
            yield Disc(middle, radius, "paper", line_token(tone), 0.11 * radius)
            at = (middle[0] - written.width / 2, middle[1] - 0.37 * written.cap)
            yield Lettering(at, written, text_token(tone))
        yield Lettering(self._sheet((self.left + row.indent, top + row.down)), text, row.token)

    def _box(self, name: str, row: _Row, top: float) -> TextBox:
        text = line(row.text, row.cap / self.scale, row.face)
        x, y = self._sheet((self.left + row.indent, top + row.down))
        return TextBox(name, plain(row.text), (x, y - DROP * text.cap, x + text.width, y + text.cap))


def _grid(panels: Sequence[Drawing], area: Box) -> tuple[float, list[Point]]:
    """Return the largest scale [px/mm] at which drawings fit an area in columns, and their lower left corners."""
    x0, y0, x1, y1 = area
    best: tuple[float, list[Point]] = (0.0, [])
    for cuts in product((False, True), repeat=len(panels) - 1):  # where a column ends
        columns: list[list[Drawing]] = [[panels[0]]]
        for panel, cut in zip(panels[1:], cuts, strict=True):
            if cut:
                columns.append([panel])
            else:
                columns[-1].append(panel)
        widths = [max(panel.size[0] for panel in column) for column in columns]
        heights = [sum(panel.size[1] for panel in column) for column in columns]
        scale = min((x1 - x0) / sum(widths), (y1 - y0) / max(heights))
        if scale <= best[0]:
            continue
        corners = []
        x = (x0 + x1 - scale * sum(widths)) / 2
        for column, wide in zip(columns, widths, strict=True):
            y = (y0 + y1 - scale * max(heights)) / 2
            for panel in column:
                y += scale * panel.size[1]
                corners.append((x, y))
            x += scale * wide
        best = (scale, corners)
    return best


def _moved_drawing(drawing: Drawing, by: Point) -> Drawing:
    layers = tuple(
        replace(
            layer,
            views=tuple(
                replace(view, children=tuple(_moved_group(group, by) for group in view.children))
                for view in layer.views
            ),
        )
        for layer in drawing.layers
    )
    return replace(
        drawing,
        layers=layers,
        foot=tuple(_moved_group(group, by) for group in drawing.foot),
        frames={name: _moved_box(box, by) for name, box in drawing.frames.items()},
        texts=tuple(replace(text, box=_moved_box(text.box, by)) for text in drawing.texts),
    )


def _moved_box(box: Box | Segment, by: Point) -> Box:
    return box[0] + by[0], box[1] + by[1], box[2] + by[0], box[3] + by[1]


def _moved_group(group: Group, by: Point) -> Group:
    ends = None if group.ends is None else _moved_box(group.ends, by)
    centre = None if group.centre is None else (group.centre[0] + by[0], group.centre[1] + by[1])
    return replace(group, children=tuple(_moved(mark, by) for mark in group.children), ends=ends, centre=centre)


def _moved(mark: Mark, by: Point) -> Mark:
    if isinstance(mark, Group):
        return _moved_group(mark, by)
    if isinstance(mark, Shape):
        return replace(mark, rings=tuple(ring + np.array(by) for ring in mark.rings))
    if isinstance(mark, Disc):
        return replace(mark, centre=(mark.centre[0] + by[0], mark.centre[1] + by[1]))
    return replace(mark, at=(mark.at[0] + by[0], mark.at[1] + by[1]))

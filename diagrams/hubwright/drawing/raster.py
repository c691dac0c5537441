"""PNG and PDF of a drawing through matplotlib: a Figure without Axes, its artists laid out as the SVG is."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path as FilePath
from typing import Any

import matplotlib
import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.font_manager import FontProperties
from matplotlib.patches import PathPatch
from matplotlib.path import Path
from matplotlib.text import Text
from matplotlib.transforms import Affine2D, Transform

from hubwright.drawing.faces import font_file
from hubwright.drawing.geometry import Array, rounded_box
from hubwright.drawing.heading import heading
from hubwright.drawing.marks import FRAME_RADIUS, Disc, Drawing, Group, Lettering, Mark, Shape
from hubwright.drawing.outlines import outline
from hubwright.drawing.palette import Theme, colours

_POINTS = 72 / 25.4  # per millimetre
QUIET: Any = {
    "text.hinting": "none",
    "path.simplify": False,
    "pdf.fonttype": 3,
    "pdf.compression": 6,
}


def png(drawing: Drawing, path: FilePath, *, width_px: int = 1920, theme: Theme = "light", title: bool = True) -> None:
    """Write a drawing as a picture of a given width."""
    figure = figure_of(drawing, theme, title=title, as_text=False)
    figure.set_dpi(width_px / figure.get_figwidth() * (1 + 1e-9))  # matplotlib cuts off: 1919.99 would be 1919
    with matplotlib.rc_context(QUIET):
        figure.savefig(path, dpi=figure.dpi, facecolor=figure.get_facecolor(), metadata={"Software": None})


def pdf(drawing: Drawing, path: FilePath, *, theme: Theme = "print", title: bool = True) -> None:
    """Write a drawing as a page of its own size."""
    with matplotlib.rc_context(QUIET):
        figure = figure_of(drawing, theme, title=title, as_text=True)
        metadata = {"Creator": None, "Producer": None, "CreationDate": None, "Title": drawing.scene.title}
        figure.savefig(path, format="pdf", facecolor=figure.get_facecolor(), metadata=metadata)


def figure_of(drawing: Drawing, theme: Theme, *, title: bool, as_text: bool) -> Figure:
    """Return a drawing as a matplotlib figure, its text as text or as outlines."""
    palette = colours(theme)
    head = heading(drawing.scene, drawing.size[0]) if title else None
    width, height = drawing.size[0], drawing.size[1] + (head.height if head else 0.0)
    paper = "none" if theme == "transparent" else palette["paper"]
    figure = Figure(figsize=(width / 25.4, height / 25.4), facecolor=paper)
    FigureCanvasAgg(figure)
    transform = Affine2D().scale(1 / 25.4) + figure.dpi_scale_trans
    painter = Painter(figure, transform, palette, drawing, as_text=as_text)
    for layer in drawing.layers:
        for view in layer.views:
            for group in view.children:
                painter.paint(group)
    for group in drawing.foot:
        painter.paint(group)
    for lettering in head.lines(height) if head else []:
        painter.paint(lettering)
    return figure


class Painter:
    """Marks to artists, in the order in which they come."""

    def __init__(
        self, figure: Figure, transform: Transform, palette: dict[str, str], drawing: Drawing, *, as_text: bool
    ) -> None:
        """Paint onto a figure, in sheet millimetres by its transform."""
        self.figure, self.transform, self.palette, self.as_text = figure, transform, palette, as_text
        self.order = 0
        self.clips = {}
        for name, frame in drawing.frames.items():
            ring = rounded_box(frame, FRAME_RADIUS)
            patch = PathPatch(Path(np.vstack([ring, ring[:1]]), closed=True), transform=transform)
            patch.set_figure(figure)
            self.clips[name] = patch

    def paint(self, mark: Mark, clip: str | None = None) -> None:
        """Add the artists of a mark."""
        if isinstance(mark, Group):
            for child in mark.children:
                self.paint(child, mark.clip or clip)
            return
        for artist in self._artists(mark):
            self.order += 1
            artist.set_zorder(self.order)
            self.figure.add_artist(artist)
            if clip is not None:
                artist.set_clip_path(self.clips[clip])

    def _artists(self, mark: Mark) -> Iterator[PathPatch | Text]:
        if isinstance(mark, Shape):
            if mark.rings:
                patch = self._patch(_compound(mark.rings, closed=mark.closed), mark.fill, mark.line, mark.width)
                patch.set_capstyle(mark.cap)
                patch.set_joinstyle("miter" if mark.mitred else "round")
                if mark.dashes:
                    patch.set_linestyle((0, [dash / mark.width for dash in mark.dashes]))
                yield patch
        elif isinstance(mark, Disc):
            yield self._patch(Path.circle(mark.centre, mark.radius), mark.fill, mark.line, mark.width)
        elif isinstance(mark, Lettering):
            yield from self._text(mark)

    def _text(self, mark: Lettering) -> Iterator[PathPatch | Text]:
        curves = outline(mark)
        if not curves.codes:
            return
        path = Path(curves.points, curves.codes)
        if mark.halo:
            yield self._patch(path, None, "paper", mark.halo)
        if not self.as_text:
            yield self._patch(path, mark.colour, None, 0.0)
            return
        turn = np.radians(mark.rotation)
        x = 0.0
        for run in mark.text.runs:
            at = (
                mark.at[0] + x * np.cos(turn) - run.rise * np.sin(turn),
                mark.at[1] + x * np.sin(turn) + run.rise * np.cos(turn),
            )
            yield Text(
                *at,
                run.text,
                fontproperties=FontProperties(fname=str(font_file(run.face))),
                fontsize=run.em * _POINTS,
                color=self.palette[mark.colour],
                rotation=mark.rotation,
                rotation_mode="anchor",
                ha="left",
                va="baseline",
                transform=self.transform,
                parse_math=False,
            )
            x += run.width

    def _patch(self, path: Path, fill: str | None, line: str | None, width: float) -> PathPatch:
        return PathPatch(
            path,
            facecolor=self.palette[fill] if fill else "none",
            edgecolor=self.palette[line] if line else "none",
            linewidth=width * _POINTS if line else 0.0,
            joinstyle="round",
            snap=False,  # rectilinear paths would move to whole pixels, and thin lines vanish under their paper edge
            transform=self.transform,
        )


def _compound(rings: tuple[Array, ...], *, closed: bool) -> Path:
    """Return rings as one path; agg fills by the non-zero rule, so holes are turned against their outline."""
    points, codes = [], []
    for ring in _turned(rings) if closed else rings:
        points.append(ring)
        codes += [Path.MOVETO] + [Path.LINETO] * (len(ring) - 1)
        if closed:
            points.append(ring[:1])
            codes.append(Path.CLOSEPOLY)
    return Path(np.vstack(points), codes)


def _turned(rings: tuple[Array, ...]) -> list[Array]:
    """Return rings turned so that each runs against the one around it."""
    if len(rings) == 1:
        return list(rings)
    result = []
    for i, ring in enumerate(rings):
        depth = sum(Path(other).contains_point(ring[0]) for j, other in enumerate(rings) if j != i)
        area = float(np.sum(ring[:, 0] * np.roll(ring[:, 1], -1) - np.roll(ring[:, 0], -1) * ring[:, 1]))
        result.append(ring if (area > 0) == (depth % 2 == 0) else ring[::-1])
    return result

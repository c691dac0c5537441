"""A picture that stands for a page where somebody shares its address: its question and its figure, side by side.

The picture is 1200 by 630 pixels, the shape that most places cut previews to. Lengths are its own millimetres, of
ten pixels each.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any, cast

import matplotlib
import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.transforms import Affine2D

from hubwright.drawing.faces import LEADING, Face, line, wrapped
from hubwright.drawing.marks import Drawing, Lettering
from hubwright.drawing.palette import colours
from hubwright.drawing.raster import QUIET, Painter, figure_of

_WIDTH, _HEIGHT, _DOTS = 120.0, 63.0, 254  # 1200 by 630 pixels
_EDGE, _COLUMN, _GAP = 4.5, 36.0, 2.5
_CAPS = (3.1, 2.6, 2.2, 1.8)  # of the question, the largest with which it fits


def preview(drawing: Drawing, path: Path, *, tag: str, title: str, course: str) -> None:
    """Write the picture of a page as PNG: where it stands, its question, its course and its figure."""
    palette = colours("light")
    with matplotlib.rc_context(QUIET):
        figure = Figure(figsize=(_WIDTH / 25.4, _HEIGHT / 25.4), dpi=_DOTS, facecolor=palette["paper"])
        FigureCanvasAgg(figure)
        room = (_WIDTH - _EDGE * 2 - _COLUMN - _GAP, _HEIGHT - 2 * _EDGE)
        pixels = _pixels(drawing, room)
        height, width = (side / 10 for side in pixels.shape[:2])
        left, bottom = _WIDTH - _EDGE - (room[0] + width) / 2, (_HEIGHT - height) / 2
        figure.figimage(pixels, round(left * 10), round(bottom * 10), zorder=0)
        transform = Affine2D().scale(1 / 25.4) + figure.dpi_scale_trans
        painter = Painter(figure, transform, palette, drawing, as_text=False)
        for lettering in _words(tag, title, course):
            painter.paint(lettering)
        figure.savefig(path, dpi=_DOTS, facecolor=figure.get_facecolor(), metadata={"Software": None})


def _pixels(drawing: Drawing, room: tuple[float, float]) -> np.ndarray[Any, Any]:
    """Return the drawing as pixels, as large as the room allows."""
    figure = figure_of(drawing, "light", title=False, as_text=False)
    wide, high = figure.get_size_inches()
    figure.set_dpi(10 * min(room[0] / wide, room[1] / high))
    canvas = cast(FigureCanvasAgg, figure.canvas)
    canvas.draw()  # type: ignore[no-untyped-call]
    return np.asarray(canvas.buffer_rgba())  # type: ignore[no-untyped-call]


def _words(tag: str, title: str, course: str) -> list[Lettering]:
    """Return tag and question from the top of the column down, and the course at its foot."""
    fits = [cap for cap in _CAPS if len(wrapped(title, cap, _COLUMN, "serif")) * cap * LEADING < 36.0]
    cap = fits[0] if fits else _CAPS[-1]
    marks, y = [], _HEIGHT - _EDGE
    rows: list[tuple[str, float, Face]] = [(tag, 1.3, "lettering")] if tag else []
    rows += [(row, cap, "serif") for row in wrapped(title, cap, _COLUMN, "serif")]
    for text, size, face in rows:
        y -= size
        marks.append(Lettering((_EDGE, y), line(text, size, face), "soft" if face == "lettering" else "ink"))
        y -= (LEADING - 1) * size + (1.4 if face == "lettering" else 0.0)
    foot = wrapped(course, 1.3, _COLUMN, "lettering")
    for n, row in enumerate(reversed(foot)):
        marks.append(Lettering((_EDGE, _EDGE + n * 1.3 * LEADING), line(row, 1.3, "lettering"), "soft"))
    return marks

"""Text as outlines, for editors that lack the faces."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import cos, radians, sin

import numpy as np
from matplotlib.font_manager import FontProperties
from matplotlib.path import Path
from matplotlib.textpath import TextPath

from hubwright.drawing.faces import Face, font_file
from hubwright.drawing.geometry import Array
from hubwright.drawing.marks import Lettering

_LETTER: dict[int, str] = {int(Path.MOVETO): "M", int(Path.LINETO): "L", int(Path.CURVE3): "Q", int(Path.CURVE4): "C"}

_POINTS: dict[int, int] = {int(Path.CURVE3): 2, int(Path.CURVE4): 3}


@dataclass(frozen=True, slots=True, eq=False)
class Outline:
    """Curves of a line of text on the sheet."""

    points: Array
    codes: tuple[int, ...]

    def path(self, top: float, per_mm: float) -> str:
        """Return the curves as path data with y running down from the top."""
        turned = np.round((self.points * (1.0, -1.0) + (0.0, top)) * per_mm, 1).tolist()
        pieces: list[str] = []
        i = 0
        while i < len(self.codes):
            code = self.codes[i]
            if code == Path.CLOSEPOLY:
                pieces.append("Z")
                i += 1
                continue
            count = _POINTS.get(code, 1)
            pieces.append(_LETTER[code] + " ".join(f"{x:g},{y:g}" for x, y in turned[i : i + count]))
            i += count
        return "".join(pieces)


def outline(lettering: Lettering) -> Outline:
    """Return the curves of a line of text in its place."""
    pieces: list[Array] = []
    codes: list[int] = []
    x = 0.0
    for run in lettering.text.runs:
        points, run_codes = _em_outline(run.text, run.face)
        pieces.append(points * run.em + (x, run.rise))
        codes += run_codes
        x += run.width
    points = np.vstack(pieces) if pieces else np.empty((0, 2))
    turn = radians(lettering.rotation)
    rotation = np.array([[cos(turn), -sin(turn)], [sin(turn), cos(turn)]])
    return Outline(points @ rotation.T + lettering.at, tuple(codes))


@lru_cache(maxsize=4_000)
def _em_outline(text: str, face: Face) -> tuple[Array, tuple[int, ...]]:
    if not text.strip():
        return np.empty((0, 2)), ()
    path = TextPath((0, 0), text, size=100, prop=FontProperties(fname=str(font_file(face))))
    return path.vertices / 100, tuple(path.codes)

"""Title and caption above a figure, for files and pictures; on a page the HTML carries them.

Sheet millimetres.
"""

from __future__ import annotations

from dataclasses import dataclass

from hubwright.drawing.faces import LEADING, TextLine, line, wrapped
from hubwright.drawing.marks import Lettering
from hubwright.scenes.vocabulary import Scene

_MARGIN, _TITLE_CAP, _CAPTION_CAP = 10.0, 4.2, 2.5


@dataclass(frozen=True, slots=True)
class Heading:
    """Lines set for a sheet's width: title, caption, and the height that they take."""

    title: tuple[TextLine, ...]
    caption: tuple[TextLine, ...]
    height: float

    def lines(self, top: float) -> list[Lettering]:
        """Return the lines below the top edge of the sheet."""
        y = top - 7.0
        marks = []
        for each in self.title:
            y -= each.cap
            marks.append(Lettering((_MARGIN, y), each, "ink"))
            y -= (LEADING - 1) * each.cap
        y -= 0.6
        for each in self.caption:
            y -= each.cap
            marks.append(Lettering((_MARGIN, y), each, "soft"))
            y -= (LEADING - 0.85) * each.cap
        return marks


def heading(scene: Scene, width: float) -> Heading:
    """Return title and caption broken to a sheet's width."""
    room = width - 2 * _MARGIN
    title = tuple(line(row, _TITLE_CAP, "bold") for row in wrapped(scene.title, _TITLE_CAP, room, "bold"))
    caption = tuple(line(row, _CAPTION_CAP, "serif") for row in wrapped(scene.caption, _CAPTION_CAP, room, "serif"))
    height = 7.0 + len(title) * LEADING * _TITLE_CAP + 0.6 + len(caption) * (LEADING + 0.15) * _CAPTION_CAP + 2.0
    return Heading(title, caption, height)

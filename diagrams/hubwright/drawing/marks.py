"""The display list: what a drawing consists of once everything has its place on the sheet, before any file format.

Sheet millimetres, x to the right and y up; colours are tokens of the palette.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from typing import Literal

from hubwright.drawing.faces import TextLine
from hubwright.drawing.geometry import Array, Box, Segment
from hubwright.scenes.vocabulary import Scene, Tone

Cap = Literal["round", "butt"]
FRAME_RADIUS = 4.0  # of the corners of a view's frame, at which its parts are clipped


@dataclass(frozen=True, slots=True, eq=False)
class Shape:
    """Polylines or polygons of one paint; several rings fill by the even-odd rule."""

    rings: tuple[Array, ...]
    closed: bool = False
    fill: str | None = None
    line: str | None = None
    width: float = 0.0
    dashes: tuple[float, ...] = ()
    cap: Cap = "round"
    mitred: bool = False
    exact: bool = False  # what is measured in the file: written point by point, in place, with an extra decimal


@dataclass(frozen=True, slots=True)
class Disc:
    """A circle."""

    centre: tuple[float, float]
    radius: float
    fill: str | None = None
    line: str | None = None
    width: float = 0.0


@dataclass(frozen=True, slots=True)
class Lettering:
    """A line of text from the start of its baseline, turned about that point by `rotation` degrees."""

    at: tuple[float, float]
    text: TextLine
    colour: str
    rotation: float = 0.0
    halo: float = 0.0  # width of the paper-coloured edge, sheet millimetres


@dataclass(frozen=True, slots=True)
class Group:
    """Marks that belong together under a name; `ends` are tail and tip (or both ends) of what is to scale."""

    name: str
    children: tuple[Mark, ...]
    data: tuple[tuple[str, str], ...] = ()
    ends: Segment | None = None
    centre: tuple[float, float] | None = None  # of an arc between the ends
    clip: str | None = None  # the view whose frame clips it


Mark = Shape | Disc | Lettering | Group


def flat(marks: Iterable[Mark]) -> Iterator[Shape | Disc | Lettering]:
    """Yield the marks of groups, and of groups within them, in drawing order."""
    for mark in marks:
        if isinstance(mark, Group):
            yield from flat(mark.children)
        else:
            yield mark


@dataclass(frozen=True, slots=True)
class ViewGroup:
    """What one step draws in one view."""

    view: str
    children: tuple[Group, ...]
    data: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Layer:
    """What one step draws."""

    step: int
    views: tuple[ViewGroup, ...]


@dataclass(frozen=True, slots=True)
class TextBox:
    """The box of a piece of text, for checks: the name of its group, its words and the box that it fills."""

    name: str
    words: str
    box: Box


@dataclass(frozen=True, slots=True)
class BalloonKey:
    """An entry of the key of a narrow drawing: the letter in the balloon, what it stands for, its step and tone."""

    letter: str
    lines: tuple[str, ...]
    tone: Tone
    step: int


@dataclass(frozen=True, slots=True)
class Drawing:
    """A scene laid out on its sheet, ready for any writer."""

    scene: Scene
    size: tuple[float, float]
    layers: tuple[Layer, ...]
    foot: tuple[Group, ...]  # scale bars, key and axes: they stand in every step
    frames: dict[str, Box] = field(default_factory=dict)  # by view, for clipping
    texts: tuple[TextBox, ...] = ()
    balloons: tuple[BalloonKey, ...] = ()
    view: str = ""  # of a narrow drawing: the one view that it shows

    def up_to(self, step: int) -> Drawing:
        """Return the drawing as it stands after a step; nothing that stood moves."""
        return replace(self, layers=tuple(layer for layer in self.layers if layer.step <= step))

    def groups(self) -> Iterator[Group]:
        """Yield every named group of the layers, in drawing order."""
        for layer in self.layers:
            for view in layer.views:
                yield from view.children

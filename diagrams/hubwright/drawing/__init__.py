"""How any scene looks: drafting primitives, label layout and the writers of SVG, PNG and PDF.

`draw(scene)` lays a scene out once; every writer takes the resulting Drawing.
"""

from typing import Literal, overload

from hubwright.drawing.draughting import draw_sheet
from hubwright.drawing.frames import frames
from hubwright.drawing.marks import BalloonKey, Drawing, TextBox
from hubwright.drawing.narrow import draw_narrow
from hubwright.drawing.palette import Theme
from hubwright.drawing.preview import preview
from hubwright.drawing.raster import pdf, png
from hubwright.drawing.svg import svg_file, svg_for_page, svg_in_place
from hubwright.scenes.vocabulary import Scene

__all__ = [
    "BalloonKey",
    "Drawing",
    "TextBox",
    "Theme",
    "draw",
    "frames",
    "pdf",
    "png",
    "preview",
    "svg_file",
    "svg_for_page",
    "svg_in_place",
]


@overload
def draw(scene: Scene, *, form: Literal["wide"] = "wide") -> Drawing: ...
@overload
def draw(scene: Scene, *, form: Literal["narrow"]) -> tuple[Drawing, ...]: ...
def draw(scene: Scene, *, form: Literal["wide", "narrow"] = "wide") -> Drawing | tuple[Drawing, ...]:
    """Return a scene laid out: on one wide sheet, or for a phone each view on a narrow sheet of its own.

    A narrow drawing has letters in rings instead of labels; its `balloons` say what they stand for.
    Raises OpenFreeBody if the scene carries a free body that does not close.
    """
    return draw_narrow(scene) if form == "narrow" else draw_sheet(scene)

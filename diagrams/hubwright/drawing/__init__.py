"""How any scene looks: drafting primitives, label layout and the writers of SVG, PNG and PDF.

`draw(scene)` lays a scene out once; every writer takes the resulting Drawing.
"""

from hubwright.drawing.draughting import draw_sheet as draw
from hubwright.drawing.marks import BalloonKey, Conflict, Drawing, TextBox
from hubwright.drawing.palette import Theme
from hubwright.drawing.raster import pdf, png
from hubwright.drawing.svg import svg_file, svg_for_page

__all__ = ["BalloonKey", "Conflict", "Drawing", "TextBox", "Theme", "draw", "pdf", "png", "svg_file", "svg_for_page"]

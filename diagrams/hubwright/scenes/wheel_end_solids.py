"""The parts of a wheel end as items of a view: hatched solids, and the lines on and beyond them.

A view's first axis is ISO y; its second runs across the spindle: z as seen from the rear, x as seen from above.
"""

from typing import Literal

import numpy as np

from hubwright.scenes.vocabulary import Item, Line, Part, Point
from hubwright.scenes.wheel_end_parts.assembly import Assembly
from hubwright.scenes.wheel_end_parts.outlines import Ring

Extent = Literal["whole", "detail"]

_OUTLINES = {
    "whole": {"outline": 0.2, "fine": 0.13, "none": 0.0},
    "detail": {"outline": 0.35, "fine": 0.18, "none": 0.0},
}
_PITCH = {"whole": 0.62, "detail": 1.5}


def solids(parts: Assembly, view: str, side: int, extent: Extent, *, body_only: bool = False) -> list[Item]:
    """Return every part with its hatching, then the lines on and beyond them; of the free body alone if asked."""
    return _pieces(parts, view, side, extent, body_only) + _strokes(parts, view, side, extent, body_only)


def _pieces(parts: Assembly, view: str, side: int, extent: Extent, body_only: bool) -> list[Item]:
    items: list[Item] = []
    for piece in parts.pieces:
        if (piece.extent == "whole" and extent != "whole") or (body_only and not piece.turns):
            continue
        outline = _OUTLINES[extent][piece.edge]
        if piece.name == "tire":
            outline *= 2
        items.append(
            Part(
                f"part-{view}-{piece.name}",
                view,
                1,
                rings=tuple(points_of(ring, side) for ring in piece.rings),
                material=piece.material,
                hatch=None if piece.hatch is None else piece.hatch * side,
                hatch_pitch=_PITCH[extent] * piece.pitch,
                outline=outline,
                level=piece.level,
            )
        )
    return items


def _strokes(parts: Assembly, view: str, side: int, extent: Extent, body_only: bool) -> list[Item]:
    return [
        Line(
            f"line-{view}-{stroke.name}",
            view,
            1,
            points=points_of(stroke.points, side),
            style=stroke.style,
            tone=stroke.tone,
            level=stroke.level,
        )
        for stroke in parts.strokes
        if (stroke.extent == "both" or extent == "whole") and not (body_only and stroke.name.startswith("knuckle"))
    ]


def points_of(ring: Ring, side: int) -> tuple[Point, ...]:
    """Return outline points in the view's axes; a hundredth of a millimetre is finer than any print."""
    rounded = np.round(ring * np.array([side, 1.0]), 3) + 0.0
    return tuple((float(y), float(z)) for y, z in rounded)

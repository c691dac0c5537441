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


def solids(
    parts: Assembly, view: str, side: int, extent: Extent, *, body_only: bool = False, without: tuple[str, ...] = ()
) -> list[Item]:
    """Return parts with their hatching, and lines on and beyond them; the free body alone if asked, or without some."""
    fixed = tuple(piece.name for piece in parts.pieces if not piece.turns) if body_only else ()
    left_out = (*fixed, *without)
    return _pieces(parts, view, side, extent, left_out) + _strokes(parts, view, side, extent, left_out)


def _pieces(parts: Assembly, view: str, side: int, extent: Extent, left_out: tuple[str, ...]) -> list[Item]:
    items: list[Item] = []
    for piece in parts.pieces:
        if (piece.extent == "whole" and extent != "whole") or piece.name in left_out:
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


def _strokes(parts: Assembly, view: str, side: int, extent: Extent, left_out: tuple[str, ...]) -> list[Item]:
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
        if (stroke.extent == "both" or extent == "whole") and not stroke.name.startswith(left_out)
    ]


def points_of(ring: Ring, side: int) -> tuple[Point, ...]:
    """Return outline points in the view's axes; a thousandth of a millimetre is finer than any print."""
    rounded = np.round(ring * np.array([side, 1.0]), 3) + 0.0
    return tuple((float(y), float(z)) for y, z in rounded)

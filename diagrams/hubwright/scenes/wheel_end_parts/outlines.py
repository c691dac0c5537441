"""Curves of part outlines: arcs, Bézier curves, rounded corners, sheet metal of even thickness.

Points are rows (a, r) in millimetres: a outboard of the bearing centre, r from the spindle axis.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

Ring = NDArray[np.float64]  # n × 2, closed when it bounds a part
Pair = tuple[float, float]


def arc(centre: Pair, radius: float, start: float, end: float, count: int = 30) -> Ring:
    """Return points on a circle between two angles in degrees."""
    t = np.radians(np.linspace(start, end, count))
    return np.column_stack([centre[0] + radius * np.cos(t), centre[1] + radius * np.sin(t)])


def circle(centre: Pair, radius: float, count: int = 48) -> Ring:
    """Return a full circle as a closed ring, its first point not repeated."""
    return arc(centre, radius, 0.0, 360.0, count + 1)[:-1]


def bezier(p0: Pair, p1: Pair, p2: Pair, p3: Pair, count: int = 16) -> Ring:
    """Return points on a cubic Bézier curve."""
    t = np.linspace(0.0, 1.0, count)[:, None]
    a, b, c, d = (np.asarray(p, dtype=float) for p in (p0, p1, p2, p3))
    curve: Ring = (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t**2 * c + t**3 * d
    return curve


def rounded(points: Sequence[Pair], radii: float | Sequence[float], *, closed: bool = False, count: int = 7) -> Ring:
    """Return a polyline with its corners rounded; a radius gives way where the neighbouring corners are near."""
    corners = [np.asarray(p, dtype=float) for p in points]
    n = len(corners)
    wanted = [float(radii)] * n if isinstance(radii, (int, float)) else [float(r) for r in radii]
    pieces: list[Ring] = []
    for i, corner in enumerate(corners):
        if wanted[i] <= 0 or (not closed and i in (0, n - 1)):
            pieces.append(corner[None])
            continue
        before, after = corners[i - 1] - corner, corners[(i + 1) % n] - corner
        length_before, length_after = np.hypot(*before), np.hypot(*after)
        if min(length_before, length_after) < 1e-9:
            continue
        before, after = before / length_before, after / length_after
        half = np.arccos(np.clip(before @ after, -1, 1)) / 2
        if abs(half - np.pi / 2) < 1e-3 or half < 1e-3:
            pieces.append(corner[None])
            continue
        reach = min(wanted[i] / np.tan(half), 0.49 * length_before, 0.49 * length_after)
        radius = reach * np.tan(half)
        bisector = (before + after) / np.hypot(*(before + after))
        centre = corner + bisector * radius / np.sin(half)
        start, end = corner + before * reach - centre, corner + after * reach - centre
        first = np.arctan2(start[1], start[0])
        turn = (np.arctan2(end[1], end[0]) - first + np.pi) % (2 * np.pi) - np.pi
        angles = first + turn * np.linspace(0.0, 1.0, count)
        pieces.append(centre + radius * np.column_stack([np.cos(angles), np.sin(angles)]))
    return np.vstack(pieces)


def thickened(line: Ring, thickness: float) -> Ring:
    """Return the ring around a line of even thickness; its corner radii must exceed half the thickness."""
    along = np.gradient(line, axis=0)
    normal = np.column_stack([-along[:, 1], along[:, 0]])
    normal /= np.maximum(np.hypot(normal[:, 0], normal[:, 1]), 1e-12)[:, None]
    return np.vstack([line + normal * thickness / 2, (line - normal * thickness / 2)[::-1]])


def below(ring: Ring) -> Ring:
    """Return the mirror image on the other side of the spindle axis."""
    return np.column_stack([ring[:, 0], -ring[:, 1]])


def reversed_along(ring: Ring) -> Ring:
    """Return the mirror image on the other side of the plane between the rows."""
    return np.column_stack([-ring[:, 0], ring[:, 1]])


def both_sides(ring: Ring) -> tuple[Ring, Ring]:
    """Return an outline above the spindle axis and its mirror image below."""
    return ring, below(ring)

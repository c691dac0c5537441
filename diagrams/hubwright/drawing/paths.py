"""Path data as short as the eye allows: bends that nobody sees left out, then steps from point to point in halves.

All rings of a drawing go through numpy together: outlines and hatching are thousands of short lines, and most of the
time and of the weight of a page's figures.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from hubwright.drawing.geometry import Array

Rings = Sequence[Array]
Whole = NDArray[np.int64]


class _Tenths(dict[int, str]):
    """Whole numbers of tenths as path data writes them."""

    def __missing__(self, value: int) -> str:
        whole, rest = divmod(abs(value), 10)
        text = ("-" if value < 0 else "") + (str(whole) if whole or not rest else "") + (f".{rest}" if rest else "")
        self[value] = text
        return text


_TENTHS = _Tenths()


def short_paths(paths: Sequence[tuple[Rings, bool]], on_page: Callable[[Array], Array], *, unseen: float) -> list[str]:
    """Return path data for paths of at least one ring, each with whether it is closed.

    `on_page` takes points of the sheet to user units, of which nobody sees so many.
    """
    if not paths:
        return []
    rings = [ring for path, _ in paths for ring in path]
    points = on_page(np.concatenate(rings))
    ends = np.cumsum([len(ring) for ring in rings])
    kept = seen(points, ends, unseen)
    places = 5 * np.rint(points[kept] * 2).astype(np.int64)  # tenths of a user unit; halves are a quarter shorter
    ends = np.searchsorted(kept, ends)
    steps = _steps(places, ends, paths)
    words = [_TENTHS[value] for value in steps.ravel().tolist()]
    bounds = [0, *(2 * ends).tolist()]
    spans = iter(pairwise(bounds))
    written = []
    for path, closed in paths:
        end = "z" if closed else ""
        pieces = []
        for _ in path:
            first, last = next(spans)
            rest = "l" + " ".join(words[first + 2 : last]) if last > first + 2 else ""
            pieces.append(f"m{words[first]} {words[first + 1]}{rest}{end}")
        written.append("".join(pieces).replace(" -", "-"))
    return written


def seen(points: Array, ends: Whole, tolerance: float) -> Whole:
    """Return the places of those points that an eye needs to see the lines that end before `ends`.

    Every other point goes, again and again, where the line stays within the tolerance of all that it has lost; how far
    off those lie is added up, so that the tolerance holds however many go.
    """
    corner = np.zeros(len(points), dtype=bool)
    corner[ends - 1] = True
    corner[np.concatenate([[0], ends[:-1]])] = True
    live = np.arange(len(points))
    lost = np.zeros(len(points))  # how far off lies what went between a point and the one before it
    parity, idle = 1, 0
    while idle < 2:
        tried = np.arange(parity, len(live) - 1, 2)
        tried = tried[~corner[live[tried]]]
        before, here, after = (points[live[tried + shift]] for shift in (-1, 0, 1))
        along, off = after - before, here - before
        square = np.maximum((along * along).sum(axis=1), 1e-12)
        share = np.clip((along * off).sum(axis=1) / square, 0.0, 1.0)
        miss = np.hypot(*(off - share[:, None] * along).T) + np.maximum(lost[tried], lost[tried + 1])
        gone = tried[miss <= tolerance]
        if gone.size:
            lost[gone + 1] = miss[miss <= tolerance]
            live, lost, idle = np.delete(live, gone), np.delete(lost, gone), 0
        else:
            idle += 1
        parity = 3 - parity
    return live


def _steps(places: Whole, ends: Whole, paths: Sequence[tuple[Rings, bool]]) -> Whole:
    """Return the way to each point from where the pen stands: a closed ring takes it back to its first point."""
    starts = np.concatenate([[0], ends[:-1]])
    closed = np.array([shut for path, shut in paths for _ in path])
    steps = np.diff(places, axis=0, prepend=0)
    pen = np.concatenate([[[0, 0]], places[np.where(closed, starts, ends - 1)][:-1]])
    pen[np.cumsum([0, *(len(path) for path, _ in paths[:-1])])] = 0  # each path begins at the origin
    steps[starts] = places[starts] - pen
    return steps

"""Signs of the trade: supports, ground, springs, dampers, centres, axes, and the strokes of each line type (ISO 128).

Sheet millimetres.
"""

from __future__ import annotations

from math import hypot
from typing import Literal

import numpy as np

from hubwright.drawing.faces import line
from hubwright.drawing.geometry import Array, Box, arc
from hubwright.drawing.marks import Disc, Lettering, Mark, Shape
from hubwright.drawing.palette import line_token
from hubwright.scenes.vocabulary import Damper, Dot, LineStyle, Point, Spring, Support

# width and dashes of each line type
STYLES: dict[LineStyle, tuple[float, tuple[float, ...]]] = {
    "outline": (0.5, ()),
    "thin": (0.25, ()),
    "hair": (0.13, ()),
    "hidden": (0.25, (2.2, 1.1)),
    "centre": (0.18, (5.0, 1.0, 0.6, 1.0)),
    "phantom": (0.25, (5.0, 0.9, 0.6, 0.9, 0.6, 0.9)),
}
_HATCH_STEP, _HATCH_LEAN, _HATCH_DEPTH = 2.0, 1.5, 1.5
_SUPPORT_HEIGHT, _HALF_TRIANGLE, _HALF_GROUND = 5.0, 2.8, 5.0  # of a beam's supports
_HALF_WALL, _WALL = 7.0, 0.5  # of a wall, and the width of its line


def ground_marks(start: Point, end: Point, *, colour: str = "ink", width: float = 0.35) -> tuple[Mark, ...]:
    """Return a line with short hatching on its lower (or right-hand) side."""
    a, b = np.array(start), np.array(end)
    if (b[0], b[1]) < (a[0], a[1]):
        a, b = b, a
    length = hypot(*(b - a))
    along = (b - a) / length
    below = np.array([along[1], -along[0]])
    count = int(length / _HATCH_STEP)
    first = (length - (count - 1) * _HATCH_STEP - _HATCH_LEAN) / 2 + _HATCH_LEAN
    feet = [a + along * (first + i * _HATCH_STEP) for i in range(max(count, 1))]
    strokes = tuple(np.array([foot, foot - along * _HATCH_LEAN + below * _HATCH_DEPTH]) for foot in feet)
    return (
        Shape((np.array([a, b]),), line=colour, width=width, cap="butt"),
        Shape(strokes, line=colour, width=0.18, cap="butt"),
    )


def support_boxes(at: Point, item: Support) -> tuple[Box, ...]:
    """Return what the symbol of a beam's support fills, the beam's axis at the point."""
    x, y = at
    if item.kind.startswith("fixed"):
        back, front = _HATCH_DEPTH, _WALL / 2  # the hatching lies behind the wall
        left, right = (back, front) if item.kind == "fixed-left" else (front, back)
        return ((x - left, y - _HALF_WALL, x + right, y + _HALF_WALL),)
    low = y - _SUPPORT_HEIGHT
    if item.kind == "knife edges":
        return ((x - _HALF_TRIANGLE, low, x + _HALF_TRIANGLE, y + _SUPPORT_HEIGHT),)
    ground = (x - _HALF_GROUND, low - _HATCH_DEPTH, x + _HALF_GROUND, low)
    return (x - _HALF_TRIANGLE, low, x + _HALF_TRIANGLE, y), ground


def support_marks(at: Point, item: Support) -> tuple[Mark, ...]:
    """Return the symbol of a beam's support, the beam's axis at the point."""
    x, y = at
    colour = line_token(item.tone)
    height, half = _SUPPORT_HEIGHT, _HALF_TRIANGLE

    def triangle(sign: float, tall: float) -> Shape:
        corners = np.array(
            [[x, y], [x - half * tall / height, y - sign * tall], [x + half * tall / height, y - sign * tall]]
        )
        return Shape((corners,), closed=True, fill="paper", line=colour, width=0.35, mitred=True)

    foot = (x - _HALF_GROUND, y - height), (x + _HALF_GROUND, y - height)
    if item.kind == "pin":
        return triangle(1, height), *ground_marks(*foot, colour=colour)
    if item.kind == "roller":
        tall, wheel = height - 1.4, 0.7
        return (
            triangle(1, tall),
            *(Disc((x + dx, y - tall - wheel), wheel, "paper", colour, 0.3) for dx in (-1.3, 1.3)),
            *ground_marks(*foot, colour=colour),
        )
    if item.kind == "knife edges":  # holds up and down alike
        return triangle(1, height), triangle(-1, height)
    low, high = (x, y - _HALF_WALL), (x, y + _HALF_WALL)
    wall = ground_marks(low, high, colour=colour, width=_WALL)
    if item.kind == "fixed-right":
        return wall
    mirrored = tuple(
        Shape(
            tuple(np.column_stack([2 * x - ring[:, 0], ring[:, 1]]) for ring in mark.rings),
            line=mark.line,
            width=mark.width,
            cap=mark.cap,
        )
        for mark in wall
        if isinstance(mark, Shape)
    )
    return mirrored


def dot_marks(at: Point, item: Dot) -> tuple[Mark, ...]:
    """Return a marked point; a centre of mass is the quartered disc."""
    colour = line_token(item.tone)
    if item.kind == "dot":
        return (Disc(at, item.radius, colour, "paper", 0.15),)
    if item.kind == "ring":
        return (Disc(at, item.radius, "paper", colour, 0.25),)
    quarters = tuple(np.vstack([[at], arc(at, item.radius, start, start + 90, step=15)]) for start in (0, 180))
    return Disc(at, item.radius, "paper", colour, 0.2), Shape(quarters, closed=True, fill=colour)


def spring_line(start: Point, end: Point, item: Spring) -> Array:
    """Return the zigzag of a spring, its first and last eighth straight."""
    a, along, across = _frame(start, end)
    shares = np.concatenate([[0.0, 0.125], 0.125 + 0.75 * (np.arange(2 * item.turns) + 0.5) / (2 * item.turns)])
    sides = np.concatenate([[0.0, 0.0], np.where(np.arange(2 * item.turns) % 2, -0.5, 0.5)])
    shares, sides = np.append(shares, [0.875, 1.0]), np.append(sides, [0.0, 0.0])
    return np.asarray(a + np.outer(shares, along) + np.outer(sides * item.width, across))


def damper_lines(start: Point, end: Point, item: Damper) -> tuple[Array, ...]:
    """Return rod and open cylinder from the start, piston and rod from the end."""
    a, along, across = _frame(start, end)
    low, high, piston = 0.25 * along, 0.68 * along, 0.5 * along
    wall, plate = across * item.width / 2, across * item.width * 0.37
    return (
        np.array([a, a + low]),
        np.array([a + high + wall, a + low + wall, a + low - wall, a + high - wall]),
        np.array([a + piston + plate, a + piston - plate]),
        np.array([a + piston, a + along]),
    )


def _frame(start: Point, end: Point) -> tuple[Array, Array, Array]:
    """Return the start, the way to the end and the unit across it."""
    a, along = np.array(start), np.array(end) - np.array(start)
    return a, along, np.array([-along[1], along[0]]) / (hypot(*along) or 1.0)


def whisker(start: float, end: float, height: float, half: float) -> tuple[Array, ...]:
    """Return the span of a value: a level line with a short stroke at both ends."""
    strokes = (np.array([[x, height - half], [x, height + half]]) for x in (start, end))
    return np.array([[start, height], [end, height]]), *strokes


def axes_marks(at: Point, *, kind: Literal["rear", "side"], mirrored: bool, length: float = 7.0) -> tuple[Mark, ...]:
    """Return the axes of ISO 8855 as seen: from the rear y left and z up, from the side x and z."""
    x, y = at
    marks: list[Mark] = []
    leftward = kind == "rear" or mirrored
    level = (-1.0 if leftward else 1.0, 0.0)
    for along, name in ((level, "{y}" if kind == "rear" else "{x}"), ((0.0, 1.0), "{z}")):
        d = np.array(along)
        across, tip = np.array([-d[1], d[0]]), np.array(at) + d * length
        marks.append(Shape((np.array([np.array(at) + d * 1.4, tip - d * 1.6]),), line="soft", width=0.25))
        head = np.array([tip, tip - d * 2 + across * 0.6, tip - d * 2 - across * 0.6])
        marks.append(Shape((head,), closed=True, fill="soft"))
        text = line(name, 2.4)
        place = (
            (tip[0] - text.width / 2, tip[1] + 1.0)
            if along[1]
            else (tip[0] + (-1.0 - text.width if leftward else 1.0), tip[1] - 0.8)
        )
        marks.append(Lettering((float(place[0]), float(place[1])), text, "soft"))
    marks.append(Disc(at, 1.4, None, "soft", 0.25))
    toward = kind == "side" and mirrored  # seen from the left: y points at the reader
    if toward:
        marks.append(Disc(at, 0.45, "soft"))
    else:
        reach = 1.4 * 0.707
        cross = (
            np.array([[x - reach, y - reach], [x + reach, y + reach]]),
            np.array([[x - reach, y + reach], [x + reach, y - reach]]),
        )
        marks.append(Shape(cross, line="soft", width=0.2))
    third = line("{x} forward" if kind == "rear" else "{y} left", 2.2)
    marks.append(Lettering((x + 2.0, y - 3.4) if leftward else (x - 2.0, y - 4.4), third, "soft"))
    return tuple(marks)

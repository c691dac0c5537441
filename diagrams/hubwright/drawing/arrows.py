"""Arrows: forces with solid or open shafts, forces along the line of sight, and moments as arcs.

Sheet millimetres and degrees. Loads, reactions and moments differ in form, not only in colour.
"""

from __future__ import annotations

from math import cos, degrees, hypot, radians, sin, sqrt

import numpy as np

from hubwright.drawing.geometry import Array, arc
from hubwright.drawing.marks import Disc, Mark, Shape
from hubwright.scenes.vocabulary import Role

SHAFT, OPEN_SHAFT, OPEN_LINE = 1.0, 1.55, 0.34
HEAD, OPEN_HEAD, SLENDER_HEAD = (4.2, 2.7), (4.4, 3.3), (1.5, 1.25)  # length, width
SLENDER_SHAFT = 0.32
ARC, ARC_HEAD, OPEN_ARC_HEAD = 0.75, (3.6, 2.5), (3.8, 3.3)
HALO = 0.9
ARC_OPEN, ARC_LINE = 1.75, 0.32  # whole width of a double arc, and of its lines
NORMAL_RADIUS = 2.2
THIN_HEAD = 2.2, 0.76  # length and width of the head of a dimension line
_BREAK, _BREAK_GAP, _BREAK_LEAN = 0.38, 1.0, 0.4  # of the broken shaft: where, how wide, how slanted
_SECOND_HEAD = 0.72  # of a resultant, behind the first, in lengths of a head
_HEAD_SHARE = 0.62  # a short arrow's head takes this share of it


def force_marks(
    tail: tuple[float, float],
    tip: tuple[float, float],
    *,
    role: Role,
    slender: bool = False,
    halo: bool = True,
    broken: bool = False,
) -> tuple[Mark, ...]:
    """Return an arrow exactly as long as from tail to tip, however short; a broken one is not to scale."""
    length = hypot(tip[0] - tail[0], tip[1] - tail[1])
    along = np.array([tip[0] - tail[0], tip[1] - tail[1]]) / length
    across = np.array([-along[1], along[0]])
    is_open = role == "reaction" and not slender
    head_length, head_width = head_size(length, role=role, slender=slender)
    shaft = min(SLENDER_SHAFT if slender else OPEN_SHAFT if is_open else SHAFT, 0.5 * head_width)
    start, point = np.array(tail), np.array(tip)
    neck = point - along * head_length
    half, wide = across * shaft / 2, across * head_width / 2
    head = np.array([point, neck + wide, neck - wide])
    body = np.array([start + half, neck + half, neck - half, start - half])
    colour = "reaction" if role == "reaction" else "load"
    marks: list[Mark] = []
    if halo and not slender:
        whole = np.array([start + half, neck + half, neck + wide, point, neck - wide, neck - half, start - half])
        marks.append(Shape((whole,), closed=True, fill="paper", line="paper", width=HALO))
    if is_open:
        marks.append(Shape((body,), True, "paper", colour, min(OPEN_LINE, shaft / 3), mitred=True, exact=True))
        marks.append(Shape((head,), closed=True, fill=colour, exact=True))
    else:
        outline = np.array([body[0], body[1], head[1], head[0], head[2], body[2], body[3]])
        marks.append(Shape((outline,), closed=True, fill=colour, exact=True))
    if role == "resultant" and not slender:
        behind = along * head_length * _SECOND_HEAD
        if np.dot(neck - behind - start, along) > 0:
            marks.append(Shape((head - behind,), closed=True, fill=colour, exact=True))
    if broken:
        marks += _break(start, neck, along, across * head_width / 2, colour)
    return tuple(marks)


def _break(start: Array, neck: Array, along: Array, across: Array, colour: str) -> tuple[Shape, Shape]:
    """Return the break of a shaft: a gap between two slanted strokes."""
    middle, half, lean = start + _BREAK * (neck - start), along * _BREAK_GAP / 2, along * _BREAK_LEAN
    edges = [np.array([middle + s * half - across + lean, middle + s * half + across - lean]) for s in (-1, 1)]
    gap = np.array([edges[0][0], edges[0][1], edges[1][1], edges[1][0]])
    return Shape((gap,), closed=True, fill="paper", exact=True), Shape(tuple(edges), line=colour, width=0.3, cap="butt")


def head_size(length: float, *, role: Role, slender: bool = False) -> tuple[float, float]:
    """Return length and width of the head of an arrow: full size, or a share of a short arrow."""
    full_length, full_width = SLENDER_HEAD if slender else OPEN_HEAD if role == "reaction" else HEAD
    share = min(1.0, _HEAD_SHARE * length / full_length)
    return full_length * share, full_width * max(share, min(0.6, length / full_width))


def normal_marks(centre: tuple[float, float], *, toward: bool, role: Role) -> tuple[Mark, ...]:
    """Return a force along the line of sight: a dot in a ring toward the reader, a cross in a ring away."""
    colour = "reaction" if role == "reaction" else "load"
    width = 0.34 if role == "reaction" else 0.55
    ring = Disc(centre, NORMAL_RADIUS, "paper", colour, width)
    if toward:
        return ring, Disc(centre, 0.75, colour)
    reach = NORMAL_RADIUS / sqrt(2)
    x, y = centre
    strokes = (
        np.array([[x - reach, y - reach], [x + reach, y + reach]]),
        np.array([[x - reach, y + reach], [x + reach, y - reach]]),
    )
    return ring, Shape(strokes, line=colour, width=width)


def moment_angles(*, counter_clockwise: bool) -> tuple[float, float]:
    """Return where a moment's arc starts and where its head ends, in degrees."""
    return (-150.0, 20.0) if counter_clockwise else (-30.0, -200.0)


def moment_marks(
    centre: tuple[float, float], radius: float, *, counter_clockwise: bool, role: Role, halo: bool = True
) -> tuple[Mark, ...]:
    """Return a moment as an arc with its head, that of a reaction double; its sense counts, its size says nothing."""
    start, end = moment_angles(counter_clockwise=counter_clockwise)
    sense = 1.0 if counter_clockwise else -1.0
    full_length, head_width = OPEN_ARC_HEAD if role == "reaction" else ARC_HEAD
    head_length = min(full_length, 0.7 * radius)
    back = degrees(head_length / radius)
    body = arc(centre, radius, start, end - sense * back * 0.75)
    head = _arc_head(centre, radius, end, sense * back, head_width)
    marks: list[Mark] = []
    if halo:
        width = ARC_OPEN if role == "reaction" else ARC
        marks.append(Shape((body,), line="paper", width=width + HALO, cap="butt"))
        marks.append(Shape((head,), closed=True, line="paper", width=HALO))
    if role == "reaction":
        half = (ARC_OPEN - ARC_LINE) / 2
        sides = [arc(centre, radius + way * half, start, end - sense * back * 0.75) for way in (1.0, -1.0)]
        ring = np.vstack([sides[0], sides[1][::-1]])
        marks.append(Shape((ring,), True, "paper", "moment", ARC_LINE, mitred=True, exact=True))
    else:
        marks.append(Shape((body,), line="moment", width=ARC, cap="butt", exact=True))
    marks.append(Shape((head,), closed=True, fill="moment", exact=True))
    return tuple(marks)


def on_circle(centre: tuple[float, float], radius: float, angle: float) -> tuple[float, float]:
    """Return the point of a circle at an angle in degrees."""
    return centre[0] + radius * cos(radians(angle)), centre[1] + radius * sin(radians(angle))


def thin_head(tip: tuple[float, float], along: tuple[float, float], colour: str) -> Shape:
    """Return the slim head of a dimension line, its point at the tip."""
    point, toward = np.array(tip), np.array(along)
    across = np.array([-toward[1], toward[0]])
    base, half = point - toward * THIN_HEAD[0], across * THIN_HEAD[1] / 2
    return Shape((np.array([point, base + half, base - half]),), closed=True, fill=colour, exact=True)


def _arc_head(centre: tuple[float, float], radius: float, end: float, back: float, width: float) -> Array:
    tip, neck = np.array(on_circle(centre, radius, end)), np.array(on_circle(centre, radius, end - back))
    along = (tip - neck) / hypot(*(tip - neck))
    across = np.array([-along[1], along[0]])
    return np.array([tip, neck + across * width / 2, neck - across * width / 2])

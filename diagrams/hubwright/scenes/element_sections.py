"""The most loaded ball or roller of a row in section: contact line unloaded and under load, and the load along it.

A section cuts the axis and that element, and is turned about the axis until it stands upright, in the half, upper or
lower, where the element lies: first axis ISO y (to the left on the sheet), second from the axis, upward positive. Real
millimetres.
"""

import math
from dataclasses import dataclass, replace
from typing import Literal

from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.scenes.element_words import ElementWords
from hubwright.scenes.row_elements import RowElementsDrawn
from hubwright.scenes.scales import drawing_scale
from hubwright.scenes.vocabulary import (
    AngularDimension,
    Force,
    Item,
    Label,
    Line,
    Note,
    Part,
    Point,
    Role,
    View,
)
from hubwright.scenes.wheel_end_parts.bearing import BearingSection
from hubwright.scenes.wheel_end_parts.measures import BearingMeasures
from hubwright.scenes.wheel_end_solids import points_of

FRAME = (-72.0, -18.0, 33.0, 86.0)  # left and right edge from the row's middle, low and high edge on the sheet
_ROOM = 26.0  # of the rings, from bore to outside
_FOOT = 3.0  # from the lower edge to the bore
_ARC_CLEAR = 4.0  # between the outer ring and the arc of the contact angle
_ROOM_FOR_HEADS, _TAIL = 6.0, 5.5  # arc with its heads inside, and how far past its end a head outside reaches
_LEVEL = 1e-9  # rounding of an element level with the axis
_BEHIND = 0.9  # of an element's diameter: how far its contact line is drawn toward the axis


@dataclass(frozen=True)
class ElementsDrawn:
    """What the views of both rows share."""

    results: Results
    bearing: BearingMeasures
    section: BearingSection
    newtons_per_mm: float
    words: ElementWords

    @property
    def role(self) -> Role:
        """What the push on the outer ring is: on a stub axle that ring turns, and the push is the bearing's answer."""
        return "reaction" if self.bearing.outer_turns else "applied"

    @property
    def tone(self) -> Literal["reaction", "load"]:
        """The tone of the push."""
        return "reaction" if self.bearing.outer_turns else "load"


def section_view(d: ElementsDrawn, row: RowElementsDrawn, middle: float) -> tuple[View, str]:
    """Return the view of a row's section on the sheet, and its scale as written."""
    b = d.bearing
    scale, ratio = drawing_scale((b.outside - b.bore) / 2, _ROOM)
    left, right, low, high = middle + FRAME[0], middle + FRAME[1], FRAME[2], FRAME[3]
    bore = low + _FOOT if _half(row) > 0 else high - _FOOT  # the axis lies beyond it
    # mirrored: what lies outboard at a left wheel lies left of the origin
    origin = (left + right) / 2 + scale * _centre(d, row)[0], bore - scale * _half(row) * b.bore / 2
    edge, heading = (left, low, right, high), f"{row.name.capitalize()} row: a {d.words.element} in section"
    return View(f"section-{row.name}", origin, scale, d.newtons_per_mm, True, edge, heading=heading), ratio


def section_items(d: ElementsDrawn, row: RowElementsDrawn, view: View) -> list[Item]:
    """Return rings and element in section, both contact lines and the load."""
    b, section, side = d.bearing, d.section, d.results.side
    index = 0 if row.name == "outboard" else 1
    outer = section.outer[min(index, len(section.outer) - 1)]
    items: list[Item] = []
    for name, ring, turns, hatch in (
        ("inner", section.inner[index], not b.outer_turns, -45.0),
        ("outer", outer, b.outer_turns, 45.0),
    ):
        items.append(
            Part(
                f"part-{view.name}-{name}",
                view.name,
                rings=(_turned(points_of(ring, side), row),),
                material="turning-2" if turns else "fixed-2",
                hatch=hatch * side,
                outline=0.3,
                level=0.1,
            )
        )
    element = (_turned(points_of(section.elements[index], side), row),)
    items.append(Part(f"part-{view.name}-element", view.name, rings=element, material="ball", outline=0.3, level=0.2))
    items.append(_contact_line(d, row, view, "unloaded"))
    upright = (_along(d, row, 0.0, -_BEHIND), _along(d, row, 0.0, (_arc(d, view) + 1.3) / view.scale / b.element))
    items.append(Line(f"across-{row.name}", view.name, points=upright, style="hair", tone="soft", level=0.4))
    if d.words.element == "ball":
        items.append(_diameter(d, row))
    if not row.unloaded:
        items.append(_contact_line(d, row, view, "loaded"))
        items.append(_load(d, row, view))
    items.append(_contact_angle(d, row, view))
    return items


def _arc(d: ElementsDrawn, view: View) -> float:
    """Return the radius of the contact angle's arc: outside the rings, sheet millimetres."""
    return (d.bearing.outside - d.bearing.pitch) / 2 * view.scale + _ARC_CLEAR


def _contact_angle(d: ElementsDrawn, row: RowElementsDrawn, view: View) -> AngularDimension:
    """Return the angle between the plane of the row and the contact line: the loaded one, or that of the rings."""
    angle = d.bearing.angle if row.unloaded else row.worst.angle
    symbol = "{α|0}" if row.unloaded else "{α}"
    radius = _arc(d, view)
    label = Label((f"{symbol} = {d.words.angle(angle)}",), size=2.4)
    if angle * radius < _ROOM_FOR_HEADS:
        # words do not fit between the load and the upright: they stand beyond the head that points at the upright
        anchor = _along(d, row, -_TAIL / radius, radius / view.scale / d.bearing.element)
        from_middle = radius * (math.sin(angle / 2) + math.sin(_TAIL / radius))
        side = _away(d, row)
        nudge = (-from_middle if side == "left" else from_middle, 0.0)
        label = replace(label, place=side, anchor=anchor, nudge=nudge)
    return AngularDimension(
        f"dimension-contact-angle-{row.name}",
        view.name,
        1 if row.unloaded else 3,
        vertex=_centre(d, row),
        start=_along(d, row, 0.0, 0.5),
        end=_along(d, row, angle, 0.6),
        radius=radius,
        extension=(False, True),
        label=label,
        level=0.6,
    )


def _diameter(d: ElementsDrawn, row: RowElementsDrawn) -> Note:
    """Return the ball's diameter, with a leader to its edge: a line across it would not be seen on the dark sheet."""
    size = format_quantity(d.bearing.element / 1e3, "small length", d.words.units)
    y, r = _centre(d, row)
    # beside the ball between the rings, where the load does not point
    edge = (y - _way(d, row) * d.bearing.element / 2, r)
    label = Label((f"ø {size}",), _away(d, row), edge, size=2.4, nudge=(1.2 if _away(d, row) == "right" else -1.2, 0.0))
    return Note(f"label-element-{row.name}", f"section-{row.name}", label=label, level=0.6)


def _away(d: ElementsDrawn, row: RowElementsDrawn) -> Literal["left", "right"]:
    """Return the side of the sheet away from which the load points; the view is mirrored."""
    return "right" if _way(d, row) > 0 else "left"


def _contact_line(d: ElementsDrawn, row: RowElementsDrawn, view: View, kind: Literal["unloaded", "loaded"]) -> Line:
    angle = d.bearing.angle if kind == "unloaded" else row.worst.angle
    ahead = 1.6 if kind == "unloaded" else 0.5
    points = (_along(d, row, angle, -_BEHIND), _along(d, row, angle, ahead))
    name = f"contact-{kind}-{row.name}"
    if kind == "unloaded":
        return Line(name, view.name, points=points, style="centre", tone="soft", level=0.4)
    return Line(name, view.name, 3, points=points, tone=d.tone, width=0.35, level=0.5)


def _load(d: ElementsDrawn, row: RowElementsDrawn, view: View) -> Force:
    angle = row.worst.angle
    way = _way(d, row)
    return Force(
        f"load-{row.name}",
        view.name,
        3,
        at=_along(d, row, angle, 0.5),
        vector=(way * row.worst.load * math.sin(angle), _half(row) * row.worst.load * math.cos(angle)),
        role=d.role,
        tip_at_point=False,
        level=1,
    )


def _along(d: ElementsDrawn, row: RowElementsDrawn, angle: float, diameters: float) -> Point:
    """Return the point so many diameters from the element's middle along a contact line, outward positive."""
    y, r = _centre(d, row)
    far = diameters * d.bearing.element
    return y + _way(d, row) * far * math.sin(angle), r + _half(row) * far * math.cos(angle)


def _centre(d: ElementsDrawn, row: RowElementsDrawn) -> Point:
    # away from the vehicle's middle at the outboard row
    return -_way(d, row) * d.bearing.row_spacing / 2, _half(row) * d.bearing.pitch / 2


def _half(row: RowElementsDrawn) -> float:
    """Return the half of the bearing in which the most loaded element lies: 1 above the axis or level with it, or −1.

    An unloaded row is drawn above.
    """
    return -1.0 if not row.unloaded and row.worst.outward[1] < -_LEVEL else 1.0


def _turned(ring: tuple[Point, ...], row: RowElementsDrawn) -> tuple[Point, ...]:
    return tuple((y, _half(row) * radius) for y, radius in ring)


def _way(d: ElementsDrawn, row: RowElementsDrawn) -> float:
    """Return the sign along y of the push on the outer ring: back to back, each row pushes it toward the other."""
    return float(-d.results.side if row.name == "outboard" else d.results.side)

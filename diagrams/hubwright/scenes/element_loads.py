"""The load on every ball or roller of both rows, as arrows round each row, and the most loaded of each in section.

Round views look to the right from the left side of the vehicle: first axis x (to the left on the sheet), second z. The
sections are those of `element_sections`. Real millimetres.
"""

import math
from typing import Literal

from hubwright.results.model import Results
from hubwright.scenes.element_sections import FRAME, ElementsDrawn, section_items, section_view
from hubwright.scenes.element_words import ElementWords
from hubwright.scenes.row_elements import Element, RowElementsDrawn, life_of_case, rows_drawn
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.vocabulary import (
    Force,
    Item,
    KeyEntry,
    Label,
    Line,
    Note,
    Part,
    Point,
    ScaleBar,
    Scene,
    Units,
    View,
    Words,
)
from hubwright.scenes.wheel_end_parts.bearing import bearing_section
from hubwright.scenes.wheel_end_parts.measures import bearing_measures
from hubwright.scenes.wheel_end_parts.outlines import Ring, circle

_WIDTH, _HEIGHT = 310.0, 233.0
_MIDDLES = (82.0, 230.0)  # of the two rows, across the sheet
_LEVEL = 157.0  # of the rows' axes
_RING, _ARROW = 28.0, 33.0  # room of a row's radius and of its longest arrow
_NUMBER = 1.9  # cap height of the small numbers
_LEAST = 0.04  # of the largest load: smaller ones get no number
_CROWDED = 8.5  # sheet millimetres from element to element: of nearer ones every second gets a number
_FINEST = 0.2  # newtons per sheet millimetre
_NOTHING = 1e-6


def element_loads(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of both rows with the load on every element in one case."""
    life = life_of_case(results, case, "the load on every element")
    rows = rows_drawn(results, life)
    words = ElementWords(results, results.cases[case], rows, units)
    bearing = bearing_measures(results.setup.bearing)
    newtons_per_mm = max(round_scale(words.largest, _ARROW), _FINEST)
    drawn = ElementsDrawn(results, bearing, bearing_section(bearing), newtons_per_mm, words)
    scale, ratio = drawing_scale(bearing.outside / 2, _RING)
    views: list[View] = []
    items: list[Item] = []
    # the outboard row of a left wheel stands left, as in its sections
    for row, middle in zip(rows, _MIDDLES if results.side > 0 else _MIDDLES[::-1], strict=True):
        view = View(row.name, (middle, _LEVEL), scale, newtons_per_mm, mirrored=True, heading=words.heading(row))
        section, section_ratio = section_view(drawn, row, middle)
        views += [view, section]
        items += _rings(drawn, row)
        items += _arrows(drawn, row, view)
        items += section_items(drawn, row, section)
        items += _said(words, row, middle)
    return Scene(
        name="element-loads",
        title=words.title(),
        caption=words.caption(),
        description=words.description(),
        units=units,
        size=(_WIDTH, _HEIGHT),
        views=tuple(views),
        items=tuple(items),
        steps=words.steps(),
        scale_bars=(
            ScaleBar("outboard", "length", f"Rows {ratio}"),
            ScaleBar("section-outboard", "length", f"Sections {section_ratio}"),
            ScaleBar("outboard", "force", "Loads, all views"),
        ),
        key=(
            KeyEntry("reaction" if bearing.outer_turns else "load", f"{words.element} on outer ring"),
            KeyEntry("turning", "turns"),
            KeyEntry("fixed", "stands still"),
        ),
        axes="side",
    )


def _rings(d: ElementsDrawn, row: RowElementsDrawn) -> list[Item]:
    """Return the row cut through the middles of its elements: both rings, elements, centre lines."""
    b = d.bearing
    pitch, half = b.pitch / 2, b.element / 2

    def ring(name: str, outer: float, inner: float, *, turns: bool, hatch: float) -> Part:
        return Part(
            f"part-{row.name}-{name}",
            row.name,
            rings=tuple(_points(circle((0.0, 0.0), radius, 96)) for radius in (outer, inner)),
            material="turning-2" if turns else "fixed-2",
            hatch=hatch,
            outline=0.3,
            level=0.1,
        )

    items: list[Item] = [
        ring("outer-ring", b.outside / 2, pitch + 0.8 * half, turns=b.outer_turns, hatch=45.0),
        ring("inner-ring", pitch - 0.8 * half, b.bore / 2, turns=not b.outer_turns, hatch=-45.0),
        Part(
            f"part-{row.name}-elements",
            row.name,
            rings=tuple(_points(circle(_at(element, pitch), half, 36)) for element in row.elements),
            material="ball",
            outline=0.3,
            level=0.2,
        ),
    ]
    for name, end in (("level", (b.bore / 2, 0.0)), ("upright", (0.0, b.bore / 2))):
        points = ((-end[0], -end[1]), end)
        items.append(Line(f"centre-{row.name}-{name}", row.name, points=points, style="centre", tone="soft", level=0.3))
    return items


def _arrows(d: ElementsDrawn, row: RowElementsDrawn, view: View) -> list[Item]:
    """Return an arrow at every loaded element, as long as its whole load, and its number at the tip."""
    items: list[Item] = []
    reach = d.bearing.outside / 2
    worst = row.elements.index(row.worst)
    every = 1 if 2 * math.pi * reach * view.scale / len(row.elements) >= _CROWDED else 2
    for number, element in enumerate(row.elements):
        if element.load <= _NOTHING * d.words.largest:
            continue
        name = f"element-{row.name}-{number + 1}"
        items.append(
            Force(
                name,
                row.name,
                2,
                at=_at(element, reach),
                vector=(element.load * element.outward[0], element.load * element.outward[1]),
                role=d.role,
                tip_at_point=False,
                slender=True,
                level=1,
            )
        )
        tip = _at(element, element.load / d.newtons_per_mm / view.scale + reach)
        if number == worst:
            label = Label((f"*{d.words.load(element.load)}",), _side(element), tip, d.tone, 2.4)
            items.append(Note(f"label-{name}", row.name, 2, label=label))
        elif element.load >= _LEAST * d.words.largest and (number - worst) % every == 0:
            items.append(_number(d, element, view.on_sheet(tip), name))
    return items


def _number(d: ElementsDrawn, element: Element, tip: Point, name: str) -> Words:
    """Return a load as a bare number beyond the tip of its arrow."""
    text = d.words.number(element.load)
    across, up = -element.outward[0], element.outward[1]  # the view is mirrored
    x = tip[0] + across * (1.1 + 0.36 * _NUMBER * len(text))
    y = tip[1] + up * (1.1 + _NUMBER / 2) - _NUMBER / 2
    return Words(f"number-{name}", "", 2, at_sheet=(x, y), lines=(text,), size=_NUMBER, tone=d.tone, align="centre")


def _said(words: ElementWords, row: RowElementsDrawn, middle: float) -> list[Item]:
    """Return the heading of a row, and beside its section what stands of it in numbers."""
    left = middle - 72.0
    heading = Words(f"heading-{row.name}", "", at_sheet=(left, _HEIGHT - 8.0), lines=(f"*{words.heading(row)}",))
    beside = FRAME[1] + middle + 5.0
    high = FRAME[3] - 3.0
    strong, *rest = words.beside(row)
    low = high - 28.0 - 3.9 * len(words.together(row)) - 1.0
    return [
        heading,
        Words(f"unit-{row.name}", "", 2, at_sheet=(left, _HEIGHT - 12.6), lines=(words.unit(),), size=2.2, tone="soft"),
        Words(f"worst-{row.name}", "", 3, at_sheet=(beside, high), lines=(f"*{strong}",), size=2.4),
        Words(f"numbers-{row.name}", "", 3, at_sheet=(beside, high - 4.6), lines=tuple(rest), size=2.2, tone="soft"),
        Words(f"sum-{row.name}", "", 4, at_sheet=(beside, high - 28.0), lines=words.together(row), size=2.2),
        Words(f"kept-{row.name}", "", 4, at_sheet=(beside, low), lines=words.beside_sum(row), size=2.2, tone="soft"),
    ]


def _at(element: Element, radius: float) -> Point:
    return element.outward[0] * radius, element.outward[1] * radius


def _points(ring: Ring) -> tuple[Point, ...]:
    return tuple((round(float(x), 3), round(float(z), 3)) for x, z in ring)


def _side(element: Element) -> Literal["above", "below", "left", "right"]:
    forward, up = element.outward
    if abs(up) > 0.5:
        return "above" if up > 0 else "below"
    return "left" if forward > 0 else "right"

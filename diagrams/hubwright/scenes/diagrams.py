"""Shear, bending moment and deflection of a beam as rows of plots under its free body, on one abscissa.

Views in real millimetres along the beam; ordinates in newtons, newton metres and millimetres.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal

from hubwright.quantities import Kind, display, format_quantity
from hubwright.quantities.formatting import MINUS, NO_BREAK
from hubwright.results.beams import BeamResults
from hubwright.scenes.scales import round_down, round_scale
from hubwright.scenes.vocabulary import (
    Curve,
    Dot,
    Item,
    Label,
    Line,
    LineStyle,
    Note,
    Point,
    Support,
    Units,
    View,
    Words,
)
from hubwright.setup.model import PointMoment

FINEST = 0.2  # newtons per sheet millimetre: at a finer scale the bar of one pound-force would not fit the sheet's foot
MARGIN = 10.0  # sheet millimetres: where the words of a row begin
WORDS_PITCH = 3.9  # between lines of words
_LABEL = 6.5  # room for a label above or below a curve
_ROOM = 27.0  # of a plot between its lowest and its highest point
_BEND = 7.0  # of the deflected beam, from its line
_GAP = 5.0  # between rows
_ALIKE = 1e-9  # of the largest force: the closeness of the solver


@dataclass(frozen=True)
class Abscissa:
    """The places along the beam that all rows share: x to the right on the sheet, real millimetres."""

    origin: float  # where x = 0 lies on the sheet
    scale: float
    start: float
    end: float

    def view(self, name: str, zero: float, *, newtons_per_mm: float | None = None, per_mm: float | None = None) -> View:
        """Return a view of one row, its zero line at a height of the sheet."""
        return View(name, (self.origin, zero), self.scale, newtons_per_mm, vertical_per_mm=per_mm)


@dataclass(frozen=True)
class Rest:
    """A support as it stands under the deflected beam [mm]."""

    at: float
    kind: Literal["pin", "roller", "fixed-left", "fixed-right", "knife edges"]


@dataclass(frozen=True)
class PrintedForce:
    """A force at a point of the free body: its place [m], upward [N], and its size as printed."""

    at: float
    newtons: float
    text: str


@dataclass(frozen=True)
class RowWords:
    """What stands at the head of each row besides its title and unit."""

    shear: tuple[str, ...]
    moment: tuple[str, ...]
    no_size: tuple[str, ...]  # why the deflection has a shape and no size


@dataclass(frozen=True)
class Rows:
    """Views and items of the three plots, where the uppermost ends on the sheet, and the deflection's magnification."""

    views: tuple[View, ...]
    items: tuple[Item, ...]
    high: float
    magnification: float | None


def shared_force_scale(beam: BeamResults, room: float) -> float:
    """Return one round scale, newtons per sheet millimetre, for arrows of at most `room` and the shear under them."""
    largest = max([abs(force) for force in beam.point_forces], default=0.0)
    spread = max(*beam.curves.shear, 0.0) - min(*beam.curves.shear, 0.0)
    return max(round_scale(max(spread / _ROOM, largest / room), 1.0), FINEST)


def plot_rows(
    beam: BeamResults,
    abscissa: Abscissa,
    *,
    rests: tuple[Rest, ...],
    newtons_per_mm: float,
    low: float,
    first_step: int,
    units: Units,
    words: RowWords,
    printed: Sequence[PrintedForce] = (),
) -> Rows:
    """Return the rows of deflection, moment and shear, stacked upward from `low`; shear is the first step.

    `printed` are the forces at a point as the free body prints them: where they make the shear, it is told by them.
    """
    x = [place * 1e3 for place in beam.curves.x]
    bend, magnification = _bend(beam, abscissa.scale)
    bend_per_mm = 1.0 / (abscissa.scale * (magnification or 1.0))
    moment_per_mm = round_scale(max(*beam.curves.moment, 0.0) - min(*beam.curves.moment, 0.0), _ROOM)
    shear_unit = _unit(beam.maximum_shear.value, "force", units)
    moment_unit = _unit(beam.maximum_moment.value, "moment", units)
    drawn = ("shape only,", *words.no_size) if magnification is None else (f"drawn {magnification:,.10g} ×",)
    plots = (
        ("deflection", "Deflection {δ}", drawn, bend, bend_per_mm),
        ("moment", "Moment {M}", (moment_unit, *words.moment), list(beam.curves.moment), moment_per_mm),
        ("shear", "Shear {V}", (shear_unit, *words.shear), list(beam.curves.shear), newtons_per_mm),
    )
    views: list[View] = []
    items: list[Item] = []
    for number, (name, title, lines, values, per_mm) in enumerate(plots):
        step = first_step + 2 - number
        below = max(-min(values), 0.0) / per_mm + _LABEL
        above = max(max(values), 0.0) / per_mm + _LABEL
        # the words beside a plot need their own height
        spare = max(0.0, (len(lines) + 1) * WORDS_PITCH + 4.0 - below - above) / 2
        view = abscissa.view(name, low + spare + below, per_mm=per_mm)
        high = view.origin[1] + above + spare
        views.append(view)
        middle = (low + high) / 2 + len(lines) * WORDS_PITCH / 2 - 1.2
        items.append(Words(f"words-{name}", "", step, at_sheet=(MARGIN, middle), lines=(f"*{title}",)))
        below_title = (MARGIN, middle - WORDS_PITCH - 0.4)
        items.append(Words(f"words-{name}-2", "", step, at_sheet=below_title, lines=lines, size=2.2, tone="soft"))
        style: LineStyle = "centre" if name == "deflection" else "thin"
        ends = (abscissa.start, 0.0), (abscissa.end, 0.0)
        items.append(Line(f"zero-{name}", name, step, points=ends, style=style, extend=4.0, tone="soft"))
        items.append(_curve(name, list(zip(x, values, strict=True)), step))
        items.append(divider(view, name, high + _GAP / 2, step))
        low = high + _GAP
    items += _extremes(beam, "shear", first_step, units, printed)
    items += _extremes(beam, "moment", first_step + 1, units)
    items += _bend_marks(beam, bend, rests, first_step + 2, units)
    return Rows(tuple(views), tuple(items), low, magnification)


def divider(view: View, name: str, height: float, step: int) -> Line:
    """Return the faint line above a row, at a height of the sheet."""
    rise = view.scale if view.vertical_per_mm is None else 1.0 / view.vertical_per_mm
    y = (height - view.origin[1]) / rise
    left, right = ((x - view.origin[0]) / view.scale for x in (MARGIN, 300.0))
    return Line(f"divider-{name}", view.name, step, points=((left, y), (right, y)), style="hair", tone="faint")


def _curve(name: str, points: list[Point], step: int) -> Curve:
    if name == "deflection":
        return Curve("curve-deflection", name, step, points=tuple(points), filled=False, width=1.0, level=1)
    # an end that is not free of force starts with a jump from zero
    closed = ((points[0][0], 0.0), *points, (points[-1][0], 0.0))
    return Curve(f"curve-{name}", name, step, points=closed, tone="moment" if name == "moment" else "ink", level=1)


def _bend(beam: BeamResults, scale: float) -> tuple[list[float], float | None]:
    """Return the deflection to draw [mm] and how many times it is magnified; without a size, its shape alone."""
    shape = beam.deflection if beam.deflection is not None else beam.curves.bend_times_stiffness
    largest = max(abs(value) for value in shape)
    if beam.deflection is None:
        return [value / largest * _BEND / scale if largest else 0.0 for value in shape], None
    magnification = round_down(_BEND / (largest * 1e3 * scale)) if largest else 1.0
    return [value * 1e3 for value in shape], magnification


def shear_text(value: float, at: float, printed: Sequence[PrintedForce], units: Units) -> str:
    """Return the shear at a place [m] in words that agree with the forces as they are printed.

    A shear that one force makes alone has the number of that force; one that several make has their sum, where they
    have one unit. Elsewhere, as under a distributed load, it has its own number.

    >>> forces = PrintedForce(0.0, 1234.6, "1,235\\xa0N"), PrintedForce(0.5, -234.2, "234\\xa0N")
    >>> [shear_text(value, at, forces, "si") for value, at in ((1234.6, 0.1), (1000.4, 0.7))]
    ['1,235\\xa0N', '1,001\\xa0N']
    """
    sign = MINUS if value < 0 else ""
    near = _ALIKE * max([abs(force.newtons) for force in printed], default=0.0)
    for force in printed:
        if abs(abs(force.newtons) - abs(value)) <= near:
            return sign + force.text
    outboard = [force for force in printed if force.at < at]
    inboard = [replace(force, newtons=-force.newtons) for force in printed if force.at > at]
    for side in (outboard, inboard):
        if side and abs(math.fsum(force.newtons for force in side) - value) <= near:
            found = _summed(side)
            if found is not None:
                return found
    return format_quantity(value, "force", units)


def _summed(forces: Sequence[PrintedForce]) -> str | None:
    """Return the sum of forces as they are printed; nothing where they are printed in several units."""
    parts = [force.text.split(NO_BREAK) for force in forces]
    if len({unit for _, unit in parts}) > 1:
        return None
    numbers = [Decimal(number.replace(",", "")) for number, _ in parts]
    total = sum(
        (each.copy_sign(Decimal(force.newtons)) for each, force in zip(numbers, forces, strict=True)), Decimal()
    )
    return f"{MINUS if total < 0 else ''}{abs(total):,}{NO_BREAK}{parts[0][1]}"


def _extremes(
    beam: BeamResults,
    name: Literal["shear", "moment"],
    step: int,
    units: Units,
    printed: Sequence[PrintedForce] = (),
) -> list[Item]:
    """Return labels of the largest value and, where it is worth a word, of the largest of the other sign."""
    values = beam.curves.shear if name == "shear" else beam.curves.moment
    kind: Kind = "force" if name == "shear" else "moment"
    symbol = "V" if name == "shear" else "M"
    largest = max(abs(value) for value in values)
    items: list[Item] = []
    for extreme in (max(*values, 0.0), min(*values, 0.0)):
        if abs(extreme) <= 0.02 * largest:
            continue
        first = values.index(extreme)
        last = first
        while last + 1 < len(values) and abs(values[last + 1] - extreme) <= 1e-9 * largest:
            last += 1
        run = beam.curves.x[last] - beam.curves.x[first]
        # through the middle of a level stretch may run the guide of a couple
        shift = 0.25 if name == "shear" and any(isinstance(load, PointMoment) for load in beam.loads) else 0.5
        at = ((beam.curves.x[first] + shift * run) * 1e3, extreme)
        strong = "*" if abs(extreme) >= largest * (1 - 1e-9) else ""
        told = (
            format_quantity(extreme, kind, units)
            if name == "moment"
            else shear_text(extreme, at[0] / 1e3, printed, units)
        )
        text = f"{strong}{{{symbol}}} = {told}"
        tone: Literal["moment", "ink"] = "moment" if name == "moment" else "ink"
        sign = "high" if extreme > 0 else "low"
        size = 2.7 if strong else 2.4
        if name == "moment":  # beside the peak: through it runs the guide of a force
            label = Label((text,), "right", at, tone, size, nudge=(0.8, 2.6 if extreme > 0 else -2.6))
        else:
            label = Label((text,), "above" if extreme > 0 else "below", at, tone, size)
        items.append(Note(f"label-{name}-{sign}", name, step, label=label))
        if name == "moment":
            items.append(Dot(f"peak-{name}-{sign}", name, step, at=at, tone="moment", radius=0.8, level=3))
    return items


def _bend_marks(beam: BeamResults, bend: list[float], rests: tuple[Rest, ...], step: int, units: Units) -> list[Item]:
    items: list[Item] = [
        Support(f"support-{number}", "deflection", step, at=(rest.at, 0.0), kind=rest.kind)
        for number, rest in enumerate(rests, start=1)
    ]
    place = max(range(len(bend)), key=lambda index: abs(bend[index]))
    if bend[place]:
        at = (beam.curves.x[place] * 1e3, bend[place])
        items.append(Dot("peak-deflection", "deflection", step, at=at, radius=0.7, level=3))
        if beam.deflection is not None:
            text = f"{{δ}} = {format_quantity(abs(beam.deflection[place]), 'deflection', units)}"
            way = "up" if bend[place] > 0 else "down"
            over: Literal["above", "below"] = "above" if bend[place] > 0 else "below"
            label = Label((f"*{text}, {way}",), over, at, nudge=(0.0, 0.8 if bend[place] > 0 else -0.8))
            items.append(Note("label-deflection", "deflection", step, label=label))
    return items


def _unit(value: float, kind: Kind, units: Units) -> str:
    return display(value, kind, units).unit

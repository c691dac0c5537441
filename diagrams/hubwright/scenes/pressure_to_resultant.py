"""From the pressure under the tread to one force: the pressure, the forces of its strips, and their resultant.

Three views of the lower tire from the rear at one scale, in real millimetres from the bearing centre: ISO y and z. The
shape of the pressure and the width of the tread are drawn, not computed; what they add up to is the contact force.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from hubwright.quantities import format_quantity
from hubwright.results.model import CaseResult, Kind, Results
from hubwright.scenes.case_choice import case_of
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import (
    Dimension,
    Force,
    Ground,
    Item,
    KeyEntry,
    Label,
    Line,
    Note,
    Part,
    Point,
    ScaleBar,
    Scene,
    Step,
    Units,
    View,
    Words,
)
from hubwright.scenes.wheel_end_layout import fractions
from hubwright.scenes.wheel_end_parts.assembly import Assembly, assembly
from hubwright.scenes.wheel_end_parts.measures import measures
from hubwright.scenes.wheel_end_solids import solids

STRIPS = 8  # an even number leaves the middle to the resultant
_COUNT = "eight"  # of them, in words: beside the number of a view a number would run into it
_WIDTH, _FOOT = 310.0, 30.0
_MIDDLES = (56.0, 155.0, 254.0)
_TOLD = {
    "pressure": ("1  Pressure", "spread over the tread"),
    "strips": (f"2  {_COUNT.capitalize()} strips", "a force for each"),
    "resultant": ("3  One resultant", "as long as the strips end to end"),
}
_NAMES = tuple(_TOLD)
_ROOM, _ARROWS, _LEAST, _BELOW = 84.0, 40.0, 24.0, 5.0  # width of a tire; longest arrow, least room for words
_SCALES = ((1, 2), (1, 3), (1, 4), (1, 5), (1, 6))
_SMALL_ARROWS, _HEAD = 17, (1.5, 0.55)  # of the pressure: how many, length and half width of their heads
_DEEP = 5.0  # of the drawn pressure in the middle of the tread
_KINDS: tuple[Kind, ...] = ("standing", "braking", "driving", "cornering", "side_slope")
_NOTHING = 1e-6


@dataclass(frozen=True)
class _Sheet:
    """What the three views share."""

    results: Results
    state: CaseResult
    units: Units
    parts: Assembly
    scale: float
    per_mm: float
    road: float  # height on the sheet

    @property
    def side(self) -> int:
        return self.results.side

    @property
    def newtons(self) -> float:
        return self.state.contact_force.z

    @property
    def line(self) -> float:
        """Place of the load line across the vehicle."""
        return self.side * self.parts.measures.load_line

    @property
    def half(self) -> float:
        """Half of the width that presses."""
        return 0.96 * self.parts.below.tread_half_width

    @property
    def ground(self) -> float:
        """Height of the road below the bearing centre."""
        return -self.parts.measures.loaded_radius

    def view(self, name: str, middle: float) -> View:
        """Return a view whose tire stands in the middle of its third of the sheet."""
        origin = (middle + self.scale * self.line, self.road - self.scale * self.ground)
        return View(name, origin, self.scale, self.per_mm, mirrored=True, heading=_TOLD[name][0])

    def strips(self) -> list[tuple[float, float]]:
        """Return place across the vehicle and force of every strip."""
        return [
            (self.line + self.side * self.half * ((number + 0.5) / STRIPS * 2 - 1), share * self.newtons)
            for number, share in enumerate(fractions(STRIPS))
        ]


def pressure_to_resultant(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of the contact pressure, its strips and its resultant."""
    state = case_of(results, case, _KINDS, "a wheel that stands or rolls on an even road")
    parts = assembly(measures(results))
    scale, ratio = drawing_scale(2 * parts.below.half_width, _ROOM, _SCALES)
    per_mm = round_scale(state.contact_force.z, _ARROWS)
    road = _FOOT + max(state.contact_force.z / per_mm, _LEAST) + _BELOW
    sheet = _Sheet(results, state, units, parts, scale, per_mm, road)
    views = tuple(sheet.view(name, middle) for name, middle in zip(_NAMES, _MIDDLES, strict=True))
    items: list[Item] = []
    for number, view in enumerate(views, start=1):
        items += _tire(sheet, view, number)
        items += _heading(sheet, view, number)
    items += _pressure(sheet, 1) + _strips(sheet, 2) + _resultant(sheet, 3) + _levers(sheet, views[2], 4)
    top = views[0].on_sheet((0.0, -parts.measures.rim_radius))[1]
    return Scene(
        name="pressure-to-resultant",
        title=_title(sheet),
        caption=_caption(sheet),
        description=_description(sheet),
        units=units,
        size=(_WIDTH, top + 34.0),
        views=views,
        items=tuple(items),
        steps=_steps(sheet),
        scale_bars=(
            ScaleBar("pressure", "length", f"All views {ratio}"),
            ScaleBar("resultant", "force", "Forces, all views"),
        ),
        key=(
            KeyEntry("load", "road on tire, a strip"),
            KeyEntry("resultant", "resultant"),
            KeyEntry("load line", "load line"),
        ),
        axes="rear",
    )


def _tire(sheet: _Sheet, view: View, step: int) -> list[Item]:
    """Return the lower section of tire and rim, and the road."""
    kept = ("tire", "tire-inside", "rim", "bead-wires")
    items: list[Item] = []
    for item in solids(sheet.parts, view.name, sheet.side, "whole"):
        if isinstance(item, Part) and item.name.removeprefix(f"part-{view.name}-") in kept:
            rings = tuple(ring for ring in item.rings if max(z for _, z in ring) < 0)
            items.append(
                Part(
                    item.name,
                    view.name,
                    step,
                    rings=rings,
                    material=item.material,
                    hatch=item.hatch,
                    hatch_pitch=item.hatch_pitch,
                    outline=item.outline,
                    level=item.level,
                )
            )
        elif isinstance(item, Line) and "-lower-" in item.name and item.name.split("-")[2] in ("belt", "ply"):
            items.append(
                Line(
                    item.name,
                    view.name,
                    step,
                    points=item.points,
                    style=item.style,
                    tone=item.tone,
                    level=item.level,
                )
            )
    reach = sheet.parts.below.half_width
    inner = sheet.parts.below.tread_half_width + 2.5 / sheet.scale
    for way in (1.0, -1.0):
        start, end = sheet.line + way * inner, sheet.line + way * max(reach, inner + 6.0 / sheet.scale)
        items.append(
            Ground(f"ground-{view.name}", view.name, step, start=(start, sheet.ground), end=(end, sheet.ground))
        )
    return items


def _heading(sheet: _Sheet, view: View, step: int) -> list[Item]:
    y = view.on_sheet((0.0, -sheet.parts.measures.rim_radius))[1] + 26.0
    x = _MIDDLES[_NAMES.index(view.name)]
    second = _TOLD[view.name][1]
    return [
        Words(f"words-{view.name}", "", step, at_sheet=(x, y), lines=(f"*{view.heading}",), align="centre", size=2.8),
        Words(f"words-{view.name}-2", "", step, at_sheet=(x, y - 5.0), lines=(second,), align="centre", tone="soft"),
    ]


def _pressure(sheet: _Sheet, step: int) -> list[Item]:
    """Return the pressure as a row of small arrows below the tread: its shape alone, so without numbers."""
    places = np.linspace(-1.0, 1.0, 41)
    deep = _DEEP / sheet.scale
    inside = [(float(sheet.line + sheet.half * u), float(sheet.ground - deep * (1 - 0.35 * u**4))) for u in places]
    low = sheet.ground - 0.35 / sheet.scale
    ring: list[Point] = [(sheet.line - sheet.half, low), *inside, (sheet.line + sheet.half, low)]
    arrows: list[Item] = [
        Part(
            "part-pressure", "pressure", step, rings=(tuple(ring),), material="none", outline=0.3, tone="load", level=20
        )
    ]
    for number, u in enumerate(np.linspace(-0.94, 0.94, _SMALL_ARROWS)):
        at = float(sheet.line + sheet.half * u)
        foot = float(sheet.ground - deep * (1 - 0.35 * u**4))
        long, half = _HEAD[0] / sheet.scale, _HEAD[1] / sheet.scale
        head = ((at - half, low - long), (at, low), (at + half, low - long))
        for what, points in (("line", ((at, foot), (at, low))), ("head", head)):
            name = f"pressure-{what}-{number}"
            arrows.append(Line(name, "pressure", step, points=points, tone="load", width=0.3, level=20))
    label = Label(
        ("*Contact pressure", "width and shape drawn,", "its sum is {F|z}"),
        "below",
        anchor=(sheet.line, sheet.ground - deep - 1.0 / sheet.scale),
        tone="load",
        size=2.5,
    )
    return [*arrows, Note("label-pressure", "pressure", step, label=label)]


def _strips(sheet: _Sheet, step: int) -> list[Item]:
    forces = [force for _, force in sheet.strips()]
    items: list[Item] = [
        Force(
            f"force-strip-{number}",
            "strips",
            step,
            at=(y, sheet.ground),
            vector=(0.0, force),
            gap=0.35,
            level=20,
        )
        for number, (y, force) in enumerate(sheet.strips(), start=1)
    ]
    low, high = (format_quantity(value, "force", sheet.units) for value in (min(forces), max(forces)))
    longest = max(forces) / sheet.per_mm
    label = Label(
        (f"*{low} to {high} each", f"all {_COUNT} together {{F|z}}"),
        "below",
        anchor=(sheet.line, sheet.ground - (longest + 1.5) / sheet.scale),
        tone="load",
        size=2.5,
    )
    return [*items, Note("label-strips", "strips", step, label=label)]


def _resultant(sheet: _Sheet, step: int) -> list[Item]:
    """Return the resultant on the load line, and beside it the strips' forces end to end: as long as it."""
    beside = sheet.line - sheet.side * 9.0 / sheet.scale
    items: list[Item] = []
    start = sheet.ground - (sheet.newtons / sheet.per_mm + 0.35) / sheet.scale
    for number, (_, force) in enumerate(sheet.strips(), start=1):
        items.append(
            Force(
                f"force-end-to-end-{number}",
                "resultant",
                step,
                at=(beside, start),
                vector=(0.0, force),
                tip_at_point=False,
                slender=True,
                level=20,
            )
        )
        start += force / sheet.per_mm / sheet.scale
    outer: Literal["left", "right"] = "left" if sheet.side > 0 else "right"
    value = format_quantity(sheet.newtons, "force", sheet.units)
    items.append(
        Force(
            "force-F_z",
            "resultant",
            step,
            at=(sheet.line, sheet.ground),
            vector=(0.0, sheet.newtons),
            role="resultant",
            gap=0.35,
            label=Label((f"*{{F|z}} = {value}", "road on tire:", "the resultant"), outer, tone="load", size=3.0),
            level=21,
        )
    )
    middle = sheet.ground - sheet.newtons / sheet.per_mm / sheet.scale / 2
    inner: Literal["left", "right"] = "right" if sheet.side > 0 else "left"
    label = Label(("the strips,", "end to end"), inner, anchor=(beside, middle), tone="load", size=2.3)
    return [*items, Note("label-end-to-end", "resultant", step, label=label)]


def _levers(sheet: _Sheet, view: View, step: int) -> list[Item]:
    """Return load line, plane of the bearing centre and the distance between them."""
    m = sheet.parts.measures
    high = -m.rim_radius + 16.0 / sheet.scale
    low = sheet.ground
    items: list[Item] = [
        Line(
            "load-line",
            "resultant",
            step,
            points=((sheet.line, low), (sheet.line, high)),
            style="centre",
            tone="load",
            width=0.25,
            level=19,
        ),
        Line(
            "centre-plane", "resultant", step, points=((0.0, low), (0.0, high)), style="centre", tone="soft", level=18
        ),
    ]
    height = -m.rim_radius - 0.45 * (m.section_height - m.deflection)
    inner: Literal["left", "right"] = "right" if sheet.side * m.load_line > 0 else "left"
    outer: Literal["left", "right"] = "left" if inner == "right" else "right"
    # the key says it too, which a phone has not
    label = Label(("load line",), outer, anchor=(sheet.line, height), tone="load", size=2.3)
    items.append(Note("label-load-line", "resultant", step, label=label))
    if abs(m.load_line) <= 0.05:
        return items
    anchor = (0.0, height)
    label = Label(("plane of the", "bearing centre"), inner, anchor=anchor, tone="soft", size=2.3)
    items.append(Note("label-centre-plane", "resultant", step, label=label))
    length = format_quantity(abs(sheet.results.wheel_geometry.load_line_offset), "small length", sheet.units)
    way = "outboard" if m.load_line > 0 else "inboard"
    items.append(
        Dimension(
            "dimension-load-line",
            "resultant",
            step,
            start=(sheet.line, high),
            end=(0.0, high),
            line_at=view.on_sheet((0.0, high))[1] - 2.5,
            text=f"{{y|L}} = {length} {way}",
            extension=(False, False),
            side="end" if m.load_line > 0 else "start",
        )
    )
    return items


def _where(sheet: _Sheet) -> str:
    offset = sheet.results.wheel_geometry.load_line_offset
    if abs(offset) < 0.5e-4:
        return "in the plane of the bearing centre"
    length = format_quantity(abs(offset), "small length", sheet.units)
    return f"{length} {'outboard' if offset > 0 else 'inboard'} of the bearing centre"


def _title(sheet: _Sheet) -> str:
    value = format_quantity(sheet.newtons, "force", sheet.units)
    return f"The pressure under the tread acts like one force of {value}, {_where(sheet)}"


def _caption(sheet: _Sheet) -> str:
    wheel = sheet.results.wheel.replace("_", " ")
    words = [
        f"{wheel.capitalize()} wheel from the rear, {plain(sheet.state.name)}. The width and the shape of the pressure "
        "are drawn, its sum is computed.",
    ]
    F = sheet.state.contact_force
    if max(abs(F.x), abs(F.y)) > _NOTHING * abs(F.z):
        words.append("Only what presses upright is shown; the forces along the road act in the same patch.")
    return " ".join(words)


def _description(sheet: _Sheet) -> str:
    total = format_quantity(sheet.newtons, "force", sheet.units)
    forces = [force for _, force in sheet.strips()]
    low, high = (format_quantity(value, "force", sheet.units) for value in (min(forces), max(forces)))
    return (
        f"{_caption(sheet)} The pressure is cut into {_COUNT} strips of {low} to {high}; end to end they make {total}. "
        f"The resultant acts {_where(sheet)}, where the load line passes."
    )


def _steps(sheet: _Sheet) -> tuple[Step, ...]:
    moment = sum(-y * force for y, force in sheet.strips()) / 1e3 * -sheet.side
    about = format_quantity(abs(moment), "moment", sheet.units)
    turned = (
        "About the bearing centre's plane the strips on both sides cancel: the lever is nothing."
        if abs(moment) <= _NOTHING * sheet.newtons
        else f"About the plane of {{C}} the strips add up to {about}; divided by {{F|z}}, that is {_where(sheet)}."
    )
    return (
        Step("Start from the pressure", "The road presses on all of the tread, a little less at its edges."),
        Step("Cut it into strips", f"{_COUNT.capitalize()} strips, and a force in the middle of each."),
        Step("Add the forces", "Set end to end they are as long as the one force that stands for them."),
        Step("Find its place", turned),
    )

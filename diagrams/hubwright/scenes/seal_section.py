"""A hub's seal in section, with the pressure of the water outside and the suction of the cooled air inside.

A sketch of the trade's usual lip seal in sheet millimetres, outside to the left. Pressures are those beyond the outer
air's: one presses on a face, its arrows end there; a suction pulls, its arrows begin there. Every arrow is the force on
one square centimetre, on a US sheet on one square inch, all at one scale.
"""

from dataclasses import replace
from typing import Literal

from hubwright.quantities import Kind, format_quantity
from hubwright.results.model import Results
from hubwright.results.water import SealingResult
from hubwright.scenes.depth_against_quench import sealing_of, temperatures, told
from hubwright.scenes.scales import round_scale
from hubwright.scenes.vocabulary import (
    Column,
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
    Step,
    Units,
    View,
)

_SIZE = (310.0, 120.0)
_ORIGIN = (148.0, 74.0)
_COLUMNS = (84.0, 222.0)
_SQUARE: dict[Units, float] = {"si": 1e-4, "us": 0.0254**2}  # of a centimetre, of an inch [m²]
_SQUARES: dict[Units, tuple[str, str]] = {"si": ("square centimetre", "cm²"), "us": ("square inch", "in²")}
_LONGEST = 28.0
_GAP, _RING, _LONG = 16.0, 15.0, 44.0
# heights of the arrows, and where outer and inner face of the seal lie there
_ROWS = ((-9.0, -4.7, -1.6), (-4.0, -4.9, -1.8), (1.0, -5.0, -2.5), (6.0, -5.0, -2.5), (11.0, -5.0, -2.5))
_BETWEEN = 8.5  # height between two arrows, at which a leader ends on the line along them
_CLEAR = 0.4  # between a face and its arrows
_FLUID: Kind = "fluid pressure"


def seal_section(results: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of a seal with both pressures; they do not depend on the case."""
    del case
    found, depth, suction = sealing_of(results, "the section of the seal")
    per_mm = round_scale(max(depth, abs(suction)) * _SQUARE[units], _LONGEST)
    square, short = _SQUARES[units]
    view = View("seal", _ORIGIN, 1.0, per_mm)
    inner_turns = results.setup.bearing.turning_ring == "inner"
    title = told(found, units)
    return Scene(
        name="seal-section",
        title=title,
        caption=(
            f"Sketch of a lip seal, outside to the left. Every arrow is what a face of it gets on one {square} beyond "
            f"the outer air's push, all at one scale{'; suction pulls' if suction > 0 else ''}. "
            "The suction is an upper estimate: closed hub, cooled all the way; a lip that lets in air ends it."
        ),
        description=f"Section through the seal of a hub, water to the left. {title}. {temperatures(results, units)}.",
        units=units,
        size=_SIZE,
        views=(view,),
        items=(
            *_solids(view, inner_turns=inner_turns),
            *_pressure("depth", depth, _depth_told(results, depth, units), view, units),
            *_pressure("suction", suction, _suction_told(suction, units), view, units),
        ),
        steps=_steps(results, found, units),
        columns=(
            Column("left", _COLUMNS[0], 34.0, 114.0),
            Column("right", _COLUMNS[1], 34.0, 114.0),
        ),
        scale_bars=(ScaleBar("seal", "force", f"Force on each {short}"),),
        key=(KeyEntry("load", "pressure on a face"), KeyEntry("turning", "turns"), KeyEntry("fixed", "stands still")),
    )


def _solids(view: View, *, inner_turns: bool) -> list[Item]:
    upper: tuple[Point, ...] = ((-_LONG / 4, _GAP), (-_LONG / 4, _GAP + _RING), (_LONG, _GAP + _RING), (_LONG, _GAP))
    lower = tuple((x, -z) for x, z in upper)
    shell: tuple[Point, ...] = (
        (-5.0, _GAP),
        (9.0, _GAP),
        (9.0, _GAP - 2.0),
        (-2.5, _GAP - 2.0),
        (-2.5, -3.0),
        (-5.0, -3.0),
    )
    # the lip leans outward, toward the water
    lip: tuple[Point, ...] = ((-5.0, -1.0), (-2.5, -1.0), (-1.0, -7.0), (-3.6, -_GAP), (-5.2, -_GAP), (-4.6, -8.0))
    names: tuple[tuple[str, tuple[Point, ...], Label], ...] = (
        ("outer", upper, Label(("outer ring",), "right column", (_LONG - 2.0, _GAP + 0.6 * _RING), "soft", 2.4)),
        ("inner", lower, Label(("inner ring",), "right column", (_LONG - 2.0, -_GAP - 0.6 * _RING), "soft", 2.4)),
    )
    items: list[Item] = []
    for name, ring, label in names:
        turns = (name == "inner") == inner_turns
        items.append(
            Part(
                f"part-{name}",
                view.name,
                rings=(ring,),
                material="turning" if turns else "fixed",
                hatch=45.0 if name == "inner" else -45.0,
                hatch_pitch=1.5,
                outline=0.4,
            )
        )
        items.append(Note(f"label-{name}", view.name, label=replace(label, leader_dot=True)))
    # below the lowest arrow
    seal = Label(("seal:", "its lip rubs on the ring"), "left column", (-4.6, -13.6), "soft", 2.4)
    return [
        *items,
        Part("part-shell", view.name, rings=(shell,), material="steel", outline=0.3, level=2),
        Part("part-lip", view.name, rings=(lip,), material="rubber", outline=0.3, level=3),
        Note("label-seal", view.name, label=seal, level=4),
    ]


def _depth_told(results: Results, depth: float, units: Units) -> tuple[str, str]:
    sealing = results.setup.sealing
    assert sealing is not None
    assert sealing.depth is not None
    deep = format_quantity(sealing.depth, "small length", units)
    return f"*depth: {format_quantity(depth, _FLUID, units)}", f"{deep} of water press inward"


def _suction_told(suction: float, units: Units) -> tuple[str, str]:
    size = format_quantity(abs(suction), _FLUID, units)
    if suction > 0:
        return f"*quench: {size}", "suction of cooled air pulls inward"
    if suction < 0:
        return f"*warm water: {size}", "air inside presses outward"
    return "*no suction", "hub and water equally warm"


def _pressure(name: str, pressure: float, told_lines: tuple[str, str], view: View, units: Units) -> list[Item]:
    """Return one pressure as a row of arrows on its face, with a line along their far ends.

    Water presses on the outer face; on the inner one the air presses outward, or, as suction, pulls inward.
    """
    outside = name == "depth"
    step = 2 if outside else 3
    side = -1.0 if outside else 1.0
    faces = [((outer if outside else inner) + side * _CLEAR, height) for height, outer, inner in _ROWS]
    length = abs(pressure) * _SQUARE[units] / (view.newtons_per_mm or 1.0)
    far = tuple((place + side * length, height) for place, height in faces)
    items: list[Item] = [
        Force(
            f"force-{name}-{number}",
            view.name,
            step,
            at=at,
            vector=(pressure * _SQUARE[units], 0.0),
            tip_at_point=outside or pressure < 0,
            slender=True,
            level=6,
        )
        for number, at in enumerate(faces, start=1)
    ]
    if pressure:
        items.append(Line(f"row-{name}", view.name, step, points=far, tone="load", level=6))
    column: Literal["left column", "right column"] = "left column" if outside else "right column"
    label = Label(told_lines, column, (far[-1][0], _BETWEEN), "load", 2.7)
    return [*items, Note(f"label-{name}", view.name, step, label=label, level=7)]


def _steps(results: Results, found: SealingResult, units: Units) -> tuple[Step, ...]:
    return (
        Step(
            "Cut through the seal",
            "A lip of rubber closes the gap between the ring that turns and the one that stands.",
        ),
        Step(
            "Let water stand outside",
            f"Its depth presses with {format_quantity(found.depth_pressure or 0.0, _FLUID, units)}.",
        ),
        Step("Cool the hub", f"{temperatures(results, units)}: {_lower(told(found, units))}."),
    )


def _lower(text: str) -> str:
    return text[0].lower() + text[1:]

"""How often a damaged part of the bearing is struck, over road speed: a line for each part.

The view's abscissa is metres per second, its ordinate hertz.
"""

from dataclasses import dataclass

import numpy as np

from hubwright.quantities import display, format_quantity
from hubwright.results.model import Results
from hubwright.results.symptoms import noise_result
from hubwright.scenes.plot_frame import Area, LineEnd, end_labels, even_marks, plot
from hubwright.scenes.scales import round_up
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Column, Curve, Dot, Item, Line, Scene, Step, Tone, Units

_WIDTH, _HEIGHT = 310.0, 166.0
_AREA = Area(24.0, 16.0, 226.0, 150.0)
_KMH, _MPH = 1 / 3.6, 0.44704  # m/s; definitions
_FASTEST = 120 * _KMH
_LOOKED_AT = {"si": 80 * _KMH, "us": 50 * _MPH}


@dataclass(frozen=True)
class _Part:
    """A part that may be damaged: frequency at the speed looked at [Hz], and how its line looks."""

    name: str
    words: str
    frequency: float
    step: int
    tone: Tone
    width: float
    dashed: bool = False


def defect_frequency_lines(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of defect frequencies over road speed; the case does not act on them."""
    speed = _LOOKED_AT[units]
    at = format_quantity(speed, "speed", units)
    parts = _parts(results, speed)
    fastest = max(part.frequency for part in parts) * _FASTEST / speed
    top = _reach(fastest)
    frame = plot("plot", _AREA, (0.0, _FASTEST), (0.0, top))
    own, other = ((_KMH, "km/h"), (_MPH, "mph")) if units == "si" else ((_MPH, "mph"), (_KMH, "km/h"))
    items: list[Item] = [
        frame.axis("axis-speed", "foot", even_marks(0.0, _FASTEST, unit=own[0]), f"road speed, {own[1]}", grid=True),
        frame.axis("axis-speed-2", "head", even_marks(0.0, _FASTEST, unit=other[0], last=other[1]), ""),
        frame.axis(
            "axis-frequency", "left", even_marks(0.0, top), "turns or strikes a second, Hz", grid=True, lift=5.0
        ),
        Line("guide", "plot", 4, points=((speed, 0.0), (speed, top)), style="hidden", tone="soft"),
    ]
    line_ends: list[LineEnd] = []
    for part in parts:
        ends = ((0.0, 0.0), (_FASTEST, part.frequency * _FASTEST / speed))
        name = part.name.replace(" ", "-")
        items += [
            Curve(
                f"curve-{name}",
                "plot",
                part.step,
                points=ends,
                tone=part.tone,
                filled=False,
                width=part.width,
                dashed=part.dashed,
                level=1,
            ),
            Dot(f"at-{name}", "plot", part.step, at=(speed, part.frequency), tone=part.tone, radius=0.8, level=2),
        ]
        lines = (f"*{part.name}", f"{_hertz(part.frequency)} at {at}: {part.words}")
        line_ends.append(LineEnd(name, ends[1], lines, part.step, part.tone))
    items += end_labels(frame.view, line_ends)
    return Scene(
        name="defect-frequencies",
        title=_title(parts, at),
        caption=_caption(results, at, units),
        description=_description(results, parts, at),
        units=units,
        size=(_WIDTH, _HEIGHT),
        views=(frame.view,),
        items=tuple(items),
        steps=(
            Step("Begin with the wheel", "Everything in the bearing keeps a fixed ratio to its turns."),
            Step("Add the cage", "The elements roll round at about half the speed of the ring that turns."),
            Step("Strike the rings", "Every element that passes a damaged place strikes it once."),
            Step("Strike the elements", f"A damaged {_element(results)} meets both rings in each turn of its own."),
        ),
        columns=(Column("right", _AREA.right + 10.0, _AREA.low, _AREA.high),),
    )


def _parts(results: Results, speed: float) -> tuple[_Part, ...]:
    found = noise_result(results, speed)
    element = _element(results)
    outer_turns = results.setup.bearing.turning_ring == "outer"
    outer, inner = ("turns", "stands") if outer_turns else ("stands", "turns")
    return (
        _Part("wheel", "one turn", float(found.wheel), 1, "soft", 0.35, dashed=True),
        _Part("cage", "one turn", float(found.cage), 2, "ink", 0.5, dashed=True),
        _Part("outer ring", f"strikes, ring {outer}", float(found.outer_ring), 3, "ink", 0.9),
        _Part("inner ring", f"strikes, ring {inner}", float(found.inner_ring), 3, "ink", 0.5),
        _Part(element, "strikes, two a turn", float(found.element), 4, "soft", 0.7),
    )


def _element(results: Results) -> str:
    return "roller" if results.setup.bearing.kind == "tapered pair" else "ball"


def _reach(value: float) -> float:
    """Return where the upright axis ends: on a mark."""
    step = round_up(value / 6)
    return float(step * np.ceil(value / step - 1e-9))


def _hertz(value: float, *, bare: bool = False) -> str:
    shown = display(value, "frequency", "si")
    return shown.number if bare else shown.text


def _title(parts: tuple[_Part, ...], at: str) -> str:
    outer, inner = (next(part for part in parts if part.name == f"{ring} ring") for ring in ("outer", "inner"))
    return (
        f"At {at} a damaged outer ring is struck {_hertz(outer.frequency, bare=True)} times a second, "
        f"an inner ring {_hertz(inner.frequency, bare=True)} times"
    )


def _caption(results: Results, at: str, units: Units) -> str:
    bearing = results.setup.bearing
    turning = "outer" if bearing.turning_ring == "outer" else "inner"
    around = format_quantity(results.wheel_geometry.rolling_circumference, "length", units)
    return (
        f"{plain(results.setup.name)}: {bearing.elements_per_row} {_element(results)}s a row, {turning} rings turn, "
        f"{around} of road to a turn of the wheel. Dots: at {at}. All lines go through zero: the pitch follows the "
        "road speed, not the engine. Real marks lie a percent or two off."
    )


def _description(results: Results, parts: tuple[_Part, ...], at: str) -> str:
    told = ", ".join(f"{part.name} {_hertz(part.frequency)}" for part in parts)
    return (
        f"Lines of frequency over road speed for the bearing of {plain(results.setup.name)}, all in proportion to the "
        f"speed. At {at}: {told}."
    )

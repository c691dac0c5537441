"""A drop in three instants to scale: first touch, deepest, and the rebound in which the tire carries least.

Views in real millimetres, z up from the road; the body stands at a distance of its own above the wheel.
"""

import math
from dataclasses import dataclass

import numpy as np

from hubwright.results.drops import DropHistory, drop_history
from hubwright.results.model import Results
from hubwright.scenes.case_choice import drop_case
from hubwright.scenes.drop_history import DropWording
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.vocabulary import (
    Dot,
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

_WIDTH, _FOOT = 310.0, 30.0
_PLACES = (58.0, 156.0, 254.0)
_TALL, _ARROWS, _TAIL = 84.0, 26.0, 13.0
_BODY = 0.5  # height of the drawn body over the tire's radius
_ROUND = 96


@dataclass(frozen=True)
class _Instant:
    """Where wheel and body are at an instant [mm, downward from the first touch], and the two forces [N]."""

    name: str
    title: str
    time: float
    wheel: float
    body: float
    tire: float
    bearing: float


def instants(history: DropHistory) -> tuple[_Instant, ...]:
    """Return first touch, the body's lowest point and the least load on the tire after it."""
    deepest = int(np.argmax(history.body_travel))
    light = deepest + int(np.argmin(history.tire_force[deepest:]))
    places = (("touch", "First touch", 0), ("deepest", "Deepest", deepest), ("rebound", "Rebound", light))
    return tuple(
        _Instant(
            name,
            title,
            float(history.time[at]),
            float(history.wheel_travel[at]) * 1e3,
            float(history.body_travel[at]) * 1e3,
            float(history.tire_force[at]),
            float(history.bearing_force[at]),
        )
        for name, title, at in places
    )


def drop_sequence(results: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of a drop in three instants; raises `MissingDataError` without a suspension."""
    history = drop_history(results, drop_case(results, case))
    words, seen = DropWording(history, units), instants(history)
    radius = results.wheel_geometry.free_diameter * 500.0
    rim = min(results.wheel_geometry.rim_diameter * 500.0, 0.9 * radius)
    # the body stays clear of the wheel at every instant drawn
    clear = 2.2 * radius + max(instant.body - instant.wheel for instant in seen)
    highest = max(clear - instant.body for instant in seen) + _BODY * radius
    scale, ratio = drawing_scale(highest, _TALL)
    largest = max(max(instant.tire, abs(instant.bearing)) for instant in seen)
    per_mm = round_scale(largest, _ARROWS)
    road = _FOOT + _TAIL + largest / per_mm
    top = road + highest * scale
    views = tuple(View(instant.name, (x, road), scale, per_mm) for instant, x in zip(seen, _PLACES, strict=True))
    items: list[Item] = []
    for step, (instant, view) in enumerate(zip(seen, views, strict=True), start=1):
        items += _corner(instant, view, radius, rim, clear, step)
        items += _forces(instant, view, radius, words, step)
        heading = f"*{instant.title}, {words.time(instant.time)}"
        at = (view.origin[0], top + 5.0)
        items.append(Words(f"words-{instant.name}", "", step, at_sheet=at, lines=(heading,), align="centre"))
    return Scene(
        name="drop-sequence",
        title=_title(seen, words),
        caption=(
            f"One corner after a drop of {words.height}, wheel and body to one scale; how far the body stands above "
            "the wheel is the drawing's own. Two masses on springs, without lean or pitch."
        ),
        description=f"{_title(seen, words)}. "
        + " ".join(f"{instant.title}: {_told(instant, words)}" for instant in seen)
        + (f" {words.rim()}" if history.tire_on_rim else ""),
        units=units,
        size=(_WIDTH, top + 14.0),
        views=views,
        items=tuple(items),
        steps=tuple(Step(f"{instant.title}", _told(instant, words)) for instant in seen),
        scale_bars=(
            ScaleBar(views[0].name, "length", f"All views {ratio}"),
            ScaleBar(views[0].name, "force", "Forces, all views"),
        ),
        key=(KeyEntry("load", "road on the tire"), KeyEntry("reaction", "bearing on the wheel")),
    )


def _title(seen: tuple[_Instant, ...], words: DropWording) -> str:
    deepest = seen[1]
    text = (
        f"A drop of {words.height}: {words.time(deepest.time)} after the touch the body is lowest, "
        f"{words.force(deepest.tire)} on the tire, {words.force(abs(deepest.bearing))} at the bearing"
    )
    return f"{text}; the tire meets its rim, the real force is higher" if words.history.tire_on_rim else text


def _told(instant: _Instant, words: DropWording) -> str:
    if instant.name == "touch":
        return "the tire meets the road and carries nothing yet."
    tire = f"the tire carries {words.force(instant.tire)}" if instant.tire > 0 else "the tire has left the road"
    return f"after {words.time(instant.time)} {tire}, the bearing {words.force(abs(instant.bearing))}."


def _corner(instant: _Instant, view: View, radius: float, rim: float, clear: float, step: int) -> list[Item]:
    """Return road, flattened tire, wheel, strut and body."""
    centre = radius - instant.wheel
    turn = 2 * math.pi / _ROUND
    circle = [(math.cos(turn * k), math.sin(turn * k)) for k in range(_ROUND)]
    tire = tuple((radius * c, max(centre + radius * s, 0.0)) for c, s in circle)
    # a wheel whose tire is squeezed flat stays above the road
    wheel = tuple((rim * c, max(centre + rim * s, 0.0)) for c, s in circle)
    foot, high = clear - instant.body, clear - instant.body + _BODY * radius
    half, side = 1.15 * radius, 0.45 * radius
    body: tuple[Point, ...] = ((-half, foot), (half, foot), (half, high), (-half, high))
    rise = (foot - centre) / 10
    strut = tuple(
        (side + (0.0 if k in (0, 1, 9, 10) else 0.1 * radius * (-1) ** k), centre + rise * k) for k in range(11)
    )
    name = view.name
    return [
        Ground(f"ground-{name}", name, step, start=(-1.3 * radius, 0.0), end=(1.3 * radius, 0.0)),
        Part(f"part-tire-{name}", name, step, rings=(tire,), material="rubber", outline=0.3),
        Part(f"part-wheel-{name}", name, step, rings=(wheel,), material="turning", outline=0.25, level=1),
        Part(f"part-body-{name}", name, step, rings=(body,), material="body", outline=0.35, level=1),
        Line(f"strut-{name}", name, step, points=strut, style="outline", width=0.4, level=2),
        Dot(f"axle-{name}", name, step, at=(0.0, centre), radius=0.8, level=6),
    ]


def _forces(instant: _Instant, view: View, radius: float, words: DropWording, step: int) -> list[Item]:
    name, centre = view.name, radius - instant.wheel
    tire = "*nothing" if instant.tire <= 0 else f"*{words.force(instant.tire)}"
    held = f"*{words.force(abs(instant.bearing))}"
    reach = abs(instant.bearing) / (view.newtons_per_mm or 1.0) / view.scale
    beside = Label((held, "bearing"), "left", (0.0, centre + 0.6 * reach), "reaction", nudge=(-0.6, 0.0))
    return [
        Force(
            f"force-tire-{name}",
            name,
            step,
            at=(0.0, 0.0),
            vector=(0.0, max(instant.tire, 0.0)),
            label=Label((tire, "road on the tire"), "below", tone="load"),
            level=7,
        ),
        Force(
            f"reaction-bearing-{name}",
            name,
            step,
            at=(0.0, centre),
            vector=(0.0, -instant.bearing),
            role="reaction",
            level=7,
        ),
        *((Note(f"label-bearing-{name}", name, step, label=beside, level=8),) if instant.name != "touch" else ()),
    ]

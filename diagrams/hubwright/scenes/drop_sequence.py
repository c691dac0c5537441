"""A drop in three instants to scale: first touch, deepest, and the rebound in which the tire carries least.

Views in real millimetres, z up from the road; the body stands at a distance of its own above the wheel.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from hubwright.quantities import format_quantity
from hubwright.results.drops import DropHistory, drop_history
from hubwright.results.model import Results
from hubwright.scenes.case_choice import drop_case
from hubwright.scenes.drop_history import DropWording
from hubwright.scenes.quarter_car import HEIGHT, WIDTH, quarter_car_items
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.small_forces import visible
from hubwright.scenes.vocabulary import (
    Callout,
    Column,
    Damper,
    Dot,
    Force,
    Ground,
    Item,
    KeyEntry,
    Label,
    Line,
    Part,
    Point,
    ScaleBar,
    Scene,
    Spring,
    Step,
    Units,
    View,
    Words,
)

_WIDTH, _FOOT = 310.0, 30.0
_PLACES = (118.0, 195.0, 272.0)
_MODEL, _NAMES = 28.0, 46.0  # middle of the model, and where its words begin
_TALL, _ARROWS, _TAIL = 84.0, 26.0, 13.0
_LEAST = 1.5  # of an arrow to scale, whose end the marks of the axle would hide otherwise
_OFF_HEAD, _OFF_GROUND = 1.2, 2.0  # of words from the head of an arrow above them, and from the hatching of the road
_BODY = 0.5  # height of the drawn body over the tire's radius
_ROUND = 96


@dataclass(frozen=True)
class _Instant:
    """Where wheel and body are at an instant [mm, downward from the first touch], and the forces [N]."""

    name: str
    title: str
    time: float
    wheel: float
    body: float
    tire: float
    bearing: float
    bump_stop: float


def instants(history: DropHistory) -> tuple[_Instant, ...]:
    """Return first touch, the body's lowest point and the least load on the tire after it."""
    deepest = int(np.argmax(history.body_travel))
    light = deepest + int(np.argmin(history.tire_force[deepest:]))
    stop = bump_stop_force(history)
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
            float(stop[at]),
        )
        for name, title, at in places
    )


def bump_stop_force(history: DropHistory) -> NDArray[np.float64]:
    """Return what the bump stop pushes with over time [N]: its travel counts from standing."""
    car = history.car
    closed = history.compression - car.standing_compression - car.bump_travel
    return np.asarray(car.bump_stop_stiffness * np.maximum(closed, 0.0))


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
    top = road + max(highest * scale, HEIGHT + 2.0)
    views = tuple(
        View(
            instant.name,
            (x, road),
            scale,
            per_mm,
            heading=f"{instant.title}, {words.time(instant.time)}",
            level_with=seen[0].name,
        )
        for instant, x in zip(seen, _PLACES, strict=True)
    )
    model = View("model", (_MODEL, road), 1.0, heading="Its model, not to scale")
    items: list[Item] = quarter_car_items(history.car, model, units)
    at = (_MODEL - WIDTH / 2, top + 5.0)
    items.append(Words("words-model", "", at_sheet=at, lines=(f"*{model.heading}",)))
    if history.tire_on_rim:
        items.append(_on_rim(seen[1], radius))
    for step, (instant, view) in enumerate(zip(seen, views, strict=True), start=1):
        items += _corner(instant, view, radius, rim, clear, step)
        items += _forces(instant, view, radius, words, step)
        at = (view.origin[0], top + 5.0)
        items.append(Words(f"words-{instant.name}", "", step, at_sheet=at, lines=(f"*{view.heading}",), align="centre"))
    stops = _stops(history, seen[1], words)
    return Scene(
        name="drop-sequence",
        title=_title(seen, words),
        caption=(
            f"One corner after a drop of {words.height}, wheel and body to one scale; how far the body stands above "
            f"the wheel is the drawing's own. Two masses on springs, without lean or pitch. {stops}"
        ),
        description=f"{_title(seen, words)}. {stops} "
        + " ".join(f"{instant.title}: {_told(instant, words)}" for instant in seen)
        + (f" {words.rim()}" if history.tire_on_rim else ""),
        units=units,
        size=(_WIDTH, top + 14.0),
        views=(model, *views),
        items=tuple(items),
        columns=(Column("right", _NAMES, road - 4.0, top + 1.0),),
        steps=tuple(_step(instant, words) for instant in seen),
        scale_bars=(
            ScaleBar(views[0].name, "length", f"Three instants {ratio}"),
            ScaleBar(views[0].name, "force", "Forces"),
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


def _stops(history: DropHistory, deepest: _Instant, words: DropWording) -> str:
    """Return at which travel the bump stop begins to push, how hard it does so, and what is not drawn."""
    travel = format_quantity(float(history.car.bump_travel), "small length", words.units)
    droop = "The droop stop, which ends the wheel's travel in the air, is not drawn."
    most = float(bump_stop_force(history).max())
    if float(history.car.bump_stop_stiffness) <= 0:
        return droop
    begins = f"{travel} of travel from standing"
    if deepest.bump_stop > 0:
        return (
            f"Beyond {begins} the bump stop pushes too, at the deepest with {words.force(deepest.bump_stop)}. {droop}"
        )
    if most > 0:
        return f"Beyond {begins} the bump stop pushes too, with {words.force(most)} at most. {droop}"
    return f"The bump stop, which begins at {begins}, is not met. {droop}"


def _told(instant: _Instant, words: DropWording) -> str:
    if instant.name == "touch":
        return "the tire meets the road and carries nothing yet."
    stop = f", the bump stop {words.force(instant.bump_stop)}" if instant.bump_stop > 0 else ""
    tire = f"the tire carries {words.force(instant.tire)}" if instant.tire > 0 else "the tire has left the road"
    return f"after {words.time(instant.time)} {tire}, the bearing {words.force(abs(instant.bearing))}{stop}."


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
    wide = 0.17 * radius * view.scale
    name = view.name
    return [
        Ground(f"ground-{name}", name, step, start=(-1.3 * radius, 0.0), end=(1.3 * radius, 0.0)),
        Part(f"part-tire-{name}", name, step, rings=(tire,), material="rubber", outline=0.3),
        Part(f"part-wheel-{name}", name, step, rings=(wheel,), material="turning", outline=0.25, level=1),
        Part(f"part-body-{name}", name, step, rings=(body,), material="body", outline=0.35, level=1),
        Line(f"axle-{name}", name, step, points=((-side, centre), (side, centre)), style="outline", level=2),
        Spring(f"spring-{name}", name, step, start=(-side, centre), end=(-side, foot), width=wide, level=2),
        Damper(f"damper-{name}", name, step, start=(side, centre), end=(side, foot), width=wide, level=2),
        Dot(f"axle-{name}", name, step, at=(0.0, centre), radius=0.8, level=6),
    ]


def _on_rim(deepest: _Instant, radius: float) -> Callout:
    """Return the remark that the tire has no more to give, at its flattened edge."""
    at = (0.45 * radius, 0.08 * radius)
    lines = ("squeezed to its rim:", "the real force is higher")
    return Callout("callout-rim", deepest.name, 2, at=at, form="frame", label=Label(lines, tone="load", size=2.3))


def _forces(instant: _Instant, view: View, radius: float, words: DropWording, step: int) -> list[Item]:
    name, centre = view.name, radius - instant.wheel
    tire = "*nothing" if instant.tire <= 0 else f"*{words.force(instant.tire)}"
    held = Label(
        (f"*{words.force(abs(instant.bearing))}", "bearing"),
        "below",
        tone="reaction",
        nudge=(0.0, -_OFF_HEAD),
    )
    below = (0.0, -_OFF_GROUND if instant.tire <= 0 else 0.0)
    road = Force(
        f"force-tire-{name}",
        name,
        step,
        at=(0.0, 0.0),
        vector=(0.0, max(instant.tire, 0.0)),
        label=Label((tire, "road on the tire"), "below", tone="load", nudge=below),
        level=7,
    )
    bearing = Force(
        f"reaction-bearing-{name}",
        name,
        step,
        at=(0.0, centre),
        vector=(0.0, -instant.bearing),
        role="reaction",
        label=None if instant.name == "touch" else held,
        level=7,
    )
    return [visible(road, view, least=_LEAST), visible(bearing, view, least=_LEAST)]


def _step(instant: _Instant, words: DropWording) -> Step:
    told = _told(instant, words)
    return Step(instant.title, told[0].upper() + told[1:])

"""The vehicle or trailer across a slope, from the rear: the line of its weight against the downhill contact.

The view stands plumb: y to the left and z up in real millimetres from the road under the middle of the track.
"""

import math
import textwrap
from dataclasses import replace
from typing import Literal

from hubwright.results.model import Results
from hubwright.scenes.case_choice import case_of
from hubwright.scenes.corner_front_outline import rear_outline
from hubwright.scenes.on_slope import OnSlope
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.small_forces import visible
from hubwright.scenes.vehicle_on_slope_words import SlopeWording
from hubwright.scenes.vocabulary import (
    AngularDimension,
    Dimension,
    Dot,
    Force,
    Ground,
    Item,
    KeyEntry,
    Label,
    Line,
    Note,
    Point,
    ScaleBar,
    Scene,
    Units,
    View,
    Words,
)

_WIDTH, _FOOT = 310.0, 30.0
_MIDDLE, _WIDE, _TALL = 116.0, 124.0, 100.0
_ARROWS, _ROW, _TAIL = 27.0, 8.0, 11.0
_WORDS, _LETTERS = 222.0, 38
_LETTER = 3.0  # of a point, below it
# of the contact, in the middle of the tire downhill: above it; else uphill, between the road and the line that slants
_IN_TIRE, _BESIDE_TIRE, _MIDDLE_OF_TIRE = (1.2, 1.0), (3.8, 4.7), 2.0
_COUPLED = 29.0, 5.4  # of the coupling's words: their width, and half their height and what keeps them off the road
# of the road: how far its level line goes, and where the arc of the slope stands, between weight and uphill wheel
_LEVEL, _ARC = 0.73, 0.7


def vehicle_on_slope(results: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of the vehicle across a slope with the line of its weight."""
    state = case_of(results, case, ("side_slope",), "a vehicle across a slope")
    on = OnSlope.of(results, state)
    words = SlopeWording(on, units)
    parts = [
        replace(part, rings=tuple(tuple(on.turned(point) for point in ring) for ring in part.rings))
        for part in rear_outline(results, "slope")
    ]
    points = [point for part in parts for ring in part.rings for point in ring]
    ends = [on.turned((y, 0.0)) for y in _road_ends(on, results)]
    across = [point[0] for point in (*points, *ends)]
    high, low = max(point[1] for point in points), min(point[1] for point in (*points, *ends))
    scale = min(drawing_scale(max(across) - min(across), _WIDE)[0], drawing_scale(high - low, _TALL)[0])
    (_, first), (_, second) = words.sides()
    weight = math.hypot(on.body.weight.y, on.body.weight.z)
    per_mm = round_scale(max(max(first, second) / _ARROWS, weight / ((on.centre[1] - on.foot[1]) * scale * 0.9)), 1.0)
    lowest = min(low, *(end[1] for end in _contacts(on))) * scale
    origin = (
        _MIDDLE + (max(across) + min(across)) / 2 * scale,
        _FOOT + 4.0 + _ROW + _TAIL + max(first, second) / per_mm - lowest,
    )
    view = View("slope", origin, scale, per_mm, mirrored=True)
    top = origin[1] + high * scale + 12.0
    items: list[Item] = [
        *parts,
        Ground("ground", view.name, start=ends[0], end=ends[1]),
        *_weight(words, view, weight, high),
        *_road(words, view),
        *_angle(words, view, ends),  # its words give way to those of the forces
        *_spare(words, view),
        *_tipping(words, view, top),
    ]
    return Scene(
        name="vehicle-on-slope",
        title=words.title(),
        caption=words.caption(),
        description=words.description(),
        units=units,
        size=(_WIDTH, top),
        views=(view,),
        items=tuple(items),
        steps=words.steps(),
        scale_bars=(
            ScaleBar(view.name, "length", f"Vehicle 1 : {1 / scale:.0f}"),
            ScaleBar(view.name, "force", "Forces"),
        ),
        key=(
            KeyEntry("load", "weight"),
            KeyEntry("reaction", "reaction of road and coupling" if on.held else "reaction of the road"),
        ),
        body=on.body.closed(),
    )


def _contacts(on: OnSlope) -> tuple[Point, Point]:
    """Return where the road acts on the downhill and the uphill side."""
    left = on.downhill > 0
    return on.turned((on.body.summed(left)[1], 0.0)), on.turned((on.body.summed(not left)[1], 0.0))


def _road_ends(on: OnSlope, results: Results) -> tuple[float, float]:
    half = max(abs(wheel.y) for wheel in on.body.wheels) + 1.2 * results.wheel_geometry.section_width * 1e3
    return half, -half


def _angle(words: SlopeWording, view: View, ends: list[Point]) -> list[Item]:
    on = words.on
    low, high = (ends[0], ends[1]) if on.downhill > 0 else (ends[1], ends[0])
    reach = _LEVEL * abs(high[0] - low[0])
    level = (low[0] - on.downhill * reach, low[1])
    return [
        Line("line-level", view.name, 4, points=(low, level), style="thin"),
        AngularDimension(
            "dimension-slope",
            view.name,
            4,
            vertex=low,
            start=level,
            end=high,
            radius=_ARC * abs(high[0] - low[0]) * view.scale,
            label=Label((f"{{φ}} = {words.angle(on.angle)}",), on.uphill, size=2.5),
        ),
    ]


def _weight(words: SlopeWording, view: View, weight: float, high: float) -> list[Item]:
    on, at = words.on, words.on.centre
    return [
        Line("weight-line", view.name, 2, points=((at[0], high + 4.0 / view.scale), on.foot), style="centre", level=4),
        Dot("centre-of-mass", view.name, 2, at=at, kind="centre of mass", radius=1.8, level=9),
        Force(
            "force-weight",
            view.name,
            2,
            at=at,
            vector=(0.0, -weight),
            tip_at_point=False,
            label=Label((f"*{{W}} = {words.force(weight)}", "weight"), on.uphill, tone="load"),
            level=6,
        ),
        *_point("B", on.foot, on.uphill, view, 2, (0.0, -_LETTER)),  # below the road
    ]


def _road(words: SlopeWording, view: View) -> list[Item]:
    on = words.on
    items: list[Item] = []
    *told, coupled = words.told()
    for (what, newtons), text, at in zip(words.sides(), told, _contacts(on), strict=True):
        items.append(
            Force(
                f"reaction-{what}",
                view.name,
                3,
                at=at,
                vector=(0.0, newtons),
                role="reaction",
                label=Label((f"*{{F|{what}}} = {text}", f"{what} side"), "tail", tone="reaction"),
                level=5,
            )
        )
    if on.held:
        lines = (f"{{F|coupling}} = {coupled}", "coupling")
        # over the road, which rises beside the arrow; below it the level line would strike them
        lift = _COUPLED[0] * math.tan(on.angle) + _COUPLED[1]
        label = Label(lines, on.uphill, tone="reaction", size=2.3, nudge=(0.0, lift))
        vector = (0.0, on.held)
        force = Force(
            "reaction-coupling", view.name, 3, at=(0.0, 0.0), vector=vector, role="reaction", label=label, level=5
        )
        items.append(visible(force, view))
    return items


def _spare(words: SlopeWording, view: View) -> list[Item]:
    on = words.on
    level = (_FOOT + 4.0 + _ROW - view.origin[1]) / view.scale
    rightward = -on.downhill  # is downhill
    place: Literal["left", "right", "above"] = "above"
    by = rightward * _IN_TIRE[0], _IN_TIRE[1]
    if abs(_contacts(on)[0][0] - on.contact[0]) * view.scale > _MIDDLE_OF_TIRE:
        place, by = on.uphill, (-rightward * _BESIDE_TIRE[0], _BESIDE_TIRE[1])
    return [
        Dimension(
            "dimension-spare",
            view.name,
            4,
            start=(on.foot[0], level),
            end=(on.contact[0], level),
            line_at=_FOOT + 5.0,
            text=words.spare,
        ),
        Line(
            "foot-line",
            view.name,
            4,
            points=(on.foot, (on.foot[0], level)),
            style="thin",
            tone="soft",
        ),
        *_point("A", on.contact, place, view, 4, by),
    ]


def _point(
    letter: str, at: Point, place: Literal["left", "right", "above"], view: View, step: int, by: Point
) -> list[Item]:
    """Return a point with its letter in a place, moved by so much on the sheet."""
    label = Label((f"*{letter}",), place, anchor=at, nudge=by)
    return [
        Dot(f"point-{letter}", view.name, step, at=at, radius=0.8, level=9),
        Note(f"label-{letter}", view.name, step, label=label),
    ]


def _tipping(words: SlopeWording, view: View, top: float) -> list[Item]:
    on = words.on
    top = min(view.on_sheet((0.0, on.centre[1]))[1] + 22.0, top - 8.0)
    lines = (
        *textwrap.wrap(f"when the weight's line meets the {on.wheels}, rigid and at rest.", _LETTERS),
        *textwrap.wrap(words.lifting(), _LETTERS),
        f"A {on.kind} tips well before this angle:",
        "a bump, a turn, soft springs or a load",
        "that shifts is enough. Not a limit to",
        "drive to.",
    )
    heading = f"*Static tipping angle {words.angle(on.tipping)}"
    return [
        Line("tipping-line", view.name, 5, points=(on.contact, on.centre), style="phantom", level=4),
        Words("words-tipping", "", 5, at_sheet=(_WORDS, top), lines=(heading,), size=2.8),
        Words("words-warning", "", 5, at_sheet=(_WORDS, top - 6.0), lines=lines, size=2.4, tone="soft"),
    ]

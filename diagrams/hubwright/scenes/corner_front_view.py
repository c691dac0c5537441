"""The whole vehicle or trailer in a bend or across a slope, from the rear: what pulls sideways, and what load moves.

Views in real millimetres: y to the left from the middle plane, z up from the road; on a slope tilted with the vehicle.
"""

import math
from dataclasses import replace
from typing import Literal

from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.scenes.case_choice import case_of
from hubwright.scenes.corner_front_axles import axles, least_across, pushed_across
from hubwright.scenes.corner_front_coupling import coupling_held
from hubwright.scenes.corner_front_lines import equation, largest, width
from hubwright.scenes.corner_front_outline import crossed, rear_outline
from hubwright.scenes.corner_front_words import RollWording
from hubwright.scenes.roll_body import ZERO, RollBody, roll_body
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.vocabulary import (
    Dimension,
    Dot,
    Force,
    Ground,
    Item,
    KeyEntry,
    Label,
    Line,
    Note,
    ScaleBar,
    Scene,
    Units,
    View,
)
from hubwright.setup.model import SideSlope, TrailerChassis

_WIDTH, _FOOT = 310.0, 30.0
_MIDDLE, _AXLE = 98.0, 247.0  # of the vehicle, and of the axles beside it
_TRACK_ROW, _ARROWS = 8.0, 28.0
_PLUMB = (0.62, 0.55, 0.48, 0.7, 0.78, 0.86, 0.94, 1.02)  # of the height: where the plumb line may end
_LIFTS = (1.6, 4.0, 7.0, 10.0)  # of words over what pulls sideways
_PLUMB_WIDTH, _PLUMB_HEIGHT = 23.0, 4.4  # of its words
_WIDE, _TALL = 101.0, 96.0
_AXLE_ARROWS = 21.0
_LABELS, _LOWER = 12.0, 22.0  # words beside an arrow, below the road, and below those of a coupling
_APART = 6.0  # what words leave of the room between the weight's arrow and that of a side
_SIZES = 2.5, 2.3  # of the weight's words, if possible the first
_MASS = 1.7  # radius of the mark of the centre of mass


def corner_front_view(results: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of the vehicle from the rear with its weight, its inertia and the road under every wheel."""
    kinds: tuple[Literal["cornering", "side_slope", "standing"], ...] = ("cornering", "side_slope", "standing")
    if case is None:
        case = next((name for name, state in results.cases.items() if state.kind in kinds[:2]), "standing")
    state = case_of(results, case, kinds, "a vehicle that stands or goes round a bend or across a slope")
    body = roll_body(results, state)
    words = RollWording(results, state, body, units)
    views = _views(results, body, words)
    main = views[0]
    items: list[Item] = [
        *rear_outline(results, main.name),
        *_road(words, results, views),
        *_pulls(words, main),
        *_sides(words, main),
        *_levers(words, results, main),
        *axles(words, results, views[1:]),
    ]
    top = main.origin[1] + _height(results) * main.scale
    return Scene(
        name="corner-front-view",
        title=words.title(),
        caption=words.caption(),
        description=words.description(),
        units=units,
        size=(_WIDTH, max(top, _upper(views)) + 10.0),
        views=views,
        items=tuple(items),
        steps=words.steps(),
        scale_bars=(
            ScaleBar(main.name, "length", f"All views 1 : {1 / main.scale:.0f}"),
            ScaleBar(main.name, "force", "Forces, all views"),
        ),
        key=(
            KeyEntry("load", "weight" if words.nothing(body.inertia.y) else "weight, inertia"),
            KeyEntry("reaction", "road on wheels" + (", coupling" if body.coupling != ZERO else "")),
        ),
        axes="rear",
        body=body.closed(),
    )


def _height(results: Results) -> float:
    return max(point[1] for item in rear_outline(results, "") for ring in item.rings for point in ring)


def _upper(views: tuple[View, ...]) -> float:
    return max((view.origin[1] + 52.0 for view in views[1:]), default=0.0)


def _views(results: Results, body: RollBody, words: RollWording) -> tuple[View, ...]:
    outline = [point for item in rear_outline(results, "") for ring in item.rings for point in ring]
    half = max(abs(point[0]) for point in outline)
    scale = min(drawing_scale(2 * half, _WIDE)[0], drawing_scale(_height(results), _TALL)[0])
    longest = max(body.summed(True)[0][1], body.summed(False)[0][1])
    per_axle = max(wheel.force.z for wheel in body.wheels)
    across = [abs(body.inertia.y), abs(body.weight.y)]
    reach = _ARROWS + body.centre[2] * scale - 4.0
    needs = [longest / _ARROWS, abs(body.weight.z) / reach, *(force / 28.0 for force in across)]
    if words.axles:
        needs.append(per_axle / _AXLE_ARROWS)
    per_mm = round_scale(max(needs), 1.0)
    road = _FOOT + 3.0 + _TRACK_ROW + _ARROWS
    middle = _MIDDLE if words.axles else _WIDTH / 2
    views = [
        View(
            "vehicle",
            (middle, road),
            scale,
            per_mm,
            mirrored=True,
            heading="Both axles together" if words.axles else "",
        )
    ]
    tall = 2 * results.wheel_geometry.free_diameter / 2 * 1e3 * scale
    low = _FOOT + 4.0 + _AXLE_ARROWS
    for number, axle in enumerate(reversed(words.axles)):
        origin, heading = (_AXLE, low + number * (tall + _AXLE_ARROWS + 14.0)), f"{axle.capitalize()} axle"
        views.insert(1, View(axle, origin, scale, per_mm, mirrored=True, heading=heading, level_with=words.axles[0]))
    return tuple(views)


def _road(words: RollWording, results: Results, views: tuple[View, ...]) -> list[Item]:
    half = max(abs(wheel.y) for wheel in words.body.wheels) + results.wheel_geometry.section_width * 1e3
    return [
        Ground(
            f"ground-{view.name}",
            view.name,
            1 if view is views[0] else words.split_step,
            start=(half, 0.0),
            end=(-half, 0.0),
        )
        for view in views
    ]


def _pulls(words: RollWording, view: View) -> list[Item]:
    """Return weight and inertia at the centre of mass; on a slope the weight's two parts and the plumb line."""
    body = words.body
    at = body.centre[1], body.centre[2]
    sloped = isinstance(words.results.setup.case(words.state.name), SideSlope)
    symbol = "{W} cos {φ}" if sloped else "{W}"
    low = _LABELS if words.nothing(body.coupling.y) else _LOWER
    near = min(abs(body.summed(left)[1] - at[0]) for left in (True, False)) * view.scale
    told, room = words.told("held z"), near - _APART
    size = largest(((f"*{symbol} = {told}", room),), _SIZES)
    tip = at[1] + body.weight.z / (view.newtons_per_mm or 1.0) / view.scale
    items: list[Item] = [
        Dot("centre-of-mass", view.name, 2, at=at, kind="centre of mass", radius=_MASS, level=8),
        Force("force-weight-z", view.name, 2, at=at, vector=(0.0, body.weight.z), tip_at_point=False, level=5),
        Note(
            "label-weight",
            view.name,
            2,
            label=Label(
                (*equation(symbol, told, room, size=size), "onto the road" if sloped else "weight"),
                "right" if _pulled_left(words) else "left",
                anchor=(at[0], tip),
                tone="load",
                size=size,
                nudge=(1.6 if _pulled_left(words) else -1.6, -low - tip * view.scale),
            ),
        ),
    ]
    for name, newtons, symbol, what in (
        ("inertia", body.inertia.y, "{M a}", "inertia"),
        ("weight-y", body.weight.y, "{W} sin {φ}", "downhill"),
    ):
        if words.nothing(newtons):
            continue
        # it starts beside the mark, which its edge of paper would cut in two
        force = Force(f"force-{name}", view.name, 3, at=at, vector=(newtons, 0.0), tip_at_point=False, gap=_MASS)
        items.append(replace(force, level=6, label=_sideways(words, view, symbol, what, newtons)))
    if sloped:
        items += _plumb(words, view)
    return items


def _sideways(words: RollWording, view: View, symbol: str, what: str, newtons: float) -> Label:
    """Return the words over what pulls sideways: higher, or in shorter lines, where an edge would strike them."""
    _, y, z = words.body.centre
    sloped, told, way = symbol != "{M a}", words.told("held y"), 1.0 if newtons > 0 else -1.0
    long = (f"*{symbol} = {told}", f"{what}, to the {words.way(newtons)}")
    short, broken = (long[0], what), (f"*{symbol}", f"*= {told}", what)
    # beside the plumb line they stand wholly on their side
    forms = tuple((lines, _ahead(lines), 0.0, 4.6 * len(lines)) for lines in (long, short, broken))
    if not sloped:
        forms = ((long, 22.0, 13.0, 10.0),)

    def struck(form: tuple[tuple[str, ...], float, float, float], lift: float) -> bool:
        _, ahead, behind, tall = form
        low = z + (lift + 1.4) / view.scale
        ends = (y - way * behind / view.scale, low), (y + way * ahead / view.scale, low + tall / view.scale)
        return crossed(words.results, *ends)

    clear = ((form[0], lift) for form in forms for lift in _LIFTS if not struck(form, lift))
    lines, lift = next(clear, (forms[-1][0], _LIFTS[0]))
    return Label(lines, "above", tone="load", nudge=(0.0, lift))


def _ahead(lines: tuple[str, ...]) -> float:
    """Return how far words beside the plumb line reach from the centre of mass."""
    return max(width(text, 2.5) for text in lines) + 2.0


def _pulled_left(words: RollWording) -> bool:
    """Return whether what pulls sideways pulls left; words at the centre of mass then stand to its right."""
    return words.body.inertia.y + words.body.weight.y > 0


def _plumb(words: RollWording, view: View) -> list[Item]:
    """Return the plumb line through the centre of mass, which shows how the slope leans."""
    weight, (_, y, z) = words.body.weight, words.body.centre
    size = math.hypot(weight.y, weight.z)
    down = (weight.y / size, weight.z / size)
    low = 0.72 * z
    case = words.results.setup.case(words.state.name)
    angle = format_quantity(case.angle, "angle", words.units) if isinstance(case, SideSlope) else ""
    text, way = f"plumb, {angle}", 1.0 if down[0] > 0 else -1.0
    wide, tall = _PLUMB_WIDTH / view.scale, _PLUMB_HEIGHT / view.scale

    def struck(high: float) -> bool:
        at = y - high * down[0], z - high * down[1]
        return crossed(words.results, (at[0] - way * wide, at[1] - tall / 2), (at[0], at[1] + tall / 2))

    high = next((share * z for share in _PLUMB if not struck(share * z)), _PLUMB[0] * z)
    points = ((y - high * down[0], z - high * down[1]), (y + low * down[0], z + low * down[1]))
    top: Literal["left", "right"] = "right" if down[0] > 0 else "left"
    return [
        Line("plumb", view.name, 3, points=points, style="phantom", tone="soft", level=4),
        Note("label-plumb", view.name, 3, label=Label((text,), top, anchor=points[0], tone="soft", size=2.3)),
    ]


def _sides(words: RollWording, view: View) -> list[Item]:
    """Return the road on the wheels of each side, both axles together, and a trailer's coupling."""
    body = words.body
    items: list[Item] = []
    least = least_across((body.summed(left)[0][0] for left in (True, False)), view)
    for left in (True, False):
        (across, upright), y = body.summed(left)
        side = "left" if left else "right"
        moved = body.moved(left)
        both = "wheel" if len(body.of_side(left)) == 1 else "wheels"
        change = "" if words.nothing(moved) else f"{words.told('moved')} {'gained' if moved > 0 else 'lost'}"
        lines = [f"*{{N|{side}}} = {words.told(f'{side} z')}", f"{side} {both}", *([change] if change else [])]
        if not words.nothing(across):
            told, at = f"{{S|{side}}} = {words.told(f'{side} y')}", (y, across)
            edge = max(abs(wheel.y) for wheel in body.of_side(left)) + words.tire / 2 - abs(y)
            aside: Literal["left", "right"] = "left" if left else "right"
            name = f"reaction-{side}-across"
            step = words.across_step
            items.append(pushed_across(name, view, step, at, told, aside, edge, size=2.5, least=least))
        label = Label(
            tuple(lines),
            side,  # type: ignore[arg-type]
            anchor=(y, -_LABELS / view.scale),
            tone="reaction",
            nudge=(-1.6 if left else 1.6, -1.5),
        )
        items.append(
            Force(f"reaction-{side}", view.name, 4, at=(y, 0.0), vector=(0.0, upright), role="reaction", level=5)
        )
        items.append(Note(f"label-{side}", view.name, 4, label=label))
    return items + coupling_held(words, view, aside="left" if _pulled_left(words) else "right")


def _levers(words: RollWording, results: Results, view: View) -> list[Item]:
    """Return the height of the centre of mass and the track."""
    body, chassis = words.body, results.setup.chassis
    _, y, z = body.centre
    track = chassis.track if isinstance(chassis, TrailerChassis) else chassis.front_track
    half = track * 500.0
    line = _FOOT + 4.0
    foot = -(_ARROWS + 1.0) / view.scale
    away = 11.0 if words.nothing(body.coupling.y) else 17.0  # clear of a coupling's arrow
    aside = away if _pulled_left(words) else -away  # on the other side of the arrow
    what = (
        "track" if isinstance(chassis, TrailerChassis) or chassis.front_track == chassis.rear_track else "front track"
    )
    return [
        Dimension(
            "dimension-height",
            view.name,
            words.measured_step,
            start=(y, 0.0),
            end=(y, z),
            direction="vertical",
            line_at=view.on_sheet((y, 0.0))[0] + aside,
            text=f"{{h}} = {words.length(z)}",
            extension=(False, True),
        ),
        Dimension(
            "dimension-track",
            view.name,
            words.measured_step,
            start=(half, foot),
            end=(-half, foot),
            line_at=line,
            text=f"{what} {words.length(track * 1e3)}",
        ),
    ]

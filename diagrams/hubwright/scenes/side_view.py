"""The vehicle or trailer from its left side: every mass at its place, and what the axles carry.

View in real millimetres: x forward from the front axle (a trailer: from its axle), z up from the road; the vehicle
faces left. The free body is plane: forces along x and z, moments about y; what acts across the vehicle lies in the line
of sight.
"""

import math
import textwrap
from dataclasses import replace
from typing import Literal

from hubwright.errors import CaseError
from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.side_view_leaders import off_edges
from hubwright.scenes.side_view_words import (
    along_forces,
    caption_of,
    description_of,
    forward,
    levers,
    metres,
    rest_forces,
    scale_readings,
    signed_shares,
    title_of,
    weight_symbol,
)
from hubwright.scenes.small_forces import is_small, visible
from hubwright.scenes.vehicle_loads import PlaneBody, VehicleLoad, force_name, plane_body
from hubwright.scenes.vehicle_outline import Outline
from hubwright.scenes.vehicle_seen import outline_of, vehicle_seen
from hubwright.scenes.vocabulary import (
    LENGTH_OFF_SCALE,
    Column,
    Dimension,
    Dot,
    Force,
    Item,
    KeyEntry,
    Label,
    Material,
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
from hubwright.setup.model import VehicleChassis

_WIDTH, _LEFT, _RIGHT = 310.0, 60.0, 250.0  # of the drawing area, and where the label columns begin
_FOOT, _ROW, _ARROWS = 26.0, 8.0, 25.0  # strip of scales, rows of dimensions, room of arrows below the road
_LABELS = 16.0  # middle of the words beside arrows, below the road
_LEAST_DROP = 10.0  # the same, beside an arrow that ends above that
_LEAST_REACH = 5.0  # of a weight's arrow below the road, for its words to stand there
_WHEEL_BESIDE = 25.0  # a wheel so near leaves no room for words beside a weight's arrow
_WORDS_WIDE, _WORDS_BELOW = 45.0, 8.0  # how far the words of the vehicle's weight reach sideways, and below its tip
_HEADS_APART = 6.0  # between upright arrows, so that a phone too has their heads apart
_BESIDE = 1.4  # from the middle of an arrow to words beside it, more than to a point
_ASIDE, _CLEAR = 9.0, 8.0  # of the height's line from its centre of mass, and from what stands beside it
_HEIGHT_WORDS = 18.0  # a height that has room for its words
_WATER = 1000.0  # kg/m3: gear is drawn as a cube of its mass in water
_POINT, _LETTER = 0.7, (-0.2, 2.9)  # radius of the point of moments, and where its letter stands from beside it
_MASS = 1.6  # radius of the mark of the vehicle's own centre of mass
_HIDDEN = 2.5  # an arrow shorter than this lies under the mark of its centre of mass
_SHOWN = 10  # loads that get a label of their own
_LETTERS = 30  # in a line of a label column


def side_view(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of a vehicle seen from its left side with all weights and the reactions of its axles."""
    state = results.cases[case]
    if state.kind in ("ledge", "drop"):
        raise CaseError(case=case, reason="the side view shows the whole vehicle, this case concerns one wheel")
    body, outline = plane_body(results, state), outline_of(results)
    view = _view(body, outline)
    items = vehicle_seen(results, outline, view)
    steps = [Step("Draw the vehicle", "Its outline, to scale, on the road.", "isolate")]

    steps.append(Step("Hang its weight", "The vehicle without gear is one weight at its centre of mass.", "loads"))
    items += _own_weight(body, view, units, len(steps))
    if body.added:
        steps.append(Step("Add what it carries", "Each item is a weight of its own at its own place.", "loads"))
        items += _added(body, view, units, len(steps))
    if body.inertia[0]:
        steps.append(
            Step(
                "Add inertia",
                "Mass times acceleration, against the acceleration, at the centre of all masses.",
                "loads",
            )
        )
        items += _inertia_force(body, view, units, len(steps))
    steps.append(
        Step(
            "Let the road push back", "The reactions hold the weights: forces and moments add up to zero.", "reactions"
        )
    )
    items += _reactions(body, view, units, len(steps), scales=state.name == "standing")
    steps.append(
        Step("Measure the levers", "Each weight is shared by its distances from the two supports.", "dimensions")
    )
    items += _dimensions(results, body, view, units, len(steps))
    steps.append(Step("Take moments about one support", _solved(body, units), "solve"))
    items += _centre_of_moments(body, view, len(steps))

    top = view.on_sheet((0.0, max(outline.top, *(load.z for load in body.loads))))[1]
    return Scene(
        name="side-view",
        title=title_of(results, state, body, units),
        caption=caption_of(
            results, state, body, units, broken=any(isinstance(item, Force) and not item.to_scale for item in items)
        ),
        description=description_of(results, state, body, units),
        units=units,
        size=(_WIDTH, top + 9.0),
        views=(view,),
        items=tuple(off_edges(items, view, force_name(body.own))),
        steps=tuple(steps),
        columns=(
            Column("left", _LEFT, view.origin[1] + 4.0, top + 6.0),
            Column("right", _RIGHT, view.origin[1] + 4.0, top + 6.0),
        ),
        scale_bars=(
            ScaleBar("vehicle", "length", f"Vehicle 1 : {1 / view.scale:.0f}"),
            ScaleBar("vehicle", "force", "Forces"),
        ),
        key=(
            KeyEntry("weight", f"weight{' and inertia' if body.inertia[0] else ''}, at its centre of mass"),
            KeyEntry("reaction", "reaction of road and coupling" if outline.coupling else "reaction of the road"),
        ),
        axes="side",
        body=body.closed(),
    )


def _view(body: PlaneBody, outline: Outline) -> View:
    front = max(outline.front, *(load.x + 150.0 for load in body.loads))
    rear = min(outline.rear, *(load.x - 150.0 for load in body.loads))
    top = max(outline.top, *(load.z for load in body.loads))
    scale = min(drawing_scale(front - rear, _RIGHT - _LEFT - 10.0)[0], drawing_scale(top, 105.0)[0])
    # every reaction, and every weight hanging from its place, ends within the room below the road
    needs = [math.hypot(*rest.force) / _ARROWS for rest in body.rests]
    needs += [abs(body.weight(load)) / (_ARROWS + load.z * scale) for load in body.loads]
    road = _FOOT + (2 if body.headline is None else 3) * _ROW + _ARROWS
    middle = (_LEFT + _RIGHT) / 2 + scale * (front + rear) / 2
    return View("vehicle", (middle, road), scale, round_scale(max(needs), 1.0), mirrored=True)


def _own_weight(body: PlaneBody, view: View, units: Units, step: int) -> list[Item]:
    own, weight = body.own, body.weight(body.own)
    at, (first, last) = (own.x, own.z), body.rests
    leftward = first.x - own.x > own.x - last.x  # toward the farther support, where there is room
    label = Label(
        (
            f"*{weight_symbol(body)} = {format_quantity(weight, 'force', units)}",
            f"{own.text} without gear,",
            format_quantity(own.mass, "mass", units),
        ),
        place="left" if leftward else "right",
        tone="load",
    )
    mark = Dot("centre-of-mass", view.name, step, at=at, kind="centre of mass", radius=_MASS, level=2)
    force = Force(force_name(own), view.name, step, at=at, vector=(0.0, -weight), tip_at_point=False)
    reach = _hanging(body, own, view)
    if reach < _LEAST_REACH:  # below the road words would stand at the lines that go down from it
        if min(first.x - own.x, own.x - last.x) * view.scale < _WHEEL_BESIDE:
            label = replace(label, place="right column" if leftward else "left column")
        else:  # between arrow and wheel there is room for short lines
            said = f"gear, {format_quantity(own.mass, 'mass', units)}"
            label = replace(label, lines=(label.lines[0], f"{own.text} without", said))
        return [mark, replace(force, label=label)]
    nudge = (-_BESIDE if leftward else _BESIDE, 0.0)
    label = replace(label, anchor=(own.x, -_words_below(reach) / view.scale), nudge=nudge)
    return [mark, force, Note("label-weight", view.name, step, label=label)]


def _added(body: PlaneBody, view: View, units: Units, step: int) -> list[Item]:
    labelled = sorted(body.added, key=lambda load: -abs(load.mass))[:_SHOWN]
    items: list[Item] = []
    for number, load in enumerate(body.added, start=1):
        at, weight = (load.x, load.z), body.weight(load)
        if load.kind == "gear":
            cube, own = _cube(load), body.own
            # an empty square where a full one would hide the vehicle's own centre of mass
            hides = cube[0][0] - 60 < own.x < cube[2][0] + 60 and cube[0][1] - 60 < own.z < cube[2][1] + 60
            material: Material = "none" if hides else "changed"
            name = f"part-{load.name}"
            items.append(Part(name, view.name, step, rings=(cube,), material=material, outline=0.3, level=0.5))
        items.append(Dot(f"centre-{load.name}", view.name, step, at=at, kind="centre of mass", radius=0.9, level=2))
        label = None
        if load in labelled:
            lines = (
                f"*{weight_symbol(body, number)} = {format_quantity(abs(weight), 'force', units)}",
                *_told(body, load, units),
            )
            # no leader runs across the vehicle's own weight and its height
            label = Label(lines, place="left column" if load.x >= body.own.x else "right column", tone="load")
        vector = (0.0, -weight)
        # above the square that stands for gear
        force = Force(
            force_name(load), view.name, step, at=at, vector=vector, tip_at_point=False, label=label, level=1.0
        )
        items.append(_off_the_weight(visible(force, view, least=_HIDDEN), body, view))
    if rest := [load for load in body.added if load not in labelled]:
        total = format_quantity(sum(load.mass for load in rest), "mass", units)
        lines, at = (f"and {len(rest)} lighter loads,", f"together {total}"), (10.0, view.origin[1] - 4.0)
        items.append(Words("words-more", view.name, step, at_sheet=at, lines=lines, tone="load"))
    return items


def _off_the_weight(force: Force, body: PlaneBody, view: View) -> Force:
    """Return a load's arrow, one over the vehicle's own weight and close beside it above its place, not below it."""
    (x, z), own = force.at, body.own
    beside = abs(x - own.x) * view.scale < _HEADS_APART and z > own.z
    return replace(force, tip_at_point=True) if beside and not force.to_scale and force.vector[1] < 0 else force


def _told(body: PlaneBody, load: VehicleLoad, units: Units) -> list[str]:
    """Return what a load is and what it adds where, as lines of a label column."""
    mass = format_quantity(abs(load.mass), "mass", units)
    if load.kind == "wheels":
        change = "heavier" if load.mass > 0 else "lighter, so upward"
        return textwrap.wrap(f"{load.text}, {mass} {change}", _LETTERS)
    first, last = (f"{share} on the {rest.text}" for rest, share in signed_shares(body, load, units))
    return [*textwrap.wrap(f"{load.text}, {mass}:", _LETTERS), f"{first},", last]


def _inertia_force(body: PlaneBody, view: View, units: Units, step: int) -> list[Item]:
    at, vector, own = body.centre, body.inertia, body.own
    lines = [f"*{{M a}} = {format_quantity(abs(vector[0]), 'force', units)}", f"inertia, {forward(vector[0])}"]
    if body.added:  # the height that is measured is that of the vehicle's own weight
        lines[-1:] = [f"{lines[-1]},", f"{metres(at[1], units)} above the road"]
    label = Label(tuple(lines), place="above", tone="load")
    hidden = math.dist(at, (own.x, own.z)) * view.scale < _MASS  # its start, by the mark of the vehicle's own mass
    gap = _MASS if hidden else 0.0
    return [
        Dot("centre-of-all", view.name, step, at=at, radius=0.8, level=2),
        Force("force-inertia", view.name, step, at=at, vector=vector, tip_at_point=False, label=label, gap=gap),
    ]


def _reactions(body: PlaneBody, view: View, units: Units, step: int, *, scales: bool) -> list[Item]:
    """Return what pushes at the axles or the coupling, of a standing vehicle with what scales under it show."""
    items: list[Item] = []
    told_of = zip(
        body.rests, rest_forces(body, units), along_forces(body, units), scale_readings(body, units), strict=True
    )
    for rest, told, pushed, reading in told_of:
        along, up = rest.force
        lines = [f"*{{N|{rest.name}}} = {told}"]
        lines.append(rest.text if up >= 0 else f"{rest.text}, held down")
        small, told_along = is_small(along, _force_scale(view)), f"{{F|x}} = {pushed}, {forward(along)}"
        if along and not small:
            lines[-1:] = [f"{lines[-1]},", told_along]
        elif scales and up >= 0:
            lines[-1:] = [f"{lines[-1]},", f"a scale shows {reading}"]
        leftward = rest is body.rests[0]
        side: Literal["left", "right"] = "left" if leftward else "right"
        label = Label(tuple(lines), side, tone="reaction")
        coupled = rest.z > 0
        if coupled:  # over the drawbar, with the words of gear
            label = replace(label, place="left column")
        name, at, on_road = f"reaction-{rest.name}", (rest.x, rest.z), (rest.x, 0.0)
        push = Force(name, view.name, step, at=at, vector=(0.0, up), role="reaction", label=label)
        shown = visible(push, view, least=_HIDDEN)
        if coupled and up > 0 and not (shown.to_scale and up / _force_scale(view) < rest.z * view.scale):
            shown = replace(shown, tip_at_point=False)  # where the road would be in its way, on a phone at least
        if shown.to_scale and not coupled:  # its words stand below the road, in one line with those of the weight
            nudge = (-_BESIDE if leftward else _BESIDE, 0.0)
            drop = _words_below(up / _force_scale(view) - rest.z * view.scale)
            label = replace(label, anchor=(rest.x, -drop / view.scale), nudge=nudge)
            items.append(Note(f"label-{name}", view.name, step, label=label))
            shown = replace(shown, label=None)
        items.append(shown)
        if along:
            name, own = f"{name}-along", Label((told_along,), side, tone="reaction") if small else None
            force = Force(
                name, view.name, step, at=on_road, vector=(along, 0.0), role="reaction", label=own, gap=_POINT
            )
            items.append(visible(force, view))
    return items


def _solved(body: PlaneBody, units: Units) -> str:
    """Return what moments about the last support give on the first, and what is left for the last."""
    first, last = body.rests
    on_first, on_last = rest_forces(body, units)
    return (
        f"About A all loads turn with their levers; divided by {{L}} that is {{N|{first.name}}} = {on_first}. "
        f"What is left of the loads is {{N|{last.name}}} = {on_last}."
    )


def _centre_of_moments(body: PlaneBody, view: View, step: int) -> list[Item]:
    """Return the point about which moments are taken, with its letter."""
    pivot = body.rests[1]
    at = (pivot.x, pivot.z)
    return [
        Dot("pivot", view.name, step, at=at, radius=_POINT, level=3),
        Note("label-pivot", view.name, step, label=Label(("*A",), "right", anchor=at, nudge=_LETTER)),
    ]


def _dimensions(results: Results, body: PlaneBody, view: View, units: Units, step: int) -> list[Item]:
    first, last = body.rests
    own, headline = body.own, body.headline
    span = "wheelbase" if isinstance(results.setup.chassis, VehicleChassis) else "coupling to axle"

    def foot(x: float, drop: float) -> Point:
        """Return where an extension line starts: clear below an arrow that reaches `drop` below the road."""
        return x, -(max(drop, 3.0) + 1.0) / view.scale

    front, rear = (foot(r.x, r.force[1] / _force_scale(view) - r.z * view.scale) for r in (first, last))
    middle = foot(own.x, _hanging(body, own, view))
    ahead, behind = levers(body, units)
    low = _FOOT + 4.0
    lengths = [
        ("wheelbase", front, rear, low, f"{span} {{L}} = {metres(first.x - last.x, units)}"),
        ("centre-ahead", front, middle, low + _ROW, ahead),
        ("centre-behind", middle, rear, low + _ROW, behind),
    ]
    if headline is not None:
        near = min(first, last, key=lambda rest: abs(rest.x - headline.x))
        reach = max(_hanging(body, headline, view), LENGTH_OFF_SCALE)  # an arrow that is not to scale hangs no farther
        if abs(headline.x - own.x) * view.scale < _WORDS_WIDE:  # the words beside the vehicle's weight end lower
            reach = max(reach, _hanging(body, own, view) + _WORDS_BELOW)
        start, end = foot(headline.x, reach), front if near is first else rear
        lengths.append(("gear", start, end, low + 2 * _ROW, metres(headline.x - near.x, units)))
    items: list[Item] = [
        Dimension(f"dimension-{name}", view.name, step, start=start, end=end, line_at=line, text=text, side="start")
        for name, start, end, line, text in lengths
        if abs(start[0] - end[0]) * view.scale > 0.5
    ]
    items.append(_height(body, view, units, step))
    return items


def _height(body: PlaneBody, view: View, units: Units, step: int) -> Item:
    """Return the height of the vehicle's centre of mass, off the arrows near it and the lines that go down from them.

    One too small for its words has them above it, on the side where no gear is named, else below.
    """
    own, (first, last) = body.own, body.rests
    toward = 1.0 if own.x > (first.x + last.x) / 2 else -1.0
    beside = [(x - own.x) * -view.scale for x in (*(load.x for load in body.added), first.x, last.x)]
    named = {-1.0 if load.x >= own.x else 1.0 for load in body.added}
    small = own.z * view.scale < _HEIGHT_WORDS
    aside = max(
        (toward * _ASIDE * way for way in (1.0, -1.0, 1.7, -1.7)),
        key=lambda line: (_room(line, beside), small and math.copysign(1.0, line) not in named),
    )
    return Dimension(
        "dimension-height",
        view.name,
        step,
        start=(own.x, 0.0),
        end=(own.x, own.z),
        direction="vertical",
        line_at=view.on_sheet((own.x, 0.0))[0] + aside,
        text=metres(own.z, units),
        side="start" if small and math.copysign(1.0, aside) in named else "auto",
        extension=(False, True),
    )


def _room(line: float, beside: list[float]) -> float:
    """Return how far a line is off its neighbours, as far as that counts."""
    return min(_CLEAR, *(abs(line - each) for each in beside))


def _cube(load: VehicleLoad) -> tuple[Point, ...]:
    """Return a square of the size of the mass in water; flatter, of the same area, where the road is near."""
    side = (load.mass / _WATER) ** (1 / 3) * 1e3
    half_height = min(side / 2, max(0.95 * load.z, 30.0))
    half_width = side**2 / 4 / half_height
    signs = ((-1, -1), (1, -1), (1, 1), (-1, 1))
    return tuple((load.x + sx * half_width, load.z + sz * half_height) for sx, sz in signs)


def _words_below(reach: float) -> float:
    """Return how far below the road words stand beside an arrow that reaches so far below it, on the sheet."""
    return min(max(reach - 1.0, _LEAST_DROP), _LABELS)


def _hanging(body: PlaneBody, load: VehicleLoad, view: View) -> float:
    """Return how far a weight's arrow reaches below the road, on the sheet."""
    return body.weight(load) / _force_scale(view) - load.z * view.scale


def _force_scale(view: View) -> float:
    assert view.newtons_per_mm is not None
    return view.newtons_per_mm

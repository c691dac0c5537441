"""The forces on either free body of two setups that are compared: arrows and rings, each with its label in a column.

Views from the rear in real millimetres from the bearing centre: ISO y and z.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from hubwright.quantities import format_quantity
from hubwright.results.model import Results, SingleForce, Vector
from hubwright.scenes.small_forces import OFF_END, along, length, visible
from hubwright.scenes.two_setups_words import ON_MASSES, TwoWordings
from hubwright.scenes.vocabulary import Force, Item, Label, Moment, Normal, Point, Tone, View
from hubwright.scenes.wheel_end_parts.assembly import Assembly
from hubwright.scenes.wheel_end_words import row_sizes, rows_of

NAMES: tuple[Literal["first", "second"], Literal["first", "second"]] = ("first", "second")
LEVEL = 22.0
_MASSES = {"W": "weight", "m a": "inertia"}
_NOTHING = 1e-6
_GAP = 2.5  # from a ring to an arrow at the same point
_BESIDE = 5.0  # between the middle of one upright arrow and that of another beside it
_ALL_HEAD, _OFF_HEAD = 3.0, 1.1  # a shorter arrow has hardly a shaft: its leader ends so far off its middle


@dataclass(frozen=True)
class Body:
    """One of the two setups as drawn."""

    name: Literal["first", "second"]
    results: Results
    parts: Assembly
    view: View
    words: TwoWordings

    @property
    def load_line(self) -> float:
        """Where the load line lies in the view."""
        return self.results.side * self.parts.measures.load_line

    @property
    def column(self) -> Literal["left column", "right column"]:
        """The column of the labels, outboard of the wheel."""
        return "left column" if self.results.side > 0 else "right column"

    @property
    def inboard(self) -> Literal["left", "right"]:
        """Where the inboard row has its words: a leader from the column would cross the arrows of other forces."""
        return "right" if self.results.side > 0 else "left"

    @property
    def least(self) -> float:
        """What counts as no force [N]."""
        state = self.results.cases[self.words.case]
        return _NOTHING * state.free_body.largest_component


def forces_of(body: Body, words: TwoWordings) -> list[Item]:
    """Return every force of the free body; of the rows their loads, or else force and moment at the centre."""
    state, view = body.results.cases[words.case], body.view
    items: list[Item] = []
    symbols = {"contact": "F", "row_outboard": "A", "row_inboard": "B", "axial": "B", "bearing": "B", "caliper": "K"}
    for single in state.free_body.forces:
        if single.name in symbols:
            step = 2 if single.kind == "applied" else 3
            items += _told_with_arrow(_arrows(body, words, single, step, symbols[single.name]))
    items += _on_masses(body, words)
    for couple in state.free_body.couples:
        if couple.name == "bearing" and abs(couple.moment.x) > body.least:
            text = format_quantity(abs(couple.moment.x), "moment", words.units)
            label = Label((f"*{{M|x}} = {text}",), body.column, tone="moment", size=2.5)
            # seen from the rear a positive moment about x turns clockwise
            items.append(
                Moment(
                    f"moment-{view.name}",
                    view.name,
                    3,
                    newton_metres=-couple.moment.x,
                    label=label,
                    level=LEVEL + 2,
                )
            )
    return items


def _on_masses(body: Body, words: TwoWordings) -> list[Item]:
    """Return weight and inertia; in a corner and across a slope as one arrow, which leaves room at the bearing.

    Inertia alone would be too short to see, and of the one length of such arrows it would hide what the bearing does.
    """
    forces = body.results.cases[words.case].free_body.forces
    acting = [(_together(forces, prefix), symbol) for prefix, symbol in zip(ON_MASSES, _MASSES, strict=True)]
    upright = [single for single, _ in acting if abs(single.force.z) > body.least]
    sideways = [single for single, _ in acting if abs(single.force.y) > body.least]
    if not sideways or len(upright) != 1:
        items = [item for single, symbol in acting for item in _arrows(body, words, single, 2, symbol)]
        return _told_with_arrow(items) if len(upright) == 1 else items
    lines = [line for single, symbol in acting for line in _told(body, words, single, symbol)]
    vector = math.fsum(single.force.y for single, _ in acting), upright[0].force.z
    middle = upright[0].point
    force = Force(
        f"force-masses-{body.view.name}",
        body.view.name,
        2,
        at=(middle.y * 1e3, middle.z * 1e3),
        vector=vector,
        tip_at_point=_ends_at_point(body, middle, vector),
        gap=_GAP if any(abs(single.force.x) > body.least for single, _ in acting) else 0.0,
        label=Label((*lines, "as one arrow"), body.column, tone="load", size=2.5),
        level=LEVEL + 3,
    )
    rings = [item for single, symbol in acting for item in _ring(body, words, single, 2, symbol)]
    return [*rings, _with_ends(visible(force, body.view), body)]


def _told_with_arrow(items: list[Item]) -> list[Item]:
    """Return the forces at one point with the words of a ring at those of the first arrow there, if there is one.

    A leader of its own would cross those of others.
    """
    rings = [item for item in items if isinstance(item, Normal)]
    arrow = next((item for item in items if isinstance(item, Force)), None)
    if arrow is None or arrow.label is None:
        return items
    lines = tuple(line for ring in rings if ring.label is not None for line in ring.label.lines)
    told = replace(arrow, label=replace(arrow.label, lines=(*arrow.label.lines, *lines)))
    return [
        replace(item, label=None) if isinstance(item, Normal) else told if item is arrow else item for item in items
    ]


def _ends_at_point(body: Body, point: Vector, vector: Point) -> bool:
    """Return whether an arrow on the masses ends at its point, as on the side where it would begin another stands."""
    view = body.view
    size = math.hypot(*vector)
    middle = vector[0] / size * length(size, view.newtons_per_mm or 1.0) / 2  # the arrow's, from its point
    forces = body.results.cases[body.words.case].free_body.forces
    others = [f for f in forces if f.name.startswith(("row", "caliper"))]

    def taken(way: float) -> bool:
        # these end at their points: each stands on the side from which it comes
        at = middle * math.copysign(1.0, way * vector[1])
        return any(
            other.force.z * way < -body.least and abs((other.point.y - point.y) * 1e3 * view.scale - at) < _BESIDE
            for other in others
        )

    return taken(vector[1]) and not taken(-vector[1])


def _told(body: Body, words: TwoWordings, single: SingleForce, symbol: str) -> list[str]:
    """Return what a label says of a force on the masses: size and way, in words, of its parts upright and across."""
    parts: dict[Literal["z", "y"], float] = {"z": single.force.z, "y": single.force.y}
    lines: list[str] = []
    for axis, size in parts.items():
        if abs(size) > body.least:
            lines.append(f"*{{{symbol}}} = {_size(body, words, single, axis)}")
            lines.append(f"{_MASSES[symbol]}, {_way(body, axis, size)}")
    return lines


def _way(body: Body, axis: Literal["y", "z"], size: float) -> str:
    if axis == "z":
        return "up" if size > 0 else "down"
    return "outboard" if size * body.results.side > 0 else "inboard"


def _with_ends(force: Force, body: Body) -> Force:
    """Return an arrow whose leader may end near its tail, and just off either end, as well: others cross its middle.

    Past the tip of one that is hardly more than a head it would name what lies there: it ends outboard of that.
    """
    if force.label is None:
        return force
    view = body.view
    ends = along(force, view, 0.25), along(force, view, 1.0, OFF_END), along(force, view, 0.0, -OFF_END)
    newtons = math.hypot(*force.vector)
    if force.to_scale and force.label.place == body.column and newtons < _ALL_HEAD * (view.newtons_per_mm or 1.0):
        x, y = along(force, view, 0.5)
        outboard = x + body.results.side * _OFF_HEAD / view.scale * abs(force.vector[1]) / newtons, y
        return replace(force, label=replace(force.label, anchor=outboard, also=(along(force, view, 0.5), *ends)))
    return replace(force, label=replace(force.label, also=ends))


def _together(forces: Sequence[SingleForce], prefix: str) -> SingleForce:
    """Return the forces on the masses of that name as one: they are parallel, and it acts at their middle."""
    found = [single for single in forces if single.name.startswith(prefix)]
    total = Vector(*(math.fsum(getattr(single.force, axis) for single in found) for axis in "xyz"))
    sizes = [single.force.length for single in found]
    whole = math.fsum(sizes) or 1.0
    point = Vector(
        *(
            math.fsum(size * getattr(single.point, axis) for size, single in zip(sizes, found, strict=True)) / whole
            for axis in "xyz"
        )
    )
    return SingleForce(name=prefix, kind="applied", force=total, point=point)


def _size(body: Body, words: TwoWordings, single: SingleForce, axis: str) -> str:
    """Return the size of a component, so shown that the upright ones cancel, and the rows make the bearing's force."""
    state = body.results.cases[words.case]
    rows = state.row_load
    if axis == "z":
        return words.upright()[NAMES.index(body.name)][single.name]
    if rows is None or not single.name.startswith("row"):
        return format_quantity(abs(getattr(single.force, axis)), "force", words.units)
    outboard, inboard = row_sizes([getattr(row, axis) for row in rows_of(rows)], words.units)
    return outboard if single.name == "row_outboard" else inboard


def _arrows(body: Body, words: TwoWordings, single: SingleForce, step: int, symbol: str) -> list[Item]:
    """Return a force's parts across and up, each with its label, and that along the line of sight as a ring."""
    view = body.view
    role: Literal["applied", "reaction"] = "applied" if single.kind == "applied" else "reaction"
    tone: Tone = "load" if role == "applied" else "reaction"
    at = single.point.y * 1e3, single.point.z * 1e3
    items: list[Item] = []
    ringed = abs(single.force.x) > body.least
    letter = "F" if single.name.startswith("row") else symbol
    on_masses = symbol in _MASSES
    vectors: dict[Literal["y", "z"], Point] = {"z": (0.0, single.force.z), "y": (single.force.y, 0.0)}
    for axis, vector in vectors.items():
        size = vector[1] + vector[0]
        if abs(size) <= body.least:
            continue
        below = symbol if single.name.startswith("row") and axis == "z" else axis
        sign = f"{{{letter}}}" if on_masses else f"{{{letter}|{below}}}"
        value = _size(body, words, single, axis)
        way = _way(body, axis, size)
        what = f"{_MASSES[symbol]}, {way}" if on_masses else way
        # with rings at the rows there is no room beside them
        beside = single.name == "row_inboard" and axis == "z" and not ringed
        place = body.inboard if beside else body.column
        label = Label((f"*{sign} = {value}", what), place, tone=tone, size=2.5)
        force = Force(
            f"{_start(single)}-{view.name}-{axis}",
            view.name,
            step,
            at=at,
            vector=vector,
            role=role,
            tip_at_point=axis == "z" and (not on_masses or _ends_at_point(body, single.point, vector)),
            gap=_GAP if ringed else 0.0,
            label=label,
            level=LEVEL + 3,
        )
        items.append(_with_ends(visible(force, view), body))
    # words of a ring come first: its leader has the fewest places at which to end
    return _ring(body, words, single, step, symbol) + items


def _start(single: SingleForce) -> str:
    """Return how the names of a force's items begin."""
    return f"{'force' if single.kind == 'applied' else 'reaction'}-{single.name}"


def _ring(body: Body, words: TwoWordings, single: SingleForce, step: int, symbol: str) -> list[Item]:
    """Return the part along the line of sight."""
    if abs(single.force.x) <= body.least:
        return []
    value = _size(body, words, single, "x")
    on_masses = symbol in _MASSES
    of_row = single.name.startswith("row")
    sign = f"{{{symbol}}}" if on_masses else (f"{{F|{symbol}x}}" if of_row else f"{{{symbol}|x}}")
    way = "forward" if single.force.x > 0 else "rearward"
    what = f"{_MASSES[symbol]}, {way}" if on_masses else way
    applied = single.kind == "applied"
    return [
        Normal(
            f"{_start(single)}-{body.view.name}-x",
            body.view.name,
            step,
            at=(single.point.y * 1e3, single.point.z * 1e3),
            newtons=-single.force.x,  # forward is away from a viewer behind the vehicle
            role="applied" if applied else "reaction",
            label=Label((f"{sign} = {value}", what), body.column, tone="load" if applied else "reaction", size=2.5),
            level=LEVEL + 5,
        )
    ]

"""A wheel against a square ledge: load, push and the edge's force at the wheel, and the triangle that they close.

Views in real millimetres, seen from the left: x forward from the axle, z up from the axle.
"""

import math
from dataclasses import dataclass, replace
from itertools import pairwise

from hubwright.quantities import format_quantity
from hubwright.results.model import CaseResult, Results
from hubwright.scenes.case_choice import case_of
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.shown import Shown
from hubwright.scenes.vocabulary import (
    AngularDimension,
    ClosedBody,
    Dimension,
    Dot,
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
    Words,
)
from hubwright.setup.model import Ledge

_WIDTH, _FOOT = 310.0, 30.0
_WHEEL, _TALL, _ARROWS = 100.0, 84.0, 56.0
_TRIANGLE = 258.0  # where the load's line stands in the triangle
_SHORT_PUSH, _BESIDE_LOAD = 14.0, 14.5  # of an arrow; from the load to the middle of the words beside it
_ROUND, _CLEAR = 72, 36  # corners of a circle, pieces of the tire that words keep clear of


@dataclass(frozen=True)
class AtLedge:
    """The three forces on a wheel that is about to leave the road [N, rad, mm]; x forward, z up."""

    height: float
    radius: float
    angle: float
    load: float
    push: float
    normal: float

    @classmethod
    def of(cls, results: Results, state: CaseResult) -> "AtLedge":
        """Return the forces of a ledge case as its results have them."""
        case = results.setup.case(state.name)
        assert isinstance(case, Ledge)
        contact = state.free_body.force("contact").point
        return cls(
            height=case.height * 1e3,
            radius=results.wheel_geometry.loaded_radius * 1e3,
            angle=math.atan2(contact.x, -contact.z),
            load=results.weight.wheel_loads[results.wheel],
            push=float(state.extras["push"]),
            normal=float(state.extras["contact_normal"]),
        )

    @property
    def edge(self) -> Point:
        """Return where the edge touches the wheel."""
        return self.radius * math.sin(self.angle), -self.radius * math.cos(self.angle)

    @property
    def contact(self) -> Point:
        """Return the force of the edge on the wheel, toward the axle."""
        return -self.normal * math.sin(self.angle), self.normal * math.cos(self.angle)

    def closed(self) -> ClosedBody:
        """Return the three forces with their points, from the foot of the wheel."""
        (x, z), (across, up) = self.edge, self.contact
        axle = (0.0, 0.0, self.radius / 1e3)
        return ClosedBody(
            forces=(
                ("load", (0.0, 0.0, -self.load), axle),
                ("push", (self.push, 0.0, 0.0), axle),
                ("edge", (across, 0.0, up), (x / 1e3, 0.0, (z + self.radius) / 1e3)),
            )
        )


@dataclass(frozen=True)
class LedgeWording(Shown):
    """The sentences of a wheel at a ledge."""

    at: AtLedge
    units: Units

    @property
    def angle(self) -> str:
        """Return the angle of the edge as shown."""
        return format_quantity(self.at.angle, "angle", self.units)

    @property
    def slope(self) -> str:
        """Return push over load, which is also the friction that a driven wheel needs."""
        return format_quantity(math.tan(self.at.angle), "ratio", self.units)

    def title(self) -> str:
        """Return the title, made from height, push and load."""
        return (
            f"A ledge of {self.length(self.at.height)}: pushing the wheel up takes {self.force(self.at.push)}, "
            f"{self.slope} times the load on it"
        )

    def caption(self) -> str:
        """Return what is drawn and what is left out."""
        return (
            "The wheel just leaves the lower road: a rigid circle of the loaded radius, no drive of its own. Load, "
            "push and edge close a triangle at one force scale. The load that the push itself moves is left out."
        )

    def description(self) -> str:
        """Return the text alternative."""
        at = self.at
        return (
            f"A wheel of {self.length(at.radius)} loaded radius stands against a square edge "
            f"{self.length(at.height)} high, from the left. The edge touches it {self.angle} ahead of straight down. "
            f"The vehicle loads the axle with {self.force(at.load)} and pushes forward with {self.force(at.push)}; "
            f"the edge answers with {self.force(at.normal)} toward the axle. A wheel that climbs by its own drive "
            f"needs a friction of {self.slope}."
        )

    def steps(self) -> tuple[Step, ...]:
        """Return how the figure is built up."""
        at = self.at
        return (
            Step(
                "Set the wheel against the ledge", f"The edge touches {self.angle} ahead of straight down.", "isolate"
            ),
            Step("Load the axle", f"The vehicle presses down with {self.force(at.load)}.", "loads"),
            Step("Push", "Forward, as hard as it takes to lift the wheel off the lower road.", "loads"),
            Step("Let the edge answer", "Without drive its force passes through the axle.", "reactions"),
            Step("Measure where it touches", f"{self.angle} ahead of straight down: its line is known.", "dimensions"),
            Step(
                "Close the triangle",
                f"Head to tail, the three close: {self.force(at.push)} push, {self.force(at.normal)} from the edge. "
                f"Push over load is {self.slope}.",
                "solve",
            ),
        )


def wheel_at_ledge(results: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of a wheel at a ledge with its force triangle."""
    state = case_of(results, case, ("ledge",), "a wheel at a ledge")
    at = AtLedge.of(results, state)
    words = LedgeWording(at, units)
    scale, ratio = drawing_scale(2 * at.radius, _TALL)
    per_mm = round_scale(max(at.normal, 0.86 * at.push), _ARROWS)
    deep = max(at.radius * scale, at.normal * math.cos(at.angle) / per_mm - at.edge[1] * scale)
    centre = _FOOT + 12.0 + deep
    wheel = View("wheel", (_WHEEL, centre), scale, per_mm, mirrored=True, heading="The wheel at the edge")
    top = max(centre + max(at.radius * scale, at.load / per_mm + 9.0), _FOOT + 20.0 + _TALL)
    middle = (_FOOT + 22.0 + top) / 2
    corner, heading = (_TRIANGLE, middle + at.load / per_mm / 2), "The three forces close"
    triangle = View("triangle", corner, scale, per_mm, mirrored=True, heading=heading)
    items: list[Item] = [
        *_solids(results, at, wheel),
        *_lengths(words, wheel),
        *_forces(words, wheel),
        *_triangle(words, triangle),
    ]
    return Scene(
        name="wheel-at-ledge",
        title=words.title(),
        caption=words.caption(),
        description=words.description(),
        units=units,
        size=(_WIDTH, top + 12.0),
        views=(wheel, triangle),
        items=tuple(items),
        steps=words.steps(),
        scale_bars=(
            ScaleBar("wheel", "length", f"Wheel {ratio}"),
            ScaleBar("wheel", "force", "Forces, both views"),
        ),
        key=(KeyEntry("load", "vehicle on the axle"), KeyEntry("reaction", "edge on the wheel")),
        axes="side",
        body=at.closed(),
    )


def _circle(radius: float) -> tuple[Point, ...]:
    turn = 2 * math.pi / _ROUND
    return tuple((radius * math.cos(turn * k), radius * math.sin(turn * k)) for k in range(_ROUND))


def _pieces(inner: float, outer: float) -> tuple[tuple[Point, ...], ...]:
    """Return a ring in pieces, each narrow enough for the box around it to stand for it."""
    corners = [2 * math.pi * number / _CLEAR for number in range(_CLEAR + 1)]
    return tuple(
        tuple(
            (radius * math.cos(angle), radius * math.sin(angle))
            for radius, angle in ((inner, first), (outer, first), (outer, second), (inner, second))
        )
        for first, second in pairwise(corners)
    )


def _solids(results: Results, at: AtLedge, view: View) -> list[Item]:
    rim = min(results.wheel_geometry.rim_diameter * 500.0, 0.9 * at.radius)
    x, z = at.edge
    ahead, behind, deep = max(1.35 * at.radius, x + 0.3 * at.radius), -1.35 * at.radius, 0.14 * at.radius
    block = ((x, z), (ahead, z), (ahead, -at.radius - deep), (x, -at.radius - deep))
    road = ((behind, -at.radius), (x, -at.radius), (x, -at.radius - deep), (behind, -at.radius - deep))
    name = view.name
    return [
        Part("part-road", name, rings=(road,), material="fixed", outline=0.0),
        Part("part-ledge", name, rings=(block,), material="fixed", outline=0.0),
        Line("line-road", name, points=((behind, -at.radius), (x, -at.radius), (x, z), (ahead, z)), style="outline"),
        Part("part-tire", name, rings=(_circle(at.radius), _circle(rim)), material="rubber", outline=0.3, level=1),
        Part("part-wheel", name, rings=(_circle(rim),), material="turning", outline=0.25, level=1),
        Part(
            "part-clear-tire",  # unseen: words stand within the rim or beside the tire
            name,
            rings=_pieces(rim, at.radius),
            material="none",
            outline=0.0,
            kept_clear="whole",
            wide_only=True,  # a letter in its ring stands anywhere
        ),
        Dot("axle", name, at=(0.0, 0.0), radius=0.9, level=6),
    ]


def _lengths(words: LedgeWording, view: View) -> list[Item]:
    at = words.at
    x, z = at.edge
    behind = view.on_sheet((-1.35 * at.radius, 0.0))[0] + 4.0
    ahead = view.on_sheet((max(1.35 * at.radius, x + 0.3 * at.radius), 0.0))[0] - 4.0
    name = view.name
    return [
        Line("line-upright", name, 5, points=((0.0, 0.0), (0.0, -at.radius)), style="centre", level=3),
        Line("line-edge", name, 5, points=((0.0, 0.0), (x, z)), style="centre", level=3),
        AngularDimension(
            "dimension-angle",
            name,
            5,
            vertex=(0.0, 0.0),
            start=(0.0, -at.radius),
            end=at.edge,
            radius=0.28 * at.radius * view.scale,  # its words fit within the rim beside it
            label=Label((f"{{θ}} = {words.angle}",)),
            level=4,
        ),
        Dimension(
            "dimension-radius",
            name,
            5,
            start=(0.0, -at.radius),
            end=(0.0, 0.0),
            direction="vertical",
            line_at=behind,
            text=f"{{R|l}} = {words.length(at.radius)}",
            extension=(False, True),
        ),
        Dimension(
            "dimension-ledge",
            name,
            5,
            start=(x, -at.radius),
            end=(x + 0.1 * at.radius, z),
            direction="vertical",
            line_at=ahead,
            text=f"{{s}} = {words.length(at.height)}",
            extension=(True, False),
        ),
    ]


def _forces(words: LedgeWording, view: View) -> list[Item]:
    at, name = words.at, view.name
    real = 1.0 / (view.newtons_per_mm or 1.0) / view.scale  # real millimetres of the view for one newton
    load = Label((f"*{{F|0}} = {words.force(at.load)}", "load"), "tail", (0.0, at.load * real), "load")
    push = Label((f"*{{P}} = {words.force(at.push)}", "push"), "tail", (-at.push * real, 0.0), "load")
    short = at.push / (view.newtons_per_mm or 1.0)
    if short < _SHORT_PUSH:  # its words have no room behind it: they stand over it, beside the load's arrow
        push = replace(push, place="above", anchor=None, nudge=(_BESIDE_LOAD - short / 2, 0.0))
    return [
        Force(
            "force-load",
            name,
            2,
            at=(0.0, 0.0),
            vector=(0.0, -at.load),
            label=load,
            level=7,
        ),
        Force(
            "force-push",
            name,
            3,
            at=(0.0, 0.0),
            vector=(at.push, 0.0),
            label=push,
            level=7,
        ),
        Force(
            "reaction-edge",
            name,
            4,
            at=at.edge,
            vector=at.contact,
            role="reaction",
            label=Label((f"*{{N}} = {words.force(at.normal)}", "from the edge"), "tail", tone="reaction"),
            level=7,
        ),
    ]


def _triangle(words: LedgeWording, view: View) -> list[Item]:
    at, name = words.at, view.name
    assert view.newtons_per_mm is not None
    real = 1.0 / view.newtons_per_mm / view.scale  # real millimetres of the view for one newton
    foot = (0.0, -at.load * real)
    corner = (at.push * real, foot[1])
    forces: tuple[tuple[str, Point, Point, Label | None], ...] = (
        (
            "force-load-again",
            (0.0, 0.0),
            (0.0, -at.load),
            Label((f"*{{F|0}} = {words.force(at.load)}",), "right", tone="load"),
        ),
        ("force-push-again", foot, (at.push, 0.0), Label((f"*{{P}} = {words.force(at.push)}",), "below", tone="load")),
        ("reaction-edge-again", corner, at.contact, None),
    )
    items: list[Item] = [
        Force(
            label_name,
            name,
            6,
            at=start,
            vector=vector,
            role="reaction" if label_name.startswith("reaction") else "applied",
            tip_at_point=False,
            label=label,
            level=5,
        )
        for label_name, start, vector, label in forces
    ]
    lines = (
        f"{{P}}/{{F|0}} = tan {{θ}} = {words.slope}:",
        "the friction that a driven wheel needs",
        "to climb by itself",
    )
    middle = (corner[0] / 2, foot[1] / 2)
    beside = Label((f"*{{N}} = {words.force(at.normal)}",), "left", middle, "reaction", nudge=(-1.0, 3.2))
    items.append(Note("label-edge-again", name, 6, label=beside))
    left = view.origin[0] - 62.0
    high, low = view.origin[1] + 9.0, view.on_sheet(foot)[1] - 16.0
    items.append(Words("words-triangle", name, 6, at_sheet=(left, high), lines=(f"*{view.heading}",)))
    items.append(Words("words-friction", name, 6, at_sheet=(left, low), lines=lines, size=2.3, tone="soft"))
    return items

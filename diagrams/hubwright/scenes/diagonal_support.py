"""A vehicle on two diagonal wheels, from above: how far its centre of mass lies off the line, and what a third takes.

The view stands with the front up: y to the left and x forward of the front axle, in real millimetres.
"""

from dataclasses import dataclass
from typing import Literal

from hubwright.mechanics.slope import DiagonalSupport as Support
from hubwright.quantities import format_quantity
from hubwright.results.footing import diagonal_result
from hubwright.results.model import CaseResult, Results
from hubwright.results.weighing import standing_body
from hubwright.scenes.case_choice import case_of
from hubwright.scenes.scales import drawing_scale
from hubwright.scenes.vocabulary import (
    ClosedBody,
    Column,
    Dot,
    Item,
    KeyEntry,
    Label,
    Line,
    Normal,
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
from hubwright.scenes.wheel_end_parts.outlines import rounded
from hubwright.setup.model import TwoWheel

_WIDTH, _FOOT = 310.0, 30.0
_MIDDLE, _TALL = 96.0, 104.0
_LEFT, _RIGHT, _WORDS = 56.0, 138.0, 206.0
_NOTHING = 1e-6


@dataclass(frozen=True)
class OnTwo:
    """The vehicle's wheels and centre of mass from above [mm], and what stands on each wheel [N]."""

    supported: tuple[str, str]
    places: dict[str, Point]
    centre: Point
    height: float
    weight: float
    found: Support

    @classmethod
    def of(cls, results: Results, state: CaseResult) -> "OnTwo":
        """Return the support of a two-wheel case, with the third wheel that it leans on."""
        case = results.setup.case(state.name)
        assert isinstance(case, TwoWheel)
        body = standing_body(results.setup)
        places = {name: (float(at.y) * 1e3, float(at.x) * 1e3) for name, at in body.points.items()}
        front, rear = case.supported.split("+")
        found = diagonal_result(results, case.supported)
        centre = float(body.centre.left) * 1e3, -float(body.centre.behind) * 1e3
        height, weight = float(body.centre.height) * 1e3, sum(float(load) for load in found.loads.values())
        return cls((front, rear), places, centre, height, weight, found)

    def load(self, name: str) -> float:
        """Return what stands on a wheel."""
        return float(self.found.loads[name])

    @property
    def third(self) -> str | None:
        """Return the wheel that the vehicle leans on; None where the centre of mass is on the line."""
        others = [name for name in self.places if name not in self.supported]
        name = max(others, key=self.load)
        return name if self.load(name) > _NOTHING * self.weight else None

    @property
    def off_line(self) -> float:
        """Return how far the centre of mass lies off the line."""
        return abs(float(self.found.off_line)) * 1e3

    @property
    def foot(self) -> Point:
        """Return the point of the line nearest to the centre of mass."""
        (ay, ax), (by, bx) = (self.places[name] for name in self.supported)
        dy, dx = by - ay, bx - ax
        share = ((self.centre[0] - ay) * dy + (self.centre[1] - ax) * dx) / (dy * dy + dx * dx)
        return ay + share * dy, ax + share * dx

    def closed(self) -> ClosedBody:
        """Return the free body: weight, and the road under every wheel."""
        wheels = tuple(
            (f"reaction-{name}", (0.0, 0.0, self.load(name)), (x / 1e3, y / 1e3, 0.0))
            for name, (y, x) in self.places.items()
        )
        y, x = self.centre
        weight = ("force-weight", (0.0, 0.0, -self.weight), (x / 1e3, y / 1e3, self.height / 1e3))
        return ClosedBody(forces=(weight, *wheels))


@dataclass(frozen=True)
class DiagonalWording:
    """The sentences of a vehicle on two diagonal wheels."""

    on: OnTwo
    units: Units

    def force(self, newtons: float) -> str:
        """Return a force as shown."""
        return format_quantity(newtons, "force", self.units)

    def length(self, millimetres: float) -> str:
        """Return a length as shown."""
        return format_quantity(millimetres / 1e3, "small length", self.units)

    @property
    def share(self) -> str:
        """Return the third wheel's share of the weight as shown."""
        return format_quantity(float(self.on.found.third_share), "percent", self.units)

    @property
    def tilt(self) -> str:
        """Return the tilt that brings the centre of mass over the line."""
        return format_quantity(float(self.on.found.tipping_angle), "angle", self.units)

    @property
    def pair(self) -> str:
        """Return the two wheels in words."""
        return " and ".join(_plain(name) for name in self.on.supported)

    def title(self) -> str:
        """Return the title, made from the lever and the third wheel's load."""
        on = self.on
        if on.third is None:
            return f"On the {self.pair} wheel: the centre of mass lies over the line between them"
        return (
            f"On the {self.pair} wheel: the centre of mass lies {self.length(on.off_line)} off the line, "
            f"the {_plain(on.third)} wheel takes {self.force(on.load(on.third))}"
        )

    def caption(self) -> str:
        """Return what is drawn, with what it leaves out."""
        return (
            "From above, front up; level, rigid and at rest. A vehicle tips well before a static angle: springs, "
            "movement and soft ground are left out. Not a driving limit."
        )

    def description(self) -> str:
        """Return the text alternative."""
        on = self.on
        two = "; ".join(f"the {_plain(name)} wheel carries {self.force(on.load(name))}" for name in on.supported)
        third = (
            "No third wheel is needed."
            if on.third is None
            else f"The {_plain(on.third)} wheel takes {self.force(on.load(on.third))}, {self.share} of the weight."
        )
        return (
            f"A vehicle from above on two diagonal wheels: {two}. Its centre of mass lies "
            f"{self.length(on.off_line)} off the line between them. {third} "
            f"Tilted by {self.tilt} it would stand over the line; it goes over well before that."
        )

    def steps(self) -> tuple[Step, ...]:
        """Return how the figure is built up."""
        on = self.on
        last = (
            "Nothing is left for a third wheel."
            if on.third is None
            else f"The {_plain(on.third)} wheel takes {self.force(on.load(on.third))}, {self.share} of the weight."
        )
        return (
            Step("Look from above", "Four wheels, and the line between the two that carry."),
            Step("Place the centre of mass", f"The whole {self.force(on.weight)} act there."),
            Step("Measure its lever", f"It lies {self.length(on.off_line)} off the line."),
            Step("Find what holds it", last),
        )


def diagonal_support(results: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of a vehicle on two diagonal wheels and what it leans on."""
    state = case_of(results, case, ("two_wheel",), "a vehicle on two diagonal wheels")
    on = OnTwo.of(results, state)
    words = DiagonalWording(on, units)
    radius, width = (results.wheel_geometry.free_diameter * 500.0, results.wheel_geometry.section_width * 1e3)
    base = max(x for _, x in on.places.values()) - min(x for _, x in on.places.values())
    scale, ratio = drawing_scale(base + 2.6 * radius, _TALL)
    rear = min(x for _, x in on.places.values())
    view = View("above", (_MIDDLE, _FOOT + 8.0 + (1.3 * radius - rear) * scale), scale, mirrored=True)
    top = view.on_sheet((0.0, 1.3 * radius))[1]
    items: list[Item] = [
        *_seen(on, radius, width, view),
        *_lines(on, view),
        *_centre(words, view),
        *_lever(words, view),
        *_wheels(words, view),
        *_told(words, top),
    ]
    low, high = _FOOT + 4.0, top + 8.0
    return Scene(
        name="diagonal-support",
        title=words.title(),
        caption=words.caption(),
        description=words.description(),
        units=units,
        size=(_WIDTH, top + 14.0),
        views=(view,),
        items=tuple(items),
        steps=words.steps(),
        columns=(Column("left", _LEFT, low, high), Column("right", _RIGHT, low, high)),
        scale_bars=(ScaleBar(view.name, "length", f"Vehicle {ratio}"),),
        key=(KeyEntry("load", "weight, away from you"), KeyEntry("reaction", "road, toward you")),
        body=on.closed(),
    )


def _plain(name: str) -> str:
    front, side = name.split("_")
    return f"{side} {front}"


def _seen(on: OnTwo, radius: float, width: float, view: View) -> list[Item]:
    """Return body, axles and wheels from above; what carries nothing is pale."""
    ys = [abs(y) for y, _ in on.places.values()]
    xs = [x for _, x in on.places.values()]
    half, front, rear = max(ys) + 0.1 * width, max(xs) + 1.28 * radius, min(xs) - 1.28 * radius
    ring = rounded([(half, rear), (half, front), (-half, front), (-half, rear)], 0.16 * half, closed=True)
    body = tuple((float(y), float(x)) for y, x in ring)
    items: list[Item] = [Part("part-body", view.name, rings=(body,), material="body", outline=0.35)]
    for name, (y, x) in on.places.items():
        a, b = width / 2, radius
        corners = [(y + a, x - b), (y + a, x + b), (y - a, x + b), (y - a, x - b)]
        tire = tuple((float(p), float(q)) for p, q in rounded(corners, 0.3 * width, closed=True))
        carries = on.load(name) > _NOTHING * on.weight
        items.append(
            Part(
                f"part-{name}",
                view.name,
                rings=(tire,),
                material="rubber" if carries else "ghost",
                outline=0.3,
                level=1,
            )
        )
    return items


def _lines(on: OnTwo, view: View) -> list[Item]:
    ends = tuple(on.places[name] for name in on.supported)
    return [Line("support-line", view.name, points=ends, style="outline", tone="reaction", width=0.5, level=2)]


def _centre(words: DiagonalWording, view: View) -> list[Item]:
    on = words.on
    label = Label((f"*{{W}} = {words.force(on.weight)}", "at the centre of mass"), _side(on), tone="load")
    return [Normal("force-weight", view.name, 2, at=on.centre, newtons=-on.weight, label=label, level=8)]


def _side(on: OnTwo) -> Literal["left column", "right column"]:
    """Return the side away from the line on which words about the centre of mass stand."""
    return "left column" if on.centre[0] >= on.foot[0] else "right column"


def _lever(words: DiagonalWording, view: View) -> list[Item]:
    on = words.on
    middle = (on.centre[0] + on.foot[0]) / 2, (on.centre[1] + on.foot[1]) / 2
    other: Literal["left column", "right column"] = "right column" if _side(on) == "left column" else "left column"
    label = Label((f"*{{d}} = {words.length(on.off_line)}", "off the line"), other, anchor=middle)
    return [
        Line("lever", view.name, 3, points=(on.centre, on.foot), style="outline", width=0.35, level=4),
        Dot("foot", view.name, 3, at=on.foot, radius=0.7, level=5),
        Note("label-lever", view.name, 3, label=label),
    ]


def _wheels(words: DiagonalWording, view: View) -> list[Item]:
    on = words.on
    items: list[Item] = []
    for name, at in on.places.items():
        side: Literal["left column", "right column"] = "left column" if at[0] > 0 else "right column"
        load = on.load(name) if on.load(name) > _NOTHING * on.weight else 0.0
        lines = (f"*{words.force(load)}", _plain(name)) if load else ("nothing", _plain(name))
        label = Label(lines, side, anchor=at, tone="reaction" if load else "soft")

        items.append(
            Normal(f"reaction-{name}", view.name, 4, at=at, newtons=load, role="reaction", label=label, level=8)
        )
    return items


def _told(words: DiagonalWording, top: float) -> list[Item]:
    on = words.on
    heading = "*Nothing is left over" if on.third is None else f"*{words.share} of the weight on a third wheel"
    lines = (
        f"Tilted by {words.tilt} away from it, the",
        "centre of mass would stand over the",
        "line, and the vehicle goes over to the",
        "fourth wheel. It tips well before this",
        "static angle. Not a limit to drive to.",
    )
    at = (_WORDS, top - 14.0)
    return [
        Words("words-third", "", 4, at_sheet=at, lines=(heading,), size=2.7),
        Words("words-tilt", "", 4, at_sheet=(at[0], at[1] - 6.5), lines=lines, size=2.4, tone="soft"),
    ]

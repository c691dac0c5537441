"""A vehicle on two diagonal wheels: where wheels and centre of mass stand, what each wheel carries, and its words.

Real millimetres: y to the left and x forward of the front axle; newtons.
"""

import math
from dataclasses import dataclass

from hubwright.mechanics.slope import DiagonalSupport as Support
from hubwright.quantities import format_quantity, format_sums
from hubwright.results.footing import diagonal_result
from hubwright.results.model import CaseResult, Results
from hubwright.results.weighing import standing_body
from hubwright.scenes.shown import Shown
from hubwright.scenes.vocabulary import ClosedBody, Point, Step, Units
from hubwright.setup.model import TwoWheel

NOTHING = 1e-6  # of the weight: what a wheel carries more than


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
        return name if self.load(name) > NOTHING * self.weight else None

    @property
    def off_line(self) -> float:
        """Return how far the centre of mass lies off the line."""
        return abs(float(self.found.off_line)) * 1e3

    def across(self, place: Point) -> float:
        """Return how far a place lies from the line of support, to its left positive [mm]."""
        (ay, ax), (by, bx) = (self.places[name] for name in self.supported)
        dy, dx = ay - by, ax - bx
        return ((place[0] - by) * dx - (place[1] - bx) * dy) / math.hypot(dy, dx)

    @property
    def third_lever(self) -> float:
        """Return how far the third wheel stands from the line, to its left positive [mm]; zero without one."""
        return 0.0 if self.third is None else self.across(self.places[self.third])

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
class DiagonalWording(Shown):
    """The sentences of a vehicle on two diagonal wheels."""

    on: OnTwo
    units: Units

    def wheel_forces(self) -> dict[str, str]:
        """Return what each wheel that carries something carries, so shown that all make the weight."""
        return self._told()[0]

    def line_force(self) -> str:
        """Return what the two wheels carry together, so shown that the third wheel makes it the weight."""
        return self._told()[1]

    def _told(self) -> tuple[dict[str, str], str]:
        """Return what the wheels and what the line carry, the third wheel alike in both sums."""
        loads = {name: self.on.load(name) for name in self.on.places}
        carrying = {name: load for name, load in loads.items() if load > NOTHING * self.on.weight}
        third = 0.0 if self.on.third is None else self.on.load(self.on.third)
        wheels, line = format_sums(
            [list(carrying.values()), [self.on.weight - third, third]],
            "force",
            self.units,
        )
        return dict(zip(carrying, wheels, strict=True)), line[0]

    @property
    def third_force(self) -> str:
        """Return what the third wheel takes, nothing without one."""
        return "" if self.on.third is None else self.wheel_forces()[self.on.third]

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
        return " and ".join(plain_name(name) for name in self.on.supported)

    @property
    def third_lever(self) -> str:
        """Return how far the third wheel stands from the line, as shown."""
        return format_quantity(abs(self.on.third_lever) / 1e3, "vehicle length", self.units)

    @property
    def rule(self) -> str:
        """Return how the third wheel's part comes about."""
        return f"Its part of the weight is {self.length(self.on.off_line)} over {self.third_lever}."

    def title(self) -> str:
        """Return the title, made from the lever and the third wheel's load."""
        on = self.on
        if on.third is None:
            return f"On the {self.pair} wheel: the centre of mass lies over the line between them"
        return (
            f"On the {self.pair} wheel: the centre of mass lies {self.length(on.off_line)} off the line, "
            f"the {plain_name(on.third)} wheel takes {self.third_force}"
        )

    def caption(self) -> str:
        """Return what is drawn, with what it leaves out."""
        return (
            "From above, front up, with the lever off the line enlarged, and along the line, which joins the two "
            "wheels; level, rigid and at rest. A dot in a ring points at you, a cross away. A vehicle tips well before "
            "a static angle: springs, movement and soft ground are left out. Not a driving limit."
        )

    def description(self) -> str:
        """Return the text alternative."""
        on = self.on
        told = self.wheel_forces()
        two = "; ".join(f"the {plain_name(name)} wheel carries {told[name]}" for name in on.supported)
        third = (
            "No third wheel is needed."
            if on.third is None
            else f"The {plain_name(on.third)} wheel takes {self.third_force}, {self.share} of the weight."
        )
        tilted = f"{self.rule} Tilted by {self.tilt} it would stand over the line; it goes over well before that."
        return (
            f"A vehicle from above on two diagonal wheels: {two}, together {self.line_force()}. Its centre of mass "
            f"lies {self.length(on.off_line)} off the line between them. {third} "
            f"{'It goes over at the smallest cause.' if on.third is None else tilted}"
        )

    def steps(self) -> tuple[Step, ...]:
        """Return how the figure is built up."""
        on = self.on
        last, tilt = "Nothing is left for a third wheel.", "It stands on an edge: the smallest cause decides."
        if on.third is not None:
            taken = f"{self.third_force}, {self.share} of the weight"
            last = f"The {plain_name(on.third)} wheel takes {taken}. {self.rule}"
            tilt = f"Tilted by {self.tilt} away from it, the centre of mass stands over the line."
        return (
            Step("Look from above", "Four wheels, and the line between the two that carry.", "isolate"),
            Step("Place the centre of mass", f"The whole {self.force(on.weight)} act there.", "loads"),
            Step(
                "Let the wheels push back",
                f"Two carry it{'' if on.third is None else ', and a third holds what is left'}.",
                "reactions",
            ),
            Step("Measure its lever", f"It lies {self.length(on.off_line)} off the line. {last}", "dimensions"),
            Step("Tilt it until nothing holds it", f"{tilt} It goes over well before this static angle.", "solve"),
        )


def plain_name(name: str) -> str:
    """Return the words for a wheel: "left front"."""
    front, side = name.split("_")
    return f"{side} {front}"

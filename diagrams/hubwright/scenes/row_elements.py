"""What every ball or roller of a row carries in a case, at its place, and what all of them push the outer ring with.

Newtons, radians; x forward, y to the left, z up. Places are counted from straight up toward the front.
"""

import math
from dataclasses import dataclass

from hubwright.errors import MissingDataError
from hubwright.results.bearings import missing_dimensions
from hubwright.results.life import CaseLife, Life
from hubwright.results.model import Results, Vector

_NOTHING = 1e-9


@dataclass(frozen=True)
class Element:
    """One ball or roller: its place, what it carries and its contact angle under that load."""

    place: float
    load: float
    angle: float

    @property
    def outward(self) -> tuple[float, float]:
        """The way from the axis to the element: forward, up."""
        return math.sin(self.place), math.cos(self.place)


@dataclass(frozen=True)
class RowElementsDrawn:
    """One row as it stands in a case."""

    name: str  # "outboard" or "inboard"
    elements: tuple[Element, ...]
    push: Vector  # of all elements on the outer ring
    pressure: float  # of the most loaded [Pa]
    margin: float  # its dent margin

    @property
    def worst(self) -> Element:
        """The most loaded element."""
        return max(self.elements, key=lambda element: element.load)

    @property
    def unloaded(self) -> bool:
        """Whether the row carries nothing."""
        return self.worst.load <= _NOTHING


def life_of_case(results: Results, case: str, what: str) -> CaseLife:
    """Return the life of a case; refuse a bearing of which the file says too little."""
    return life_known(results, what).cases[case]


def life_known(results: Results, what: str) -> Life:
    """Return the lives of a setup; refuse a bearing of which the file says too little."""
    if results.life is None:
        raise MissingDataError(result=what, missing=missing_dimensions(results.setup.bearing))
    return results.life


def rows_drawn(results: Results, life: CaseLife) -> tuple[RowElementsDrawn, RowElementsDrawn]:
    """Return the outboard and the inboard row of a case.

    The model turns a stub axle's case half round the axis, so that its inner rings seem to turn: what it calls straight
    up stands straight down. The outer ring is pushed outward at every element, whichever ring turns.
    """
    outer_turns = results.setup.bearing.turning_ring == "outer"
    rows = []
    for name in ("outboard", "inboard"):
        solved = life.outboard if name == "outboard" else life.inboard
        count = len(solved.load)
        elements = tuple(
            Element((2 * math.pi * number / count + (math.pi if outer_turns else 0.0)) % (2 * math.pi), load, angle)
            for number, (load, angle) in enumerate(zip(solved.load, solved.angle, strict=True))
        )
        # back to back, the outboard row pushes its outer ring toward the vehicle
        sideways = -results.side if name == "outboard" else results.side
        push = Vector(
            math.fsum(each.load * math.cos(each.angle) * each.outward[0] for each in elements),
            sideways * math.fsum(each.load * math.sin(each.angle) for each in elements),
            math.fsum(each.load * math.cos(each.angle) * each.outward[1] for each in elements),
        )
        pressure = getattr(life.peak_contact_pressure, name)
        rows.append(RowElementsDrawn(name, elements, push, pressure, getattr(life.static_safety, name)))
    return rows[0], rows[1]

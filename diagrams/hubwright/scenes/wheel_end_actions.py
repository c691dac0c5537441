"""What acts on the turning parts, gathered for views of the whole body: one force per cause, each where it acts.

Axes of ISO 8855 from the bearing centre, newtons, metres. The two weights are one at their common centre of mass, the
bearing answers with one force and one moment at its centre, the caliper's force stands at the caliper.
"""

import math
from dataclasses import dataclass

from hubwright.results.model import CaseResult, FreeBody, Results, SingleForce, Vector
from hubwright.scenes.vocabulary import ClosedBody, Role

ZERO = Vector(0.0, 0.0, 0.0)


@dataclass(frozen=True)
class Action:
    """A force with its point; `couple` is what it carries beside it [N·m]."""

    name: str
    symbol: str
    what: str  # what acts on what
    role: Role
    force: Vector
    point: Vector
    couple: Vector = ZERO

    @property
    def moment(self) -> Vector:
        """Moment about the bearing centre, the couple included [N·m]."""
        r, F, M = self.point, self.force, self.couple
        return Vector(
            r.y * F.z - r.z * F.y + M.x,
            r.z * F.x - r.x * F.z + M.y,
            r.x * F.y - r.y * F.x + M.z,
        )


@dataclass(frozen=True)
class Actions:
    """Everything on the body of one case."""

    contact: Action
    weight: Action
    inertia: Action
    caliper: Action | None  # at its true place: it holds the wheel about the axis as well
    shaft: Action | None  # else the couple about the axis, of a shaft or of a brake whose place is not given
    bearing: Action

    @property
    def all(self) -> tuple[Action, ...]:
        """All of them, applied ones first."""
        some = (self.contact, self.weight, self.inertia, self.caliper, self.shaft, self.bearing)
        return tuple(action for action in some if action is not None)

    def closed(self) -> ClosedBody:
        """Return the free body for the check that every drawing makes."""
        return ClosedBody(
            tuple((a.name, a.force.components, a.point.components) for a in self.all if a.force != ZERO),
            tuple((f"{a.name}-couple", a.couple.components) for a in self.all if a.couple != ZERO),
        )


def actions_of(results: Results, state: CaseResult) -> Actions:
    """Return what acts on the turning parts in one case."""
    body = state.free_body
    contact = body.force("contact")
    caliper = _caliper(results, body)
    couple = next((c.moment for c in body.couples if c.name in ("shaft", "brake")), ZERO)
    shaft = None
    if caliper is None and abs(couple.y) > 1e-9 * body.largest_component:
        shaft = Action("shaft", "{M|y}", _taker(state), "reaction", ZERO, ZERO, couple)
    surface = "edge on tire" if state.kind == "ledge" else "road on tire"
    return Actions(
        contact=Action("contact", "F", surface, "applied", contact.force, contact.point),
        weight=_together(body, "weight", "W", "weight"),
        inertia=_together(body, "inertia", "m a", "inertia"),
        caliper=caliper,
        shaft=shaft,
        bearing=_bearing(body),
    )


def _taker(state: CaseResult) -> str:
    return "brake on hub" if state.kind == "braking" else "shaft on hub"


def _caliper(results: Results, body: FreeBody) -> Action | None:
    """Return the caliper's force at the middle of its pads, where it needs no couple beside it."""
    single, brake = body.force("caliper"), results.setup.brake
    if brake is None or single.force == ZERO:
        return None
    radius, angle = brake.effective_radius, brake.caliper_position
    at = Vector(radius * math.sin(angle), single.point.y, radius * math.cos(angle))
    return Action("caliper", "K", "caliper on disc", "applied", single.force, at)


def _together(body: FreeBody, start: str, symbol: str, what: str) -> Action:
    """Return the resultant of parallel forces at their common centre: both are shares of one mass each."""
    parts = [single for single in body.forces if single.name.startswith(start)]
    force = _sum([single.force for single in parts])
    weights = [single.force.length for single in parts]
    total = sum(weights)
    if total == 0:
        return Action(start, symbol, what, "applied", ZERO, parts[0].point)
    y = sum(weight * single.point.y for weight, single in zip(weights, parts, strict=True)) / total
    return Action(start, symbol, what, "applied", force, Vector(0.0, y, 0.0))


def _bearing(body: FreeBody) -> Action:
    """Return the sum of the single reactions, moved to the bearing centre with their moment."""
    singles: list[SingleForce] = [single for single in body.forces if single.kind == "reaction"]
    moments = [Action("", "", "", "reaction", single.force, single.point).moment for single in singles]
    moments += [couple.moment for couple in body.couples if couple.name == "bearing"]
    force = _sum([single.force for single in singles])
    return Action("bearing", "B", "bearing on hub", "reaction", force, ZERO, _sum(moments))


def _sum(vectors: list[Vector]) -> Vector:
    # adding zero turns a negative zero into zero
    return Vector(*(sum(getattr(vector, axis) for vector in vectors) + 0.0 for axis in "xyz"))

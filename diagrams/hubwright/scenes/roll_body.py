"""The whole vehicle or trailer seen from the rear: what pulls at its centre of mass and how the road holds it.

Millimetres: y to the left from the middle plane, z up from the road; newtons. On a side slope the axes tilt with the
vehicle.
"""

import math
from dataclasses import dataclass

from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.mechanics.load_transfer import StandingTrailer
from hubwright.results.model import CaseResult, Results, Vector
from hubwright.results.weighing import standing_body
from hubwright.scenes.vocabulary import ClosedBody, Point
from hubwright.setup.model import SideSlope

ZERO = Vector(0.0, 0.0, 0.0)


@dataclass(frozen=True)
class Wheel:
    """A wheel on the road: its place, what the road does to it, and what stood on it on level ground [N]."""

    name: str
    y: float
    x: float
    force: Vector
    standing: float
    pressing: float  # the part of gravity that presses on the road

    @property
    def gained(self) -> float:
        """What was moved to this wheel: beyond its share of what presses on the road [N]."""
        return self.force.z - self.standing * self.pressing


@dataclass(frozen=True)
class RollBody:
    """All wheels, weight and inertia at the centre of all masses, and a trailer's coupling."""

    wheels: tuple[Wheel, ...]
    centre: tuple[float, float, float]
    weight: Vector
    inertia: Vector
    coupling: Vector = ZERO
    coupling_x: float = 0.0
    coupling_couple: Vector = ZERO

    def of_side(self, left: bool) -> tuple[Wheel, ...]:
        """Return the wheels of one side."""
        return tuple(wheel for wheel in self.wheels if (wheel.y > 0) == left)

    def of_axle(self, axle: str) -> tuple[Wheel, ...]:
        """Return the wheels of one axle."""
        return tuple(wheel for wheel in self.wheels if wheel.name.startswith(axle))

    def summed(self, left: bool) -> tuple[Point, float]:
        """Return the force on one side's wheels together, and where across the vehicle it acts."""
        wheels = self.of_side(left)
        z = sum(wheel.force.z for wheel in wheels)
        y = sum(wheel.force.z * wheel.y for wheel in wheels) / z
        return (sum(wheel.force.y for wheel in wheels), z), y

    def moved(self, left: bool = True) -> float:
        """Return what is moved to the wheels of one side [N]."""
        return sum(wheel.gained for wheel in self.of_side(left))

    def closed(self) -> ClosedBody:
        """Return the free body: every wheel by itself, as the views of the axles show them."""
        forces: list[tuple[str, Vector, tuple[float, float, float]]] = [
            (f"reaction-{wheel.name}", wheel.force, (wheel.x, wheel.y, 0.0)) for wheel in self.wheels
        ]
        forces.append(("force-weight", self.weight, self.centre))
        forces.append(("force-inertia", self.inertia, self.centre))
        forces.append(("reaction-coupling", self.coupling, (self.coupling_x, 0.0, 0.0)))
        couple = self.coupling_couple
        return ClosedBody(
            tuple((name, f.components, (at[0] / 1e3, at[1] / 1e3, at[2] / 1e3)) for name, f, at in forces if f != ZERO),
            () if couple == ZERO else (("coupling", couple.components),),
        )


def roll_body(results: Results, state: CaseResult) -> RollBody:
    """Return what acts on the whole vehicle or trailer in a case without braking or driving."""
    body, weight = standing_body(results.setup), results.weight
    gravity = _gravity(results, state)
    pressing = -gravity.z / STANDARD_GRAVITY
    a, mass = state.acceleration, weight.total_mass
    points = body.points
    wheels = tuple(
        Wheel(name, float(points[name].y) * 1e3, float(points[name].x) * 1e3, force, weight.wheel_loads[name], pressing)
        for name, force in state.wheel_contacts.items()
    )
    coupling, coupling_x, couple = ZERO, 0.0, ZERO
    if isinstance(body, StandingTrailer):
        upright = weight.axle_loads["coupling"] * pressing
        # every contact leans alike, and so does the coupling's force (`load_cases`)
        lean = wheels[0].force.y / wheels[0].force.z
        coupling, coupling_x = Vector(0.0, lean * upright, upright), float(points["coupling"].x) * 1e3
        couple = Vector(float(body.loads.coupling_roll) * pressing, 0.0, 0.0)
    return RollBody(
        wheels,
        (-weight.centre_of_mass_behind * 1e3, float(body.centre.left) * 1e3, weight.centre_of_mass_height * 1e3),
        Vector(0.0, mass * gravity.y, mass * gravity.z),
        Vector(0.0 - mass * a.x, 0.0 - mass * a.y, 0.0),
        coupling,
        coupling_x,
        couple,
    )


def _gravity(results: Results, state: CaseResult) -> Vector:
    """Return gravity in the vehicle's axes, which tilt with it [m/s²]."""
    case = results.setup.case(state.name)
    if not isinstance(case, SideSlope):
        return Vector(0.0, 0.0, -STANDARD_GRAVITY)
    downhill = -1.0 if case.uphill == "left" else 1.0  # on the y axis, to the left
    return Vector(0.0, downhill * STANDARD_GRAVITY * math.sin(case.angle), -STANDARD_GRAVITY * math.cos(case.angle))

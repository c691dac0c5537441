"""The weights of a vehicle or trailer at their places and what holds it up, as a plane free body seen from the left.

Millimetres: x forward from the front axle (a trailer: from its axle), z up from the road. Newtons, kilograms.
"""

import math
from dataclasses import dataclass
from typing import Literal

from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.results.model import CaseResult, Results
from hubwright.scenes.vehicle_outline import COUPLING_HEIGHT
from hubwright.scenes.vocabulary import ClosedBody, Point
from hubwright.setup.model import SideSlope, VehicleChassis


@dataclass(frozen=True)
class VehicleLoad:
    """A mass at its place [kg, mm]; below zero for lighter wheels than those that were weighed."""

    name: str
    text: str
    mass: float
    x: float
    z: float
    kind: Literal["vehicle", "gear", "wheels"]


@dataclass(frozen=True)
class Rest:
    """What holds the vehicle up: an axle or a trailer's coupling; force along x and z [N], place [mm].

    The part along x acts at the road, the part along z at the height `z`.
    """

    name: str
    text: str
    x: float
    force: Point
    z: float = 0.0


@dataclass(frozen=True)
class PlaneBody:
    """All loads, the front and rear rests, and inertia at the common centre of mass, in one case."""

    loads: tuple[VehicleLoad, ...]
    rests: tuple[Rest, Rest]
    inertia: Point  # N
    centre: Point  # mm
    pressing: float  # the part of gravity that presses on the road: on a side slope less than one

    @property
    def own(self) -> VehicleLoad:
        """The vehicle without gear."""
        return self.loads[0]

    @property
    def added(self) -> tuple[VehicleLoad, ...]:
        """Gear, and what other tires and wheels add."""
        return self.loads[1:]

    @property
    def gear(self) -> tuple[VehicleLoad, ...]:
        """What is carried."""
        return tuple(load for load in self.loads if load.kind == "gear")

    def weight(self, load: VehicleLoad) -> float:
        """Return how strongly a load pulls down, square to the road [N]."""
        return load.mass * STANDARD_GRAVITY * self.pressing

    def shares(self, load: VehicleLoad) -> tuple[tuple[Rest, float], tuple[Rest, float]]:
        """Return what each rest gets of a mass by the law of the lever [kg]."""
        first, last = self.rests
        share = (load.x - last.x) / (first.x - last.x)
        return (first, load.mass * share), (last, load.mass * (1 - share))

    @property
    def headline(self) -> VehicleLoad | None:
        """The item to speak of: the one whose lever adds most beyond its own weight, else the heaviest."""

        def rank(load: VehicleLoad) -> tuple[float, float]:
            most = max(share for _, share in self.shares(load))
            return max(most - load.mass, 0.0), load.mass

        return max(self.gear, key=rank, default=None)

    def closed(self) -> ClosedBody:
        """Return the free body, summed from the forces that the figure draws [N, m]."""
        forces: list[tuple[str, Point, Point]] = [
            (force_name(load), (0.0, -self.weight(load)), (load.x, load.z)) for load in self.loads
        ]
        for rest in self.rests:
            forces.append((f"reaction-{rest.name}", (0.0, rest.force[1]), (rest.x, rest.z)))
            forces.append((f"reaction-{rest.name}-along", (rest.force[0], 0.0), (rest.x, 0.0)))
        forces.append(("force-inertia", self.inertia, self.centre))
        return ClosedBody(
            tuple((name, (f[0], 0.0, f[1]), (at[0] / 1e3, 0.0, at[1] / 1e3)) for name, f, at in forces if any(f))
        )


def plane_body(results: Results, state: CaseResult) -> PlaneBody:
    """Return what acts on the whole vehicle or trailer in one case, in the plane of the side view."""
    case = results.setup.case(state.name)
    pressing = math.cos(case.angle) if isinstance(case, SideSlope) else 1.0
    weight = results.weight
    return PlaneBody(
        loads=_loads(results),
        rests=_rests(results, state, pressing),
        inertia=(-weight.total_mass * state.acceleration.x + 0.0, 0.0),
        centre=(-weight.centre_of_mass_behind * 1e3, weight.centre_of_mass_height * 1e3),
        pressing=pressing,
    )


def force_name(load: VehicleLoad) -> str:
    """Return the name under which a load's arrow is drawn."""
    return "force-weight" if load.kind == "vehicle" else f"force-{load.name}"


def axle_places(results: Results) -> dict[str, float]:
    """Return where the axles stand, from the front backward [mm]."""
    chassis = results.setup.chassis
    if isinstance(chassis, VehicleChassis):
        return {"front": 0.0, "rear": -chassis.wheelbase * 1e3}
    return {"axle": 0.0}


def plain(name: str) -> str:
    """Return a name from a file without the two marks of scene text.

    >>> plain("*Winch {spare}")
    'Winch (spare)'
    """
    return name.replace("{", "(").replace("}", ")").lstrip("*")


def _loads(results: Results) -> tuple[VehicleLoad, ...]:
    setup, chassis = results.setup, results.setup.chassis
    if isinstance(chassis, VehicleChassis):
        mass = chassis.front_axle_mass + chassis.rear_axle_mass
        place = -chassis.wheelbase * chassis.rear_axle_mass / mass * 1e3
    else:
        mass = chassis.axle_mass + chassis.coupling_mass
        place = chassis.coupling_ahead_of_axle * chassis.coupling_mass / mass * 1e3
    height = chassis.centre_of_mass_height * 1e3
    loads = [VehicleLoad("vehicle", setup.kind, mass, place, height, "vehicle")]
    for number, item in enumerate(setup.gear, start=1):
        place, height = -item.behind * 1e3, item.above_ground * 1e3
        loads.append(VehicleLoad(f"gear-{number}", plain(item.name), item.mass, place, height, "gear"))
    if change := round(setup.corner_mass_change, 9):
        radius = results.wheel_geometry.free_diameter / 2 * 1e3
        for name, x in axle_places(results).items():
            loads.append(VehicleLoad(f"wheels-{name}", "tires and wheels", 2 * change, x, radius, "wheels"))
    return tuple(loads)


def _rests(results: Results, state: CaseResult, pressing: float) -> tuple[Rest, Rest]:
    chassis, contacts = results.setup.chassis, state.wheel_contacts

    def summed(*names: str) -> Point:
        return sum(contacts[name].x for name in names), sum(contacts[name].z for name in names)

    if isinstance(chassis, VehicleChassis):
        return (
            Rest("front", "front axle", 0.0, summed("front_left", "front_right")),
            Rest("rear", "rear axle", -chassis.wheelbase * 1e3, summed("rear_left", "rear_right")),
        )
    # braking presses on the coupling and pulls it back as it would a wheel, at the height of the road (`load_cases`)
    weight, ahead = results.weight, chassis.coupling_ahead_of_axle
    pitch = -weight.total_mass * state.acceleration.x * weight.centre_of_mass_height
    coupling = weight.axle_loads["coupling"] * pressing + pitch / ahead
    along = coupling * state.acceleration.x / STANDARD_GRAVITY
    return (
        Rest("coupling", "coupling", ahead * 1e3, (along, coupling), COUPLING_HEIGHT),
        Rest("axle", "axle", 0.0, summed("left", "right")),
    )

"""A vehicle or trailer on its wheels, and what a pitching or rolling moment does to the wheel loads.

Axes of the vehicle, ISO 8855, from the road under the middle of the front axle (a trailer: of its
axle): x forward, y to the left, z up. Metres, newtons, N·m.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from hubwright.mechanics.constants import Value
from hubwright.mechanics.trailer_weight import TrailerLoads
from hubwright.mechanics.vector import Vector
from hubwright.mechanics.weight import MassPoint, VehicleLoads

Supports: TypeAlias = dict[str, Value]  # load by the name of a wheel, or "coupling" [N]


@dataclass(frozen=True)
class StandingVehicle:
    """A vehicle with two axles: standing loads, all masses together, and its dimensions."""

    loads: VehicleLoads
    centre: MassPoint
    wheelbase: Value
    front_track: Value
    rear_track: Value
    front_roll_share: Value

    @property
    def supports(self) -> Supports:
        """Standing load of every wheel [N]."""
        return self.loads.wheels

    @property
    def points(self) -> dict[str, Vector]:
        """Where every wheel meets the road [m]."""
        return {
            "front_left": Vector(0.0, self.front_track / 2, 0.0),
            "front_right": Vector(0.0, -self.front_track / 2, 0.0),
            "rear_left": Vector(-self.wheelbase, self.rear_track / 2, 0.0),
            "rear_right": Vector(-self.wheelbase, -self.rear_track / 2, 0.0),
        }

    def pitched(self, moment: Value) -> Supports:
        """Return what a moment tipping the vehicle forward adds to each wheel: M/L per axle, half per wheel."""
        change = moment / self.wheelbase / 2
        return {"front_left": change, "front_right": change, "rear_left": -change, "rear_right": -change}

    def rolled(self, moment: Value) -> Supports:
        """Return what a moment tipping the vehicle to the left adds to each wheel: an axle's share over its track."""
        front = self.front_roll_share * moment / self.front_track
        rear = (1 - self.front_roll_share) * moment / self.rear_track
        return {"front_left": front, "front_right": -front, "rear_left": rear, "rear_right": -rear}


@dataclass(frozen=True)
class StandingTrailer:
    """A trailer with one axle: standing loads, all masses together, and its dimensions."""

    loads: TrailerLoads
    centre: MassPoint
    coupling_ahead_of_axle: Value
    track: Value

    @property
    def supports(self) -> Supports:
        """Standing load of every wheel and of the coupling [N]."""
        return {**self.loads.wheels, "coupling": self.loads.coupling}

    @property
    def points(self) -> dict[str, Vector]:
        """Where the wheels meet the road, and the coupling, taken at the height of the road [m]."""
        return {
            "left": Vector(0.0, self.track / 2, 0.0),
            "right": Vector(0.0, -self.track / 2, 0.0),
            "coupling": Vector(self.coupling_ahead_of_axle, 0.0, 0.0),
        }

    def pitched(self, moment: Value) -> Supports:
        """Return what a moment tipping the trailer forward moves from the axle to the coupling."""
        change = moment / self.coupling_ahead_of_axle
        return {"left": -change / 2, "right": -change / 2, "coupling": change}

    def rolled(self, moment: Value) -> Supports:
        """Return what a moment tipping the trailer to the left adds to each wheel; the coupling takes no roll."""
        change = moment / self.track
        return {"left": change, "right": -change, "coupling": 0.0}


Standing: TypeAlias = StandingVehicle | StandingTrailer

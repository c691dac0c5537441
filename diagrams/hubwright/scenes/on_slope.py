"""How a vehicle or trailer stands across a slope, turned so that plumb is up, and where the line of its weight passes.

Millimetres: y to the left and z up from the road under the middle of the track; newtons; radians.
"""

import math
from dataclasses import dataclass
from typing import Literal

from hubwright.results.footing import SlopeResult, slope_result
from hubwright.results.model import CaseResult, Results
from hubwright.scenes.roll_body import RollBody, roll_body
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Point
from hubwright.setup.model import SideSlope

_NOTHING = 1e-6  # of the weight


@dataclass(frozen=True)
class OnSlope:
    """A vehicle across a slope, turned so that plumb is up: places [mm], forces [N], angles [rad]."""

    name: str
    kind: str  # vehicle or trailer
    angle: float
    downhill: int  # +1: the left side
    body: RollBody
    footing: SlopeResult

    @classmethod
    def of(cls, results: Results, state: CaseResult) -> "OnSlope":
        """Return the vehicle of a side slope's case."""
        case = results.setup.case(state.name)
        assert isinstance(case, SideSlope)
        setup, body = results.setup, roll_body(results, state)
        downhill = 1 if body.weight.y > 0 else -1
        return cls(plain(setup.name), setup.kind, case.angle, downhill, body, slope_result(results))

    @property
    def wheels(self) -> str:
        """What the weight's line must stay inside of: a trailer goes over about the line from coupling to wheel."""
        return "line from coupling to downhill wheel" if self.kind == "trailer" else "downhill wheels"

    @property
    def edge(self) -> str:
        """The line about which it would go over."""
        return self.wheels if self.kind == "trailer" else "line between the downhill wheels"

    @property
    def way(self) -> Literal["left", "right"]:
        """Return the downhill side."""
        return "left" if self.downhill > 0 else "right"

    @property
    def uphill(self) -> Literal["left", "right"]:
        """Return the other side."""
        return "right" if self.downhill > 0 else "left"

    @property
    def tipping(self) -> float:
        """Return the static slope at which the weight's line meets the downhill contact."""
        return self.footing.tipping[self.way]

    def turned(self, point: Point) -> Point:
        """Return a point or vector of the vehicle's axes in the plumb ones."""
        sine, cosine = self.downhill * math.sin(self.angle), math.cos(self.angle)
        return point[0] * cosine + point[1] * sine, point[1] * cosine - point[0] * sine

    @property
    def centre(self) -> Point:
        """Return the centre of mass."""
        return self.turned((self.body.centre[1], self.body.centre[2]))

    @property
    def foot(self) -> Point:
        """Return where the weight's line meets the road."""
        _, y, z = self.body.centre
        return self.turned((y + self.downhill * z * math.tan(self.angle), 0.0))

    @property
    def contact(self) -> Point:
        """Return the downhill contact beside the centre of mass, of unlike tracks between the two."""
        _, y, z = self.body.centre
        return self.turned((y + self.downhill * z * math.tan(self.tipping), 0.0))

    @property
    def spare(self) -> float:
        """Return how far, level, the weight's line passes inside the downhill contact."""
        return self.downhill * (self.contact[0] - self.foot[0])

    @property
    def held(self) -> float:
        """Return with how much a trailer's coupling holds it up; nothing where there is none [N]."""
        coupling = self.body.coupling
        force = math.copysign(math.hypot(coupling.y, coupling.z), coupling.z)
        return force if abs(force) > _NOTHING * abs(self.body.weight.z) else 0.0

    @property
    def first_lifting(self) -> tuple[str, float] | None:
        """Return the wheel that lifts first and at about which angle, where the uphill wheels can differ."""
        lifting = {wheel: angle for wheel, angle in self.footing.lifting.items() if wheel.endswith(self.uphill)}
        name = min(lifting, key=lifting.__getitem__)
        return (" ".join(reversed(name.split("_"))), lifting[name]) if len(lifting) > 1 else None

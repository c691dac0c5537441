"""What solving a setup gives: wheel geometry, weight, cases with their free bodies, bearing.

SI units; axes of ISO 8855: x forward, y left, z up. Points are measured from the bearing centre.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING, Literal

from hubwright.errors import MissingDataError
from hubwright.setup.model import Input, Setup

if TYPE_CHECKING:
    from hubwright.results.draws import Span
    from hubwright.results.life import Life

Wheel = Literal["front_left", "front_right", "rear_left", "rear_right", "left", "right"]
Kind = Literal["standing", "braking", "driving", "cornering", "side_slope", "two_wheel", "ledge", "drop"]

# ledge; drop, which has `tire_on_rim` too: yes or no, without a unit
EXTRA_UNITS: Mapping[str, str] = {
    "contact_normal": "N",
    "push": "N",
    "peak_tire_force": "N",
    "peak_bearing_force": "N",
    "impact_factor": "1",
}


@dataclass(frozen=True)
class Vector:
    """A vector in the axes of the vehicle: plain numbers, unlike the mechanics' own, which also takes arrays."""

    x: float
    y: float
    z: float

    @property
    def components(self) -> tuple[float, float, float]:
        """The three components, in the unit of the vector."""
        return self.x, self.y, self.z

    @property
    def length(self) -> float:
        """The length, in the unit of the vector."""
        return math.hypot(self.x, self.y, self.z)


@dataclass(frozen=True)
class SingleForce:
    """One force on the turning parts [N] and the point at which it acts [m].

    Applied: contact, weight_wheel, weight_hub, inertia_wheel, inertia_hub, caliper. Reactions: row_outboard,
    row_inboard, axial; where the rows' places are not known, one reaction `bearing` at the centre.
    """

    name: str
    kind: Literal["applied", "reaction"]
    force: Vector
    point: Vector


@dataclass(frozen=True)
class SingleCouple:
    """One couple on the turning parts [N*m]: `shaft` or `brake` about y, not carried by the bearing; or `bearing`."""

    name: str
    kind: Literal["applied", "reaction"]
    moment: Vector


@dataclass(frozen=True)
class FreeBody:
    """Everything that acts on the turning parts, cut at the rolling elements; zero forces included."""

    forces: tuple[SingleForce, ...]
    couples: tuple[SingleCouple, ...]

    def force(self, name: str) -> SingleForce:
        """Return the single force of that name."""
        return next(single for single in self.forces if single.name == name)

    @property
    def largest_component(self) -> float:
        """The largest component of any force [N]: the measure for what is nothing beside it."""
        return max(abs(part) for single in self.forces for part in single.force.components)


@dataclass(frozen=True)
class Rows:
    """A value for each row of the bearing."""

    outboard: float
    inboard: float


@dataclass(frozen=True)
class RowVectors:
    """The load from the turning parts to each row, across the axis [N]."""

    outboard: Vector
    inboard: Vector


@dataclass(frozen=True)
class Closure:
    """What a free body leaves over; force [N], moment [N*m]."""

    force: float
    moment: float


@dataclass(frozen=True)
class CaseResult:
    """The loads of one case at one wheel end."""

    name: str
    kind: Kind
    contact_force: Vector
    bearing_force: Vector
    bearing_moment: Vector
    row_load: RowVectors | None  # None: the effective spread is not known
    row_radial_load: Rows | None
    closure: Closure
    free_body: FreeBody
    acceleration: Vector  # of the vehicle; in a drop of the wheel [m/s2]
    wheel_contacts: Mapping[str, Vector]  # contact force by wheel name: of every wheel; in a drop of this one alone
    extras: Mapping[str, float | bool] = field(default_factory=dict)  # what only this kind has, see EXTRA_UNITS

    @property
    def hanging(self) -> bool:
        """Return whether the wheel hangs free of the road, but for rounding."""
        return self.contact_force.z <= 1e-9 * abs(self.bearing_force.z)


@dataclass(frozen=True)
class WheelGeometry:
    """Sizes and places of tire and wheel [m]."""

    free_diameter: float
    section_width: float
    loaded_radius: float
    load_line_offset: float
    backspacing: float
    section_height: float
    rim_diameter: float
    rim_width: float
    offset: float
    rolling_circumference: float
    tire_deflection: float


@dataclass(frozen=True)
class Weight:
    """Loads on axles and wheels, standing [N]; a trailer has axle and coupling. Gear and heavier wheels included."""

    axle_loads: Mapping[str, float]  # front, rear; or axle, coupling
    wheel_loads: Mapping[str, float]  # front_left ...; or left, right
    bare_axle_loads: Mapping[str, float]  # as measured, before gear and heavier wheels
    total_mass: float  # kg
    centre_of_mass_height: float  # m
    centre_of_mass_behind: float  # m behind the front axle, of a trailer behind its axle (negative: ahead)
    equal_share: float  # total weight over the number of wheels: the rule of thumb


@dataclass(frozen=True)
class BearingResult:
    """Ratings of the whole two-row bearing and the distance between its pressure centres."""

    dynamic_rating: float | None  # N
    static_rating: float | None  # N
    effective_spread: float | None  # m; None: the file does not say enough of a tapered pair


@dataclass(frozen=True, eq=False)
class Results:
    """A solved setup, seen at one wheel end; alike only to itself, so that what is made of it can be kept for it."""

    setup: Setup
    wheel: Wheel
    inputs: Mapping[str, Input]
    weight: Weight
    wheel_geometry: WheelGeometry
    cases: Mapping[str, CaseResult]
    bearing: BearingResult
    left_out: Mapping[str, str] = field(default_factory=dict)  # cases of the file that are not solved, and why

    @property
    def side(self) -> int:
        """Return +1 at a left wheel and -1 at a right one: the sign of outboard on the y axis."""
        return 1 if self.wheel.endswith("left") else -1

    @cached_property
    def life(self) -> Life | None:
        """Lives of the bearing, computed when first asked for; None where the file says too little of it."""
        from hubwright.results.life import life_of  # which needs what stands here

        try:
            return life_of(self)
        except MissingDataError:
            return None

    @cached_property
    def spans(self) -> Mapping[str, Span]:
        """Spans of what the inputs' ranges move, computed when first asked for; by the names of `solve`'s JSON."""
        from hubwright.results.draws import spans_of  # which needs what stands here

        return spans_of(self)

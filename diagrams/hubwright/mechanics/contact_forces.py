"""What one load case says: the contact force of every wheel, what acts on every mass, and whether it can be.

Axes of the vehicle, ISO 8855: x forward, y to the left, z up. Newtons, radians, m/s².
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

import numpy as np

from hubwright.mechanics.constants import STANDARD_GRAVITY, Flag, Value
from hubwright.mechanics.load_transfer import Standing, Supports
from hubwright.mechanics.vector import Vector

Kind = Literal["standing", "braking", "driving", "cornering", "side_slope", "two_wheel", "ledge", "drop"]

DOWN = Vector(0.0, 0.0, -STANDARD_GRAVITY)
COUPLING = "coupling"


@dataclass(frozen=True)
class LedgeContact:
    """How a wheel meets the edge of a ledge.

    `angle` is that of the contact before straight down under the axle [rad], `normal` the force along
    the line to the wheel's centre, `push` what the vehicle must push with [N]; `needed_friction` is
    what a driven wheel needs to climb by itself [1].
    """

    angle: Value
    normal: Value
    push: Value
    needed_friction: Value


@dataclass(frozen=True)
class LoadCase:
    """The forces of the road on all wheels in one case, and what acts on every mass.

    `gravity` and `acceleration` of the vehicle in m/s². `failures` says in words what would keep the
    case from standing, with a flag (element by element for arrays) that is true where it happens.
    """

    kind: Kind
    contact_force: Mapping[str, Vector]
    gravity: Vector
    acceleration: Vector
    failures: Mapping[str, Flag]
    coupling_force: Vector | None = None
    ledge: Mapping[str, LedgeContact] = field(default_factory=dict)

    @property
    def stands(self) -> Flag:
        """Whether the case can be at all; element by element for arrays."""
        result: Flag = True
        for flag in self.failures.values():
            result = result & np.logical_not(flag)
        return result

    @property
    def reason(self) -> str:
        """What keeps the case from standing, in words; empty when it stands everywhere."""
        return ", ".join(text for text, flag in self.failures.items() if np.any(flag))


def directed_case(
    kind: Kind,
    loads: Supports,
    direction: Vector,
    *,
    acceleration: Vector | None = None,
    gravity: Vector = DOWN,
    failures: Mapping[str, Flag] | None = None,
) -> LoadCase:
    """Return a case in which every contact force has the same direction, F_z times `direction`."""
    wheels = wheels_only(loads)
    return LoadCase(
        kind=kind,
        contact_force={name: direction * load for name, load in wheels.items()},
        gravity=gravity,
        acceleration=Vector() if acceleration is None else acceleration,
        failures={**(failures or {}), **lifted(wheels)},
        coupling_force=coupling(loads, direction),
    )


def coupling(loads: Supports, direction: Vector) -> Vector | None:
    """Return the force on a trailer's coupling [N]; None for a vehicle."""
    return direction * loads[COUPLING] if COUPLING in loads else None


def wheels_only(loads: Supports) -> Supports:
    """Return the loads of the wheels: a coupling may well be pulled up, and no road acts on it."""
    return {name: load for name, load in loads.items() if name != COUPLING}


def lifted(wheels: Supports) -> dict[str, Flag]:
    """Return for every wheel the words and the flag of its lifting off."""
    return {f"the {name.replace('_', ' ')} wheel lifts off": load < 0 for name, load in wheels.items()}


def summed(loads: Supports, changes: Supports) -> Supports:
    """Return the loads with what is added to each [N]."""
    return {name: load + changes[name] for name, load in loads.items()}


def mass_times_g(body: Standing) -> Value:
    """Return the weight of a vehicle or trailer with everything on it [N]."""
    return body.centre.mass * STANDARD_GRAVITY

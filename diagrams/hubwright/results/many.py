"""Solves a setup whose values are arrays, one entry for each of its variants: draws, or mixtures of two setups.

The same mechanics as `solve`, in one call for all variants and cases. SI units; values go by the dotted names of
`solve`'s JSON.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from hubwright.errors import CaseError
from hubwright.mechanics.bearing_life import duty_life, life_distance
from hubwright.mechanics.constants import Value
from hubwright.mechanics.free_body import WheelEnd
from hubwright.mechanics.load_transfer import Standing
from hubwright.mechanics.tire_geometry import loaded_radius_is_possible
from hubwright.mechanics.two_row_bearing import NotConvergedError
from hubwright.mechanics.vector import Vector
from hubwright.results.bearings import bearing_values, missing_dimensions
from hubwright.results.drops import solved_drops
from hubwright.results.life import refuse_drops
from hubwright.results.loading import geometry_values, load_case, loaded_radius_of, side_of, wheel_end_of
from hubwright.results.lubrication import MIDDLE, Grease, grease_of
from hubwright.results.model import Wheel
from hubwright.results.wear import Array, Carried, wear
from hubwright.results.weighing import standing_body
from hubwright.setup.model import Drop, Setup

_WHEEL_GEOMETRY = ("free_diameter", "section_width", "loaded_radius", "load_line_offset", "backspacing")


@dataclass(frozen=True)
class Many:
    """What the variants give, by dotted name, one entry for each.

    `stands` is false for a variant in which a case cannot be: a lifted wheel, a slope past tipping. Its values mean
    nothing. `valid` says of each case whether it lies in the range of the life formula.
    """

    values: Mapping[str, Array]
    stands: NDArray[np.bool_]
    valid: Mapping[str, NDArray[np.bool_]]


def solve_many(setup: Setup, wheel: Wheel, number: int, *, cleanliness: Value = MIDDLE, drops: bool = False) -> Many:
    """Return the results of a setup of arrays, each value broadcast to the number of variants.

    Parameters
    ----------
    setup
        The setup, with a number or an array of that length for each of its values.
    wheel
        The wheel looked at.
    number
        Of variants.
    cleanliness
        Place in the band of the grease's contamination class, from 0 to 1.
    drops
        Whether drops are solved too, which takes as long as all the rest; else they are left out.

    Raises
    ------
    CaseError
        Where the rings find no equilibrium, and for a drop in the duty.
    """
    body = standing_body(setup)
    radii = {name: loaded_radius_of(setup, load) for name, load in body.loads.wheels.items()}
    geometry = geometry_values(setup, radii[wheel])
    bearing = bearing_values(setup.bearing)
    values: dict[str, Any] = {f"wheel_geometry.{name}": geometry[name] for name in _WHEEL_GEOMETRY}
    values |= _weights(setup, body)
    values |= {f"bearing.{name}": value for name, value in vars(bearing).items() if value is not None}
    stands = np.ones(number, dtype=bool)
    for name, load in body.loads.wheels.items():
        free_radius = setup.tire.free_diameter / 2
        stands &= (load > 0) & loaded_radius_is_possible(loaded_radius=radii[name], free_radius=free_radius)
    ends: dict[str, WheelEnd] = {}
    fallen = [case.name for case in setup.cases if isinstance(case, Drop)]
    for case in setup.cases:
        if isinstance(case, Drop):
            if not drops or setup.suspension is None:
                continue
            dropped, possible = solved_drops(
                setup, setup.inputs, case, wheel=wheel, standing_load=body.loads.wheels[wheel]
            )
            loads = dropped.load_case
            stands &= possible
            values |= {f"cases.{case.name}.{name}": value for name, value in dropped.extras.items()}
        else:
            loads = load_case(case, body, radii)
        stands &= np.asarray(loads.stands)
        end = wheel_end_of(setup, case, loads, wheel, geometry=geometry, spread=bearing.effective_spread)
        ends[case.name] = end
        start = f"cases.{case.name}"
        values |= _vector(f"{start}.contact_force", loads.contact_force[wheel])
        values |= _vector(f"{start}.bearing_force", end.bearing_force)
        values |= _vector(f"{start}.bearing_moment", end.bearing_moment)
        if bearing.effective_spread is not None:
            values |= _row_loads(start, end)
        if wheel in loads.ledge:
            edge = loads.ledge[wheel]
            values |= {f"{start}.contact_normal": edge.normal, f"{start}.push": edge.push}
    arrays = {name: np.broadcast_to(np.asarray(value, dtype=float), number) for name, value in values.items()}
    if missing_dimensions(setup.bearing):
        return Many(arrays, stands, {})
    lives, valid = _lives(setup, ends, wheel, stands, grease_of(setup, cleanliness=cleanliness))
    for name in fallen:  # a drop is no fatigue cycle
        for what in ("quick", "detailed", "modified", "life_factor.outboard", "life_factor.inboard"):
            lives.pop(f"life.{name}.{what}", None)
    return Many({**arrays, **lives, **_duty(setup, lives, geometry["rolling_circumference"])}, stands, valid)


def _weights(setup: Setup, body: Standing) -> dict[str, Any]:
    axles = ("axle", "coupling") if setup.kind == "trailer" else ("front", "rear")
    ending = "_load" if setup.kind == "trailer" else "_axle_load"
    return {
        **{f"weight.{axle}{ending}": getattr(body.loads, axle) for axle in axles},
        **{f"weight.{name}": load for name, load in body.loads.wheels.items()},
    }


def _vector(name: str, vector: Vector) -> dict[str, Any]:
    return {f"{name}.{axis}": getattr(vector, axis) for axis in "xyz"}


def _row_loads(start: str, end: WheelEnd) -> dict[str, Any]:
    return {
        f"{start}.row_load.outboard.x": end.row_load_outboard.x,
        f"{start}.row_load.outboard.z": end.row_load_outboard.z,
        f"{start}.row_load.inboard.x": end.row_load_inboard.x,
        f"{start}.row_load.inboard.z": end.row_load_inboard.z,
        f"{start}.row_radial_load.outboard": end.row_radial_load_outboard,
        f"{start}.row_radial_load.inboard": end.row_radial_load_inboard,
    }


def _lives(
    setup: Setup, ends: Mapping[str, WheelEnd], wheel: Wheel, stands: NDArray[np.bool_], grease: Grease | None
) -> tuple[dict[str, Array], dict[str, NDArray[np.bool_]]]:
    def by_case(parts: Sequence[Any]) -> Array:
        whole = np.stack([np.broadcast_to(part, stands.shape) for part in parts], axis=-1)
        # what cannot stand may be no number; without load it solves and is left out later
        return np.where(stands[:, np.newaxis], whole, 0.0)

    every = list(ends.values())
    carried = Carried(
        force=Vector(*(by_case([getattr(end.bearing_force, axis) for end in every]) for axis in "xyz")),
        moment=Vector(*(by_case([getattr(end.bearing_moment, axis) for end in every]) for axis in "xyz")),
        outboard=by_case([end.row_radial_load_outboard for end in every]),
        inboard=by_case([end.row_radial_load_inboard for end in every]),
    )
    names = list(ends)
    try:
        worn = wear(setup.bearing, carried, side=side_of(wheel), grease=grease)
    except NotConvergedError as error:
        raise CaseError(case=names[error.case % len(names)], reason=str(error)) from error
    values: dict[str, Array] = {}
    for place, name in enumerate(names):
        start = f"life.{name}"
        values |= {f"{start}.quick": worn.quick[:, place], f"{start}.detailed": worn.detailed[:, place]}
        for row, row_name in enumerate(("outboard", "inboard")):
            values |= {
                f"{start}.largest_ball_load.{row_name}": worn.largest_load[:, place, row],
                f"{start}.peak_contact_pressure.{row_name}": worn.pressure[:, place, row],
                f"{start}.static_safety.{row_name}": worn.margin[:, place, row],
            }
            if worn.life_factor is not None:
                values[f"{start}.life_factor.{row_name}"] = worn.life_factor[:, place, row]
        if worn.modified is not None:
            values[f"{start}.modified"] = worn.modified[:, place]
    return values, {name: worn.valid[:, place] for place, name in enumerate(names)}


def _duty(setup: Setup, lives: Mapping[str, Array], circumference: Any) -> dict[str, Array]:
    if not setup.duty:
        return {}
    refuse_drops(setup.duty, {case.name: case.kind for case in setup.cases})
    found: dict[str, Array] = {}
    for life, name in (("detailed", ""), ("modified", "modified_")):
        alone = [lives[key] for key in (f"life.{part.case}.{life}" for part in setup.duty) if key in lives]
        if len(alone) == len(setup.duty):
            revolutions = duty_life(shares=[part.share for part in setup.duty], lives=alone)
            distance = life_distance(life=revolutions, rolling_circumference=circumference)
            found[f"life.duty.{name}revolutions"] = np.asarray(revolutions)
            found[f"life.duty.{name}distance"] = np.asarray(distance)
    return found

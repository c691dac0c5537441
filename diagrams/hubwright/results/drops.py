"""Drops of a setup's corner: the loads of a drop case and its course over time. SI units."""

import dataclasses
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from hubwright.errors import CaseError, MissingDataError
from hubwright.mechanics.constants import STANDARD_GRAVITY, Flag, Value
from hubwright.mechanics.contact_forces import DOWN, LoadCase
from hubwright.mechanics.impact import (
    RIM_SHARE_OF_SECTION_HEIGHT,
    Landing,
    QuarterCar,
    drop,
    landing,
    tire_on_rim,
)
from hubwright.mechanics.impact_energy import energy_bound, fall_energy
from hubwright.mechanics.ride import corner_frequencies
from hubwright.mechanics.vector import Vector
from hubwright.results.model import Results, Wheel
from hubwright.setup.model import Drop, Input, Setup

Array = NDArray[np.float64]


@dataclass(frozen=True)
class SolvedDrop:
    """The forces at the instant of the largest bearing force, and what a drop's result holds beside them.

    Numbers, or arrays where the corner's values are drawn.
    """

    load_case: LoadCase
    extras: Mapping[str, Value]


@dataclass(frozen=True)
class DropHistory:
    """One drop over time. Travels count downward from the first touch; forces [N], lengths [m], times [s].

    `bearing_force` is upward on the turning parts' side; `rim_force` is what the tire presses with when it
    meets its rim; `peak_time` that of the largest bearing force.
    """

    case: str
    height: float
    time: Array
    tire_force: Array
    bearing_force: Array
    strut_force: Array
    compression: Array
    body_travel: Array
    wheel_travel: Array
    peak_time: float
    peak_tire_force: float
    peak_bearing_force: float
    standing_load: float
    standing_compression: float
    touch_speed: float  # m/s
    fall_energy: float  # J
    energy_bound: float
    rim_force: float
    tire_on_rim: bool
    body_frequency: float  # Hz
    wheel_frequency: float
    car: QuarterCar

    @property
    def impact_factor(self) -> float:
        """Peak tire force over the standing contact force [1]."""
        return self.peak_tire_force / self.standing_load


def quarter_car(setup: Setup, inputs: Mapping[str, Input], *, standing_load: Value, case: str) -> QuarterCar:
    """Return the corner of a wheel with that standing load; what the file does not say comes from its inputs.

    Raises `MissingDataError` without a suspension and `CaseError` where the unsprung mass leaves no body.
    """
    car = _corner(setup, inputs, standing_load, case)
    if np.any(car.sprung_mass <= 0):
        raise CaseError(
            case=case,
            reason=f"the unsprung mass of {np.max(car.unsprung_mass):.0f} kg is all that stands on the wheel; "
            "check 'suspension.unsprung_mass'",
        )
    return car


def solved_drop(
    setup: Setup, inputs: Mapping[str, Input], case: Drop, *, wheel: Wheel, standing_load: float
) -> SolvedDrop:
    """Return the loads of one wheel's drop; raises as `quarter_car` does."""
    car = quarter_car(setup, inputs, standing_load=standing_load, case=case.name)
    return _solved(setup, car, case, wheel, standing_load)


def solved_drops(
    setup: Setup, inputs: Mapping[str, Input], case: Drop, *, wheel: Wheel, standing_load: Value
) -> tuple[SolvedDrop, NDArray[np.bool_]]:
    """Return the loads of one wheel's drop for a setup of arrays, and which of its variants leave a body to drop."""
    car = _corner(setup, inputs, standing_load, case.name)
    stands = np.asarray(car.sprung_mass > 0)
    # a body that is none drops as one of the wheel's own mass, and is left out later
    car = dataclasses.replace(car, sprung_mass=np.where(stands, car.sprung_mass, car.unsprung_mass))
    return _solved(setup, car, case, wheel, standing_load), stands


def _corner(setup: Setup, inputs: Mapping[str, Input], standing_load: Value, case: str) -> QuarterCar:
    suspension = setup.suspension
    if suspension is None:
        raise MissingDataError(
            result=f"the drop '{case}'",
            missing=["suspension"],
            reason="Nothing is estimated for a trailer's springs",
        )

    def value(given: float | None, key: str) -> Any:
        return inputs[key].value if given is None else given

    unsprung = value(suspension.unsprung_mass, "suspension.unsprung_mass")
    if not suspension.unsprung_mass_as_it_stands:
        unsprung = unsprung + setup.corner_mass_change
    return QuarterCar(
        sprung_mass=standing_load / STANDARD_GRAVITY - unsprung,
        unsprung_mass=unsprung,
        turning_mass=setup.tire.mass + setup.wheel.mass + setup.hub.rotating_mass,
        tire_stiffness=value(setup.tire.vertical_stiffness, "tire.vertical_stiffness"),
        wheel_rate=value(suspension.wheel_rate, "suspension.wheel_rate"),
        bump_damping=value(suspension.bump_damping, "suspension.bump_damping"),
        rebound_damping=value(suspension.rebound_damping, "suspension.rebound_damping"),
        droop_travel=suspension.droop_travel,
        bump_travel=suspension.bump_travel,
        bump_stop_stiffness=value(suspension.bump_stop_stiffness, "suspension.bump_stop_stiffness"),
    )


def _solved(setup: Setup, car: QuarterCar, case: Drop, wheel: Wheel, standing_load: Value) -> SolvedDrop:
    landed = landing(car, height=case.height)
    peak = landed.at_peak
    return SolvedDrop(
        LoadCase(
            kind="drop",
            contact_force={wheel: Vector(0.0, 0.0, peak.tire_force)},
            gravity=DOWN,
            # of the wheel: it alone makes the bearing's inertia
            acceleration=Vector(0.0, 0.0, peak.wheel_acceleration),
            failures={},
        ),
        {
            "peak_tire_force": landed.peak_tire_force,
            "peak_bearing_force": landed.peak_bearing_force,
            "impact_factor": landed.peak_tire_force / standing_load,
            "tire_on_rim": np.asarray(_on_rim(setup, landed)),
        },
    )


def drop_history(results: Results, case: str) -> DropHistory:
    """Return the course of a drop case of the file; the reason where it cannot be had."""
    setup, standing_load = results.setup, results.weight.wheel_loads[results.wheel]
    dropped = setup.case(case)
    if not isinstance(dropped, Drop):
        raise CaseError(case=case, reason=f"it is no drop but a case of the kind '{dropped.kind}'")
    height = dropped.height
    car = quarter_car(setup, results.inputs, standing_load=standing_load, case=case)
    landed = drop(car, height=height)
    body, wheel = corner_frequencies(
        sprung_mass=car.sprung_mass,
        unsprung_mass=car.unsprung_mass,
        wheel_rate=car.wheel_rate,
        tire_stiffness=car.tire_stiffness,
    )
    return DropHistory(
        case=case,
        height=height,
        time=landed.time,
        tire_force=landed.tire_force,
        bearing_force=landed.bearing_force,
        strut_force=landed.strut_force,
        compression=landed.compression,
        body_travel=landed.body_travel,
        wheel_travel=landed.wheel_travel,
        peak_time=float(landed.at_peak.time),
        peak_tire_force=float(landed.peak_tire_force),
        peak_bearing_force=float(landed.peak_bearing_force),
        standing_load=standing_load,
        standing_compression=float(car.standing_compression),
        touch_speed=float(landed.wheel_speed[0]),
        fall_energy=float(fall_energy(weight=standing_load, height=height)),
        energy_bound=float(energy_bound(weight=standing_load, stiffness=car.tire_stiffness, height=height)),
        rim_force=float(car.tire_stiffness * RIM_SHARE_OF_SECTION_HEIGHT * setup.tire.section_height),
        tire_on_rim=bool(_on_rim(setup, landed)),
        body_frequency=float(body),
        wheel_frequency=float(wheel),
        car=car,
    )


def _on_rim(setup: Setup, landed: Landing) -> Flag:
    return tire_on_rim(deflection=landed.largest_deflection, section_height=setup.tire.section_height)

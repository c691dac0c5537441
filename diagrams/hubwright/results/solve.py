"""Runs the mechanics on one setup at one wheel end."""

from collections.abc import Mapping

import numpy as np

from hubwright.errors import CaseError, MissingDataError
from hubwright.mechanics import free_body as mechanics
from hubwright.mechanics.constants import Value
from hubwright.mechanics.contact_forces import LoadCase
from hubwright.mechanics.free_body import WheelEnd
from hubwright.mechanics.tire_geometry import loaded_radius_is_possible
from hubwright.mechanics.vector import Vector as MechanicsVector
from hubwright.results.bearings import bearing_result
from hubwright.results.drops import solved_drop
from hubwright.results.loading import geometry_values, load_case, loaded_radius_of, wheel_end_of
from hubwright.results.model import (
    BearingResult,
    CaseResult,
    Closure,
    FreeBody,
    Results,
    Rows,
    RowVectors,
    SingleCouple,
    SingleForce,
    Vector,
    Wheel,
    WheelGeometry,
)
from hubwright.results.weighing import standing_body, weigh
from hubwright.setup.estimates import late_estimates
from hubwright.setup.model import Case, Drop, Input, Setup, Suspension

_NOTHING_SAID = Suspension(None, None, None, 0.0, 0.0, None, None)


def default_wheel(setup: Setup) -> Wheel:
    """Return the left wheel of the hub that the file describes."""
    if setup.kind == "trailer":
        return "left"
    return "rear_left" if setup.wheel_end == "rear" else "front_left"


def described_wheels(setup: Setup) -> tuple[Wheel, ...]:
    """Return the wheels whose hub the file describes."""
    if setup.kind == "trailer":
        return ("left", "right")
    front: tuple[Wheel, ...] = ("front_left", "front_right")
    rear: tuple[Wheel, ...] = ("rear_left", "rear_right")
    return {"front": front, "rear": rear, "both": front + rear}[setup.wheel_end]


def check_wheel(setup: Setup, wheel: str) -> None:
    """Refuse a wheel that the vehicle has not, or whose hub its file does not describe."""
    wheels = weigh(setup).wheel_loads
    if wheel not in wheels:
        raise MissingDataError(
            result=f"the {wheel.replace('_', ' ')} wheel",
            missing=["a wheel of that name"],
            reason=f"{setup.name} has {', '.join(wheels)}",
        )
    if wheel not in described_wheels(setup):
        raise MissingDataError(
            result=f"the {wheel.replace('_', ' ')} hub",
            missing=["wheel_end"],
            reason=f'the file describes the {setup.wheel_end} hub. If both axles carry it, write wheel_end = "both"',
        )


def solve(setup: Setup, wheel: Wheel | None = None) -> Results:
    """Return weights, wheel geometry, every case and the bearing of a setup, seen at one wheel.

    Raises `CaseError` for a case that cannot stand, naming it, and `MissingDataError` for a wheel
    whose hub the file does not describe.
    """
    wheel = wheel or default_wheel(setup)
    check_wheel(setup, wheel)
    weight = weigh(setup)
    body = standing_body(setup)
    radii = {name: _loaded_radius(setup, name, load) for name, load in weight.wheel_loads.items()}
    geometry = _wheel_geometry(setup, radii[wheel])
    bearing = bearing_result(setup.bearing)
    inputs = _inputs(setup, weight.wheel_loads[wheel])
    cases: dict[str, CaseResult] = {}
    left_out: dict[str, str] = {}
    for case in setup.cases:
        extras: Mapping[str, float | bool] = {}
        if isinstance(case, Drop):
            try:
                dropped = solved_drop(setup, inputs, case, wheel=wheel, standing_load=weight.wheel_loads[wheel])
            except MissingDataError as error:
                left_out[case.name] = str(error)
                continue
            loads, extras = dropped.load_case, {name: _plain(value) for name, value in dropped.extras.items()}
        else:
            loads = load_case(case, body, radii)
            if wheel in loads.ledge:
                edge = loads.ledge[wheel]
                extras = {"contact_normal": float(edge.normal), "push": float(edge.push)}
        if not np.all(loads.stands):
            raise CaseError(case=case.name, reason=loads.reason)
        cases[case.name] = _case_result(setup, case, loads, extras, wheel, geometry, bearing)
    return Results(setup, wheel, inputs, weight, geometry, cases, bearing, left_out)


def _inputs(setup: Setup, standing_load: float) -> Mapping[str, Input]:
    """Return the inputs with those that can be estimated only once the wheel's load is known."""
    tire, suspension = setup.tire, setup.suspension or _NOTHING_SAID
    late = late_estimates(
        standing_load=standing_load,
        free_diameter=tire.free_diameter,
        loaded_radius=tire.loaded_radius,
        vertical_stiffness=tire.vertical_stiffness,
        wheel_rate=suspension.wheel_rate,
        bump_damping=suspension.bump_damping,
        rebound_damping=suspension.rebound_damping,
        bump_stop_stiffness=suspension.bump_stop_stiffness,
        unsprung_mass=suspension.unsprung_mass,
        corner_mass_change=setup.corner_mass_change,
        unsprung_mass_as_it_stands=suspension.unsprung_mass_as_it_stands,
    )
    if setup.suspension is None:  # a trailer that says nothing of its springs has none estimated
        late = {key: item for key, item in late.items() if not key.startswith("suspension.")}
    return {**setup.inputs, **late}


def _loaded_radius(setup: Setup, wheel: str, standing_load: float) -> float:
    free_radius = setup.tire.free_diameter / 2
    radius = float(loaded_radius_of(setup, standing_load))
    if not loaded_radius_is_possible(loaded_radius=radius, free_radius=free_radius):
        raise CaseError(
            case="standing",
            reason=f"the loaded radius of the {wheel.replace('_', ' ')} wheel comes to {radius * 1e3:.0f} mm, which a "
            f"tire of {free_radius * 1e3:.0f} mm free radius cannot have; check 'tire.vertical_stiffness'",
        )
    return radius


def _wheel_geometry(setup: Setup, radius: float) -> WheelGeometry:
    return WheelGeometry(**{name: float(value) for name, value in geometry_values(setup, radius).items()})


def _case_result(
    setup: Setup,
    case: Case,
    loads: LoadCase,
    extras: Mapping[str, float | bool],
    wheel: Wheel,
    geometry: WheelGeometry,
    bearing: BearingResult,
) -> CaseResult:
    end = wheel_end_of(setup, case, loads, wheel, geometry=vars(geometry), spread=bearing.effective_spread)
    known = bearing.effective_spread is not None
    free_body = end.body if known else _with_one_reaction(end)
    force, moment = free_body.closure
    return CaseResult(
        name=case.name,
        kind=case.kind,
        contact_force=_floats(loads.contact_force[wheel]),
        bearing_force=_floats(end.bearing_force),
        bearing_moment=_floats(end.bearing_moment),
        row_load=RowVectors(_floats(end.row_load_outboard), _floats(end.row_load_inboard)) if known else None,
        row_radial_load=Rows(float(end.row_radial_load_outboard), float(end.row_radial_load_inboard))
        if known
        else None,
        closure=Closure(float(force), float(moment)),
        free_body=_float_body(free_body),
        acceleration=_floats(loads.acceleration),
        wheel_contacts={name: _floats(contact) for name, contact in loads.contact_force.items()},
        extras=extras,
    )


def _with_one_reaction(end: WheelEnd) -> mechanics.FreeBody:
    """Return the free body with the bearing's whole reaction at its centre, for rows whose places are not known."""
    rows = ("row_outboard", "row_inboard", "axial")
    B, M = end.bearing_force, end.bearing_moment
    return mechanics.FreeBody(
        forces=(
            *(single for single in end.body.forces if single.name not in rows),
            mechanics.SingleForce("bearing", "reaction", -B, MechanicsVector()),
        ),
        couples=(
            *end.body.couples,
            mechanics.SingleCouple("bearing", "reaction", MechanicsVector(-M.x, 0.0, -M.z)),
        ),
    )


def _plain(value: Value) -> float | bool:
    return bool(value) if np.asarray(value).dtype == np.bool_ else float(value)


def _floats(vector: MechanicsVector) -> Vector:
    # adding zero turns a negative zero, which would print as "−0", into zero
    return Vector(float(vector.x) + 0.0, float(vector.y) + 0.0, float(vector.z) + 0.0)


def _float_body(body: mechanics.FreeBody) -> FreeBody:
    return FreeBody(
        tuple(SingleForce(s.name, s.kind, _floats(s.force), _floats(s.point)) for s in body.forces),
        tuple(SingleCouple(c.name, c.kind, _floats(c.moment)) for c in body.couples),
    )

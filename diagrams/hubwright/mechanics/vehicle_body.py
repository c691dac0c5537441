"""The free body of the whole vehicle or trailer in a load case, and which equations the case leaves out.

Axes of the vehicle, ISO 8855, from the road under the middle of the front axle (a trailer: of its
axle): x forward, y to the left, z up. Metres, newtons, N·m.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

import numpy as np

from hubwright.mechanics.constants import Value
from hubwright.mechanics.contact_forces import DOWN, LoadCase
from hubwright.mechanics.free_body import FreeBody, SingleCouple, SingleForce
from hubwright.mechanics.load_transfer import Standing, StandingTrailer
from hubwright.mechanics.vector import Vector

Equation = Literal["force_x", "force_y", "force_z", "roll", "pitch", "yaw"]


def equations_left_out(case: LoadCase) -> tuple[Equation, ...]:
    """Return the equations of equilibrium that a case does not claim to satisfy.

    A figure of the whole vehicle must say them.

        two_wheel: roll;  driving: yaw;  ledge: pitch and yaw

    Parameters
    ----------
    case
        A load case [N].

    Returns
    -------
    tuple[Equation, ...]
        Names of the equations; none for most cases [1].

    Notes
    -----
    On two diagonal wheels the driver balances the roll that is left over when the axles differ. One
    driven axle and a centre of mass beside the centre line would yaw the vehicle. The ledge's push is
    taken to come from wheels that are not at the ledge, without a load transfer of its own.

    Examples
    --------
    >>> from hubwright.mechanics.contact_forces import DOWN
    >>> equations_left_out(LoadCase("two_wheel", {}, DOWN, Vector(), {}))
    ('roll',)

    References
    ----------
    The model's own limits.
    """
    left_out: dict[str, tuple[Equation, ...]] = {"two_wheel": ("roll",), "driving": ("yaw",), "ledge": ("pitch", "yaw")}
    return left_out.get(case.kind, ())


def vehicle_body(
    case: LoadCase,
    body: Standing,
    *,
    ledge_wheel: str | None = None,
    loaded_radius: Mapping[str, Value] | None = None,
) -> FreeBody:
    """Return every force on the whole vehicle or trailer: the road at each wheel, weight and inertia.

    The loads of all wheels must hold the weight; this is where it can be seen.

        Σ F + M (g − a) = 0,    Σ r × F + r_M × M (g − a) = 0

    Parameters
    ----------
    case
        A load case of this body [N].
    body
        Vehicle or trailer on its wheels [N, m].
    ledge_wheel
        In a ledge case, the one wheel that is at the ledge; the others stand.
    loaded_radius
        In a ledge case, loaded radius of each wheel [m].

    Returns
    -------
    FreeBody
        Forces named after wheels, "coupling", "weight", "inertia" and, at a ledge, "push" [N].

    Raises
    ------
    ValueError
        For a ledge case without `ledge_wheel` and `loaded_radius`.

    Notes
    -----
    Closes but for `equations_left_out`. A trailer's coupling is taken at the height of the road, and
    holds roll and yaw of its part of items beside the centre line.

    Examples
    --------
    >>> from hubwright.mechanics.load_cases import standing
    >>> from hubwright.mechanics.load_transfer import StandingVehicle
    >>> from hubwright.mechanics.weight import MassPoint, vehicle_loads
    >>> mass = MassPoint(1800.0, behind=1.0, left=0.0, height=0.6)
    >>> loads = vehicle_loads([mass], wheelbase=2.5, front_track=1.5, rear_track=1.5)
    >>> car = StandingVehicle(loads, mass, 2.5, 1.5, 1.5, 0.5)
    >>> force, moment = vehicle_body(standing(car), car).closure
    >>> bool(force < 1e-9), bool(moment < 1e-9)
    (True, True)

    References
    ----------
    Equilibrium; quasi-static, after d'Alembert.
    """
    points = body.points
    contacts = dict(case.contact_force)
    forces: list[SingleForce] = []
    if case.kind == "ledge":
        if ledge_wheel is None or loaded_radius is None:
            raise ValueError("the whole vehicle at a ledge needs ledge_wheel and loaded_radius")
        edge, radius = case.ledge[ledge_wheel], loaded_radius[ledge_wheel]
        contacts |= {name: Vector(0.0, 0.0, force.z) for name, force in contacts.items() if name != ledge_wheel}
        points[ledge_wheel] += Vector(radius * np.sin(edge.angle), 0.0, radius * (1 - np.cos(edge.angle)))
        forces.append(SingleForce("push", "applied", Vector(edge.push, 0.0, 0.0), Vector()))
    forces += [SingleForce(name, "reaction", force, points[name]) for name, force in contacts.items()]

    couples: tuple[SingleCouple, ...] = ()
    if isinstance(body, StandingTrailer) and case.coupling_force is not None:
        forces.append(SingleForce("coupling", "reaction", case.coupling_force, points["coupling"]))
        # the lever of the coupling's part of items beside the centre line, with its vertical and its
        # braking force; on a slope less of gravity presses down
        pressing, pulling = case.gravity.z / DOWN.z, case.acceleration.x / DOWN.z
        roll = body.loads.coupling_roll
        couples = (SingleCouple("coupling", "reaction", Vector(roll * pressing, 0.0, roll * pulling)),)

    centre = Vector(0.0 - body.centre.behind, body.centre.left, body.centre.height)
    forces.append(SingleForce("weight", "applied", body.centre.mass * case.gravity, centre))
    forces.append(SingleForce("inertia", "applied", Vector() - body.centre.mass * case.acceleration, centre))
    return FreeBody(tuple(forces), couples)

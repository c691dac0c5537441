"""What the road does to each wheel in every quasi-static load case.

Contact forces are those of the road on the tire, in the axes of the vehicle, ISO 8855: x forward,
y to the left, z up; on a side slope the axes tilt with the vehicle. Newtons, metres, radians.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

import numpy as np

from hubwright.mechanics.constants import STANDARD_GRAVITY, Flag, Value
from hubwright.mechanics.contact_forces import (
    DOWN,
    LedgeContact,
    LoadCase,
    coupling,
    directed_case,
    lifted,
    mass_times_g,
    summed,
    wheels_only,
)
from hubwright.mechanics.load_transfer import Standing, StandingVehicle, Supports
from hubwright.mechanics.vector import Vector

Side = Literal["left", "right"]
SIGN: dict[Side, float] = {"left": 1.0, "right": -1.0}
Driven = Literal["front", "rear", "all"]
Diagonal = Literal["front_left+rear_right", "front_right+rear_left"]


def standing(body: Standing) -> LoadCase:
    """Return the contact forces of a vehicle or trailer that stands on level ground.

    What every other case is compared with.

        F_z = F₀

    Parameters
    ----------
    body
        Vehicle or trailer on its wheels [N, m].

    Returns
    -------
    LoadCase
        Contact forces [N].

    Notes
    -----
    No toe, no camber: straight up only.

    Examples
    --------
    >>> from hubwright.mechanics.load_transfer import StandingVehicle
    >>> from hubwright.mechanics.weight import MassPoint, VehicleLoads
    >>> car = StandingVehicle(
    ...     VehicleLoads(5000.0, 5000.0, 4000.0, 4000.0), MassPoint(18000 / 9.80665, 1.25, 0.0, 0.5), 2.5, 1.5, 1.5, 0.5
    ... )
    >>> standing(car).contact_force["front_left"]
    Vector(x=0.0, y=0.0, z=5000.0)

    References
    ----------
    Law of the lever, see `weight`.
    """
    return directed_case("standing", body.supports, Vector(0.0, 0.0, 1.0))


def braking(body: Standing, *, braking_g: Value) -> LoadCase:
    """Return the contact forces while braking.

    Load moves from the rear axle to the front, on a trailer from the axle to the coupling.

        ΔF = M b g h/L,    F_x = −b F_z

    Parameters
    ----------
    body
        Vehicle or trailer on its wheels [N, m].
    braking_g
        b, deceleration over g [1].

    Returns
    -------
    LoadCase
        Contact forces [N].

    Notes
    -----
    All wheels use the same friction; on a trailer the coupling too, at the height of the road.

    Examples
    --------
    >>> from hubwright.mechanics.load_transfer import StandingVehicle
    >>> from hubwright.mechanics.weight import MassPoint, VehicleLoads
    >>> car = StandingVehicle(
    ...     VehicleLoads(5000.0, 5000.0, 4000.0, 4000.0), MassPoint(18000 / 9.80665, 1.25, 0.0, 0.5), 2.5, 1.5, 1.5, 0.5
    ... )
    >>> force = braking(car, braking_g=0.5).contact_force["front_left"]  # 18000·0.5·0.5/2.5/2 = 900 more
    >>> round(force.x, 3), round(force.z, 3)
    (-2950.0, 5900.0)

    References
    ----------
    Equilibrium about the contact line of one axle; load transfer as in any text on vehicle dynamics.
    """
    loads = summed(body.supports, body.pitched(mass_times_g(body) * braking_g * body.centre.height))
    return directed_case(
        "braking",
        loads,
        Vector(-braking_g, 0.0, 1.0),
        acceleration=Vector(-braking_g * STANDARD_GRAVITY, 0.0, 0.0),
    )


def driving(body: StandingVehicle, *, driving_g: Value, driven: Driven) -> LoadCase:
    """Return the contact forces while accelerating.

    Load moves from the front axle to the rear; only driven wheels push.

        ΔF = M d g h/L,    F_x = M d g/2 per driven wheel,  or d F_z with all driven

    Parameters
    ----------
    body
        Vehicle on its wheels [N, m].
    driving_g
        d, acceleration over g [1].
    driven
        Which axle drives: "front", "rear" or "all".

    Returns
    -------
    LoadCase
        Contact forces [N].

    Notes
    -----
    With one axle driven, a centre of mass beside the centre line would yaw the vehicle; left out.

    Examples
    --------
    >>> from hubwright.mechanics.load_transfer import StandingVehicle
    >>> from hubwright.mechanics.weight import MassPoint, VehicleLoads
    >>> car = StandingVehicle(
    ...     VehicleLoads(5000.0, 5000.0, 4000.0, 4000.0), MassPoint(18000 / 9.80665, 1.25, 0.0, 0.5), 2.5, 1.5, 1.5, 0.5
    ... )
    >>> force = driving(car, driving_g=0.2, driven="rear").contact_force["rear_left"]
    >>> round(force.x, 3), round(force.z, 3)  # 18000·0.2/2;  4000 + 18000·0.2·0.5/2.5/2
    (1800.0, 4360.0)

    References
    ----------
    Equilibrium about the contact line of one axle.
    """
    weight = mass_times_g(body)
    loads = summed(body.supports, body.pitched(-weight * driving_g * body.centre.height))
    each = weight * driving_g / 2
    pushes: Supports = dict.fromkeys(loads, 0.0 * each)
    if driven == "all":
        pushes = {name: driving_g * load for name, load in loads.items()}
    elif driven == "front":
        pushes |= {"front_left": each, "front_right": each}
    else:
        pushes |= {"rear_left": each, "rear_right": each}
    return LoadCase(
        kind="driving",
        contact_force={name: Vector(pushes[name], 0.0, load) for name, load in loads.items()},
        gravity=DOWN,
        acceleration=Vector(driving_g * STANDARD_GRAVITY, 0.0, 0.0),
        failures=lifted(loads),
    )


def cornering(body: Standing, *, lateral_g: Value, toward: Side) -> LoadCase:
    """Return the contact forces in a steady corner.

    Load moves to the outer wheels; each axle takes its share of the roll over its own track.

        ΔF_front = M n g h · share/t_F,    ΔF_rear = M n g h (1 − share)/t_R,    |F_y| = n F_z

    Parameters
    ----------
    body
        Vehicle or trailer on its wheels [N, m].
    lateral_g
        n, lateral acceleration over g [1].
    toward
        Where the corner turns to; the road pushes the tires that way.

    Returns
    -------
    LoadCase
        Contact forces [N].

    Notes
    -----
    Every wheel uses the same friction. Body roll and the shift of the contact patch are left out.

    Examples
    --------
    >>> from hubwright.mechanics.load_transfer import StandingVehicle
    >>> from hubwright.mechanics.weight import MassPoint, VehicleLoads
    >>> car = StandingVehicle(
    ...     VehicleLoads(5000.0, 5000.0, 4000.0, 4000.0), MassPoint(18000 / 9.80665, 1.25, 0.0, 0.5), 2.5, 1.5, 1.5, 0.5
    ... )
    >>> force = cornering(car, lateral_g=0.4, toward="right").contact_force["front_left"]
    >>> round(force.y, 3), round(force.z, 3)  # 5000 + 18000·0.4·0.5·0.5/1.5 = 6200
    (-2480.0, 6200.0)

    References
    ----------
    Equilibrium about the centre line of the contact points.
    """
    sign = SIGN[toward]
    loads = summed(body.supports, body.rolled(-sign * mass_times_g(body) * lateral_g * body.centre.height))
    return directed_case(
        "cornering",
        loads,
        Vector(0.0, sign * lateral_g, 1.0),
        acceleration=Vector(0.0, sign * lateral_g * STANDARD_GRAVITY, 0.0),
    )


def side_slope(body: Standing, *, angle: Value, uphill: Side) -> LoadCase:
    """Return the contact forces of a vehicle or trailer that stands across a slope.

    Load moves to the downhill wheels, and the road holds every tire by a force up the slope.

        F_z = F₀ cos φ ± M g sin φ · h · share/t,    |F_y| = F_z tan φ

    Parameters
    ----------
    body
        Vehicle or trailer on its wheels [N, m].
    angle
        φ, slope against the horizontal [rad].
    uphill
        The side of the vehicle that points uphill.

    Returns
    -------
    LoadCase
        Contact forces in axes that tilt with the vehicle [N].

    Notes
    -----
    No acceleration; gravity has a component across the vehicle instead. A vehicle on springs and
    tires tips before the angle at which these loads reach zero.

    Examples
    --------
    >>> from hubwright.mechanics.load_transfer import StandingVehicle
    >>> from hubwright.mechanics.weight import MassPoint, VehicleLoads
    >>> car = StandingVehicle(
    ...     VehicleLoads(5000.0, 5000.0, 4000.0, 4000.0), MassPoint(18000 / 9.80665, 1.25, 0.0, 0.5), 2.5, 1.5, 1.5, 0.5
    ... )
    >>> force = side_slope(car, angle=np.arctan(0.75), uphill="left").contact_force["front_right"]
    >>> round(float(force.z), 3)  # 5000·0.8 + 18000·0.6·0.5·0.5/1.5
    5800.0

    References
    ----------
    Equilibrium about the centre line of the contact points.
    """
    sign = SIGN[uphill]
    across = np.sin(angle)
    level = np.cos(angle)
    loads = summed(
        {name: load * level for name, load in body.supports.items()},
        body.rolled(-sign * mass_times_g(body) * across * body.centre.height),
    )
    on_uphill_side = sum(load for name, load in loads.items() if name.endswith(uphill))
    return directed_case(
        "side_slope",
        loads,
        Vector(0.0, sign * np.tan(angle), 1.0),
        gravity=Vector(0.0, -sign * STANDARD_GRAVITY * across, -STANDARD_GRAVITY * level),
        failures={"the slope is past tipping": on_uphill_side < 0},
    )


def two_wheel(body: StandingVehicle, *, supported: Diagonal) -> LoadCase:
    """Return the contact forces of a vehicle balanced on two diagonal wheels.

    Each of the two carries all that its axle carries: about twice its standing load.

        F_z = F_axle on the supported wheels, 0 on the others

    Parameters
    ----------
    body
        Vehicle on its wheels [N, m].
    supported
        The two wheels on the ground.

    Returns
    -------
    LoadCase
        Contact forces [N].

    Notes
    -----
    The roll moment left over when the axles differ is balanced by the driver's art and left out.

    Examples
    --------
    >>> from hubwright.mechanics.load_transfer import StandingVehicle
    >>> from hubwright.mechanics.weight import MassPoint, VehicleLoads
    >>> car = StandingVehicle(
    ...     VehicleLoads(5000.0, 5000.0, 4000.0, 4000.0), MassPoint(18000 / 9.80665, 1.25, 0.0, 0.5), 2.5, 1.5, 1.5, 0.5
    ... )
    >>> [force.z for force in two_wheel(car, supported="front_left+rear_right").contact_force.values()]
    [10000.0, 0.0, 0.0, 8000.0]

    References
    ----------
    Common practice, no source; equilibrium in the vertical and about the axles.
    """
    axle = {"front": body.loads.front, "rear": body.loads.rear}
    on_ground = supported.split("+")
    loads: Supports = {
        name: axle[name.split("_")[0]] if name in on_ground else 0.0 * axle[name.split("_")[0]]
        for name in body.supports
    }
    return directed_case("two_wheel", loads, Vector(0.0, 0.0, 1.0))


def ledge(body: Standing, *, height: Value, loaded_radius: Mapping[str, Value]) -> LoadCase:
    """Return the contact forces of wheels that the vehicle pushes over a square ledge.

    The contact moves to the edge, and the force with it along the line to the wheel's centre: it
    grows by 1/cos θ and gains a part that holds the vehicle back.

        cos θ = (R_l − s)/R_l,    N = F₀/cos θ,    push = F₀ tan θ

    Parameters
    ----------
    body
        Vehicle or trailer on its wheels [N, m].
    height
        s, from the road to the edge [m].
    loaded_radius
        R_l of each wheel by its name [m].

    Returns
    -------
    LoadCase
        Contact force of each wheel when it is the one at the edge [N]; angle, normal, push and the
        friction that a driven wheel needs in `ledge`.

    Notes
    -----
    No drive torque at the wheel itself. The load that the push itself transfers is left out. As the
    ledge nears the height of the axle no push suffices; the numbers are then not a number.

    Examples
    --------
    >>> from hubwright.mechanics.load_transfer import StandingTrailer
    >>> from hubwright.mechanics.trailer_weight import TrailerLoads
    >>> from hubwright.mechanics.weight import MassPoint
    >>> cart = StandingTrailer(
    ...     TrailerLoads(4000.0, 4000.0, 500.0), MassPoint(8500 / 9.80665, -0.2, 0.0, 0.8), 3.0, 1.5
    ... )
    >>> edge = ledge(cart, height=0.08, loaded_radius={"left": 0.4, "right": 0.4}).ledge["left"]
    >>> round(float(edge.normal), 3), round(float(edge.push), 3)  # cos θ = 0.8: 4000/0.8, 4000·0.75
    (5000.0, 3000.0)

    References
    ----------
    Roller over a step, in any text on engineering statics.
    """
    contact: dict[str, Vector] = {}
    edges: dict[str, LedgeContact] = {}
    failures: dict[str, Flag] = dict(lifted(wheels_only(body.supports)))
    for name, load in wheels_only(body.supports).items():
        radius = loaded_radius[name]
        too_high = height >= radius
        cosine = np.where(too_high, np.nan, (radius - height) / radius)
        tangent = np.sqrt(1 - cosine**2) / cosine
        edges[name] = LedgeContact(np.arccos(cosine), load / cosine, load * tangent, tangent)
        contact[name] = Vector(-load * tangent, 0.0, load)
        failures[f"the ledge is as high as the axle ({name.replace('_', ' ')} wheel)"] = too_high
    return LoadCase(
        kind="ledge",
        contact_force=contact,
        gravity=DOWN,
        acceleration=Vector(),
        failures=failures,
        coupling_force=coupling(body.supports, Vector(0.0, 0.0, 1.0)),
        ledge=edges,
    )

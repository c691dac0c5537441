"""Workings of rough ground: ledge, slope, a landing on the tire alone, the wheel joint, and water at a seal."""

import math
from collections.abc import Callable, Mapping

from hubwright.errors import MissingDataError
from hubwright.lessons.rough_views import Landing
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.mechanics.sealing import ATMOSPHERE, WATER_DENSITY
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.drops import drop_history
from hubwright.results.footing import ledge_result, slope_result
from hubwright.results.joint import joint_result
from hubwright.results.water import sealing_result
from hubwright.setup.model import Ledge, TrailerChassis


def stability_figure(results: Results) -> Working:
    """Return half the track over the height of the weight."""
    chassis = results.setup.chassis
    wide = chassis.track if isinstance(chassis, TrailerChassis) else (chassis.front_track + chassis.rear_track) / 2
    found = slope_result(results).static_stability_figure
    return Working(
        what="Static stability figure",
        lines=(Line("S", "t/(2*h)"),),
        symbols={
            "S": Symbol("S", "static stability figure", Quantity(found, "1")),
            "t": Symbol("t", "track, the mean of the axles'", Quantity(wide, "m"), "m"),
            "h": _height(results),
        },
        source="A common measure of road safety: common practice.",
        function="slope.static_stability_figure",
    )


def tipping(results: Results) -> Working:
    """Return the slope at which the weight's line passes through the downhill wheels."""
    slope = slope_result(results)
    angle = min(slope.tipping.values())
    height = _height(results)
    lever = height.value.value * math.tan(angle)
    return Working(
        what="Static tipping angle",
        lines=(Line("p", "atan(e/h)"),),
        symbols={
            "p": Symbol(r"\varphi", "slope at which a rigid body tips", Quantity(angle, "rad")),
            "e": Symbol("e", "across from the centre of mass to the downhill wheels", Quantity(lever, "m"), "m"),
            "h": height,
        },
        source="The weight's line then runs through the feet of the downhill tires. Rigid, standing still.",
        function="slope.tipping_angle",
    )


def _height(results: Results) -> Symbol:
    return Symbol("h", "centre of mass above the ground", Quantity(results.weight.centre_of_mass_height, "m"), "m")


def ledge_push(results: Results, case: CaseResult) -> Working:
    """Return how hard the vehicle has to push a wheel at an edge."""
    own, symbols = _ledge(results, case)
    met = ledge_result(results, height=own.height, friction=0.0)
    return Working(
        what="Push over the edge",
        lines=(_ANGLE, Line("P", "F_0*tan(t)")),
        symbols={
            **symbols,
            "P": Symbol("P", "push of the rest of the vehicle on this wheel", Quantity(met.push, "N")),
            "F_0": Symbol(
                "F_0",
                "load of the wheel, standing",
                Quantity(results.weight.wheel_loads[results.wheel], "N"),
                path="weight.this_wheel",
            ),
        },
        source="Roller over a step: load, push and the edge's force meet in the wheel's middle. No drive at the wheel.",
        function="ledge.edge_forces",
    )


def ledge_friction(results: Results, case: CaseResult) -> Working:
    """Return the friction that a driven wheel needs to climb by itself."""
    own, symbols = _ledge(results, case)
    met = ledge_result(results, height=own.height, friction=0.0)
    return Working(
        what="Friction that a driven wheel needs",
        lines=(_ANGLE, Line("m", "tan(t)")),
        symbols={**symbols, "m": Symbol(r"\mu", "friction at the edge", Quantity(met.needed_friction, "1"))},
        source="The edge's whole force then points straight up, so the tread takes tan θ of what presses.",
        function="ledge.climbing_friction",
    )


_ANGLE = Line("t", "acos((R - s)/R)")


def _ledge(results: Results, case: CaseResult) -> tuple[Ledge, dict[str, Symbol]]:
    own = results.setup.case(case.name)
    if not isinstance(own, Ledge):
        raise MissingDataError(result="the working of a ledge", missing=[f"a case '{case.name}' of the kind ledge"])
    angle = ledge_result(results, height=own.height, friction=0.0).angle
    return own, {
        "t": Symbol(r"\theta", "contact ahead of straight down", Quantity(angle, "rad")),
        "s": Symbol("s", "height of the ledge", Quantity(own.height, "m"), "mm"),
        "R": Symbol(
            "R_l",
            "wheel centre above the road",
            Quantity(results.wheel_geometry.loaded_radius, "m"),
            "mm",
            "loaded_radius",
        ),
    }


def impact_factor(results: Results, case: CaseResult) -> Working:
    """Return the peak force of the tire over its standing load."""
    history = drop_history(results, case.name)
    return Working(
        what="Peak force of the tire over its standing load",
        lines=(Line("n", "F/F_0"),),
        symbols={
            "n": Symbol("n", "impact factor", Quantity(history.impact_factor, "1")),
            "F": Symbol(r"F_\mathrm{peak}", "largest force of the tire", Quantity(history.peak_tire_force, "N")),
            "F_0": Symbol(
                "F_0", "load of the wheel, standing", Quantity(history.standing_load, "N"), path="weight.this_wheel"
            ),
        },
        source="One corner as two masses on springs, followed through time.",
        function="impact.drop",
    )


def fall_energy(landing: Landing) -> Working:
    """Return the energy of a fall."""
    return Working(
        what="Energy of the fall",
        lines=(Line("E", "W*s", us="W*s/inches_in_a_foot"),),
        symbols={
            "E": Symbol("E", "energy", Quantity(landing.energy, "J")),
            "W": Symbol("W", "load of the wheel, standing", Quantity(landing.weight, "N"), path="weight.this_wheel"),
            "s": Symbol("s", "height of the fall", Quantity(landing.height, "m"), "m"),
        },
        source="Work is force times way. A weight times a height is an energy and no force.",
        function="impact_energy.fall_energy",
    )


def bound(landing: Landing) -> Working:
    """Return the force of a landing if the tire alone takes in the energy."""
    return Working(
        what="Force if the tire alone gives",
        lines=(Line("d", "W/k"), Line("F", "W*(1 + sqrt(1 + 2*s/d))")),
        symbols={
            "F": Symbol("F", "force of the landing", Quantity(landing.bound, "N")),
            "W": Symbol("W", "load of the wheel, standing", Quantity(landing.weight, "N"), path="weight.this_wheel"),
            "s": Symbol("s", "height of the fall", Quantity(landing.height, "m"), "mm"),
            "d": Symbol(
                r"\delta", "how far it presses the tire in, standing",
                Quantity(landing.weight / landing.stiffness, "m"), "mm",
            ),
            "k": Symbol("k", "stiffness of the tire", Quantity(landing.stiffness, "N/m"), "N/mm"),
        },
        source="The fall and the tire's own give feed the tire's spring; rigid above it, no loss.",
        function="impact_energy.energy_bound",
    )  # fmt: skip


def clamp(results: Results) -> Working:
    """Return how a tightening torque becomes the pull of a stud."""
    joint, found = results.setup.joint, joint_result(results).clamp
    if joint is None or joint.nut_factor is None or found is None:
        raise MissingDataError(result="the clamp force", missing=["joint.nut_factor"])
    return Working(
        what="Clamp force of one stud",
        lines=(Line("F", "T/(K*d)", us="inches_in_a_foot*T/(K*d)"),),
        symbols={
            "F": Symbol("F", "clamp force of one stud", Quantity(found.value, "N")),
            "T": Symbol("T", "tightening torque", Quantity(joint.tightening_torque, "N*m")),
            "K": Symbol("K", "nut factor: friction of thread and seat", Quantity(joint.nut_factor, "1")),
            "d": Symbol("d", "diameter of the thread", Quantity(joint.thread.diameter, "m"), "m"),
        },
        source="Common practice; the nut factor holds friction of thread and seat in one number.",
        function="fastener.clamp_force",
    )


def capacity(results: Results) -> Working:
    """Return the torque that the clamped faces hold by friction."""
    joint, found = results.setup.joint, joint_result(results)
    if joint is None or joint.face_friction is None or found.clamp is None or found.capacity is None:
        raise MissingDataError(result="the friction of the joint", missing=["joint.nut_factor", "joint.face_friction"])
    return Working(
        what="Torque that the clamped faces hold by friction",
        lines=(Line("C", "n*F*m*D/2", us="n*F*m*D/(2*inches_in_a_foot)"),),
        symbols={
            "C": Symbol("C", "torque before the faces slip", Quantity(found.capacity.value, "N*m")),
            "n": Symbol("n", "studs", Quantity(joint.studs, "1", kind="count")),
            "F": Symbol("F", "clamp force of one stud", Quantity(found.clamp.value, "N"), path="fastening.clamp"),
            "m": Symbol(r"\mu", "friction between the faces", Quantity(joint.face_friction, "1")),
            "D": Symbol("D", "diameter of the stud circle", Quantity(joint.stud_circle, "m"), "m"),
        },
        source="All friction at the stud circle; the seats of the nuts and the pilot are left out.",
        function="wheel_joint.friction_capacity",
    )


def depth_pressure(results: Results) -> Working:
    """Return the pressure that standing water adds at a depth."""
    sealing, found = results.setup.sealing, sealing_result(results).depth_pressure
    if sealing is None or sealing.depth is None or found is None:
        raise MissingDataError(result="the pressure of the depth", missing=["sealing.depth"])
    return Working(
        what="Pressure of the depth",
        lines=(Line("p", "w*d"),),
        symbols={
            "p": Symbol("p", "pressure above that of the air", Quantity(found, "Pa", kind="fluid pressure")),
            "w": Symbol(
                r"\varrho g", "weight of water by its volume", Quantity(WATER_DENSITY * STANDARD_GRAVITY, "N/m^3")
            ),
            "d": Symbol("d", "depth below the surface", Quantity(sealing.depth, "m"), "m"),
        },
        source="Water at rest.",
        function="sealing.depth_pressure",
    )


def suction(results: Results) -> Working:
    """Return the pressure that a sealed hub loses when cold water cools its air."""
    sealing, found = results.setup.sealing, sealing_result(results).suction
    if sealing is None or sealing.hub_temperature is None or sealing.water_temperature is None or found is None:
        raise MissingDataError(
            result="the suction of the hub", missing=["sealing.hub_temperature", "sealing.water_temperature"]
        )
    return Working(
        what="Suction of the cooled hub",
        lines=(Line("q", "p*(1 - T_2/T_1)"),),
        symbols={
            "q": Symbol(r"\Delta p", "pressure lost inside", Quantity(found, "Pa", kind="fluid pressure")),
            "p": Symbol("p", "pressure of the air", Quantity(ATMOSPHERE, "Pa", kind="fluid pressure")),
            "T_1": Symbol("T_1", "hub, above absolute zero", Quantity(sealing.hub_temperature, "K")),
            "T_2": Symbol("T_2", "water, above absolute zero", Quantity(sealing.water_temperature, "K")),
        },
        source="Law of gases at one volume: closed from the first touch of water and cooled all the way.",
        function="sealing.quench_suction",
    )


SETUP_WORKINGS: Mapping[str, Callable[[Results], Working]] = {
    "footing.static_stability_figure": stability_figure,
    "footing.tips_at": tipping,
    "fastening.clamp": clamp,
    "fastening.capacity": capacity,
    "ford.depth_pressure": depth_pressure,
    "ford.suction": suction,
}
CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    "ledge.push": ledge_push,
    "ledge.needed_friction": ledge_friction,
    "drop.impact_factor": impact_factor,
}
LANDING_WORKINGS: Mapping[str, Callable[[Landing], Working]] = {"energy": fall_energy, "bound": bound}

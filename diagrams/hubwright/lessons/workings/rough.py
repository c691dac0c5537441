"""Workings of rough ground: ledge, slope, and water at a seal."""

import math
from collections.abc import Callable, Mapping

import numpy as np

from hubwright.errors import MissingDataError
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.mechanics.sealing import ATMOSPHERE, WATER_DENSITY
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.footing import drive_at_ledge, ledge_result, slope_result
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


def ledge_angle(results: Results, case: CaseResult) -> Working:
    """Return where a wheel meets an edge."""
    _, symbols = _ledge(results, case)
    return Working(
        what="Where the tire meets the edge",
        lines=(_ANGLE,),
        symbols=symbols,
        source="A circle over a step.",
        function="ledge.ledge_angle",
    )


def ledge_normal(results: Results, case: CaseResult) -> Working:
    """Return how hard the edge presses on the tire."""
    own, symbols = _ledge(results, case)
    met = ledge_result(results, height=own.height, friction=0.0)
    return Working(
        what="Push of the edge",
        lines=(_ANGLE, Line("N", "F_0/cos(t)")),
        symbols={
            **symbols,
            "N": Symbol("N", "push of the edge toward the wheel's middle", Quantity(met.normal, "N")),
            "F_0": _standing(results),
        },
        source="Roller over a step: load, push and the edge's force meet in the wheel's middle. No drive at the wheel.",
        function="ledge.edge_forces",
    )


def climbing_torque(results: Results, case: CaseResult) -> Working:
    """Return the torque with which a wheel climbs an edge by itself."""
    own, symbols = _ledge(results, case)
    torque = drive_at_ledge(results, height=own.height, torque=np.zeros(1)).climbs_by_itself
    return Working(
        what="Torque with which the wheel climbs by itself",
        lines=(
            _ANGLE,
            _TORQUE,
        ),
        symbols={
            **symbols,
            "T": Symbol("T", "torque of the drive at the wheel", Quantity(torque, "N*m")),
            "F_0": _standing(results),
        },
        source="Moments about the edge: the torque lifts what stands on the wheel.",
        function="ledge.edge_forces",
    )


_TORQUE = Line("T", "F_0*R*sin(t)", us="F_0*R*sin(t)/inches_in_a_foot", si="F_0*R*sin(t)/millimetres_in_a_metre")


def _standing(results: Results) -> Symbol:
    load = Quantity(results.weight.wheel_loads[results.wheel], "N")
    return Symbol("F_0", "load of the wheel, standing", load, path="weight.this_wheel")


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
    "ford.depth_pressure": depth_pressure,
    "ford.suction": suction,
}
CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    "ledge.angle": ledge_angle,
    "ledge.normal": ledge_normal,
    "ledge.push": ledge_push,
    "ledge.climbing_torque": climbing_torque,
    "ledge.needed_friction": ledge_friction,
}

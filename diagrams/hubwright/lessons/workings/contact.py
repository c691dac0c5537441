"""Workings of what the road does in each case: load transfer, sideways and lengthwise pushes."""

import math
from collections.abc import Callable, Mapping
from functools import partial

from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.drops import drop_history
from hubwright.setup.model import (
    Braking,
    Cornering,
    Driving,
    Drop,
    Ledge,
    SideSlope,
    TrailerChassis,
    TwoWheel,
    VehicleChassis,
)

_DIRECTIONS = {"x": "forward", "y": "to the left", "z": "upward"}


def contact_force(results: Results, case: CaseResult, axis: str) -> Working:
    """Return how a component of the road's push on the tire comes about."""
    expression, symbols, source = _parts(results, case, axis)
    push = Quantity(getattr(case.contact_force, axis), "N")
    return Working(
        what=f"Push of the road, {_DIRECTIONS[axis]}",
        lines=(Line("F", expression),),
        symbols={"F": Symbol(f"F_{axis}", "the road's push on the tire", push), **symbols},
        source=source,
        function="impact.drop" if case.kind == "drop" else f"load_cases.{case.kind}",
    )


Parts = tuple[str, dict[str, Symbol], str]


def _parts(results: Results, result: CaseResult, axis: str) -> Parts:
    """Return the expression, its symbols and its source."""
    case = results.setup.case(result.name)
    match case, axis:
        case SideSlope(), "x":
            return _nothing(axis)
        case ((Braking() | Driving() | Cornering() | SideSlope()), "z"):
            return _transfer(results, case)
        case Braking(), "x":
            return (
                "-b*F_z",
                _share("b", "braking over g", case.braking_g) | _upward(result),
                "Same friction at all wheels.",
            )
        case Driving(driven="all"), "x":
            return (
                "d*F_z",
                _share("d", "acceleration over g", case.driving_g) | _upward(result),
                "All wheels are driven.",
            )
        case Driving(driven=driven), "x" if results.wheel.startswith(driven):
            symbols = _share("d", "acceleration over g", case.driving_g) | _weight(results)
            return "d*W/2", symbols, "The two driven wheels push the whole vehicle."
        case Cornering(), "y":
            sign = "-" if case.toward == "right" else ""
            symbols = _share("n", "lateral acceleration over g", case.lateral_g) | _upward(result)
            return (
                f"{sign}n*F_z",
                symbols,
                "Same friction at all wheels; the road pushes toward the inside of the bend.",
            )
        case SideSlope(), "y":
            sign = "-" if case.uphill == "right" else ""
            symbols = {"p": Symbol(r"\varphi", "angle of the slope", Quantity(case.angle, "rad"))} | _upward(result)
            return f"{sign}F_z*tan(p)", symbols, "Axes tilt with the vehicle; the road pushes uphill."
        case TwoWheel(), "z" if result.contact_force.z > 0:
            axle = results.wheel.partition("_")[0]
            load = Quantity(results.weight.axle_loads[axle], "N")
            symbols = {"A": Symbol(r"F_\mathrm{a}", f"load of the {axle} axle", load, path="weight.this_axle")}
            return "A", symbols, "The wheel carries its whole axle."
        case Ledge(), "x":
            symbols = {
                "t": Symbol(
                    r"\theta",
                    "contact before straight down",
                    Quantity(_ledge_angle(results, case), "rad"),
                    path="ledge.angle",
                ),
                **_standing(results),
            }
            return "-F_0*tan(t)", symbols, "Roller over a step: the contact pushes along the line to the wheel centre."
        case TwoWheel(), "z":
            return _nothing(axis)
        case Drop(), "z":
            return _pressed_in(results, result)
        case _, "z":
            return "F_0", _standing(results), "The road carries what stands on the wheel."
    return _nothing(axis)


def _pressed_in(results: Results, result: CaseResult) -> Parts:
    """Return the tire's push at the instant at which the bearing carries most."""
    stiffness = float(drop_history(results, result.name).car.tire_stiffness)
    give = result.contact_force.z / stiffness
    symbols = {
        "k": Symbol("k", "vertical stiffness of the tire", Quantity(stiffness, "N/m"), "N/mm"),
        "d": Symbol(
            r"\delta", "how far the tire is pressed in when the bearing carries most", Quantity(give, "m"), "mm"
        ),
    }
    return "k*d", symbols, "One corner as two masses on springs, followed through time."


def _nothing(axis: str) -> Parts:
    return "0", {}, f"Nothing acts {_DIRECTIONS[axis]} in this case."


def _transfer(results: Results, case: Braking | Driving | Cornering | SideSlope) -> Parts:
    """Return the standing load and what moves to this wheel."""
    chassis = results.setup.chassis
    height = Quantity(results.weight.centre_of_mass_height, "m")
    symbols = _standing(results) | _weight(results) | {"h": Symbol("h", "height of the centre of mass", height, "m")}
    source = "Moments about the ground; quasi-static."
    if isinstance(case, Braking | Driving):
        g, words = (
            (case.braking_g, "braking over g") if isinstance(case, Braking) else (case.driving_g, "acceleration over g")
        )
        symbols |= _share("a", words, g)
        if isinstance(chassis, TrailerChassis):
            symbols["L"] = Symbol("L", "axle to coupling", Quantity(chassis.coupling_ahead_of_axle, "m"), "m")
            return "F_0 - W*a*h/(2*L)", symbols, f"{source} Braking moves load from the axle to the coupling."
        symbols["L"] = Symbol("L", "wheelbase", Quantity(chassis.wheelbase, "m"), "m")
        gains = isinstance(case, Braking) == results.wheel.startswith("front")
        return f"F_0 {'+' if gains else '-'} W*a*h/(2*L)", symbols, source
    toward = case.toward if isinstance(case, Cornering) else case.uphill
    sign = "-" if results.wheel.endswith(toward) else "+"
    symbols["t"] = Symbol("t", "track of the axle", Quantity(_track(results), "m"), "m")
    share = ""
    if isinstance(chassis, VehicleChassis):
        front = results.wheel.startswith("front")
        part = chassis.front_roll_share if front else 1 - chassis.front_roll_share
        symbols["k"] = Symbol("k", "share of the load transfer that this axle takes", Quantity(part, "1"))
        share = "k*"
    if isinstance(case, Cornering):
        symbols |= _share("n", "lateral acceleration over g", case.lateral_g)
        return f"F_0 {sign} {share}W*n*h/t", symbols, source
    symbols["p"] = Symbol(r"\varphi", "angle of the slope", Quantity(case.angle, "rad"))
    return f"F_0*cos(p) {sign} {share}W*sin(p)*h/t", symbols, source


def _track(results: Results) -> float:
    chassis = results.setup.chassis
    if isinstance(chassis, TrailerChassis):
        return chassis.track
    return chassis.front_track if results.wheel.startswith("front") else chassis.rear_track


def _ledge_angle(results: Results, case: Ledge) -> float:
    radius = results.wheel_geometry.loaded_radius
    return math.acos((radius - case.height) / radius)


def _standing(results: Results) -> dict[str, Symbol]:
    load = Quantity(results.weight.wheel_loads[results.wheel], "N")
    return {"F_0": Symbol("F_0", "load of the wheel, standing", load, path="weight.this_wheel")}


def _upward(case: CaseResult) -> dict[str, Symbol]:
    return {
        "F_z": Symbol("F_z", "the road's push, upward", Quantity(case.contact_force.z, "N"), path="contact_force.z")
    }


def _weight(results: Results) -> dict[str, Symbol]:
    return {"W": Symbol("M g", "weight of all", Quantity(results.weight.total_mass * STANDARD_GRAVITY, "N"))}


def _share(name: str, words: str, value: float) -> dict[str, Symbol]:
    return {name: Symbol(name, words, Quantity(value, "1"))}


CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    f"contact_force.{axis}": partial(contact_force, axis=axis) for axis in "xyz"
}

"""Workings of what stands on axles and wheels, and of what the turning parts pass to the bearing."""

from collections.abc import Callable, Mapping
from functools import partial

from hubwright.lessons.blocks import BlockError
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.model import SingleForce
from hubwright.setup.model import TrailerChassis

_NOTHING = 1e-9  # N: a force that the case does not have


def axle_load(results: Results, axle: str) -> Working:
    """Return how the load of an axle (or of a coupling) comes about: as measured, and gear by the law of the lever."""
    chassis = results.setup.chassis
    if axle not in results.weight.axle_loads:
        raise BlockError(f"this setup has no {axle}; its loads: {', '.join(results.weight.axle_loads)}")
    trailer = isinstance(chassis, TrailerChassis)
    base = chassis.coupling_ahead_of_axle if isinstance(chassis, TrailerChassis) else chassis.wheelbase
    letter = {"front": r"\mathrm{f}", "rear": r"\mathrm{r}", "axle": r"\mathrm{a}", "coupling": r"\mathrm{c}"}[axle]
    words = {"front": "front axle", "rear": "rear axle", "axle": "axle", "coupling": "coupling"}[axle]
    symbols = {
        "F": Symbol(f"F_{{{letter}}}", f"load of the {words}", Quantity(results.weight.axle_loads[axle], "N")),
        "W": Symbol(
            f"W_{{{letter}}}",
            f"weight on the {words} as measured, before gear",
            Quantity(results.weight.bare_axle_loads[axle], "N"),
        ),
        "L": Symbol("L", "axle to coupling" if trailer else "wheelbase", Quantity(base, "m"), "m"),
    }
    terms = ["W"]
    for n, item in enumerate(results.setup.gear, 1):
        symbols[f"W_{n}"] = Symbol(f"W_{{{n}}}", f"weight of {item.name}", Quantity(item.mass * STANDARD_GRAVITY, "N"))
        place = "behind the axle" if trailer else "behind the front axle"
        symbols[f"x_{n}"] = Symbol(f"x_{{{n}}}", f"its distance {place}", Quantity(item.behind, "m"), "m")
        terms.append(_lever(n, axle))
    change = results.setup.corner_mass_change
    if not results.setup.weighed_as_it_stands and abs(change) > 0 and axle != "coupling":
        symbols["W_t"] = Symbol(
            r"W_\mathrm{t}", "weight that each tire and wheel gained", Quantity(change * STANDARD_GRAVITY, "N")
        )
        terms.append("2*W_t")
    return Working(
        what=f"Load of the {words}",
        lines=(Line("F", " + ".join(terms)),),
        symbols=symbols,
        source="Scales, and the law of the lever for each item of gear. A weight is a mass times 9.80665 m/s².",
        function="trailer_weight.trailer_loads" if trailer else "weight.vehicle_loads",
    )


def _lever(n: int, axle: str) -> str:
    if axle == "rear":
        return f"W_{n}*x_{n}/L"
    if axle == "coupling":
        return f"W_{n}*(-x_{n})/L"
    # ahead of the coupling's far end: what stands behind the axle lifts the coupling and loads the axle
    return f"W_{n}*(1 + x_{n}/L)" if axle == "axle" else f"W_{n}*(1 - x_{n}/L)"


def wheel_load(results: Results) -> Working:
    """Return how the load of the wheel in view comes about from its axle's."""
    chassis = results.setup.chassis
    trailer = isinstance(chassis, TrailerChassis)
    axle = "axle" if trailer else results.wheel.partition("_")[0]
    track = (
        chassis.track
        if isinstance(chassis, TrailerChassis)
        else (chassis.front_track if axle == "front" else chassis.rear_track)
    )
    base = chassis.coupling_ahead_of_axle if isinstance(chassis, TrailerChassis) else chassis.wheelbase
    symbols = {
        "F_0": Symbol("F_0", "load of the wheel, standing", Quantity(results.weight.wheel_loads[results.wheel], "N")),
        "F": Symbol(
            r"F_\mathrm{a}",
            "load of its axle",
            Quantity(results.weight.axle_loads[axle], "N"),
            path="weight.this_axle",
        ),
    }
    terms = ["F/2"]
    for n, item in enumerate(results.setup.gear, 1):
        if item.left_of_centre == 0:
            continue
        x = item.behind / base
        part = item.mass * STANDARD_GRAVITY * (1 + x if trailer else 1 - x if axle == "front" else x)
        symbols[f"A_{n}"] = Symbol(f"A_{{{n}}}", f"what {item.name} puts on that axle", Quantity(part, "N"))
        symbols[f"y_{n}"] = Symbol(
            f"y_{{{n}}}",
            "its distance toward this wheel's side",
            Quantity(results.side * item.left_of_centre, "m"),
            "m",
        )
        symbols["t"] = Symbol("t", "track", Quantity(track, "m"), "m")
        terms.append(f"A_{n}*y_{n}/t")
    return Working(
        what="Load of the wheel",
        lines=(Line("F_0", " + ".join(terms)),),
        symbols=symbols,
        source="The vehicle itself is symmetric; gear off the middle is shared by the law of the lever over the track.",
        function="trailer_weight.trailer_loads" if trailer else "weight.vehicle_loads",
    )


def equal_share(results: Results) -> Working:
    """Return how the rule of thumb shares the weight."""
    wheels = len(results.weight.wheel_loads)
    return Working(
        what="Equal share of a wheel",
        lines=(Line("F_e", "F/n"),),
        symbols={
            "F_e": Symbol(r"F_\mathrm{e}", "equal share", Quantity(results.weight.equal_share, "N")),
            "F": Symbol("F", "whole weight", Quantity(results.weight.total_mass * STANDARD_GRAVITY, "N")),
            "n": Symbol("n", "number of wheels", Quantity(wheels, "1", kind="count")),
        },
        source="A rule of thumb: common practice.",
        function="weight.equal_share",
    )


_DIRECTIONS = {"x": "forward", "y": "to the left", "z": "upward"}
_FORCES = {
    "contact": ("F", "the road's push on the tire"),
    "weight_wheel": (r"W_\mathrm{w}", "weight of tire and wheel"),
    "weight_hub": (r"W_\mathrm{h}", "weight of hub and disc"),
    "inertia_wheel": (r"I_\mathrm{w}", "inertia of tire and wheel"),
    "inertia_hub": (r"I_\mathrm{h}", "inertia of hub and disc"),
    "caliper": ("K", "the caliper's push"),
}


def applied_forces(case: CaseResult) -> list[SingleForce]:
    """Return the forces that act on the turning parts from outside the bearing."""
    return [single for single in case.free_body.forces if single.kind == "applied"]


def component(single: SingleForce, axis: str) -> tuple[str, Symbol, int] | None:
    """Return name, symbol and sign in the sum of one component of a force; None where it has none.

    Weights are written by their size with a minus sign, as everybody writes them.
    """
    value = getattr(single.force, axis)
    if abs(value) < _NOTHING:
        return None
    letter, words = _FORCES[single.name]
    weight = single.name.startswith("weight") and axis == "z"
    sign = -1 if weight and value < 0 else 1
    if weight:
        latex = letter
    elif "_" in letter:
        latex = letter.replace(r"\mathrm{", r"{\mathrm{").replace("}", f"}},{axis}}}")
    else:
        latex = f"{letter}_{axis}"
    path = f"contact_force.{axis}" if single.name == "contact" else ""
    return f"{single.name}_{axis}", Symbol(latex, words, Quantity(sign * value, "N"), path=path), sign


def bearing_force(results: Results, case: CaseResult, axis: str) -> Working:
    """Return how the force that the bearing passes on comes about."""
    symbols = {
        "B": Symbol(
            f"B_{axis}",
            f"what the bearing passes on, {_DIRECTIONS[axis]}",
            Quantity(getattr(case.bearing_force, axis), "N"),
        )
    }
    expression = ""
    for single in applied_forces(case):
        part = component(single, axis)
        if part is None:
            continue
        name, symbol, sign = part
        symbols[name] = symbol
        expression += f" {'-' if sign < 0 else '+'} {name}"
    return Working(
        what=f"Force on the bearing, {_DIRECTIONS[axis]}",
        lines=(Line("B", expression.strip().removeprefix("+ ") or "0"),),
        symbols=symbols,
        source="Equilibrium of what turns with the wheel. Axes of ISO 8855.",
        function="free_body.wheel_end",
    )


def this_axle_load(results: Results) -> Working:
    """Return how the load of the axle of the wheel in view comes about."""
    return axle_load(results, "axle" if results.setup.kind == "trailer" else results.wheel.partition("_")[0])


SETUP_WORKINGS: Mapping[str, Callable[[Results], Working]] = {
    "weight.front_axle_load": partial(axle_load, axle="front"),
    "weight.rear_axle_load": partial(axle_load, axle="rear"),
    "weight.axle_load": partial(axle_load, axle="axle"),
    "weight.coupling_load": partial(axle_load, axle="coupling"),
    "weight.this_axle": this_axle_load,
    "weight.this_wheel": wheel_load,
    "weight.equal_share": equal_share,
}
CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    f"bearing_force.{axis}": partial(bearing_force, axis=axis) for axis in "xyz"
}

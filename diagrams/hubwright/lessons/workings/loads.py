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

_WHEELS = ("front_left", "front_right", "rear_left", "rear_right", "left", "right")
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


def wheel_load(results: Results, wheel: str = "") -> Working:
    """Return how the load of a wheel, by default of the one in view, comes about from its axle's."""
    chassis = results.setup.chassis
    wheel = wheel or results.wheel
    if wheel not in results.weight.wheel_loads:
        raise BlockError(f"this setup has no {wheel} wheel; its wheels: {', '.join(results.weight.wheel_loads)}")
    trailer = isinstance(chassis, TrailerChassis)
    axle = "axle" if trailer else wheel.partition("_")[0]
    track = (
        chassis.track
        if isinstance(chassis, TrailerChassis)
        else (chassis.front_track if axle == "front" else chassis.rear_track)
    )
    base = chassis.coupling_ahead_of_axle if isinstance(chassis, TrailerChassis) else chassis.wheelbase
    symbols = {
        "F_0": Symbol("F_0", "load of the wheel, standing", Quantity(results.weight.wheel_loads[wheel], "N")),
        "F": Symbol(
            r"F_\mathrm{a}",
            "load of its axle",
            Quantity(results.weight.axle_loads[axle], "N"),
            path=axle_path(results, axle),
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
            Quantity(item.left_of_centre if wheel.endswith("left") else -item.left_of_centre, "m"),
            "m",
        )
        symbols["t"] = Symbol("t", "track", Quantity(track, "m"), "m")
        terms.append(f"A_{n}*y_{n}/t")
    which = "" if wheel == results.wheel else f", {' '.join(reversed(wheel.split('_')))}"
    return Working(
        what=f"Load of the wheel{which}",
        lines=(Line("F_0", " + ".join(terms)),),
        symbols=symbols,
        source="The vehicle itself is symmetric; gear off the middle is shared by the law of the lever over the track.",
        function="trailer_weight.trailer_loads" if trailer else "weight.vehicle_loads",
    )


def axle_path(results: Results, axle: str) -> str:
    """Return the path under which the load of an axle is worked out; the axle of the wheel in view has its own."""
    if axle == ("axle" if results.setup.kind == "trailer" else results.wheel.partition("_")[0]):
        return "weight.this_axle"
    return "weight.coupling_load" if axle == "coupling" else f"weight.{axle}_axle_load"


def total_mass(results: Results) -> Working:
    """Return how the whole mass adds up."""
    symbols, terms = _masses(results)
    return Working(
        what="Whole mass",
        lines=(Line("M", " + ".join(terms)),),
        symbols={"M": Symbol("M", "whole mass", Quantity(results.weight.total_mass, "kg")), **symbols},
        source="Scales, and the mass of each item of gear.",
        function="weight.combined",
    )


def centre_of_mass_height(results: Results) -> Working:
    """Return how high the centre of mass lies: the mean of all heights, each as heavy as its mass."""
    symbols, terms = _masses(results)
    heights = {"M_0": ("vehicle", results.setup.chassis.centre_of_mass_height)}
    heights |= {f"m_{n}": (item.name, item.above_ground) for n, item in enumerate(results.setup.gear, 1)}
    heights["m_t"] = ("a wheel", results.setup.tire.free_diameter / 2)
    for name in list(symbols):
        words, height = heights[name]
        letter = f"h_{name.partition('_')[2]}"
        latex = r"h_\mathrm{t}" if name == "m_t" else letter
        symbols[letter] = Symbol(latex, f"height of {words}", _place(height), "m")
    moments = " + ".join(f"{term}*h_{term.partition('_')[2]}" for term in terms)
    return Working(
        what="Height of the centre of mass",
        lines=(Line("h", f"({moments})/M" if len(terms) > 1 else moments + "/M"),),
        symbols={
            "h": Symbol("h", "height of the centre of mass", _place(results.weight.centre_of_mass_height), "m"),
            "M": Symbol("M", "whole mass", Quantity(results.weight.total_mass, "kg"), path="weight.total_mass"),
            **symbols,
        },
        source="Centre of mass of several masses.",
        function="weight.combined",
    )


def centre_of_mass_behind(results: Results) -> Working:
    """Return how far behind the front axle, or the axle of a trailer, the centre of mass lies."""
    trailer = isinstance(results.setup.chassis, TrailerChassis)
    loads = results.weight.axle_loads
    base = (
        results.setup.chassis.coupling_ahead_of_axle
        if isinstance(results.setup.chassis, TrailerChassis)
        else results.setup.chassis.wheelbase
    )
    first, other = ("axle", "coupling") if trailer else ("front", "rear")
    words = {"axle": "load of the axle", "coupling": "load of the coupling"}
    letters = {"axle": "a", "coupling": "c", "front": "f", "rear": "r"}
    return Working(
        what=f"Centre of mass, behind the {'axle' if trailer else 'front axle'}",
        lines=(Line("x", "-L*F_c/(F_a + F_c)" if trailer else "L*F_r/(F_f + F_r)"),),
        symbols={
            "x": Symbol("x", "place of the centre of mass", _place(results.weight.centre_of_mass_behind), "m"),
            "L": Symbol("L", "axle to coupling" if trailer else "wheelbase", _place(base), "m"),
            **{
                f"F_{letters[axle]}": Symbol(
                    rf"F_\mathrm{{{letters[axle]}}}",
                    words.get(axle, f"load of the {axle} axle"),
                    Quantity(loads[axle], "N"),
                    path=axle_path(results, axle),
                )
                for axle in (first, other)
            },
        },
        source="Law of the lever.",
        function="weight.combined",
    )


def _place(value: float) -> Quantity:
    return Quantity(value, "m", kind="vehicle length")


def _masses(results: Results) -> tuple[dict[str, Symbol], list[str]]:
    """Return all masses and the terms of their sum."""
    bare = sum(results.weight.bare_axle_loads.values()) / STANDARD_GRAVITY
    symbols = {"M_0": Symbol("M_0", "mass as measured, before gear", Quantity(bare, "kg"))}
    terms = ["M_0"]
    for n, item in enumerate(results.setup.gear, 1):
        symbols[f"m_{n}"] = Symbol(f"m_{{{n}}}", f"mass of {item.name}", Quantity(item.mass, "kg"))
        terms.append(f"m_{n}")
    change = results.setup.corner_mass_change
    if not results.setup.weighed_as_it_stands and abs(change) > 0:
        wheels = len(results.weight.wheel_loads)
        symbols["m_t"] = Symbol(r"m_\mathrm{t}", "mass that each tire and wheel gained", Quantity(change, "kg"))
        terms.append(f"{wheels}*m_t")
    return symbols, terms


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
    **{f"weight.{wheel}": partial(wheel_load, wheel=wheel) for wheel in _WHEELS},
    "weight.total_mass": total_mass,
    "weight.centre_of_mass_height": centre_of_mass_height,
    "weight.centre_of_mass_behind": centre_of_mass_behind,
    "weight.equal_share": equal_share,
}
CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    f"bearing_force.{axis}": partial(bearing_force, axis=axis) for axis in "xyz"
}

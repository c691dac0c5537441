"""Workings of the bearing: effective spread, moments about its centre, row loads, bending of the spindle."""

from collections.abc import Callable, Mapping
from functools import partial

from hubwright.errors import MissingDataError
from hubwright.lessons.workings.loads import applied_forces, component
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.beams import wheel_end_beam

_PLACES = {
    "contact": ("y_w", r"y_\mathrm{w}", "load line beside the bearing centre"),
    "weight_wheel": ("y_w", r"y_\mathrm{w}", "load line beside the bearing centre"),
    "inertia_wheel": ("y_w", r"y_\mathrm{w}", "load line beside the bearing centre"),
    "weight_hub": ("y_f", r"y_\mathrm{f}", "mounting face beside the bearing centre"),
    "inertia_hub": ("y_f", r"y_\mathrm{f}", "mounting face beside the bearing centre"),
    "caliper": ("y_d", r"y_\mathrm{d}", "disc beside the bearing centre"),
}
ROWS = ("outboard", "inboard")
_LEFT = ", to the left positive"


def effective_spread(results: Results) -> Working:
    """Return how the distance between the two pressure centres comes about."""
    return Working(
        what="Effective spread",
        lines=(_SPREAD,),
        symbols=_spread_symbols(results),
        source="Rows back to back: contact lines meet the axis outside the rows. Common practice.",
        function="bearing_rating.effective_spread",
    )


_SPREAD = Line("l", "s + d*tan(a)")


def _spread_symbols(results: Results) -> dict[str, Symbol]:
    bearing, spread = results.setup.bearing, results.bearing.effective_spread
    s, d, a = bearing.row_spacing, bearing.pitch_diameter, bearing.contact_angle
    if s is None or d is None or a is None or spread is None:
        missing = [
            f"bearing.{name}"
            for name in ("row_spacing", "pitch_diameter", "contact_angle")
            if getattr(bearing, name) is None
        ]
        raise MissingDataError(result="the effective spread", missing=missing)
    return {
        "l": Symbol(r"\ell", "between the two pressure centres", Quantity(spread, "m"), "mm"),
        "s": Symbol("s", "row spacing", Quantity(s, "m"), "mm"),
        "d": Symbol(r"D_\mathrm{pw}", "pitch diameter", Quantity(d, "m"), "mm"),
        "a": Symbol(r"\alpha", "contact angle", Quantity(a, "rad")),
    }


def moment_x(results: Results, case: CaseResult) -> Working:
    """Return how the tipping moment about the bearing centre comes about: Σ (y F_z − z F_y)."""
    symbols = {"M": Symbol("M_x", "moment about the bearing centre", Quantity(case.bearing_moment.x, "N*m"))}
    expression = ""
    for single in applied_forces(case):
        upward = component(single, "z")
        if upward is not None:
            name, symbol, sign = upward
            place = _place(symbols, single.name, single.point.y)
            symbols[name] = symbol
            expression += f" {'-' if sign < 0 else '+'} {place}*{name}"
        sideways = component(single, "y")
        if sideways is not None and single.point.z != 0:
            name, symbol, _ = sideways
            symbols[name] = symbol
            symbols["R"] = Symbol("R_l", "wheel centre above the contact", Quantity(-single.point.z, "m"), "m")
            expression += f" + R*{name}"
    return _moment("Tipping moment on the hub", expression, symbols)


def moment_z(results: Results, case: CaseResult) -> Working:
    """Return how the moment about the upright axis comes about: Σ (x F_y − y F_x)."""
    symbols = {"M": Symbol("M_z", "moment about the upright axis", Quantity(case.bearing_moment.z, "N*m"))}
    expression = ""
    for single in applied_forces(case):
        forward = component(single, "x")
        if forward is not None:
            name, symbol, _ = forward
            place = _place(symbols, single.name, single.point.y)
            symbols[name] = symbol
            expression += f" - {place}*{name}"
        sideways = component(single, "y")
        if sideways is not None and single.point.x != 0:
            name, symbol, _ = sideways
            symbols[name] = symbol
            symbols["x"] = Symbol("x", "contact ahead of the wheel centre", Quantity(single.point.x, "m"), "m")
            expression += f" + x*{name}"
    return _moment("Moment about the upright axis", expression, symbols)


def _place(symbols: dict[str, Symbol], force: str, y: float) -> str:
    name, latex, words = _PLACES[force]
    symbols[name] = Symbol(latex, words + _LEFT, Quantity(y, "m"), "m")
    return name


def _moment(what: str, expression: str, symbols: dict[str, Symbol]) -> Working:
    text = expression.strip().removeprefix("+ ") or "0"
    return Working(
        what=what,
        lines=(Line("M", text, us=f"({text})/12" if text != "0" else ""),),
        symbols=symbols,
        source="Turning effects of everything on the turning parts about the bearing centre. Axes of ISO 8855.",
        function="free_body.wheel_end",
        remarks=("Inches times pounds-force, over 12, are lbf·ft.",) if text != "0" else (),
    )


def row_load(results: Results, case: CaseResult, row: str, axis: str) -> Working:
    """Return how the load of one row comes about: half the force, and the moment over the spread."""
    loads = case.row_load
    if loads is None:
        _spread_symbols(results)
        raise MissingDataError(result="row loads", missing=["bearing.row_spacing"])
    # outboard lies on the left at a left wheel; a moment about the upright axis loads the rows the other way round
    plus = ((row == "outboard") == (axis == "z")) == (results.side > 0)
    sign = "+" if plus else "-"
    about = "x" if axis == "z" else "z"
    letter = "A" if row == "outboard" else "B"
    moment = case.bearing_moment.x if axis == "z" else case.bearing_moment.z
    load = Quantity(getattr(getattr(loads, row), axis), "N")
    return Working(
        what=f"Load on the {row} row, {'upward' if axis == 'z' else 'forward'}",
        lines=(_SPREAD, Line("F", f"B/2 {sign} M/l", us=f"B/2 {sign} 12*M/l")),
        symbols={
            **_spread_symbols_in_metres(results),
            "F": Symbol(f"F_{{\\mathrm{{{letter}}},{axis}}}", f"load from the turning parts to the {row} row", load),
            "B": Symbol(f"B_{axis}", "force on the bearing", Quantity(getattr(case.bearing_force, axis), "N")),
            "M": Symbol(f"M_{about}", "moment about the bearing centre", Quantity(moment, "N*m")),
        },
        source="Two supports at the pressure centres of the rows; moments and forces in balance.",
        function="free_body.wheel_end",
        remarks=("12 turns feet into inches.",),
    )  # fmt: skip


def _spread_symbols_in_metres(results: Results) -> dict[str, Symbol]:
    return {
        name: symbol if symbol.value.unit == "rad" else Symbol(symbol.latex, symbol.words, symbol.value, "m")
        for name, symbol in _spread_symbols(results).items()
    }


def row_radial_load(results: Results, case: CaseResult, row: str) -> Working:
    """Return how the length of a row's load comes about."""
    loads, radial = case.row_load, case.row_radial_load
    if loads is None or radial is None:
        raise MissingDataError(result="row loads", missing=["bearing.row_spacing"])
    letter = "A" if row == "outboard" else "B"
    vector = getattr(loads, row)
    return Working(
        what=f"Radial load of the {row} row",
        lines=(Line("F", "sqrt(x**2 + z**2)"),),
        symbols={
            "F": Symbol(
                f"F_{{\\mathrm{{{letter}}}}}", f"radial load of the {row} row", Quantity(getattr(radial, row), "N")
            ),
            "x": Symbol(f"F_{{\\mathrm{{{letter}}},x}}", "its part forward", Quantity(vector.x, "N")),
            "z": Symbol(f"F_{{\\mathrm{{{letter}}},z}}", "its part upward", Quantity(vector.z, "N")),
        },
        source="Length of a vector.",
        function="free_body.WheelEnd",
    )


def beam_moment(results: Results, case: CaseResult) -> Working:
    """Return how the largest bending moment of the spindle comes about: at the load, or at the near support."""
    beam = wheel_end_beam(results, case.name)
    moment = results.side * case.bearing_moment.x
    symbols = {
        **_spread_symbols_in_metres(results),
        "T": Symbol(
            r"M_{\mathrm{b}}", "largest bending moment, sagging positive", Quantity(beam.maximum_moment.value, "N*m")
        ),
        "B": Symbol("B_z", "force on the bearing, upward", Quantity(case.bearing_force.z, "N")),
        "M": Symbol("M_x", "moment about the bearing centre, top toward the vehicle", Quantity(moment, "N*m")),
    }
    if beam.overhung:
        # a wheel in the air pulls its hub down, and the spindle then bends the other way
        size = "abs(M)" if beam.load >= 0 else "-abs(M)"
        return Working(
            what="Largest bending moment",
            lines=(_SPREAD, Line("T", f"{size} - B*l/2", us=f"{size} - B*l/24")),
            symbols=symbols,
            source="The load stands outside the supports: the beam bends most at the near one. Equilibrium.",
            function="spindle_beam.SpindleBeam",
            remarks=("Inches times pounds-force, over 12, are lbf·ft.",),
        )
    place = Symbol(r"y_B", "where the load stands, outboard of the bearing centre", Quantity(beam.load_place, "m"), "m")
    return Working(
        what="Largest bending moment",
        lines=(
            _SPREAD,
            Line("p", "M/B", us="12*M/B"),
            Line("T", "-(B*(l**2/4 - p**2)/l)", us="-(B*(l**2/4 - p**2)/(12*l))"),
        ),
        symbols={**symbols, "p": place},
        source="The load stands between the supports: the beam bends most at the load, hogging. Equilibrium.",
        function="spindle_beam.SpindleBeam",
        remarks=("12 turns feet into inches.",),
    )


def beam_shear(results: Results, case: CaseResult) -> Working:
    """Return which force of the beam is its largest shear."""
    beam = wheel_end_beam(results, case.name)
    size = abs(beam.maximum_shear.value)
    forces = (
        (beam.load, "B_z", "force on the bearing, upward"),
        (beam.reaction_outboard, r"F_\mathrm{A}", "outboard row on the hub, upward"),
        (beam.reaction_inboard, r"F_\mathrm{B}", "inboard row on the hub, upward"),
    )
    value, latex, words = min(forces, key=lambda force: abs(abs(force[0]) - size))
    sign = "-" if beam.maximum_shear.value * value < 0 else ""
    return Working(
        what="Largest shear force",
        lines=(Line("V", f"{sign}F"),),
        symbols={
            "V": Symbol("V", "largest shear force", Quantity(beam.maximum_shear.value, "N")),
            "F": Symbol(latex, words, Quantity(value, "N")),
        },
        source="Between two forces on a beam the shear stays as it is; at each force it jumps by that force.",
        function="spindle_beam.SpindleBeam",
    )


SETUP_WORKINGS: Mapping[str, Callable[[Results], Working]] = {"bearing.effective_spread": effective_spread}
CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    "bearing_moment.x": moment_x,
    "bearing_moment.z": moment_z,
    **{f"row_load.{row}.{axis}": partial(row_load, row=row, axis=axis) for row in ROWS for axis in "xz"},
    **{f"row_radial_load.{row}": partial(row_radial_load, row=row) for row in ROWS},
    "beam.maximum_moment": beam_moment,
    "beam.maximum_shear": beam_shear,
}

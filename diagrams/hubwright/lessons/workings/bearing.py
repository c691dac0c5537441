"""Workings of the bearing: effective spread, moments about its centre, row loads."""

from collections.abc import Callable, Mapping
from functools import partial

from hubwright.errors import MissingDataError
from hubwright.lessons.workings.loads import applied_forces, component
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results

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
        lines=(SPREAD,),
        symbols=spread_symbols(results),
        source="Rows back to back: contact lines meet the axis outside the rows. Common practice.",
        function="bearing_rating.effective_spread",
    )


SPREAD = Line("l", "s + d*tan(a)")


def spread_symbols(results: Results) -> dict[str, Symbol]:
    """Return the symbols of the effective spread, in millimetres."""
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


def moment_y(results: Results, case: CaseResult) -> Working:
    """Return how the moment about the spindle's own axis comes about, which shaft or caliper take."""
    contact = case.free_body.force("contact")
    symbols = {"M": Symbol("M_y", "moment about the spindle's own axis", Quantity(case.bearing_moment.y, "N*m"))}
    expression = ""
    for axis, other, sign in (("z", "x", ""), ("x", "z", "-")):
        place, force = getattr(contact.point, axis), getattr(contact.force, other)
        if place != 0 and force != 0:
            symbols[f"r_{axis}"] = Symbol(f"r_{axis}", f"contact from the centre, {_AXES[axis]}", Quantity(place, "m"))
            symbols[f"F_{other}"] = Symbol(
                f"F_{other}", "the road's push on the tire", Quantity(force, "N"), path=f"contact_force.{other}"
            )
            expression += f" {sign or '+'} r_{axis}*F_{other}"
    return _moment("Moment about the spindle's own axis", expression, symbols)


_AXES = {"x": "forward", "z": "upward"}


def _place(symbols: dict[str, Symbol], force: str, y: float) -> str:
    name, latex, words = _PLACES[force]
    symbols[name] = Symbol(latex, words + _LEFT, Quantity(y, "m"), "m")
    return name


def _moment(what: str, expression: str, symbols: dict[str, Symbol]) -> Working:
    text = expression.strip().removeprefix("+ ") or "0"
    text = f"-{text[2:]}" if text.startswith("- ") else text
    return Working(
        what=what,
        lines=(Line("M", text, us=f"({text})/inches_in_a_foot" if text != "0" else ""),),
        symbols=symbols,
        source="Turning effects of everything on the turning parts about the bearing centre. Axes of ISO 8855.",
        function="free_body.wheel_end",
    )


def row_load(results: Results, case: CaseResult, row: str, axis: str) -> Working:
    """Return how the load of one row comes about: half the force, and the moment over the spread."""
    loads = case.row_load
    if loads is None:
        spread_symbols(results)
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
        lines=(SPREAD, Line("F", f"B/2 {sign} M/l", us=f"B/2 {sign} inches_in_a_foot*M/l")),
        symbols={
            **spread_symbols_in_metres(results),
            "F": Symbol(f"F_{{\\mathrm{{{letter}}},{axis}}}", f"load from the turning parts to the {row} row", load),
            "B": Symbol(
                f"B_{axis}", "force on the bearing", Quantity(getattr(case.bearing_force, axis), "N"),
                path=f"bearing_force.{axis}",
            ),
            "M": Symbol(
                f"M_{about}", "moment about the bearing centre", Quantity(moment, "N*m"),
                path=f"bearing_moment.{about}",
            ),
        },
        source="Two supports at the pressure centres of the rows; moments and forces in balance.",
        function="free_body.wheel_end",
    )  # fmt: skip


def spread_symbols_in_metres(results: Results) -> dict[str, Symbol]:
    """Return the symbols of the effective spread, in metres, to go with newton metres."""
    return {
        name: symbol if symbol.value.unit == "rad" else Symbol(symbol.latex, symbol.words, symbol.value, "m")
        for name, symbol in spread_symbols(results).items()
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
            "x": Symbol(
                f"F_{{\\mathrm{{{letter}}},x}}", "its part forward", Quantity(vector.x, "N"), path=f"row_load.{row}.x"
            ),
            "z": Symbol(
                f"F_{{\\mathrm{{{letter}}},z}}", "its part upward", Quantity(vector.z, "N"), path=f"row_load.{row}.z"
            ),
        },
        source="Length of a vector.",
        function="free_body.WheelEnd",
    )


SETUP_WORKINGS: Mapping[str, Callable[[Results], Working]] = {"bearing.effective_spread": effective_spread}
CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    "bearing_moment.x": moment_x,
    "bearing_moment.y": moment_y,
    "bearing_moment.z": moment_z,
    **{f"row_load.{row}.{axis}": partial(row_load, row=row, axis=axis) for row in ROWS for axis in "xz"},
    **{f"row_radial_load.{row}": partial(row_radial_load, row=row) for row in ROWS},
}

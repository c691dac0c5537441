"""Workings of what a row bears: its rating, and the equivalent load that tires it as much as load and thrust."""

from collections.abc import Callable, Mapping
from functools import partial
from typing import Literal, get_args

import numpy as np

from hubwright.errors import MissingDataError
from hubwright.lessons.life_views import elements_of
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.mechanics.bearing_rating import one_row_dynamic_rating
from hubwright.mechanics.equivalent_load import ANGLES, induced_thrust, load_factors, row_thrusts
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.bearings import missing_dimensions

Row = Literal["outboard", "inboard"]
LETTER: Mapping[Row, str] = {"outboard": "A", "inboard": "B"}
_OTHER: Mapping[Row, Row] = {"outboard": "inboard", "inboard": "outboard"}


def row_rating(results: Results) -> Working:
    """Return how the rating of one row follows from that of both."""
    dynamic = results.bearing.dynamic_rating
    if dynamic is None:
        raise MissingDataError(result="the rating of a row", missing=missing_dimensions(results.setup.bearing))
    elements = elements_of(results)
    one = float(one_row_dynamic_rating(dynamic_rating=dynamic, elements=elements))
    return Working(
        what="Rating of one row",
        lines=(Line("C_1", "C/2**0.7" if elements == "balls" else "C/2**(7/9)"),),
        symbols={
            "C_1": Symbol("C_1", "rating of one row", Quantity(one, "N")),
            "C": Symbol(
                "C", "rating of the whole bearing, two rows", Quantity(dynamic, "N"), path="bearing.dynamic_rating"
            ),
        },
        source="ISO 281, number of rows. More than half: one row has half as many places for the first flake.",
        function="bearing_rating.one_row_dynamic_rating",
    )


def equivalent_load(results: Results, case: CaseResult, row: Row) -> Working:
    """Return how the load of a row and its thrust become the one load that tires it as much."""
    radial, life, angle = case.row_radial_load, results.life, results.setup.bearing.contact_angle
    if radial is None or life is None or angle is None:
        raise MissingDataError(result="the equivalent load", missing=missing_dimensions(results.setup.bearing))
    elements, letter, other = elements_of(results), LETTER[row], _OTHER[row]
    factors = load_factors(
        contact_angle=float(np.clip(angle, ANGLES[0], ANGLES[-1])) if elements == "balls" else angle, elements=elements
    )
    loads = {name: float(getattr(radial, name)) for name in get_args(Row)}
    induced = {
        name: float(induced_thrust(radial_load=load, factors=factors, elements=elements))
        for name, load in loads.items()
    }
    ring, thrust = results.setup.bearing.turning_ring, -results.side * case.bearing_force.y
    thrusts = row_thrusts(
        induced_outboard=induced["outboard"], induced_inboard=induced["inboard"], thrust=thrust, turning_ring=ring
    )
    own = bool(thrusts.outboard_own if row == "outboard" else thrusts.inboard_own)
    axial = float(thrusts.outboard if row == "outboard" else thrusts.inboard)
    load = float(getattr(life.cases[case.name].equivalent_load, row))
    e, X, Y = float(factors.e), float(factors.X), float(factors.Y)
    symbols = {
        "P": Symbol(rf"P_\mathrm{{{letter}}}", f"equivalent load of the {row} row", Quantity(load, "N")),
        "F": Symbol(
            rf"F_\mathrm{{{letter}}}",
            f"load across the axis on the {row} row",
            Quantity(loads[row], "N"),
            path=f"row_radial_load.{row}",
        ),
    }
    what, function = f"Equivalent load of the {row} row", "equivalent_load.equivalent_load"
    if own or axial <= e * loads[row] or X * loads[row] + Y * axial <= loads[row]:
        why = "only the thrust that its own slant makes" if own else "too little thrust beside it to count"
        source = f"ISO 281. This row carries {why}: its load across the axis alone counts."
        return Working(what, (Line("P", "F"),), symbols, source, function)
    # with turning inner rings a thrust toward the vehicle presses the outboard row, with outer rings the inboard one
    sign = "+" if (row == "outboard") == (ring == "inner") else "-"
    symbols |= {
        "F_2": Symbol(
            rf"F_\mathrm{{{LETTER[other]}}}",
            f"load across the axis on the {other} row",
            Quantity(loads[other], "N"),
            path=f"row_radial_load.{other}",
        ),
        "S": Symbol(
            rf"S_\mathrm{{{LETTER[other]}}}",
            f"thrust that the {other} row makes by its slant",
            Quantity(induced[other], "N"),
        ),
        "K": Symbol(
            "K",
            "the bearing's push toward the vehicle",
            Quantity(thrust, "N"),
            path="bearing_force.y" if results.side < 0 else "",
        ),
        "T": Symbol(rf"T_\mathrm{{{letter}}}", f"thrust on the {row} row", Quantity(axial, "N")),
        "X": Symbol("X", "factor of the load across", Quantity(X, "1")),
        "Y": Symbol("Y", "factor of the thrust", Quantity(Y, "1")),
    }
    if elements == "balls":
        symbols["e"] = Symbol("e", "slant of a row that carries on half its ring", Quantity(e, "1"))
    return Working(
        what=what,
        lines=(
            Line("S", "e*F_2" if elements == "balls" else "F_2/(2*Y)"),
            Line("T", f"S {sign} K"),
            Line("P", "X*F + Y*T"),
        ),
        symbols=symbols,
        source="Factors of ISO 281; thrust of slanted rows as the trade's catalogues reckon it.",
        function=function,
    )


SETUP_WORKINGS: Mapping[str, Callable[[Results], Working]] = {"life.row_rating": row_rating}
CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    f"life.equivalent_load.{row}": partial(equivalent_load, row=row) for row in get_args(Row)
}

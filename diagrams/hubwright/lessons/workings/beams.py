"""Workings of the wheel end as a beam: bending, shear and deflection of the spindle."""

import math
from collections.abc import Callable, Mapping

from hubwright.errors import MissingDataError
from hubwright.lessons.workings.bearing import SPREAD, spread_symbols_in_metres
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.mechanics.constants import STEEL_YOUNGS_MODULUS
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.beams import WheelEndBeam, wheel_end_beam


def beam_moment(results: Results, case: CaseResult) -> Working:
    """Return how the largest bending moment of the spindle comes about: at the load, or at the near support."""
    beam = wheel_end_beam(results, case.name)
    moment = results.side * case.bearing_moment.x
    symbols = {
        **spread_symbols_in_metres(results),
        "T": Symbol(
            r"M_{\mathrm{b}}", "largest bending moment, sagging positive", Quantity(beam.maximum_moment.value, "N*m")
        ),
        "B": Symbol("B_z", "force on the bearing, upward", Quantity(case.bearing_force.z, "N"), path="bearing_force.z"),
        "M": Symbol(
            "M_x",
            "moment about the bearing centre, top toward the vehicle",
            Quantity(moment, "N*m"),
            path="bearing_moment.x" if results.side > 0 else "",
        ),
    }
    if beam.overhung:
        # a wheel in the air pulls its hub down, and the spindle then bends the other way
        size = "abs(M)" if beam.load >= 0 else "-abs(M)"
        return Working(
            what="Largest bending moment",
            lines=(SPREAD, Line("T", f"{size} - B*l/2", us=f"{size} - B*l/(2*inches_in_a_foot)")),
            symbols=symbols,
            source="The load stands outside the supports: the beam bends most at the near one. Equilibrium.",
            function="spindle_beam.SpindleBeam",
        )
    place = Symbol(r"y_B", "where the load stands, outboard of the bearing centre", Quantity(beam.load_place, "m"), "m")
    return Working(
        what="Largest bending moment",
        lines=(
            SPREAD,
            Line("p", "M/B", us="inches_in_a_foot*M/B"),
            Line("T", "-(B*(l**2/4 - p**2)/l)", us="-(B*(l**2/4 - p**2)/(inches_in_a_foot*l))"),
        ),
        symbols={**symbols, "p": place},
        source="The load stands between the supports: the beam bends most at the load, hogging. Equilibrium.",
        function="spindle_beam.SpindleBeam",
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


def cantilever_moment(results: Results, case: CaseResult) -> Working:
    """Return what a wall at the far support would hold: the limiting simplification."""
    beam = wheel_end_beam(results, case.name)
    return Working(
        what="Moment of a cantilever",
        lines=(SPREAD, Line("C", "abs(M) + abs(B)*l/2", us="abs(M) + abs(B)*l/(2*inches_in_a_foot)")),
        symbols={
            **spread_symbols_in_metres(results),
            **_load(results, case, beam),
            "C": Symbol(r"M_\mathrm{w}", "what a wall would hold", Quantity(beam.cantilever_moment, "N*m")),
        },
        source="As if the spindle stood in a wall at the row far from the load, and the other row were not there.",
        function="spindle_beam.SpindleBeam",
    )


def beam_deflection(results: Results, case: CaseResult) -> Working:
    """Return how far the spindle bends at most: at an overhung load, or between the supports."""
    beam, spindle = wheel_end_beam(results, case.name), results.setup.spindle
    largest = beam.maximum_deflection
    if largest is None or spindle is None or beam.stiffness is None:
        raise MissingDataError(result="the deflection of the spindle", missing=["spindle.diameter"])
    symbols = {
        **spread_symbols_in_metres(results),
        **_load(results, case, beam),
        "w": Symbol("w", "largest deflection, upward", Quantity(largest.value, "m", kind="deflection"), "mm"),
        "K": Symbol("E I", "stiffness of a round spindle against bending", Quantity(beam.stiffness, "N*m^2")),
        "E": Symbol("E", "stiffness of steel", Quantity(STEEL_YOUNGS_MODULUS, "Pa")),
        "D": Symbol("d", "diameter of the spindle", Quantity(spindle.diameter, "m"), "m"),
    }
    stiffness = Line("K", "E*pi*D**4/64")
    lines: tuple[Line, ...]
    l, moment = beam.spread, abs(results.side * case.bearing_moment.x)
    over = moment / abs(beam.load) - l / 2 if beam.load else math.inf
    if not beam.overhung:
        lines = (SPREAD, _PLACE, stiffness, Line("b", "l/2 - abs(p)"), _in_millimetres(_BETWEEN))
        symbols["p"] = Symbol("y_B", "where the load stands", Quantity(beam.load_place, "m"), "m")
        symbols["b"] = Symbol("b", "load from the near support", Quantity(-over, "m"), "m")
        why = "Largest between the supports, near the load."
    elif beam.couple is None and over * (l + over) >= l**2 / (3 * math.sqrt(3)):
        lines = (SPREAD, _PLACE, stiffness, Line("o", "abs(p) - l/2"), _in_millimetres("B*o**2*(l + o)/(3*K)"))
        symbols["p"] = Symbol("y_B", "where the load stands", Quantity(beam.load_place, "m"), "m")
        symbols["o"] = Symbol("a", "load beyond the near support", Quantity(over, "m"), "m")
        why = "Largest where the load stands, outside the supports."
    else:
        sign = "-" if largest.value < 0 else ""
        bent = f"{sign}T*l**2/(9*sqrt(3)*K)"
        lines = (
            SPREAD,
            stiffness,
            Line("T", "abs(M) - abs(B)*l/2", us="abs(M) - abs(B)*l/(2*inches_in_a_foot)"),
            Line(
                "w", bent, us=bent.replace("T", "inches_in_a_foot*T"), si=bent.replace("T", "millimetres_in_a_metre*T")
            ),
        )
        near = Quantity(moment - abs(beam.load) * l / 2, "N*m")
        symbols["T"] = Symbol(r"M_\mathrm{n}", "bending moment at the near support", near)
        why = "Largest between the supports, where the spindle bends the other way."
    return Working(
        what="Largest deflection",
        lines=lines,
        symbols=symbols,
        source=f"{why} Beam on two supports, in any text on strength of materials.",
        function="spindle_beam.SpindleBeam.deflection",
    )


_BETWEEN = "B*b*(l**2 - b**2)**(3/2)/(9*sqrt(3)*l*K)"
_PLACE = Line("p", "M/B", us="inches_in_a_foot*M/B")


def _in_millimetres(expression: str) -> Line:
    return Line("w", expression, si=f"millimetres_in_a_metre*{expression}")


def _load(results: Results, case: CaseResult, beam: WheelEndBeam) -> dict[str, Symbol]:
    moment = Quantity(results.side * case.bearing_moment.x, "N*m")
    return {
        "B": Symbol("B_z", "force on the bearing, upward", Quantity(beam.load, "N"), path="bearing_force.z"),
        "M": Symbol(
            "M_x", "moment about the bearing centre, top toward the vehicle", moment,
            path="bearing_moment.x" if results.side > 0 else "",
        ),
    }  # fmt: skip


CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    "beam.maximum_moment": beam_moment,
    "beam.maximum_shear": beam_shear,
    "beam.maximum_deflection": beam_deflection,
    "beam.cantilever_moment": cantilever_moment,
}

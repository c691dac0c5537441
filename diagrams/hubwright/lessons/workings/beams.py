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
    beam = _near_load(results, case)
    return Working(
        what="Moment of a cantilever",
        lines=(SPREAD, _PLACE, Line("C", "abs(B)*(abs(p) + l/2)", us="abs(B)*(abs(p) + l/2)/inches_in_a_foot")),
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
    beam = _near_load(results, case)
    largest, spindle = beam.maximum_deflection, results.setup.spindle
    if largest is None or spindle is None or beam.stiffness is None:
        raise MissingDataError(result="the deflection of the spindle", missing=["spindle.diameter"])
    l, a = beam.spread, abs(beam.load_place) - beam.spread / 2
    lines = [SPREAD, _PLACE, Line("K", "E*pi*D**4/64")]
    if beam.overhung and abs(a * (l + a)) >= l**2 / (3 * math.sqrt(3)):
        lines += [Line("o", "abs(p) - l/2"), _in_millimetres("w", "B*o**2*(l + o)/(3*K)")]
        why = "Largest where the load stands, outside the supports."
    elif beam.overhung:
        lines += [Line("o", "abs(p) - l/2"), _in_millimetres("w", "-(B*o*l**2/(9*sqrt(3)*K))")]
        why = "Largest between the supports, where the spindle bends the other way."
    else:
        lines += [Line("b", "l/2 - abs(p)"), _in_millimetres("w", "B*b*(l**2 - b**2)**(3/2)/(9*sqrt(3)*l*K)")]
        why = "Largest between the supports, near the load."
    symbols = {
        **spread_symbols_in_metres(results),
        **_load(results, case, beam),
        "w": Symbol("w", "largest deflection, upward", Quantity(largest.value, "m", kind="deflection"), "mm"),
        "K": Symbol("E I", "stiffness of a round spindle against bending", Quantity(beam.stiffness, "N*m^2")),
        "E": Symbol("E", "stiffness of steel", Quantity(STEEL_YOUNGS_MODULUS, "Pa")),
        "D": Symbol("d", "diameter of the spindle", Quantity(spindle.diameter, "m"), "m"),
    }
    if beam.overhung:
        symbols["o"] = Symbol("a", "load beyond the near support", Quantity(a, "m"), "m")
    else:
        symbols["b"] = Symbol("b", "load from the near support", Quantity(-a, "m"), "m")
    return Working(
        what="Largest deflection",
        lines=tuple(lines),
        symbols=symbols,
        source=f"{why} Beam on two supports, in any text on strength of materials.",
        function="spindle_beam.SpindleBeam.deflection",
    )


_PLACE = Line("p", "M/B", us="inches_in_a_foot*M/B")


def _in_millimetres(name: str, expression: str) -> Line:
    return Line(
        name,
        expression,
        si=f"millimetres_in_a_metre*{expression}"
        if expression[0] != "-"
        else f"-millimetres_in_a_metre*{expression[1:]}",
    )


def _near_load(results: Results, case: CaseResult) -> WheelEndBeam:
    """Return the beam of a case whose load stands near enough to be told by its place."""
    beam = wheel_end_beam(results, case.name)
    if beam.couple is not None or not beam.load:
        raise MissingDataError(result="the working of a load that is a couple", missing=["a load near the rows"])
    return beam


def _load(results: Results, case: CaseResult, beam: WheelEndBeam) -> dict[str, Symbol]:
    moment = Quantity(results.side * case.bearing_moment.x, "N*m")
    return {
        "B": Symbol("B_z", "force on the bearing, upward", Quantity(beam.load, "N"), path="bearing_force.z"),
        "M": Symbol(
            "M_x", "moment about the bearing centre, top toward the vehicle", moment,
            path="bearing_moment.x" if results.side > 0 else "",
        ),
        "p": Symbol("y_B", "where the load stands, outboard of the centre", Quantity(beam.load_place, "m"), "m"),
    }  # fmt: skip


CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    "beam.maximum_moment": beam_moment,
    "beam.maximum_shear": beam_shear,
    "beam.maximum_deflection": beam_deflection,
    "beam.cantilever_moment": cantilever_moment,
}

"""Workings of the wheel end as a beam: bending, shear and deflection of the spindle."""

from collections.abc import Callable, Mapping

from hubwright.lessons.workings.bearing import SPREAD, spread_symbols_in_metres
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.beams import wheel_end_beam


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


CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    "beam.maximum_moment": beam_moment,
    "beam.maximum_shear": beam_shear,
}

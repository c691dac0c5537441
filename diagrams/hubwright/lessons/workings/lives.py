"""Workings of a case's life, quick and detailed, told in the opened working alone, and of its dent margin."""

from collections.abc import Callable, Mapping
from typing import get_args

import numpy as np

from hubwright.errors import MissingDataError
from hubwright.lessons.blocks import BlockError
from hubwright.lessons.life_views import elements_of
from hubwright.lessons.workings.life import LETTER, Row
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.lessons.workings.sentence import CAUTION
from hubwright.lessons.workings.shown import text
from hubwright.mechanics.bearing_contact import (
    Ring,
    ball_curvature,
    point_contact_pressure,
    point_contact_semiaxes,
)
from hubwright.mechanics.bearing_life import MILLION
from hubwright.mechanics.bearing_rating import gamma, one_row_dynamic_rating
from hubwright.mechanics.constants import STEEL_POISSONS_RATIO, STEEL_YOUNGS_MODULUS
from hubwright.mechanics.raceway_life import (
    DENT_PRESSURE,
    RacewayRatings,
    ball_raceway_ratings,
    roller_raceway_ratings,
)
from hubwright.mechanics.roller_contact import roller_curvature_sum
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.bearings import missing_dimensions
from hubwright.results.life import CaseLife
from hubwright.setup.model import BallBearing

SEVERE = "A row is outside the range of ISO 281: severe. No life is stated."
_ROWS = get_args(Row)


def quick(results: Results, case: CaseResult) -> Working:
    """Return how the textbook's life of both rows follows from their equivalent loads."""
    life = _life_of(results, case)
    elements, dynamic = elements_of(results), results.bearing.dynamic_rating
    assert dynamic is not None  # a life has been computed from it
    one = float(one_row_dynamic_rating(dynamic_rating=dynamic, elements=elements))
    power, slope = ("10/3", "9/10") if elements == "balls" else ("15/4", "8/9")
    loads = {
        f"P_{LETTER[row]}": Symbol(
            rf"P_\mathrm{{{LETTER[row]}}}", f"equivalent load of the {row} row",
            Quantity(getattr(life.equivalent_load, row), "N"), path=f"life.equivalent_load.{row}",
        )
        for row in _ROWS
    }  # fmt: skip
    sums = " + ".join(f"({name}/C)**({power})" for name in loads)
    return _told(
        "Life in this case, the textbook way",
        f"({sums})**(-({slope}))",
        {"C": Symbol("C_1", "rating of one row", Quantity(one, "N"), path="life.row_rating"), **loads},
        life.quick,
        life,
        source="ISO 281 for each row; the first to flake ends both (Weibull).",
        function="bearing_life.row_life",
    )


def detailed(results: Results, case: CaseResult) -> Working:
    """Return how the life follows from the load on every element of both rows."""
    life = _life_of(results, case)
    elements, ring = elements_of(results), results.setup.bearing.turning_ring
    ratings = _raceway_ratings(results)
    turning, standing, power, slope = (3.0, 10 / 3, "10/3", "9/10") if elements == "balls" else (4.0, 4.5, "9/2", "8/9")
    means = {"inner": turning, "outer": standing} if ring == "inner" else {"inner": standing, "outer": turning}
    symbols, sums = {}, []
    for letter, words, rating in (("i", "inner", ratings.inner), ("e", "outer", ratings.outer)):
        symbols[f"C_{letter}"] = Symbol(
            rf"Q_{{\mathrm{{c{letter}}}}}", f"rating of the {words} raceway, per element", Quantity(float(rating), "N")
        )
        for row in _ROWS:
            loads = np.array(getattr(life, row).load)
            mean = float(np.mean(loads ** means[words]) ** (1 / means[words]))
            name = f"Q_{letter}{LETTER[row]}"
            latex = rf"Q_{{\mathrm{{{letter}{LETTER[row]}}}}}"
            symbols[name] = Symbol(
                latex, f"mean load of an element on the {words} raceway, {row} row", Quantity(mean, "N")
            )
            sums.append(f"({name}/C_{letter})**({power})")
    return _told(
        "Life in this case, from the load on every element",
        f"({' + '.join(sums)})**(-({slope}))",
        symbols,
        life.detailed,
        life,
        source=f"ISO/TS 16281. Means of the power {_power(turning)} on the raceway that turns, "
        f"{_power(standing)} on the one that stands.",
        function="raceway_life.raceway_life",
    )


def dent_margin(results: Results, case: CaseResult) -> Working:
    """Return how far the highest pressure is from the one that leaves a dent."""
    life = _life_of(results, case)
    elements = elements_of(results)
    row = min(_ROWS, key=lambda row: float(getattr(life.static_safety, row)))
    highest, margin = getattr(life.peak_contact_pressure, row), getattr(life.static_safety, row)
    worst = max(life.peak_contact_pressure.outboard, life.peak_contact_pressure.inboard)
    return Working(
        what=f"Dent margin, {row} row",
        lines=(Line("s", "(l/p)**3" if elements == "balls" else "(l/p)**2"),),
        symbols={
            "s": Symbol("s_0", "dent margin", Quantity(margin, "1")),
            "l": Symbol(r"p_0", "pressure that leaves a dent", Quantity(DENT_PRESSURE[elements], "Pa"), "MPa"),
            "p": Symbol(
                "p",
                "highest contact pressure of the row",
                Quantity(highest, "Pa"),
                "MPa",
                "life.pressure" if highest == worst else "",
            ),
        },
        source="ISO 76's limit of pressure; load grows with the "
        + ("cube" if elements == "balls" else "square")
        + " of the pressure.",
        function="raceway_life.row_stress",
    )


def pressure(results: Results, case: CaseResult) -> Working:
    """Return how the highest contact pressure follows from the load on the most loaded element."""
    life, bearing = _life_of(results, case), results.setup.bearing
    row = max(_ROWS, key=lambda row: float(getattr(life.peak_contact_pressure, row)))
    load = float(getattr(life.largest_element_load, row))
    peak = Symbol(
        "p", "highest contact pressure", Quantity(getattr(life.peak_contact_pressure, row), "Pa"), "MPa or psi"
    )
    push = Symbol("Q", f"load on the most loaded element, {row} row", Quantity(load, "N"))
    what = f"Highest contact pressure, {row} row"
    if isinstance(bearing, BallBearing):
        conformities: tuple[tuple[Ring, float], ...] = (
            ("inner", bearing.inner_conformity),
            ("outer", bearing.outer_conformity),
        )
        fits = [
            ball_curvature(ball_diameter=bearing.ball_diameter, conformity=closeness, gamma=_gamma(results), ring=ring)
            for ring, closeness in conformities
        ]
        fit = max(fits, key=lambda fit: float(point_contact_pressure(load=1.0, curvature=fit)))
        long, short = (float(axis) for axis in point_contact_semiaxes(load=load, curvature=fit))
        return Working(
            what=what,
            lines=(Line("p", "3*Q/(2*pi*a*b)"),),
            symbols={
                "p": peak,
                "Q": push,
                "a": Symbol("a", "half the length of the contact patch", Quantity(long, "m"), "mm"),
                "b": Symbol("b", "half its width", Quantity(short, "m"), "mm"),
            },
            source="Hertz: the pressure over an elliptic patch. Its axes follow from load, curvatures and steel.",
            function="bearing_contact.point_contact_pressure",
        )
    assert bearing.roller_diameter is not None  # a life has been computed from them
    assert bearing.roller_length is not None
    sums = [
        float(roller_curvature_sum(roller_diameter=bearing.roller_diameter, gamma=_gamma(results), ring=ring))
        for ring in get_args(Ring)
    ]
    return Working(
        what=what,
        lines=(Line("p", "sqrt(Q*E*r/(2*pi*(1 - n**2)*L))"),),
        symbols={
            "p": peak,
            "Q": push,
            "E": Symbol("E", "stiffness of steel", Quantity(STEEL_YOUNGS_MODULUS, "Pa"), "MPa or psi"),
            "r": Symbol(r"\Sigma\rho", "curvatures of roller and raceway together", Quantity(max(sums), "1/m"), "1/mm"),
            "n": Symbol(r"\nu", "sideways give of steel", Quantity(STEEL_POISSONS_RATIO, "1")),
            "L": Symbol("L", "length of a roller that bears", Quantity(bearing.roller_length, "m"), "mm"),
        },
        source="Hertz: the pressure under a line of contact.",
        function="roller_contact.line_contact_pressure",
    )


def _told(
    what: str,
    expression: str,
    symbols: dict[str, Symbol],
    turns: float | None,
    life: CaseLife,
    *,
    source: str,
    function: str,
) -> Working:
    if turns is None or not np.isfinite(turns):
        raise BlockError(
            f"there is no life in '{life.name}': a drop dents rather than wears, and no load wears nothing"
        )
    millions = turns / MILLION
    about = f"About {text(millions, 1)} million turns, and no digit more. {CAUTION}" if life.valid else SEVERE
    result = Symbol("L", "life, ten in a hundred flaked", Quantity(millions, "1"), "million turns")
    return Working(
        what=what,
        lines=(Line("L", expression),),
        symbols={"L": result, **symbols},
        source=source,
        function=function,
        digits=1 if life.valid else 0,
        about=about,
    )


def _life_of(results: Results, case: CaseResult) -> CaseLife:
    if results.life is None:
        raise MissingDataError(result="the life", missing=missing_dimensions(results.setup.bearing))
    return results.life.cases[case.name]


def _raceway_ratings(results: Results) -> RacewayRatings:
    bearing, dynamic = results.setup.bearing, results.bearing.dynamic_rating
    angle, count, ratio = bearing.contact_angle, bearing.elements_per_row, _gamma(results)
    assert dynamic is not None  # a life has been computed from them
    assert angle is not None
    assert count is not None
    one = one_row_dynamic_rating(dynamic_rating=dynamic, elements=elements_of(results))
    if isinstance(bearing, BallBearing):
        return ball_raceway_ratings(
            dynamic_rating=one,
            balls_per_row=count,
            contact_angle=angle,
            gamma=ratio,
            inner_conformity=bearing.inner_conformity,
            outer_conformity=bearing.outer_conformity,
        )
    return roller_raceway_ratings(dynamic_rating=one, rollers_per_row=count, contact_angle=angle, gamma=ratio)


def _gamma(results: Results) -> float:
    bearing = results.setup.bearing
    element, pitch, angle = bearing.element_diameter, bearing.pitch_diameter, bearing.contact_angle
    assert element is not None  # a life has been computed from them
    assert pitch is not None
    assert angle is not None
    return float(gamma(element_diameter=element, pitch_diameter=pitch, contact_angle=angle))


def _power(power: float) -> str:
    return "10/3" if power == 10 / 3 else f"{power:g}"


CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    "life.quick": quick,
    "life.detailed": detailed,
    "life.dent_margin": dent_margin,
    "life.pressure": pressure,
}

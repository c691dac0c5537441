"""Workings of the ratios of two setups: of the harder loaded rows, and of the lives in a case and over a duty."""

from hubwright.lessons.workings.catalogue import completed
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.mechanics.bearing_life import MILLION
from hubwright.quantities import Quantity
from hubwright.results import Results
from hubwright.results.comparison import Compared, Comparison

ROW_LOAD, LIFE, DUTY = "beside.row_load", "beside.life", "beside.duty"
_MORE_DIGITS = "; lives are put in with more digits than they deserve, so that their ratio can be checked"


def ratios(comparison: Comparison, results: Results) -> dict[tuple[str, str], Working]:
    """Return the workings of all ratios of a comparison, by case and path; the duty belongs to no case.

    `results` are those of the other setup, to whose workings they lead.
    """
    found = {}
    for name, each in comparison.row_loads.items():
        if each.ratio is not None:
            found[name, ROW_LOAD] = completed(_row_load(comparison, name, each), ROW_LOAD, results, results.cases[name])
    for name, each in comparison.lives.items():
        if each.ratio is not None and each.valid:
            found[name, LIFE] = completed(_life(comparison, each), LIFE, results, results.cases[name])
    duty = comparison.distance
    if duty is not None and duty.ratio is not None and duty.valid:
        found["", DUTY] = completed(_duty(comparison, duty), DUTY, results)
    return found


def _row_load(comparison: Comparison, name: str, each: Compared) -> Working:
    rows = [_worst_row(results, name) for results in (comparison.other, comparison.base)]
    return Working(
        what=f"Load of the harder loaded row, beside {comparison.base.setup.name}",
        lines=(Line("r", "F/F_0"),),
        symbols={
            "r": _ratio(each),
            "F": Symbol(
                "F", f"load of the {rows[0]} row", Quantity(each.other, "N"), path=f"row_radial_load.{rows[0]}"
            ),
            "F_0": Symbol(
                "F_0", f"that of the {rows[1]} row of {comparison.base.setup.name}", Quantity(each.base, "N")
            ),
        },
        source="A comparison at one wheel, each at its harder loaded row.",
    )


def _life(comparison: Comparison, each: Compared) -> Working:
    return Working(
        what=f"Life, beside {comparison.base.setup.name}",
        lines=(Line("r", "L/L_0"),),
        symbols={
            "r": _ratio(each),
            "L": _millions("L", "life in this case", each.other, "life.detailed"),
            "L_0": _millions("L_0", f"that of {comparison.base.setup.name}", each.base),
        },
        source=f"Lives by ISO/TS 16281{_MORE_DIGITS}.",
        function="raceway_life.raceway_life",
    )


def _duty(comparison: Comparison, each: Compared) -> Working:
    """Return how the ratio of two distances comes about from the lives in all cases of the duty."""
    symbols: dict[str, Symbol] = {"r": _ratio(each)}
    lines = []
    for mark, results, whose in (("", comparison.other, ""), ("0", comparison.base, " before")):
        harm, terms, first = 0.0, [], "0," if mark else ""
        life = results.life
        assert life is not None  # its duty has been compared
        for n, part in enumerate(results.setup.duty, 1):
            alone = life.cases[part.case].detailed or 0.0
            q, turns = f"q{mark}_{n}", f"L{mark}_{n}"
            symbols[q] = Symbol(f"q_{{{first}{n}}}", f"share of {part.case}{whose}", Quantity(part.share, "1"))
            symbols[turns] = _millions(f"L_{{{first}{n}}}", f"life in {part.case}{whose}", alone)
            terms.append(f"{q}/{turns}")
            harm += part.share / (alone / MILLION)
        name = f"d{mark}"
        symbols[name] = Symbol("d_0" if mark else "d", f"harm done by a million turns{whose}", Quantity(harm, "1"))
        circle = f"U{mark}"
        around = Quantity(results.wheel_geometry.rolling_circumference, "m")
        path = "" if mark else "rolling_circumference"
        symbols[circle] = Symbol("U_0" if mark else "U", f"rolled in one turn{whose}", around, "m", path)
        lines.append(Line(name, " + ".join(terms)))
    return Working(
        what=f"Life over the duty, by distance, beside {comparison.base.setup.name}",
        lines=(*lines, Line("r", "d0*U/(d*U0)")),
        symbols=symbols,
        source=f"Wear adds up whatever its order (Palmgren, Miner); lives by ISO/TS 16281{_MORE_DIGITS}.",
        function="bearing_life.duty_life",
    )


def _ratio(each: Compared) -> Symbol:
    assert each.ratio is not None
    low, high = (None, None) if each.span is None else (each.span.low, each.span.high)
    return Symbol("r", "after over before", Quantity(each.ratio, "1", low=low, high=high))


def _millions(latex: str, words: str, turns: float, path: str = "") -> Symbol:
    return Symbol(latex, words, Quantity(turns / MILLION, "1"), "million turns", path)


def _worst_row(results: Results, case: str) -> str:
    radial = results.cases[case].row_radial_load
    assert radial is not None  # it has been compared
    return "outboard" if radial.outboard >= radial.inboard else "inboard"

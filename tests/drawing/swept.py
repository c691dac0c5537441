"""Every figure of the catalogue from solved setups: for tests at random and for `benchmarks/sweep.py`."""

from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path

from drawing.written_checks import Failure
from hubwright.drawing import png
from hubwright.drawing.marks import Drawing
from hubwright.errors import CaseError, HubwrightError
from hubwright.results import Results, draws, life_curves, part_spans, solve
from hubwright.results.beams import BeamResults
from hubwright.results.changes import NotComparableError
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.scenes.chart_rows import BarValue
from hubwright.scenes.vocabulary import Scene, Units
from hubwright.setup.variants import with_inputs

PICTURES = Path(__file__).resolve().parents[2] / "build" / "sweep"
Maker = Callable[[Units], Scene]
_BARS = 6
_FEW = 8
# what figures refuse in words although the catalogue lets them try: two setups of which nothing can be said together,
# a wheel that hangs or stands on an edge, a bearing without load
_REFUSED: dict[str, type[HubwrightError]] = {
    "split of a change": NotComparableError,
    "setups compared": NotComparableError,
    "two setups under one load line": CaseError,
    "scrub radius": CaseError,
    "contact pressure against load": CaseError,
}


@contextmanager
def few_draws() -> Iterator[None]:
    """Draw few inputs from their ranges: a band is laid out alike from few as from many, which take longest."""
    numbers = [each.__kwdefaults__ for each in (draws.draws_of, draws.drawn_inputs, draws.Draws.__init__)]
    before = [each["number"] for each in numbers]
    shares = life_curves.DRAWS, part_spans.FEWEST, part_spans.BUDGET
    for each in numbers:
        each["number"] = _FEW
    life_curves.DRAWS, part_spans.FEWEST, part_spans.BUDGET = _FEW, 2, _FEW
    try:
        yield
    finally:
        for each, number in zip(numbers, before, strict=True):
            each["number"] = number
        life_curves.DRAWS, part_spans.FEWEST, part_spans.BUDGET = shares


def figures_of(
    solved: Results | BeamResults, turn: int, other: Results | None = None, names: Iterable[str] | None = None
) -> Iterator[tuple[str, str, Maker]]:
    """Yield the figures of a solved setup: name, case and what makes the scene; another case each turn.

    A figure of two setups shows `other`, solved for the same wheel, before this one, in a case that both have.
    """
    for name in FIGURES if names is None else names:
        figure, function = FIGURES[name], scene_function(name)
        if isinstance(solved, BeamResults):
            if figure.takes == "beam":
                yield name, "", lambda units, draw_it=function: draw_it(solved, units=units)
        elif figure.takes == "data":
            rows = sensitivity(solved, turn) if name == "sensitivity bars" else comparison(solved, turn)
            if rows:
                yield (
                    name,
                    "",
                    lambda units, draw_it=function, given=rows: draw_it(given, quantity="One result", units=units),
                )
        elif figure.takes == "two results":
            both = [] if other is None else [case for case in figure.cases(other) if case in figure.cases(solved)]
            if both:
                case = both[turn % len(both)]
                yield (
                    name,
                    case,
                    lambda units, draw_it=function, shown=case: draw_it(other, solved, case=shown, units=units),
                )
        elif figure.takes == "results" and (cases := figure.cases(solved)):
            case = cases[turn % len(cases)]
            yield (
                name,
                case,
                lambda units, draw_it=function, shown=case: draw_it(solved, case=shown, units=units),
            )


def scene_or_refusal(name: str, make: Maker, units: Units) -> Scene | None:
    """Return the scene of a figure, or None where it says why there is none; any other error is raised."""
    try:
        return make(units)
    except _REFUSED.get(name, ()):
        return None


def comparison(results: Results, turn: int) -> list[BarValue]:
    """Return one result in every case, with its span: the moment at the bearing, or what the outboard row carries."""
    rows = []
    for name, case in list(results.cases.items())[:_BARS]:
        value, key = case.bearing_moment.x, f"cases.{name}.bearing_moment.x"
        if turn % 2 and case.row_radial_load is not None:
            value, key = case.row_radial_load.outboard, f"cases.{name}.row_radial_load.outboard"
        span = results.spans.get(key)
        low, high = (None, None) if span is None else (min(span.low, value), max(span.high, value))
        rows.append(BarValue(name, value, low, high, "moment" if key.endswith("moment.x") else "force"))
    return [row for row in rows if row.kind == rows[0].kind]


def sensitivity(results: Results, turn: int) -> list[BarValue]:
    """Return the moment at the bearing of one case with each input in turn at either end of its range."""
    case = list(results.cases)[turn % len(results.cases)]
    if results.cases[case].kind == "drop":
        case = "standing"
    ranged = {
        key: entry
        for key, entry in results.setup.inputs.items()
        if entry.has_range and not entry.derived_from and not key.startswith("case.")
    }
    rows = []
    for key, entry in list(ranged.items())[:_BARS]:
        ends = []
        for end in (entry.low, entry.high):
            assert end is not None
            try:
                moved = solve(with_inputs(results.setup, {key: end}), results.wheel)
            except CaseError:  # an end at which a case cannot stand
                break
            ends.append(moved.cases[case].bearing_moment.x)
        if len(ends) == 2:
            rows.append(BarValue(key, results.cases[case].bearing_moment.x, ends[0], ends[1], "moment"))
    return rows


def picture(drawing: Drawing, where: str, failure: Failure) -> Path:
    """Write the picture of a failure and return where it is."""
    PICTURES.mkdir(parents=True, exist_ok=True)
    slug = "-".join(f"{where} {failure.kind}".replace(",", "").split())
    file = PICTURES / f"{slug}.png"
    png(drawing, file, width_px=800 if drawing.view else 1600, title=False)
    return file

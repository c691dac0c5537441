"""The three sentences of a customer's sheet: what changes, by how much with its span, and what is not settled."""

from markupsafe import Markup

from hubwright.lessons.numbers import show, show_range
from hubwright.lessons.ratio_tables import factor, not_settled, span
from hubwright.lessons.words import listed, side, wheel_words
from hubwright.lessons.worked_results import Ways
from hubwright.lessons.workings.beside import DUTY, LIFE, ROW_LOAD
from hubwright.quantities import Quantity
from hubwright.results import Results
from hubwright.results.comparison import Compared, Comparison

_SAME_PLACE = 0.05e-3  # m: shown alike
_SAME_LOAD = 1e-6
_MOVES = {"raises": "is raised", "lowers": "is lowered", "unchanged": "stays as it was"}
NO_BEARING = "The file does not say enough of the bearing to tell its rows apart."
ALONE = (
    "Not settled by these data: how long this bearing lasts. A life is told only beside that of another setup, and "
    "water, dirt, dents and slack usually end a hub sooner."
)
AGE = "how long this one bearing lasts: water, dirt, dents and slack usually end a hub sooner"


def what_changes(comparison: Comparison, ways: Ways) -> Markup:
    """Return what the change does to the load line and to the load that stands on the wheel."""
    before, after = comparison.base, comparison.other
    moved = [results.wheel_geometry.load_line_offset for results in (before, after)]
    stands = [results.weight.wheel_loads[results.wheel] for results in (before, after)]
    if abs(moved[1] - moved[0]) > _SAME_PLACE:
        line = Markup("the load line moves from {} to {}").format(_place(moved[0]), _beside_middle(moved[1], ways))
    else:
        line = Markup("the load line stays {}").format(_beside_middle(moved[1], ways))
    now = ways.link(show(Quantity(stands[1], "N")), "weight.this_wheel")
    if abs(stands[1] / stands[0] - 1) > _SAME_LOAD:
        load = Markup("{} stand on the wheel in place of {}").format(now, show(Quantity(stands[0], "N")))
    else:
        load = Markup("{} stand on the wheel as before").format(now)
    return Markup("At the {} wheel {}, and {}.").format(wheel_words(after.wheel), line, load)


def by_how_much(comparison: Comparison, ways: Ways) -> Markup:
    """Return the ratio of the worst row's load, standing and where it is largest, and that of the lives."""
    standing = comparison.row_loads.get("standing")
    if standing is None:
        return Markup("{}").format(NO_BEARING)
    words = Markup("Standing, the load of the harder loaded row {}").format(_told(standing, ways, "standing"))
    name, hardest = max(comparison.row_loads.items(), key=lambda entry: entry[1].other)
    if name != "standing":
        words += Markup("; in the hardest case of the file, <i>{}</i>, it {}").format(name, _told(hardest, ways, name))
    return words + Markup(". ") + _life(comparison, ways)


def not_settled_sentence(comparison: Comparison) -> Markup:
    """Return what the ranges of the inputs leave open."""
    open_still = not_settled(comparison)
    # a long list would fill the sheet; the report has all of it
    more = [f"{len(open_still) - 3} more in the report"] if len(open_still) > 4 else []
    shown = open_still[: 3 if more else 4]
    which = Markup("which way {} {} moved, and ").format(
        listed([*shown, *more]), "is" if len(open_still) == 1 else "are"
    )
    return Markup("Not settled by these data: {}{}.").format(which if open_still else Markup(""), AGE)


def as_it_stands(results: Results, ways: Ways) -> tuple[Markup, Markup, Markup]:
    """Return the sentences about a setup that changes nothing."""
    line = results.wheel_geometry.load_line_offset
    load = results.weight.wheel_loads[results.wheel]
    first = Markup("Nothing is changed: at the {} wheel the load line runs {}, and {} stand on it.").format(
        wheel_words(results.wheel),
        _beside_middle(line, ways),
        ways.link(show(Quantity(load, "N")), "weight.this_wheel"),
    )
    radial = results.cases["standing"].row_radial_load
    if radial is None:
        return first, Markup("{}").format(NO_BEARING), Markup("{}").format(ALONE)
    row = "outboard" if radial.outboard >= radial.inboard else "inboard"
    second = Markup("Standing, the harder loaded row, the {} one, carries {}").format(
        row, _loaded(results, "standing", ways)
    )
    name = max(results.cases, key=lambda case: _worst(results, case))
    if name != "standing":
        second += Markup("; in the hardest case of the file, <i>{}</i>, the harder loaded row carries {}").format(
            name, _loaded(results, name, ways)
        )
    return first, second + ".", Markup("{}").format(ALONE)


def _worst(results: Results, case: str) -> float:
    radial = results.cases[case].row_radial_load
    return 0.0 if radial is None else max(radial.outboard, radial.inboard)


def _loaded(results: Results, case: str, ways: Ways) -> Markup:
    radial = results.cases[case].row_radial_load
    assert radial is not None
    row = "outboard" if radial.outboard >= radial.inboard else "inboard"
    value = ways.link(show(Quantity(_worst(results, case), "N")), f"row_radial_load.{row}", case)
    found = results.spans.get(f"cases.{case}.row_radial_load.{row}")
    if found is None:
        return value
    return Markup("{} ({})").format(value, show_range(Quantity(0.0, "N", low=found.low, high=found.high)))


def _place(offset: float) -> Markup:
    where = side(Quantity(offset, "m"))
    return Markup(where) if where == "on centre" else Markup("{} {}").format(show(Quantity(abs(offset), "m")), where)


def _beside_middle(offset: float, ways: Ways) -> Markup:
    if side(Quantity(offset, "m")) == "on centre":
        return Markup("through the bearing’s middle")
    return Markup("{} of the bearing’s middle").format(ways.link(_place(offset), "load_line_offset"))


def _told(each: Compared, ways: Ways, case: str) -> Markup:
    """Return a ratio with its span and verdict, to stand after "the load of …"."""
    if each.ratio is None:
        change = Markup("{} to {}").format(show(Quantity(each.base, "N")), show(Quantity(each.other, "N")))
        return Markup("goes from {}").format(change)
    if each.verdict == "unchanged":
        return Markup("stays as it was")
    times = ways.link(Markup("{} times").format(factor(each, each.ratio)), ROW_LOAD, case)
    told = Markup("is {} what it was{}").format(times, _span(each))
    return told if each.verdict != "not settled" else told + Markup(", which settles no direction")


def _span(each: Compared) -> Markup:
    if each.span is None or each.ratio is None:
        return Markup("")
    return Markup(" ({})").format(span(each))


def _life(comparison: Comparison, ways: Ways) -> Markup:
    name = "Over the duty of the file, the life" if comparison.distance is not None else "Standing, the life"
    each = comparison.distance or comparison.lives.get("standing")
    if each is None:
        return Markup("The file does not say enough of the bearing for its life.")
    if not each.valid:
        return Markup("One of its loads is severe, outside the range of the life formula: no ratio of lives is given.")
    if each.ratio is None:
        return Markup("No ratio of lives is given: one of the two runs without load.")
    if each.verdict == "unchanged":
        return Markup("{} of the bearing stays as it was.").format(name)
    verdict = (
        ": these data do not settle which way" if each.verdict == "not settled" else f": it {_MOVES[each.verdict]}"
    )
    path, case = (DUTY, "") if comparison.distance is not None else (LIFE, "standing")
    times = ways.link(Markup("{} times").format(factor(each, each.ratio)), path, case)
    return Markup("{} of the bearing is {} what it was{}{}.").format(name, times, _span(each), verdict)

"""Ratios of a comparison in tables: each with its span and verdict, a life never by itself."""

from collections.abc import Sequence

from markupsafe import Markup, escape

from hubwright.lessons.life_views import VERDICTS
from hubwright.lessons.numbers import show, show_range
from hubwright.lessons.stacked_table import Column, Row, stacked_table
from hubwright.lessons.worked_results import Ways
from hubwright.lessons.workings.beside import DUTY, LIFE, ROW_LOAD
from hubwright.quantities import Quantity, format_number
from hubwright.results.comparison import Compared, Comparison
from hubwright.scenes.ratio_panels import times

SEVERE = "severe: outside the range of the life formula, no ratio of lives is given"
WITHOUT_LOAD = "without load in one of the two"
_COLUMNS = (Column("Ratio"), Column("Span"), Column("The change", number=False))


def ratio(each: Compared, unit: str = "N") -> Markup:
    """Return the ratio to the base, else the difference with its sign."""
    if each.ratio is not None:
        return Markup("× {}").format(factor(each, each.ratio))
    sign = "+" if each.difference > 0 else ""
    return Markup("{}{}").format(sign, show(Quantity(each.difference, unit)))


def span(each: Compared, unit: str = "N") -> Markup:
    """Return the span of the ratio or difference; empty where the ranges do not move it."""
    if each.span is None:
        return Markup("")
    if each.ratio is None:
        return show_range(Quantity(each.difference, unit, low=each.span.low, high=each.span.high))
    return Markup("{} to {}").format(factor(each, each.span.low), factor(each, each.span.high))


def factor(each: Compared, value: float) -> str:
    """Return a ratio, or an end of its span, as figures show it; with one more digit where a settled end reads as 1."""
    ends = [] if each.span is None else [each.span.low, each.span.high]
    settled = each.verdict in ("raises", "lowers")
    if settled and abs(value - 1) < 0.1 and any(abs(end - 1) < 0.0005 for end in ends):
        return format_number(value, significant=5, decimals=4)
    return times(value)


def life_cells(each: Compared, ways: Ways, case: str) -> tuple[Markup, Markup, Markup]:
    """Return ratio, span and verdict of two lives; none where one of them is outside the formula's range.

    Without a case it is the life over the duty.
    """
    if not each.valid:
        return Markup("–"), Markup(""), escape(SEVERE)
    if each.ratio is None:
        return Markup("–"), Markup(""), escape(WITHOUT_LOAD)
    return ways.link(ratio(each), LIFE if case else DUTY, case), span(each), escape(VERDICTS[each.verdict])


def load_cells(each: Compared, ways: Ways, case: str) -> tuple[Markup, Markup, Markup]:
    """Return ratio, or difference, span and verdict of two loads."""
    return ways.link(ratio(each), ROW_LOAD, case), span(each), escape(VERDICTS[each.verdict])


def life_table(comparison: Comparison, ways: Ways) -> Markup:
    """Return the lives of a setup beside its base: ratios with spans and verdicts, that of the duty first."""
    rows = [Row(escape(name.capitalize()), life_cells(each, ways, name)) for name, each in comparison.lives.items()]
    if comparison.distance is not None:
        rows.insert(0, Row(escape("The duty of the file, by distance"), life_cells(comparison.distance, ways, "")))
    caption = f"Life of {comparison.other.setup.name} over that of {comparison.base.setup.name}, with its span."
    return stacked_table(caption, "Case", _COLUMNS, rows, kind="pairs")


def load_table(comparison: Comparison, ways: Ways) -> Markup:
    """Return the worst row's load of a setup beside its base, case by case."""
    rows = [Row(escape(name.capitalize()), load_cells(each, ways, name)) for name, each in comparison.row_loads.items()]
    caption = (
        f"Load of the harder loaded row of {comparison.other.setup.name} over that of {comparison.base.setup.name}."
    )
    return stacked_table(caption, "Case", _COLUMNS, rows, kind="pairs")


def not_settled(comparison: Comparison) -> list[str]:
    """Return what the ranges leave open, in words: "the life in the duty of the file"."""
    loads = [f"the load in {name}" for name, each in comparison.row_loads.items() if each.verdict == "not settled"]
    lives: Sequence[tuple[str, Compared]] = [
        *comparison.lives.items(),
        *([] if comparison.distance is None else [("the duty of the file", comparison.distance)]),
    ]
    return loads + [
        f"the life in {name}"
        for name, each in lives
        if each.verdict == "not settled" and each.valid and each.ratio is not None
    ]

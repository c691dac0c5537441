"""A result in one sentence to copy: what it is, its value and span, of which setup, and what it leaves out."""

from collections.abc import Mapping

from hubwright.lessons.numbers import NO_BREAK
from hubwright.lessons.workings.model import Working
from hubwright.lessons.workings.notation import plain_symbol
from hubwright.quantities import System, format_range
from hubwright.results import CaseResult, Results
from hubwright.setup.document import Document

CAUTION = "One in ten of many such bearings would have flaked by then; water, dents and slack usually end a hub sooner."
_ELSEWHERE = ("load_line_offset", "loaded_radius")  # the tables of spans keep them under the wheel


def in_one_sentence(made: Working, system: System) -> str:
    """Return a working's result as one sentence; the page adds the link."""
    told = made.about.rstrip(".")
    if made.told_openly:
        value = made.result.value.shown(system).text
        told = f"{plain_symbol(made.result.latex)} = {value}{_span(made, system)}"
    about = f", for {setup_words(*made.subject)}" if made.subject is not None else ""
    rest = f"; leaves out {made.leaves_out.rstrip('.')}" if made.leaves_out else ""
    return f"{made.what}{about}: {told}{rest}.".replace(NO_BREAK, " ")


def setup_words(results: Results, case: CaseResult | None = None) -> str:
    """Return the words for a setup, seen at its wheel, in a case: with what a lesson changed in it."""
    wheel = " ".join(reversed(results.wheel.split("_")))
    words = f"“{results.setup.name}”{_changes(results)}, {wheel} wheel"
    return f"{words}, {case.name}" if case is not None else words


def _changes(results: Results) -> str:
    """Return what is different from the file: keys and what was written for them."""
    source = results.setup.source
    if not isinstance(source, Document) or source.base is None or source.path is not None:
        return ""
    told = []
    for key in sorted(source.own):
        value = source.get(key)
        if key != "name" and not isinstance(value, Mapping):
            told.append(f"{key} = {value}" if isinstance(value, str | int | float) else f"other {key}")
    return f" with {', '.join(dict.fromkeys(told))}" if told else ""


def _span(made: Working, system: System) -> str:
    low_high = span_of(made)
    kind = made.result.value.kind
    if low_high is None or kind is None:
        return ""
    return f" (span {format_range(*low_high, kind, system)} over the ranges of the inputs)"


def span_of(made: Working) -> tuple[float, float] | None:
    """Return the span of a result over the ranges of all inputs, where they move it."""
    value = made.result.value
    if value.low is not None and value.high is not None:
        return value.low, value.high
    if made.subject is None:
        return None
    results, case = made.subject
    path = made.path.replace("this_wheel", results.wheel)
    name = f"cases.{case.name}.{path}" if case else f"wheel_geometry.{path}" if path in _ELSEWHERE else path
    found = results.spans.get(name)
    return None if found is None else (found.low, found.high)

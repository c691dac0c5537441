"""The spans of a solved setup as text: a cell beside a value, and tables of the loads in every case."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from hubwright.quantities import Kind, System, format_number, format_range
from hubwright.results.draws import HIGH, LOW, Span

HEAD = f"{100 * LOW:.0f} to {100 * HIGH:.0f} %"
_LOADS: tuple[tuple[str, str, Kind], ...] = (
    ("F_z", "contact_force.z", "force"),
    ("M_x", "bearing_moment.x", "moment"),
    ("M_z", "bearing_moment.z", "moment"),
    ("F_A", "row_radial_load.outboard", "force"),
    ("F_B", "row_radial_load.inboard", "force"),
)
_ELEMENTS: tuple[tuple[str, str, Kind], ...] = (
    ("load A", "largest_ball_load.outboard", "force"),
    ("load B", "largest_ball_load.inboard", "force"),
    ("pressure A", "peak_contact_pressure.outboard", "pressure"),
    ("pressure B", "peak_contact_pressure.inboard", "pressure"),
)


@dataclass(frozen=True)
class Table:
    """A title, heads and rows of text."""

    title: str
    heads: tuple[str, ...]
    rows: list[tuple[str, ...]]


def span_cell(spans: Mapping[str, Span], name: str, kind: Kind, units: System) -> str:
    """Return a value's span as text, empty where nothing moves it."""
    found = spans.get(name)
    if found is None:
        return ""
    return format_range(found.low, found.high, kind, units)


def life_cell(spans: Mapping[str, Span], name: str) -> str:
    """Return the span of a life in million revolutions, empty where nothing moves it."""
    found = spans.get(name)
    if found is None:
        return ""
    return " to ".join(format_number(end / 1e6, significant=2) for end in (found.low, found.high))


def span_tables(spans: Mapping[str, Span], cases: Sequence[str], units: System) -> list[Table]:
    """Return the spans of the loads and of the worst elements in every case."""
    return [
        *_table("Spans of the loads", "cases", _LOADS, spans, cases, units),
        *_table("Spans where loaded most", "life", _ELEMENTS, spans, cases, units),
    ]


def span_note(draws: int) -> str:
    """Return how the spans were made and how well they are known."""
    return f"Spans: 5th to 95th percentile of {draws} draws of all inputs within their ranges, {sampling_words(draws)}."


def sampling_words(draws: int) -> str:
    """Return how well percentiles of so many draws are known: the standard error of their ranks."""
    points = 100 * math.sqrt(LOW * (1 - LOW) / draws)
    return f"each percentile known to ± {format_number(points, significant=2)} points"


def _table(
    title: str,
    section: str,
    columns: Sequence[tuple[str, str, Kind]],
    spans: Mapping[str, Span],
    cases: Sequence[str],
    units: System,
) -> list[Table]:
    rows = [
        (case, *(span_cell(spans, f"{section}.{case}.{name}", kind, units) for _, name, kind in columns))
        for case in cases
    ]
    rows = [row for row in rows if any(row[1:])]
    return [Table(title, ("case", *(head for head, *_ in columns)), rows)] if rows else []

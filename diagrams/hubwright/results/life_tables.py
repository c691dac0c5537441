"""The lives of a solved setup as the tables that `hubwright solve` prints."""

from collections.abc import Callable, Mapping

from hubwright.mechanics.bearing_life import SURVIVORS, reliability_factor
from hubwright.quantities import Kind, System, format_number
from hubwright.results.draws import Span
from hubwright.results.life import CaseLife, DutyLife, Life
from hubwright.results.model import Results, Rows
from hubwright.results.span_tables import HEAD, Table, life_cell, span_cell
from hubwright.results.water import lubrication_result
from hubwright.setup.model import BallBearing

Show = Callable[[float | None, Kind], str]
SEVERE = "severe"  # outside the range of the standard: no life is stated

CAUTION = (
    "Life: one in ten of many such bearings would have flaked by then; water, dents and slack usually end a hub sooner."
)


def life_tables(life: Life, spans: Mapping[str, Span], show: Show, units: System) -> list[Table]:
    """Return the tables of a bearing's lives: every case, its worst elements, and what the duty uses up."""
    tables = [
        Table(
            "Life in million revolutions",
            ("case", "quick", HEAD, "detailed", HEAD),
            [_life_row(case, spans) for case in life.cases.values() if case.detailed is not None],
        ),
        Table(
            "Where loaded most, outboard row A and inboard row B: element load, contact pressure, dent margin",
            ("case", "load A", "load B", "pressure A", "pressure B", "dents A", "dents B"),
            [_element_row(case, show) for case in life.cases.values()],
        ),
    ]
    if life.duty is not None:
        tables.append(_duty_table(life.duty, spans, show, units))
    greased = [case for case in life.cases.values() if case.life_factor is not None]
    if greased:
        rows = [_greased_row(case, spans) for case in greased]
        if life.duty is not None and life.duty.modified_revolutions is not None:
            revolutions = millions(life.duty.modified_revolutions)
            span = life_cell(spans, "life.duty.modified_revolutions")
            rows.append(("duty", *[""] * 4, revolutions, span))
        heads = ("case", "row A ×", HEAD, "row B ×", HEAD, "million revolutions", HEAD)
        tables.append(Table("Detailed life as dirt and film leave it: factor of each row, life of both", heads, rows))
    return tables


def reliability_note() -> str:
    """Return what is left of a life when more than nine in ten are to reach it."""
    parts = [
        f"{format_number(100 * share, significant=3)} % reach × "
        f"{format_number(float(reliability_factor(survivors=share)), significant=2)}"
        for share in SURVIVORS[1:]
    ]
    return f"Nine in ten reach these lives; {', '.join(parts)} of them."


def roller_note(results: Results) -> str:
    """Return how the two ways to a roller's life stand to each other; empty for balls."""
    if isinstance(results.setup.bearing, BallBearing):
        return ""
    return (
        "Rollers: detailed life goes with the load to the power of four, quick with ten thirds, so the two differ by "
        "about (C/P)^(2/3); one slice to a roller sees no edge stress."
    )


def grease_note(results: Results) -> str:
    """Return by what dirt and film the modified lives were made; empty where the file leaves a part unsaid."""
    found, lubrication = lubrication_result(results), results.setup.lubrication
    if found.contamination_factor is None or found.missing or lubrication is None:
        return ""
    low, high = (format_number(end, significant=2) for end in found.contamination_factor)
    return (
        f"Dirt and film: {lubrication.contamination}, factor e_C {low} to {high}, the middle taken; "
        f"viscosity ratio {format_number(float(lubrication.viscosity_ratio or 0.0), significant=2)}."
    )


def millions(revolutions: float | None) -> str:
    """Return a life in million revolutions, two digits."""
    return "" if revolutions is None else format_number(revolutions / 1e6, significant=2)


def _life_row(case: CaseLife, spans: Mapping[str, Span]) -> tuple[str, ...]:
    if not case.valid:
        return (case.name, SEVERE, "", SEVERE, "")
    quick, detailed = (life_cell(spans, f"life.{case.name}.{method}") for method in ("quick", "detailed"))
    return (case.name, millions(case.quick), quick, millions(case.detailed), detailed)


def _greased_row(case: CaseLife, spans: Mapping[str, Span]) -> tuple[str, ...]:
    assert case.life_factor is not None  # life_tables
    cells: list[str] = []
    for row in ("outboard", "inboard"):
        span = spans.get(f"life.{case.name}.life_factor.{row}")
        cells += [
            format_number(getattr(case.life_factor, row), significant=2),
            "" if span is None else " to ".join(format_number(end, significant=2) for end in (span.low, span.high)),
        ]
    if not case.valid:
        return (case.name, *cells, SEVERE, "")
    return (case.name, *cells, millions(case.modified), life_cell(spans, f"life.{case.name}.modified"))


def _element_row(case: CaseLife, show: Show) -> tuple[str, ...]:
    return (
        case.name,
        *_cells(case.largest_element_load, lambda load: show(load, "force")),
        *_cells(case.peak_contact_pressure, lambda pressure: show(pressure, "pressure")),
        *_cells(case.static_safety, lambda margin: format_number(margin, significant=2)),
    )


def _cells(rows: Rows, text: Callable[[float], str]) -> tuple[str, str]:
    return text(rows.outboard), text(rows.inboard)


def _duty_table(duty: DutyLife, spans: Mapping[str, Span], show: Show, units: System) -> Table:
    outside = "" if duty.valid else "; a case is outside the range"
    return Table(
        "Duty: share of the distance, and of the life that is used up",
        ("case", "distance", "life used"),
        [
            *((part.case, _percent(part.share), _percent(part.damage_share)) for part in duty.parts),
            ("together", show(duty.distance, "distance"), f"{millions(duty.revolutions)} million revolutions{outside}"),
            (
                HEAD,
                span_cell(spans, "life.duty.distance", "distance", units),
                life_cell(spans, "life.duty.revolutions"),
            ),
        ],
    )


def _percent(share: float) -> str:
    return f"{format_number(100 * share, significant=2)} %"

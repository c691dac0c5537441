"""The lives of a solved setup as the tables that `hubwright solve` prints."""

from collections.abc import Callable
from dataclasses import dataclass

from hubwright.quantities import Kind, format_number
from hubwright.results.life import CaseLife, DutyLife, Life
from hubwright.results.model import Rows

Show = Callable[[float | None, Kind], str]
SEVERE = "severe"  # outside the range of the standard: no life is stated

CAUTION = (
    "Life: one in ten of many such bearings would have flaked by then; water, dents and slack usually end a hub sooner."
)


@dataclass(frozen=True)
class Table:
    """A title, heads and rows of text."""

    title: str
    heads: tuple[str, ...]
    rows: list[tuple[str, ...]]


def life_tables(life: Life, show: Show) -> list[Table]:
    """Return the tables of a bearing's lives: every case, and what the duty uses up."""
    tables = [
        Table(
            "Life in million revolutions, quick and detailed; outboard row A and inboard row B where loaded most",
            ("case", "quick", "detailed", "load A", "load B", "pressure A", "pressure B", "dents A", "dents B"),
            [_case_row(case, show) for case in life.cases.values()],
        )
    ]
    if life.duty is not None:
        tables.append(
            Table(
                "Duty: share of the distance, and of the life that is used up",
                ("case", "distance", "life used"),
                [
                    *((part.case, _percent(part.share), _percent(part.damage_share)) for part in life.duty.parts),
                    ("together", *_duty_cells(life.duty, show)),
                ],
            )
        )
    return tables


def millions(revolutions: float | None) -> str:
    """Return a life in million revolutions, two digits."""
    return "" if revolutions is None else format_number(revolutions / 1e6, significant=2)


def _case_row(case: CaseLife, show: Show) -> tuple[str, ...]:
    lives = (millions(case.quick), millions(case.detailed))
    if not case.valid and case.detailed is not None:
        lives = (SEVERE, SEVERE)
    return (
        case.name,
        *lives,
        *_cells(case.largest_element_load, lambda load: show(load, "force")),
        *_cells(case.peak_contact_pressure, lambda pressure: show(pressure, "pressure")),
        *_cells(case.static_safety, lambda margin: format_number(margin, significant=2)),
    )


def _cells(rows: Rows, text: Callable[[float], str]) -> tuple[str, str]:
    return text(rows.outboard), text(rows.inboard)


def _duty_cells(duty: DutyLife, show: Show) -> tuple[str, str]:
    outside = "" if duty.valid else "; a case is outside the range"
    return show(duty.distance, "distance"), f"{millions(duty.revolutions)} million revolutions{outside}"


def _percent(share: float) -> str:
    return f"{format_number(100 * share, significant=2)} %"

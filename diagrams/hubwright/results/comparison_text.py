"""What `hubwright compare` prints: setups beside a base, as readable tables or as one JSON object."""

import json
import math
from collections.abc import Mapping, Sequence
from pathlib import Path

from hubwright.quantities import System, default_kind, format_number
from hubwright.results.changes import NotComparableError
from hubwright.results.comparison import Compared, Comparison, compare
from hubwright.results.contributions import EXACT, Contribution
from hubwright.results.draws import HIGH, LOW
from hubwright.results.export import Json, number
from hubwright.results.life_tables import CAUTION, SEVERE
from hubwright.results.printing import Page
from hubwright.results.span_tables import HEAD, Table
from hubwright.setup.model import Beam, Setup

CAUTIONS = (
    "A simplified teaching model: it does not say that a change is safe or legal. The vehicle maker's limits (axle, "
    "tire, wheel ratings) and local codes come first."
)


def compared_text(files: Sequence[Path], *, as_json: bool, wheel: str | None, units: System) -> str:
    """Read files, compare each with the first and return what to print."""
    from hubwright.setup import load

    setups: list[Setup] = []
    for file in files:
        setup = load(file)
        if isinstance(setup, Beam):
            raise NotComparableError(f"{file.name} is a beam: compare vehicles, trailers or setups")
        setups.append(setup)
    base, *others = setups
    compared = [compare(base, other, wheel) for other in others]  # type: ignore[arg-type]
    if as_json:
        entry = {"base": base.name, "comparisons": [comparison_as_json(each) for each in compared]}
        return json.dumps(entry, indent=2, ensure_ascii=False, allow_nan=False) + "\n"
    page = Page(units)
    for each in compared:
        _print(page, each)
    page.line(CAUTIONS)
    return page.text()


def comparison_as_json(comparison: Comparison) -> Json:
    """Return a comparison as plain data: every ratio with low and high, every part with its factor."""
    life: Json = {case: _compared(each, "1") for case, each in comparison.lives.items()}
    duty = (("revolutions", comparison.revolutions, "1"), ("distance", comparison.distance, "m"))
    life["duty"] = {name: _compared(each, unit) for name, each, unit in duty if each is not None} or None
    return {
        "setup": comparison.other.setup.name,
        "wheel": comparison.wheel,
        "worst_wheel": dict(comparison.worst_wheel),
        "changes": [{"name": change.name, "kind": change.kind} for change in comparison.changes],
        "worst_row_load": {case: _compared(each, "N") for case, each in comparison.row_loads.items()},
        "overturning_moment": {case: _compared(each, "N*m") for case, each in comparison.moments.items()},
        "life": life,
        "contributions": {
            name: [
                {"change": part.change, "factor": part.factor, "log_error": part.error, "nothing": part.nothing}
                for part in parts
            ]
            for name, parts in comparison.parts.items()
        },
        "spans": {"low_percentile": LOW, "high_percentile": HIGH, "draws": comparison.draws},
        "warnings": list(comparison.warnings),
    }


def _compared(each: Compared, unit: str) -> Json:
    entry: Json = {"base": number(each.base, unit), "other": number(each.other, unit), "verdict": each.verdict}
    name, value, shown = ("difference", each.difference, unit) if each.ratio is None else ("ratio", each.ratio, "1")
    if each.span is None:
        entry[name] = number(value, shown)
    else:
        entry[name] = number(value, shown, low=each.span.low, high=each.span.high)
        errors = {"low_error": each.span.low_error, "high_error": each.span.high_error}
        if entry[name] is not None:
            entry[name] |= {end: error for end, error in errors.items() if math.isfinite(error)}
    if not each.valid:
        entry["valid"] = False
    return entry


def _print(page: Page, comparison: Comparison) -> None:
    base, other = comparison.base.setup.name, comparison.other.setup.name
    page.line(f"{other} beside {base}: {comparison.wheel.replace('_', ' ')} wheel")
    page.line(_worst_words(comparison))
    names = [change.name for change in comparison.changes]
    page.line(f"Changed: {', '.join(names)}." if names else "Nothing that acts on loads or life is changed.")
    page.line()
    for table in _tables(page, comparison):
        page.table(table.title, table.heads, table.rows)
    for warning in comparison.warnings:
        page.line(warning)
    page.line(
        f"Spans: 5th to 95th percentile of {comparison.draws} draws of all inputs within their ranges, "
        "the same draws for both setups."
    )
    if comparison.lives:
        page.line(CAUTION)
    page.line()


def _worst_words(comparison: Comparison) -> str:
    mine, theirs = (comparison.worst_wheel[name].replace("_", " ") for name in ("base", "other"))
    if mine == theirs:
        return f"Worst wheel of the axle in both: {theirs}."
    return f"Worst wheel of the axle: {theirs}, before the change {mine}."


def _tables(page: Page, comparison: Comparison) -> list[Table]:
    heads = ("case", "before", "after", "ratio or difference", HEAD, "verdict")
    tables = [
        Table(
            "Load of the worst row",
            heads,
            [_row(page, case, each, "N") for case, each in comparison.row_loads.items()],
        ),
        Table(
            "Moment M_x on the bearing",
            heads,
            [_row(page, case, each, "N*m") for case, each in comparison.moments.items()],
        ),
    ]
    duty = (("duty, revolutions", comparison.revolutions), ("duty, distance", comparison.distance))
    lives = [*comparison.lives.items(), *((name, each) for name, each in duty if each is not None)]
    if lives:
        # ratios alone: no life of one setup by itself
        rows = [_life_row(name, each) for name, each in lives]
        tables.append(Table("Life, detailed", ("case", "ratio", HEAD, "verdict"), rows))
    columns = [name for name in ("row load, standing", "life, standing", "distance") if name in comparison.parts]
    if columns:
        tables.append(_split(comparison.parts, columns))
    return [table for table in tables if table.rows]


def _row(page: Page, name: str, each: Compared, unit: str) -> tuple[str, ...]:
    kind = default_kind(unit) or "ratio"

    def signed(value: float) -> str:
        return f"{'+' if value > 0 else ''}{page.show(value, kind)}"

    before, after = page.show(each.base, kind), page.show(each.other, kind)
    if each.ratio is not None:
        return (name, before, after, *_ratio_cells(each, each.ratio), each.verdict)
    span = "" if each.span is None else f"{signed(each.span.low)} to {signed(each.span.high)}"
    return (name, before, after, signed(each.difference), span, each.verdict)


def _life_row(name: str, each: Compared) -> tuple[str, ...]:
    outside = "" if each.valid else f"; {SEVERE}, outside the range of the life formula"
    if each.ratio is None:
        return (name, "without load", "", outside)
    return (name, *_ratio_cells(each, each.ratio), f"{each.verdict}{outside}")


def _ratio_cells(each: Compared, ratio: float) -> tuple[str, str]:
    ends = [] if each.span is None else [_factor(end) for end in (each.span.low, each.span.high)]
    return f"× {_factor(ratio)}", " to ".join(ends)


def _split(parts: Mapping[str, Sequence[Contribution]], columns: Sequence[str]) -> Table:
    words = {"distance": "distance of the duty"}
    changes = parts[columns[0]]
    rows = [
        (change.change, *(_part(parts[column][place]) for column in columns)) for place, change in enumerate(changes)
    ]
    together = [math.prod(part.factor for part in parts[column]) for column in columns]
    rows.append(("together", *(f"× {_factor(value)}" for value in together)))
    sampled = "" if len(changes) <= EXACT else "; orders drawn, standard errors beside"
    return Table(
        f"What each change does: the factors multiply to the ratio{sampled}",
        ("change", *(words.get(column, column) for column in columns)),
        rows,
    )


def _part(part: Contribution) -> str:
    if part.nothing:
        return "nothing"
    error = f" ± {format_number(part.factor * part.error, significant=1)}" if part.error else ""
    return f"× {_factor(part.factor)}{error}"


def _factor(value: float) -> str:
    return format_number(value, significant=3)

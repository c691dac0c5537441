"""What `hubwright compare` prints: setups beside a base, as readable tables or as one JSON object."""

import json
import math
from collections.abc import Sequence
from pathlib import Path

from hubwright.quantities import System, default_kind, format_number
from hubwright.results.changes import NotComparableError
from hubwright.results.comparison import Compared, Comparison, compare
from hubwright.results.contributions import EXACT, Contribution
from hubwright.results.draws import HIGH, LOW, Span
from hubwright.results.export import Json, life_as_json, number
from hubwright.results.life_tables import CAUTION, SEVERE
from hubwright.results.printing import Page
from hubwright.results.span_tables import HEAD, Table, sampling_words, span_note
from hubwright.setup.model import Beam, Setup

# ratios that are split, by the names of `Comparison.parts`, with their heads
_STANDING = {"row load, standing": "row load", "life, standing": "life"}
_DUTY = {"distance": "distance", "modified distance": "with dirt and film"}
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
    if len(compared) > 1:
        overview = _overview(base, compared, asked=wheel is not None)
        page.table(overview.title, overview.heads, overview.rows)
    for each in compared:
        _print(page, each, asked=wheel is not None)
    page.line(CAUTIONS)
    return page.text()


def comparison_as_json(comparison: Comparison) -> Json:
    """Return a comparison as plain data: every ratio with low and high, every part with its factor."""
    life: Json = {case: _compared(each, "1") for case, each in comparison.lives.items()}
    duty = (("revolutions", comparison.revolutions, "1"), ("distance", comparison.distance, "m"))
    life["duty"] = {name: _compared(each, unit) for name, each, unit in duty if each is not None} or None
    modified: Json = {case: _compared(each, "1") for case, each in comparison.modified_lives.items()}
    if comparison.modified_distance is not None:
        modified["duty"] = {"distance": _compared(comparison.modified_distance, "m")}
    return {
        "setup": comparison.other.setup.name,
        "wheel": comparison.wheel,
        "worst_wheel": dict(comparison.worst_wheel),
        "changes": [{"name": change.name, "kind": change.kind} for change in comparison.changes],
        "worst_row_load": {case: _compared(each, "N") for case, each in comparison.row_loads.items()},
        "overturning_moment": {case: _compared(each, "N*m") for case, each in comparison.moments.items()},
        "life": life,
        "modified_life": modified or None,
        "contributions": {
            name: [_part_as_json(part, span) for part, span in zip(parts, _spans_of(comparison, name), strict=True)]
            for name, parts in comparison.parts.items()
        },
        "spans": {
            "low_percentile": LOW,
            "high_percentile": HIGH,
            "draws": comparison.draws,
            "draws_of_contributions": comparison.part_spans.draws,
        },
        "warnings": list(comparison.warnings),
    }


def _spans_of(comparison: Comparison, name: str) -> Sequence[Span | None]:
    return comparison.part_spans.spans.get(name) or [None] * len(comparison.parts[name])


def _part_as_json(part: Contribution, span: Span | None) -> Json:
    entry: Json = {"change": part.change, "factor": part.factor, "log_error": part.error, "nothing": part.nothing}
    if span is not None:
        entry |= {"low": span.low, "high": span.high, "low_error": span.low_error, "high_error": span.high_error}
    return entry


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


def _print(page: Page, comparison: Comparison, *, asked: bool) -> None:
    base, other = comparison.base.setup.name, comparison.other.setup.name
    page.line(f"{other} beside {base}: {comparison.wheel.replace('_', ' ')} wheel")
    if not asked:
        page.line(_worst_words(comparison))
    names = [change.name for change in comparison.changes]
    page.line(f"Changed: {', '.join(names)}." if names else "Nothing that acts on loads or life is changed.")
    page.line()
    for table in _tables(page, comparison):
        page.table(table.title, table.heads, table.rows)
    for warning in comparison.warnings:
        page.line(warning)
    for results in (comparison.base, comparison.other):
        if results.life is None:
            page.line(f"{results.setup.name}: {life_as_json(results)['life_error']}.")
    if comparison.draws:
        page.line(f"{span_note(comparison.draws)} Both setups take the same draws.")
    split = comparison.parts and comparison.part_spans
    if split and split.draws:
        page.line(f"Spans of what each change does: {split.draws} of them, {sampling_words(split.draws)}.")
    if comparison.modified_lives:
        page.line(f"{_grease_words(comparison)} The class is a band, and a draw has its place in it in both setups.")
    if comparison.lives:
        page.line(CAUTION)
    page.line()


def _grease_words(comparison: Comparison) -> str:
    setups = [results.setup for results in (comparison.base, comparison.other)]
    words = [
        f"{setup.lubrication.contamination}, viscosity ratio "
        f"{format_number(float(setup.lubrication.viscosity_ratio or 0.0), significant=2)}"
        for setup in setups
        if setup.lubrication is not None
    ]
    if words[0] == words[-1]:
        return f"Dirt and film in both: {words[0]}."
    return f"Dirt and film: {words[0]}; after the change {words[-1]}."


def _overview(base: Setup, compared: Sequence[Comparison], *, asked: bool) -> Table:
    """Return the headlines of several comparisons with one base."""
    rows = []
    for each in compared:
        load = each.row_loads.get("standing")
        life = each.distance or each.lives.get("standing")
        cells: list[str] = []
        for found in (load, life):
            cells += ["not known", "", ""] if found is None else _headline(found)
        rows.append((each.other.setup.name, each.wheel.replace("_", " "), *cells))
    with_duty = any(each.distance is not None for each in compared)
    heads = (
        "",
        "wheel" if asked else "worst wheel",
        "row load",
        HEAD,
        "",
        "distance" if with_duty else "life",
        HEAD,
        "",
    )
    what = "distance over the duty" if with_duty else "life standing"
    return Table(f"Beside {base.name}: load of the worst row standing, and {what}", heads, rows)


def _headline(each: Compared) -> list[str]:
    if each.ratio is None:
        return ["no ratio", "", ""]
    return [*_ratio_cells(each, each.ratio), each.verdict if each.valid else f"{each.verdict}; {SEVERE}"]


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
        tables.append(_life_table(comparison, lives))
    for columns in (_STANDING, _DUTY):
        if found := [name for name in columns if name in comparison.parts]:
            tables.append(_split(comparison, found))
    return [table for table in tables if table.rows]


def _life_table(comparison: Comparison, lives: Sequence[tuple[str, Compared]]) -> Table:
    """Return ratios alone: no life of one setup by itself."""
    if not comparison.modified_lives:
        return Table("Life, detailed", ("case", "ratio", HEAD, "verdict"), [_life_row(*entry) for entry in lives])
    greased = {**comparison.modified_lives}
    if comparison.modified_distance is not None:
        greased["duty, distance"] = comparison.modified_distance
    rows = [
        (*_life_row(name, each), *(_life_row(name, greased[name])[1:] if name in greased else ("", "", "")))
        for name, each in lives
    ]
    heads = ("case", "ratio", HEAD, "verdict", "ratio", HEAD, "verdict")
    return Table("Life, detailed; on the right as dirt and film leave it", heads, rows)


def _row(page: Page, name: str, each: Compared, unit: str) -> tuple[str, ...]:
    kind = default_kind(unit) or "ratio"

    def signed(value: float) -> str:
        return f"{'+' if value > 0 else ''}{page.show(value, kind)}"

    before, after = page.show(each.base, kind), page.show(each.other, kind)
    if each.ratio is not None:
        return (name, before, after, *_ratio_cells(each, each.ratio), each.verdict)
    span = "" if each.span is None else f"{signed(each.span.low)} to {signed(each.span.high)}"
    turned = "; turned round" if each.base * each.other < 0 else ""
    return (name, before, after, signed(each.difference), span, f"{each.verdict}{turned}")


def _life_row(name: str, each: Compared) -> tuple[str, ...]:
    if each.ratio is None:
        return (name, "without load", "", "" if each.valid else SEVERE)
    if each.valid:
        return (name, *_ratio_cells(each, each.ratio), each.verdict)
    if name.startswith("duty"):  # it counts a severe case, and is marked
        return (name, *_ratio_cells(each, each.ratio), f"{each.verdict}; a case is {SEVERE}")
    return (name, SEVERE, "", "no life stated")


def _ratio_cells(each: Compared, ratio: float) -> tuple[str, str]:
    ends = [] if each.span is None else [_factor(end) for end in (each.span.low, each.span.high)]
    return f"× {_factor(ratio)}", " to ".join(ends)


def _split(comparison: Comparison, columns: Sequence[str]) -> Table:
    heads_of = _STANDING | _DUTY
    wholes = {
        **{f"row load, {case}": each for case, each in comparison.row_loads.items()},
        **{f"life, {case}": each for case, each in comparison.lives.items()},
        **{name: each for name, each in _distances(comparison) if each is not None},
    }
    parts, changes = comparison.parts, comparison.changes
    spans = {column: _spans_of(comparison, column) for column in columns}
    told = any(span for column in columns for span in spans[column])
    rows = []
    for place, change in enumerate(changes):
        cells: list[str] = []
        for column in columns:
            cells.append(_part(parts[column][place]))
            cells += [_span(spans[column][place])] if told else []
        rows.append((change.name, *cells))
    together: list[str] = []
    for column in columns:
        together.append(f"× {_factor(math.prod(part.factor for part in parts[column]))}")
        together += [_span(wholes[column].span)] if told else []
    rows.append(("together", *together))
    heads = [head for column in columns for head in [heads_of[column], *([HEAD] if told else [])]]
    sampled = "" if len(changes) <= EXACT else "; orders drawn, standard errors beside, no spans"
    where = "standing" if columns[0] in _STANDING else "over the duty"
    title = f"What each change does {where}: the factors multiply to the ratio{sampled}"
    return Table(title, ("change", *heads), rows)


def _distances(comparison: Comparison) -> list[tuple[str, Compared | None]]:
    return [("distance", comparison.distance), ("modified distance", comparison.modified_distance)]


def _span(span: Span | None) -> str:
    return "" if span is None else f"{_factor(span.low)} to {_factor(span.high)}"


def _part(part: Contribution) -> str:
    if part.nothing:
        return "no change"
    error = f" ± {format_number(part.factor * part.error, significant=1)}" if part.error else ""
    return f"× {_factor(part.factor)}{error}"


def _factor(value: float) -> str:
    return format_number(value, significant=3)

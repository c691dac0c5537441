"""What `hubwright solve` prints: a readable table, JSON or CSV of a vehicle, setup or beam file."""

import io
import json
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from types import MappingProxyType
from typing import Any, Literal

from hubwright.errors import MissingDataError
from hubwright.quantities import Kind, System, default_kind, format_quantity
from hubwright.results.bearings import rating_remark
from hubwright.results.draws import Span
from hubwright.results.export import Json, as_csv, as_json, inputs_as_json, life_as_json, weight_as_json
from hubwright.results.life_tables import CAUTION, grease_note, life_tables, reliability_note, roller_note
from hubwright.results.model import CaseResult, Results, Weight
from hubwright.results.span_tables import HEAD, span_cell, span_note, span_tables
from hubwright.setup.model import Beam, Input, Setup

Form = Literal["table", "json", "csv"]
_WIDTH = 118
_FINE = 0.5e-3  # m: shorter things, preload above all, are shown as a deflection is


def solved_text(file: Path, *, form: Form, wheel: str | None, units: System) -> str:
    """Read a file, solve it and return what to print.

    A wheel whose hub the file does not describe gets its weights, and the reason for the rest.
    """
    from hubwright.setup import load

    thing = load(file)
    if isinstance(thing, Beam):
        return _beam_text(thing, form, units)
    from hubwright.results.solve import check_wheel, solve

    try:
        if wheel is not None:
            check_wheel(thing, wheel)
    except MissingDataError as error:
        return _weight_text(thing, wheel, error, form, units)
    results = solve(thing, wheel)  # type: ignore[arg-type]
    if form == "json":
        return _dumped(as_json(results))
    if form == "csv":
        return as_csv(as_json(results))
    return Page(units).results(results)


def _weight_text(setup: Setup, wheel: str | None, error: MissingDataError, form: Form, units: System) -> str:
    from hubwright.results.weighing import weigh

    weight = weigh(setup)
    if wheel not in weight.wheel_loads:
        raise error
    entry: Json = {
        "setup": setup.name,
        "wheel": wheel,
        "inputs": inputs_as_json(setup.inputs),
        "weight": weight_as_json(weight),
        "error": str(error),
    }
    if form == "json":
        return _dumped(entry)
    if form == "csv":
        return as_csv(entry)
    page = Page(units)
    page.heading(setup.name, wheel or "")
    page.weight(weight)
    page.line(str(error))
    return page.text()


def _beam_text(beam: Beam, form: Form, units: System) -> str:
    from hubwright.results.beams import beam_as_json, solve_beam

    solved = solve_beam(beam)
    entry = beam_as_json(solved)
    if form == "json":
        return _dumped(entry)
    if form == "csv":
        return as_csv(entry)
    return Page(units).beam(entry)


def _dumped(entry: Json) -> str:
    return json.dumps(entry, indent=2, ensure_ascii=False, allow_nan=False) + "\n"


class Page:
    """Tables on a page of fixed width, the same in a terminal and in a file."""

    def __init__(self, units: System) -> None:
        """Begin a page in a unit system."""
        from rich.console import Console

        self.units = units
        self._out = io.StringIO()
        self._console = Console(file=self._out, width=_WIDTH, color_system=None, highlight=False, emoji=False)

    def text(self) -> str:
        """Return everything printed so far."""
        return "\n".join(line.rstrip() for line in self._out.getvalue().splitlines()) + "\n"

    def line(self, text: str = "") -> None:
        """Print a line of text, wrapped at the width of the page."""
        self._console.print(text, markup=False)

    def heading(self, name: str, wheel: str) -> None:
        """Print whose results these are, and of which wheel."""
        self.line(f"{name}: {wheel.replace('_', ' ')} wheel" if wheel else name)
        self.line()

    def table(self, title: str, heads: Sequence[str], rows: Sequence[Sequence[str]]) -> None:
        """Print a table of text under its title."""
        from rich import box
        from rich.table import Table

        self.line(title)
        table = Table(show_header=any(heads), box=box.SIMPLE_HEAD, pad_edge=False)
        for place, head in enumerate(heads):
            table.add_column(head, justify="left" if place == 0 else "right", overflow="fold")
        for row in rows:
            table.add_row(*row)
        self._console.print(table)

    def show(self, value: float | None, kind: Kind) -> str:
        """Return a value as text in the units of the page."""
        return "not known" if value is None else format_quantity(value, kind, self.units)

    def weight(self, weight: Weight, spans: Mapping[str, Span] = MappingProxyType({})) -> None:
        """Print what stands on every axle and wheel."""
        rows = [
            *(
                (name, load, f"{name}_load")
                if name in ("axle", "coupling")
                else (f"{name} axle", load, f"{name}_axle_load")
                for name, load in weight.axle_loads.items()
            ),
            *((f"{name.replace('_', ' ')} wheel", load, name) for name, load in weight.wheel_loads.items()),
        ]
        self.spanned(
            "Weight, standing",
            [(name, self.show(load, "force"), f"weight.{key}", "force") for name, load, key in rows],
            spans,
        )

    def spanned(self, title: str, rows: Sequence[tuple[str, str, str, Kind]], spans: Mapping[str, Span]) -> None:
        """Print names and values, and beside them the spans of those that the ranges move."""
        cells = [(name, text, span_cell(spans, key, kind, self.units)) for name, text, key, kind in rows]
        if any(cell for *_, cell in cells):
            self.table(title, ("", "", HEAD), cells)
        else:
            self.table(title, ("", ""), [(name, text) for name, text, _ in cells])

    def results(self, results: Results) -> str:
        """Print everything that was solved and return the page."""
        geometry, bearing = results.wheel_geometry, results.bearing
        self.heading(results.setup.name, results.wheel)
        self.weight(results.weight, results.spans)
        sides = {1: "outboard", -1: "inboard", 0: "on centre"}
        y_L = geometry.load_line_offset
        side = sides[(y_L > 0) - (y_L < 0)]
        y_L_text = f"{self.show(abs(y_L), 'small length')} {side}"
        sizes = (
            ("free diameter", "free_diameter"),
            ("section width", "section_width"),
            ("loaded radius R_l", "loaded_radius"),
            ("load line offset y_L", "load_line_offset"),
            ("backspacing", "backspacing"),
        )
        ratings: tuple[tuple[str, str, Kind], ...] = (
            ("effective spread ℓ", "effective_spread", "small length"),
            ("dynamic rating C", "dynamic_rating", "force"),
            ("static rating C0", "static_rating", "force"),
        )
        self.spanned(
            "Wheel and bearing",
            [
                *(
                    (
                        words,
                        y_L_text if name == "load_line_offset" else self.show(getattr(geometry, name), "small length"),
                        f"wheel_geometry.{name}",
                        "small length",
                    )
                    for words, name in sizes
                ),
                *(
                    (words, self.show(getattr(bearing, name), kind), f"bearing.{name}", kind)
                    for words, name, kind in ratings
                ),
            ],
            results.spans,
        )
        if remark := rating_remark(results.setup.bearing):
            self.line(remark)
            self.line()
        self.table(
            "Road on tire F; force B and moment M that the bearing carries, about its centre (x forward, y left, z up)",
            ("case", "F_x", "F_y", "F_z", "B_x", "B_y", "B_z", "M_x", "M_z"),
            [self._case_row(case) for case in results.cases.values()],
        )
        self.table(
            "Load on the rows, outboard A and inboard B: vertical part, and length with the horizontal part",
            ("case", "A vertical", "B vertical", "A length F_A", "B length F_B", "left over"),
            [self._row_row(case) for case in results.cases.values()],
        )
        self._drops(results)
        self._life(results)
        if results.spans:
            for table in span_tables(results.spans, list(results.cases), self.units):
                self.table(table.title, table.heads, table.rows)
            self.line(span_note(next(iter(results.spans.values())).draws))
            self.line()
        self._inputs(results.inputs)
        for case, reason in results.left_out.items():
            self.line(f"case '{case}' is not in these tables: {reason}")
        return self.text()

    def _case_row(self, case: CaseResult) -> tuple[str, ...]:
        forces = [getattr(vector, axis) for vector in (case.contact_force, case.bearing_force) for axis in "xyz"]
        moments = (case.bearing_moment.x, case.bearing_moment.z)
        return (case.name, *(self.show(f, "force") for f in forces), *(self.show(m, "moment") for m in moments))

    def _row_row(self, case: CaseResult) -> tuple[str, ...]:
        if case.row_load is None or case.row_radial_load is None:
            return (case.name, *["not known"] * 4, self.show(round(case.closure.force, 6), "force"))
        up_down: Callable[[float], str] = lambda z: f"{self.show(abs(z), 'force')} {'up' if z > 0 else 'down'}"  # noqa: E731
        return (
            case.name,
            up_down(case.row_load.outboard.z),
            up_down(case.row_load.inboard.z),
            self.show(case.row_radial_load.outboard, "force"),
            self.show(case.row_radial_load.inboard, "force"),
            self.show(round(case.closure.force, 6), "force"),
        )

    def _life(self, results: Results) -> None:
        life = results.life
        if life is None:
            self.line(f"{life_as_json(results)['life_error']}.")
            self.line()
            return
        for table in life_tables(life, results.spans, self.show, self.units):
            self.table(table.title, table.heads, table.rows)
        for note in (roller_note(results), grease_note(results), reliability_note(), CAUTION):
            if note:
                self.line(note)
        self.line()

    def _drops(self, results: Results) -> None:
        drops = [case for case in results.cases.values() if case.kind == "drop"]
        if drops:
            self.table(
                "Peaks of drops; their loads above are those at the largest bearing force",
                ("case", "tire", HEAD, "bearing", HEAD, "over standing", HEAD, "on the rim"),
                [self._drop_row(case, results.spans) for case in drops],
            )

    def _drop_row(self, case: CaseResult, spans: Mapping[str, Span]) -> tuple[str, ...]:
        cells: list[str] = []
        kinds: tuple[tuple[str, Kind], ...] = (
            ("peak_tire_force", "force"),
            ("peak_bearing_force", "force"),
            ("impact_factor", "ratio"),
        )
        for name, kind in kinds:
            span = span_cell(spans, f"cases.{case.name}.{name}", kind, self.units)
            cells += [self.show(case.extras[name], kind), span]
        return (case.name, *cells, "yes: real force higher" if case.extras["tire_on_rim"] else "no")

    def _inputs(self, inputs: Any) -> None:
        estimated: list[tuple[str, Input]] = [(key, item) for key, item in inputs.items() if item.origin == "estimated"]
        if not estimated:
            self.line("No value was estimated.")
            return
        rows = []
        for key, item in estimated:
            size = max((abs(end) for end in (item.value, item.low, item.high) if isinstance(end, float)), default=0.0)
            kind: Kind | None = "deflection" if item.unit == "m" and size < _FINE else default_kind(item.unit)
            low, high = (self._input(end, item.unit, kind) for end in (item.low, item.high))
            rows.append((key, self._input(item.value, item.unit, kind), f"{low} to {high}" if item.has_range else ""))
        self.table("Estimated, because the file does not give them", ("key", "value", "range"), rows)

    def _input(self, value: float | str | None, unit: str, kind: Kind | None) -> str:
        if value is None or isinstance(value, str):
            return value or ""
        return self.show(value, kind) if kind else f"{value:.4g} {unit}"

    def beam(self, entry: Json) -> str:
        """Print a solved beam and return the page."""
        self.heading(str(entry.get("setup", entry.get("beam", "beam"))), "")
        kinds: dict[str, Kind] = {"N": "force", "N*m": "moment", "m": "length", "rad": "slope"}
        rows = []
        for name, item in entry.items():
            if name == "reactions":
                for reaction in item:
                    place = self.show(reaction["at"]["value"], "length")
                    for part, item_of in (("force", reaction), ("moment", reaction.get("moment"))):
                        if item_of is not None:
                            shown = self.show(item_of["value"], kinds[item_of["unit"]])
                            rows.append((f"reaction, {reaction['type']} ({part})", shown, place))
            elif isinstance(item, dict) and "value" in item:
                kind: Kind = "deflection" if "deflection" in name else kinds[item["unit"]]
                place = self.show(item["at"]["value"], "length") if "at" in item else ""
                rows.append((name.replace("_", " "), self.show(item["value"], kind), place))
        self.table(
            "Forces up and counter-clockwise moments positive; sagging bends positive", ("", "value", "at"), rows
        )
        return self.text()

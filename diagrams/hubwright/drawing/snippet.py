"""A figure as HTML for any page: the drawing, its words and every force as a number; nothing is fetched."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from hubwright.drawing.marks import Drawing
from hubwright.drawing.palette import Theme, colours
from hubwright.drawing.svg import svg_in_place
from hubwright.quantities import Kind, System, display
from hubwright.scenes.force_table import ForceRow, force_rows, ways
from hubwright.scenes.value_table import curve_tables, value_rows
from hubwright.scenes.vocabulary import MARK, Scene, Step

_CELL = '<td style="padding:0 .6em;text-align:right;white-space:nowrap">'
_HEAD = '<th scope="col" style="padding:0 .6em;text-align:right">'


def snippet(
    drawing: Drawing, *, prefix: str, theme: Theme = "light", title: bool = True, step: Step | None = None
) -> str:
    """Return a drawing as a figure element in one unit system; `step` puts its sentence in place of the caption."""
    scene = drawing.scene
    caption = f"<p>{marked(scene.caption)}</p>"
    if step is not None:
        caption = f"<p><strong>{marked(step.heading)}.</strong> {marked(step.sentence)}</p>"
    head = f"<p><strong>{marked(scene.title)}</strong></p>" if title else ""
    ink = colours(theme)["ink"]
    paper = "" if theme == "transparent" else f"background:{colours(theme)['paper']};"
    return (
        f'<figure style="margin:1em 0;padding:1em;{paper}color:{ink}">\n'
        f"{svg_in_place(drawing, prefix=prefix, theme=theme)}\n"
        f"<figcaption>{head}{caption}</figcaption>\n"
        "<details><summary>The figure in words and numbers</summary>\n"
        f"<p>{marked(scene.description)}</p>\n"
        f"{force_table(scene)}{value_tables(scene)}</details>\n</figure>\n"
    )


def force_table(scene: Scene) -> str:
    """Return everything on the free body of a scene as a table, or nothing if it shows none."""
    rows = force_rows(scene)
    if not rows:
        return ""
    along = ways(scene)
    heads = "".join(f"{_HEAD}{words}</th>" for words in (*along, *(f"at, {way}" for way in along)))
    body = "\n".join(
        f'<tr><th scope="row" style="text-align:left">{escape(row.name)}</th>{_cells(row, scene.units)}</tr>'
        for row in rows
    )
    return (
        f'<table>\n<thead><tr><th scope="col">What acts</th>{heads}</tr></thead>\n<tbody>\n{body}\n</tbody></table>\n'
    )


def value_tables(scene: Scene) -> str:
    """Return the labelled values and the curves of a chart as tables, or nothing for a figure that is none."""
    values = value_rows(scene)
    tables: list[tuple[Sequence[str], Sequence[Sequence[str]]]] = [
        (curves.heads, curves.rows) for curves in curve_tables(scene)
    ]
    if values:
        tables.insert(0, (("What", "Value"), [(row.name, row.words) for row in values]))
    written = []
    for heads, rows in tables:
        head = "".join(f"{_HEAD}{marked(words)}</th>" for words in heads)
        body = "\n".join(
            f'<tr><th scope="row" style="text-align:left">{marked(name)}</th>'
            f"{''.join(f'{_CELL}{marked(cell)}</td>' for cell in cells)}</tr>"
            for name, *cells in rows
        )
        written.append(f"<table>\n<thead><tr>{head}</tr></thead>\n<tbody>\n{body}\n</tbody></table>\n")
    return "".join(written)


def marked(text: str) -> str:
    """Return a scene's text as HTML: `{F|z}` is an italic symbol with its subscript."""
    parts, position = [], 0
    for mark in MARK.finditer(text):
        below = f"<sub>{escape(mark[2])}</sub>" if mark[2] else ""
        parts.append(f"{escape(text[position : mark.start()])}<i>{escape(mark[1])}</i>{below}")
        position = mark.end()
    return "".join(parts) + escape(text[position:])


def _cells(row: ForceRow, units: System) -> str:
    if row.point is None:
        return _values(row.components, "moment", units) + "<td></td>" * len(row.components)
    return _values(row.components, "force", units) + _values(row.point, "small length", units)


def _values(values: Sequence[float], kind: Kind, units: System) -> str:
    return "".join(f"{_CELL}{display(value, kind, units).text if abs(value) >= 1e-6 else '0'}</td>" for value in values)

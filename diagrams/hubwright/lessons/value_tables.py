"""What a chart of a page shows as tables, folded away, in both unit systems."""

from collections.abc import Callable, Sequence
from typing import get_args

from markupsafe import Markup

from hubwright.quantities import System
from hubwright.scenes.value_table import CurveTable, ValueRow, curve_tables, value_rows
from hubwright.scenes.vocabulary import Scene


def value_tables(scenes: Sequence[Scene], label: str, marked: Callable[[str], Markup]) -> Markup:
    """Return the labelled values and the curves of a chart, or nothing for a figure that is none."""
    told = Markup("").join(
        _in_one(value_rows(scene), curve_tables(scene), label, system, marked)
        for scene, system in zip(scenes, get_args(System), strict=True)
    )
    if not told:
        return told
    return Markup('<details class="fold forces"><summary>Every value as a number</summary>\n{}</details>\n').format(
        told
    )


def _in_one(
    values: Sequence[ValueRow],
    curves: Sequence[CurveTable],
    label: str,
    system: System,
    marked: Callable[[str], Markup],
) -> Markup:
    tables = [_table(("What", "Value"), [(row.name, row.words) for row in values], marked)] if values else []
    tables += [_table(curve.heads, curve.rows, marked, "n") for curve in curves]
    return Markup("").join(
        Markup(
            '<div class="tablewrap {}" tabindex="0" role="region" '
            'aria-label="Values of figure {}{}, wider than a phone">{}</div>\n'
        ).format(system, label, f", table {number}" if len(tables) > 1 else "", table)
        for number, table in enumerate(tables, 1)
    )


def _table(
    heads: Sequence[str], rows: Sequence[Sequence[str]], marked: Callable[[str], Markup], kind: str = ""
) -> Markup:
    style = Markup(' class="{}"').format(kind) if kind else Markup("")
    head = Markup("").join(
        Markup('<th scope="col"{}>{}</th>').format(style if number else "", marked(words))
        for number, words in enumerate(heads)
    )
    body = Markup("\n").join(
        Markup('<tr><th scope="row">{}</th>{}</tr>').format(
            marked(name), Markup("").join(Markup("<td{}>{}</td>").format(style, marked(cell)) for cell in cells)
        )
        for name, *cells in rows
    )
    return Markup("<table>\n<thead><tr>{}</tr></thead>\n<tbody>\n{}\n</tbody></table>").format(head, body)

"""Tables that become one block per row on a phone: each cell carries its column's words for when the head is gone."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from markupsafe import Markup, escape


@dataclass(frozen=True)
class Column:
    """A column: the words of its head, its unit in both systems, and whether it holds numbers."""

    words: str
    unit: Markup | str = ""
    number: bool = True


@dataclass(frozen=True)
class Row:
    """A row: what it is about and its cells; `kind` marks it for the theme."""

    head: Markup
    cells: Sequence[Markup]
    kind: str = ""


def stacked_table(
    caption: str, first: str, columns: Sequence[Column], rows: Iterable[Row], *, kind: str = ""
) -> Markup:
    """Return the table; `first` heads the column of what the rows are about, `kind` marks it for the theme."""
    heads = Markup("").join(
        Markup('<th scope="col"{}>{}{}</th>').format(
            Markup(' class="n"') if column.number else "",
            column.words,
            Markup("<br>{}").format(column.unit) if column.unit else "",
        )
        for column in columns
    )
    lines = Markup("\n").join(_row(row, columns) for row in rows)
    return Markup(
        '<table class="stack{}"><caption>{}</caption><thead><tr>'
        '<th scope="col">{}</th>{}</tr></thead>\n<tbody>\n{}\n</tbody></table>'
    ).format(f" {kind}" if kind else "", caption, first, heads, lines)


def _row(row: Row, columns: Sequence[Column]) -> Markup:
    cells = Markup("").join(
        Markup('<td{}><span class="of" aria-hidden="true">{}{}</span> <span>{}</span></td>').format(
            _classes(column, cell),
            column.words,
            Markup(", {}").format(column.unit) if column.unit else "",
            escape(cell),
        )
        for column, cell in zip(columns, row.cells, strict=True)
    )
    return Markup('<tr{}><th scope="row">{}</th>{}</tr>').format(
        Markup(' class="{}"').format(row.kind) if row.kind else "", row.head, cells
    )


def _classes(column: Column, cell: Markup) -> Markup:
    words = [*(["n"] if column.number else []), *([] if cell else ["none"])]
    return Markup(' class="{}"').format(" ".join(words)) if words else Markup("")

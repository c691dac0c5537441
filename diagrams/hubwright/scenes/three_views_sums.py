"""The sums of forces and of moments of a free body as two small tables, each ending in nothing."""

from hubwright.quantities import Kind
from hubwright.results.model import Vector
from hubwright.scenes.linked_views import Axis
from hubwright.scenes.three_views_words import ViewsWording
from hubwright.scenes.vocabulary import Item, Line, Words
from hubwright.scenes.wheel_end_actions import Actions

SUMS_WIDTH = 134.0  # sheet millimetres, margins included
_TABLE = (10.0, 60.0, 92.0, 124.0)  # names, and right edges of the three columns
_ROW, _SIZE = 4.5, 2.3
_AXES: tuple[Axis, ...] = ("x", "y", "z")
_Rows = list[tuple[str, Vector, Vector]]  # what, its part in the sum, and as much of it as a label names


def sum_tables(words: ViewsWording, actions: Actions, *, left: float, top: float, step: int) -> list[Item]:
    """Return both tables from their upper left corner on; what has no part in a sum is left out of it."""
    forces = [(f"{{{a.symbol}}}, {a.what}", a.force, a.force) for a in actions.all if a.name != "shaft"]
    moments = [(a.what if a.name == "shaft" else f"{{{a.symbol}}}, {a.what}", a.moment, a.couple) for a in actions.all]
    items = _table(
        "forces", ("*Forces", "forward, {x}", "left, {y}", "up, {z}"), forces, words, "force", left, top, step
    )
    top -= (len([vector for _, vector, _ in forces if _counts(words, vector)]) + 2.8) * _ROW
    heads = ("*Moments about {C}", "about {x}", "about {y}", "about {z}")
    return items + _table("turns", heads, moments, words, "moment", left, top, step)


def _counts(words: ViewsWording, vector: Vector) -> bool:
    return not all(words.little(getattr(vector, axis)) for axis in _AXES)


def _table(
    name: str,
    heads: tuple[str, ...],
    rows: _Rows,
    words: ViewsWording,
    kind: Kind,
    left: float,
    top: float,
    step: int,
) -> list[Item]:
    shown = [row for row in rows if _counts(words, row[1])]
    lines = [(heads[0], *(label for label, _, _ in shown), "together")]
    for axis, head in zip(_AXES, heads[1:], strict=True):
        values, named = ([getattr(row[part], axis) for row in shown] for part in (1, 2))
        lines.append((head, *words.column(values, kind, named)))
    items: list[Item] = [
        Words(
            f"words-{name}-{number}-{row}",
            "",
            step,
            at_sheet=(left + _TABLE[number], top - row * _ROW),
            lines=(text,),
            size=_SIZE,
            align="left" if number == 0 else "right",
            tone="soft" if row == 0 and number else "ink",
        )
        for number, column in enumerate(lines)
        for row, text in enumerate(column)
    ]
    rule = top - (len(shown) + 1) * _ROW + 3.2
    ends = (left + _TABLE[0], rule), (left + _TABLE[3], rule)
    items.append(Line(f"rule-{name}", "sheet", step, points=ends, style="thin", tone="soft", wide_only=True))
    return items

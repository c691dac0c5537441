"""The frame of a plot over time: two axes with round marks, in a view whose abscissa is milliseconds."""

import math

from hubwright.quantities import Kind
from hubwright.quantities.formatting import KINDS, Scale, format_number
from hubwright.scenes.scales import round_up
from hubwright.scenes.vocabulary import Item, Line, Part, Units, View, Words

_MARK, _LETTERS = 1.4, 2.2
_EVEN = 1e-9


def graph_axes(
    view: View, *, end: float, low: float, high: float, kind: Kind, units: Units, step: int, symbol: str = ""
) -> list[Item]:
    """Return the axes of a plot from 0 to `end` milliseconds and from `low` to `high` [SI], with marks and units.

    A sheet of its own has the axes without marks: its key gives the values.
    """
    unit = _unit(kind, max(abs(low), abs(high)), units)
    area = ((0.0, low), (end, low), (end, high), (0.0, high))
    items: list[Item] = [
        # unseen: a sheet of its own must have room for all that is plotted, level lines included
        Part(f"part-area-{view.name}", view.name, step, rings=(area,), material="none", outline=0.0),
        Line(f"axis-time-{view.name}", view.name, step, points=((0.0, 0.0), (end, 0.0)), width=0.35),
        Line(f"axis-{view.name}", view.name, step, points=((0.0, low), (0.0, high)), width=0.35),
    ]
    rise = round_up((high - low) / unit.size / 6.0) * unit.size
    for number in range(math.ceil(low / rise - _EVEN), math.floor(high / rise + _EVEN) + 1):
        at = number * rise
        x, y = view.on_sheet((0.0, at))
        ends = ((0.0, at), (-_MARK / view.scale, at))
        items.append(
            Line(f"mark-{view.name}-{number}", view.name, step, points=ends, style="thin", tone="soft", wide_only=True)
        )
        items.append(
            Words(
                f"words-{view.name}-{number}",
                view.name,
                step,
                at_sheet=(x - 2.2, y - _LETTERS / 2),
                lines=(format_number(at / unit.size),),
                size=_LETTERS,
                tone="soft",
                align="right",
            )
        )
    top = view.on_sheet((0.0, high))
    items.append(
        Words(
            f"words-{view.name}-unit",
            view.name,
            step,
            at_sheet=(top[0] - 2.2, top[1] + 2.4),
            lines=(f"{symbol}{unit.unit}",),
            size=_LETTERS,
            tone="soft",
        )
    )
    return items + _time_marks(view, end, low, step)


def _time_marks(view: View, end: float, low: float, step: int) -> list[Item]:
    tick = round_up(end / 8.0)
    foot = view.on_sheet((0.0, low))[1]
    items: list[Item] = []
    last = math.floor(end / tick + _EVEN)
    rise = 1.0 if view.vertical_per_mm is None else view.vertical_per_mm
    for number in range(last + 1):
        at = number * tick
        x = view.on_sheet((at, 0.0))[0]
        ends = ((at, low), (at, low - _MARK * rise))
        items.append(
            Line(
                f"mark-time-{view.name}-{number}",
                view.name,
                step,
                points=ends,
                style="thin",
                tone="soft",
                wide_only=True,
            )
        )
        text = format_number(at) + ("\u00a0ms" if number == last else "")
        items.append(
            Words(
                f"words-time-{view.name}-{number}",
                view.name,
                step,
                at_sheet=(x, foot - 5.0),
                lines=(text,),
                size=_LETTERS,
                tone="soft",
                align="centre",
            )
        )
    return items


def _unit(kind: Kind, largest: float, units: Units) -> Scale:
    scales = KINDS[kind][0 if units == "si" else 1]
    return next((scale for scale in reversed(scales) if largest >= scale.size), scales[0])

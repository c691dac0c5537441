"""The frame of a plot over time: two axes with round marks, in a view whose abscissa is milliseconds."""

import math

from hubwright.quantities import Kind
from hubwright.quantities.formatting import KINDS, Scale, format_number
from hubwright.scenes.scales import round_up
from hubwright.scenes.vocabulary import Axis, Item, Line, Part, Units, View

_EVEN = 1e-9


def graph_axes(
    view: View, *, end: float, low: float, high: float, kind: Kind, units: Units, step: int, symbol: str = ""
) -> list[Item]:
    """Return the axes of a plot from 0 to `end` milliseconds and from `low` to `high` [SI], with marks and units."""
    unit = _unit(kind, max(abs(low), abs(high)), units)
    area = ((0.0, low), (end, low), (end, high), (0.0, high))
    rise = round_up((high - low) / unit.size / 6.0) * unit.size
    heights = range(math.ceil(low / rise - _EVEN), math.floor(high / rise + _EVEN) + 1)
    tick = round_up(end / 8.0)
    last = math.floor(end / tick + _EVEN)
    times = [(number * tick, format_number(number * tick)) for number in range(last)]
    return [
        # unseen: a sheet of its own must have room for all that is plotted, level lines included
        Part(f"part-area-{view.name}", view.name, step, rings=(area,), material="none", outline=0.0),
        Line(f"line-zero-{view.name}", view.name, step, points=((0.0, 0.0), (end, 0.0)), width=0.35),
        Axis(
            f"time-{view.name}",
            view.name,
            step,
            at=low,
            start=0.0,
            end=end,
            marks=(*times, (last * tick, f"{format_number(last * tick)}\u00a0ms")),
        ),
        Axis(
            f"values-{view.name}",
            view.name,
            step,
            direction="vertical",
            start=low,
            end=high,
            marks=tuple((number * rise, format_number(number * rise / unit.size)) for number in heights),
            title=f"{symbol}{unit.unit}",
        ),
    ]


def _unit(kind: Kind, largest: float, units: Units) -> Scale:
    scales = KINDS[kind][0 if units == "si" else 1]
    return next((scale for scale in reversed(scales) if largest >= scale.size), scales[0])

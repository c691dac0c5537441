"""Values side by side as level bars from one zero line, each with its span where there is one."""

from collections.abc import Callable, Sequence

from hubwright.quantities import format_range
from hubwright.scenes.chart_rows import LINE, BarValue, Chart, axis, chart, in_words, name_label, value_note
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Bar, Item, Scene, Step, Units

_PITCH, _THICK = 11.0, 4.2
_SAME = 1e-6


def comparison_bars(
    values: Sequence[BarValue],
    *,
    quantity: str,
    units: Units = "si",
    above: str = "",
    below: str = "",
    per_mm: float | None = None,
) -> Scene:
    """Return the scene of values of one quantity, the first being what the others are compared with.

    `above` and `below` are the direction words of values on either side of zero; `per_mm` holds charts to one scale
    [SI unit per sheet millimetre].
    """
    # a span to both sides of zero is told on two lines, which need a higher row
    pitch = _PITCH + LINE * any(value.span is not None and value.span[0] < 0 for value in values)
    drawn = chart(values, units, zero=0.0, pitch=pitch, per_mm=per_mm)

    def told(value: float) -> str:
        return in_words(value, values[0].kind, units, above=above, below=below)

    items: list[Item] = axis(drawn, 1, above=above, below=below)
    for row, value in enumerate(values):
        items += _row(drawn, row, value, told, units)
    spans = any(value.span is not None for value in values)
    title = _title(values, quantity, told)
    sentences = [f"{plain(value.name)}: {_in_full(value, told, units)}." for value in values]
    return Scene(
        name="comparison-bars",
        title=title,
        caption=_caption(quantity, spans=spans),
        description=f"{title}. {' '.join(sentences)}",
        units=units,
        size=drawn.size,
        views=(drawn.view,),
        items=tuple(items),
        steps=(
            Step("Draw one scale", "All bars begin at the same zero line."),
            Step("Put the values on it", "Each bar is as long as its value."),
            *(
                (Step("Add the spans", "How far each value may lie off, by the ranges of its inputs."),)
                if spans
                else ()
            ),
        ),
    )


def _row(drawn: Chart, row: int, value: BarValue, told: Callable[[float], str], units: Units) -> list[Item]:
    farthest = max(0.0, *value.ends)
    bar = Bar(
        f"bar-{row + 1}",
        "chart",
        2,
        end=value.value,
        at=drawn.rows[row],
        thick=_THICK,
        tone="before" if row == 0 else "changed",
        label=name_label(drawn, row, min(0.0, value.value)),
    )
    items: list[Item] = [bar]
    lines = [f"*{told(value.value)}"]
    if value.span is not None:
        span = Bar(
            f"bar-span-{row + 1}", "chart", 3, end=0.0, at=drawn.rows[row], thick=_THICK, span=value.span, level=3
        )
        items.append(span)
        lines += _span(value.span, value, told, units)
    return [*items, value_note(drawn, row, farthest, tuple(lines), 2)]


def _span(span: tuple[float, float], value: BarValue, told: Callable[[float], str], units: Units) -> list[str]:
    if span[0] < 0:  # each end with its own direction
        return [f"span {told(span[0])}", f"to {told(span[1])}"]
    return [f"span {format_range(*span, value.kind, units)}"]


def _in_full(value: BarValue, told: Callable[[float], str], units: Units) -> str:
    words = told(value.value)
    return words if value.span is None else f"{words}, {' '.join(_span(value.span, value, told, units))}"


def _title(values: Sequence[BarValue], quantity: str, told: Callable[[float], str]) -> str:
    first = values[0]
    others = values[1:]
    if not others:
        return f"{quantity}: {told(first.value)}"
    largest = max(abs(value.value) for value in values)
    if all(abs(value.value - first.value) <= _SAME * largest for value in others):
        return f"{quantity}: {told(first.value)} in every one; what differs contributes nothing"
    other = max(others, key=lambda value: abs(value.value - first.value))
    if other.span and min(first.ends) <= other.span[1] and other.span[0] <= max(first.ends):
        return f"{quantity}: these data do not settle whether {plain(other.name)} differs from {plain(first.name)}"
    return f"{quantity}: {plain(other.name)} {told(other.value)}, {plain(first.name)} {told(first.value)}"


def _caption(quantity: str, *, spans: bool) -> str:
    words = f"{quantity}; all bars at one scale from one zero line, the first is what the others are compared with."
    return f"{words} Thin lines: the span over the ranges of all inputs." if spans else words

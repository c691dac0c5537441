"""Values side by side as level bars from one zero line, each with its span where there is one."""

from collections.abc import Callable, Sequence

from hubwright.results.span_tables import sampling_words
from hubwright.scenes.chart_rows import (
    BarValue,
    Chart,
    axis,
    chart,
    in_words,
    lines_in_words,
    name_label,
    name_lines,
    value_note,
    width_of,
)
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Bar, Item, Scene, Step, Units

_PITCH, _THICK, _SIZE = 11.0, 4.2, 2.5
_SAME = 1e-6


def comparison_bars(
    values: Sequence[BarValue],
    *,
    quantity: str,
    units: Units = "si",
    above: str = "",
    below: str = "",
    per_mm: float | None = None,
    draws: int | None = None,
) -> Scene:
    """Return the scene of values of one quantity, the first being what the others are compared with.

    `above` and `below` are the direction words of values on either side of zero; `per_mm` holds charts to one scale
    [SI unit per sheet millimetre]; spans are from the 5th to the 95th percentile of so many draws.
    """

    def told(value: float) -> str:
        return in_words(value, values[0].kind, units, above=above, below=below)

    words = [lines_in_words(value, units, above=above, below=below) for value in values]
    drawn = chart(
        values,
        units,
        zero=0.0,
        pitch=_PITCH,
        per_mm=per_mm,
        names=[name_lines(value.name) for value in values],
        beside=max((width_of(lines, _SIZE) for lines in words), default=0.0),
        heading=quantity,
    )
    what = quantity[:1].lower() + quantity[1:]
    items: list[Item] = axis(drawn, 1, what=what, halves=[_THICK / 2] * len(values), above=above, below=below)
    for row, value in enumerate(values):
        items += _row(drawn, row, value, words[row])
    spans = any(value.span is not None for value in values)
    title = _title(values, quantity, told)
    sentences = [plain(value.name) + f": {', '.join(lines)}." for value, lines in zip(values, words, strict=True)]
    return Scene(
        name="comparison-bars",
        title=title,
        caption=_caption(quantity, draws, spans=spans),
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


def _row(drawn: Chart, row: int, value: BarValue, words: tuple[str, ...]) -> list[Item]:
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
    if value.span is not None:
        span = Bar(
            f"bar-span-{row + 1}", "chart", 3, end=0.0, at=drawn.rows[row], thick=_THICK, span=value.span, level=3
        )
        items.append(span)
    return [*items, value_note(drawn, row, farthest, (f"*{words[0]}", *words[1:]), 2, _SIZE)]


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


def _caption(quantity: str, draws: int | None, *, spans: bool) -> str:
    words = f"{quantity}; all bars at one scale from one zero line, the first is what the others are compared with."
    if not spans:
        return words
    percentiles = "5th to 95th percentile of draws"
    if draws:
        percentiles = f"5th to 95th percentile of {draws} draws, {sampling_words(draws)}"
    return f"{words} Thin lines: spans over the ranges of all inputs together, {percentiles}."

"""How far one result moves when each input runs through its range: pairs of bars from the result as given."""

from collections.abc import Sequence
from dataclasses import replace

from hubwright.quantities import format_number, format_range
from hubwright.quantities.formatting import NO_BREAK, Scale, last_place, scale_of
from hubwright.scenes.chart_rows import (
    BarValue,
    Chart,
    axis,
    chart,
    in_words,
    name_label,
    name_lines,
    value_note,
    width_of,
)
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Bar, Item, Label, Scene, Step, Units, Words

_PITCH, _THICK, _APART = 12.5, 3.4, 2.0  # rows; half bars, and how far they stand off the row's middle
_SIZE, _POINT = 2.3, 0.3  # words beside the bars; a bar of no length, which the zero line covers
_NOTHING = 1e-6


def sensitivity_bars(
    values: Sequence[BarValue],
    *,
    quantity: str,
    units: Units = "si",
    above: str = "",
    below: str = "",
    per_mm: float | None = None,
) -> Scene:
    """Return the scene of one result's sensitivity; every value is the result as given, with its two ends.

    `low` and `high` are the result with that input alone at the 5th and at the 95th percentile of its range, along
    which it runs evenly; `above` and `below` are the direction words of results on either side of zero.
    """
    if not values:
        raise ValueError("a sensitivity needs at least one input")
    for value in values:
        if value.span is None:
            raise ValueError(f"a sensitivity needs both ends (got none for '{value.name}')")
    base = values[0].value
    ordered = sorted(values, key=lambda value: -_swing(value))
    changes = _Changes(ordered, units)
    given = f"as given: {in_words(base, ordered[0].kind, units, above=above, below=below)}"
    words = [_lines(value, changes) for value in ordered]
    drawn = chart(
        ordered,
        units,
        zero=base,
        pitch=_PITCH,
        per_mm=per_mm,
        names=[name_lines(value.name, _range(value, units)) for value in ordered],
        beside=max((width_of(lines, _SIZE) for lines in words), default=0.0),
        heading=f"Change from the result {given}",
    )
    halves = [_THICK / 2 if _is_nothing(_swing(value), value) else _APART + _THICK / 2 for value in ordered]
    items: list[Item] = axis(drawn, 1, what="change", halves=halves, above="more", below="less")
    at = (drawn.view.origin[0], drawn.size[1] - 4.5)
    items.append(Words("words-given", "", 1, at_sheet=at, lines=(given,), size=2.4, align="centre"))
    for row, value in enumerate(ordered):
        items += _row(drawn, row, value, words[row])
    title = _title(ordered, quantity, changes)
    told = " ".join(
        f"{_named(value, units)}: larger, {changes.told(value, value.high)}; smaller, {changes.told(value, value.low)}."
        for value in ordered
    )
    return Scene(
        name="sensitivity-bars",
        title=title,
        caption=f"{quantity}, {given}. Each input alone, the others as given, at one scale: full bars for the 95th "
        "percentile of its range, open ones for the 5th.",
        description=f"{title}. {told}",
        units=units,
        size=drawn.size,
        views=(drawn.view,),
        items=tuple(items),
        steps=(
            Step("Draw the result as given", "The line from which all changes count."),
            Step("Make each input larger", "To the 95th percentile of its range, the others as given."),
            Step("Make each input smaller", "To the 5th percentile of its range."),
        ),
    )


def _swing(value: BarValue) -> float:
    return max(value.ends) - min(value.ends)


class _Changes:
    """What the result changes by, told in one unit and to one last digit: those of the largest change."""

    def __init__(self, values: Sequence[BarValue], units: Units) -> None:
        largest = max((abs(end - value.value) for value in values for end in value.ends), default=0.0)
        self.scale: Scale = scale_of(largest, values[0].kind, units)
        number = largest / self.scale.size
        self.places = 0
        if number:
            scale = self.scale
            self.places = last_place(number, significant=scale.significant, decimals=scale.decimals, least=scale.least)

    def told(self, value: BarValue, end: float | None) -> str:
        """Return how much more or less the result is at one end."""
        assert end is not None
        change = end - value.value
        if _is_nothing(change, value):
            return "no change"
        size = abs(change) / self.scale.size
        under = "" if round(size, self.places) else "under "
        number = max(round(size, self.places), 10.0**-self.places)
        text = f"{number:,.{self.places}f}" if self.places > 0 else format_number(number, significant=15)
        unit = f"{NO_BREAK}{self.scale.unit}" if self.scale.unit else ""
        return f"{under}{text}{unit} {'more' if change > 0 else 'less'}"


def _is_nothing(change: float, value: BarValue) -> bool:
    return abs(change) <= _NOTHING * max(abs(end) for end in value.ends)


def _lines(value: BarValue, changes: _Changes) -> tuple[str, ...]:
    if _is_nothing(_swing(value), value):
        return ("no change",)
    return f"larger: {changes.told(value, value.high)}", f"smaller: {changes.told(value, value.low)}"


def _range(value: BarValue, units: Units) -> str:
    """Return the range of the input, where it is told."""
    return "" if value.input_range is None else format_range(*value.input_range, value.input_kind, units)


def _named(value: BarValue, units: Units) -> str:
    told = _range(value, units)
    return f"{plain(value.name)} ({told})" if told else plain(value.name)


def _row(drawn: Chart, row: int, value: BarValue, words: tuple[str, ...]) -> list[Item]:
    assert value.low is not None
    assert value.high is not None
    y = drawn.rows[row]
    if _is_nothing(_swing(value), value):
        point = Bar(f"bar-larger-{row + 1}", "chart", 2, at=y, thick=_POINT, label=name_label(drawn, row, 0.0))
        return [point, value_note(drawn, row, 0.0, words, 2, _SIZE)]
    changes = (value.high - value.value, value.low - value.value)
    nearest = min(0.0, changes[0])
    return [
        Bar(
            f"bar-larger-{row + 1}",
            "chart",
            2,
            end=changes[0],
            at=y + _APART,
            thick=_THICK,
            tone="changed",
            # the name stands beside both bars of the row
            label=_lowered(drawn, row, nearest),
        ),
        Bar(
            f"bar-smaller-{row + 1}",
            "chart",
            3,
            end=changes[1],
            at=y - _APART,
            thick=_THICK,
            tone="changed",
            is_open=True,
        ),
        value_note(drawn, row, max(changes), words, 2, _SIZE),
    ]


def _lowered(drawn: Chart, row: int, nearest: float) -> Label:
    label = name_label(drawn, row, nearest)
    return replace(label, nudge=(label.nudge[0], -_APART))


def _title(ordered: Sequence[BarValue], quantity: str, changes: _Changes) -> str:
    top = ordered[0]
    still = [plain(value.name) for value in ordered if _is_nothing(_swing(value), value)]
    if len(still) == len(ordered):
        return f"{quantity}: none of these inputs contributes anything"
    low, high = (changes.told(top, end) for end in (min(top.ends), max(top.ends)))
    title = f"{quantity}: {plain(top.name)} matters most, {low} to {high}"
    if len(still) == 1:
        title += f"; {still[0]} contributes nothing"
    elif still:
        title += f"; {len(still)} inputs contribute nothing"
    return title

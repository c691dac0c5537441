"""How far one result moves when each input runs through its range: pairs of bars from the result as given."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from hubwright.quantities import format_quantity
from hubwright.scenes.chart_rows import BarValue, Chart, axis, chart, in_words, name_label, value_note
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Bar, Item, Label, Scene, Step, Units, Words

_PITCH, _THICK, _APART = 12.5, 3.4, 2.0  # rows; half bars, and how far they stand off the row's middle
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

    `low` and `high` are the result with that input alone at the lower and at the upper end of its range; `above` and
    `below` are the direction words of results on either side of zero.
    """
    for value in values:
        if value.span is None:
            raise ValueError(f"a sensitivity needs both ends (got none for '{value.name}')")
    base = values[0].value if values else 0.0
    ordered = sorted(values, key=lambda value: -_swing(value))
    drawn = chart(ordered, units, zero=base, pitch=_PITCH, per_mm=per_mm)
    items: list[Item] = axis(drawn, 1, above="more", below="less")

    def told(value: float) -> str:
        return in_words(value, ordered[0].kind, units, above=above, below=below)

    given = f"as given: {told(base)}"
    at = (drawn.view.origin[0], drawn.size[1] - 4.5)
    items.append(Words("words-given", "", 1, at_sheet=at, lines=(given,), size=2.4, align="centre"))
    for row, value in enumerate(ordered):
        items += _row(drawn, row, value, units)
    title = _title(ordered, quantity, told)
    changes = " ".join(
        f"{plain(value.name)}: larger, {_change(value, value.high, units)}; "
        f"smaller, {_change(value, value.low, units)}."
        for value in ordered
    )
    return Scene(
        name="sensitivity-bars",
        title=title,
        caption=f"{quantity}, {given}. Each input alone runs through its range, at one scale: full bars for its upper "
        "end, open ones for its lower end.",
        description=f"{title}. {changes}",
        units=units,
        size=drawn.size,
        views=(drawn.view,),
        items=tuple(items),
        steps=(
            Step("Draw the result as given", "The line from which all changes count."),
            Step("Make each input larger", "To the upper end of its range, the others as given."),
            Step("Make each input smaller", "To the lower end of its range."),
        ),
    )


def _swing(value: BarValue) -> float:
    return max(value.ends) - min(value.ends)


def _row(drawn: Chart, row: int, value: BarValue, units: Units) -> list[Item]:
    assert value.low is not None
    assert value.high is not None
    changes = (value.high - value.value, value.low - value.value)
    y = drawn.rows[row]
    nearest = min(0.0, changes[0])
    lines = (f"larger: {_change(value, value.high, units)}", f"smaller: {_change(value, value.low, units)}")
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
        value_note(drawn, row, max(changes), lines, 2, size=2.3),
    ]


def _lowered(drawn: Chart, row: int, nearest: float) -> Label:
    label = name_label(drawn, row, nearest)
    return replace(label, nudge=(label.nudge[0], -_APART))


def _change(value: BarValue, end: float | None, units: Units) -> str:
    """Return how much more or less the result is at one end."""
    assert end is not None
    change = end - value.value
    if abs(change) <= _NOTHING * max(abs(part) for part in value.ends):
        return "no change"
    return f"{format_quantity(abs(change), value.kind, units)} {'more' if change > 0 else 'less'}"


def _title(ordered: Sequence[BarValue], quantity: str, told: Callable[[float], str]) -> str:
    top = ordered[0]
    still = [plain(value.name) for value in ordered if _swing(value) <= _NOTHING * max(abs(end) for end in value.ends)]
    if len(still) == len(ordered):
        return f"{quantity}: none of these inputs contributes anything"
    low, high = (told(end) for end in (min(top.ends), max(top.ends)))
    title = f"{quantity}: {plain(top.name)} matters most, from {low} to {high}"
    if len(still) == 1:
        title += f"; {still[0]} contributes nothing"
    elif still:
        title += f"; {len(still)} inputs contribute nothing"
    return title

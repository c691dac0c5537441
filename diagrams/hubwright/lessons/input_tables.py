"""Every input of a setup with its value, range and origin; and those that were estimated, for the theme."""

from typing import Any

from markupsafe import Markup, escape

from hubwright.lessons.key_words import meaning, short_meaning
from hubwright.lessons.numbers import show, show_range
from hubwright.lessons.stacked_table import Column, Row, stacked_table
from hubwright.lessons.views import input_quantity
from hubwright.quantities import Quantity
from hubwright.results import Results

_COLUMNS = (Column("Value"), Column("Range"), Column("Origin", number=False), Column("How", number=False))


def inputs_table(results: Results) -> Markup:
    """Return every input with its value, range, origin and how an estimate came about."""
    rows = [
        Row(
            Markup('<code>{}</code><span class="means">{}</span>').format(key, meaning(results.setup, key)),
            (
                value_of(input_quantity(key, entry)),
                range_of(input_quantity(key, entry)),
                escape(entry.origin),
                escape(entry.note),
            ),
            kind="guess" if entry.origin == "estimated" else "",
        )
        for key, entry in results.inputs.items()
    ]
    return stacked_table("Inputs with range and origin", "Key of the file", _COLUMNS, rows, kind="inputs")


def estimated(results: Results) -> list[dict[str, Any]]:
    """Return what the theme lists as estimated: key, value, range and how it came about."""
    return [
        {
            "key": key,
            "value_html": value_of(input_quantity(key, entry)),
            "range_html": range_of(input_quantity(key, entry)),
            "note": entry.note,
        }
        for key, entry in results.inputs.items()
        if entry.origin == "estimated"
    ]


def estimated_in_words(results: Results) -> Markup:
    """Return what was estimated as a run of words, each with its value and range; empty where nothing was.

    What follows from an estimate, such as an axle's mass from the whole and a share, is not told beside it.
    """
    found = [
        _in_words(short_meaning(results.setup, key), key, input_quantity(key, entry))
        for key, entry in results.inputs.items()
        if entry.origin == "estimated" and not entry.derived_from and not _of_named_duty(results, key)
    ]
    if results.setup.duty_name is not None:
        found.append(Markup("the mixture of driving “{}”, an invented example").format(results.setup.duty_name))
    return Markup("; ").join(found)


def _in_words(words: str, key: str, value: Quantity | str) -> Markup:
    if key == "wheel.spacer" and not isinstance(value, str) and value.value == 0:
        return Markup("no spacer")
    spread = range_of(value)
    return Markup("{} {}{}").format(words, value_of(value), Markup(" ({})").format(spread) if spread else "")


def _of_named_duty(results: Results, key: str) -> bool:
    return results.setup.duty_name is not None and key.startswith(("duty.", "case."))


def value_of(value: Quantity | str) -> Markup:
    """Return an input as shown: a quantity with its unit, or words."""
    return escape(value) if isinstance(value, str) else show(value)


def range_of(value: Quantity | str) -> Markup:
    """Return the range of an input; empty where it has none."""
    return Markup("") if isinstance(value, str) else show_range(value)

"""What the page about finding one's own numbers is made of: keys of the file, how to find them, and which ones matter.

Which matter follows from the ranges: the part of a result's span that an input alone makes.
"""

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup, escape

from hubwright.lessons.blocks import BlockError
from hubwright.lessons.course import Course, solved
from hubwright.lessons.input_tables import range_of, value_of
from hubwright.lessons.key_words import key_of, meaning, short_meaning
from hubwright.lessons.named_values import View
from hubwright.lessons.numbers import NO_BREAK, both, by_tape, quantity_of, show
from hubwright.lessons.page_state import PageState
from hubwright.lessons.setup_family import families, root_of
from hubwright.lessons.stacked_table import Column, Row, stacked_table
from hubwright.lessons.views import input_quantity
from hubwright.lessons.words import listed
from hubwright.quantities import Quantity, format_number
from hubwright.results import Results
from hubwright.results.sensitivity import Matters, what_matters
from hubwright.setup.keys import Key
from hubwright.setup.schema import ALTERNATIVES

SHOWN = 8  # inputs in the list of what is worth measuring, and in its figure
_WORTH = 0.01  # of a span: less is not worth a tape
NO_EFFECT = "none"
LB_PER_FT3 = 0.3048**3 / 0.45359237  # of a density of 1 kg/m³


@dataclass(frozen=True)
class _Shares:
    """What each input alone makes of the spans, by key; a result that cannot be told has no entries."""

    load: dict[str, Matters]
    life: dict[str, Matters]
    ratio: dict[str, Matters]
    beside: str  # the setup that the ratio of lives is taken to; empty without one


def _shares(course: Course, results: Results) -> _Shares:
    other = _beside(course, results)
    if other is not None and (other.life is None or results.life is None or other.wheel != results.wheel):
        other = None
    ratio = what_matters(other, "life ratio", beside=results) if other is not None else ()
    load, life, between = (
        {one.key: one for one in each}
        for each in (what_matters(results, "worst row load"), what_matters(results, "life"), ratio)
    )
    return _Shares(load, life, between, beside=other.setup.name if other is not None and ratio else "")


def _beside(course: Course, results: Results) -> Results | None:
    """Return another setup of the same vehicle: that of a setup, or of its own setups the one loaded most unlike."""
    stem = results.setup.stem
    if stem not in course.results:
        return None
    root = root_of(course, stem)
    if root is not None:
        return course.results[root]
    others = [course.results[other] for other in families(course).get(stem, [])]
    return max(others, key=lambda other: _apart(results, other), default=None)


def _apart(results: Results, other: Results) -> float:
    """Return how far the harder loaded rows of two setups are from one another, standing, as a logarithm."""
    loads = []
    for each in (results, other):
        radial = each.cases["standing"].row_radial_load
        loads.append(0.0 if radial is None else max(radial.outboard, radial.inboard))
    return abs(math.log(loads[1] / loads[0])) if min(loads) > 0 else 0.0


def worth_measuring(page: PageState, course: Course, view: View) -> Markup:
    """Return the inputs with a range in the order of what they alone make of a span."""
    results = solved(view, "worth_measuring")
    shares = _shares(course, results)
    every = dict.fromkeys([*shares.load, *shares.life, *shares.ratio])
    if not every:
        words = (
            "Nothing here has a range that moves the load of a row, or the file does not say enough of the bearing to "
            "tell its rows apart."
        )
        return page.set_aside(Markup("<p>{}</p>").format(words))
    columns = [
        Column("Range"),
        Column("Origin", number=False),
        Column("Row load"),
        *([Column("Life")] if shares.life else []),
        *([Column("Ratio of lives")] if shares.ratio else []),
    ]
    used = [table for table in (shares.load, shares.life, shares.ratio) if table]
    # what both lives of a ratio share cancels: the ratio is what a page tells
    leading = [table for table in (shares.load, shares.ratio or shares.life) if table]

    def most(key: str, tables: Sequence[dict[str, Matters]]) -> float:
        return max((table[key].share for table in tables if key in table), default=0.0)

    worth = [key for key in every if most(key, used) >= _WORTH]
    ordered = sorted(worth, key=lambda key: -most(key, leading))
    rows = [Row(_named(results, key), _cells(results, key, shares)) for key in ordered[:SHOWN]]
    table = stacked_table(_caption(shares), "Measure first", columns, rows, kind="worth")
    idle = [key for key in every if key not in worth]
    rest = (
        Markup("<p>These have a range too and move none of it: {}.</p>").format(
            Markup(", ").join(Markup("<code>{}</code>").format(key) for key in idle)
        )
        if idle
        else Markup("")
    )
    return page.set_aside(table + rest)


def _caption(shares: _Shares) -> str:
    """Return what the parts are parts of."""
    of = ["the load of the harder loaded row, standing"]
    if shares.life:
        of.append("the bearing’s life")
    if shares.ratio:
        of.append(f"the ratio of its life to that in {shares.beside}")
    return (
        f"The part that each alone makes of the span of {listed(of)}: its own way over that of all together, both as "
        "logarithms. Parts do not add up to the whole."
    )


def _cells(results: Results, key: str, shares: _Shares) -> list[Markup]:
    entry = results.inputs.get(key)
    spread = range_of(input_quantity(key, entry)) if entry is not None else Markup("± 20 %")
    tables = [shares.load, *([shares.life] if shares.life else []), *([shares.ratio] if shares.ratio else [])]
    origin = "computed from its geometry" if entry is None else entry.origin
    return [spread, escape(origin), *(_part(table.get(key)) for table in tables)]


def _part(one: Matters | None) -> Markup:
    if one is None or one.share < 0.005:
        return escape(NO_EFFECT)
    return show(Quantity(one.share, "1", kind="percent"))


def swings(view: View) -> list[tuple[str, Quantity]]:
    """Return the load of the harder loaded row, standing, at both ends of what matters most to it, for a figure."""
    results = solved(view, "swings")
    found = [one for one in what_matters(results, "worst row load") if one.share >= _WORTH][:SHOWN]
    radial = results.cases["standing"].row_radial_load
    if radial is None:
        return []
    load = max(radial.outboard, radial.inboard)
    return [
        (short_meaning(results.setup, one.key), Quantity(load, "N", low=load * one.low, high=load * one.high))
        for one in found
    ]


def key_table(page: PageState, view: View, *keys: str) -> Markup:
    """Return some keys of the file: what stands in it, how an owner finds it, and what is taken without it."""
    results = solved(view, "key_table")
    rows = [row for key in keys if (row := _key_row(results, key)) is not None]
    if not rows:
        raise BlockError(f"key_table: a {results.setup.kind} file has none of {', '.join(keys)}")
    columns = (
        Column("In this file"),
        Column("How to find it", number=False),
        Column("Without it", number=False),
    )
    return page.set_aside(stacked_table("In the file, and without it.", "Key", columns, rows, kind="keys"))


def _key_row(results: Results, key: str) -> Row | None:
    known = key_of(results.setup, key)
    if known is None:
        return None
    inputs = [
        (name, entry)
        for name, entry in results.inputs.items()
        if name == key or (key.startswith("gear.") and name.startswith("gear.") and name.endswith(key[4:]))
    ]
    if not inputs:
        told = Markup("not given")
    else:
        name, entry = inputs[0]
        quantity = input_quantity(name, entry)
        spread = range_of(quantity)
        parts = [value_of(quantity), *([spread] if spread else []), escape(entry.origin)]
        told = Markup("<br>").join(parts)
    head = Markup('<code>{}</code><span class="means">{}</span>').format(key, known.meaning)
    return Row(head, (told, escape(known.find or "–"), _in_both(_without(known, key))))


_VALUE = re.compile(r"(?:([\d.]+) ± )?([\d.]+) (mm|m|kg/m³|kg)(?![\w/])")


def _in_both(text: str) -> Markup:
    """Return a text with each of its SI values in both unit systems, a range as value and half width."""
    pieces, end = Markup(""), 0
    for found in _VALUE.finditer(text):
        middle, last, unit = found.groups()
        told = " ± ".join(_in_us(value, unit) for value in (middle, last) if value)
        pieces += escape(text[end : found.start()]) + both(found[0].replace(f" {unit}", f"{NO_BREAK}{unit}"), told)
        end = found.end()
    return pieces + escape(text[end:])


def _in_us(value: str, unit: str) -> str:
    if unit == "kg/m³":
        return f"{format_number(float(value) * LB_PER_FT3, significant=3)}{NO_BREAK}lb/ft³"
    quantity = quantity_of(f"{value} {unit}")
    assert quantity is not None
    return by_tape(quantity)


def _without(known: Key, key: str) -> str:
    """Return what is taken where a key is left out, and which other key says the same."""
    ways = next((ways for ways in ALTERNATIVES if any(key in way for way in ways)), ())
    others = [way[0] for way in ways if key not in way]
    if others:
        return "; ".join([*([known.estimate] if known.estimate else []), f"or give {' or '.join(others)}"])
    return known.estimate or ("needed: it has no estimate" if known.required else "what follows from it is left out")


def _named(results: Results, key: str) -> Markup:
    words = "rating of the bearing" if key not in results.inputs else meaning(results.setup, key)
    return Markup('<code>{}</code><span class="means">{}</span>').format(key, words)


def example_line(view: View, key: str) -> Markup:
    """Return how a key is written in a file."""
    known = key_of(solved(view, "example_line").setup, key)
    if known is None:
        raise BlockError(f"no key is called '{key}'")
    written: Sequence[str] = (key.rpartition(".")[2], known.written.replace("'", '"'))
    return Markup("<code>{} = {}</code>").format(*written)

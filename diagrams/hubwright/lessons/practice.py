"""Practice problems: the question, an answer box that knows common slips, a nudge, and the answer worked."""

import json
from collections.abc import Sequence

from markupsafe import Markup, escape

from hubwright.lessons.blocks import BlockError, Caller
from hubwright.lessons.numbers import attribute, plain
from hubwright.lessons.page_state import PageState
from hubwright.quantities import KINDS, Kind, Quantity, System

Slip = tuple[Quantity, str]
# the units that an answer box offers: name, size in SI
_ANSWER_UNITS: dict[str, tuple[Kind, ...]] = {
    "m": ("small length", "vehicle length", "length"),
    "N": ("force",),
    "N*m": ("moment",),
    "kg": ("mass",),
    "rad": ("angle",),
    "Pa": ("pressure",),
    "N/m": ("stiffness",),
}
WITHIN = 0.006  # relative: three digits, rounded once on the way


def problem(
    page: PageState,
    *,
    answer: Quantity,
    slips: Sequence[Slip] = (),
    nudge: str = "",
    worked: str = "",
    right: str = "",
    unit_kinds: Sequence[Kind] | None = None,
    within: float = WITHIN,
    caller: Caller,
) -> Markup:
    """Return a practice problem with its answer box, known slips, a nudge and the answer worked."""
    page.practice += 1
    n = page.practice
    if not isinstance(answer, Quantity):
        raise BlockError(f"problem needs a quantity as its answer, got {answer!r}")
    options = Markup("").join(
        Markup('<option value="{}" data-system="{}">{}</option>').format(f"{size:.12g}", system, name)
        for name, size, system in _answer_units(answer, unit_kinds)
    )
    mistakes = [
        [slip.value, plain(text)]
        for slip, text in slips
        # a slip that gives the right answer for this setup is no slip
        if abs(slip.value - answer.value) > 2 * within * abs(answer.value)
    ]
    entry = page.set_aside(
        Markup(
            '<div class="entry needs-js"><div class="field"><label for="a{n}">Your answer</label>'
            '<input id="a{n}" inputmode="decimal" autocomplete="off" aria-describedby="p{n} f{n}"></div>'
            '<div class="field"><label for="u{n}">Unit</label><select id="u{n}">{options}</select></div>'
            '<button class="do">Check it</button></div>\n'
            '<output class="feedback needs-js" id="f{n}" for="a{n} u{n}"></output>'
        ).format(n=n, options=options)
    )
    folds = Markup("").join(
        Markup('\n\n<details class="fold" markdown="1">\n<summary>{}</summary>\n\n{}\n\n</details>\n\n').format(
            head, Markup(text.strip())
        )
        for head, text in (("A nudge", nudge), ("The answer, worked", worked))
        if text
    )
    data = Markup('data-answer="{}" data-within="{:g}" data-right="{}" data-slips="{}"').format(
        f"{answer.value:.9g}", within, attribute(right), escape(json.dumps(mistakes, ensure_ascii=False))
    )
    return Markup(
        '\n\n<form class="problem" {} novalidate markdown="1">\n\n<h3>Problem {}</h3>\n\n'
        '<div id="p{}" markdown="1">\n\n{}\n\n</div>\n\n{}{}\n\n</form>\n\n'
    ).format(data, n, n, Markup(caller().strip()), entry, folds)


def _answer_units(answer: Quantity, kinds: Sequence[Kind] | None) -> list[tuple[str, float, System]]:
    """Return name, size in SI and system of the units that an answer may be given in."""
    if answer.unit == "1":
        return [("%", 0.01, "si") if answer.kind == "percent" else ("times", 1.0, "si")]
    wanted = list(kinds or _ANSWER_UNITS.get(answer.unit, (answer.kind,) if answer.kind else ()))
    units: dict[str, tuple[str, float, System]] = {}
    systems: tuple[System, System] = ("si", "us")
    for place, system in enumerate(systems):
        for kind in wanted:
            for scale in KINDS[kind][place]:
                if scale.offset == 0.0:
                    units.setdefault(scale.unit, (scale.unit, scale.size, system))
    return list(units.values())

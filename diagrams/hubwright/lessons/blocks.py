"""The blocks of a lesson: answer, notes, claim box, closure table, practice problems, lists at the end.

Each returns HTML in which Markdown goes on (`markdown="1"`), or sets finished HTML aside on the page.
"""

import json
from collections.abc import Callable, Sequence

import markdown
from markupsafe import Markup, escape

from hubwright.errors import HubwrightError
from hubwright.lessons.numbers import attribute, both, plain, shown
from hubwright.lessons.page_state import Note, PageState
from hubwright.lessons.sources import Source, source_html
from hubwright.lessons.views import View, subject_of
from hubwright.quantities import KINDS, Kind, Quantity
from hubwright.results import CaseResult, Results

Caller = Callable[[], str]
# A private-use character opens and closes the mark by which the Markdown extension finds a note.
NOTE_OPEN, NOTE_CLOSE = "\ue000", "\ue001"

_GLYPHS = {
    "push": '<svg class="glyph push" viewBox="0 0 36 56" aria-hidden="true"><path class="load-shaft" d="M18 54V20"/><path class="load-head" d="M18 2L25 22H11Z"/></svg>',
    "turn": '<svg class="glyph turn" viewBox="0 0 36 56" aria-hidden="true"><path class="mom" d="M27 41A15 15 0 1 0 5.5 36"/><path class="mom-head" d="M9.6 45.5L1.2 35.4L11.2 31Z"/></svg>',
    "none": "",
}


class BlockError(HubwrightError, ValueError):
    """A block that was called with something it cannot use."""


def answer(page: PageState, tag: str, numerals: Sequence[Sequence[object]], *, caller: Caller) -> Markup:
    """Return the short answer at the top of a lesson: large numerals and a sentence."""
    entries = Markup("").join(_numeral(entry) for entry in numerals)
    head = page.set_aside(Markup('<span class="tag">{}</span><dl>{}</dl>').format(tag, entries))
    return Markup('\n\n<div class="answer" markdown="1">{}{}\n\n</div>\n\n').format(head, Markup(caller().strip()))


def _numeral(entry: Sequence[object]) -> Markup:
    words, value, glyph = (*entry, "none")[:3]
    if not isinstance(value, Quantity | int | float) or glyph not in _GLYPHS:
        raise BlockError(
            f"answer needs (words, number, {' or '.join(map(repr, _GLYPHS))}) for each numeral, got {entry!r}"
        )
    large = [
        Markup("{}<small>{}</small>").format(one.number, one.unit) for one in (shown(value, "si"), shown(value, "us"))
    ]
    return Markup('<div class="big"><dt>{}</dt><dd>{}</dd>{}</div>').format(
        Markup(words), both(large[0], large[1]), Markup(_GLYPHS[str(glyph)])
    )


def note(page: PageState, kind: str, text: str, key: str | None = None, *, sources: dict[str, Source]) -> Markup:
    """Return the mark of a side note; the note itself goes beside its paragraph and into the lists at the end."""
    if kind not in ("assumed", "source"):
        raise BlockError(f'note("{kind}", …): the first word must be "assumed" or "source"')
    if key is not None and key not in sources:
        raise BlockError(f"no source is called '{key}' in sources.toml; there are: {', '.join(sorted(sources))}")
    if key is not None and key not in page.sources:
        page.sources.append(key)
    body = inline(text)
    cited = Markup(" [{}]").format(page.sources.index(key) + 1) if key is not None else Markup("")
    letter = _letter(len(page.notes))
    page.notes.append(
        Note(
            letter=letter, kind="assumed" if kind == "assumed" else "source", html=body + cited, short=body, source=key
        )
    )
    return Markup(f"{NOTE_OPEN}{len(page.notes) - 1}{NOTE_CLOSE}")


def _letter(index: int) -> str:
    alphabet = "abcdefghijklmnopqrstuvwxyz"
    return alphabet[index] if index < 26 else alphabet[index // 26 - 1] + alphabet[index % 26]


def claim_box(page: PageState, claim: str, *, caller: Caller) -> Markup:
    """Return the box in which a popular claim is stated and put to the numbers."""
    head = page.set_aside(
        Markup('<span class="tag">The claim</span>\n<blockquote>“{}”</blockquote>').format(inline(claim))
    )
    return Markup('\n\n<div class="claim" markdown="1">{}{}\n\n</div>\n\n').format(head, Markup(caller().strip()))


_FORCE_NAMES = {
    "contact": "The road",
    "weight_wheel": "Weight of tire and wheel",
    "weight_hub": "Weight of hub and disc",
    "inertia_wheel": "Inertia of tire and wheel",
    "inertia_hub": "Inertia of hub and disc",
    "caliper": "The caliper",
    "row_outboard": "Outboard row",
    "row_inboard": "Inboard row",
    "axial": "Thrust on the bearing",
    "bearing": "The bearing",
}
_SMALL = 1e-6


def closure_table(page: PageState, view: View) -> Markup:
    """Return the table of everything on a free body with its turning effect, and what is left over."""
    results, case = case_of(view)
    body = case.free_body
    side = results.side
    rows, force_sum, moment_sum = [], 0.0, 0.0
    for single in body.forces:
        # about the x axis, through the bearing centre, as at a left wheel: the top toward the vehicle is positive
        turning = side * (single.point.y * single.force.z - single.point.z * single.force.y)
        force_sum += single.force.z
        moment_sum += turning
        if abs(single.force.z) < _SMALL and abs(turning) < _SMALL:
            continue
        name = _FORCE_NAMES.get(single.name, single.name.replace("_", " "))
        rows.append(
            (
                name,
                _signed(single.force.z, "force"),
                _signed(side * single.point.y, "length"),
                _signed(turning, "moment"),
            )
        )
    for couple in body.couples:
        turning = side * couple.moment.x
        moment_sum += turning
        if abs(turning) >= _SMALL:
            rows.append(
                (_FORCE_NAMES.get(couple.name, couple.name), Markup(""), Markup(""), _signed(turning, "moment"))
            )
    lines = Markup("\n").join(
        Markup(
            '<tr><th scope="row">{}</th><td class="n">{}</td><td class="n">{}</td><td class="n">{}</td></tr>'
        ).format(*row)
        for row in rows
    )
    head = Markup("").join(
        Markup('<th scope="col" class="n">{}, {}</th>').format(words, both(*units))
        for words, units in (("Upward", ("kN", "lbf")), ("Outboard at", ("mm", "in")), ("Turning", ("N·m", "lbf·ft")))
    )
    table = Markup(
        '<div class="tablewrap wide">\n<table>\n<caption>Is anything left over? Every force on the free body, {}, and its turning effect about the '
        'middle of the bearing.</caption>\n<thead><tr><th scope="col">What acts</th>{}</tr></thead>\n<tbody>\n{}\n</tbody>\n'
        '<tfoot><tr><th scope="row">Left over</th><td class="n">{}</td><td class="n"></td><td class="n">{}</td></tr></tfoot>\n</table>\n</div>'
    ).format(case.name, head, lines, _signed(force_sum, "force"), _signed(moment_sum, "moment"))
    return page.set_aside(table)


# Unit, its size in SI and decimals: finer than in running text, so that a reader can add the column up.
_FINE: dict[str, tuple[tuple[float, int], tuple[float, int]]] = {
    "force": ((1e3, 3), (4.4482216152605, 1)),
    "length": ((1e-3, 1), (0.0254, 3)),
    "moment": ((1.0, 2), (4.4482216152605 * 0.3048, 2)),
}


def _signed(value: float, kind: str) -> Markup:
    texts = []
    for size, decimals in _FINE[kind]:
        rounded = round(value / size, decimals) + 0.0
        texts.append(f"{rounded:+,.{decimals}f}".replace("-", "\u2212") if rounded else f"{0:.{decimals}f}")
    return both(*texts)


def case_of(view: object) -> tuple[Results, CaseResult]:
    """Return the results and the case behind a view such as `stock.standing`."""
    subject = subject_of(view) if isinstance(view, View) else None
    if not isinstance(subject, tuple):
        raise BlockError(f"needs a case, such as stock.standing, got {view!r}")
    results, case = subject
    return results, case


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
        Markup('<option value="{}">{}</option>').format(f"{size:.12g}", name)
        for name, size in _answer_units(answer, unit_kinds)
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
            '<button class="do">Check it</button></div>\n<output class="feedback needs-js" id="f{n}" for="a{n} u{n}"></output>'
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
        '\n\n<form class="problem" {} novalidate markdown="1">\n\n<h3>Problem {}</h3>\n\n<div id="p{}" markdown="1">\n\n{}\n\n</div>\n\n{}{}\n\n</form>\n\n'
    ).format(data, n, n, Markup(caller().strip()), entry, folds)


def _answer_units(answer: Quantity, kinds: Sequence[Kind] | None) -> list[tuple[str, float]]:
    if answer.unit == "1":
        return [("%", 0.01)] if answer.kind == "percent" else [("times", 1.0)]
    wanted = list(kinds or _ANSWER_UNITS.get(answer.unit, (answer.kind,) if answer.kind else ()))
    units: dict[str, float] = {}
    for system in (0, 1):
        for kind in wanted:
            for scale in KINDS[kind][system]:
                if scale.offset == 0.0:
                    units.setdefault(scale.unit, scale.size)
    return list(units.items())


def assumed_list(page: PageState) -> Markup:
    """Return the assumptions of a page as a list."""
    return _ledger(
        Markup('<li><span class="ring">{}</span><span>{}</span></li>').format(one.letter, one.short)
        for one in page.notes
        if one.kind == "assumed"
    )


def sources_list(page: PageState, sources: dict[str, Source]) -> Markup:
    """Return the sources that a page cites as a numbered list."""
    return _ledger(
        Markup("<li><span>{}</span><span>{}</span></li>").format(n, source_html(sources[key]))
        for n, key in enumerate(page.sources, 1)
    )


def _ledger(items: object) -> Markup:
    return Markup('<ul class="ledger">\n{}\n</ul>').format(Markup("\n").join(items))  # type: ignore[arg-type]


def inline(text: str) -> Markup:
    """Return a sentence written in Markdown as HTML without its paragraph."""
    html = markdown.markdown(text, extensions=["smarty"])
    return Markup(html.removeprefix("<p>").removesuffix("</p>"))

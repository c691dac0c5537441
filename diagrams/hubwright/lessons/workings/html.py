"""A working as it stands on a page: formula, symbols, numbers put in, result and source, folded, with the steps before.

The steps before are the workings of the numbers put in, each told once on a page: where it is told already, a link
goes there.
"""

import re
from collections.abc import Callable
from typing import get_args

from markupsafe import Markup

from hubwright.lessons.mathml import equation, mathml
from hubwright.lessons.numbers import NO_BREAK, attribute, both, show
from hubwright.lessons.page_state import PageState
from hubwright.lessons.reference_links import reference_link
from hubwright.lessons.workings.catalogue import explained
from hubwright.lessons.workings.model import Working
from hubwright.lessons.workings.notation import (
    TIMES,
    latex_copy,
    plain_copy,
    put_in_terms,
    result_latex,
    symbolic_latex,
    unit_of,
)
from hubwright.lessons.workings.sentence import in_one_sentence
from hubwright.lessons.workings.shown import Shown
from hubwright.quantities import System

TURNOVER = Markup(
    '<span class="turnover"><span class="shut">open the working</span>'
    '<span class="open">close the working</span></span>'
)


def working_html(page: PageState, made: Working) -> Markup:
    """Return the details element of a working, with the workings of the numbers that it puts in."""
    ident = _placed(page, made)
    parts = [
        ("Formula", Markup("").join(equation(symbolic_latex(made, line)) for line in made.lines)),
        ("With", _terms(made)),
        ("Put in", _in_each_system(made, lambda shown: [_run(put_in_terms(shown, line)) for line in made.lines])),
        (
            "Comes to",
            _in_each_system(made, lambda shown: [equation(result_latex(shown))]) if made.digits else Markup(""),
        ),
        ("Says", Markup("{}").format(made.about)),
        ("Leaves out", Markup("{}").format(made.leaves_out[:1].upper() + made.leaves_out[1:])),
        ("From", _source(made)),
    ]
    rows = Markup("").join(Markup("<div><dt>{}</dt><dd>{}</dd></div>").format(*part) for part in parts if part[1])
    copies, before = (Markup(""), Markup("")) if page.brief_workings else (_copies(made), _steps_before(page, made))
    return Markup(
        '<details class="worked" id="{}"{}><summary><span class="what">{}</span>{}</summary>\n<dl>{}</dl>{}</details>'
    ).format(ident, copies, _heading(made), TURNOVER, rows, before)


def address(path: str, case: str = "") -> str:
    """Return the anchor of the working of a result, of a setup or of a case, where it stands first on its page."""
    return f"working-{_slug(f'{case} {path}')}"


def place(page: PageState, key: tuple[object, ...], name: str) -> str:
    """Return the anchor of a working on a page, and keep where what it explains stands first."""
    wanted = address(name)
    taken = set(page.workings.values())
    number = next(n for n in range(1, len(taken) + 2) if (wanted if n == 1 else f"{wanted}-{n}") not in taken)
    ident = wanted if number == 1 else f"{wanted}-{number}"
    page.workings.setdefault(key, ident)
    if page.workings[key] != ident:
        page.workings[(*key, number)] = ident
    return ident


def _placed(page: PageState, made: Working) -> str:
    case = made.subject[1] if made.subject else None
    return place(page, _key(made), f"{case.name if case else ''} {made.path or made.what}")


def _key(made: Working) -> tuple[object, ...]:
    if made.subject is None:
        return (id(made),)
    results, case = made.subject
    return (id(results), case.name if case else "", made.path or made.what)


def _slug(name: str) -> str:
    return "-".join("".join(c if c.isascii() and c.isalnum() else " " for c in name.lower()).split())


def _heading(made: Working) -> Markup:
    if not made.told_openly:
        return Markup("{}").format(made.what)
    return Markup('{}: <span class="keep">{} = {}</span>').format(
        made.what, mathml(made.result.latex, "inline"), show(made.result.value)
    )


def _steps_before(page: PageState, made: Working) -> Markup:
    """Return the workings of the numbers put in, or links to where the page tells them already."""
    steps = []
    for path in dict.fromkeys(made.symbols[name].path for name in made.term_names() if made.symbols[name].path):
        before = explained(made, path)
        if before is None or before.lines[-1].expression == "0":  # where nothing acts there is nothing to work out
            continue
        if (ident := page.workings.get(_key(before))) is not None:
            steps.append(Markup('<p class="told"><a href="#{}">{}</a></p>').format(ident, _heading(before)))
        else:
            steps.append(working_html(page, before))
    if not steps:
        return Markup("")
    return Markup('\n<div class="before"><p class="tag">Where the numbers put in come from</p>\n{}</div>').format(
        Markup("\n").join(steps)
    )


def _copies(made: Working) -> Markup:
    """Return what the buttons of the page copy, as attributes."""
    parts = []
    for system in get_args(System):
        for name, text in (
            ("latex", latex_copy(made, system)),
            ("plain", plain_copy(made, system)),
            ("sentence", in_one_sentence(made, system)),
        ):
            parts.append(Markup(' data-{}-{}="{}"').format(name, system, attribute(text)))
    return Markup("").join(parts)


def _terms(made: Working) -> Markup:
    """Return the symbols that no line explains, in words and with their values."""
    shown = {system: Shown(made, system) for system in get_args(System)}
    rows = Markup("").join(
        Markup('<tr><td>{}</td><th scope="row">{}</th><td class="n">{}</td></tr>').format(
            mathml(made.symbols[name].latex, "inline"),
            made.symbols[name].words,
            both(*(_value(shown[system], name) for system in get_args(System))),
        )
        for name in made.term_names()
    )
    return Markup('<table class="terms"><tbody>{}</tbody></table>').format(rows) if rows else Markup("")


def _value(shown: Shown, name: str) -> str:
    number, unit = shown.number(name).replace("-", "\u2212"), unit_of(shown, name).text
    return f"{number}{unit}" if unit in ("", "°") else f"{number}{NO_BREAK}{unit}"


def _in_each_system(made: Working, lines: Callable[[Shown], list[Markup]]) -> Markup:
    return Markup("").join(
        Markup('<div class="{}">{}</div>').format(system, Markup("").join(lines(Shown(made, system))))
        for system in get_args(System)
    )


def _run(terms: list[str]) -> Markup:
    """Return a sum whose terms may go on in new lines."""
    if len(terms) == 1:
        return equation(terms[0])
    return Markup('<div class="eq run">{}</div>').format(Markup(" ").join(_term(term) for term in terms))


_SIGNS = ("+", "-", "=", TIMES)
_FIRST_SIGN = re.compile(r"<mo>(?=(?:&#x0002B;|&#x02212;|&#x0003D;|&#x000D7;|[+−=×-])</mo>)")


def _term(term: str) -> Markup:
    """Return a term of a sum; its sign, though first in its element, has space on both sides."""
    html = str(mathml(rf"\displaystyle {term}", "inline"))
    return Markup(_FIRST_SIGN.sub('<mo form="infix">', html, count=1) if term.startswith(_SIGNS) else html)


def _source(made: Working) -> Markup:
    html = Markup("{}").format(made.source)
    if made.function:
        html += Markup(" {}").format(reference_link(made.function))
    return html

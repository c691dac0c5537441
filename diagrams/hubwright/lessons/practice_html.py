"""A practice problem on a page: question, answer box, nudges, and what stays folded up until it is asked for."""

import base64
import json
import posixpath
import re
import zlib
from collections.abc import Iterable
from functools import partial
from typing import Any

from markupsafe import Markup

from hubwright.lessons.answer_units import exponents_of
from hubwright.lessons.page_state import PageState
from hubwright.lessons.practice import Practice, Problem, Variant
from hubwright.lessons.practice_files import VARIANTS

PAGE = "practice.md"
NUDGES = ("A nudge", "Another nudge")


def practice_problems(page: PageState, problems: Practice, *stems: str) -> Markup:
    """Return the problems of a lesson by their names, each replaced where this setup cannot pose it."""
    found = list(dict.fromkeys(filter(None, (problems.posed(stem) for stem in stems))))
    problems.tell(page)
    if not found:
        return Markup("\n\nThe file of this setup says too little for a problem of this lesson.\n\n")
    blocks = Markup("").join(problem_html(page, problem) for problem in found)
    here, there = page.file, posixpath.join(problems.course.shown, PAGE)
    link = posixpath.relpath(there, posixpath.dirname(here) or ".")
    return Markup("{}\n\nThese and more, of every lesson: [Practice problems]({}).\n\n").format(blocks, link)


def problem_html(page: PageState, problem: Problem) -> Markup:
    """Return a problem as a form, set aside on the page."""
    page.practice += 1
    first, ident = problem.variants[0], problem.ident
    late = partial(page.set_aside, late=True)  # what is no search term
    head = Markup(
        '<div class="problem-head"><h3 id="{ident}-t"><span class="mark">{number}</span> {title}</h3>'
        '<span class="tag">{level}</span></div>'
    ).format(ident=ident, number=problem.number, title=problem.source.title, level=problem.source.level)
    folds = Markup("\n").join(
        Markup('<details class="fold" data-nudge><summary>{}</summary>\n<div>{}</div></details>').format(title, nudge)
        for title, nudge in zip(NUDGES, first.nudges, strict=False)
    )
    last = late(
        Markup(
            '{}<output class="feedback" id="{}-f"></output>\n{}\n'
            '<details class="fold needs-js" data-working><summary>The working</summary>\n<div></div></details>'
        ).format(_entry(first, ident), ident, folds)
    )
    which = late(
        Markup(
            '<p class="which"><span class="tag">Variant <span data-which>1</span> of {}</span> '
            '<button type="button" class="needs-js" data-another aria-describedby="{}-t">Another variant</button></p>'
        ).format(VARIANTS, ident)
    )
    return page.set_aside(
        Markup(
            '<form class="problem" id="{ident}" data-practice="{data}" novalidate>\n{head}{which}'
            '<div class="question" id="{ident}-q">{question}</div>{last}</form>'
        ).format(ident=ident, data=packed(problem), head=head, which=which, question=first.question, last=last)
    )


def _entry(variant: Variant, ident: str) -> Markup:
    """Return where the answer goes: a box for a value with its unit, or the options."""
    asked = variant.asked
    check = Markup('<button class="do needs-js">Check it</button>')
    if asked.options:
        items = Markup("\n").join(
            Markup(
                '<li><input type="radio" name="{0}-o" id="{0}-o{1}" value="{1}"><label for="{0}-o{1}">{2}</label></li>'
            ).format(ident, place, option.text)
            for place, option in enumerate(asked.options)
        )
        return Markup(
            '<fieldset class="options"><legend class="vh">Your answer to this question</legend>\n<ol>\n{}\n</ol>'
            '</fieldset>\n<div class="entry">{}</div>\n'
        ).format(items, check)
    way = Markup("")
    if asked.ways:
        ways = Markup("").join(Markup("<option>{}</option>").format(each) for each in ("…", *asked.ways))
        way = Markup(
            '<div class="field"><label for="{0}-w">Which way</label><select id="{0}-w" name="way">{1}</select></div>'
        ).format(ident, ways)
    return Markup(
        '<div class="entry needs-js"><div class="field"><label for="{0}-a">{1}</label>'
        '<input id="{0}-a" name="answer" autocomplete="off" autocapitalize="off" spellcheck="false"'
        ' aria-describedby="{0}-u {0}-f">'
        '</div>{2}{3}</div>\n<p class="in-units needs-js" id="{0}-u">{4}</p>\n'
    ).format(ident, "Your answer", way, check, _in_units(asked.units, bool(asked.ways)))


def _in_units(units: Iterable[str], ways: bool) -> str:
    names = list(units)
    size = "The size alone, without a sign" if ways else "A number"
    if not names:
        return f"{size}; it has no unit."
    return f"{size}, with its unit: {', '.join(names)}."


def packed(problem: Problem) -> str:
    """Return every variant of a problem, packed: no secret, only out of sight until a reader asks for it."""
    data = json.dumps([_variant_data(variant) for variant in problem.variants], ensure_ascii=False)
    data = _LINK.sub("", data)  # which leads somewhere else from every page
    return base64.b64encode(zlib.compress(data.encode(), 9)).decode()


_LINK = re.compile(r"</?a\b[^>]*>")


def _variant_data(variant: Variant) -> dict[str, Any]:
    asked = variant.asked
    texts = {"question": variant.question, "nudges": list(variant.nudges), "working": variant.working}
    if asked.options:
        return {**texts, "options": [[option.text, option.right, option.why] for option in asked.options]}
    assert asked.answer is not None
    return {
        **texts,
        "value": asked.value,
        "within": asked.tolerance,
        "dimension": exponents_of(asked.answer.unit),
        "units": asked.units,
        "ways": list(asked.ways),
        "right": asked.right,
        "slips": [list(slip) for slip in asked.slips],
    }

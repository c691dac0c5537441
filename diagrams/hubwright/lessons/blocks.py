"""The blocks of a lesson: answer, notes, claim box, and the lists at the end.

Each returns HTML in which Markdown goes on (`markdown="1"`), or sets finished HTML aside on the page.
"""

from collections.abc import Callable, Iterable, Sequence
from functools import lru_cache
from typing import get_args

import markdown
from markupsafe import Markup

from hubwright.errors import HubwrightError
from hubwright.lessons.answer_sentence import answer_sentence
from hubwright.lessons.named_values import View, subject_of
from hubwright.lessons.numbers import attribute, both, shown
from hubwright.lessons.page_state import Note, PageState
from hubwright.lessons.sources import Source, source_html
from hubwright.quantities import Quantity, System
from hubwright.results import CaseResult, Results

Caller = Callable[[], str]
# A private-use character opens and closes the mark by which the Markdown extension finds a note.
NOTE_OPEN, NOTE_CLOSE = "\ue000", "\ue001"

_GLYPHS = {
    "push": '<svg class="glyph push" viewBox="0 0 36 56" aria-hidden="true"><path class="load-shaft" d="M18 54V20"/>'
    '<path class="load-head" d="M18 2L25 22H11Z"/></svg>',
    "turn": '<svg class="glyph turn" viewBox="0 0 36 56" aria-hidden="true">'
    '<path class="mom" d="M27 41A15 15 0 1 0 5.5 36"/><path class="mom-head" d="M9.6 45.5L1.2 35.4L11.2 31Z"/></svg>',
    # the same arc in the mirror: "turn" goes counter-clockwise
    "turn clockwise": '<svg class="glyph turn" viewBox="0 0 36 56" aria-hidden="true">'
    '<g transform="matrix(-1 0 0 1 36 0)"><path class="mom" d="M27 41A15 15 0 1 0 5.5 36"/>'
    '<path class="mom-head" d="M9.6 45.5L1.2 35.4L11.2 31Z"/></g></svg>',
    "none": "",
}


class BlockError(HubwrightError, ValueError):
    """A block that was called with something it cannot use."""


def answer(
    page: PageState, tag: str, numerals: Sequence[Sequence[object]], *, caller: Caller, about: str = ""
) -> Markup:
    """Return the short answer at the top of a lesson: large numerals and a sentence; `about` says of which setup."""
    entries = Markup("").join(_numeral(entry) for entry in numerals)
    head = page.set_aside(Markup('<span class="tag">{}</span><dl>{}</dl>').format(Markup(tag), entries))
    told = [(str(entry[0]), entry[1]) for entry in numerals if isinstance(entry[1], Quantity | int | float)]
    copies = Markup("").join(
        Markup(' data-sentence-{}="{}"').format(
            system, attribute(answer_sentence(page.title, tag, told, about, system))
        )
        for system in get_args(System)
    )
    return Markup('\n\n<div class="answer" id="short-answer"{} markdown="1">{}{}\n\n</div>\n\n').format(
        copies, head, Markup(caller().strip())
    )


def _numeral(entry: Sequence[object]) -> Markup:
    words, value, glyph = (*entry, "none")[:3]
    if not isinstance(value, Quantity | int | float) or glyph not in _GLYPHS:
        raise BlockError(
            f"answer needs (words, number, {' or '.join(map(repr, _GLYPHS))}) for each numeral, got {entry!r}"
        )
    large = [
        Markup("{}<small>{}</small>").format(one.number, one.unit) for one in (shown(value, "si"), shown(value, "us"))
    ]
    return Markup('<div class="big"><dt>{}<span>{}</span></dt><dd>{}</dd></div>').format(
        Markup(_GLYPHS[str(glyph)]), Markup(words), both(large[0], large[1])
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


def case_of(view: object) -> tuple[Results, CaseResult]:
    """Return the results and the case behind a view such as `stock.standing`."""
    subject = subject_of(view) if isinstance(view, View) else None
    if not isinstance(subject, tuple):
        raise BlockError(f"needs a case, such as stock.standing, got {view!r}")
    results, case = subject
    return results, case


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


def _ledger(items: Iterable[Markup]) -> Markup:
    return Markup('<ul class="ledger">\n{}\n</ul>').format(Markup("\n").join(items))


@lru_cache(maxsize=1024)
def inline(text: str) -> Markup:
    """Return a sentence written in Markdown as HTML without its paragraph."""
    html = markdown.markdown(text, extensions=["smarty"])
    return Markup(html.removeprefix("<p>").removesuffix("</p>"))

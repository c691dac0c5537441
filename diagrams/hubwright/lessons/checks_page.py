"""The page of sources and checks: printed values beside ours, what is from memory, and who cites which source."""

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from functools import partial

from markupsafe import Markup

from hubwright.lessons.check_groups import PAGE, Compared, Group, groups
from hubwright.lessons.generated_page import GeneratedPage, Site
from hubwright.lessons.page_state import PageState
from hubwright.lessons.reference_links import reference_link
from hubwright.lessons.reference_pages import Formula, formulas, modules
from hubwright.lessons.sources import source_html
from hubwright.lessons.stacked_table import Column, Row, stacked_table
from hubwright.published.check import Check, Provenance, checks

MEANING: Mapping[Provenance, tuple[str, str]] = {
    "recomputed": (
        "recomputed",
        "The printed value is recalled; an independent computation from the theory behind it gave it too.",
    ),
    "from memory": ("from memory", "The printed value is recalled, and nothing but memory vouches for it."),
    "theory": (
        "a second road",
        "Nothing was printed: a formula of the source with numbers of our own. It checks our function, not a print.",
    ),
}


def pages(site: Site) -> list[GeneratedPage]:
    """Return the page of sources and checks."""
    return [
        GeneratedPage(
            path=PAGE,
            title="Sources and checks",
            kind="page",
            write=partial(body, site=site),
            mark="C",
            summary="Published values beside those that our functions give, and every source that a lesson cites.",
        )
    ]


def body(page: PageState, site: Site) -> str:
    """Return the page: the counts first, then the checks by subject, then what rests on practice, then the sources."""
    parts = [str(page.set_aside(_counts()))]
    subject = ""
    for group in groups():
        if group.subject != subject:
            subject = group.subject
            parts.append(f"## {subject}")
        parts.append(str(page.set_aside(_group(group), late=True)))
    parts += [
        "## What is common practice, and what is from memory",
        str(page.set_aside(_unprinted())),
        "## Sources that the pages cite",
        str(page.set_aside(_sources(site))),
    ]
    return "\n\n".join(parts)


def _counts() -> Markup:
    every = [each for group in groups() for each in group.compared]
    agreeing = sum(each.agrees for each in every)
    wider = sum(1 for each in every if each.check.allowed)
    by_provenance = Counter(check.provenance for check in checks())
    kinds = Markup("").join(
        Markup("<div><dt>{}: {}</dt><dd>{}</dd></div>").format(words.capitalize(), by_provenance[provenance], meaning)
        for provenance, (words, meaning) in MEANING.items()
    )
    return Markup(
        '<p class="lead">{} values from print, tables and standards, each computed again by our own functions when '
        "this site was built: {} of {} agree within half a unit of the last printed digit{}.</p>\n"
        '<dl class="constants">{}</dl>\n'
        "<p>No document was opened while the values were collected: titles, editions, tables and numbers of examples "
        "are recalled as well. Tests and this page read one file, so neither can say what the other does not.</p>"
    ).format(
        len(every), agreeing, len(every), f", {wider} of them within a wider one that is stated" if wider else "", kinds
    )


_COLUMNS = (Column("Printed"), Column("Ours"), Column("Difference"), Column("Allowed"))


def _group(group: Group) -> Markup:
    """Return the checks of one source, folded."""
    count = len(group.compared)
    verdict = "agree" if group.agrees else "do not all agree"
    if count == 1:
        verdict = "agrees" if group.agrees else "does not agree"
    kinds = Markup("").join(
        Markup("<p>{}: {}</p>").format(MEANING[kind][0].capitalize(), MEANING[kind][1])
        for kind in dict.fromkeys(each.check.provenance for each in group.compared)
    )
    reasons = Markup("").join(
        Markup("<p>Wider than the print's rounding: {}.</p>").format(reason)
        for reason in dict.fromkeys(each.check.because for each in group.compared if each.check.because)
    )
    links = Markup(", ").join(reference_link(name, name.partition(".")[2]) for name in group.functions)
    table = stacked_table(
        f"{group.subject}: {group.source}",
        "Value",
        _COLUMNS,
        [Row(_what(each.check), _cells(each), "" if each.agrees else "over") for each in group.compared],
    )
    return Markup(
        '<details class="fold checks" id="{}"><summary><span>{}: {} {}</span></summary>\n'
        "<div>{}{}<p>Computed by {}</p>\n{}</div></details>"
    ).format(
        group.ident,
        group.source[0].upper() + group.source[1:],
        f"{count} values" if count > 1 else "1 value",
        verdict,
        kinds,
        reasons,
        links,
        table,
    )


def _what(check: Check) -> Markup:
    given = ", ".join(f"{name} = {_number(value)}" for name, value in check.inputs.items())
    return Markup('{}<span class="means">{}</span>').format(check.quantity, given)


def _number(written: str) -> str:
    """Return an input without the zeros that say nothing: "1250.0 lbf" as "1250 lbf"."""
    return re.sub(r"(?<=\d)\.0(?=\D|$)", "", written)


def _cells(each: Compared) -> list[Markup]:
    check = each.check
    unit = "" if check.unit == "1" else f" {check.unit.replace('**', '^').replace('*', '·')}"
    ours = f"{each.ours:.8g}" if check.provenance == "theory" else f"{each.ours:,.{check.decimals + 2}f}"
    return [
        Markup("{}{}").format(check.printed, unit),
        Markup("{}{}").format(ours, unit),
        Markup(_percent(each.difference, sign=True)),
        Markup(_percent(check.tolerance)),
    ]


def _percent(share: float, *, sign: bool = False) -> str:
    if abs(share) < 1e-9:
        return "0"
    text = f"{100 * share:+.2g}" if sign else f"{100 * share:.2g}"
    if "e" in text:
        text = f"{100 * share:+.7f}".rstrip("0") if sign else f"{100 * share:.7f}".rstrip("0")
    return f"{text.replace('-', chr(0x2212))} %"


_PRACTICE = re.compile(r"common practice|engineering judgement", re.I)
_MEMORY = re.compile(r"from memory", re.I)


def _unprinted() -> Markup:
    """Return the formulas and constants that rest on common practice or on memory alone, by their own words."""
    parts = []
    for words, pattern, ident in (
        ("Rests on common practice or judgement", _PRACTICE, "practice"),
        ("From memory: to be checked against the document", _MEMORY, "memory"),
    ):
        items = Markup("\n").join(_resting_on(pattern))
        count = len(list(_resting_on(pattern)))
        parts.append(
            Markup(
                '<details class="fold" id="{}" data-open-on-paper><summary><span>{}: {}</span></summary>\n'
                '<ul class="ledger resting">\n{}\n</ul></details>'
            ).format(ident, words, count, items)
        )
    return Markup(
        "<p>The sources of most formulas are recalled without the document at hand, as their pages say. "
        "Values that an owner does not have are estimated; the ranges of these estimates are engineering judgement, "
        "common practice without a source.</p>\n{}"
    ).format(Markup("\n").join(parts))


def _resting_on(pattern: re.Pattern[str]) -> Iterator[Markup]:
    for module in modules().values():
        for constant in module.constants:
            if pattern.search(constant.comment):
                link = reference_link(f"{module.name}.constants", f"{module.name}.{constant.name}")
                yield Markup("<li><span>{}</span><span>{}</span></li>").format(link, constant.comment)
    for formula in formulas().values():
        for text in _claims(formula):
            if pattern.search(text):
                yield Markup("<li><span>{}</span><span>{}</span></li>").format(
                    reference_link(formula.function, formula.function), text
                )


def _claims(formula: Formula) -> tuple[str, ...]:
    return (*formula.docstring.paragraphs("References"), *formula.docstring.paragraphs("Notes"))


def _sources(site: Site) -> Markup:
    """Return every source of the site with the pages that cite it; what nobody cites is told too."""
    citing: dict[str, list[tuple[str, PageState]]] = {}
    for path, state in site.states.items():
        for key in state.sources:
            citing.setdefault(key, []).append((path, state))
    items = Markup("\n").join(
        Markup('<li id="source-{}"><span>{}</span><span>{}</span></li>').format(
            key, source_html(source), _cited_in(citing.get(key, []))
        )
        for key, source in site.course.sources.items()
    )
    if not items:
        return Markup("<p>This site's pages cite no source of their own.</p>")
    return Markup('<ul class="ledger cited">\n{}\n</ul>').format(items)


def _cited_in(citing: list[tuple[str, PageState]]) -> Markup:
    if not citing:
        return Markup("Not cited.")
    links = Markup(", ").join(
        Markup('<a href="/{}">{}{}</a>').format(
            path, f"{state.lesson}. " if state.lesson is not None else "", Markup(state.title)
        )
        for path, state in sorted(citing, key=lambda each: (each[1].lesson is None, each[1].lesson or 0, each[0]))
    )
    return Markup("In {}").format(links)

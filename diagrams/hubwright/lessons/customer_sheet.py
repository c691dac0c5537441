"""The one-page sheet for a customer: one per setup file, for A4 or Letter, also as a grey print."""

import posixpath

from markupsafe import Markup, escape

from hubwright import __version__
from hubwright.lessons import cautions
from hubwright.lessons.branding import Branding
from hubwright.lessons.change_words import changes_in_words
from hubwright.lessons.figures import figure_html, scenes_of
from hubwright.lessons.fingerprint import fingerprint
from hubwright.lessons.generated_page import GeneratedPage, Site, page_of_each_setup
from hubwright.lessons.input_tables import estimated_in_words
from hubwright.lessons.limit_table import (
    ABOVE,
    KEPT,
    NOTHING_GIVEN,
    limit_rows,
    limits_are_exceeded,
    warning_above_limits,
)
from hubwright.lessons.numbers import plain, show
from hubwright.lessons.page_state import PageState
from hubwright.lessons.setup_family import compared, root_of, worst_results
from hubwright.lessons.sheet_advice import checks_for, hazards_of, watch_for
from hubwright.lessons.sheet_sentences import as_it_stands, by_how_much, not_settled_sentence, what_changes
from hubwright.lessons.words import listed
from hubwright.lessons.worked_results import Ways
from hubwright.results import Results
from hubwright.results.comparison import Comparison
from hubwright.scenes.vocabulary import Scene

FULL = 1800  # letters that a sheet holds at its usual size, beside its figure
MOST_CHANGES = 6  # told one by one; a sheet has one page


def pages(site: Site) -> list[GeneratedPage]:
    """Return a sheet for each vehicle and setup; they are reached from their reports."""
    return page_of_each_setup(site, folder="sheets", title="Sheet", kind="sheet", mark="S", body=sheet_body)


def sheet_body(page: PageState, stem: str, site: Site) -> str:
    """Return the sheet as one block of HTML that Markdown leaves alone."""
    results, comparison = worst_results(site.course, stem), compared(site.course, stem)
    page.wheel = results.wheel
    changes = () if comparison is None else comparison.changes
    hazards = hazards_of(changes, results.setup, estimated=_anything_estimated(results))
    box = str(cautions.caution_box(hazards, site.cautions))
    parts = [
        _head(site.branding, page),
        _title(site, stem, results, comparison),
        # before any number of the bearing, wherever it stands
        warning_above_limits() if limits_are_exceeded(results) else Markup(""),
        _figure(page, site, results, comparison),
        _sentences(results, comparison, Ways.of(site, stem)),
        _part("sheet-limits", "Load beside limit", _limits(results)),
        _advice(results, comparison),
        _part(
            "sheet-guessed",
            "Estimated, not measured",
            _estimated(results),
            kind=_crowding(site, results, comparison, hazards),
        ),
        Markup(box),
        _foot(site.branding, page, results),
        Markup('<p class="ways"><a href="../reports/{}.md">The setup report with every number</a></p>').format(stem),
    ]
    return str(page.set_aside(Markup("\n").join(parts)))


def _head(branding: Branding, page: PageState) -> Markup:
    logo = Markup("")
    if branding.logo:
        path = posixpath.join("..", branding.logo)
        logo = Markup('<img class="logo" src="{}" alt="">').format(path)
    shop = Markup('<b class="shop">{}</b>').format(branding.shop) if branding.shop else Markup("")
    contact = Markup('<span class="contact">{}</span>').format(branding.contact) if branding.contact else Markup("")
    return Markup(
        '<div class="sheet-head">{}<div>{}{}</div><span class="tag">Customer sheet</span>'
        '<span class="date">{}</span></div>'
    ).format(logo, shop, contact, page.built)


def _title(site: Site, stem: str, results: Results, comparison: Comparison | None) -> Markup:
    root = root_of(site.course, stem)
    if comparison is None:
        words = Markup("As its file gives it.") if root is None else Markup("Not compared with the vehicle it changes.")
    else:
        phrases = changes_in_words(comparison.base.setup, comparison.other.setup)
        shown = phrases if len(phrases) <= MOST_CHANGES else phrases[: MOST_CHANGES - 1]
        more = [Markup("and {} more changes").format(len(phrases) - len(shown))] if len(phrases) > len(shown) else []
        told = Markup("; ").join([*shown, *more]) if phrases else escape("nothing that acts on loads or life")
        words = Markup("{}, changed: {}.").format(comparison.base.setup.name, told)
    return Markup('<header class="sheet-title"><h1>{}</h1><p>{}</p></header>').format(results.setup.name, words)


def _figure(page: PageState, site: Site, results: Results, comparison: Comparison | None) -> Markup:
    """Return the section with both load lines, or that of the one setup."""
    scenes: list[Scene] = []
    if comparison is not None and comparison.changes:
        scenes = scenes_of("two setups under one load line", comparison.base, comparison.other, case="standing")
    elif results.bearing.effective_spread is not None or comparison is None:
        scenes = scenes_of("wheel-end section", results, case="standing")
    page.figures += 1
    drawn = [site.drawings.drawn(scene) for scene in scenes]
    html = figure_html(scenes, drawn, label=str(page.figures), steps=False)
    return Markup('<div class="sheet-figure">{}</div>').format(page.set_aside(html, late=True))


def _sentences(results: Results, comparison: Comparison | None, ways: Ways) -> Markup:
    told = (
        as_it_stands(results, ways)
        if comparison is None
        else (what_changes(comparison, ways), by_how_much(comparison, ways), not_settled_sentence(comparison))
    )
    heads = ("What changes", "By how much", "What is not settled")
    items = Markup("\n").join(
        Markup("<div><dt>{}</dt><dd>{}</dd></div>").format(head, text) for head, text in zip(heads, told, strict=True)
    )
    return Markup('<dl class="sheet-told">{}</dl>').format(items)


def _limits(results: Results) -> Markup:
    rows = limit_rows(results)
    if not rows:
        return Markup("<p>{}.</p>").format(NOTHING_GIVEN.capitalize())
    lines = Markup("").join(
        Markup('<tr><th scope="row">{}</th><td class="n">{}</td><td class="n">{}</td></tr>').format(
            Markup("{}{}").format(words, Markup(" <b>above</b>") if load.value > limit.value else ""),
            show(load),
            show(limit),
        )
        for words, load, limit in rows
    )
    return Markup(
        '<table><caption class="vh">Standing loads beside the limits given</caption><thead><tr><th scope="col">Standing'
        '</th><th scope="col" class="n">Load</th><th scope="col" class="n">Limit given</th></tr></thead>'
        "<tbody>{}</tbody></table><p>{}</p>"
    ).format(lines, KEPT)


def _advice(results: Results, comparison: Comparison | None) -> Markup:
    changes = () if comparison is None else comparison.changes
    blocks = (
        ("sheet-check", "Have checked", checks_for(changes, results.setup)),
        ("sheet-watch", "Watch for", watch_for(results.setup)),
    )
    return Markup("\n").join(
        _part(
            ident, title, Markup("<ul>{}</ul>").format(Markup("").join(Markup("<li>{}</li>").format(t) for t in texts))
        )
        for ident, title, texts in blocks
    )


def _estimated(results: Results) -> Markup:
    words = estimated_in_words(results)
    return Markup("<p>{}.</p>").format(words) if words else Markup("<p>Nothing: the file gives every value.</p>")


def _crowding(site: Site, results: Results, comparison: Comparison | None, hazards: list[str]) -> str:
    """Return how full a sheet is, by which the theme sets it closer: it has one page."""
    changes = () if comparison is None else comparison.changes
    texts = [
        results.setup.name,
        plain(estimated_in_words(results)),
        *cautions.caution_texts(hazards, site.cautions),
        *checks_for(changes, results.setup),
        ABOVE * 2 if limits_are_exceeded(results) else "",
    ]
    return " full" if sum(map(len, texts)) > FULL else ""


def _anything_estimated(results: Results) -> bool:
    return any(entry.origin == "estimated" for entry in results.inputs.values())


def _foot(branding: Branding, page: PageState, results: Results) -> Markup:
    """Return the lines to sign, what the sheet rests on, and the mark of the files it was computed from."""
    signed = Markup("").join(
        Markup('<p class="sign"><span>{}</span><span class="line">{}</span></p>').format(words, name)
        for words, name in (("Prepared by", branding.prepared_by), ("Reviewed by", branding.reviewed_by))
    )
    files = listed([path.name for path in results.setup.files])
    return Markup(
        '<div class="sheet-foot">{}<p class="basis">From the data given on {}, not an inspection of this vehicle.</p>'
        '<p class="mark-of-files">hubwright {}; files {}; fingerprint {}</p></div>'
    ).format(signed, page.built, __version__, files or "none", fingerprint(results.setup))


def _part(ident: str, title: str, body: Markup, *, kind: str = "") -> Markup:
    return Markup('<section class="{0}{3}" aria-labelledby="{0}"><h2 id="{0}">{1}</h2>{2}</section>').format(
        ident, title, body, kind
    )

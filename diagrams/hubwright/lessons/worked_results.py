"""A page per setup on which its results are worked out, case by case, and the links that lead there.

A report, a sheet or a comparison asks `Ways` for the link of a number; the page stands in the same order as the report.
"""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from markupsafe import Markup

from hubwright.errors import HubwrightError
from hubwright.lessons.blocks import BlockError
from hubwright.lessons.generated_page import GeneratedPage, Site, page_of_each_setup
from hubwright.lessons.limit_table import limits_are_exceeded, warning_above_limits
from hubwright.lessons.page_state import PageState
from hubwright.lessons.reference_links import FOLDER as REFERENCE
from hubwright.lessons.setup_family import compared, worst_results
from hubwright.lessons.words import wheel_words
from hubwright.lessons.workings import refuse_disagreement
from hubwright.lessons.workings.beside import ratios
from hubwright.lessons.workings.catalogue import CASE_WORKINGS, SETUP_WORKINGS, of_case, of_setup
from hubwright.lessons.workings.html import address, working_html
from hubwright.lessons.workings.model import Working
from hubwright.results import CaseResult, Results
from hubwright.results.comparison import Comparison

FOLDER = "workings"
_Place = tuple[str, str]  # name of the case, or nothing for the setup, and path of the result
# told by the lesson of the spindle, and parts of what stands here
_NOT_HERE = ("beam.", "free_body.")


def pages(site: Site) -> list[GeneratedPage]:
    """Return a page for the workings of each vehicle and setup; they are reached from the numbers themselves."""
    return page_of_each_setup(site, folder=FOLDER, title="Workings", kind="page", mark="R", body=_body, searched=False)


@dataclass(frozen=True)
class Ways:
    """The way from the numbers of a setup to their workings."""

    stem: str
    places: Mapping[_Place, str]  # to the anchor of its working

    @classmethod
    def of(cls, site: Site, stem: str) -> "Ways":
        """Return the ways from the numbers of a setup at the wheel that its report is about."""
        results = worst_results(site.course, stem)
        places = worked(results, compared(site.course, stem))
        anchors = {place: address(place[1], place[0]) for place in places}
        # cases whose names differ by signs alone share an anchor, which leads to the first of them
        taken = Counter(anchors.values())
        ways = {place: anchor for place, anchor in anchors.items() if taken[anchor] == 1}
        return cls(stem, ways | {("", path): address(to) for path, to in _alike(results).items()})

    def link(self, shown: Markup, path: str, case: str = "") -> Markup:
        """Return a number as a link to its working, or as it is where it has none."""
        if (anchor := self.places.get((case, path))) is None:
            return shown
        return Markup('<a class="way" href="/{}/{}.md#{}">{}</a>').format(FOLDER, self.stem, anchor, shown)


NOWHERE = Ways("", {})


def _alike(results: Results) -> dict[str, str]:
    """Return the results that have a second name, under which they are worked out."""
    axle = "axle" if results.setup.kind == "trailer" else f"{results.wheel.partition('_')[0]}_axle"
    return {f"weight.{results.wheel}": "weight.this_wheel", f"weight.{axle}_load": "weight.this_axle"}


def worked(results: Results, comparison: Comparison | None) -> Mapping[_Place, Working]:
    """Return what can be worked out of a setup, in the order of its page."""
    found: dict[_Place, Working] = {}
    twice = _alike(results)
    for path in SETUP_WORKINGS:
        if path not in twice and (made := _working(results, path)):
            found["", path] = made
    beside = ratios(comparison, results) if comparison is not None else {}
    found |= {place: made for place, made in beside.items() if not place[0]}
    for case in results.cases.values():
        for path in CASE_WORKINGS:
            if not path.startswith(_NOT_HERE) and (made := _working(results, path, case)):
                found[case.name, path] = made
        found |= {place: made for place, made in beside.items() if place[0] == case.name}
    ordered: dict[_Place, Working] = {}
    for place in found:
        _put(place, found, ordered)
    return ordered


def _put(place: _Place, found: Mapping[_Place, Working], ordered: dict[_Place, Working]) -> None:
    """Add a working to those in order, behind the ones that it rests on."""
    if place in ordered:
        return
    made = found[place]
    for path in filter(None, (made.symbols[name].path for name in made.term_names())):
        rests_on = (place[0], path) if (place[0], path) in found else ("", path)
        if rests_on in found:
            _put(rests_on, found, ordered)
    ordered[place] = made


def _working(results: Results, path: str, case: CaseResult | None = None) -> Working | None:
    """Return a working; None where the file says too little for it, or nothing acts."""
    try:
        made = of_setup(results, path) if case is None else of_case(results, case, path)
    except HubwrightError:
        return None
    return None if made.lines[-1].expression == "0" else made


def _body(page: PageState, stem: str, site: Site) -> str:
    """Return the page as blocks of HTML that Markdown leaves alone."""
    results = worst_results(site.course, stem)
    page.wheel = results.wheel
    made = worked(results, compared(site.course, stem))
    for working in made.values():
        try:
            refuse_disagreement(working, None)
        except BlockError as error:
            page.problem(str(error))
    told = page.set_aside(Markup("\n").join(_sections(page, results, made)), late=True)
    return str(page.set_aside(Markup('<div class="setups">{}\n{}</div>').format(_head(results, stem), told)))


def _head(results: Results, stem: str) -> Markup:
    # before any number of a bearing
    warning = warning_above_limits() if limits_are_exceeded(results) else Markup("")
    return Markup(
        '<header class="opening"><span class="tag">Workings</span><h1>{}</h1></header>\n{}'
        '<p class="lead">What of the setup report can be worked on paper, at the {} wheel: formula, numbers put in, '
        "what they come to, and the source.</p>"
        "<p>Not here, since no chain of lines leads to them: loads on single rolling elements, which "
        '<a href="/{}/two_row_bearing.md#row_loads">equations of both rows</a> settle together by trial; the course '
        'of a drop, which is <a href="/{}/impact.md#drop">followed through time</a>; and spans, which come from many '
        "draws of the inputs.</p>"
        '<p class="ways"><a href="../reports/{}.md">Setup report</a></p>'
    ).format(
        results.setup.name,
        warning,
        wheel_words(results.wheel),
        REFERENCE,
        REFERENCE,
        stem,
    )


def _sections(page: PageState, results: Results, made: Mapping[_Place, Working]) -> Iterator[Markup]:
    """Return the workings of the setup and then of each case, each told once and linked from where it is put in."""
    for number, name in enumerate(["", *results.cases], 1):
        here = [working_html(page, working) for (case, _), working in made.items() if case == name]
        if here:
            yield Markup('<section aria-labelledby="w{0}"><h2 id="w{0}">{1}</h2>{2}</section>').format(
                number, name.capitalize() or "Vehicle, wheel and bearing", Markup("\n").join(here)
            )

"""Setup reports: a generated page per vehicle and setup, with every input, load and limit on one sheet."""

from markupsafe import Markup

from hubwright.lessons import cautions
from hubwright.lessons.figures import figure_html, scenes_of
from hubwright.lessons.generated_page import GeneratedPage, Site, page_of_each_setup
from hubwright.lessons.input_tables import inputs_table
from hubwright.lessons.limit_table import limits
from hubwright.lessons.page_state import PageState
from hubwright.lessons.ratio_tables import life_table, load_table
from hubwright.lessons.report_cases import bearing_table, cases_table, rough_table
from hubwright.lessons.report_joint import joint_table
from hubwright.lessons.report_values import geometry, rows, weights
from hubwright.lessons.setup_family import compared, families, root_of, worst_results
from hubwright.lessons.words import wheel_words
from hubwright.lessons.worked_results import FOLDER as WORKINGS
from hubwright.lessons.worked_results import Ways
from hubwright.results import Results
from hubwright.results.comparison import Comparison, lopsided_cases
from hubwright.results.span_tables import span_note

HAZARDS = (
    "lifting",
    "bearing check",
    "hub nuts",
    "wheel fasteners",
    "tires",
    "slopes drops and corners",
    "gear",
    "measuring",
)


def pages(site: Site) -> list[GeneratedPage]:
    """Return a page for the report of each vehicle and setup."""
    return page_of_each_setup(
        site, folder="reports", title="Setup report", kind="report", mark="R", body=report_body, listed=True
    )


def report_body(page: PageState, stem: str, site: Site) -> str:
    """Return the report of a setup as blocks of HTML that Markdown leaves alone."""
    course = site.course
    results, comparison = worst_results(course, stem), compared(course, stem)
    page.wheel, ways = results.wheel, Ways.of(site, stem)
    parts = [
        _head(page, results, _links(site, stem)),
        _whole("r0", "Limits", limits(results)),
        _block("r1", "Weight on axles and wheels", weights(results, ways)),
        _block("r2", "Wheel and bearing", geometry(results, ways)),
        _block("r3", "Row loads, standing", rows(results, ways)),
        _whole("r4", "Loads on the hub, case by case", cases_table(results, ways)),
        _whole("r5", "In the bearing, case by case", bearing_table(results, ways)),
        _beside(comparison, ways),
    ]
    if (figure := _figure(page, site, results)) is not None:
        parts.append(figure)
    parts += [
        _block("r8", "The wheel’s joint", joint_table(results, ways), wide=True),
        _block("r9", "Ledges and drops", rough_table(results, ways)),
        _whole("r10", "Every value that acts, and where it comes from", inputs_table(results)),
        Markup(str(cautions.caution_box(HAZARDS, site.cautions)).replace('class="caution"', 'class="caution whole"')),
    ]
    return str(page.set_aside(Markup("\n").join(parts)))


def _head(page: PageState, results: Results, links: Markup) -> Markup:
    """Return name, wheel, date, and where else the setup is shown."""
    worst = "the wheel of this axle that wears most" if results.life is not None else "the hardest loaded of this axle"
    lopsided = Markup("").join(
        Markup(
            "<p>The duty gives left and right different shares of <i>{}</i>: the wheels of one side wear sooner.</p>"
        ).format(case)
        for case in lopsided_cases(results.setup)
    )
    return Markup(
        '<header class="report-head"><span class="tag">Setup report</span><h1>{}</h1>\n'
        "<p>{} wheel, {}. From the data given on {}, not an inspection of this vehicle. "
        "Estimated values are marked, with the range in which they may lie. "
        "{}</p>{}{}</header>"
    ).format(
        results.setup.name,
        wheel_words(results.wheel).capitalize(),
        worst,
        page.built,
        span_note(next(iter(results.spans.values())).draws) if results.spans else "No input has a range: no spans.",
        lopsided,
        links,
    )


def _links(site: Site, stem: str) -> Markup:
    """Return the way to the customer's sheet and to the comparison with the other setups of the vehicle."""
    root = root_of(site.course, stem) or stem
    ways = [
        Markup('<a href="../sheets/{}.md">One-page sheet for the customer</a>').format(stem),
        Markup('<a href="../{}/{}.md">How each number comes about</a>').format(WORKINGS, stem),
    ]
    if families(site.course).get(root):
        name = site.course.results[root].setup.name
        ways.append(Markup('<a href="../compare/{}.md">All setups of {} compared</a>').format(root, name))
    return Markup('<p class="ways">{}</p>').format(Markup(" · ").join(ways))


def _beside(comparison: Comparison | None, ways: Ways) -> Markup:
    """Return loads and lives beside those of the vehicle that the setup changes."""
    if comparison is None:
        words = (
            "A life is told only as a ratio to that of another setup of the same vehicle. This one is such a base, or "
            "cannot be compared, so none stands here."
        )
        return _whole("r6", "Life", Markup("<p>{}</p>").format(words))
    base = comparison.base.setup.name
    lives: Markup = (
        life_table(comparison, ways)
        if comparison.lives
        else Markup("<p>{}</p>").format("The file does not say enough of the bearing for a life.")
    )
    blocks = _block("r6", f"Row loads beside {base}", load_table(comparison, ways)) + _block(
        "r7", f"Life beside {base}", lives
    )
    return Markup('<div class="whole pair">{}</div>').format(blocks)


def _figure(page: PageState, site: Site, results: Results) -> Markup | None:
    if results.bearing.effective_spread is None:
        return None
    scenes = scenes_of("wheel-end section", results, case="standing")
    page.figures += 1
    drawn = [site.drawings.drawn(scene) for scene in scenes]
    html = figure_html(scenes, drawn, label=str(page.figures), steps=False)
    return Markup('<div class="whole">{}</div>').format(page.set_aside(html, late=True))


def _block(ident: str, title: str, body: Markup, *, wide: bool = False) -> Markup:
    return Markup('<section class="block{2}" aria-labelledby="{0}"><h2 id="{0}">{1}</h2>{3}</section>').format(
        ident, title, " two" if wide else "", body
    )


def _whole(ident: str, title: str, body: Markup) -> Markup:
    return Markup('<section class="block whole" aria-labelledby="{0}"><h2 id="{0}">{1}</h2>{2}</section>').format(
        ident, title, body
    )

"""A page for each vehicle that compares its setups with it: loads, lives, what each change does, what is open."""

import math
from collections.abc import Mapping, Sequence
from functools import partial

from markupsafe import Markup, escape

from hubwright.lessons import cautions
from hubwright.lessons.change_words import changes_in_words
from hubwright.lessons.course import Course
from hubwright.lessons.figures import data_scenes, figure_html, scenes_of
from hubwright.lessons.generated_page import GeneratedPage, Site
from hubwright.lessons.limit_table import limits_are_exceeded, warning_above_limits
from hubwright.lessons.numbers import show
from hubwright.lessons.page_state import PageState
from hubwright.lessons.ratio_tables import factor, life_cells, load_cells, not_settled, span
from hubwright.lessons.setup_family import compared, families
from hubwright.lessons.sheet_advice import hazards_of
from hubwright.lessons.stacked_table import Column, Row, stacked_table
from hubwright.lessons.words import COUNTS, listed, side, wheel_words
from hubwright.lessons.worked_results import NOWHERE, Ways
from hubwright.quantities import Quantity, format_number
from hubwright.results import Results
from hubwright.results.changes import NotComparableError
from hubwright.results.comparison import Compared, Comparison
from hubwright.results.contributions import EXACT, Contribution
from hubwright.results.draws import HIGH, LOW, Span
from hubwright.scenes.ratio_panels import times, times_together
from hubwright.scenes.vocabulary import Scene

Pairs = Mapping[str, Comparison]  # by the stem of the setup


def pages(site: Site) -> list[GeneratedPage]:
    """Return a page for each vehicle of which there is a setup to compare."""
    found: list[GeneratedPage] = []
    for root, stems in families(site.course).items():
        if stems:
            found.append(
                GeneratedPage(
                    path=f"compare/{root}.md",
                    title=f"Setups compared: {site.course.results[root].setup.name}",
                    kind="page",
                    write=partial(comparison_body, root=root, stems=stems, site=site),
                    mark=f"C{len(found) + 1}",
                    stem=root,
                )
            )
    return found


def comparison_body(page: PageState, root: str, stems: Sequence[str], site: Site) -> str:
    """Return the page as blocks of HTML that Markdown leaves alone."""
    course = site.course
    pairs = {stem: pair for stem in stems if (pair := compared(course, stem)) is not None}
    left_out = [course.results[stem].setup.name for stem in stems if stem not in pairs]
    base = course.results[root]
    ways = {stem: Ways.of(site, stem) for stem in pairs}
    parts = [_head(base, pairs, left_out), *_above_limits(course, [root, *stems])]
    if pairs:
        parts += [
            _section(
                "c1", "At a glance", _glance(base, pairs, ways) + _bars(page, site, pairs) + _ratios(page, site, pairs)
            ),
            _section("c2", "Load of the harder loaded row, case by case", _side_by_side(pairs, "row_loads", ways)),
        ]
        if any(pair.lives for pair in pairs.values()):
            parts.append(_section("c3", "Life, case by case", _side_by_side(pairs, "lives", ways)))
        parts.append(_section("c4", "What is not settled", _open(pairs)))
        parts += [_one(page, site, number, stem, pair) for number, (stem, pair) in enumerate(pairs.items(), 5)]
    hazards = sorted(
        {hazard for pair in pairs.values() for hazard in hazards_of(pair.changes, pair.other.setup, estimated=True)}
    )
    parts.append(cautions.caution_box(hazards, site.cautions))
    return str(page.set_aside(Markup('<div class="setups">{}</div>').format(Markup("\n").join(parts))))


def _head(base: Results, pairs: Pairs, left_out: Sequence[str]) -> Markup:
    count = len(pairs)
    number = COUNTS[count] if count < len(COUNTS) else str(count)
    words = Markup("{} {} beside {}, each at the wheel of its axle where it wears most.").format(
        number.capitalize(), "setup" if count == 1 else "setups", base.setup.name
    )
    missing = (
        Markup(" Not compared, since it cannot be put beside it in these cases: {}.").format(listed(left_out))
        if left_out
        else Markup("")
    )
    draws = Markup("")
    if pairs:
        fewest = min(pair.draws for pair in pairs.values())
        draws = Markup(
            "Every ratio is that to {} and has its span: from the {:.0f}th to the {:.0f}th percentile of {} draws "
            "of all inputs within their ranges, the same draws for both. {}"
        ).format(base.setup.name, 100 * LOW, 100 * HIGH, fewest, _sampling(pairs))
    return Markup(
        '<header class="opening"><span class="tag">Setups compared</span><h1>{}</h1></header>\n'
        '<p class="lead">{}{}</p><p>{} A ratio of lives says what the loads do. It promises no distance: lives of '
        "equal bearings scatter widely, and water, dirt, dents and slack usually end a hub sooner.</p>"
    ).format(base.setup.name, words, missing, draws)


def _sampling(pairs: Pairs) -> Markup:
    """Return how well the ends of the spans are known from so many draws."""
    errors = [
        max(each.span.low_error, each.span.high_error) / each.ratio
        for pair in pairs.values()
        for each in _all(pair)
        if each.span is not None and each.ratio
    ]
    finite = [error for error in errors if math.isfinite(error)]
    if not finite:
        return Markup("")
    return Markup("Drawn so often, the ends of a span are known to within {} of the ratio at worst.").format(
        show(Quantity(max(finite), "1", kind="percent"))
        if max(finite) >= 0.01
        else f"{format_number(100 * max(finite), significant=1)}\u00a0%"
    )


def _all(pair: Comparison) -> list[Compared]:
    distance = [] if pair.distance is None else [pair.distance]
    return [*pair.row_loads.values(), *(each for each in pair.lives.values() if each.valid), *distance]


def _above_limits(course: Course, stems: Sequence[str]) -> list[Markup]:
    """Return the warning of every setup above a limit, before any number of a bearing."""
    return [
        Markup("<p>{}:</p>{}").format(course.results[stem].setup.name, warning_above_limits())
        for stem in stems
        if limits_are_exceeded(course.results[stem])
    ]


_NONE = (Markup("–"), Markup(""), Markup("not told"))


def _glance(base: Results, pairs: Pairs, ways: Mapping[str, Ways]) -> Markup:
    columns = (
        Column("Wheel", number=False),
        Column("Load line"),
        Column("Stands on it"),
        Column("Harder row, standing"),
        Column("Span"),
        Column("The change", number=False),
        Column("Life over the duty" if _has_duty(pairs) else "Life, standing"),
        Column("Span"),
        Column("The change", number=False),
    )
    blank = Markup("")
    first = Row(escape(base.setup.name), (*_stands(next(iter(pairs.values())).base, NOWHERE), *(blank,) * 6))
    rows = [first]
    for stem, pair in pairs.items():
        standing = pair.row_loads.get("standing")
        life = pair.distance or pair.lives.get("standing")
        cells = (
            *_stands(pair.other, ways[stem]),
            *(load_cells(standing, ways[stem], "standing") if standing else _NONE),
            *(life_cells(life, ways[stem], "" if pair.distance else "standing") if life else _NONE),
        )
        rows.append(Row(escape(pair.other.setup.name), cells))
    return stacked_table("Each setup at its own hardest worn wheel.", "Setup", columns, rows, kind="glance")


def _has_duty(pairs: Pairs) -> bool:
    return any(pair.distance is not None for pair in pairs.values())


def _stands(results: Results, ways: Ways) -> tuple[Markup, Markup, Markup]:
    line = Quantity(results.wheel_geometry.load_line_offset, "m")
    where = side(line)
    place = escape(where) if where == "on centre" else Markup("{} {}").format(show(abs(line)), where)
    load = show(Quantity(results.weight.wheel_loads[results.wheel], "N"))
    return (
        escape(wheel_words(results.wheel)),
        ways.link(place, "load_line_offset"),
        ways.link(load, "weight.this_wheel"),
    )


def _bars(page: PageState, site: Site, pairs: Pairs) -> Markup:
    """Return the worst row's standing load of all setups as bars to one scale."""
    wheels = {pair.other.wheel for pair in pairs.values()}
    values = []
    for results in [next(iter(pairs.values())).base, *(pair.other for pair in pairs.values())]:
        radial = results.cases["standing"].row_radial_load
        if radial is None:
            return Markup("")
        row = "outboard" if radial.outboard >= radial.inboard else "inboard"
        found = results.spans.get(f"cases.standing.row_radial_load.{row}")
        low, high = (None, None) if found is None else (found.low, found.high)
        name = results.setup.name if len(wheels) == 1 else f"{results.setup.name}, {wheel_words(results.wheel)}"
        values.append((name, Quantity(max(radial.outboard, radial.inboard), "N", low=low, high=high)))
    return _drawn(page, site, data_scenes("comparison bars", values, "Load of the harder loaded row, standing"))


def _ratios(page: PageState, site: Site, pairs: Pairs) -> Markup:
    """Return the ratios of loads and lives with their spans as bars, where all are seen at one wheel."""
    first, *others = pairs.values()
    if any(pair.wheel != first.wheel for pair in others):
        return Markup("")
    try:
        solved = (first.base, *(pair.other for pair in pairs.values()))
        return _drawn(page, site, scenes_of("setups compared", *solved, case="standing"))
    except NotComparableError:
        return Markup("")


def _side_by_side(pairs: Pairs, what: str, ways: Mapping[str, Ways]) -> Markup:
    """Return loads or lives of all setups beside each other, a row for each case that one of them shares."""
    columns = [Column(pair.other.setup.name, number=False) for pair in pairs.values()]
    names = list(dict.fromkeys(name for pair in pairs.values() for name in getattr(pair, what)))
    rows = [
        Row(
            escape(name.capitalize()),
            [_cell(getattr(pair, what).get(name), what, ways[stem], name) for stem, pair in pairs.items()],
        )
        for name in names
    ]
    if what == "lives" and _has_duty(pairs):
        rows.insert(
            0,
            Row(
                escape("The duty, by distance"),
                [_cell(pair.distance, what, ways[stem]) for stem, pair in pairs.items()],
            ),
        )
        if any(pair.modified_distance is not None for pair in pairs.values()):
            cells = [_cell(pair.modified_distance, what, NOWHERE) for pair in pairs.values()]
            rows.insert(1, Row(escape("The duty, as dirt and film leave it"), cells))
    return stacked_table(
        "Ratio, span, and what the change does; a difference where a ratio says nothing.",
        "Case",
        columns,
        rows,
        kind="beside",
    )


def _cell(each: Compared | None, what: str, ways: Ways, case: str = "") -> Markup:
    if each is None:
        return Markup("–")
    told, spread, verdict = life_cells(each, ways, case) if what == "lives" else load_cells(each, ways, case)
    return Markup('<b>{}</b>{} <span class="verdict">{}</span>').format(
        told, Markup(" ({})").format(spread) if spread else "", verdict
    )


def _open(pairs: Pairs) -> Markup:
    items = Markup("").join(
        Markup("<li>{}: {}.</li>").format(
            pair.other.setup.name, listed(not_settled(pair)) or "in every case the ranges settle the direction"
        )
        for pair in pairs.values()
    )
    return Markup(
        "<p>Where a span holds no change, these data do not settle which way it goes.</p><ul>{}</ul>"
        "<p>Nothing here settles how long one bearing lasts, or whether a change may be made.</p>"
    ).format(items)


def _one(page: PageState, site: Site, number: int, stem: str, pair: Comparison) -> Markup:
    """Return what one setup changes, and what each of its changes does."""
    phrases = changes_in_words(pair.base.setup, pair.other.setup)
    changed = Markup("; ").join(phrases) if phrases else escape("nothing that acts on loads or life")
    worst = pair.worst_wheel
    moved = (
        Markup(" The wheel that wears most is the {} one; before the change it is the {} one.").format(
            wheel_words(worst["other"]), wheel_words(worst["base"])
        )
        if worst["base"] != worst["other"]
        else Markup("")
    )
    body = Markup("<p>Changed: {}.{}</p>").format(changed, moved)
    body += Markup("").join(Markup("<p>{}</p>").format(warning) for warning in pair.warnings)
    if pair.parts:
        try:
            scenes = scenes_of("split of a change", pair.base, pair.other, case="standing")
            body += _drawn(page, site, scenes)
        except NotComparableError:
            body += Markup("<p>There is no ratio to split into changes.</p>")
        body += _split(pair)
    body += Markup(
        '<p class="ways"><a href="../reports/{0}.md">Setup report</a> · '
        '<a href="../sheets/{0}.md">One-page sheet for the customer</a></p>'
    ).format(stem)
    return _section(f"c{number}", pair.other.setup.name, body)


def _split(pair: Comparison) -> Markup:
    """Return the factor of each change in the load and in the life."""
    wanted = (
        ("row load, standing", "Harder row, standing"),
        ("distance", "Life over the duty"),
        *(() if "distance" in pair.parts else (("life, standing", "Life, standing"),)),
    )
    shown = [(key, words) for key, words in wanted if key in pair.parts and _told(pair, key)]
    if not shown:
        return Markup("")
    spans = pair.part_spans.spans
    told = {key: times_together([part.factor for part in pair.parts[key]]) for key, _ in shown}
    rows = [
        Row(
            escape(change.name),
            [
                _part(pair.parts[key][place], told[key][place], spans[key][place] if key in spans else None)
                for key, _ in shown
            ],
        )
        for place, change in enumerate(pair.changes)
    ]
    together = [math.prod(part.factor for part in pair.parts[key]) for key, _ in shown]
    rows.append(Row(escape("all together"), [Markup("× {}").format(times(value)) for value in together]))
    sampled = "" if len(pair.changes) <= EXACT else " Some of the orders are drawn; standard errors stand beside."
    caption = (
        f"What each change does, averaged over the orders in which they can be made; the factors multiply.{sampled}"
    )
    return stacked_table(caption, "Change", [Column(words) for _, words in shown], rows, kind="pairs")


def _told(pair: Comparison, key: str) -> bool:
    """Return whether a ratio may stand: a life outside the formula's range may not."""
    if key == "distance":
        return pair.distance is not None and pair.distance.valid
    return not key.startswith("life") or pair.lives[key.removeprefix("life, ")].valid


def _part(part: Contribution, text: str, spread: Span | None) -> Markup:
    if part.nothing:
        return Markup("no change")
    error = f" ± {format_number(part.factor * part.error, significant=1)}" if part.error else ""
    told = Compared(1.0, part.factor, part.factor, spread)
    between = Markup(" ({})").format(span(told)) if spread is not None else Markup("")
    # with one more digit where a settled end reads as 1
    finer = factor(told, part.factor)
    return Markup("× {}{}{}").format(text if finer == times(part.factor) else finer, error, between)


def _drawn(page: PageState, site: Site, scenes: Sequence[Scene]) -> Markup:
    page.figures += 1
    drawn = [site.drawings.drawn(scene) for scene in scenes]
    return page.set_aside(figure_html(scenes, drawn, label=str(page.figures), steps=False), late=True)


def _section(ident: str, title: str, body: Markup) -> Markup:
    return Markup('<section aria-labelledby="{0}"><h2 id="{0}">{1}</h2>{2}</section>').format(ident, title, body)

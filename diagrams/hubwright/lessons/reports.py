"""Setup reports: a generated page per vehicle and setup, with every input, load and limit on one sheet."""

from collections.abc import Iterable
from functools import partial
from typing import Any

from markupsafe import Markup, escape

from hubwright.lessons import cautions
from hubwright.lessons.drawings import Drawings
from hubwright.lessons.figures import figure_html, scenes_of
from hubwright.lessons.generated_page import GeneratedPage, Site
from hubwright.lessons.numbers import both, show, show_range
from hubwright.lessons.page_state import PageState
from hubwright.lessons.views import input_quantity, wheel_words
from hubwright.quantities import Kind, Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.model import WheelGeometry
from hubwright.setup.model import Limits

GRAVITY = 9.80665
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
NOTHING_GIVEN = "not compared with any limit"
ABOVE = "above the limit given: do not drive on this setup; ask a qualified person"
KEPT = "The loads of the other cases are not compared with any limit."


def pages(site: Site) -> list[GeneratedPage]:
    """Return a page for the report of each vehicle and setup."""
    return [
        GeneratedPage(
            path=f"reports/{stem}.md",
            title=f"Setup report: {results.setup.name}",
            kind="report",
            write=partial(report_body, results=results, drawings=site.drawings, added_cautions=site.cautions),
            mark=f"R{number}",
            stem=stem,
        )
        for number, (stem, results) in enumerate(site.course.results.items(), 1)
    ]


def report_body(page: PageState, results: Results, drawings: Drawings, added_cautions: Iterable[str] = ()) -> str:
    """Return the report of a setup as blocks of HTML that Markdown leaves alone."""
    setup = results.setup
    head = Markup(
        '<header class="report-head"><span class="tag">Setup report</span><h1>{}</h1>\n'
        "<p>{} wheel. From the data given on {}, not an inspection of this vehicle. "
        "Estimated values are marked, with the range in which they may lie.</p></header>"
    ).format(setup.name, wheel_words(results.wheel).capitalize(), page.built)
    parts = [
        head,
        Markup('<section class="whole" aria-labelledby="r0"><h2 id="r0">Limits</h2>{}</section>').format(
            limits(results)
        ),
        _block("r1", "Weight on axles and wheels", _weights(results)),
        _block("r2", "Wheel and bearing", _geometry(results)),
        _block("r3", "Row loads, standing", _rows(results)),
        Markup(
            '<section class="block whole" aria-labelledby="r4">'
            '<h2 id="r4">Loads on the hub, case by case</h2>{}</section>'
        ).format(cases_table(results)),
    ]
    scenes = (
        scenes_of("wheel-end section", results, case="standing")
        if results.bearing.effective_spread is not None
        else None
    )
    if scenes is not None:
        page.figures += 1
        html = figure_html(scenes, [drawings.drawn(scene) for scene in scenes], label=str(page.figures), steps=False)
        parts.append(Markup('<div class="whole">{}</div>').format(page.set_aside(html, late=True)))
    parts.append(
        Markup(
            '<section class="block whole" aria-labelledby="r5">'
            '<h2 id="r5">Every value that acts, and where it comes from</h2>{}</section>'
        ).format(inputs_table(results))
    )
    parts.append(
        Markup(str(cautions.caution_box(HAZARDS, added_cautions)).replace('class="caution"', 'class="caution whole"'))
    )
    return str(page.set_aside(Markup("\n").join(parts)))


def limits_are_exceeded(results: Results) -> bool:
    """Return whether something stands on this setup that is above the limit given for it."""
    return any(load.value > limit.value for _, load, limit in limit_rows(results))


def warning_above_limits() -> Markup:
    """Return the sentence that comes before every number of a setup above its limits."""
    return Markup('<p class="over"><b>{}.</b></p>\n').format(ABOVE.capitalize())


def limits(results: Results) -> Markup:
    """Return each load beside the limit that the file gives for it, or that none is given.

    A load above its limit comes first, with what to do.
    """
    rows = limit_rows(results)
    if not rows:
        return Markup("<p>{}.</p>").format(NOTHING_GIVEN.capitalize())
    lines = Markup("").join(
        Markup('<tr><th scope="row">{}</th><td class="n">{}</td><td class="n">{}</td><td>{}</td></tr>').format(
            words, show(load), show(limit), Markup("<b>{}</b>").format("above") if load.value > limit.value else ""
        )
        for words, load, limit in rows
    )
    warning = warning_above_limits() if limits_are_exceeded(results) else ""
    return Markup(
        '{}<div class="tablewrap"><table><caption>Standing loads beside the limits that the file gives.</caption>'
        '<thead><tr><th scope="col">Load</th><th scope="col" class="n">Stands with</th>'
        '<th scope="col" class="n">Limit given</th><td></td></tr></thead><tbody>{}</tbody></table></div>\n'
        "<p>{}</p>"
    ).format(warning, lines, KEPT)


def limit_rows(results: Results) -> list[tuple[str, Quantity, Quantity]]:
    """Return what stands beside a limit: words, load and limit, both as masses."""
    given = results.setup.limits
    if given is None:
        return []
    weight = results.weight
    heaviest = max(weight.wheel_loads.values())
    pairs = [
        (f"{axle} axle" if axle not in ("axle", "coupling") else axle, load, _limit_of(given, axle))
        for axle, load in weight.axle_loads.items()
    ]
    pairs += [
        ("heaviest wheel, wheel rating", heaviest, given.wheel_rating),
        ("heaviest wheel, tire rating", heaviest, given.tire_rating),
    ]
    return [
        (words.capitalize(), Quantity(load / GRAVITY, "kg"), Quantity(limit, "kg"))
        for words, load, limit in pairs
        if limit is not None
    ]


def _limit_of(limits: Limits, axle: str) -> float | None:
    return {
        "front": limits.front_axle_rating,
        "rear": limits.rear_axle_rating,
        "axle": limits.axle_rating,
        "coupling": limits.coupling_rating,
    }[axle]


def _block(ident: str, title: str, body: Markup) -> Markup:
    return Markup('<section class="block" aria-labelledby="{0}"><h2 id="{0}">{1}</h2>{2}</section>').format(
        ident, title, body
    )


def _pairs(caption: str, pairs: Iterable[tuple[str, Markup]]) -> Markup:
    lines = Markup("").join(
        Markup('<tr><th scope="row">{}</th><td class="n">{}</td></tr>').format(words, value) for words, value in pairs
    )
    return Markup('<table><caption class="vh">{}</caption><tbody>{}</tbody></table>').format(caption, lines)


def _weights(results: Results) -> Markup:
    weight = results.weight
    pairs = [
        (
            f"{axle.capitalize()} axle" if axle not in ("axle", "coupling") else axle.capitalize(),
            show(Quantity(load, "N")),
        )
        for axle, load in weight.axle_loads.items()
    ]
    pairs += [
        (f"{wheel_words(wheel).capitalize()} wheel", show(Quantity(load, "N")))
        for wheel, load in weight.wheel_loads.items()
    ]
    pairs += [
        ("Equal share, the rule of thumb", show(Quantity(weight.equal_share, "N"))),
        ("Whole mass", show(Quantity(weight.total_mass, "kg"))),
        ("Centre of mass, height", show(Quantity(weight.centre_of_mass_height, "m", kind="vehicle length"))),
    ]
    return _pairs("Standing loads", pairs)


_GEOMETRY: tuple[tuple[str, str], ...] = (
    ("load_line_offset", "Load line, outboard positive"),
    ("backspacing", "Backspacing"),
    ("free_diameter", "Free diameter"),
    ("loaded_radius", "Loaded radius"),
    ("section_width", "Section width"),
)


def _geometry(results: Results) -> Markup:
    geometry: WheelGeometry = results.wheel_geometry
    pairs = [(words, show(Quantity(getattr(geometry, name), "m"))) for name, words in _GEOMETRY]
    bearing = results.bearing
    for words, value, unit in (
        ("Effective spread of the rows", bearing.effective_spread, "m"),
        ("Dynamic rating", bearing.dynamic_rating, "N"),
        ("Static rating", bearing.static_rating, "N"),
    ):
        pairs.append((words, show(Quantity(value, unit)) if value is not None else Markup("not given")))
    return _pairs("Wheel and bearing", pairs)


def _rows(results: Results) -> Markup:
    case = results.cases["standing"]
    if case.row_load is None:
        return Markup("<p>{}</p>").format("The file does not say enough of the bearing to tell its rows apart.")
    pairs = []
    for row in ("outboard", "inboard"):
        load = getattr(case.row_load, row).z
        pairs.append(
            (
                f"{row.capitalize()} row",
                Markup("{} {}").format(show(Quantity(abs(load), "N")), "up" if load >= 0 else "down"),
            )
        )
    pairs.append(("Left over, force", _left_over(case.closure.force, "N")))
    pairs.append(("Left over, moment", _left_over(case.closure.moment, "N*m")))
    return _pairs("Row loads, standing", pairs)


def _left_over(value: float, unit: str) -> Markup:
    units = ("N", "lbf") if unit == "N" else ("N·m", "lbf·ft")
    size = 4.4482216152605 if unit == "N" else 1.3558179483314
    return both(f"{value:.2f}\u00a0{units[0]}", f"{value / size:.2f}\u00a0{units[1]}")


_COLUMNS: tuple[tuple[str, Kind], ...] = (
    ("Road, up", "force"),
    ("On the hub, up", "force"),
    ("Forward", "force"),
    ("Toward the vehicle", "force"),
    ("Tipping", "moment"),
    ("Outboard row", "force"),
    ("Inboard row", "force"),
)
_FIXED: dict[str, tuple[tuple[float, int, str], tuple[float, int, str]]] = {
    "force": ((1e3, 2, "kN"), (4.4482216152605, 0, "lbf")),
    "moment": ((1.0, 1, "N·m"), (1.3558179483314, 1, "lbf·ft")),
}


def cases_table(results: Results) -> Markup:
    """Return the loads on the hub in every case, and why a case of the file is not among them."""
    head = Markup("").join(
        Markup('<th scope="col" class="n">{}<br>{}</th>').format(words, both(_FIXED[kind][0][2], _FIXED[kind][1][2]))
        for words, kind in _COLUMNS
    )
    lines = Markup("\n").join(_case_row(results, case) for case in results.cases.values())
    left_out = Markup("").join(
        Markup("<p>Not here: <i>{}</i>, {}.</p>").format(name, reason) for name, reason in results.left_out.items()
    )
    return Markup(
        '<div class="tablewrap" tabindex="0" role="region" aria-label="Loads case by case, wider than a phone">'
        '<table class="cases"><caption>On the hub at the middle of the bearing. Tipping is positive when the top goes '
        "toward the vehicle; row loads are their lengths.</caption>"
        '<thead><tr><th scope="col">Case</th>{}</tr></thead>\n<tbody>\n{}\n</tbody></table></div>{}'
    ).format(head, lines, left_out)


def _case_row(results: Results, case: CaseResult) -> Markup:
    side, radial = results.side, case.row_radial_load
    values: list[float | None] = [
        case.contact_force.z,
        case.bearing_force.z,
        case.bearing_force.x,
        -side * case.bearing_force.y,
        side * case.bearing_moment.x,
        radial.outboard if radial else None,
        radial.inboard if radial else None,
    ]
    cells = Markup("").join(
        Markup('<td class="n">{}</td>').format(_fixed(value, kind))
        for value, (_, kind) in zip(values, _COLUMNS, strict=True)
    )
    return Markup('<tr><th scope="row">{}</th>{}</tr>').format(case.name.capitalize(), cells)


def _fixed(value: float | None, kind: str) -> Markup:
    if value is None:
        return Markup("–")
    texts = []
    for size, decimals, _ in _FIXED[kind]:
        rounded = round(value / size, decimals) + 0.0
        texts.append(f"{rounded:,.{decimals}f}".replace("-", "\u2212"))
    if all(text.strip("0.,") == "" for text in texts):
        return Markup('<span aria-hidden="true">·</span><span class="vh">none</span>')
    return both(*texts)


def inputs_table(results: Results) -> Markup:
    """Return every input with its value, range, origin and how an estimate came about."""
    lines = Markup("\n").join(
        Markup(
            '<tr{}><th scope="row"><code>{}</code></th><td class="n">{}</td><td class="n">{}</td>'
            "<td>{}</td><td>{}</td></tr>"
        ).format(
            Markup(' class="guess"') if entry.origin == "estimated" else "",
            key,
            _value(input_quantity(key, entry)),
            _range(input_quantity(key, entry)),
            entry.origin,
            entry.note,
        )
        for key, entry in results.inputs.items()
    )
    return Markup(
        '<div class="tablewrap" tabindex="0" role="region" aria-label="Every input, wider than a phone">'
        '<table class="inputs"><caption class="vh">Inputs with origin and range</caption><thead><tr>'
        '<th scope="col">Key</th><th scope="col" class="n">Value</th><th scope="col" class="n">Range</th>'
        '<th scope="col">Origin</th><th scope="col">How</th></tr></thead>\n<tbody>\n{}\n</tbody></table></div>'
    ).format(lines)


def estimated(results: Results) -> list[dict[str, Any]]:
    """Return what the theme lists as estimated: key, value, range and how it came about."""
    return [
        {
            "key": key,
            "value_html": _value(input_quantity(key, entry)),
            "range_html": _range(input_quantity(key, entry)),
            "note": entry.note,
        }
        for key, entry in results.inputs.items()
        if entry.origin == "estimated"
    ]


def _value(value: Quantity | str) -> Markup:
    return escape(value) if isinstance(value, str) else show(value)


def _range(value: Quantity | str) -> Markup:
    return Markup("") if isinstance(value, str) else show_range(value)

"""Figures of a page: a scene per unit system, drawn once, inline in the page, with steps, force table and caption."""

from collections.abc import Sequence
from typing import get_args

import numpy as np
from markupsafe import Markup, escape

from hubwright.lessons.blocks import BlockError
from hubwright.lessons.closure import OPEN_BY, OpenBodyError
from hubwright.lessons.drawings import ID, Drawings, Drawn, Letter
from hubwright.lessons.named_values import View, subject_of
from hubwright.lessons.numbers import both
from hubwright.lessons.page_state import PageState
from hubwright.lessons.shared_shapes import shared
from hubwright.lessons.value_tables import value_tables
from hubwright.quantities import Kind, Quantity, System, display
from hubwright.results import Results
from hubwright.results.beams import BeamResults
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.scenes.chart_rows import BarValue
from hubwright.scenes.force_table import ForceRow, force_rows, ways
from hubwright.scenes.label_words import in_one_line
from hubwright.scenes.vocabulary import MARK, ClosedBody, Scene, Step


def figure(
    page: PageState,
    drawings: Drawings,
    name: str,
    *subjects: View,
    case: str = "standing",
    steps: bool = False,
    values: Sequence[tuple[str, Quantity]] = (),
    quantity: str = "",
    end_play: Quantity | None = None,
) -> Markup:
    """Return a figure in both unit systems: of a setup, a beam or two setups, or of named values with their ranges."""
    if name not in FIGURES:
        raise BlockError(f"no figure is called '{name}'; there are: {', '.join(sorted(FIGURES))}")
    if FIGURES[name].takes == "data":
        scenes = data_scenes(name, values, quantity)
    else:
        solved = [subject_of(subject) if isinstance(subject, View) else subject for subject in subjects]
        options = {} if end_play is None else {"end_play": end_play.value}
        scenes = scenes_of(name, *solved, case=case, **options)
    for scene in scenes:
        check_closed(scene)
    page.figures += 1
    page.drawn.add(name)
    page.hero = page.hero or scenes[0]
    label = f"{page.lesson}.{page.figures}" if page.lesson is not None else str(page.figures)
    html = figure_html(scenes, [drawings.drawn(scene) for scene in scenes], label=label, steps=steps)
    return page.set_aside(html, late=True)


_NEEDED = {
    "results": "a setup, such as stock",
    "two results": "two setups, such as stock and a variant",
    "beam": "a beam file, such as plank_bridge",
}


def scenes_of(name: str, *solved: object, case: str, **options: float) -> list[Scene]:
    """Return the scene of a figure in both unit systems."""
    function, takes = scene_function(name), FIGURES[name].takes
    wanted = BeamResults if takes == "beam" else Results
    number = 2 if takes == "two results" else 1
    fits = len(solved) == number or (FIGURES[name].takes_more and len(solved) > number)
    if not fits or not all(isinstance(one, wanted) for one in solved):
        raise BlockError(f'figure("{name}", …) needs {_NEEDED[takes]}')
    if takes == "beam":
        return [function(*solved, units=system) for system in get_args(System)]
    for one in solved:
        if isinstance(one, Results) and case not in one.cases:
            raise BlockError(f"figure(\"{name}\", …): this setup has no case '{case}'; it has: {', '.join(one.cases)}")
    return [function(*solved, case=case, units=system, **options) for system in get_args(System)]


def data_scenes(name: str, values: Sequence[tuple[str, Quantity]], quantity: str) -> list[Scene]:
    """Return the scene of named values with their ranges in both unit systems."""
    bars = [
        BarValue(words, value.value, value.low, value.high, value.kind or "ratio")
        for words, value in values
        if isinstance(value, Quantity)
    ]
    if not bars or len(bars) < len(values) or not quantity:
        raise BlockError(f'figure("{name}", values=[("as it is", load), …], quantity="…") needs names with quantities')
    return [scene_function(name)(bars, quantity=quantity, units=system) for system in get_args(System)]


def check_closed(scene: Scene) -> None:
    """Refuse a scene whose free body leaves something over."""
    for body in scene.bodies:
        if body.forces:
            _check_one(scene, body)


def _check_one(scene: Scene, body: ClosedBody) -> None:
    forces = np.array([force for _, force, _ in body.forces])
    moments = np.array(
        [np.cross(point, force) for _, force, point in body.forces] + [couple for _, couple in body.couples]
    )
    for what, unit, parts in (("forces", "N", forces), ("moments", "N·m", moments)):
        left_over = float(np.linalg.norm(parts.sum(axis=0)))
        largest = max(float(np.abs(forces).max()), float(np.abs(parts).max()))
        if left_over > OPEN_BY * largest:
            raise OpenBodyError(
                f"the free body of '{scene.title}' does not close: its {what} leave {left_over:.3g} {unit} over"
            )


def figure_html(scenes: Sequence[Scene], drawn: Sequence[Drawn], *, label: str, steps: bool) -> Markup:
    """Return the figure element: caption, steps, drawings for wide and narrow screens, every force as a number."""
    ident = f"fig-{label.replace('.', '-')}"
    si, us = scenes
    built_up = steps and bool(si.steps)
    (si_wide, *si_narrow), (us_wide, *us_narrow) = _twins(drawn, ident)
    return Markup(
        '<figure class="fig" id="{id}"{data} aria-labelledby="{id}-cap">\n<figcaption id="{id}-cap">'
        '<span class="tag">Figure {label}</span> <span>{caption}</span></figcaption>\n'
        '{build}<div class="plate">\n<div class="wide">\n{wide}\n</div>\n{narrow}</div>\n{table}</figure>'
    ).format(
        id=ident,
        data=Markup(" data-build") if built_up else "",
        label=label,
        caption=in_both(marked(si.caption), marked(us.caption)),
        build=_steps(scenes) if built_up else "",
        wide=Markup("\n".join((si_wide, us_wide))),
        narrow=Markup('<div class="narrow">\n{}\n</div>\n{}').format(
            Markup("\n".join((*si_narrow, *us_narrow))), _key(drawn, label)
        )
        if si_narrow
        else "",
        table=force_table(si, label) + value_tables(scenes, label, marked),
    )


def _twins(drawn: Sequence[Drawn], ident: str) -> tuple[list[str], list[str]]:
    """Return the drawings of each unit system, wide and narrow; the second refers to the parts of the first."""
    si, us = (
        [svg.replace(ID, f"{ident}-{system}") for svg in (one.wide, *one.narrow)]
        for system, one in zip(get_args(System), drawn, strict=True)
    )
    if not all((*si, *us)):  # nothing was drawn: the site is only checked
        return si, us
    for n, pair in enumerate(zip(si, us, strict=False)):
        si[n], us[n] = shared(*pair, prefix=f"{ident}-shape-{n}")
    return si, us


def marked(text: str) -> Markup:
    """Return a scene's text as HTML: `{F|z}` is an italic symbol with its subscript."""
    parts, position = Markup(""), 0
    for mark in MARK.finditer(text):
        parts += escape(text[position : mark.start()]) + Markup("<i>{}</i>").format(mark["symbol"])
        parts += Markup("<sub>{}</sub>").format(mark["below"]) if mark["below"] else Markup("")
        position = mark.end()
    return parts + escape(text[position:])


def in_both(si: Markup, us: Markup) -> Markup:
    """Return sentences that differ only in their units."""
    if si == us:
        return si
    return Markup('<span class="si">{}</span><span class="us">{}</span>').format(si, us)


def _key(drawn: Sequence[Drawn], label: str) -> Markup:
    """Return what the letters of the narrow drawings stand for; an entry shows from its step on."""
    si, us = drawn
    entries: list[tuple[str, Letter]] = [(" si", one) for one in si.key if one not in us.key]
    entries = [
        *entries,
        *((" us", one) for one in us.key if one not in si.key),
        *(("", one) for one in si.key if one in us.key),
    ]
    entries.sort(key=lambda entry: (len(entry[1].letter), entry[1].letter, entry[0]))
    items = Markup("\n").join(
        Markup('<li{} data-layer="{}"><span class="ring">{}</span> <span>{}</span></li>').format(
            Markup(' class="{}"').format(system.strip()) if system else "",
            letter.step,
            letter.letter,
            marked(in_one_line(letter.lines)),
        )
        for system, letter in entries
    )
    return Markup('<ul class="key" aria-label="Key to figure {}">\n{}\n</ul>\n').format(label, items)


def _steps(scenes: Sequence[Scene]) -> Markup:
    """Return the steps in words; the theme's script makes the buttons."""
    items = Markup("\n").join(
        Markup('<li data-n="{}"><span>{}</span></li>').format(n, in_both(*(marked(_sentence(one)) for one in pair)))
        for n, pair in enumerate(zip(*(scene.steps for scene in scenes), strict=True), 1)
    )
    return Markup('<div class="build">\n<ol>\n{}\n</ol>\n</div>\n').format(items)


def _sentence(step: Step) -> str:
    return f"{step.heading}. {step.sentence}"


def force_table(scene: Scene, label: str) -> Markup:
    """Return everything on the free body of a scene as numbers, folded away."""
    rows = force_rows(scene)
    if not rows:
        return Markup("")
    lines = Markup("\n").join(
        Markup('<tr><th scope="row">{}</th>{}</tr>').format(row.name, Markup("").join(_row_cells(row))) for row in rows
    )
    along = ways(scene)
    head = Markup("").join(
        Markup('<th scope="col" class="n">{}</th>').format(words)
        for words in (*along, *(f"at, {way}" for way in along))
    )
    return Markup(
        '<details class="fold forces"><summary>Every force as a number</summary>\n'
        '<div class="tablewrap" tabindex="0" role="region" aria-label="Every force of figure {}, wider than a phone">'
        "<table>\n"
        '<thead><tr><th scope="col">What acts</th>{}</tr></thead>\n<tbody>\n{}\n</tbody></table></div>\n</details>\n'
    ).format(label, head, lines)


def _row_cells(row: ForceRow) -> list[Markup]:
    if row.point is None:
        return [*_cells(row.components, "moment"), *[_NONE] * len(row.components)]  # a couple acts at no point
    return [*_cells(row.components, "force"), *_cells(row.point, "small length")]


_NONE = Markup('<td class="n"><span aria-hidden="true">·</span><span class="vh">none</span></td>')


def _cells(components: Sequence[float], kind: Kind) -> list[Markup]:
    return [
        Markup('<td class="n">{}</td>').format(both(display(value, kind, "si").text, display(value, kind, "us").text))
        if abs(value) >= 1e-6
        else _NONE
        for value in components
    ]

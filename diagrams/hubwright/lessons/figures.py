"""Figures of a page: a scene per unit system, drawn once, inline in the page, with steps, force table and caption."""

import hashlib
import re
from collections.abc import Sequence
from pathlib import Path
from typing import get_args

import numpy as np
from markupsafe import Markup

from hubwright import __version__
from hubwright.lessons.blocks import BlockError
from hubwright.lessons.closure import FORCE_NAMES, OPEN_BY, OpenBodyError
from hubwright.lessons.numbers import both
from hubwright.lessons.page_state import PageState
from hubwright.lessons.views import View, subject_of
from hubwright.quantities import Kind, System, display
from hubwright.results import Results
from hubwright.results.beams import BeamResults
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.scenes.vocabulary import Scene


class Drawings:
    """Draws scenes, each distinct one once, and keeps the drawings in a directory for the next build."""

    def __init__(self, directory: Path | None) -> None:
        """Keep drawings in a directory, or for this build only."""
        self.directory = directory
        self.drawn: dict[str, str] = {}
        self._code = ""

    def svg(self, scene: Scene) -> str:
        """Return the drawing of a scene; its ids all begin with "ID-" where a page puts its own prefix."""
        key = hashlib.sha256(f"{__version__}\n{self._drawing_code()}\n{scene!r}".encode()).hexdigest()[:32]
        if key not in self.drawn:
            file = self.directory / f"{key}.svg" if self.directory else None
            if file and file.is_file():
                self.drawn[key] = file.read_text(encoding="utf-8")
            else:
                self.drawn[key] = draw(scene)
                if file:
                    file.parent.mkdir(parents=True, exist_ok=True)
                    fresh = file.with_suffix(".new")
                    fresh.write_text(self.drawn[key], encoding="utf-8")
                    fresh.replace(file)
        return self.drawn[key]

    def _drawing_code(self) -> str:
        """Return a mark of the drawing code, so that a changed pen draws anew."""
        if not self._code:
            import hubwright.drawing

            folder = Path(hubwright.drawing.__file__).parent
            self._code = hashlib.sha256(
                b"".join(file.read_bytes() for file in sorted(folder.rglob("*.py")))
            ).hexdigest()
        return self._code


class Undrawn(Drawings):
    """Draws nothing: for checking a site, which needs the scenes and not their pictures."""

    def __init__(self) -> None:
        """Keep nothing."""
        super().__init__(None)

    def svg(self, scene: Scene) -> str:
        """Return nothing."""
        return ""


def draw(scene: Scene) -> str:
    """Return the drawing of a scene as an SVG element for a page."""
    from hubwright import drawing

    return drawing.svg_for_page(drawing.draw(scene), prefix="ID", units_class=scene.units)


def figure(
    page: PageState, drawings: Drawings, name: str, subject: View, *, case: str = "standing", steps: bool = False
) -> Markup:
    """Return a figure of a setup in both unit systems."""
    if name not in FIGURES:
        raise BlockError(f"no figure is called '{name}'; there are: {', '.join(sorted(FIGURES))}")
    scenes = scenes_of(name, subject_of(subject) if isinstance(subject, View) else subject, case)
    for scene in scenes:
        check_closed(scene)
    page.figures += 1
    label = f"{page.lesson}.{page.figures}" if page.lesson is not None else str(page.figures)
    html = figure_html(scenes, [drawings.svg(scene) for scene in scenes], label=label, steps=steps)
    return page.set_aside(html, late=True)


def scenes_of(name: str, solved: object, case: str) -> list[Scene]:
    """Return the scene of a figure in both unit systems."""
    function = scene_function(name)
    if isinstance(solved, BeamResults) and name == "beam alone":
        return [function(solved, units=system) for system in get_args(System)]
    if not isinstance(solved, Results) or name == "beam alone":
        needed = "a beam file, such as plank_bridge" if name == "beam alone" else "a setup, such as stock"
        raise BlockError(f'figure("{name}", …) needs {needed}')
    if case not in solved.cases:
        raise BlockError(f"figure(\"{name}\", …): this setup has no case '{case}'; it has: {', '.join(solved.cases)}")
    return [function(solved, case=case, units=system) for system in get_args(System)]


def check_closed(scene: Scene) -> None:
    """Refuse a scene whose free body leaves something over."""
    body = scene.body
    if body is None or not body.forces:
        return
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


def figure_html(scenes: Sequence[Scene], drawings: Sequence[str], *, label: str, steps: bool) -> Markup:
    """Return the figure element: caption, steps, both drawings, and every force as a number."""
    ident = f"fig-{label.replace('.', '-')}"
    si, us = scenes
    built_up = steps and bool(si.steps)
    wide = Markup("\n").join(
        Markup(svg.replace("ID-", f"{ident}-{system}-")) for system, svg in zip(get_args(System), drawings, strict=True)
    )
    return Markup(
        '<figure class="fig" id="{id}"{data} aria-labelledby="{id}-cap">\n<figcaption id="{id}-cap">'
        '<span class="tag">Figure {label}</span> <span>{caption}</span></figcaption>\n'
        '{build}<div class="plate">\n<div class="wide">\n{wide}\n</div>\n</div>\n{table}</figure>'
    ).format(
        id=ident,
        data=Markup(" data-build") if built_up else "",
        label=label,
        caption=in_both(si.caption, us.caption),
        build=_steps(scenes) if built_up else "",
        wide=wide,
        table=force_table(si),
    )


def in_both(si: str, us: str) -> Markup:
    """Return sentences that differ only in their units."""
    if si == us:
        return Markup("{}").format(si)
    return Markup('<span class="si">{}</span><span class="us">{}</span>').format(si, us)


def _steps(scenes: Sequence[Scene]) -> Markup:
    """Return the steps in words; the theme's script makes the buttons."""
    si, us = scenes
    items = Markup("\n").join(
        Markup('<li data-n="{}"><span>{}</span></li>').format(
            n, in_both(f"{a.heading}. {a.sentence}", f"{b.heading}. {b.sentence}")
        )
        for n, (a, b) in enumerate(zip(si.steps, us.steps, strict=True), 1)
    )
    return Markup('<div class="build">\n<ol>\n{}\n</ol>\n</div>\n').format(items)


def force_table(scene: Scene) -> Markup:
    """Return everything on the free body of a scene as numbers, folded away."""
    body = scene.body
    if body is None or not body.forces:
        return Markup("")
    rows = [(name, [*_cells(force, "force"), *_cells(point, "small length")]) for name, force, point in body.forces]
    rows += [(name, [*_cells(couple, "moment"), *[Markup("")] * 3]) for name, couple in body.couples]
    lines = Markup("\n").join(
        Markup('<tr><th scope="row">{}</th>{}</tr>').format(_name(name), Markup("").join(cells))
        for name, cells in rows
        if any(cell != _NONE for cell in cells[:3])
    )
    along = ("along", "aside", "up") if scene.axes == "none" else ("forward", "left", "up")
    head = Markup("").join(
        Markup('<th scope="col" class="n">{}</th>').format(words)
        for words in (*along, *(f"at, {way}" for way in along))
    )
    return Markup(
        '<details class="fold forces"><summary>Every force as a number</summary>\n'
        '<div class="tablewrap" tabindex="0" role="region" aria-label="Every force, wider than a phone"><table>\n'
        '<thead><tr><th scope="col">What acts</th>{}</tr></thead>\n<tbody>\n{}\n</tbody></table></div>\n</details>\n'
    ).format(head, lines)


def _name(name: str) -> str:
    known = FORCE_NAMES.get(name)
    return known or re.sub(r"^(?:force|reaction)[-_]", "", name).replace("_", " ").replace("-", " ").capitalize()


_NONE = Markup('<td class="n"><span aria-hidden="true">·</span><span class="vh">none</span></td>')


def _cells(components: Sequence[float], kind: Kind) -> list[Markup]:
    return [
        Markup('<td class="n">{}</td>').format(both(display(value, kind, "si").text, display(value, kind, "us").text))
        if abs(value) >= 1e-6
        else _NONE
        for value in components
    ]

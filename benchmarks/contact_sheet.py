"""Every figure on one page, to be looked at: light, dark, SI, US, wide and phone, for three very different vehicles.

`python benchmarks/contact_sheet.py` writes build/contact-sheet/index.html, and a page for each figure beside it.
"""

from collections.abc import Iterator
from html import escape
from itertools import count

from of_the_tests import ROOT

from drawing.page_faces import font_faces
from drawing.swept import comparison, sensitivity
from hubwright.drawing import draw, svg_for_page
from hubwright.drawing.faces import WEB_FILES
from hubwright.drawing.marks import Drawing
from hubwright.drawing.palette import css
from hubwright.drawing.snippet import marked
from hubwright.results import Results, solve
from hubwright.results.beams import BeamResults, solve_beam
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.scenes.label_words import in_one_line
from hubwright.scenes.vocabulary import Scene, Units
from hubwright.setup import Beam, load, vary

TARGET = ROOT / "build" / "contact-sheet"
VEHICLES = (("hill-wagon", "front_left"), ("supply-van", "front_right"), ("kit-trailer", "left"))
SHEETS = ("light", "dark")
SYSTEMS: tuple[Units, ...] = ("si", "us")
STYLE = """
body{margin:0;font:15px/1.4 sans-serif;background:#ddd;color:#222}
h1,h2,h3{margin:.6em 16px .2em}
p{margin:.2em 16px;max-width:110ch}
.row{display:flex;flex-wrap:wrap;gap:8px;padding:8px 16px;align-items:flex-start}
.light,.dark{padding:4px}
.light{color-scheme:light;background:#f8f9f6;color:#222}
.dark{color-scheme:dark;background:#12181d;color:#ddd}
.wide{width:900px}
.phone{width:360px}
.key{font-size:12px;margin:0;padding:0 8px 4px;columns:2}
"""


def solved() -> Iterator[tuple[str, Results | BeamResults]]:
    """Yield what is drawn: three vehicles, each at one wheel, and a beam."""
    for name, wheel in VEHICLES:
        setup = load(ROOT / "content" / "vehicles" / f"{name}.toml")
        assert not isinstance(setup, Beam)
        yield f"{name}, {wheel.replace('_', ' ')}", solve(setup, wheel)  # type: ignore[arg-type]
    beam = load(ROOT / "content" / "beams" / "plank-bridge.toml")
    assert isinstance(beam, Beam)
    yield "plank bridge", solve_beam(beam)


def scenes(name: str, results: Results | BeamResults, number: int) -> Iterator[tuple[str, list[Scene]]]:
    """Yield the scenes of a figure in both systems: its first case, and another one for each vehicle."""
    figure, function = FIGURES[name], scene_function(name)
    if isinstance(results, BeamResults):
        if figure.takes == "beam":
            yield "", [function(results, units=units) for units in SYSTEMS]
    elif figure.takes == "two results":
        if not figure.cases(results):
            return
        setup = results.setup
        moved = vary(setup, {"wheel.spacer": f"{setup.wheel.spacer * 1e3 + 25:g} mm"}, name=f"{setup.name}, spaced out")
        yield "", [function(results, solve(moved, results.wheel), units=units) for units in SYSTEMS]
    elif figure.takes == "data":
        rows = sensitivity(results, 0) if name == "sensitivity bars" else comparison(results, 0)
        yield "the moment at the bearing", [function(rows, quantity="Moment", units=units) for units in SYSTEMS]
    elif figure.takes == "results":
        cases = figure.cases(results)
        for case in dict.fromkeys([*cases[:1], *cases[1 + 2 * number : 2 + 2 * number]]):
            yield case, [function(results, case=case, units=units) for units in SYSTEMS]


def cell(drawings: list[Drawing], sheet: str, form: str, numbers: Iterator[int], units: str) -> str:
    """Return drawings on a sheet of one colour."""
    pictures = "\n".join(svg_for_page(one, prefix=f"f{next(numbers)}", units_class=units) for one in drawings)
    entries = [
        f"<div>{entry.letter} {marked(in_one_line(entry.lines))}</div>" for d in drawings for entry in d.balloons
    ]
    key = f'<div class="key">{"".join(entries)}</div>' if entries else ""
    return f'<div class="{sheet} {form}">{pictures}{key}</div>'


def section(name: str, everything: list[tuple[str, Results | BeamResults]], numbers: Iterator[int]) -> str:
    """Return everything about one figure."""
    parts = [f"<h2>{escape(name)}</h2>"]
    for number, (what, results) in enumerate(everything):
        for case, pair in scenes(name, results, number):
            parts.append(f"<h3>{escape(f'{what}; {case}')}</h3>")
            for scene in pair:
                parts.append(f"<p><b>{marked(scene.title)}</b> {marked(scene.caption)}</p>")
                parts.append(f"<p><small>{marked(scene.description)}</small></p>")
                wide, narrow = [draw(scene)], list(draw(scene, form="narrow"))
                cells = [cell(wide, sheet, "wide", numbers, scene.units) for sheet in SHEETS]
                cells += [cell(narrow, sheet, "phone", numbers, scene.units) for sheet in SHEETS]
                parts.append(f'<div class="row">{"".join(cells)}</div>')
    return "\n".join(parts)


def page(body: str) -> str:
    """Return a whole page with the faces and colours of figures."""
    fonts = font_faces(lambda face: f"../../site_templates/fonts/{WEB_FILES[face]}")
    head = f"<meta charset=utf-8><title>Contact sheet</title><style>{fonts}{css()}{STYLE}</style>"
    return f"<!doctype html><html lang=en>{head}<h1>Contact sheet</h1>{body}"


def main() -> None:
    """Write the sheet."""
    TARGET.mkdir(parents=True, exist_ok=True)
    everything = list(solved())
    numbers = count()
    sections = {name: section(name, everything, numbers) for name in FIGURES}
    (TARGET / "index.html").write_text(page("".join(sections.values())), encoding="utf-8")
    for name, text in sections.items():
        (TARGET / f"{name.replace(' ', '-')}.html").write_text(page(text), encoding="utf-8")
    print(f"wrote {TARGET.relative_to(ROOT) / 'index.html'}: {len(FIGURES)} figures")


if __name__ == "__main__":
    main()

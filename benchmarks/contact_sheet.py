"""Every figure on one page, to be looked at: light, dark, SI, US, wide and phone, for three very different vehicles.

`python benchmarks/contact_sheet.py` writes build/contact-sheet/index.html, and a page for each figure beside it.
"""

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial
from html import escape
from itertools import count

from of_the_tests import ROOT

from drawing.page_faces import font_faces
from drawing.swept import comparison
from hubwright.drawing import draw, svg_for_page
from hubwright.drawing.faces import WEB_FILES
from hubwright.drawing.marks import Drawing
from hubwright.drawing.palette import css
from hubwright.drawing.snippet import marked
from hubwright.lessons.key_words import short_meaning
from hubwright.lessons.views import input_quantity
from hubwright.quantities import Quantity
from hubwright.results import Results, solve
from hubwright.results.beams import BeamResults, solve_beam
from hubwright.results.sensitivity import what_matters
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.scenes.chart_rows import BarValue
from hubwright.scenes.label_words import in_one_line
from hubwright.scenes.vocabulary import Scene, Units
from hubwright.setup import Beam, load, vary

TARGET = ROOT / "build" / "contact-sheet"
VEHICLES = (("hill-wagon", "front_left"), ("supply-van", "front_right"), ("kit-trailer", "left"))
SHEETS = ("light", "dark")
SYSTEMS: tuple[Units, ...] = ("si", "us")
BARS = 6  # inputs that a sensitivity shows
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
.key div{break-inside:avoid}
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
        what, draw_it = sensitivity(results) if name == "sensitivity bars" else moments(results)
        yield what, [draw_it(units) for units in SYSTEMS]
    elif figure.takes == "results":
        cases = figure.cases(results)
        for case in dict.fromkeys([*cases[:1], *cases[1 + 2 * number : 2 + 2 * number]]):
            yield case, [function(results, case=case, units=units) for units in SYSTEMS]


def moments(results: Results) -> tuple[str, Callable[[Units], Scene]]:
    """Return what the bearing is turned by in every case, and the bars of it, with directions as seen at the wheel."""
    rows = []
    for row in comparison(results, 0):
        ends = sorted(results.side * end for end in row.ends)
        spanned = {} if row.span is None else {"low": ends[0], "high": ends[-1]}
        rows.append(replace(row, value=results.side * row.value, **spanned))
    words = {"above": "top inboard", "below": "top outboard"}
    quantity = "Moment of the hub on the bearing, about its centre"
    draws = next((span.draws for span in results.spans.values()), None)
    return quantity, partial(_bars, "comparison bars", rows, quantity=quantity, draws=draws, **words)


def sensitivity(results: Results) -> tuple[str, Callable[[Units], Scene]]:
    """Return the load that the page about finding one's numbers shows, and its bars: also of inputs that do nothing."""
    radial = results.cases["standing"].row_radial_load
    assert radial is not None
    load = max(radial.outboard, radial.inboard)
    rows = []
    for one in what_matters(results, "worst row load"):
        if (entry := results.inputs.get(one.key)) is None or one.key.startswith(("case.", "duty.")):
            continue
        row = BarValue(short_meaning(results.setup, one.key), load, load * one.low, load * one.high)
        given = input_quantity(one.key, entry)
        if isinstance(given, Quantity) and given.low is not None and given.high is not None and given.kind:
            row = replace(row, input_range=(given.low, given.high), input_kind=given.kind)
        rows.append(row)
    quantity = "Load of the harder loaded row, standing"
    return quantity, partial(_bars, "sensitivity bars", rows[:BARS], quantity=quantity)


def _bars(name: str, rows: list[BarValue], units: Units, **words: object) -> Scene:
    return scene_function(name)(rows, units=units, **words)


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

"""Every figure of the demonstration, in both unit systems: nothing stands on anything else, and a ruler agrees."""

from collections.abc import Iterator
from itertools import product
from pathlib import Path

import pytest

from drawing.read_back import read
from hubwright.drawing import draw, svg_for_page
from hubwright.places import data_directory
from hubwright.results import solve
from hubwright.results.beams import solve_beam
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.scenes.vocabulary import Dimension, Force, Scene, Units
from hubwright.setup import Beam, load

CONTENT = data_directory("content")
FILES = sorted(file for folder in ("vehicles", "setups", "beams") for file in (CONTENT / folder).glob("*.toml"))
UNITS: tuple[Units, ...] = ("si", "us")


def scenes(file: Path, units: Units) -> Iterator[Scene]:
    what = load(file)
    if isinstance(what, Beam):
        yield scene_function("beam alone")(solve_beam(what), units=units)
        return
    results = solve(what)
    for name, figure in FIGURES.items():
        if figure.takes == "results" and (cases := figure.cases(results)):
            yield scene_function(name)(results, case=cases[0], units=units)


@pytest.mark.parametrize(
    ("file", "units"), list(product(FILES, UNITS)), ids=lambda value: getattr(value, "stem", value)
)
def test_figures_are_clear_and_to_scale(file: Path, units: Units) -> None:
    for scene in scenes(file, units):
        drawing = draw(scene)
        assert drawing.conflicts == (), scene.name
        figure = read(svg_for_page(drawing, prefix="f", units_class=units))
        measured = 0
        for group in figure.of("force-", "reaction-"):
            if "data-x1" in group.data:
                stated = float(group.data["data-newtons"]) / float(group.view["data-newtons-per-mm"])
                assert group.length() * figure.mm_per_unit == pytest.approx(stated, rel=0.005), group.name
                measured += 1
        for group in figure.of("dimension-"):
            stated = float(group.data["data-mm"]) / float(group.view["data-mm-per-mm"])
            assert group.length() * figure.mm_per_unit == pytest.approx(stated, rel=0.005), group.name
            measured += 1
        # a chart of numbers has neither arrows nor dimensions
        measurable = sum(isinstance(item, Force | Dimension) for item in scene.items)
        assert measured >= min(3, measurable), scene.name


@pytest.mark.parametrize("file", FILES, ids=lambda value: value.stem)
def test_on_a_phone_no_letter_stands_on_another_or_leaves_the_sheet(file: Path) -> None:
    for scene in scenes(file, "si"):
        for drawing in draw(scene, form="narrow"):
            wrong = [c for c in drawing.conflicts if c.kind in ("texts overlap", "off the sheet", "text on head")]
            assert wrong == [], (scene.name, drawing.view)

"""Every figure of the demonstration, in both unit systems: nothing stands on anything else, and a ruler agrees."""

from collections.abc import Iterator
from functools import cache
from itertools import product
from math import hypot
from pathlib import Path

import pytest

from drawing.written_checks import counted, failures_of, wrong_with
from hubwright.drawing import draw, svg_for_page
from hubwright.places import data_directory
from hubwright.results import Results, solve
from hubwright.results.beams import BeamResults, solve_beam
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.scenes.vocabulary import AngularDimension, Dimension, Force, LeaderDimension, Line, Moment, Scene, Units
from hubwright.setup import Beam, load

CONTENT = data_directory("content")
FILES = sorted(file for folder in ("vehicles", "setups", "beams") for file in (CONTENT / folder).glob("*.toml"))
_KIND = {"applied": "load", "reaction": "reaction", "resultant": "resultant"}
UNITS: tuple[Units, ...] = ("si", "us")


_SHORTEST = 0.05  # sheet millimetres: shorter arrows no printer shows


def _length(force: Force, scene: Scene) -> float:
    return hypot(*force.vector) / (scene.view(force.view).newtons_per_mm or 1.0)


@cache
def scenes(file: Path, units: Units) -> tuple[Scene, ...]:
    """Every figure of a file, made once for all tests of a worker."""
    return tuple(_made(file, units))


@cache
def solved(file: Path) -> Results | BeamResults:
    """What a file gives, solved once for both unit systems."""
    what = load(file)
    return solve_beam(what) if isinstance(what, Beam) else solve(what)


def _made(file: Path, units: Units) -> Iterator[Scene]:
    results = solved(file)
    if isinstance(results, BeamResults):
        yield scene_function("beam alone")(results, units=units)
        return
    for name, figure in FIGURES.items():
        if figure.takes == "results" and (cases := figure.cases(results)):
            yield scene_function(name)(results, case=cases[0], units=units)


@pytest.mark.parametrize(
    ("file", "units"), list(product(FILES, UNITS)), ids=lambda value: getattr(value, "stem", value)
)
def test_figures_are_clear_and_to_scale(file: Path, units: Units) -> None:
    for scene in scenes(file, units):
        drawing = draw(scene)
        svg = svg_for_page(drawing, prefix="f", units_class=units)
        assert failures_of(svg) == [], scene.name
        # whatever is to scale says in the file how large it is
        forces = [item for item in scene.items if isinstance(item, Force)]
        arrows = [item.to_scale for item in forces if _length(item, scene) >= _SHORTEST]
        assert any(arrows) or not arrows, scene.name
        measured = [item for item in scene.items if isinstance(item, Dimension | AngularDimension | LeaderDimension)]
        assert counted(svg) == (sum(arrows), len(measured)), scene.name


@pytest.mark.parametrize("file", FILES, ids=lambda value: value.stem)
def test_a_key_names_every_form_of_arrow_that_is_drawn(file: Path) -> None:
    for scene in scenes(file, "si"):
        keyed = {entry.kind for entry in scene.key}
        drawn = {_KIND[item.role] for item in scene.items if isinstance(item, Force) and any(item.vector)}
        turning = {item.role for item in scene.items if isinstance(item, Moment) and item.newton_metres}
        drawn |= {"reaction moment" if role == "reaction" else "moment" for role in turning}
        if "weight" in keyed:  # loads by what they are
            keyed.add("load")
        assert drawn <= keyed or not keyed, (scene.name, drawn - keyed)
        assert not (keyed - drawn) & {"moment", "reaction moment", "resultant"}, scene.name


@pytest.mark.parametrize("file", FILES, ids=lambda value: value.stem)
def test_no_line_has_the_colour_of_a_moment(file: Path) -> None:
    for scene in scenes(file, "si"):
        purple = [item.name for item in scene.items if isinstance(item, Line) and item.tone == "moment"]
        assert purple == [], scene.name


@pytest.mark.parametrize("file", FILES, ids=lambda value: value.stem)
def test_on_a_phone_no_letter_stands_on_another_or_leaves_the_sheet(file: Path) -> None:
    for scene in scenes(file, "si"):
        for drawing in draw(scene, form="narrow"):
            assert wrong_with(drawing) == [], (scene.name, drawing.view)

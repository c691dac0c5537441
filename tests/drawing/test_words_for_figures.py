"""Whoever cannot see a figure reads its forces: each by value, in its description or in the table of its forces."""

import re
from functools import cache
from itertools import product
from math import hypot
from pathlib import Path

import pytest

from drawing.test_demonstration_figures import FILES, UNITS
from hubwright.drawing.faces import plain
from hubwright.drawing.snippet import force_table
from hubwright.results import solve
from hubwright.results.beams import solve_beam
from hubwright.scenes import vocabulary as v
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.setup import Beam, load

SMALL = 0.02  # of the largest
NEWTONS = {"N": 1.0, "kN": 1e3, "lbf": 4.4482216152605}  # pound-force after NIST SP 811


@cache
def every_scene(file: Path, units: v.Units) -> list[v.Scene]:
    """Every figure of a file, in one case of every kind that it can show."""
    what = load(file)
    if isinstance(what, Beam):
        return [scene_function("beam alone")(solve_beam(what), units=units)]
    results = solve(what)
    return [
        scene_function(name)(results, case=case, units=units)
        for name, figure in FIGURES.items()
        if figure.takes == "results"
        for case in {results.cases[case].kind: case for case in figure.cases(results)}.values()
    ]


def forces(scene: v.Scene) -> dict[str, v.Point]:
    """The forces that a scene shows by an arrow of their own, or by a ring."""
    shown = {item.name: item.vector for item in scene.items if isinstance(item, v.Force) and not item.slender}
    return shown | {item.name: (item.newtons, 0.0) for item in scene.items if isinstance(item, v.Normal)}


@pytest.mark.parametrize(
    ("file", "units"), list(product(FILES, UNITS)), ids=lambda value: getattr(value, "stem", value)
)
def test_every_force_is_told_by_value(file: Path, units: v.Units) -> None:
    for scene in every_scene(file, units):
        told = re.sub(r"<[^>]+>", " ", force_table(scene)) + plain(scene.description)
        values = forces_in(told.replace("\u00a0", " "))
        shown = forces(scene)
        least = SMALL * max(hypot(*vector) for vector in shown.values()) if shown else 0.0
        for name, vector in shown.items():
            if hypot(*vector) <= least:
                continue
            whole, *parts = (is_told(value, values) for value in (hypot(*vector), *vector) if abs(value) > least)
            assert whole or all(parts), (scene.name, scene.caption, name)


def forces_in(text: str) -> list[tuple[float, float]]:
    """The forces in a text and what a unit of their last digit is worth, in newtons."""
    found = []
    for digits, decimals, unit in re.findall(r"(\d[\d,]*)(\.\d+)? (kN|N|lbf)\b(?!·)", text):
        worth = NEWTONS[unit]
        found.append((float(digits.replace(",", "") + decimals) * worth, worth / 10 ** max(len(decimals) - 1, 0)))
    return found


def is_told(newtons: float, values: list[tuple[float, float]]) -> bool:
    """Whether a force is among those told; the last digit may be the one with which a printed sum adds up."""
    return any(abs(abs(newtons) - value) <= unit for value, unit in values)


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_both_systems_tell_the_same_in_their_own_units(file: Path) -> None:
    for si, us in zip(every_scene(file, "si"), every_scene(file, "us"), strict=True):
        assert si.name == us.name
        for scene, foreign in ((si, r"lbf|\bin\b(?= (?:out|in)board)|\blb\b"), (us, r"\d\s(?:k?N|N·m|mm|kg)\b")):
            for text in (scene.title, scene.caption, scene.description, *(step.sentence for step in scene.steps)):
                assert not re.search(foreign, text), (scene.name, text)
        assert len(re.findall(r"<tr>", force_table(si))) == len(re.findall(r"<tr>", force_table(us))), si.name


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_units_keep_their_capitals_and_text_its_words(file: Path) -> None:
    for units in UNITS:
        for scene in every_scene(file, units):
            for text in (scene.title, scene.caption, scene.description):
                assert not re.search(r"\d\s(?:kn|n|n·m|mpa)\b|nan|None|\binf\b", text), (scene.name, text)
                assert text.strip()[:1] == text[:1] != ""

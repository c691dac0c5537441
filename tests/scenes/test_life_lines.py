"""Lines of life: on an axis of ratios, dashed where the life formula does not hold, never a life alone."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hubwright.results import described_wheels, solve
from hubwright.results.life_curves import against_lateral_g
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.scenes.life_lines import life_against_lateral_g, life_against_load_line
from hubwright.scenes.vocabulary import Curve, Part
from hubwright.setup import load
from hubwright.setup.model import Setup
from scene_checks import check_scene
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
VEHICLES = ("hill-wagon", "supply-van", "kit-trailer")
NAMES = ("life against load line offset", "life against wheel load", "life against lateral g")
SLOW = settings(max_examples=8, deadline=None, suppress_health_check=list(HealthCheck))


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("name", NAMES)
def test_the_demonstration_has_its_figures(vehicle: str, name: str) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    for units in ("si", "us"):
        scene = scene_function(name)(results, units=units)
        check_scene(scene)
        for words in (scene.title, scene.caption, scene.description):
            assert "revolutions" not in words
            assert " km " not in words


@given(chosen=setups(), data=st.data())
@SLOW
def test_every_valid_setup_has_its_figures(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    name = data.draw(st.sampled_from(NAMES))
    if FIGURES[name].cases(results):
        check_scene(scene_function(name)(results, units=data.draw(st.sampled_from(("si", "us")))))


def test_what_lies_outside_the_range_is_dashed() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    curves = against_lateral_g(results)
    outer = curves.curves[0]
    limit = curves.x[outer.valid].max()
    drawn = [
        item
        for item in life_against_lateral_g(results).items
        if isinstance(item, Curve) and item.name.startswith("curve-outer")
    ]
    assert [item.dashed for item in drawn] == [False, True]
    assert drawn[0].points[-1][0] == pytest.approx(limit)
    assert not outer.valid[-1]


def test_a_span_that_holds_one_settles_nothing() -> None:
    scene = life_against_load_line(solve(load(CONTENT / "vehicles/supply-van.toml")))
    assert "these data do not settle" in scene.title


def test_ranges_make_a_span_that_the_caption_explains() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    scene = life_against_lateral_g(results)
    assert any(isinstance(item, Part) and item.name == "part-span" for item in scene.items)
    assert "Grey" in scene.caption

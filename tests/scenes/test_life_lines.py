"""Lines of life: on an axis of ratios, dashed where the life formula does not hold, never a life alone."""

import math
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hubwright.drawing import draw
from hubwright.results import described_wheels, solve
from hubwright.results.life_curves import against_lateral_g
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.scenes.life_lines import life_against_lateral_g, life_against_load_line, life_against_wheel_load
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


def test_a_band_that_the_line_hides_is_not_promised() -> None:
    scene = life_against_wheel_load(solve(load(CONTENT / "vehicles/supply-van.toml")))
    band = next(item for item in scene.items if isinstance(item, Part) and item.name == "part-span")
    line = next(item for item in scene.items if isinstance(item, Curve) and item.name.startswith("curve-duty"))
    view = scene.view("plot")
    upper, lower = band.rings[0][: len(band.rings[0]) // 2], band.rings[0][len(band.rings[0]) // 2 :]
    wide = max(view.on_sheet(a)[1] - view.on_sheet(b)[1] for a, b in zip(upper, reversed(lower), strict=True))
    assert wide < line.width
    assert "Grey" not in scene.caption
    assert "Narrower than the thick line: its span" in scene.caption


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("name", NAMES)
def test_no_curve_shows_its_pieces(vehicle: str, name: str) -> None:
    scene = scene_function(name)(solve(load(CONTENT / f"vehicles/{vehicle}.toml")))
    view = scene.view("plot")
    for curve in (item for item in scene.items if isinstance(item, Curve)):
        points = [view.on_sheet(point) for point in curve.points]
        for (x0, y0), (x1, y1), (x2, y2) in zip(points, points[1:], points[2:], strict=False):
            off = abs((x2 - x0) * (y1 - y0) - (y2 - y0) * (x1 - x0)) / math.hypot(x2 - x0, y2 - y0)
            assert off < 0.4  # of two pieces from one: less than half of what the thick line is wide


def test_the_word_at_the_standing_point_keeps_off_the_ordinate() -> None:
    scene = life_against_lateral_g(solve(load(CONTENT / "vehicles/kit-trailer.toml")))
    box = next(text.box for text in draw(scene).texts if text.name == "label-own")
    assert box[0] > scene.view("plot").on_sheet((0.0, 0.0))[0]

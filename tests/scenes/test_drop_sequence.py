"""A drop in three instants: wheel and body where the course has them, at one scale."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from dropped import CONTENT, DROPPED, demonstration, drops
from hubwright.drawing import draw
from hubwright.errors import MissingDataError
from hubwright.quantities import format_quantity
from hubwright.results import Results, solve
from hubwright.results.drops import drop_history
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.drop_sequence import drop_sequence, instants
from hubwright.scenes.quarter_car import quarter_car_items
from hubwright.scenes.vocabulary import Callout, Damper, Note, Part, Spring, View
from hubwright.setup import load, vary
from scene_checks import SLOW, check_scene, check_written_scales, is_round


@given(results=drops(), units=st.sampled_from(("si", "us")))
@SLOW
def test_every_drop_has_its_figure(results: Results, units) -> None:
    scene = drop_sequence(results, units=units)
    check_scene(scene)
    assert is_round(scene.view("deepest").newtons_per_mm or 0.0)


@pytest.mark.parametrize("file", DROPPED)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn_to_scale(file: str, units) -> None:
    scene = drop_sequence(demonstration(file), units=units)
    check_scene(scene)
    assert check_written_scales(scene) >= 4


def test_the_tire_is_squeezed_by_its_force_over_its_stiffness() -> None:
    # hill wagon: 260 N/mm; what is missing of the circle's radius below the axle is the deflection
    history = drop_history(demonstration(DROPPED[0]), "drop off a rock")
    deepest = instants(history)[1]
    assert deepest.wheel == pytest.approx(deepest.tire / 260.0)
    assert deepest.body == pytest.approx(history.body_travel.max() * 1e3)


def test_nothing_is_drawn_below_the_road() -> None:
    scene = drop_sequence(demonstration(DROPPED[0]))
    parts = [item for item in scene.items if isinstance(item, Part)]
    assert min(point[1] for part in parts for ring in part.rings for point in ring) >= 0.0


def test_springs_and_dampers_reach_from_the_wheel_to_the_body() -> None:
    results = demonstration(DROPPED[0])
    scene = drop_sequence(results)
    radius = results.wheel_geometry.free_diameter * 500.0
    for instant in instants(drop_history(results, "drop off a rock")):
        (foot,) = {
            min(z for _, z in part.rings[0])
            for part in scene.items
            if isinstance(part, Part) and part.name == f"part-body-{instant.name}"
        }
        for item in scene.items:
            if isinstance(item, Spring | Damper) and item.view == instant.name:
                assert (item.start[1], item.end[1]) == pytest.approx((radius - instant.wheel, foot))


def test_the_model_says_what_the_drop_is_computed_with() -> None:
    scene = drop_sequence(demonstration(DROPPED[0]))
    said = {item.label.lines for item in scene.items if isinstance(item, Note) and item.view == "model"}
    assert ("tire", "260\u00a0N/mm") in said  # content/vehicles/hill-wagon.toml
    assert ("bump stop", "200\u00a0N/mm") in said
    assert len(said) == 6


def test_the_bump_stop_hangs_from_the_body_with_a_gap_to_the_wheel() -> None:
    scene = drop_sequence(demonstration(DROPPED[0]))
    parts = {item.name: item.rings[0] for item in scene.items if isinstance(item, Part) and item.view == "model"}
    stop, wheel, body = (parts[f"part-model-{name}"] for name in ("bump-stop", "wheel", "body"))
    assert max(z for _, z in stop) == min(z for _, z in body)
    assert min(z for _, z in stop) > max(z for _, z in wheel) + 5.0


def test_a_car_without_a_bump_stop_shows_none() -> None:
    results = demonstration(DROPPED[0])
    car = drop_history(results, "drop off a rock").car
    view = View("model", (0.0, 0.0), 1.0)
    names = {item.name for item in quarter_car_items(replace(car, bump_stop_stiffness=0.0), view, "si")}
    assert "part-model-bump-stop" not in names
    assert "part-model-body" in names


def test_what_the_bump_stop_does_is_said_with_its_travel() -> None:
    results = demonstration(DROPPED[0])
    history = drop_history(results, "drop off a rock")
    scene, deepest = drop_sequence(results), instants(history)[1]
    # 200 N/mm beyond 80 mm from standing; of the strut's force spring and damper give the rest
    place = int(np.argmax(history.body_travel))
    past = history.compression[place] * 1e3 - (508.0 * 9.80665 / 28.0 + 80.0)
    assert deepest.bump_stop == pytest.approx(200.0 * past)
    spring = history.compression[place] * 28e3
    assert history.strut_force[place] - spring - deepest.bump_stop == pytest.approx(0.0, abs=0.05 * spring)
    force = format_quantity(deepest.bump_stop, "force", "si")
    told = f"Beyond 80\u00a0mm of travel from standing the bump stop pushes too, at the deepest with {force}."
    assert told in scene.caption
    assert told in scene.description
    assert scene.steps[1].sentence.endswith(f", the bump stop {force}.")


def test_a_bump_stop_out_of_reach_is_said_to_be() -> None:
    longer = solve(vary(load(CONTENT / DROPPED[0]), {"suspension.bump_travel": "300 mm"}))
    caption = drop_sequence(longer).caption
    assert "The bump stop, which begins at 300\u00a0mm of travel from standing, is not met." in caption


@pytest.mark.parametrize("units", ["si", "us"])
def test_the_load_of_the_bearing_stands_within_the_wheel(units) -> None:
    results = demonstration(DROPPED[0])
    scene = drop_sequence(results, units=units)
    for instant in ("deepest", "rebound"):
        wheel = next(item for item in scene.items if isinstance(item, Part) and item.name == f"part-wheel-{instant}")
        edge = np.array([scene.view(instant).on_sheet(point) for point in wheel.rings[0]])
        (box,) = (text.box for text in draw(scene).texts if text.name == f"label-reaction-bearing-{instant}")
        assert edge[:, 0].min() < box[0] < box[2] < edge[:, 0].max()
        assert edge[:, 1].min() < box[1] < box[3] < edge[:, 1].max()


def test_a_tire_on_its_rim_is_remarked_at_its_place() -> None:
    results = demonstration(DROPPED[0])
    history = drop_history(results, "drop off a rock")
    remarks = [item for item in drop_sequence(results).items if isinstance(item, Callout)]
    assert bool(remarks) == history.tire_on_rim


def test_without_springs_there_is_none() -> None:
    trailer = demonstration("vehicles/kit-trailer.toml")
    with pytest.raises(MissingDataError, match="suspension"):
        drop_sequence(trailer)
    assert FIGURES["drop sequence"].cases(trailer) == []

"""Forces of a drop over time: drawn to scale, beside the closed form of the bound, and honest about the rim."""

import math

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from dropped import DROPPED, demonstration, drops
from hubwright.errors import CaseError, MissingDataError
from hubwright.results import Results
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.drop_history import drop_history_scene
from hubwright.scenes.vocabulary import Curve, Line, Scene
from scene_checks import check_scene

SLOW = settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
G = 9.80665  # standard gravity, CGPM 1901


def level(scene: Scene, name: str) -> float:
    return next(item for item in scene.items if isinstance(item, Line) and item.name == f"level-{name}").points[0][1]


def curve(scene: Scene, name: str) -> Curve:
    return next(item for item in scene.items if isinstance(item, Curve) and item.name == f"curve-{name}")


@given(results=drops(), units=st.sampled_from(("si", "us")))
@SLOW
def test_every_drop_has_its_figure(results: Results, units) -> None:
    scene = drop_history_scene(results, units=units)
    check_scene(scene)
    high = max(point[1] for item in scene.items if isinstance(item, Curve) for point in item.points)
    assert scene.view("forces over time").on_sheet((0.0, high))[1] < scene.size[1]


@pytest.mark.parametrize("file", DROPPED)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn(file: str, units) -> None:
    check_scene(drop_history_scene(demonstration(file), units=units))


def test_the_levels_are_the_closed_forms() -> None:
    # hill wagon: 260 N/mm; 0.6 of 0.75 × 245 mm before the rim; W(1 + √(1 + 2 k s/W)) for the bound
    scene = drop_history_scene(demonstration("vehicles/hill-wagon.toml"))
    weight = 1120 * G / 2
    assert level(scene, "standing") == pytest.approx(weight)
    assert level(scene, "rim") == pytest.approx(260e3 * 0.6 * 0.75 * 0.245)
    assert level(scene, "bound") == pytest.approx(weight * (1 + math.sqrt(1 + 2 * 260e3 * 0.15 / weight)))


def test_the_tire_pushes_before_the_bearing_and_never_pulls() -> None:
    scene = drop_history_scene(demonstration("vehicles/hill-wagon.toml"))
    tire, bearing = curve(scene, "tire").points, curve(scene, "bearing").points
    assert min(force for _, force in tire) >= 0
    assert max(tire, key=lambda point: point[1])[0] < max(bearing, key=lambda point: point[1])[0]
    assert max(force for _, force in bearing) < max(force for _, force in tire)


def test_without_springs_the_reason_is_given() -> None:
    trailer = demonstration("vehicles/kit-trailer.toml")
    with pytest.raises(MissingDataError, match="suspension"):
        drop_history_scene(trailer)
    assert FIGURES["drop history"].cases(trailer) == []


def test_another_case_is_refused() -> None:
    with pytest.raises(CaseError, match="a drop"):
        drop_history_scene(demonstration("vehicles/hill-wagon.toml"), case="firm braking")

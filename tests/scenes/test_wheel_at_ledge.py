"""A wheel at a ledge: the triangle closes on the sheet, the push is what the lever rule about the edge says."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dropped import demonstration
from hubwright.drawing import draw
from hubwright.drawing.closure import left_over
from hubwright.errors import CaseError
from hubwright.results import solve
from hubwright.scenes.vocabulary import Force, Part, Scene
from hubwright.scenes.wheel_at_ledge import AtLedge, wheel_at_ledge
from scene_checks import SLOW, check_scene, check_written_scales, is_round
from strategies import built, setup_data

FILES = ("vehicles/hill-wagon.toml", "setups/winter-fit-out.toml")


def forces(scene: Scene) -> dict[str, Force]:
    return {item.name: item for item in scene.items if isinstance(item, Force)}


@given(data=setup_data(rows_known=False), height=st.floats(1.0, 250.0), units=st.sampled_from(("si", "us")))
@SLOW
def test_every_ledge_has_its_figure(data, height: float, units) -> None:
    data["case"] = [{"name": "step", "kind": "ledge", "height": f"{height:.1f} mm"}]
    data.pop("duty", None)
    scene = wheel_at_ledge(solve(built(data)), units=units)
    check_scene(scene)
    assert is_round(scene.view("wheel").newtons_per_mm or 0.0)


@pytest.mark.parametrize("file", FILES)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn_to_scale(file: str, units) -> None:
    scene = wheel_at_ledge(demonstration(file), units=units)
    check_scene(scene)
    assert check_written_scales(scene) >= 8


@pytest.mark.parametrize("file", [*FILES, "vehicles/supply-van.toml", "vehicles/kit-trailer.toml"])
@pytest.mark.parametrize("units", ["si", "us"])
def test_words_stand_within_the_rim_or_beside_the_tire(file: str, units) -> None:
    scene = wheel_at_ledge(demonstration(file), units=units)
    view = scene.view("wheel")
    tire = next(item for item in scene.items if isinstance(item, Part) and item.name == "part-tire")
    outer, inner = (max(math.hypot(*point) for point in ring) * view.scale for ring in tire.rings)
    for text in draw(scene).texts:
        x0, y0, x1, y1 = text.box
        dx, dy = (
            max(low - at, 0.0, at - high) for low, high, at in ((x0, x1, view.origin[0]), (y0, y1, view.origin[1]))
        )
        corners = [math.dist(view.origin, (x, y)) for x in (x0, x1) for y in (y0, y1)]
        assert math.hypot(dx, dy) > outer or max(corners) < inner, text.words


def test_the_triangle_closes_on_the_sheet_head_to_tail() -> None:
    scene = wheel_at_ledge(demonstration(FILES[0]))
    drawn, view = forces(scene), scene.view("triangle")
    assert view.newtons_per_mm is not None
    per_newton = 1 / view.newtons_per_mm / view.scale
    at = (0.0, 0.0)
    for name in ("force-load-again", "force-push-again", "reaction-edge-again"):
        force = drawn[name]
        assert force.at == pytest.approx(at, abs=1e-6)
        at = force.at[0] + force.vector[0] * per_newton, force.at[1] + force.vector[1] * per_newton
    assert at == pytest.approx((0.0, 0.0), abs=1e-6)


def test_the_body_closes_and_the_push_is_that_of_the_lever_about_the_edge() -> None:
    # about the edge: push × (R − s) = load × √(2 R s − s²), any text on engineering statics
    results = demonstration(FILES[0])
    at = AtLedge.of(results, results.cases["stone ledge"])
    force, moment, largest, largest_moment = left_over(at.closed())
    assert force <= 1e-9 * largest
    assert moment <= 1e-9 * largest_moment
    lever = math.sqrt(2 * at.radius * at.height - at.height**2)
    assert at.push * (at.radius - at.height) == pytest.approx(at.load * lever)
    assert at.load == pytest.approx(1120 * 9.80665 / 2)


def test_other_cases_are_refused() -> None:
    with pytest.raises(CaseError, match="ledge"):
        wheel_at_ledge(demonstration(FILES[0]), case="standing")

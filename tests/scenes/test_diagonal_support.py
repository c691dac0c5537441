"""Two diagonal wheels: the lever off the line, the third wheel's share, and a body that closes."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dropped import demonstration
from hubwright.drawing.arrows import NORMAL_RADIUS
from hubwright.drawing.closure import left_over
from hubwright.drawing.marks import Shape, flat
from hubwright.errors import CaseError
from hubwright.results import solve
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.diagonal_support import diagonal_support
from hubwright.scenes.diagonal_support_words import OnTwo
from hubwright.scenes.vocabulary import AngularDimension, Dimension, Force, Line, Normal, Scene
from hubwright.setup import vary
from scene_checks import SLOW, check_scene, check_written_scales, drawn
from strategies import built, setup_data

FILES = ("vehicles/hill-wagon.toml", "setups/winter-fit-out.toml", "setups/summer-fit-out.toml")


@given(
    data=setup_data(kinds=("vehicle",), rows_known=False),
    pair=st.sampled_from(("front_left+rear_right", "front_right+rear_left")),
    units=st.sampled_from(("si", "us")),
)
@SLOW
def test_every_diagonal_has_its_figure(data, pair: str, units) -> None:
    data["case"] = [{"name": "diagonal", "kind": "two_wheel", "supported": pair}]
    data.pop("duty", None)
    scene = diagonal_support(solve(built(data)), units=units)
    check_scene(scene)
    assert scene.body is not None
    force, moment, largest, largest_moment = left_over(scene.body)
    assert force <= 1e-9 * largest
    assert moment <= 1e-9 * largest_moment


@pytest.mark.parametrize("file", FILES)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn(file: str, units) -> None:
    check_scene(diagonal_support(demonstration(file), units=units))


def test_lever_and_third_wheel_are_those_of_the_rectangle() -> None:
    # 2.78 m by 1.60 m; centre of mass 2.78 × 1010/2130 behind the front axle, in the middle. Its lever about the
    # diagonal is 1.60/√(2.78² + 1.60²) of how far it stands ahead of the middle; the third wheel's is 2.78 of the same.
    results = demonstration(FILES[0])
    on = OnTwo.of(results, results.cases["on two wheels"])
    ahead = 2.78 / 2 - 2.78 * 1010 / 2130
    diagonal = math.hypot(2.78, 1.60)
    assert on.off_line == pytest.approx(1e3 * ahead * 1.60 / diagonal)
    assert on.third == "front_right"
    assert on.load("front_right") == pytest.approx(on.weight * ahead / 2.78)


def dimension(scene: Scene, name: str) -> Dimension:
    return next(item for item in scene.items if isinstance(item, Dimension) and item.name == name)


def test_the_detail_enlarges_the_lever_to_scale() -> None:
    results = demonstration(FILES[0])
    scene = diagonal_support(results)
    on = OnTwo.of(results, results.cases["on two wheels"])
    lever = dimension(scene, "dimension-off-line")
    assert abs(lever.end[0] - lever.start[0]) == pytest.approx(on.off_line)
    assert scene.view("detail").scale > 20 * scene.view("above").scale
    # two dimensions, weight and the wheels on the line; what is left for the third may be too little to see
    third = next(item for item in scene.items if item.name == "reaction-third")
    assert isinstance(third, Force)
    assert check_written_scales(scene) == (5 if third.to_scale else 4)


def test_seen_along_the_line_the_moments_about_it_balance() -> None:
    # 1.60 m by 2.78 m: the other two wheels stand 1.60 × 2.78/diagonal from the line
    scene = diagonal_support(demonstration(FILES[0]))
    forces = {item.name: item for item in scene.items if isinstance(item, Force)}
    assert sum(force.vector[1] for force in forces.values()) == pytest.approx(0.0, abs=1e-6)
    about = sum(force.at[0] * force.vector[1] for force in forces.values())
    assert about == pytest.approx(0.0, abs=1e-6 * 1e7)
    third = dimension(scene, "dimension-third")
    assert abs(third.end[0] - third.start[0]) == pytest.approx(1e3 * 1.60 * 2.78 / math.hypot(1.60, 2.78))


@pytest.mark.parametrize("units", ["si", "us"])
@pytest.mark.parametrize("file", FILES)
def test_the_third_wheel_has_one_number(file: str, units) -> None:
    scene = diagonal_support(demonstration(file), units=units)
    labels = {item.name: item.label for item in scene.items if isinstance(item, Force | Normal)}
    along = labels["reaction-third"]
    assert along is not None
    number = along.lines[0].removeprefix("*")
    plan = [label for label in labels.values() if label is not None and label.lines[0] == f"*{number}"]
    assert len(plan) == 2
    for text in (scene.title, scene.description, scene.steps[3].sentence):
        assert f"takes {number}" in text


def test_leaders_leave_dots_and_crosses_whole() -> None:
    scene = diagonal_support(demonstration(FILES[0]))
    view, groups = scene.view("above"), {group.name: group for group in drawn(scene).groups()}
    rings = [item for item in scene.items if isinstance(item, Normal) and item.view == "above" and item.newtons]
    assert len(rings) == 4
    for ring in rings:
        leader = next(flat(groups[f"label-{ring.name}"].children))
        assert isinstance(leader, Shape)
        assert math.dist(leader.rings[0][-1], view.on_sheet(ring.at)) >= NORMAL_RADIUS - 1e-6


def test_the_line_of_support_is_geometry_and_rings_are_explained() -> None:
    scene = diagonal_support(demonstration(FILES[0]))
    lines = [item for item in scene.items if isinstance(item, Line) and item.name.startswith("support-line")]
    assert [line.tone for line in lines] == ["ink", "ink"]
    assert "the line, which joins the two wheels" in scene.caption
    assert "A dot in a ring points at you, a cross away." in scene.caption


def test_the_tilt_is_the_angle_that_is_drawn() -> None:
    results = demonstration(FILES[0])
    scene = diagonal_support(results)
    tilt = next(item for item in scene.items if isinstance(item, AngularDimension))
    on = OnTwo.of(results, results.cases["on two wheels"])
    assert math.atan2(abs(tilt.end[0]), tilt.end[1]) == pytest.approx(float(on.found.tipping_angle))
    assert tilt.start[0] == 0.0


def test_a_centre_of_mass_on_the_line_needs_no_third_wheel() -> None:
    level = {"chassis.front_axle_mass": "1000 kg", "chassis.rear_axle_mass": "1000 kg"}
    scene = diagonal_support(solve(vary(demonstration(FILES[0]).setup, level)))
    check_scene(scene)
    assert "lies over the line" in scene.title
    assert not [item for item in scene.items if isinstance(item, Dimension | AngularDimension)]


def test_cases_on_four_wheels_and_trailers_have_none() -> None:
    with pytest.raises(CaseError, match="two diagonal wheels"):
        diagonal_support(demonstration(FILES[0]), case="standing")
    assert FIGURES["diagonal support"].cases(demonstration("vehicles/kit-trailer.toml")) == []

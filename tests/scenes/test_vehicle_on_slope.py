"""A vehicle across a slope: its weight's line, plumb forces, a static angle that never goes without its warning."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dropped import demonstration
from hubwright.drawing import draw
from hubwright.drawing.closure import left_over
from hubwright.errors import CaseError
from hubwright.results import solve
from hubwright.scenes.on_slope import OnSlope
from hubwright.scenes.vehicle_on_slope import vehicle_on_slope
from hubwright.scenes.vocabulary import Dot, Force, Line, Note
from scene_checks import SLOW, check_scene, is_round
from strategies import built, setup_data

VEHICLES = ("vehicles/hill-wagon.toml", "vehicles/supply-van.toml", "vehicles/kit-trailer.toml")


@given(
    data=setup_data(rows_known=False),
    angle=st.floats(0.5, 12.0),
    uphill=st.sampled_from(("left", "right")),
    units=st.sampled_from(("si", "us")),
)
@SLOW
def test_every_slope_has_its_figure(data, angle: float, uphill: str, units) -> None:
    data["case"] = [{"name": "slope", "kind": "side_slope", "angle": f"{angle:.2f} deg", "uphill": uphill}]
    data.pop("duty", None)
    scene = vehicle_on_slope(solve(built(data)), units=units)
    check_scene(scene)
    assert is_round(scene.view("slope").newtons_per_mm or 0.0)


@pytest.mark.parametrize("file", VEHICLES)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn(file: str, units) -> None:
    results = demonstration(file)
    for case in (name for name, state in results.cases.items() if state.kind == "side_slope"):
        check_scene(vehicle_on_slope(results, case=case, units=units))


def test_all_forces_are_plumb_and_close() -> None:
    results = demonstration(VEHICLES[0])
    scene = vehicle_on_slope(results, case="cross slope left")
    forces = [item for item in scene.items if isinstance(item, Force)]
    largest = max(abs(force.vector[1]) for force in forces)
    assert sum(force.vector[1] for force in forces) == pytest.approx(0.0, abs=1e-9 * largest)
    assert all(force.vector[0] == 0.0 for force in forces)
    # about any point of the sheet
    turned = sum(force.at[0] * force.vector[1] for force in forces)
    assert turned == pytest.approx(0.0, abs=1e-6 * largest * 1e3)
    assert scene.body is not None
    force, moment, biggest, biggest_moment = left_over(scene.body)
    assert force <= 1e-9 * biggest
    assert moment <= 1e-9 * biggest_moment


def test_what_is_left_and_the_static_angle_are_those_of_the_triangle() -> None:
    # half the track 0.8 m over 0.69 m: tan φ = 1.159; level distance left = 0.8 cos 15° − 0.69 sin 15°
    results = demonstration(VEHICLES[0])
    on = OnSlope.of(results, results.cases["cross slope left"])
    assert on.tipping == pytest.approx(math.atan(0.8 / 0.69))
    assert on.spare == pytest.approx(800 * math.cos(math.radians(15)) - 690 * math.sin(math.radians(15)))


def test_the_angle_never_goes_without_its_warning() -> None:
    scene = vehicle_on_slope(demonstration(VEHICLES[0]))
    assert "tips well before" in scene.caption
    assert "Not a driving limit" in scene.caption
    assert "tips well before" in scene.description


def test_other_cases_are_refused() -> None:
    with pytest.raises(CaseError, match="across a slope"):
        vehicle_on_slope(demonstration(VEHICLES[0]), case="standing")


def demonstrated(units):
    for file in VEHICLES:
        results = demonstration(file)
        for case in (name for name, state in results.cases.items() if state.kind == "side_slope"):
            yield results, vehicle_on_slope(results, case=case, units=units)


def lines_of(scene) -> list[str]:
    labels = [item.label for item in scene.items if isinstance(item, Force | Note) and item.label is not None]
    return [line for label in labels for line in label.lines]


@pytest.mark.parametrize("units", ["si", "us"])
def test_the_words_of_the_slope_stand_clear_of_its_level_line(units) -> None:
    for _, scene in demonstrated(units):
        view = scene.view("slope")
        (level,) = [item for item in scene.items if isinstance(item, Line) and item.name == "line-level"]
        (start, height), (end, _) = (view.on_sheet(point) for point in level.points)
        (box,) = [text.box for text in draw(scene).texts if text.words.startswith("φ")]
        within = min(start, end) < box[2] and box[0] < max(start, end)
        assert not (within and box[1] < height < box[3]), (box, start, end, height)


def test_every_force_of_the_road_has_a_symbol_and_is_told_as_normal_force_and_friction() -> None:
    for results, scene in demonstrated("si"):
        coupled = results.setup.kind == "trailer"
        symbols = {line.split(" =")[0].lstrip("*") for line in lines_of(scene) if line.lstrip("*").startswith("{F|")}
        assert symbols == {"{F|downhill}", "{F|uphill}"} | ({"{F|coupling}"} if coupled else set())
        for text in (scene.caption, scene.description):
            assert "normal force and friction together" in text
        assert ("coupling" in scene.key[1].text) == coupled


def test_points_and_lines_are_named_where_they_are_drawn_and_in_the_caption() -> None:
    for results, scene in demonstrated("si"):
        case = next(state for name, state in results.cases.items() if state.kind == "side_slope")
        on = OnSlope.of(results, case)
        dots = {item.name: item for item in scene.items if isinstance(item, Dot)}
        assert abs(dots["point-A"].at[0] - dots["point-B"].at[0]) == pytest.approx(on.spare)
        assert {"*A", "*B"} <= set(lines_of(scene))
        for word in (" A,", " B;", "slanting line"):
            assert word in scene.caption


def test_the_text_alternative_tells_what_stands_there_and_which_wheel_lifts_first() -> None:
    wagon, _, trailer = (demonstration(file) for file in VEHICLES)
    scene = vehicle_on_slope(wagon, case="cross slope right")
    assert scene.description.startswith("Hill wagon from the rear")
    assert "The right front wheel lifts first, at about" in scene.description
    assert "The right front wheel lifts first, at about" in scene.steps[-1].sentence
    pulled = vehicle_on_slope(trailer, case="cross slope right")
    assert pulled.description.startswith("Kit trailer from the rear")
    assert "vehicle" not in pulled.description + pulled.caption
    assert "The coupling holds it up with" in pulled.description
    assert "lifts first" not in pulled.description  # one wheel on each side


@pytest.mark.parametrize("file", VEHICLES[::2])
@pytest.mark.parametrize("case", ["cross slope left", "cross slope right"])
def test_the_letter_at_the_contact_stands_over_the_road(file: str, case: str) -> None:
    results = demonstration(file)
    scene = vehicle_on_slope(results, case=case)
    view, on = scene.view("slope"), OnSlope.of(results, results.cases[case])
    (box,) = (text.box for text in draw(scene).texts if text.words == "A")
    x, y = view.on_sheet(on.contact)
    uphill = on.downhill * ((box[0] + box[2]) / 2 - x)  # so far from the contact, on the sheet
    assert box[1] > y + uphill * math.tan(on.angle) + 1.0  # the level line and the head of the force lie below
    assert abs(uphill) < 8.0


def test_a_coupling_is_told_to_be_taken_at_the_height_of_the_road() -> None:
    told = "The coupling is taken at the height of the road."
    trailer = vehicle_on_slope(demonstration(VEHICLES[2]))
    assert told in trailer.caption
    assert told in trailer.description
    assert told not in vehicle_on_slope(demonstration(VEHICLES[0])).caption

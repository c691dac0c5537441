"""Where an owner measures: every line has its own name, every number its room, and the face that is meant is shown."""

from dataclasses import replace

import pytest

from dropped import CONTENT
from hubwright.drawing import draw
from hubwright.results import Results, solve
from hubwright.scenes.measuring_gear import measuring_gear
from hubwright.scenes.measuring_hub import measuring_hub
from hubwright.scenes.measuring_lengths import measuring_lengths
from hubwright.scenes.measuring_springs import measuring_springs
from hubwright.scenes.measuring_tire import measuring_tire
from hubwright.scenes.measuring_weights import measuring_weights
from hubwright.scenes.measuring_wheel import measuring_wheel
from hubwright.scenes.vocabulary import Dimension, Force, Ground, Line, Note, Part, Scene
from hubwright.setup import load
from hubwright.setup.model import Gear
from scene_checks import check_scene

VEHICLES = ("hill-wagon", "supply-van", "kit-trailer")


def solved(vehicle: str) -> Results:
    return solve(load(CONTENT / f"vehicles/{vehicle}.toml"))


def notes(scene: Scene) -> dict[str, Note]:
    return {item.name: item for item in scene.items if isinstance(item, Note)}


@pytest.mark.parametrize("units", ["si", "us"])
@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van"])
def test_every_arch_has_its_own_name_in_its_own_tone(vehicle: str, units) -> None:
    scene = measuring_springs(solved(vehicle), units=units)
    check_scene(scene)
    arches = [item for item in scene.items if isinstance(item, Line) and item.name.startswith("arch-")]
    named = {(note.view, note.label.anchor): note.label for note in notes(scene).values()}
    assert len(arches) == len(named) == 5
    for arch in arches:
        label = next(named[arch.view, end] for end in (arch.points[0], arch.points[-1]) if (arch.view, end) in named)
        assert label.tone == arch.tone
    people = "two" if vehicle == "hill-wagon" else "three"
    assert notes(scene)[f"label-loaded-with-{people}-people"].label.tone == "changed"


@pytest.mark.parametrize("units", ["si", "us"])
@pytest.mark.parametrize("vehicle", VEHICLES)
def test_backspacing_is_written_over_the_floor_and_under_the_straightedge(vehicle: str, units) -> None:
    scene = measuring_wheel(solved(vehicle), units=units)
    check_scene(scene)
    floor, edge = (scene.view("wheel").on_sheet((0.0, height))[1] for height in (0.0, _straightedge(scene)[0]))
    drawn = [text.box for text in draw(scene).texts if "backspacing" in text.name]
    assert drawn
    assert all(floor < box[1] and box[3] < edge for box in drawn)


def test_the_straightedge_is_named_from_inside() -> None:
    scene = measuring_wheel(solved("hill-wagon"))
    anchor = notes(scene)["label-straightedge"].label.anchor
    low, high = _straightedge(scene)
    assert anchor is not None
    assert low + 5.0 < anchor[1] < high - 5.0


def _straightedge(scene: Scene) -> tuple[float, float]:
    part = next(item for item in scene.items if isinstance(item, Part) and item.name == "part-straightedge")
    heights = [z for _, z in part.rings[0]]
    return min(heights), max(heights)


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_a_disc_between_flange_and_wheel_is_named_and_counted(vehicle: str) -> None:
    results = solved(vehicle)
    scene = measuring_hub(results)
    hats = [item for item in scene.items if isinstance(item, Part) and item.name.startswith("part-hat")]
    assert bool(hats) == ("label-disc" in notes(scene)) == ("with the brake disc in place" in scene.caption)
    assert bool(hats) == (vehicle != "kit-trailer")
    measured = next(item for item in scene.items if isinstance(item, Dimension) and item.name == "dimension-face")
    face = results.side * results.setup.hub.face_to_bearing_centre * 1e3
    assert face == pytest.approx(measured.start[0] or measured.end[0])
    for hat in hats:
        assert max(abs(y) for y, _ in hat.rings[0]) == pytest.approx(abs(face))  # the disc's face is the one meant
        assert hat.hatch is not None  # it is cut


def _boxes(scene: Scene, part: str) -> list[tuple[float, float, float, float]]:
    boxes = [text.box for text in draw(scene).texts if part in text.name]
    assert boxes
    return boxes


def _struck(scene: Scene, box: tuple[float, float, float, float]) -> list[str]:
    """Level lines that run through a box on the sheet."""
    lines = [item for item in scene.items if isinstance(item, Line) and item.points[0][1] == item.points[-1][1]]
    found = []
    for line in lines:
        (x0, y), (x1, _) = (scene.view(line.view).on_sheet(point) for point in (line.points[0], line.points[-1]))
        if box[1] < y < box[3] and min(x0, x1) < box[2] and max(x0, x1) > box[0]:
            found.append(line.name)
    return found


@pytest.mark.parametrize("units", ["si", "us"])
@pytest.mark.parametrize("vehicle", VEHICLES)
def test_no_centre_line_runs_through_the_words_of_a_dimension(vehicle: str, units) -> None:
    results = solved(vehicle)
    for scene, words in (
        (measuring_wheel(results, units=units), "backspacing"),
        (measuring_hub(results, units=units), "dimension-outside"),
    ):
        for box in _boxes(scene, words):
            assert _struck(scene, box) == []


def keyed(scene: Scene) -> list[str]:
    """What the key of a phone says."""
    return [" ".join(entry.lines) for drawing in draw(scene, form="narrow") for entry in drawing.balloons]


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_the_backspacing_is_one_entry_of_the_key_with_name_and_number(vehicle: str) -> None:
    (named,) = [told for told in keyed(measuring_wheel(solved(vehicle))) if "backspacing" in told]
    assert named.startswith("backspacing ")
    assert named.endswith("mm")


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_mounting_face_and_middle_of_the_rim_are_named_at_the_ends_of_their_lines(vehicle: str) -> None:
    scene = measuring_wheel(solved(vehicle))
    offset = next(item for item in scene.items if isinstance(item, Dimension) and item.name == "dimension-offset")
    for name in ("mounting-face", "rim-middle"):
        note = notes(scene)[f"label-{name}"]
        assert not note.label.place.endswith("column")  # whose leader would run along the line
        (box,) = _boxes(scene, note.name)
        assert note.label.anchor is not None
        height = scene.view("wheel").on_sheet(note.label.anchor)[1]
        assert offset.line_at < box[0] < offset.line_at + 4.0
        assert box[1] - 1.0 < height < box[3] + 1.0


@pytest.mark.parametrize("units", ["si", "us"])
@pytest.mark.parametrize("vehicle", VEHICLES)
def test_the_ground_goes_on_to_the_line_of_every_height_from_it(vehicle: str, units) -> None:
    results = solved(vehicle)
    for scene, name in (
        (measuring_gear(results, units=units), "dimension-height"),
        (measuring_lengths(results, units=units), "dimension-centre-of-mass"),
        (measuring_tire(results, units=units), "dimension-loaded-radius"),
    ):
        check_scene(scene)
        height = next(item for item in scene.items if isinstance(item, Dimension) and item.name == name)
        view = scene.view(height.view)
        floor = next(item for item in scene.items if isinstance(item, Ground) and item.view == height.view)
        ends = sorted(view.on_sheet(end)[0] for end in (floor.start, floor.end))
        assert height.start[1] == floor.start[1]
        if height.extension[0]:
            assert view.on_sheet(height.start)[0] in [pytest.approx(end) for end in ends]
        else:
            assert ends[0] <= height.line_at <= ends[1]


@pytest.mark.parametrize("units", ["si", "us"])
@pytest.mark.parametrize("vehicle", VEHICLES)
def test_the_loaded_radius_is_told_between_the_road_and_the_hub(vehicle: str, units) -> None:
    results = solved(vehicle)
    scene = measuring_tire(results, units=units)
    (box,) = _boxes(scene, "dimension-loaded-radius")
    view = scene.view("standing")
    assert view.on_sheet((0.0, 0.0))[1] < box[1]
    assert box[3] < view.on_sheet((0.0, results.wheel_geometry.loaded_radius * 1e3))[1]


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_gear_in_the_body_is_drawn_with_hidden_edges(vehicle: str) -> None:
    results = solved(vehicle)
    scene = measuring_gear(results)
    (rear,) = [item for item in scene.items if item.name == "part-item-rear"]
    assert isinstance(rear, Line)
    assert rear.style == "hidden"
    rack = Gear("Tool rack", 30.0, 6.0 if results.setup.kind == "vehicle" else 2.0, 0.0, 0.9)  # behind the tail
    behind = measuring_gear(solve(replace(results.setup, gear=(rack,))))
    assert isinstance(next(item for item in behind.items if item.name == "part-item-rear"), Part)


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_keys_name_what_they_measure_and_repeat_no_heading(vehicle: str) -> None:
    results = solved(vehicle)
    scenes = [measuring_gear(results), measuring_lengths(results), measuring_tire(results)]
    if results.setup.suspension is not None:
        scenes.append(measuring_springs(results))
    for scene in scenes:
        headings = {view.heading.lower() for view in scene.views}
        for text in keyed(scene):
            assert text.replace("*", "").lower() not in headings
            assert any(letter.isalpha() for letter in text.replace("mm", "").replace("m", "").replace("in", ""))


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_the_front_track_is_told_where_phones_show_it(vehicle: str) -> None:
    caption = measuring_lengths(solved(vehicle)).caption
    told = {"hill-wagon": "The front track is the same.", "supply-van": "The front track is 1.76\u00a0m."}
    assert caption.endswith(told.get(vehicle, "which is the same length."))


@pytest.mark.parametrize("units", ["si", "us"])
@pytest.mark.parametrize("vehicle", VEHICLES)
def test_a_push_of_the_scale_is_told_as_a_force_beside_what_the_scale_shows(vehicle: str, units) -> None:
    scene = measuring_weights(solved(vehicle), units=units)
    check_scene(scene)
    places = []
    for arrow in [item for item in scene.items if isinstance(item, Force)]:
        assert arrow.label is not None
        first, second = (line.replace("\u00a0", " ") for line in arrow.label.lines[:2])
        assert first.endswith(" kN" if units == "si" else " lbf")
        assert second.startswith("the scale shows ")
        assert second.endswith(" kg" if units == "si" else " lb")
        places.append(len(first.split(" ")[-2].partition(".")[2]))
    assert len(set(places)) == 1  # like digits
    sentences = scene.description.split(". ")
    assert all(sentence[0].isupper() for sentence in sentences)

"""Where an owner measures: every line has its own name, every number its room, and the face that is meant is shown."""

import pytest

from dropped import CONTENT
from hubwright.drawing import draw
from hubwright.results import Results, solve
from hubwright.scenes.measuring_hub import measuring_hub
from hubwright.scenes.measuring_springs import measuring_springs
from hubwright.scenes.measuring_wheel import measuring_wheel
from hubwright.scenes.vocabulary import Dimension, Line, Note, Part, Scene
from hubwright.setup import load
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

"""The steered axle before and after: levers, moment and track as geometry and a cross product have them."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from dropped import demonstration
from hubwright.drawing import draw
from hubwright.errors import CaseError, MissingDataError
from hubwright.results import Results, solve
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.scrub_radius import scrub_radius
from hubwright.scenes.vocabulary import Dimension, Force, Line, Moment, Note, Part, Scene
from hubwright.setup import vary
from scene_checks import SLOW, check_scene, check_written_scales, is_round
from strategies import built, setup_data

FILE = "vehicles/hill-wagon.toml"


@pytest.fixture(scope="module")
def wagon() -> Results:
    return demonstration(FILE)


def spaced(results: Results, spacer: str = "25 mm") -> Results:
    return solve(vary(results.setup, {"wheel.spacer": spacer}), results.wheel)


def dimensions(scene: Scene) -> dict[str, float]:
    return {item.name: abs(item.end[0] - item.start[0]) for item in scene.items if isinstance(item, Dimension)}


def moments(scene: Scene) -> dict[str, float]:
    return {item.name: item.newton_metres for item in scene.items if isinstance(item, Moment)}


def between_heads_and_forces(scene: Scene) -> float:
    """The least distance on the sheet between the head of an arc and a force that runs up beside it."""
    view = scene.view("above")
    arcs = [item for item in scene.items if isinstance(item, Moment)]
    heads = [arc.radius if arc.newton_metres > 0 else -arc.radius for arc in arcs]
    levers = [view.scale * item.at[0] for item in scene.items if isinstance(item, Force)]
    return min((abs(head - lever) for head in heads for lever in levers), default=99.0)


@given(
    data=setup_data(kinds=("vehicle",), rows_known=False),
    scrub=st.floats(-40.0, 60.0),
    spacer=st.floats(0.0, 60.0),
    arm=st.booleans(),
    units=st.sampled_from(("si", "us")),
)
@SLOW
def test_every_moved_load_line_has_its_figure(data, scrub: float, spacer: float, arm: bool, units) -> None:
    data["wheel_end"] = "front"
    data["case"] = [{"name": "stop", "kind": "braking", "braking_g": 0.1}]
    data.pop("duty", None)
    data["steering"] = {"scrub_radius": f"{scrub:.2f} mm", **({"steering_arm": "135 mm"} if arm else {})}
    results = solve(built(data))
    assume(results.wheel == "front_left")
    scene = scrub_radius(results, spaced(results, f"{spacer:.2f} mm"), units=units)
    check_scene(scene)
    assert is_round(scene.view("above").newtons_per_mm or 0.0)
    assert between_heads_and_forces(scene) > 1.9


@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn_to_scale(wagon: Results, units) -> None:
    for case in ("firm braking", "stone ledge"):
        scene = scrub_radius(wagon, spaced(wagon), case=case, units=units)
        check_scene(scene)
        assert check_written_scales(scene) >= 6


def test_levers_and_track_are_those_of_the_geometry(wagon: Results) -> None:
    # 8 mm and 25 mm more; the track grows by 25 mm on both sides
    drawn = dimensions(scrub_radius(wagon, spaced(wagon)))
    assert drawn["dimension-scrub-before"] == pytest.approx(8.0)
    assert drawn["dimension-scrub-after"] == pytest.approx(33.0)
    assert drawn["dimension-track-before"] == pytest.approx(1600.0)
    assert drawn["dimension-track-after"] == pytest.approx(1650.0)


@pytest.mark.parametrize("wheel", ["front_left", "front_right"])
@pytest.mark.parametrize("scrub", ["8 mm", "-12 mm"])
@pytest.mark.parametrize("case", ["firm braking", "stone ledge"])
def test_the_moment_is_the_cross_product_about_the_upright_axis(wagon: Results, wheel, scrub: str, case: str) -> None:
    first = solve(vary(wagon.setup, {"steering.scrub_radius": scrub}), wheel)
    second = spaced(first)
    scene = scrub_radius(first, second, case=case)
    turned = moments(scene)
    side = 1 if wheel == "front_left" else -1
    for when, results, more in (("before", first, 0.0), ("after", second, 0.025)):
        lever = side * (float(scrub.removesuffix(" mm")) * 1e-3 + more)
        force = results.cases[case].contact_force.x
        about = np.cross([0.0, lever, 0.0], [force, 0.0, 0.0])[2]
        assert turned[f"moment-kick-{when}"] == pytest.approx(about)


def test_the_road_pulls_backward_up_the_sheet_at_the_load_line(wagon: Results) -> None:
    scene = scrub_radius(wagon, spaced(wagon), case="firm braking")
    forces = {item.name: item for item in scene.items if isinstance(item, Force)}
    lines = {item.name: item for item in scene.items if isinstance(item, Line)}
    for name, line in (("force-road-as-it-is", "load-line-before"), ("force-road-moved", "load-line-after")):
        assert forces[name].vector[1] == pytest.approx(-wagon.cases["firm braking"].contact_force.x)
        assert forces[name].at[0] == lines[line].points[0][0]
    # both details have the same y, so that the lever can be read down from one to the other
    assert scene.view("foot").origin[0] == scene.view("above").origin[0]
    assert scene.view("foot").scale == scene.view("above").scale


UNITS = {"N": 1.0, "kN": 1e3, "N·m": 1.0, "kN·m": 1e3, "mm": 1e-3, "lbf": 1.0, "in": 1 / 12, "lbf·ft": 1.0}


def read(text: str) -> tuple[float, float]:
    """What a reader takes a printed value for, and half a unit of its last digit, in N·m or in lbf·ft."""
    number, unit = text.removeprefix("*").removeprefix("{r} = ").replace(",", "").split("\u00a0")
    return float(number) * UNITS[unit], 0.5 * 10.0 ** -len(number.partition(".")[2]) * UNITS[unit]


@given(spacer=st.floats(0.5, 60.0), scrub=st.floats(-60.0, 60.0), units=st.sampled_from(("si", "us")))
@SLOW
def test_pull_times_lever_as_printed_is_the_moment_printed(spacer: float, scrub: float, units) -> None:
    first = solve(vary(demonstration(FILE).setup, {"steering.scrub_radius": f"{scrub:.2f} mm"}))
    scene = scrub_radius(first, spaced(first, f"{spacer:.2f} mm"), case="firm braking", units=units)
    levers = {item.name[-6:]: item.text for item in scene.items if isinstance(item, Dimension) and "scrub" in item.name}
    pulls = [item.label.lines[0] for item in scene.items if isinstance(item, Force) and item.label]
    for item in scene.items:
        if isinstance(item, Moment) and item.label and abs(item.newton_metres) > 1.0:
            moment, half = read(item.label.lines[0])
            lever = next(text for name, text in levers.items() if item.name.endswith(name.strip("-")))
            assert read(pulls[0])[0] * read(lever)[0] == pytest.approx(moment, abs=1.05 * half)


def test_axis_and_load_lines_are_named_in_each_view(wagon: Results) -> None:
    scene = scrub_radius(wagon, spaced(wagon))
    notes = [item for item in scene.items if isinstance(item, Note)]
    for view in ("axle", "foot"):
        assert [note for note in notes if note.view == view and note.label.lines == ("steering axis",)]
    assert "steering axis, from above a circle" in scene.caption  # beside it a name would crowd out those of the arcs
    tones = {item.name: item.tone for item in scene.items if isinstance(item, Line)}
    outlines = {item.name: item.tone for item in scene.items if isinstance(item, Part)}
    for when in ("before", "after"):
        assert [note for note in notes if note.name == f"label-load-line-{when}"]
        # one colour for all of a setup
        assert tones[f"load-line-{when}"] == outlines[f"part-tire-foot-{when}"]


@pytest.mark.parametrize("wheel", ["front_left", "front_right"])
@pytest.mark.parametrize("case", ["firm braking"])
def test_on_a_phone_the_letter_of_a_lever_stands_beyond_no_extension_line_of_the_other(wheel: str, case: str) -> None:
    results = solve(demonstration(FILE).setup, wheel)
    scene = scrub_radius(results, spaced(results), case=case)
    foot = next(drawing for drawing in draw(scene, form="narrow") if drawing.view == "foot")
    view = foot.scene.view("foot")
    ends = {item.name: item.end[0] for item in scene.items if isinstance(item, Dimension) and item.view == "foot"}
    box = next(text.box for text in foot.texts if text.name == "dimension-scrub-before")
    outward = 1.0 if ends["dimension-scrub-after"] > 0 else -1.0
    assert outward * ((box[0] + box[2]) / 2 - view.on_sheet((0.0, 0.0))[0]) < 0


@pytest.mark.parametrize("wheel", ["front_left", "front_right"])
@pytest.mark.parametrize("spacer", ["5 mm", "12 mm", "25 mm", "40 mm"])
def test_no_arc_ends_on_the_tail_of_a_force(wheel: str, spacer: str) -> None:
    results = solve(demonstration(FILE).setup, wheel)
    assert between_heads_and_forces(scrub_radius(results, spaced(results, spacer), case="firm braking")) > 1.9


def test_a_load_line_that_stays_is_drawn_once(wagon: Results) -> None:
    scene = scrub_radius(wagon, wagon)
    check_scene(scene)
    assert not [item.name for item in scene.items if "after" in item.name or "moved" in item.name]
    assert "moved" not in scene.title


def test_an_axis_in_the_middle_of_the_tire_gives_no_lever(wagon: Results) -> None:
    centred = solve(vary(wagon.setup, {"steering.scrub_radius": "0 mm"}))
    scene = scrub_radius(centred, centred)
    check_scene(scene)
    assert moments(scene) == {}
    assert "right under the middle" in scene.description


def test_words_are_cautious(wagon: Results) -> None:
    caption = scrub_radius(wagon, spaced(wagon)).caption
    assert "a real one leans" in caption
    assert "Clearance" in caption


def test_without_steering_it_is_named(wagon: Results) -> None:
    van = demonstration("vehicles/supply-van.toml")
    assert FIGURES["scrub radius"].cases(van) == []
    with pytest.raises(MissingDataError, match=r"steering\.scrub_radius"):
        scrub_radius(van, van)


def test_a_wheel_that_does_not_steer_and_a_case_without_a_pull_are_refused(wagon: Results) -> None:
    rear = solve(vary(wagon.setup, {"wheel_end": "both"}), "rear_left")
    with pytest.raises(CaseError, match="a wheel that steers"):
        scrub_radius(rear, rear)
    with pytest.raises(CaseError, match="a pull along the road"):
        scrub_radius(wagon, wagon, case="standing")

"""The wheel end as a beam: closed, to scale, and true in its words, for the demonstration and for random setups."""

import re
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drawing.written_checks import wrong_with
from hubwright.drawing import draw
from hubwright.drawing.closure import left_over
from hubwright.results import solve
from hubwright.results.beams import wheel_end_beam
from hubwright.results.model import CaseResult, Results
from hubwright.scenes.spindle_beam import spindle_beam
from hubwright.scenes.spindle_beam_words import source_of_load
from hubwright.scenes.vocabulary import LENGTH_OFF_SCALE, NOT_TO_SCALE, Curve, Force, Note, Scene, Words
from hubwright.setup import load, load_text
from hubwright.setup.model import Setup
from scene_checks import SLOW
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
FILES = sorted(CONTENT.glob("vehicles/*.toml")) + sorted(CONTENT.glob("setups/*.toml"))


def force(scene: Scene, name: str) -> Force:
    return next(item for item in scene.items if isinstance(item, Force) and item.name == name)


def curve(scene: Scene, name: str) -> Curve:
    return next(item for item in scene.items if isinstance(item, Curve) and item.name == f"curve-{name}")


def place_of_load(results: Results, case: CaseResult) -> float:
    """Millimetres outboard of the bearing centre: M_x over B_z."""
    return results.side * case.bearing_moment.x / case.bearing_force.z * 1e3


@given(setups())
@SLOW
def test_the_free_body_closes_and_its_reactions_oppose_the_row_loads(setup: Setup):
    results = solve(setup)
    for name, case in results.cases.items():
        scene = spindle_beam(results, case=name)
        assert scene.body is not None
        left, turn, largest, largest_moment = left_over(scene.body)
        assert left <= 1e-9 * largest
        assert turn <= 1e-9 * largest_moment
        assert case.row_load is not None
        for row, given_load in (("outboard", case.row_load.outboard), ("inboard", case.row_load.inboard)):
            assert force(scene, f"reaction-{row}").vector[1] == pytest.approx(-given_load.z, abs=1e-6 * largest)
        assert force(scene, "force-load").vector[1] == pytest.approx(case.bearing_force.z)


@given(setups())
@SLOW
def test_the_steps_of_the_shear_are_as_long_as_the_arrows_above_them(setup: Setup):
    results = solve(setup)
    scene = spindle_beam(results)
    assert scene.view("shear").vertical_per_mm == scene.view("beam").newtons_per_mm
    points = curve(scene, "shear").points
    outboard = force(scene, "reaction-outboard")
    steps = [after[1] - before[1] for before, after in pairwise(points) if before[0] == after[0]]
    assert sum(steps) == pytest.approx(0.0, abs=1e-6)
    assert min(abs(step - outboard.vector[1]) for step in steps) < 1e-6 * abs(outboard.vector[1])


@given(setups())
@SLOW
def test_the_title_names_the_place_of_the_peak_and_the_symbols_carry_direction_words(setup: Setup):
    results = solve(setup)
    case = results.cases["standing"]
    scene = spindle_beam(results)
    place, half = place_of_load(results, case), results.bearing.effective_spread * 500
    if abs(abs(place) - half) < 1e-3 * half:
        return
    if abs(place) > half:
        assert scene.title.startswith("Overhung")
        assert ("outboard" if place > 0 else "inboard") in scene.title
    else:
        assert "between the rows" in scene.title
    for row in ("outboard", "inboard"):
        arrow = force(scene, f"reaction-{row}")
        assert arrow.label is not None
        words = " ".join(arrow.label.lines)
        assert "\u2212" not in words
        assert f"{'up' if arrow.vector[1] > 0 else 'down'}, {row} row" in words


@given(setups())
@SLOW
def test_rows_of_plots_do_not_run_into_one_another(setup: Setup):
    scene = spindle_beam(solve(setup))
    tops = []
    for name in ("deflection", "moment", "shear"):
        view, points = scene.view(name), curve(scene, name).points
        heights = [view.on_sheet(point)[1] for point in points]
        tops.append((min(heights), max(heights)))
    assert tops[0][0] > 30
    assert tops[0][1] < tops[1][0]
    assert tops[1][1] < tops[2][0]
    assert tops[2][1] < scene.view("beam").origin[1] < scene.size[1]


def test_the_drawn_deflection_is_the_real_one_times_what_the_figure_says():
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    assert results.setup.spindle is not None
    scene, solved = spindle_beam(results), wheel_end_beam(results, "standing")
    words = next(item for item in scene.items if item.name == "words-deflection-2")
    times = float(re.sub(r"[^0-9]", "", " ".join(words.lines)))  # type: ignore[attr-defined]
    view, points = scene.view("deflection"), curve(scene, "deflection").points
    drawn = max(abs(view.on_sheet(point)[1] - view.origin[1]) for point in points)
    assert solved.maximum_deflection is not None
    assert drawn == pytest.approx(abs(solved.maximum_deflection.value) * 1e3 * view.scale * times)


def test_without_a_diameter_the_bend_has_a_shape_and_no_number():
    text = (CONTENT / "vehicles/hill-wagon.toml").read_text(encoding="utf-8")
    plain = re.sub(r"\[spindle\][^\[]*", "", text)
    scene = spindle_beam(solve(load_text(plain)))
    assert not any(item.name == "label-deflection" for item in scene.items)
    words = next(item for item in scene.items if item.name == "words-deflection-2")
    assert "shape only" in " ".join(words.lines)  # type: ignore[attr-defined]


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_the_unit_over_the_shear_is_that_of_all_its_values(file: Path):
    results = solve(load(file))
    for case in results.cases:
        scene = spindle_beam(results, case=case)
        told = [i.label.lines[0] for i in scene.items if isinstance(i, Note) and i.name.startswith("label-shear")]
        beside = next(item for item in scene.items if isinstance(item, Words) and item.name == "words-shear-2")
        for unit in {"N", "kN"} & set(beside.lines):
            assert all(text.endswith("\u00a0" + unit) for text in told), (case, told)


def test_a_load_that_the_caliper_turns_down_is_not_called_a_weight():
    # road 6.53 kN up, caliper 7.01 kN and weight 0.39 kN down
    scene = spindle_beam(solve(load(CONTENT / "vehicles/hill-wagon.toml")), case="firm braking")
    arrow = force(scene, "force-load")
    assert arrow.vector[1] < 0
    assert arrow.label is not None
    assert arrow.label.lines[1] == "down, from wheel and hub"
    assert "is the net of road, caliper and weight on the bearing" in scene.caption


def test_a_wheel_off_the_road_loads_the_bearing_with_its_weight():
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    body = results.cases["standing"].free_body
    hanging = replace(body, forces=tuple(each for each in body.forces if each.name != "contact"))
    state = replace(results.cases["standing"], free_body=hanging)
    results = replace(results, cases={**results.cases, "standing": state})
    assert source_of_load(results, wheel_end_beam(results, "standing")) == "weight of wheel and hub"


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_signs_are_told_where_no_words_stand_beside_the_plots(file: Path):
    results = solve(load(file))
    scene = spindle_beam(results)
    assert "{V} sums the upward forces outboard of the cut" in scene.caption
    assert "{M} is positive where the bar sags" in scene.caption
    # how many times enlarged differs on a phone, where the bar is shorter
    assert ("on a scale of its own" if results.setup.spindle else "a shape and no size") in scene.caption


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
@pytest.mark.parametrize("units", ["si", "us"])
def test_no_words_meet_in_the_demonstration(file: Path, units):
    results = solve(load(file))
    for name, case in results.cases.items():
        if case.kind in ("standing", "cornering"):
            assert wrong_with(draw(spindle_beam(results, case=name, units=units))) == []


@given(setups(), st.sampled_from(("si", "us")))
@SLOW
def test_the_shear_over_a_field_has_the_number_of_the_force_that_makes_it(setup: Setup, units):
    results = solve(setup)
    for name in results.cases:
        scene = spindle_beam(results, case=name, units=units)
        sizes = {}
        for arrow in ("force-load", "reaction-outboard", "reaction-inboard"):
            label = force(scene, arrow).label
            assert label is not None
            sizes[arrow] = label.lines[0].split(" = ")[1]
        told = [item for item in scene.items if isinstance(item, Note) and item.name.startswith("label-shear")]
        assert told
        for note in told:
            size = note.label.lines[0].split(" = ")[1].removeprefix("\u2212")
            assert size in sizes.values(), (name, size, sizes)
        # which one the description says is the largest
        largest = max(told, key=lambda note: note.label.lines[0].startswith("*")).label.lines[0].split(" = ")[1]
        assert f"The shear is at most {largest.removeprefix(chr(0x2212))}," in scene.description


def test_a_row_whose_arrow_would_be_too_short_is_shown_and_said_to_be_not_to_scale():
    results = solve(load(CONTENT / "setups/winter-fit-out.toml"))
    scene = spindle_beam(results)
    arrow = force(scene, "reaction-inboard")
    per_mm = scene.view("beam").newtons_per_mm
    assert per_mm is not None
    assert abs(arrow.vector[1]) / per_mm < 1.2
    assert not arrow.to_scale
    assert arrow.label is not None
    assert arrow.label.lines[-1] == NOT_TO_SCALE


@given(setups())
@SLOW
def test_words_beside_a_short_arrow_clear_the_bar(setup: Setup):
    results = solve(setup)
    scene = spindle_beam(results)
    per_mm = scene.view("beam").newtons_per_mm
    assert per_mm is not None
    for name in ("force-load", "reaction-outboard", "reaction-inboard"):
        arrow = force(scene, name)
        assert arrow.label is not None
        size = abs(arrow.vector[1]) / per_mm if arrow.to_scale else LENGTH_OFF_SCALE
        middle = arrow.gap + size / 2 + abs(arrow.label.nudge[1])
        assert middle - 2.1 * len(arrow.label.lines) > arrow.gap  # the bar's edge, of which the arrow keeps clear

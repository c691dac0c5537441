"""Contact pressure against load: every case of a bearing on one curve, that of Hertz, and the limit of ISO 76."""

import math
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hubwright.drawing import draw
from hubwright.results import Results, described_wheels, solve
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.contact_pressure import contact_pressure
from hubwright.scenes.vocabulary import Curve, Dot, Label, Line, Note, Scene
from hubwright.setup import load
from hubwright.setup.model import Setup, TaperedPair
from scene_checks import SLOW, check_scene
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
VEHICLES = ("hill-wagon", "supply-van", "kit-trailer")
_NONE = Label(())


def solved(vehicle: str) -> Results:
    return solve(load(CONTENT / f"vehicles/{vehicle}.toml"))


def pressure_at(scene: Scene, newtons: float) -> float:
    curve = next(item for item in scene.items if isinstance(item, Curve))
    loads, pressures = np.array(curve.points).T
    return float(np.interp(newtons, loads, pressures))


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_every_case_lies_on_the_curve_of_any_other(vehicle: str) -> None:
    results = solved(vehicle)
    life = results.life
    assert life is not None
    scene = contact_pressure(results)
    for case in life.cases.values():
        for row in ("outboard", "inboard"):
            newtons, pascals = getattr(case.largest_element_load, row), getattr(case.peak_contact_pressure, row)
            if newtons > 1.0:
                # the curve is drawn in 80 short straight pieces
                assert pressure_at(scene, newtons) == pytest.approx(pascals, rel=0.01)


@pytest.mark.parametrize("vehicle", ["supply-van", "kit-trailer"])
def test_a_roller_is_pressed_as_a_line_contact_says(vehicle: str) -> None:
    # Hertz, written with the equivalent radius of roller and inner ring: p = √(F E*/(π L R)), E* = E/(2 (1 − ν²))
    results = solved(vehicle)
    bearing = results.setup.bearing
    assert isinstance(bearing, TaperedPair)
    D, L, P, angle = bearing.roller_diameter, bearing.roller_length, bearing.pitch_diameter, bearing.contact_angle
    assert None not in (D, L, P, angle)
    track = (P / math.cos(angle) - D) / 2  # of the inner raceway across the roller
    radius = 1 / (2 / D + 1 / track)
    newtons = 1000.0
    expected = math.sqrt(newtons * 207e9 / (2 * (1 - 0.3**2)) / (math.pi * L * radius))
    assert pressure_at(contact_pressure(results), newtons) == pytest.approx(expected, rel=0.01)


@pytest.mark.parametrize(("vehicle", "limit"), [("hill-wagon", 4200e6), ("kit-trailer", 4000e6)])
def test_dents_begin_where_the_standard_says(vehicle: str, limit: float) -> None:
    scene = contact_pressure(solved(vehicle))
    line = next(item for item in scene.items if isinstance(item, Line) and item.name == "limit")
    assert {y for _, y in line.points} == {limit}


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_has_its_figures(vehicle: str, units) -> None:
    results = solved(vehicle)
    for case in results.cases:
        check_scene(contact_pressure(results, case=case, units=units))


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("units", ["si", "us"])
def test_no_words_stand_on_a_drop_line_or_on_an_axis(vehicle: str, units) -> None:
    results = solved(vehicle)
    for case in results.cases:
        scene = contact_pressure(results, case=case, units=units)
        view = scene.view("plot")
        lines = [item for item in scene.items if isinstance(item, Line) and item.name.startswith("drop-")]
        upright = [view.on_sheet(line.points[0])[0] for line in lines]
        level = view.on_sheet((0.0, 0.0))[1]
        boxes = [text.box for text in draw(scene).texts if text.name in ("label-outboard", "label-inboard")]
        assert boxes
        for x0, low, x1, _ in boxes:
            assert low > level, case
            assert not any(x0 < x < x1 for x in upright), case


@given(chosen=setups(), data=st.data())
@SLOW
def test_every_valid_setup_has_its_figure(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    if cases := FIGURES["contact pressure against load"].cases(results):
        case = data.draw(st.sampled_from(cases))
        check_scene(contact_pressure(results, case=case, units=data.draw(st.sampled_from(("si", "us")))))


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("case", ["standing", "firm braking"])
def test_each_row_has_words_of_its_own_and_the_upper_dot_the_upper_ones(vehicle: str, case: str) -> None:
    # on a phone a letter stands for each
    scene = contact_pressure(solved(vehicle), case=case)
    notes = {item.name: item.label for item in scene.items if isinstance(item, Note)}
    assert [len(notes[f"label-{row}"].lines) for row in ("outboard", "inboard")] == [2, 2]
    boxes = {text.name: text.box for text in draw(scene).texts}
    upper = {name: boxes[name] for name in boxes if any("upper dot" in line for line in notes.get(name, _NONE).lines)}
    lower = {name: boxes[name] for name in boxes if any("lower dot" in line for line in notes.get(name, _NONE).lines)}
    for high, low in zip(upper.values(), lower.values(), strict=True):
        assert high[1] >= low[3] - 0.1
        assert high[0] == pytest.approx(low[0])


def test_the_dots_of_other_cases_stand_out_from_the_curve() -> None:
    scene = contact_pressure(solved("hill-wagon"))
    curve = next(item for item in scene.items if isinstance(item, Curve))
    others = [item for item in scene.items if isinstance(item, Dot) and item.name.startswith("other-")]
    assert others
    # as wide as the line they would look like its dashes
    assert all(2 * dot.radius > 3 * (curve.width or 0.0) for dot in others)

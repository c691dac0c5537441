"""Defect frequencies over speed: straight lines through zero whose slopes keep the ratios of the bearing's geometry."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hubwright.results import described_wheels, solve
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.defect_frequencies import defect_frequency_lines
from hubwright.scenes.label_words import in_one_line
from hubwright.scenes.vocabulary import Axis, Curve, Note, Scene
from hubwright.setup import load
from hubwright.setup.model import Setup
from scene_checks import SLOW, check_scene
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
VEHICLES = ("hill-wagon", "supply-van", "kit-trailer")


def slopes(scene: Scene) -> dict[str, float]:
    """Frequency over speed of each line [1/m]; every line begins at zero."""
    found = {}
    for item in scene.items:
        if isinstance(item, Curve):
            assert item.points[0] == (0.0, 0.0)
            found[item.name.removeprefix("curve-")] = item.points[-1][1] / item.points[-1][0]
    return found


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_lines_keep_the_ratios_of_the_geometry(vehicle: str, units) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    scene = defect_frequency_lines(results, units=units)
    check_scene(scene)
    line = slopes(scene)
    wheel = 1 / results.wheel_geometry.rolling_circumference
    assert line["wheel"] == pytest.approx(wheel)
    # every element passes a place on one ring or the other: both together are Z times the wheel's turns
    count = results.setup.bearing.elements_per_row
    assert count is not None
    assert line["outer-ring"] + line["inner-ring"] == pytest.approx(count * wheel)
    # the cage passes the standing ring Z times in a turn of its own
    standing = "inner-ring" if results.setup.bearing.turning_ring == "outer" else "outer-ring"
    assert line[standing] == pytest.approx(count * line["cage"])


def test_both_speed_axes_mark_the_same_speed_at_the_same_place() -> None:
    scene = defect_frequency_lines(solve(load(CONTENT / "vehicles/hill-wagon.toml")))
    axes = {item.name: item for item in scene.items if isinstance(item, Axis)}
    for name, unit in (("axis-speed", 1 / 3.6), ("axis-speed-2", 0.44704)):
        for at, text in axes[name].marks:
            assert at == pytest.approx(float(text.split("\u00a0")[0]) * unit)


@pytest.mark.parametrize(("units", "speed"), [("si", "80"), ("us", "50")])
def test_a_frequency_at_the_end_of_a_line_says_at_which_speed_it_holds(units, speed: str) -> None:
    scene = defect_frequency_lines(solve(load(CONTENT / "vehicles/supply-van.toml")), units=units)
    told = [in_one_line(item.label.lines) for item in scene.items if isinstance(item, Note)]
    assert len(told) == 5
    unit = "km/h" if units == "si" else "mph"
    assert all(f"\u00a0Hz at {speed}\u00a0{unit}: " in text for text in told), told


@given(chosen=setups(), data=st.data())
@SLOW
def test_every_valid_setup_has_its_figure(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    if FIGURES["defect frequencies against speed"].cases(results):
        check_scene(defect_frequency_lines(results, units=data.draw(st.sampled_from(("si", "us")))))


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_title_has_the_numbers_of_the_labels(vehicle: str, units) -> None:
    scene = defect_frequency_lines(solve(load(CONTENT / f"vehicles/{vehicle}.toml")), units=units)
    labels = {item.name: item.label.lines[1] for item in scene.items if isinstance(item, Note)}
    for ring in ("outer", "inner"):
        number = labels[f"label-{ring}-ring"].split("\u00a0")[0]
        assert f"{ring} ring is struck {number} times" in scene.title or f"{ring} ring {number} times" in scene.title

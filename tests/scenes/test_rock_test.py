"""The rock test: slack as large as stated times its magnification, the same at tread and rows, for any setup."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hubwright.drawing import draw
from hubwright.errors import MissingDataError
from hubwright.results import Results, described_wheels, solve
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.rock_test import rock_test
from hubwright.scenes.vocabulary import Dimension, Scene
from hubwright.setup import load, load_text
from hubwright.setup.model import Setup
from scene_checks import check_scene, check_written_scales
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
VEHICLES = ("hill-wagon", "supply-van", "kit-trailer")
SLOW = settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))


def dimension(scene: Scene, name: str) -> Dimension:
    return next(item for item in scene.items if isinstance(item, Dimension) and item.name == name)


def magnification(scene: Scene) -> float:
    words = scene.caption.split("drawn ")[1].split(" times")[0]
    return float(words.replace(",", ""))


@given(chosen=setups(), data=st.data())
@SLOW
def test_every_valid_setup_has_its_figure(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    if not FIGURES["rock test"].cases(results):
        return
    play = data.draw(st.floats(5e-6, 1e-3))
    scene = rock_test(results, units=data.draw(st.sampled_from(("si", "us"))), end_play=play)
    check_scene(scene)
    check_drawn(scene, results, play)


def check_drawn(scene: Scene, results: Results, play: float) -> None:
    """Both rows have the same play, and by similar triangles the tread moves 2 R/ℓ times as far."""
    rows = [dimension(scene, f"radial-play-{row}") for row in ("outboard", "inboard")]
    heights = [abs(each.start[1] - each.end[1]) for each in rows]
    assert heights[0] == pytest.approx(heights[1])
    tread = dimension(scene, "tread-travel")
    spread, diameter = results.bearing.effective_spread, results.wheel_geometry.free_diameter
    assert spread is not None
    # the magnified angle is below 0.08: sine and tangent differ by less than 0.5 %
    assert abs(tread.start[0] - tread.end[0]) / heights[0] == pytest.approx(diameter / spread, rel=0.005)
    # a row pushed along its axis by the end play rises along its cone, drawn so many times larger
    angle = results.setup.bearing.contact_angle
    assert angle is not None
    climb = play * 1e3 * (results.bearing.effective_spread - results.setup.bearing.row_spacing)  # type: ignore[operator]
    climb /= results.setup.bearing.pitch_diameter  # type: ignore[operator]
    assert heights[0] == pytest.approx(climb * magnification(scene), rel=0.005)


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn_to_scale(vehicle: str, units) -> None:
    setup = load(CONTENT / f"vehicles/{vehicle}.toml")
    for wheel in described_wheels(setup):
        results = solve(setup, wheel)
        scene = rock_test(results, units=units)
        check_scene(scene)
        check_drawn(scene, results, 1e-4)
        assert check_written_scales(scene) == 3


@pytest.mark.parametrize("wheel", ["front_left", "front_right"])
def test_the_play_is_measured_at_the_pressure_centres_and_said_beside_the_frame(wheel: str) -> None:
    scene = rock_test(solve(load(CONTENT / "vehicles/hill-wagon.toml"), wheel))
    for row in ("outboard", "inboard"):
        each = dimension(scene, f"radial-play-{row}")
        assert each.line_at == pytest.approx(scene.view("detail").on_sheet(each.start)[0])
    told = next(text for text in draw(scene).texts if text.name == "label-radial-play")
    frame = scene.view("detail").frame
    assert frame is not None
    assert told.box[2] < frame[0]
    assert all(entry.lines[0] for drawing in draw(scene, form="narrow") for entry in drawing.balloons)


def test_a_bearing_of_which_too_little_is_known_is_refused() -> None:
    text = (CONTENT / "vehicles/kit-trailer.toml").read_text(encoding="utf-8")
    text = "\n".join(line for line in text.splitlines() if not line.startswith("contact_angle"))
    setup = load_text(text, "kit-trailer.toml")
    assert isinstance(setup, Setup)
    with pytest.raises(MissingDataError, match=r"bearing\.contact_angle"):
        rock_test(solve(setup))

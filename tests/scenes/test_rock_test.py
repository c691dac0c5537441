"""The rock test: slack as large as stated times its magnification, the same at tread and rows, for any setup."""

import math
import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hubwright.drawing import draw
from hubwright.errors import MissingDataError
from hubwright.results import Results, described_wheels, solve
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.rock_test import rock_test
from hubwright.scenes.vocabulary import AngularDimension, Dimension, Label, Scene, Words
from hubwright.setup import load, load_text
from hubwright.setup.model import Setup
from scene_checks import SLOW, check_scene, check_written_scales
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
VEHICLES = ("hill-wagon", "supply-van", "kit-trailer")


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
    check_working(scene)


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
        assert check_written_scales(scene) == 5  # radial play twice, slack, spread, radius


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


def read(text: str, symbol: str) -> str:
    """The number that follows a symbol in words of the figure."""
    found = re.search(re.escape(symbol) + r" = (?:\{δ\} tan \{α\} = )?(?:[^=]*· tan [^=]*= )?([\d.,]+)", text)
    assert found is not None, (symbol, text)
    return found.group(1)


def rounds_to(value: float, printed: str) -> bool:
    """Whether a value rounds to a number as it is printed."""
    places = len(printed.partition(".")[2])
    return abs(value - float(printed)) <= 0.5 * 10.0**-places * (1 + 1e-9)


def check_working(scene: Scene) -> bool:
    """What is printed comes out as printed; return whether the product of the first line is among it."""
    (working,) = [item.lines for item in scene.items if isinstance(item, Words) and item.name == "working"]
    radius, spread, slack = (dimension(scene, name).text for name in ("radius", "spread", "tread-travel"))
    (angle,) = [item.label for item in scene.items if isinstance(item, AngularDimension)]
    assert isinstance(angle, Label)
    alpha = read(angle.lines[-1], "{α}")
    radial = read(working[1], "{δ|r}")
    end, travel = read(working[0], "{δ}"), read(slack, "{s}")
    assert rounds_to(2 * float(read(radius, "{R}")) * float(radial) / float(read(spread, "{ℓ}")), travel)
    assert working[2].replace("\u00a0", " ").split(" = ")[-1].startswith(travel)
    if " · tan " not in working[1]:
        return False
    assert f"tan {alpha}°" in working[1]
    assert rounds_to(float(end) * math.tan(math.radians(float(alpha))), radial)
    return True


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_products_of_the_working_come_out_as_printed(vehicle: str, units) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    for play in (1e-4, 3e-5, 2.5e-4):
        assert check_working(rock_test(results, units=units, end_play=play))


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_the_key_of_a_phone_says_how_the_rows_lead_to_the_tread(vehicle: str) -> None:
    scene = rock_test(solve(load(CONTENT / f"vehicles/{vehicle}.toml")))
    told = " ".join(
        line for drawing in draw(scene, form="narrow") for entry in drawing.balloons for line in entry.lines
    )
    for words in ("pressure centre", "{δ|r} = {δ} tan {α}", "contact angle", "contact line", "bearing centre"):
        assert words in told

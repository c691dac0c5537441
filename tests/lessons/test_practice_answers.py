"""Answers of practice problems by a second road: a formula written out here, or a setup file solved on the terminal.

The numbers of the wagon are those of its file, typed again; given data are read from the problem's own front matter.
"""

import json
import math
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from hubwright.cli import main
from hubwright.lessons.course import Course
from hubwright.lessons.drawings import Undrawn
from hubwright.lessons.pages import Renderer
from hubwright.lessons.practice import Practice
from hubwright.quantities import Quantity, parse

CONTENT = Path(__file__).parents[2] / "content"
G = 9.80665
LBF, INCH = 4.4482216152605, 0.0254
FREE_DIAMETER = 16 * INCH + 2 * 0.75 * 0.245  # 245/75R16
STIFFNESS = 260e3
FRONT = 1120 * G / 2  # on one front wheel: the middle of the mass lies in the middle of the track
WHEEL = (17 + 9) * G
HUB = 14 * G
FACE, OFFSET = 0.042, 0.030
PUSH = FRONT - WHEEL - HUB
SPREAD = 0.024 + 0.062 * math.tan(math.radians(35))
RADIUS = FREE_DIAMETER / 2 - FRONT / STIFFNESS
Given = Callable[[str], float]


def moment(load_line: float) -> float:
    """What tips the hub toward the wagon, about the middle of the bearing: pushes times levers."""
    return (FRONT - WHEEL) * load_line - HUB * FACE


def slant(part: float) -> float:
    """The angle of the line from a ledge's edge to the axle, from the triangle of radius and height."""
    return math.acos(1 - part)


BY_HAND: dict[str, Callable[[Given], float]] = {
    "01-rocking-angle": lambda v: FREE_DIAMETER * v("tilt"),
    "01-travel-at-the-tread": lambda v: v("slack") * math.tan(math.radians(35)) / SPREAD * FREE_DIAMETER,
    # half of the difference of the turns, with as many balls: the cage of a bearing whose inner ring turns
    "01-strikes-on-a-mark": lambda v: (
        13 / 2 * (1 + 12.7 / 62 * math.cos(math.radians(35))) * v("pace") / (3.05 * FREE_DIAMETER)
    ),
    "01-turns-of-the-wheel": lambda v: v("pace") / (3.05 * FREE_DIAMETER),
    "02-spread-of-another-slant": lambda v: 0.024 + 0.062 * math.tan(v("ball_angle")),
    "02-height-of-the-centre": lambda v: FREE_DIAMETER / 2 - v("gives"),
    "02-weight-of-what-turns": lambda v: (17 + 9 + 14 + v("more")) * G,
    "02-two-rows-one-load": lambda v: v("load") * (1 - v("share")),
    "03-gear-beyond-the-end": lambda v: v("pack") * G * (2.78 + v("reach")) / 2.78,
    "03-heavier-tires": lambda v: 0.0,
    "03-equal-share": lambda v: (1120 + 1010 + v("more")) * G / 4,
    "04-spacer-and-load-line": lambda v: FACE - OFFSET + v("spacer"),
    "04-moment-with-spacers": lambda v: moment(FACE - OFFSET + v("spacer")),
    "04-row-with-spacers": lambda v: PUSH / 2 + moment(FACE - OFFSET + v("spacer")) / SPREAD,
    "04-road-less-wheel": lambda v: PUSH + v("more"),
    "05-load-in-the-middle": lambda v: PUSH * v("apart") / 4,
    "05-far-support": lambda v: -PUSH * v("overhang") / v("apart"),
    "06-turn-of-the-side-push": lambda v: v("bend") * v("load") * RADIUS,
    "06-weight-on-the-roof": lambda v: v("bend") * 2130 * G * v("higher") * 0.55 / 1.6,
    # load transfer of a rigid body on two axles: this axle's share of weight times height over its track
    "06-bends-in-a-table": lambda v: 0.02 * v("place") * 2130 * G * 0.69 * 0.55 / 1.6,
    "07-load-grows": lambda v: 1 / (1 + v("extra")) ** 3,
    "07-part-of-the-way": lambda v: 1 / ((1 - v("part")) + v("part") * v("harder")),
    "08-farther-in-one-turn": lambda v: 3.05 * v("growth"),
    "08-larger-and-farther-out": lambda v: FACE - (OFFSET - v("less")),
    "08-what-the-speedometer-says": lambda v: v("said") * (1 + v("growth")),
    "09-offset-for-a-load-line": lambda v: OFFSET - v("spacer"),
    "09-pull-of-a-stud": lambda v: v("wrench") / (v("nut") * v("thread")),
    "09-spacer-against-offset": lambda v: 0.0,
    "10-push-at-a-ledge": lambda v: FRONT * math.tan(slant(v("part"))),
    "10-wide-or-tall": lambda v: v("wide") / 2 / v("tall"),
    "11-box-off-a-tailgate": lambda v: v("box") * G * v("height"),
    # energy of a spring pressed in by the load and the fall: k x^2 / 2 = F (s + x)
    "11-onto-a-tire": lambda v: FRONT + math.sqrt(FRONT**2 + 2 * FRONT * STIFFNESS * v("height")),
    "12-pressure-at-depth": lambda v: 1000 * G * v("deep"),
    "12-cooled-air": lambda v: 101325 * (1 - v("cold") / v("hot")),
}
CHOSEN: dict[str, Callable[[Given, Callable[[str], str]], str]] = {
    "01-whose-growl": lambda v, w: {"wheel": "once in each turn"}.get(w("part"), w("part")),
    "05-where-it-is-largest": lambda v, w: "outboard support" if 2 * v("place") > v("apart") else "under the load",
    "06-which-way-in-a-bend": lambda v, w: "toward" if v("out") > v("bend") * RADIUS else "away",
    "07-is-it-settled": lambda v, w: (
        "do not settle" if v("low") < 1 < v("high") else "raises" if v("low") > 1 else "lowers"
    ),
    "10-friction-at-a-ledge": lambda v, w: "yes" if math.tan(slant(v("part"))) < v("grip") else "no",
    "11-a-higher-drop": lambda v, w: "just by" if w("what") == "energy" else "less than",
    "12-suction-or-depth": lambda v, w: (
        "cooled air" if 101325 * (1 - v("cold") / v("hot")) > 1000 * G * v("deep") else "depth of the water"
    ),
}
UNITS = {
    "mm": "length", "m": "length", "kg": "mass", "N": "force", "kN": "force", "N·m": "moment", "km/h": "speed",
    "%": "ratio", "°": "angle", "°C": "temperature", "g": "acceleration", "": "ratio",
}  # fmt: skip
# what a reader in US units sees rounded
CONVERTED = {"mm": "m", "m": "m", "kg": "kg", "N": "N", "kN": "N", "N·m": "N*m", "km/h": "m/s", "°C": "K"}


@pytest.fixture(scope="module")
def practice() -> Practice:
    return Renderer(Course.read(CONTENT, in_view="hill-wagon"), Undrawn()).practice


def given(practice: Practice, stem: str, place: int) -> Given:
    """What a variant gives, in SI units."""

    def value(name: str) -> float:
        text = practice.files[stem].variants[name][place]
        unit = re.sub(r"^-?[\d.,]+\s*", "", text)
        return parse(text, UNITS[unit]).value  # type: ignore[arg-type]

    return value


@pytest.mark.parametrize("stem", BY_HAND)
def test_every_variant_agrees_with_a_formula_written_out(practice: Practice, stem: str) -> None:
    for place, variant in enumerate(practice.problem(stem).variants):
        # the bearing's and the air's numbers are given with three or four digits
        expected = BY_HAND[stem](given(practice, stem, place))
        assert variant.asked.value == pytest.approx(expected, rel=2e-3, abs=1e-9), f"{stem}, variant {place + 1}"


@pytest.mark.parametrize("stem", BY_HAND)
def test_whoever_reckons_with_the_numbers_of_us_readers_is_right(practice: Practice, stem: str) -> None:
    for place, variant in enumerate(practice.problem(stem).variants):

        def as_shown(name: str, place: int = place) -> float:
            text = practice.files[stem].variants[name][place]
            unit = re.sub(r"^-?[\d.,]+\s*", "", text)
            exact = given(practice, stem, place)(name)
            if unit not in CONVERTED:
                return exact
            shown = Quantity(exact, CONVERTED[unit]).shown("us").text
            return parse(shown.replace("\u00a0", " "), UNITS[unit]).value  # type: ignore[arg-type]

        reckoned = BY_HAND[stem](as_shown)
        assert abs(reckoned - variant.asked.value) <= variant.asked.tolerance, f"{stem}, variant {place + 1}"


@pytest.mark.parametrize("stem", CHOSEN)
def test_every_choice_agrees_with_a_rule_written_out(practice: Practice, stem: str) -> None:
    for place, variant in enumerate(practice.problem(stem).variants):

        def words(name: str, place: int = place) -> str:
            return practice.files[stem].variants[name][place]

        expected = CHOSEN[stem](given(practice, stem, place), words)
        assert expected in variant.asked.in_words.lower(), f"{stem}, variant {place + 1}"


def test_no_problem_of_the_collection_is_left_without_a_second_road(practice: Practice) -> None:
    assert set(practice.files) - set(BY_HAND) - set(CHOSEN) == {"02-rows-in-a-table"}  # which is solved below


def solved(tmp_path: Path, changes: dict[str, str]) -> dict[str, Any]:
    """The hill wagon with other values in its file, through the terminal."""
    text = (CONTENT / "vehicles" / "hill-wagon.toml").read_text(encoding="utf-8")
    for before, after in changes.items():
        assert text.count(before) == 1
        text = text.replace(before, after)
    file = tmp_path / "hill-wagon.toml"
    file.write_text(text, encoding="utf-8")
    run = CliRunner().invoke(main, ["solve", str(file), "--json"])
    assert run.exit_code == 0, run.output
    found: dict[str, Any] = json.loads(run.output)
    return found


@pytest.mark.parametrize("place", [0, 3])  # each solves five files, with spans
def test_answers_agree_with_the_changed_file_solved_on_the_terminal(
    practice: Practice, tmp_path: Path, place: int
) -> None:
    def answer(stem: str) -> float:
        return practice.problem(stem).variants[place].asked.value

    def data(stem: str, name: str) -> str:
        return practice.files[stem].variants[name][place]

    row = data("02-rows-in-a-table", "row")
    found = solved(tmp_path, {'spacer = "0 mm"': f'spacer = "{data("02-rows-in-a-table", "asked_spacer")}"'})
    assert answer("02-rows-in-a-table") == pytest.approx(found["cases"]["standing"]["row_load"][row]["z"]["value"])
    found = solved(tmp_path, {'spacer = "0 mm"': f'spacer = "{data("04-row-with-spacers", "spacer")}"'})
    assert answer("04-row-with-spacers") == pytest.approx(
        found["cases"]["standing"]["row_load"]["outboard"]["z"]["value"]
    )
    found = solved(tmp_path, {'spacer = "0 mm"': f'spacer = "{data("04-moment-with-spacers", "spacer")}"'})
    assert answer("04-moment-with-spacers") == pytest.approx(found["cases"]["standing"]["bearing_moment"]["x"]["value"])
    less = float(data("08-larger-and-farther-out", "less").split()[0])
    found = solved(tmp_path, {'offset = "30 mm"': f'offset = "{30 - less} mm"'})
    assert answer("08-larger-and-farther-out") == pytest.approx(found["wheel_geometry"]["load_line_offset"]["value"])
    found = solved(tmp_path, {'contact_angle = "35 deg ± 3 deg"': f'contact_angle = "{data(SLANT, "ball_angle")}"'})
    assert answer(SLANT) == pytest.approx(found["bearing"]["effective_spread"]["value"])


SLANT = "02-spread-of-another-slant"

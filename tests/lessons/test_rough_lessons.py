"""Lessons 9 to 12 hold for any setup: their words are those of the numbers, and what a file lacks is named."""

import math
import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from lesson_sites import TRAILER, WAGON
from test_course_holds import ALIKE, CONTENT, VEHICLES, course_of, found, newtons, order
from test_workings import agrees

from hubwright.errors import DimensionError
from hubwright.lessons.course import Course
from hubwright.lessons.drawings import Undrawn
from hubwright.lessons.pages import Renderer
from hubwright.lessons.rough_views import landing
from hubwright.lessons.views import setup_view
from hubwright.lessons.workings import working_of
from hubwright.quantities import Quantity
from hubwright.results import Results, solve
from hubwright.setup import load_text, vary
from hubwright.setup.model import Setup
from strategies import setups

_BOTH = re.compile(r'<span class="q"><span class="si">(.*?)</span><span class="us">.*?</span></span>', re.S)
LESSONS = sorted(page for page in (CONTENT / "lessons").glob("*.md") if page.stem[:2] in ("09", "10", "11", "12"))


def read(page: Path, renderer: Renderer) -> str:
    """A lesson as its reader sees it, in SI units, with its front matter read and its cautions at their place."""
    state, markdown = renderer.page(page.read_text(encoding="utf-8"), page.name)
    assert "\n".join(str(problem) for problem in state.problems) == ""
    assert state.lesson == int(page.stem[:2])
    assert state.title
    assert state.hazards
    html = state.put_back(state.put_back(markdown), late=True)
    assert html.index('class="caution"') < html.index("\n## ")
    text = " ".join(re.sub(r"<[^>]+>", " ", _BOTH.sub(r"\1", html)).replace("\u00a0", " ").split())
    assert not re.search(r"\b(None|nan|inf)\b|\{\{|\{%|−0 ", text)
    return text


def texts_of(setup: Setup) -> tuple[Results, dict[str, str]]:
    renderer = Renderer(course_of(setup), Undrawn())
    return renderer.course.results[setup.stem], {page.stem[:2]: read(page, renderer) for page in LESSONS}


def agree(results: Results, texts: dict[str, str]) -> None:
    """Every lesson of these says what the numbers say, or what is missing."""
    spacer_or_offset(results, texts["09"])
    askew(results, texts["10"])
    drops(results, texts["11"])
    wet(results, texts["12"])


@pytest.mark.parametrize("stem", VEHICLES)
def test_the_rough_lessons_hold_for_each_demonstration_vehicle(stem: str) -> None:
    course = Course.read(CONTENT, in_view=stem)
    renderer = Renderer(course, Undrawn())
    agree(course.results[stem], {page.stem[:2]: read(page, renderer) for page in LESSONS})


@settings(
    max_examples=4,
    deadline=None,
    phases=(Phase.explicit, Phase.reuse, Phase.generate),
    suppress_health_check=list(HealthCheck),
)
@given(setup=setups(rows_known=False))
def test_the_rough_lessons_hold_for_random_setups(setup: Setup) -> None:
    agree(*texts_of(setup))


LEAST = """
name = "Least wagon"
[chassis]
total_mass = "1900 kg"
wheelbase = "2.60 m"
front_track = "1.52 m"
[tire]
size = "215/65R16"
[wheel]
rim_width = "6.5 in"
offset = "40 mm"
"""
LEAST_TRAILER = """
name = "Least trailer"
kind = "trailer"
[chassis]
axle_mass = "500 kg"
coupling_mass = "50 kg"
coupling_ahead_of_axle = "2.60 m"
track = "1.50 m"
[tire]
size = "165/80R13"
[wheel]
rim_width = "4.5 in"
offset = "30 mm"
[[case]]
name = "kerb"
kind = "drop"
height = "60 mm"
"""


@pytest.mark.parametrize("text", [LEAST, LEAST_TRAILER], ids=["vehicle", "trailer with a drop"])
def test_a_file_that_gives_the_least_has_all_four_lessons(text: str) -> None:
    setup = load_text(text, "least.toml")
    assert isinstance(setup, Setup)
    results, texts = texts_of(setup)
    agree(results, texts)
    assert "this file has no `[joint]` table" in texts["09"]
    assert "This file does not give `sealing.hub_temperature`" in texts["12"]
    if setup.kind == "trailer":
        assert results.left_out
        assert "says nothing of its springs" in texts["11"]
    else:
        assert "give `[steering]` its `scrub_radius`" in texts["09"]


PARTIAL = """
[joint]
studs = 5
thread = "M12x1.5"
property_class = "10.9"
tightening_torque = "110 N*m"
stud_circle = "114 mm"
{joint}
[steering]
scrub_radius = "-12 mm"
[sealing]
{sealing}
[lubrication]
contamination = "severe contamination"
"""


@pytest.mark.parametrize("joint", ["", "nut_factor = 0.18", "face_friction = 0.15\nengagement = '14 mm'"])
def test_a_table_that_lacks_some_keys_is_told_what_it_lacks(joint: str) -> None:
    setup = load_text(WAGON + PARTIAL.format(joint=joint, sealing='depth = "0.5 m"'), "wagon.toml")
    assert isinstance(setup, Setup)
    agree(*texts_of(setup))


def test_water_warmer_than_the_hub_draws_nothing() -> None:
    sealing = 'hub_temperature = "5 degC"\nwater_temperature = "20 degC"\ndepth = "0.5 m"'
    setup = load_text(WAGON + PARTIAL.format(joint="", sealing=sealing), "wagon.toml")
    assert isinstance(setup, Setup)
    text = texts_of(setup)[1]["12"]
    assert "for this water is the warmer" in text
    assert "does not pull; only the depth pushes" in text
    assert "The hub pulls water in" not in text


def test_a_trailer_that_gives_its_springs_has_its_drops() -> None:
    suspension = """
[suspension]
wheel_rate = "30 N/mm"
bump_damping = "800 N*s/m"
rebound_damping = "1600 N*s/m"
droop_travel = "60 mm"
bump_travel = "60 mm"
bump_stop_stiffness = "200 N/mm"
unsprung_mass = "45 kg"
"""
    setup = load_text(TRAILER + suspension, "trailer.toml")
    assert isinstance(setup, Setup)
    agree(*texts_of(setup))


@pytest.mark.parametrize("height", [0.02, 0.15, 1.0])
def test_the_workings_of_a_landing_come_to_its_results(height: float) -> None:
    setup = load_text(WAGON, "wagon.toml")
    assert isinstance(setup, Setup)
    fallen = landing(setup_view(solve(setup), "stock"), Quantity(height, "m"))
    for path in ("energy", "bound"):
        result = getattr(fallen, path)
        assert isinstance(result, Quantity)
        agrees(path, working_of(fallen, path), result)


def test_weight_times_height_is_an_energy_and_no_force() -> None:
    setup = load_text(WAGON, "wagon.toml")
    assert isinstance(setup, Setup)
    results, height = solve(setup), Quantity(0.15, "m")
    weight, bound = Quantity(results.weight.wheel_loads[results.wheel], "N"), Quantity(1.0, "N")
    energy = landing(setup_view(results, "stock"), height).energy
    assert isinstance(energy, Quantity)
    # the lesson's sum and the product of what it multiplies, units and all
    assert (weight * height - energy).value == pytest.approx(0.0, abs=1e-9)
    assert (energy / height - weight).value == pytest.approx(0.0, abs=1e-9)
    with pytest.raises(DimensionError, match="differ in kind"):
        energy + bound


def spacer_or_offset(results: Results, text: str) -> None:
    """Lesson 9: both ways load the bearing alike, solved here once more; the joint and steering, or what is missing."""
    setup, t = results.setup, 0.025
    spaced = solve(vary(setup, {"wheel.spacer": f"{setup.wheel.spacer + t!r} m"}), results.wheel)
    wheels = solve(vary(setup, {"wheel.offset": f"{setup.wheel.offset - t!r} m"}), results.wheel)
    for name, case in spaced.cases.items():
        other = wheels.cases[name]
        assert case.bearing_force.z == pytest.approx(other.bearing_force.z, rel=1e-9)
        assert case.bearing_moment.x == pytest.approx(other.bearing_moment.x, rel=1e-9, abs=1e-6)
    one = found(r"tips this hub with spacers ([\d.,]+ k?N·m)", text)
    assert one == found(r"tips it with wheels of as much less offset ([\d.,]+ k?N·m)", text)
    assert newtons(one.removesuffix("·m")) == pytest.approx(
        abs(spaced.cases["standing"].bearing_moment.x), rel=ALIKE, abs=0.01
    )
    assert found(r"The two differ by \| ([\d.]+) N·m", text) == "0"
    joint = setup.joint
    assert ("this file has no `[joint]` table" in text) == (joint is None)
    if joint is not None:
        assert ("`[joint]` table lacks `nut_factor`" in text) == (joint.nut_factor is None)
        assert ("lacks `engagement`" in text) == (joint.engagement is None)
        held = joint.nut_factor is not None and joint.face_friction is not None
        assert ("Keeps a margin of" in text) == held
    steers = setup.kind == "vehicle" and results.wheel.startswith("front")
    assert ("These wheels do not steer" in text) == (not steers)
    if steers:
        scrub = None if setup.steering is None else setup.steering.scrub_radius
        assert ("give `[steering]` its `scrub_radius`" in text) == (scrub is None)
        if scrub is not None and abs(scrub) > 1e-4:
            side = found(r"meets the ground [\d.]+ mm (inboard|outboard) of the middle of the tire", text)
            assert side == ("inboard" if scrub > 0 else "outboard")


def drops(results: Results, text: str) -> None:
    """Lesson 11: the energy and the bound by hand, the order of peak and bound; without springs the reason for none."""
    setup, height = results.setup, 0.150
    weight = results.weight.wheel_loads[results.wheel]
    energy = float(found(r"What comes out is ([\d,.]+) J", text).replace(",", ""))
    assert energy == pytest.approx(weight * height, rel=ALIKE)
    stiffness, deflection = re.search(
        r"It is a spring of ([\d.,]+) N/mm, and standing it is pressed in by ([\d.]+) mm", text
    ).groups()  # type: ignore[union-attr]
    assert float(stiffness) * float(deflection) == pytest.approx(weight, rel=2 * ALIKE)
    # energy balance of a spring: k x²/2 = W (s + x), solved for the largest k x
    k, W = float(stiffness) * 1e3, weight
    x = (W + math.sqrt(W * W + 2 * k * W * height)) / k
    assert newtons(found(r"the tire pushes hardest: ([\d.,]+ k?N)", text)) == pytest.approx(k * x, rel=2 * ALIKE)
    assert "no strict ceiling" in text
    sprung = setup.suspension is not None
    assert ("Drops from several heights" in text or "Bearing, peak" in text) == sprung
    if not sprung:
        assert "says nothing of its springs" in text
        assert "Give it a `[suspension]` table" in text
        return
    peak, word, bound = re.search(
        r"tire's force peaks at ([\d.,]+ k?N), (more than|less than|as much as) the ([\d.,]+ k?N)",
        text.replace("’", "'"),
    ).groups()  # type: ignore[union-attr]
    if abs(newtons(peak) / newtons(bound) - 1) > 2 * ALIKE:
        assert word == order(newtons(peak), newtons(bound))
    solved = solve(
        vary(
            setup,
            {
                "case": [{"name": "fall", "kind": "drop", "height": "150 mm"}],
                "duty": [{"case": "standing", "share": 1}],
            },
        ),
        results.wheel,
    )
    extras = solved.cases["fall"].extras
    assert newtons(peak) == pytest.approx(extras["peak_tire_force"], rel=ALIKE)
    assert newtons(found(r"The bearing gets ([\d.,]+ k?N)", text)) == pytest.approx(
        extras["peak_bearing_force"], rel=ALIKE
    )
    assert ("Keeps a dent margin of" in text) == (solved.life is not None)
    if solved.life is not None:
        safety = solved.life.cases["fall"].static_safety
        row = found(r"\| 150 mm \| [\d.,]+ k?N \| [\d.,]+ MPa \| ([\d.]+)", text)
        assert float(row) == pytest.approx(min(safety.outboard, safety.inboard), rel=0.05)


def askew(results: Results, text: str) -> None:
    """Lesson 10: ways of tipping on the slope, stability and ledge by hand, and the warning before any angle."""
    setup, it = results.setup, results.setup.kind
    slope = float(found(r"across a slope of ([\d.]+)°", text))
    uphill = "right" if results.side > 0 else "left"
    case = {"name": "down", "kind": "side_slope", "angle": f"{slope} deg", "uphill": uphill}
    solved = solve(vary(setup, {"case": [case], "duty": [{"case": "standing", "share": 1}]}), results.wheel)
    tipping = results.side * solved.cases["down"].bearing_moment.x
    assert found(rf"tips the downhill hub’s top (toward|away from) the {it}", text) == (
        "toward" if tipping > 0 else "away from"
    )
    assert solved.cases["down"].contact_force.z > solved.cases["standing"].contact_force.z * math.cos(
        math.radians(slope)
    ) * (1 - 1e-9)
    assert text.index("tips well before its static angle") < text.index("By the drawing that happens at")
    chassis = setup.chassis
    track = getattr(chassis, "track", None) or (chassis.front_track + chassis.rear_track) / 2
    figure = float(found(rf"and this {it} has ([\d.]+)", text))
    assert figure == pytest.approx(track / (2 * results.weight.centre_of_mass_height), abs=0.006)
    radius, weight = results.wheel_geometry.loaded_radius, results.weight.wheel_loads[results.wheel]
    # moments about the edge: push at the height of the wheel's middle above it, load at its distance behind it
    for height in (0.020, 0.080, 0.120):
        lever = radius - height
        push = weight * math.sqrt(radius**2 - lever**2) / lever
        shown = found(rf"\| {round(height * 1000)} mm \| [\d.]+° \| ([\d.,]+ k?N)", text)
        assert newtons(shown) == pytest.approx(push, rel=ALIKE)
    assert ("no diagonal to stand on" in text) == (it == "trailer")
    if it == "vehicle":
        axle = results.weight.axle_loads[results.wheel.partition("_")[0]]
        assert newtons(found(r"With only two wheels on the ground, this one carries ([\d.,]+ k?N)", text)) == (
            pytest.approx(axle, rel=ALIKE)
        )


def wet(results: Results, text: str) -> None:
    """Lesson 12: suction and depth by hand, what the file lacks, an example said to be one."""
    setup, example = results.setup, (333.15, 283.15, 0.300)
    sealing = setup.sealing
    given_values = (
        (None,) * 3 if sealing is None else (sealing.hub_temperature, sealing.water_temperature, sealing.depth)
    )
    hot, cold, deep = (usual if own is None else own for own, usual in zip(given_values, example, strict=True))
    assert ("the ford on this page is an example" in text) == (None in given_values)
    for key, own in zip(("hub_temperature", "water_temperature", "depth"), given_values, strict=True):
        assert (f"`sealing.{key}`" in text) == (own is None)
    # 101 325 Pa, the standard atmosphere; 1000 kg/m3 of fresh water
    assert float(found(r"as its air cools, at the most ([\d.]+) kPa", text)) == pytest.approx(
        101.325 * (1 - cold / hot), rel=ALIKE
    )
    depth = float(found(r"is what the depth adds outside ([\d.]+) kPa", text))
    assert depth == pytest.approx(9.80665 * deep, rel=ALIKE, abs=1e-3)
    known = results.life is not None
    assert ("Factor on the standing life" in text) == known
    assert ("For this bearing it cannot be worked out" in text) != known
    lubrication = setup.lubrication
    if known and (lubrication is None or lubrication.viscosity_ratio is None):
        assert "This file does not give `lubrication.viscosity_ratio`" in text
    if known and (lubrication is None or lubrication.contamination is None):
        assert "give `lubrication.contamination` one of the classes" in text

"""Load on every element: pushes that add up to the bearing force, true scales, words that say which row is unloaded."""

import math
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hubwright.drawing import draw
from hubwright.errors import MissingDataError
from hubwright.quantities import format_quantity
from hubwright.results import Results, described_wheels, solve
from hubwright.results.life import RowElements
from hubwright.results.model import Rows
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.element_loads import element_loads
from hubwright.scenes.row_elements import life_of_case, rows_drawn
from hubwright.scenes.vocabulary import Force, LeaderDimension, Note, Part, Words
from hubwright.setup import load
from hubwright.setup.model import Setup
from scene_checks import SLOW, check_scene, check_written_scales, is_round
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
VEHICLES = ("hill-wagon", "supply-van", "kit-trailer")


def pushes(results: Results, case: str) -> tuple[float, float, float]:
    """The sum of what all elements push the outer ring with, from the arrows of the round views and their angles."""
    rows = rows_drawn(results, life_of_case(results, case, "this"))
    arrows = [item for item in element_loads(results, case=case).items if isinstance(item, Force)]
    x = y = z = 0.0
    for row in rows:
        inward = -results.side if row.name == "outboard" else results.side
        for number, element in enumerate(row.elements, start=1):
            drawn = [arrow for arrow in arrows if arrow.name == f"element-{row.name}-{number}"]
            for arrow in drawn:
                x += arrow.vector[0] * math.cos(element.angle)
                z += arrow.vector[1] * math.cos(element.angle)
                y += inward * math.hypot(*arrow.vector) * math.sin(element.angle)
    return x, y, z


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_the_pushes_add_up_to_the_bearing_force(vehicle: str) -> None:
    setup = load(CONTENT / f"vehicles/{vehicle}.toml")
    for wheel in described_wheels(setup):
        results = solve(setup, wheel)
        # where the outer rings turn, the elements answer on the turning parts instead of passing their load on
        sign = -1.0 if setup.bearing.turning_ring == "outer" else 1.0
        for case, state in results.cases.items():
            B = state.bearing_force
            expected = (sign * B.x, sign * B.y, sign * B.z)
            # the closeness of the solver, and arrows too short to be drawn
            assert pushes(results, case) == pytest.approx(expected, abs=1e-4 * math.hypot(*expected))


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_the_arrow_in_section_points_up_or_down_as_the_words_beside_it_say(vehicle: str) -> None:
    setup = load(CONTENT / f"vehicles/{vehicle}.toml")
    looked_at = set()
    for wheel in described_wheels(setup):
        results = solve(setup, wheel)
        for case in results.cases:
            scene = element_loads(results, case=case)
            assert "from the rear" not in scene.caption
            for row in rows_drawn(results, life_of_case(results, case, "this")):
                arrow = next((item for item in scene.items if item.name == f"load-{row.name}"), None)
                if arrow is None:
                    continue
                assert isinstance(arrow, Force)
                beside = next(item for item in scene.items if item.name == f"numbers-{row.name}")
                assert isinstance(beside, Words)
                place = beside.lines[0]
                if place not in ("straight ahead", "straight behind"):
                    assert (arrow.vector[1] > 0) == place.endswith("straight up"), (wheel, case, row.name)
                    looked_at.add(place.split()[-1])
                assert arrow.vector[0] * row.push.y > 0  # across, all elements of a row push one way
                view = scene.view(f"section-{row.name}")
                assert view.frame is not None
                rings = [item for item in scene.items if isinstance(item, Part) and item.view == view.name]
                heights = [view.on_sheet(point)[1] for part in rings for ring in part.rings for point in ring]
                assert view.frame[1] < min(heights)
                assert max(heights) < view.frame[3]
                outer = next(part for part in rings if part.name.endswith("-outer"))
                high = [view.on_sheet(point)[1] for point in outer.rings[0]]
                # the outer ring lies beyond the element, where the arrow points
                assert (sum(high) / len(high) > sum(heights) / len(heights)) == (arrow.vector[1] > 0)
    assert looked_at == {"up", "down"}


def test_the_load_of_a_standing_wheel_is_at_the_top_of_an_inner_ring_and_at_the_foot_of_an_outer_one() -> None:
    for vehicle, place in (("hill-wagon", 0.0), ("kit-trailer", math.pi)):
        results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
        rows = rows_drawn(results, life_of_case(results, "standing", "this"))
        most = max(rows, key=lambda row: row.worst.load)
        assert most.worst.place == pytest.approx(place)


@given(chosen=setups(), data=st.data())
@SLOW
def test_every_valid_setup_has_its_figure(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    cases = FIGURES["load on every rolling element"].cases(results)
    assert bool(cases) == (results.life is not None)
    if not cases:
        with pytest.raises(MissingDataError, match="the load on every element needs"):
            element_loads(results)
        return
    units = data.draw(st.sampled_from(("si", "us")))
    scene = element_loads(results, case=data.draw(st.sampled_from(cases)), units=units)
    check_scene(scene)
    assert is_round(scene.view("outboard").newtons_per_mm or 0.0)
    assert scene.view("outboard").newtons_per_mm == scene.view("section-inboard").newtons_per_mm


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn_to_scale(vehicle: str, units) -> None:
    setup = load(CONTENT / f"vehicles/{vehicle}.toml")
    for wheel in described_wheels(setup):
        results = solve(setup, wheel)
        for case in results.cases:
            scene = element_loads(results, case=case, units=units)
            check_scene(scene)
            assert check_written_scales(scene) > 6


def test_an_unloaded_row_is_said() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    life = results.life
    assert life is not None
    solved = life.cases["standing"]
    nothing = RowElements((0.0,) * 13, (solved.inboard.angle[0],) * 13)
    idle = replace(
        solved,
        inboard=nothing,
        peak_contact_pressure=Rows(solved.peak_contact_pressure.outboard, 0.0),
        static_safety=Rows(solved.static_safety.outboard, math.inf),
    )
    results.__dict__["life"] = replace(life, cases={"standing": idle})  # where the cached property keeps it
    scene = element_loads(results, case="standing")
    check_scene(scene)
    assert scene.title.startswith("The inboard row is unloaded; in the outboard row")
    assert "The inboard row is unloaded." in scene.description
    assert not any(item.view == "inboard" for item in scene.items if isinstance(item, Force))


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("units", ["si", "us"])
def test_a_load_is_the_same_number_wherever_it_stands(vehicle: str, units) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    for case in results.cases:
        scene = element_loads(results, case=case, units=units)
        beside = {item.name: item for item in scene.items if isinstance(item, Words)}
        at_tips = {item.name: item.label.lines[0] for item in scene.items if isinstance(item, Note)}
        for row in ("outboard", "inboard"):
            (tip,) = {line for name, line in at_tips.items() if name.startswith(f"label-element-{row}-")}
            assert beside[f"worst-{row}"].lines == (f"*Most loaded: {tip.removeprefix('*')}",)
            assert tip.removeprefix("*").replace("\u00a0", " ") in scene.description.replace("\u00a0", " ")


def test_another_load_of_a_row_than_in_other_figures_is_told_with_its_reason() -> None:
    wagon = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    scene = element_loads(wagon, case="standing")
    (told,) = (item for item in scene.items if item.name == "kept-outboard")
    assert isinstance(told, Words)
    rows = wagon.cases["standing"].row_radial_load  # by levers, with the contact angle of the unloaded rings
    assert rows is not None
    assert format_quantity(rows.outboard, "force", "si") in " ".join(told.lines)
    assert "contact angle at 35°" in " ".join(told.lines)
    assert " ".join(told.lines) in scene.description
    # a roller keeps its contact angle, so both ways come to one load
    trailer = element_loads(solve(load(CONTENT / "vehicles/kit-trailer.toml")), case="standing")
    assert {item.lines for item in trailer.items if isinstance(item, Words) and item.name.startswith("kept")} == {()}


def test_the_contact_angle_of_rollers_stands_beyond_the_upright_and_off_the_load() -> None:
    scene = element_loads(solve(load(CONTENT / "vehicles/kit-trailer.toml")), case="standing", units="us")
    for text in (text for text in draw(scene).texts if "contact-angle" in text.name):
        row = "outboard" if text.name.endswith("outboard") else "inboard"
        view = scene.view(f"section-{row}")
        arrow = next(item for item in scene.items if isinstance(item, Force) and item.name == f"load-{row}")
        foot = view.on_sheet(arrow.at)[0]
        assert (text.box[0] > foot + 4.0) if arrow.vector[0] > 0 else (text.box[2] < foot - 4.0)  # mirrored


def test_no_dimension_line_lies_on_a_ball() -> None:
    # a ball is light on both sheets, a dimension line is light on the dark one
    scene = element_loads(solve(load(CONTENT / "vehicles/hill-wagon.toml")), case="standing")
    assert not any(isinstance(item, LeaderDimension) for item in scene.items)
    said = {item.label.lines for item in scene.items if isinstance(item, Note) and item.view == "section-outboard"}
    assert said == {("ø 12.7\u00a0mm",)}


def test_the_unit_of_bare_numbers_stands_where_they_stand() -> None:
    # on a phone arrows have no numbers but that of the most loaded
    scene = element_loads(solve(load(CONTENT / "vehicles/hill-wagon.toml")), case="standing", units="us")
    assert "numbers" not in scene.caption
    assert [item.lines for item in scene.items if isinstance(item, Words) and item.name.startswith("unit-")] == [
        ("numbers at the arrows in lbf",)
    ] * 2

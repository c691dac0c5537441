"""What the wheel-end section says: forces of the free body, levers of the data, words that agree with both."""

import re
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from drawing.written_checks import wrong_with
from hubwright.drawing import draw
from hubwright.quantities import format_quantity
from hubwright.results import Results, described_wheels, solve
from hubwright.results.model import RowVectors, Vector
from hubwright.scenes.vocabulary import (
    LENGTH_OFF_SCALE,
    NOT_TO_SCALE,
    Dimension,
    Dot,
    Force,
    Label,
    Line,
    Moment,
    Normal,
    Note,
    Part,
    Scene,
    Units,
    Words,
)
from hubwright.scenes.wheel_end_bridge import bridge
from hubwright.scenes.wheel_end_section import wheel_end_section
from hubwright.scenes.wheel_end_words import Wording
from hubwright.setup import load, load_text
from hubwright.setup.model import Setup
from scene_checks import SLOW
from strategies import setups

VEHICLES = Path(__file__).parents[2] / "content" / "vehicles"
DEMONSTRATION = ("hill-wagon", "supply-van", "kit-trailer")
SIZES = {"N": 1.0, "kN": 1e3, "lbf": 4.4482216152605, "mm": 1e-3, "in": 0.0254}


def setup(name: str) -> Setup:
    """Return a demonstration vehicle."""
    loaded = load(VEHICLES / f"{name}.toml")
    assert isinstance(loaded, Setup)
    return loaded


@pytest.fixture(scope="module")
def wagon() -> Results:
    return solve(setup("hill-wagon"))


def check_forces(results: Results, case: str, scene: Scene) -> None:
    """Every arrow is a component of the free body, or of the sum of its reactions, at the point where it acts."""
    body = results.cases[case].free_body
    sums = np.sum([(f.force.x, f.force.y, f.force.z) for f in body.forces if f.kind == "reaction"], axis=0)
    origin = np.zeros(3)
    wanted: dict[str, tuple[np.ndarray, np.ndarray]] = {
        "B_x": (sums * (1, 0, 0), origin),
        "B_y": (sums * (0, 1, 0), origin),
        "B_z": (sums * (0, 0, 1), origin),
    }
    names = {"F_x": "contact", "F_y": "contact", "F_z": "contact", "F_A": "row_outboard", "F_Ax": "row_outboard",
             "F_B": "row_inboard", "F_Bx": "row_inboard", "caliper_x": "caliper", "caliper_z": "caliper"}  # fmt: skip
    axes = {"F_x": "x", "F_y": "y", "F_z": "z", "F_A": "z", "F_Ax": "x", "F_B": "z", "F_Bx": "x"}
    for item, force in names.items():
        try:
            single = body.force(force)
        except StopIteration:
            continue
        axis = axes.get(item, item[-1])
        vector = np.array([single.force.x, single.force.y, single.force.z]) * [axis == a for a in "xyz"]
        wanted[item] = vector, np.array([single.point.x, single.point.y, single.point.z])
    if results.setup.brake is not None:  # on the disc in the cut: above the axle if the bearing pushes from below
        height = results.setup.brake.effective_radius * (1.0 if sums[2] >= 0 else -1.0)
        for item in ("caliper_x", "caliper_z"):
            wanted[item] = wanted[item][0], wanted[item][1] + (0.0, 0.0, height)
    for single in body.forces:
        if single.name.startswith(("weight", "inertia")):
            vector = np.array([single.force.x, single.force.y, single.force.z])
            wanted[single.name] = vector, np.array([single.point.x, single.point.y, single.point.z])
    drawn = [item for item in scene.items if isinstance(item, Force | Normal) and not item.name.startswith("pressure-")]
    assert drawn
    largest = max(float(np.abs(vector).max()) for vector, _ in wanted.values())
    for item in drawn:
        vector, point = wanted[item.name]
        if item.name.startswith("inertia_"):  # one that acts as the weight does begins where the weight's arrow ends
            weight, view = body.force(item.name.replace("inertia", "weight")).force.z, scene.view(item.view)
            along = weight / (view.newtons_per_mm or 1.0) / view.scale if weight * vector[2] > 0 else 0.0
            point = point + np.array((0.0, 0.0, along * 1e-3))
        assert item.at == pytest.approx(tuple(point[1:] * 1e3), abs=1e-6), item.name
        if isinstance(item, Force):
            assert item.vector == pytest.approx(tuple(vector[1:]), abs=1e-6 * largest), item.name
        else:  # seen from the rear, forward is away from the viewer
            assert item.newtons == pytest.approx(-vector[0], abs=1e-6 * largest), item.name
    # and nothing is left out: each component that is more than rounding is drawn
    present = {item.name for item in drawn if not isinstance(item, Normal)}
    for name, (vector, _) in wanted.items():
        if np.abs(vector[1:]).max() > 1e-5 * largest:
            assert name in present, name


def case_names(results: Results) -> list[str]:
    return list(results.cases)


@pytest.mark.parametrize("vehicle", DEMONSTRATION)
@pytest.mark.parametrize("units", ["si", "us"])
def test_every_case_of_the_demonstration_is_drawn_without_conflict(vehicle: str, units: Units) -> None:
    chosen = setup(vehicle)
    for wheel in described_wheels(chosen):
        results = solve(chosen, wheel)
        for case in case_names(results):
            scene = wheel_end_section(results, case=case, units=units)
            check_forces(results, case, scene)
            assert wrong_with(draw(scene)) == [], (wheel, case)


@SLOW
@given(chosen=setups(rows_known=False), data=st.data())
def test_every_valid_setup_has_a_section(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    case = data.draw(st.sampled_from(case_names(results)))
    scene = wheel_end_section(results, case=case, units=data.draw(st.sampled_from(("si", "us"))))
    check_forces(results, case, scene)
    assert len(scene.steps) == max(item.step for item in scene.items) or results.bearing.effective_spread is None
    assert all("nan" not in text for text in (scene.title, scene.caption, scene.description))
    # nothing leaves the sheet: arrows end within it
    for item in scene.items:
        if isinstance(item, Force):
            view = scene.view(item.view)
            assert view.newtons_per_mm is not None
            x, y = view.on_sheet(item.at)
            way = -1 if item.tip_at_point else 1
            tail = (x - way * item.vector[0] / view.newtons_per_mm, y + way * item.vector[1] / view.newtons_per_mm)
            assert 0 < tail[0] < scene.size[0], item.name
            assert 20 < tail[1] < scene.size[1], item.name


def test_the_arrows_of_the_contact_pressure_add_up_to_the_contact_force(wagon: Results) -> None:
    scene = wheel_end_section(wagon)
    arrows = [item for item in scene.items if isinstance(item, Force) and item.name.startswith("pressure-")]
    assert sum(item.vector[1] for item in arrows) == pytest.approx(wagon.cases["standing"].contact_force.z)
    assert len(arrows) % 2 == 0
    middle = np.mean([item.at[0] for item in arrows])
    assert middle == pytest.approx(wagon.wheel_geometry.load_line_offset * 1e3)


def test_dimensions_are_the_data(wagon: Results) -> None:
    scene = wheel_end_section(wagon)
    drawn = {item.name: item for item in scene.items if isinstance(item, Dimension)}
    data = {
        "load-line-offset": wagon.wheel_geometry.load_line_offset,
        "offset": wagon.setup.wheel.offset,
        "hub-face": wagon.setup.hub.face_to_bearing_centre,
        "effective-spread": wagon.bearing.effective_spread,
        "loaded-radius": wagon.wheel_geometry.loaded_radius,
    }
    assert set(drawn) == set(data)
    for name, metres in data.items():
        item = drawn[name]
        axis = 0 if item.direction == "horizontal" else 1
        assert metres is not None
        assert abs(item.end[axis] - item.start[axis]) == pytest.approx(metres * 1e3), name


def test_offset_and_load_line_chain_from_the_wheel_face_to_the_centre(wagon: Results) -> None:
    drawn = {item.name: item for item in wheel_end_section(wagon).items if isinstance(item, Dimension)}
    assert drawn["offset"].end == drawn["load-line-offset"].start
    assert drawn["load-line-offset"].end[0] == 0.0


def test_pressure_centres_lie_where_the_row_loads_act(wagon: Results) -> None:
    scene = wheel_end_section(wagon)
    dots = [item.at for item in scene.items if isinstance(item, Dot) and item.name.startswith("pressure-centre")]
    body = wagon.cases["standing"].free_body
    assert dots[0][0] == pytest.approx(body.force("row_outboard").point.y * 1e3)
    assert dots[1][0] == pytest.approx(body.force("row_inboard").point.y * 1e3)


def test_a_load_outboard_is_answered_counter_clockwise_at_a_left_wheel(wagon: Results) -> None:
    moment = next(item for item in wheel_end_section(wagon).items if isinstance(item, Moment))
    # the road pushes up left of the centre: that turns clockwise as seen, so the bearing turns the hub back
    assert wagon.wheel_geometry.load_line_offset > 0
    assert moment.newton_metres > 0


def test_a_right_wheel_is_the_mirror_image_of_the_left() -> None:
    chosen = setup("hill-wagon")
    left, right = (wheel_end_section(solve(chosen, wheel)) for wheel in ("front_left", "front_right"))
    width = left.size[0]
    for name in ("whole", "detail", "lens"):
        assert right.view(name).origin == pytest.approx((width - left.view(name).origin[0], left.view(name).origin[1]))
    twins = {(item.name, item.view): item for item in right.items if isinstance(item, Force | Part)}
    for item in left.items:
        if isinstance(item, Force):
            twin = twins[item.name, item.view]
            assert isinstance(twin, Force)
            assert twin.at == pytest.approx((-item.at[0], item.at[1]))
            assert twin.vector == pytest.approx((-item.vector[0], item.vector[1]))
        elif isinstance(item, Part):
            twin = twins[item.name, item.view]
            assert isinstance(twin, Part)
            assert np.allclose(np.array(twin.rings[0]) * [-1, 1], item.rings[0])


def test_the_body_that_the_scene_carries_closes_and_is_that_of_the_results(wagon: Results) -> None:
    scene = wheel_end_section(wagon, case="firm braking")
    assert scene.body is not None
    body = wagon.cases["firm braking"].free_body
    assert {name for name, _, _ in scene.body.forces} == {force.name for force in body.forces}
    total = np.sum([force for _, force, _ in scene.body.forces], axis=0)
    assert total == pytest.approx(np.zeros(3), abs=1e-6)


def test_every_step_draws_something(wagon: Results) -> None:
    scene = wheel_end_section(wagon)
    assert {item.step for item in scene.items} == set(range(1, len(scene.steps) + 1))
    roles = {item.name: item.step for item in scene.items if isinstance(item, Force) and item.view == "whole"}
    assert roles["F_z"] < roles["weight_wheel"] < roles["B_z"]


def test_a_reversed_row_load_is_printed_with_a_direction_word() -> None:
    text = (VEHICLES / "hill-wagon.toml").read_text(encoding="utf-8").replace('spacer = "0 mm"', 'spacer = "50 mm"')
    chosen = load_text(text, "hill-wagon.toml")
    assert isinstance(chosen, Setup)
    results = solve(chosen)
    rows = results.cases["standing"].row_load
    assert rows is not None
    assert rows.inboard.z < 0 < rows.outboard.z
    scene = wheel_end_section(results)
    labels = [" ".join(item.label.lines) for item in scene.items if isinstance(item, Force) and item.label]
    assert not any("−" in label for label in labels)
    assert any("{F|B}" in label and "up on hub" in label for label in labels)
    bridge = next(item for item in scene.items if isinstance(item, Words) and item.name == "bridge-force")
    assert "down +" in bridge.lines[2]
    assert " up = " in bridge.lines[2]


def test_rows_whose_places_are_unknown_get_no_forces() -> None:
    text = (VEHICLES / "hill-wagon.toml").read_text(encoding="utf-8")
    head, rest = text.split("[bearing]", 1)
    after = rest[rest.index("\n[") :]
    chosen = load_text(f'{head}[bearing]\nkind = "tapered pair"\n{after}', "hill-wagon.toml")
    assert isinstance(chosen, Setup)
    scene = wheel_end_section(solve(chosen))
    assert not [item for item in scene.items if isinstance(item, Force) and item.view == "detail"]
    assert any(isinstance(item, Moment) for item in scene.items)
    assert "drawn schematically" in scene.caption
    assert wrong_with(draw(scene)) == []


def test_two_figures_can_share_their_scales(wagon: Results) -> None:
    scene = wheel_end_section(wagon, force_scale=500.0, sheet_scale=(1, 6))
    assert scene.view("whole").newtons_per_mm == scene.view("detail").newtons_per_mm == 500.0
    assert scene.view("whole").scale == pytest.approx(1 / 6)
    assert "1 : 6" in scene.scale_bars[0].caption


def test_the_title_says_on_which_side_the_road_pushes(wagon: Results) -> None:
    assert wheel_end_section(wagon).title == "The road pushes up 12 mm outboard of the bearing centre".replace(
        "12 mm", "12\u00a0mm"
    )
    inboard = replace(
        wagon, wheel_geometry=replace(wagon.wheel_geometry, load_line_offset=-wagon.wheel_geometry.load_line_offset)
    )
    assert "inboard" in wheel_end_section(inboard).title


def everything() -> list[tuple[Results, str, Units]]:
    """Return every demonstration vehicle in every case and both unit systems."""
    return [
        (results, case, units)
        for results in map(solve, map(setup, DEMONSTRATION))
        for case in results.cases
        for units in ("si", "us")
    ]


def test_what_is_multiplied_in_print_makes_the_printed_moment() -> None:
    product = re.compile(r"\((.+) ([+−]) (.+)\) · (.+) = ([^ ]+)")
    told = 0
    for results, case, units in everything():
        words = Wording(results, results.cases[case], units, schematic=False, hanging=False)
        lines = " ".join(bridge(words)[1]).replace(" (", "\n(").splitlines()  # a long one is broken before its result
        for line in lines:
            if match := product.match(line):
                read = (match[n].replace(",", "").split("\u00a0") for n in (1, 3, 4))
                larger, smaller, lever = (float(number) * SIZES[unit] for number, unit in read)
                made = (larger + (smaller if match[2] == "+" else -smaller)) * lever
                assert format_quantity(made, "moment", units) == match[5], line
                told += 1
    assert told >= 60


def test_a_long_product_is_broken_before_its_result(wagon: Results) -> None:
    # half a unit of the last printed digit: only further digits of the rows make it come out
    state = wagon.cases["standing"]
    assert wagon.bearing.effective_spread is not None
    for larger in range(11_500, 11_700):
        rows = RowVectors(Vector(0.0, 0.0, -float(larger)), Vector(0.0, 0.0, 5937.2))
        moment = Vector((larger + 5937.2) * wagon.bearing.effective_spread / 2, 0.0, 0.0)
        told = replace(state, row_load=rows, bearing_moment=moment)
        lines = bridge(Wording(wagon, told, "us", schematic=False, hanging=False))[1]
        assert all(len(line) <= 53 for line in lines if line.startswith("("))
        if lines[-1].startswith("= "):
            return
    raise AssertionError("no product of two hundred is long")


def test_a_moment_of_rows_that_bear_nearly_alike_is_a_product_of_symbols(wagon: Results) -> None:
    alike = RowVectors(Vector(0.0, 0.0, 3000.0), Vector(0.0, 0.0, 3000.004))
    state = replace(wagon.cases["standing"], row_load=alike)
    assert "({F|B} − {F|A}) · {ℓ}/2 = " in bridge(Wording(wagon, state, "si", schematic=False, hanging=False))[1][2]


def length_of(item: Force, scene: Scene) -> float:
    return float(np.hypot(*item.vector)) / (scene.view(item.view).newtons_per_mm or 1.0)


def test_a_reaction_shows_its_head_and_no_row_looks_smaller_than_the_lesser_one() -> None:
    off_scale = 0
    for results, case, units in everything():
        scene = wheel_end_section(results, case=case, units=units)
        drawn = [item for item in scene.items if isinstance(item, Force) and item.role == "reaction"]
        for item in drawn:
            assert not item.to_scale or length_of(item, scene) >= 3.0, (case, item.name)
        off_scale += sum(not item.to_scale for item in drawn)
    assert off_scale
    # 4.2 and 2.1 mm: the larger one would look smaller than the other, which is not to scale
    scene = wheel_end_section(solve(setup("hill-wagon")), force_scale=800.0)
    rows = [item for item in scene.items if isinstance(item, Force) and item.name in ("F_A", "F_B")]
    assert 3.0 < max(length_of(item, scene) for item in rows) < LENGTH_OFF_SCALE
    assert [item.to_scale for item in rows] == [False, False]


def test_each_force_of_a_row_has_words_and_a_leader_of_its_own(wagon: Results) -> None:
    scene = wheel_end_section(wagon, case="firm braking")
    for name in ("F_A", "F_Ax", "F_B", "F_Bx"):
        item = next(item for item in scene.items if item.name == name and item.view == "detail")
        assert isinstance(item, Force | Normal)
        assert item.label is not None
        assert item.label.lines[0].startswith(f"*{{F|{name[2:]}}} = ")  # the value in the same line
        assert sum(line.startswith("*") for line in item.label.lines) == 1
        assert (NOT_TO_SCALE in item.label.lines) == (isinstance(item, Force) and not item.to_scale)


def test_the_moment_about_the_vertical_is_told_with_its_sense(wagon: Results) -> None:
    scene = wheel_end_section(wagon, case="firm braking")
    rows = wagon.cases["firm braking"].row_load
    assert rows is not None
    # the hub is pushed forward, harder at the outboard row: at a left wheel that turns it to the right
    assert rows.outboard.x < rows.inboard.x < 0
    moment = format_quantity(wagon.cases["firm braking"].bearing_moment.z, "moment", "si").removeprefix("−")
    for text in (scene.caption, scene.description):
        assert f"seen from above, clockwise with {moment}" in text
    force = next(item for item in scene.items if isinstance(item, Normal) and item.name == "B_x")
    assert force.label is not None
    assert force.label.lines[2:] == (f"with {{M|z}} = {moment}", "clockwise from above")
    right = wheel_end_section(solve(setup("hill-wagon"), "front_right"), case="firm braking")
    assert "seen from above, counter-clockwise with" in right.caption


def test_a_slope_is_told_where_the_picture_is_tilted_with_the_vehicle() -> None:
    results = solve(setup("kit-trailer"))
    angle = next(case.angle for case in results.setup.cases if case.kind == "side_slope")
    for case, way in (("cross slope right", "outboard"), ("cross slope left", "inboard")):
        scene = wheel_end_section(results, case=case)
        text = f"The slope of {format_quantity(angle, 'angle', 'si')} is drawn level"
        assert f"{text}, with the vehicle: weights lean {way}, which is downhill." in scene.caption
    assert "drawn level" not in wheel_end_section(results).caption


def test_the_small_forces_are_long_enough_to_see_and_say_where_they_point() -> None:
    for results, case, units in everything():
        scene = wheel_end_section(results, case=case, units=units)
        drawn = [item for item in scene.items if isinstance(item, Force) and item.view == "lens"]
        weights = [item for item in drawn if item.name.startswith("weight_")]
        assert min(length_of(item, scene) for item in weights) > 1.6, (case, results.setup.name)
        labels = [item.label for item in scene.items if item.view == "lens" and isinstance(item, Force | Normal)]
        told = [label.lines for label in labels if isinstance(label, Label)]
        for lines in told:
            if any(line.startswith("inertia") for line in lines):
                assert set(lines[-1].split(" and ")) <= {"up", "down", "outboard", "inboard", "forward", "rearward"}


def test_the_lens_names_the_bearing_centre_and_has_a_scale_of_lengths(wagon: Results) -> None:
    scene = wheel_end_section(wagon)
    dot = next(item for item in scene.items if isinstance(item, Dot) and item.view == "lens")
    named = next(item for item in scene.items if isinstance(item, Note) and item.view == "lens")
    assert named.label.lines == ("{C}",)
    assert named.label.anchor == dot.at
    assert [bar.view for bar in scene.scale_bars if bar.quantity == "length"] == ["whole", "detail", "lens"]


def test_leaders_and_axes_do_not_run_on_into_words() -> None:
    for results, case, units in everything():
        scene = wheel_end_section(results, case=case, units=units)
        road = scene.view("whole").on_sheet((0.0, -results.wheel_geometry.loaded_radius * 1e3))[1]
        assert scene.columns[0].low > road + 2.5  # the leader of the contact pressure comes down to it
        axis = next(item for item in scene.items if isinstance(item, Line) and item.name == "axis-detail")
        view = scene.view("detail")
        end, other = (view.on_sheet(point)[0] for point in axis.points)
        assert end > scene.columns[1].x + 0.8, case
        assert view.frame is not None
        assert other == pytest.approx(view.frame[2])  # past it, it would look like a leader


def test_the_words_over_the_couple_say_whether_the_row_loads_add() -> None:
    told = set()
    for results, case, units in everything():
        if lines := bridge(Wording(results, results.cases[case], units, schematic=False, hanging=False))[1]:
            assert ("their sum" in lines[1]) == (" + " in lines[2]), lines
            assert ("their difference" in lines[1]) == (" − " in lines[2]), lines
            told.add("their sum" in lines[1])
    assert told == {True, False}


@pytest.mark.parametrize(
    ("vehicle", "wheel", "case"),
    [("kit-trailer", "left", "cross slope right"), ("supply-van", "front_right", "brisk corner left")],
)
def test_a_leader_reaches_a_level_reaction_from_above_or_below(vehicle: str, wheel: str, case: str) -> None:
    results = solve(setup(vehicle), wheel)
    scene = wheel_end_section(results, case=case)
    row = results.cases[case].free_body.force("row_inboard").force.z
    for view in (scene.view("whole"), scene.view("detail")):
        (arrow,) = [i for i in scene.items if isinstance(i, Force) and i.view == view.name and i.name == "B_y"]
        (line,) = [i for i in scene.items if i.name == f"line-{view.name}-B_y" and isinstance(i, Line)]
        assert arrow.label is not None
        assert line.points[1] == arrow.label.anchor
        (x0, y0), (x1, y1) = (view.on_sheet(point) for point in line.points)
        assert y0 == pytest.approx(view.origin[1])
        assert abs(y1 - y0) > 2 * abs(x1 - x0)
        # over the head of the moment's arc; in the detail on the side where the inboard row has no arrow
        assert y1 - y0 > 5.0 if view.name == "whole" else (y1 - y0) * row > 0


def test_the_arc_of_the_moment_does_not_cut_a_short_arrow_in_two(wagon: Results) -> None:
    scene = wheel_end_section(wagon, case="firm braking")
    items = {item.name: item for item in scene.items if item.view == "whole"}
    arrow, arc = items["B_z"], items["M_x"]
    assert isinstance(arrow, Force)
    assert isinstance(arc, Moment)
    assert not arrow.to_scale
    assert arrow.vector[1] > 0  # from below, where the arc runs
    assert arc.radius > arrow.gap + LENGTH_OFF_SCALE + 1.5

"""Two setups side by side: both closed, one scale, and lists that are true of the numbers."""

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from drawing.written_checks import wrong_with
from hubwright.drawing import draw
from hubwright.drawing.closure import left_over
from hubwright.errors import CaseError
from hubwright.results import Results, described_wheels, solve
from hubwright.scenes.small_forces import LEAST_ARROW
from hubwright.scenes.two_setups import two_setups
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Dimension, Force, Ground, Label, Normal, Note, Part, Scene, Words
from hubwright.setup import load, vary
from hubwright.setup.model import Setup
from scene_checks import SLOW, check_scene, check_written_scales, is_round
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
WAGON, WINTER = "vehicles/hill-wagon.toml", "setups/winter-fit-out.toml"
OFFSET, SUMMER = "setups/winter-offset-wheels.toml", "setups/summer-fit-out.toml"


def solved(file: str, wheel: str | None = None) -> Results:
    setup = load(CONTENT / file)
    assert isinstance(setup, Setup)
    return solve(setup, wheel)  # type: ignore[arg-type]


def even(first: Results, second: Results) -> list[str]:
    return [
        name for name, state in first.cases.items() if state.kind not in ("ledge", "two_wheel") and name in second.cases
    ]


def listed(scene: Scene, name: str) -> str:
    return "; ".join(item.lines[0] for item in scene.items if isinstance(item, Words) and f"words-{name}-" in item.name)


@given(first=setups(rows_known=False), second=setups(rows_known=False), data=st.data())
@SLOW
def test_any_two_valid_setups_can_be_compared(first: Setup, second: Setup, data: st.DataObject) -> None:
    wheels = [wheel for wheel in described_wheels(first) if wheel in described_wheels(second)]
    assume(wheels)
    wheel = data.draw(st.sampled_from(wheels))
    a, b = solve(replace(first, name="Crate carrier with a long name for a test"), wheel), solve(second, wheel)
    case = data.draw(st.sampled_from(even(a, b)))
    scene = two_setups(a, b, case=case, units=data.draw(st.sampled_from(("si", "us"))))
    assert wrong_with(draw(scene)) == []
    assert draw(scene, form="narrow")
    assert is_round(scene.view("first").newtons_per_mm or 0.0)
    assert scene.view("first").newtons_per_mm == scene.view("second").newtons_per_mm
    assert scene.view("first").scale == scene.view("second").scale
    assert [body.name for body in scene.bodies] == ["Crate carrier with a long name for a test", plain(second.name)]
    for body in scene.bodies:
        force, moment, largest, largest_moment = left_over(body)
        assert force <= 1e-9 * largest
        assert moment <= 1e-9 * largest_moment


@pytest.mark.parametrize(("first", "second"), [(WINTER, OFFSET), (WAGON, WINTER), (SUMMER, WINTER)])
@pytest.mark.parametrize("units", ["si", "us"])
@pytest.mark.parametrize("wheel", ["front_left", "front_right"])
def test_the_demonstration_is_drawn_to_scale(first: str, second: str, units, wheel: str) -> None:
    a, b = solved(first, wheel), solved(second, wheel)
    for case in even(a, b):
        scene = two_setups(a, b, case=case, units=units)
        check_scene(scene)
        assert check_written_scales(scene) + 2 >= 8  # weights may be too small to be drawn to scale


def test_spacer_and_offset_wheel_give_the_same_loads() -> None:
    # load_line_offset = face + spacer - offset: a spacer of 25 mm is 25 mm less offset (mechanics, wheel geometry)
    scene = two_setups(solved(WINTER), solved(OFFSET))
    assert "the joint differs, the bearing's loads do not" in scene.title
    assert "spacer 25\u00a0mm → none" in listed(scene, "moves")
    assert "wheel offset 30\u00a0mm → 5\u00a0mm" in listed(scene, "moves")
    for stays in ("load line 37\u00a0mm outboard", "outboard row", "inboard row", "axle height"):
        assert stays in listed(scene, "stays")


def test_every_arrow_is_a_force_of_its_own_results() -> None:
    a, b = solved(WAGON), solved(WINTER)
    scene = two_setups(a, b)
    for results, view in ((a, "first"), (b, "second")):
        body = results.cases["standing"].free_body
        drawn = {item.name: item for item in scene.items if isinstance(item, Force) and item.view == view}
        for name in ("row_outboard", "row_inboard"):
            arrow = drawn[f"reaction-{name}-{view}-z"]
            assert arrow.vector[1] == pytest.approx(body.force(name).force.z)
            assert arrow.at[0] == pytest.approx(body.force(name).point.y * 1e3)


@pytest.mark.parametrize("wheel", ["front_left", "front_right"])
@pytest.mark.parametrize("case", ["standing", "brisk corner right"])
def test_the_inboard_row_is_named_from_inboard_where_no_leader_crosses_another_arrow(wheel: str, case: str) -> None:
    scene = two_setups(solved(WAGON, wheel), solved(WINTER, wheel), case=case)
    texts = {text.name: text.box for text in draw(scene).texts}
    inboard = 1.0 if wheel == "front_left" else -1.0  # on the sheet
    for view in ("first", "second"):
        name = f"reaction-row_inboard-{view}-z"
        (arrow,) = [item for item in scene.items if item.name == name and isinstance(item, Force)]
        box = next(box for text, box in texts.items() if text == name or text.endswith(name))
        middle = (box[0] + box[2]) / 2
        assert (middle - scene.view(view).on_sheet(arrow.at)[0]) * inboard > 0


def test_labels_stand_outboard_of_both_wheels() -> None:
    for wheel, place in (("front_left", "left column"), ("front_right", "right column")):
        scene = two_setups(solved(WAGON, wheel), solved(WINTER, wheel))
        labels = [item.label for item in scene.items if isinstance(item, Force) and isinstance(item.label, Label)]
        assert {label.place for label in labels} == {place, "right" if place == "left column" else "left"}
        for column, name in zip(scene.columns, ("first", "second"), strict=True):
            outboard = column.x - scene.view(name).origin[0]
            assert outboard * (1 if wheel == "front_right" else -1) > 0
    left, right = (two_setups(solved(WAGON, wheel), solved(WINTER, wheel)) for wheel in ("front_left", "front_right"))
    # a wheel that is alike on both sides of the vehicle is the mirror image of itself, from edge of label to tire
    assert [c.x - left.view(n).origin[0] for c, n in zip(left.columns, ("first", "second"), strict=True)] == [
        right.view(n).origin[0] - c.x for c, n in zip(right.columns, ("first", "second"), strict=True)
    ]


def test_the_weights_of_a_body_stand_as_one_and_say_if_they_are_not_to_scale() -> None:
    a, b = solved(WAGON), solved(WINTER)
    scene = two_setups(a, b)
    per_mm = scene.view("first").newtons_per_mm or 0.0
    for results, view in ((a, "first"), (b, "second")):
        masses = [f for f in results.cases["standing"].free_body.forces if f.name.startswith("weight")]
        weight, moment = sum(f.force.z for f in masses), sum(f.force.z * f.point.y for f in masses)
        (arrow,) = [i for i in scene.items if isinstance(i, Force) and i.name == f"force-weight-{view}-z"]
        assert arrow.vector[1] == pytest.approx(weight)
        assert arrow.at[0] / 1e3 == pytest.approx(moment / weight)
        assert arrow.to_scale == (abs(weight) / per_mm >= LEAST_ARROW)


@pytest.mark.parametrize("wheel", ["front_left", "front_right"])
@pytest.mark.parametrize("case", ["brisk corner left", "brisk corner right"])
def test_weight_and_inertia_in_a_corner_are_one_arrow_clear_of_those_of_the_rows(wheel: str, case: str) -> None:
    a, b = solved(WAGON, wheel), solved(WINTER, wheel)
    scene = two_setups(a, b, case=case)
    for results, view in ((a, "first"), (b, "second")):
        forces = results.cases[case].free_body.forces
        masses = [f.force for f in forces if f.name.startswith(("weight", "inertia"))]
        (arrow,) = [i for i in scene.items if isinstance(i, Force) and i.view == view and i.name.startswith("force-m")]
        assert arrow.vector == pytest.approx((sum(f.y for f in masses), sum(f.z for f in masses)))
        assert arrow.label is not None
        assert [line[:5] for line in arrow.label.lines if line.startswith("*")] == ["*{W} ", "*{m a"]
        assert "as one arrow" in arrow.label.lines
        # upright arrows of the rows end at the axle, from below if they push up: beside one stands no other
        below = not arrow.tip_at_point
        for row in (f for f in forces if f.name.startswith("row")):
            apart = abs(row.point.y * 1e3 - arrow.at[0]) * scene.view(view).scale
            assert apart > 5.0 or (row.force.z > 0) != below


def test_the_weight_keeps_off_the_arrow_of_the_caliper() -> None:
    a, b = solved(WAGON), solved(WINTER)
    scene = two_setups(a, b, case="firm braking")
    for results, view in ((a, "first"), (b, "second")):
        # the caliper pushes the disc down at axle height, its arrow above: that of the weight hangs below
        assert results.cases["firm braking"].free_body.force("caliper").force.z < 0
        (arrow,) = [i for i in scene.items if isinstance(i, Force) and i.name == f"force-weight-{view}-z"]
        assert not arrow.tip_at_point


@pytest.mark.parametrize("case", ["standing", "brisk corner right"])
def test_a_leader_may_end_off_the_middle_of_its_arrow(case: str) -> None:
    # where five forces meet at the hub, leaders to the middles of all would pass one another's ends
    scene = two_setups(solved(WAGON), solved(WINTER), case=case)
    labels = [item.label for item in scene.items if isinstance(item, Force) and item.label is not None]
    assert all(len(set(label.also)) >= 3 for label in labels)


def test_a_row_that_reverses_is_told_in_words() -> None:
    a, b = solved(WAGON), solved(WINTER)
    before, after = (results.cases["standing"].row_load for results in (a, b))
    assert before is not None
    assert after is not None
    assert before.inboard.z > 0 > after.inboard.z  # on the row: what pushes the row up pushes the hub down
    scene = two_setups(a, b)
    line = next(line for line in listed(scene, "moves").split("; ") if line.startswith("inboard row"))
    assert " down → " in line
    assert line.endswith(" up")
    # face 42 mm and offset 30 mm, without and with a spacer of 25 mm
    assert "load line 12\u00a0mm outboard → 37\u00a0mm outboard" in listed(scene, "moves")


def test_a_load_line_that_stays_is_said_to_contribute_nothing() -> None:
    wagon = solved(WAGON)
    heavier = replace(wagon.setup, gear=solved(WINTER).setup.gear)
    scene = two_setups(wagon, solve(heavier))
    assert scene.title.startswith("The load line stays and contributes nothing")


def test_different_wheels_and_edges_are_refused() -> None:
    with pytest.raises(ValueError, match="at one wheel"):
        two_setups(solved(WAGON, "front_left"), solved(WINTER, "front_right"))
    with pytest.raises(CaseError, match="even road"):
        two_setups(solved(WAGON), solved(WINTER), case="stone ledge")


def test_the_key_has_a_spacer_where_there_is_one() -> None:
    for file, entries in ((WINTER, ["spacer"]), (SUMMER, [])):
        scene = two_setups(solved(WAGON), solved(file))
        assert [entry.text for entry in scene.key if entry.kind == "changed"] == entries


def test_a_spacer_that_is_changed_is_drawn_as_the_key_says() -> None:
    for first, second, drawn in (
        (WAGON, WINTER, [("changed", "changed")]),
        (WINTER, OFFSET, [("changed", "changed")]),
        (WINTER, WINTER, [("turning", "ink")] * 2),
    ):
        scene = two_setups(solved(first), solved(second))
        spacers = [
            i for i in scene.items if isinstance(i, Part) and i.name in ("part-first-spacer", "part-second-spacer")
        ]
        assert [(spacer.material, spacer.tone) for spacer in spacers] == drawn
        assert [entry.text for entry in scene.key if entry.kind == "changed"] == ["spacer"] * (first != second)


def test_the_centre_from_which_levers_are_measured_is_named_in_both() -> None:
    scene = two_setups(solved(WAGON), solved(WINTER))
    named = {item.view: item.label for item in scene.items if isinstance(item, Note)}
    assert {view: (label.lines, label.anchor) for view, label in named.items()} == dict.fromkeys(
        ("first", "second"), (("{C}",), (0.0, 0.0))
    )
    assert "at the bearing centre C" in scene.caption


def test_the_load_line_is_drawn_under_the_arrows() -> None:
    scene = two_setups(solved(WAGON), solved(WINTER))
    for view in ("first", "second"):
        (line,) = [item for item in scene.items if item.name == f"load-line-{view}"]
        arrows = [item for item in scene.items if isinstance(item, Force) and item.view == view]
        assert all((line.step, line.level) < (arrow.step, arrow.level) for arrow in arrows)


@pytest.mark.parametrize("wheel", ["front_left", "front_right"])
def test_a_leader_to_a_weight_that_is_all_head_ends_beside_it(wheel: str) -> None:
    # past its tip there is the nut of the shaft
    scene = two_setups(solved(WAGON, wheel), solved(WINTER, wheel))
    view = scene.view("second")
    (arrow,) = [i for i in scene.items if isinstance(i, Force) and i.name == "force-weight-second-z"]
    assert arrow.label is not None
    assert arrow.label.anchor is not None
    assert abs(arrow.vector[1]) < 3.0 * (view.newtons_per_mm or 0.0)
    outboard = 1.0 if wheel == "front_left" else -1.0
    assert (arrow.label.anchor[0] - arrow.at[0]) * outboard * view.scale == pytest.approx(1.1)


@pytest.mark.parametrize("units", ["si", "us"])
def test_levers_have_direction_words_and_add_up_to_the_move(units) -> None:
    van = load(CONTENT / "vehicles/supply-van.toml")
    scene = two_setups(solve(van), solve(vary(van, {"wheel.spacer": "25 mm"})), units=units)
    offsets = []
    for view in ("first", "second"):
        (lever,) = [i for i in scene.items if isinstance(i, Dimension) and i.name == f"dimension-load-line-{view}"]
        number, _, way = lever.text.split(" = ")[1].replace("\u00a0", " ").split(" ")
        offsets.append(float(number) * {"outboard": 1.0, "inboard": -1.0}[way])
    assert offsets[0] < 0 < offsets[1]
    moved = float(scene.title.split("moves ")[1].split("\u00a0")[0])
    assert offsets[1] - offsets[0] == pytest.approx(moved, abs=0.5 * 10.0 ** -len(str(moved).partition(".")[2]) + 1e-9)


def test_the_small_drawing_tells_its_scale_and_which_outline_is_which() -> None:
    scene = two_setups(solved(WAGON), solved(WINTER))
    told = "; ".join(line for item in scene.items if isinstance(item, Words) for line in item.lines)
    assert f"Both on one bearing, 1 : {1 / scene.view('overlay').scale:g}" in told
    assert "grey: the left one, orange: the right one" in told


@pytest.mark.parametrize("wheel", ["front_left", "front_right"])
def test_the_road_shows_alike_on_both_sides_and_off_the_words(wheel: str) -> None:
    scene = two_setups(solved(WAGON, wheel), solved(WINTER, wheel))
    for column, name in zip(scene.columns, ("first", "second"), strict=True):
        pieces = [item for item in scene.items if isinstance(item, Ground) and item.view == name]
        assert [piece.name.rsplit("-", 1)[1] for piece in pieces] == ["outboard", "inboard"]
        assert len({round(abs(piece.start[0] - piece.end[0]), 6) for piece in pieces}) == 1
        for piece in pieces:
            edge = scene.view(name).on_sheet(piece.end)[0]
            assert edge < column.x if column.side == "right" else edge > column.x


def test_a_ring_is_told_with_the_arrow_at_its_point() -> None:
    scene = two_setups(solved(WAGON), solved(WINTER), case="firm braking")
    rings = {item.name: item.newtons for item in scene.items if isinstance(item, Normal) and item.view == "first"}
    lines = [line for item in scene.items if isinstance(item, Force) and item.label for line in item.label.lines]
    assert len(rings) == 5  # road, both rows, caliper, inertia
    for symbol in ("{F|x} = ", "{F|Ax} = ", "{F|Bx} = ", "{K|x} = ", "{m a} = "):
        assert sum(line.startswith(symbol) for line in lines) == 2, symbol
    assert "its number stands with that of the arrow there" in scene.caption
    assert "ring" not in two_setups(solved(WAGON), solved(WINTER), case="standing").caption.replace("bearing", "")

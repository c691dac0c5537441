"""The three linked views: closed, one force in three projections, words of the numbers."""

from decimal import Decimal
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hubwright.drawing import draw
from hubwright.drawing.closure import left_over
from hubwright.drawing.geometry import cross
from hubwright.drawing.leaders import pieces
from hubwright.drawing.marks import Shape
from hubwright.results import Results, described_wheels, solve
from hubwright.scenes.small_forces import LEAST_ARROW
from hubwright.scenes.three_views import three_views
from hubwright.scenes.vocabulary import (
    LENGTH_OFF_SCALE,
    Dimension,
    Dot,
    Force,
    Ground,
    Item,
    Line,
    Moment,
    Normal,
    Note,
    Scene,
    Words,
)
from hubwright.scenes.wheel_end_actions import actions_of
from hubwright.setup import load
from hubwright.setup.model import Setup
from scene_checks import SLOW, check_scene, check_written_scales, is_round
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"


def components(scene: Scene, action: str) -> dict[str, set[float]]:
    """Return the components of one action as the arrows and rings of all views give them, in vehicle axes."""
    left = not scene.view("side").mirrored
    sights = {"rear": ("x", -1.0), "side": ("y", -1.0 if left else 1.0), "top": ("z", 1.0)}
    across = {"rear": "yz", "side": "xz", "top": "yx"}
    found: dict[str, set[float]] = {"x": set(), "y": set(), "z": set()}
    for item in scene.items:
        if isinstance(item, Force | Normal) and f"-{action}-" in item.name:
            if isinstance(item, Normal):
                axis, sign = sights[item.view]
                found[axis].add(round(sign * item.newtons, 6))
            else:
                for axis, value in zip(across[item.view], item.vector, strict=True):
                    if value:
                        found[axis].add(round(value, 6))
    return found


@given(chosen=setups(rows_known=False), data=st.data())
@SLOW
def test_every_valid_setup_has_its_three_views(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    case = data.draw(st.sampled_from(list(results.cases)))
    scene = three_views(results, case=case, units=data.draw(st.sampled_from(("si", "us"))))
    check_scene(scene)
    assert is_round(scene.view("rear").newtons_per_mm or 0.0)


@given(chosen=setups(rows_known=False), data=st.data())
@SLOW
def test_each_component_is_seen_twice_across_and_once_along_the_sight(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    case = data.draw(st.sampled_from(list(results.cases)))
    scene = three_views(results, case=case)
    largest = max(abs(part) for action in actions_of(results, results.cases[case]).all for part in vector(action.force))
    for action in actions_of(results, results.cases[case]).all:
        seen = components(scene, action.name)
        for axis, value in zip("xyz", vector(action.force), strict=True):
            if abs(value) > 1e-5 * largest:
                assert seen[axis] == {round(value, 6)}, (action.name, axis)
                drawn = [item for item in scene.items if item.name.split("-")[1:3] == [action.name, axis]]
                kinds = sorted(type(item).__name__ for item in drawn if isinstance(item, Force | Normal))
                assert kinds == ["Force", "Force", "Normal"]


def vector(force) -> tuple[float, float, float]:
    return force.x, force.y, force.z


@given(chosen=setups(rows_known=False), data=st.data())
@SLOW
def test_every_view_closes_as_it_is_drawn(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    case = data.draw(st.sampled_from(list(results.cases)))
    scene = three_views(results, case=case)
    largest = results.cases[case].free_body.largest_component
    for plane in ("rear", "side", "top"):
        view = scene.view(plane)
        way = np.array((-1.0 if view.mirrored else 1.0, 1.0))
        shown = [item for item in scene.items if isinstance(item, Force) and item.view == plane]
        for force in shown:  # none is a speck, and each has its name
            assert not force.to_scale or np.hypot(*force.vector) >= LEAST_ARROW * (view.newtons_per_mm or 0.0)
            assert force.label is not None
            assert force.label.lines
        assert sum((np.array(force.vector) for force in shown), np.zeros(2)) == pytest.approx(0.0, abs=1e-5 * largest)
        rings = [item.newtons for item in scene.items if isinstance(item, Normal) and item.view == plane]
        assert sum(rings) == pytest.approx(0.0, abs=1e-5 * largest)
        arms = [(np.array(force.at) * way / 1e3, np.array(force.vector) * way) for force in shown]
        turns = [at[0] * newtons[1] - at[1] * newtons[0] for at, newtons in arms]
        turns += [item.newton_metres for item in scene.items if isinstance(item, Moment) and item.view == plane]
        assert sum(turns) == pytest.approx(0.0, abs=1e-5 * largest)


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
def test_no_arrow_of_masses_and_bearing_lies_on_another(vehicle: str) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    for case in results.cases:
        scene = three_views(results, case=case)
        for plane in ("rear", "side", "top"):
            shown = [item for item in scene.items if isinstance(item, Force) and item.view == plane]
            for i, first in enumerate(shown):
                for second in shown[i + 1 :]:
                    assert shared(scene, first, second) < 0.1, (case, first.name, second.name)


def shared(scene: Scene, first: Force, second: Force) -> float:
    """Return on how much of one line two arrows lie [sheet mm]."""
    view = scene.view(first.view)
    ways = [np.array(force.vector) / np.hypot(*force.vector) for force in (first, second)]
    apart = (np.array(second.at) - np.array(first.at)) * view.scale
    if abs(ways[0] @ ways[1]) < 0.99 or abs(ways[0][0] * apart[1] - ways[0][1] * apart[0]) > 0.1:
        return 0.0
    spans = []
    for force, way in zip((first, second), ways, strict=True):
        long = np.hypot(*force.vector) / (view.newtons_per_mm or 1.0) if force.to_scale else LENGTH_OFF_SCALE
        near, far = force.gap, force.gap + long
        back = -1.0 if force.tip_at_point else 1.0
        start = np.array(force.at) * view.scale @ ways[0]
        spans.append(sorted(start + back * (way @ ways[0]) * reach for reach in (near, far)))
    return float(min(spans[0][1], spans[1][1]) - max(spans[0][0], spans[1][0]))


def test_on_a_slope_the_components_of_the_weight_have_names_of_their_own() -> None:
    results = solve(load(CONTENT / "vehicles/kit-trailer.toml"))
    scene = three_views(results, case="cross slope left")
    names = {words(item)[0].split(" = ")[0] for item in scene.items if "-weight-" in item.name and words(item)}
    assert names == {"*{W|z}", "*{W|y}", "{W|z}", "{W|y}"}
    level = three_views(results, case="standing")
    assert {words(item)[0].split(" = ")[0] for item in level.items if "-weight-" in item.name and words(item)} == {
        "*{W}",
        "{W}",
    }


def words(item: Item) -> tuple[str, ...]:
    label = getattr(item, "label", None)
    return () if label is None else label.lines


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
def test_an_arc_cuts_no_head_of_an_arrow(vehicle: str) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    for case in results.cases:
        scene = three_views(results, case=case)
        for moment in [item for item in scene.items if isinstance(item, Moment)]:
            view = scene.view(moment.view)
            for force in [item for item in scene.items if isinstance(item, Force) and item.view == moment.view]:
                way = np.array(force.vector) / np.hypot(*force.vector)
                long = np.hypot(*force.vector) / (view.newtons_per_mm or 1.0) if force.to_scale else LENGTH_OFF_SCALE
                tip = np.array(force.at) * view.scale + way * (-force.gap if force.tip_at_point else force.gap + long)
                head = [tip - way * part for part in np.linspace(0.0, min(4.0, 0.6 * long), 5)]
                lower = [point for point in head if point[1] <= 0.7 * abs(point[0])]  # over them no arc runs
                # half an arc's width and that of its halo
                assert all(abs(np.hypot(*point) - moment.radius) > 0.9 for point in lower), (case, force.name)


def test_every_view_names_the_bearing_centre_and_which_way_it_looks() -> None:
    for wheel in ("front_left", "front_right"):
        scene = three_views(solve(load(CONTENT / "vehicles/hill-wagon.toml"), wheel))
        marked = {item.view: item.label.lines for item in scene.items if isinstance(item, Note)}
        assert marked == {"rear": ("{C}, the bearing centre",), "side": ("{C}",), "top": ("{C}",)}
        forward = "left" if wheel == "front_left" else "right"
        assert scene.view("side").heading.endswith(f"forward on the {forward}")
        assert scene.view("rear").heading.endswith(f"outboard on the {forward}")
        assert scene.view("top").heading.endswith("forward at the top")


@pytest.mark.parametrize("wheel", ["front_left", "front_right"])
def test_the_height_of_the_axle_ends_on_the_ground(wheel) -> None:
    scene = three_views(solve(load(CONTENT / "vehicles/hill-wagon.toml"), wheel))
    height = next(item for item in scene.items if isinstance(item, Dimension) and item.direction == "vertical")
    ground = next(item for item in scene.items if isinstance(item, Ground) and item.view == "side")
    ends = sorted(scene.view("side").on_sheet(end)[0] for end in (ground.start, ground.end))
    assert ends[0] < height.line_at < ends[1]


@given(chosen=setups(rows_known=False), data=st.data())
@SLOW
def test_the_gathered_body_closes(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    for state in results.cases.values():
        force, moment, largest, largest_moment = left_over(actions_of(results, state).closed())
        assert force <= 1e-9 * largest
        assert moment <= 1e-9 * largest_moment


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn_to_scale(vehicle: str, units) -> None:
    setup = load(CONTENT / f"vehicles/{vehicle}.toml")
    for wheel in described_wheels(setup):
        results = solve(setup, wheel)
        for case in results.cases:
            scene = three_views(results, case=case, units=units)
            check_scene(scene)
            assert check_written_scales(scene) > 4


def wagon() -> Results:
    setup = load(CONTENT / "vehicles/hill-wagon.toml")
    assert isinstance(setup, Setup)
    return solve(setup)


def test_the_caliper_at_its_pads_needs_no_couple_beside_it() -> None:
    # R_l F_x about the axis is held by the pads at their radius: moment balance about y, worked with r × F
    results = wagon()
    state = results.cases["firm braking"]
    actions = actions_of(results, state)
    assert actions.shaft is None
    assert actions.caliper is not None
    at, force = actions.caliper.point, actions.caliper.force
    held = at.z * force.x - at.x * force.z
    assert held == pytest.approx(results.wheel_geometry.loaded_radius * state.contact_force.x)
    brake = results.setup.brake
    assert brake is not None
    assert (at.x**2 + at.z**2) ** 0.5 == pytest.approx(brake.effective_radius)
    # friction is square to the radius
    assert at.x * force.x + at.z * force.z == pytest.approx(0.0, abs=1e-9)


def test_a_moment_turns_the_same_way_as_its_vector_points_at_the_reader() -> None:
    scene = three_views(wagon(), case="brisk corner right")
    moment = next(item for item in scene.items if isinstance(item, Moment) and item.view == "rear")
    # the bearing answers a counter-clockwise side force's moment clockwise
    assert moment.newton_metres < 0


def test_directions_without_force_are_named() -> None:
    assert three_views(wagon()).title.endswith("and nothing across or fore and aft")
    assert three_views(wagon(), case="firm braking").title.endswith("fore and aft, and nothing across")


@given(chosen=setups(rows_known=False), data=st.data())
@SLOW
def test_the_key_says_whose_moments_are_drawn(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen)
    scene = three_views(results, case=data.draw(st.sampled_from(sorted(results.cases))))
    takers = {
        item.label.lines[-1].removesuffix(" on hub")
        for item in scene.items
        if isinstance(item, Moment) and item.newton_metres and item.label is not None
    }
    said = [entry.text for entry in scene.key if entry.kind == "reaction moment"]
    assert len(said) == bool(takers)
    assert {taker for taker in ("bearing", "shaft", "brake") if any(taker in text for text in said)} == takers


def leader(scene: Scene, arrow: str) -> list[tuple[float, float, float, float]]:
    """Return the straight pieces of the leader to an arrow on the wide sheet, from the words on."""
    group = next(group for group in draw(scene).groups() if group.name == f"label-{arrow}")
    (line,) = (mark for mark in group.children if isinstance(mark, Shape) and mark.line != "paper")
    return pieces([(float(x), float(y)) for x, y in line.rings[0]])


def test_the_leader_of_the_inertia_from_above_crosses_no_arrow_of_the_bearing() -> None:
    for vehicle, case in (
        ("hill-wagon", "firm braking"),
        ("hill-wagon", "pulling away"),
        ("supply-van", "firm braking"),
    ):
        for wheel in ("front_left", "front_right"):
            scene = three_views(solve(load(CONTENT / f"vehicles/{vehicle}.toml"), wheel), case=case)
            bearing = next(item for item in scene.items if item.name == "reaction-bearing-x-top")
            assert isinstance(bearing, Force)
            x, y = scene.view("top").on_sheet(bearing.at)
            arrow = (x, y - 30.0, x, y + 30.0)
            assert not any(cross(piece, arrow) for piece in leader(scene, "force-inertia-x-top"))


@pytest.mark.parametrize(
    ("vehicle", "case", "arrow"),
    [
        ("supply-van", "brisk corner left", "force-inertia-y-top"),
        ("supply-van", "brisk corner left", "force-contact-y-rear"),
        ("kit-trailer", "cross slope right", "force-weight-y-top"),
        ("kit-trailer", "cross slope right", "force-contact-y-rear"),
    ],
)
def test_no_leader_runs_along_the_axis_or_the_road(vehicle: str, case: str, arrow: str) -> None:
    scene = three_views(solve(load(CONTENT / f"vehicles/{vehicle}.toml")), case=case)
    view = scene.view(arrow.rpartition("-")[2])
    force = next(item for item in scene.items if item.name == arrow)
    assert isinstance(force, Force)
    height = view.on_sheet(force.at)[1]
    near = [abs(y - height) < 2.5 and abs(v - height) < 2.5 for _, y, _, v in leader(scene, arrow)]
    assert not any(near)
    *_, (x, y, u, v) = leader(scene, arrow)
    assert abs(y - v) > 0.2 * abs(x - u)


def test_rings_seen_from_outboard_stand_behind_the_axle_where_no_leader_passes() -> None:
    for vehicle, case in (("supply-van", "brisk corner left"), ("kit-trailer", "cross slope right")):
        scene = three_views(solve(load(CONTENT / f"vehicles/{vehicle}.toml")), case=case)
        rings = [item for item in scene.items if isinstance(item, Normal) and item.view == "side"]
        beside = [item for item in rings if "contact" not in item.name]
        assert len(beside) == 2
        assert all(ring.at[0] < 0.0 for ring in beside)
        wheel = next(item for item in scene.items if item.name == "part-side-wheel")
        rim = max(z for _, z in wheel.rings[0])
        radii = [np.hypot(*ring.at) * scene.view("side").scale for ring in beside]
        assert min(radii) - 2.2 > rim * scene.view("side").scale


def test_the_thin_line_to_the_bearing_centre_lies_over_all_that_meets_there() -> None:
    scene = three_views(wagon(), case="firm braking")
    for plane in ("rear", "side", "top"):
        marks = [item for item in scene.items if item.name in (f"centre-{plane}", f"line-centre-{plane}")]
        assert [type(item) for item in marks] == [Dot, Line]
        there = [i for i in scene.items if i.view == plane and isinstance(i, Force | Moment | Normal)]
        assert all((mark.step, mark.level) > (item.step, item.level) for mark in marks for item in there)


def test_what_is_dashed_is_in_the_key() -> None:
    for case, said in (("firm braking", ["brake disc, pads"]), ("standing", [])):
        scene = three_views(wagon(), case=case)
        assert [entry.text for entry in scene.key if entry.kind == "hidden"] == said
        outboard = [item for item in scene.items if isinstance(item, Line) and item.view == "side"]
        assert any(line.style == "hidden" for line in outboard) == bool(said)


def test_on_a_slope_the_caption_says_how_steep_it_is_and_what_that_makes_of_the_weight() -> None:
    trailer = solve(load(CONTENT / "vehicles/kit-trailer.toml"))
    caption = three_views(trailer, case="cross slope right").caption.replace("\u00a0", " ")
    assert "square to the road, whose slope φ is 12°" in caption
    assert "W sin φ along it, outboard, which is downhill" in caption  # a left wheel, and the left is the low side
    assert "φ" not in three_views(trailer).caption


SI = {"N": Decimal(1), "kN": Decimal(1000), "N·m": Decimal(1)}


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
def test_the_table_of_forces_shows_no_fewer_digits_than_labels_and_closes_as_printed(vehicle: str) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    for case in results.cases:
        scene = three_views(results, case=case)
        for column, axis in enumerate("xyz", start=1):
            told = [
                number(item.lines[0])
                for item in scene.items
                if isinstance(item, Words) and item.name.startswith(f"words-forces-{column}-")
            ][1:]
            assert sum(value for value, _ in told) == 0
            shown = {value: last for value, last in told if value}
            labels = [words(i)[0] for i in scene.items if f"-{axis}-" in i.name and words(i) and " = " in words(i)[0]]
            forces = [number(text.partition(" = ")[2]) for text in labels if "{M" not in text]
            assert len(forces) == len(shown)
            for value, last in forces:
                nearest = min(shown, key=lambda other: abs(abs(other) - value))
                assert shown[nearest] <= last, case
                assert abs(abs(nearest) - value) <= last / 2, case


def number(text: str) -> tuple[Decimal, Decimal]:
    """Return a printed value and what one more in its last digit is worth, both in newtons."""
    digits, _, unit = text.replace("\u2212", "-").replace(",", "").partition("\u00a0")
    if not unit:
        return Decimal(0), Decimal(0)
    return Decimal(digits) * SI[unit], Decimal(10) ** Decimal(digits).as_tuple().exponent * SI[unit]

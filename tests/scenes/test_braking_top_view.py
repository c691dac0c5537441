"""Braking seen from above: closed with the caliper at its place, level loads of the rows, words of the numbers."""

import math
from dataclasses import replace
from itertools import combinations, pairwise
from pathlib import Path

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from hubwright.drawing import draw
from hubwright.drawing.arrows import NORMAL_RADIUS
from hubwright.drawing.geometry import Segment, cross
from hubwright.drawing.marks import Shape, flat
from hubwright.errors import CaseError
from hubwright.quantities import format_quantity
from hubwright.results import Results, described_wheels, solve
from hubwright.scenes.braking_top_view import braking_top_view
from hubwright.scenes.small_forces import along as along_arrow
from hubwright.scenes.vocabulary import (
    AngularDimension,
    Dimension,
    Force,
    LeaderDimension,
    Line,
    Moment,
    Normal,
    Note,
    Scene,
)
from hubwright.setup import load, load_text
from hubwright.setup.model import Setup
from scene_checks import SLOW, check_scene, check_written_scales, drawn, is_round
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"


def along(results: Results) -> list[str]:
    return [name for name, state in results.cases.items() if state.kind in ("braking", "driving")]


def wagon(*changes: tuple[str, str], wheel: str | None = None) -> Results:
    text = (CONTENT / "vehicles/hill-wagon.toml").read_text(encoding="utf-8")
    for change in changes:
        assert change[0] in text, change
        text = text.replace(*change)
    setup = load_text(text, "hill-wagon.toml")
    assert isinstance(setup, Setup)
    return solve(setup, wheel)  # type: ignore[arg-type]


@given(chosen=setups(rows_known=False), data=st.data())
@SLOW
def test_every_valid_setup_has_its_figure(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    assume(along(results))
    case = data.draw(st.sampled_from(along(results)))
    scene = braking_top_view(results, case=case, units=data.draw(st.sampled_from(("si", "us"))))
    check_scene(scene)
    assert is_round(scene.view("top").newtons_per_mm or 0.0)


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn_to_scale(vehicle: str, units) -> None:
    setup = load(CONTENT / f"vehicles/{vehicle}.toml")
    for wheel in described_wheels(setup):
        results = solve(setup, wheel)
        for case in along(results):
            scene = braking_top_view(results, case=case, units=units)
            check_scene(scene)
            off_scale = {item.name for item in scene.items if isinstance(item, Force) and not item.to_scale}
            assert off_scale <= {"force-inertia-x-top"}  # of the wheel alone: short beside what the whole vehicle asks
            assert check_written_scales(scene) >= 8


def test_level_loads_of_the_rows_hold_the_moment_about_the_upright_axis() -> None:
    # M_z of everything else about C equals the couple of the two row forces at their pressure centres
    results = wagon()
    state = results.cases["firm braking"]
    scene = braking_top_view(results, case="firm braking")
    rows = [item for item in scene.items if isinstance(item, Force) and item.view == "detail"]
    assert len(rows) == 2
    held = sum(-item.at[0] / 1e3 * item.vector[1] for item in rows)
    others = sum(
        single.point.x * single.force.y - single.point.y * single.force.x
        for single in state.free_body.forces
        if single.kind == "applied"
    )
    assert held + others == pytest.approx(0.0, abs=1e-9 * abs(others))
    assert sum(item.vector[1] for item in rows) == pytest.approx(-state.bearing_force.x)


def test_upward_is_a_dot_and_downward_a_cross() -> None:
    scene = braking_top_view(wagon(), case="firm braking")
    rings = {item.name: item.newtons for item in scene.items if isinstance(item, Normal)}
    assert rings["force-contact-z-top"] > 0 > rings["force-weight-z-top"]


def test_a_caliper_behind_the_axle_relieves_and_one_ahead_adds() -> None:
    behind = braking_top_view(wagon())
    ahead = braking_top_view(wagon(('caliper_position = "-70 deg"', 'caliper_position = "70 deg"')))
    assert "behind the axle turns" in behind.title  # it takes more than all off
    assert "ahead of the axle adds" in ahead.title


def test_a_caliper_straight_above_adds_nothing_upright() -> None:
    above = braking_top_view(wagon(('caliper_position = "-70 deg"', 'caliper_position = "0 deg"')))
    assert "adds nothing upright" in above.title


def test_without_a_caliper_the_couple_about_the_axis_is_the_brakes() -> None:
    results = wagon()
    state = results.cases["firm braking"]
    without = solve(replace(results.setup, brake=None))
    scene = braking_top_view(without, case="firm braking")
    couple = next(item for item in scene.items if isinstance(item, Moment) and item.view == "inset")
    # seen from the left, counter-clockwise is toward the reader, +y
    expected = results.wheel_geometry.loaded_radius * state.contact_force.x
    assert couple.newton_metres == pytest.approx(expected)
    assert "whose place is not given" in scene.caption


def test_what_holds_fore_and_aft_is_named_and_is_not_the_caliper() -> None:
    results = wagon()
    scene = braking_top_view(results)
    held = format_quantity(abs(results.cases["firm braking"].bearing_force.x), "force", "si")
    assert scene.title.endswith(f"; the bearing holds {held} fore and aft")


def test_the_brake_takes_and_the_shaft_drives() -> None:
    van = solve(load(CONTENT / "vehicles/supply-van.toml"))
    assert "The shaft drives the hub with " in braking_top_view(van, case="pulling away").caption
    assert "The brake, whose place is not given, takes " in braking_top_view(van, case="firm braking").caption


def test_the_first_case_along_the_road_is_taken_when_none_is_named() -> None:
    assert "firm braking" in braking_top_view(wagon()).caption
    with pytest.raises(CaseError, match="shows braking or driving"):
        braking_top_view(wagon(), case="standing")


def test_a_wheel_that_is_not_driven_has_no_force_along_the_road() -> None:
    scene = braking_top_view(wagon(('driven = "all"', 'driven = "rear"')), case="pulling away")
    assert scene.title == "Driving does nothing along the road here: this wheel is not driven"
    assert not [item for item in scene.items if "contact-x" in item.name]
    assert not [words for words in draw(scene).texts if "F_x" in words.words]
    said = " ".join(step.sentence for step in scene.steps)
    assert "The road pushes the tire up with " in said
    assert "no force along the road acts there" in said
    assert " 0 N" not in said


def test_what_the_caliper_is_said_to_stand_above_has_no_angle() -> None:
    for degrees in (0.0, 0.8, 3.0, 90.0, 179.5):
        scene = braking_top_view(wagon(('caliper_position = "-70 deg"', f'caliper_position = "{degrees} deg"')))
        upright = any(words in scene.title for words in ("above the axle", "below the axle", "nothing upright"))
        measured = any(item.name == "dimension-caliper-position" for item in scene.items)
        assert upright is not measured, (degrees, scene.title)


def leader(scene: Scene, owner: str) -> list[Segment]:
    """The pieces of the leader of a label as drawn."""
    group = next(group for group in drawn(scene).groups() if group.name == f"label-{owner}")
    line = next(flat(group.children))
    assert isinstance(line, Shape)
    return [(*a, *b) for a, b in pairwise(tuple(point) for point in line.rings[0])]


def arrows(scene: Scene, view: str) -> list[Force]:
    return [item for item in scene.items if isinstance(item, Force) and item.view == view]


ALONG = [("hill-wagon", "firm braking"), ("hill-wagon", "pulling away"), ("kit-trailer", "firm braking")]
ALONG += [("supply-van", "firm braking"), ("supply-van", "pulling away")]


@pytest.mark.parametrize(("vehicle", "case"), ALONG)
def test_no_leader_crosses_another_or_the_line_to_a_ring(vehicle: str, case: str) -> None:
    scene = braking_top_view(solve(load(CONTENT / f"vehicles/{vehicle}.toml")), case=case)
    view = scene.view("top")
    leaders = {item.name: leader(scene, item.name) for item in arrows(scene, "top")}
    rings: list[Segment] = []
    for item in scene.items:
        if isinstance(item, Line) and item.view == "top" and item.name.endswith("-z-top"):
            start, end = (view.on_sheet(point) for point in item.points)
            rings.append((*start, *end))
    assert len(rings) >= 3
    for name, pieces in leaders.items():
        others = [piece for other, each in leaders.items() if other != name for piece in each]
        assert not [piece for piece in pieces for other in (*rings, *others) if cross(piece, other)], name


@pytest.mark.parametrize(("vehicle", "case"), ALONG)
def test_leaders_end_off_the_arc_about_the_bearing_centre(vehicle: str, case: str) -> None:
    scene = braking_top_view(solve(load(CONTENT / f"vehicles/{vehicle}.toml")), case=case)
    turned = next(item for item in scene.items if isinstance(item, Moment) and item.view == "top")
    for item in arrows(scene, "top"):
        if not item.to_scale:  # too short to reach the arc
            continue
        end = leader(scene, item.name)[-1][2:]
        assert abs(math.dist(end, scene.view("top").origin) - turned.radius) > 1.5, item.name


@pytest.mark.parametrize(("vehicle", "case"), ALONG)
def test_the_leader_of_the_farther_row_passes_the_head_of_the_nearer(vehicle: str, case: str) -> None:
    scene = braking_top_view(solve(load(CONTENT / f"vehicles/{vehicle}.toml")), case=case)
    view = scene.view("detail")
    nearer = next(item for item in arrows(scene, "detail") if item.name == "reaction-row-inboard-x")
    tip, tail = along_arrow(nearer, view, 1.0), along_arrow(nearer, view, 0.0)
    length = math.dist(view.on_sheet(tip), view.on_sheet(tail))
    neck = along_arrow(nearer, view, 1.0 - min(1.0, 4.4 / length))
    head = (*view.on_sheet(neck), *view.on_sheet(tip))
    assert not [piece for piece in leader(scene, "reaction-row-outboard-x") if cross(piece, head)]


def test_leaders_of_the_rows_leave_dots_and_crosses_whole() -> None:
    scene = braking_top_view(wagon())
    rings = [item for item in scene.items if isinstance(item, Normal) and item.view == "detail"]
    assert len(rings) == 2
    for ring in rings:
        end = leader(scene, ring.name)[-1][2:]
        assert math.dist(end, scene.view("detail").on_sheet(ring.at)) >= NORMAL_RADIUS - 1e-6


def test_centre_spread_angle_caliper_and_road_force_are_told() -> None:
    scene = braking_top_view(wagon())
    items = {item.name: item for item in scene.items}
    assert {"label-centre", "label-caliper"} <= items.keys()
    spread, turned = items["dimension-spread"], items["dimension-caliper-position"]
    assert isinstance(spread, Dimension)
    assert spread.extension == (True, True)
    assert isinstance(turned, AngularDimension)
    # leaders of their own, from radius and angle, would run through the caliper
    radius, named = items["dimension-effective-radius"], items["label-caliper"]
    assert isinstance(radius, LeaderDimension)
    assert isinstance(named, Note)
    assert turned.label is None
    assert radius.label is None
    assert named.label.lines == ("caliper", "at {r|m} = 128\u00a0mm,", "70° off upright")
    inset, above = (items[f"force-contact-x-{view}"] for view in ("inset", "top"))
    assert isinstance(inset, Force)
    assert isinstance(above, Force)
    assert inset.label is not None
    assert above.label is not None
    assert inset.label.lines[0] == above.label.lines[0]


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
def test_thin_lines_to_the_rings_do_not_cross(vehicle: str) -> None:
    setup = load(CONTENT / f"vehicles/{vehicle}.toml")
    for wheel in described_wheels(setup):
        scene = braking_top_view(solve(setup, wheel), case="firm braking")
        view = scene.view("top")
        lines = [
            (*view.on_sheet(item.points[0]), *view.on_sheet(item.points[1]))
            for item in scene.items
            if isinstance(item, Line)
            and item.view == "top"
            and item.tone in ("load", "reaction")
            and item.style == "hair"
        ]
        assert len(lines) >= 3
        assert not [pair for pair in combinations(lines, 2) if cross(*pair)], wheel


def test_the_leader_to_the_roads_force_ends_on_its_shaft() -> None:
    scene = braking_top_view(wagon(), case="firm braking")
    (arrow,) = [item for item in scene.items if isinstance(item, Force) and item.name == "force-contact-x-top"]
    view, end = scene.view("top"), leader(scene, arrow.name)[-1][2:]
    tail, tip = (view.on_sheet(along_arrow(arrow, view, share)) for share in (0.0, 1.0))
    assert tip[1] < end[1] < tail[1]
    assert end[0] == pytest.approx(tip[0])


def test_the_key_names_what_is_drawn() -> None:
    van = solve(load(CONTENT / "vehicles/supply-van.toml"))
    key = {entry.kind: entry.text for entry in braking_top_view(van, case="pulling away").key}
    assert key["reaction moment"] == "moments of bearing and shaft"
    assert key["fixed"] == "stands still"
    key = {entry.kind: entry.text for entry in braking_top_view(wagon(), case="firm braking").key}
    assert key["reaction moment"] == "moment of the bearing"


def test_the_roads_force_ends_where_that_of_the_bearing_begins_if_they_would_hide_one_another() -> None:
    # the load line 2 mm off the bearing centre, the caliper low at the back: both forces point rearward
    results = wagon(
        ('offset = "30 mm"', 'offset = "40 mm"'), ('caliper_position = "-70 deg"', 'caliper_position = "-125 deg"')
    )
    scene = braking_top_view(results, case="firm braking")
    arrows = {item.name: item for item in scene.items if isinstance(item, Force)}
    road, bearing = arrows["force-contact-x-top"], arrows["reaction-bearing-x-top"]
    assert road.vector[1] < 0
    assert bearing.vector[1] < 0
    assert road.tip_at_point
    assert not bearing.tip_at_point
    apart = braking_top_view(wagon(), case="firm braking")  # 12 mm off it they stand side by side
    (road,) = (item for item in apart.items if item.name == "force-contact-x-top" and isinstance(item, Force))
    assert not road.tip_at_point


def test_the_title_says_what_the_caliper_does_to_the_upright_load() -> None:
    # 70° back it pushes down with 7.01 kN where the road leaves 6.53 − 0.39 kN; 20° back it pushes down with less
    assert "turns the bearing's upright load round, to 877" in braking_top_view(wagon(), case="firm braking").title
    forward = wagon(('caliper_position = "-70 deg"', 'caliper_position = "70 deg"'))
    assert "adds 7.01" in braking_top_view(forward, case="firm braking").title
    little = wagon(('caliper_position = "-70 deg"', 'caliper_position = "-20 deg"'))
    assert "off the bearing's upright load" in braking_top_view(little, case="firm braking").title

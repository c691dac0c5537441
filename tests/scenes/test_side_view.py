"""The side view: closed, to scale, and true in its words, for the demonstration and for random setups."""

import math
import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from hubwright.drawing import draw
from hubwright.drawing.closure import left_over
from hubwright.errors import CaseError
from hubwright.results import solve
from hubwright.scenes.side_view import side_view
from hubwright.scenes.vehicle_loads import plane_body
from hubwright.scenes.vocabulary import Dimension, Force, Scene
from hubwright.setup import load
from hubwright.setup.model import Setup, VehicleChassis
from scene_checks import check_written_scales
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
FILES = sorted(CONTENT.glob("vehicles/*.toml")) + sorted(CONTENT.glob("setups/*.toml"))
G = 9.80665  # standard gravity, CGPM 1901
SLOW = settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def forces(scene: Scene) -> dict[str, Force]:
    return {item.name: item for item in scene.items if isinstance(item, Force)}


@given(setups(rows_known=False))
@SLOW
def test_the_plane_free_body_closes_in_every_case(setup: Setup):
    results = solve(setup)
    for name, case in results.cases.items():
        if case.kind == "ledge":
            continue
        body = side_view(results, case=name).body
        assert body is not None
        force, moment, largest, largest_moment = left_over(body)
        assert force <= 1e-9 * largest
        assert moment <= 1e-9 * largest_moment


@given(setups(rows_known=False))
@SLOW
def test_what_is_drawn_is_what_closes(setup: Setup):
    results = solve(setup)
    for name, case in results.cases.items():
        if case.kind == "ledge":
            continue
        scene = side_view(results, case=name)
        assert scene.body is not None
        drawn = forces(scene)
        assert {force[0] for force in scene.body.forces} <= set(drawn)
        for force_name, (x, _, z), (at_x, _, at_z) in scene.body.forces:
            assert drawn[force_name].vector == pytest.approx((x, z))
            assert drawn[force_name].at == pytest.approx((at_x * 1e3, at_z * 1e3))


@given(setups(rows_known=False))
@SLOW
def test_axle_loads_standing_are_the_reactions(setup: Setup):
    results = solve(setup)
    drawn = forces(side_view(results))
    for name, load_there in results.weight.axle_loads.items():
        assert drawn[f"reaction-{name}"].vector == pytest.approx((0.0, load_there), abs=1e-6)


@given(setups(rows_known=False))
@SLOW
def test_every_arrow_and_dimension_stays_on_the_sheet(setup: Setup):
    scene = side_view(solve(setup), units="us")
    view = scene.view("vehicle")
    assert view.newtons_per_mm is not None
    for force in forces(scene).values():
        x, y = view.on_sheet(force.at)
        length = force.vector[1] / view.newtons_per_mm
        far = y - length if force.tip_at_point else y + length
        assert 0 < x < scene.size[0]
        assert min(y, far) >= 30, force.name
        assert max(y, far) <= scene.size[1], force.name
    for item in scene.items:
        if isinstance(item, Dimension) and item.direction == "horizontal":
            assert 25 < item.line_at < scene.size[1]


@given(setups(rows_known=False))
@SLOW
def test_the_shares_of_each_item_follow_the_law_of_the_lever(setup: Setup):
    results = solve(setup)
    body = plane_body(results, results.cases["standing"])
    ahead_of_first = setup.chassis.wheelbase if isinstance(setup.chassis, VehicleChassis) else 0.0
    for item, weight in zip(setup.gear, body.gear, strict=True):
        (first, on_first), (_, on_last) = body.shares(weight)
        assert on_first + on_last == pytest.approx(item.mass)
        if ahead_of_first:
            # moments about the rear axle
            lever = ahead_of_first - item.behind
            assert on_first * ahead_of_first == pytest.approx(item.mass * lever)
        assert (on_first > item.mass) == (weight.x > first.x)


def test_gear_hung_ahead_of_the_axle_is_said_to_add_more_than_it_weighs():
    results = solve(load(CONTENT / "setups/winter-fit-out.toml"))
    title = side_view(results).title
    carried, added = (int(found) for found in re.findall(r"(\d+)\u00a0kg", title))
    winch = results.setup.gear[0]
    assert isinstance(results.setup.chassis, VehicleChassis)
    assert carried == round(winch.mass)
    assert added == round(winch.mass * (1 - winch.behind / results.setup.chassis.wheelbase))
    assert added > carried
    assert "ahead of the front axle" in title


def test_without_gear_the_title_says_the_split():
    results = solve(load(CONTENT / "vehicles/supply-van.toml"))
    assert not results.setup.gear
    shares = [int(found) for found in re.findall(r"(\d+)\u00a0%", side_view(results).title)]
    assert sum(shares) in (99, 100, 101)
    front = results.weight.axle_loads["front"] / sum(results.weight.axle_loads.values())
    assert shares[0] == round(100 * front)


def test_braking_moves_load_as_the_textbook_says():
    # M b g h/L from the rear axle to the front
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    case = next(case for case in results.cases.values() if case.kind == "braking")
    drawn = forces(side_view(results, case=case.name))
    weight, chassis = results.weight, results.setup.chassis
    assert isinstance(chassis, VehicleChassis)
    moved = weight.total_mass * -case.acceleration.x * weight.centre_of_mass_height / chassis.wheelbase
    assert drawn["reaction-front"].vector[1] == pytest.approx(weight.axle_loads["front"] + moved)
    assert drawn["force-inertia"].vector[0] == pytest.approx(weight.total_mass * -case.acceleration.x)


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
@pytest.mark.parametrize("units", ["si", "us"])
def test_no_words_meet_in_the_demonstration(file: Path, units):
    results = solve(load(file))
    for name, case in results.cases.items():
        if case.kind in ("standing", "braking"):
            assert draw(side_view(results, case=name, units=units)).conflicts == ()


def test_lengths_in_the_written_file_are_to_scale():
    scene = side_view(solve(load(CONTENT / "setups/winter-fit-out.toml")), units="us")
    # a weight, two reactions, five dimensions; the others would be too short to see, and say "not to scale"
    assert check_written_scales(scene) == 8
    small = [item for item in forces(scene).values() if not item.to_scale]
    assert [item.name for item in small] == ["force-gear-1", "force-wheels-front", "force-wheels-rear"]
    assert all(math.hypot(*item.vector) / (scene.view("vehicle").newtons_per_mm or 0.0) < 2.5 for item in small)


def test_a_case_of_one_wheel_is_refused():
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    ledge = next(name for name, case in results.cases.items() if case.kind == "ledge")
    with pytest.raises(CaseError, match="concerns one wheel"):
        side_view(results, case=ledge)


def test_marks_in_a_name_do_not_become_markup():
    data = (CONTENT / "vehicles/hill-wagon.toml").read_text(encoding="utf-8")
    from hubwright.setup import load_text

    crate = '\n[[gear]]\nname = "*Box {big}"\nmass = "20 kg"\nbehind_front_axle = "1 m"\nleft_of_centre = "0 m"\n'
    results = solve(load_text(data + crate + 'above_ground = "1 m"\n'))
    scene = side_view(results)
    label = forces(scene)[f"force-gear-{len(results.setup.gear)}"].label
    assert label is not None
    assert "{big}" not in " ".join(label.lines)
    assert "Box (big)" in " ".join(label.lines)

"""The side view: closed, to scale, and true in its words, for the demonstration and for random setups."""

import math
import re
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given

from drawing.written_checks import wrong_with
from hubwright.drawing import draw
from hubwright.drawing.closure import left_over
from hubwright.errors import CaseError
from hubwright.quantities import format_quantity
from hubwright.results import solve
from hubwright.scenes.side_view import side_view
from hubwright.scenes.side_view_words import along_forces, levers, metres
from hubwright.scenes.vehicle_loads import plane_body
from hubwright.scenes.vocabulary import Dimension, Dot, Force, Note, Part, Scene
from hubwright.setup import load
from hubwright.setup.model import Setup, VehicleChassis
from scene_checks import SLOW, check_written_scales
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
FILES = sorted(CONTENT.glob("vehicles/*.toml")) + sorted(CONTENT.glob("setups/*.toml"))
G = 9.80665  # standard gravity, CGPM 1901


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
            assert wrong_with(draw(side_view(results, case=name, units=units))) == []


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


def told(scene: Scene) -> list[str]:
    """Every line of words of a scene's items."""
    labels = [item.label for item in scene.items if isinstance(item, Force | Note) and item.label is not None]
    return [line for label in labels for line in label.lines]


def numbers(text: str) -> list[Decimal]:
    return [Decimal(found.replace(",", "")) for found in re.findall(r"\d[\d,]*(?:\.\d+)?", text)]


@pytest.mark.parametrize("units", ["si", "us"])
def test_on_a_side_slope_weights_are_shown_and_named_by_their_part_square_to_the_road(units):
    results = solve(load(CONTENT / "vehicles/kit-trailer.toml"))
    scene = side_view(results, case="cross slope right", units=units)
    lines = [line for line in told(scene) if "{W" in line]
    assert len(lines) == 2
    assert all("} cos {φ} = " in line for line in lines)
    # 675 kg · g · cos 12°
    newtons = 675 * G * math.cos(math.radians(12))
    assert format_quantity(newtons, "force", units) in lines[0]
    assert "W cos φ of a weight W is square to the road" in scene.caption
    assert "part of its weight without gear that is square to the road" in scene.description
    assert not any("cos" in line for line in told(side_view(results, units=units)))


@given(setups(rows_known=False))
@SLOW
def test_printed_levers_and_pushes_along_the_road_add_up(setup: Setup):
    results = solve(setup)
    for units in ("si", "us"):
        for state in results.cases.values():
            if state.kind in ("ledge", "drop"):
                continue
            body = plane_body(results, state)
            first, last = body.rests
            # of terms that may be finer than their total, which is rounded to its own last digit
            sums = [(along_forces(body, units), format_quantity(abs(body.inertia[0]), "force", units))]
            if last.x <= body.own.x <= first.x:
                sums.append((levers(body, units), metres(first.x - last.x, units)))
            for terms, total in sums:
                sizes = {text.split("\u00a0")[-1] for text in (*terms, total) if text[0] != "0"}
                if len(sizes) > 1:  # newtons beside kilonewtons
                    continue
                (whole,) = numbers(total)
                left_over = sum(numbers(" ".join(terms))) - whole
                assert abs(left_over) <= Decimal((0, (5,), int(whole.as_tuple().exponent) - 1)), (terms, total)


def test_a_wagons_brakes_and_levers_add_up_as_printed():
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    scene = side_view(results, case="firm braking")
    pushes = [numbers(line)[0] for line in told(scene) if line.startswith("{F|x}")]
    (inertia,) = [numbers(line)[0] for line in told(scene) if "{M a}" in line]
    assert round(sum(pushes), 2) == inertia
    inches = {item.name: item.text for item in side_view(results, units="us").items if isinstance(item, Dimension)}
    ahead, behind = (numbers(inches[f"dimension-centre-{way}"])[0] for way in ("ahead", "behind"))
    assert round(ahead + behind, 1) == numbers(inches["dimension-wheelbase"])[0]


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_only_scales_under_a_standing_vehicle_show_a_mass(file: Path):
    results = solve(load(file))
    for name, state in results.cases.items():
        if state.kind not in ("ledge", "drop"):
            shown = any("a scale shows" in line for line in told(side_view(results, case=name)))
            assert shown == (name == "standing"), name


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_the_centre_of_moments_has_a_letter_and_hides_no_arrow(file: Path):
    results = solve(load(file))
    for name, state in results.cases.items():
        if state.kind in ("ledge", "drop"):
            continue
        scene = side_view(results, case=name)
        view = scene.view("vehicle")
        (pivot,) = [item for item in scene.items if isinstance(item, Dot) and item.name == "pivot"]
        # nothing else is drawn as it is: the coupling is a ring, masses are quartered or lie above the road
        assert pivot.kind == "dot"
        assert "*A" in told(scene)
        last = plane_body(results, state).rests[1]
        where = f"A, where the {last.text} stands on the road"
        assert where in scene.caption
        assert where in scene.description
        assert "About A " in scene.steps[-1].sentence
        for force in forces(scene).values():
            if force.name.endswith("-along"):
                assert math.dist(force.at, pivot.at) * view.scale > 10 or force.gap >= pivot.radius


@given(setups(rows_known=False))
@SLOW
def test_words_of_the_weight_stand_at_its_arrow(setup: Setup):
    results = solve(setup)
    for name, state in results.cases.items():
        if state.kind in ("ledge", "drop"):
            continue
        scene = side_view(results, case=name)
        view, weight = scene.view("vehicle"), forces(scene)["force-weight"]
        assert view.newtons_per_mm is not None
        below = -weight.vector[1] / view.newtons_per_mm - weight.at[1] * view.scale
        # words below the road need an arrow there, else they belong to the arrow itself
        assert (weight.label is None) == (below >= 5.0)


def test_arrows_of_a_trailer_stay_apart_and_out_of_the_road():
    results = solve(load(CONTENT / "vehicles/kit-trailer.toml"))
    scene = side_view(results, case="cross slope right")
    drawn = forces(scene)
    own, box, coupling = (drawn[name] for name in ("force-weight", "force-gear-1", "reaction-coupling"))
    assert box.at[1] > own.at[1]
    assert box.tip_at_point
    assert not own.tip_at_point
    assert not coupling.to_scale
    assert not coupling.tip_at_point  # it stands on the coupling, where a phone has no room below
    braking = forces(side_view(results, case="firm braking"))["reaction-coupling-along"]
    assert not braking.to_scale
    assert braking.label is not None


@pytest.mark.parametrize("units", ["si", "us"])
def test_words_of_a_short_weight_stand_beside_it_without_a_leader(units) -> None:
    scene = side_view(solve(load(CONTENT / "vehicles/hill-wagon.toml")), case="firm braking", units=units)
    view, weight = scene.view("vehicle"), forces(scene)["force-weight"]
    (box,) = (text.box for text in draw(scene).texts if text.words.startswith("W = "))
    x, z = view.on_sheet(weight.at)
    assert view.origin[1] < box[1] < box[3] < z  # above the road, below the arrow of inertia
    assert 0 < x - box[2] < 4.0


@pytest.mark.parametrize("case", ["standing", "firm braking", "brisk bend left", "cross slope right"])
def test_the_leader_of_a_trailers_weight_runs_along_no_edge(case: str) -> None:
    results = solve(load(CONTENT / "vehicles/kit-trailer.toml"))
    scene = side_view(results, case=case)
    view, label = scene.view("vehicle"), forces(scene)["force-weight"].label
    assert label is not None
    assert label.anchor is not None
    level, geometry = label.anchor[1], results.wheel_geometry
    (box,) = (item for item in scene.items if item.name == "part-gear-1" and isinstance(item, Part))
    tops = [geometry.loaded_radius + geometry.free_diameter / 2, geometry.loaded_radius + geometry.rim_diameter / 2]
    for edge in (*(1e3 * top for top in tops), *(z for _, z in box.rings[0])):
        assert abs(level - edge) * view.scale > 1.5

"""The three linked views: closed, one force in three projections, words of the numbers."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hubwright.drawing.closure import left_over
from hubwright.results import Results, described_wheels, solve
from hubwright.scenes.three_views import three_views
from hubwright.scenes.vocabulary import Force, Moment, Normal, Scene
from hubwright.scenes.wheel_end_actions import actions_of
from hubwright.setup import load
from hubwright.setup.model import Setup
from scene_checks import check_scene, check_written_scales, is_round
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
SLOW = settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))


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

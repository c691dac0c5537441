"""The wheel in a corner: moments from forces and levers, a chain that ends where it began, true words."""

from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from hubwright.errors import CaseError
from hubwright.results import Results, described_wheels, solve
from hubwright.scenes.corner_moments import corner_moments
from hubwright.scenes.outer_wheel_in_corner import outer_wheel_in_corner
from hubwright.scenes.vocabulary import Bar, Force, Moment
from hubwright.setup import load, load_text
from hubwright.setup.model import Setup
from scene_checks import SLOW, check_scene, check_written_scales, is_round
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"


def wagon(changes: tuple[str, str] = ("", "")) -> Setup:
    text = (CONTENT / "vehicles/hill-wagon.toml").read_text(encoding="utf-8").replace(*changes)
    setup = load_text(text, "hill-wagon.toml")
    assert isinstance(setup, Setup)
    return setup


def across(results: Results) -> list[str]:
    return [name for name, state in results.cases.items() if state.kind in ("cornering", "side_slope")]


@given(chosen=setups(rows_known=False), data=st.data())
@SLOW
def test_every_valid_setup_has_its_figure(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    assume(across(results))
    case = data.draw(st.sampled_from(across(results)))
    scene = outer_wheel_in_corner(results, case=case, units=data.draw(st.sampled_from(("si", "us"))))
    check_scene(scene)
    assert is_round(scene.view("whole").newtons_per_mm or 0.0)
    assert is_round(1 / scene.view("moments").scale)


@given(chosen=setups(rows_known=False), data=st.data())
@SLOW
def test_the_chain_of_moments_ends_where_it_began(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    for case in across(results):
        state = results.cases[case]
        values = [turning.value for turning in corner_moments(state)]
        assert sum(values) == pytest.approx(0.0, abs=1e-9 * max(map(abs, values)))
        # the bearing's answer is the moment that the results state, met by the opposite one on the hub
        assert values[-1] == pytest.approx(state.bearing_moment.x)
        bars = [item for item in outer_wheel_in_corner(results, case=case).items if isinstance(item, Bar)]
        assert bars[0].start == 0.0 == bars[-1].end
        for first, second in pairwise(bars):
            assert first.end == second.start
        assert [bar.end - bar.start for bar in bars] == pytest.approx(values, abs=1e-6 * max(map(abs, values)))


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn_to_scale(vehicle: str, units) -> None:
    setup = load(CONTENT / f"vehicles/{vehicle}.toml")
    for wheel in described_wheels(setup):
        results = solve(setup, wheel)
        for case in across(results):
            scene = outer_wheel_in_corner(results, case=case, units=units)
            check_scene(scene)
            assert check_written_scales(scene) > 8


def test_moments_are_the_cross_product_of_the_contact_force() -> None:
    results = solve(wagon())
    state = results.cases["brisk corner right"]
    at = (0.0, results.wheel_geometry.load_line_offset, -results.wheel_geometry.loaded_radius)
    F = state.contact_force
    moment = np.cross(at, (F.x, F.y, F.z))
    side, upright = corner_moments(state)[:2]
    # seen from the rear, a positive moment about x turns clockwise
    assert side.value + upright.value == pytest.approx(-moment[0])


def test_the_side_force_is_drawn_at_the_road() -> None:
    results = solve(wagon())
    scene = outer_wheel_in_corner(results, case="brisk corner right")
    force = next(item for item in scene.items if isinstance(item, Force) and item.name == "F_y")
    assert force.at[1] == pytest.approx(-results.wheel_geometry.loaded_radius * 1e3)


def test_outer_and_inner_wheel_are_told_apart() -> None:
    left, right = solve(wagon(), "front_left"), solve(wagon(), "front_right")
    assert "outer wheel" in outer_wheel_in_corner(left, case="brisk corner right").title
    assert "inner wheel" in outer_wheel_in_corner(right, case="brisk corner right").title
    assert "against" in outer_wheel_in_corner(left, case="brisk corner right").title
    assert "same sense" in outer_wheel_in_corner(right, case="brisk corner right").title
    assert "downhill wheel" in outer_wheel_in_corner(right, case="cross slope left").title


def test_a_load_line_through_the_centre_is_said_to_contribute_nothing() -> None:
    results = solve(wagon(('offset = "30 mm"', 'offset = "42 mm"')))
    scene = outer_wheel_in_corner(results, case="brisk corner right")
    assert "contributes nothing" in scene.title
    assert "nothing from the vertical one" in scene.caption
    assert [item.name for item in scene.items if isinstance(item, Moment)] == ["moment-side"]


def test_the_bar_that_is_open_is_the_reaction() -> None:
    scene = outer_wheel_in_corner(solve(wagon()), case="easy bend left")
    assert [item.name for item in scene.items if isinstance(item, Bar) and item.is_open] == ["bar-bearing"]


def test_other_cases_are_refused() -> None:
    with pytest.raises(CaseError, match="in a corner or on a side slope"):
        outer_wheel_in_corner(solve(wagon()), case="firm braking")


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
def test_the_drawn_forces_close(vehicle: str) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    for case in across(results):
        forces = [item for item in outer_wheel_in_corner(results, case=case).items if isinstance(item, Force)]
        # the small arrows of the contact pressure are shares of F_z, and what the lens shows stands in the whole too
        body = [item for item in forces if item.view != "lens" and not item.slender]
        assert {item.view for item in forces} >= {"whole", "detail", "lens"}
        left = np.sum([item.vector for item in body], axis=0)
        assert left == pytest.approx((0.0, 0.0), abs=1e-9 * results.cases[case].contact_force.z)

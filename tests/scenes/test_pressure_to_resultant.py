"""The contact pressure as strips and as one force: the same sum, the same place."""

from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hubwright.errors import CaseError
from hubwright.results import described_wheels, solve
from hubwright.scenes.pressure_to_resultant import STRIPS, pressure_to_resultant
from hubwright.scenes.vocabulary import Force, Line, Note, Scene, Words
from hubwright.setup import load, load_text, vary
from hubwright.setup.model import Setup
from scene_checks import SLOW, check_scene, check_written_scales, is_round
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
KINDS = ("standing", "braking", "driving", "cornering", "side_slope")


def forces(scene: Scene, start: str) -> list[Force]:
    return [item for item in scene.items if isinstance(item, Force) and item.name.startswith(start)]


@given(chosen=setups(rows_known=False), data=st.data())
@SLOW
def test_strips_and_resultant_are_one_force_at_one_place_for_every_setup(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    case = data.draw(st.sampled_from([name for name, state in results.cases.items() if state.kind in KINDS]))
    scene = pressure_to_resultant(results, case=case, units=data.draw(st.sampled_from(("si", "us"))))
    check_scene(scene)
    assert is_round(scene.view("strips").newtons_per_mm or 0.0)
    strips, whole = forces(scene, "force-strip-"), forces(scene, "force-F_z")[0]
    total = results.cases[case].contact_force.z
    assert whole.vector == pytest.approx((0.0, total))
    assert sum(force.vector[1] for force in strips) == pytest.approx(total)
    # moments about the bearing centre's plane
    turned = sum(force.vector[1] * force.at[0] for force in strips)
    assert turned == pytest.approx(total * whole.at[0], abs=1e-6 * total)
    assert whole.at[0] == pytest.approx(results.side * results.wheel_geometry.load_line_offset * 1e3, abs=1e-3)


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn_to_scale(vehicle: str, units) -> None:
    setup = load(CONTENT / f"vehicles/{vehicle}.toml")
    for wheel in described_wheels(setup):
        scene = pressure_to_resultant(solve(setup, wheel), units=units)
        check_scene(scene)
        assert check_written_scales(scene) > 16


def test_set_end_to_end_the_strips_reach_as_far_as_the_resultant() -> None:
    scene = pressure_to_resultant(solve(load(CONTENT / "vehicles/hill-wagon.toml")))
    view = scene.view("resultant")
    assert view.newtons_per_mm is not None
    chain = forces(scene, "force-end-to-end-")
    for below, above in pairwise(chain):
        tip = below.at[1] + below.vector[1] / view.newtons_per_mm / view.scale
        assert tip == pytest.approx(above.at[1])
    whole = forces(scene, "force-F_z")[0]
    long = whole.vector[1] / view.newtons_per_mm / view.scale
    assert sum(force.vector[1] for force in chain) / view.newtons_per_mm / view.scale == pytest.approx(long)


def test_a_load_line_through_the_centre_has_no_lever() -> None:
    text = (CONTENT / "vehicles/hill-wagon.toml").read_text(encoding="utf-8")
    setup = load_text(text.replace('offset = "30 mm"', 'offset = "42 mm"'), "hill-wagon.toml")
    scene = pressure_to_resultant(solve(setup))
    assert scene.title.endswith("in the plane of the bearing centre")
    assert "the lever is nothing" in scene.steps[-1].sentence


def test_an_edge_is_refused() -> None:
    with pytest.raises(CaseError, match="even road"):
        pressure_to_resultant(solve(load(CONTENT / "vehicles/hill-wagon.toml")), case="stone ledge")


def test_the_number_of_strips_is_told_in_words() -> None:
    assert STRIPS == 8
    scene = pressure_to_resultant(solve(load(CONTENT / "vehicles/hill-wagon.toml")))
    heading = next(item for item in scene.items if isinstance(item, Words) and item.name == "words-strips")
    assert heading.lines == ("*2  Eight strips",)


def test_the_pressure_is_a_row_of_small_arrows_that_point_up_at_the_tread() -> None:
    scene = pressure_to_resultant(solve(load(CONTENT / "vehicles/hill-wagon.toml")))
    lines = [item for item in scene.items if isinstance(item, Line)]
    shafts = [item for item in lines if item.name.startswith("pressure-line-")]
    heads = [item for item in lines if item.name.startswith("pressure-head-")]
    assert len(shafts) == len(heads) > STRIPS
    for shaft, (left, tip, right) in zip(shafts, (head.points for head in heads), strict=True):
        assert tip == shaft.points[-1]
        assert shaft.points[0][1] < left[1] == right[1] < tip[1]
    assert {item.style for item in (*shafts, *heads)} == {"thin"}


@pytest.mark.parametrize("offset", ["30 mm", "42 mm"])
def test_resultant_and_load_line_are_named_where_they_are_drawn(offset: str) -> None:
    # a phone has no key of symbols
    scene = pressure_to_resultant(solve(vary(load(CONTENT / "vehicles/hill-wagon.toml"), {"wheel.offset": offset})))
    notes = {item.name: item.label.lines for item in scene.items if isinstance(item, Note)}
    assert notes["label-load-line"] == ("load line",)
    resultant = next(item for item in scene.items if isinstance(item, Force) and item.role == "resultant")
    assert resultant.label is not None
    assert resultant.label.lines[-1] == "the resultant"

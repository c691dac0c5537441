"""Forces of a drop over time: drawn to scale, beside the closed form of the bound, and honest about the rim."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dropped import DROPPED, demonstration, drops
from hubwright.drawing import draw
from hubwright.errors import CaseError, MissingDataError
from hubwright.results import Results, solve
from hubwright.results.drops import drop_history
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.drop_history import drop_history_scene
from hubwright.scenes.drop_sequence import drop_sequence
from hubwright.scenes.vocabulary import Curve, Line, Scene
from hubwright.setup import vary
from scene_checks import SLOW, check_scene

G = 9.80665  # standard gravity, CGPM 1901


def fallen(height: float, changes: dict[str, str] | None = None) -> Results:
    """Return the hill wagon, as it is or changed, dropped from a height [m]."""
    setup = demonstration("vehicles/hill-wagon.toml").setup
    case = {"name": "fall", "kind": "drop", "height": f"{height!r} m"}
    return solve(vary(setup, {**(changes or {}), "case": [case], "duty": [{"case": "standing", "share": 1}]}))


def level(scene: Scene, name: str) -> float:
    return next(item for item in scene.items if isinstance(item, Line) and item.name == f"level-{name}").points[0][1]


def curve(scene: Scene, name: str) -> Curve:
    return next(item for item in scene.items if isinstance(item, Curve) and item.name == f"curve-{name}")


@given(results=drops(), units=st.sampled_from(("si", "us")))
@SLOW
def test_every_drop_has_its_figure(results: Results, units) -> None:
    scene = drop_history_scene(results, units=units)
    check_scene(scene)
    high = max(point[1] for item in scene.items if isinstance(item, Curve) for point in item.points)
    assert scene.view("forces over time").on_sheet((0.0, high))[1] < scene.size[1]


@pytest.mark.parametrize("file", DROPPED)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn(file: str, units) -> None:
    check_scene(drop_history_scene(demonstration(file), units=units))


def test_the_levels_are_the_closed_forms() -> None:
    # hill wagon: 260 N/mm; 0.6 of 0.75 × 245 mm before the rim; W(1 + √(1 + 2 k s/W)) for the bound
    scene = drop_history_scene(demonstration("vehicles/hill-wagon.toml"))
    weight = 1120 * G / 2
    assert level(scene, "standing") == pytest.approx(weight)
    assert level(scene, "rim") == pytest.approx(260e3 * 0.6 * 0.75 * 0.245)
    assert level(scene, "bound") == pytest.approx(weight * (1 + math.sqrt(1 + 2 * 260e3 * 0.15 / weight)))


def test_the_tire_pushes_before_the_bearing_and_never_pulls() -> None:
    scene = drop_history_scene(demonstration("vehicles/hill-wagon.toml"))
    tire, bearing = curve(scene, "tire").points, curve(scene, "bearing").points
    assert min(force for _, force in tire) >= 0
    assert max(tire, key=lambda point: point[1])[0] < max(bearing, key=lambda point: point[1])[0]
    assert max(force for _, force in bearing) < max(force for _, force in tire)


def test_the_curves_differ_by_more_than_colour_and_are_named_in_either_form() -> None:
    scene = drop_history_scene(demonstration("vehicles/hill-wagon.toml"))
    drawn = {name: "dashed" if curve(scene, name).dashed else "solid" for name in ("tire", "bearing")}
    assert len(set(drawn.values())) == 2
    (phone,) = draw(scene, form="narrow")
    said = [" ".join(entry.lines) for entry in phone.balloons]
    for name, line in drawn.items():
        assert [text for text in said if name in text and f"{line}: peak" in text]
    assert scene.key == ()  # whose arrows the plot does not have


HEIGHTS = (0.005, 0.02, 0.05, 0.15, 0.4, 0.9)
# short travel, hard stops, next to no damping: what lands is nearly one lump that swings
HARD = {
    "suspension.bump_travel": "20 mm",
    "suspension.droop_travel": "20 mm",
    "suspension.bump_stop_stiffness": "800 N/mm",
    "suspension.bump_damping": "50 N*s/m",
    "suspension.rebound_damping": "50 N*s/m",
    "suspension.unsprung_mass": "200 kg",
}


@pytest.mark.parametrize("height", HEIGHTS)
@pytest.mark.parametrize("changes", [{}, HARD], ids=["as it is", "hard"])
def test_peak_and_bound_are_told_in_the_order_of_their_numbers(height: float, changes: dict[str, str]) -> None:
    results = fallen(height, changes)
    history = drop_history(results, "fall")
    told = drop_history_scene(results).steps[-1].sentence
    share = history.peak_tire_force / history.energy_bound
    assert ("leaves" in told) == (share < 0.995)
    assert ("gets more" in told) == (share > 1.005)
    assert ("gets as much" in told) == (0.995 <= share <= 1.005)


def test_a_hard_suspension_presses_more_than_the_bound_from_low_and_less_from_high() -> None:
    # the bound is of the tire alone and no ceiling of two masses: mechanics.md, drop
    told = [drop_history_scene(fallen(height, HARD)).steps[-1].sentence for height in HEIGHTS]
    assert "gets more" in told[0]
    assert "leaves" in told[-1]


@pytest.mark.parametrize("figure", [drop_history_scene, drop_sequence])
def test_no_word_calls_a_force_the_most_there_can_be_and_the_rim_is_told(figure) -> None:
    for height in HEIGHTS:
        results = fallen(height)
        scene = figure(results)
        words = " ".join((scene.title, scene.caption, scene.description, *(step.sentence for step in scene.steps)))
        assert "at most" not in words
        assert "up to" not in words
        on_rim = bool(results.cases["fall"].extras["tire_on_rim"])
        assert ("the real force is higher" in scene.title) == on_rim
        assert ("real force is higher" in scene.description) == on_rim


def test_without_springs_the_reason_is_given() -> None:
    trailer = demonstration("vehicles/kit-trailer.toml")
    with pytest.raises(MissingDataError, match="suspension"):
        drop_history_scene(trailer)
    assert FIGURES["drop history"].cases(trailer) == []


def test_another_case_is_refused() -> None:
    with pytest.raises(CaseError, match="a drop"):
        drop_history_scene(demonstration("vehicles/hill-wagon.toml"), case="firm braking")

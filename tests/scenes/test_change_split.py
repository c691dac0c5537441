"""The split of a change: a chain of bars from 1 to the whole ratio, on an axis where factors add up."""

import math
from itertools import pairwise
from pathlib import Path

import pytest

from hubwright.results import Results, solve
from hubwright.results.changes import NotComparableError
from hubwright.scenes.change_split import change_split
from hubwright.scenes.ratio_panels import times_together
from hubwright.scenes.vocabulary import Bar, Scene
from hubwright.setup import load, vary
from scene_checks import check_scene, check_written_scales

CONTENT = Path(__file__).parents[2] / "content"
RACK = {
    "name": "Roof rack and ladder",
    "mass": "60 kg",
    "behind_front_axle": "1.45 m",
    "left_of_centre": "0.25 m",
    "above_ground": "1.86 m",
}
FIT_OUTS = ("winter-fit-out", "winter-offset-wheels", "summer-fit-out")


def solved(name: str) -> Results:
    return solve(load(CONTENT / name))


def bars(scene: Scene, view: str) -> list[Bar]:
    return [item for item in scene.items if isinstance(item, Bar) and item.view == view]


@pytest.mark.parametrize("name", FIT_OUTS)
@pytest.mark.parametrize("units", ["si", "us"])
def test_each_bar_begins_where_the_one_before_ended_and_the_last_is_the_whole(name: str, units) -> None:
    base, other = solved("vehicles/hill-wagon.toml"), solved(f"setups/{name}.toml")
    scene = change_split(base, other, units=units)
    check_scene(scene)
    assert check_written_scales(scene) >= 2
    lives = [results.life.duty.distance for results in (base, other) if results.life and results.life.duty]
    loads = [results.cases["standing"].row_radial_load for results in (base, other)]
    worst = [max(rows.outboard, rows.inboard) for rows in loads if rows is not None]
    for view, ratio in (("life", lives[1] / lives[0]), ("row-load", worst[1] / worst[0])):
        *parts, whole = bars(scene, view)
        assert parts[0].start == 0.0
        for first, second in pairwise(parts):
            assert first.end == second.start
        assert parts[-1].end == pytest.approx(math.log10(ratio))
        assert (whole.start, whole.end) == pytest.approx((0.0, math.log10(ratio)))
        assert whole.span is not None
        assert whole.span[0] <= whole.end <= whole.span[1]


def test_a_tire_has_no_part_in_the_row_loads() -> None:
    # a larger tire stands on the same load line, and its own weight does not pass through the bearing
    scene = change_split(solved("vehicles/hill-wagon.toml"), solved("setups/winter-fit-out.toml"))
    assert "Load of the worst row, standing: tire no change" in scene.description
    tire = bars(scene, "row-load")[0]
    assert tire.end == pytest.approx(0.0, abs=1e-9)


def test_a_spacer_and_a_wheel_of_less_offset_have_the_same_part() -> None:
    base = solved("vehicles/hill-wagon.toml")
    spacer, wheel = (bars(change_split(base, solved(f"setups/{name}.toml")), "life")[1] for name in FIT_OUTS[:2])
    assert spacer.end - spacer.start == pytest.approx(wheel.end - wheel.start)


def test_gear_is_said_to_come_on_or_off() -> None:
    wagon, fitted = solved("vehicles/hill-wagon.toml"), solved("setups/summer-fit-out.toml")
    put_on, taken_off = change_split(wagon, fitted), change_split(fitted, wagon)
    assert "Roof rack and ladder on ×" in put_on.description
    assert "by Roof rack and ladder on" in put_on.title
    assert "Roof rack and ladder off ×" in taken_off.description
    heavier = solve(vary(wagon.setup, {"gear": [RACK]}, name="Heavier"))
    assert "Roof rack and ladder changed ×" in change_split(fitted, heavier).description


def test_a_span_whose_ends_print_alike_says_how_wide_it_is_at_most() -> None:
    scene = change_split(solved("vehicles/hill-wagon.toml"), solved("setups/summer-fit-out.toml"))
    told = [line for bar in scene.items if isinstance(bar, Bar) and bar.label is not None for line in bar.label.lines]
    spans = [line for line in told if line.startswith("span ")]
    assert "span under 0.001" in spans
    for span in spans:
        low, _, high = span.removeprefix("span ").partition(" to ")
        assert low != high


def test_a_setup_beside_itself_has_nothing_to_split() -> None:
    base = solved("vehicles/supply-van.toml")
    with pytest.raises(NotComparableError, match="no ratio to split"):
        change_split(base, base)


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van"])
def test_a_change_that_stands_alone_is_all_of_it(vehicle: str) -> None:
    base = solved(f"vehicles/{vehicle}.toml")
    scene = change_split(base, solve(vary(base.setup, {"wheel.spacer": "25 mm"}, name="Spaced out"), base.wheel))
    check_scene(scene)
    assert [len(bars(scene, view.name)) for view in scene.views] == [1, 1]
    told = f"{scene.title} {scene.caption} {scene.description}"
    assert "all together" not in told
    assert "most of it" not in told
    assert "multiply" not in told
    assert "The only change: spacer." in told


def test_changes_against_one_another_share_out_nothing() -> None:
    base = solved("vehicles/hill-wagon.toml")
    moved = {"wheel.spacer": "25 mm", "chassis.front_axle_mass": "900 kg"}
    title = change_split(base, solve(vary(base.setup, moved, name="Moved"))).title
    assert "moved most by" in title


def test_a_factor_of_thousands_is_told_without_decimals() -> None:
    assert times_together([12345.0, 1.25, 0.84])[0].replace(",", "").isdigit()

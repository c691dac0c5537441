"""Setups beside a base: every bar from 1 to its ratio, whatever the files leave out."""

import math
import re
from pathlib import Path

import pytest

from drawing.written_checks import failures_of
from hubwright.drawing import draw, svg_for_page
from hubwright.results import Results, solve
from hubwright.results.changes import NotComparableError
from hubwright.scenes.ratio_panels import times_alike
from hubwright.scenes.setups_compared import setups_compared
from hubwright.scenes.vocabulary import Bar, Scene
from hubwright.setup import load, vary
from scene_checks import check_scene, check_written_scales

CONTENT = Path(__file__).parents[2] / "content"
FIT_OUTS = ("winter-fit-out", "winter-offset-wheels", "summer-fit-out")


def solved(name: str) -> Results:
    return solve(load(CONTENT / name))


def bars(scene: Scene, view: str) -> list[Bar]:
    return [item for item in scene.items if isinstance(item, Bar) and item.view == view]


@pytest.mark.parametrize("units", ["si", "us"])
@pytest.mark.parametrize("number", [1, 3])
def test_every_bar_goes_from_one_to_its_ratio(number: int, units) -> None:
    base, others = solved("vehicles/hill-wagon.toml"), [solved(f"setups/{name}.toml") for name in FIT_OUTS[:number]]
    scene = setups_compared(base, *others, units=units)
    check_scene(scene)
    assert check_written_scales(scene) == 2 * number
    for bar, other in zip(bars(scene, "row-load"), others, strict=True):
        loads = [results.cases["standing"].row_radial_load for results in (base, other)]
        worst = [max(rows.outboard, rows.inboard) for rows in loads if rows is not None]
        assert (bar.start, bar.end) == pytest.approx((0.0, math.log10(worst[1] / worst[0])))
    for bar in bars(scene, "life"):
        assert bar.span is not None
        assert bar.span[0] <= bar.end <= bar.span[1]


def test_spacer_and_offset_wheel_of_one_load_line_have_bars_alike() -> None:
    base, others = solved("vehicles/hill-wagon.toml"), [solved(f"setups/{name}.toml") for name in FIT_OUTS[:2]]
    first, second = bars(setups_compared(base, *others), "life")
    assert first.end == pytest.approx(second.end)
    assert first.span == pytest.approx(second.span)


def test_setups_that_change_as_much_are_named_together() -> None:
    base, others = solved("vehicles/hill-wagon.toml"), [solved(f"setups/{name}.toml") for name in FIT_OUTS]
    assert "Life over the duty: most changed by two setups alike, × " in setups_compared(base, *others).title
    assert "Life over the duty: changed by both setups alike, × " in setups_compared(base, *others[:2]).title
    assert "changed by Hill wagon, winter fit-out, × " in setups_compared(base, others[0], others[2]).title


@pytest.mark.parametrize("vehicle", ["supply-van", "kit-trailer"])
def test_odd_vehicles_beside_a_spacer_of_theirs(vehicle: str) -> None:
    base = solved(f"vehicles/{vehicle}.toml")
    other = solve(vary(base.setup, {"wheel.spacer": "20 mm"}, name="Spaced out"))
    scene = setups_compared(base, other, base)
    check_scene(scene)
    assert "Spaced out" in scene.description


def test_the_axes_say_that_they_are_logarithmic_on_both_forms() -> None:
    base, other = solved("vehicles/hill-wagon.toml"), solved("setups/winter-fit-out.toml")
    scene = setups_compared(base, other, case="brisk corner right")
    for drawing in (draw(scene), *draw(scene, form="narrow")):
        titles = [text.words for text in drawing.texts if text.words.endswith(", ratio (logarithmic scale)")]
        assert len(titles) == (1 if drawing.view else len(scene.views))
        assert failures_of(svg_for_page(drawing, prefix="f", units_class="si")) == []


def test_a_span_and_its_ratio_have_like_digits() -> None:
    assert times_alike(1.0601, 1.552) == ["1.06", "1.55"]
    assert times_alike(0.898, 0.909) == ["0.898", "0.909"]
    base = solved("vehicles/supply-van.toml")
    scene = setups_compared(base, solve(vary(base.setup, {"wheel.spacer": "25 mm"}, name="Spaced out"), base.wheel))
    for sentence in re.findall(r"× [^)]*\)", scene.description.replace("\u00a0", " ")):
        assert len({len(number.partition(".")[2]) for number in re.findall(r"\d+\.\d+", sentence)}) == 1


def test_charts_that_happen_to_have_like_axes_are_two_drawings_on_a_phone() -> None:
    base = solved("vehicles/hill-wagon.toml")
    drawings = draw(setups_compared(base, base), form="narrow")  # nothing changes: both axes are about 1
    assert len(drawings) == 2
    for drawing in drawings:
        assert failures_of(svg_for_page(drawing, prefix="f", units_class="si")) == []


def test_without_a_bearing_the_loads_alone_are_shown() -> None:
    # nothing is said of a tapered pair but the places of its rows
    text = {"bearing": {"kind": "tapered pair", "pitch_diameter": "70 mm", "contact_angle": "15 deg"}}
    wagon = load(CONTENT / "vehicles/hill-wagon.toml")
    rollers = vary(wagon, {**text, "bearing.row_spacing": "34 mm"}, name="Rollers")
    base, other = solve(rollers), solve(vary(rollers, {"wheel.spacer": "20 mm"}, name="Spaced out"))
    assert base.life is None
    scene = setups_compared(base, other)
    assert bars(scene, "row-load")
    assert not bars(scene, "life")


def test_nothing_to_compare_is_said() -> None:
    wagon, trailer = solved("vehicles/hill-wagon.toml"), solved("vehicles/kit-trailer.toml")
    with pytest.raises(NotComparableError, match="cannot be compared"):
        setups_compared(wagon, trailer)

"""Bars of comparisons and sensitivities: one scale, lengths that are the values, words for directions and nothing."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hubwright.scenes.chart_rows import BarValue
from hubwright.scenes.comparison_bars import comparison_bars
from hubwright.scenes.sensitivity_bars import sensitivity_bars
from hubwright.scenes.vocabulary import Bar, Note
from scene_checks import check_scene, check_written_scales, is_round

SLOW = settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
NAMES = st.text("abcdefgh ", min_size=1, max_size=60)
KINDS = st.sampled_from(("force", "moment", "ratio", "small length"))


@st.composite
def values(draw: st.DrawFn, *, spans: bool) -> list[BarValue]:
    kind = draw(KINDS)
    number = st.floats(-5000, 5000, allow_nan=False).map(lambda value: round(value, 3))
    rows = []
    base = draw(number)
    for _ in range(draw(st.integers(1, 7))):
        value = base if spans else draw(number)
        ends = sorted((draw(number), draw(number))) if spans or draw(st.booleans()) else (None, None)
        if not spans and ends[0] is not None:
            ends = [min(ends[0], value), max(ends[1], value)]
        rows.append(BarValue(draw(NAMES), value, ends[0], ends[1], kind))
    return rows


@given(values(spans=False), st.sampled_from(("si", "us")))
@SLOW
def test_any_comparison_is_clear_and_to_scale(rows: list[BarValue], units) -> None:
    scene = comparison_bars(rows, quantity="Row load", units=units, above="down", below="up")
    check_scene(scene)
    check_written_scales(scene)
    assert is_round(1 / scene.view("chart").scale)
    bars = [item for item in scene.items if isinstance(item, Bar) and item.label is not None]
    assert [bar.end - bar.start for bar in bars] == [row.value for row in rows]


@given(values(spans=True), st.sampled_from(("si", "us")))
@SLOW
def test_any_sensitivity_is_clear_and_to_scale(rows: list[BarValue], units) -> None:
    scene = sensitivity_bars(rows, quantity="Row load", units=units, above="down", below="up")
    check_scene(scene)
    check_written_scales(scene)
    larger = [item.end for item in scene.items if isinstance(item, Bar) and item.name.startswith("bar-larger")]
    assert sorted(larger) == sorted((row.high or 0.0) - row.value for row in rows)


def test_a_reversed_load_has_a_direction_word_and_no_sign() -> None:
    scene = comparison_bars(
        [BarValue("stock", 3400.0), BarValue("spacers", -240.0)], quantity="Inboard row", above="down", below="up"
    )
    assert scene.title == "Inboard row: spacers 240\u00a0N up, stock 3.40\u00a0kN down"
    words = [line for item in scene.items if isinstance(item, Note) for line in item.label.lines]
    assert not any("\u2212" in line for line in words)


def test_what_changes_nothing_is_said_to_contribute_nothing() -> None:
    same = comparison_bars([BarValue("spacer", 5340.0), BarValue("offset", 5340.0)], quantity="Outboard row")
    assert "contributes nothing" in same.title
    one = sensitivity_bars([BarValue("a", 5.0, 4.0, 6.0), BarValue("height", 5.0, 5.0, 5.0)], quantity="Row load")
    assert one.title.endswith("height contributes nothing")


def test_spans_that_overlap_settle_nothing() -> None:
    rows = [BarValue("stock", 3.0, 2.0, 4.0), BarValue("spacers", 3.5, 2.5, 4.5)]
    assert "do not settle" in comparison_bars(rows, quantity="Row load").title
    apart = [rows[0], BarValue("spacers", 7.5, 6.5, 8.5)]
    assert "do not settle" not in comparison_bars(apart, quantity="Row load").title


def test_two_charts_can_share_a_scale() -> None:
    first = comparison_bars([BarValue("a", 900.0)], quantity="x", per_mm=50.0)
    second = comparison_bars([BarValue("a", 4000.0)], quantity="x", per_mm=50.0)
    assert first.view("chart").scale == second.view("chart").scale == pytest.approx(1 / 50)


def test_the_input_that_matters_most_stands_first() -> None:
    rows = [BarValue("small", 5.0, 4.9, 5.1), BarValue("large", 5.0, 6.0, 3.0)]
    scene = sensitivity_bars(rows, quantity="Row load")
    assert "large matters most" in scene.title
    first = next(item for item in scene.items if isinstance(item, Bar))
    assert first.label is not None
    assert first.label.lines == ("large",)
    # the result falls when this input grows
    assert first.end == pytest.approx(-2.0)


def test_kinds_are_not_mixed_and_both_ends_are_needed() -> None:
    with pytest.raises(ValueError, match="one kind of value"):
        comparison_bars([BarValue("a", 1.0), BarValue("b", 1.0, kind="moment")], quantity="x")
    with pytest.raises(ValueError, match="needs both ends"):
        sensitivity_bars([BarValue("a", 1.0)], quantity="x")

"""Bars of comparisons and sensitivities: one scale, lengths that are the values, words for directions and nothing."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hubwright.drawing import draw
from hubwright.drawing.marks import Shape
from hubwright.scenes.chart_rows import BarValue
from hubwright.scenes.comparison_bars import comparison_bars
from hubwright.scenes.sensitivity_bars import sensitivity_bars
from hubwright.scenes.vocabulary import Axis, Bar, Line, Note, Scene
from scene_checks import SLOW, check_scene, check_written_scales

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


def texts(scene: Scene) -> list[str]:
    return [line for item in scene.items if isinstance(item, Note) for line in item.label.lines]


def test_captions_say_what_their_spans_are() -> None:
    rows = [BarValue("stock", 3.0, 2.0, 4.0), BarValue("spacers", 3.5, 2.5, 4.5)]
    assert "5th to 95th percentile of 400 draws" in comparison_bars(rows, quantity="Row load", draws=400).caption
    assert "5th to 95th percentile of draws" in comparison_bars(rows, quantity="Row load").caption
    caption = sensitivity_bars(rows[:1], quantity="Row load").caption
    assert "Each input alone" in caption
    assert "95th percentile of its range" in caption


@pytest.mark.parametrize("form", ["wide", "narrow"])
def test_the_axis_names_quantity_and_unit_and_which_way_is_which(form) -> None:
    rows = [BarValue("stock", 3400.0), BarValue("spacers", -240.0)]
    comparison = comparison_bars(rows, quantity="Inboard row", above="down", below="up")
    sensitivity = sensitivity_bars([BarValue("offset", 5000.0, 4900.0, 5150.0)], quantity="Load", units="us")
    for scene, title in (
        (comparison, "inboard row, kN: up left of 0, down right of it"),
        (sensitivity, "change, lbf: less left of 0, more right of it"),
    ):
        drawn = draw(scene, form=form)
        drawings = drawn if isinstance(drawn, tuple) else (drawn,)
        assert any(title == text.words for drawing in drawings for text in drawing.texts)


def test_a_title_that_has_no_room_on_a_phone_leaves_the_quantity_to_the_heading() -> None:
    rows = [BarValue("stock", 340.0, kind="moment"), BarValue("spacers", -24.0, kind="moment")]
    quantity = "Moment of the hub on the bearing, about its centre"
    scene = comparison_bars(rows, quantity=quantity, above="top inboard", below="top outboard")
    (axis,) = (item for item in scene.items if isinstance(item, Axis))
    assert axis.title == "N·m: top outboard left of 0, top inboard right of it"
    (drawing,) = draw(scene, form="narrow")
    assert quantity in {text.words for text in drawing.texts}


def test_a_span_is_one_line_with_direction_words_of_its_own_only_where_it_reaches_zero() -> None:
    rows = [BarValue("a", -480.0, -510.0, -432.0, "moment"), BarValue("b", -10.0, -40.0, 20.0, "moment")]
    told = texts(comparison_bars(rows, quantity="Moment", above="inboard", below="outboard"))
    assert told[1].replace("\u00a0", " ") == "span 432 to 510 N·m"
    assert told[3].replace("\u00a0", " ") == "span 40 N·m outboard to 20 N·m inboard"
    bare = texts(comparison_bars(rows[:1], quantity="Moment"))
    assert bare[1].replace("\u00a0", " ") == "span \u2212510 to \u2212432 N·m"


def test_changes_have_like_digits_and_no_sum_is_printed_that_does_not_close() -> None:
    # 61.24 − 30.78 = 30.46, which prints as 61.2, 30.8 and 30.5
    rows = [
        BarValue("face", 61.24, 92.02, 30.46, "moment", (0.047, 0.055), "small length"),
        BarValue("mass", 61.24, 60.12, 62.36, "moment"),
        BarValue("grease", 61.24, 61.22, 61.26, "moment"),
    ]
    scene = sensitivity_bars(rows, quantity="Moment")
    told = [line.replace("\u00a0", " ") for line in texts(scene)]
    assert told[:2] == ["larger: 30.8 N·m less", "smaller: 30.8 N·m more"]
    assert told[2:4] == ["larger: 1.1 N·m more", "smaller: 1.1 N·m less"]
    assert told[4] == "larger: under 0.1 N·m more"
    assert "30.5" not in f"{scene.title} {scene.caption} {scene.description}"
    assert "face (47 to 55\u00a0mm): larger" in scene.description
    first = next(item for item in scene.items if isinstance(item, Bar))
    assert first.label is not None
    assert first.label.lines == ("face", "47 to 55\u00a0mm")


def test_no_change_leaves_nothing_beside_the_zero_line() -> None:
    rows = [BarValue("offset", 5.0, 4.0, 6.0), BarValue("height", 5.0, 5.0, 5.0)]
    scene = sensitivity_bars(rows, quantity="Row load")
    idle = [item for item in scene.items if isinstance(item, Bar) and item.name.endswith("-2")]
    assert [(bar.start, bar.end) for bar in idle] == [(0.0, 0.0)]
    assert idle[0].thick < 0.4
    assert texts(scene)[-1] == "no change"


@pytest.mark.parametrize("spanned", [True, False])
def test_bars_and_words_fill_the_sheet(spanned: bool) -> None:
    ends = (-130.0, 510.0) if spanned else (None, None)
    rows = [BarValue("standing", 57.0, kind="moment"), BarValue("corner", 480.0, *ends, "moment")]
    scene = comparison_bars(rows, quantity="Moment")
    (view,) = scene.views
    reach = [view.on_sheet((value, 0.0))[0] for row in rows for value in (0.0, *row.ends)]
    assert max(reach) - min(reach) > 0.5 * scene.size[0]
    (axis,) = (item for item in scene.items if isinstance(item, Axis))
    assert len(axis.marks) >= 5


def test_on_a_phone_the_zero_line_runs_along_the_bars_alone() -> None:
    rows = [BarValue(name, value, kind="moment") for name, value in (("a", 57.0), ("b", -340.0), ("c", 353.0))]
    (drawing,) = draw(comparison_bars(rows, quantity="Moment"), form="narrow")
    lines = [item for item in drawing.scene.items if isinstance(item, Line)]
    bars = [item for item in drawing.scene.items if isinstance(item, Bar)]
    assert len(lines) == len(bars)
    for bar, line in zip(sorted(bars, key=lambda each: each.at), lines, strict=True):
        low, high = (y for _, y in line.points)
        assert low < bar.at - bar.thick / 2
        assert high > bar.at + bar.thick / 2


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


def test_a_span_stands_on_an_edge_of_paper_so_that_it_shows_over_its_bar() -> None:
    drawing = draw(comparison_bars([BarValue("as it is", 900.0, 800.0, 950.0)], quantity="Row load"))
    (group,) = (group for group in drawing.groups() if group.name == "bar-span-1")
    edge, line = [mark for mark in group.children if isinstance(mark, Shape)][-2:]
    assert (edge.line, line.line) == ("paper", "ink")
    assert edge.width >= line.width + 0.6
    assert all((a == b).all() for a, b in zip(edge.rings, line.rings, strict=True))

"""Charts as tables: every labelled value, and curves read at the marks of their own axis."""

import pytest

from drawing.test_demonstration_figures import FILES, UNITS, scenes
from hubwright.drawing import draw
from hubwright.drawing.snippet import snippet
from hubwright.scenes import vocabulary as v
from hubwright.scenes.chart_rows import BarValue
from hubwright.scenes.comparison_bars import comparison_bars
from hubwright.scenes.force_table import force_rows
from hubwright.scenes.sensitivity_bars import sensitivity_bars
from hubwright.scenes.value_table import curve_tables, value_rows


def plot(*items: v.Item) -> v.Scene:
    return v.Scene(
        name="plot",
        title="A plot",
        caption="A plot.",
        description="A plot.",
        units="si",
        size=(100.0, 80.0),
        views=(v.View("plot", (10.0, 30.0), 1.0, vertical_per_mm=1.0),),
        items=items,
    )


def axis(direction, marks: tuple[tuple[float, str], ...], title: str) -> v.Axis:
    return v.Axis(f"axis-{title}", "plot", direction=direction, start=0.0, end=40.0, marks=marks, title=title)


def test_bars_are_told_by_name_value_and_span() -> None:
    values = [BarValue("as it is", 5000.0, 4800.0, 5200.0), BarValue("with a spacer", 6000.0, 5700.0, 6400.0)]
    rows = value_rows(comparison_bars(values, quantity="Load"))
    assert [row.name for row in rows] == ["as it is", "with a spacer"]
    for row, value in zip(rows, ("5", "6"), strict=True):
        assert row.words.startswith(f"{value}\u00a0kN, span")


def test_sensitivities_are_told_by_input() -> None:
    rows = value_rows(sensitivity_bars([BarValue("offset", 5000.0, 4900.0, 5150.0)], quantity="Load"))
    assert [row.name for row in rows] == ["offset"]
    assert rows[0].words


def test_a_curve_is_read_at_the_marks_of_its_axis_in_the_units_of_its_marks() -> None:
    # y = x²/10 in newtons, whose axis is marked in kilonewtons
    curve = v.Curve("curve-square", "plot", points=tuple((x, x * x * 100.0) for x in range(41)), filled=False)
    across = axis("horizontal", ((0.0, "0"), (10.0, "10"), (20.0, "20\u00a0mm")), "way, mm")
    upright = axis("vertical", ((0.0, "0"), (20000.0, "20"), (40000.0, "40")), "force, kN")
    (table,) = curve_tables(plot(curve, across, upright))
    assert table.heads == ("way, mm → force, kN", "square")
    assert table.rows == (("0", "0"), ("10", "10"), ("20\u00a0mm", "40"))


def test_pieces_of_a_curve_are_one_and_powers_of_ten_are_read_as_such() -> None:
    first = v.Curve("curve-life-1", "plot", points=((0.0, 0.0), (10.0, 1.0)), filled=False)
    second = v.Curve("curve-life-2", "plot", points=((10.0, 1.0), (20.0, -1.0)), filled=False)
    across = axis("horizontal", ((0.0, "0"), (10.0, "10"), (20.0, "20"), (30.0, "30")), "load, kN")
    upright = axis("vertical", ((-1.0, "0.1"), (0.0, "1"), (1.0, "10")), "life, times")
    (table,) = curve_tables(plot(first, second, across, upright))
    assert table.rows == (("0", "1"), ("10", "10"), ("20", "0.100"), ("30", ""))


@pytest.mark.parametrize("units", UNITS)
def test_every_figure_has_words_and_numbers_of_what_it_shows(units: v.Units) -> None:
    for file in FILES:
        for scene in scenes(file, units):
            assert len(scene.description) > 40, scene.name
            if any(isinstance(item, v.Force) and any(item.vector) for item in scene.items) or scene.bodies:
                assert force_rows(scene), scene.name
            if any(isinstance(item, v.Bar | v.Curve) for item in scene.items):
                assert value_rows(scene) or curve_tables(scene), scene.name
            assert all(row.name and row.words for row in value_rows(scene)), scene.name


def test_the_snippet_of_a_chart_holds_its_values() -> None:
    scene = comparison_bars([BarValue("as it is", 5000.0), BarValue("wider", 6000.0)], quantity="Load")
    written = snippet(draw(scene), prefix="a")
    assert ">as it is</th>" in written
    assert "6\u00a0kN" in written[written.index("<table>") :]

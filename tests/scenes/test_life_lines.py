"""Lines of life: on an axis of ratios, dashed where the life formula does not hold, never a life alone."""

import math
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hubwright.drawing import draw
from hubwright.results import described_wheels, solve
from hubwright.results.life_curves import against_lateral_g
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.scenes.life_lines import life_against_lateral_g, life_against_load_line, life_against_wheel_load
from hubwright.scenes.plot_frame import Area, LineEnd, end_labels, plot
from hubwright.scenes.vocabulary import Curve, Note, Part
from hubwright.setup import load
from hubwright.setup.model import Setup
from scene_checks import check_scene
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
VEHICLES = ("hill-wagon", "supply-van", "kit-trailer")
NAMES = ("life against load line offset", "life against wheel load", "life against lateral g")
SLOW = settings(max_examples=8, deadline=None, suppress_health_check=list(HealthCheck))


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("name", NAMES)
def test_the_demonstration_has_its_figures(vehicle: str, name: str) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    for units in ("si", "us"):
        scene = scene_function(name)(results, units=units)
        check_scene(scene)
        for words in (scene.title, scene.caption, scene.description):
            assert "revolutions" not in words
            assert " km " not in words


@given(chosen=setups(), data=st.data())
@SLOW
def test_every_valid_setup_has_its_figures(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    name = data.draw(st.sampled_from(NAMES))
    if FIGURES[name].cases(results):
        check_scene(scene_function(name)(results, units=data.draw(st.sampled_from(("si", "us")))))


def test_what_lies_outside_the_range_is_dashed() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    curves = against_lateral_g(results)
    outer = curves.curves[0]
    limit = curves.x[outer.valid].max()
    drawn = [
        item
        for item in life_against_lateral_g(results).items
        if isinstance(item, Curve) and item.name.startswith("curve-outer")
    ]
    assert [item.dashed for item in drawn] == [False, True]
    assert drawn[0].points[-1][0] == pytest.approx(limit)
    assert not outer.valid[-1]


def test_a_span_that_holds_one_settles_nothing() -> None:
    scene = life_against_load_line(solve(load(CONTENT / "vehicles/supply-van.toml")))
    assert "these data do not settle" in scene.title


def test_ranges_make_a_span_that_the_caption_explains() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    scene = life_against_lateral_g(results)
    assert any(isinstance(item, Part) and item.name == "part-span" for item in scene.items)
    assert "Grey" in scene.caption


def test_a_band_that_the_line_hides_is_not_promised() -> None:
    scene = life_against_wheel_load(solve(load(CONTENT / "vehicles/supply-van.toml")))
    band = next(item for item in scene.items if isinstance(item, Part) and item.name == "part-span")
    line = next(item for item in scene.items if isinstance(item, Curve) and item.name.startswith("curve-duty"))
    view = scene.view("plot")
    upper, lower = band.rings[0][: len(band.rings[0]) // 2], band.rings[0][len(band.rings[0]) // 2 :]
    wide = max(view.on_sheet(a)[1] - view.on_sheet(b)[1] for a, b in zip(upper, reversed(lower), strict=True))
    assert wide < line.width
    assert "Grey" not in scene.caption
    assert "Narrower than the thick line: its span" in scene.caption


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("name", NAMES)
def test_no_curve_shows_its_pieces(vehicle: str, name: str) -> None:
    scene = scene_function(name)(solve(load(CONTENT / f"vehicles/{vehicle}.toml")))
    view = scene.view("plot")
    for curve in (item for item in scene.items if isinstance(item, Curve)):
        points = [view.on_sheet(point) for point in curve.points]
        for (x0, y0), (x1, y1), (x2, y2) in zip(points, points[1:], points[2:], strict=False):
            off = abs((x2 - x0) * (y1 - y0) - (y2 - y0) * (x1 - x0)) / math.hypot(x2 - x0, y2 - y0)
            assert off < 0.4  # of two pieces from one: less than half of what the thick line is wide


def test_the_word_at_the_standing_point_keeps_off_the_ordinate() -> None:
    scene = life_against_lateral_g(solve(load(CONTENT / "vehicles/kit-trailer.toml")))
    box = next(text.box for text in draw(scene).texts if text.name == "label-own")
    assert box[0] > scene.view("plot").on_sheet((0.0, 0.0))[0]


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("name", NAMES)
def test_lines_and_band_end_inside_the_plot(vehicle: str, name: str) -> None:
    scene = scene_function(name)(solve(load(CONTENT / f"vehicles/{vehicle}.toml")))
    axis = next(item for item in scene.items if item.name == "axis-ratio")
    curves = [item for item in scene.items if isinstance(item, Curve)]
    furthest = max(point[0] for curve in curves for point in curve.points)
    for curve in curves:
        last = max(piece.points[-1][0] for piece in curves if piece.name[:-1] == curve.name[:-1])
        assert last == pytest.approx(furthest), curve.name
    for band in (item for item in scene.items if isinstance(item, Part)):
        # a percentile that runs along the edge of the plot would look like one that has stopped falling
        edges = [point for point in band.rings[0] if min(abs(point[1] - axis.start), abs(point[1] - axis.end)) < 1e-6]
        assert not edges


def test_a_line_that_leaves_the_plot_is_cut_at_its_edge() -> None:
    frame = plot("plot", Area(0.0, 0.0, 100.0, 100.0), (0.0, 4.0), (0.0, 1.0))
    line = [(0.0, 0.5, True), (1.0, 1.5, True), (2.0, 0.5, True), (3.0, -1.5, False), (4.0, -2.0, False)]
    runs = frame.runs(line)
    assert [[point[:2] for point in run] for run in runs] == [
        [(0.0, 0.5), (0.5, 1.0)],
        [(1.5, 1.0), (2.0, 0.5), (2.25, 0.0)],
    ]
    assert runs[1][-1][2] is False


def test_every_line_has_words_of_its_own() -> None:
    # on a phone a letter stands for each
    frame = plot("plot", Area(0.0, 0.0, 100.0, 100.0), (0.0, 1.0), (0.0, 1.0))
    ends = [
        LineEnd("one", (1.0, 0.5), ("one",), 3, also=((0.9, 0.4),)),
        LineEnd("other", (1.0, 0.502), ("other",), 4, also=((0.9, 0.6),)),
        LineEnd("third", (1.0, 0.9), ("third",), 4, also=((0.9, 0.9),)),
    ]
    notes = {note.name: note.label for note in end_labels(frame.view, ends)}
    assert {name: label.lines for name, label in notes.items()} == {
        "label-one": ("one",),
        "label-other": ("other",),
        "label-third": ("third",),
    }
    assert (notes["label-one"].also, notes["label-other"].also) == ((), ())  # two that look like one are met together
    assert notes["label-third"].also == ((0.9, 0.9),)


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("name", NAMES)
def test_ratios_of_one_sheet_are_of_one_form(vehicle: str, name: str) -> None:
    scene = scene_function(name)(solve(load(CONTENT / f"vehicles/{vehicle}.toml")))
    labels = [line for item in scene.items if isinstance(item, Note) for line in item.label.lines]
    told = [line.split()[1] for line in labels if line.startswith("× ")]
    small = [text for text in told if text.startswith(("1/", "0."))]
    assert len({text[:2] for text in small}) <= 1, told
    assert not (small and small[0].startswith("1/") and " 0." in scene.title.replace(" 0.30", ""))


def test_the_rule_says_that_life_falls_as_load_grows() -> None:
    for vehicle, rule in (("hill-wagon", "one over load cubed"), ("kit-trailer", "one over load to the power 10/3")):
        scene = life_against_wheel_load(solve(load(CONTENT / f"vehicles/{vehicle}.toml")))
        label = next(item for item in scene.items if isinstance(item, Note) and item.name == "label-rule")
        assert label.label.lines == ("rule of the rating:", rule)
        curve = next(item for item in scene.items if isinstance(item, Curve) and item.name == "curve-rule")
        assert curve.points[0][1] > 0 > curve.points[-1][1]


def test_corners_of_a_line_are_explained_where_there_are_some() -> None:
    trailer = solve(load(CONTENT / "vehicles/kit-trailer.toml"))
    assert "rollers of a row come free of load" in life_against_load_line(trailer).caption
    for vehicle in ("hill-wagon", "supply-van"):  # peaks, however sharp, are no corners
        scene = life_against_load_line(solve(load(CONTENT / f"vehicles/{vehicle}.toml")))
        assert "come free" not in scene.caption


def test_a_bend_has_the_name_that_the_file_gives_it() -> None:
    # the van's duty, named alone, brings a brisk bend as hard as the brisk corner of the file
    scene = life_against_load_line(solve(load(CONTENT / "vehicles/supply-van.toml")))
    labels = {item.label.lines[0] for item in scene.items if isinstance(item, Note)}
    assert {"life, brisk corner left", "life, brisk corner right"} < labels

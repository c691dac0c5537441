"""A beam alone: its free body closes as it is drawn, and its plots are the solved curves to scale."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drawing.written_checks import failures_of, wrong_with
from hubwright.drawing import draw, svg_for_page
from hubwright.drawing.closure import left_over
from hubwright.drawing.marks import Shape
from hubwright.quantities import POUND_FORCE
from hubwright.results.beams import solve_beam
from hubwright.scenes.beam_alone import beam_alone
from hubwright.scenes.vocabulary import Curve, Dimension, Force, Moment, Note
from hubwright.setup import load
from hubwright.setup.model import Beam, DistributedLoad, PointForce, PointMoment, Section, Support

CONTENT = Path(__file__).parents[2] / "content"


@st.composite
def beams(draw_one: st.DrawFn) -> Beam:
    """Beams from a hand's width to a bridge, with any loads."""
    length = draw_one(st.sampled_from([0.1, 1.2, 4.0, 25.0]))
    part = st.integers(0, 100).map(lambda share: share / 100 * length)
    size = st.integers(-90, 90).filter(bool).map(lambda value: value * 10.0)
    spread = st.tuples(st.integers(0, 45), st.integers(50, 100), size).map(
        lambda t: DistributedLoad(t[0] / 100 * length, t[1] / 100 * length, t[2])
    )
    supports = draw_one(
        st.sampled_from(
            [
                (Support(0, "pin"), Support(length, "roller")),
                (Support(0.2 * length, "pin"), Support(0.8 * length, "roller")),
                (Support(0, "fixed"),),
                (Support(length, "fixed"),),
                (Support(0, "fixed"), Support(0.7 * length, "roller")),
            ]
        )
    )
    one = st.one_of(st.builds(PointForce, part, size), st.builds(PointMoment, part, size), spread)
    section = draw_one(st.sampled_from([None, Section(210e9, 1e-7 * length)]))
    loads = tuple(draw_one(st.lists(one, min_size=1, max_size=5)))
    return Beam("Random beam", "random", length, supports, loads, section, {}, ())


@given(beams())
@settings(max_examples=60, deadline=None)
def test_the_free_body_closes_as_it_is_drawn(beam: Beam):
    scene = beam_alone(solve_beam(beam))
    assert scene.body is not None
    force, moment, largest, largest_moment = left_over(scene.body)
    assert force <= 1e-9 * largest
    assert moment <= 1e-9 * max(largest_moment, largest * beam.length)
    drawn = {item.name: item for item in scene.items if isinstance(item, Force | Moment)}
    for name, (_, _, z), (x, _, _) in scene.body.forces:
        arrow = drawn[name]
        assert isinstance(arrow, Force)
        assert arrow.vector == (0.0, z)
        assert arrow.at[0] == pytest.approx(x * 1e3)
    for name, (_, turn, _) in scene.body.couples:
        arc = drawn.get(name)  # only a wall has one among the supports
        assert turn == 0 if arc is None else turn == -arc.newton_metres  # type: ignore[union-attr]


@given(beams())
@settings(max_examples=40, deadline=None)
def test_small_arrows_sum_to_the_distributed_load(beam: Beam):
    scene = beam_alone(solve_beam(beam))
    for number, each in enumerate(beam.loads, start=1):
        if isinstance(each, DistributedLoad):
            arrows = [
                item for item in scene.items if isinstance(item, Force) and item.name.startswith(f"force-{number}-")
            ]
            total = each.intensity * (each.end - each.start)
            assert sum(arrow.vector[1] for arrow in arrows) == pytest.approx(total)
            middle = sum(arrow.vector[1] * arrow.at[0] for arrow in arrows) / total
            assert middle == pytest.approx((each.start + each.end) / 2 * 1e3)


@given(beams())
@settings(max_examples=40, deadline=None)
def test_plots_are_the_solved_curves(beam: Beam):
    solved = solve_beam(beam)
    scene = beam_alone(solved)
    curves = {item.name: item for item in scene.items if isinstance(item, Curve)}
    for name, values in (("shear", solved.curves.shear), ("moment", solved.curves.moment)):
        points = curves[f"curve-{name}"].points
        # closed to the zero line at both ends
        assert points[0][1] == points[-1][1] == 0.0
        assert [y for _, y in points[1:-1]] == list(values)
        view = scene.view(name)
        heights = [view.on_sheet(point)[1] for point in points]
        assert max(heights) - min(heights) <= 27.0 + 1e-6
    assert scene.view("shear").vertical_per_mm == scene.view("beam").newtons_per_mm


@given(beams())
@settings(max_examples=40, deadline=None)
def test_dimensions_add_up_to_the_length(beam: Beam):
    scene = beam_alone(solve_beam(beam))
    spans = [item for item in scene.items if isinstance(item, Dimension)]
    drawn = sum(span.end[0] - span.start[0] for span in spans)
    # spans of less than half a millimetre on the sheet have none
    assert drawn == pytest.approx(beam.length * 1e3, abs=10 * 0.5 / scene.view("beam").scale)


@given(beams(), st.sampled_from(("si", "us")))
@settings(max_examples=40, deadline=None)
def test_a_chain_of_distances_has_one_unit_like_digits_and_no_false_short_one(beam: Beam, units):
    spans = [item for item in beam_alone(solve_beam(beam), units=units).items if isinstance(item, Dimension)]
    told = [span.text.split("\u00a0") for span in spans]
    assert len({unit for _, unit in told}) <= 1
    assert len({len(number.partition(".")[2]) for number, _ in told}) <= 1
    for span, (number, unit) in zip(spans, told, strict=True):
        millimetres = float(number.replace(",", "")) * {"mm": 1.0, "m": 1000.0, "in": 25.4}[unit]
        assert millimetres == pytest.approx(span.end[0] - span.start[0], rel=0.025)


def test_the_caption_speaks_of_couples_only_where_there_are_any_and_says_the_signs():
    ends = (Support(0, "pin"), Support(2.0, "roller"))
    for acting, has in ((PointForce(1.0, -100.0), False), (PointMoment(1.0, 100.0), True)):
        caption = beam_alone(solve_beam(Beam("Any", "any", 2.0, ends, (acting,), None, {}, ()))).caption
        assert ("couples as arcs" in caption) is has
        # a phone shows no words beside the plots, but the caption
        assert "upward forces left of the cut" in caption
        assert "positive where the beam sags" in caption
        assert "a shape and no size" in caption


@pytest.mark.parametrize("file", sorted(CONTENT.glob("beams/*.toml")), ids=lambda file: file.stem)
@pytest.mark.parametrize("units", ["si", "us"])
def test_no_words_meet_in_the_demonstration(file: Path, units):
    beam = load(file)
    assert isinstance(beam, Beam)
    assert wrong_with(draw(beam_alone(solve_beam(beam), units=units))) == []


def test_the_title_tells_sense_place_and_size_of_the_largest_moment():
    # F L/4 at the middle, as in any table of beams
    beam = Beam(
        "Bench", "bench", 2.0, (Support(0, "pin"), Support(2, "roller")), (PointForce(1.0, -800.0),), None, {}, ()
    )
    assert beam_alone(solve_beam(beam)).title.replace("\u00a0", " ") == (
        "The beam bends most 1 m from its left end: 400 N·m, sagging"
    )


@pytest.mark.parametrize("form", ["wide", "narrow"])
def test_the_line_of_a_distributed_load_runs_along_the_tails_of_its_arrows(form):
    scene = beam_alone(solve_beam(load(CONTENT / "beams/plank-bridge.toml")))
    drawings = (draw(scene),) if form == "wide" else draw(scene, form="narrow")
    groups = {group.name: group for drawing in drawings for group in drawing.groups()}
    arrows = [group.ends for name, group in groups.items() if name.startswith("force-3-")]
    assert arrows
    line = groups["line-row-3"].children[0]
    assert isinstance(line, Shape)
    for ends in arrows:
        assert ends is not None
        assert ends[1] == pytest.approx(line.rings[0][0][1], abs=0.01)  # the tail
        assert ends[1] > ends[3]


def test_a_force_too_small_to_see_has_an_arrow_and_says_so_clear_of_other_words():
    loads = (PointForce(1.0, -3000.0), PointForce(1.05, -20.0))
    beam = Beam("Two loads", "random", 2.0, (Support(0, "pin"), Support(2.0, "roller")), loads, None, {}, ())
    scene = beam_alone(solve_beam(beam))
    small = next(item for item in scene.items if isinstance(item, Force) and item.name == "force-2")
    assert not small.to_scale
    assert wrong_with(draw(scene)) == []


def test_a_shear_that_several_forces_make_is_the_sum_of_what_is_printed():
    # by hand, in lbf: 35.4 up at the left support, 100.4 up, 442.8 down, 307.0 up; 35 + 100 as printed is not 135.8
    loads = (PointForce(0.5, 100.4 * POUND_FORCE), PointForce(1.5, -442.8 * POUND_FORCE))
    beam = Beam("Two loads", "random", 2.0, (Support(0, "pin"), Support(2.0, "roller")), loads, None, {}, ())
    scene = beam_alone(solve_beam(beam), units="us")
    told = [
        item.label.lines[0] for item in scene.items if isinstance(item, Note) and item.name.startswith("label-shear")
    ]
    assert [text.split(" = ")[1].replace("\u00a0", " ") for text in told] == ["135 lbf", "\u2212307 lbf"]
    printed = [item.label.lines[0] for item in scene.items if isinstance(item, Force) and item.label is not None]
    assert any("100\u00a0lbf" in text for text in printed)
    assert any("35\u00a0lbf" in text for text in printed)


WALL = (Support(0, "fixed"), Support(1.4, "roller"))
ENDS = (Support(0, "pin"), Support(2.0, "roller"))


@pytest.mark.parametrize("form", ["wide", "narrow"])
@pytest.mark.parametrize("units", ["si", "us"])
@pytest.mark.parametrize(
    ("supports", "loads"),
    [
        (WALL, (PointForce(1.54, 370.0), PointForce(0.0, -310.0), PointMoment(0.9, 880.0), PointForce(1.9, -770.0))),
        ((Support(2.0, "fixed"),), (PointForce(2.0, -300.0), PointForce(1.9, 400.0), PointForce(0.0, -3000.0))),
        (ENDS, (PointForce(1.95, 300.0), PointForce(0.05, 350.0), PointForce(1.0, -4000.0))),
        ((Support(0, "fixed"),), (PointForce(2.0, -100.0),)),
        (WALL, (DistributedLoad(0.0, 2.0, 200.0), PointForce(1.4, 90.0))),
    ],
    ids=["small forces at both", "wall at the right", "beside the ends", "heading beside a wall", "over a roller"],
)
def test_words_stand_on_no_support_and_not_on_the_bar(supports, loads, units, form):
    scene = beam_alone(solve_beam(Beam("Any", "any", 2.0, supports, loads, None, {}, ())), units=units)
    for drawing in (draw(scene),) if form == "wide" else draw(scene, form="narrow"):
        assert failures_of(svg_for_page(drawing, prefix="f", units_class=units)) == []


def test_on_a_phone_a_shear_of_nothing_has_its_heading():
    # a couple alone at a wall: no force anywhere, so the curve of shear lies on its line
    beam = Beam("Couple", "couple", 2.0, (Support(0, "fixed"),), (PointMoment(1.0, 400.0),), None, {}, ())
    (drawing,) = draw(beam_alone(solve_beam(beam)), form="narrow")
    headings = {text.words for text in drawing.texts if text.name.startswith("words-")}
    assert headings == {"Free body", "Shear V", "Moment M", "Deflection δ"}


def test_a_support_that_carries_no_force_has_no_way():
    # a couple alone is held by the wall's moment
    beam = Beam("Couple", "couple", 2.0, (Support(0, "fixed"),), (PointMoment(1.0, 400.0),), None, {}, ())
    scene = beam_alone(solve_beam(beam))
    reaction = next(item for item in scene.items if isinstance(item, Force) and item.name == "reaction-1")
    assert reaction.label is not None
    assert reaction.label.lines == ("*{R|1} = 0\u00a0N",)
    assert "carries no force and holds with a couple of 400\u00a0N·m" in scene.description

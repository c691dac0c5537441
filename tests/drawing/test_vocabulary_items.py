"""Angles, leader dimensions, springs, dampers, callouts and arrows of every role, as the written file has them."""

import math
from dataclasses import replace

import pytest

from drawing.example_scene import every_item
from drawing.read_back import ReadFigure, read
from drawing.written_checks import failures_of
from hubwright.drawing import draw, svg_for_page
from hubwright.drawing.arrows import force_marks, moment_marks
from hubwright.drawing.marks import Disc, Group, Lettering, Shape
from hubwright.scenes import vocabulary as v


@pytest.fixture(scope="module")
def page() -> str:
    return svg_for_page(draw(every_item()), prefix="figure-1", units_class="si")


@pytest.fixture(scope="module")
def figure(page: str) -> ReadFigure:
    return read(page)


def group_of(scene: v.Scene, name: str) -> Group:
    (found,) = [group for group in draw(scene).groups() if group.name == name]
    return found


def with_item(item: v.Item) -> v.Scene:
    scene = every_item()
    return replace(scene, items=(*scene.items, item))


@pytest.mark.parametrize(
    ("name", "degrees"),
    [
        ("dimension-contact", math.degrees(math.atan(26 / 40))),  # 26 aside over 40 up
        ("dimension-slim", math.degrees(math.atan(24 / 370))),
    ],
)
def test_an_angle_in_the_file_is_that_between_its_sides(figure: ReadFigure, name: str, degrees: float) -> None:
    (group,) = [group for group in figure.groups if group.name == name]
    assert float(group.data["data-degrees"]) == pytest.approx(degrees)


def test_the_checks_see_an_angle_that_is_drawn_otherwise(page: str) -> None:
    told = page.replace('data-degrees="33.', 'data-degrees="38.', 1)
    assert told != page
    assert "angle not as it says" in {failure.kind for failure in failures_of(told)}


def test_a_dimension_for_which_another_label_speaks_has_no_words_and_no_letter() -> None:
    scene = with_item(v.Dimension("bare", "whole", start=(0.0, 0.0), end=(0.0, 40.0), direction="vertical"))
    group = group_of(scene, "dimension-bare")
    assert dict(group.data)["mm"] == "40"
    assert not any(isinstance(mark, Lettering) for mark in group.children)
    assert all(entry.lines[0] for drawing in draw(scene, form="narrow") for entry in drawing.balloons)


def test_an_angle_is_not_measured_in_a_plot() -> None:
    angle = v.AngularDimension("wrong", "plot", vertex=(0, 0), start=(50, 0), end=(50, 400))
    with pytest.raises(ValueError, match="whose ordinate is no length"):
        draw(with_item(angle))


def test_leader_dimensions_carry_radius_and_diameter(figure: ReadFigure) -> None:
    lengths = {g.name: float(g.data["data-mm"]) for g in figure.of("dimension-") if "data-mm" in g.data}
    assert lengths["dimension-bore"] == pytest.approx(16.0)
    assert lengths["dimension-free radius"] == pytest.approx(370.0)
    assert lengths["dimension-small"] == pytest.approx(12.0)


def test_a_radius_has_one_head_and_a_diameter_two() -> None:
    def heads(name: str) -> int:
        marks = group_of(every_item(), name).children
        return sum(1 for mark in marks if isinstance(mark, Shape) and mark.fill)

    assert heads("dimension-free radius") == 1
    assert heads("dimension-bore") == heads("dimension-small") == 2


@pytest.mark.parametrize("name", ["spring-spring", "damper-damper"])
def test_springs_and_dampers_reach_from_point_to_point(name: str) -> None:
    group = group_of(every_item(), name)
    assert group.ends is not None
    points = [
        tuple(point) for mark in group.children if isinstance(mark, Shape) for ring in mark.rings for point in ring
    ]
    for end in (group.ends[:2], group.ends[2:]):
        assert any(point == pytest.approx(end) for point in points)
    along = [y for _, y in points]
    assert (min(along), max(along)) == pytest.approx(sorted((group.ends[1], group.ends[3])))


def test_a_callout_points_at_its_place_from_a_ring_or_a_frame() -> None:
    scene = every_item()
    for name, at, view in (("label-callout-A", (-60, 70), "whole"), ("label-callout-remark", (130, -500), "plot")):
        marks = group_of(scene, name).children
        pointer = next(mark for mark in marks if isinstance(mark, Shape) and mark.fill and mark.fill != "paper")
        assert tuple(pointer.rings[0][0]) == pytest.approx(scene.view(view).on_sheet(at))
        assert [mark for mark in marks if isinstance(mark, Lettering)]
    assert [mark for mark in group_of(scene, "label-callout-A").children if isinstance(mark, Disc)]


def test_an_arrow_that_is_not_to_scale_says_so_and_carries_no_newtons(figure: ReadFigure) -> None:
    (group,) = [group for group in figure.groups if group.name == "force-slight"]
    assert "data-newtons" not in group.data
    assert group.data["data-scale"] == "none"
    (label,) = [group for group in figure.groups if group.name == "label-force-slight"]
    assert v.NOT_TO_SCALE in label.words


def test_an_arrow_that_is_silently_not_to_scale_is_refused_and_found(page: str) -> None:
    with pytest.raises(ValueError, match="is not to scale"):
        v.Force("silent", "whole", vector=(0, 1), to_scale=False, label=v.Label(("1 N",)))
    silent = page.replace(f">{v.NOT_TO_SCALE}<", ">drag<")
    assert silent != page
    assert "arrow silently not to scale" in {failure.kind for failure in failures_of(silent)}


def test_loads_reactions_and_resultants_differ_without_colour() -> None:
    def form(role: v.Role, *, broken: bool = False) -> list[tuple[bool, bool, int]]:
        marks = force_marks((0, 0), (20, 0), role=role, halo=False, broken=broken)
        return [(m.fill == "paper", m.line is None, len(m.rings[0])) for m in marks if isinstance(m, Shape)]

    roles: tuple[v.Role, ...] = ("applied", "reaction", "resultant")
    forms = [form(role) for role in roles] + [form("applied", broken=True)]
    assert all(first != second for i, first in enumerate(forms) for second in forms[i + 1 :])


def test_moments_of_loads_and_of_reactions_differ_without_colour() -> None:
    def fills(role: v.Role) -> list[str | None]:
        marks = moment_marks((0, 0), 8.0, counter_clockwise=True, role=role, halo=False)
        return [mark.fill for mark in marks if isinstance(mark, Shape)]

    assert fills("applied") == [None, "moment"]  # a line and its head
    assert fills("reaction") == ["paper", "moment"]  # two lines with paper between, and the head


def test_a_callouts_ring_keeps_its_letter_on_a_narrow_sheet() -> None:
    drawings = {drawing.view: drawing for drawing in draw(every_item(), form="narrow")}
    figure = read(svg_for_page(drawings["whole"], prefix="n", units_class="si"))
    (ring,) = [group for group in figure.groups if group.name == "label-callout-A"]
    assert ring.words == ["A"]
    assert "A" not in {entry.letter for entry in drawings["whole"].balloons}

"""Labels in columns never overlap and their leaders never cross; near labels take the first free place."""

from dataclasses import replace
from itertools import pairwise
from math import cos, dist, sin

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from drawing.example_scene import every_item
from hubwright.drawing import draw
from hubwright.drawing.columns import Entry, arrange, knee
from hubwright.drawing.faces import block
from hubwright.drawing.geometry import meets, off
from hubwright.drawing.leaders import clear_leaders, pieces
from hubwright.drawing.marks import Shape
from hubwright.drawing.near import place_near
from hubwright.drawing.obstacles import Ground, Obstacle, Placed, Wanted
from hubwright.drawing.sheet import _up_to
from hubwright.scenes.vocabulary import Column, Force, Label, Normal, Note, Part

ENTRIES = st.lists(
    st.builds(
        Entry,
        st.tuples(st.floats(64, 130), st.floats(30, 190)),
        st.sampled_from([2.5, 6.8, 7.5, 11.0]),
    ),
    min_size=1,
    max_size=14,
    unique_by=lambda entry: (round(entry.anchor[0]), round(entry.anchor[1])),
)


def turn(ax: float, ay: float, bx: float, by: float, cx: float, cy: float) -> float:
    return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)


@settings(max_examples=400, deadline=None)
@given(ENTRIES)
def test_columns_neither_overlap_nor_cross(entries: list[Entry]) -> None:
    column = Column("left", 56, 20, 205)
    heights = arrange(entries, column)
    spans = sorted((y - e.height / 2, y + e.height / 2) for y, e in zip(heights, entries, strict=True))
    assert all(low[1] <= high[0] + 1e-6 for low, high in pairwise(spans))
    assert spans[0][0] >= 20 - 1e-6
    assert spans[-1][1] <= 205 + 1e-6
    leaders = [(*knee(column, y), *e.anchor) for y, e in zip(heights, entries, strict=True)]
    for i, (ax, ay, bx, by) in enumerate(leaders):
        for cx, cy, dx, dy in leaders[i + 1 :]:
            first = turn(ax, ay, bx, by, cx, cy) * turn(ax, ay, bx, by, dx, dy)
            second = turn(cx, cy, dx, dy, ax, ay) * turn(cx, cy, dx, dy, bx, by)
            assert not (first < 0 and second < 0)


def test_words_in_a_column_stand_higher_than_their_point_if_they_wish_to() -> None:
    column = Column("left", 56, 20, 205)
    level, lifted = Entry((80.0, 100.0), 4.0), Entry((80.0, 60.0), 4.0, 15.0)
    assert arrange([level, lifted], column) == [100.0, 75.0]


def wanted(place: str) -> Wanted:
    label = Label(("word",), place=place)  # type: ignore[arg-type]
    return Wanted("label", "item", label, block(label.lines, 2.5), ((50.0, 50.0),), (50.0, 50.0, 50.0, 50.0))


def test_a_near_label_stands_where_it_is_asked_to_if_that_is_free() -> None:
    placed = place_near(wanted("right"), Ground((100, 100)))
    assert placed.box[0] > 50
    assert placed.box[1] < 50 < placed.box[3]


def test_a_near_label_moves_off_what_stands_there() -> None:
    ground = Ground((100, 100), [Obstacle("other", "text", (51, 45, 70, 55))])
    placed = place_near(wanted("right"), ground)
    assert placed.box[2] < 50


def test_a_label_that_is_driven_off_gets_a_leader() -> None:
    ground = Ground((100, 100), [Obstacle("other", "head", (42, 44, 58, 56))])
    placed = place_near(wanted("right"), ground)
    assert placed.leader[-1] == (50.0, 50.0)
    assert not ground.obstacles[0].hit(placed.box)


def test_a_near_label_stands_on_no_leader() -> None:
    leader = Obstacle("label-other", "leader", (40, 49.5, 80, 50.5), (80, 50.5, 40, 49.5))
    ground = Ground((100, 100), [leader])
    assert not leader.hit(place_near(wanted("right"), ground).box)


def test_a_leader_ends_clear_of_other_leaders() -> None:
    # the first point of the item lies on another's leader, the second does not
    beside = Obstacle("label-other", "leader", (20, 49.8, 80, 50.2), (20, 49.8, 80, 50.2))
    around = Obstacle("words", "text", (30, 40, 70, 62))
    label = replace(wanted("right"), points=((50.0, 50.0), (50.0, 53.0)))
    placed = place_near(label, Ground((100, 100), [beside, around]))
    assert placed.leader[-1] == (50.0, 53.0)


def test_a_slanting_head_has_its_width() -> None:
    head = Obstacle("force", "head", (8.35, 8.35, 14.65, 14.65), (10.0, 10.0, 13.0, 13.0))
    assert head.hit((8.7, 11.0, 9.4, 11.7))  # over a corner of the base
    assert not head.hit((11.0, 14.0, 12.0, 14.6))  # in its box, but beside its tip


def test_a_line_across_a_side_of_a_head_at_a_small_angle_runs_along_it() -> None:
    head = Obstacle("reaction", "head", (48.35, 48.35, 51.65, 56.05))  # from (50, 54.4) down to (50, 50)
    assert head.beside((55.46, 59.62, 49.46, 50.0), 0.4)  # across the right side, both ends farther off than that
    assert not head.beside((60.0, 52.0, 49.5, 50.0), 0.4)  # at a wide angle


def test_a_level_leader_moves_off_the_base_of_a_head() -> None:
    column = Column("left", 20, 10, 90)
    label = replace(wanted("left column"), points=((60.0, 50.0),))
    height, half = 50.0, label.height / 2
    leader = ((21.1, height), knee(column, height), (60.0, 50.0))
    placed = Placed(label, 20 - label.width, height + half, "right", leader)
    base = Obstacle("reaction", "base", (38.4, 49.4, 41.6, 50.6))
    (moved,) = clear_leaders([placed], column, [base])
    assert moved.top != placed.top
    assert not any(base.runs_along(piece) and base.crossed_by(piece) for piece in pieces(moved.leader))
    (stays,) = clear_leaders([placed], column, [])
    assert stays == placed


def test_a_leader_does_not_cut_the_head_of_the_arrow_that_it_names() -> None:
    # a short level arrow toward the column: tail at 64, neck at 62.2, tip at 60
    column, height = Column("left", 20, 20, 90), 50.4
    label = replace(wanted("left column"), points=((63.0, 50.0), (59.5, 50.0)))
    head = Obstacle(label.owner, "head", (58.9, 48.9, 63.3, 51.1))
    leader = ((21.1, height), knee(column, height), (63.0, 50.0))
    placed = Placed(label, 20 - label.width, height + label.height / 2, "right", leader)
    (moved,) = clear_leaders([placed], column, [head])
    drawn = Obstacle(label.owner, "head", (60.0, 48.9, 62.2, 51.1))
    assert not any(drawn.crossed_by(piece) for piece in pieces(moved.leader))


def test_no_leader_bends_where_another_passes() -> None:
    column = Column("left", 20, 10, 90)
    label, other = replace(wanted("left column"), points=((60.0, 60.0),)), wanted("left column")
    passing = (knee(column, 40.0), (50.0, 50.0))
    bend = ((passing[0][0] + 50.0) / 2, (40.0 + 50.0) / 2 + 0.02)
    below = Placed(other, 20 - other.width, 40.0 + other.height / 2, "right", ((21.1, 40.0), *passing))
    leader = ((21.1, bend[1]), bend, (60.0, 60.0))
    above = Placed(label, 20 - label.width, bend[1] + label.height / 2, "right", leader)
    moved, stays = clear_leaders([above, below], column, [])
    assert min(off(point, (*passing[0], *passing[1])) for point in moved.leader[1:]) > 1.0
    assert stays == below


def test_two_rings_in_one_place_have_leaders_with_ends_of_their_own() -> None:
    scene = every_item()
    rings = [
        Normal(name, "detail A", 1, at=(x, 0.0), newtons=1e3, label=Label((name,), "right column"))
        for name, x in (("first", 0.0), ("second", 0.5))
    ]
    drawing = draw(replace(scene, items=(*scene.items, *rings)))
    leaders = [
        next(mark for mark in group.children if isinstance(mark, Shape) and mark.line != "paper").rings[0]
        for group in drawing.groups()
        if group.name in ("label-force-first", "label-force-second")
    ]
    (one, other) = ([(*a, *b) for a, b in pairwise(leader.tolist())] for leader in leaders)
    assert min(off(tuple(leaders[0][-1]), piece) for piece in other) > 0.45
    assert min(off(tuple(leaders[1][-1]), piece) for piece in one) > 0.45


def test_a_leader_ends_at_what_the_frame_shows() -> None:
    scene = every_item()
    hidden = Note("label-hidden", "detail A", label=Label(("Hidden",), place="right column", anchor=(-120.0, 30.0)))
    drawing = draw(replace(scene, items=(*scene.items, hidden)))
    (group,) = [group for group in drawing.groups() if group.name == "label-hidden"]
    (leader,) = [mark for mark in group.children if isinstance(mark, Shape) and mark.line != "paper"]
    assert leader.rings[0][-1][0] <= 255.0


@given(
    angle=st.floats(-3.2, 3.2),
    radius=st.floats(0.5, 5.0),
    centre=st.tuples(st.floats(0, 300), st.floats(0, 300)),
    before=st.tuples(st.floats(-50, 350), st.floats(-50, 350)),
)
def test_a_leader_ends_at_the_edge_of_a_round_symbol(angle, radius, centre, before) -> None:
    assume(dist(before, centre) > radius + 0.1)
    edge = centre[0] + radius * cos(angle), centre[1] + radius * sin(angle)
    assert _up_to((before, edge), (centre, radius)) == (before, edge)  # where it was placed, it stays
    start, end = _up_to((before, centre), (centre, radius))
    assert start == before
    assert dist(end, centre) == pytest.approx(radius)
    assert dist(before, end) == pytest.approx(dist(before, centre) - radius)


def test_words_keep_off_the_outline_of_a_part_whose_edge_is_kept_clear() -> None:
    scene = every_item()
    ring = ((0.0, -4.0), (0.0, 4.0), (60.0, 4.0), (60.0, -4.0))
    view = replace(scene.views[0], origin=(150.0, 100.0), scale=1.0, newtons_per_mm=100.0, mirrored=False)
    arrow = Force("force-f", view.name, at=(0.0, 0.0), vector=(0.0, 500.0), label=Label(("eleven", "words"), "right"))
    for edge, struck in (("", True), ("edge", False)):
        part = Part("part-body", view.name, rings=(ring,), material="body", kept_clear=edge)
        drawing = draw(replace(scene, views=(view,), items=(part, arrow), body=None, columns=(), scale_bars=()))
        (box,) = [text.box for text in drawing.texts if text.words == "eleven words"]
        sides = [(view.on_sheet(a), view.on_sheet(b)) for a, b in pairwise((*ring, ring[0]))]
        assert any(meets((*a, *b), box) for a, b in sides) is struck

"""Every figure of the demonstration in its narrow form: names, scales, and leaders that end on what they mean."""

import re
from collections.abc import Iterator
from functools import cache
from itertools import pairwise
from math import dist

import pytest
from matplotlib.path import Path as Outline

from drawing.test_demonstration_figures import FILES, scenes, solved
from hubwright.drawing import Drawing, draw
from hubwright.drawing.faces import plain
from hubwright.drawing.geometry import off
from hubwright.drawing.marks import Disc, Group, Lettering, Shape, flat
from hubwright.results import Results
from hubwright.scenes import vocabulary as v
from hubwright.scenes.catalogue import FIGURES, scene_function

_RATIO = re.compile(r"(\d+(?:\.\d+)?)\s*:\s*(\d+(?:\.\d+)?)")
_ON = 0.9  # sheet millimetres: in the middle of an open arrow a leader ends so far from its lines
_COLOURED = {"load", "reaction", "moment", "changed", "before"}


@cache
def figures() -> dict[str, tuple[Drawing, ...]]:
    """The narrow drawings of every figure that a file gives, and of each pair of setups."""
    found = {}
    for file in FILES:
        for scene in scenes(file, "si"):
            found[f"{scene.name}, {file.stem}"] = draw(scene, form="narrow")
    wheels = [results for file in FILES if isinstance(results := solved(file), Results)]
    for name, figure in FIGURES.items():
        if figure.takes == "two results":
            first = wheels[0]
            for other in wheels[1:]:
                cases = [case for case in figure.cases(first) if case in figure.cases(other)]
                if cases and first.setup.kind == other.setup.kind and first.setup.wheel != other.setup.wheel:
                    scene = scene_function(name)(first, other, case=cases[0])
                    found[f"{scene.name}, {other.setup.name}"] = draw(scene, form="narrow")
    return found


def _heading(drawing: Drawing) -> str:
    """What stands at the head of a narrow sheet."""
    name = f"words-{drawing.view}"
    return " ".join(plain(line) for item in drawing.scene.items if item.name == name for line in _lines(item))


def _lines(item: v.Item) -> tuple[str, ...]:
    return item.lines if isinstance(item, v.Words) else ()


def test_every_panel_of_a_figure_with_several_has_a_name_of_its_own() -> None:
    several = {name: panels for name, panels in figures().items() if len(panels) > 1}
    assert len(several) > 20
    for name, panels in several.items():
        headings = [_heading(drawing) for drawing in panels]
        assert all(headings), (name, headings)
        assert len(set(headings)) == len(headings), (name, headings)


def test_every_ratio_that_a_narrow_sheet_prints_is_its_own() -> None:
    for name, panels in figures().items():
        for drawing in panels:
            own = drawing.scene.view(drawing.view).scale
            printed = [*(bar.caption for bar in drawing.scene.scale_bars), *(box.words for box in drawing.texts)]
            for sheet, real in (found.groups() for text in printed for found in _RATIO.finditer(text)):
                assert float(sheet) / float(real) == pytest.approx(own, rel=1e-3), (name, drawing.view)


def test_a_bar_on_a_sheet_of_one_view_speaks_of_no_others() -> None:
    for name, panels in figures().items():
        for drawing in panels:
            if len(drawing.scene.views) == 1:
                said = [bar.caption for bar in drawing.scene.scale_bars]
                assert not [text for text in said if re.search(r"\b(all|both|views)\b", text, re.I)], name


def test_letters_stand_upright_and_all_of_the_key_are_drawn() -> None:
    for name, panels in figures().items():
        for drawing in panels:
            written = [mark for group in drawing.groups() for mark in flat(group.children)]
            letters = {
                "".join(run.text for run in mark.text.runs): mark.rotation
                for mark in written
                if isinstance(mark, Lettering)
            }
            for entry in drawing.balloons:
                assert letters[entry.letter] == 0.0, (name, drawing.view, entry)


def test_leaders_of_rings_end_on_what_their_letter_means() -> None:
    ends = 0
    for name, panels in figures().items():
        for drawing in panels:
            groups = list(drawing.groups())
            drawn = [group for group in groups if not group.name.startswith(("label-", "words-", "frame-"))]
            notes = {item.name for item in drawing.scene.items if isinstance(item, v.Note)}
            for group in groups:
                if (end := _end(group)) is None:
                    continue
                ends += 1
                meant = [each for each in drawn if group.name == f"label-{each.name}"]
                if group.name.removeprefix("label-") in notes or group.name in notes:
                    tone = _tone(group, drawing)
                    meant = [each for each in drawn if tone is None or _toned(each, tone)]
                nearest = min(_away(end, each) for each in meant or drawn)
                assert nearest < _ON, (name, drawing.view, group.name, nearest)
    assert ends > 300


def _end(label: Group) -> v.Point | None:
    """Where the leader of a letter in a ring ends."""
    if not label.name.startswith("label-") or not any(isinstance(mark, Disc) for mark in label.children):
        return None
    leaders = [mark for mark in label.children if isinstance(mark, Shape) and not mark.closed]
    return (float(leaders[-1].rings[0][-1][0]), float(leaders[-1].rings[0][-1][1])) if leaders else None


def _tone(label: Group, drawing: Drawing) -> str | None:
    """The colour of the words that a letter stands for, if it says what is meant."""
    letter = next(m for m in label.children if isinstance(m, Lettering)).text.runs[0].text
    tone = next((entry.tone for entry in drawing.balloons if entry.letter == letter), "ink")
    return tone if tone in _COLOURED else None


def _toned(group: Group, tone: str) -> bool:
    """Whether a group is drawn in a colour."""
    tokens = {token for mark in flat(group.children) if isinstance(mark, Shape) for token in (mark.fill, mark.line)}
    return any(token is not None and token.startswith(tone) for token in tokens)


def _away(point: v.Point, group: Group) -> float:
    """How far a point lies off the ink of a group; nothing within what is filled."""
    return min(_distances(point, group), default=99.0)


def _distances(point: v.Point, group: Group) -> Iterator[float]:
    for mark in flat(group.children):
        if isinstance(mark, Disc):
            yield max(0.0, ((point[0] - mark.centre[0]) ** 2 + (point[1] - mark.centre[1]) ** 2) ** 0.5 - mark.radius)
        elif isinstance(mark, Shape) and mark.line != "paper":
            for ring in mark.rings:
                points = [*map(tuple, ring), *([tuple(ring[0])] if mark.closed else [])]
                if mark.closed and mark.fill not in (None, "paper") and Outline(points).contains_point(point):
                    yield 0.0
                yield from (off(point, (*a, *b)) for a, b in pairwise(points))


def test_views_of_a_sequence_share_scale_and_ground_line() -> None:
    for name, panels in figures().items():
        if name.startswith("drop-sequence"):
            views = [drawing.scene.view(drawing.view) for drawing in panels if drawing.view != "model"]
            depths = [drawing.size[1] - drawing.scene.view(drawing.view).origin[1] for drawing in panels[1:]]
            assert len({view.scale for view in views}) == 1, name
            assert depths == pytest.approx([depths[0]] * 3), name


def test_every_end_of_a_dimension_has_a_line_that_leads_to_it() -> None:
    for name, panels in figures().items():
        for drawing in panels:
            for item in drawing.scene.items:
                if isinstance(item, v.Dimension):
                    view = drawing.scene.view(item.view)
                    for point, extended in zip((item.start, item.end), item.extension, strict=True):
                        x, y = view.on_sheet(point)
                        at = (x, item.line_at) if item.direction == "horizontal" else (item.line_at, y)
                        assert extended or _led_to(at, item, drawing), (name, drawing.view, item.name)


def _led_to(at: v.Point, item: v.Dimension, drawing: Drawing) -> bool:
    """Whether a straight line of the view comes near the end of a dimension."""
    for other in drawing.scene.items:
        if other.view == item.view and isinstance(other, v.Line | v.Ground):
            ends = other.points if isinstance(other, v.Line) else (other.start, other.end)
            on_sheet = [drawing.scene.view(item.view).on_sheet(end) for end in ends]
            if any(off(at, (*a, *b)) < 3.0 for a, b in pairwise(on_sheet)):
                return True
    return False


def test_arcs_of_moments_stay_within_the_frame_around_them() -> None:
    arcs = 0
    for name, panels in figures().items():
        for drawing in panels:
            for item in drawing.scene.items:
                if isinstance(item, v.Moment) and (frame := drawing.scene.view(item.view).frame):
                    x, y = drawing.scene.view(item.view).on_sheet(item.at)
                    arcs += 1
                    assert frame[0] < x - item.radius < x + item.radius < frame[2], (name, item.name)
                    assert frame[1] < y - item.radius < y + item.radius < frame[3], (name, item.name)
    assert arcs > 0


def test_the_mark_of_a_detail_keeps_its_letter() -> None:
    (panels, *_) = [panels for name, panels in figures().items() if name.startswith("diagonal-support")]
    written = {box.words for box in panels[0].texts}
    assert "A" in written
    assert "A" not in {line for entry in panels[0].balloons for line in entry.lines}
    assert _heading(panels[1]).startswith("Detail A")


def test_the_letter_at_a_thin_line_stands_at_its_end_without_a_leader() -> None:
    seen = 0
    for name, panels in figures().items():
        for drawing in panels:
            groups = {group.name: group for group in drawing.groups()}
            line = groups.get(f"line-line-centre-{drawing.view}")
            if line is None:
                continue
            letter = groups[f"label-centre-{drawing.view}"]
            (drawn,) = (mark for mark in flat(line.children) if isinstance(mark, Shape))
            (ring,) = (mark for mark in letter.children if isinstance(mark, Disc) and mark.line != "paper")
            start, end = drawn.rings[0].tolist()
            assert not [mark for mark in letter.children if isinstance(mark, Shape) and not mark.closed], name
            assert ring.radius < dist(ring.centre, end) < 2.5 * ring.radius, name
            assert dist(ring.centre, start) > dist(end, start), name
            seen += 1
    assert seen >= 9

"""Practice problems: what a file must hold, what a page gets of it, and that the demonstration vehicles pose them."""

import base64
import json
import re
import zlib
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from lesson_sites import write_docs
from markupsafe import Markup

from hubwright.lessons.course import Course
from hubwright.lessons.drawings import Undrawn
from hubwright.lessons.generated_page import Site
from hubwright.lessons.page_state import PageState
from hubwright.lessons.pages import Renderer
from hubwright.lessons.practice import Practice, Problem
from hubwright.lessons.practice_files import LEVELS
from hubwright.lessons.practice_pages import pages
from hubwright.lessons.views import setup_view
from hubwright.quantities import Quantity
from hubwright.results import solve
from hubwright.setup.model import Setup
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
FILES = sorted((CONTENT / "practice").glob("*.md"))
VEHICLES = ("hill-wagon", "supply-van", "kit-trailer")
AT_LEAST = 24

FILE = """\
---
title: A spacer
lesson: 4
level: one formula
variants:
  spacer: [5 mm, 10 mm, 15 mm, 20 mm, 25 mm]
---
{{ answer_is(stock.load_line_offset + spacer, ways=["outboard", "inboard"]) }}
{{ slip(stock.load_line_offset + spacer, "No slip at all.") }}
{{ slip(stock.load_line_offset - spacer, "The *other* way.") }}

How far with {{ spacer }} more?

## Nudge

Start at the face.

## Working

It is {{ (stock.load_line_offset + spacer) | show }}.
"""


def practice_of(tmp_path: Path, *, setup: str = "wagon", **files: str) -> Practice:
    """The problems of a small course."""
    docs = write_docs(tmp_path)
    (docs / "practice").mkdir()
    for stem, text in files.items():
        (docs / "practice" / f"{stem}.md").write_text(text, encoding="utf-8")
    return Renderer(Course.read(docs, in_view=setup, shown="content"), Undrawn()).practice


def wrong(practice: Practice) -> list[str]:
    """What is wrong with the problems."""
    practice.all()
    page = PageState(file="practice.md")
    practice.tell(page)
    return [str(problem) for problem in page.problems]


def unpacked(html: str) -> list[list[dict[str, Any]]]:
    """What the forms of a page carry."""
    packed = re.findall(r'data-practice="([^"]+)"', html)
    return [json.loads(zlib.decompress(base64.b64decode(one))) for one in packed]


def test_a_problem_has_five_variants_with_answer_slips_and_working(tmp_path: Path) -> None:
    practice = practice_of(tmp_path, spacer=FILE)
    assert wrong(practice) == []
    (problem,) = practice.all()
    assert problem.number == "4.1"
    # the wagon's load line stands 42 mm less 30 mm outboard
    assert [variant.asked.value for variant in problem.variants] == pytest.approx([0.017, 0.022, 0.027, 0.032, 0.037])
    first = problem.variants[0]
    ((slip, reason),) = first.asked.slips
    assert slip == pytest.approx(0.007)
    assert reason == "The <em>other</em> way."
    assert first.asked.in_words.striptags() == "17 mm0.67 in outboard"
    assert "5\u00a0mm" in first.question
    assert "17\u00a0mm" in first.working
    assert first.nudges == ("<p>Start at the face.</p>",)


@pytest.mark.parametrize(
    ("before", "after", "message"),
    [
        ("level: one formula", "level: hard", "'level' must be one of: read a number, one formula, two steps, judge"),
        ("lesson: 4", "lesson: four", "'lesson' must be the number of a lesson (got 'four')"),
        (", 25 mm]", "]", "'variants: spacer' must be a list of 5 values"),
        ("25 mm", "20 mm", "two of the variants are the same"),
        ("title:", "titel:", "front matter has no key 'titel'"),
        ("## Nudge", "## Hint", "a problem has no section 'Hint'; there are: Nudge, Another nudge, Working"),
        ("## Working\n", "", "the section 'Working' is missing"),
        (FILE.splitlines()[7], "", "a problem needs either answer_is(…) or some option(…)"),
        ("{{ spacer }} more", "5 mm more", "content/practice/spacer.md:12: orphan number '5 mm'"),
        ("offset - spacer", "offset_now", "spacer.md:10: stock has no 'load_line_offset_now'."),
        ('ways=["outboard", "inboard"]', 'ways=["out"]', "answer_is needs two ways"),
        ("level:", "instead: nobody\nlevel:", "'instead: nobody' names no problem"),
    ],
)
def test_what_is_wrong_with_a_file_is_told(tmp_path: Path, before: str, after: str, message: str) -> None:
    assert before in FILE
    text = FILE.replace(before, after)
    assert any(message in problem for problem in wrong(practice_of(tmp_path, spacer=text)))


def test_one_option_and_one_only_is_right(tmp_path: Path) -> None:
    options = '{{ option("Up", spacer > 0) }}\n{{ option("Down", spacer > 0) }}'
    text = re.sub(r"\{\{ answer_is.*?other.*?\}\}", options, FILE, flags=re.S)
    assert any("one option(…) must be right" in problem for problem in wrong(practice_of(tmp_path, spacer=text)))


def test_a_problem_that_a_setup_cannot_pose_is_left_out_or_replaced(tmp_path: Path) -> None:
    text = FILE.replace("level:", "instead: other\nlevel:").replace(
        "{{ answer_is", '{{ leave_out("no rows") }}{{ answer_is'
    )
    practice = practice_of(tmp_path, spacer=text, other=FILE)
    assert wrong(practice) == []
    assert practice.problem("spacer").left_out == "no rows"
    replaced = practice.posed("spacer")
    assert replaced is not None
    assert replaced.source.stem == "other"


def test_a_setup_that_would_be_refused_leaves_the_problem_out(tmp_path: Path) -> None:
    text = FILE.replace("\n\nHow", '\n{% set other = vary(stock, {"bearing.contact_angle": "80 deg"}) %}\n\nHow')
    practice = practice_of(tmp_path, spacer=text)
    assert wrong(practice) == []
    assert "bearing.contact_angle" in practice.problem("spacer").left_out


def test_an_answer_that_is_nothing_has_a_tolerance_by_its_slips(tmp_path: Path) -> None:
    text = FILE.replace("answer_is(stock.load_line_offset + spacer", "answer_is(spacer - spacer")
    asked = practice_of(tmp_path, spacer=text).all()[0].variants[0].asked
    assert asked.value == 0.0
    assert 0 < asked.tolerance < 0.001
    assert len(asked.slips) == 2


def test_the_lesson_asks_by_name_and_links_to_the_collection(tmp_path: Path) -> None:
    docs = practice_of(tmp_path, spacer=FILE).course.docs
    renderer = Renderer(Course.read(docs, in_view="wagon", shown="content"), Undrawn())
    state, text = renderer.page('{{ practice_problems("spacer") }}', "content/lessons/04.md")
    assert [str(problem) for problem in state.problems] == []
    html = state.put_back(state.put_back(text), late=True)
    assert 'id="practice-spacer"' in html
    assert "[Practice problems](../practice.md)" in html
    assert len(unpacked(html)[0]) == 5
    state, _ = renderer.page('{{ practice_problems("spacr") }}', "content/lessons/04.md")
    assert "no problem is called 'spacr'. Perhaps you meant 'spacer'." in str(state.problems[0])


@cache
def demonstration(stem: str) -> Site:
    """The site about one of the demonstration vehicles."""
    course = Course.read(CONTENT, in_view=stem, shown="content")
    renderer = Renderer(course, Undrawn())
    return Site(course, Undrawn(), practice=renderer.practice)


@pytest.mark.parametrize("stem", VEHICLES)
def test_every_demonstration_vehicle_poses_every_problem(stem: str) -> None:
    site = demonstration(stem)
    assert site.practice is not None
    assert wrong(site.practice) == []
    problems = site.practice.all()
    assert [problem.source.stem for problem in problems if not problem.variants] == []
    assert len(problems) >= AT_LEAST
    lessons = [problem.source.lesson for problem in problems]
    assert {number: lessons.count(number) >= 2 for number in range(1, 13)} == dict.fromkeys(range(1, 13), True)
    assert {problem.source.level for problem in problems} == set(LEVELS)
    for problem in problems:
        told_apart(problem)


def told_apart(problem: Problem) -> None:
    """Five different questions; each slip is told from the answer in most of them, and no option is always right."""
    name = problem.source.stem
    assert len({variant.question for variant in problem.variants}) == 5, name
    if problem.variants[0].asked.options:
        right = {str(variant.asked.in_words) for variant in problem.variants}
        assert len(right) > 1, name
        return
    for place in range(len(problem.variants[0].asked.said_slips)):
        distinct = 0
        for variant in problem.variants:
            slip, _ = variant.asked.said_slips[place]
            distinct += abs(slip.value - variant.asked.value) > 2 * variant.asked.tolerance
        assert distinct >= 1, f"{name}, slip {place + 1}"


def test_each_slip_of_the_hill_wagon_is_told_from_its_answer() -> None:
    practice = demonstration("hill-wagon").practice
    assert practice is not None
    for problem in practice.all():
        for variant in problem.variants:
            for value, _ in variant.asked.slips:
                assert abs(value - variant.asked.value) > variant.asked.tolerance


def test_answers_and_workings_are_not_readable_in_the_page() -> None:
    site = demonstration("hill-wagon")
    collection, key = pages(site)
    state = PageState(file=collection.path)
    html = collection.write(state)
    html = state.put_back(state.put_back(html), late=True)
    problems = [problem for problem in site.practice.all() if problem.variants] if site.practice else []
    assert html.count("<form") == len(problems)
    shown = re.sub(r'data-practice="[^"]*"', "", html)
    for problem in problems:
        for variant in problem.variants:
            working = text_of(variant.working)
            assert working not in text_of(shown), problem.source.stem
        assert f'id="{problem.ident}"' in html
    for problem, carried in zip(problems, unpacked(html), strict=True):
        for variant, one in zip(problem.variants, carried, strict=True):
            assert one["question"] == variant.question
            if not variant.asked.options:
                assert one["value"] == pytest.approx(variant.asked.value)
    state = PageState(file=key.path)
    answers = text_of(state.put_back(state.put_back(key.write(state)), late=True))
    for problem in problems:
        for variant in problem.variants:
            assert text_of(variant.asked.in_words) in answers


def text_of(html: str) -> str:
    """A page's text without its tags."""
    return Markup(re.sub(r"<[^>]+>", " ", html)).striptags()


def test_a_site_can_leave_the_key_out() -> None:
    site = demonstration("hill-wagon")
    without = Site(site.course, site.drawings, practice=site.practice, teachers_key=False)
    assert [page.path for page in pages(without)] == ["practice.md"]
    (collection,) = pages(without)
    state = PageState(file=collection.path)
    assert "practice-key" not in collection.write(state)
    assert not pages(site)[1].searched
    assert not pages(site)[1].listed


@settings(
    max_examples=6,
    deadline=None,
    phases=(Phase.explicit, Phase.reuse, Phase.generate),
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
@given(setup=setups(rows_known=False))
def test_problems_hold_for_random_setups(setup: Setup) -> None:
    course = Course.read(CONTENT, in_view=setup.stem, folders=())
    course.results[setup.stem] = solve(setup)
    course.views[setup.stem] = setup_view(course.results[setup.stem], "stock")
    practice = Renderer(course, Undrawn()).practice
    problems = practice.all()
    assert wrong(practice) == []
    posed = [problem for problem in problems if problem.variants]
    assert len(posed) >= AT_LEAST
    for number in range(1, 13):
        assert sum(problem.source.lesson == number for problem in posed) >= 2, number
    for problem in posed:
        for variant in problem.variants:
            text = text_of(variant.question + variant.working)
            assert not re.search(r"\b(None|nan|inf)\b|\{\{|\{%|−0 ", text), problem.source.stem
            if isinstance(variant.asked.answer, Quantity):
                assert variant.asked.tolerance > 0


def test_no_problem_names_the_demonstration() -> None:
    names = re.compile(r"\bhill\b|wagon|winch|rescue|supply van|kit trailer", re.I)
    for file in FILES:
        assert names.findall(file.read_text(encoding="utf-8")) == [], file.name

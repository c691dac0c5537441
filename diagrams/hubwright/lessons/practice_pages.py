"""The collection of practice problems, and the teacher's key with every variant, answer and working."""

from functools import partial
from itertools import groupby
from pathlib import Path

from markupsafe import Markup

from hubwright.lessons import cautions
from hubwright.lessons.front_matter import front_matter
from hubwright.lessons.generated_page import GeneratedPage, Site
from hubwright.lessons.page_state import PageState
from hubwright.lessons.practice import Problem
from hubwright.lessons.practice_files import VARIANTS
from hubwright.lessons.practice_html import PAGE, problem_html
from hubwright.lessons.words import counted

KEY = "practice-key.md"


def pages(site: Site) -> list[GeneratedPage]:
    """Return the collection and, unless the site leaves it out, the key; neither where a site has no problems."""
    if site.practice is None or not site.practice.files or site.course.in_view not in site.course.results:
        return []
    collection = GeneratedPage(
        path=PAGE,
        title="Practice problems",
        kind="page",
        write=partial(_collection, site=site),
        mark="P",
        summary="Problems of every lesson, each in several variants, with nudges, an answer check and the working.",
    )
    key = GeneratedPage(
        path=KEY,
        title="Practice problems: the key",
        kind="page",
        write=partial(_key, site=site),
        listed=False,
        searched=False,
        summary="For teachers: every variant of every practice problem with its answer and working.",
    )
    return [collection, key] if site.teachers_key else [collection]


def _collection(page: PageState, site: Site) -> str:
    assert site.practice is not None
    problems = site.practice.all()
    site.practice.tell(page)
    posed = [problem for problem in problems if problem.variants]
    lessons = len({problem.source.lesson for problem in posed})
    hazards = {hazard for problem in posed for hazard in problem.source.hazards}
    key = f" Teachers find every answer in [the key]({KEY})." if site.teachers_key else ""
    parts = [
        f"Here are {len(posed)} problems to {counted(lessons, 'lesson')}, about the setup in view. "
        f"Each comes in {counted(VARIANTS, 'variant')}: the same question with other data. "
        "The tag beside a title says what it asks of you: to read a number, to use one formula, "
        f"to take two steps, or to judge.{key}",
        f'<p class="without-js">Answers are checked, and workings opened, by a script, which does not run here.'
        f"{' The key has them all.' if site.teachers_key else ''}</p>",
        "An answer wants a number and its unit, as you would write it: "
        "`4.9\u00a0kN`, `1,100\u00a0lbf`, `12.5\u00a0mm`, `1/2\u00a0in`. "
        "Three digits are enough. Any unit of the right sort will do.",
        str(page.set_aside(cautions.caution_box(hazards, site.cautions))),
        _ways(page, posed),
    ]
    for lesson, some in groupby(posed, key=lambda problem: problem.source.lesson):
        parts.append(_heading(site, lesson))
        parts += [str(problem_html(page, problem)) for problem in some]
    return "\n\n".join([*parts, *_left_out(problems)])


def _ways(page: PageState, problems: list[Problem]) -> str:
    """Return links down the page to the problems of each lesson."""
    lessons = dict.fromkeys(problem.source.lesson for problem in problems)
    links = Markup("\n").join(
        Markup('<a href="#lesson-{0}"><span class="vh">Lesson </span>{0}</a>').format(lesson) for lesson in lessons
    )
    return str(
        page.set_aside(
            Markup(
                '<nav class="to-lessons" aria-label="Problems by lesson"><span class="tag">To lesson</span>\n{}</nav>'
            ).format(links),
            late=True,
        )
    )


def _heading(site: Site, lesson: int) -> str:
    """Return the heading of a lesson's problems, with the question of the lesson where one is written."""
    title, path = _lessons(site.course.docs).get(lesson, ("", ""))
    words = f"Lesson {lesson}: [{title}]({path})" if title else f"Lesson {lesson}"
    return f"## {words} {{#lesson-{lesson}}}"


def _lessons(docs: Path) -> dict[int, tuple[str, str]]:
    """Return title and path of each lesson by its number; a title that is computed is left out."""
    found = {}
    for file in sorted(docs.rglob("*.md")):
        keys, _ = front_matter(file.read_text(encoding="utf-8"))
        title, lesson = str(keys.get("title", "")), keys.get("lesson")
        if isinstance(lesson, int) and "level" not in keys and "{" not in title:
            found[lesson] = (title, file.relative_to(docs).as_posix())
    return found


def _left_out(problems: list[Problem]) -> list[str]:
    """Return which problems this setup cannot pose, and why."""
    missing = [problem for problem in problems if not problem.variants]
    if not missing:
        return []
    items = [f"* **{problem.number} {problem.source.title}**: {problem.left_out}." for problem in missing]
    return ["## Left out for this setup {#left-out}", "\n".join(items)]


def _key(page: PageState, site: Site) -> str:
    assert site.practice is not None
    problems = [problem for problem in site.practice.all() if problem.variants]
    site.practice.tell(page)
    parts = [
        f"For teachers: every variant of the [practice problems]({PAGE}), with its answer and its working; "
        "the formulas stand with the first of each. "
        "A site leaves this page out with `teachers_key: false` among the plugin’s options.",
        _ways(page, problems),
    ]
    for lesson, some in groupby(problems, key=lambda problem: problem.source.lesson):
        parts.append(_heading(site, lesson))
        parts += [str(page.set_aside(_solved(problem), late=True)) for problem in some]
    page.practice = len(problems)
    return "\n\n".join(parts)


def _solved(problem: Problem) -> Markup:
    variants = Markup("\n").join(
        Markup(
            '<section class="solved" aria-label="{}, variant {}"><p class="tag">Variant {}</p>\n{}\n'
            '<p class="solution"><b>Answer:</b> {}</p>\n{}</section>'
        ).format(
            problem.number,
            place,
            place,
            variant.question,
            variant.asked.in_words,
            variant.working if place == 1 else variant.brief,
        )
        for place, variant in enumerate(problem.variants, 1)
    )
    return Markup(
        '<div class="answered" id="{0}"><div class="problem-head"><h3><span class="mark">{1}</span> {2}</h3>'
        '<span class="tag">{3}</span></div>\n{4}</div>'
    ).format(problem.ident, problem.number, problem.source.title, problem.source.level, variants)

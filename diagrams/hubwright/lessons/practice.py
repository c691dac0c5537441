"""The practice problems of a site, filled in for the setup in view, five variants of each, when asked for."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import markdown
from markupsafe import Markup

from hubwright.errors import CaseError, ImpossibleError, MissingDataError, SetupErrors
from hubwright.lessons.blocks import BlockError
from hubwright.lessons.course import Course
from hubwright.lessons.environment import nearest, render
from hubwright.lessons.markdown_tables import ThemeTables
from hubwright.lessons.named_values import View
from hubwright.lessons.numbers import given, quantity_of
from hubwright.lessons.page_state import PageState
from hubwright.lessons.practice_answers import Asked, LeftOutError
from hubwright.lessons.practice_files import FOLDER, VARIANTS, ProblemFile, read_problems
from hubwright.lessons.problems import LessonProblem

QUESTION, NUDGE, SECOND, WORKING = "", "Nudge", "Another nudge", "Working"
# What a lesson can do and a problem cannot: it stands on several pages, in five variants, without a place of its own.
_NOT_HERE = ("figure", "note", "answer", "claim_box", "closure_table", "cautions", "practice_problems")
_SECTION = re.compile(r"^##[ \t]+(.+?)[ \t]*$", re.M)
Names = Callable[[PageState], Mapping[str, Any]]


@dataclass(frozen=True)
class Variant:
    """One variant of a problem, as HTML."""

    question: Markup
    nudges: tuple[Markup, ...]
    working: Markup
    brief: Markup  # the working without the formulas, which are the same in every variant
    asked: Asked


@dataclass(frozen=True, eq=False)
class Problem:
    """A problem for the setup in view; without variants it was left out, for a reason."""

    source: ProblemFile
    number: str  # such as "4.2": its lesson, and its place among the problems of that lesson
    variants: tuple[Variant, ...]
    left_out: str = ""

    @property
    def ident(self) -> str:
        """Return its anchor."""
        return f"practice-{self.source.stem}"


class Practice:
    """The problems of a course."""

    def __init__(self, course: Course, names: Names) -> None:
        """Read the files; `names` gives what an expression can name."""
        self.course = course
        self.files = read_problems(course.docs / FOLDER, shown=course.shown_file(course.docs / FOLDER))
        self._names = names
        self._made: dict[str, Problem] = {}
        self._untold: list[LessonProblem] = [one for file in self.files.values() for one in file.problems]
        places: dict[int, int] = {}
        self._numbers: dict[str, str] = {}
        for stem, file in self.files.items():
            places[file.lesson] = places.get(file.lesson, 0) + 1
            self._numbers[stem] = f"{file.lesson}.{places[file.lesson]}"

    def problem(self, stem: str) -> Problem:
        """Return a problem by the name of its file."""
        if stem not in self.files:
            raise BlockError(f"no problem is called '{stem}'.{nearest(stem, list(self.files))}")
        if stem not in self._made:
            self._made[stem] = self._filled(self.files[stem])
        return self._made[stem]

    def posed(self, stem: str) -> Problem | None:
        """Return a problem, or the one that takes its place where the setup in view cannot pose it."""
        made = self.problem(stem)
        if made.variants:
            return made
        return self.posed(made.source.instead) if made.source.instead else None

    def all(self) -> list[Problem]:
        """Return every problem in the order of the collection; none where the setup in view cannot be read."""
        if self.course.in_view not in self.course.results:
            return []
        return [self.problem(stem) for stem in self.files]

    def tell(self, page: PageState) -> None:
        """Hand what is wrong with the problems to a page, once."""
        page.problems += self._untold
        self._untold.clear()

    def _filled(self, source: ProblemFile) -> Problem:
        number = self._numbers[source.stem]
        try:
            variants = tuple(self._variant(source, place) for place in range(VARIANTS))
        except LeftOutError as reason:
            return Problem(source, number, (), left_out=str(reason))
        except _FailedError:
            return Problem(source, number, (), left_out="its file needs a repair")
        if len({len(variant.asked.options) for variant in variants}) > 1:
            self._wrong(source, "every variant must have as many options")
        return Problem(source, number, variants)

    def _variant(self, source: ProblemFile, place: int) -> Variant:
        state = PageState(file=source.file, lines_before=source.lines_before, lesson=source.lesson, brief_workings=True)
        asked = Asked()
        names = {name: value for name, value in self._names(state).items() if name not in _NOT_HERE}
        names |= {name: _given(values[place]) for name, values in source.variants.items()}
        names |= {"vary": self._varied, **{each: getattr(asked, each) for each in _FUNCTIONS}}
        text = render(source.body, state, names)
        self._untold += state.problems
        if text is None:
            raise _FailedError
        parts = _SECTION.split(text)
        sections = {QUESTION: parts[0], **dict(zip(parts[1::2], parts[2::2], strict=True))}
        for title in sections:
            if title not in (QUESTION, NUDGE, SECOND, WORKING):
                self._wrong(source, f"a problem has no section '{title}'; there are: {NUDGE}, {SECOND}, {WORKING}")
        for title in (QUESTION, NUDGE, WORKING):
            if not sections.get(title, "").strip():
                self._wrong(source, f"the section '{title}' is missing" if title else "the question is missing")
        try:
            asked.checked()
        except BlockError as error:
            self._wrong(source, str(error))
            raise _FailedError from error
        html = {title: _html(part) for title, part in sections.items()}
        nudges = tuple(_complete(state, html[title]) for title in (NUDGE, SECOND) if title in html)
        working = html.get(WORKING, "")
        brief = Markup(_ASIDE.sub("", working).strip())
        return Variant(_complete(state, html[QUESTION]), nudges, _complete(state, working), brief, asked)

    def _varied(self, view: View, changes: Mapping[str, Any]) -> View:
        """Return a setup with values changed; what it cannot be, leaves the problem out."""
        try:
            return self.course.vary(view, changes)
        except (SetupErrors, CaseError, ImpossibleError, MissingDataError) as error:
            raise LeftOutError(str(error)) from error

    def _wrong(self, source: ProblemFile, reason: str) -> None:
        found = LessonProblem(file=source.file, line=None, reason=reason)
        if found not in self._untold:
            self._untold.append(found)


class _FailedError(Exception):
    """A variant that could not be filled in; the reason is kept among the problems."""


_FUNCTIONS = ("answer_is", "slip", "option", "leave_out")


def _given(text: str) -> object:
    """Return given data as a lesson would: a number as written, or words."""
    return text if quantity_of(text) is None else given(text)


def _html(text: str) -> str:
    return str(_markdown().reset().convert(text.strip()))


_ASIDE = re.compile(r'<div data-set-aside="[^"]*"></div>')
_WORKED = re.compile(r'<details class="worked"[^>]*>')


def _complete(state: PageState, html: str) -> Markup:
    """Return the HTML with what was set aside in its place; a working loses its anchor, for it stands on many pages."""
    return Markup(_WORKED.sub('<details class="worked">', state.put_back(state.put_back(html), late=True)).strip())


@lru_cache(maxsize=1)
def _markdown() -> markdown.Markdown:
    return markdown.Markdown(extensions=["md_in_html", "attr_list", "smarty", "tables", ThemeTables()])

"""What one page gathers while it is rendered: problems, notes, figures and the fragments of HTML set aside."""

import sys
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from markupsafe import Markup

from hubwright.lessons.problems import LessonProblem
from hubwright.scenes.vocabulary import Scene

TEMPLATE = "<lesson>"  # the file name under which Jinja compiles a page


@dataclass
class Note:
    """A side note: its letter, its sort and its text as HTML."""

    letter: str
    kind: Literal["assumed", "source"]
    html: Markup
    short: Markup
    source: str | None = None


@dataclass
class PageState:
    """The page at hand. `lines_before` is how many lines of the file stand before its body."""

    file: str
    lines_before: int = 0
    lesson: int | None = None
    title: str = ""
    tied_to: str | None = None
    meta: Mapping[str, Any] = field(default_factory=dict)
    problems: list[LessonProblem] = field(default_factory=list)
    notes: list[Note] = field(default_factory=list)
    sources: list[str] = field(default_factory=list)
    figures: int = 0
    drawn: set[str] = field(default_factory=set)  # the names of its figures
    hero: Scene | None = None  # its first figure, which also stands for the page where somebody shares it
    brief_workings: bool = False  # without copies, and without the workings of the numbers put in
    workings: dict[tuple[object, ...], str] = field(default_factory=dict)  # anchor of each by what it explains
    practice: int = 0
    cautions_placed: bool = False
    hazards: list[str] = field(default_factory=list)
    early: dict[str, Markup] = field(default_factory=dict)  # put back before the search index reads the page
    late: dict[str, Markup] = field(default_factory=dict)  # put back after: drawings and formulas are no search terms
    content: str = ""  # the whole page as HTML, while the search index reads a shorter one
    built: str = ""
    wheel: str = ""  # that it is about, where that is not the usual one of its setup
    template: Any = None  # the compiled page, for its map of lines

    def problem(self, reason: str, *, line: int | None = None) -> None:
        """Keep a problem at the line that is being rendered, or at a given line of the file."""
        self.problems.append(LessonProblem(file=self.file, line=line or self.line_at_work(), reason=reason))

    def line_at_work(self) -> int | None:
        """Return the line of the file whose expression is being evaluated."""
        frame = sys._getframe()
        while frame is not None:
            if frame.f_code.co_filename == TEMPLATE and self.template is not None:
                return int(self.template.get_corresponding_lineno(frame.f_lineno)) + self.lines_before
            frame = frame.f_back  # type: ignore[assignment]
        return None

    def set_aside(self, html: Markup, *, late: bool = False) -> Markup:
        """Keep a block of HTML from Markdown and return what stands for it."""
        store = self.late if late else self.early
        key = f"{'late' if late else 'early'}-{len(store) + 1}"
        store[key] = html
        return Markup(f'\n\n<div data-set-aside="{key}"></div>\n\n')

    def put_back(self, html: str, *, late: bool = False) -> str:
        """Return the page with what was set aside back in its place."""
        store = self.late if late else self.early
        for key in reversed(store):  # what was set aside last may hold what was set aside before it
            html = html.replace(f'<div data-set-aside="{key}"></div>', str(store[key]))
        return html

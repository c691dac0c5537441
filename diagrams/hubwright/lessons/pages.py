"""Renders one page: front matter and body through Jinja, what every lesson carries added, orphans looked for."""

import re
from collections.abc import Callable, Mapping
from functools import partial
from typing import Any

from markupsafe import Markup

from hubwright.lessons import blocks, cautions, claims, find_numbers
from hubwright.lessons.closure import closure_table
from hubwright.lessons.course import Course, noise, play, play_from_tread
from hubwright.lessons.drawings import Drawings
from hubwright.lessons.environment import render
from hubwright.lessons.figures import figure
from hubwright.lessons.front_matter import FRONT_MATTER, front_matter
from hubwright.lessons.life_views import life_left
from hubwright.lessons.orphans import orphans
from hubwright.lessons.page_state import PageState
from hubwright.lessons.practice import Practice
from hubwright.lessons.practice_html import practice_problems
from hubwright.lessons.wording import forbidden_words
from hubwright.lessons.workings import working
from hubwright.lessons.workings.sentence import setup_words

_KEYS = frozenset(
    {"title", "lesson", "summary", "hazards", "tied_to", "kind", "template", "hide", "question", "description"}
)


class Renderer:
    """Renders the pages of a course."""

    def __init__(self, course: Course, drawings: Drawings, *, added_cautions: tuple[str, ...] = ()) -> None:
        """Make the names of the lessons once for all pages."""
        self.course = course
        self.drawings = drawings
        self.added_cautions = added_cautions
        self.names = course.names()
        self.practice = Practice(course, self._names)

    def page(self, source: str, file: str) -> tuple[PageState, str]:
        """Return a page's state and its Markdown; problems are on the state."""
        state, body = start(source, file)
        state.hazards = cautions.check_hazards(state, state.meta.get("hazards"), line=line_of_key(source, "hazards"))
        self._check_front_matter(state, source)
        text = ""
        # A setup in view that cannot be read is told once, at its file, not at every line that needs it.
        if self.course.in_view in self.course.results:
            text = self._filled(state, source, body)
            cautions.check_shown(state, line=line_of_key(source, "hazards"))
        for orphan in orphans(source):
            state.problem(
                f"orphan number '{orphan.text}': compute it, or mark it with given(\"…\") if it is data",
                line=orphan.line,
            )
        for warning in forbidden_words(source):
            state.problems.append(warning.of_file(file))
        if state.cautions_placed and state.lesson is not None and _after_first_section(source, "cautions()"):
            state.problem(
                "the cautions of a lesson stand before its first section; leave {{ cautions() }} out and they will",
                line=source.count("\n", 0, source.index("cautions()")) + 1,
            )
        return state, self._completed(state, text)

    def _filled(self, state: PageState, source: str, body: str) -> str:
        """Return the body with its expressions filled in, and fill in the front matter on the way."""
        names = self._names(state)
        meta_texts = dict(state.meta)
        for key in ("title", "summary"):
            if isinstance(text := state.meta.get(key), str):
                line = line_of_key(source, key)
                state.lines_before, keep = line - 1, state.lines_before
                meta_texts[key] = render(text, state, names) or text
                state.lines_before = keep
        state.meta = meta_texts
        state.title = str(meta_texts.get("title", ""))
        return render(body, state, names) or ""

    def _names(self, state: PageState) -> Mapping[str, Any]:
        def cautioned() -> Markup:
            state.cautions_placed = True
            return state.set_aside(cautions.caution_box(state.hazards, self.added_cautions))

        bound: dict[str, Callable[..., Any]] = {
            "figure": partial(figure, state, self.drawings),
            "working": partial(working, state),
            "claim": partial(claims.claim, state),
            "answer": partial(blocks.answer, state, about=self._about(state)),
            "note": partial(blocks.note, state, sources=self.course.sources),
            "claim_box": partial(blocks.claim_box, state),
            "closure_table": partial(closure_table, state),
            "practice_problems": partial(practice_problems, state, self.practice),
            "cautions": cautioned,
            "key_table": partial(find_numbers.key_table, state),
            "worth_measuring": partial(find_numbers.worth_measuring, state, self.course),
            "swings": find_numbers.swings,
            "example_line": find_numbers.example_line,
            "vary": self.course.vary,
            "stands": self.course.stands,
            "compare": self.course.compare,
            "play": play,
            "play_from_tread": play_from_tread,
            "noise": noise,
            "life_left": life_left,
        }
        return {
            **self.names,
            **bound,
            "glossary": self.course.glossary,
            "sources": self.course.sources,
            "setups": [view for stem, view in self.course.views.items() if stem in self.course.results],
        }

    def _about(self, state: PageState) -> str:
        """Return the words for the setup that a page is about, for sentences that leave the page."""
        results = self.course.results.get(state.tied_to or self.course.in_view)
        return setup_words(results) if results is not None else ""

    def _check_front_matter(self, state: PageState, source: str) -> None:
        for key in state.meta:
            if key not in _KEYS:
                state.problem(
                    f"front matter has no key '{key}'; there are: {', '.join(sorted(_KEYS))}",
                    line=line_of_key(source, key),
                )
        if state.tied_to is not None and state.tied_to not in self.course.results:
            there = ", ".join(sorted(self.course.results))
            state.problem(
                f"'tied_to: {state.tied_to}' names no setup; there are: {there}", line=line_of_key(source, "tied_to")
            )

    def _completed(self, state: PageState, text: str) -> str:
        """Return the Markdown with the box of cautions and the lists at the end that its author did not place."""
        if not state.cautions_placed and (state.hazards or state.lesson is not None):
            box = state.set_aside(cautions.caution_box(state.hazards, self.added_cautions))
            text = before_first_section(text, str(box))
        if any(note.kind == "assumed" for note in state.notes):
            text += f"\n\n## What was assumed {{#assumed}}\n\n{state.set_aside(blocks.assumed_list(state))}"
        if state.sources:
            text += f"\n\n## Sources {{#sources}}\n\n{state.set_aside(blocks.sources_list(state, self.course.sources))}"
        return text


def start(source: str, file: str) -> tuple[PageState, str]:
    """Return the state of a page that is about to be rendered, and its body."""
    match = FRONT_MATTER.match(source)
    body = source[match.end() :] if match else source
    read, unreadable = front_matter(source)
    lesson = read.get("lesson")
    tied = read.get("tied_to")
    state = PageState(
        file=file,
        lines_before=source.count("\n", 0, match.end()) if match else 0,
        lesson=lesson if isinstance(lesson, int) else None,
        tied_to=str(tied) if tied is not None else None,
        meta=read,
    )
    if unreadable is not None:
        state.problem(unreadable.reason, line=unreadable.line)
    if lesson is not None and not isinstance(lesson, int):
        state.problem(f"'lesson' must be a whole number (got {lesson!r})", line=line_of_key(source, "lesson"))
    return state, body


def line_of_key(source: str, key: str) -> int:
    """Return the line of a key of the front matter, the first line where it has none."""
    match = re.search(rf"^{re.escape(key)}[ \t]*:", source, re.M)
    return source.count("\n", 0, match.start()) + 1 if match else 1


def _after_first_section(source: str, call: str) -> bool:
    section = re.search(r"^##\s", source, re.M)
    return section is not None and section.start() < source.find(call)


def before_first_section(text: str, box: str) -> str:
    """Return the Markdown with a block put before its first section."""
    match = re.search(r"^##\s", text, re.M)
    if match is None:
        return f"{text}\n\n{box}\n"
    return f"{text[: match.start()]}{box}\n{text[match.start() :]}"

"""A practice problem as a teacher writes it: a Markdown file with its lesson, level and five sets of given data."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path
from typing import Any

from hubwright.lessons import cautions
from hubwright.lessons.front_matter import FRONT_MATTER, front_matter
from hubwright.lessons.orphans import orphans
from hubwright.lessons.page_state import PageState
from hubwright.lessons.problems import LessonProblem
from hubwright.lessons.wording import forbidden_words

FOLDER = "practice"
LEVELS = ("read a number", "one formula", "two steps", "judge")
VARIANTS = 5
_KEYS = ("title", "lesson", "level", "variants", "instead", "hazards")


@dataclass(frozen=True)
class ProblemFile:
    """One file of the folder `practice`, checked but not yet filled in."""

    stem: str
    file: str  # as messages name it
    title: str
    lesson: int
    level: str
    variants: Mapping[str, tuple[str, ...]]  # by name: what is given in each variant
    instead: str  # stem of the problem that takes its place where this one cannot be asked
    hazards: tuple[str, ...]
    body: str
    lines_before: int
    problems: tuple[LessonProblem, ...] = ()

    @property
    def order(self) -> tuple[int, int, str]:
        """Return its place in the collection: by lesson, then from reading a number to judging."""
        return self.lesson, LEVELS.index(self.level), self.stem


def read_problems(folder: Path, *, shown: str) -> dict[str, ProblemFile]:
    """Return the problems of a folder by their stem, in the order of the collection."""
    read = [read_problem(file.read_text(encoding="utf-8"), file.stem, shown) for file in sorted(folder.glob("*.md"))]
    stems = {one.stem for one in read}
    return {one.stem: _with_others(one, stems) for one in sorted(read, key=lambda one: one.order)}


def _with_others(one: ProblemFile, stems: set[str]) -> ProblemFile:
    if not one.instead or one.instead in stems:
        return one
    reason = f"'instead: {one.instead}' names no problem; there are: {', '.join(sorted(stems))}"
    return replace(one, problems=(*one.problems, LessonProblem(file=one.file, line=None, reason=reason)))


@lru_cache(maxsize=256)
def read_problem(source: str, stem: str, shown: str) -> ProblemFile:
    """Return a problem from its text; what is wrong with its front matter and prose is kept on it."""
    match = FRONT_MATTER.match(source)
    found, unreadable = front_matter(source)
    page = PageState(file=f"{shown}/{stem}.md")
    if unreadable is not None:
        page.problem(unreadable.reason, line=unreadable.line)
    for key in found:
        if key not in _KEYS:
            page.problem(f"front matter has no key '{key}'; there are: {', '.join(_KEYS)}", line=1)
    lesson, level = found.get("lesson"), found.get("level")
    if not isinstance(lesson, int):
        page.problem(f"'lesson' must be the number of a lesson (got {lesson!r})", line=1)
    if level not in LEVELS:
        page.problem(f"'level' must be one of: {', '.join(LEVELS)} (got {level!r})", line=1)
    for orphan in orphans(source):
        page.problem(f"orphan number '{orphan.text}': give it under 'variants', or compute it", line=orphan.line)
    page.problems += [warning.of_file(page.file) for warning in forbidden_words(source)]
    return ProblemFile(
        stem=stem,
        file=page.file,
        title=str(found.get("title") or stem),
        lesson=lesson if isinstance(lesson, int) else 0,
        level=level if isinstance(level, str) and level in LEVELS else LEVELS[0],
        variants=_variants(page, found.get("variants")),
        instead=str(found.get("instead") or ""),
        hazards=tuple(cautions.check_hazards(page, found.get("hazards"), line=1)),
        body=source[match.end() :] if match else source,
        lines_before=source.count("\n", 0, match.end()) if match else 0,
        problems=tuple(page.problems),
    )


def _variants(page: PageState, table: Any) -> dict[str, tuple[str, ...]]:
    if not isinstance(table, Mapping) or not table:
        page.problem(f"'variants' must give at least one name, with {VARIANTS} values for it", line=1)
        return {}
    given = {}
    for name, values in table.items():
        texts = [str(value) for value in values] if isinstance(values, list) else []
        if len(texts) != VARIANTS:
            page.problem(f"'variants: {name}' must be a list of {VARIANTS} values", line=1)
            texts = [*texts, *(texts[-1:] or ["0"]) * VARIANTS][:VARIANTS]
        given[str(name)] = tuple(texts)
    if len(set(zip(*given.values(), strict=True))) < VARIANTS:
        page.problem("two of the variants are the same", line=1)
    return given

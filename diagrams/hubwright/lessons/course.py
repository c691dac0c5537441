"""A site's vehicles, setups and beams, read and solved once, with its sources and words."""

import posixpath
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from hubwright.errors import CaseError, HubwrightError, SetupErrors
from hubwright.lessons.blocks import BlockError
from hubwright.lessons.life_views import comparison_view
from hubwright.lessons.named_values import View, subject_of
from hubwright.lessons.numbers import Given
from hubwright.lessons.problems import LessonProblem
from hubwright.lessons.sources import Source, Word, read_glossary, read_sources
from hubwright.lessons.symptom_views import noise_view, play_view, tread_view
from hubwright.lessons.views import beam_view, case_attribute, setup_view
from hubwright.quantities import Quantity
from hubwright.results import Results, solve
from hubwright.results.comparison import compare
from hubwright.setup import load, vary
from hubwright.setup.model import Beam, Setup


@dataclass
class Course:
    """Everything of a site that lessons can name."""

    docs: Path
    in_view: str  # stem of the setup in view
    folders: tuple[str, ...] = ("vehicles", "setups", "beams")
    results: dict[str, Results] = field(default_factory=dict)  # by stem
    views: dict[str, View] = field(default_factory=dict)
    sources: dict[str, Source] = field(default_factory=dict)
    glossary: dict[str, Word] = field(default_factory=dict)
    problems: list[LessonProblem] = field(default_factory=list)
    shown: str = ""  # the docs directory as messages show it
    files: dict[str, Path] = field(default_factory=dict)  # of each setup, by stem
    _varied: dict[tuple[int, str], View] = field(default_factory=dict)
    _compared: dict[tuple[int, int], View] = field(default_factory=dict)

    @classmethod
    def read(
        cls, docs: Path, *, in_view: str, folders: tuple[str, ...] = ("vehicles", "setups", "beams"), shown: str = ""
    ) -> "Course":
        """Read and solve every file of a site; what is wrong is collected, not raised."""
        course = cls(docs=docs, in_view=in_view, folders=folders, shown=shown)
        course.sources = read_sources(
            docs / "sources.toml", course.problems, shown=course.shown_file(docs / "sources.toml")
        )
        course.glossary = read_glossary(
            docs / "glossary.toml", course.problems, shown=course.shown_file(docs / "glossary.toml")
        )
        for folder in folders:
            for file in sorted((docs / folder).glob("*.toml")):
                course._read(file)
        if in_view not in course.results and in_view not in course.files:
            there = ", ".join(sorted(course.results)) or "none"
            course._problem("mkdocs.yml", f"'setup: {in_view}' names no vehicle or setup file; there are: {there}")
        return course

    def names(self) -> Mapping[str, Any]:
        """Return the names of a lesson: `stock`, and every file by its stem with underscores."""
        names: dict[str, Any] = {case_attribute(stem): view for stem, view in self.views.items()}
        if self.in_view in self.results:
            names["stock"] = setup_view(self.results[self.in_view], "stock")
        return names

    def vary(self, view: View, changes: Mapping[str, Any]) -> View:
        """Return the view of a setup with some of its values changed."""
        results = solved(view, "vary")
        texts = {key: _as_written(value) for key, value in changes.items()}
        key = (id(results), repr(sorted(texts.items())))
        if key not in self._varied:
            varied = solve(vary(results.setup, texts), results.wheel)
            self._varied[key] = setup_view(varied, "the variant")
        return self._varied[key]

    def stands(self, view: View, changes: Mapping[str, Any]) -> bool:
        """Return whether a changed setup can stand in all of its cases: no wheel lifted, no slope past tipping."""
        try:
            self.vary(view, changes)
        except CaseError:
            return False
        return True

    def compare(self, base: View, other: View) -> View:
        """Return two setups compared where the other wears most on the axle; each pair is drawn once."""
        mine, theirs = solved(base, "compare"), solved(other, "compare")
        key = (id(mine), id(theirs))
        if key not in self._compared:
            self._compared[key] = comparison_view(compare(mine.setup, theirs.setup), "the comparison")
        return self._compared[key]

    def _read(self, file: Path) -> None:
        shown = self.shown_file(file)
        if file.stem in self.files:
            self._problem(
                shown,
                f"there is another file '{file.stem}.toml'; lessons call a file by its name, so give it another",
            )
            return
        self.files[file.stem] = file
        try:
            thing = load(file)
            if isinstance(thing, Beam):
                self.views[file.stem] = beam_view(thing, case_attribute(file.stem))
            elif isinstance(thing, Setup):
                self.results[file.stem] = solve(thing)
                self.views[file.stem] = setup_view(self.results[file.stem], case_attribute(file.stem))
        except SetupErrors as errors:
            for problem in errors.problems:
                where = self.shown_file(problem.path) if problem.path else problem.file
                reason = str(problem).partition(": ")[2]
                self.problems.append(LessonProblem(file=where, line=problem.line, reason=reason))
        except HubwrightError as error:
            self._problem(shown, str(error))

    def shown_file(self, file: Path) -> str:
        """Return a file as a message names it."""
        if not file.resolve().is_relative_to(self.docs.resolve()):
            return file.name
        return posixpath.join(self.shown, file.resolve().relative_to(self.docs.resolve()).as_posix())

    def _problem(self, file: str, reason: str) -> None:
        self.problems.append(LessonProblem(file=file, line=None, reason=reason))


def solved(view: object, wanted_by: str) -> Results:
    """Return the solved setup behind a view such as `stock`."""
    results = subject_of(view) if isinstance(view, View) else None
    if not isinstance(results, Results):
        raise BlockError(f"{wanted_by} needs a setup, such as stock, got {view!r}")
    return results


def play(view: View, end_play: Quantity) -> View | None:
    """Return what an end play makes at hub and tread."""
    return play_view(solved(view, "play"), _in(end_play, "m", "play"), "the play")


def play_from_tread(view: View, travel: Quantity) -> View | None:
    """Return the play that a travel at the tread comes from."""
    return tread_view(solved(view, "play_from_tread"), _in(travel, "m", "play_from_tread"), "the play")


def noise(view: View, speed: Quantity) -> View:
    """Return how often the parts of a bearing are struck at a road speed."""
    return noise_view(solved(view, "noise"), _in(speed, "m/s", "noise"), "the noise")


def _in(quantity: object, unit: str, wanted_by: str) -> float:
    if not isinstance(quantity, Quantity) or quantity.unit != unit:
        raise BlockError(f"{wanted_by} needs a quantity in {unit}, got {quantity!r}")
    return quantity.value


def _as_written(value: object) -> object:
    """Return a changed value as it would stand in a file."""
    if isinstance(value, Given):
        return value.written
    if isinstance(value, Quantity):
        return value.value if value.unit == "1" else f"{value.value!r} {value.unit}"
    if isinstance(value, Mapping):
        return {key: _as_written(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [_as_written(inner) for inner in value]
    return value

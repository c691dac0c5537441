"""One thing wrong in a site: a lesson's line, or what a setup file's reader reports."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class LessonProblem:
    """One thing wrong at a line of a file; a warning does not fail the build."""

    file: str
    line: int | None
    reason: str
    fails: bool = True

    def __str__(self) -> str:
        """Return the problem as one line of text."""
        where = f"{self.file}:{self.line}" if self.line else self.file
        return f"{where}: {'' if self.fails else 'note: '}{self.reason}"

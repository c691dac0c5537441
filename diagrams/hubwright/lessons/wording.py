"""Words that a lesson must not use as a result: no page says that a change is safe or legal."""

import re
from dataclasses import dataclass

from hubwright.lessons.orphans import prose_of
from hubwright.lessons.problems import LessonProblem

_WORDS = re.compile(r"\b(safe(?:ly|r|st)?|legal(?:ly)?|harmless|guarantee[ds]?|no\s+problem)\b", re.I)
# said with a "not" before it, or as a caution about it, the word judges nothing
_DENIED = re.compile(r"\b(?:not|never|no|cannot|whether|nothing|neither)\b[^.\x00]{0,60}$", re.I)


@dataclass(frozen=True, slots=True)
class Warned:
    """A word to think about."""

    line: int
    word: str

    def of_file(self, file: str) -> LessonProblem:
        """Return the warning as a problem that does not fail a build."""
        reason = f"'{self.word}' promises what no page can; say what was computed and defer to the maker's limits"
        return LessonProblem(file=file, line=self.line, reason=reason, fails=False)


def forbidden_words(source: str) -> list[Warned]:
    """Return the words of a page's prose that would make a promise.

    Examples
    --------
    >>> forbidden_words("It does not say that this is safe.\\nA spacer is harmless.")
    [Warned(line=2, word='harmless')]
    """
    prose = prose_of(source)
    return [
        Warned(line=prose.count("\n", 0, match.start()) + 1, word=" ".join(match.group().split()))
        for match in _WORDS.finditer(prose)
        if not _DENIED.search(prose, 0, match.start())
    ]

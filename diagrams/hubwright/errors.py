"""The errors that people see: one small tree, whose leaves carry their facts.

Every leaf also derives from the built-in error of its sort, so that code which knows nothing of
hubwright can catch it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path


class HubwrightError(Exception):
    """Root of all errors that hubwright raises about its input."""


class QuantityError(HubwrightError, ValueError):
    """A text that cannot be read as a quantity of the dimension needed."""

    def __init__(self, *, needed: str, given: object, repair: str) -> None:
        """Keep what was needed, what was given and how to write it."""
        self.needed = needed
        self.given = given
        self.repair = repair
        super().__init__(f"must be {needed} (got {shown(given)}). {repair}")


class DimensionError(HubwrightError, TypeError):
    """Arithmetic on quantities that do not go together."""

    def __init__(self, *, action: str, left: str, right: str = "") -> None:
        """Keep what was tried and on which units; `right` stays empty for a quantity by itself."""
        self.action = action
        self.left = left
        self.right = right
        both = f"cannot {action} {left} and {right}: the units differ in kind"
        super().__init__(both if right else f"cannot {action} a quantity in {left}")


class ImpossibleError(HubwrightError, ValueError):
    """Numbers that no real thing has, met by a formula."""


class CaseError(HubwrightError, ValueError):
    """A load case that this vehicle cannot stand in: a lifted wheel, a slope past tipping."""

    def __init__(self, *, case: str, reason: str) -> None:
        """Keep the name of the case and why it fails."""
        self.case = case
        self.reason = reason
        super().__init__(f"case '{case}': {reason}")


class MissingDataError(HubwrightError, LookupError):
    """A result that needs a value which the file does not give and nothing estimates."""

    def __init__(self, *, result: str, missing: Iterable[str], reason: str = "") -> None:
        """Keep the result asked for and the dotted keys that are missing."""
        self.result = result
        self.missing = tuple(missing)
        self.reason = reason
        keys = ", ".join(f"'{key}'" for key in self.missing)
        super().__init__(f"{result} needs {keys}, which the file does not give{'. ' + reason if reason else ''}")


class SetupFileError(HubwrightError, OSError):
    """A file that cannot be found or read."""


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong in a file: where, what is needed, what was given, how to write it."""

    file: str  # as shown: the file's name
    line: int | None
    key: str
    needed: str  # completes "'key' must be …"
    given: object = None  # None: nothing was given
    repair: str = ""
    path: Path | None = None

    def __str__(self) -> str:
        """Return the problem as one line of text."""
        where = f"{self.file}:{self.line}" if self.line else self.file
        got = "" if self.given is None else f" (got {shown(self.given)})"
        subject = f"'{self.key}'" if self.key else "the file"
        return f"{where}: {subject} must be {self.needed}{got}.{' ' + self.repair if self.repair else ''}"


class SetupErrors(HubwrightError, ValueError):  # noqa: N818  (it holds several)
    """Everything wrong in one vehicle, setup or beam file, at once."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        """Keep the problems in the order of their lines."""
        self.problems = tuple(problems)
        super().__init__("\n".join(str(problem) for problem in self.problems))


class OpenFreeBody(HubwrightError, ArithmeticError):  # noqa: N818 (it names what stands there)
    """A free body whose forces or moments do not add up to nothing: such a figure would be false."""

    def __init__(self, *, figure: str, force: float, moment: float) -> None:
        """Keep the figure and what is left over, in newtons and newton metres."""
        self.figure = figure
        self.force = force
        self.moment = moment
        super().__init__(
            f"the free body of '{figure}' does not close: {force:.3g} N and {moment:.3g} N·m are left over"
        )


class ChoiceError(HubwrightError, LookupError):
    """A name that none of the things to choose from has."""

    def __init__(self, *, what: str, given: str, known: Iterable[str], reason: str = "") -> None:
        """Keep what was chosen, the name given and the names there are."""
        self.what = what
        self.given = given
        self.known = tuple(known)
        near = get_close_matches(given.casefold(), self.known, n=1, cutoff=0.5)
        guess = f"; perhaps you meant '{near[0]}'" if near else ""
        there_are = f". There are: {', '.join(self.known)}" if self.known else ""
        said = reason or f"no {what} is called '{given}'"
        super().__init__(f"{said}{guess}{there_are}")


def shown(given: object) -> str:
    """Return a given value as it looks in a file: texts in quotes, the rest bare."""
    if isinstance(given, str):
        return f"'{given}'"
    if isinstance(given, bool):
        return "true" if given else "false"
    return str(given)

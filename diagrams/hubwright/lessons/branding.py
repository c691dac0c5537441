"""What a shop puts on its sheets: its name, a line for contact, a logo of its own, and who prepared and reviewed."""

from dataclasses import dataclass
from pathlib import Path

from hubwright.lessons.problems import LessonProblem
from hubwright.lessons.wording import forbidden_words


@dataclass(frozen=True)
class Branding:
    """The texts of a shop, all empty by default; `logo` is a file below docs_dir."""

    shop: str = ""
    contact: str = ""
    logo: str = ""
    prepared_by: str = ""
    reviewed_by: str = ""

    def texts(self) -> dict[str, str]:
        """Return what is printed, by the option that gives it."""
        return {
            "shop": self.shop,
            "contact": self.contact,
            "prepared_by": self.prepared_by,
            "reviewed_by": self.reviewed_by,
        }


def branding_problems(branding: Branding, docs: Path, *, more: dict[str, str], file: str) -> list[LessonProblem]:
    """Return what is wrong with a shop's texts: words that promise, and a logo that is not there.

    `more` holds other texts of the site's owner by the option that gives them, such as the site's name.
    """
    problems = [
        LessonProblem(
            file=file,
            line=None,
            reason=f"'{warning.word}' in '{option}' promises what no page can; "
            "say what was computed and defer to the maker's limits",
            fails=False,
        )
        for option, text in {**more, **branding.texts()}.items()
        for warning in forbidden_words(text)
    ]
    if branding.logo and not _is_inside(docs, branding.logo):
        reason = (
            f"'logo: {branding.logo}' must be the path of a picture below the docs directory; there is no such file"
        )
        problems.append(LessonProblem(file=file, line=None, reason=reason))
    return problems


def _is_inside(docs: Path, path: str) -> bool:
    file = (docs / path).resolve()
    return file.is_file() and file.is_relative_to(docs.resolve())

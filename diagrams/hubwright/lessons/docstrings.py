"""Reads the docstring of a formula: summary, why it matters, the formula itself, and its numpydoc sections.

Our docstrings have one strict shape, which a test holds, and a section is a heading with a line of hyphens below it.
The libraries that read docstrings bring a documentation system along or lose the text of examples.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass

_HEADING = re.compile(r"^(\w[\w ]*)\n-{3,}\n", re.M)
_ENTRY = re.compile(r"^(\S[^\n]*)\n((?:[ ]{4,}[^\n]*\n?|\n(?=[ ]{4}))*)", re.M)


@dataclass(frozen=True)
class Entry:
    """A parameter, result or error: its name and what is said of it."""

    name: str
    text: str


@dataclass(frozen=True)
class Paragraph:
    """A paragraph of prose as one line, or the lines of a formula, which stand four spaces in."""

    lines: tuple[str, ...]
    is_formula: bool


@dataclass(frozen=True)
class Docstring:
    """A docstring in its parts; a part that it does not have is empty."""

    summary: str
    body: tuple[Paragraph, ...]  # what stands between the summary and the first section
    sections: Mapping[str, str]

    @property
    def formula(self) -> tuple[str, ...]:
        """Return the lines of the formula."""
        return tuple(line for part in self.body if part.is_formula for line in part.lines)

    def entries(self, section: str) -> tuple[Entry, ...]:
        """Return the entries of a section of names with what is said of them."""
        return tuple(
            Entry(match[1].strip(), " ".join(match[2].split()))
            for match in _ENTRY.finditer(self.sections.get(section, ""))
        )

    def paragraphs(self, section: str) -> tuple[str, ...]:
        """Return the paragraphs of a section of prose."""
        return tuple(
            " ".join(part.split()) for part in re.split(r"\n\s*\n", self.sections.get(section, "")) if part.strip()
        )


def read_docstring(text: str) -> Docstring:
    """Return a docstring, as `inspect.getdoc` gives it, in its parts."""
    head, *rest = _HEADING.split(text.strip() + "\n")
    sections = {title: body.strip("\n") for title, body in zip(rest[::2], rest[1::2], strict=True)}
    summary, *blocks = [block.strip("\n") for block in re.split(r"\n\s*\n", head) if block.strip()] or [""]
    return Docstring(" ".join(summary.split()), tuple(_paragraph(block) for block in blocks), sections)


def _paragraph(block: str) -> Paragraph:
    if block.startswith("    "):
        return Paragraph(tuple(line[4:] for line in block.split("\n")), is_formula=True)
    return Paragraph((" ".join(block.split()),), is_formula=False)

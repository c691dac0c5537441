"""The sources that lessons cite, and the word list, as a site's TOML files give them."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any

from markupsafe import Markup

from hubwright.lessons.problems import LessonProblem


@dataclass(frozen=True, slots=True)
class Source:
    """Where a fact comes from."""

    title: str
    author: str = ""
    edition: str = ""
    section: str = ""
    remark: str = ""


@dataclass(frozen=True, slots=True)
class Word:
    """A word of the trade: what it means, its symbol, unit and sign."""

    text: str
    symbol: str = ""
    unit: str = ""
    sign: str = ""


def read_sources(path: Path, problems: list[LessonProblem], *, shown: str) -> dict[str, Source]:
    """Return the sources of a site by key; no file is no sources."""
    return {key: Source(**entry) for key, entry in _entries(path, Source, "title", problems, shown).items()}


def read_glossary(path: Path, problems: list[LessonProblem], *, shown: str) -> dict[str, Word]:
    """Return the words of a site; no file is no words."""
    return {key: Word(**entry) for key, entry in _entries(path, Word, "text", problems, shown).items()}


def source_html(source: Source) -> Markup:
    """Return a source as it stands in the list at the end of a page."""
    parts = [Markup("{}").format(source.author)] if source.author else []
    parts.append(Markup("<i>{}</i>").format(source.title))
    if source.edition:
        parts.append(Markup("{}").format(source.edition))
    html = Markup(", ").join(parts) + "."
    for rest in (source.section, source.remark):
        if rest:
            html += Markup(" {}.").format(rest.rstrip("."))
    return html


def _entries(
    path: Path, entry: type, needed: str, problems: list[LessonProblem], shown: str
) -> dict[str, dict[str, str]]:
    if not path.is_file():
        return {}
    try:
        read: Mapping[str, Any] = tomllib.loads(path.read_text(encoding="utf-8"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        problems.append(LessonProblem(file=shown, line=None, reason=str(error)))
        return {}
    known = {field.name for field in fields(entry)}
    good = {}
    for key, table in read.items():
        if not isinstance(table, dict) or needed not in table:
            problems.append(LessonProblem(file=shown, line=None, reason=f"[{key}] needs '{needed}'"))
        elif unknown := set(table) - known:
            reason = f"[{key}] has no key '{sorted(unknown)[0]}'; there are: {', '.join(sorted(known))}"
            problems.append(LessonProblem(file=shown, line=None, reason=reason))
        else:
            good[key] = {name: str(value) for name, value in table.items()}
    return good

"""Reads a page's front matter, and says at which line it cannot be read."""

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import yaml
from yaml import SafeLoader

FRONT_MATTER = re.compile(r"\A---[ \t]*\n(.*?)^---[ \t]*$\n*", re.M | re.S)
_LIKELY_KEY = re.compile(r"\A---[ \t]*\n[a-z_]+[ \t]*:", re.M)


@dataclass(frozen=True)
class Unreadable:
    """Why front matter cannot be read, and the line of the file at which reading stopped."""

    reason: str
    line: int


def front_matter(source: str) -> tuple[dict[str, Any], Unreadable | None]:
    """Return the keys of a page's front matter, and what is wrong if they cannot be read.

    MkDocs drops unreadable front matter without a word; a lesson would lose its number and its cautions.
    """
    read, unreadable = _read(source)
    return dict(read), unreadable


@lru_cache(maxsize=256)
def _read(source: str) -> tuple[dict[str, Any], Unreadable | None]:
    match = FRONT_MATTER.match(source)
    if match is None:
        if _LIKELY_KEY.match(source):
            return {}, Unreadable("the front matter has no end: close it with a line '---'", 1)
        return {}, None
    try:
        read = yaml.load(match[1], Loader=SafeLoader)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark
        line = 1 if mark is None else mark.line + 2
        return {}, Unreadable(
            f"the front matter cannot be read: {error.problem or error}.{_repair(source, line)}", line
        )
    except yaml.YAMLError as error:
        return {}, Unreadable(f"the front matter cannot be read: {error}", 1)
    if read is None:
        return {}, None
    if not isinstance(read, dict):
        return {}, Unreadable("the front matter must give keys, such as 'title: Which end is heavier?'", 2)
    return {str(key): value for key, value in read.items()}, None


def _repair(source: str, line: int) -> str:
    """Return the advice that helps most: a text with ': ' in it stands in quotes."""
    text = source.split("\n")[line - 1]
    key, colon, rest = text.partition(": ")
    if colon and ": " in rest and not rest.lstrip().startswith(('"', "'")):
        return f" Put the text of '{key.strip()}' in quotes: it holds ': '."
    return ""

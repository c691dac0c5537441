"""Which line each key of a TOML text stands on; the standard reader does not say."""

from __future__ import annotations

import re

Path = tuple[str | int, ...]

_BARE = re.compile(r"[A-Za-z0-9_-]+")
_SPACE = re.compile(r"[ \t]*")
_BLANK = re.compile(r"(?:[ \t\r\n]|#[^\n]*)*")
_BASIC = re.compile(r'"(?:[^"\\\n]|\\.)*"')
_LITERAL = re.compile(r"'[^'\n]*'")
_LONG = re.compile(r'"""(?:[^\\]|\\.)*?"{3,5}|\'\'\'.*?\'{3,5}', re.DOTALL)
_OTHER = re.compile(r"[^,\]}\n#]+")


def key_lines(text: str) -> dict[Path, int]:
    """Return the line, counted from 1, of every key and table in a TOML text.

    An entry of an array (of tables too) has its index in the path. The text must be valid TOML.

    Examples
    --------
    >>> key_lines("a = 1\\n[[gear]]\\nmass = '2 kg'")
    {('a',): 1, ('gear',): 2, ('gear', 0): 2, ('gear', 0, 'mass'): 3}
    """
    scanner = _Scanner(text)
    scanner.document()
    return scanner.lines


class _Scanner:
    """Walks once over a text and notes where keys begin."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.lines: dict[Path, int] = {}
        self.entries: dict[Path, int] = {}  # arrays of tables: how many so far

    def document(self) -> None:
        """Read all tables and keys."""
        table: Path = ()
        self._skip(_BLANK)
        while self.at < len(self.text):
            start = self.at
            if self.text.startswith("[", self.at):
                many = self.text.startswith("[[", self.at)
                self.at += 2 if many else 1
                table = self._table(self._key(), start, many=many)
                self.at += 2 if many else 1
            else:
                self._pair(table)
            self._skip(_BLANK)
            if self.at == start:  # cannot happen in valid TOML; never hang on any text
                break

    def _table(self, names: list[str], start: int, *, many: bool) -> Path:
        path: Path = ()
        for position, name in enumerate(names):
            path = (*path, name)
            self._note(path, start)
            last = position == len(names) - 1
            if last and many:
                self.entries[path] = self.entries.get(path, 0) + 1
            if path in self.entries:
                path = (*path, self.entries[path] - 1)
                self._note(path, start)
        return path

    def _pair(self, table: Path) -> None:
        start = self.at
        path = table
        for name in self._key():
            path = (*path, name)
            self._note(path, start)
        self.at += 1  # the equals sign
        self._skip(_SPACE)
        self._value(path)

    def _value(self, path: Path) -> None:
        opening = self.text[self.at : self.at + 1]
        if opening == "[":
            self._array(path)
        elif opening == "{":
            self._inline_table(path)
        elif not any(self._skip(pattern) for pattern in (_LONG, _BASIC, _LITERAL, _OTHER)):
            self.at += 1

    def _array(self, path: Path) -> None:
        self.at += 1
        index = 0
        self._skip(_BLANK)
        while self.at < len(self.text) and self.text[self.at] != "]":
            self._note((*path, index), self.at)
            self._value((*path, index))
            self._skip(_BLANK)
            if self.text.startswith(",", self.at):
                self.at += 1
            self._skip(_BLANK)
            index += 1
        self.at += 1

    def _inline_table(self, path: Path) -> None:
        self.at += 1
        self._skip(_BLANK)
        while self.at < len(self.text) and self.text[self.at] != "}":
            self._pair(path)
            self._skip(_BLANK)
            if self.text.startswith(",", self.at):
                self.at += 1
            self._skip(_BLANK)
        self.at += 1

    def _key(self) -> list[str]:
        names = []
        while True:
            self._skip(_SPACE)
            start = self.at
            if self._skip(_BASIC):
                raw = self.text[start + 1 : self.at - 1]
                # the escapes of TOML's basic strings are those of Python's
                names.append(raw.encode("latin-1", "backslashreplace").decode("unicode_escape"))
            elif self._skip(_LITERAL):
                names.append(self.text[start + 1 : self.at - 1])
            else:
                self._skip(_BARE)
                names.append(self.text[start : self.at])
            self._skip(_SPACE)
            if not self.text.startswith(".", self.at):
                return names
            self.at += 1

    def _skip(self, pattern: re.Pattern[str]) -> bool:
        match = pattern.match(self.text, self.at)
        if match is None:
            return False
        self.at = match.end()
        return bool(match.group())

    def _note(self, path: Path, at: int) -> None:
        self.lines.setdefault(path, self.text.count("\n", 0, at) + 1)

"""The faces that figures are lettered with, the width of text in them, and text split into runs of one face.

Lengths are sheet millimetres; `cap` is the height of a capital.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path
from typing import Literal

from matplotlib.ft2font import FT2Font, LoadFlags

from hubwright.places import data_directory
from hubwright.scenes.vocabulary import MARK

Face = Literal["lettering", "narrow", "serif", "bold", "symbol", "mathematics"]

_FILES: dict[Face, str] = {
    "lettering": "lettering.ttf",
    "narrow": "lettering-narrow.ttf",
    "serif": "schola-regular.otf",
    "bold": "schola-bold.otf",
    "symbol": "schola-italic.ttf",
    "mathematics": "schola-math.otf",
}
WEB_FILES: dict[Face, str] = {face: Path(name).with_suffix(".woff2").name for face, name in _FILES.items()}
# a character that a face lacks is taken from the next one, in the order of the font-family lists of the style sheet
_FALLBACK: tuple[Face, ...] = ("serif", "mathematics")
CAP: dict[Face, float] = {  # cap height over em, from the files' OS/2 tables
    "lettering": 736 / 1024,
    "narrow": 736 / 1024,
    "serif": 0.722,
    "bold": 0.722,
    "symbol": 0.722,
    "mathematics": 0.722,
}
_SYMBOL = 1.06  # the serif's small letters are lower than the lettering's at one cap height
_SUBSCRIPT_ITALIC, _SUBSCRIPT_WORD, _SUBSCRIPT_DROP = 0.74, 0.68, 0.32
STRONG = 1.16  # the lettering has one weight: strong lines are larger
LEADING = 1.72  # baseline to baseline over cap height
_AT_MOST_A_BLANK = 1.0  # cap heights: no face has one half as wide
DROP = 0.3  # depth of descenders over cap height
_SIZE = 1000  # pixels per em at which text is measured, unhinted


@dataclass(frozen=True, slots=True)
class Run:
    """A piece of text in one face: em size, height above the baseline and width, all in sheet millimetres."""

    text: str
    face: Face
    em: float
    rise: float
    width: float


@dataclass(frozen=True, slots=True)
class TextLine:
    """A line of runs with its cap height and width."""

    runs: tuple[Run, ...]
    cap: float
    width: float


@dataclass(frozen=True, slots=True)
class Block:
    """Lines one below another: width, and height from the top of the first capital to the last baseline."""

    lines: tuple[TextLine, ...]
    width: float
    height: float
    baselines: tuple[float, ...]  # below the top of the block


def font_file(face: Face) -> Path:
    """Return the file with which the layout measures and paints a face."""
    return data_directory("site_templates") / "fonts" / "layout" / _FILES[face]


def web_font_file(face: Face) -> Path:
    """Return the compressed file of the same glyphs, for pages and self-contained files."""
    return data_directory("site_templates") / "fonts" / WEB_FILES[face]


@cache
def font(face: Face) -> FT2Font:
    """Return a face opened at the measuring size."""
    opened = FT2Font(str(font_file(face)))
    opened.set_size(_SIZE, 72)
    return opened


@cache
def covers(face: Face, character: str) -> bool:
    """Return whether a face has a character."""
    return font(face).get_char_index(ord(character)) != 0


@lru_cache(maxsize=20_000)
def advance(text: str, face: Face) -> float:
    """Return the width of text over its em size, kerned and unhinted."""
    face_font = font(face)
    face_font.set_text(text, 0, flags=LoadFlags.NO_HINTING)
    return float(face_font.get_width_height()[0] / 64 / _SIZE)


@lru_cache(maxsize=8_000)
def line(text: str, cap: float, face: Face = "lettering") -> TextLine:
    """Return a line of marked text as runs; `{F|z}` is a symbol with subscript, a leading `*` makes the line strong."""
    if text.startswith("*"):
        text, cap = text[1:], cap * STRONG
    runs: list[Run] = []
    position = 0
    for mark in MARK.finditer(text):
        runs += _runs(text[position : mark.start()], face, cap, 0.0)
        runs += _runs(mark[1], "symbol", cap * _SYMBOL, 0.0)
        if mark[2]:
            italic = len(mark[2]) == 1 and mark[2].isalpha()
            scale = _SUBSCRIPT_ITALIC if italic else _SUBSCRIPT_WORD
            runs += _runs(mark[2], "symbol" if italic else face, cap * scale, -_SUBSCRIPT_DROP * cap)
        position = mark.end()
    runs += _runs(text[position:], face, cap, 0.0)
    return TextLine(tuple(runs), cap, sum(run.width for run in runs))


@lru_cache(maxsize=8_000)
def block(lines: tuple[str, ...], cap: float, face: Face = "lettering") -> Block:
    """Return lines of marked text as a block."""
    set_lines = tuple(line(text, cap, face) for text in lines)
    if not set_lines:
        return Block((), 0.0, 0.0, ())
    baselines = [set_lines[0].cap]
    for set_line in set_lines[1:]:
        baselines.append(baselines[-1] + LEADING * set_line.cap)
    return Block(set_lines, max(each.width for each in set_lines), baselines[-1], tuple(baselines))


def plain(text: str) -> str:
    """Return marked text without its marks, a subscript after an underscore."""
    return MARK.sub(lambda mark: f"{mark[1]}_{mark[2]}" if mark[2] else mark[1], text.removeprefix("*"))


def wrapped(text: str, cap: float, width: float, face: Face = "lettering") -> tuple[str, ...]:
    """Return marked text broken at blanks, but not between a number and its unit, into lines no wider than a width."""
    rows: list[str] = []
    reach = 0.0  # of the last line, or more: long lines are measured where they may be too long, words again and again
    size = cap * STRONG if text.startswith("*") else cap
    for word in text.split(" "):
        alone = line(word.removeprefix("*"), size, face).width
        reach += _AT_MOST_A_BLANK * size + alone
        if rows and reach > width:
            reach = line(f"{rows[-1]} {word}", cap, face).width
        if rows and reach <= width:
            rows[-1] += f" {word}"
        else:
            rows.append(word)
            reach = alone
    return tuple(rows)


def _runs(text: str, face: Face, cap: float, rise: float) -> list[Run]:
    """Return text split where a face lacks a character and the next takes over."""
    pieces: list[tuple[str, Face]] = []
    for character in text:
        holder = next((f for f in (face, *_FALLBACK) if covers(f, character)), face)
        if pieces and pieces[-1][1] == holder:
            pieces[-1] = (pieces[-1][0] + character, holder)
        else:
            pieces.append((character, holder))
    em = cap / CAP[face]  # one font-size for the run: a borrowed glyph keeps it, as it does in a browser
    return [Run(piece, holder, em, rise, advance(piece, holder) * em) for piece, holder in pieces]

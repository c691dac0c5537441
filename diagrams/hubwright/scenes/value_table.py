"""What a chart shows as rows of a table: its labelled values, and its curves at the marks of their axis.

Words are those of the scene, so they stand in its unit system.
"""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from hubwright.quantities.formatting import format_number
from hubwright.scenes.vocabulary import Axis, Bar, Curve, Note, Scene, View

_DIGIT = re.compile(r"\d")
_PIECE = re.compile(r"-\d+$")  # one of the pieces of a curve that changes its line on the way
_FIGURES = re.compile(r"-?\d+(?:\.\d+)?")
_LEADS_ON = re.compile(r"(?:[,:]|\bat|\bof|\bby)$")
_EVEN = 1e-6


@dataclass(frozen=True, slots=True)
class ValueRow:
    """A labelled value: what it is, and the value with what is said of it."""

    name: str
    words: str


@dataclass(frozen=True, slots=True)
class CurveTable:
    """Curves over one axis: a head for each column, and at each mark of the axis a number for each curve."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def value_rows(scene: Scene) -> tuple[ValueRow, ...]:
    """Return the labelled values of a scene's charts, in drawing order."""
    bars = [item for item in scene.items if isinstance(item, Bar) and item.label is not None]
    barred = {bar.view for bar in bars}
    notes = [item for item in scene.items if isinstance(item, Note) and item.label.anchor is not None]
    rows: list[ValueRow] = []
    for bar in bars:
        lines = bar.label.lines if bar.label else ()
        near = sorted(
            (_off(note, bar), index)
            for index, note in enumerate(notes)
            if note.view == bar.view and _off(note, bar) < bar.thick
        )
        words = "" if not near else _joined(notes[near[0][1]].label.lines)
        over = f"{_title(scene, bar.view)}: " if len(barred) > 1 and _title(scene, bar.view) else ""
        # a bar's words may say it all, its value for a second time beside it
        rows_of_bar = [ValueRow(_joined(lines), words)] if words and words not in _joined(lines) else list(_rows(lines))
        rows += [ValueRow(over + row.name, row.words) for row in rows_of_bar]
    curved = {item.view for item in scene.items if isinstance(item, Curve)}
    for note in notes:
        if note.view in curved - barred:
            rows += _rows(note.label.lines)
    return tuple(row for row in rows if row.words)


def _off(note: Note, bar: Bar) -> float:
    """Return how far words stand above or below a bar."""
    return abs(note.label.anchor[1] - bar.at) if note.label.anchor is not None else float("inf")


def _title(scene: Scene, view: str) -> str:
    return next((item.title for item in scene.items if isinstance(item, Axis) and item.view == view and item.title), "")


def _rows(lines: tuple[str, ...]) -> Iterator[ValueRow]:
    """Yield what the lines of a label say: a value with its name before or after it, or several of them."""
    said = [line.removeprefix("*") for line in lines]
    if said and _DIGIT.search(said[0]):
        mark = next((mark for mark in (": ", " = ") if mark in said[0]), None)
        if mark is None:
            yield ValueRow(_joined(said[1:]), said[0])
        else:
            name, _, value = said[0].partition(mark)
            yield ValueRow(name, _joined([value, *said[1:]]))
        return
    names: list[str] = []
    words: list[str] = []
    for line in said:
        if _DIGIT.search(line):
            words.append(line)
        elif words:
            yield ValueRow(" ".join(names), _joined(words))
            names, words = [line], []
        else:
            names.append(line)
    yield ValueRow(" ".join(names), _joined(words))


def _joined(lines: Sequence[str]) -> str:
    """Return lines as one sentence, with a comma where a line does not lead on to the next."""
    text = ""
    for line in lines:
        text += ("" if not text else " " if _LEADS_ON.search(text) else ", ") + line.removeprefix("*")
    return text


def curve_tables(scene: Scene) -> tuple[CurveTable, ...]:
    """Return a table for every view that has curves over an axis whose marks are numbers."""
    return tuple(table for view in scene.views if (table := _of_view(scene, view)) is not None)


def _of_view(scene: Scene, view: View) -> CurveTable | None:
    items = [item for item in scene.items if item.view == view.name]
    axes = [item for item in items if isinstance(item, Axis) and item.title]
    along = next((axis for axis in axes if axis.direction == "horizontal"), None)
    upright = next((axis for axis in axes if axis.direction == "vertical"), None)
    pieces: dict[str, list[tuple[float, float]]] = {}
    for item in items:
        if isinstance(item, Curve) and item.points:
            pieces.setdefault(_PIECE.sub("", item.name), []).extend(item.points)
    number = None if upright is None else _reading(upright)
    if along is None or upright is None or number is None or not pieces:
        return None
    marks = [(place, words) for place, words in along.marks if words]
    if len({words for _, words in marks}) < len(marks):  # to both sides of zero, where words on the axis say which
        marks = [(place, f"\u2212{words}" if place < 0 else words) for place, words in marks]
    names = tuple(name.removeprefix("curve-").replace("-", " ") for name in pieces)
    rows = []
    for place, words in marks:
        cells = []
        for points in pieces.values():
            xs, ys = np.array(sorted(points)).T
            inside = xs[0] - _EVEN <= place <= xs[-1] + _EVEN
            cells.append(_written(number(float(np.interp(place, xs, ys)))) if inside else "")
        rows.append((words, *cells))
    return CurveTable((f"{along.title} → {upright.title}", *names), tuple(rows))


def _reading(axis: Axis) -> Callable[[float], float] | None:
    """Return what an axis reads at a place: even or in powers of ten, as its own marks tell; nothing if neither."""
    marks = [(place, _number(words)) for place, words in axis.marks if words]
    if len(marks) < 2 or any(value is None for _, value in marks):
        return None
    places, values = np.array(marks, dtype=float).T
    slope, rest = np.polyfit(places, values, 1)
    if np.allclose(slope * places + rest, values, atol=_EVEN * np.abs(values).max()):
        return lambda place: float(slope * place + rest)
    if (values > 0).all() and np.allclose(10.0**places, values, rtol=1e-3):
        return lambda place: float(10.0**place)
    return None


def _written(value: float) -> str:
    return format_number(value)


def _number(words: str) -> float | None:
    found = _FIGURES.match(words.replace(",", "").replace("\u2212", "-"))
    return float(found[0]) if found else None

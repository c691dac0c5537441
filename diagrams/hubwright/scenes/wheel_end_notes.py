"""The names of parts in the wheel-end section: which parts are named, and how many a column can hold."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from hubwright.quantities import format_quantity
from hubwright.scenes.vocabulary import Item, Label, Note, Point, Tone
from hubwright.scenes.wheel_end_drawn import Drawn, Place

_SIZE = 2.4
_LEADING, _GAP = 1.62, 3.4  # height of a line over its cap height; gap between blocks [sheet mm]


def notes(d: Drawn, items: Sequence[Item]) -> list[Item]:
    """Return notes for the columns; forces' labels come first, then as many part names as there is room for."""
    return _whole_notes(d, items) + _detail_notes(d, items)


def _height(lines: int, size: float) -> float:
    return lines * size * _LEADING + _GAP


def _taken(items: Sequence[Item], view: str, place: str) -> float:
    """Return how much of a column the labels of forces take."""
    total = 0.0
    for item in items:
        label: Label | None = getattr(item, "label", None)
        if item.view == view and label is not None and label.place == place:
            total += _height(len(label.lines), label.size)
    return total


def _note(
    d: Drawn, name: str, view: str, at: Point, text: str, place: Place, *, room: float = 0.0, also: Sequence[Point] = ()
) -> Note:
    """Return a part's name with a leader that ends in a dot on it, or as far above or below as the part has room.

    It may end at the points of `also` as well.
    """
    anchor = (d.layout.side * at[0], at[1])
    # parts of the detail turned on a lathe look the same below the axis
    points = [(anchor[0], -at[1])] if view == "detail" and name != "knuckle" else []
    points += [(anchor[0], at[1] + step) for step in (room, -room) if room]
    points += [(d.layout.side * y, z) for y, z in also]
    lines = tuple(text.split("\n"))
    label = Label(lines, place, anchor=anchor, tone="soft", size=_SIZE, leader_dot=True, also=tuple(points))
    return Note(f"label-{name}", view, 1, label=label, level=30.0)


def _of_line(note: Note, step: int, tone: Tone) -> Note:
    """Return the note as that of a line: no dot, in its colour, drawn in its step."""
    return replace(note, step=step, label=replace(note.label, tone=tone, leader_dot=False))


def _fill(candidates: Sequence[Note], room: float) -> list[Item]:
    chosen: list[Item] = []
    for note in candidates:
        height = _height(len(note.label.lines), note.label.size)
        if height <= room:
            chosen.append(note)
            room -= height
    return chosen


def _whole_notes(d: Drawn, items: Sequence[Item]) -> list[Item]:
    at, m, place = d.parts.anchors, d.parts.measures, d.outboard_column
    size = d.words.results.setup.tire.size
    column = d.layout.columns()[0]
    room = column.high - column.low - _taken(items, "whole", place)
    load_line, *along = ((m.load_line, -share * d.parts.wheel.floor) for share in (0.62, 0.75, 0.5))
    wanted = [
        _of_line(_note(d, "load-line", "whole", load_line, "Load line", place, also=along), 5, "load"),
        _note(d, "tire", "whole", at["sidewall"], f"Tire {_plain(size)}" if size else "Tire", place),
    ]
    if not d.words.hanging and d.words.state.kind != "ledge":
        y = m.load_line + 0.8 * d.parts.below.tread_half_width
        foot = (y, -m.loaded_radius - 1.6 / d.layout.whole.scale)
        text = "Contact pressure:\nits arrows add up to {F|z}"
        wanted.append(_of_line(_note(d, "contact-pressure", "whole", foot, text, place), 2, "load"))
    wanted += [
        _note(d, "wheel-disc", "whole", at["wheel-disc"], "Wheel disc", place),
        _note(d, "rim", "whole", at["rim"], "Rim", place),
        _note(d, "stud", "whole", at["stud"], "Stud and nut", place),
    ]
    if "brake-disc" in at:
        wanted.append(_note(d, "brake-disc", "whole", at["brake-disc"], "Brake disc", place))
    wanted += [
        _note(d, "bead", "whole", at["bead"], "Bead, wire core", place),
        _note(d, "tread", "whole", at["tread"], "Tread, belts", place),
    ]
    return _fill(wanted, room)


def _detail_notes(d: Drawn, items: Sequence[Item]) -> list[Item]:
    at, bearing = d.parts.anchors, d.parts.measures.bearing
    rollers = bearing.kind == "tapered pair"
    inboard, outboard = d.inboard_column, d.outboard_column
    columns = d.layout.columns()
    # tall labels push the names about: with fewer names no leaders need cross
    room = columns[2].high - columns[2].low - 1.3 * _taken(items, "detail", inboard)
    outer = "Outer ring" if not rollers else "Cup"
    inner = "Inner ring" if not rollers else "Cone"
    turns, stands = ("turns", "stands still")
    carrier = "Knuckle" if d.words.results.setup.kind == "vehicle" else "Axle"
    wanted = [
        _note(d, "elements", "detail", at["element"], _elements(d), inboard, room=0.3 * bearing.element),
        _note(
            d, "outer-ring", "detail", at["outer-ring"], f"{outer}: {turns if bearing.outer_turns else stands}", inboard
        ),
        _note(
            d, "inner-ring", "detail", at["inner-ring"], f"{inner}: {stands if bearing.outer_turns else turns}", inboard
        ),
        _note(d, "knuckle", "detail", _in_carrier(d), carrier, inboard),
    ]
    if d.words.results.bearing.effective_spread is not None:
        wanted.append(_contact_line_note(d, inboard))
    if "spindle" in at:
        wanted += [
            _note(d, "spindle", "detail", at["spindle"], "Spindle", inboard, also=_along_shaft(at["spindle"])),
            _note(d, "hub-barrel", "detail", at["hub-barrel"], "Hub", inboard),
        ]
    else:
        name, step = ("Drive shaft", 5.0) if d.parts.measures.driven else ("Hub bolt", 3.0)  # its head is short
        wanted += [
            _note(d, "shaft", "detail", at["shaft"], name, inboard, also=_along_shaft(at["shaft"], step)),
            _note(d, "hub-spindle", "detail", at["hub-spindle"], "Hub spindle", inboard),
        ]
    if "seal" in at:
        wanted.append(_note(d, "seal", "detail", at["seal"], "Seal", inboard))
    inside = columns[1].high - columns[1].low - _taken(items, "detail", outboard)
    named = [
        ("spacer", "Spacer"),
        ("brake-hat", "Brake disc"),
        ("wheel-pad", "Wheel disc"),
        ("hub-flange", "Hub flange"),
        ("dust-cap", "Dust cap"),
    ]
    # plates side by side: each has room for a leader that would pass its neighbour's end
    beside = [
        _note(d, f"detail-{key}", "detail", at[key], text, outboard, room=0.0 if key == "dust-cap" else 2.5)
        for key, text in named
        if key in at
    ]
    return _fill(wanted, room) + _fill(beside, inside)


def _contact_line_note(d: Drawn, place: Place) -> Note:
    start, end = d.parts.bearing.contact_lines[1]
    at, *along = (
        (start[0] + share * (end[0] - start[0]), -(start[1] + share * (end[1] - start[1])))
        for share in (0.78, 0.9, 0.66, 0.55)
    )
    also = [(y, sense * z) for y, z in along for sense in (1.0, -1.0)]
    angle = format_quantity(d.parts.measures.bearing.angle, "angle", d.words.units)
    text = f"Contact line, {angle}:\nit meets the axis\noutside the row"
    return _of_line(_note(d, "contact-line", "detail", at, text, place, also=also), 6, "reaction")


def _elements(d: Drawn) -> str:
    """Return what rolls, how many and how large; only what the data say."""
    bearing, m, words = d.words.results.setup.bearing, d.parts.measures.bearing, d.words
    name = "rollers" if m.kind == "tapered pair" else "balls"
    count = bearing.elements_per_row
    if count is None or bearing.element_diameter is None or bearing.pitch_diameter is None:
        return f"Tapered {name}" if m.kind == "tapered pair" else name.capitalize()
    size = words.length(bearing.element_diameter)
    return f"{count} {name} a row,\n{size} on {words.length(bearing.pitch_diameter)}"


def _along_shaft(at: Point, step: float = 5.0) -> list[Point]:
    """Return other places in a shaft, along and across it, for a leader that would pass another's end."""
    return [
        (at[0] + along, across * at[1])
        for across in (1.0, -1.0, 0.6, -0.6, 1.6, -1.6)
        for along in (step, -step, *((0.0,) if abs(across) != 1.0 else ()))
    ]


def _in_carrier(d: Drawn) -> Point:
    """Return a place in the part that holds the bearing: where it leaves the detail's frame, half its way across."""
    detail, at = d.layout.detail, d.parts.anchors["knuckle"]
    assert detail.frame is not None
    height = min(at[1], 0.86 * (detail.frame[3] - detail.origin[1]) / detail.scale)
    ring = next(piece for piece in d.parts.pieces if piece.name == "knuckle").rings[0]
    ends = zip(ring, np.roll(ring, -1, axis=0), strict=True)
    edges = [
        y0 + (height - z0) / (z1 - z0) * (y1 - y0) for (y0, z0), (y1, z1) in ends if min(z0, z1) <= height < max(z0, z1)
    ]
    return (float(min(edges) + max(edges)) / 2 if edges else at[0]), height


def _plain(size: str) -> str:
    """Return a tire's size without the marks that follow it."""
    return size.split()[0]

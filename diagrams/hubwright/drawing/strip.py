"""The strip at the foot of a figure: axes, scale bars of lengths and forces, and the key.

Sheet millimetres.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from hubwright.drawing.arrows import force_marks, moment_marks
from hubwright.drawing.faces import line
from hubwright.drawing.geometry import Box, hatching, rectangle
from hubwright.drawing.marks import Group, Lettering, Mark, Shape
from hubwright.drawing.palette import material_token
from hubwright.drawing.symbols import STYLES, axes_marks
from hubwright.quantities import POUND_FORCE
from hubwright.scenes.vocabulary import KeyEntry, Material, Role, ScaleBar, Scene, Tone, View

_MARGIN = 10.0
_BASE = 12.0  # height of the upper bar
_CAP = 2.3
_SECOND_BAR = 4.0
_INCH = 25.4  # mm
_LONGEST, _LONGEST_FORCE = 22.0, 12.0  # of a bar on the sheet
_METRIC = (1, 2, 5, 10, 20, 25, 50, 100, 200, 500, 1000, 2000, 5000)
_INCHES = (0.0625, 0.125, 0.25, 0.5, 1, 2, 4, 6, 12, 24, 48, 120, 240)
_SWATCH = 9.0
_ROLES: dict[str, Role] = {"reaction": "reaction", "reaction moment": "reaction", "resultant": "resultant"}


@dataclass(frozen=True, slots=True)
class Strip:
    """The strip's groups, and the boxes that they fill."""

    groups: tuple[Group, ...]
    boxes: tuple[tuple[str, Box], ...]


def draw_strip(scene: Scene) -> Strip:
    """Return axes and bars from the left, the key at the right; the key in up to four rows on a narrow sheet."""
    width = scene.size[0]
    groups: list[Group] = []
    boxes: list[tuple[str, Box]] = []
    x = _MARGIN
    if scene.axes != "none":
        mirrored = any(view.mirrored for view in scene.views)
        leftward = scene.axes == "rear" or mirrored
        origin = (x + (11.5 if leftward else 3.0), 9.0)
        groups.append(Group("axes", axes_marks(origin, kind=scene.axes, mirrored=mirrored)))
        boxes.append(("axes", (x, 4.0, x + 24.0, 21.0)))
        x += 31.0
    bars = [_bar(bar, scene.view(bar.view), units=scene.units) for bar in scene.scale_bars]
    rows = 2
    spare = width - _MARGIN - x - sum(bar.width for bar in bars) - _key_width(scene.key, rows)
    while spare < 4.0 * (len(bars) + 1) and rows < 4:
        rows += 1
        spare = width - _MARGIN - x - sum(bar.width for bar in bars) - _key_width(scene.key, rows)
    gap = min(10.0, max(3.0, spare / (len(bars) + 1)))
    for bar in bars:
        groups.append(Group(f"scale-{bar.name}", bar.marks(x)))
        boxes.append((f"scale-{bar.name}", (x, 6.0, x + bar.width, _BASE + 6.0)))
        x += bar.width + gap
    if scene.key:
        key_width = _key_width(scene.key, rows)
        left = max(x, width - _MARGIN - key_width) if bars or scene.axes != "none" else _MARGIN
        groups.append(Group("key", tuple(_key(scene.key, rows, left))))
        boxes.append(("key", (left, 5.0, left + key_width, 20.0)))
    return Strip(tuple(groups), tuple(boxes))


@dataclass(frozen=True, slots=True)
class _Bar:
    """Two bars, one per unit system, the reader's own first."""

    name: str
    caption: str
    lengths: tuple[float, float]
    texts: tuple[str, str]
    divided: tuple[int, int]  # fields; 0 is a plain line with end strokes

    @property
    def width(self) -> float:
        label = max(line(text, _CAP).width for text in self.texts)
        return max(max(self.lengths) + 2.0 + label, line(self.caption, _CAP).width)

    def marks(self, x: float) -> tuple[Mark, ...]:
        """Return the bars from x on."""
        marks: list[Mark] = [Lettering((x, _BASE + 3.4), line(self.caption, _CAP), "soft")]
        levels = ((_BASE, "ink"), (_BASE - _SECOND_BAR, "soft"))
        for length, text, fields, (y, colour) in zip(self.lengths, self.texts, self.divided, levels, strict=True):
            if fields:
                cuts = np.linspace(x, x + length, fields + 1)
                boxes = [rectangle((a, y, b, y + 1.1)) for a, b in pairwise(cuts)]
                marks.append(Shape(tuple(boxes[::2]), True, colour, colour, 0.18, exact=True))
                marks.append(Shape(tuple(boxes[1::2]), True, "paper", colour, 0.18, exact=True))
            else:
                rule = np.array([[x, y + 0.55], [x + length, y + 0.55]])
                ends = tuple(np.array([[e, y - 0.15], [e, y + 1.25]]) for e in (x, x + length))
                marks.append(Shape((rule, *ends), line=colour, width=0.3, cap="butt", exact=True))
            written = line(text, _CAP)
            marks.append(Lettering((x + max(self.lengths) + 2.0, y + 0.55 - _CAP / 2), written, colour))
        return tuple(marks)


def _bar(bar: ScaleBar, view: View, *, units: str) -> _Bar:
    name = f"{bar.quantity}-{bar.view}"
    if bar.quantity == "length":
        metric = _longest(_METRIC, 1.0 / view.scale, _LONGEST)
        inches = _nearest(_INCHES, metric / _INCH)
        texts = (f"{metric:g} mm" if metric < 1000 else f"{metric / 1000:g} m", _inch_text(inches))
        lengths, divided = (metric * view.scale, inches * _INCH * view.scale), (5, 4)
    else:
        if view.newtons_per_mm is None:
            raise ValueError(f"the view '{view.name}' has a bar of forces and no force scale")
        newtons = _longest(_ROUND, view.newtons_per_mm, _LONGEST_FORCE)
        pounds = _nearest(_ROUND, newtons / POUND_FORCE)
        texts = (f"{newtons / 1000:g} kN" if newtons >= 1000 else f"{newtons:g} N", f"{pounds:,g} lbf")
        lengths, divided = (newtons / view.newtons_per_mm, pounds * POUND_FORCE / view.newtons_per_mm), (0, 0)
    if units == "us":
        lengths, texts, divided = lengths[::-1], texts[::-1], divided[::-1]
    return _Bar(name, bar.caption, lengths, texts, divided)


_ROUND = tuple(m * 10.0**k for k in range(-4, 6) for m in (1, 2, 5))


def _longest(choices: Sequence[float], per_mm: float, longest: float) -> float:
    fitting = [choice for choice in choices if choice / per_mm <= longest]
    return fitting[-1] if fitting else choices[0]


def _nearest(choices: Sequence[float], value: float) -> float:
    return min(choices, key=lambda choice: abs(choice / value - 1.0) if choice > value else abs(value / choice - 1.0))


def _inch_text(inches: float) -> str:
    if inches < 1:
        return {0.0625: "1/16 in", 0.125: "1/8 in", 0.25: "1/4 in", 0.5: "1/2 in"}[inches]
    return f"{inches:g} in" if inches < 24 else f"{inches / 12:g} ft"


def _key_columns(entries: Sequence[KeyEntry], rows: int) -> list[float]:
    widths = [_SWATCH + 2.5 + line(entry.text, _CAP).width for entry in entries]
    return [max(widths[i : i + rows]) for i in range(0, len(widths), rows)]


def _key_width(entries: Sequence[KeyEntry], rows: int) -> float:
    columns = _key_columns(entries, rows)
    return sum(columns) + 5.0 * max(len(columns) - 1, 0)


def _key(entries: Sequence[KeyEntry], rows: int, left: float) -> list[Mark]:
    pitch = 6.6 if rows == 2 else 4.6
    top = _BASE - 2.9 + pitch * (rows - 1) / 2 + 1.0
    marks: list[Mark] = []
    x = left
    for column, width in enumerate(_key_columns(entries, rows)):
        for row, entry in enumerate(entries[column * rows : (column + 1) * rows]):
            y = top - pitch * row
            marks += _swatch(entry, x, y)
            marks.append(Lettering((x + _SWATCH + 2.5, y - _CAP / 2), line(entry.text, _CAP), "ink"))
        x += width + 5.0
    return marks


def _swatch(entry: KeyEntry, x: float, y: float) -> list[Mark]:
    role = _ROLES.get(entry.kind, "applied")
    if entry.kind in ("load", "reaction", "resultant"):
        return list(force_marks((x, y), (x + _SWATCH, y), role=role, halo=False))
    if entry.kind in ("moment", "reaction moment"):
        return list(moment_marks((x + 4.6, y + 0.7), 2.8, counter_clockwise=True, role=role, halo=False))
    if entry.kind == "weight":
        return list(force_marks((x + _SWATCH / 2, y + 2.2), (x + _SWATCH / 2, y - 2.2), role="applied", halo=False))
    if entry.kind in ("load line", "slip plane", "hidden"):
        slips = entry.kind == "slip plane"
        width, dashes = STYLES["centre" if entry.kind == "load line" else "hidden"]
        points = np.array([[x, y], [x + _SWATCH + 0.4, y]])
        if entry.kind == "hidden":
            return [Shape((points,), line="soft", width=width, dashes=dashes, cap="butt")]
        tone: Tone = "reaction" if slips else "load"
        return [Shape((points,), line=tone, width=0.6 if slips else width + 0.07, dashes=dashes, cap="butt")]
    materials: dict[str, Material] = {"turning": "turning", "fixed": "fixed", "changed": "changed"}
    ring = rectangle((x, y - 1.6, x + _SWATCH, y + 1.6))
    strokes = hatching([ring], 1.1, 45.0)
    outline = "changed" if entry.kind == "changed" else "ink"
    return [
        Shape((ring,), closed=True, fill=material_token(materials[entry.kind])),
        Shape(tuple(strokes), line="hatch", width=0.13, cap="butt"),
        Shape((ring,), closed=True, line=outline, width=0.2, mitred=True),
    ]

"""The sheet while a scene is drawn on it: names, obstacles, texts, and labels that ask for a place."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from math import dist, hypot

import numpy as np

from hubwright.drawing.faces import block, line, plain
from hubwright.drawing.geometry import Array, Box, Segment, rounded_box
from hubwright.drawing.marks import Disc, Group, Lettering, Mark, Shape, TextBox
from hubwright.drawing.obstacles import Callout, Ground, Kind, Obstacle, Placed, Wanted
from hubwright.drawing.palette import line_token, text_token
from hubwright.scenes import vocabulary as v

TEXT_HALO = 0.9
_LEADER, _LEADER_HALO = 0.2, 0.6
_BALLOON, _BALLOON_CAP, _BALLOON_LINE = 2.7, 2.9, 0.3
_FRAME_INSET = 1.2
_PREFIXES = ("force-", "reaction-", "moment-", "dimension-", "part-", "label-", "bar-", "callout-")
_POINTER = 2.6, 1.15  # length and width of the head of a callout's pointer
_ROUNDED = 1.2  # corners of a remark's frame


@dataclass
class Sheet:
    """What is gathered while the items of a scene are drawn."""

    scene: v.Scene
    ground: Ground
    letters: Mapping[str, str] | None = None  # by item: on a narrow sheet a letter in a ring stands for the label
    wanted: list[Wanted] = field(default_factory=list)
    texts: list[TextBox] = field(default_factory=list)
    names: dict[str, int] = field(default_factory=dict)
    circles: dict[str, tuple[v.Point, float]] = field(default_factory=dict)  # centre and radius of round symbols

    def plain_name(self, item: v.Item, prefix: str) -> str:
        """Return what an item's group is called if no other is called so: its name, with what says what it is."""
        return item.name if item.name.startswith(_PREFIXES) else prefix + item.name

    def group_name(self, item: v.Item, prefix: str) -> str:
        """Return the name of an item's group."""
        return self.unique(self.plain_name(item, prefix))

    def unique(self, name: str) -> str:
        """Return a name that no other group has."""
        self.names[name] = self.names.get(name, 0) + 1
        return name if self.names[name] == 1 else f"{name}-{self.names[name]}"

    def keep_off(self, name: str, kind: Kind, points: Segment, margin: float = 0.0) -> None:
        """Make labels keep off a segment."""
        x0, x1 = sorted((points[0], points[2]))
        y0, y1 = sorted((points[1], points[3]))
        straight = x0 == x1 or y0 == y1
        box = (x0 - margin, y0 - margin, x1 + margin, y1 + margin)
        self.ground.obstacles.append(Obstacle(name, kind, box, None if straight else points))

    def keep_off_box(self, name: str, kind: Kind, box: Box) -> None:
        """Make labels keep off a box."""
        self.ground.obstacles.append(Obstacle(name, kind, box))

    def write(self, name: str, words: str, box: Box) -> None:
        """Note where words stand, so that labels keep off them and checks find them."""
        self.keep_off_box(name, "text", box)
        self.texts.append(TextBox(name, words, box))

    def want(
        self,
        item: v.Item,
        label: v.Label | None,
        *,
        owner: str,
        view: v.View,
        points: tuple[v.Point, ...],
        box: Box,
        tail: tuple[v.Point, v.Point] | None = None,
        callout: Callout = "",
    ) -> None:
        """Ask for a place for an item's label: `points` are where its leader may end, the best first."""
        if label is None or not label.lines:
            return
        if label.anchor is not None:
            points = (view.on_sheet(label.anchor),)
        points += tuple(view.on_sheet(point) for point in label.also)
        if view.frame is not None:  # what lies beyond the frame is cut off: a leader ends at what shows
            points = tuple(_within(point, view.frame) for point in points)
        name = owner if owner.startswith("label-") else self.unique(f"label-{owner}")
        if callout == "ring" and (self.letters is None or item.name in self.letters):
            set_block, balloon = block((f"*{label.lines[0].removeprefix('*')}",), _BALLOON_CAP), _BALLOON
        elif self.letters is None:
            set_block, balloon = block(label.lines, label.size), 0.0
        elif item.name in self.letters:
            set_block, balloon = block((self.letters[item.name],), _BALLOON_CAP), _BALLOON
        else:
            return
        self.wanted.append(Wanted(name, owner, label, set_block, points, box, tail, balloon, callout))

    def label_group(self, placed: Placed) -> Group:
        """Return the marks of a label in its place, and note where its words stand."""
        label = placed.wanted.label
        words = " ".join(plain(text) for text in label.lines)
        self.texts.append(TextBox(placed.wanted.name, words, placed.box))
        marks = _leader(placed, _up_to(placed.leader, self.circles.get(placed.wanted.owner)))
        marks += _balloon(placed) if placed.wanted.balloon else _words(placed)
        return Group(placed.wanted.name, tuple(marks))


def _within(point: v.Point, frame: Box) -> v.Point:
    x0, y0, x1, y1 = frame
    return (
        min(max(point[0], x0 + _FRAME_INSET), x1 - _FRAME_INSET),
        min(max(point[1], y0 + _FRAME_INSET), y1 - _FRAME_INSET),
    )


def _up_to(leader: tuple[v.Point, ...], circle: tuple[v.Point, float] | None) -> tuple[v.Point, ...]:
    """Return a leader as far as the edge of the round symbol that it names: within, it would strike it out."""
    if not leader or circle is None:
        return leader
    (x, y), radius = circle
    if dist(leader[-1], circle[0]) > 0.9 * radius:  # it ends there already
        return leader
    before = leader[-2]
    away = dist(before, circle[0])
    if away <= radius:
        return ()
    share = radius / away
    return (*leader[:-1], (x + share * (before[0] - x), y + share * (before[1] - y)))


def _leader(placed: Placed, leader: tuple[v.Point, ...]) -> list[Mark]:
    """Return a leader over a paper edge that keeps it clear of what it crosses."""
    if not leader:
        return []
    label = placed.wanted.label
    colour = text_token(label.tone) if label.tone not in ("ink", "soft", "faint") else "soft"
    points = np.array(leader)
    marks: list[Mark] = [
        Shape((points,), line="paper", width=_LEADER_HALO, cap="butt"),
        Shape((points,), line=colour, width=_LEADER),
    ]
    if placed.wanted.callout:
        marks.append(_pointer(points[-2], points[-1], colour))
    elif label.leader_dot:
        marks.append(Disc(leader[-1], 0.42, colour, "paper", 0.12))
    return marks


def _pointer(start: Array, tip: Array, colour: str) -> Shape:
    """Return the head at the end of a callout's pointer."""
    along = (tip - start) / (hypot(*(tip - start)) or 1.0)
    across = np.array([-along[1], along[0]]) * _POINTER[1] / 2
    base = tip - along * _POINTER[0]
    return Shape((np.array([tip, base + across, base - across]),), closed=True, fill=colour)


def _words(placed: Placed) -> list[Mark]:
    label, set_block = placed.wanted.label, placed.wanted.block
    marks: list[Mark] = []
    halo = 0.0 if label.place.endswith("column") else TEXT_HALO
    if placed.wanted.margin:
        halo = 0.0
        marks.append(Shape((rounded_box(placed.box, _ROUNDED),), True, "paper", line_token(label.tone), 0.25))
    share = {"left": 0.0, "centre": 0.5, "right": 1.0}[placed.align]
    for each, down in zip(set_block.lines, set_block.baselines, strict=True):
        x = placed.left + placed.wanted.margin + share * (set_block.width - each.width)
        marks.append(Lettering((x, placed.top - placed.wanted.margin - down), each, text_token(label.tone), halo=halo))
    return marks


def _balloon(placed: Placed) -> list[Mark]:
    tone = placed.wanted.label.tone
    radius = placed.wanted.balloon
    centre = (placed.left + radius, placed.top - radius)
    letter = placed.wanted.block.lines[0]
    at = (centre[0] - letter.width / 2, centre[1] - 0.37 * letter.cap)
    return [
        Disc(centre, radius - _BALLOON_LINE / 2, "paper", line_token(tone), _BALLOON_LINE),
        Lettering(at, line(letter.runs[0].text, letter.cap), text_token(tone)),
    ]

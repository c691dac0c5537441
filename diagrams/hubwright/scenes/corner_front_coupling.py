"""What a trailer's coupling holds, seen from the rear: upright and across, each arrow with its number below the road.

Sheet millimetres.
"""

import math
from dataclasses import replace
from typing import Literal

from hubwright.scenes.corner_front_lines import equation, largest
from hubwright.scenes.corner_front_words import RollWording
from hubwright.scenes.small_forces import visible
from hubwright.scenes.vocabulary import LENGTH_OFF_SCALE, Force, Item, Label, Point, View

_SIZES = 2.4, 2.2  # of the words, if possible the first
_CLEAR, _BELOW = 0.8, 3.2  # of words from the upright arrow, more than to a point, and from the road down
_LINE = 4.0  # height of a line of words
_APART = 5.2  # what words leave of the room between the coupling and a wheel's arrow


def coupling_held(words: RollWording, view: View, *, aside: Literal["left", "right"]) -> list[Item]:
    """Return the forces at the coupling; the words of the upright one stand aside, those of the level one opposite."""
    force, way = words.body.coupling, -1.0 if aside == "left" else 1.0
    room = min(abs(wheel.y) for wheel in words.body.wheels) * view.scale - _APART
    upward, level = ("{N|coupling}", words.told("coupling z")), ("{S|coupling}", words.told("coupling y"))
    size = largest(((f"*{upward[0]} = {upward[1]}", room), (f"{level[0]} = {level[1]}", room)), _SIZES)
    items: list[Item] = []
    if not words.nothing(force.z):
        held = () if force.z > 0 else ("held down",)
        label = Label((*equation(*upward, room, size=size), *held), aside, tone="reaction", size=size)
        upright = visible(
            Force("reaction-coupling", view.name, 4, vector=(0.0, force.z), role="reaction", label=label, level=5), view
        )
        # below the road, whichever way and however long the arrow
        rise = math.copysign(_length(upright, view) / 2, force.z)
        items.append(_beside(upright, (way * _CLEAR, rise)))
    if not words.nothing(force.y):
        opposite: Literal["left", "right"] = "right" if aside == "left" else "left"
        label = Label(equation(*level, room, size=size, strong=False), opposite, tone="reaction", size=size)
        across = visible(
            Force(
                "reaction-coupling-across",
                view.name,
                words.across_step,
                vector=(force.y, 0.0),
                role="reaction",
                tip_at_point=False,
                label=label,
                level=5,
            ),
            view,
        )
        # under the arrow if it points to that side, where else beside its tail
        reach = _length(across, view) if RollWording.way(force.y) == opposite else 0.0
        items.append(_beside(across, (way * (reach - _CLEAR), 0.0)))
    return items


def _length(force: Force, view: View) -> float:
    """Return how long an arrow is as shown."""
    return math.hypot(*force.vector) / (view.newtons_per_mm or 1.0) if force.to_scale else LENGTH_OFF_SCALE


def _beside(force: Force, by: Point) -> Force:
    """Return a force with its words below the road, so far aside and down from the middle of its arrow."""
    assert force.label is not None
    down = _BELOW + len(force.label.lines) * _LINE / 2
    return replace(force, label=replace(force.label, nudge=(by[0], by[1] - down)))

"""What a trailer's coupling holds, seen from the rear: upright and across, each arrow with its number below the road.

Sheet millimetres.
"""

import math
from dataclasses import replace
from typing import Literal

from hubwright.scenes.corner_front_words import RollWording
from hubwright.scenes.small_forces import visible
from hubwright.scenes.vocabulary import LENGTH_OFF_SCALE, Force, Item, Label, View

_SIZE = 2.4  # of the words
_CLEAR = 2.4  # from the upright arrow to the words of the level one
_LINE = 4.0  # height of a line of words


def coupling_held(words: RollWording, view: View, *, aside: Literal["left", "right"]) -> list[Item]:
    """Return the forces at the coupling; the words of the upright one stand aside, those of the level one opposite."""
    force, way = words.body.coupling, -1.0 if aside == "left" else 1.0
    items: list[Item] = []
    if not words.nothing(force.z):
        held = () if force.z > 0 else ("held down",)
        label = Label(("*{N|coupling} =", f"*{words.told('coupling z')}", *held), aside, tone="reaction", size=_SIZE)
        upright = visible(
            Force("reaction-coupling", view.name, 4, vector=(0.0, force.z), role="reaction", label=label, level=5), view
        )
        assert upright.label is not None
        # below the road, whichever way and however long the arrow
        length = abs(force.z) / (view.newtons_per_mm or 1.0) if upright.to_scale else LENGTH_OFF_SCALE
        down = 3.2 + len(upright.label.lines) * _LINE / 2
        nudge = (way * 0.8, math.copysign(length / 2, force.z) - down)
        items.append(replace(upright, label=replace(upright.label, nudge=nudge)))
    if not words.nothing(force.y):
        told = ("{S|coupling} =", words.told("coupling y"))
        across = Force(
            "reaction-coupling-across",
            view.name,
            words.across_step,
            vector=(force.y, 0.0),
            role="reaction",
            tip_at_point=False,
            label=Label(told, "below", tone="reaction", size=_SIZE, nudge=(-way * _CLEAR, 0.0)),
            level=5,
        )
        items.append(visible(across, view))
    return items

"""The one way in which figures show a force whose arrow would be too short to see: not to scale, and said to be so.

Sheet millimetres. A lens at a larger force scale comes first where a scene has room for one.
"""

from dataclasses import replace
from math import hypot

from hubwright.scenes.vocabulary import LENGTH_OFF_SCALE, NOT_TO_SCALE, Force, View

LEAST_ARROW = 1.2  # of one to scale: what shows as an arrow on a printed sheet


def visible(force: Force, view: View, *, least: float = LEAST_ARROW) -> Force:
    """Return a force as it is, or, if its arrow were too short to see, one of a fixed length whose label says so."""
    size = hypot(*force.vector)
    if not force.label or not force.label.lines or not is_small(size, view.newtons_per_mm or 1.0, least=least):
        return force
    label = replace(force.label, lines=(*force.label.lines, NOT_TO_SCALE))
    return replace(force, label=label, to_scale=False)


def length(newtons: float, newtons_per_mm: float) -> float:
    """Return how long the arrow of a force is when it is shown by `visible`.

    >>> length(3000.0, 100.0), length(-100.0, 100.0), length(0.0, 100.0)
    (30.0, 8.5, 0.0)
    """
    return LENGTH_OFF_SCALE if is_small(newtons, newtons_per_mm) else abs(newtons) / newtons_per_mm


def is_small(newtons: float, newtons_per_mm: float, *, least: float = LEAST_ARROW) -> bool:
    """Return whether the arrow of a force would be too short to see; that of no force is none."""
    return newtons != 0 and abs(newtons) / newtons_per_mm < least

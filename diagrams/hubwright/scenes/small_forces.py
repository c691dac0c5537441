"""The one way in which figures show a force whose arrow would be too short to see, and where arrows as shown lie.

Such an arrow is not to scale, and is said to be so.

Sheet millimetres. A lens at a larger force scale comes first where a scene has room for one.
"""

from dataclasses import replace
from math import hypot

from hubwright.scenes.vocabulary import LENGTH_OFF_SCALE, NOT_TO_SCALE, Force, Point, View

OFF_END = 0.5  # from an end of an arrow to a leader that ends just off it
LEAST_ARROW = 1.2  # of one to scale: what shows as an arrow on a printed sheet


def visible(force: Force, view: View, *, least: float = LEAST_ARROW) -> Force:
    """Return a force as it is, or, if its arrow were too short to see, one of a fixed length whose label says so."""
    size = hypot(*force.vector)
    if not force.label or not force.label.lines or not is_small(size, view.newtons_per_mm or 1.0, least=least):
        return force
    label = replace(force.label, lines=(*force.label.lines, NOT_TO_SCALE))
    return replace(force, label=label, to_scale=False)


def length(newtons: float, newtons_per_mm: float, *, least: float = LEAST_ARROW) -> float:
    """Return how long the arrow of a force is when it is shown by `visible`.

    >>> length(3000.0, 100.0), length(-100.0, 100.0), length(0.0, 100.0)
    (30.0, 8.5, 0.0)
    """
    return LENGTH_OFF_SCALE if is_small(newtons, newtons_per_mm, least=least) else abs(newtons) / newtons_per_mm


def is_small(newtons: float, newtons_per_mm: float, *, least: float = LEAST_ARROW) -> bool:
    """Return whether the arrow of a force would be too short to see; that of no force is none."""
    return newtons != 0 and abs(newtons) / newtons_per_mm < least


def along(force: Force, view: View, share: float, beyond: float = 0.0) -> Point:
    """Return the place on an arrow as shown, a share of its length from the tail and so far beyond, in the view."""
    size = hypot(*force.vector)
    long = size / (view.newtons_per_mm or 1.0) if force.to_scale else LENGTH_OFF_SCALE
    tail = -force.gap - long if force.tip_at_point else force.gap
    way = (tail + share * long + beyond) / view.scale / size
    return force.at[0] + force.vector[0] * way, force.at[1] + force.vector[1] * way

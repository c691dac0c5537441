"""Where arrows, rings and arcs of the three linked views stand so that none hides another.

Real millimetres of a view, but sheet millimetres where a name says so. A force may slide along its line: it then turns
the body as before.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot, inf

from hubwright.scenes.linked_views import Axis, Plane, Seen, Stand, lies_on
from hubwright.scenes.small_forces import LEAST_ARROW, along, is_small, length
from hubwright.scenes.vocabulary import Force, Item, Point
from hubwright.scenes.wheel_end_actions import Action, Actions

_BESIDE, _APART = 3.0, 2.0  # sheet millimetres, of a slid arrow from the tire, and of one arrow from the next
_SLOT, _PITCH = 10.5, 6.4  # of rings that stand beside the wheel, from its sidewall and from one another
_ON_RUBBER = 2.8  # of a ring over the edge of the rim
_NAMED = 5.0  # of the name of the bearing centre, from the sidewall
_RADII = (7.5, 8.5, 9.5, 10.5, 11.5, 12.5, 13.5)  # of a moment's arc on the sheet
_BETWEEN = 5.5  # of the tips of two arrows on one line, so that an arc may run there
_HEAD, _CLEAR = 4.2, 2.2  # of an arrow, and from its head to the middle of an arc
_SHORT = 3.0  # an arrow beside which there is no room among the leaders that run over it
_OPEN = 0.7  # over this slope to either side no arc runs
# a view where it is a drawing of its own, beside the wide sheet
_SIZES: dict[Plane, tuple[float, ...]] = {
    "rear": (1.0, 1.25, 1.67),
    "side": (0.8, 1.0, 1.25),
    "top": (1.0, 1.25, 1.67, 2.0),
}


@dataclass(frozen=True)
class Tire:
    """The tire, as far as places beside it need it."""

    side: int
    load_line: float
    half_width: float
    free_radius: float
    rim_radius: float

    def beyond(self, seen: Seen, off: float) -> float:
        """Return where a place lies so many sheet millimetres outboard of the tire, inboard if negative."""
        way = 1.0 if off > 0 else -1.0
        return self.side * (self.load_line + way * self.half_width + off / seen.view.scale)


def stands(seen: Seen, actions: Actions, tire: Tire, *, least: float) -> dict[str, dict[Axis, Stand]]:
    """Return where the arrows stand that lie on one line: those at the axle, and from above the side force."""
    found: dict[str, dict[Axis, Stand]] = {action.name: {} for action in actions.all}
    for axis in seen.across:
        answer = getattr(actions.bearing.force, axis)
        masses = [a for a in (actions.weight, actions.inertia) if abs(getattr(a.force, axis)) > least]
        if masses and axis == "y":
            # the masses' arrows keep to the side of their centre, that of the bearing to the other
            beside = 1.0 if masses[0].point.y * tire.side >= 0 else -1.0
            away = beside * tire.side
            found["bearing"][axis] = Stand(tip=answer * away > 0)
            places = [Stand(tip=getattr(mass.force, axis) * away < 0) for mass in masses]
        else:
            places = [Stand(tip=_from_behind(seen, mass, axis, actions, least)) for mass in masses]
        for number, (mass, place) in enumerate(zip(masses, places, strict=True)):
            before = number * (length(_newtons(masses[0], axis), seen.view.newtons_per_mm or 1.0) + _BETWEEN)
            found[mass.name][axis] = Stand(tip=place.tip, gap=before)
    if seen.plane == "top" and lies_on(seen, actions.contact, actions.bearing, "x"):
        found["contact"]["x"] = Stand(tip=True)  # it ends where that of the bearing begins
    if seen.plane == "top" and abs(actions.contact.force.y) > least:
        found["contact"]["y"] = _slid(seen, actions, tire, found["bearing"].get("y"))
    return found


def needs_a_leader(seen: Seen, action: Action, axis: Axis, actions: Actions, tire: Tire, *, least: float) -> bool:
    """Return whether an arrow of another view's force has its symbol in the column: beside it there is no room."""
    if seen.plane == "top" and (action.name, axis) == ("contact", "y"):
        return False  # it stands alone between the column and the wheel
    crowded = action.name in ("weight", "inertia", "bearing" if seen.plane == "side" else "caliper")
    crowded |= seen.plane == "top" and (action.name, axis) == ("contact", "x")  # the axle and its arrows lie over it
    shortest = LEAST_ARROW if seen.plane == "side" else _SHORT
    short = abs(_newtons(action, axis)) < shortest * (seen.view.newtons_per_mm or 1.0)
    return (short or crowded) and not _lies_beyond(seen, action, axis, actions, tire, least=least)


def _lies_beyond(seen: Seen, action: Action, axis: Axis, actions: Actions, tire: Tire, *, least: float) -> bool:
    """Return whether a level arrow seen from outboard lies behind the axle, where a leader from ahead runs along it."""
    if seen.plane != "side" or axis != "x":
        return False
    return not lies_ahead(seen, action, actions, tire, least=least)


def lies_ahead(seen: Seen, action: Action, actions: Actions, tire: Tire, *, least: float) -> bool:
    """Return whether the arrow of a fore-and-aft force lies ahead of its point."""
    stand = stands(seen, actions, tire, least=least)[action.name].get("x")
    return (action.force.x > 0) != (stand is not None and stand.tip)


def _from_behind(seen: Seen, mass: Action, axis: Axis, actions: Actions, least: float) -> bool:
    """Return whether an arrow stands freer before its point than after it, beside those that stand there."""
    across = next(other for other in seen.across if other != axis)
    beside: dict[bool, list[float]] = {True: [inf], False: [inf]}  # how far off, on the side to which the axis points
    for other in actions.all:
        newtons = _newtons(other, axis)
        if other.name in ("weight", "inertia") or abs(newtons) <= least:
            continue
        if axis != "z":
            beside[newtons > 0].append(abs(getattr(other.point, across) - getattr(mass.point, across)))
        elif other.name != "contact":  # which stands far below; upright ones end at their points, short ones hang there
            hangs = is_small(newtons, seen.view.newtons_per_mm or 1.0)
            beside[(newtons < 0) != hangs].append(abs(getattr(other.point, across) - getattr(mass.point, across)))
    ahead = _newtons(mass, axis) > 0
    return min(beside[not ahead]) > min(beside[ahead])


def _newtons(action: Action, axis: Axis) -> float:
    return float(getattr(action.force, axis))


def _slid(seen: Seen, actions: Actions, tire: Tire, bearing: Stand | None) -> Stand:
    """Return the place of the road's side force inboard of the tire, clear of the bearing's answer."""
    answer = actions.bearing.force.y * tire.side
    reach = length(actions.bearing.force.y, seen.view.newtons_per_mm or 1.0) / seen.view.scale
    inboard = (answer < 0) != (bearing is not None and bearing.tip)
    edge = tire.beyond(seen, -_BESIDE) * tire.side
    if inboard:
        edge = min(edge, -reach - _APART / seen.view.scale)
    return Stand(tip=actions.contact.force.y * tire.side > 0, at=(tire.side * edge, 0.0))


def slots(seen: Seen, actions: Actions, tire: Tire, *, least: float) -> dict[str, Point]:
    """Return places beside the wheel for rings that would stand on one another or on arrows."""
    crowd = [action for action in actions.all if abs(seen.toward(action.force)) > least]
    if seen.plane != "top":  # the road's own stands at the road, away from the others
        crowd = [action for action in crowd if action.name != "contact"]
    step = _PITCH / seen.view.scale
    if seen.plane == "side":
        # behind the axle, as leaders come from ahead, and on the rubber: on its edge names would be lost
        x, z = -0.3 * tire.free_radius, tire.rim_radius + _ON_RUBBER / seen.view.scale
        return {action.name: (x, z + number * step) for number, action in enumerate(reversed(crowd))}
    # outboard: inboard run the leaders; and none on the axis, on which its line would be lost
    beside = tire.beyond(seen, _SLOT)
    start = 6.0 / seen.view.scale if seen.plane == "rear" else (len(crowd) - 1 + len(crowd) % 2) / 2 * step
    way = 1.0 if seen.plane == "rear" else -1.0
    return {action.name: (beside, start + way * number * step) for number, action in enumerate(crowd)}


def place_of_centre(seen: Seen, actions: Actions, tire: Tire, *, least: float) -> Point:
    """Return where the bearing centre is named: askew of all that lies on the axis, past the rings."""
    taken = slots(seen, actions, tire, least=least)
    if seen.plane == "side":  # caliper and rings stand above, the couple of a shaft below
        above = -1.0 if actions.caliper or taken else 1.0
        return -0.36 * tire.free_radius, above * 0.62 * tire.free_radius
    step, beside = _PITCH / seen.view.scale, tire.beyond(seen, _NAMED)
    if seen.plane == "rear":
        return beside, max([1.5 * step, *(height + step for _, height in taken.values())])
    return beside, min([-1.5 * step, *(height - step for _, height in taken.values())])


def arc_radius(seen: Seen, items: Sequence[Item]) -> float:
    """Return the radius on the sheet of an arc about the bearing centre that keeps clear of the heads of arrows."""
    forces = [item for item in items if isinstance(item, Force) and item.view == seen.view.name]
    for sizes in (_SIZES[seen.plane], (1.0,)):  # at all sizes if one radius will do, else on the wide sheet
        reaches = [reach for force in forces for size in sizes for reach in _reaches(force, seen, size)]
        clear = {r: min((max(near - r, r - far) for near, far in reaches), default=_CLEAR) for r in _RADII}
        if max(clear.values()) >= _CLEAR:
            break
    return next((r for r in _RADII if clear[r] >= _CLEAR), max(_RADII, key=lambda r: clear[r]))


def _reaches(force: Force, seen: Seen, size: float) -> list[tuple[float, float]]:
    """Return how near the centre and how far from it a head lies; nothing of one over which no arc runs."""
    tip, newtons, scale = along(force, seen.view, 1.0), hypot(*force.vector), seen.view.scale
    stretch = scale * (size if force.to_scale else 1.0)
    at = [p * scale * size + (t - p) * stretch for t, p in zip(tip, force.at, strict=True)]
    base = [part - _HEAD * component / newtons for part, component in zip(at, force.vector, strict=True)]
    if min(at[1] - _OPEN * abs(at[0]), base[1] - _OPEN * abs(base[0])) > 0.0:
        return []
    ends = hypot(*at), hypot(*base)
    return [(min(ends), max(ends))]

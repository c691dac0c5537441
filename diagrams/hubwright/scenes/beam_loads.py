"""The loads of a beam on its free body: arrows, rows of small arrows and arcs, and words that do not meet.

Real millimetres along the beam; heights of words in sheet millimetres from its axis.
"""

from dataclasses import dataclass, replace
from typing import Literal

from hubwright.quantities import format_quantity
from hubwright.results.beams import BeamLoad, BeamResults
from hubwright.scenes.diagrams import FINEST
from hubwright.scenes.scales import round_scale
from hubwright.scenes.small_forces import is_small, length, visible
from hubwright.scenes.vocabulary import ClosedBody, Force, Item, Label, Line, Moment, Note, Units, View
from hubwright.setup.model import DistributedLoad, PointForce, PointMoment

HALF_BAR = 1.5  # half of the drawn bar, sheet millimetres: the bar is a sign, not to scale
WORDS_HEIGHT = 6.5  # of words over an arrow, with the air around them
LINE_HEIGHT = 4.2  # of a further line of them
_PITCH, _SMALL = 9.0, 9.0  # wished distance and greatest length of the small arrows of a distributed load
_STAGGER = 40.0  # words nearer than this along the beam stand at different heights
_ARC = 9.5  # how high a couple's arc reaches


@dataclass(frozen=True)
class LoadScales:
    """Scales of the free body: sheet mm per mm along it, newtons per sheet mm of large and of small arrows."""

    along: float
    forces: float
    small: float | None

    @classmethod
    def of(cls, beam: BeamResults, along: float, forces: float) -> "LoadScales":
        """Return the scales of a beam; small arrows, which would vanish at the scale of the rest, have their own."""
        spread = [load for load in beam.loads if isinstance(load, DistributedLoad)]
        largest = max((abs(pieces(load, along)[1]) for load in spread), default=0.0)
        return cls(along, forces, max(round_scale(largest, _SMALL), FINEST) if spread else None)

    def reach(self, load: BeamLoad) -> float:
        """Return how far from the axis a load's arrows reach, sheet millimetres."""
        match load:
            case PointForce():
                return HALF_BAR + length(load.force, self.forces)
            case DistributedLoad():
                return HALF_BAR + abs(pieces(load, self.along)[1]) / (self.small or 1.0)
            case PointMoment():
                return _ARC

    def words(self, load: BeamLoad) -> float:
        """Return how high the words of a load are; those of a small force say that it is not to scale."""
        small = isinstance(load, PointForce) and is_small(load.force, self.forces)
        return WORDS_HEIGHT + (LINE_HEIGHT if small else 0.0)


@dataclass(frozen=True)
class WordHeights:
    """How much higher than beside its own arrow the words of each load stand, and how far all reach up and down."""

    rise: tuple[float, ...]
    up: float
    down: float


def word_heights(beam: BeamResults, scales: LoadScales) -> WordHeights:
    """Return heights for the words of all loads so that neighbours do not meet, on either side of the beam."""
    rise = [0.0] * len(beam.loads)
    reached = {True: 0.0, False: 0.0}
    # above the bar, place and from where to where words already stand
    standing: list[tuple[bool, float, float, float]] = []
    for index in sorted(range(len(beam.loads)), key=lambda i: _middle(beam.loads[i])):
        load = beam.loads[index]
        above, place = not _upward(load), _middle(load) * 1e3 * scales.along
        own = scales.reach(load)
        rows = [
            scales.reach(row)
            for row in beam.loads
            if isinstance(row, DistributedLoad)
            and _upward(row) != above
            and row.start * 1e3 * scales.along - 15.0 < place < row.end * 1e3 * scales.along + 15.0
        ]
        height, tall = max([own, *rows]), scales.words(load)
        while near := [
            high
            for side, at, low, high in standing
            if side == above and abs(at - place) < _STAGGER and low < height + tall - 1e-6 and height < high - 1e-6
        ]:
            height = max(near)
        standing.append((above, place, height, height + tall))
        rise[index] = height - own
        reached[above] = max(reached[above], height + tall)
    return WordHeights(tuple(rise), reached[True], reached[False])


def load_items(beam: BeamResults, view: View, small: View, heights: WordHeights, units: Units) -> list[Item]:
    """Return every load with its words; distributed ones lie in a view of their own force scale."""
    items: list[Item] = []
    for index, load in enumerate(beam.loads):
        name, rise = f"{index + 1}", heights.rise[index]
        match load:
            case DistributedLoad():
                items += _distributed(load, name, small, rise, units)
            case PointForce():
                way = "up" if load.force > 0 else "down"
                text = f"*{{F|{name}}} = {format_quantity(abs(load.force), 'force', units)}"
                nudge = (0.0, -rise if load.force > 0 else rise)
                label = Label((f"{text} {way}",), place="tail", tone="load", nudge=nudge)
                at, vector = (load.at * 1e3, 0.0), (0.0, load.force)
                arrow = Force(f"force-{name}", view.name, 2, at=at, vector=vector, gap=HALF_BAR, label=label, level=1)
                items.append(visible(arrow, view))
            case PointMoment():
                text = f"*{{M|{name}}} = {format_quantity(abs(load.moment), 'moment', units)}"
                label = Label((text,), place="above", tone="moment", nudge=(0.0, rise))
                at = (load.at * 1e3, 0.0)
                items.append(
                    Moment(
                        f"moment-{name}",
                        view.name,
                        2,
                        at=at,
                        newton_metres=load.moment,
                        role="applied",
                        label=label,
                        level=1,
                    )
                )
    return items


def closed_body(beam: BeamResults, along: float) -> ClosedBody:
    """Return the free body: x along the beam, z up; so counter-clockwise turns about −y."""
    forces: list[tuple[str, tuple[float, float, float], tuple[float, float, float]]] = []
    couples: list[tuple[str, tuple[float, float, float]]] = []
    for number, load in enumerate(beam.loads, start=1):
        match load:
            case PointForce():
                forces.append((f"force-{number}", (0.0, 0.0, load.force), (load.at, 0.0, 0.0)))
            case DistributedLoad():
                places, share = pieces(load, along)
                forces += [
                    (f"force-{number}-{piece}", (0.0, 0.0, share), (at, 0.0, 0.0))
                    for piece, at in enumerate(places, start=1)
                ]
            case _:
                couples.append((f"moment-{number}", (0.0, -load.moment, 0.0)))
    for number, reaction in enumerate(beam.reactions, start=1):
        forces.append((f"reaction-{number}", (0.0, 0.0, reaction.force), (reaction.at, 0.0, 0.0)))
        couples.append((f"moment-{number}-wall", (0.0, -reaction.moment, 0.0)))
    return ClosedBody(tuple(forces), tuple(couples))


def pieces(load: DistributedLoad, scale: float) -> tuple[list[float], float]:
    """Return where the small arrows of a distributed load stand [m], and the share of each [N]."""
    length = load.end - load.start
    count = max(3, min(24, round(length * 1e3 * scale / _PITCH)))
    return [load.start + length * (number + 0.5) / count for number in range(count)], load.intensity * length / count


def _distributed(load: DistributedLoad, name: str, view: View, rise: float, units: Units) -> list[Item]:
    """Return a distributed load as a row of small arrows, each the share of its piece."""
    places, share = pieces(load, view.scale)
    assert view.newtons_per_mm is not None
    up = load.intensity > 0
    tail = (abs(share) / view.newtons_per_mm + HALF_BAR) / view.scale * (-1 if up else 1)
    text = f"*{{w|{name}}} = {format_quantity(abs(load.intensity), 'intensity', units)} {'up' if up else 'down'}"
    place: Literal["above", "below"] = "below" if up else "above"
    anchor = (_middle(load) * 1e3, tail)
    label = Label((text,), place, anchor, "load", nudge=(0.0, -rise if up else rise))
    ends = (load.start * 1e3, tail), (load.end * 1e3, tail)
    items: list[Item] = [Line(f"row-{name}", view.name, 2, points=ends, tone="load")]
    for number, at in enumerate(places, start=1):
        arrow = Force(f"force-{name}-{number}", view.name, 2, at=(at * 1e3, 0.0), vector=(0.0, share), gap=HALF_BAR)
        items.append(replace(arrow, slender=True, level=1))
    return [*items, Note(f"label-force-{name}", view.name, 2, label=label)]


def _upward(load: BeamLoad) -> bool:
    match load:
        case PointForce():
            return load.force > 0
        case DistributedLoad():
            return load.intensity > 0
        case PointMoment():
            return False  # its words stand above its arc


def _middle(load: BeamLoad) -> float:
    return (load.start + load.end) / 2 if isinstance(load, DistributedLoad) else load.at

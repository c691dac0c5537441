"""The numbers of the rock test's working, with so many digits that what is printed comes out as printed."""

import math
from dataclasses import dataclass
from itertools import product

from hubwright.quantities import Kind, format_quantity
from hubwright.quantities.printed import places, read, with_places
from hubwright.results.symptoms import PlayResult
from hubwright.scenes.vocabulary import Units

_SMALL: Kind = "small length"
_FINER = ((0, 0), (1, 0), (1, 1), (2, 1), (2, 2), (3, 2), (3, 3))  # further digits of end play and radial play
_OF_LEVERS = 3  # digits more than usual, at most two, of spread and radius


@dataclass(frozen=True)
class RockedNumbers:
    """What the working says: end play, radial play, contact angle, spread, radius and travel at the tread."""

    end: str
    radial: str
    angle: str
    spread: str
    radius: str
    travel: str
    closes: bool  # whether the printed end play times the printed tangent is the printed radial play

    @property
    def tangent(self) -> str:
        """The product that makes the radial play, where it comes out as printed."""
        return f"{self.end} · tan {self.angle} = " if self.closes else ""


def rocked_numbers(play: PlayResult, contact_angle: float, spread: float, radius: float, units: Units) -> RockedNumbers:
    """Return the numbers of a play [m], contact angle [rad], effective spread and free radius [m].

    End play and angle come to the radial play, and that over the spread to the travel: both plays get further digits
    until they do, then spread and radius. Where an angle between two tenths of a degree denies it, the product of the
    first is left out.
    """
    angle = format_quantity(contact_angle, "angle", units)
    travel = format_quantity(play.tread_travel, _SMALL, units)
    tangent = math.tan(math.radians(float(angle.removesuffix("°"))))
    held: list[RockedNumbers] = []
    for more_of_levers, (more, more_radial) in product(range(_OF_LEVERS), _FINER):
        wide, wide_read = _finer(spread, more_of_levers, _SMALL, units)
        long, long_read = _finer(radius, more_of_levers, "length", units)
        end, end_read = _finer(play.end_play, more, _SMALL, units)
        radial, radial_read = _finer(play.radial_play, more_radial, _SMALL, units)
        leads_on = format_quantity(2 * long_read * radial_read / wide_read, _SMALL, units) == travel
        closes = _finer(end_read * tangent, more_radial, _SMALL, units, like=radial)[0] == radial
        numbers = RockedNumbers(end, radial, angle, wide, long, travel, closes)
        if leads_on and closes:
            return numbers
        if leads_on:
            held.append(numbers)
    return held[0] if held else numbers


def _finer(value: float, digits: int, kind: Kind, units: Units, like: str = "") -> tuple[str, float]:
    """Return a length with so many digits more, or with the places of another, and what is read of it [m]."""
    told = format_quantity(value, kind, units)
    if digits or like:
        told = with_places(value, told, places(like) if like else places(told) + digits, kind, units)
    return told, read(told, kind, units)

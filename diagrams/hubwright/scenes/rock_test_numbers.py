"""The numbers of the rock test's working, with so many digits that what is printed comes out as printed."""

import math
from dataclasses import dataclass

from hubwright.quantities import KINDS, format_quantity
from hubwright.quantities.formatting import NO_BREAK
from hubwright.results.symptoms import PlayResult
from hubwright.scenes.vocabulary import Units

_FINER = ((0, 0), (1, 0), (1, 1), (2, 1), (2, 2), (3, 2), (3, 3))  # further digits of end play and radial play


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
    until they do. Where an angle between two tenths of a degree denies it, the product of the first is left out.
    """
    angle = format_quantity(contact_angle, "angle", units)
    wide, long = format_quantity(spread, "small length", units), format_quantity(radius, "length", units)
    travel = format_quantity(play.tread_travel, "small length", units)
    tangent = math.tan(math.radians(float(angle.removesuffix("°"))))
    held: list[RockedNumbers] = []
    for more, more_radial in _FINER:
        end, end_read = _finer(play.end_play, more, units)
        radial, radial_read = _finer(play.radial_play, more_radial, units)
        slack = 2 * _read(long) * radial_read / _read(wide)
        leads_on = format_quantity(slack, "small length", units) == travel
        closes = _finer(end_read * tangent, more_radial, units, like=radial)[0] == radial
        numbers = RockedNumbers(end, radial, angle, wide, long, travel, closes)
        if leads_on and closes:
            return numbers
        if leads_on:
            held.append(numbers)
    return held[0] if held else numbers


def _read(told: str) -> float:
    """Return the length that is printed [m]."""
    number, unit = told.split(NO_BREAK)
    size = next(scale.size for kinds in KINDS["length"] for scale in kinds if scale.unit == unit)
    return float(number.replace(",", "")) * size


def _finer(value: float, digits: int, units: Units, like: str = "") -> tuple[str, float]:
    """Return a small length with so many digits more, or with the places of another, and what is read of it [m]."""
    told = format_quantity(value, "small length", units)
    if digits or like:
        number, unit = told.split(NO_BREAK)
        places = _places(like.split(NO_BREAK)[0]) if like else _places(number) + digits
        size = _read(f"1{NO_BREAK}{unit}")
        told = f"{value / size:,.{places}f}{NO_BREAK}{unit}"
    return told, _read(told)


def _places(number: str) -> int:
    return len(number.partition(".")[2])

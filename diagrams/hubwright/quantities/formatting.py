"""Showing values in SI and US units, rounded as the users of that system would.

A *kind* says what sort of thing a value is to its reader: a wheelbase and a deflection are both
lengths, but nobody states them in the same unit.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

System = Literal["si", "us"]
Kind = Literal[
    "length",
    "small length",
    "vehicle length",
    "deflection",
    "distance",
    "mass",
    "force",
    "moment",
    "stiffness",
    "damping",
    "intensity",
    "angle",
    "slope",
    "pressure",
    "fluid pressure",
    "modulus",
    "temperature",
    "frequency",
    "speed",
    "time",
    "second moment",
    "ratio",
    "percent",
    "acceleration",
    "count",
    "revolutions",
    "energy",
]

_NOTHING = 1e-6  # of the unit shown: what rounding in the arithmetic leaves, not a result
NO_BREAK = "\u00a0"
MINUS = "\u2212"
INCH, FOOT, POUND, POUND_FORCE = 0.0254, 0.3048, 0.45359237, 4.4482216152605  # m, m, kg, N; exact by definition
_PSI = POUND_FORCE / INCH**2


@dataclass(frozen=True, slots=True)
class Shown:
    """A value as shown: the number and its unit apart, for large numerals and figure labels."""

    number: str
    unit: str

    @property
    def text(self) -> str:
        """Number and unit together, kept on one line."""
        if self.unit in ("", "°"):
            return self.number + self.unit
        return self.number + NO_BREAK + self.unit

    @property
    def turned(self) -> Shown:
        """The same with the other sign."""
        if self.number.startswith(MINUS):
            return Shown(self.number.removeprefix(MINUS), self.unit)
        return Shown(MINUS + self.number if self.number.strip("0.") else self.number, self.unit)

    def __str__(self) -> str:
        """Return the text."""
        return self.text


@dataclass(frozen=True, slots=True)
class Scale:
    """One unit of a kind: its size in SI units and how many digits it deserves."""

    unit: str
    size: float
    significant: int = 3  # digits kept
    decimals: int = 9  # at most so many of them behind the point
    least: int = 1  # but never fewer digits than this
    offset: float = 0.0  # SI value of zero


_MILLIMETRES = Scale("mm", 1e-3, decimals=1, least=2)
_METRES = Scale("m", 1.0, decimals=2)
_INCHES = Scale("in", INCH, significant=4, decimals=2, least=2)
_WHOLE = Scale("", 1.0, significant=15, decimals=0)
_NEWTONS = (Scale("N", 1.0, decimals=1), Scale("kN", 1e3))

# Of several units the largest is taken of which there is at least one.
KINDS: dict[Kind, tuple[tuple[Scale, ...], tuple[Scale, ...]]] = {
    "length": ((_MILLIMETRES, _METRES), (_INCHES,)),
    "small length": ((_MILLIMETRES,), (_INCHES,)),
    "vehicle length": ((_METRES,), (Scale("in", INCH, significant=4, decimals=1),)),
    "deflection": ((Scale("µm", 1e-6, decimals=1), Scale("mm", 1e-3)), (Scale("in", INCH, decimals=4),)),
    "distance": ((Scale("km", 1e3, significant=1),), (Scale("mi", 1609.344, significant=1),)),
    "mass": ((Scale("kg", 1.0, significant=15, decimals=0),), (Scale("lb", POUND, significant=15, decimals=0),)),
    "force": (_NEWTONS, (Scale("lbf", POUND_FORCE, significant=15, decimals=0, least=0),)),
    "moment": (
        (Scale("N·m", 1.0, decimals=2), Scale("kN·m", 1e3)),
        (Scale("lbf·ft", POUND_FORCE * FOOT, decimals=2),),
    ),
    "stiffness": ((Scale("N/mm", 1e3),), (Scale("lbf/in", POUND_FORCE / INCH),)),
    "damping": ((Scale("N·s/m", 1.0),), (Scale("lbf·s/in", POUND_FORCE / INCH),)),
    "intensity": (
        (Scale("N/m", 1.0), Scale("kN/m", 1e3)),
        (Scale("lbf/ft", POUND_FORCE / FOOT),),
    ),
    "angle": ((Scale("°", math.pi / 180, decimals=1),),) * 2,
    "slope": ((Scale("mrad", 1e-3),),) * 2,
    "pressure": ((Scale("MPa", 1e6),), (Scale("ksi", 1e3 * _PSI),)),
    "fluid pressure": ((Scale("kPa", 1e3),), (Scale("psi", _PSI),)),
    "modulus": ((Scale("GPa", 1e9),), (Scale("ksi", 1e3 * _PSI),)),
    "temperature": (
        (Scale("°C", 1.0, significant=9, decimals=0, offset=273.15),),
        (Scale("°F", 5 / 9, significant=9, decimals=0, offset=459.67 * 5 / 9),),
    ),
    "frequency": ((Scale("Hz", 1.0),),) * 2,
    "speed": ((Scale("km/h", 1 / 3.6, decimals=0),), (Scale("mph", 0.44704, decimals=0),)),
    "time": ((Scale("ms", 1e-3), Scale("s", 1.0)),) * 2,
    "second moment": ((Scale("mm⁴", 1e-12),), (Scale("in⁴", INCH**4),)),
    "ratio": ((Scale("", 1.0, decimals=2, least=2),),) * 2,
    "percent": ((Scale("%", 0.01, significant=9, decimals=0),),) * 2,
    "acceleration": ((Scale("g", 1.0, decimals=2),),) * 2,
    "count": ((_WHOLE,),) * 2,
    "revolutions": (
        (Scale("revolutions", 1.0, significant=2), Scale("million revolutions", 1e6, significant=2)),
    )
    * 2,
    "energy": ((Scale("J", 1.0),), (Scale("ft·lbf", POUND_FORCE * FOOT),)),
}  # fmt: skip

_DEFAULT_KINDS: dict[str, Kind] = {
    "m": "length",
    "kg": "mass",
    "N": "force",
    "N*m": "moment",
    "Pa": "pressure",
    "N/m": "stiffness",
    "N*s/m": "damping",
    "rad": "angle",
    "K": "temperature",
    "Hz": "frequency",
    "m/s": "speed",
    "s": "time",
    "m^4": "second moment",
    "1": "ratio",
}


def default_kind(unit: str) -> Kind | None:
    """Return the kind in which a value of this SI unit is shown when nothing else is said."""
    return _DEFAULT_KINDS.get(unit)


def format_number(value: float, *, significant: int = 3, decimals: int = 9, least: int = 1) -> str:
    """Return a number rounded to its significant digits, with thousands commas and a true minus sign.

    Decimals of a whole number are left out: "25", not "25.0".

    Examples
    --------
    >>> format_number(-1146.2), format_number(0.98425, decimals=2), format_number(25.0)
    ('−1,150', '0.98', '25')
    """
    if not math.isfinite(value):
        return {math.inf: "∞", -math.inf: MINUS + "∞"}.get(value, "–")
    if abs(value) < _NOTHING:
        return "0"
    places = last_place(value, significant=significant, decimals=decimals, least=least)
    rounded = round(value, places)
    whole = abs(value - round(value)) <= 1e-9 * abs(value)
    text = f"{abs(rounded):,.{0 if whole else max(places, 0)}f}"
    return MINUS + text if rounded < 0 else text


def last_place(value: float, *, significant: int = 3, decimals: int = 9, least: int = 1) -> int:
    """Return how many decimals a number that is not nothing keeps; negative where tens or hundreds are rounded away.

    Examples
    --------
    >>> last_place(5.0994), last_place(9.996), last_place(-1146.2)
    (2, 1, -1)
    """
    places = _places(value, significant, decimals, least)
    rounded = round(value, places)
    return places if rounded == 0 else min(places, _places(rounded, significant, decimals, least))


def display(value: float, kind: Kind, system: System) -> Shown:
    """Return an SI value as it is shown in a unit system, number and unit apart.

    Examples
    --------
    >>> display(5099.4, "force", "si")
    Shown(number='5.10', unit='kN')
    """
    scale = scale_of(value, kind, system)
    return Shown(_in_scale(value, scale), scale.unit)


def format_quantity(value: float, kind: Kind, system: System) -> str:
    """Return an SI value as text in a unit system.

    Examples
    --------
    >>> format_quantity(0.025, "small length", "us").replace(NO_BREAK, " ")
    '0.98 in'
    """
    return display(value, kind, system).text


def format_range(low: float, high: float, kind: Kind, system: System) -> str:
    """Return a range as text, both ends in the unit of the larger.

    Examples
    --------
    >>> format_range(0.038, 0.046, "small length", "si").replace(NO_BREAK, " ")
    '38 to 46 mm'
    """
    scale = scale_of(max(abs(low), abs(high)), kind, system)
    last = Shown(_in_scale(high, scale), scale.unit)
    return f"{_in_scale(low, scale)} to {last.text}"


def scale_of(value: float, kind: Kind, system: System) -> Scale:
    """Return the unit in which an SI value is shown, with the digits that it gets."""
    scales = KINDS[kind][0 if system == "si" else 1]
    chosen = scales[0]
    for scale in scales[1:]:
        # compared as rounded, so that 999.7 N becomes 1.00 kN
        rounded = float(f"{abs(value):.{chosen.significant - 1}e}") if math.isfinite(value) else 0.0
        if rounded >= scale.size * (1 - 1e-12):
            chosen = scale
    return chosen


def _in_scale(value: float, scale: Scale) -> str:
    number = (value - scale.offset) / scale.size
    return format_number(number, significant=scale.significant, decimals=scale.decimals, least=scale.least)


def _places(value: float, significant: int, decimals: int, least: int) -> int:
    """Return how many decimals to keep; negative where tens or hundreds are rounded away."""
    exponent = math.floor(math.log10(abs(value)))
    return max(min(significant - 1 - exponent, decimals), least - 1 - exponent)

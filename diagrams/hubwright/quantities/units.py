"""The one pint registry, with our own few units, and the dimensions that values can have.

Pint's full registry takes a third of a second to read, this one about a millisecond.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

import pint

DimensionName = Literal[
    "length",
    "mass",
    "force",
    "moment",
    "pressure",
    "stiffness",
    "intensity",
    "damping",
    "angle",
    "temperature",
    "frequency",
    "speed",
    "time",
    "second_moment",
    "ratio",
    "acceleration",
    "count",
]


@dataclass(frozen=True, slots=True)
class Dimension:
    """A sort of value: its SI unit, its name in a sentence and how to write one."""

    unit: str
    phrase: str
    example: str


DIMENSIONS: dict[DimensionName, Dimension] = {
    "length": Dimension("m", "a length", "30 mm"),
    "mass": Dimension("kg", "a mass", "17 kg"),
    "force": Dimension("N", "a force", "5 kN"),
    "moment": Dimension("N*m", "a torque or moment", "110 N*m"),
    "pressure": Dimension("Pa", "a pressure or stress", "207 GPa"),
    "stiffness": Dimension("N/m", "a stiffness", "260 N/mm"),
    "intensity": Dimension("N/m", "a force per length", "2 kN/m"),
    "damping": Dimension("N*s/m", "a damping coefficient", "1500 N*s/m"),
    "angle": Dimension("rad", "an angle", "35 deg"),
    "temperature": Dimension("K", "a temperature", "20 degC"),
    "frequency": Dimension("Hz", "a frequency", "1.3 Hz"),
    "speed": Dimension("m/s", "a speed", "80 km/h"),
    "time": Dimension("s", "a time", "5 s"),
    "second_moment": Dimension("m^4", "a second moment of area", "80 cm^4"),
    "ratio": Dimension("1", "a number without a unit", "0.55"),
    "acceleration": Dimension("1", "a number of g", "0.3"),
    "count": Dimension("1", "a whole number", "13"),
}

# Exact by definition: inch and pound (international yard and pound agreement of 1959), standard
# gravity 9.80665 m/s2 (in kgf and lbf), degree Celsius and Fahrenheit.
_DEFINITIONS = """
m = [length] = _ = meter = metre
kg = [mass] = _ = kilogram = kilo
s = [time] = _ = sec = second
K = [temperature] = _ = kelvin
rad = [angle] = _ = radian
percent = 0.01 = _
um = 1e-6 * m = _ = micron = micrometer = micrometre
mm = 0.001 * m = _ = millimeter = millimetre
cm = 0.01 * m = _ = centimeter = centimetre
km = 1000 * m = _ = kilometer = kilometre
inch = 0.0254 * m = _ = in = inches
ft = 0.3048 * m = _ = foot = feet
mi = 1609.344 * m = _ = mile
gram = 0.001 * kg = _ = g
t = 1000 * kg = _ = tonne
lb = 0.45359237 * kg = _ = lbs = lbm = pound
N = kg * m / s**2 = _ = newton
kN = 1000 * N = _ = kilonewton
MN = 1e6 * N
lbf = 4.4482216152605 * N = _ = poundforce
kgf = 9.80665 * N = _ = kp
Nm = N * m
kNm = kN * m
Nmm = N * mm
Ns = N * s
J = N * m = _ = joule
Pa = N / m**2 = _ = pascal
kPa = 1e3 * Pa
MPa = 1e6 * Pa
GPa = 1e9 * Pa
bar = 1e5 * Pa
psi = lbf / inch**2
ksi = 1000 * psi
deg = 0.017453292519943295 * rad = _ = degree
degC = K; offset: 273.15 = _ = celsius
degF = 5/9 * K; offset: 255.3722222222222 = _ = fahrenheit
ms = 0.001 * s
min = 60 * s = _ = minute
h = 3600 * s = _ = hour
Hz = 1 / s = _ = hertz
kmh = km / h = _ = kph
mph = mi / h
"""


def definitions() -> list[str]:
    """Return the definition of each unit: its name, what it is, its symbol or `_`, and other names of it."""
    return _DEFINITIONS.strip().splitlines()


registry: pint.UnitRegistry[float] = pint.UnitRegistry(None, autoconvert_offset_to_baseunit=True)
for _line in definitions():
    registry.define(_line)

# Every SI unit in which a result may stand, to name the outcome of a multiplication. Where two
# share a dimension (moment and energy) the first wins.
_SI_UNITS = ("1", "m", "kg", "N", "N*m", "Pa", "N/m", "N*s/m", "rad", "K", "Hz", "m/s", "m/s^2", "s")
_SI_POWERS = ("m^2", "m^3", "m^4", "kg/m^3", "N*m^2", "N/kg", "1/m", "m/N", "kg*m", "kg*m^2")


@lru_cache(maxsize=512)
def unit_of(text: str) -> pint.Unit:
    """Return the pint unit written as in our data ("N*m", "m^4", "1")."""
    return registry.dimensionless if text in ("1", "") else registry.parse_units(text.replace("^", "**"))


@lru_cache(maxsize=512)
def si_name(unit: pint.Unit) -> str:
    """Return our name of the SI unit that has the dimension of this unit."""
    for name in (*_SI_UNITS, *_SI_POWERS):
        if unit_of(name).dimensionality == unit.dimensionality:
            return name
    base = registry.get_base_units(unit)[1]
    return f"{base:C}".replace("**", "^")

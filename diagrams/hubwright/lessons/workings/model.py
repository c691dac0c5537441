"""What a working is: a chain of lines, each an expression with its symbols, in both unit systems."""

from collections.abc import Mapping
from dataclasses import dataclass

from hubwright.lessons.workings import expression as written
from hubwright.quantities import FOOT, INCH, POUND, POUND_FORCE, Quantity, System
from hubwright.results import CaseResult, Results


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit in which numbers are put in: as it is read, its size in SI, and as a calculator with units reads it."""

    text: str
    size: float
    plain: str = ""


def _alike(unit: Unit) -> dict[System, Unit]:
    return {"si": unit, "us": unit}


# Coherent within SI; in US units an expression of its own holds the conversions, see CONVERSIONS.
UNITS: dict[str, dict[System, Unit]] = {
    "m": {"si": Unit("m", 1.0), "us": Unit("in", INCH)},
    "mm": {"si": Unit("mm", 1e-3), "us": Unit("in", INCH)},
    "N": {"si": Unit("N", 1.0), "us": Unit("lbf", POUND_FORCE)},
    "N*m": {"si": Unit("N·m", 1.0, "N*m"), "us": Unit("lbf·ft", POUND_FORCE * FOOT, "lbf*ft")},
    "N/m": {"si": Unit("N/m", 1.0), "us": Unit("lbf/in", POUND_FORCE / INCH)},
    "N/mm": {"si": Unit("N/mm", 1e3), "us": Unit("lbf/in", POUND_FORCE / INCH)},
    "1/mm": {"si": Unit("1/mm", 1e3, "mm^-1"), "us": Unit("1/in", 1 / INCH, "in^-1")},
    "N*m^2": {"si": Unit("N·m²", 1.0, "N*m^2"), "us": Unit("lbf·in²", POUND_FORCE * INCH**2, "lbf*in^2")},
    "kg": {"si": Unit("kg", 1.0), "us": Unit("lb", POUND)},
    "rad": _alike(Unit("°", 1.0, "deg")),  # kept in radians, written in degrees
    "m/s": {"si": Unit("m/s", 1.0), "us": Unit("mph", 0.44704)},
    "in/s": {"si": Unit("m/s", 1.0), "us": Unit("in/s", INCH)},
    "m/s^2": {"si": Unit("m/s²", 1.0, "m/s^2"), "us": Unit("in/s²", INCH, "in/s^2")},
    "Hz": _alike(Unit("Hz", 1.0)),
    "J": {"si": Unit("J", 1.0), "us": Unit("ft·lbf", POUND_FORCE * FOOT, "ft*lbf")},
    "Pa": {"si": Unit("Pa", 1.0), "us": Unit("psi", POUND_FORCE / INCH**2)},
    "MPa or psi": {"si": Unit("MPa", 1e6), "us": Unit("psi", POUND_FORCE / INCH**2)},
    "N/m^3": {"si": Unit("N/m³", 1.0, "N/m^3"), "us": Unit("lbf/in³", POUND_FORCE / INCH**3, "lbf/in^3")},
    "K": _alike(Unit("K", 1.0)),
    "1": _alike(Unit("", 1.0)),
    "million turns": _alike(Unit("million turns", 1.0)),
    # for the formulas of ISO 281 and ISO 76, whose factors hold for newtons and millimetres alone
    "N as printed": _alike(Unit("N", 1.0)),
    "mm as printed": _alike(Unit("mm", 1e-3)),
    "MPa": _alike(Unit("MPa", 1e6)),
    "N/m^1.8": _alike(Unit("N/mm^1.8", 1e3**1.8)),
    "N/m^1.4": _alike(Unit("N/mm^1.4", 1e3**1.4)),
    "N/m^(50/27)": _alike(Unit("N/mm^(50/27)", 1e3 ** (50 / 27))),
}


@dataclass(frozen=True, slots=True)
class Conversion:
    """A number in a US expression that only changes units: as it is read, and its unit."""

    number: float
    text: str
    unit: Unit


CONVERSIONS: dict[str, Conversion] = {
    "millimetres_in_a_metre": Conversion(1000.0, "1000", Unit("mm/m", 1.0)),
    "inches_in_a_foot": Conversion(12.0, "12", Unit("in/ft", 1.0)),
    "inches_a_second_in_a_mile_an_hour": Conversion(17.6, "17.6", Unit("(in/s)/mph", 1.0)),  # exact: 63360/3600
}


@dataclass(frozen=True, slots=True)
class Symbol:
    """A symbol of a formula: how it looks, what it is, and its value."""

    latex: str
    words: str
    value: Quantity
    unit: str = ""  # a key of UNITS where it is not the value's own
    path: str = ""  # of the working that explains it, of the same case or setup

    def unit_in(self, system: System) -> Unit:
        """Return the unit in which the number is put in."""
        return UNITS[self.unit or self.value.unit][system]

    def exactly_in_units(self, system: System) -> float:
        """Return the number in the unit in which it is put in; an angle in radians."""
        return self.value.value / self.unit_in(system).size


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a working: a symbol equals an expression of others."""

    name: str
    expression: str
    us: str = ""  # the expression in US units where it needs a conversion
    si: str = ""  # the same in SI units, where the result is not shown in the base unit

    def in_system(self, system: System) -> str:
        """Return the expression for a unit system."""
        own = self.us if system == "us" else self.si
        return own or self.expression


@dataclass(frozen=True, slots=True)
class Working:
    """How a result comes about."""

    what: str
    lines: tuple[Line, ...]
    symbols: Mapping[str, Symbol]
    source: str
    function: str = ""  # in hubwright.mechanics: its reference page
    digits: int = 4  # significant, of the result; the numbers put in give it to its last digit; 0: it is not stated
    about: str = ""  # of the result where it may not stand alone: for a life, what it does not say
    leaves_out: str = ""
    path: str = ""
    subject: tuple[Results, CaseResult | None] | None = None

    @property
    def result(self) -> Symbol:
        """Return the symbol of the last line."""
        return self.symbols[self.lines[-1].name]

    @property
    def told_openly(self) -> bool:
        """Return whether the result may stand in the heading: a life stands in the opened working alone."""
        return not self.about

    def value_of(self, line: Line) -> float:
        """Return what a line comes to in SI units, at full precision."""
        return written.value(line.expression, {name: symbol.value.value for name, symbol in self.symbols.items()})

    def term_names(self) -> list[str]:
        """Return the names that no line explains, in the order in which they are put in."""
        explained = {line.name for line in self.lines}
        used = dict.fromkeys(name for line in self.lines for name in written.names(line.expression))
        return [name for name in used if name not in explained]

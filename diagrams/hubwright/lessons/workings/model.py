"""What a working is: a chain of lines, each an expression with its symbols, in both unit systems."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from hubwright.lessons.workings import expression as written
from hubwright.quantities import Quantity, System

# The units in which numbers are put in: coherent within SI; in US units an expression of its own holds the twelve.
UNITS: dict[str, dict[System, tuple[str, float]]] = {
    "m": {"si": ("m", 1.0), "us": ("in", 0.0254)},
    "mm": {"si": ("mm", 1e-3), "us": ("in", 0.0254)},
    "N": {"si": ("N", 1.0), "us": ("lbf", 4.4482216152605)},
    "N*m": {"si": ("N·m", 1.0), "us": ("lbf·ft", 4.4482216152605 * 0.3048)},
    "N/m": {"si": ("N/m", 1.0), "us": ("lbf/in", 4.4482216152605 / 0.0254)},
    "N/mm": {"si": ("N/mm", 1e3), "us": ("lbf/in", 4.4482216152605 / 0.0254)},
    "kg": {"si": ("kg", 1.0), "us": ("lb", 0.45359237)},
    "rad": {"si": ("°", 1.0), "us": ("°", 1.0)},  # kept in radians, written in degrees
    "m/s": {"si": ("m/s", 1.0), "us": ("mph", 0.44704)},
    "Hz": {"si": ("Hz", 1.0), "us": ("Hz", 1.0)},
    "J": {"si": ("J", 1.0), "us": ("ft·lbf", 4.4482216152605 * 0.3048)},
    "Pa": {"si": ("Pa", 1.0), "us": ("psi", 4.4482216152605 / 0.0254**2)},
    "N/m^3": {"si": ("N/m³", 1.0), "us": ("lbf/in³", 4.4482216152605 / 0.0254**3)},
    "K": {"si": ("K", 1.0), "us": ("K", 1.0)},
    "1": {"si": ("", 1.0), "us": ("", 1.0)},
}
DIGITS = 5  # significant, of numbers put in
DIGITS_OF_RESULT = 4  # so that the numbers put in give it to its last digit


@dataclass(frozen=True, slots=True)
class Symbol:
    """A symbol of a formula: how it looks, what it is, and its value."""

    latex: str
    words: str
    value: Quantity
    unit: str = ""  # a key of UNITS where it is not the value's own

    def exactly_in_units(self, system: System) -> float:
        """Return the number in the unit in which it is put in."""
        return self.value.value / UNITS[self.unit or self.value.unit][system][1]

    def in_units(self, system: System) -> float:
        """Return the number as put in, rounded as it is shown."""
        return rounded(self.exactly_in_units(system))

    def unit_text(self, system: System) -> str:
        """Return the unit in which the number is put in."""
        return UNITS[self.unit or self.value.unit][system][0]


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a working: a symbol equals an expression of others."""

    name: str
    expression: str
    us: str = ""  # the expression in US units where it needs a factor

    def in_system(self, system: System) -> str:
        """Return the expression for a unit system."""
        return self.us if system == "us" and self.us else self.expression


@dataclass(frozen=True, slots=True)
class Working:
    """How a result comes about."""

    what: str
    lines: tuple[Line, ...]
    symbols: Mapping[str, Symbol]
    source: str
    function: str = ""  # in hubwright.mechanics, for those who read code
    remarks: tuple[str, ...] = field(default=())  # on the factors of the US expressions: for readers in US units

    @property
    def result(self) -> Symbol:
        """Return the symbol of the last line."""
        return self.symbols[self.lines[-1].name]

    def value_of(self, line: Line) -> float:
        """Return what a line comes to in SI units, at full precision."""
        return written.value(line.expression, {name: symbol.value.value for name, symbol in self.symbols.items()})

    def value_as_put_in(self, line: Line, system: System) -> float:
        """Return what a line comes to with the numbers that the page puts in, in that system's unit."""
        numbers = {name: self.symbols[name].in_units(system) for name in written.names(line.in_system(system))}
        return written.value(line.in_system(system), numbers)


def rounded(number: float) -> float:
    """Return a number rounded to the digits with which it is put in."""
    return float(f"{number:.{DIGITS - 1}e}")

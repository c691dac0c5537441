"""Numbers as they are printed, told with more digits and read back: for arithmetic that comes out as it is printed."""

from __future__ import annotations

from hubwright.quantities.formatting import KINDS, MINUS, NO_BREAK, Kind, System


def read(printed: str, kind: Kind, system: System) -> float:
    """Return the SI value of a printed number and unit.

    Examples
    --------
    >>> round(read(f"1,146{NO_BREAK}lbf", "force", "us"), 1)
    5097.7
    """
    number, _, unit = printed.partition(NO_BREAK)
    return float(number.replace(",", "").replace(MINUS, "-")) * size_of(unit, kind, system)


def size_of(unit: str, kind: Kind, system: System) -> float:
    """Return how much of the SI unit a unit is in which a kind is shown."""
    return next(scale.size for scale in KINDS[kind][0 if system == "si" else 1] if scale.unit == unit)


def places(printed: str) -> int:
    """Return how many digits are printed behind the point.

    Examples
    --------
    >>> places(f"3.40{NO_BREAK}kN"), places(f"1,146{NO_BREAK}lbf")
    (2, 0)
    """
    return len(printed.partition(NO_BREAK)[0].partition(".")[2])


def with_places(value: float, printed: str, digits: int, kind: Kind, system: System) -> str:
    """Return an SI value in the unit of a printed one, with so many digits behind the point.

    Examples
    --------
    >>> with_places(5099.4, f"3.40{NO_BREAK}kN", 3, "force", "si").replace(NO_BREAK, " ")
    '5.099 kN'
    """
    unit = printed.partition(NO_BREAK)[2]
    shown = round(value / size_of(unit, kind, system), digits)
    return f"{MINUS if shown < 0 else ''}{abs(shown):,.{digits}f}{NO_BREAK}{unit}"

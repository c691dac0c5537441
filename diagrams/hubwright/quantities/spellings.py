"""Every name that a unit may be written by, with its size and dimension, for those who read units without pint."""

from functools import lru_cache
from typing import cast

from hubwright.quantities.units import definitions, registry, unit_of

_BASES = ("[mass]", "[length]", "[time]", "[temperature]", "[angle]")
Exponents = tuple[int, ...]  # of mass, length, time, temperature and angle


@lru_cache(maxsize=1)
def unit_spellings() -> dict[str, tuple[float, Exponents]]:
    """Return size in SI and dimension of each unit, by each of its names.

    Units whose zero lies elsewhere (degrees Celsius and Fahrenheit) are left out: their values are no multiples.

    Examples
    --------
    >>> unit_spellings()["kN"]
    (1000.0, (1, 1, -2, 0, 0))
    >>> unit_spellings()["inches"] == unit_spellings()["in"]
    True
    """
    found: dict[str, tuple[float, Exponents]] = {}
    for line in definitions():
        if "offset" in line:
            continue
        name, _, *others = (part.strip() for part in line.split("="))
        size = float(registry.Quantity(1.0, name).to_base_units().magnitude)
        found |= {each: (size, dimension_of(name)) for each in (name, *others) if each != "_"}
    return found


def dimension_of(unit: str) -> Exponents:
    """Return the dimension of a unit as our data write it.

    Examples
    --------
    >>> dimension_of("N*m"), dimension_of("1")
    ((1, 2, -2, 0, 0), (0, 0, 0, 0, 0))
    """
    powers = unit_of(unit).dimensionality
    return tuple(round(cast("float", powers.get(base, 0))) for base in _BASES)

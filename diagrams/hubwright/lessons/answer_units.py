"""The units that an answer box reads, as a small script made from the units that files are read with."""

import json

from hubwright.quantities import DIMENSIONS
from hubwright.quantities.spellings import dimension_of, unit_spellings

PATH = "assets/answer-units.js"


def exponents_of(unit: str) -> str:
    """Return the dimension of a unit as the script writes it.

    Examples
    --------
    >>> exponents_of("N"), exponents_of("1")
    ('1,1,-2,0,0', '0,0,0,0,0')
    """
    return ",".join(map(str, dimension_of(unit)))


def units_script() -> str:
    """Return the script: by dimension, what it is called and the size of each of its units by each of their names."""
    table: dict[str, tuple[str, dict[str, float]]] = {}
    for entry in DIMENSIONS.values():
        table.setdefault(exponents_of(entry.unit), (entry.phrase, {}))
    for name, (size, exponents) in unit_spellings().items():
        _, units = table.setdefault(",".join(map(str, exponents)), ("", {}))
        units[name] = float(f"{size:.12g}")
    return f"window.answerUnits = {json.dumps(table, separators=(',', ':'))};\n"

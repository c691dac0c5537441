"""Round scales: of forces and plots from the 1-2-5 series, of drawings from a list of ratios.

Newtons, sheet millimetres and real millimetres.
"""

import math
from collections.abc import Iterable

_SERIES = (1.0, 2.0, 5.0, 10.0)
# Reductions and enlargements of ISO 5455, with the steps between that a narrow sheet needs.
DRAWING_SCALES: tuple[tuple[int, int], ...] = (
    *((2, 1), (1, 1), (4, 5), (2, 3), (1, 2), (1, 3), (1, 4), (1, 5), (1, 6), (1, 8), (1, 10), (1, 15)),
    *((1, 20), (1, 25), (1, 30), (1, 40), (1, 50), (1, 75), (1, 100), (1, 200), (1, 500), (1, 1000)),
)


def round_up(value: float) -> float:
    """Return the smallest number of the series 1, 2, 5, 10, 20 ... that is not below a positive value.

    >>> round_up(3.1), round_up(500.0), round_up(0.011)
    (5.0, 500.0, 0.02)
    """
    decade = 10.0 ** math.floor(math.log10(value))
    # the slack keeps 500 at 500 when its logarithm is a hair off
    return float(f"{next(step for step in _SERIES if step * decade >= value * (1 - 1e-9)) * decade:.1g}")


def round_down(value: float) -> float:
    """Return the largest number of the series 1, 2, 5, 10, 20 ... that is not above a positive value.

    >>> round_down(431.0), round_down(200.0)
    (200.0, 200.0)
    """
    decade = 10.0 ** math.floor(math.log10(value * (1 + 1e-9)))
    return float(f"{max(step for step in _SERIES if step * decade <= value * (1 + 1e-9)) * decade:.1g}")


def round_scale(largest_newtons: float, room_mm: float) -> float:
    """Return the finest round force scale, newtons per sheet millimetre, at which the largest force has room.

    Serves any other quantity as well: a moment in newton metres, a deflection in millimetres.

    >>> round_scale(5020.0, 18.0)
    500.0
    """
    if largest_newtons <= 0:
        return 1.0
    return round_up(largest_newtons / room_mm)


def drawing_scale(
    extent_mm: float, room_mm: float, choices: Iterable[tuple[int, int]] = DRAWING_SCALES
) -> tuple[float, str]:
    """Return the largest scale of a list at which an extent fits its room, and how it is written.

    `choices` are pairs (sheet, real); when even the smallest is too large it is taken all the same.

    >>> drawing_scale(740.0, 150.0)
    (0.2, '1 : 5')
    """
    ordered = sorted(choices, key=lambda pair: pair[0] / pair[1], reverse=True)
    sheet, real = next((pair for pair in ordered if extent_mm * pair[0] / pair[1] <= room_mm), ordered[-1])
    return sheet / real, f"{sheet} : {real}"

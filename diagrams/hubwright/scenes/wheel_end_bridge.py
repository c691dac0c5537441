"""The bridge of the wheel-end section: how force and moment at the bearing centre come from its two rows, in numbers.

What is multiplied is told with so many digits that the product of what is printed rounds to what is printed.
"""

from collections.abc import Callable

from hubwright.quantities import Kind
from hubwright.quantities.formatting import NO_BREAK
from hubwright.quantities.printed import places, read, with_places
from hubwright.scenes.wheel_end_words import Wording, rows_of

_FINER = ((0, 0), (0, 1), (1, 0), (1, 1), (2, 1), (1, 2), (2, 2))  # further digits of the forces and of the lever
_LONGEST = 50  # letters of a product with what it makes: as many as there is room for beside the other block


def bridge(words: Wording) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return two blocks of lines that lead from force and moment at the centre to the two rows."""
    rows, spread = words.state.row_load, words.results.bearing.effective_spread
    if rows is None or spread is None:
        return (), ()
    B, M = words.state.bearing_force, words.state.bearing_moment
    first = [
        "*On the hub, the rows share the force",
        "{F|A} and {F|B} together make {B|z}",
        _sum(words, "z", words.upright),
    ]
    second = [
        "*and as a couple they hold the moment",
        f"{_apart(words, 'z')}, times {{ℓ}}/2, makes {{M|x}}",
        *_couple(words, "z", spread / 2, M.x),
    ]
    if not words.nothing(B.x):
        first += ["fore and aft they make {B|x}", _sum(words, "x", words.fore_and_aft)]
    if not words.nothing(rows.outboard.x - rows.inboard.x):
        second += ["fore and aft, {M|z} about the vertical", *_couple(words, "x", spread / 2, M.z)]
    return tuple(first), tuple(second)


def _rows(words: Wording, axis: str) -> tuple[float, float]:
    assert words.state.row_load is not None
    first, second = (getattr(row, axis) for row in rows_of(words.state.row_load))
    return first, second


def _apart(words: Wording, axis: str) -> str:
    """Return what of two row loads is multiplied: of loads that point opposite ways their sizes add up."""
    first, second = _rows(words, axis)
    return "their difference" if first * second >= 0 else "opposed: their sum"


def _sum(words: Wording, axis: str, word: Callable[[float], str]) -> str:
    """Return a sum of two row loads, as they act on the hub; directions are named once if they agree."""
    first, second = _rows(words, axis)
    total = getattr(words.state.bearing_force, axis)
    sizes = (*words.row_forces(axis), words.force(total))
    if first * second >= 0:
        return f"{sizes[0]} + {sizes[1]} = {sizes[2]}, all {word(-total)}"
    ways = (word(-first), word(-second), word(-total))
    summed = f"{sizes[0]} {ways[0]} + {sizes[1]} {ways[1]} = {sizes[2]}"
    # the longer words leave no room for a third: the label of the sum has it
    return summed if word == words.fore_and_aft else f"{summed} {ways[2]}"


def _couple(words: Wording, axis: str, half: float, moment: float) -> tuple[str, ...]:
    """Return the moment as a product on a line or two, in symbols where no few digits make it come out."""
    loads, told, lever = _rows(words, axis), words.row_forces(axis), words.length(half)
    sense, sign = (-1, "−") if loads[0] * loads[1] >= 0 else (1, "+")
    order = (0, 1) if abs(loads[0]) >= abs(loads[1]) else (1, 0)
    for more, more_of_lever in _FINER:
        (larger, F), (smaller, f) = (_finer(loads[n], told[n], "force", words, more, like=told) for n in order)
        by, arm = _finer(half, lever, "small length", words, more_of_lever)
        if words.moment((F + sense * f) * arm) == words.moment(moment):
            product, result = f"({larger} {sign} {smaller}) · {by}", f"= {words.moment(moment)}"
            return (f"{product} {result}",) if len(product + result) < _LONGEST else (product, result)
    names = [f"{{F|{'AB'[n]}{'' if axis == 'z' else axis}}}" for n in order]
    return (f"({names[0]} {sign} {names[1]}) · {{ℓ}}/2 = {words.moment(moment)}",)


def _finer(
    value: float, told: str, kind: Kind, words: Wording, digits: int, like: tuple[str, ...] = ()
) -> tuple[str, float]:
    """Return a size as told, or with so many digits more (none less than `like` in its unit), and what is read [SI]."""
    if digits:
        unit = told.partition(NO_BREAK)[2]
        most = max(places(text) for text in (told, *like) if text.endswith(NO_BREAK + unit))
        told = with_places(abs(value), told, most + digits, kind, words.units)
    return told, read(told, kind, words.units)

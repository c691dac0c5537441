"""A symbol and its number on one line where there is room for it; how wide words are, nearly.

Sheet millimetres. Scenes know no faces: widths are those of the lettering, a little more where in doubt.
"""

from collections.abc import Iterable, Sequence

from hubwright.scenes.vocabulary import MARK

# widths over the cap height: of strong letters, thin, slender or not; of a symbol, and of each letter of its subscript
_THIN, _SLENDER, _LETTER, _SYMBOL, _BELOW = 0.47, 0.67, 1.06, 1.4, 0.56
_PLAIN = 0.87  # of letters that are not strong, over strong ones
_WIDTHS = dict.fromkeys(" \N{NO-BREAK SPACE}.,ijl", _THIN) | dict.fromkeys("frt", _SLENDER)


def equation(symbol: str, told: str, room: float, *, size: float, strong: bool = True) -> tuple[str, ...]:
    """Return symbol and number as one line, or, where the room is too narrow, broken before the equals sign.

    >>> equation("{W}", "20.9 kN", 30.0, size=2.5), equation("{W}", "20.9 kN", 20.0, size=2.5)
    (('*{W} = 20.9 kN',), ('*{W}', '*= 20.9 kN'))
    """
    mark = "*" if strong else ""
    whole = f"{mark}{symbol} = {told}"
    return (whole,) if width(whole, size) < room else (f"{mark}{symbol}", f"{mark}= {told}")


def largest(lines: Iterable[tuple[str, float]], sizes: Sequence[float]) -> float:
    """Return the first of some cap heights at which every line keeps to its room, else the last one."""
    known = tuple(lines)
    return next((size for size in sizes if all(width(text, size) < room for text, room in known)), sizes[-1])


def width(text: str, size: float) -> float:
    """Return how wide a line of words is at a cap height."""
    share = 1.0 if text.startswith("*") else _PLAIN
    letters = MARK.sub("", text.removeprefix("*"))
    above = sum(_SYMBOL * len(each["symbol"].replace(" ", "")) for each in MARK.finditer(text))
    below = sum(_BELOW * len(each["below"] or "") for each in MARK.finditer(text))
    return size * (above + share * (below + sum(_WIDTHS.get(letter, _LETTER) for letter in letters)))

"""Words made from numbers, correct English whatever the value, so that a lesson holds for any vehicle.

Frames that they fit:

    times         carries … the load · is … what it was · … as much      twice, a third, 1.2 times, about
    as_much       carries …                                              a tenth more, half as much again, twice as much
    more_or_less  carries … the other                                    more than, less than, as much as
    side          12 mm …                                                outboard, inboard, on centre
    up_or_down    pushes …                                               up, down, neither up nor down
    verdict       the change … the load                     raises, lowers, does not change, may raise or lower
"""

from collections.abc import Iterable

from markupsafe import Markup

from hubwright.errors import HubwrightError
from hubwright.lessons.numbers import Number, show
from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.quantities import Quantity, format_number

# Closer than this two numbers read alike when shown with three digits.
_ALIKE = 0.005
_ON_CENTRE = 0.05e-3  # m: shown as 0 mm

COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_FRACTIONS = (
    (1 / 10, "a tenth"), (1 / 8, "an eighth"), (1 / 6, "a sixth"), (1 / 5, "a fifth"), (1 / 4, "a quarter"),
    (3 / 10, "three tenths"), (1 / 3, "a third"), (2 / 5, "two fifths"), (1 / 2, "half"), (3 / 5, "three fifths"),
    (2 / 3, "two thirds"), (3 / 4, "three quarters"), (4 / 5, "four fifths"), (9 / 10, "nine tenths"),
)  # fmt: skip
_MULTIPLES = (
    *_FRACTIONS, (1.0, ""), (1.5, "one and a half times"), (2.0, "twice"), (2.5, "two and a half times"),
    *((float(n), f"{COUNTS[n]} times") for n in range(3, 13)),
)  # fmt: skip
_PARTS = ((1 / 20, "a twentieth"), *_FRACTIONS)


class WordsError(HubwrightError, ValueError):
    """A value that no words fit, with what to do about it."""


def times(ratio: Number) -> str:
    """Return a ratio as a multiplier that stands before "the load", "as much" or "what it was".

    Examples
    --------
    >>> times(3.02), times(0.5), times(1.22), times(1.01)
    ('about three times', 'half', '1.2 times', 'about')
    """
    r = _ratio(ratio)
    value, word = min(_MULTIPLES, key=lambda multiple: abs(multiple[0] - r))
    error = abs(r / value - 1)
    if value == 1.0 and error <= 0.025:
        return "just" if error <= _ALIKE else "about"
    if word and error <= 0.04:
        return word if error <= _ALIKE else f"about {word}"
    return f"{format_number(r, significant=2)} times"


def as_much(ratio: Number) -> str:
    """Return a ratio as a phrase that stands for itself: "a tenth more", "half as much again", "twice as much".

    Examples
    --------
    >>> as_much(1.1), as_much(1.5), as_much(2), as_much(0.667), as_much(0.25)
    ('a tenth more', 'half as much again', 'twice as much', 'a third less', 'a quarter as much')
    """
    r = _ratio(ratio)
    if abs(r - 1) <= 0.025 or r >= 1.95 or r <= 0.55:
        return f"{times(r)} as much"
    part, word = min(_PARTS, key=lambda candidate: abs(candidate[0] - abs(r - 1)))
    meant = 1 + part if r > 1 else 1 - part
    if abs(meant / r - 1) > 0.04:  # no fraction is near enough
        return f"{times(ratio)} as much"
    nearly = "" if abs(abs(r - 1) - part) <= _ALIKE * r else "about "
    if r < 1:
        return f"{nearly}{word} less"
    return f"{nearly}half as much again" if word == "half" else f"{nearly}{word} more"


def comparable(value: Number, base: Number, scale: Number | None = None) -> bool:
    """Return whether the ratio of two values may be stated: same sign, and a base that is not near zero.

    `scale` is a value beside which the base must not be small: an eighth of it at least.
    """
    a, b = _value(value), _value(base)
    floor = 0.0 if scale is None else abs(_value(scale)) / 8
    return a * b > 0 and abs(b) >= floor


def side(offset: Number) -> str:
    """Return on which side of the bearing centre something lies."""
    y = _value(offset)
    if abs(y) < _ON_CENTRE:
        return "on centre"
    return "outboard" if y > 0 else "inboard"


def up_or_down(value: Number) -> str:
    """Return which way something acts."""
    v = _value(value)
    return "up" if v > 0 else "down" if v < 0 else "neither up nor down"


def more_or_less(value: Number, base: Number) -> str:
    """Return how a value compares with a base, for a sentence that goes on with the base."""
    return {1: "more than", -1: "less than", 0: "as much as"}[_order(value, base)]


def larger(*values: Quantity) -> Quantity:
    """Return the largest of some quantities of one kind."""
    return max(values)


def verdict(ratio: Number) -> str:
    """Return what a change does, from the ratio of after to before; a range that holds 1 settles nothing."""
    low, high = (ratio.low, ratio.high) if isinstance(ratio, Quantity) else (None, None)
    if low is not None and high is not None:
        return "raises" if low > 1 else "lowers" if high < 1 else "may raise or lower"
    return {1: "raises", -1: "lowers", 0: "does not change"}[_order(_ratio(ratio), 1.0)]


def wheel_words(wheel: str) -> str:
    """Return the words for a wheel: "left front", "left"."""
    return " ".join(reversed(wheel.split("_")))


def counted(count: int, noun: str, plural: str = "") -> str:
    """Return a count of things in words up to twelve: "one wheel", "two wheels", "13 balls"."""
    word = COUNTS[count] if 0 <= count < len(COUNTS) else format_number(count, significant=15)
    return f"{word} {noun if count == 1 else plural or noun + 's'}"


def listed(words: Iterable[str]) -> str:
    """Return words as a list in a sentence: "a, b and c"."""
    items = list(words)
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} and {items[-1]}"


ARM, BAR = 0.7, 1.0  # m, at which things are held or stand
PERSON, CEMENT, BUCKET, BOTTLE = 75.0, 25.0, 10.0, 1.0  # kg, round numbers for comparison
_THINGS = (
    (PERSON, "grown person", "grown people"),
    (CEMENT, "bag of cement", "bags of cement"),
    (BUCKET, "full bucket of water", "full buckets of water"),
    (BOTTLE, "bottle of water", "bottles of water"),
)


def everyday(quantity: Quantity) -> Markup:
    """Return an everyday measure of a mass, a force or a moment, for a sentence that goes on from "about".

    The thing's own mass is said with it, so that a reader can do the sum.
    """
    size = abs(quantity.value)
    if quantity.unit == "N*m":
        if _fits(size / (PERSON * STANDARD_GRAVITY * BAR)):
            pile = _pile(size / (PERSON * STANDARD_GRAVITY * BAR), *_THINGS[0])
            return Markup("{}, {} out on a bar").format(pile, show(Quantity(BAR, "m")))
        held = _THINGS[2] if _fits(size / (BUCKET * STANDARD_GRAVITY * ARM)) else _THINGS[3]
        return Markup("{}, held at arm’s length").format(_pile(size / (held[0] * STANDARD_GRAVITY * ARM), *held))
    mass = size / STANDARD_GRAVITY if quantity.unit == "N" else size
    thing = next((one for one in _THINGS if _fits(mass / one[0])), _THINGS[-1])
    return Markup("the weight of {}").format(_pile(mass / thing[0], *thing))


def _fits(count: float) -> bool:
    """Return whether a whole number of things comes near enough to be a comparison."""
    return count >= 1.5 or 0.8 <= count <= 1.2


def _pile(count: float, mass: float, one: str, many: str) -> Markup:
    each = show(Quantity(mass, "kg"))
    if count < 0.8:
        return Markup("less than one {} of {}").format(one, each)
    return Markup("{} of {}{}").format(counted(round(count), one, many), each, "" if round(count) == 1 else " each")


def _order(value: Number, base: Number) -> int:
    a, b = _value(value), _value(base)
    if isinstance(value, Quantity) and isinstance(base, Quantity):
        _ = value < base  # refuses unlike units
    if abs(a - b) <= _ALIKE * max(abs(a), abs(b)):
        return 0
    return 1 if a > b else -1


def _value(number: Number) -> float:
    return number.value if isinstance(number, Quantity) else float(number)


def _ratio(ratio: Number) -> float:
    r = float(ratio)
    if not r > 0:
        raise WordsError(
            f"a ratio of {format_number(r)} has no words: the sign changes or there is nothing to compare. "
            "Ask 'comparable(value, base)' first and choose another sentence."
        )
    return r

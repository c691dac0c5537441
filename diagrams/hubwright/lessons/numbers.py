"""Numbers in a page: each in both unit systems, of which the reader's switch shows one."""

import re
from functools import lru_cache
from html import unescape
from typing import get_args

from markupsafe import Markup, escape

from hubwright.errors import QuantityError
from hubwright.quantities import (
    DIMENSIONS,
    KINDS,
    DimensionName,
    Kind,
    Quantity,
    Shown,
    System,
    format_number,
    format_range,
    parse,
)

Number = Quantity | int | float
NO_BREAK = "\u00a0"


def both(si: str, us: str) -> Markup:
    """Return a text in both unit systems, or once where they agree."""
    if si == us:
        return Markup('<span class="q">{}</span>').format(si)
    return Markup('<span class="q"><span class="si">{}</span><span class="us">{}</span></span>').format(si, us)


def shown(value: Number, system: System, *, digits: int | None = None, kind: Kind | None = None) -> Shown:
    """Return a value as shown in a unit system, to so many significant digits where asked."""
    quantity = (
        value if isinstance(value, Quantity) else Quantity(value, "1", kind="count" if isinstance(value, int) else None)
    )
    usual = quantity.shown(system, kind)
    kind = kind or quantity.kind
    if digits is None or kind is None:
        return usual
    scale = next(scale for scale in KINDS[kind][0 if system == "si" else 1] if scale.unit == usual.unit)
    return Shown(format_number((quantity.value - scale.offset) / scale.size, significant=digits), usual.unit)


def show(value: Number, digits: int | None = None, kind: Kind | None = None) -> Markup:
    """Return a value with its unit in both systems."""
    return both(*(shown(value, system, digits=digits, kind=kind).text for system in get_args(System)))


def number(value: Number, digits: int | None = None, kind: Kind | None = None) -> Markup:
    """Return the digits of a value without its unit, for a table whose head holds the unit."""
    return both(*(shown(value, system, digits=digits, kind=kind).number for system in get_args(System)))


def unit(value: Number, kind: Kind | None = None) -> Markup:
    """Return the unit of a value in both systems, for the head of a table."""
    return both(*(shown(value, system, kind=kind).unit for system in get_args(System)))


def show_range(value: Quantity, kind: Kind | None = None) -> Markup:
    """Return the range of a value in both systems; nothing where no range is known."""
    kind = kind or value.kind
    if value.low is None or value.high is None or kind is None:
        return Markup("")
    return both(*(format_range(value.low, value.high, kind, system) for system in get_args(System)))


# The unit "g" of a lesson is the acceleration: nothing in a wheel end is weighed in grams.
_DIMENSIONS: tuple[DimensionName, ...] = (
    "length", "acceleration", "mass", "force", "moment", "stiffness", "pressure",
    "damping", "angle", "temperature", "frequency", "speed", "time", "ratio",
)  # fmt: skip
_KINDS: dict[str, Kind] = {"acceleration": "acceleration"}
_US_UNITS = re.compile(
    r"(?:in|ft|inch(?:es)?|feet|lbs?|lbf|psi|ksi|mi|mph|°F|[″”\"])\s*$|\b(?:ft|in|lbf?)[·*-]|\blbf?/in"
)


_LONG = 0.254  # m


class Given(Quantity):
    """A number that is data, not a result: it prints as written, and calculates like any quantity."""

    __slots__ = ("markup", "written")

    def __init__(self, quantity: Quantity, written: str, markup: Markup) -> None:
        """Keep the quantity, the text as written and the text for the page."""
        super().__init__(quantity.value, quantity.unit, kind=quantity.kind, low=quantity.low, high=quantity.high)
        self.written = written
        self.markup = markup

    def __html__(self) -> str:
        """Return the text for the page."""
        return str(self.markup)

    def __str__(self) -> str:
        """Return the text for the page, so that a lesson can join it to other words."""
        return str(self.markup)


def given(text: str, kind: Kind | None = None) -> Given | Markup:
    """Return a number that is data, not a result: as written in its own unit system, converted in the other.

    Examples
    --------
    >>> str(given("25 mm")).replace(NO_BREAK, " ")
    '<span class="q"><span class="si">25 mm</span><span class="us">0.98 in</span></span>'
    >>> (given("25 mm") + given("1 in")).value
    0.0504
    """
    written = re.sub(r"(?<=\d) (?=\S)", NO_BREAK, text.strip())
    quantity = quantity_of(text)
    if quantity is None:
        return both(written, written)
    if kind is not None:
        quantity = quantity.as_kind(kind)
    if quantity.kind in (None, "ratio", "acceleration", "angle", "frequency", "time"):
        return Given(quantity, text, both(written, written))
    if _US_UNITS.search(text):
        return Given(quantity, text, both(quantity.shown("si").text, written))
    return Given(quantity, text, both(written, by_tape(quantity)))


def by_tape(quantity: Quantity) -> str:
    """Return a value given in SI units as it is told in US units: a long length to a tenth of an inch, no finer.

    Examples
    --------
    >>> by_tape(Quantity(1.5, "m")).replace(NO_BREAK, " "), by_tape(Quantity(0.025, "m")).replace(NO_BREAK, " ")
    ('59.1 in', '0.98 in')
    """
    usual = quantity.shown("us")
    if usual.unit == "in" and abs(quantity.value) >= _LONG:
        return shown(quantity, "us", digits=3).text
    return usual.text


@lru_cache(maxsize=2048)
def quantity_of(text: str) -> Quantity | None:
    """Return the value that a text states, whatever its dimension; None where it states none."""
    for dimension in _DIMENSIONS:
        if dimension == "acceleration" and not re.search(r"\d\s*[gG]$", text.strip()):
            continue
        try:
            read = parse(text, dimension)
        except QuantityError:
            continue
        return Quantity(
            read.value, DIMENSIONS[dimension].unit, kind=_KINDS.get(dimension), low=read.low, high=read.high
        )
    return None


_TAG = re.compile(r"<[^>]*>")
_BOTH = re.compile(r'<span class="q"><span class="si">(.*?)</span><span class="us">(.*?)</span></span>', re.S)


def plain(html: str) -> str:
    """Return a text without markup, a number in both systems as "25 mm (0.98 in)", for attributes and page titles."""
    return unescape(_TAG.sub("", _BOTH.sub(r"\1 (\2)", str(html))))


def attribute(html: str) -> Markup:
    """Return such a plain text, escaped for an attribute."""
    return escape(plain(html))

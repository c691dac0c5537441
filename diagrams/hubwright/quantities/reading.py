"""Reading what people write for a value with a unit: `8 1/2 in`, `1,120 kg`, `42 mm ± 10 %`, `80 ft-lb`.

A comma or space before each group of three digits separates thousands, any other comma is a
decimal comma. A single `1,250` stays open to two readings where a thousand of the unit would be out
of this world (`2,780 m`): that is refused. A mass is a mass and a force is a force; in torques,
stiffnesses and pressures the trade's `lb` and `kg` can only be meant as forces and are read so.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

import pint

from hubwright.errors import QuantityError
from hubwright.quantities.units import DIMENSIONS, DimensionName, registry, unit_of


@dataclass(frozen=True, slots=True)
class Measured:
    """A value in SI units, with its range where one was stated."""

    value: float
    low: float | None = None
    high: float | None = None


_SIGNS = str.maketrans({"−": "-", "–": "-", "‐": "-", "‑": "-", "\u00a0": " ", "\u202f": " ", "\u2009": " "})
_FRACTIONS = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_SYMBOLS = (
    *((sign, "*") for sign in "·⋅•×∙"),
    ("²", "**2"), ("³", "**3"), ("⁴", "**4"), ("^", "**"),
    ("µ", "u"), ("μ", "u"), ("º", "°"), ("℃", "°C"), ("℉", "°F"),
    ("°C", "degC"), ("° C", "degC"), ("°F", "degF"), ("° F", "degF"), ("°", "deg"),
    ("%", "percent"),
    *((mark, " in ") for mark in ('"', "″", "”", "“", "''")),
    *((mark, " ft ") for mark in ("'", "′", "’")),
)  # fmt: skip
_TEMPERATURES = {"C": "degC", "F": "degF", "deg C": "degC", "deg F": "degF"}
_AS_FORCES: frozenset[DimensionName] = frozenset({"moment", "stiffness", "intensity", "damping", "pressure"})
_WITHOUT_UNIT: frozenset[DimensionName] = frozenset({"ratio", "acceleration", "count"})
_LARGE_UNITS = frozenset({"m", "km", "ft", "inch", "t", "kN", "MPa", "GPa", "deg", "rad", ""})
_PLAIN = r"(?:\d{1,3}(?: \d{3})+(?![\d/])(?:[.,]\d+)?|\d[\d.,]*|\.\d+)(?:[eE][+-]?\d+)?"
_NUMBER = re.compile(rf"(?P<sign>[+-]?)\s*(?:(?:(?P<whole>\d+)[ -]+)?(?P<top>\d+)/(?P<bottom>\d+)|(?P<plain>{_PLAIN}))")
_FEET_AND_INCHES = re.compile(r"^(?P<feet>[+-]?\s*\d+)\s*(?:ft|foot|feet)\s+(?P<inches>\d.*?)\s*(?:in|inch|inches)?$")


def parse(text: object, dimension: DimensionName) -> Measured:
    """Return the value written in the text, in SI units, with its range.

    Parameters
    ----------
    text
        What stands in a file or was typed: a text with a unit, or a number where no unit is needed.
    dimension
        What the value must be.

    Raises
    ------
    QuantityError
        When it is not a value of that dimension; the message says how to write it.

    Examples
    --------
    >>> parse("1,120 kg ± 10 kg", "mass")
    Measured(value=1120.0, low=1110.0, high=1130.0)
    >>> round(parse("80 ft-lb", "moment").value, 2)
    108.47
    """
    entry = DIMENSIONS[dimension]
    if isinstance(text, int | float) and not isinstance(text, bool):
        if dimension not in _WITHOUT_UNIT:
            raise _refused(text, dimension, f"{entry.phrase} with its unit")
        return _checked(Measured(float(text)), text, dimension)
    if not isinstance(text, str):
        raise _refused(text, dimension)
    main, mark, spread = (part.strip() for part in _symbols(text).partition("±"))
    number, unit_text = _split(main, text, dimension)
    if mark:
        spread_number, spread_unit = _split(spread, text, dimension)
        unit_text = unit_text or (spread_unit if spread_unit != "percent" else "")
    unit = _unit(unit_text, text, dimension)
    value = _number(number, unit, text, dimension)
    si = unit_of(entry.unit)
    middle = _to_si(value, unit, si)
    if not mark:
        return _checked(Measured(middle), text, dimension)
    if spread_unit == "percent" and unit_text != "percent":
        width = abs(value) * _number(spread_number, registry.percent, text, dimension) / 100
        low, high = value - width, value + width
    else:
        other = _unit(spread_unit or unit_text, text, dimension)
        width = _number(spread_number, other, text, dimension)
        if other != unit:
            width = float(registry.Quantity(width, other).to(unit).magnitude)
        low, high = value - width, value + width
    if low > high:
        raise _refused(text, dimension, f"{entry.phrase} with a positive range")
    return _checked(Measured(middle, _to_si(low, unit, si), _to_si(high, unit, si)), text, dimension)


def _symbols(text: str) -> str:
    """Return the text with one spelling for each sign and mark."""
    text = text.translate(_SIGNS)
    text = re.sub(r"\+\s*/?\s*-(?=\s*[\d.])", "±", text)
    for sign, fraction in _FRACTIONS.items():
        text = re.sub(rf"(\d?)\s*{sign}", rf"\1 {fraction}", text)
    for sign, plain in _SYMBOLS:
        text = text.replace(sign, plain)
    return text.strip()


def _split(text: str, given: str, dimension: DimensionName) -> tuple[str, str]:
    """Return the number and the unit of a text, both as text."""
    feet = _FEET_AND_INCHES.match(text)
    if feet and dimension == "length":
        inches = _number(feet["inches"], registry.inch, given, dimension)
        sign = -1 if feet["feet"].startswith("-") else 1
        return repr(float(feet["feet"].replace(" ", "")) * 12 + sign * inches), "inch"
    match = _NUMBER.match(text)
    if match is None:
        raise _refused(given, dimension)
    return match.group(), text[match.end() :].strip()


def _unit(text: str, given: str, dimension: DimensionName) -> pint.Unit:
    """Return the unit of a text, checked to be of the dimension needed."""
    entry = DIMENSIONS[dimension]
    if dimension == "acceleration" and text in ("g", "G"):
        text = ""
    if not text:
        if dimension in _WITHOUT_UNIT:
            return registry.dimensionless
        raise _refused(given, dimension, f"{entry.phrase} with its unit")
    text = _TEMPERATURES.get(text, text) if dimension == "temperature" else text
    text = re.sub(r"\bper\b", "/", re.sub(r"(?<=[a-z])\.", "", text))
    text = re.sub(r"(?<=[A-Za-z])\s*-\s*(?=[A-Za-z])", "*", text)
    text = re.sub(r"\bin\b", "inch", text)  # pint would read Python's word
    if dimension in _AS_FORCES:
        text = re.sub(r"\b(?:lbs?|lbm|pounds?)\b", "lbf", re.sub(r"\bkgs?\b", "kgf", text))
    unit = None
    for case_sensitive in (True, False):
        try:
            unit = registry.parse_units(text, case_sensitive=case_sensitive)
            break
        except Exception:  # pint raises errors of many sorts on odd text (tokenizer, attribute, value)
            continue
    if unit is None:
        raise _refused(given, dimension)
    if unit.dimensionality != unit_of(entry.unit).dimensionality:
        raise _refused(given, dimension)
    return unit


def _number(text: str, unit: pint.Unit, given: str, dimension: DimensionName) -> float:
    """Return the number of a text; its unit helps to tell a decimal comma from thousands."""
    match = _NUMBER.fullmatch(text.strip())
    if match is None:
        raise _refused(given, dimension)
    sign = -1.0 if match["sign"] == "-" else 1.0
    if match["bottom"]:
        if int(match["bottom"]) == 0:
            raise _refused(given, dimension)
        return sign * (int(match["whole"] or 0) + int(match["top"]) / int(match["bottom"]))
    digits = match["plain"].replace(" ", "")
    if (
        re.fullmatch(r"[1-9]\d{0,2},\d{3}", digits)
        and str(unit if unit != registry.dimensionless else "") in _LARGE_UNITS
    ):
        point, group = digits.replace(",", "."), digits.replace(",", "")
        rest = given.translate(_SIGNS).partition(digits)[2]
        raise _refused(
            given,
            dimension,
            f"{DIMENSIONS[dimension].phrase} with one reading",
            f"Write it like '{point}{rest}' or '{group}{rest}'.",
        )
    if re.fullmatch(r"[1-9]\d{0,2}(?:,\d{3})+(?:\.\d*)?(?:[eE].*)?", digits):
        digits = digits.replace(",", "")
    elif re.fullmatch(r"[1-9]\d{0,2}(?:\.\d{3})+,\d+|[1-9]\d{0,2}(?:\.\d{3}){2,}", digits):
        digits = digits.replace(".", "").replace(",", ".")
    elif digits.count(",") == 1 and "." not in digits:
        digits = digits.replace(",", ".")
    try:
        return sign * float(digits)
    except ValueError:
        raise _refused(given, dimension) from None


def _to_si(value: float, unit: pint.Unit, si: pint.Unit) -> float:
    return float(registry.Quantity(value, unit).to(si).magnitude)


def _checked(measured: Measured, given: object, dimension: DimensionName) -> Measured:
    if not abs(measured.value) < float("inf"):
        raise _refused(given, dimension, f"{DIMENSIONS[dimension].phrase}, finite")
    if dimension == "count" and measured.value != round(measured.value):
        raise _refused(given, dimension)
    return measured


def _refused(given: object, dimension: DimensionName, needed: str | None = None, repair: str = "") -> QuantityError:
    entry = DIMENSIONS[dimension]
    if not repair:
        example = entry.example
        number = _NUMBER.match(_symbols(given)) if isinstance(given, str) else None
        swap = {"mass": ("lbf", "lb"), "force": ("lb", "lbf")}.get(dimension) if number else None
        if number and swap and re.fullmatch(rf"{swap[0]}s?", _symbols(str(given))[number.end() :].strip()):
            example = f"{number.group()} {swap[1]}"
        repair = f"Write it like '{example}'."
        if dimension in _WITHOUT_UNIT:
            repair = f"Write it like {example}."
    return QuantityError(needed=needed or entry.phrase, given=given, repair=repair)

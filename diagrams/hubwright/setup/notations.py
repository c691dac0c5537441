"""Notations of the trade: tire sizes, offsets written as ET, rim widths with a letter, threads."""

from __future__ import annotations

import re
from dataclasses import dataclass

from hubwright.errors import QuantityError
from hubwright.mechanics import tire_geometry
from hubwright.mechanics.constants import INCH
from hubwright.quantities import Measured, parse
from hubwright.setup.model import Thread

_METRIC = re.compile(
    r"(?P<prefix>[A-Z]{0,2})\s*(?P<width>\d{2,3}(?:\.\d+)?)\s*/\s*(?P<aspect>\d{2,3})"
    r"\s*(?:Z?[RBD]|-|\s)\s*(?P<rim>\d{1,2}(?:\.\d+)?)(?P<marks>(?:[A-Z\s(].*)?)",
    re.IGNORECASE,
)
_FLOTATION = re.compile(
    r"(?P<prefix>[A-Z]{0,2})\s*(?P<diameter>\d{2}(?:\.\d+)?)\s*[X×*]\s*(?P<width>\d{1,2}(?:\.\d+)?)"
    r"\s*(?:Z?[RBD]|-|\s)\s*(?P<rim>\d{1,2}(?:\.\d+)?)(?P<marks>(?:[A-Z\s(].*)?)",
    re.IGNORECASE,
)
_METRIC_THREAD = re.compile(r"M\s*(\d+(?:[.,]\d+)?)\s*[x×*]\s*(\d+(?:[.,]\d+)?)", re.IGNORECASE)
_INCH_THREAD = re.compile(r"(\d+)/(\d+)\s*(?:\"|in)?\s*[-–x×]\s*(\d+)(?:\s*UN[FC]?)?", re.IGNORECASE)
_TIRE_REPAIR = "Write it like '245/75R16' or '33x12.50R15', or give 'free_diameter' and 'section_width' instead."


@dataclass(frozen=True, slots=True)
class TireSize:
    """A tire size: the code as written, and its nominal dimensions [m]."""

    text: str
    free_diameter: float
    section_width: float
    rim_diameter: float


def tire_size(given: object) -> TireSize:
    """Return the nominal dimensions of a metric or flotation size code.

    Examples
    --------
    >>> round(tire_size("LT245/75R16 120/116Q").free_diameter, 4)
    0.7739
    >>> tire_size("30x10.00R15").section_width
    0.254
    """
    text = " ".join(given.split()) if isinstance(given, str) else ""
    plain = text.replace(",", ".")
    if match := _METRIC.fullmatch(plain):
        rim = float(match["rim"]) * INCH
        width = float(match["width"]) / 1000
        height = tire_geometry.section_height(section_width=width, aspect_ratio=float(match["aspect"]) / 100)
        diameter = tire_geometry.free_diameter(rim_diameter=rim, section_height=height)
    elif match := _FLOTATION.fullmatch(plain):
        rim = float(match["rim"]) * INCH
        width = float(match["width"]) * INCH
        diameter = tire_geometry.flotation_free_diameter(nominal_diameter_in_inches=float(match["diameter"]))
    else:
        raise QuantityError(needed="a tire size", given=given, repair=_TIRE_REPAIR)
    if not (0.05 <= width <= 0.6 and 0.1 <= rim < diameter <= 2.0):
        raise QuantityError(needed="a tire size that exists", given=given, repair=_TIRE_REPAIR)
    return TireSize(text, float(diameter), width, rim)


def wheel_offset(given: object) -> Measured:
    """Return a wheel's offset; `ET30` is 30 mm.

    Examples
    --------
    >>> wheel_offset("ET-12").value
    -0.012
    """
    if isinstance(given, str) and (match := re.fullmatch(r"ET\s*([+\-−]?\s*\d+(?:[.,]\d+)?)", given.strip(), re.I)):
        return parse(match[1].replace(" ", "") + " mm", "length")
    return parse(given, "length")


def rim_width(given: object) -> Measured:
    """Return a rim's width; the letter of `7J` names the flange, the number is in inches.

    Examples
    --------
    >>> round(rim_width("7 1/2 JJ").value, 5)
    0.1905
    """
    if isinstance(given, str) and (match := re.fullmatch(r"(\d[\d\s./,]*?)\s*(?:J{1,2}|JK|K)", given.strip(), re.I)):
        return parse(match[1] + " in", "length")
    return parse(given, "length")


def thread(given: object) -> Thread:
    """Return diameter and pitch of a thread.

    Examples
    --------
    >>> thread("1/2-20").diameter
    0.0127
    """
    text = given.strip() if isinstance(given, str) else ""
    if match := _METRIC_THREAD.fullmatch(text):
        diameter, pitch = (float(part.replace(",", ".")) / 1000 for part in match.groups())
    elif (match := _INCH_THREAD.fullmatch(text)) and int(match[2]) and int(match[3]):
        diameter, pitch = int(match[1]) / int(match[2]) * INCH, INCH / int(match[3])
    else:
        raise QuantityError(
            needed="a thread with its pitch", given=given, repair="Write it like 'M14x1.5' or '1/2-20'."
        )
    if not 0 < pitch < diameter:
        raise QuantityError(
            needed="a thread finer than its diameter", given=given, repair="Write it like 'M14x1.5' or '1/2-20'."
        )
    return Thread(text, diameter, pitch)


def property_class(given: object) -> str:
    """Return a fastener's property class as text; `10.9` without quotes is understood."""
    classes = ("4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9")
    text = str(given).strip()
    if text not in classes:
        raise QuantityError(
            needed="a property class of ISO 898-1",
            given=given,
            repair=f"One of {', '.join(classes)}: it stands on the bolt's head.",
        )
    return text

"""Turns LaTeX formulas into MathML at build time, so that a page needs neither a script nor a network."""

import re
from functools import lru_cache
from typing import Literal

from latex2mathml.converter import convert
from markupsafe import Markup

# MathML Core sets a lone upright letter in italic, so upright words go out as text; the converter
# also drops the space between a function's name and its argument and the one before a unit.
_REPAIRS = (
    (re.compile(r"\\mathrm\{([^}]*)\}"), r"\\text{\1}"),
    (re.compile(r"\\ \\text"), r"\\;\\text"),
    (re.compile(r"\\(tan|sin|cos)(?:\\,)?\s*(?=[\\\d a-zA-Z])"), r"\\\1\\,"),
    (re.compile(r"\^\\circ"), r"\\text{°}"),
)


@lru_cache(maxsize=4096)
def mathml(latex: str, display: Literal["block", "inline"] = "block") -> Markup:
    """Return the MathML of a formula written in LaTeX."""
    for pattern, repair in _REPAIRS:
        latex = pattern.sub(repair, latex)
    return Markup(convert(latex, display=display))


def equation(latex: str) -> Markup:
    """Return a formula on a line of its own."""
    return Markup('<div class="eq">{}</div>').format(mathml(latex))

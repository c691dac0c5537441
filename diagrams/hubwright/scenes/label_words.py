"""The lines of a label as one line, for a key beside a narrow drawing."""

import re
from collections.abc import Sequence

from hubwright.quantities.formatting import NO_BREAK
from hubwright.scenes.vocabulary import NOT_TO_SCALE

_CLAUSE = re.compile(r"[,:;] ")
_NUMBER = re.compile(r"[−+]?\d")
_VALUE = re.compile(rf"^[−+]?\d|\d{NO_BREAK}\S+$")  # a number with its unit, at the beginning or the end
_PARTED = (",", ":", "=", " at", " without")
_NAMED = {"{C}": "{C}, the bearing centre"}  # a letter alone says nothing away from its drawing


def in_one_line(lines: Sequence[str]) -> str:
    """Return the lines of a label as one: names, values and the words after them stand apart.

    >>> in_one_line(("*{F|A} =", "*3,400 N", "down on hub")), in_one_line(("Box, 60\u00a0kg", "not to scale"))
    ('{F|A} = 3,400 N, down on hub', 'Box, 60\xa0kg, not to scale')
    >>> in_one_line(("hub", "weight 137\u00a0N", "inertia 14\u00a0N", "inboard")), in_one_line(("body", "521\u00a0kg"))
    ('hub, weight 137\xa0N, inertia 14\xa0N, inboard', 'body: 521\xa0kg')
    >>> in_one_line(("*{W}", "*= 20.9\u00a0kN", "vehicle without", "gear, 2,130\u00a0kg"))
    '{W} = 20.9\xa0kN, vehicle without gear, 2,130\xa0kg'
    >>> in_one_line(("*corner", "× 0.44 at the end", "*duty", "severe at the end"))
    'corner × 0.44 at the end; duty: severe at the end'
    """
    text, named = "", False
    for line in lines:
        strong, words = line.startswith("*"), line.removeprefix("*")
        if not text:
            text = words
        elif strong and not text.endswith("=") and not words.startswith("="):  # another thing that has the same letter
            text += f"; {words}"
        else:
            text += f"{_between(text, words, named=named)} {words}"
        named = strong
    return _NAMED.get(text, text)


def _between(text: str, words: str, *, named: bool) -> str:
    """Return what parts words from the text before them; `named` if that is a name in strong letters."""
    last = _CLAUSE.split(text)[-1]
    if text.endswith(_PARTED) or words.startswith(("×", "=")):
        return ""
    if "=" in last or " = " in words or words == NOT_TO_SCALE or _VALUE.search(last) or last == "nothing":
        return ","
    if _NUMBER.match(words):  # of a name, or one more
        return "," if _NUMBER.search(text) else ":"
    return ":" if named else "," if _VALUE.search(words) and not words.startswith("of ") else ""

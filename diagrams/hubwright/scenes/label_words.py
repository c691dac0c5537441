"""The lines of a label as one line, for a key beside a narrow drawing."""

from collections.abc import Sequence

from hubwright.scenes.vocabulary import NOT_TO_SCALE

_NAMED = {"{C}": "{C}, the bearing centre"}  # a letter alone says nothing away from its drawing


def in_one_line(lines: Sequence[str]) -> str:
    """Return the lines of a label as one: a value stands apart from the words after it.

    >>> in_one_line(("*{F|A} =", "*3.40 kN", "down on hub")), in_one_line(("Box, 60 kg", "not to scale"))
    ('{F|A} = 3.40 kN, down on hub', 'Box, 60 kg, not to scale')
    """
    text = ""
    for line in lines:
        stands_apart = "=" in text.rpartition(",")[2] or " = " in line or line == NOT_TO_SCALE
        comma = "," if stands_apart and not text.endswith((",", ":", "=")) else ""
        text += ("" if not text else f"{comma} ") + line.removeprefix("*")
    return _NAMED.get(text, text)

"""The lines of a label as one line, for a key beside a narrow drawing."""

from collections.abc import Sequence

from hubwright.scenes.vocabulary import NOT_TO_SCALE

_NAMED = {"{C}": "{C}, the bearing centre"}  # a letter alone says nothing away from its drawing


def in_one_line(lines: Sequence[str]) -> str:
    """Return the lines of a label as one: a value stands apart from the words after it.

    >>> in_one_line(("*{F|A} =", "*3.40 kN", "down on hub")), in_one_line(("Box, 60 kg", "not to scale"))
    ('{F|A} = 3.40 kN, down on hub', 'Box, 60 kg, not to scale')
    >>> in_one_line(("*corner", "× 0.44 at the end", "*duty", "× 0.43 at the end"))
    'corner × 0.44 at the end; duty × 0.43 at the end'
    """
    text = ""
    for line in lines:
        if text and line.startswith("*") and not text.endswith("="):  # another thing that has the same letter
            text += f"; {line.removeprefix('*')}"
            continue
        stands_apart = "=" in text.rpartition(",")[2] or " = " in line or line == NOT_TO_SCALE
        comma = "," if stands_apart and not text.endswith((",", ":", "=")) else ""
        text += ("" if not text else f"{comma} ") + line.removeprefix("*")
    return _NAMED.get(text, text)

"""The short answer of a page in one sentence to copy: question, setup, numbers with their spans, what it leaves out."""

import re
from collections.abc import Sequence

from hubwright.lessons.numbers import NO_BREAK, Number, plain, shown
from hubwright.quantities import Quantity, System, format_range

_BOTH = re.compile(r'<span class="q"><span class="si">(.*?)</span><span class="us">(.*?)</span></span>', re.S)
LEAVES_OUT = "A simplified model; what it leaves out stands beside it"


def answer_sentence(title: str, tag: str, numerals: Sequence[tuple[str, Number]], about: str, system: System) -> str:
    """Return the sentence in one unit system; the page adds the link."""
    told = "; ".join(f"{_told(value, system)} {in_system(words, system)}" for words, value in numerals)
    question = f"{in_system(title, system)} " if title else ""
    whose = f", for {about}" if about else ""
    return f"{question}{in_system(tag, system)}{whose}: {told}. {LEAVES_OUT}:".replace(NO_BREAK, " ")


def in_system(html: str, system: System) -> str:
    """Return a text without markup, its numbers in one unit system.

    Examples
    --------
    >>> in_system('a <i>25</i> <span class="q"><span class="si">mm</span><span class="us">in</span></span> gap', "us")
    'a 25 in gap'
    """
    return plain(_BOTH.sub(r"\1" if system == "si" else r"\2", str(html)))


def _told(value: Number, system: System) -> str:
    text = shown(value, system).text
    if isinstance(value, Quantity) and value.low is not None and value.high is not None and value.kind is not None:
        return f"{text} (span {format_range(value.low, value.high, value.kind, system)})"
    return text

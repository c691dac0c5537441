"""Sets a formula that is written as text, as docstrings have it: indices below, powers above, symbols in italics.

The line stays as it is written: nothing is parsed, so that no formula is left out and none changes its meaning.
"""

import re

from markupsafe import Markup, escape

_BELOW = {"₀": "0", "₁": "1", "₂": "2", "₃": "3", "ᵢ": "i", "ₑ": "e", "ⱼ": "j"}
_ABOVE = {"⁰": "0", "²": "2", "³": "3", "⁴": "4", "ⁿ": "n"}
_LETTER = r"(?:(?![₀₁₂₃ᵢₑⱼ⁰²³⁴ⁿ])[^\W\d_])"
_TOKEN = re.compile(
    r"(?P<unit>N, mm|N and mm|mm\b|kg/m³)"
    rf"|(?P<word>{_LETTER}+(?:_\w+)*)|(?P<below>[₀₁₂₃ᵢₑⱼ]+)|(?P<above>[⁰²³⁴ⁿ]+)|(?P<power>\^)|(?P<other>.)",
    re.S,
)
_SMALL = re.compile(r"[−-]?[\d.]*\d|[^\W\d_]\w*|[−-]?\w")
_INDEXED = re.compile(r"([^\W\d_]{1,2})_(\w+)\Z")  # R_l, ΔF_front; row_spacing is a word
_PROSE = frozenset(["in", "or", "to", "at", "of", "is", "on", "if"])
_UPRIGHT = frozenset("ΔΣΠ")


def formula_html(line: str) -> Markup:
    """Return a line of a formula as HTML.

    Examples
    --------
    >>> str(formula_html("C₁ = R_l^(10/3)·row_spacing"))
    '<i>C</i><sub>1</sub> = <i>R</i><sub>l</sub><sup>10/3</sup>·row_spacing'
    """
    html, position = Markup(""), 0
    while token := _TOKEN.match(line, position):
        position = token.end()
        if token["unit"]:
            html += escape(token["unit"])
        elif token["word"]:
            html += _word(token["word"])
        elif token["below"]:
            html += Markup("<sub>{}</sub>").format("".join(_BELOW[one] for one in token["below"]))
        elif token["above"]:
            html += Markup("<sup>{}</sup>").format("".join(_ABOVE[one] for one in token["above"]))
        elif token["power"]:
            raised, position = _raised(line, position)
            html += Markup("<sup>{}</sup>").format(formula_html(raised))
        else:
            html += escape(token["other"])
    return html


def _word(word: str) -> Markup:
    if indexed := _INDEXED.match(word):
        return _symbol(indexed[1]) + Markup("<sub>{}</sub>").format(indexed[2])
    return _symbol(word) if len(word) <= 2 and word not in _PROSE else Markup("{}").format(word)


def _symbol(letters: str) -> Markup:
    """Return the letters of a symbol in italics; capital Greek that is an operator stands upright before them."""
    lead = letters[0] if letters[0] in _UPRIGHT else ""
    rest = letters[len(lead) :]
    return Markup("{}{}").format(lead, Markup("<i>{}</i>").format(rest) if rest else "")


def _raised(line: str, start: int) -> tuple[str, int]:
    """Return what stands above after a ^, without its brackets, and where the line goes on."""
    if line[start : start + 1] == "(":
        depth = 0
        for place in range(start, len(line)):
            depth += (line[place] == "(") - (line[place] == ")")
            if depth == 0:
                return line[start + 1 : place], place + 1
    found = _SMALL.match(line, start)
    end = found.end() if found else start
    return line[start:end], end

"""How symbols, numbers and units of a working are written: as LaTeX for the page, as LaTeX to copy, as plain text."""

import re

from hubwright.lessons.workings import expression as written
from hubwright.lessons.workings.model import CONVERSIONS, Line, Unit, Working
from hubwright.lessons.workings.shown import Shown
from hubwright.quantities import System

TIMES = r"\times"
_GREEK = {
    r"\alpha": "α", r"\gamma": "γ", r"\delta": "δ", r"\Delta": "Δ", r"\theta": "θ", r"\mu": "μ", r"\varphi": "φ",
    r"\varrho": "ρ", r"\rho": "ρ", r"\ell": "ℓ", r"\Sigma": "Σ", r"\nu": "ν",
}  # fmt: skip
_POWER = re.compile(r"\^(\([^)]*\)|[\d.]+)")
_SUPERSCRIPTS = {"²": "^2", "³": "^3"}


def plain_symbol(latex: str) -> str:
    r"""Return a symbol as plain text.

    Examples
    --------
    >>> plain_symbol(r"F_{\mathrm{A},z}"), plain_symbol(r"\ell"), plain_symbol(r"\Delta p"), plain_symbol("M g")
    ('F_A,z', 'ℓ', 'Δp', 'Mg')
    """
    text = re.sub(r"\\mathrm\{([^}]*)\}", r"\1", latex)
    for name, letter in _GREEK.items():
        text = text.replace(name, letter)
    return re.sub(r"[{}\s]", "", text)


def unit_latex(unit: Unit, *, to_copy: bool = False) -> str:
    r"""Return a unit as LaTeX; what is copied holds no character that a LaTeX file would not take.

    Examples
    --------
    >>> unit_latex(Unit("N/mm^1.8", 1.0)), unit_latex(Unit("N·m", 1.0), to_copy=True)
    ('\\mathrm{N/mm}^{1.8}', '\\mathrm{N{\\cdot}m}')
    """
    base, *powers = _POWER.split(unit.text)
    raised = "".join(f"^{{{power.strip('()')}}}" for power in powers if power)
    text = base
    if to_copy:
        text = text.replace("·", r"{\cdot}")
        for sign, power in _SUPERSCRIPTS.items():
            text = text.replace(sign, power)
    return rf"\mathrm{{{text}}}{raised}"


def unit_plain(unit: Unit) -> str:
    """Return a unit as a calculator with units reads it."""
    return unit.plain or unit.text


def number_latex(shown: Shown, name: str, *, to_copy: bool = False) -> str:
    """Return a number with its unit as LaTeX."""
    unit, number = unit_of(shown, name), shown.number(name)
    if unit.text == "°":
        return rf"{number}^\circ"
    space = r"\," if to_copy else r"\ "
    return f"{number}{space}{unit_latex(unit, to_copy=to_copy)}" if unit.text else number


def number_plain(shown: Shown, name: str) -> str:
    """Return a number with its unit as plain text."""
    unit = unit_plain(unit_of(shown, name))
    return f"{shown.number(name)} {unit}" if unit else shown.number(name)


def unit_of(shown: Shown, name: str) -> Unit:
    """Return the unit of a symbol, or of a number that only changes units."""
    if name in CONVERSIONS:
        return CONVERSIONS[name].unit
    return shown.made.symbols[name].unit_in(shown.system)


def symbolic_latex(made: Working, line: Line) -> str:
    """Return a line as a formula."""
    symbols = {name: symbol.latex for name, symbol in made.symbols.items()}
    return f"{symbols[line.name]} = {written.latex(line.expression, symbols)}"


def put_in_terms(shown: Shown, line: Line) -> list[str]:
    """Return the terms of a line with its numbers put in, for the page; the first with what it is equal to."""
    expression = line.in_system(shown.system)
    terms = written.latex_terms(expression, _numbers(shown, expression), times=TIMES, united=_united(shown, expression))
    terms[0] = f"{shown.made.symbols[line.name].latex} = {terms[0]}"
    return terms if line is shown.made.lines[-1] else [*terms, f"= {_signed(number_latex(shown, line.name))}"]


def latex_copy(made: Working, system: System) -> str:
    """Return a working as LaTeX to be pasted: per line the formula, the numbers put in and the result."""
    shown, lines = Shown(made, system), []
    symbols = {name: symbol.latex for name, symbol in made.symbols.items()}
    for line in made.lines:
        expression = line.in_system(system)
        numbers = _numbers(shown, expression, to_copy=True)
        put_in = written.latex(expression, numbers, times=TIMES, united=_united(shown, expression))
        lines += [
            f"{symbols[line.name]} &= {written.latex(line.expression, symbols)}",
            f"&= {put_in}",
            ""
            if not made.digits
            else f"&{_equals(made, line)} {_signed(number_latex(shown, line.name, to_copy=True))}",
        ]
    body = " \\\\\n  ".join(line for line in lines if line)
    return f"% {made.what}\n\\begin{{aligned}}\n  {body}\n\\end{{aligned}}"


def plain_copy(made: Working, system: System) -> str:
    """Return a working as plain text: symbols in words, per line the formula, the numbers put in and the result."""
    shown, lines = Shown(made, system), [made.what]
    symbols = {name: plain_symbol(symbol.latex) for name, symbol in made.symbols.items()}
    lines += [
        f"  {symbols[name]} = {number_plain(shown, name)}: {made.symbols[name].words}" for name in made.term_names()
    ]
    for line in made.lines:
        expression = line.in_system(system)
        numbers = {name: number_plain(shown, name) for name in written.names(expression)}
        lines += [
            f"{symbols[line.name]} = {written.plain(line.expression, symbols)}",
            f"  = {written.plain(expression, numbers, united=_united(shown, expression))}",
            "" if not made.digits else f"  = {number_plain(shown, line.name)}",
        ]
    return "\n".join(line for line in lines if line)


def result_latex(shown: Shown) -> str:
    """Return the last line's result with its symbol."""
    made = shown.made
    return f"{made.result.latex} {_equals(made, made.lines[-1])} {_signed(number_latex(shown, made.lines[-1].name))}"


def _equals(made: Working, line: Line) -> str:
    return r"\approx" if made.about and line is made.lines[-1] else "="


def _numbers(shown: Shown, expression: str, *, to_copy: bool = False) -> dict[str, str]:
    return {name: number_latex(shown, name, to_copy=to_copy) for name in written.names(expression)}


def _united(shown: Shown, expression: str) -> frozenset[str]:
    return frozenset(name for name in written.names(expression) if unit_of(shown, name).text not in ("", "°"))


def _signed(text: str) -> str:
    """Return a number so that its minus is set as a sign and not as an operation."""
    return f"{{{text}}}" if text.startswith("-") else text

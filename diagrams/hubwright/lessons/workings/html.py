"""A working as it stands on a page: formula, symbols, numbers put in, result and source, folded."""

import math
from collections.abc import Callable
from typing import get_args

from markupsafe import Markup

from hubwright.lessons.mathml import equation, mathml
from hubwright.lessons.numbers import both, show
from hubwright.lessons.workings import expression as written
from hubwright.lessons.workings.model import DIGITS, DIGITS_OF_RESULT, Line, Symbol, Working
from hubwright.quantities import System

_DEGREES = 180 / math.pi
NO_BREAK = "\u00a0"
TIMES = r"\times"


def working_html(made: Working) -> Markup:
    """Return the details element of a working."""
    result = made.result
    parts = [
        ("Formula", Markup("").join(equation(_symbolic(made, line)) for line in made.lines)),
        ("With", _terms(made)),
        ("Put in", _in_each_system(lambda system: [_with_numbers(made, line, system) for line in made.lines])),
        ("Comes to", _in_each_system(lambda system: [f"{result.latex} = {_result(result, system)}"])),
        ("From", _source(made)),
    ]
    rows = Markup("").join(Markup("<div><dt>{}</dt><dd>{}</dd></div>").format(*part) for part in parts if part[1])
    return Markup(
        '<details class="worked"><summary><span class="what">{}: {} = {}</span><span class="turnover">'
        '<span class="shut">open the working</span><span class="open">close the working</span></span></summary>\n'
        "<dl>{}</dl></details>"
    ).format(made.what, mathml(result.latex, "inline"), show(result.value), rows)


def number(symbol: Symbol, system: System, digits: int = DIGITS) -> str:
    """Return the number of a symbol as a formula carries it: no exponent, no thousands comma."""
    value = symbol.value.value * _DEGREES if symbol.value.unit == "rad" else symbol.exactly_in_units(system)
    value = float(f"{value:.{digits - 1}e}")
    if value == 0:
        return "0"
    exponent = int(f"{value:e}".partition("e")[2])
    text = f"{value:.{max(0, digits - 1 - exponent)}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return rf"{text}^\circ" if symbol.value.unit == "rad" else text


def _symbolic(made: Working, line: Line) -> str:
    symbols = {name: symbol.latex for name, symbol in made.symbols.items()}
    return f"{symbols[line.name]} = {written.latex(line.expression, symbols)}"


def _terms(made: Working) -> Markup:
    """Return the symbols that no line explains, in words and with their values."""
    used = dict.fromkeys(name for line in made.lines for name in written.names(line.expression))
    explained = {line.name for line in made.lines}
    rows = Markup("").join(
        Markup('<tr><td>{}</td><th scope="row">{}</th><td class="n">{}</td></tr>').format(
            mathml(made.symbols[name].latex, "inline"), made.symbols[name].words, _value(made.symbols[name])
        )
        for name in used
        if name not in explained
    )
    return Markup('<table class="terms"><tbody>{}</tbody></table>').format(rows) if rows else Markup("")


def _value(symbol: Symbol) -> Markup:
    texts = []
    for system in get_args(System):
        text = number(symbol, system).replace(r"^\circ", "°").replace("-", "\u2212")
        unit = symbol.unit_text(system)
        texts.append(text if unit in ("", "°") else f"{text}{NO_BREAK}{unit}")
    return both(*texts)


def _in_each_system(lines: Callable[[System], list[str]]) -> Markup:
    return Markup("").join(
        Markup('<div class="{}">{}</div>').format(system, Markup("").join(equation(line) for line in lines(system)))
        for system in get_args(System)
    )


def _with_numbers(made: Working, line: Line, system: System) -> str:
    """Return a line with its numbers, and what it comes to where another line uses it."""
    symbol, expression = made.symbols[line.name], line.in_system(system)
    numbers = {name: number(made.symbols[name], system) for name in written.names(expression)}
    text = f"{symbol.latex} = {written.latex(expression, numbers, times=TIMES)}"
    return text if line is made.lines[-1] else f"{text} = {_with_unit(number(symbol, system), symbol, system)}"


def _result(symbol: Symbol, system: System) -> str:
    return _with_unit(number(symbol, system, DIGITS_OF_RESULT), symbol, system)


def _with_unit(text: str, symbol: Symbol, system: System) -> str:
    unit = symbol.unit_text(system)
    text = f"{{{text}}}" if text.startswith("-") else text  # set as a sign, not as an operation
    return text if unit in ("", "°") else rf"{text}\ \mathrm{{{unit}}}"


def _source(made: Working) -> Markup:
    html = Markup("{}").format(made.source)
    if made.remarks:
        html += Markup(' <span class="us">{}</span>').format(" ".join(made.remarks))
    if made.function:
        html += Markup(' <span class="unit">hubwright.mechanics.{}</span>').format(made.function)
    return html

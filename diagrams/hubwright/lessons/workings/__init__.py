"""How results come about: formula, symbols, numbers put in, result and source of each, for the page."""

from collections.abc import Callable, Mapping
from typing import get_args

from markupsafe import Markup

from hubwright.lessons.blocks import BlockError
from hubwright.lessons.environment import nearest
from hubwright.lessons.mathml import equation, mathml
from hubwright.lessons.numbers import both, show
from hubwright.lessons.page_state import PageState
from hubwright.lessons.views import View, names_of, subject_of, value_at
from hubwright.lessons.workings import bearing, loads, wheel
from hubwright.lessons.workings import expression as written
from hubwright.lessons.workings.model import Line, Symbol, Working, rounded
from hubwright.quantities import Quantity, System, format_number
from hubwright.results import CaseResult, Results

SETUP_WORKINGS: Mapping[str, Callable[[Results], Working]] = {
    **wheel.WORKINGS,
    **loads.SETUP_WORKINGS,
    **bearing.SETUP_WORKINGS,
}
CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {**loads.CASE_WORKINGS, **bearing.CASE_WORKINGS}
AGREES = 1e-9  # relative: the expression of a working against the result it explains


def working(page: PageState, view: View, path: str) -> Markup:
    """Return the working of a result, folded: formula, numbers put in, what they come to, and the source."""
    made = working_of(view, path)
    return page.set_aside(working_html(made), late=True)


def working_of(view: View, path: str) -> Working:
    """Return the working of the result at a path of a setup or case."""
    subject = subject_of(view) if isinstance(view, View) else None
    first, _, rest = path.partition(".")
    if isinstance(subject, Results) and rest and first in names_of(view):
        inner = getattr(view, first)
        if isinstance(inner, View) and isinstance(subject_of(inner), tuple):
            return working_of(inner, rest)
    if isinstance(subject, tuple):
        if path not in CASE_WORKINGS:
            raise BlockError(f"there is no working of '{path}' of a case.{nearest(path, list(CASE_WORKINGS))}")
        made = CASE_WORKINGS[path](*subject)
    elif isinstance(subject, Results):
        if path not in SETUP_WORKINGS:
            raise BlockError(f"there is no working of '{path}' of a setup.{nearest(path, list(SETUP_WORKINGS))}")
        made = SETUP_WORKINGS[path](subject)
    else:
        raise BlockError(f"working needs a setup or a case, such as stock.standing, got {view!r}")
    _refuse_disagreement(made, value_at(view, path), path)
    return made


def _refuse_disagreement(made: Working, result: object, path: str) -> None:
    if not isinstance(result, Quantity):
        return
    for line in made.lines:
        symbol = made.symbols[line.name]
        reached = made.value_of(line)
        scale = max(abs(symbol.value.value), 1e-3)
        if abs(reached - symbol.value.value) > AGREES * scale:
            raise BlockError(f"the working of '{path}' comes to {reached:.6g}, the result is {symbol.value.value:.6g}")
    if abs(made.result.value.value - result.value) > AGREES * max(abs(result.value), 1e-3):
        raise BlockError(
            f"the working of '{path}' explains {made.result.value.value:.6g}, the result is {result.value:.6g}"
        )


def working_html(made: Working) -> Markup:
    """Return the details element of a working."""
    result = made.result
    formula = Markup("").join(
        equation(f"{made.symbols[line.name].latex} = {_symbolic(made, line)}") for line in made.lines
    )
    used = dict.fromkeys(name for line in made.lines for name in written.names(line.expression))
    defined = {line.name for line in made.lines}
    terms = Markup("").join(
        Markup('<tr><td>{}</td><th scope="row">{}</th><td class="n">{}</td></tr>').format(
            mathml(made.symbols[name].latex, "inline"), made.symbols[name].words, _put_in_text(made.symbols[name])
        )
        for name in used
        if name not in defined
    )
    put_in = Markup("").join(
        Markup('<div class="{}">{}</div>').format(
            system, Markup("").join(equation(_with_numbers(made, line, system)) for line in made.lines)
        )
        for system in get_args(System)
    )
    comes_to = Markup("").join(
        Markup('<div class="{}">{}</div>').format(
            system, equation(f"{result.latex} = {_number_and_unit(result, system)}")
        )
        for system in get_args(System)
    )
    remarks = Markup("").join(Markup(" {}").format(remark) for remark in made.remarks)
    function = (
        Markup(' <span class="unit">hubwright.mechanics.{}</span>').format(made.function)
        if made.function
        else Markup("")
    )
    with_ = (
        Markup('<div><dt>With</dt><dd><table class="terms"><tbody>{}</tbody></table></dd></div>').format(terms)
        if terms
        else Markup("")
    )
    return Markup(
        '<details class="worked"><summary><span class="what">{what}: {symbol} = {result}</span><span class="turnover">'
        '<span class="shut">open the working</span><span class="open">close the working</span></span></summary>\n'
        "<dl><div><dt>Formula</dt><dd>{formula}</dd></div>{with_}<div><dt>Put in</dt><dd>{put_in}</dd></div>"
        "<div><dt>Comes to</dt><dd>{comes_to}</dd></div><div><dt>From</dt><dd>{source}{remarks}{function}</dd></div></dl></details>"
    ).format(
        what=made.what, symbol=mathml(result.latex, "inline"), result=show(result.value), formula=formula, with_=with_, put_in=put_in,
        comes_to=comes_to, source=made.source, remarks=remarks, function=function,
    )  # fmt: skip


def _symbolic(made: Working, line: Line) -> str:
    return written.latex(line.expression, {name: symbol.latex for name, symbol in made.symbols.items()})


def _with_numbers(made: Working, line: Line, system: System) -> str:
    """Return a line with its numbers, and what it comes to where another line uses it."""
    numbers = {name: _number(made.symbols[name], system) for name in written.names(line.in_system(system))}
    symbol = made.symbols[line.name]
    text = f"{symbol.latex} = {written.latex(line.in_system(system), numbers, times=chr(92) + 'times')}"
    return text if line is made.lines[-1] else f"{text} = {_number_and_unit(symbol, system)}"


def _number(symbol: Symbol, system: System) -> str:
    """Return the number that is put in, as LaTeX."""
    if symbol.value.unit == "rad":
        return rf"{_digits(symbol.value.value * 57.29577951308232)}^\circ"
    return _digits(symbol.in_units(system))


def _number_and_unit(symbol: Symbol, system: System) -> str:
    unit = symbol.unit_text(system)
    return f"{_number(symbol, system)}" + (rf"\ \mathrm{{{unit}}}" if unit and unit != "°" else "")


def _put_in_text(symbol: Symbol) -> Markup:
    texts = []
    for system in get_args(System):
        if symbol.value.unit == "rad":
            texts.append(f"{format_number(symbol.value.value * 57.29577951308232, significant=5)}°")
        else:
            texts.append(
                f"{format_number(symbol.in_units(system), significant=5)}\u00a0{symbol.unit_text(system)}".strip()
            )
    return both(*texts)


def _digits(number: float) -> str:
    """Return a number as digits that the formula can carry: no exponent, no thousands comma."""
    number = rounded(number)
    if number == 0:
        return "0"
    text = f"{number:.{max(0, 4 - _exponent(number))}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _exponent(number: float) -> int:
    return int(f"{number:e}".partition("e")[2])

"""One written expression, such as "B_z/2 + M_x/l", gives the formula, the numbers put in and the result.

So the three cannot drift apart: the value on the page is that of the expression whose formula it shows.
"""

import ast
import math
from collections.abc import Callable, Mapping

_ADD, _MULTIPLY, _UNARY, _POWER, _ATOM = 1, 2, 3, 4, 5
_FUNCTIONS: dict[str, Callable[[float], float]] = {
    "tan": math.tan, "sin": math.sin, "cos": math.cos, "sqrt": math.sqrt, "abs": abs,
    "atan": math.atan, "acos": math.acos,
}  # fmt: skip
_ARCS = {"atan": "arctan", "acos": "arccos"}


def value(expression: str, numbers: Mapping[str, float]) -> float:
    """Return the value of an expression; angles are in radians.

    Examples
    --------
    >>> value("B/2 + M/l", {"B": 5000.0, "M": 60.0, "l": 0.06})
    3500.0
    """
    return _value(_parsed(expression), numbers)


def latex(expression: str, symbols: Mapping[str, str], *, times: str = r"\,") -> str:
    """Return an expression as LaTeX, each name by its symbol or its number.

    Examples
    --------
    >>> latex("B/2 - M/l", {"B": "B_z", "M": "M_x", "l": r"\\ell"})
    '\\\\frac{B_z}{2} - \\\\frac{M_x}{\\\\ell}'
    """
    return _leading(_parsed(expression), symbols, times)


def names(expression: str) -> list[str]:
    """Return the names in an expression in the order in which they stand."""
    found = [node for node in ast.walk(_parsed(expression)) if isinstance(node, ast.Name) and node.id not in _FUNCTIONS]
    found.sort(key=lambda node: (node.lineno, node.col_offset))
    return list(dict.fromkeys(node.id for node in found))


def _parsed(expression: str) -> ast.expr:
    return ast.parse(expression, mode="eval").body


def _value(node: ast.expr, numbers: Mapping[str, float]) -> float:
    match node:
        case ast.Constant(value=int() | float() as number):
            return float(number)
        case ast.Name(id=name):
            return numbers[name]
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return -_value(operand, numbers)
        case ast.BinOp(left=left, op=op, right=right):
            a, b = _value(left, numbers), _value(right, numbers)
            match op:
                case ast.Add():
                    return a + b
                case ast.Sub():
                    return a - b
                case ast.Mult():
                    return a * b
                case ast.Div():
                    return a / b
                case ast.Pow():
                    return float(a**b)
        case ast.Call(func=ast.Name(id=name), args=[argument]):
            return _FUNCTIONS[name](_value(argument, numbers))
    raise ValueError(f"not an expression of a working: {ast.unparse(node)}")


def _latex(node: ast.expr, symbols: Mapping[str, str], times: str) -> tuple[str, int]:
    """Return LaTeX and how tightly it binds."""
    match node:
        case ast.Constant(value=int() | float() as number):
            return f"{number}", _ATOM
        case ast.Name(id=name):
            text = symbols[name]
            # in braces, so that a minus is set as a sign and not as an operation
            return (f"{{{text}}}", _UNARY) if text.startswith("-") else (text, _ATOM)
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return f"{{-{_wrapped(operand, symbols, times, _MULTIPLY)}}}", _UNARY
        case ast.BinOp(left=left, op=ast.Div(), right=right):
            return rf"\frac{{{_latex(left, symbols, times)[0]}}}{{{_latex(right, symbols, times)[0]}}}", _MULTIPLY
        case ast.BinOp(left=left, op=ast.Pow(), right=right):
            return f"{_wrapped(left, symbols, times, _ATOM)}^{{{_latex(right, symbols, times)[0]}}}", _POWER
        case ast.BinOp(left=left, op=ast.Mult(), right=right):
            return (
                f"{_wrapped(left, symbols, times, _MULTIPLY)} {times} {_wrapped(right, symbols, times, _POWER)}",
                _MULTIPLY,
            )
        case ast.BinOp(left=left, op=op, right=right):
            sign = "+" if isinstance(op, ast.Add) else "-"
            return f"{_latex(left, symbols, times)[0]} {sign} {_wrapped(right, symbols, times, _MULTIPLY)}", _ADD
        case ast.Call(func=ast.Name(id="tan" | "sin" | "cos" as name), args=[argument]):
            return rf"\{name} {_wrapped(argument, symbols, times, _ATOM)}", _POWER
        case ast.Call(func=ast.Name(id="atan" | "acos" as name), args=[argument]):
            return rf"\{_ARCS[name]} \left({_latex(argument, symbols, times)[0]}\right)", _ATOM
        case ast.Call(func=ast.Name(id="sqrt"), args=[argument]):
            return rf"\sqrt{{{_latex(argument, symbols, times)[0]}}}", _ATOM
        case ast.Call(func=ast.Name(id="abs"), args=[argument]):
            return rf"\left|{_latex(argument, symbols, times)[0]}\right|", _ATOM
    raise ValueError(f"not an expression of a working: {ast.unparse(node)}")


def _leading(node: ast.expr, symbols: Mapping[str, str], times: str) -> str:
    """Return LaTeX of what stands first in a line: a minus before the first factor needs no brackets."""
    match node:
        case ast.BinOp(left=left, op=ast.Mult(), right=right):
            is_sum = isinstance(left, ast.BinOp) and isinstance(left.op, ast.Add | ast.Sub)
            first = _wrapped(left, symbols, times, _MULTIPLY) if is_sum else _leading(left, symbols, times)
            return f"{first} {times} {_wrapped(right, symbols, times, _POWER)}"
        case ast.BinOp(left=left, op=ast.Add() | ast.Sub() as op, right=right):
            sign = "+" if isinstance(op, ast.Add) else "-"
            return f"{_leading(left, symbols, times)} {sign} {_wrapped(right, symbols, times, _MULTIPLY)}"
    return _latex(node, symbols, times)[0]


def _wrapped(node: ast.expr, symbols: Mapping[str, str], times: str, binding: int) -> str:
    """Return LaTeX in brackets where it binds more loosely than its surroundings."""
    text, own = _latex(node, symbols, times)
    # a negative number put in after an operator needs its brackets too
    return text if own >= binding and not (own == _UNARY and binding > _ADD) else rf"\left({text}\right)"

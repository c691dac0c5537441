"""One written expression, such as "B_z/2 + M_x/l", gives the formula, the numbers put in and the result.

So the three cannot drift apart: the value on the page is that of the expression whose formula it shows.
"""

import ast
import math
from collections.abc import Callable, Collection, Mapping
from functools import lru_cache
from typing import TypeGuard

_ADD, _MULTIPLY, _UNITED, _UNARY, _POWER, _ATOM = 1, 2, 3, 4, 5, 6
_FUNCTIONS: dict[str, Callable[[float], float]] = {
    "tan": math.tan, "sin": math.sin, "cos": math.cos, "sqrt": math.sqrt, "abs": abs,
    "atan": math.atan, "acos": math.acos,
}  # fmt: skip
_NO_SYMBOLS = {*_FUNCTIONS, "pi"}
_LONG = 3  # factors that go into one line
_ARCS = {"atan": "arctan", "acos": "arccos"}


def value(expression: str, numbers: Mapping[str, float]) -> float:
    """Return the value of an expression; angles are in radians.

    Examples
    --------
    >>> value("B/2 + M/l", {"B": 5000.0, "M": 60.0, "l": 0.06})
    3500.0
    """
    return _value(_parsed(expression), numbers)


def latex(
    expression: str, symbols: Mapping[str, str], *, times: str = r"\,", united: Collection[str] = frozenset()
) -> str:
    """Return an expression as LaTeX, each name by its symbol or its number; `united` are those that carry a unit.

    Examples
    --------
    >>> latex("B/2 - M/l", {"B": "B_z", "M": "M_x", "l": r"\\ell"})
    '\\\\frac{B_z}{2} - \\\\frac{M_x}{\\\\ell}'
    """
    return _Latex(symbols, united, times).leading(_parsed(expression))


def latex_terms(
    expression: str, symbols: Mapping[str, str], *, times: str = r"\,", united: Collection[str] = frozenset()
) -> list[str]:
    """Return the terms of a sum as LaTeX, each with its sign, so that a long line can go on in a new one.

    A long product goes on at its factors.

    Examples
    --------
    >>> latex_terms("a - b/c", {"a": "a", "b": "b", "c": "c"})
    ['a', '- \\\\frac{b}{c}']
    """
    writer = _Latex(symbols, united, times)
    node = _parsed(expression)
    if (factors := _factors(node)) and len(factors) > _LONG:
        return [writer.leading(factors[0]), *(f"{times} {writer.wrapped(each, _POWER)}" for each in factors[1:])]
    over = None
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Div) and _is_sum(node.left):
        node, over = node.left, node.right
    terms: list[str] = []
    while _is_sum(node):
        sign = "+" if isinstance(node.op, ast.Add) else "-"
        terms.insert(0, f"{sign} {writer.wrapped(node.right, _MULTIPLY)}")
        node = node.left
    terms.insert(0, writer.leading(node))
    if over is not None:
        terms[0] = rf"\frac{{1}}{{{writer.written(over)[0]}}} {times} ({terms[0]}"
        terms[-1] += ")"
    return terms


def plain(expression: str, symbols: Mapping[str, str], *, united: Collection[str] = frozenset()) -> str:
    """Return an expression as plain text that a calculator reads: * and /, ^ for powers, brackets where needed.

    Examples
    --------
    >>> plain("B/2 + M/l", {"B": "5000 N", "M": "60 N*m", "l": "0.06 m"}, united={"B", "M", "l"})
    '5000 N/2 + 60 N*m/(0.06 m)'
    """
    return _Plain(symbols, united).written(_parsed(expression))[0]


@lru_cache(maxsize=1024)
def names(expression: str) -> tuple[str, ...]:
    """Return the names in an expression in the order in which they stand."""
    found = [
        node for node in ast.walk(_parsed(expression)) if isinstance(node, ast.Name) and node.id not in _NO_SYMBOLS
    ]
    found.sort(key=lambda node: (node.lineno, node.col_offset))
    return tuple(dict.fromkeys(node.id for node in found))


@lru_cache(maxsize=1024)
def _parsed(expression: str) -> ast.expr:
    return ast.parse(expression, mode="eval").body


def _value(node: ast.expr, numbers: Mapping[str, float]) -> float:
    match node:
        case ast.Constant(value=int() | float() as number):
            return float(number)
        case ast.Name(id="pi"):
            return math.pi
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


def _factors(node: ast.expr) -> list[ast.expr]:
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Mult):
        return [*_factors(node.left), node.right]
    return [node]


def _is_sum(node: ast.expr) -> TypeGuard[ast.BinOp]:
    return isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Sub)


class _Writer:
    """Writes an expression; each part comes with how tightly it binds."""

    left, right = "(", ")"

    def __init__(self, symbols: Mapping[str, str], united: Collection[str]) -> None:
        self.symbols, self.united = symbols, united

    def written(self, node: ast.expr) -> tuple[str, int]:
        raise NotImplementedError

    def wrapped(self, node: ast.expr, binding: int) -> str:
        """Return a part in brackets where it binds more loosely than its surroundings."""
        text, own = self.written(node)
        # a negative number put in after an operator needs its brackets too
        negative = own == _UNARY and binding > _ADD
        loose = binding >= _ATOM if own == _UNITED else own < binding or negative
        return f"{self.left}{text}{self.right}" if loose else text


class _Latex(_Writer):
    left, right = r"\left(", r"\right)"

    def __init__(self, symbols: Mapping[str, str], united: Collection[str], times: str) -> None:
        super().__init__(symbols, united)
        self.times = times

    def written(self, node: ast.expr) -> tuple[str, int]:
        match node:
            case ast.Constant(value=int() | float() as number):
                return f"{number}", _ATOM
            case ast.Name(id="pi"):
                return r"\pi", _ATOM
            case ast.Name(id=name):
                text = self.symbols[name]
                # in braces, so that a minus is set as a sign and not as an operation
                if text.startswith("-"):
                    return f"{{{text}}}", _UNARY
                return text, _UNITED if name in self.united else _ATOM
            case ast.UnaryOp(op=ast.USub(), operand=operand):
                return f"{{-{self.wrapped(operand, _MULTIPLY)}}}", _UNARY
            case ast.BinOp(left=left, op=ast.Div(), right=right):
                return rf"\frac{{{self.written(left)[0]}}}{{{self.written(right)[0]}}}", _MULTIPLY
            case ast.BinOp(left=left, op=ast.Pow(), right=right):
                return f"{self.wrapped(left, _ATOM)}^{{{_exponent(right) or self.written(right)[0]}}}", _POWER
            case ast.BinOp(left=left, op=ast.Mult(), right=right):
                return f"{self.wrapped(left, _MULTIPLY)} {self.times} {self.wrapped(right, _POWER)}", _MULTIPLY
            case ast.BinOp(left=left, op=op, right=right):
                sign = "+" if isinstance(op, ast.Add) else "-"
                return f"{self.written(left)[0]} {sign} {self.wrapped(right, _MULTIPLY)}", _ADD
            case ast.Call(func=ast.Name(id="tan" | "sin" | "cos" as name), args=[argument]):
                return rf"\{name} {self.wrapped(argument, _ATOM)}", _POWER
            case ast.Call(func=ast.Name(id="atan" | "acos" as name), args=[argument]):
                return rf"\{_ARCS[name]} \left({self.written(argument)[0]}\right)", _ATOM
            case ast.Call(func=ast.Name(id="sqrt"), args=[argument]):
                return rf"\sqrt{{{self.written(argument)[0]}}}", _ATOM
            case ast.Call(func=ast.Name(id="abs"), args=[argument]):
                return rf"\left|{self.written(argument)[0]}\right|", _ATOM
        raise ValueError(f"not an expression of a working: {ast.unparse(node)}")

    def leading(self, node: ast.expr) -> str:
        """Return LaTeX of what stands first in a line: a minus before the first factor needs no brackets."""
        match node:
            case ast.BinOp(left=left, op=ast.Mult(), right=right):
                first = self.wrapped(left, _MULTIPLY) if _is_sum(left) else self.leading(left)
                return f"{first} {self.times} {self.wrapped(right, _POWER)}"
            case ast.BinOp(left=left, op=ast.Add() | ast.Sub() as op, right=right):
                sign = "+" if isinstance(op, ast.Add) else "-"
                return f"{self.leading(left)} {sign} {self.wrapped(right, _MULTIPLY)}"
        return self.written(node)[0]


class _Plain(_Writer):
    def written(self, node: ast.expr) -> tuple[str, int]:
        match node:
            case ast.Constant(value=int() | float() as number):
                return f"{number}", _ATOM
            case ast.Name(id="pi"):
                return "pi", _ATOM
            case ast.Name(id=name):
                text = self.symbols[name]
                if text.startswith("-"):
                    return text, _UNARY
                return text, _UNITED if name in self.united else _ATOM
            case ast.UnaryOp(op=ast.USub(), operand=operand):
                return f"-{self.wrapped(operand, _POWER)}", _UNARY
            case ast.BinOp(left=left, op=ast.Div(), right=right):
                below, own = self.written(right)
                # a unit before the stroke would else run on into the name of a function
                below = below if own in (_POWER, _ATOM) and not isinstance(right, ast.Call) else f"({below})"
                return f"{self.wrapped(left, _MULTIPLY)}/{below}", _MULTIPLY
            case ast.BinOp(left=left, op=ast.Pow(), right=right):
                above, own = self.written(right)
                return f"{self.wrapped(left, _ATOM)}^{above if own == _ATOM else f'({above})'}", _POWER
            case ast.BinOp(left=left, op=ast.Mult(), right=right):
                return f"{self.wrapped(left, _MULTIPLY)} * {self.wrapped(right, _POWER)}", _MULTIPLY
            case ast.BinOp(left=left, op=op, right=right):
                sign = "+" if isinstance(op, ast.Add) else "-"
                return f"{self.written(left)[0]} {sign} {self.wrapped(right, _MULTIPLY)}", _ADD
            case ast.Call(func=ast.Name(id=name), args=[argument]):
                return f"{name}({self.written(argument)[0]})", _ATOM
        raise ValueError(f"not an expression of a working: {ast.unparse(node)}")


def _exponent(node: ast.expr) -> str:
    """Return a fraction of two plain numbers on one line, as exponents are written: 10/3."""
    match node:
        case ast.BinOp(left=ast.Constant(), op=ast.Div(), right=ast.Constant()):
            return ast.unparse(node).replace(" ", "")
        case ast.UnaryOp(op=ast.USub(), operand=operand) if text := _exponent(operand):
            return f"-{text}"
    return ""

"""The table of everything on a free body with its turning effect, whose sums have to be nothing."""

import math
from typing import Literal

from markupsafe import Markup

from hubwright.errors import HubwrightError
from hubwright.lessons.blocks import case_of
from hubwright.lessons.named_values import View
from hubwright.lessons.numbers import NO_BREAK, both
from hubwright.lessons.page_state import PageState
from hubwright.quantities import FOOT, INCH, POUND_FORCE
from hubwright.quantities.sums import apportioned
from hubwright.results import CaseResult
from hubwright.scenes.force_table import FORCE_NAMES

OPEN_BY = 1e-9  # of the largest force [N, N*m per N]: more than this left over and the free body does not close


class OpenBodyError(HubwrightError, ValueError):
    """A free body whose forces or moments do not sum to nothing."""


_SMALL = 1e-6


def closure_table(page: PageState, view: View) -> Markup:
    """Return the table of everything on a free body with its turning effect, and what is left over."""
    results, case = case_of(view)
    body = case.free_body
    refuse_open(case)
    side = results.side
    rows: list[tuple[str, float | None, float | None, float]] = []  # name, upward, outboard at, turning
    for single in body.forces:
        # about the x axis, through the bearing centre, as at a left wheel: the top toward the vehicle is positive
        turning = side * (single.point.y * single.force.z - single.point.z * single.force.y)
        if abs(single.force.z) < _SMALL and abs(turning) < _SMALL:
            continue
        name = FORCE_NAMES.get(single.name, single.name.replace("_", " "))
        rows.append((name, single.force.z, side * single.point.y, turning))
    for couple in body.couples:
        turning = side * couple.moment.x
        if abs(turning) >= _SMALL:
            rows.append((FORCE_NAMES.get(couple.name, couple.name), None, None, turning))
    *forces, force_sum = _column([upward for _, upward, _, _ in rows], "force")
    *moments, moment_sum = _column([turning for *_, turning in rows], "moment")
    lines = Markup("\n").join(
        Markup(
            '<tr><th scope="row">{}</th><td class="n">{}</td><td class="n">{}</td><td class="n">{}</td></tr>'
        ).format(name, force, "" if at is None else _signed(at, "length"), moment)
        for (name, _, at, _), force, moment in zip(rows, forces, moments, strict=True)
    )
    head = Markup("").join(
        Markup('<th scope="col" class="n">{}, {}</th>').format(words, both(*units))
        for words, units in (("Upward", ("kN", "lbf")), ("Outboard at", ("mm", "in")), ("Turning", ("N·m", "lbf·ft")))
    )
    table = Markup(
        '<div class="tablewrap wide">\n<table>\n<caption>Is anything left over? Every force on the free body, {}, '
        "and its turning effect about the middle of the bearing.</caption>\n"
        '<thead><tr><th scope="col">What acts</th>{}</tr></thead>\n<tbody>\n{}\n</tbody>\n'
        '<tfoot><tr><th scope="row">Left over</th><td class="n">{}</td><td class="n"></td><td class="n">{}</td></tr>'
        "</tfoot>\n</table>\n</div>"
    ).format(case.name, head, lines, force_sum, moment_sum)
    return page.set_aside(table)


def refuse_open(case: CaseResult) -> None:
    """Refuse a case whose free body leaves something over."""
    largest = max(single.force.length for single in case.free_body.forces)
    for what, unit, left_over in (("forces", "N", case.closure.force), ("moments", "N·m", case.closure.moment)):
        if not left_over <= OPEN_BY * largest:
            raise OpenBodyError(
                f"the free body of '{case.name}' does not close: its {what} leave {left_over:.3g} {unit} over"
            )


def left_over(value: float, unit: Literal["N", "N*m"]) -> Markup:
    """Return what a free body leaves over, to hundredths of a unit: nothing, for a reader to see."""
    if unit == "N":
        return both(f"{value:.2f}{NO_BREAK}N", f"{value / POUND_FORCE:.2f}{NO_BREAK}lbf")
    return both(f"{value:.2f}{NO_BREAK}N·m", f"{value / (POUND_FORCE * FOOT):.2f}{NO_BREAK}lbf·ft")


# Unit, its size in SI and decimals: finer than in running text, so that a reader can add the column up.
_FINE: dict[str, tuple[tuple[float, int], tuple[float, int]]] = {
    "force": ((1e3, 3), (POUND_FORCE, 1)),
    "length": ((1e-3, 1), (INCH, 3)),
    "moment": ((1.0, 2), (POUND_FORCE * FOOT, 2)),
}


def _column(values: list[float | None], kind: str) -> list[Markup]:
    """Return the numbers of a column and their sum, rounded so that they add up to it; what is None stays empty."""
    texts = []
    for size, decimals in _FINE[kind]:
        units = [(value or 0.0) / size * 10**decimals for value in values]
        total = round(math.fsum(units))
        texts.append([_with_sign(unit, decimals) for unit in (*apportioned(units, total), total)])
    columns = [both(*pair) for pair in zip(*texts, strict=True)]
    return [Markup("") if value is None else text for value, text in zip((*values, 0.0), columns, strict=True)]


def _signed(value: float, kind: str) -> Markup:
    return both(*(_with_sign(round(value / size * 10**decimals), decimals) for size, decimals in _FINE[kind]))


def _with_sign(units: int, decimals: int) -> str:
    number = units / 10**decimals
    return f"{number:+,.{decimals}f}".replace("-", "\u2212") if units else f"{0:.{decimals}f}"

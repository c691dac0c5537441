"""The table of everything on a free body with its turning effect, whose sums have to be nothing."""

import math

from markupsafe import Markup

from hubwright.errors import HubwrightError
from hubwright.lessons.blocks import case_of
from hubwright.lessons.named_values import View
from hubwright.lessons.numbers import both
from hubwright.lessons.page_state import PageState
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
    rows, force_sum, moment_sum = [], 0.0, 0.0
    for single in body.forces:
        # about the x axis, through the bearing centre, as at a left wheel: the top toward the vehicle is positive
        turning = side * (single.point.y * single.force.z - single.point.z * single.force.y)
        force_sum += single.force.z
        moment_sum += turning
        if abs(single.force.z) < _SMALL and abs(turning) < _SMALL:
            continue
        name = FORCE_NAMES.get(single.name, single.name.replace("_", " "))
        rows.append(
            (
                name,
                _signed(single.force.z, "force"),
                _signed(side * single.point.y, "length"),
                _signed(turning, "moment"),
            )
        )
    for couple in body.couples:
        turning = side * couple.moment.x
        moment_sum += turning
        if abs(turning) >= _SMALL:
            rows.append((FORCE_NAMES.get(couple.name, couple.name), Markup(""), Markup(""), _signed(turning, "moment")))
    lines = Markup("\n").join(
        Markup(
            '<tr><th scope="row">{}</th><td class="n">{}</td><td class="n">{}</td><td class="n">{}</td></tr>'
        ).format(*row)
        for row in rows
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
    ).format(case.name, head, lines, _signed(force_sum, "force"), _signed(moment_sum, "moment"))
    return page.set_aside(table)


def refuse_open(case: CaseResult) -> None:
    """Refuse a case whose free body leaves something over."""
    largest = max(math.hypot(single.force.x, single.force.y, single.force.z) for single in case.free_body.forces)
    for what, unit, left_over in (("forces", "N", case.closure.force), ("moments", "N·m", case.closure.moment)):
        if not left_over <= OPEN_BY * largest:
            raise OpenBodyError(
                f"the free body of '{case.name}' does not close: its {what} leave {left_over:.3g} {unit} over"
            )


# Unit, its size in SI and decimals: finer than in running text, so that a reader can add the column up.
_FINE: dict[str, tuple[tuple[float, int], tuple[float, int]]] = {
    "force": ((1e3, 3), (4.4482216152605, 1)),
    "length": ((1e-3, 1), (0.0254, 3)),
    "moment": ((1.0, 2), (4.4482216152605 * 0.3048, 2)),
}


def _signed(value: float, kind: str) -> Markup:
    texts = []
    for size, decimals in _FINE[kind]:
        rounded = round(value / size, decimals) + 0.0
        texts.append(f"{rounded:+,.{decimals}f}".replace("-", "\u2212") if rounded else f"{0:.{decimals}f}")
    return both(*texts)

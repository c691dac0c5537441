"""Claims: words that hold only while a number stays in a range."""

from markupsafe import Markup, escape

from hubwright.errors import DimensionError
from hubwright.lessons.page_state import PageState
from hubwright.quantities import Quantity, format_number


def claim(
    page: PageState,
    words: str,
    value: Quantity | float,
    *,
    between: tuple[float, float],
    otherwise: str | None = None,
) -> Markup:
    """Return the words while the number lies in the range; else the other words, or a problem.

    In a lesson tied to a named setup the number has to lie in the range. A lesson for any setup needs `otherwise`.
    """
    low, high = between
    try:
        number = float(value)
    except DimensionError:
        page.problem(f"claim '{words}': it needs a plain number, a ratio of like things, and got {value}")
        return Markup(escape(words))
    if page.tied_to is None and otherwise is None:
        page.problem(f"claim '{words}': a lesson that is tied to no setup needs otherwise=\"…\"")
    if low <= number <= high:
        return Markup(words)
    if otherwise is not None:
        return Markup(otherwise)
    if page.tied_to is not None:
        page.problem(
            f"claim '{words}' fails: the number is {format_number(number)}, "
            f"not between {format_number(low)} and {format_number(high)}"
        )
    return Markup(words)

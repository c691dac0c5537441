"""Pages made ready for a look at all that is in them: folds open, of workings one case, one system of units."""

from collections.abc import Sequence
from typing import Any

_OPEN = "document.querySelectorAll('details').forEach(fold => { fold.open = true; })"
_ONE_CASE = "n => document.querySelectorAll('main section').forEach((each, k) => { if (k !== n) each.remove(); })"


def unfolded(page: Any, path: str, paths: Sequence[str]) -> Any:
    """Open every fold of a page; of hundreds of workings those of one case, another one for each setup."""
    workings = [each for each in paths if each.startswith("workings/")]
    if path in workings:
        page.evaluate(_ONE_CASE, workings.index(path))
    page.evaluate(_OPEN)
    return page


def choose(page: Any, units: str) -> None:
    """Choose `si` or `us`, also where a narrow bar hides the switch."""
    page.evaluate("units => document.querySelector(`[name=units][value=${units}]`).click()", units)

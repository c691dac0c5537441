"""Pages with folds, opened for a look at all that is in them; a page of workings at one of its cases."""

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

"""The workings of a report: how the standing loads on hub and rows come about from the numbers of the file."""

from collections.abc import Iterator

from markupsafe import Markup

from hubwright.errors import MissingDataError
from hubwright.lessons.page_state import PageState
from hubwright.lessons.workings.catalogue import of_case
from hubwright.lessons.workings.html import working_html
from hubwright.lessons.workings.model import Working
from hubwright.results import CaseResult, Results

# each leads on to what it puts in: wheel load, load line, moments; on a page every working stands once
_PATHS = ("bearing_force.z", "bearing_moment.x", "row_load.outboard.z", "row_load.inboard.z")


def workings(page: PageState, results: Results) -> Markup:
    """Return the workings of the standing loads, folded; the lessons open those of bends, braking and rough ground."""
    return Markup("\n").join(working_html(page, made) for made in _of(results, results.cases["standing"]))


def _of(results: Results, case: CaseResult) -> Iterator[Working]:
    for path in _PATHS:
        if path.startswith("row_load") and case.row_load is None:
            continue
        try:
            yield of_case(results, case, path)
        except MissingDataError:  # the file says too little of the bearing
            continue

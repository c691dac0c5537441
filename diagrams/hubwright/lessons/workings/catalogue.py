"""Every working by the path of the result that it explains, of a setup and of a case."""

import dataclasses
from collections.abc import Callable, Mapping

from hubwright.errors import MissingDataError
from hubwright.lessons.workings import (
    beams,
    bearing,
    contact,
    drops,
    joint,
    life,
    lives,
    loads,
    ratings,
    rough,
    turning,
    wheel,
)
from hubwright.lessons.workings.left_out import left_out
from hubwright.lessons.workings.model import Working
from hubwright.results import CaseResult, Results

SETUP_WORKINGS: Mapping[str, Callable[[Results], Working]] = {
    **wheel.WORKINGS,
    **loads.SETUP_WORKINGS,
    **bearing.SETUP_WORKINGS,
    **turning.SETUP_WORKINGS,
    **ratings.SETUP_WORKINGS,
    **life.SETUP_WORKINGS,
    **rough.SETUP_WORKINGS,
    **joint.SETUP_WORKINGS,
}
CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    **contact.CASE_WORKINGS,
    **loads.CASE_WORKINGS,
    **bearing.CASE_WORKINGS,
    **beams.CASE_WORKINGS,
    **turning.CASE_WORKINGS,
    **life.CASE_WORKINGS,
    **lives.CASE_WORKINGS,
    **rough.CASE_WORKINGS,
    **drops.CASE_WORKINGS,
    **joint.CASE_WORKINGS,
}
AGREES = 1e-9  # relative: a number put in against the result of the working that explains it


def of_case(results: Results, case: CaseResult, path: str) -> Working:
    """Return the working of a result of a case."""
    return completed(CASE_WORKINGS[path](results, case), path, results, case)


def of_setup(results: Results, path: str) -> Working:
    """Return the working of a result of a setup."""
    return completed(SETUP_WORKINGS[path](results), path, results)


def completed(made: Working, path: str, results: Results, case: CaseResult | None = None) -> Working:
    """Return a working that knows its path, what it is about and what it leaves out."""
    return dataclasses.replace(
        made, path=path, subject=(results, case), leaves_out=left_out(path, case.kind if case else None)
    )


def explained(made: Working, path: str) -> Working | None:
    """Return the working of a number that another one puts in; None where the file says too little for it."""
    if made.subject is None:
        return None
    results, case = made.subject
    try:
        if case is not None and path in CASE_WORKINGS:
            return of_case(results, case, path)
        return of_setup(results, path)
    except MissingDataError:
        return None

"""Which setups of a site belong to one vehicle, and each of them compared with it."""

from hubwright.errors import CaseError
from hubwright.lessons.course import Course
from hubwright.lessons.named_values import subject_of
from hubwright.results import Results
from hubwright.results.changes import NotComparableError
from hubwright.results.comparison import Comparison, at_worst_wheel


def root_of(course: Course, stem: str) -> str | None:
    """Return the stem of the vehicle that a setup changes, None for one that changes nothing or a root not there."""
    extends = course.results[stem].setup.extends
    return extends[-1] if extends and extends[-1] in course.results else None


def families(course: Course) -> dict[str, list[str]]:
    """Return the setups of each vehicle, by stems; a vehicle without any has an empty list."""
    found: dict[str, list[str]] = {stem: [] for stem in course.results if root_of(course, stem) is None}
    for stem in course.results:
        if (root := root_of(course, stem)) in found:
            found[root].append(stem)
    return found


def compared(course: Course, stem: str) -> Comparison | None:
    """Return a setup compared with its vehicle; None where there is nothing to compare or it cannot be done."""
    root = root_of(course, stem)
    if root is None:
        return None
    try:
        view = course.compare(course.views[root], course.views[stem])
    except (CaseError, NotComparableError):
        return None
    comparison = subject_of(view)
    return comparison if isinstance(comparison, Comparison) else None


def worst_results(course: Course, stem: str) -> Results:
    """Return a setup solved where it wears most on its axle; where that cannot be told, at its usual wheel."""
    usual = course.results[stem]
    try:
        comparison = compared(course, stem)
        worst = at_worst_wheel(usual.setup) if comparison is None else comparison.other
    except CaseError:
        return usual
    return usual if worst.wheel == usual.wheel else worst

"""Which case a figure shows that is about some kinds of case only."""

from hubwright.errors import CaseError, MissingDataError
from hubwright.results.model import CaseResult, Kind, Results


def case_of(results: Results, case: str | None, kinds: tuple[Kind, ...], shows: str) -> CaseResult:
    """Return the case asked for, or the first of the right kind; refuse one that the figure cannot show."""
    if case is None:
        fitting = [state for state in results.cases.values() if state.kind in kinds]
        if not fitting:
            raise CaseError(case="standing", reason=f"this figure shows {shows}, and this setup has no such case")
        return fitting[0]
    state = results.cases[case]
    if state.kind not in kinds:
        raise CaseError(case=case, reason=f"this figure shows {shows}")
    return state


def drop_case(results: Results, case: str | None) -> str:
    """Return the drop asked for, or the first of the file; why there is none where there is none."""
    if case is None and results.setup.suspension is None:
        raise MissingDataError(
            result="a drop", missing=["suspension"], reason="Nothing is estimated for a trailer's springs"
        )
    return case_of(results, case, ("drop",), "a drop").name

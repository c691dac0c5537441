"""What a lesson may ask about how far a drop's peaks are settled: their spans over the ranges of all inputs."""

from collections.abc import Callable, Mapping

from hubwright.lessons.named_values import View, constant, subject_of
from hubwright.quantities import Kind, Quantity
from hubwright.results import CaseResult, Results

_NAMES: tuple[tuple[str, str, Kind], ...] = (
    ("peak_tire_force", "N", "force"),
    ("peak_bearing_force", "N", "force"),
    ("impact_factor", "1", "ratio"),
)


def drop_span(case: View) -> View | None:
    """Return the peaks of a drop with the span of each over the ranges of all inputs; None where nothing has a range.

    The draws are made when it is asked for: ask it of a variant that has this one drop.
    """
    subject = subject_of(case) if isinstance(case, View) else None
    results, state = subject if isinstance(subject, tuple) and len(subject) == 2 else (None, None)
    if not isinstance(results, Results) or not isinstance(state, CaseResult) or state.kind != "drop":
        raise TypeError(f"needs a case of the kind drop, got {case!r}")
    spans = results.spans
    names: dict[str, Quantity] = {}
    for name, unit, kind in _NAMES:
        found = spans.get(f"cases.{state.name}.{name}")
        if found is None:
            return None
        names[name] = Quantity(float(state.extras[name]), unit, kind=kind, low=found.low, high=found.high)
    return View("the span of the drop", {name: constant(value) for name, value in names.items()})


FUNCTIONS: Mapping[str, Callable[..., object]] = {drop_span.__name__: drop_span}

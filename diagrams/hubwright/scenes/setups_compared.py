"""Setups beside one base: load of the worst row and life as ratios with spans, as bars from 1 on axes of factors."""

import math
from collections.abc import Sequence

from hubwright.results.changes import NotComparableError
from hubwright.results.comparison import Compared, Comparison, compare_results
from hubwright.results.model import Results
from hubwright.results.span_tables import sampling_words
from hubwright.scenes.ratio_panels import (
    RatioPanel,
    RatioRow,
    in_brackets,
    ratio_and_verdict,
    ratio_panels,
    span_ends,
    times_beside,
)
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Scene, Step, Units

_COUNTS = {2: "two", 3: "three", 4: "four", 5: "five", 6: "six"}


def setups_compared(
    base: Results, other: Results, *more: Results, case: str = "standing", units: Units = "si"
) -> Scene:
    """Return the scene of one or more setups beside a base, at the wheel at which each of them is solved."""
    compared = [compare_results(base, each) for each in (other, *more)]
    panels = [
        panel
        for name, heading, found in _quantities(compared, case)
        if (panel := _panel(name, heading, compared, found)) is not None
    ]
    if not panels:
        raise NotComparableError(f"beside {base.setup.name} there is no ratio of loads or lives to draw")
    views, items, size = ratio_panels(panels)
    return Scene(
        name="setups-compared",
        title=_title(base, compared, case),
        caption=_caption(base, compared),
        description=_description(compared, case),
        units=units,
        size=size,
        views=views,
        items=items,
        steps=(
            Step("Begin at 1", f"1 is {plain(base.setup.name)}."),
            Step("Put each setup beside it", "Each bar ends at its ratio; a thin line is the span of that."),
        ),
    )


def _quantities(compared: Sequence[Comparison], case: str) -> list[tuple[str, str, list[Compared | None]]]:
    """Return name, heading and values of what is shown: the loads first, because they say more than a life does."""
    loads = [each.row_loads.get(case) for each in compared]
    found = [("row-load", f"Load of the worst row, {plain(case)}", loads)]
    if any(each.distance is not None for each in compared):
        return [*found, ("life", "Life over the duty", [each.distance for each in compared])]
    return [*found, ("life", f"Life, {plain(case)}", [each.lives.get(case) for each in compared])]


def _panel(
    name: str, heading: str, compared: Sequence[Comparison], values: Sequence[Compared | None]
) -> RatioPanel | None:
    if all(each is None or each.ratio is None for each in values):
        return None
    rows = []
    for number, (comparison, each) in enumerate(zip(compared, values, strict=True), 1):
        what = plain(comparison.other.setup.name)
        if each is None:
            rows.append(RatioRow(f"{number}", f"{what}: not known"))
            continue
        ratio, span = (each.ratio, each.span) if each.ratio is not None and each.valid else (1.0, None)
        rows.append(RatioRow(f"{number}", f"{what}: {ratio_and_verdict(each)}", 1.0, ratio, span))
    return RatioPanel(name, heading, tuple(rows))


def _title(base: Results, compared: Sequence[Comparison], case: str) -> str:
    _, heading, values = _quantities(compared, case)[-1]
    known = [
        (comparison, each, each.ratio)
        for comparison, each in zip(compared, values, strict=True)
        if each is not None and each.ratio is not None and each.valid
    ]
    if not known:
        return f"Load of the worst row, {plain(case)}, beside {plain(base.setup.name)}"
    settled = [entry for entry in known if entry[1].verdict in ("raises", "lowers")]
    if not settled:
        moved = any(each.verdict == "not settled" for _, each, _ in known)
        told = "these data do not settle which way it goes" if moved else "nothing changes it"
        return f"{heading}, beside {plain(base.setup.name)}: {told}"
    comparison, each, ratio = max(settled, key=lambda entry: abs(math.log(entry[2])))
    factor = times_beside(ratio, each.span)
    alike = [entry for entry in settled if times_beside(entry[2], entry[1].span) == factor]
    ends = {span_ends(entry[1].span) for entry in alike}
    told = f"× {factor}{ends.pop() if len(ends) == 1 else ''}"
    most = "most changed" if len(known) > len(alike) else "changed"
    if len(alike) > 1:
        count = "both" if len(alike) == len(known) == 2 else _COUNTS.get(len(alike), f"{len(alike)}")
        return f"{heading}: {most} by {count} setups alike, {told}"
    return f"{heading}: {most} by {plain(comparison.other.setup.name)}, {told}"


def _caption(base: Results, compared: Sequence[Comparison]) -> str:
    wheels = {each.wheel.replace("_", " ") for each in compared}
    words = [f"Each setup over {plain(base.setup.name)}, {' and '.join(sorted(wheels))} wheel."]
    draws = {each.draws for each in compared if each.draws}
    if draws:
        words.append(
            f"Thin lines: spans over the ranges of all inputs, 5th to 95th percentile of {min(draws)} draws, "
            f"{sampling_words(min(draws))}."
        )
    return " ".join(words)


def _description(compared: Sequence[Comparison], case: str) -> str:
    sentences = []
    for _, heading, values in _quantities(compared, case):
        told = [
            f"{plain(comparison.other.setup.name)} {ratio_and_verdict(each)}{in_brackets(each.span)}"
            for comparison, each in zip(compared, values, strict=True)
            if each is not None
        ]
        if told:
            sentences.append(f"{heading}: {'; '.join(told)}.")
    return " ".join(sentences)

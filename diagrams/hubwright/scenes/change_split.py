"""What each change contributes to a ratio of lives and of worst-row loads, as a chain of bars from 1 to the whole.

A view's abscissa is the logarithm to base ten of the ratio, so that factors add up; its ordinate sheet millimetres.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from hubwright.quantities import format_quantity
from hubwright.results.changes import NotComparableError, gear_names
from hubwright.results.comparison import Compared, Comparison, compare_results
from hubwright.results.contributions import Contribution
from hubwright.results.draws import Span
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
    times_together,
)
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Scene, Step, Units


@dataclass(frozen=True)
class _Chain:
    """One ratio with its parts."""

    name: str  # of the view
    heading: str
    whole: Compared
    parts: tuple[Contribution, ...]
    spans: tuple[Span | None, ...]  # of the parts
    names: tuple[str, ...]  # of the changes

    @property
    def told(self) -> list[str]:
        """Each part in words; what is printed multiplies to the whole."""
        texts = times_together([part.factor for part in self.parts], self.spans, self.whole.span)
        return [_factor(part, text) for part, text in zip(self.parts, texts, strict=True)]

    @property
    def ratio(self) -> float:
        """The whole ratio; a chain is only made where there is one."""
        assert self.whole.ratio is not None
        return self.whole.ratio


def change_split(base: Results, other: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of what each change between two setups contributes to life and to the worst row's load."""
    comparison = compare_results(base, other)
    chains = _chains(comparison, base, other, case)
    if not chains:
        raise NotComparableError(
            f"between {base.setup.name} and {other.setup.name} there is no ratio to split into changes"
        )
    several = any(len(chain.parts) > 1 for chain in chains)
    views, items, size = ratio_panels([_panel(chain) for chain in chains])
    return Scene(
        name="change-split",
        title=_title(chains[0], other),
        caption=_caption(comparison, base, other, chains),
        description=_description(chains),
        units=units,
        size=size,
        views=views,
        items=items,
        steps=(
            Step("Begin at 1", "1 is the setup before any change."),
            Step("Make each change", "Each bar begins where the one before ended; its length is its factor."),
            *([Step("See the whole", "All factors together make the whole ratio.")] if several else []),
        ),
    )


def _chains(comparison: Comparison, base: Results, other: Results, case: str) -> list[_Chain]:
    wanted = [
        ("life", "Life over the duty", "distance", comparison.distance),
        ("row-load", f"Load of the worst row, {plain(case)}", f"row load, {case}", comparison.row_loads.get(case)),
    ]
    if comparison.distance is None:
        wanted[0] = ("life", f"Life, {plain(case)}", f"life, {case}", comparison.lives.get(case))
    chains = []
    for name, heading, key, whole in wanted:
        parts = comparison.parts.get(key)
        if whole is not None and whole.ratio is not None and whole.valid and parts:
            spans = comparison.part_spans.spans.get(key) or (None,) * len(parts)
            names = tuple(_name(part, base, other) for part in parts)
            chains.append(_Chain(name, heading, whole, parts, spans, names))
    return chains


def _name(part: Contribution, base: Results, other: Results) -> str:
    """Return what a change is called, gear with whether it comes on or off."""
    name = plain(part.change)
    if part.kind != "gear":
        return name
    before, after = (part.change in gear_names(results.setup) for results in (base, other))
    return f"{name} changed" if before and after else f"{name} on" if after else f"{name} off"


def _panel(chain: _Chain) -> RatioPanel:
    rows: list[RatioRow] = []
    begin = 1.0
    rows_told = zip(chain.parts, chain.names, chain.spans, chain.told, strict=True)
    for number, (part, name, span, told) in enumerate(rows_told, 1):
        words, end = f"{name}: {told}", begin * part.factor
        rows.append(RatioRow(f"{number}", words, begin, end, span, is_linked=True))
        begin = end
    if len(rows) == 1:  # it is the whole
        alone = f"{chain.names[0]}: {ratio_and_verdict(chain.whole)}"
        return RatioPanel(
            chain.name, chain.heading, (replace(rows[0], words=alone, span=chain.whole.span, is_linked=False),)
        )
    words = f"all together: {ratio_and_verdict(chain.whole)}"
    rows.append(RatioRow("whole", words, 1.0, chain.ratio, chain.whole.span, is_open=True, step=3))
    return RatioPanel(chain.name, chain.heading, tuple(rows))


def _factor(part: Contribution, text: str) -> str:
    if part.nothing:
        return "no change"
    told = f"×\u00a0{text}"
    return told if part.error == 0 else f"{told} (± {format_quantity(part.error, 'percent', 'si')})"


def _title(chain: _Chain, other: Results) -> str:
    what = chain.heading
    if chain.whole.verdict == "unchanged":
        return f"{what}: × 1, these changes contribute nothing"
    if chain.whole.verdict == "not settled":
        return f"{what}: these data do not settle which way {plain(other.setup.name)} changes it"
    named = list(zip(chain.parts, chain.names, strict=True))
    _, most = max(named, key=lambda each: abs(math.log(each[0].factor)))
    idle = [name for part, name in named if part.nothing]
    moving = [part for part in chain.parts if not part.nothing]
    opposed = len({part.factor > 1 for part in moving}) > 1
    share = "all of it by" if len(moving) == 1 else "moved most by" if opposed else "most of it by"
    told = f"{what}: × {times_beside(chain.ratio, chain.whole.span)}{span_ends(chain.whole.span)}, {share} {most}"
    return f"{told}, nothing by {_listed(idle)}" if idle else told


def _caption(comparison: Comparison, base: Results, other: Results, chains: Sequence[_Chain]) -> str:
    names = (plain(other.setup.name), plain(base.setup.name))
    after, before = names if names[0] != names[1] else ("after the changes", "before them")
    words = [f"{after[:1].upper()}{after[1:]} over {before}, {comparison.wheel.replace('_', ' ')} wheel."]
    if any(len(chain.parts) > 1 for chain in chains):
        words[0] += (
            " Each factor is the average over the orders in which the changes can be made: they multiply to the whole."
        )
    else:
        words[0] += f" The only change: {chains[0].names[0]}."
    if any(chain.whole.span for chain in chains):
        words.append(
            f"Thin lines: spans over the ranges of all inputs, 5th to 95th percentile of {comparison.draws} draws"
        )
        draws = comparison.draws
        if any(span for chain in chains for span in chain.spans) and comparison.part_spans.draws < draws:
            draws = comparison.part_spans.draws
            words[-1] += f", of the single factors {draws}"
        words[-1] += f", {sampling_words(draws)}."
    if any(part.error for chain in chains for part in chain.parts):
        words.append("±: the sampling error of drawn orders.")
    return " ".join(words)


def _description(chains: Sequence[_Chain]) -> str:
    sentences = []
    for chain in chains:
        whole = f"{ratio_and_verdict(chain.whole)}{in_brackets(chain.whole.span)}"
        if len(chain.parts) == 1:
            sentences.append(f"{chain.heading}: {chain.names[0]} {whole}.")
            continue
        parts = ", ".join(
            f"{name} {told}{in_brackets(span)}"
            for name, span, told in zip(chain.names, chain.spans, chain.told, strict=True)
        )
        sentences.append(f"{chain.heading}: {parts}; all together {whole}.")
    return " ".join(sentences)


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"

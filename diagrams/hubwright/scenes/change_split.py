"""What each change contributes to a ratio of lives and of worst-row loads, as a chain of bars from 1 to the whole.

A view's abscissa is the logarithm to base ten of the ratio, so that factors add up; its ordinate sheet millimetres.
"""

import math
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

from hubwright.quantities import format_number, format_quantity
from hubwright.results.changes import NotComparableError
from hubwright.results.comparison import Compared, Comparison, compare
from hubwright.results.contributions import Contribution
from hubwright.results.draws import Span
from hubwright.results.model import Results
from hubwright.results.span_tables import sampling_words
from hubwright.scenes.plot_frame import Marks, decade_marks, even_marks
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Axis, Bar, Item, Label, Line, Scene, Step, Units, View, Words

_WIDTH = 310.0
_LEFT, _RIGHT, _NAMES = 96.0, 244.0, 90.0
_FOOT, _PITCH, _THICK, _GAP, _HEADING = 8.0, 10.0, 4.2, 12.0, 7.0
_AXIS = 9.0  # room for the words of an axis
_LETTERS = 36
_NARROWEST = 0.04  # of a decade: a chain that goes nowhere still has a scale


@dataclass(frozen=True)
class _Chain:
    """One ratio with its parts."""

    name: str  # of the view
    heading: str
    whole: Compared
    parts: tuple[Contribution, ...]
    spans: tuple[Span | None, ...]  # of the parts

    @property
    def ends(self) -> list[float]:
        """Where each part ends, as logarithms."""
        ends, at = [], 0.0
        for part in self.parts:
            at += math.log10(part.factor)
            ends.append(at)
        return ends

    @property
    def ratio(self) -> float:
        """The whole ratio; a chain is only made where there is one."""
        assert self.whole.ratio is not None
        return self.whole.ratio


def change_split(base: Results, other: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of what each change between two setups contributes to life and to the worst row's load."""
    comparison = compare(base.setup, other.setup, other.wheel)
    chains = _chains(comparison, case)
    if not chains:
        raise NotComparableError(
            f"between {base.setup.name} and {other.setup.name} there is no ratio to split into changes"
        )
    views: list[View] = []
    items: list[Item] = []
    low = _FOOT
    for chain in reversed(chains):
        view, high = _panel(chain, low, items)
        views.append(view)
        low = high + _GAP
    return Scene(
        name="change-split",
        title=_title(chains[0], other),
        caption=_caption(comparison, base, other, chains),
        description=_description(chains),
        units=units,
        size=(_WIDTH, low - _GAP + _HEADING + 4.0),
        views=tuple(views[::-1]),
        items=tuple(items),
        steps=(
            Step("Begin at 1", "1 is the setup before any change."),
            Step("Make each change", "Each bar begins where the one before ended; its length is its factor."),
            Step("See the whole", "All factors together make the whole ratio."),
        ),
    )


def _chains(comparison: Comparison, case: str) -> list[_Chain]:
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
            chains.append(_Chain(name, heading, whole, parts, spans))
    return chains


def _panel(chain: _Chain, low: float, items: list[Item]) -> tuple[View, float]:
    """Add one chain's items from a height of the sheet on; return its view and where it ends."""
    rows = len(chain.parts) + 1
    foot, high = low + _AXIS, low + _AXIS + rows * _PITCH
    start, end = _reach(chain)
    scale = (_RIGHT - _LEFT) / (end - start)
    view = View(chain.name, (_LEFT - start * scale, 0.0), scale, vertical_per_mm=1.0)
    items.append(
        Axis(f"axis-{chain.name}", chain.name, at=foot, start=start, end=end, marks=_marks(start, end), grid_to=high)
    )
    one = ((0.0, foot), (0.0, high))
    items.append(Line(f"one-{chain.name}", chain.name, points=one, width=0.4, level=3))
    items.append(
        Words(f"heading-{chain.name}", "", at_sheet=(10.0, high + 3.5), lines=(f"*{chain.heading}",), size=2.5)
    )
    begin = 0.0
    for number, (part, finish) in enumerate(zip(chain.parts, chain.ends, strict=True)):
        at = high - (number + 0.5) * _PITCH
        told = f"{_shortened(plain(part.change))}: {_factor(part)}"
        items.append(_row(chain, view, f"{number + 1}", told, begin, finish, at, chain.spans[number]))
        drop = ((finish, at - _THICK / 2), (finish, at - _PITCH + _THICK / 2))
        items.append(
            Line(f"link-{chain.name}-{number + 1}", chain.name, 2, points=drop, style="hair", tone="soft", level=2)
        )
        begin = finish
    at = foot + 0.5 * _PITCH
    told = f"all together: {_whole(chain)}"
    items.append(_row(chain, view, "whole", told, 0.0, math.log10(chain.ratio), at, chain.whole.span))
    return view, high


def _row(
    chain: _Chain, view: View, name: str, told: str, start: float, end: float, at: float, span: Span | None
) -> Bar:
    """Return a bar with its name, its factor and the span of that on the left."""
    whole = name == "whole"
    ends = None if span is None or span.low <= 0 else (start + math.log10(span.low), start + math.log10(span.high))
    nearest = min(start, end, *(ends or ()))
    lines = (told,) if span is None else (told, f"span {_times(span.low)} to {_times(span.high)}")
    return Bar(
        f"bar-{chain.name}-{name}",
        chain.name,
        3 if whole else 2,
        start=start,
        end=end,
        at=at,
        thick=_THICK,
        tone="changed",
        is_open=whole,
        span=ends,
        label=Label(lines, "left", size=2.3, nudge=(_NAMES - view.on_sheet((nearest, 0.0))[0] + 1.6, 0.0)),
        level=1,
    )


def _shortened(words: str) -> str:
    return (textwrap.wrap(words, _LETTERS) or [""])[0]


def _reach(chain: _Chain) -> tuple[float, float]:
    """Return from where to where a chain and its span need the axis, with some room."""
    places = [0.0, *chain.ends]
    spans = zip((0.0, *chain.ends[:-1], 0.0), (*chain.spans, chain.whole.span), strict=True)
    for start, span in spans:
        if span is not None and span.low > 0:
            places += [start + math.log10(span.low), start + math.log10(span.high)]
    low, high = min(places), max(places)
    room = max(0.06 * (high - low), (_NARROWEST - (high - low)) / 2)
    return low - room, high + room


def _marks(low: float, high: float) -> Marks:
    """Return ratios as marks: round numbers, in decades where there are several."""
    if high - low > 1.2:
        return decade_marks(low, high)
    return tuple((math.log10(value), text) for value, text in even_marks(10**low, 10**high, about=5) if value > 0)


def _times(value: float) -> str:
    # near 1 a third decimal tells a little from nothing
    return (
        format_number(value, significant=4, decimals=3) if 0.9 < value < 1.1 else format_quantity(value, "ratio", "si")
    )


def _factor(part: Contribution) -> str:
    if part.nothing:
        return "nothing"
    told = f"× {_times(part.factor)}"
    return told if part.error == 0 else f"{told} (± {format_quantity(part.error, 'percent', 'si')})"


def _whole(chain: _Chain) -> str:
    told = {
        "raises": "raised",
        "lowers": "lowered",
        "not settled": "not settled which way",
        "unchanged": "unchanged",
    }[chain.whole.verdict]
    return f"× {_times(chain.ratio)}, {told}"


def _title(chain: _Chain, other: Results) -> str:
    what = chain.heading
    if chain.whole.verdict == "unchanged":
        return f"{what}: × 1, these changes contribute nothing"
    if chain.whole.verdict == "not settled":
        return f"{what}: these data do not settle which way {plain(other.setup.name)} changes it"
    most = max(chain.parts, key=lambda part: abs(math.log(part.factor)))
    idle = [plain(part.change) for part in chain.parts if part.nothing]
    span = chain.whole.span
    ends = "" if span is None else f" ({_times(span.low)} to {_times(span.high)})"
    told = f"{what}: × {_times(chain.ratio)}{ends}, most of it by {plain(most.change)}"
    return f"{told}, nothing by {_listed(idle)}" if idle else told


def _caption(comparison: Comparison, base: Results, other: Results, chains: Sequence[_Chain]) -> str:
    words = [
        f"{plain(other.setup.name)} over {plain(base.setup.name)}, {comparison.wheel.replace('_', ' ')} wheel. "
        "Each factor is the average over the orders in which the changes can be made: they multiply to the whole."
    ]
    if any(chain.whole.span for chain in chains):
        words.append(
            f"Thin lines: spans over the ranges of all inputs, 5th to 95th percentile of {comparison.draws} draws"
        )
        if any(span for chain in chains for span in chain.spans):
            draws = comparison.part_spans.draws
            words[-1] += f", of the single factors {draws}, {sampling_words(draws)}."
        else:
            words[-1] += f", {sampling_words(comparison.draws)}."
    if any(part.error for chain in chains for part in chain.parts):
        words.append("±: the sampling error of drawn orders.")
    return " ".join(words)


def _description(chains: Sequence[_Chain]) -> str:
    sentences = []
    for chain in chains:
        parts = ", ".join(
            f"{plain(part.change)} {_factor(part)}{_in_words(span)}"
            for part, span in zip(chain.parts, chain.spans, strict=True)
        )
        sentences.append(f"{chain.heading}: {parts}; all together {_whole(chain)}{_in_words(chain.whole.span)}.")
    return " ".join(sentences)


def _in_words(span: Span | None) -> str:
    return "" if span is None else f" (span {_times(span.low)} to {_times(span.high)})"


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"

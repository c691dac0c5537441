"""A wheel in a corner or on a side slope: what its vertical and its side force each do to the bearing.

Both turn the hub about the bearing centre, at the outer wheel of an outboard load line in opposite sense; the moments
are chained as bars, and the rows answer in a detail. Views as in `wheel_end_section`.
"""

from dataclasses import replace

from hubwright.results.model import Results
from hubwright.scenes.case_choice import case_of
from hubwright.scenes.corner_moments import Turning, corner_moments, ends_of, sense, sizes_of
from hubwright.scenes.key_entries import moment_entries
from hubwright.scenes.outer_wheel_words import CornerWording
from hubwright.scenes.scales import round_scale
from hubwright.scenes.vocabulary import (
    Bar,
    Dot,
    Item,
    KeyEntry,
    Label,
    Line,
    Moment,
    Note,
    ScaleBar,
    Scene,
    Units,
    View,
    Words,
)
from hubwright.scenes.wheel_end_drawn import ABOVE_PARTS, Drawn, closed_body
from hubwright.scenes.wheel_end_layout import HEIGHT, WIDTH, Layout, layout
from hubwright.scenes.wheel_end_levers import LEVEL, effective_spread, levers
from hubwright.scenes.wheel_end_loads import contact_items, small_items
from hubwright.scenes.wheel_end_parts.assembly import assembly
from hubwright.scenes.wheel_end_parts.measures import measures
from hubwright.scenes.wheel_end_reactions import pressure_centres, row_items
from hubwright.scenes.wheel_end_section import axes
from hubwright.scenes.wheel_end_solids import solids

_BARS = (138.0, 294.0)  # where the chain of moments stands, a right wheel's mirrored
_TOP, _PITCH, _THICK = 46.5, 5.8, 3.4
_LABELS, _BESIDE = 69.0, 1.6  # width of the words left of the chain; from an item to words beside it
_ARCS = {"side": 15.0, "upright": 7.5}  # radii on the sheet
_CHAIN = "Moments about {C}, on the body"
_NOTHING = 1e-6


def outer_wheel_in_corner(results: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of one wheel in a corner or on a side slope, with its moments about the bearing centre."""
    state = case_of(results, case, ("cornering", "side_slope"), "a wheel in a corner or on a side slope")
    parts = assembly(measures(results))
    words = CornerWording(results, state, units, parts.measures.bearing.schematic, hanging=False)
    sheet = layout(results, state, parts)
    drawn = Drawn(sheet, parts, words)
    turnings = corner_moments(state)
    bars = _bars_view(sheet, turnings)
    items: list[Item] = [
        *solids(parts, "whole", sheet.side, "whole"),
        *solids(parts, "detail", sheet.side, "detail"),
        *axes(drawn),
        Dot("centre", "whole", 1, at=(0.0, 0.0), radius=0.7, level=ABOVE_PARTS + 6),
        *contact_items(drawn, 2),
        *small_items(drawn, 2),
        *pressure_centres(drawn, 3),
        *(replace(item, step=3) for item in row_items(drawn, 3)),
        *_levers(drawn, 4),
        *effective_spread(drawn, 4),
        _load_line_note(drawn, 4),
        *_arcs(drawn, turnings, 5),
        *_chain(drawn, bars, turnings, 6),
    ]
    return Scene(
        name="outer-wheel-in-corner",
        title=words.corner_title(turnings),
        caption=words.corner_caption(turnings),
        description=words.corner_description(turnings),
        units=units,
        size=(WIDTH, HEIGHT),
        views=(sheet.whole, sheet.detail, sheet.lens, bars),
        items=tuple(items),
        steps=words.corner_steps(turnings),
        columns=sheet.columns(),
        scale_bars=(
            ScaleBar("whole", "length", f"Whole wheel {sheet.whole_ratio}"),
            ScaleBar("detail", "length", f"Detail {sheet.detail_ratio}"),
            ScaleBar("lens", "length", f"Weights {sheet.lens_ratio}"),
            ScaleBar("whole", "force", "Forces, both views"),
        ),
        key=(
            KeyEntry("load", "load"),
            KeyEntry("reaction", "reaction"),
            *moment_entries(items),
            KeyEntry("load line", "load line"),
            KeyEntry("turning", "turns: the body"),
            KeyEntry("fixed", "stands still"),
        ),
        axes="rear",
        body=closed_body(words.state.free_body),
    )


def _levers(d: Drawn, step: int) -> list[Item]:
    """Return load line and levers; of the wheel's own lengths only those that are levers here."""
    kept = ("load-line-whole", "load-line-detail", "centre-plane", "load-line-offset", "loaded-radius")
    return [item for item in levers(d, step) if item.name in kept or item.name == "load-line-on-axis"]


def _load_line_note(d: Drawn, step: int) -> Note:
    m = d.parts.measures
    at = (d.layout.side * m.load_line, 0.74 * d.parts.wheel.floor)
    lines = ("Load line,", d.words.load_line.removesuffix(" of the bearing centre"))
    return Note(
        "label-load-line",
        "whole",
        step,
        label=Label(lines, d.outboard_column, anchor=at, tone="load", size=2.4),
        level=LEVEL,
    )


def _arcs(d: Drawn, turnings: tuple[Turning, ...], step: int) -> list[Item]:
    """Return the moments of the side force and of the vertical force about the bearing centre as arcs."""
    largest = max(abs(turning.value) for turning in turnings)
    items: list[Item] = []
    for turning, text in zip(turnings[:2], sizes_of(turnings, d.words.units), strict=False):
        if abs(turning.value) <= _NOTHING * largest:
            continue
        items.append(
            Moment(
                f"moment-{turning.name}",
                "whole",
                step,
                at=(0.0, 0.0),
                newton_metres=turning.value,
                role="applied",
                radius=_ARCS[turning.name],
                label=Label(
                    (f"*{turning.symbol} = {text}", sense(turning.value)), d.outboard_column, tone="moment", size=2.8
                ),
                level=ABOVE_PARTS + 2,
            )
        )
    return items


def _bars_view(sheet: Layout, turnings: tuple[Turning, ...]) -> View:
    """Return the view of the chain: N·m, counter-clockwise to the left; sheet millimetres up."""
    ends = ends_of(turnings)
    low, high = min(0.0, *ends), max(0.0, *ends)
    start, end = _left(sheet) + _LABELS + 2.0, _left(sheet) + _BARS[1] - _BARS[0]
    per_mm = round_scale(high - low, end - start)
    # the longest bar begins beside its words
    origin = (start + high / per_mm, 0.0)
    return View("moments", origin, 1.0 / per_mm, mirrored=True, vertical_per_mm=1.0, heading=_CHAIN)


def _left(sheet: Layout) -> float:
    """Return where the chain's words begin."""
    return _BARS[0] if sheet.side > 0 else WIDTH - _BARS[1]


def _chain(d: Drawn, view: View, turnings: tuple[Turning, ...], step: int) -> list[Item]:
    """Return the bars, each beginning where the one before ended, until the bearing's leads back to zero."""
    left, bottom = _left(d.layout), _TOP - (len(turnings) - 1) * _PITCH
    zero = ((0.0, _TOP + 2.6), (0.0, bottom - 2.6))
    items: list[Item] = [
        Words("words-moments", "moments", step, at_sheet=(left, _TOP + 5.4), lines=(f"*{view.heading}",)),
        Line("moments-zero", "moments", step, points=zero, width=0.4),
    ]
    start = 0.0
    sizes = sizes_of(turnings, d.words.units)
    for number, (turning, end, size) in enumerate(zip(turnings, ends_of(turnings), sizes, strict=True)):
        height = _TOP - number * _PITCH
        nearest = view.origin[0] - max(start, end, 0.0 if turning.reaction else -1e9) * view.scale
        text = f"*{turning.symbol} = {size}"
        label = Label(
            (f"{text}, {sense(turning.value)}",),
            "left",
            tone="moment",
            size=2.2,
            nudge=(left + _LABELS - (nearest - _BESIDE), 0.0),
        )
        items.append(
            Bar(
                f"bar-{turning.name}",
                "moments",
                step,
                start=start,
                end=0.0 if turning.reaction else end,  # but for rounding: the free body closes
                at=height,
                thick=_THICK,
                tone="moment",
                is_open=turning.reaction,
                label=label,
            )
        )
        if not turning.reaction:
            drop = ((end, height - _THICK / 2), (end, height - _PITCH + _THICK / 2))
            items.append(Line(f"chain-{turning.name}", "moments", step, points=drop, style="hair", tone="soft"))
        start = end
    return items

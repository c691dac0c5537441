"""A beam from its own file: supports and loads, reactions, shear, bending moment and deflection on one abscissa.

View in real millimetres: x along the beam from its left end, up positive; couples counter-clockwise positive.
"""

import math
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from hubwright.quantities import format_quantity, format_terms
from hubwright.quantities.formatting import MINUS
from hubwright.quantities.sums import display_sum
from hubwright.results.beams import BeamReaction, BeamResults
from hubwright.scenes.beam_loads import (
    HALF_BAR,
    LINE_HEIGHT,
    WORDS_HEIGHT,
    LoadScales,
    closed_body,
    load_items,
    word_heights,
)
from hubwright.scenes.diagrams import (
    MARGIN,
    WORDS_PITCH,
    Abscissa,
    PrintedForce,
    Rest,
    RowWords,
    plot_rows,
    shared_force_scale,
    shear_text,
)
from hubwright.scenes.key_entries import moment_entries
from hubwright.scenes.scales import drawing_scale
from hubwright.scenes.small_forces import is_small, length, visible
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import (
    Dimension,
    Force,
    Item,
    KeyEntry,
    Label,
    Line,
    Moment,
    Part,
    ScaleBar,
    Scene,
    Step,
    Support,
    Units,
    View,
    Words,
)
from hubwright.setup.model import DistributedLoad, PointForce

_WIDTH, _LEFT, _RIGHT = 310.0, 76.0, 280.0  # of the drawing area, and where the beam may reach
_FOOT, _ROW = 31.0, 7.0
_ARROWS = 20.0
_SYMBOL = 7.5  # from the axis down past a support's symbol
_MORE_DIGITS, _NEAR = (4, 5, 6), 0.02  # of a chain's whole length, where a short one would be told less closely
_WORDS = RowWords(
    shear=("sum of the upward", "forces left of the cut"),
    moment=("sagging positive,", "d{M}/d{x} = {V}"),
    no_size=("for want of", "a [section]"),
)


@dataclass(frozen=True)
class _Span:
    """A distance along the beam [mm], its words and the row in which it stands, from the top."""

    left: float
    right: float
    text: str
    row: int


def beam_alone(beam: BeamResults, *, units: Units = "si") -> Scene:
    """Return the scene of a solved beam: its free body above, its three diagrams below."""
    start, end = beam.start * 1e3, beam.end * 1e3
    scale, written = drawing_scale(end - start, _RIGHT - _LEFT)
    abscissa = Abscissa((_LEFT + _RIGHT) / 2 - scale * (start + end) / 2, scale, start, end)
    newtons_per_mm = shared_force_scale(beam, _ARROWS)
    rests = tuple(Rest(reaction.at * 1e3, _kind(beam, reaction)) for reaction in beam.reactions)
    rows = plot_rows(
        beam,
        abscissa,
        rests=rests,
        newtons_per_mm=newtons_per_mm,
        low=_FOOT,
        first_step=5,
        units=units,
        words=_WORDS,
        printed=_printed(beam, units),
    )
    scales = LoadScales.of(beam, scale, newtons_per_mm)
    heights = word_heights(beam, scales)
    pushes = max(
        length(reaction.force, newtons_per_mm) + (LINE_HEIGHT if is_small(reaction.force, newtons_per_mm) else 0.0)
        for reaction in beam.reactions
    )
    down = max(_SYMBOL + pushes + WORDS_HEIGHT, heights.down) + 4.0
    up = max(12.0, heights.up)
    spans = _spans(beam, scale, units)
    length_rows = 1 + max(span.row for span in spans)
    view = abscissa.view("beam", rows.high + length_rows * _ROW + down, newtons_per_mm=newtons_per_mm)
    small = replace(view, name="spread-loads", newtons_per_mm=scales.small)
    bars = [ScaleBar("beam", "length", f"Along {written}"), ScaleBar("beam", "force", "Forces and {V}")]
    views: tuple[View, ...] = (view, *rows.views)
    if scales.small is not None:
        bars.append(ScaleBar("spread-loads", "force", "Small arrows"))
        views = (view, small, *rows.views)
    items = [
        *_bar(beam, view, rests),
        *load_items(beam, view, small, heights, units),
        *_reactions(beam, view, units),
        *_lengths(beam, spans, view, rows.high + 3.0),
        *_guides(beam, view, rows.views[0].origin[1] - 8.0),
        *rows.items,
    ]
    return Scene(
        name="beam-alone",
        title=_title(beam, units),
        caption=_caption(beam, items),
        description=_description(beam, units),
        units=units,
        size=(_WIDTH, view.origin[1] + up + 3.0),
        views=views,
        items=tuple(items),
        steps=(
            Step("Draw the beam", "Its length to scale, with its supports.", "isolate"),
            Step("Put the loads on it", "Forces and couples at their places.", "loads"),
            Step(
                "Replace the supports",
                "Each support by what it can do: push, pull, or hold against turning.",
                "reactions",
            ),
            Step("Measure the distances", "Each force times its distance is a moment.", "dimensions"),
            Step("Plot the shear", "It jumps at each force by just that force.", "solve"),
            Step(
                "Plot the bending moment",
                "It grows as steeply as the shear is large and jumps at each couple.",
                "solve",
            ),
            Step("Bend the beam", "Where the moment is large, the curve is tight.", "solve"),
        ),
        scale_bars=tuple(bars),
        key=(
            KeyEntry("load", "load"),
            KeyEntry("reaction", "reaction"),
            *moment_entries(items, load="couple", reaction="moment of a support"),
        ),
        body=closed_body(beam, scale),
    )


def _kind(beam: BeamResults, reaction: BeamReaction) -> Literal["pin", "roller", "fixed-left", "fixed-right"]:
    if reaction.type != "fixed":
        return reaction.type
    return "fixed-left" if reaction.at <= (beam.start + beam.end) / 2 else "fixed-right"


def _bar(beam: BeamResults, view: View, rests: tuple[Rest, ...]) -> list[Item]:
    thick = HALF_BAR / view.scale
    start, end = beam.start * 1e3, beam.end * 1e3
    ring = ((start, -thick), (end, -thick), (end, thick), (start, thick))
    items: list[Item] = [
        Words("words-body", "", at_sheet=(MARGIN, view.origin[1] + 3.0), lines=("*Free body",)),
        Words(
            "words-body-2",
            "",
            at_sheet=(MARGIN, view.origin[1] + 3.0 - WORDS_PITCH - 0.4),
            lines=("supports and the forces", "that replace them"),
            size=2.2,
            tone="soft",
        ),
        Part("part-beam", view.name, rings=(ring,), material="turning", outline=0.5, kept_clear="whole", level=0.5),
        Line("axis", view.name, points=((start, 0.0), (end, 0.0)), style="centre", extend=3.0, level=0.6),
    ]
    for number, rest in enumerate(rests, start=1):
        # a pin or roller touches the bar from below, a wall holds its middle
        at = (rest.at, 0.0 if rest.kind.startswith("fixed") else -thick)
        items.append(Support(f"support-body-{number}", view.name, at=at, kind=rest.kind))
    return items


def _sizes(beam: BeamResults, units: Units) -> list[str]:
    """Return the sizes of the reactions, so shown that they add up to what they hold."""
    texts = format_terms([reaction.force for reaction in beam.reactions], "force", units)
    return [text.removeprefix(MINUS) for text in texts]


def _printed(beam: BeamResults, units: Units) -> tuple[PrintedForce, ...]:
    """Return the forces at a point with their sizes as the free body prints them."""
    loads = [load for load in beam.loads if isinstance(load, PointForce)]
    return (
        *(PrintedForce(load.at, load.force, format_quantity(abs(load.force), "force", units)) for load in loads),
        *(
            PrintedForce(reaction.at, reaction.force, size)
            for reaction, size in zip(beam.reactions, _sizes(beam, units), strict=True)
        ),
    )


def _reactions(beam: BeamResults, view: View, units: Units) -> list[Item]:
    items: list[Item] = []
    for number, (reaction, size) in enumerate(zip(beam.reactions, _sizes(beam, units), strict=True), start=1):
        way = "" if reaction.force == 0 else " up" if reaction.force > 0 else " down"
        text = f"*{{R|{number}}} = {size}{way}"
        at = (reaction.at * 1e3, 0.0)
        up = reaction.force >= 0
        # below the support's symbol, whichever way it points
        arrow = Force(
            f"reaction-{number}",
            view.name,
            3,
            at=at,
            vector=(0.0, reaction.force),
            role="reaction",
            tip_at_point=up,
            gap=_SYMBOL,
            label=Label((text,), place="tail" if up else "below", tone="reaction"),
            level=1,
        )
        items.append(visible(arrow, view))
        if reaction.type == "fixed":
            value = format_quantity(abs(reaction.moment), "moment", units)
            side: Literal["left", "right"] = "left" if _kind(beam, reaction) == "fixed-left" else "right"
            label = Label((f"*{{M|R}} = {value}",), place=side, tone="moment")
            items.append(
                Moment(
                    f"moment-{number}-wall", view.name, 3, at=at, newton_metres=reaction.moment, label=label, level=1
                )
            )
    return items


def _spans(beam: BeamResults, scale: float, units: Units) -> list[_Span]:
    """Return the distances between everything that acts and the beam's ends; narrow ones share further rows."""
    places = {beam.start, beam.end, *(reaction.at for reaction in beam.reactions)}
    for load in beam.loads:
        places |= {load.start, load.end} if isinstance(load, DistributedLoad) else {load.at}
    # how far each row is taken, sheet millimetres. Words of narrow spans stand to the left, and neighbours go down in
    # steps: no extension line of a lower row runs through words
    taken: list[float] = [-math.inf]
    spans: list[_Span] = []
    ends = pairwise(sorted(place * 1e3 for place in places))
    shown = [(left, right) for left, right in ends if (right - left) * scale >= 0.5]
    texts = _in_one_unit([(right - left) / 1e3 for left, right in shown], units)
    for (left, right), text in zip(shown, texts, strict=True):
        words, row = 2.2 * len(text) + 3.0, 0
        if (right - left) * scale < words:
            free = left * scale - words
            row = next(i for i in range(1, len(taken) + 1) if all(reach < free for reach in taken[i:]))
            taken[row : row + 1] = [right * scale]
        spans.append(_Span(left, right, text, row))
    return spans


def _in_one_unit(lengths: list[float], units: Units) -> list[str]:
    """Return the lengths of a chain in one unit with like digits, so many that also a short one is told.

    >>> [text.replace("\\xa0", " ") for text in _in_one_unit([1.0, 1.4, 0.6], "si")]
    ['1.00 m', '1.40 m', '0.60 m']
    """
    whole = math.fsum(lengths)
    told = list(display_sum(lengths, "length", units)[0])
    for digits in _MORE_DIGITS:
        numbers = [float(shown.number.replace(",", "")) for shown in told]
        shares = (number / math.fsum(numbers) for number in numbers)
        if all(abs(share * whole - each) <= _NEAR * each for share, each in zip(shares, lengths, strict=True)):
            break
        told = list(display_sum(lengths, "length", units, digits=digits)[0])
    return [shown.text for shown in told]


def _lengths(beam: BeamResults, spans: list[_Span], view: View, line_at: float) -> list[Item]:
    # where a guide runs through all rows, it is the extension line as well
    guided = {x for _, x, _, _ in _guided(beam)}
    rows = max(span.row for span in spans)
    depth = (view.origin[1] - line_at - rows * _ROW - 4.0) / view.scale
    return [
        Dimension(
            f"dimension-{number}",
            view.name,
            4,
            start=(span.left, -depth),
            end=(span.right, -depth),
            line_at=line_at + (rows - span.row) * _ROW,
            text=span.text,
            extension=(span.left not in guided, span.right not in guided),
            side="start",
        )
        for number, span in enumerate(spans, start=1)
    ]


def _guides(beam: BeamResults, view: View, low: float) -> list[Item]:
    """Return the lines through all rows at every support and every force or couple at a point."""
    depth = (low - view.origin[1]) / view.scale
    return [
        Line(f"guide-{name}", view.name, step, points=((x, 0.0), (x, depth)), style="hair", tone=tone, level=-1)
        for name, x, tone, step in _guided(beam)
    ]


def _guided(beam: BeamResults) -> list[tuple[str, float, Literal["reaction", "load"], int]]:
    """Return name, place [mm], tone and step of every support and every force or couple at a point."""
    places: list[tuple[str, float, Literal["reaction", "load"], int]] = [
        (f"support-{number}", reaction.at * 1e3, "reaction", 1)
        for number, reaction in enumerate(beam.reactions, start=1)
    ]
    places += [
        (f"load-{number}", load.at * 1e3, "load", 2)
        for number, load in enumerate(beam.loads, start=1)
        if not isinstance(load, DistributedLoad)
    ]
    return places


def _caption(beam: BeamResults, items: list[Item]) -> str:
    """Return what is drawn and how it is read, on a phone too, where no words stand beside the plots."""
    couples = any(isinstance(item, Moment) and item.newton_metres for item in items)
    arcs = "; couples as arcs that show their sense alone" if couples else ""
    bend = "The deflection has a scale of its own."
    if beam.deflection is None:
        bend = "Without a section the deflection has a shape and no size."
    return (
        f"{plain(beam.name)}. Forces and shear at one scale{arcs}. {{V}} sums the upward forces left of the cut; "
        f"{{M}} is positive where the beam sags. {bend}"
    )


def _title(beam: BeamResults, units: Units) -> str:
    most = beam.maximum_moment
    if most.value == 0:
        return "Nothing bends this beam"
    where = f"{format_quantity(most.at, 'length', units)} from its left end"
    for end, name in ((beam.start, "left"), (beam.end, "right")):
        if abs(most.at - end) < 1e-9 * (beam.end - beam.start):
            where = f"at its {name} end"
    sense = "sagging" if most.value > 0 else "hogging"
    value = format_quantity(abs(most.value), "moment", units)
    return f"The beam bends most {where}: {value}, {sense}"


def _description(beam: BeamResults, units: Units) -> str:
    length = format_quantity(beam.end - beam.start, "length", units)
    sentences = [f"{plain(beam.name)}, a beam of {length}."]
    for reaction, size in zip(beam.reactions, _sizes(beam, units), strict=True):
        way = "up" if reaction.force >= 0 else "down"
        at = format_quantity(reaction.at, "length", units)
        does = "carries no force" if reaction.force == 0 else f"pushes {way} with {size}"
        sentence = f"The {reaction.type} support at {at} {does}"
        if reaction.type == "fixed":
            sentence += f" and holds with a couple of {format_quantity(abs(reaction.moment), 'moment', units)}"
        sentences.append(sentence + ".")
    for name, extreme, kind in (
        ("shear", beam.maximum_shear, "force"),
        ("bending moment", beam.maximum_moment, "moment"),
        ("deflection", beam.maximum_deflection, "deflection"),
    ):
        if extreme is not None:
            sense = extreme.value if name == "deflection" else 0.0
            value = format_quantity(extreme.value if sense == 0.0 else abs(sense), kind, units)  # type: ignore[arg-type]
            if name == "shear":
                value = shear_text(extreme.value, extreme.at, _printed(beam, units), units)
            way = "" if sense == 0.0 else " upward" if sense > 0.0 else " downward"
            sentences.append(f"The largest {name} is {value}{way}, at {format_quantity(extreme.at, 'length', units)}.")
    return " ".join(sentences)

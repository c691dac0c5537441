"""The wheel end as a beam on two supports: free body, shear, bending moment and deflection, outboard end to the left.

View in real millimetres: x from the bearing centre, inboard positive, so that it runs to the right on the sheet; up is
positive. The load and both reactions are those of the vertical plane.
"""

import math
from collections.abc import Sequence
from dataclasses import replace
from functools import partial
from typing import Literal

from hubwright.quantities import format_quantity, format_terms
from hubwright.quantities.formatting import NO_BREAK
from hubwright.results.beams import WheelEndBeam, wheel_end_beam
from hubwright.results.model import Results
from hubwright.scenes.diagrams import (
    MARGIN,
    WORDS_PITCH,
    Abscissa,
    Rest,
    RowWords,
    plot_rows,
    shared_force_scale,
)
from hubwright.scenes.key_entries import moment_entries
from hubwright.scenes.scales import drawing_scale
from hubwright.scenes.small_forces import length, visible
from hubwright.scenes.spindle_beam_words import (
    bar_of,
    beam_caption,
    beam_description,
    beam_title,
    printed_forces,
    source_of_load,
)
from hubwright.scenes.vocabulary import (
    ClosedBody,
    Dimension,
    Dot,
    Force,
    Item,
    KeyEntry,
    Label,
    Line,
    Moment,
    Note,
    Part,
    ScaleBar,
    Scene,
    Step,
    Units,
    View,
    Words,
)
from hubwright.scenes.wheel_end_words import row_sizes

_WIDTH, _LEFT, _RIGHT = 310.0, 86.0, 268.0  # of the drawing area, and where the beam may reach
_FOOT, _ROW = 31.0, 8.0
_THICK = 1.7  # half of the drawn bar, sheet millimetres: the bar is a sign, not to scale
_ARROWS = 26.0
_CLEAR = 2.5  # words beside an arrow are moved so far away from the bar
_WORDS_CLEAR = 7.5  # from the axis to the middle of two lines of words that clear the bar
_WORDS = RowWords(
    shear=("sum of the upward", "forces outboard", "of the cut"),
    moment=("sagging positive,", "d{M}/d{x} = {V}"),
    no_size=("for want of", "a diameter"),
)


def spindle_beam(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of the spindle's axis as a beam held at the two pressure centres."""
    beam = wheel_end_beam(results, case)
    half = beam.spread * 500.0
    places = [-half, half, *(place * 1e3 for place in (beam.start, beam.end))]
    scale, written = drawing_scale(max(places) - min(places), _RIGHT - _LEFT)
    middle = (_LEFT + _RIGHT) / 2 - scale * (max(places) + min(places)) / 2
    abscissa = Abscissa(middle, scale, min(places), max(places))
    newtons_per_mm = shared_force_scale(beam, _ARROWS)
    rests = (Rest(-half, "knife edges"), Rest(half, "knife edges"))
    rows = plot_rows(
        beam,
        abscissa,
        rests=rests,
        newtons_per_mm=newtons_per_mm,
        low=_FOOT,
        first_step=5,
        units=units,
        words=_WORDS,
        printed=printed_forces(beam, units),
    )
    # arrows that point up hang below the bar, those that point down stand on it
    below = max(12.0, *(_reach(force, newtons_per_mm) + 4.0 for force in beam.point_forces if force > 0))
    above = max(16.0, *(_reach(force, newtons_per_mm) + 4.0 for force in beam.point_forces if force < 0))
    view = abscissa.view("beam", rows.high + 2 * _ROW + 3.0 + below, newtons_per_mm=newtons_per_mm)
    top = view.origin[1] + above
    items = [
        *_bar(beam, abscissa, view),
        *_load(results, beam, view, units),
        *_reactions(beam, view, units),
        *_lengths(beam, view, rows.high, units),
        *_guides(beam, view, rows.views[0].origin[1] - 9.0),
        *_headed(rows.items),
    ]
    return Scene(
        name="spindle-beam",
        title=beam_title(results, beam, units),
        caption=beam_caption(results, beam, units),
        description=beam_description(results, beam, units),
        units=units,
        size=(_WIDTH, top),
        views=(view, *rows.views),
        items=tuple(items),
        steps=(
            Step(
                "Keep only the axis",
                f"The {bar_of(results)} is a bar; each row holds it at its pressure centre.",
                "isolate",
            ),
            Step(
                "Put the load on it",
                "What wheel and hub pass to the bearing, where it makes the right moment.",
                "loads",
            ),
            Step("Replace the rows by forces", "Each row pushes back; together they hold the load.", "reactions"),
            Step("Measure the distances", "The nearer row takes the larger part: the law of the lever.", "dimensions"),
            Step("Plot the shear", "It jumps at each force by just that force.", "solve"),
            Step(
                "Plot the bending moment", "It grows as steeply as the shear is large, and peaks at a force.", "solve"
            ),
            Step("Bend the bar", "Where the moment is large, the curve is tight.", "solve"),
        ),
        scale_bars=(ScaleBar("beam", "length", f"Along {written}"), ScaleBar("beam", "force", "Forces and {V}")),
        key=(
            KeyEntry("load", "load"),
            KeyEntry("reaction", "reaction of a row"),
            *moment_entries(items, load="couple"),
        ),
        body=_body(beam),
    )


def _headed(items: Sequence[Item]) -> list[Item]:
    """Return the rows, without the unit over the shear where its values bear two: small ones are told in newtons."""
    told = [item.label.lines[0] for item in items if isinstance(item, Note) and item.name.startswith("label-shear")]
    if len({text.rpartition(NO_BREAK)[2] for text in told}) < 2:
        return list(items)
    return [
        replace(item, lines=item.lines[1:]) if isinstance(item, Words) and item.name == "words-shear-2" else item
        for item in items
    ]


def _bar(beam: WheelEndBeam, abscissa: Abscissa, view: View) -> list[Item]:
    thick = _THICK / view.scale
    over = 5.0 / view.scale
    start, end = abscissa.start - over, abscissa.end + over
    ring = ((start, -thick), (end, -thick), (end, thick), (start, thick))
    half = beam.spread * 500.0
    items: list[Item] = [
        Words("words-body", "", at_sheet=(MARGIN, view.origin[1] + 3.0), lines=("*Free body",)),
        Words(
            "words-body-2",
            "",
            at_sheet=(MARGIN, view.origin[1] + 3.0 - WORDS_PITCH - 0.4),
            lines=("rows replaced by their forces", "at the pressure centres"),
            size=2.2,
            tone="soft",
        ),
        Part("part-spindle", view.name, rings=(ring,), material="turning", outline=0.5, level=0.5),
        Line("axis", view.name, points=((start, 0.0), (end, 0.0)), style="centre", extend=4.0, level=0.6),
        Dot("bearing-centre", view.name, at=(0.0, 0.0), radius=0.8, level=3),
        Note("label-centre", view.name, label=Label(("{C}",), place="above", anchor=(0.0, thick), size=2.5)),
    ]
    if beam.contact_line is not None:
        lean = math.tan(beam.contact_line)  # across per along
        for name, sign in (("outboard", -1.0), ("inboard", 1.0)):
            tall = min(15.0 / view.scale, 0.8 * half / lean)
            points = ((sign * half, 0.0), (sign * (half - tall * lean), tall))
            # a phone's beam is drawn shorter than high: the lines would lean too steeply there
            line = Line(f"contact-line-{name}", view.name, points=points, style="centre", tone="faint", wide_only=True)
            items.append(line)
            if name == "outboard":
                label = Label(("contact line",), "right", anchor=points[1], tone="soft", size=2.2)
                items.append(Note("label-contact-line", view.name, label=label, wide_only=True))
    return items


def _load(results: Results, beam: WheelEndBeam, view: View, units: Units) -> list[Item]:
    up = 1.0 if beam.load >= 0 else -1.0
    place = -beam.load_place * 1e3  # inboard positive
    half = beam.spread * 500.0
    assert view.newtons_per_mm is not None
    at = (place if beam.couple is None else math.copysign(half, place), 0.0)
    side: Literal["left", "right"] = "right" if place > half else "left"
    text = f"*{{B|z}} = {format_quantity(abs(beam.load), 'force', units)}"
    words = f"{'up' if up > 0 else 'down'}, {source_of_load(results, beam)}"
    nudge = (0.0, -_clear(beam.load, view.newtons_per_mm) * up)
    arrow = Force(
        "force-load",
        view.name,
        2,
        at=at,
        vector=(0.0, beam.load),
        gap=_THICK,
        label=Label((text, words), place=side, tone="load", nudge=nudge),
        level=1,
    )
    items: list[Item] = [visible(arrow, view)]
    if beam.couple is not None:
        value = format_quantity(abs(beam.couple), "moment", units)
        label = Label(
            (f"*{value}", "of the load"), "left" if at[0] < 0 else "right", tone="moment", nudge=(0.0, -12.0 * up)
        )
        couple = Moment("moment-load", view.name, 2, at=at, newton_metres=beam.couple, role="applied", label=label)
        items.append(replace(couple, level=1))
    return items


def _reactions(beam: WheelEndBeam, view: View, units: Units) -> list[Item]:
    outboard, inboard = row_sizes((beam.reaction_outboard, beam.reaction_inboard), units)
    half = beam.spread * 500.0
    assert view.newtons_per_mm is not None
    items: list[Item] = []
    for letter, name, place, force in (
        ("A", "outboard", -half, beam.reaction_outboard),
        ("B", "inboard", half, beam.reaction_inboard),
    ):
        clear = _clear(force, view.newtons_per_mm)
        way, nudge = ("up", (0.0, -clear)) if force > 0 else ("down", (0.0, clear))
        side: Literal["left", "right"] = "left" if letter == "A" else "right"
        text = f"*{{F|{letter}}} = {outboard if name == 'outboard' else inboard}"
        arrow = Force(
            f"reaction-{name}",
            view.name,
            3,
            at=(place, 0.0),
            vector=(0.0, force),
            role="reaction",
            gap=_THICK,
            label=Label((text, f"{way}, {name} row"), place=side, tone="reaction", nudge=nudge),
            level=1,
        )
        items.append(visible(arrow, view))
    return items


def _reach(force: float, newtons_per_mm: float) -> float:
    """Return how far from the axis an arrow reaches, sheet millimetres."""
    return _THICK + length(force, newtons_per_mm)


def _clear(force: float, newtons_per_mm: float) -> float:
    """Return how far words are moved away from the bar, from beside the middle of their arrow."""
    return max(_CLEAR, _WORDS_CLEAR - _THICK - length(force, newtons_per_mm) / 2)


def _lengths(beam: WheelEndBeam, view: View, low: float, units: Units) -> list[Item]:
    half, load = beam.spread * 500.0, -beam.load_place * 1e3
    upper, lower = low + _ROW + 2.0, low + 2.0
    told = partial(format_quantity, kind="small length", system=units)
    spans = [("spread", -half, half, "{ℓ} = " + told(beam.spread), lower)]
    if beam.couple is None and beam.overhung:
        near = half if load > 0 else -half
        over = "overhang " + told(abs(load - near) / 1e3)
        spans += [("overhang", near, load, over, lower), ("load", 0.0, load, told(abs(load) / 1e3), upper)]
    elif beam.couple is None:
        outer, inner = format_terms([(half + load) / 1e3, (half - load) / 1e3], "small length", units)
        spans += [("outer", -half, load, outer, upper), ("inner", load, half, inner, upper)]
    depth = (view.origin[1] - upper - 4.0) / view.scale
    return [
        Dimension(
            f"dimension-{name}",
            view.name,
            4,
            start=(start, -depth),
            end=(end, -depth),
            line_at=line,
            text=text,
            extension=(name == "load", False),  # elsewhere the guides through all rows do
        )
        for name, start, end, text, line in spans
        if abs(end - start) * view.scale > 0.3
    ]


def _guides(beam: WheelEndBeam, view: View, low: float) -> list[Item]:
    """Return the lines through all rows at every force."""
    half, load = beam.spread * 500.0, -beam.load_place * 1e3
    depth = (low - view.origin[1]) / view.scale
    places: list[tuple[str, float, Literal["reaction", "load"], int]] = [
        ("outboard", -half, "reaction", 3),
        ("inboard", half, "reaction", 3),
    ]
    if beam.couple is None:
        places.append(("load", load, "load", 2))
    return [
        Line(f"guide-{name}", view.name, step, points=((x, 0.0), (x, depth)), style="hair", tone=tone, level=-1)
        for name, x, tone, step in places
    ]


def _body(beam: WheelEndBeam) -> ClosedBody:
    """Return the free body: x inboard, z up; so the y axis points toward the reader and couples keep their sign."""
    half = beam.spread / 2
    place = -beam.load_place if beam.couple is None else math.copysign(half, -beam.load_place)
    forces = (
        ("force-load", (0.0, 0.0, beam.load), (place, 0.0, 0.0)),
        ("reaction-outboard", (0.0, 0.0, beam.reaction_outboard), (-half, 0.0, 0.0)),
        ("reaction-inboard", (0.0, 0.0, beam.reaction_inboard), (half, 0.0, 0.0)),
    )
    # counter-clockwise on the sheet, x to the right and z up, turns about −y
    couples = () if beam.couple is None else (("moment-load", (0.0, -beam.couple, 0.0)),)
    return ClosedBody(forces, couples)

"""Rim width, backspacing and offset: a wheel face down on the floor, a straightedge across it and a tape.

Real millimetres: the first axis runs across the wheel from its middle, the second up from the floor. The wheel's
outboard side lies down, so that a length outboard counts downward.
"""

from dataclasses import replace
from itertools import pairwise
from typing import Literal

import numpy as np

from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.scenes.scales import drawing_scale
from hubwright.scenes.vocabulary import (
    Column,
    Dimension,
    Ground,
    Item,
    Label,
    Line,
    Note,
    Part,
    Point,
    ScaleBar,
    Scene,
    Step,
    Units,
    View,
)
from hubwright.scenes.wheel_end_parts.assembly import Piece, assembly
from hubwright.scenes.wheel_end_parts.measures import measures

_WIDTH, _FOOT, _HEAD = 310.0, 30.0, 14.0
_LEFT, _RIGHT = 60.0, 236.0  # room of the wheel on the sheet
_FLANGE = 12.7  # mm, half an inch: common practice
_WORDS = 40.0  # sheet mm that the backspacing's words take along its line, at most
_BREAK = (4.6, 1.2)  # sheet mm left and right of that line, which has its words at the left
_OVER = 1.3  # of a line beyond a dimension line, as of an extension line
_NAMES_APART = 7.5  # sheet mm between the middles of both names at the right
_EDGE = 22.0  # mm, depth of the straightedge
_PARTS = ("rim", "wheel-disc")


def measuring_wheel(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of a wheel off the vehicle with what is measured on it; the case plays no part."""
    parts = assembly(measures(results))
    m, geometry = parts.measures, results.wheel_geometry
    pieces = [piece for piece in parts.pieces if piece.name in _PARTS]
    outmost = max(float(ring[:, 0].max()) for piece in pieces for ring in piece.rings)
    widest = max(float(np.abs(ring[:, 1]).max()) for piece in pieces for ring in piece.rings)
    rim_middle = m.load_line  # the tire centreline runs through the rim's

    def up(outboard: float) -> float:
        return outmost - outboard

    half, face = geometry.rim_width / 2 * 1e3, m.wheel_face
    inner_edge, middle, pad = up(rim_middle - half - _FLANGE), up(rim_middle), up(face)
    top = inner_edge + _EDGE
    scale, ratio = drawing_scale(2 * widest + 60.0, _RIGHT - _LEFT, ((1, 2), (1, 3), (1, 4), (1, 5), (1, 6), (1, 8)))
    view = View("wheel", ((_LEFT + _RIGHT) / 2, _FOOT + 6.0), scale)
    low, high = (view.on_sheet((-widest - 20.0, 0.0))[0], view.on_sheet((widest + 20.0, 0.0))[0])
    items: list[Item] = [_laid(piece, outmost) for piece in pieces]
    edge = ((-widest - 25.0, inner_edge), (-widest - 25.0, top), (widest + 25.0, top), (widest + 25.0, inner_edge))
    reach = widest + 60.0
    items += [
        Ground("floor", view.name, start=(-reach, 0.0), end=(reach, 0.0)),
        Part("part-straightedge", view.name, 2, rings=(edge,), material="changed", outline=0.3, level=2.0),
        *_rim_middle(view, middle, widest, high + 9.0, broken=_across_words(view, pad, inner_edge, middle)),
        _mounting_face(view, pad, 0.55 * widest),
        *_backspacing(view, pad, inner_edge, middle, geometry.backspacing, units),
        _length(
            "rim-width",
            view,
            1,
            (-widest, up(rim_middle + half)),
            (-widest, up(rim_middle - half)),
            low - 9.0,
            geometry.rim_width,
            units,
        ),
    ]
    if abs(pad - middle) * scale > 0.4:
        ends = ((widest, min(pad, middle)), (widest, max(pad, middle)))
        offset = _length("offset", view, 3, *ends, high + 9.0, abs(geometry.offset), units, side="end")
        # the line through the rim's middle is its own extension line
        items.append(replace(offset, extension=(pad < middle, pad > middle)))
    items += [
        _note("straightedge", ("straightedge", "across the inner rim"), (0.75 * widest, (inner_edge + top) / 2), 2),
        *_levels_named(view, pad, middle, widest, high + 9.0),
    ]
    told = {
        name: format_quantity(value, "length", units)
        for name, value in (("b", geometry.backspacing), ("w", geometry.rim_width), ("o", abs(geometry.offset)))
    }
    side = "outboard" if geometry.offset > 0 else "inboard" if geometry.offset < 0 else "at"
    title = f"Backspacing {told['b']}, offset {told['o']} {side if side != 'at' else ''}".strip()
    sheet_top = view.on_sheet((0.0, top))[1]
    return Scene(
        name="measuring-wheel",
        title=title,
        caption="The wheel lies on its outer face; the section runs through its middle. Backspacing goes from the "
        "straightedge down to the mounting face. The offset goes from the rim’s middle to that face and is positive "
        "where the face lies outboard. The spacer is no part of either.",
        description=f"{title}. The rim is {told['w']} wide between its bead seats.",
        units=units,
        size=(_WIDTH, sheet_top + _HEAD),
        views=(view,),
        items=tuple(items),
        steps=(
            Step("Lay it face down", "On something soft; its inner side is up."),
            Step("Lay a straightedge across", "Tape down from it to the face that bears on the hub."),
            Step("Take the offset from it", "Backspacing less half the width over the flanges."),
        ),
        columns=(Column("right", 258.0, _FOOT, sheet_top + 6.0),),
        scale_bars=(ScaleBar("wheel", "length", f"Wheel {ratio}"),),
    )


def _laid(piece: Piece, outmost: float) -> Part:
    """Return a part of the wheel laid on its outer face."""
    rings = tuple(tuple((round(float(r), 3), round(outmost - float(a), 3)) for a, r in ring) for ring in piece.rings)
    return Part(
        f"part-{piece.name}",
        "wheel",
        rings=rings,
        material=piece.material,
        hatch=piece.hatch,
        hatch_pitch=1.2,
        outline=0.35,
        level=1.0,
    )


def _rim_middle(view: View, height: float, widest: float, line: float, *, broken: bool) -> list[Item]:
    """Return the line through the rim's middle, on to the offset's dimension line; it leaves out words on the axis."""
    ends = -widest - 6.0 / view.scale, (line + _OVER - view.origin[0]) / view.scale
    left, right = (side / view.scale for side in _BREAK)
    spans = ((ends[0], -left), (right, ends[1])) if broken else (ends,)
    return [
        Line(
            f"level-rim-middle-{number}",
            view.name,
            3,
            points=tuple((x, height) for x in span),
            style="centre",
            tone="soft",
            level=1.5,
        )
        for number, span in enumerate(spans, start=1)
    ]


def _mounting_face(view: View, height: float, reach: float) -> Line:
    far = reach + 6.0 / view.scale
    points = ((-far, height), (far, height))
    return Line("level-mounting-face", view.name, 2, points=points, style="thin", tone="soft", level=1.5)


def _levels_named(view: View, pad: float, middle: float, widest: float, line: float) -> list[Item]:
    """Return the names of mounting face and rim's middle at the ends of their lines, so far apart as words need."""
    end = (line + _OVER - view.origin[0]) / view.scale
    apart = abs(pad - middle) * view.scale
    away = max(0.0, _NAMES_APART - apart) / 2
    items: list[Item] = []
    for name, step, lines, height, inside in (
        ("mounting-face", 2, ("mounting face,", "where the hub bears"), pad, 0.3 * widest),
        ("rim-middle", 3, ("middle of the rim",), middle, 0.5 * widest),
    ):
        upper = (height > middle) if name == "mounting-face" else (middle >= pad)
        label = Label(
            lines,
            "right",
            (inside, height),  # on the wheel: there a leader goes on a phone
            tone="soft",
            size=2.4,
            nudge=((end - inside) * view.scale + 1.0, away if upper else -away),
        )
        items.append(Note(f"label-{name}", view.name, step, label=label))
    return items


def _length(
    name: str,
    view: View,
    step: int,
    start: Point,
    end: Point,
    line: float,
    value: float,
    units: Units,
    *,
    side: Literal["auto", "start", "end"] = "auto",
) -> Dimension:
    words = {"backspacing": "backspacing", "rim-width": "rim width", "offset": "offset"}[name]
    return Dimension(
        f"dimension-{name}",
        view.name,
        step,
        start=start,
        end=end,
        direction="vertical",
        line_at=line,
        text=f"{words} {format_quantity(value, 'length', units)}",
        side=side,
        extension=(name != "backspacing", name != "backspacing"),
    )


def _backspacing(view: View, pad: float, edge: float, middle: float, value: float, units: Units) -> list[Item]:
    """Return the backspacing on the axis; its words stand level beside the line where they have no room along it."""
    length = _length("backspacing", view, 2, (0.0, pad), (0.0, edge), view.origin[0], value, units, side="start")
    if _along(view, pad, edge):
        return [length]
    # in the larger of both gaps that the line through the rim's middle leaves
    cuts = (pad, middle, edge) if pad < middle < edge else (pad, edge)
    low, high = max(pairwise(cuts), key=lambda ends: ends[1] - ends[0])
    label = Label((length.text,), "right", (0.0, (low + high) / 2), nudge=(1.0, 0.0))
    # the tape lies under the dimension line: on a phone the leader of the words ends on it
    tape = Line("tape", view.name, 2, points=((0.0, pad), (0.0, edge)), tone="soft", width=0.18, level=1.5)
    return [replace(length, text=""), tape, Note("label-backspacing", view.name, 2, label=label)]


def _along(view: View, pad: float, edge: float) -> bool:
    """Return whether the backspacing's words have room along its line, or below the face and over the floor."""
    return max(edge - pad, pad) * view.scale > _WORDS


def _across_words(view: View, pad: float, edge: float, middle: float) -> bool:
    """Return whether the line through the rim's middle would run through words along the axis."""
    inside = (edge - pad) * view.scale > _WORDS
    return _along(view, pad, edge) and (pad < middle < edge if inside else 0.0 < middle < pad)


def _note(name: str, lines: tuple[str, ...], at: Point, step: int) -> Note:
    label = Label(lines, "right column", anchor=at, tone="soft", size=2.4, leader_dot=True)
    return Note(f"label-{name}", "wheel", step, label=label)

"""Two setups of one vehicle side by side: both free bodies at one scale, one over the other, what moves and what stays.

Views from the rear in real millimetres from the bearing centre: ISO y and z.
"""

import textwrap
from dataclasses import replace

from hubwright.errors import CaseError
from hubwright.results.model import Results
from hubwright.scenes.key_entries import moment_entries
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.two_setups_forces import LEVEL, NAMES, Body, forces_of
from hubwright.scenes.two_setups_words import TwoWordings
from hubwright.scenes.vocabulary import (
    ClosedBody,
    Column,
    Dimension,
    Dot,
    Ground,
    Item,
    KeyEntry,
    Label,
    Line,
    Note,
    Part,
    Point,
    ScaleBar,
    Scene,
    Tone,
    Units,
    View,
    Words,
)
from hubwright.scenes.wheel_end_drawn import closed_body
from hubwright.scenes.wheel_end_parts.assembly import assembly
from hubwright.scenes.wheel_end_parts.measures import measures
from hubwright.scenes.wheel_end_solids import points_of, solids

_WIDTH, _FOOT = 310.0, 30.0
# bearing centres on the sheet, and the edges of the labels outboard of each body: of a left wheel, and of a right one
_PLACES = {1: (78.0, 176.0), -1: (47.0, 145.0)}
_COLUMNS = {1: (47.0, 145.0), -1: (78.0, 176.0)}
_OVERLAY = 262.0
_ARROWS, _ROWS, _TOP = 30.0, 30.0, 28.0  # room below the road, of row loads, over the tires
_STUB = 5.0  # of the road, on either side of a tire
_CHANGED, _OVER_HUB = 0.35, 5.05  # outline of a spacer, and its level: the parts that it touches would cover its edge
_OFF_ROAD, _GIVES = 1.0, 9.0  # of the words from the road, and how far outboard of their place they stand for it
_TALL = 158.0
_SCALES = ((1, 5), (1, 6), (1, 8), (1, 10))
_SMALL = ((1, 8), (1, 10), (1, 12), (1, 15), (1, 20))


def two_setups(first: Results, second: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of two solved setups, seen at the same wheel, in a case that both have."""
    if first.wheel != second.wheel:
        raise ValueError(f"two setups are compared at one wheel (got {first.wheel} and {second.wheel})")
    for results in (first, second):
        if results.cases[case].contact_force.z <= 0 or results.cases[case].kind == "ledge":
            raise CaseError(case=case, reason="two setups are compared on an even road, with the wheel on it")
    words = TwoWordings(first, second, case, units)
    bodies, small, ratio, small_ratio = _bodies(words)
    items: list[Item] = []
    for body in bodies:
        items += _drawn(body, words)
    items += _overlay(bodies)
    items += _lists(words, small)
    items += _small_named(small, bodies, small_ratio)
    top = max(body.view.on_sheet((0.0, body.parts.measures.free_radius))[1] for body in bodies)
    return Scene(
        name="two-setups",
        title=words.title(),
        caption=words.caption(),
        description=words.description(),
        units=units,
        size=(_WIDTH, top + _TOP),
        views=(*(body.view for body in bodies), small),
        items=tuple(items),
        steps=words.steps(),
        columns=tuple(
            Column("left" if first.side > 0 else "right", _edge_of_words(body), _FOOT, top + 4.0) for body in bodies
        ),
        scale_bars=(
            ScaleBar("first", "length", f"Free bodies {ratio}"),
            ScaleBar("first", "force", "Forces, both bodies"),
        ),
        key=(
            KeyEntry("load", "load"),
            KeyEntry("reaction", "reaction"),
            *moment_entries(items),
            KeyEntry("load line", "load line"),
            KeyEntry("turning", "turns: the body"),
            *([KeyEntry("changed", "spacer")] if words.spacer_changes else []),
        ),
        axes="rear",
        body=_closed(bodies[0]),
        further_bodies=(_closed(bodies[1]),),
    )


def _bodies(words: TwoWordings) -> tuple[tuple[Body, Body], View, str, str]:
    """Return both bodies, the view that lays one over the other, and the scales of these and of that."""
    parts = [assembly(measures(results)) for results in (words.first, words.second)]
    states = words.states
    tallest = max(part.measures.free_radius + part.measures.loaded_radius for part in parts)
    scale, ratio = drawing_scale(tallest, _TALL, _SCALES)
    needs = [state.contact_force.z / _ARROWS for state in states]
    for state in states:
        needs += [abs(f.force.z) / _ROWS for f in state.free_body.forces if f.kind == "reaction"]
        needs += [max(abs(f.force.y), abs(f.force.x)) / _ROWS for f in state.free_body.forces]
    per_mm = round_scale(max(needs), 1.0)
    # the axles stand at one height: what moves is the road
    low = max(part.measures.loaded_radius for part in parts)
    axle = _FOOT + _ARROWS + 4.0 + low * scale
    bodies = tuple(
        Body(
            name,
            results,
            part,
            View(name, (place, axle), scale, per_mm, mirrored=True, heading=called, level_with="first"),
            words,
        )
        for name, called, results, part, place in zip(
            NAMES, words.names, (words.first, words.second), parts, _PLACES[words.first.side], strict=True
        )
    )
    little, small_ratio = drawing_scale(2 * max(part.measures.free_radius for part in parts), 78.0, _SMALL)
    high = axle + max(part.measures.free_radius for part in parts) * scale
    over = "Both on one bearing: grey before, orange after"
    place = (_OVERLAY, high - max(part.measures.free_radius for part in parts) * little)
    return (bodies[0], bodies[1]), View("overlay", place, little, mirrored=True, heading=over), ratio, small_ratio


def _drawn(body: Body, words: TwoWordings) -> list[Item]:
    """Return one free body with its forces, levers and name."""
    m, view, side = body.parts.measures, body.view, body.results.side
    y, road = body.load_line, -m.loaded_radius
    top = view.on_sheet((0.0, m.free_radius))[1]
    items = [_seen(piece, words) for piece in solids(body.parts, view.name, side, "whole", body_only=True)]
    for name, way in (("outboard", side), ("inboard", -side)):
        start, end = _road(body, way)
        if name == "inboard" or (_edge_of_words(body) - view.on_sheet(end)[0]) * side < 0:
            items.append(Ground(f"ground-{view.name}-{name}", view.name, 1, start=start, end=end))
    name = words.names[0 if body.name == "first" else 1]
    for number, line in enumerate(reversed(textwrap.wrap(name, 30)[:3])):
        at = (view.origin[0], top + 13.5 + 4.2 * number)
        items.append(
            Words(f"words-{view.name}-{number}", "", 1, at_sheet=at, lines=(f"*{line}",), size=2.5, align="centre")
        )
    items += [
        Dot(f"centre-{view.name}", view.name, 1, at=(0.0, 0.0), radius=0.7, level=LEVEL + 6),
        Note(f"label-centre-{view.name}", view.name, 1, label=Label(("{C}",), "above", anchor=(0.0, 0.0))),
        # with the contact force, so that the arrows of the bearing's answer are drawn over it
        Line(
            f"load-line-{view.name}",
            view.name,
            2,
            points=((y, road), (y, m.free_radius + 10.0 / view.scale)),
            style="centre",
            tone="load",
            width=0.25,
            level=19,
        ),
        Line(
            f"centre-plane-{view.name}",
            view.name,
            4,
            points=((0.0, -40.0), (0.0, m.free_radius + 10.0 / view.scale)),
            style="centre",
            tone="soft",
            level=18,
        ),
    ]
    if abs(y) > 0.05:
        lever = words.geometry()[0]
        length = lever.told(lever.first if body.name == "first" else lever.second, words.units)
        items.append(
            Dimension(
                f"dimension-load-line-{view.name}",
                view.name,
                4,
                start=(y, m.free_radius),
                end=(0.0, m.free_radius),
                line_at=top + 8.0,
                text=f"{{y|L}} = {length}",
                extension=(False, False),
                side="end",
            )
        )
    return items + forces_of(body, words)


def _seen(piece: Item, words: TwoWordings) -> Item:
    """Return a piece of a free body; a spacer that only one has, or another one, stands out as what is changed."""
    if not isinstance(piece, Part) or not piece.name.endswith("-spacer"):
        return piece
    if words.spacer_changes:
        return replace(piece, material="changed", tone="changed", outline=_CHANGED, level=_OVER_HUB)
    return replace(piece, material="turning")


def _road(body: Body, way: int) -> tuple[Point, Point]:
    """Return both ends of the piece of road beside a tire, from the tire on."""
    scale, height = body.view.scale, -body.parts.measures.loaded_radius
    start = body.load_line + way * (body.parts.below.tread_half_width + 3.0 / scale)
    return (start, height), (start + way * _STUB / scale, height)


def _edge_of_words(body: Body) -> float:
    """Return the edge of the words outboard of a body, off the road if that leaves other words their room."""
    side = body.results.side
    column = _COLUMNS[side][NAMES.index(body.name)]
    end = body.view.on_sheet(_road(body, side)[1])[0]
    farther = min(max((column - end) * side + _OFF_ROAD, 0.0), _GIVES)
    return column - side * farther


def _overlay(bodies: tuple[Body, Body]) -> list[Item]:
    """Return both wheels as outlines over one another at the bearing centre, and their roads."""
    items: list[Item] = []
    kept = ("tire", "rim", "wheel-disc", "spacer")
    tones: dict[str, Tone] = {"first": "before", "second": "changed"}
    for body in bodies:
        side, tone = body.results.side, tones[body.name]
        for piece in body.parts.pieces:
            if piece.name in kept:
                rings = tuple(points_of(ring, side) for ring in piece.rings)
                items.append(
                    Part(
                        f"part-overlay-{body.name}-{piece.name}",
                        "overlay",
                        5,
                        rings=rings,
                        material="none",
                        outline=0.3 if body.name == "first" else 0.35,
                        tone=tone,
                        level=1.0 if body.name == "first" else 2.0,
                    )
                )
        m, y = body.parts.measures, body.load_line
        reach = body.parts.below.half_width + 30.0
        line = ((y - reach, -m.loaded_radius), (y + reach, -m.loaded_radius))
        high = ((y, -m.loaded_radius - 30.0), (y, m.free_radius + 30.0))
        items += [
            Line(f"road-{body.name}", "overlay", 5, points=line, style="thin", tone=tone, level=0.5),
            Line(f"overlay-load-line-{body.name}", "overlay", 5, points=high, style="centre", tone=tone, level=3.0),
        ]
    rows = bodies[0].parts.bearing
    hub: list[tuple[Point, ...]] = [points_of(ring, bodies[0].results.side) for ring in rows.outer_rings]
    items += [
        Part("part-overlay-bearing", "overlay", 5, rings=tuple(hub), material="fixed", outline=0.2, level=2.5),
        Dot("overlay-centre", "overlay", 5, at=(0.0, 0.0), radius=0.6, level=4.0),
    ]
    return items


def _small_named(view: View, bodies: tuple[Body, Body], ratio: str) -> list[Item]:
    """Return what the small drawing shows, over it; on a phone it is its heading."""
    y = view.on_sheet((0.0, max(body.parts.measures.free_radius for body in bodies)))[1] + 30.0 * view.scale
    texts = (f"*Both on one bearing, {ratio}", "grey: the left one, orange: the right one")
    return [
        Words(
            f"words-overlay-{number}",
            "",
            5,
            at_sheet=(_OVERLAY, y + rise),
            lines=(text,),
            size=2.3,
            align="centre",
            tone="soft" if number else "ink",
        )
        for number, (text, rise) in enumerate(zip(texts, (7.0, 2.6), strict=True))
    ]


def _lists(words: TwoWordings, view: View) -> list[Item]:
    """Return what stays and what moves as two short lists below the overlay."""
    x, y = 216.0, view.origin[1]
    low = max(part.measures.loaded_radius for part in (assembly(measures(r)) for r in (words.first, words.second)))
    y -= low * view.scale + 9.0
    items: list[Item] = []
    for name, heading, lines in (("moves", "*Moves", words.moves()), ("stays", "*Stays", words.stays())):
        if not lines:
            lines = ["nothing"]
        for number, text in enumerate((heading, *lines)):
            items.append(
                Words(f"words-{name}-{number}", "", 6, at_sheet=(x, y), lines=(text,), size=2.4 if number else 2.6)
            )
            y -= 4.6
        y -= 1.6
    return items


def _closed(body: Body) -> ClosedBody:
    """Return one of the free bodies under its setup's name."""
    free_body = body.results.cases[body.words.case].free_body
    return closed_body(free_body, body.words.names[NAMES.index(body.name)])

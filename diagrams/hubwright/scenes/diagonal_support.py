"""A vehicle on two diagonal wheels, from above: how far its centre of mass lies off the line, and what a third takes.

Real millimetres. `above` stands with the front up: y to the left and x forward of the front axle. `detail` and `along`
count across the line of support, its left positive: one from above with the line upright, one along the line with z up.
"""

import math
from dataclasses import replace
from typing import Literal

from hubwright.results.model import Results
from hubwright.scenes.case_choice import case_of
from hubwright.scenes.diagonal_support_words import NOTHING, DiagonalWording, OnTwo, plain_name
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.small_forces import visible
from hubwright.scenes.vocabulary import (
    AngularDimension,
    Column,
    Dimension,
    Dot,
    Force,
    Ground,
    Item,
    KeyEntry,
    Label,
    Line,
    Normal,
    Note,
    Part,
    Point,
    ScaleBar,
    Scene,
    Units,
    View,
    Words,
)
from hubwright.scenes.wheel_end_parts.outlines import rounded

_WIDTH, _FOOT = 310.0, 30.0
_MIDDLE, _TALL = 86.0, 104.0
_LEFT, _RIGHT = 46.0, 128.0
_DETAIL, _HIGH, _REACH = (172.0, 236.0), 48.0, 46.0  # frame of the detail, its height, room for the lever
_TEXT = 26.0  # what the lever's text takes where it stands beside it
_ALONG, _WIDE, _UP, _ARROWS = (242.0, 304.0), 54.0, 34.0, 24.0
_DETAIL_HEADING, _ALONG_HEADING = "Detail A, the line turned upright", "Along the line, from the rear"
_MARKED = 5.0  # radius of the mark of the detail
_RING = 2.2  # of a force along the line of sight, sheet millimetres
_LINE = 0.35  # width of the line of support, an axis about which the vehicle tips


def diagonal_support(results: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of a vehicle on two diagonal wheels and what it leans on."""
    state = case_of(results, case, ("two_wheel",), "a vehicle on two diagonal wheels")
    on = OnTwo.of(results, state)
    words = DiagonalWording(on, units)
    radius, width = (results.wheel_geometry.free_diameter * 500.0, results.wheel_geometry.section_width * 1e3)
    base = max(x for _, x in on.places.values()) - min(x for _, x in on.places.values())
    scale, ratio = drawing_scale(base + 2.6 * radius, _TALL)
    rear = min(x for _, x in on.places.values())
    view = View(
        "above", (_MIDDLE, _FOOT + 8.0 + (1.3 * radius - rear) * scale), scale, mirrored=True, heading="From above"
    )
    top = view.on_sheet((0.0, 1.3 * radius))[1]
    detail, detail_ratio = _detail_view(on, top)
    along, along_ratio = _along_view(on)
    top = max(top, along.on_sheet((0.0, on.height))[1] + on.weight / (along.newtons_per_mm or 1.0) + 10.0)
    items: list[Item] = [
        *_seen(on, radius, width, view),
        *_lines(on, view),
        *_centre(words, view),
        *_wheels(words, view),
        *_enlarged(words, view, detail),
        *_along(words, along),
        *_told(words, detail),
    ]
    low, high = _FOOT + 4.0, top + 8.0
    return Scene(
        name="diagonal-support",
        title=words.title(),
        caption=words.caption(),
        description=words.description(),
        units=units,
        size=(_WIDTH, top + 14.0),
        views=(view, detail, along),
        items=tuple(items),
        steps=words.steps(),
        columns=(Column("left", _LEFT, low, high), Column("right", _RIGHT, low, high)),
        scale_bars=(
            ScaleBar(view.name, "length", f"Vehicle {ratio}"),
            ScaleBar(detail.name, "length", f"Detail A {detail_ratio}"),
            ScaleBar(along.name, "length", f"Along the line {along_ratio}"),
            ScaleBar(along.name, "force", "Forces along the line"),
        ),
        key=(KeyEntry("load", "weight"), KeyEntry("reaction", "road on the wheels")),
        body=on.closed(),
    )


def _detail_view(on: OnTwo, top: float) -> tuple[View, str]:
    """Return the view across the line around the centre of mass, and its scale in words."""
    scale, ratio = drawing_scale(max(on.off_line, 15.0), _REACH)
    x0, x1 = _DETAIL
    y1 = top + 2.0
    lever = on.across(on.centre) * scale
    taken = abs(lever) + (_TEXT if abs(lever) < _TEXT else 0.0)
    middle = (x0 + x1) / 2 + math.copysign(taken / 2, lever)
    return View(
        "detail",
        (middle, y1 - _HIGH / 2 + 4.0),
        scale,
        mirrored=True,
        frame=(x0, y1 - _HIGH, x1, y1),
        heading=_DETAIL_HEADING,
    ), ratio


def _along_view(on: OnTwo) -> tuple[View, str]:
    """Return the view along the line of support, and its scale in words."""
    places = (0.0, on.across(on.centre), on.third_lever)
    sizes = (drawing_scale(max(places) - min(places) + 1.0, _WIDE), drawing_scale(on.height, _UP))
    scale, ratio = min(sizes)
    middle = sum(_ALONG) / 2 + (max(places) + min(places)) / 2 * scale
    per_mm = round_scale(on.weight, _ARROWS)
    return View(
        "along", (middle, _FOOT + 14.0 + on.weight / per_mm), scale, per_mm, mirrored=True, heading=_ALONG_HEADING
    ), ratio


def _seen(on: OnTwo, radius: float, width: float, view: View) -> list[Item]:
    """Return body, axles and wheels from above; what carries nothing is pale."""
    ys = [abs(y) for y, _ in on.places.values()]
    xs = [x for _, x in on.places.values()]
    half, front, rear = max(ys) + 0.1 * width, max(xs) + 1.28 * radius, min(xs) - 1.28 * radius
    ring = rounded([(half, rear), (half, front), (-half, front), (-half, rear)], 0.16 * half, closed=True)
    body = tuple((float(y), float(x)) for y, x in ring)
    items: list[Item] = [Part("part-body", view.name, rings=(body,), material="body", outline=0.35)]
    for name, (y, x) in on.places.items():
        a, b = width / 2, radius
        corners = [(y + a, x - b), (y + a, x + b), (y - a, x + b), (y - a, x - b)]
        tire = tuple((float(p), float(q)) for p, q in rounded(corners, 0.3 * width, closed=True))
        carries = on.load(name) > NOTHING * on.weight
        items.append(
            Part(
                f"part-{name}",
                view.name,
                rings=(tire,),
                material="rubber" if carries else "ghost",
                outline=0.3,
                level=1,
            )
        )
    return items


def _lines(on: OnTwo, view: View) -> list[Item]:
    ends = tuple(on.places[name] for name in on.supported)
    return [Line("support-line", view.name, points=ends, style="centre", width=_LINE, level=2)]


def _centre(words: DiagonalWording, view: View) -> list[Item]:
    on = words.on
    lines = (f"*{{W}} = {words.force(on.weight)}", "at the centre of mass")
    label = Label(lines, _side(on), anchor=_edge(on.centre, _side(on), view), tone="load")
    return [Normal("force-weight", view.name, 2, at=on.centre, newtons=-on.weight, label=label, level=8)]


def _side(on: OnTwo) -> Literal["left column", "right column"]:
    """Return the side away from the line on which words about the centre of mass stand."""
    return "left column" if on.centre[0] >= on.foot[0] else "right column"


def _wheels(words: DiagonalWording, view: View) -> list[Item]:
    on = words.on
    items: list[Item] = []
    told = words.wheel_forces()
    for name, at in on.places.items():
        side: Literal["left column", "right column"] = "left column" if at[0] > 0 else "right column"
        load = on.load(name) if name in told else 0.0
        lines = (f"*{told[name]}" if load else "nothing", plain_name(name))
        anchor = _edge(at, side, view) if load else at
        label = Label(lines, side, anchor=anchor, tone="reaction" if load else "soft")
        items.append(
            Normal(f"reaction-{name}", view.name, 3, at=at, newtons=load, role="reaction", label=label, level=8)
        )
    return items


def _edge(at: Point, side: str, view: View) -> Point:
    """Return where a leader from a column ends at a ring, whose dot or cross it would strike out beyond."""
    return at[0] + (_RING if side == "left column" else -_RING) / view.scale, at[1]


def _enlarged(words: DiagonalWording, view: View, detail: View) -> list[Item]:
    """Return the lever: its place marked on the vehicle, and itself in the detail, where the line stands upright."""
    on = words.on
    assert detail.frame is not None
    d, reach = on.across(on.centre), 2 * _HIGH / detail.scale
    turn = [2 * math.pi * k / 48 for k in range(49)]
    around = tuple(
        (on.centre[0] + _MARKED / view.scale * math.cos(a), on.centre[1] + _MARKED / view.scale * math.sin(a))
        for a in turn
    )
    mark = Label(("*A",), "left column" if _side(on) == "right column" else "right column", anchor=around[0])
    weight = Label((f"*{words.force(on.weight)}",), "above", tone="load")
    at = (detail.frame[0], detail.frame[3] + 3.0)
    items: list[Item] = [
        Line("detail-mark", view.name, 2, points=around, style="thin", level=9),
        Note("label-detail", view.name, 2, label=replace(mark, anchor=_toward(around, mark.place)), level=9),
        Line("support-line-detail", detail.name, 2, points=((0.0, -reach), (0.0, reach)), style="centre",
             width=_LINE, level=2),
        Normal("force-weight-detail", detail.name, 2, at=(d, 0.0), newtons=-on.weight, label=weight, level=8),
        Words("words-detail", "", 2, at_sheet=at, lines=(f"*{detail.heading}",), size=2.4),
    ]  # fmt: skip
    if on.third is not None:
        items.append(
            Dimension(
                "dimension-off-line",
                detail.name,
                4,
                start=(0.0, 0.0),
                end=(d, 0.0),
                line_at=detail.origin[1] - 13.0,
                text=f"{{d}} = {words.length(on.off_line)}",
                side="end",
            )
        )
    return items


def _toward(around: tuple[Point, ...], place: str) -> Point:
    """Return the point of the mark that is nearest to its letter's column; y to the left."""
    return max(around, key=lambda point: point[0] if place == "left column" else -point[0])


def _along(words: DiagonalWording, view: View) -> list[Item]:
    """Return the vehicle's weight on the line and the third wheel, seen along the line, and the tilt that is left."""
    on = words.on
    d, third, h = on.across(on.centre), on.third_lever, on.height
    places = (0.0, d, third)
    spare = 6.0 / view.scale
    top = view.on_sheet((0.0, h))[1] + on.weight / (view.newtons_per_mm or 1.0)
    at = (sum(_ALONG) / 2, top + 9.0)
    pair = Label((f"*{words.line_force()}", "on the line"), "below")
    items: list[Item] = [
        Words("words-along", "", 2, at_sheet=at, lines=(f"*{view.heading}",), size=2.4, align="centre"),
        Ground("ground-along", view.name, 2, start=(min(places) - spare, 0.0), end=(max(places) + spare, 0.0)),
        Line("plumb", view.name, 2, points=((d, h), (d, 0.0)), style="centre", tone="load", level=3),
        Dot("line-on-end", view.name, 2, at=(0.0, 0.0), radius=0.9, level=8),
        Force(
            "force-weight-along",
            view.name,
            2,
            at=(d, h),
            vector=(0.0, -on.weight),
            label=Label((f"*{{W}} = {words.force(on.weight)}",), "right" if third > 0 else "left", tone="load"),
            level=7,
        ),
        Force(
            "reaction-line",
            view.name,
            3,
            at=(0.0, 0.0),
            vector=(0.0, on.weight * (1 - float(on.found.third_share))),
            role="reaction",
            label=replace(pair, tone="reaction"),
            level=7,
        ),
    ]
    if on.third is None:
        return items
    load = on.load(on.third)
    return [
        *items,
        visible(
            Force(
                "reaction-third",
                view.name,
                3,
                at=(third, 0.0),
                vector=(0.0, load),
                role="reaction",
                label=Label((f"*{words.third_force}", plain_name(on.third)), "below", tone="reaction"),
                level=7,
            ),
            view,
        ),
        Dimension(
            "dimension-third",
            view.name,
            4,
            start=(0.0, 0.0),
            end=(third, 0.0),
            line_at=view.origin[1] + 9.0,
            text=f"{{d|3}} = {words.third_lever}",
        ),
        Line("tilted", view.name, 5, points=((0.0, 0.0), (d, h)), style="phantom", level=4),
        AngularDimension(
            "dimension-tilt",
            view.name,
            5,
            vertex=(0.0, 0.0),
            start=(0.0, h),
            end=(d, h),
            radius=0.78 * h * view.scale,
            label=Label((words.tilt,), "left" if third < 0 else "right", size=2.4),
            level=6,
        ),
    ]


def _told(words: DiagonalWording, detail: View) -> list[Item]:
    on = words.on
    assert detail.frame is not None
    heading = "*Nothing is left over" if on.third is None else f"*{words.share} of the weight on a third wheel"
    lines: tuple[str, ...] = (
        f"Tilted by {words.tilt} away from it, the",
        "centre of mass would stand over the",
        "line, and the vehicle goes over to the",
        "fourth wheel. It tips well before this",
        "static angle. Not a limit to drive to.",
    )
    if on.third is None:
        lines = ("The centre of mass stands over the line:", "the smallest cause decides to which side", "it goes.")
    at = (detail.frame[0], detail.frame[1] - 8.0)
    return [
        Words("words-third", "", 5, at_sheet=at, lines=(heading,), size=2.5),
        Words("words-tilt", "", 5, at_sheet=(at[0], at[1] - 6.0), lines=lines, size=2.2, tone="soft"),
    ]

"""The steered axle from the front and from above: steering axis, scrub radius and kick-back before and after a change.

Real millimetres, y to the left of the vehicle, which from the front is on the right of the sheet. `axle` and `foot`
have z up from the road, `above` has x backward up the sheet. In `foot` and `above` y counts from the steering axis.
"""

from typing import Literal

from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.scenes.corner_front_outline import wheels_seen
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.scrub_radius_words import ScrubWording, scrub_wording
from hubwright.scenes.vocabulary import (
    Dimension,
    Dot,
    Force,
    Ground,
    Item,
    KeyEntry,
    Label,
    Line,
    Moment,
    Note,
    Part,
    ScaleBar,
    Scene,
    Tone,
    Units,
    View,
    Words,
)
from hubwright.scenes.wheel_end_parts.outlines import rounded

_WIDTH, _FOOT = 310.0, 30.0
_MIDDLE, _WIDE = 78.0, 118.0  # of the axle
_PLACE, _HALF = 230.0, 71.0  # of the two details
_TALL = 25.0  # height of the foot
_ROW = 7.0
_ARROW, _ROOM = 22.0, 50.0
_ARCS, _BETWEEN_ARCS = (6.5, 11.0), 4.0  # radii of the moments' arcs where nothing is in the way
_CLEAR = 2.4  # between the middle of a force and that of an arc's head
_ON_A_PHONE = 0.5  # of its size there has a detail, about; an arc keeps its own
_ALIKE = 0.05  # mm: what is nearer is one place
_NOTHING = 1e-9


def scrub_radius(base: Results, other: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of a setup and of one whose load line has moved, at a wheel that steers.

    Raises `MissingDataError` where the file gives no scrub radius, and `CaseError` for a wheel that does not steer or
    a case in which nothing pulls along the road.
    """
    words = scrub_wording(base, other, case, units)
    axle = _axle_view(words)
    foot, above, ratio = _detail_views(words)
    items = [*_axle(words, axle), *_foot(words, foot), *_above(words, above), *_told(words)]
    return Scene(
        name="scrub-radius",
        title=words.title(),
        caption=words.caption(),
        description=words.description(),
        units=units,
        size=(_WIDTH, max((above.frame or (0.0,) * 4)[3] + 14.0, _over_axle(words, axle) + 9.0)),
        views=(axle, foot, above),
        items=tuple(items),
        steps=words.steps(),
        scale_bars=(
            ScaleBar(axle.name, "length", f"Axle 1 : {1 / axle.scale:g}"),
            ScaleBar(foot.name, "length", f"Details {ratio}"),
            ScaleBar(above.name, "force", "Force along the road"),
        ),
        key=(
            KeyEntry("load", "road on this wheel alone"),
            KeyEntry("moment", "turns the steering"),
            *(() if words.moved else (KeyEntry("load line", "load line"),)),  # else each is named where it stands
        ),
    )


def _axle_view(words: ScrubWording) -> View:
    geometry = words.other.wheel_geometry
    extent = max(words.before.track, words.after.track) * 1e3 + geometry.section_width * 1e3
    scale, _ = drawing_scale(extent, _WIDE)
    return View("axle", (_MIDDLE, _FOOT + 46.0 + 2 * _ROW), scale, heading="The axle from the front")


def _over_axle(words: ScrubWording, view: View) -> float:
    """Return where the name of the axle's view stands, over wheels and steering axes."""
    return view.on_sheet((0.0, 1.12 * 2 * words.other.wheel_geometry.loaded_radius * 1e3))[1] + 8.0


def _detail_views(words: ScrubWording) -> tuple[View, View, str]:
    """Return the front and the top of the wheel's foot, one above the other at one scale, and how that is written."""
    wide = [results.wheel_geometry.section_width * 500.0 for results in (words.base, words.other)]
    tires = (words.place_before, wide[0]), (words.place_after, wide[1])
    low = min(0.0, *(place - half for place, half in tires))
    high = max(0.0, *(place + half for place, half in tires))
    scale, ratio = drawing_scale(high - low, 2 * _HALF - 6.0)
    across = _PLACE - scale * (low + high) / 2
    force = max(abs(words.kick_before.force), abs(words.kick_after.force))
    left, right = _PLACE - _HALF, _PLACE + _HALF
    road = _FOOT + 4.0 + 3 * _ROW
    foot_frame = (left, road - 5.0, right, road + _TALL)
    foot = View("foot", (across, road), scale, frame=foot_frame, heading="From the front, at the road")
    foot_of = road + _TALL + 12.0
    frame = (left, foot_of, right, foot_of + _ROOM)
    seen, per_mm = "From above, front of the vehicle down", round_scale(force, _ARROW)
    above = View("above", (across, foot_of + 18.0), scale, per_mm, frame=frame, heading=seen)
    return foot, above, ratio


def _axle(words: ScrubWording, view: View) -> list[Item]:
    """Return both wheels before and after, and their track."""
    items: list[Item] = []
    half = {"before": words.before.track * 500.0, "after": words.after.track * 500.0}
    top = 2 * words.other.wheel_geometry.loaded_radius * 1e3
    for when, results in (("before", words.base), ("after", words.other)):
        if when == "after" and not words.moved:
            continue
        tone: Tone = "before" if when == "before" else "changed"
        for part in wheels_seen(results, view.name, (half[when], -half[when]), 1 if when == "before" else 3):
            items.append(
                Part(
                    f"{part.name}-{when}",
                    view.name,
                    part.step,
                    rings=part.rings,
                    material="rubber" if when == "before" else "none",
                    outline=0.3 if when == "before" else 0.5,
                    tone=tone,
                    level=0.2 if when == "before" else 3.0,
                )
            )
    reach = max(half.values()) + 0.7 * words.other.wheel_geometry.section_width * 1e3
    items.append(Ground("ground-axle", view.name, start=(-reach, 0.0), end=(reach, 0.0)))
    for side in (1, -1):
        y = side * (half["before"] - words.before_scrub * 1e3)
        ends = ((y, -0.06 * top), (y, 1.12 * top))
        items.append(
            Line(f"steering-axis-{'left' if side > 0 else 'right'}", view.name, 2, points=ends, style="centre")
        )
    left = -half["before"] + words.before_scrub * 1e3  # of the sheet
    axis = Label(("steering axis",), "right", (left, 1.12 * top), size=2.4, nudge=(0.6, 0.6))
    items.append(Note("label-axis-axle", view.name, 2, label=axis, level=9))
    for row, when in enumerate(("before", "after"), start=1):
        if when == "after" and not words.moved:
            continue
        track = words.before.track if when == "before" else words.after.track
        items.append(
            Dimension(
                f"dimension-track-{when}",
                view.name,
                1 if when == "before" else 3,
                start=(-half[when], 0.0),
                end=(half[when], 0.0),
                line_at=view.origin[1] - 1.5 - _ROW * row,
                text=f"track {format_quantity(track, 'vehicle length', words.units)}",
                tone="ink" if when == "before" else "changed",
            )
        )
    at = (_MIDDLE - _WIDE / 2, _over_axle(words, view))
    items.append(Words("words-axle", "", 1, at_sheet=at, lines=(f"*{view.heading}",), size=2.8))
    return items


def _foot(words: ScrubWording, view: View) -> list[Item]:
    """Return the wheel's foot on the road with the steering axis and both load lines."""
    high = _TALL / view.scale
    items: list[Item] = [
        *_tires(words, view, 0.0, 3 * high),
        Line("line-road", view.name, 2, points=((-1e4, 0.0), (1e4, 0.0)), style="outline", level=4),
        Line(
            "axis-foot",
            view.name,
            2,
            points=((0.0, -3.0 / view.scale), (0.0, high)),
            style="centre",
            width=0.5,
            level=6,
        ),
        Dot("axis-on-road", view.name, 2, at=(0.0, 0.0), radius=0.9, level=8),
        _name("words-foot", view, 2),
    ]
    inner: Literal["left", "right"] = "left" if words.side > 0 else "right"
    axis = Label(("steering axis",), inner, (0.0, 0.62 * high), size=2.4, nudge=(-words.side * 0.8, 0.0))
    items.append(Note("label-axis", view.name, 2, label=axis, level=9))
    places = (("before", words.place_before, words.before_scrub, 2), ("after", words.place_after, words.after_scrub, 3))
    place_moved = words.place_after if words.moved else words.place_before
    for row, (when, place, scrub, step) in enumerate(places, start=1):
        if when == "after" and not words.moved:
            continue
        moved: Tone = "changed" if when == "after" else "ink"
        ends = ((place, -3.0 / view.scale), (place, high))
        tone: Tone = "load" if not words.moved else "before" if when == "before" else "changed"
        items.append(
            Line(f"load-line-{when}", view.name, step, points=ends, style="centre", tone=tone, width=0.3, level=7)
        )
        if words.moved:
            items.append(_load_line_name(words, view, when, place, step))
        if abs(scrub) * 1e3 > _ALIKE:
            items.append(
                Dimension(
                    f"dimension-scrub-{when}",
                    view.name,
                    step,
                    start=(0.0, 0.0),
                    end=(place, 0.0),
                    line_at=view.origin[1] - 2.0 - _ROW * row,
                    text=f"{{r}} = {words.length(scrub)}",
                    # beside the axis where the longer one's extension line stands beyond the other end
                    side="start" if when == "before" and words.place_before * (place_moved - place) > 0 else "end",
                    tone=moved,
                )
            )
    return items


def _load_line_name(words: ScrubWording, view: View, when: str, place: float, step: int) -> Note:
    """Return the name of a load line, which is farther down than that of the axis beside it."""
    high = _TALL / view.scale
    farther = 2 * place > words.place_before + words.place_after
    lines = ("load line", words.when[when])
    tone: Tone = "changed" if when == "after" else "soft"
    label = Label(
        lines, "right" if farther else "left", (place, 0.3 * high), tone, size=2.3, also=((place, 0.8 * high),)
    )
    return Note(f"label-load-line-{when}", view.name, step, label=label, level=9)


def _tires(words: ScrubWording, view: View, low: float, high: float) -> list[Item]:
    """Return the tire before and after between two heights of a detail."""
    items: list[Item] = []
    for when, results, y in (("before", words.base, words.place_before), ("after", words.other, words.place_after)):
        if when == "after" and not words.moved:
            continue
        half = results.wheel_geometry.section_width * 500.0
        ring = rounded([(y - half, low), (y - half, high), (y + half, high), (y + half, low)], 0.2 * half, closed=True)
        items.append(
            Part(
                f"part-tire-{view.name}-{when}",
                view.name,
                2 if when == "before" else 3,
                rings=(tuple((float(a), float(b)) for a, b in ring),),
                material="ghost" if when == "before" else "none",
                outline=0.3 if when == "before" else 0.5,
                tone="before" if when == "before" else "changed",
                level=0.0 if when == "before" else 3.0,
            )
        )
    return items


def _above(words: ScrubWording, view: View) -> list[Item]:
    """Return the pull on this wheel at either load line, and how it turns the wheel about the steering axis."""
    items: list[Item] = [
        *_tires(words, view, -1e3, 1e3),
        Dot("axis-above", view.name, 2, at=(0.0, 0.0), kind="ring", radius=1.4, level=9),
        _name("words-above", view, 2),
    ]
    inner, outer = _arcs(words, view)
    courses = (
        ("before", words.place_before, words.kick_before, words.turning_before, inner),
        ("after", words.place_after, words.kick_after, words.turning_after, outer),
    )
    for when, place, kick, turning, radius in courses:
        if when == "after" and not words.moved:
            continue
        step = 4 if when == "before" else 5
        items.append(
            Force(
                f"force-road-{'as-it-is' if when == 'before' else 'moved'}",
                view.name,
                step,
                at=(place, 0.0),
                vector=(0.0, -kick.force),
                tip_at_point=False,
                slender=when == "before" and words.moved,
                label=Label((f"*{words.force(kick.force)}", words.when[when]), "above", tone="load", size=2.4),
                level=10,
            )
        )
        if abs(turning) > _NOTHING:
            items.append(
                Moment(
                    f"moment-kick-{when}",
                    view.name,
                    step,
                    at=(0.0, 0.0),
                    newton_metres=turning,
                    role="applied",
                    radius=radius,
                    label=Label(
                        (f"*{words.moment(kick.moment)}", words.when[when]),
                        "left" if words.side > 0 else "right",
                        tone="moment",
                        size=2.4,
                    ),
                    level=11,
                )
            )
    return items


def _arcs(words: ScrubWording, view: View) -> tuple[float, float]:
    """Return the radii of both moments' arcs [sheet mm]: their heads keep off the forces, which run up beside them."""
    turnings = (words.turning_before, words.turning_after)
    levers = [place * view.scale for place in (words.place_before, words.place_after)]

    def clear(radii: tuple[float, float], shrunk: float) -> float:
        # counter-clockwise an arc ends on the right, beside the tails of the forces
        heads = [radius if turning > 0 else -radius for radius, turning in zip(radii, turnings, strict=True)]
        return min(_CLEAR, *(abs(head - shrunk * lever) for head in heads for lever in levers))

    def worth(radii: tuple[float, float]) -> tuple[float, ...]:
        moved = sum(abs(radius - usual) for radius, usual in zip(radii, _ARCS, strict=True))
        return -clear(radii, 1.0), -clear(radii, _ON_A_PHONE), moved

    tried = [half / 2 for half in range(10, 35)]
    pairs = [(first, second) for first in tried for second in tried if second - first >= _BETWEEN_ARCS]
    return min(pairs, key=worth)


def _name(name: str, view: View, step: int) -> Words:
    assert view.frame is not None
    return Words(name, "", step, at_sheet=(view.frame[0], view.frame[3] + 3.0), lines=(f"*{view.heading}",), size=2.5)


def _told(words: ScrubWording) -> list[Item]:
    at = (_MIDDLE - _WIDE / 2, _FOOT + 34.0)
    heading, *lines = words.lines()
    return [
        Words("words-kick", "", 5, at_sheet=at, lines=(f"*{heading}",), size=2.7),
        Words("words-kick-told", "", 5, at_sheet=(at[0], at[1] - 6.0), lines=tuple(lines), size=2.4, tone="soft"),
    ]

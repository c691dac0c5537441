"""The rock test: a raised wheel pushed and pulled at top and bottom, its slack magnified by a stated factor.

Views look forward from the rear: first axis ISO y (to the left on the sheet), second z, real millimetres from the
bearing centre. Turning parts are tilted by the magnified angle.
"""

import math
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Literal

from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.results.symptoms import PlayResult, own_end_play, play_result
from hubwright.scenes.rock_test_numbers import RockedNumbers, rocked_numbers
from hubwright.scenes.scales import drawing_scale, round_down
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import (
    AngularDimension,
    Column,
    Dimension,
    Dot,
    Item,
    KeyEntry,
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
    Words,
)
from hubwright.scenes.wheel_end_parts.assembly import Assembly, assembly
from hubwright.scenes.wheel_end_parts.measures import measures
from hubwright.scenes.wheel_end_solids import points_of, solids

END_PLAY = 1e-4  # of the example that is drawn [m]
_WIDTH, _HEIGHT = 310.0, 204.0
_WHEEL, _TOP, _LOW = 98.0, 186.0, 40.0  # middle of the wheel across the sheet; where its tread may reach
_FRAME = (170.0, 78.0, 300.0, 176.0)
_WHOLE_SCALES = ((1, 5), (1, 6), (1, 8), (1, 10))
_DETAIL_SCALES = ((1, 1), (4, 5), (2, 3), (1, 2), (1, 3))
_TILT = 0.075  # rad: what the slack is magnified to, at most
_MM = 1e3
_OVER = 20.0  # level over all parts
_SPREAD, _ARC = 6.5, 15.0  # sheet mm: its dimension line below the axis, the arc of the contact angle


@dataclass(frozen=True)
class _Rocked:
    """The play, how far it is drawn, and the parts."""

    results: Results
    play: PlayResult
    parts: Assembly
    magnification: float
    units: Units

    @property
    def tilt(self) -> float:
        """The angle drawn, to either side [rad]."""
        return self.play.rocking_angle * self.magnification

    @property
    def larger(self) -> str:
        """How the slack is drawn, in words."""
        return f"drawn {self.magnification:,.10g} times larger"

    @property
    def side(self) -> int:
        """The sign of outboard along y."""
        return self.results.side

    def turned(self, point: Point, way: int) -> Point:
        """Return a point of the turning parts with the top pulled outboard (way 1) or pushed inboard (-1)."""
        # seen from the rear with y to the left, the top goes outboard when z turns toward outboard
        sine, cosine = math.sin(self.tilt) * way * self.side, math.cos(self.tilt)
        return point[0] * cosine + point[1] * sine, point[1] * cosine - point[0] * sine

    @property
    def spread(self) -> float:
        """The effective spread of the rows [m]."""
        return self.results.bearing.effective_spread or 0.0

    @property
    def contact_angle(self) -> float:
        """The contact angle [rad]."""
        return self.results.setup.bearing.contact_angle or 0.0

    @property
    def radius(self) -> float:
        """The free radius of the tire [m]."""
        return self.results.wheel_geometry.free_diameter / 2

    def length(self, metres: float) -> str:
        """Return a small length."""
        return format_quantity(metres, "small length", self.units)

    @cached_property
    def told(self) -> RockedNumbers:
        """The numbers of the working."""
        return rocked_numbers(self.play, self.contact_angle, self.spread, self.radius, self.units)


def rock_test(results: Results, *, case: str = "standing", units: Units = "si", end_play: float = END_PLAY) -> Scene:
    """Return the scene of a raised wheel whose hub has some end play [m]; the case does not act on it."""
    play = play_result(results, end_play)
    parts = assembly(measures(results, hanging=True))
    factor = round_down(_TILT / play.rocking_angle) if play.rocking_angle > 0 else 1.0
    rocked = _Rocked(results, play, parts, factor, units)
    whole, ratio = _whole_view(rocked)
    detail, detail_ratio = _detail_view(rocked)
    items = [
        *_wheel(rocked, "whole"),
        *_wheel(rocked, "detail"),
        *_pushed(rocked),
        *_at_the_tread(rocked),
        *_at_the_rows(rocked, detail),
        _radius(rocked),
        *_working(rocked),
    ]
    slack = rocked.length(play.tread_travel)
    return Scene(
        name="rock-test",
        title=f"End play of {rocked.length(end_play)} lets the tread move {slack}",
        caption=_caption(rocked),
        description=_description(rocked),
        units=units,
        size=(_WIDTH, _HEIGHT),
        views=(whole, detail),
        items=tuple(items),
        steps=(
            Step("Raise the wheel", "Nothing loads the bearing but what hangs on it."),
            Step("Push and pull", "Top against bottom: the hub tilts until both rows touch, one above, one below."),
            Step("Measure at the tread", f"The slack is drawn {factor:,.10g} times larger than it is."),
            Step("Look at the rows", "What moves at the pressure centres is small; the wheel is a long lever on it."),
        ),
        scale_bars=(
            ScaleBar("whole", "length", f"Wheel {ratio}"),
            ScaleBar("detail", "length", f"Detail {detail_ratio}"),
        ),
        key=(KeyEntry("turning", "turns with the wheel"), KeyEntry("fixed", "stands still")),
        columns=(Column("left", _FRAME[0] - 5.0, _FRAME[1], _FRAME[3]),),
        axes="rear",
    )


def _whole_view(r: _Rocked) -> tuple[View, str]:
    radius = r.parts.measures.free_radius
    scale, ratio = drawing_scale(2 * radius, _TOP - _LOW, _WHOLE_SCALES)
    origin = (_WHEEL + scale * r.side * r.parts.measures.load_line, _TOP - scale * radius)
    heading = f"The wheel, slack {r.larger}"
    return View("whole", origin, scale, mirrored=True, heading=heading), ratio


def _detail_view(r: _Rocked) -> tuple[View, str]:
    x0, y0, x1, y1 = _FRAME
    bearing = r.parts.measures.bearing
    wide = 2 * bearing.apex + 60.0  # room for words beyond both pressure centres
    tall = bearing.outside + 30.0
    scale = min(
        drawing_scale(wide, x1 - x0, _DETAIL_SCALES)[0],
        drawing_scale(tall, y1 - y0, _DETAIL_SCALES)[0],
    )
    ratio = next(f"{sheet} : {real}" for sheet, real in _DETAIL_SCALES if abs(sheet / real - scale) < 1e-9)
    origin, heading = ((x0 + x1) / 2, (y0 + y1) / 2), f"The rows, play {r.larger}"
    return View("detail", origin, scale, mirrored=True, frame=_FRAME, heading=heading), ratio


def _wheel(r: _Rocked, view: Literal["whole", "detail"]) -> list[Item]:
    """Return what stands, and what turns with its top pulled outboard; in the detail nothing is tilted."""
    turning = tuple(piece.name for piece in r.parts.pieces if piece.turns)
    standing = solids(r.parts, view, r.side, view, without=turning)
    moving = solids(r.parts, view, r.side, view, body_only=True)
    if view == "detail":
        return [*standing, *moving]
    names = {item.name for item in moving}
    kept = [item for item in standing if item.name not in names]
    return [*kept, *(_tilted(r, item) for item in moving)]


def _tilted(r: _Rocked, item: Item) -> Item:
    if isinstance(item, Part):
        rings = tuple(tuple(r.turned(point, 1) for point in ring) for ring in item.rings)
        return replace(item, rings=rings)
    assert isinstance(item, Line)
    return replace(item, points=tuple(r.turned(point, 1) for point in item.points))


def _pushed(r: _Rocked) -> list[Item]:
    """Return the tire's outline with its top pushed inboard, and the words at both."""
    items: list[Item] = []
    for name, tire in (("upper", r.parts.above), ("lower", r.parts.below)):
        # the outside of the section: its inside would cross the wheel
        outer = points_of(tire.ring, r.side)[: len(tire.ring) - len(tire.cavity)]
        points = tuple(r.turned(point, -1) for point in outer)
        line = Line(f"pushed-{name}", "whole", 2, points=points, style="phantom", tone="changed", level=_OVER)
        items.append(line)
    return items


def _at_the_tread(r: _Rocked) -> list[Item]:
    m = r.parts.measures
    top = (r.side * m.load_line, m.free_radius)
    pulled, pushed = r.turned(top, 1), r.turned(top, -1)
    items: list[Item] = [
        Dimension(
            "tread-travel",
            "whole",
            3,
            start=pulled,
            end=pushed,
            line_at=_TOP + 7.0,
            text=f"slack {{s}} = {r.told.travel}",
            level=_OVER,
        )
    ]
    for name, way, words in (("pulled", 1, "pulled out at the top"), ("pushed", -1, "pushed in at the top")):
        ends = tuple(r.turned((r.side * m.load_line, sign * m.free_radius), way) for sign in (1, -1))
        tone: Literal["ink", "changed"] = "ink" if way > 0 else "changed"
        items.append(Line(f"plane-{name}", "whole", 2, points=ends, style="centre", tone=tone, extend=3.0, level=_OVER))
        outboard_left = r.side > 0
        place: Literal["left", "right"] = "left" if (way > 0) == outboard_left else "right"
        y = r.side * (m.load_line + way * r.parts.above.half_width)
        at = r.turned((y, r.parts.above.widest + 0.35 * m.section_height), way)
        lines = (words.split(" at ")[0], "at the top")
        label = Label(lines, place, anchor=at, tone=tone, size=2.4, nudge=(-2.0 if place == "left" else 2.0, 0.0))
        items.append(Note(f"label-{name}", "whole", 2, label=label))
    items.append(Dot("centre", "whole", 1, at=(0.0, 0.0), radius=0.7, level=_OVER + 1))
    return items


def _at_the_rows(r: _Rocked, view: View) -> list[Item]:
    """Return the hub's axis in both positions, and the play between them at each pressure centre."""
    half = r.parts.measures.bearing.apex
    frame = view.frame
    assert frame is not None
    reach = half + 12.0 / view.scale
    items: list[Item] = [Dot("centre-detail", "detail", 4, at=(0.0, 0.0), radius=0.7, level=_OVER + 1)]
    for name, way in (("pulled", 1), ("pushed", -1)):
        ends = tuple(r.turned((sign * reach, 0.0), way) for sign in (1.0, -1.0))
        tone: Literal["ink", "changed"] = "ink" if way > 0 else "changed"
        items.append(Line(f"axis-{name}", "detail", 4, points=ends, style="centre", tone=tone, width=0.35, level=_OVER))
    for index, line in enumerate(r.parts.bearing.contact_lines):
        for sign, place in ((1, "upper"), (-1, "lower")):
            points = tuple((r.side * a, sign * radius) for a, radius in line)
            name = f"contact-line-{index}-{place}"
            items.append(Line(name, "detail", 4, points=points, style="centre", tone="reaction", level=_OVER - 1))
    rise = half * math.tan(r.tilt)
    for name, sign in (("outboard", 1), ("inboard", -1)):
        y = r.side * sign * half
        items.append(
            Dimension(
                f"radial-play-{name}",
                "detail",
                4,
                start=(y, rise),
                end=(y, -rise),
                direction="vertical",
                line_at=view.on_sheet((y, 0.0))[0],  # where it is that large: off it the axes lie farther apart
                text="",  # one label speaks for both
                extension=(False, False),
                level=_OVER,
            )
        )
    return [*items, *_rows_named(r, view)]


def _rows_named(r: _Rocked, view: View) -> list[Item]:
    """Return the symbols of the working at the rows: radial play, contact angle, spread, and the centre's name."""
    half, left = r.parts.measures.bearing.apex, r.side * r.parts.measures.bearing.apex
    first = r.parts.bearing.contact_lines[0 if r.side > 0 else 1]  # of the row that is nearer to the column
    (far, radius), *_ = sorted(first, key=lambda point: -point[1])
    told = Label(
        ("radial play at each", "pressure centre", "{δ|r} = {δ} tan {α}", f"= {r.told.radial}"),
        "left column",
        (half, 0.0),  # between the heads of the dimension that is nearer to the column
        leader_dot=True,
    )
    angle = Label(("contact angle", f"{{α}} = {r.told.angle}"), "left column")
    line = Label(("contact line",), "left column", (r.side * far, radius), tone="reaction")
    under = view.on_sheet((0.0, 0.0))[1] - _SPREAD
    return [
        Note("label-radial-play", "detail", 4, label=told, level=_OVER),
        Note("label-contact-line", "detail", 4, label=line, level=_OVER),
        AngularDimension(
            "contact-angle",
            "detail",
            4,
            vertex=(half, 0.0),
            start=(half, 1.0),  # the radial plane, which nothing else shows
            end=(r.side * far, radius),
            radius=_ARC,
            extension=(True, False),
            label=angle,
            level=_OVER,
        ),
        Dimension(
            "spread",
            "detail",
            4,
            start=(left, 0.0),
            end=(-left, 0.0),
            line_at=under,
            text=f"{{ℓ}} = {r.told.spread}",
            level=_OVER,
        ),
        Note(
            "label-centre",
            "detail",
            4,
            label=Label(("bearing centre",), "above", (0.0, 0.0), tone="soft", size=2.2, nudge=(0.0, 1.0)),
            level=_OVER,
        ),
    ]


def _radius(r: _Rocked) -> Dimension:
    """Return the lever from the bearing centre to the tread, on the side that lies away from the detail."""
    m = r.parts.measures
    edge = r.side * m.load_line + r.parts.below.half_width + m.free_radius * math.sin(r.tilt)
    view, _ = _whole_view(r)
    return Dimension(
        "radius",
        "whole",
        4,
        start=(0.0, 0.0),
        end=(r.side * m.load_line, -m.free_radius),
        direction="vertical",
        line_at=view.on_sheet((edge, 0.0))[0] - 8.0,
        text=f"{{R}} = {r.told.radius}",
        level=_OVER,
    )


def _working(r: _Rocked) -> list[Item]:
    """Return the lever as a sum, below the detail."""
    told = r.told
    lines = (
        f"end play along the axis {{δ}} = {told.end}",
        f"at each pressure centre {{δ|r}} = {{δ}} tan {{α}} = {told.tangent}{told.radial}",
        f"over the spread {{ℓ}} and the radius {{R}}, at the tread {{s}} = 2 {{R}} {{δ|r}}/{{ℓ}} = {told.travel}",
    )
    left, high = _FRAME[0], _FRAME[1] - 12.0
    heading = f"*Slack {r.larger}"
    return [
        Words("heading-magnified", "", 1, at_sheet=(left, _FRAME[3] + 6.0), lines=(heading,), size=2.4),
        Words("heading-lever", "", 4, at_sheet=(left, high), lines=("*From the rows to the tread",), size=2.4),
        Words("working", "", 4, at_sheet=(left, high - 4.8), lines=lines, size=2.2, tone="soft"),
    ]


def _caption(r: _Rocked) -> str:
    _, _, largest = own_end_play(r.results)
    words = [
        f"{plain(r.results.setup.name)}: {r.results.wheel.replace('_', ' ')} wheel off the ground, seen from the rear; "
        f"the slack is {r.larger}, all else to scale.",
        "An example, not a limit: the maker's limit counts. Ball joints and bushings add to what a hand feels.",
    ]
    if largest > 0:
        words.append(f"As given, this bearing has at most {r.length(largest)} of end play.")
    return " ".join(words)


def _description(r: _Rocked) -> str:
    play = r.play
    return (
        f"The raised {r.results.wheel.replace('_', ' ')} wheel of {plain(r.results.setup.name)}, rocked at top and "
        f"bottom. An end play of {r.length(play.end_play)} is a radial play of {r.length(play.radial_play)} at each "
        f"pressure centre; the hub tilts by {format_quantity(play.rocking_angle, 'slope', r.units)} to either side and "
        f"the tread moves {r.length(play.tread_travel)} between pushing and pulling. "
        f"In the drawing the slack is {r.magnification:,.10g} times larger."
    )

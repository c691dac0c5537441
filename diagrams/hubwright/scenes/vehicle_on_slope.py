"""The vehicle or trailer across a slope, from the rear: the line of its weight against the downhill contact.

The view stands plumb: y to the left and z up in real millimetres from the road under the middle of the track.
"""

import math
import textwrap
from dataclasses import dataclass, replace
from typing import Literal

from hubwright.quantities import format_quantity, format_terms
from hubwright.quantities.formatting import MINUS
from hubwright.results.footing import SlopeResult, slope_result
from hubwright.results.model import CaseResult, Results
from hubwright.scenes.case_choice import case_of
from hubwright.scenes.corner_front_outline import rear_outline
from hubwright.scenes.roll_body import RollBody, roll_body
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.small_forces import visible
from hubwright.scenes.vocabulary import (
    AngularDimension,
    Dimension,
    Dot,
    Force,
    Ground,
    Item,
    KeyEntry,
    Label,
    Line,
    Point,
    ScaleBar,
    Scene,
    Step,
    Units,
    View,
    Words,
)
from hubwright.setup.model import SideSlope, TrailerChassis

_WIDTH, _FOOT = 310.0, 30.0
_MIDDLE, _WIDE, _TALL = 116.0, 124.0, 100.0
_ARROWS, _ROW, _TAIL = 27.0, 8.0, 11.0
_WORDS, _LETTERS = 222.0, 38
# of the road: how far its level line goes, and where the arc of the slope stands, between weight and uphill wheel
_LEVEL, _ARC = 0.78, 0.7
_NOTHING = 1e-6


@dataclass(frozen=True)
class OnSlope:
    """A vehicle across a slope, turned so that plumb is up: places [mm], forces [N], angles [rad]."""

    angle: float
    downhill: int  # +1: the left side
    body: RollBody
    footing: SlopeResult
    wheels: str  # what the weight's line must stay inside of

    @classmethod
    def of(cls, results: Results, state: CaseResult) -> "OnSlope":
        """Return the vehicle of a side slope's case."""
        case = results.setup.case(state.name)
        assert isinstance(case, SideSlope)
        body = roll_body(results, state)
        # a trailer goes over about the line from its coupling to its wheel
        trailer = isinstance(results.setup.chassis, TrailerChassis)
        wheels = "line from coupling to downhill wheel" if trailer else "downhill wheels"
        return cls(case.angle, 1 if body.weight.y > 0 else -1, body, slope_result(results), wheels)

    @property
    def way(self) -> Literal["left", "right"]:
        """Return the downhill side."""
        return "left" if self.downhill > 0 else "right"

    @property
    def uphill(self) -> Literal["left", "right"]:
        """Return the other side."""
        return "right" if self.downhill > 0 else "left"

    @property
    def tipping(self) -> float:
        """Return the static slope at which the weight's line meets the downhill contact."""
        return self.footing.tipping[self.way]

    def turned(self, point: Point) -> Point:
        """Return a point or vector of the vehicle's axes in the plumb ones."""
        sine, cosine = self.downhill * math.sin(self.angle), math.cos(self.angle)
        return point[0] * cosine + point[1] * sine, point[1] * cosine - point[0] * sine

    @property
    def centre(self) -> Point:
        """Return the centre of mass."""
        return self.turned((self.body.centre[1], self.body.centre[2]))

    @property
    def foot(self) -> Point:
        """Return where the weight's line meets the road."""
        _, y, z = self.body.centre
        return self.turned((y + self.downhill * z * math.tan(self.angle), 0.0))

    @property
    def contact(self) -> Point:
        """Return the downhill contact beside the centre of mass, of unlike tracks between the two."""
        _, y, z = self.body.centre
        return self.turned((y + self.downhill * z * math.tan(self.tipping), 0.0))

    @property
    def spare(self) -> float:
        """Return how far, level, the weight's line passes inside the downhill contact."""
        return self.downhill * (self.contact[0] - self.foot[0])


@dataclass(frozen=True)
class SlopeWording:
    """The sentences of a vehicle across a slope."""

    on: OnSlope
    units: Units

    def force(self, newtons: float) -> str:
        """Return a force as shown."""
        return format_quantity(newtons, "force", self.units)

    def angle(self, radians: float) -> str:
        """Return an angle as shown."""
        return format_quantity(radians, "angle", self.units)

    @property
    def spare(self) -> str:
        """Return how far inside the weight's line passes, as shown."""
        return format_quantity(self.on.spare / 1e3, "vehicle length", self.units)

    def title(self) -> str:
        """Return the title, made from the two angles and the distance that is left."""
        return (
            f"A side slope of {self.angle(self.on.angle)}: the weight's line passes {self.spare} inside the "
            f"{self.on.wheels}; on {self.angle(self.on.tipping)} nothing of that is left"
        )

    def caption(self) -> str:
        """Return what is drawn, with the warning that an angle of tipping never goes without."""
        return (
            "From the rear, rigid and at rest; the sheet stands plumb. A vehicle tips well before its static angle: "
            "springs, a bump, a turn or a load that shifts are left out. Not a driving limit."
        )

    def sides(self) -> tuple[tuple[str, float], tuple[str, float]]:
        """Return what stands on the downhill and on the uphill wheels together [N]."""
        left = self.on.downhill > 0
        both = (("downhill", self.on.body.summed(left)[0]), ("uphill", self.on.body.summed(not left)[0]))
        (first, one), (second, other) = both
        return (first, math.hypot(*one)), (second, math.hypot(*other))

    def told(self) -> tuple[str, str, str]:
        """Return what downhill side, uphill side and coupling carry, so shown that they make the weight."""
        (_, low), (_, high) = self.sides()
        coupling = self.on.body.coupling
        held = math.copysign(math.hypot(coupling.y, coupling.z), coupling.z)
        on_low, on_high, on_coupling = format_terms([low, high, held], "force", self.units)
        return on_low, on_high, on_coupling.removeprefix(MINUS)

    def description(self) -> str:
        """Return the text alternative."""
        weight, coupling = self.on.body.weight, self.on.body.coupling
        low, high, held = self.told()
        holds = math.hypot(coupling.y, coupling.z) > _NOTHING * abs(weight.z)
        rest = f"The coupling holds {held}. " if holds else ""
        return (
            f"A vehicle from the rear across a slope of {self.angle(self.on.angle)}, its {self.on.way} side downhill. "
            f"Weight {self.force(math.hypot(weight.y, weight.z))}. "
            f"The plumb line through its centre of mass meets the road {self.spare} inside the "
            f"{self.on.wheels}, measured level. The downhill side carries {low}, "
            f"the uphill side {high}. {rest}"
            f"Static tipping angle {self.angle(self.on.tipping)}; it tips well before that, this is no driving limit."
        )

    def steps(self) -> tuple[Step, ...]:
        """Return how the figure is built up."""
        low, high, _ = self.told()
        weight = math.hypot(self.on.body.weight.y, self.on.body.weight.z)
        return (
            Step(
                "Stand it across the slope",
                f"The road falls {self.angle(self.on.angle)} to the {self.on.way}.",
                "isolate",
            ),
            Step("Drop the weight's line", f"{self.force(weight)} act plumb at the centre of mass.", "loads"),
            Step(
                "Let the road answer",
                f"The downhill side carries {low}, the uphill {high}.",
                "reactions",
            ),
            Step("Measure what is left", f"The line passes {self.spare} inside the {self.on.wheels}.", "dimensions"),
            Step(
                "Turn it until nothing is left",
                f"The static angle is {self.angle(self.on.tipping)}; real vehicles tip well before it.",
                "solve",
            ),
        )


def vehicle_on_slope(results: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of the vehicle across a slope with the line of its weight."""
    state = case_of(results, case, ("side_slope",), "a vehicle across a slope")
    on = OnSlope.of(results, state)
    words = SlopeWording(on, units)
    parts = [
        replace(part, rings=tuple(tuple(on.turned(point) for point in ring) for ring in part.rings))
        for part in rear_outline(results, "slope")
    ]
    points = [point for part in parts for ring in part.rings for point in ring]
    ends = [on.turned((y, 0.0)) for y in _road_ends(on, results)]
    across = [point[0] for point in (*points, *ends)]
    high, low = max(point[1] for point in points), min(point[1] for point in (*points, *ends))
    scale = min(drawing_scale(max(across) - min(across), _WIDE)[0], drawing_scale(high - low, _TALL)[0])
    (_, first), (_, second) = words.sides()
    weight = math.hypot(on.body.weight.y, on.body.weight.z)
    per_mm = round_scale(max(max(first, second) / _ARROWS, weight / ((on.centre[1] - on.foot[1]) * scale * 0.9)), 1.0)
    lowest = min(low, *(end[1] for end in _contacts(on))) * scale
    origin = (
        _MIDDLE + (max(across) + min(across)) / 2 * scale,
        _FOOT + 4.0 + _ROW + _TAIL + max(first, second) / per_mm - lowest,
    )
    view = View("slope", origin, scale, per_mm, mirrored=True)
    top = origin[1] + high * scale + 12.0
    items: list[Item] = [
        *parts,
        Ground("ground", view.name, start=ends[0], end=ends[1]),
        *_weight(words, view, weight, high),
        *_road(words, view),
        *_angle(words, view, ends),  # its words give way to those of the forces
        *_spare(words, view),
        *_tipping(words, view, top),
    ]
    return Scene(
        name="vehicle-on-slope",
        title=words.title(),
        caption=words.caption(),
        description=words.description(),
        units=units,
        size=(_WIDTH, top),
        views=(view,),
        items=tuple(items),
        steps=words.steps(),
        scale_bars=(
            ScaleBar(view.name, "length", f"Vehicle 1 : {1 / scale:.0f}"),
            ScaleBar(view.name, "force", "Forces"),
        ),
        key=(KeyEntry("load", "weight"), KeyEntry("reaction", "the road on the wheels")),
        body=on.body.closed(),
    )


def _contacts(on: OnSlope) -> tuple[Point, Point]:
    """Return where the road acts on the downhill and the uphill side."""
    left = on.downhill > 0
    return on.turned((on.body.summed(left)[1], 0.0)), on.turned((on.body.summed(not left)[1], 0.0))


def _road_ends(on: OnSlope, results: Results) -> tuple[float, float]:
    half = max(abs(wheel.y) for wheel in on.body.wheels) + 1.2 * results.wheel_geometry.section_width * 1e3
    return half, -half


def _angle(words: SlopeWording, view: View, ends: list[Point]) -> list[Item]:
    on = words.on
    low, high = (ends[0], ends[1]) if on.downhill > 0 else (ends[1], ends[0])
    reach = _LEVEL * abs(high[0] - low[0])
    level = (low[0] - on.downhill * reach, low[1])
    return [
        Line("line-level", view.name, 4, points=(low, level), style="thin"),
        AngularDimension(
            "dimension-slope",
            view.name,
            4,
            vertex=low,
            start=level,
            end=high,
            radius=_ARC * abs(high[0] - low[0]) * view.scale,
            label=Label((f"{{φ}} = {words.angle(on.angle)}",), on.uphill, size=2.5),
        ),
    ]


def _weight(words: SlopeWording, view: View, weight: float, high: float) -> list[Item]:
    on, at = words.on, words.on.centre
    return [
        Line("weight-line", view.name, 2, points=((at[0], high + 4.0 / view.scale), on.foot), style="centre", level=4),
        Dot("centre-of-mass", view.name, 2, at=at, kind="centre of mass", radius=1.8, level=9),
        Force(
            "force-weight",
            view.name,
            2,
            at=at,
            vector=(0.0, -weight),
            tip_at_point=False,
            label=Label((f"*{{W}} = {words.force(weight)}", "weight"), on.uphill, tone="load"),
            level=6,
        ),
        Dot("foot", view.name, 2, at=on.foot, radius=0.8, tone="load", level=9),
    ]


def _road(words: SlopeWording, view: View) -> list[Item]:
    on = words.on
    items: list[Item] = []
    *told, coupled = words.told()
    for (what, newtons), text, at in zip(words.sides(), told, _contacts(on), strict=True):
        items.append(
            Force(
                f"reaction-{what}",
                view.name,
                3,
                at=at,
                vector=(0.0, newtons),
                role="reaction",
                label=Label((f"*{text}", f"{what} side"), "tail", tone="reaction"),
                level=5,
            )
        )
    coupling = on.body.coupling
    held = math.copysign(math.hypot(coupling.y, coupling.z), coupling.z)
    if abs(held) > _NOTHING * abs(on.body.weight.z):
        label = Label((coupled, "coupling"), on.uphill, tone="reaction", size=2.3, nudge=(0.0, -5.0))
        vector = (0.0, held)
        force = Force(
            "reaction-coupling", view.name, 3, at=(0.0, 0.0), vector=vector, role="reaction", label=label, level=5
        )
        items.append(visible(force, view))
    return items


def _spare(words: SlopeWording, view: View) -> list[Item]:
    on = words.on
    level = (_FOOT + 4.0 + _ROW - view.origin[1]) / view.scale
    return [
        Dimension(
            "dimension-spare",
            view.name,
            4,
            start=(on.foot[0], level),
            end=(on.contact[0], level),
            line_at=_FOOT + 5.0,
            text=words.spare,
        ),
        Line(
            "foot-line",
            view.name,
            4,
            points=(on.foot, (on.foot[0], level)),
            style="thin",
            tone="soft",
        ),
    ]


def _tipping(words: SlopeWording, view: View, top: float) -> list[Item]:
    on = words.on
    lifting = {wheel: angle for wheel, angle in on.footing.lifting.items() if wheel.endswith(on.uphill)}
    name = min(lifting, key=lifting.__getitem__)
    called = " ".join(reversed(name.split("_")))
    first = (f"The {called} wheel lifts first,", f"at about {words.angle(lifting[name])}.")
    top = min(view.on_sheet((0.0, on.centre[1]))[1] + 22.0, top - 8.0)
    lines = (
        *textwrap.wrap(f"when the weight's line meets the {on.wheels}, rigid and at rest.", _LETTERS),
        *(first if len(lifting) > 1 else ()),
        "A vehicle tips well before this angle:",
        "a bump, a turn, soft springs or a load",
        "that shifts is enough. Not a limit to",
        "drive to.",
    )
    heading = f"*Static tipping angle {words.angle(on.tipping)}"
    return [
        Line("tipping-line", view.name, 5, points=(on.contact, on.centre), style="phantom", level=4),
        Dot("contact", view.name, 5, at=on.contact, radius=0.8, level=9),
        Words("words-tipping", "", 5, at_sheet=(_WORDS, top), lines=(heading,), size=2.8),
        Words("words-warning", "", 5, at_sheet=(_WORDS, top - 6.0), lines=lines, size=2.4, tone="soft"),
    ]

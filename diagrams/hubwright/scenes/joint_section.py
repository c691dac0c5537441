"""The wheel joint in section at one stud: clamp force, the planes that must not slip, and friction against demand.

The section's view is in real millimetres as in `wheel_end_section`; the bars' abscissa is newton metres.
"""

from dataclasses import dataclass
from typing import Literal

from hubwright.errors import MissingDataError
from hubwright.quantities import format_quantity, format_range
from hubwright.results.joint import JointCase, JointResult, Scattered, joint_result
from hubwright.results.model import Results
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.shown import Shown
from hubwright.scenes.vocabulary import (
    Bar,
    Column,
    Dot,
    Force,
    Item,
    KeyEntry,
    Label,
    Line,
    Note,
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
from hubwright.scenes.wheel_end_parts.wheel import stud_section
from hubwright.scenes.wheel_end_solids import solids

_WIDTH = 310.0
_FRAME = (74.0, 76.0, 218.0, 150.0)
_COLUMNS = (66.0, 226.0)
_ARROW, _ROOM = 54.0, 24.0  # of the whole clamp force, half of which is one arrow: its tail stands out of the nut
_SEATED = {"nut": 2.2, "head": 1.3}  # mm outside the stud, where they bear; clear of the head's edge
_OUTBOARD = ("wheel", "nut", "stud")  # parts that are named on the wheel's side
_SHARES = (0.12, 0.2, 0.28, 0.36)  # of the frame's height from its foot: where what holds the bearing may be named
_SEEN = 4.0  # sheet millimetres of it that are worth a name
_BARS, _NAMES, _LONGEST = 92.0, 88.0, 150.0
_UPPER, _LOWER, _THICK = 60.0, 49.0, 4.2


@dataclass(frozen=True)
class JointWording(Shown):
    """The sentences of a wheel joint in one case."""

    joint: JointResult
    clamp: Scattered
    capacity: Scattered
    case: JointCase
    name: str
    studs: int
    units: Units
    has_disc: bool = False  # a brake disc lies between hub flange and wheel

    def moment(self, newton_metres: float) -> str:
        """Return a moment as shown."""
        return format_quantity(newton_metres, "moment", self.units)

    @property
    def margin(self) -> str:
        """Return the margin as shown, with its ends by the scatter of the clamp force."""
        found = self.case.margin
        if found is None:
            return "nothing to hold"
        text = f"{found.value:.1f}"
        return text if found.low == found.high else f"{text} ({found.low:.1f} to {found.high:.1f} by the scatter)"

    @property
    def joints(self) -> str:
        """Return how many joints there are, in words."""
        return "one joint" if self.joint.joints == 1 else "two joints in a row, each"

    def title(self) -> str:
        """Return the title, made from demand, capacity and their margin."""
        bare = "" if self.case.margin is None else f", a margin of {self.case.margin.value:.1f}"
        each = "" if self.joint.joints == 1 else " in each of two joints"
        return (
            f"Wheel joint, {self.name}: {self.moment(self.case.demand)} to pass against "
            f"{self.moment(self.capacity.value)} of friction{each}{bare}"
        )

    def caption(self) -> str:
        """Return what is drawn and what the margin does not say."""
        return (
            f"{self.second}{self.beside}A margin compares a model with a model and does not say that a joint holds: "
            "dirt, paint, a wrong seat or a loosened nut are not in it. The vehicle maker's torque and limits come "
            "first."
        )

    @property
    def second(self) -> str:
        """Return what is assumed of the joint that a spacer adds: the file describes one."""
        if self.joint.joints == 1:
            return ""
        return (
            "Of the spacer's own joint the file says nothing: it is counted with the same fasteners, torque and faces. "
            "Drawn with studs through both. "
        )

    @property
    def beside(self) -> str:
        """Return why the face between brake disc and hub is no slip plane of its own.

        What the disc adds there is its weight, which hangs against the road's push and is small, and in braking the
        caliper's force: farther out than the studs, it adds less than the torque that then need not pass.
        """
        if not self.has_disc:
            return ""
        return (
            "The face between brake disc and hub flange, under the same studs, has about as much to pass or less, "
            "and is not counted. "
        )

    def description(self) -> str:
        """Return the text alternative."""
        return (
            f"Section through one of {self.studs} studs. Its nut clamps with {self.force(self.clamp.value)}. "
            f"In the case {self.name} the joint has {self.moment(self.case.demand)} to pass, "
            "shear counted at the stud circle; "
            f"friction of the clamped faces can pass {self.moment(self.capacity.value)} before they slip. "
            f"Margin: {self.margin}. {self.second}{self.beside}".strip()
        )

    def steps(self) -> tuple[Step, ...]:
        """Return how the figure is built up."""
        return (
            Step("Cut through a stud", f"Wheel and hub are held in {self.joints} by {self.studs} studs."),
            Step("Clamp", f"Tightening leaves about {self.force(self.clamp.value)} in each stud."),
            Step("Mark the planes", "Friction passes the load; only after a slip would studs carry it in shear."),
            Step(
                "Compare",
                f"{self.moment(self.case.demand)} to pass, {self.moment(self.capacity.value)} before the faces slip. "
                f"Margin: {self.margin}.",
            ),
        )


def joint_section(results: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of the wheel joint; without a case that of the largest demand.

    Raises `MissingDataError` where the file does not say what friction the joint has.
    """
    parts = assembly(measures(results))
    words = _wording(results, case, units, has_disc=parts.mount.hat > 0)
    view, ratio = _view(parts, results.side, words.clamp.value)
    per_mm = round_scale(max(words.capacity.high, words.case.demand), _LONGEST)
    bars = View("torque", (_BARS, 0.0), 1.0 / per_mm, vertical_per_mm=1.0, heading="What is to pass, and friction")
    carrier = _carrier(parts, view, "knuckle" if results.setup.kind == "vehicle" else "axle", results.side)
    items: list[Item] = [
        *solids(parts, view.name, results.side, "detail"),
        *_clamp(words, parts, view, results.side),
        *_planes(words, parts, view, results.side),
        *_bars(words, bars),
        *_named(parts, view, results.side),
        *carrier,
    ]
    return Scene(
        name="joint-section",
        title=words.title(),
        caption=words.caption(),
        description=words.description(),
        units=units,
        size=(_WIDTH, _FRAME[3] + 8.0),
        views=(view, bars),
        items=tuple(items),
        steps=words.steps(),
        columns=(
            Column("left", _COLUMNS[0], _FRAME[1], _FRAME[3]),
            Column("right", _COLUMNS[1], _FRAME[1], _FRAME[3]),
        ),
        scale_bars=(
            ScaleBar(view.name, "length", f"Section {ratio}"),
            ScaleBar(view.name, "force", "Clamp force"),
        ),
        key=(
            KeyEntry("load", "clamp force"),
            KeyEntry("slip plane", "slip plane"),
            KeyEntry("turning", "clamped parts"),
            *((KeyEntry("fixed", "stands still"),) if carrier else ()),
        ),
    )


def _wording(results: Results, case: str | None, units: Units, *, has_disc: bool) -> JointWording:
    joint, given = joint_result(results), results.setup.joint
    if given is None or joint.clamp is None or joint.capacity is None:
        missing = [key for key in joint.missing if key.startswith("joint") and key != "joint.engagement"]
        raise MissingDataError(result="the section of the wheel joint", missing=missing)
    name = case or max(joint.cases, key=lambda each: joint.cases[each].demand)
    return JointWording(joint, joint.clamp, joint.capacity, joint.cases[name], name, given.studs, units, has_disc)


def _view(parts: Assembly, side: int, clamp: float) -> tuple[View, str]:
    """Return the view with its frame around one stud, and its scale in words."""
    mount = parts.mount
    stud = stud_section(parts.measures, mount)
    x0, y0, x1, y1 = _FRAME
    scale, ratio = drawing_scale(stud.end - stud.start, x1 - x0 - 2 * _ROOM)
    middle = side * (stud.start + stud.end) / 2
    origin = ((x0 + x1) / 2 + middle * scale, (y0 + y1) / 2 - mount.bolt * scale)
    per_mm, heading = round_scale(clamp, _ARROW), "Section at one stud"
    return View("joint", origin, scale, per_mm, mirrored=True, frame=_FRAME, heading=heading), ratio


def _column(outboard: int) -> Literal["left column", "right column"]:
    """Return the column on the side of the sheet to which the y axis points, or the other."""
    return "left column" if outboard > 0 else "right column"


def _clamp(words: JointWording, parts: Assembly, view: View, side: int) -> list[Item]:
    """Return how nut and head press on the clamped parts: half of the force on either side of the stud's axis."""
    m, mount = parts.measures, parts.mount
    text = f"*{{F|c}} = {words.force(words.clamp.value)}"
    scatter = f"{format_range(words.clamp.low, words.clamp.high, 'force', words.units)} by the scatter"
    lines = (
        text,
        "clamp force of one stud,",
        "half on each side",
        *((scatter,) if words.clamp.low < words.clamp.high else ()),
    )
    assert view.newtons_per_mm is not None
    # the nut presses on the seat in the wheel, the head on the back of the flange
    faces = (("nut", stud_section(m, mount).seat, -1), ("head", mount.flange_back, 1))
    items: list[Item] = []
    for name, y, way in faces:
        for place, half in (("above", 1), ("below", -1)):
            z = mount.bolt + half * (mount.stud + _SEATED[name])
            tail = side * (y - way * words.clamp.value / 2 / view.newtons_per_mm / view.scale)
            told = None
            if (name, place) == ("nut", "above"):
                told = Label(lines, _column(side), (tail, z), tone="load", leader_dot=True)
            pressed = (way * side * words.clamp.value / 2, 0.0)
            items.append(
                Force(f"force-{name}-{place}", view.name, 2, at=(side * y, z), vector=pressed, label=told, level=30)
            )
    return items


def _planes(words: JointWording, parts: Assembly, view: View, side: int) -> list[Item]:
    m, z = parts.measures, parts.mount.bolt
    assert view.frame is not None
    half = (view.frame[3] - view.frame[1]) / 2 / view.scale
    beside = z - 0.5 * parts.mount.stud  # off the axis, on which the clamp forces lie
    planes = [m.face] if words.joint.joints == 1 else [m.face, m.wheel_face]
    items: list[Item] = []
    for number, y in enumerate(planes, start=1):
        which = "" if len(planes) == 1 else f" {number} of 2"
        ends = ((side * y, z - half), (side * y, z + half))
        column = _column(side if number == 2 else -side)
        top = Label((f"*slip plane{which}:", "friction passes the load"), column, (side * y, z + 0.88 * half))
        shear = Label((f"shear plane{which}:", "loaded only after a slip"), column, (side * y, beside), size=2.3)
        items += [
            Line(
                f"slip-plane-{number}", view.name, 3, points=ends, style="hidden", tone="reaction", width=0.6, level=28
            ),
            Note(f"label-slip-{number}", view.name, 3, label=top, level=29),
            Dot(f"shear-plane-{number}", view.name, 3, at=(side * y, beside), radius=1.0, level=29),
            Note(f"label-shear-{number}", view.name, 3, label=shear, level=29),
        ]
    if words.has_disc:
        at = (side * parts.mount.flange_front, z + parts.mount.stud + 5.0)  # over the studs' heads
        lines = ("brake disc on hub flange:", "not counted")
        beside_it = Label(lines, _column(-side), at, size=2.3, leader_dot=True)
        items.append(Note("label-disc-face", view.name, 3, label=beside_it, level=29))
    return items


def _bars(words: JointWording, view: View) -> list[Item]:
    capacity, demand = words.capacity, words.case.demand
    span = None if capacity.low == capacity.high else (capacity.low, capacity.high)
    rows: tuple[tuple[str, float, float, Literal["reaction", "load"], tuple[float, float] | None, str], ...] = (
        ("capacity", _UPPER, capacity.value, "reaction", span, "friction before a slip"),
        ("demand", _LOWER, demand, "load", None, f"to pass: {words.name}"),
    )
    items: list[Item] = []
    for name, height, value, tone, ends, text in rows:
        items.append(
            Bar(
                f"bar-{name}",
                view.name,
                4,
                end=value,
                at=height,
                thick=_THICK,
                tone=tone,
                is_open=tone == "reaction",
                span=ends,
                label=Label((text,), "left", size=2.5, nudge=(_NAMES - (_BARS - 1.6), 0.0)),
            )
        )
        far = max((value, *(ends or ())))
        told = Label((f"*{words.moment(value)}",), "right", anchor=(far, height), nudge=(0.8, 0.0))
        items.append(Note(f"label-{name}", view.name, 4, label=told))
    said = "Margin: " + words.margin
    items.append(Words("words-margin", "", 4, at_sheet=(_BARS, _LOWER - 9.0), lines=(f"*{said}",), size=2.5))
    zero = ((0.0, _LOWER - 4.0), (0.0, _UPPER + 4.0))
    items.append(Line("torque-zero", view.name, 4, points=zero, width=0.4, level=5))
    return items


def _named(parts: Assembly, view: View, side: int) -> list[Item]:
    m, mount = parts.measures, parts.mount
    stud = stud_section(m, mount)
    assert view.frame is not None
    half = (view.frame[3] - view.frame[1]) / 2 / view.scale
    # what is seen of them between frame or spigot below and the stud's head and nut above
    below, above = max(mount.spigot, mount.bolt - half + 1.0), mount.bolt - 1.7 * mount.stud
    # where they lie side by side, the nearer one to the words higher: no leader passes another's end
    names = [("hub", (mount.flange_front + mount.flange_back) / 2, 0.85, "hub flange")]
    if m.spacer > 0:
        names.append(("spacer", m.face + m.spacer / 2, 0.45, "spacer"))
    names.append(("wheel", m.wheel_face + 3.0, 0.65, "wheel"))
    if mount.hat > 0:
        names.append(("disc", mount.flange_front + mount.hat / 2, 0.25, "brake disc"))
    places = [(name, y, below + share * (above - below), text) for name, y, share, text in names]
    lower = stud.nut[1]
    places.append(("nut", float(lower[:, 0].max()) - 4.0, float(lower[:, 1].min()) + 0.7, "nut"))  # beyond the arrow
    places.append(("stud", stud.end - 3.5, mount.bolt - 0.5 * mount.stud, "stud"))
    return [_name(view, name, (side * y, z), text, side if name in _OUTBOARD else -side) for name, y, z, text in places]


def _carrier(parts: Assembly, view: View, text: str, side: int) -> list[Item]:
    """Return the name of what holds the bearing, where most of it is within the frame; nothing where none is."""
    assert view.frame is not None
    ring = next((piece.rings[0] for piece in parts.pieces if piece.name == "knuckle"), None)
    if ring is None:
        return []
    low, high = sorted(side * (view.origin[0] - x) / view.scale for x in (view.frame[0] + 2.0, view.frame[2] - 2.0))
    best = 0.0, (0.0, 0.0)
    for share in _SHARES:
        z = (view.frame[1] + share * (view.frame[3] - view.frame[1]) - view.origin[1]) / view.scale
        ends = zip(ring, (*ring[1:], ring[0]), strict=True)
        edges = sorted(y0 + (z - z0) / (z1 - z0) * (y1 - y0) for (y0, z0), (y1, z1) in ends if (z0 > z) != (z1 > z))
        for first, last in zip(edges[::2], edges[1::2], strict=True):
            seen = max(low, float(first)), min(high, float(last))
            best = max(best, (seen[1] - seen[0], ((seen[0] + seen[1]) / 2, z)))
    width, (y, z) = best
    return [_name(view, "carrier", (side * y, z), text, -side)] if width * view.scale > _SEEN else []


def _name(view: View, name: str, at: Point, text: str, outboard: int) -> Note:
    label = Label((text,), _column(outboard), at, "soft", 2.3, leader_dot=True)
    return Note(f"label-part-{name}", view.name, 1, label=label, level=31)

"""All parts of one wheel end in the order in which they are painted, with material and hatching.

Points are (a, r) in millimetres: a outboard of the bearing centre, r up from the spindle axis.
"""

from dataclasses import dataclass, field
from typing import Literal

import numpy as np

from hubwright.scenes.vocabulary import LineStyle, Material, Tone
from hubwright.scenes.wheel_end_parts.bearing import BearingSection, bearing_section
from hubwright.scenes.wheel_end_parts.hub import brake_disc, hub_section, nut_seat, shaft_section
from hubwright.scenes.wheel_end_parts.knuckle import BrokenOff, knuckle_section
from hubwright.scenes.wheel_end_parts.measures import Measures
from hubwright.scenes.wheel_end_parts.mounting import Mounting, mounting
from hubwright.scenes.wheel_end_parts.outlines import Pair, Ring, both_sides, circle
from hubwright.scenes.wheel_end_parts.stub_axle import stub_axle
from hubwright.scenes.wheel_end_parts.tire import TireSection, tire_section
from hubwright.scenes.wheel_end_parts.wheel import WheelSection, spacer_section, stud_section, wheel_section

Extent = Literal["both", "whole"]  # in both views, or in the whole wheel only
Weight = Literal["outline", "fine", "none"]


@dataclass(frozen=True)
class Piece:
    """A solid with its sections above and below the axis."""

    name: str
    rings: tuple[Ring, ...]
    material: Material
    level: float
    hatch: float | None = None
    pitch: float = 1.0  # times the view's own
    edge: Weight = "outline"
    extent: Extent = "both"
    turns: bool = True


@dataclass(frozen=True)
class Stroke:
    """A line on or beyond a part."""

    name: str
    points: Ring
    style: LineStyle
    tone: Tone
    level: float
    extent: Extent = "both"


@dataclass(frozen=True)
class Assembly:
    """The parts, and the sections that labels and dimensions need to find their places."""

    measures: Measures
    mount: Mounting
    bearing: BearingSection
    wheel: WheelSection
    above: TireSection
    below: TireSection
    pieces: tuple[Piece, ...]
    strokes: tuple[Stroke, ...]
    axle_end: float = 0.0  # outboard end of shaft or dust cap
    anchors: dict[str, Pair] = field(default_factory=dict)  # where a leader may point, by part


def assembly(m: Measures) -> Assembly:
    """Return everything that the section of a wheel end shows."""
    b = bearing_section(m.bearing)
    mount = mounting(m, b)
    wheel = wheel_section(m, mount)
    above, below = tire_section(m, loaded=False), tire_section(m, loaded=True)
    pieces, strokes = _beyond(m, wheel, above, below)
    pieces += _tire(above, below)
    strokes += _cords(above, below)
    pieces += _wheel(m, mount, wheel)
    anchors = _anchors(m, mount, b, wheel, above)
    inner: tuple[list[Piece], list[Stroke], dict[str, Pair]]
    inner = _stub_axle(m, b, mount) if m.bearing.outer_turns else _driven_hub(m, b, mount)
    stud = stud_section(m, mount)
    for sign in (1, -1):
        at = sign * mount.bolt
        axis = np.array([(stud.start - 4, at), (stud.end + 4, at)])
        strokes.append(Stroke(f"stud-axis-{'upper' if sign > 0 else 'lower'}", axis, "centre", "soft", 6.2))
    return Assembly(
        measures=m,
        mount=mount,
        bearing=b,
        wheel=wheel,
        above=above,
        below=below,
        pieces=tuple(pieces + inner[0] + _bearing(m, b)),
        strokes=tuple(strokes + inner[1]),
        axle_end=max(float(ring[:, 0].max()) for piece in inner[0] for ring in piece.rings),
        anchors={**anchors, **inner[2]},
    )


def _beyond(
    m: Measures, wheel: WheelSection, above: TireSection, below: TireSection
) -> tuple[list[Piece], list[Stroke]]:
    """Return the half of the wheel behind the cut: pale, thin lines only."""
    y, Rw, R = m.load_line, m.rim_half_width, m.rim_radius
    low = -below.widest
    edges = [
        np.array(
            [
                *((y + s * above.half_width, above.widest), (y + s * above.half_width, low + 0.35 * m.section_height)),
                (y + s * below.half_width, low),
            ]
        )
        for s in (1.0, -1.0)
    ]
    rim = np.array([(y + Rw, R), (y + Rw, -R), (y - Rw, -R), (y - Rw, R)])
    pieces = [
        Piece("tire-beyond", (np.vstack([edges[0], edges[1][::-1]]),), "ghost", 0.2, edge="none", extent="whole"),
        Piece("tire-inside", (above.cavity, below.cavity), "cavity", 0.25, edge="none", extent="whole"),
        Piece("rim-beyond", (rim,), "ghost", 0.4, edge="none", extent="whole"),
    ]
    strokes = [Stroke(f"tire-edge-{i}", e, "hair", "faint", 0.3, "whole") for i, e in enumerate(edges)]
    for i, a in enumerate((y + Rw + 13, y + Rw, y - Rw, y - Rw - 13)):
        strokes.append(Stroke(f"rim-edge-{i}", np.array([(a, R + 8), (a, -R - 8)]), "hair", "faint", 0.5, "whole"))
    for i, a in enumerate(wheel.well):
        line = np.array([(a, wheel.floor), (a, -wheel.floor)])
        strokes.append(Stroke(f"well-edge-{i}", line, "hair", "faint", 0.5, "whole"))
    return pieces, strokes


def _tire(above: TireSection, below: TireSection) -> list[Piece]:
    wires = tuple(circle(at, 0.95, 8) for at in (*above.wires, *below.wires))
    return [
        Piece("tire", (above.ring, below.ring), "rubber", 2.0, extent="whole"),
        Piece("bead-wires", wires, "rubber-2", 2.2, edge="none", extent="whole"),
    ]


def _cords(above: TireSection, below: TireSection) -> list[Stroke]:
    strokes = []
    for place, tire in (("upper", above), ("lower", below)):
        strokes += [
            Stroke(f"belt-{place}-{i}", line, "hidden", "soft", 2.1, "whole") for i, line in enumerate(tire.belts)
        ]
        strokes += [Stroke(f"ply-{place}-{i}", line, "hair", "soft", 2.1, "whole") for i, line in enumerate(tire.ply)]
    return strokes


def _wheel(m: Measures, mount: Mounting, wheel: WheelSection) -> list[Piece]:
    stud = stud_section(m, mount)
    pieces = [
        Piece("wheel-disc", both_sides(wheel.disc), "turning", 3.0, hatch=45),
        Piece("rim", both_sides(wheel.rim), "turning-2", 3.2, hatch=-45, extent="whole"),
    ]
    spacer = spacer_section(m, mount)
    if spacer is not None:
        pieces.append(Piece("spacer", both_sides(spacer), "changed", 3.3, hatch=-45, pitch=0.7))
    disc = brake_disc(m, mount)
    if disc is not None:
        pieces += [
            Piece("disc-vanes", both_sides(disc.vane), "ghost", 2.9, edge="fine"),
            Piece("brake-disc", (*both_sides(disc.hat), *both_sides(disc.inboard)), "turning-2", 3.4, hatch=-45),
        ]
    nuts = (*both_sides(stud.nut[0]), *both_sides(stud.nut[1]))
    return [
        *pieces,
        Piece("studs", both_sides(stud.body), "steel", 6.0),
        Piece("wheel-nuts", nuts, "steel", 6.1),
    ]


def _driven_hub(m: Measures, b: BearingSection, mount: Mounting) -> tuple[list[Piece], list[Stroke], dict[str, Pair]]:
    """Return hub, shaft and knuckle of a bearing whose inner rings turn."""
    shaft = shaft_section(m, b, mount)
    arms = tuple(knuckle_section(b, mount, upper=upper) for upper in (True, False))
    pieces = [
        Piece("knuckle", tuple(arm.ring for arm in arms), "fixed", 4.0, hatch=45, pitch=1.25, turns=False),
        Piece("hub", both_sides(hub_section(b, mount)), "turning", 5.0, hatch=45),
        Piece("shaft", (shaft.ring,), "steel", 5.2),
        Piece("shaft-nut", both_sides(shaft.nut), "steel", 5.4),
    ]
    strokes = _breaks("knuckle", arms)
    if m.driven:
        r = np.linspace(-shaft.bell, shaft.bell, 41)
        s = np.column_stack([shaft.end + 2.4 * np.sin((r / shaft.bell + 1) * np.pi), r])
        strokes.append(Stroke("shaft-break", s, "thin", "ink", 5.3))
    for sign in (1, -1):
        root = sign * (shaft.radius - 1.8)
        line = np.array([(nut_seat(b, mount), root), (shaft.inboard + 3, root)])
        strokes.append(Stroke(f"spline-{sign}", line, "hair", "soft", 5.3))
    anchors: dict[str, Pair] = {
        "knuckle": arms[0].label,
        "shaft": (shaft.inboard - (28 if m.driven else 7), 0.45 * shaft.bell),  # off the axis, as the spindle's
        "hub-spindle": (-0.4 * b.inner_half, -(b.bore + shaft.radius) / 2),
        "hub-flange": ((mount.flange_back + mount.flange_front) / 2, -mount.beside_studs(0.25)),
    }
    return pieces, strokes, anchors


def _stub_axle(m: Measures, b: BearingSection, mount: Mounting) -> tuple[list[Piece], list[Stroke], dict[str, Pair]]:
    """Return hub, spindle and knuckle plate of a bearing whose outer rings turn."""
    s = stub_axle(m, b, mount)
    pieces = [
        Piece("knuckle", tuple(p.ring for p in s.plates), "fixed", 4.0, hatch=45, pitch=1.25, turns=False),
        Piece("hub", both_sides(s.hub), "turning", 5.0, hatch=45),
        # cut lengthwise, so not hatched: its grey says that it stands
        Piece("spindle", (s.spindle,), "fixed-2", 5.2, turns=False),
        Piece("spindle-washer", both_sides(s.washer), "fixed", 5.3, turns=False),
        Piece("spindle-nut", both_sides(s.nut), "fixed", 5.4, turns=False),
        Piece("hub-seal", both_sides(s.seal), "rubber-2", 5.6, edge="none"),
        Piece("dust-cap", both_sides(s.cap), "turning-2", 5.5),
    ]
    barrel = (b.outside + 5, b.outside)
    anchors: dict[str, Pair] = {
        "knuckle": s.plates[0].label,
        # off the axis, along which leaders of forces run
        "spindle": (-b.inner_half - 4, -0.5 * b.bore),
        "hub-barrel": (0.0, -sum(barrel) / 2),
        "hub-flange": ((mount.flange_back + mount.flange_front) / 2, -mount.beside_studs(0.25)),
        "dust-cap": (m.face + mount.proud, b.outside - 1),
    }
    return pieces, _breaks("knuckle", s.plates), anchors


def _breaks(name: str, arms: tuple[BrokenOff, ...]) -> list[Stroke]:
    return [Stroke(f"{name}-break-{i}", arm.break_line, "thin", "ink", 4.2) for i, arm in enumerate(arms)]


def _bearing(m: Measures, b: BearingSection) -> list[Piece]:
    outer_turns = m.bearing.outer_turns
    inner: Material = "fixed" if outer_turns else "turning-2"
    outer: Material = "turning-2" if outer_turns else "fixed-2"
    element = "rollers" if m.bearing.kind == "tapered pair" else "balls"
    pieces = [
        Piece("inner-rings", b.inner_rings, inner, 7.0, hatch=-45, pitch=0.7, turns=not outer_turns),
        Piece("outer-rings", b.outer_rings, outer, 7.1, hatch=-45, pitch=0.7, turns=outer_turns),
        Piece(element, b.all_elements, "ball", 7.3),
    ]
    if b.seals:
        seals = tuple(ring for seal in b.seals for ring in both_sides(seal))
        pieces.insert(2, Piece("seals", seals, "rubber-2", 7.2, edge="none", turns=False))
    return pieces


def _anchors(
    m: Measures, mount: Mounting, b: BearingSection, wheel: WheelSection, above: TireSection
) -> dict[str, Pair]:
    """Return where leaders point on tire, wheel, disc and bearing."""
    y, bearing = m.load_line, m.bearing
    row, pitch = bearing.row_spacing / 2, bearing.pitch / 2
    ring = b.outer[-1]
    inner = b.inner[-1]
    anchors: dict[str, Pair] = {
        "tread": (y + 0.8 * above.tread_half_width, above.tread_radius - 0.05 * m.section_height),
        "sidewall": (y + above.half_width - 4, above.widest),
        "bead": (y + m.rim_half_width - 8, m.rim_radius + 8),
        "rim": (sum(wheel.well) / 2, wheel.floor + 2.75),
        "wheel-disc": (wheel.nave, 0.5 * (mount.bolt + 30 + wheel.floor)),
        "wheel-pad": (m.wheel_face + wheel.thickness / 2, -mount.beside_studs(0.76)),
        "stud": (m.wheel_face + wheel.thickness + 16, mount.bolt),
        "element": (-row - 0.15 * bearing.element, pitch),
        "outer-ring": (
            float(ring[:, 0].min()) + 4 if bearing.kind == "two-row ball" else float(ring[:, 0].mean()),
            b.outside - 2.0,
        ),
        "inner-ring": (float(inner[:, 0].min()) + 4, b.bore + 2.2),
    }
    if b.seals:
        anchors["seal"] = (-b.outer_half + 1.4, pitch + 0.05 * bearing.element)
    if mount.disc_radius:
        anchors["brake-disc"] = (mount.disc_front - 3, -mount.disc_radius + 10)
        anchors["brake-hat"] = (m.face - mount.hat / 2, -mount.beside_studs(0.42))
    if m.spacer > 0:
        anchors["spacer"] = (m.wheel_face - m.spacer / 2, -mount.beside_studs(0.59))
    return anchors

"""Where the wheel-end section stands on its sheet: three views, their scales, columns and rows.

Sheet millimetres, for a left wheel; a right wheel's sheet is the mirror image, so that outboard stays a true side.
"""

import math
from dataclasses import dataclass
from typing import Literal

from hubwright.results.model import CaseResult, FreeBody, Results
from hubwright.scenes.scales import drawing_scale, round_scale, round_up
from hubwright.scenes.vocabulary import Column, Point, View, Words
from hubwright.scenes.wheel_end_parts.assembly import Assembly

WIDTH, HEIGHT = 300.0, 214.0
_FOOT, _TOP = 26.0, 209.0  # above the strip of scales; where the tread ends
_WHEEL_X = 92.0  # the tire's centreline does not wander when the offset changes
_BOX = (136.0, 68.0, 252.0, 188.0)
LENS = (6.0, 23.5, 57.0, 58.0)
LENS_WORDS = 2.1  # cap height in the lens
_LENS_AXIS, _LENS_ARROW = 10.5, 10.0  # of the lens: its axis below its upper edge, and its longest arrow
_LENS_ABOVE = 5.0  # from its axis up to its heading
LABELS_INSIDE = 31.0  # from the detail's outboard edge to the edge of its inner column
_OFF_SHAFT = 1.9  # from that edge to the shaft's end
_OFF_ROAD = 3.0  # from the road up to the words at the contact patch, whose leader comes down to it
_WHOLE_SCALES = ((1, 5), (1, 6), (1, 8), (1, 10))
_DETAIL_SCALES = ((4, 5), (2, 3), (1, 2), (1, 3), (1, 4))
_TIMES = (1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0)
_LENS_SCALES = ((1, 1), (1, 2), (1, 3), (1, 5), (1, 10))
_ROOM = {"contact": 32.0, "bearing": 46.0, "row": 50.0, "side": 30.0}
_LEAST_CONTACT = 15.0  # room below the tire for the arrow of the contact force
BRIDGE = 53.0  # top of the words below the detail
ROWS = (194.0, 200.5, 207.0)  # of dimensions above the detail
SPREAD_ROW = 61.0


@dataclass(frozen=True)
class Layout:
    """The views of one sheet and what hangs on their places."""

    side: int
    whole: View
    detail: View
    lens: View
    whole_ratio: str
    detail_ratio: str
    lens_ratio: str
    lens_factor: float  # how many times longer forces are drawn in the lens
    road: float  # its height
    wheel_x: float
    free: float  # half height of the room between the wheel nuts of the detail
    box: tuple[float, float, float, float]

    def x(self, left: float) -> float:
        """Return a sheet abscissa, mirrored at a right wheel."""
        return left if self.side > 0 else WIDTH - left

    def words(self, name: str, view: str, step: int, at: Point, line: str, size: float = 2.4) -> Words:
        """Return a line of words set from the outboard side of its place."""
        align: Literal["left", "right"] = "left" if self.side > 0 else "right"
        return Words(name, view, step, at_sheet=(self.x(at[0]), at[1]), lines=(line,), size=size, align=align)

    def prose(self, name: str, step: int, at: Point, lines: tuple[str, ...], size: float) -> Words:
        """Return words that read from left to right on either sheet, below the detail."""
        x = at[0] if self.side > 0 else at[0] - (_BOX[0] + _BOX[2] - WIDTH) - 38.0
        return Words(name, "detail", step, at_sheet=(x, at[1]), lines=lines, size=size)

    def column(self, outboard: bool, x: float, low: float, high: float) -> Column:
        """Return a column on the outboard or inboard side of what it labels."""
        left = outboard == (self.side > 0)
        return Column("left" if left else "right", self.x(x), low, high)

    def columns(self) -> tuple[Column, ...]:
        """Return the columns outboard of the wheel, outboard within the detail, and inboard of the detail."""
        x0, y0, x1, y1 = _BOX
        middle = (y0 + y1) / 2
        return (
            self.column(True, 52.0, max(LENS[3] + 4.0, self.road + _OFF_ROAD), _TOP + 1.0),
            self.column(True, x0 + LABELS_INSIDE, middle - self.free, middle + self.free),
            self.column(False, x1 + 4.0, y0, y1 + 4.0),
        )


def layout(
    results: Results,
    state: CaseResult,
    parts: Assembly,
    *,
    force_scale: float | None = None,
    sheet_scale: tuple[int, int] | None = None,
) -> Layout:
    """Return the largest scales of the lists at which everything fits; given ones are kept."""
    side = results.side
    m = parts.measures
    whole, force, ratio = _whole_scale(state, parts, force_scale, sheet_scale)
    height = (m.free_radius + m.loaded_radius) * whole
    arrow = max(abs(state.contact_force.z), 0.0) / force
    slack = _TOP - _FOOT - 1.5 - arrow - height
    ground = _TOP - height - 0.45 * max(slack, 0.0)

    def x(left: float) -> float:
        return left if side > 0 else WIDTH - left

    origin = (x(_WHEEL_X) + m.load_line * whole * side, ground + m.loaded_radius * whole)
    box = _BOX if side > 0 else (WIDTH - _BOX[2], _BOX[1], WIDTH - _BOX[0], _BOX[3])
    outboard, detail, detail_ratio = _detail_window(parts)
    lens = (x(LENS[0]), LENS[1], x(LENS[2]), LENS[3])
    lens_frame = (min(lens[0], lens[2]), lens[1], max(lens[0], lens[2]), lens[3])
    lens_view, factor, lens_ratio = _lens_view(state, parts, force, lens_frame, side)
    return Layout(
        side=side,
        whole=View("whole", origin, whole, newtons_per_mm=force, mirrored=True, heading="Whole wheel"),
        detail=View(
            "detail",
            (x(_BOX[0]) + outboard * detail * side, (_BOX[1] + _BOX[3]) / 2),
            detail,
            newtons_per_mm=force,
            mirrored=True,
            frame=box,
            heading="Detail A, the bearing",
        ),
        lens=lens_view,
        whole_ratio=ratio,
        detail_ratio=detail_ratio,
        lens_ratio=lens_ratio,
        lens_factor=factor,
        road=ground,
        wheel_x=x(_WHEEL_X),
        free=min((parts.mount.bolt - parts.mount.stud - 4.2) * detail - 0.5, 42.0),
        box=box,
    )


def _whole_scale(
    state: CaseResult,
    parts: Assembly,
    force_scale: float | None,
    sheet_scale: tuple[int, int] | None,
) -> tuple[float, float, str]:
    """Return scale, newtons per millimetre and the ratio's text of the whole wheel."""
    m = parts.measures
    choices = (sheet_scale,) if sheet_scale else _WHOLE_SCALES
    for sheet, real in choices:
        scale, ratio = sheet / real, f"{sheet} : {real}"
        room = _TOP - _FOOT - 1.5 - (m.free_radius + m.loaded_radius) * scale
        force = force_scale or _force_scale(state, max(min(room, _ROOM["contact"]), 5.0))
        if room >= _LEAST_CONTACT and state.contact_force.z / force <= room:
            break
    return scale, force, ratio


def _force_scale(state: CaseResult, below: float) -> float:
    """Return the finest round scale at which every arrow has its room."""
    needs = [
        abs(state.contact_force.z) / below,
        abs(state.contact_force.y) / _ROOM["side"],
        abs(state.bearing_force.z) / _ROOM["bearing"],
        abs(state.bearing_force.y) / _ROOM["side"],
    ]
    if state.row_load is not None:
        needs += [abs(row.z) / _ROOM["row"] for row in (state.row_load.outboard, state.row_load.inboard)]
    needs += [abs(single.force.z) / _ROOM["bearing"] for single in state.free_body.forces if single.name == "caliper"]
    return round_scale(max(needs), 1.0)


def _detail_window(parts: Assembly) -> tuple[float, float, str]:
    """Return how far outboard the detail reaches, its scale and how that is written."""
    m, apex = parts.measures, parts.measures.bearing.apex
    least = max(m.wheel_face + 44.0, apex + 16.0, m.load_line + 8.0)
    inboard = max(54.0, apex + 14.0, 8.0 - m.load_line)
    end = max(parts.axle_end, m.wheel_face + parts.wheel.thickness + 1.0)
    for sheet, real in _DETAIL_SCALES:
        scale, text = sheet / real, f"{sheet} : {real}"
        # the words outboard stand clear of the shaft's end and of the wheel
        outboard = max(least, end + (LABELS_INSIDE + _OFF_SHAFT) / scale)
        if (outboard + inboard) * scale <= _BOX[2] - _BOX[0]:
            break
    return outboard, scale, text


def _lens_view(
    state: CaseResult, parts: Assembly, force: float, frame: tuple[float, float, float, float], side: int
) -> tuple[View, float, str]:
    """Return the lens in which small forces at axle height are drawn longer, how many times longer, and its ratio."""
    m = parts.measures
    # the two masses stand in the middle, with room for their words; the bearing centre is still within the frame
    mean, apart = (m.load_line + m.face) / 2, abs(m.load_line - m.face)
    scale, ratio = drawing_scale(max(2 * abs(mean), apart + 16.0), 44.0, _LENS_SCALES)
    on_masses = [single.force for single in state.free_body.forces if single.name.startswith(("weight", "inertia"))]
    room = min(frame[3] - frame[1] - _LENS_AXIS - _words_of_lens(state), _LENS_ARROW)
    small = [abs(component) for force in on_masses for component in (force.y, force.z)]
    small += [reach_of(state.free_body, name) for name in ("wheel", "hub")]
    small += [force.z * room / _LENS_ABOVE for force in on_masses]  # up to the heading there is less room
    factor = _times(room * force / max(max(small, default=1.0), 1e-9))
    middle = (frame[0] + frame[2]) / 2 + side * scale * mean
    origin, heading = (middle, frame[3] - _LENS_AXIS), "Small forces at axle height, on their own scale"
    lens = View("lens", origin, scale, force / factor, mirrored=True, frame=frame, heading=heading)
    return lens, factor, ratio


def _words_of_lens(state: CaseResult) -> float:
    """Return the height of the words below an arrow of the lens: a name and a weight, or the inertia's two lines more.

    Where that is a ring with a cross or a dot, arrows begin below the ring.
    """
    inertia = state.free_body.force("inertia_wheel").force
    least = 1e-6 * state.free_body.largest_component
    lines = 4 if inertia.length > least else 2
    return 1.72 * LENS_WORDS * lines + 1.5 + (1.9 if abs(inertia.x) > least else 0.0)


def _times(most: float) -> float:
    """Return the largest round number of times that is not above a positive one."""
    if most < 1:
        return 1.0 / round_up(1.0 / most)
    decade = 10.0 ** math.floor(math.log10(most))
    return max(step for step in _TIMES if step * decade <= most) * decade


def reach_of(body: FreeBody, name: str) -> float:
    """Return how many newtons the arrows of a mass reach down: its weight, and its inertia after it if that is down."""
    weight, inertia = (body.force(f"{kind}_{name}").force.z for kind in ("weight", "inertia"))
    return max(0.0, -weight) + max(0.0, -inertia)


def fractions(count: int) -> tuple[float, ...]:
    """Return how a contact patch shares its load among arrows: fuller in the middle, adding up to one."""
    places = [(i + 0.5) / count * 2 - 1 for i in range(count)]
    shares = [1 - 0.35 * place**4 for place in places]
    return tuple(share / sum(shares) for share in shares)


def corners(low: Point, high: Point) -> tuple[Point, ...]:
    """Return a rectangle as a closed line."""
    (x0, y0), (x1, y1) = low, high
    return (x0, y0), (x1, y0), (x1, y1), (x0, y1), (x0, y0)

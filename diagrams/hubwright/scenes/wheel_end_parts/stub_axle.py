"""A stub axle: the hub with the outer rings turns around a fixed spindle that carries the inner rings."""

from dataclasses import dataclass

import numpy as np

from hubwright.scenes.wheel_end_parts.bearing import BearingSection
from hubwright.scenes.wheel_end_parts.knuckle import BrokenOff, break_line
from hubwright.scenes.wheel_end_parts.measures import Measures
from hubwright.scenes.wheel_end_parts.mounting import Mounting
from hubwright.scenes.wheel_end_parts.outlines import Pair, Ring, below, rounded, thickened

_WASHER, _NUT = 3.0, 12.0
_PLATE = 14.0


@dataclass(frozen=True)
class StubAxle:
    """Hub barrel, cap and seal (above the axis) that turn; spindle (whole), nut, washer and plate that stand."""

    hub: Ring
    cap: Ring
    seal: Ring
    spindle: Ring
    nut: Ring
    washer: Ring
    plates: tuple[BrokenOff, BrokenOff]
    end: float  # outboard end of the spindle


def stub_axle(m: Measures, b: BearingSection, mount: Mounting) -> StubAxle:
    """Return the parts of a stub axle."""
    outside, bore = b.outside, b.bore
    barrel = outside + 9
    inboard = min(-max(b.outer_half, b.inner_half) - 6, mount.flange_back - 7)
    outboard = m.face + mount.proud
    fi, fo, ro = mount.flange_back, mount.flange_front, mount.flange_radius
    hub = rounded(
        [
            *((inboard, outside), (outboard, outside), (outboard, barrel), (fo, barrel), (fo, ro), (fi, ro)),
            *((fi, barrel + 5), (fi - 6, barrel), (inboard, barrel)),
        ],
        [0.8, 0.6, 2, 0, 1.5, 1.5, 4, 4, 2],
        closed=True,
    )
    collar = bore + 0.6 * (b.shoulder - bore)
    thread = 0.74 * bore
    nut_start = b.inner_half + _WASHER
    end = nut_start + _NUT + 5
    cap = _cap(outboard=outboard, outside=outside, end=max(outboard, end) + 6)
    seal = np.array(
        [
            *((inboard + 0.6, outside), (inboard + 5, outside), (inboard + 5, outside - 3)),
            *(
                (inboard + 3.2, collar + 2),
                (inboard + 4.2, collar),
                (inboard + 1.4, collar),
                (inboard + 1.6, outside - 3),
            ),
        ]
    )
    plate = min(inboard - 6, mount.disc_back - 8) if mount.disc_radius else inboard - 6
    root = collar + 4
    upper = rounded(
        [
            *((end, 0), (end, thread - 2), (end - 2, thread), (b.inner_half - 1, thread), (b.inner_half - 1, bore)),
            *((-b.inner_half, bore), (-b.inner_half, collar), (inboard - 2, collar), (plate + 1, root)),
            *((plate - _PLATE, root), (plate - _PLATE, 0)),
        ],
        [0, 0, 0, 0, 0.5, 0.5, 0.5, 2, 2, 1, 0],
    )
    washer_radius = min(bore + 0.55 * (b.shoulder - bore) + 2, outside - 3)
    nut_radius = min(thread + 9, outside - 5)
    washer = np.array(
        [(b.inner_half, thread), (nut_start, thread), (nut_start, washer_radius), (b.inner_half, washer_radius)]
    )
    nut = rounded(
        [
            *((nut_start, thread), (nut_start + _NUT, thread), (nut_start + _NUT, nut_radius - 2)),
            *((nut_start + _NUT - 2, nut_radius), (nut_start, nut_radius)),
        ],
        [0, 0, 0.5, 0.5, 0.3],
        closed=True,
    )
    top = max(0.9 * mount.disc_radius if mount.disc_radius else 0.0, barrel + 30)
    return StubAxle(
        hub=hub,
        cap=cap,
        seal=seal,
        spindle=np.vstack([upper, below(upper)[::-1]]),
        nut=nut,
        washer=washer,
        plates=(_plate(plate, root, top, upper=True), _plate(plate, root, 0.96 * top, upper=False)),
        end=end,
    )


def _cap(*, outboard: float, outside: float, end: float) -> Ring:
    wall = 1.8
    r = outside - wall / 2
    line = rounded(
        [(outboard - 6, r), (outboard + 2, r), (end - 3, r - 4), (end, 0.6 * r), (end, 0.0)], [0, 1.5, 3, 3, 0]
    )
    return thickened(line, wall)


def _plate(front: float, root: float, top: float, *, upper: bool) -> BrokenOff:
    back = front - _PLATE
    points: list[Pair] = [
        *((front, root), (front, root + 12), (front - 3, root + 18), (front - 3, top), (back + 1, top)),
        *((back + 1, root + 18), (back, root + 12), (back, root)),
    ]
    ring = rounded(points, [0, 3, 3, 0, 0, 3, 3, 0], closed=True)
    edge = break_line((front - 3, top), (back + 1, top))
    label = ((front + back) / 2, (root + top) / 2)
    return BrokenOff(ring, edge, label) if upper else BrokenOff(below(ring), below(edge), (label[0], -label[1]))

"""A tire in section: unloaded above the axle, flattened and bulged below it.

Proportions of section width and height; the bulge is drawn, not computed.
"""

from dataclasses import dataclass

import numpy as np

from hubwright.scenes.wheel_end_parts.measures import Measures
from hubwright.scenes.wheel_end_parts.outlines import Ring, bezier, rounded


@dataclass(frozen=True)
class TireSection:
    """One section of the tire and what lies in its rubber."""

    ring: Ring
    cavity: Ring
    belts: tuple[Ring, ...]
    ply: tuple[Ring, ...]
    wires: tuple[tuple[float, float], ...]
    half_width: float  # at the widest
    widest: float  # radius of the widest place
    tread_half_width: float
    tread_radius: float  # at the middle of the tread


@dataclass(frozen=True)
class _Half:
    """The half profile from the middle of the tread to the bead, u sideways and v up from the rim's seat."""

    outer: Ring
    inner: Ring
    width: float  # half, at the widest
    widest: float
    tread: float  # half width
    shoulder: tuple[float, float]
    height: float
    drop: float  # of the crown at the tread's edge
    crown: float  # thickness under the tread
    groove: float  # depth


def tire_section(m: Measures, *, loaded: bool) -> TireSection:
    """Return the section above the axle, or the loaded one below it."""
    half = _half(m, m.deflection if loaded else 0.0)
    sign = -1.0 if loaded else 1.0

    def place(points: Ring) -> Ring:
        return np.column_stack([points[:, 0] + m.load_line, sign * (m.rim_radius + points[:, 1])])

    other = np.array([-1.0, 1.0])
    ring = np.vstack([half.outer, (half.outer[::-1] * other)[1:], half.inner * other, half.inner[::-1][1:]])
    u = np.linspace(-0.93 * half.tread, 0.93 * half.tread, 31)
    belts = tuple(
        place(np.column_stack([w * u, _crown(half, w * u) - half.groove - d * (half.crown - half.groove)]))
        for w, d in ((1.0, 0.30), (0.93, 0.58))
    )
    Rw, h, w, v = m.rim_half_width, half.height, half.width, half.widest
    ply = np.vstack(
        [
            bezier((Rw - 10, 0.10 * h), (Rw - 4, 0.26 * h), (w - 5, v - 0.22 * h), (w - 5, v)),
            bezier(
                (w - 5, v),
                (w - 5, v + 0.22 * h),
                (half.shoulder[0] + 2, half.shoulder[1] - 0.08 * h),
                (half.tread - 6, h - half.drop - 0.10 * h),
            )[1:],
        ]
    )
    wires = np.array([(Rw - 13 + 2.7 * i, 4.2 + 2.7 * j) for i in range(4) for j in range(3)])
    return TireSection(
        ring=place(ring),
        cavity=place(np.vstack([half.inner, (half.inner[::-1] * other)])),
        belts=belts,
        ply=(place(ply), place(ply * other)),
        wires=tuple((float(a), float(r)) for s in (1.0, -1.0) for a, r in place(wires * np.array([s, 1.0]))),
        half_width=w,
        widest=m.rim_radius + v,
        tread_half_width=half.tread,
        tread_radius=m.rim_radius + h,
    )


def _crown(half: _Half, u: Ring) -> Ring:
    return half.height - half.drop * (u / half.tread) ** 2


def _half(m: Measures, deflection: float) -> _Half:
    SW, H, Rw = m.section_width, m.section_height, m.rim_half_width
    d = min(deflection, 0.7 * H)  # a flatter tire than that is no longer one
    loaded = d > 0
    h = H - d
    width = max(SW / 2, Rw + 8) + min(0.42 * d, 0.16 * SW)
    # a tread wider than the tire's shoulder cannot be drawn: a stretched tire has a narrow one
    tread = min(0.395 * SW + 0.10 * d, width - 12)
    drop = 0.0 if loaded else 0.036 * H
    widest = (0.45 if loaded else 0.50) * h
    flange = min(17.5, 0.4 * h)
    fullness = 0.62 if loaded else 0.46
    crown, groove = 0.092 * H, 0.052 * H
    p1, p2 = (min(Rw + 4.5, width - 2), flange + 3.5), (width, widest)
    shoulder = (tread + 4.5, h - drop - 0.075 * H)
    reach = fullness * (width - shoulder[0]) + 2
    bead = rounded([(Rw - 20, -1.5), (Rw - 1, 0.2), (Rw - 0.4, flange - 5), p1], [0, 3.5, 5, 0])
    side = np.vstack(
        [
            bezier(p1, (p1[0] + 0.38 * (width - p1[0]), p1[1] + min(9, 0.1 * h)), (width, widest - 0.26 * h), p2),
            bezier(p2, (width, widest + 0.25 * h), (shoulder[0] + reach, shoulder[1] - 0.115 * h), shoulder)[1:],
            bezier(
                shoulder,
                (shoulder[0] - 0.26 * reach, shoulder[1] + 0.26 * 0.115 * h),
                (tread + 1.5, h - drop - 0.6),
                (tread - 4, h - drop + (0.0 if loaded else 0.5)),
            )[1:],
        ]
    )
    half = _Half(bead, bead, width, widest, tread, shoulder, h, drop, crown, groove)
    inside = width - 0.038 * SW
    q1, qs = (Rw - 15, 0.13 * h), (tread - 6, h - drop - crown - 0.063 * H)
    lean = 0.30 * (inside - qs[0])
    inner = np.vstack(
        [
            np.array([(Rw - 20, -1.5)]),
            bezier((Rw - 20, 0.03 * h), (Rw - 19, 0.07 * h), (Rw - 17, 0.09 * h), q1),
            bezier(q1, (Rw - 9.5, 0.185 * h), (inside, widest - 0.2 * h), (inside, widest)),
            bezier((inside, widest), (inside, widest + 0.2 * h), (qs[0] + lean, qs[1] - 0.05 * h), qs)[1:],
            bezier(qs, (qs[0] - 0.42 * lean - 4, qs[1] + 0.042 * h), (tread * 0.55, h - crown), (0, h - crown))[1:],
        ]
    )
    outer = np.vstack([bead, side[1:], _tread(half, 0.040 * SW)])
    return _Half(outer, inner, width, widest, tread, shoulder, h, drop, crown, groove)


def _tread(half: _Half, groove_width: float) -> Ring:
    """Return the tread from its edge to its middle with two grooves cut in."""
    w, points = groove_width / 2, []
    grooves = (0.62 * half.tread, 0.21 * half.tread)
    edges = [half.tread - 6, grooves[0] + w, grooves[0] - w, grooves[1] + w, grooves[1] - w, 0.0]
    for left, right in ((0, 1), (2, 3), (4, 5)):
        u = np.linspace(edges[left], edges[right], 8)
        points.append(np.column_stack([u, _crown(half, u)]))
        if right < 5:
            g = edges[right] - w
            floor = float(_crown(half, np.array([g]))[0]) - half.groove
            taper = min(0.9, w / 2)
            points.append(np.array([(g + w - taper, floor), (g - w + taper, floor)]))
    return np.vstack(points)

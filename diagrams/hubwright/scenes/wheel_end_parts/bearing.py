"""The two rows of a bearing in section, back to back: rings, balls or rollers, contact lines.

The contact lines are drawn normal to the raceways through the middles of the rolling elements; that they meet the axis
at half the effective spread follows from the geometry.
"""

from dataclasses import dataclass
from math import cos, sin

import numpy as np

from hubwright.scenes.wheel_end_parts.measures import BearingMeasures
from hubwright.scenes.wheel_end_parts.outlines import Pair, Ring, arc, both_sides, circle, reversed_along
from hubwright.scenes.wheel_end_parts.roller_row import roller_row


@dataclass(frozen=True)
class BearingSection:
    """The bearing above the axis; the sections below are its mirror image."""

    inner: tuple[Ring, ...]  # outboard ring first
    outer: tuple[Ring, ...]
    elements: tuple[Ring, ...]  # outboard first
    seals: tuple[Ring, ...]
    contact_lines: tuple[tuple[Pair, Pair], ...]  # from beyond the outer ring to the axis, outboard first
    contact_points: tuple[Pair, ...]
    bore: float  # radius
    outside: float  # radius
    inner_half: float  # half width over the inner rings
    outer_half: float
    shoulder: float  # radius of the inner ring's shoulder at its outer end

    @property
    def inner_rings(self) -> tuple[Ring, ...]:
        """Inner rings above and below the axis."""
        return tuple(ring for upper in self.inner for ring in both_sides(upper))

    @property
    def outer_rings(self) -> tuple[Ring, ...]:
        """Outer rings above and below the axis."""
        return tuple(ring for upper in self.outer for ring in both_sides(upper))

    @property
    def all_elements(self) -> tuple[Ring, ...]:
        """Balls or rollers above and below the axis."""
        return tuple(ring for upper in self.elements for ring in both_sides(upper))


def bearing_section(b: BearingMeasures) -> BearingSection:
    """Return the section of a two-row ball bearing or of a pair of tapered rows."""
    return _tapered(b) if b.kind == "tapered pair" else _ball(b)


def _contact_line(b: BearingMeasures, through: Pair, reach: float) -> tuple[Pair, Pair]:
    """Return the normal to the raceways through the middle of an element, from above it down to the axis."""
    normal = (sin(b.angle), -cos(b.angle))
    down = through[1] / cos(b.angle)
    return (
        (through[0] - reach * normal[0], through[1] - reach * normal[1]),
        (through[0] + down * normal[0], 0.0),
    )


def _both_ends(line: tuple[Pair, Pair]) -> tuple[tuple[Pair, Pair], tuple[Pair, Pair]]:
    (a0, r0), (a1, r1) = line
    return line, ((-a0, r0), (-a1, r1))


def _ball(b: BearingMeasures) -> BearingSection:
    D, r0, a0 = b.element, b.pitch / 2, b.row_spacing / 2
    s, c = sin(b.angle), cos(b.angle)
    inner_half, outer_half = a0 + 0.775 * D, a0 + 0.62 * D
    # each groove's centre is displaced along the contact line, so that it touches the ball where the line leaves it
    gi, ge = max(b.inner_conformity, 0.505) * D, max(b.outer_conformity, 0.505) * D
    centre_i = (a0 - (gi - D / 2) * s, r0 + (gi - D / 2) * c)
    centre_e = (a0 + (ge - D / 2) * s, r0 - (ge - D / 2) * c)
    inner = _inner_ring(b, centre_i, gi, inner_half)
    outer, low = _outer_ring(b, centre_e, ge, outer_half)
    high = r0 - 0.17 * D
    e = outer_half
    seal = np.array(
        [
            *((e - 3.0, low), (e - 0.3, low), (e - 0.3, low - 0.6), (e - 1.2, high + 1.2), (e - 0.5, high + 0.1)),
            *((e - 2.6, high + 0.1), (e - 2.2, low - 1.2)),
        ]
    )
    line = _contact_line(b, (a0, r0), 0.75 * D)
    points = ((a0 + D / 2 * s, r0 - D / 2 * c), (a0 - D / 2 * s, r0 + D / 2 * c))
    ball = circle((a0, r0), D / 2)
    return BearingSection(
        inner=(inner, reversed_along(inner)),
        outer=(outer,),
        elements=(ball, reversed_along(ball)),
        seals=(seal, reversed_along(seal)),
        contact_lines=_both_ends(line),
        contact_points=(*points, *((-a, r) for a, r in points)),
        bore=b.bore / 2,
        outside=b.outside / 2,
        inner_half=inner_half,
        outer_half=outer_half,
        shoulder=high,
    )


def _on_groove(centre: Pair, radius: float, level: float, side: int) -> float:
    """Return where a groove passes a radius, on one side of its centre."""
    return float(centre[0] + side * np.sqrt(max(radius**2 - (level - centre[1]) ** 2, 0.0)))


def _angle(centre: Pair, a: float, r: float) -> float:
    return float(np.degrees(np.arctan2(r - centre[1], a - centre[0])))


def _inner_ring(b: BearingMeasures, centre: Pair, groove: float, half: float) -> Ring:
    """Return the outboard inner ring: high shoulder outboard, low land where the two rings meet."""
    D, r0, bore = b.element, b.pitch / 2, b.bore / 2
    high, low = r0 - 0.17 * D, r0 - 0.40 * D
    start = _angle(centre, max(_on_groove(centre, groove, low, -1), 0.05), low)
    end = _angle(centre, _on_groove(centre, groove, high, 1), high)
    run = arc(centre, groove, start % 360, end % 360 if end % 360 > start % 360 else end % 360 + 360)
    run[:, 0] = np.maximum(run[:, 0], 0.05)
    return np.vstack(
        [
            np.array([(0.05, bore + 0.6), (0.05, low)]),
            run,
            np.array([(half - 0.6, high), (half, high - 0.6), (half, bore + 0.8), (half - 0.8, bore), (0.6, bore)]),
        ]
    )


def _outer_ring(b: BearingMeasures, centre: Pair, groove: float, half: float) -> tuple[Ring, float]:
    """Return the one-piece outer ring: high shoulder between the rows, low land at the ends."""
    D, r0, outside = b.element, b.pitch / 2, b.outside / 2
    high, low = r0 + 0.17 * D, r0 + 0.385 * D
    start = _angle(centre, _on_groove(centre, groove, high, -1), high) % 360
    end = _angle(centre, _on_groove(centre, groove, low, 1), low) % 360
    run = arc(centre, groove, start, end)
    run[:, 0] = np.maximum(run[:, 0], 0.0)
    right = np.vstack(
        [
            np.array([(0.0, high)]),
            run,
            np.array([(half, low), (half, outside - 0.8), (half - 0.8, outside)]),
        ]
    )
    return np.vstack([right, reversed_along(right[::-1])]), low


def _tapered(b: BearingMeasures) -> BearingSection:
    row = roller_row(b)
    line = _contact_line(b, (b.row_spacing / 2, b.pitch / 2), 0.85 * b.element)
    points = row.contact_points
    return BearingSection(
        inner=(row.cone, reversed_along(row.cone)),
        outer=(row.cup, reversed_along(row.cup)),
        elements=(row.roller, reversed_along(row.roller)),
        seals=(),
        contact_lines=_both_ends(line),
        contact_points=(*points, *((-a, r) for a, r in points)),
        bore=b.bore / 2,
        outside=b.outside / 2,
        inner_half=float(row.cone[:, 0].max()),
        outer_half=float(row.cup[:, 0].max()),
        shoulder=float(row.cone[:, 1].max()),
    )

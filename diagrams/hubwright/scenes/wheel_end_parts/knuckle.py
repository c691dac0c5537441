"""The fixed part that holds the outer rings of a bearing whose inner rings turn; broken off above and below."""

from dataclasses import dataclass

import numpy as np

from hubwright.scenes.wheel_end_parts.bearing import BearingSection
from hubwright.scenes.wheel_end_parts.mounting import Mounting, stud_head
from hubwright.scenes.wheel_end_parts.outlines import Pair, Ring, below, rounded


@dataclass(frozen=True)
class BrokenOff:
    """A part that goes on beyond a break line."""

    ring: Ring
    break_line: Ring
    label: Pair  # a place in its flesh


def knuckle_section(b: BearingSection, mount: Mounting, *, upper: bool) -> BrokenOff:
    """Return the knuckle's ring with one arm, which passes inboard of the brake disc."""
    outside, half = b.outside, b.outer_half
    wall = min(0.38 * outside, 16.0)
    # the studs' heads sweep past the ring's outboard end
    front = max(min(half - 2, stud_head(mount) - 3), -half + 4)
    step = max(min(-half + 12, front - 4), -half + 2)
    lip = -half - 5
    if mount.disc_radius is None:
        inner, top = outside + 1.05 * wall + 6, 0.0
        back = min(stud_head(mount) - 6, -half + 6)
    else:
        inner, top = mount.disc_inner, mount.disc_radius * (0.90 if upper else 0.86)
        back = min(mount.disc_back - 10, -half + 6)
    top = max(top, inner + 34)
    lean, bend = (-14.0 if upper else -8.0), min(26.0, 0.6 * (top - inner))
    points = [
        *((-half, outside), (front, outside), (front, outside + 0.62 * wall), (front - 3, outside + 0.75 * wall)),
        *((step, outside + 1.02 * wall), (back - 1, inner - 2), (back + 0.4 * lean, inner + bend), (back + lean, top)),
        *((back + lean - 22, top), (back + lean - 24, inner + 0.4 * bend), (lip - 16, outside + 1.1 * wall)),
        *((lip - 4, outside + 0.4 * wall), (lip, outside - 5), (-half, outside - 5)),
    ]
    # an arm far inboard must not fold back over the ring's own inboard corner
    if back + lean - 24 > lip - 16:
        points[9] = (min(back + lean - 24, lip - 18), inner + 0.4 * bend)
    ring = rounded(points, [0, 0.6, 2, 2, 8, 9, 10, 0, 0, 14, 10, 6, 1, 0], closed=True)
    edge = break_line((back + lean, top), (back + lean - 22, top))
    label = (back + 0.4 * lean - 10, inner + bend)
    return BrokenOff(ring, edge, label) if upper else BrokenOff(below(ring), below(edge), (label[0], -label[1]))


def break_line(start: Pair, end: Pair) -> Ring:
    """Return the free-hand line at which a part is broken off, a little longer than the part is wide."""
    t = np.linspace(-0.06, 1.06, 25)
    line = np.asarray(start) + (np.asarray(end) - np.asarray(start)) * t[:, None]
    along = np.asarray(end) - np.asarray(start)
    across = np.array([-along[1], along[0]]) / np.hypot(*along)
    wavy: Ring = line + 1.1 * np.sin(15 * t)[:, None] * across
    return wavy

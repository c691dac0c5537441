"""One row of tapered rollers in section: cone, roller and cup, opening outboard."""

from dataclasses import dataclass
from math import atan, cos, sin, tan

import numpy as np
from numpy.typing import NDArray

from hubwright.scenes.wheel_end_parts.measures import BearingMeasures
from hubwright.scenes.wheel_end_parts.outlines import Pair, Ring, rounded

_MIDDLE = 0.05  # rings of the two rows keep this clear of the plane between them


@dataclass(frozen=True)
class RollerRow:
    """The outboard row above the axis."""

    cone: Ring
    cup: Ring
    roller: Ring
    contact_points: tuple[Pair, Pair]


def roller_axis(*, pitch: float, roller: float, cup_angle: float) -> tuple[float, float]:
    """Return the angles of the roller's axis and of its own half taper, in rad.

    Cone, roller and cup roll without sliding when their cones share one tip on the bearing's axis: that fixes the
    taper for a given half cup angle.
    """
    axis = cup_angle
    for _ in range(60):
        axis = cup_angle - atan(roller * sin(axis) / pitch)
    return axis, cup_angle - axis


def roller_row(b: BearingMeasures) -> RollerRow:
    """Return the outboard row, large ends of the rollers outboard."""
    D, half = b.element, b.roller_length / 2
    axis, taper = roller_axis(pitch=b.pitch, roller=D, cup_angle=b.angle)
    centre = np.array([b.row_spacing / 2, b.pitch / 2])
    along, out = np.array([cos(axis), sin(axis)]), np.array([-sin(axis), cos(axis)])

    def at(x: float, share: float) -> NDArray[np.float64]:
        """Return the point x along the roller, at a share of its radius there."""
        point: NDArray[np.float64] = centre + x * along + share * (D / 2 + x * tan(taper)) * out
        return point

    small, large = -half - 0.4, half + 0.4
    roller = rounded([_pair(at(x, s)) for x, s in ((-half, -1), (half, -1), (half, 1), (-half, 1))], 0.8, closed=True)
    cup_in, cup_out = at(-half - 1.5, 1.0), at(half + 2.0, 1.0)
    outside = b.outside / 2
    cup = rounded(
        [_pair(cup_in), _pair(cup_out), (cup_out[0], outside), (cup_in[0], outside)], [0, 0, 0.8, 0.8], closed=True
    )
    rib_small, rib_large = at(small, -0.72), at(large, -0.40)
    bore = b.bore / 2
    end_small, end_large = rib_small[0] - 2.2, rib_large[0] + 0.14 * b.roller_length + 2
    cone = rounded(
        [
            *((end_small, bore), (end_small, rib_small[1]), _pair(rib_small), _pair(at(small, -1.0))),
            *(_pair(at(large, -1.0)), _pair(rib_large), (end_large, rib_large[1]), (end_large, bore)),
        ],
        [0.6, 0.4, 0.3, 0, 0, 0.3, 0.6, 0.8],
        closed=True,
    )
    for ring in (cone, cup):
        ring[:, 0] = np.maximum(ring[:, 0], _MIDDLE)
    normal = np.array([sin(b.angle), -cos(b.angle)])
    cup_contact = centre - normal * D / 2 * cos(taper)
    # the cone's raceway leans by two half tapers less than the cup's
    lean = b.angle - 2 * taper
    cone_contact = centre + D / 2 * cos(taper) * np.array([sin(lean), -cos(lean)])
    return RollerRow(cone, cup, roller, (_pair(cone_contact), _pair(cup_contact)))


def _pair(point: NDArray[np.float64]) -> Pair:
    return float(point[0]), float(point[1])

"""A pressed wheel in section: rim, disc, spacer, studs and nuts."""

from dataclasses import dataclass

import numpy as np

from hubwright.scenes.wheel_end_parts.measures import Measures
from hubwright.scenes.wheel_end_parts.mounting import Mounting
from hubwright.scenes.wheel_end_parts.outlines import Ring, rounded, thickened

_RIM = 5.5  # thickness
_DISC = 6.5
NUT = 19.0  # length of a wheel nut
SEAT = 3.5  # depth of its cone in the wheel disc


@dataclass(frozen=True)
class WheelSection:
    """The wheel above the axle."""

    rim: Ring
    disc: Ring
    well: tuple[float, float]  # inboard and outboard end of the well's floor
    floor: float  # radius of its underside
    nave: float  # the outboard bulge of the disc
    thickness: float


def wheel_section(m: Measures, mount: Mounting) -> WheelSection:
    """Return rim and disc, the disc centred on the hub's spigot."""
    Rw, R, y = m.rim_half_width, m.rim_radius, m.load_line
    depth = min(21.0, 0.11 * R)
    out, inn = 0.46 * Rw, 0.10 * Rw
    points = [
        *((Rw + 13, 8), (Rw + 12, 14.8), (Rw + 2.8, 14.8), (Rw + 2.8, -2.6), (Rw - 21, -4.6), (Rw - 25, -2.6)),
        *((Rw - 29, -5), (out + 8, -7), (out, -depth - 2.8), (inn, -depth - 2.8), (inn - 9, -9), (-Rw + 30, -5)),
        *((-Rw + 25, -2.6), (-Rw + 21, -4.6), (-Rw - 2.8, -2.6), (-Rw - 2.8, 14.8), (-Rw - 12, 14.8), (-Rw - 13, 8)),
    ]
    radii = [0, 5, 6, 5, 4, 3, 4, 6, 6, 6, 6, 8, 3, 4, 5, 6, 5, 0]
    rim = thickened(rounded(points, radii), _RIM) + np.array([y, R])
    floor = R - depth - 2.8 - _RIM / 2
    disc, nave = _disc(m, mount, well=(y + inn, y + out), floor=floor)
    return WheelSection(rim, disc, (y + inn, y + out), floor, nave, _DISC)


def _disc(m: Measures, mount: Mounting, *, well: tuple[float, float], floor: float) -> tuple[Ring, float]:
    """Return the disc from its pad to a flange under the well, wherever the offset puts the well."""
    pad = m.wheel_face + _DISC / 2
    top = floor - _DISC / 2
    room = top - mount.bolt
    shoulder = mount.bolt + min(21.0, 0.25 * room)
    outer, inner = well[1] - 3, well[0] + 6
    nave = max(pad + 15, outer + 9)
    points = [
        *((pad, mount.spigot + 0.6), (pad, shoulder), (nave, shoulder + min(24.0, 0.28 * room))),
        *((nave + 1, top - min(22.0, 0.28 * room)), (outer - 2, top), (inner, top)),
    ]
    return thickened(rounded(points, [0, 12, 16, 16, 9, 0]), _DISC), nave


def spacer_section(m: Measures, mount: Mounting) -> Ring | None:
    """Return the spacer; a thick one carries its own spigot for the wheel and is bored over that of the hub."""
    t, f, spigot = m.spacer, m.face, mount.spigot
    if t <= 0:
        return None
    outer = mount.bolt + mount.stud + 13
    if t < mount.proud + 4:
        return np.array([(f, spigot + 0.5), (f + t, spigot + 0.5), (f + t, outer), (f, outer)])
    inner, bored = spigot - 6, f + mount.proud + 1
    return rounded(
        [
            *((f, spigot + 0.5), (f, outer), (f + t, outer), (f + t, spigot), (f + t + 5, spigot), (f + t + 5, inner)),
            *((bored, inner), (bored, spigot + 0.5)),
        ],
        [0, 1, 1, 0, 1, 1, 1, 0],
        closed=True,
    )


@dataclass(frozen=True)
class StudSection:
    """One stud above the axle with its nut, which a section cuts into two rings."""

    body: Ring
    nut: tuple[Ring, Ring]
    end: float
    start: float
    seat: float  # where the nut's cone begins to bear on the wheel


def stud_section(m: Measures, mount: Mounting) -> StudSection:
    """Return a stud from its head behind the hub's flange to its end beyond the nut."""
    p, r, f = mount.bolt, mount.stud, mount.flange_back
    pad = m.wheel_face + _DISC
    end = pad + NUT + 5
    head = r + 3.5
    body = rounded(
        [
            *((f - 4.5, p - head), (f, p - head), (f, p - r), (end - 2, p - r), (end, p - r + 2), (end, p + r - 2)),
            *((end - 2, p + r), (f, p + r), (f, p + head), (f - 4.5, p + head)),
        ],
        [1, 0, 0, 0, 0, 0, 0, 0, 0, 1],
        closed=True,
    )

    def side(q: float) -> Ring:
        inner, outer = p + q * r, p + q * (r + 4.2)
        cone = p + q * (r + 0.3)
        return rounded(
            [
                *((pad - SEAT, cone), (pad, outer), (pad + NUT - 2, outer), (pad + NUT, p + q * (r + 2))),
                *((pad + NUT, inner), (pad - SEAT, inner)),
            ],
            [0, 0.5, 1, 0, 0, 0],
            closed=True,
        )

    return StudSection(body, (side(1.0), side(-1.0)), end, f - 4.5, pad)

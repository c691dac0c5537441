"""What turns inside the bearing: hub with flange, shaft and nut; and the brake disc on the flange."""

from dataclasses import dataclass

import numpy as np

from hubwright.scenes.wheel_end_parts.bearing import BearingSection
from hubwright.scenes.wheel_end_parts.measures import Measures
from hubwright.scenes.wheel_end_parts.mounting import Mounting
from hubwright.scenes.wheel_end_parts.outlines import Pair, Ring, below, rounded

_NUT = 15.0  # length of the shaft's nut
_VANE = 7.5  # thickness of each half of a ventilated disc


def shaft_radius(b: BearingSection) -> float:
    """Return the radius of the splined shaft in the hub's spindle."""
    return 0.62 * b.bore


def nut_seat(b: BearingSection, mount: Mounting) -> float:
    """Return the face on which the shaft's nut bears."""
    return b.inner_half + (5.0 if mount.cranked else 3.0)


def hub_section(b: BearingSection, mount: Mounting) -> Ring:
    """Return the hub above the axis: spindle through the inner rings, flange, spigot."""
    rs, bore, end = shaft_radius(b), b.bore, b.inner_half
    shoulder, seat = b.shoulder - 0.4, nut_seat(b, mount)
    fi, fo, ro = mount.flange_back, mount.flange_front, mount.flange_radius
    pl = mount.spigot
    spindle: list[Pair] = [(-end + 2, rs), (-end + 2, bore), (end, bore), (end, shoulder)]
    if mount.cranked:
        web, around = end + 2, b.outside + 3
        points = [
            *spindle,
            *((web, shoulder + 1), (web, around), (fi, around), (fi, ro), (fo, ro), (fo, pl)),
            *((web + 8, pl), (web + 8, rs + 11), (seat, rs + 10), (seat, rs)),
        ]
        radii = [1.0, 1, 0, 0, 0, 2, 2, 1.5, 1.5, 0, 3, 2, 1.5, 0]
    else:
        proud = fo + mount.hat + mount.proud
        cone = min(shoulder + 8, ro - 8)
        recess = max(pl - 11, rs + 8.5)
        points = [
            *spindle,
            *((end + 1, shoulder + 1), (fi, cone), (fi, ro), (fo, ro), (fo, pl), (proud, pl), (proud, pl - 6)),
            *((fo - 1, max(pl - 9, recess + 1)), (seat, recess), (seat, rs)),
        ]
        radii = [1.0, 1, 0, 0, 0, 4, 1.5, 1.5, 0, 1.5, 1, 4, 2, 0]
    return rounded(points, radii, closed=True)


@dataclass(frozen=True)
class ShaftSection:
    """The shaft, whole, with its nut above the axis."""

    ring: Ring
    nut: Ring
    end: float
    inboard: float
    bell: float  # radius of the inboard end
    radius: float


def shaft_section(m: Measures, b: BearingSection, mount: Mounting) -> ShaftSection:
    """Return the drive shaft's stub, or the bolt that clamps a hub that is not driven."""
    rs, seat = shaft_radius(b), nut_seat(b, mount)
    inboard = -b.inner_half
    collar = b.bore + 0.45 * (b.shoulder - b.bore)
    start: list[Pair] = [(seat + 24, 0), (seat + 24, rs - 4), (seat + 21, rs - 2.2), (seat + 1, rs - 2.2), (seat, rs)]
    if m.driven:
        bell, end = 0.92 * b.outside, inboard - 62
        rest: list[Pair] = [(inboard, rs), (inboard, collar), (inboard - 6, collar), (inboard - 24, bell), (end, bell)]
        radii = [0.0, 0, 0, 0, 0, 1, 1, 3, 8, 0]
    else:
        bell, end = rs + 7, inboard - 12
        rest = [(inboard, rs), (inboard, collar), (inboard - 3, collar), (inboard - 3, bell), (end, bell)]
        radii = [0.0, 0, 0, 0, 0, 0.3, 0.3, 0, 0, 1]
    upper = rounded([*start, *rest, (end, 0)], [*radii, 0])
    nut = rounded(
        [
            *((seat, rs - 2.2), (seat + _NUT, rs - 2.2), (seat + _NUT, rs + 3), (seat + _NUT - 3, rs + 5.5)),
            *((seat + 2.5, rs + 5.5), (seat + 2.5, rs + 7.5), (seat, rs + 7.5)),
        ],
        [0, 0, 1, 1, 0.3, 0.3, 0.3],
        closed=True,
    )
    return ShaftSection(np.vstack([upper, below(upper)[::-1]]), nut, end, inboard, bell, rs)


@dataclass(frozen=True)
class DiscSection:
    """A ventilated brake disc above the axis: hat with the outboard half, inboard half, a vane between them."""

    hat: Ring
    inboard: Ring
    vane: Ring


def brake_disc(m: Measures, mount: Mounting) -> DiscSection | None:
    """Return the brake disc whose hat is clamped between flange and wheel."""
    if mount.disc_radius is None:
        return None
    out, inn, Rd = mount.disc_front, mount.disc_back, mount.disc_radius
    rh, ri, front = mount.hat_radius, mount.disc_inner, m.face
    half = out - _VANE
    hat = rounded(
        [
            *((front - mount.hat, mount.spigot), (front, mount.spigot), (front, rh), (out, rh + 1.5), (out, Rd)),
            *((half, Rd), (half, ri - 2), (half, rh - 5), (front - mount.hat, rh - 6)),
        ],
        [0, 0.5, 5, 4, 0.8, 0.5, 2, 2, 2],
        closed=True,
    )
    inboard = rounded([(inn, ri), (inn + _VANE, ri), (inn + _VANE, Rd), (inn, Rd)], [0.8, 0.5, 0.5, 0.8], closed=True)
    vane = np.array([(inn + _VANE, ri + 4), (half, ri + 4), (half, Rd - 2), (inn + _VANE, Rd - 2)])
    return DiscSection(hat, inboard, vane)

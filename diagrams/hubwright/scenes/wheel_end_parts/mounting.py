"""Where hub, brake disc and wheel meet: bolt circle, spigot, flange, and the room for a brake disc."""

from dataclasses import dataclass

import numpy as np

from hubwright.scenes.wheel_end_parts.bearing import BearingSection
from hubwright.scenes.wheel_end_parts.measures import Measures

_HAT = 6.0  # thickness of the brake disc's hat between flange and wheel
_WEB = 8.0  # of a hub that reaches around the bearing
_HEAD = 3.5  # of a stud, beyond its shank


@dataclass(frozen=True)
class Mounting:
    """The places of the joint, all outboard of the bearing centre or from the axis."""

    bolt: float  # radius of the bolt circle
    stud: float  # radius
    spigot: float  # radius that centres the wheel
    proud: float  # the spigot beyond the mounting face
    flange_front: float
    flange_back: float
    flange_radius: float
    cranked: bool  # the flange lies beside the bearing, the hub reaches around it
    hat: float  # thickness of the disc's hat, 0 without one
    disc_radius: float | None
    disc_front: float  # friction faces, outboard and inboard
    disc_back: float
    hat_radius: float
    disc_inner: float

    def beside_studs(self, share: float) -> float:
        """Return a radius between spigot and studs, where flange, hat, spacer and wheel disc lie side by side."""
        return self.spigot + share * min(18.0, self.bolt - self.stud - self.spigot)


def mounting(m: Measures, b: BearingSection) -> Mounting:
    """Return the joint's places; the bolt circle gives way to a bearing too large for it, the disc to a small rim."""
    with_disc = _mounting(m, b, m.disc_radius) if m.disc_radius else None
    if with_disc and with_disc.disc_radius and with_disc.disc_radius > with_disc.disc_inner + 14:
        return with_disc
    return _mounting(m, b, None)


def _mounting(m: Measures, b: BearingSection, disc_radius: float | None) -> Mounting:
    hat = _HAT if disc_radius else 0.0
    front = m.face - hat
    thickness = float(np.clip(0.26 * m.face, 8.0, 14.0))
    root = b.inner_half + 2
    stud = m.stud_radius
    cranked = False
    proud = 5.0
    if m.bearing.outer_turns:
        back = front - thickness
        spigot = b.outside + 10
        proud = max(b.outer_half + 8, b.inner_half + 3, m.face + 5) - m.face
    elif front - root >= 7:
        back = max(front - thickness, root)
        spigot = max(min(0.56 * m.bearing.pitch, m.bolt_radius - stud - 12), b.shoulder + 3, 0.62 * b.bore + 16)
    else:
        cranked = True
        back = front - _WEB
        spigot = b.outside + 12
        proud = max(root + _WEB - m.face, 5.0)
    bolt = max(m.bolt_radius, spigot + stud + 9)
    plane = m.disc_plane + 11 if m.disc_plane is not None else 0.48 * m.face
    disc_front = min(plane, back - 3)
    return Mounting(
        bolt=bolt,
        stud=stud,
        spigot=spigot,
        proud=proud,
        flange_front=front,
        flange_back=back,
        flange_radius=bolt + stud + 6.5,
        cranked=cranked,
        hat=hat,
        disc_radius=disc_radius,
        disc_front=disc_front,
        disc_back=disc_front - 22.0,
        hat_radius=bolt + stud + 14.5,
        disc_inner=bolt + stud + 22.5,
    )


def stud_head(mount: Mounting) -> float:
    """Return the inboard end of the studs' heads."""
    return mount.flange_back - 4.5

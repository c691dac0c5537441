"""What a vehicle, trailer or beam file says, as frozen data in plain SI floats.

Lengths in m, masses in kg, forces in N, stiffnesses in N/m, damping in N·s/m, angles in rad,
temperatures in K, pressures in Pa. "Outboard" is away from the vehicle.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import ClassVar, Literal

from hubwright.setup.beam_model import Beam as Beam
from hubwright.setup.beam_model import DistributedLoad as DistributedLoad
from hubwright.setup.beam_model import PointForce as PointForce
from hubwright.setup.beam_model import PointMoment as PointMoment
from hubwright.setup.beam_model import Section as Section
from hubwright.setup.beam_model import Support as Support
from hubwright.setup.case_model import Braking as Braking
from hubwright.setup.case_model import Case as Case
from hubwright.setup.case_model import CaseKind as CaseKind
from hubwright.setup.case_model import Cornering as Cornering
from hubwright.setup.case_model import Driving as Driving
from hubwright.setup.case_model import Drop as Drop
from hubwright.setup.case_model import Ledge as Ledge
from hubwright.setup.case_model import Side as Side
from hubwright.setup.case_model import SideSlope as SideSlope
from hubwright.setup.case_model import Standing as Standing
from hubwright.setup.case_model import TwoWheel as TwoWheel
from hubwright.setup.input_model import Input as Input
from hubwright.setup.input_model import Origin as Origin

WheelEnd = Literal["front", "rear", "both"]
TurningRing = Literal["inner", "outer"]
Contamination = Literal[
    "extreme cleanliness",
    "high cleanliness",
    "normal cleanliness",
    "slight contamination",
    "typical contamination",
    "severe contamination",
    "very severe contamination",
]


@dataclass(frozen=True, slots=True)
class VehicleChassis:
    """Weights and dimensions of a two-axle vehicle, before the gear."""

    front_axle_mass: float
    rear_axle_mass: float
    wheelbase: float
    front_track: float
    rear_track: float
    centre_of_mass_height: float
    front_roll_share: float


@dataclass(frozen=True, slots=True)
class TrailerChassis:
    """Weights and dimensions of a one-axle trailer, before the gear."""

    axle_mass: float
    coupling_mass: float
    coupling_ahead_of_axle: float
    track: float
    centre_of_mass_height: float


@dataclass(frozen=True, slots=True)
class Tire:
    """A tire: nominal or measured dimensions, mass and stiffness."""

    size: str | None  # the code as written, marks included; None where dimensions were given
    free_diameter: float
    section_width: float
    rim_diameter: float
    mass: float
    vertical_stiffness: float | None  # None: the late estimate of `estimates.late_estimates`
    loaded_radius: float | None  # None: from the stiffness, else from the free radius

    @property
    def section_height(self) -> float:
        """Height of the sidewall, from rim diameter to free diameter [m]."""
        return (self.free_diameter - self.rim_diameter) / 2


@dataclass(frozen=True, slots=True)
class Wheel:
    """A wheel: offset positive where the mounting face is outboard of the rim centreline."""

    rim_width: float
    offset: float
    spacer: float
    mass: float


@dataclass(frozen=True, slots=True)
class Hub:
    """What carries the wheel: its face, a disc on the flange counted, outboard of the bearing centre is positive."""

    face_to_bearing_centre: float
    rotating_mass: float


@dataclass(frozen=True, slots=True)
class BallBearing:
    """A two-row angular-contact ball bearing, rows back to back."""

    kind: ClassVar[Literal["two-row ball"]] = "two-row ball"
    turning_ring: TurningRing
    balls_per_row: int
    ball_diameter: float
    pitch_diameter: float
    contact_angle: float
    row_spacing: float
    inner_conformity: float
    outer_conformity: float
    preload: float  # axial approach of each row when unloaded; negative: clearance
    bore: float
    outside_diameter: float
    width: float
    dynamic_rating: float | None  # of the whole bearing; None: computed from geometry
    static_rating: float | None

    @property
    def elements_per_row(self) -> int:
        """Number of balls in one row."""
        return self.balls_per_row

    @property
    def element_diameter(self) -> float:
        """Ball diameter [m]."""
        return self.ball_diameter


@dataclass(frozen=True, slots=True)
class TaperedPair:
    """Two rows of tapered rollers back to back; nothing of it is estimated, so any part may be None."""

    kind: ClassVar[Literal["tapered pair"]] = "tapered pair"
    turning_ring: TurningRing
    rollers_per_row: int | None
    roller_diameter: float | None  # mean
    roller_length: float | None
    pitch_diameter: float | None
    contact_angle: float | None  # half the cup angle
    row_spacing: float | None
    preload: float
    bore: float | None
    outside_diameter: float | None
    width: float | None
    dynamic_rating: float | None
    static_rating: float | None

    @property
    def elements_per_row(self) -> int | None:
        """Number of rollers in one row."""
        return self.rollers_per_row

    @property
    def element_diameter(self) -> float | None:
        """Mean roller diameter [m]."""
        return self.roller_diameter


@dataclass(frozen=True, slots=True)
class Suspension:
    """One corner of the wheel end described; None: the late estimate of `estimates`."""

    wheel_rate: float | None
    bump_damping: float | None
    rebound_damping: float | None
    droop_travel: float
    bump_travel: float
    bump_stop_stiffness: float | None
    unsprung_mass: float | None
    # True: given in the setup's own file, so a heavier tire or wheel is in it already
    unsprung_mass_as_it_stands: bool = False


@dataclass(frozen=True, slots=True)
class Brake:
    """A disc brake; caliper_position from straight up toward the front."""

    effective_radius: float
    caliper_position: float
    disc_to_bearing_centre: float  # outboard positive


@dataclass(frozen=True, slots=True)
class Spindle:
    """The turning or standing spindle, as a round bar."""

    diameter: float


@dataclass(frozen=True, slots=True)
class Thread:
    """A thread as written, with its nominal diameter and pitch."""

    text: str
    diameter: float
    pitch: float


@dataclass(frozen=True, slots=True)
class Joint:
    """The wheel fasteners; None: not stated, the joint check then says what is missing."""

    studs: int
    thread: Thread
    property_class: str
    tightening_torque: float
    stud_circle: float
    nut_factor: float | None
    torque_scatter: float | None
    face_friction: float | None
    engagement: float | None


@dataclass(frozen=True, slots=True)
class Steering:
    """Steering lengths; None: not stated."""

    scrub_radius: float | None
    steering_arm: float | None


@dataclass(frozen=True, slots=True)
class Sealing:
    """What a hub meets at a ford; temperatures are absolute. None: not stated."""

    hub_temperature: float | None
    water_temperature: float | None
    depth: float | None


@dataclass(frozen=True, slots=True)
class Lubrication:
    """Viscosity ratio κ and contamination class of ISO 281. None: not stated."""

    viscosity_ratio: float | None
    contamination: Contamination | None


@dataclass(frozen=True, slots=True)
class Limits:
    """Ratings given by the makers, as masses [kg], and a torque [N·m]. None: not stated."""

    front_axle_rating: float | None = None
    rear_axle_rating: float | None = None
    wheel_rating: float | None = None
    tire_rating: float | None = None
    fastener_torque: float | None = None
    axle_rating: float | None = None  # trailer
    coupling_rating: float | None = None  # trailer


@dataclass(frozen=True, slots=True)
class Gear:
    """A carried item. `behind` counts from the front axle (vehicle) or from the axle (trailer)."""

    name: str
    mass: float
    behind: float  # negative: ahead of that axle
    left_of_centre: float
    above_ground: float


@dataclass(frozen=True, slots=True)
class DutyShare:
    """A case and its share of the distance."""

    case: str  # the name of one of Setup.cases ("brisk corner left")
    share: float


@dataclass(frozen=True, slots=True)
class Setup:
    """A vehicle or trailer as one file (with all it extends) describes it, checked and completed."""

    name: str
    kind: Literal["vehicle", "trailer"]
    stem: str  # the file's name without ".toml"
    wheel_end: WheelEnd  # a trailer's is always "both": it has one axle
    chassis: VehicleChassis | TrailerChassis
    tire: Tire
    wheel: Wheel
    hub: Hub
    bearing: BallBearing | TaperedPair
    suspension: Suspension | None  # None only for a trailer that gives no [suspension]
    brake: Brake | None
    spindle: Spindle | None
    joint: Joint | None
    steering: Steering | None
    sealing: Sealing | None
    lubrication: Lubrication | None
    limits: Limits | None
    gear: tuple[Gear, ...]
    cases: tuple[Case, ...]  # "standing" first; "both" made into two
    duty: tuple[DutyShare, ...]  # shares sum to 1; () where the file gives no duty
    duty_name: str | None  # of a named duty
    inputs: Mapping[str, Input]
    # Tire and wheel that were on the vehicle when the axle masses were taken: those of the root
    # of `extends`, or of the last file in the chain that gives axle masses of its own.
    root_tire_mass: float
    root_wheel_mass: float
    weighed_as_it_stands: bool  # the file itself gives its axle masses: no difference to add
    extends: tuple[str, ...]  # stems of the files extended, nearest first; () for a root
    files: tuple[Path, ...]  # every file read, this one first; () for text without a file
    # What the files said, merged; `vary` starts from it.
    source: object = field(repr=False, compare=False, default=None)

    @property
    def corner_mass_change(self) -> float:
        """Mass that each corner gained by other tires and wheels since it was weighed [kg]."""
        return (self.tire.mass - self.root_tire_mass) + (self.wheel.mass - self.root_wheel_mass)

    def case(self, name: str) -> Case:
        """Return the case of this name."""
        for case in self.cases:
            if case.name == name:
                return case
        raise KeyError(name)

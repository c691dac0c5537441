"""Every key that a vehicle, setup or trailer file can hold: the one table for checks, questions and pages."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, Literal, get_args

from hubwright.quantities import Measured
from hubwright.setup import notations
from hubwright.setup.keys import NOT_NEGATIVE, POSITIVE, SHARE, Bound, Key, Table
from hubwright.setup.model import Contamination, Thread
from hubwright.setup.notations import TireSize

_HALF_TURN = math.pi
_CONFORMITY = Bound(
    "above 0.5 and below 1",
    low=0.5,
    high=1.0,
    low_included=False,
    high_included=False,
    why="A groove as tight as its ball, or tighter, cannot hold it.",
)
_BALL_ANGLE = Bound(
    "from 20 to 45 deg",
    low=math.radians(20) - 1e-9,
    high=math.radians(45) + 1e-9,
    why="The factors of ISO 281 for two rows are tabulated between these.",
)
_ROLLER_ANGLE = Bound("above 0 and below 45 deg", 0.0, math.pi / 4, False, False)
_COUNT = Bound("from 3 to 200", low=3, high=200)


class Head(Table):
    """The keys above all tables."""

    name: Annotated[str | None, Key("what pages call this setup", example="Hill wagon", required=True)] = None
    kind: Annotated[str | None, Key("what it is", choices=("vehicle", "trailer", "beam"), example="vehicle")] = None
    extends: Annotated[str | None, Key("the file that this one changes", example="hill-wagon")] = None
    wheel_end: Annotated[
        str | None, Key("the axle whose hub is described", choices=("front", "rear", "both"), example="front")
    ] = None


class VehicleChassis(Table):
    """[chassis] of a vehicle."""

    front_axle_mass: Annotated[
        Measured | None,
        Key(
            "mass on the front axle, ready to drive, before the gear listed below",
            "mass",
            POSITIVE,
            example="1120 kg",
            required=True,
            find="Public scales, front axle alone on the platform, level, driver aboard.",
            estimate="total mass × front share",
        ),
    ] = None
    rear_axle_mass: Annotated[
        Measured | None,
        Key(
            "mass on the rear axle, ready to drive, before the gear listed below",
            "mass",
            POSITIVE,
            example="1010 kg",
            required=True,
            find="Public scales, rear axle alone on the platform, level, driver aboard.",
            estimate="total mass × (1 − front share)",
        ),
    ] = None
    total_mass: Annotated[
        Measured | None,
        Key(
            "mass of the whole vehicle, instead of the axle masses",
            "mass",
            POSITIVE,
            example="2130 kg",
            find="Public scales, or the papers plus driver and fuel.",
        ),
    ] = None
    front_share: Annotated[
        Measured | None,
        Key(
            "share of the total mass on the front axle",
            "ratio",
            Bound("between 0 and 1", 0.0, 1.0, False, False),
            find="From two weighings.",
            estimate="0.55 ± 0.08",
        ),
    ] = None
    wheelbase: Annotated[
        Measured | None,
        Key(
            "distance from the front to the rear axle",
            "length",
            POSITIVE,
            example="2.78 m",
            required=True,
            find="Tape along the ground from front hub centre to rear hub centre, wheels straight.",
        ),
    ] = None
    front_track: Annotated[
        Measured | None,
        Key(
            "distance between the middles of the front tires",
            "length",
            POSITIVE,
            example="1.60 m",
            required=True,
            find="Tape from the outer edge of one front tire to the inner edge of the other, at the ground.",
        ),
    ] = None
    rear_track: Annotated[
        Measured | None,
        Key(
            "distance between the middles of the rear tires",
            "length",
            POSITIVE,
            example="1.60 m",
            find="As for the front track.",
            estimate="the front track",
        ),
    ] = None
    centre_of_mass_height: Annotated[
        Measured | None,
        Key(
            "height of the centre of mass above the road",
            "length",
            POSITIVE,
            example="0.69 m",
            find="From a published static stability figure. Never lift an axle to find it.",
            estimate="0.39 × overall height, else 0.65 m",
        ),
    ] = None
    static_stability_figure: Annotated[
        Measured | None,
        Key(
            "half the track over the height of the centre of mass",
            "ratio",
            POSITIVE,
            example="1.16",
            find="Published for some vehicles.",
        ),
    ] = None
    overall_height: Annotated[
        Measured | None,
        Key("height of the roof above the road", "length", POSITIVE, example="1.77 m", find="Tape, or the papers."),
    ] = None
    front_roll_share: Annotated[
        Measured | None,
        Key(
            "share of the lateral load transfer that the front axle takes",
            "ratio",
            SHARE,
            estimate="0.55, from 0.45 to 0.65",
        ),
    ] = None


class TrailerChassis(Table):
    """[chassis] of a trailer."""

    axle_mass: Annotated[
        Measured | None,
        Key(
            "mass on the axle, coupled and level, before the gear listed below",
            "mass",
            POSITIVE,
            example="640 kg",
            required=True,
            find="Public scales, the trailer's wheels alone on the platform.",
        ),
    ] = None
    coupling_mass: Annotated[
        Measured | None,
        Key(
            "mass on the coupling, before the gear listed below",
            "mass",
            NOT_NEGATIVE,
            example="60 kg",
            required=True,
            find="A coupling scale, or the difference of two weighings.",
        ),
    ] = None
    coupling_ahead_of_axle: Annotated[
        Measured | None,
        Key(
            "distance from the axle forward to the coupling",
            "length",
            POSITIVE,
            example="2.90 m",
            required=True,
            find="Tape along the ground from hub centre to below the coupling.",
        ),
    ] = None
    track: Annotated[
        Measured | None,
        Key(
            "distance between the middles of the tires",
            "length",
            POSITIVE,
            example="1.55 m",
            required=True,
            find="Tape from the outer edge of one tire to the inner edge of the other, at the ground.",
        ),
    ] = None
    centre_of_mass_height: Annotated[
        Measured | None,
        Key(
            "height of the centre of mass above the road",
            "length",
            POSITIVE,
            example="0.70 m",
            estimate="0.39 × overall height, else 0.65 m",
        ),
    ] = None
    static_stability_figure: Annotated[
        Measured | None,
        Key("half the track over the height of the centre of mass", "ratio", POSITIVE, example="1.10"),
    ] = None
    overall_height: Annotated[
        Measured | None,
        Key("height of the top above the road", "length", POSITIVE, example="1.40 m", find="Tape."),
    ] = None


class Tire(Table):
    """[tire]."""

    size: Annotated[
        TireSize | None,
        Key(
            "size code",
            reader=notations.tire_size,
            example="245/75R16",
            required=True,
            find="On the side of the tire.",
        ),
    ] = None
    free_diameter: Annotated[
        Measured | None,
        Key(
            "diameter of the inflated tire off the ground, instead of a size",
            "length",
            POSITIVE,
            example="774 mm",
            find="Tape around the tread of an unloaded tire, divided by 3.1416.",
        ),
    ] = None
    section_width: Annotated[
        Measured | None,
        Key("width of the tire at its widest", "length", POSITIVE, example="245 mm", find="Calliper or two squares."),
    ] = None
    rim_diameter: Annotated[
        Measured | None,
        Key(
            "nominal diameter of the rim, beside a measured free diameter",
            "length",
            POSITIVE,
            example="16 in",
            find="On the side of the tire.",
            estimate="free diameter − 1.5 × section width, to the inch",
        ),
    ] = None
    mass: Annotated[
        Measured | None,
        Key(
            "mass of the tire alone",
            "mass",
            POSITIVE,
            example="17 kg",
            find="Shipping weight.",
            estimate="200 kg/m³ of the ring between rim and tread",
        ),
    ] = None
    vertical_stiffness: Annotated[
        Measured | None,
        Key(
            "force per deflection of the inflated tire",
            "stiffness",
            POSITIVE,
            example="260 N/mm",
            find="From the loaded radius: standing load over free radius less loaded radius.",
            estimate="from the loaded radius",
        ),
    ] = None
    loaded_radius: Annotated[
        Measured | None,
        Key(
            "ground to wheel centre, standing",
            "length",
            POSITIVE,
            example="370 mm",
            find="Tape from the ground to the hub's centre on firm level ground.",
            estimate="from the stiffness, else 0.93 × free radius",
        ),
    ] = None


class Wheel(Table):
    """[wheel]."""

    rim_width: Annotated[
        Measured | None,
        Key(
            "nominal width between the bead seats",
            "length",
            POSITIVE,
            reader=notations.rim_width,
            example="7 in",
            required=True,
            find="Stamped on the wheel, as in 7J x 16.",
        ),
    ] = None
    offset: Annotated[
        Measured | None,
        Key(
            "mounting face outboard of the rim's centreline: positive",
            "length",
            reader=notations.wheel_offset,
            example="30 mm",
            required=True,
            find="Stamped on the wheel, often as ET30.",
        ),
    ] = None
    backspacing: Annotated[
        Measured | None,
        Key(
            "inner edge of the rim to the mounting face, instead of the offset",
            "length",
            POSITIVE,
            example="133 mm",
            find="Wheel face down on the floor: straightedge over the rim, tape down to the mounting face.",
        ),
    ] = None
    spacer: Annotated[
        Measured | None,
        Key(
            "thickness of a spacer between hub and wheel",
            "length",
            NOT_NEGATIVE,
            example="25 mm",
            find="Stamped on the spacer, or calliper.",
            estimate="none",
        ),
    ] = None
    mass: Annotated[
        Measured | None,
        Key("mass of the wheel alone", "mass", POSITIVE, example="9 kg", find="Shipping weight.", estimate="9 ± 3 kg"),
    ] = None


class Hub(Table):
    """[hub]."""

    face_to_bearing_centre: Annotated[
        Measured | None,
        Key(
            "mounting face outboard of the midplane between the rows: positive",
            "length",
            example="42 mm",
            find="Supplier's drawing, or a replacement unit in the hand. Never dismantle a hub for it.",
            estimate="42 ± 8 mm",
        ),
    ] = None
    rotating_mass: Annotated[
        Measured | None,
        Key(
            "mass of the hub flange and disc that turn with the wheel",
            "mass",
            NOT_NEGATIVE,
            example="14 kg",
            find="Shipping weights of hub and disc.",
            estimate="13 ± 4 kg",
        ),
    ] = None


class _Bearing(Table):
    """What both kinds of bearing have."""

    kind: Annotated[
        str | None,
        Key(
            "kind of bearing",
            choices=("two-row ball", "tapered pair"),
            example="two-row ball",
            find="Supplier's listing.",
            estimate="two-row ball",
        ),
    ] = None
    turning_ring: Annotated[
        str | None,
        Key(
            "the ring that turns with the wheel: outer on a stub axle",
            choices=("inner", "outer"),
            example="inner",
            estimate="inner",
        ),
    ] = None
    bore: Annotated[
        Measured | None,
        Key("bore of the inner ring", "length", POSITIVE, example="42 mm", find="Any listing.", estimate="42 mm"),
    ] = None
    outside_diameter: Annotated[
        Measured | None,
        Key("outside diameter", "length", POSITIVE, example="82 mm", find="Any listing.", estimate="82 mm"),
    ] = None
    width: Annotated[
        Measured | None,
        Key("width over both rows", "length", POSITIVE, example="40 mm", find="Any listing.", estimate="40 mm"),
    ] = None
    pitch_diameter: Annotated[
        Measured | None,
        Key(
            "diameter of the circle through the middles of the balls or rollers",
            "length",
            POSITIVE,
            example="62 mm",
            find="Data sheet.",
            estimate="(outside diameter + bore)/2",
        ),
    ] = None
    row_spacing: Annotated[
        Measured | None,
        Key(
            "distance between the middles of the two rows",
            "length",
            POSITIVE,
            example="24 mm",
            find="Data sheet.",
            estimate="width − 1.24 × ball diameter, ± 4 mm",
        ),
    ] = None
    preload: Annotated[
        Measured | None,
        Key(
            "axial approach of each row when unloaded; negative: clearance",
            "length",
            Bound("within 0.5 mm", -0.5e-3, 0.5e-3),
            example="0 um",
            find="Data sheet.",
            estimate="0 ± 15 µm",
        ),
    ] = None
    dynamic_rating: Annotated[
        Measured | None,
        Key(
            "dynamic load rating of the whole bearing",
            "force",
            POSITIVE,
            example="55 kN",
            find="Any listing.",
            estimate="from the geometry, ± 20 %",
        ),
    ] = None
    static_rating: Annotated[
        Measured | None,
        Key(
            "static load rating of the whole bearing",
            "force",
            POSITIVE,
            example="50 kN",
            find="Any listing.",
            estimate="from the geometry, ± 20 %",
        ),
    ] = None


class BallBearing(_Bearing):
    """[bearing] of kind "two-row ball"."""

    balls_per_row: Annotated[
        Measured | None,
        Key(
            "number of balls in one row", "count", _COUNT, find="Data sheet.", estimate="as many as a cage spaces, ± 1"
        ),
    ] = None
    ball_diameter: Annotated[
        Measured | None,
        Key(
            "ball diameter",
            "length",
            POSITIVE,
            example="12.7 mm",
            find="Data sheet.",
            estimate="0.31 × (outside diameter − bore), ± 6 %",
        ),
    ] = None
    contact_angle: Annotated[
        Measured | None,
        Key(
            "angle of the contact line to the plane of the balls",
            "angle",
            _BALL_ANGLE,
            find="Data sheet.",
            estimate="35 ± 5 deg",
        ),
    ] = None
    inner_conformity: Annotated[
        Measured | None,
        Key("inner groove radius over ball diameter", "ratio", _CONFORMITY, example="0.52", estimate="0.52"),
    ] = None
    outer_conformity: Annotated[
        Measured | None,
        Key("outer groove radius over ball diameter", "ratio", _CONFORMITY, example="0.52", estimate="0.52"),
    ] = None


class TaperedBearing(_Bearing):
    """[bearing] of kind "tapered pair": nothing of it is estimated."""

    rollers_per_row: Annotated[
        Measured | None, Key("number of rollers in one row", "count", _COUNT, example="18", find="Data sheet.")
    ] = None
    roller_diameter: Annotated[
        Measured | None, Key("mean roller diameter", "length", POSITIVE, example="9 mm", find="Data sheet.")
    ] = None
    roller_length: Annotated[
        Measured | None, Key("length of the roller's contact", "length", POSITIVE, example="14 mm", find="Data sheet.")
    ] = None
    contact_angle: Annotated[
        Measured | None, Key("half the cup angle", "angle", _ROLLER_ANGLE, example="14 deg", find="Data sheet.")
    ] = None


class Suspension(Table):
    """[suspension]: one corner of the wheel end described."""

    wheel_rate: Annotated[
        Measured | None,
        Key(
            "force per travel at the wheel",
            "stiffness",
            POSITIVE,
            example="28 N/mm",
            find="A known mass on the corner and a tape.",
            estimate="ride frequency 1.3 Hz, from 1.0 to 1.6 Hz",
        ),
    ] = None
    bump_damping: Annotated[
        Measured | None,
        Key("damping while the wheel moves up", "damping", NOT_NEGATIVE, estimate="damping ratio 0.3, from 0.2 to 0.4"),
    ] = None
    rebound_damping: Annotated[
        Measured | None,
        Key(
            "damping while the wheel moves down",
            "damping",
            NOT_NEGATIVE,
            example="3000 N*s/m",
            estimate="twice the bump damping",
        ),
    ] = None
    droop_travel: Annotated[
        Measured | None,
        Key(
            "travel down from standing to the stop",
            "length",
            NOT_NEGATIVE,
            example="80 mm",
            find="Tape.",
            estimate="80 mm ± 30 %",
        ),
    ] = None
    bump_travel: Annotated[
        Measured | None,
        Key(
            "travel up from standing to the stop",
            "length",
            NOT_NEGATIVE,
            example="80 mm",
            find="Tape.",
            estimate="80 mm ± 30 %",
        ),
    ] = None
    bump_stop_stiffness: Annotated[
        Measured | None,
        Key(
            "stiffness of the stop beyond the bump travel",
            "stiffness",
            NOT_NEGATIVE,
            example="200 N/mm",
            estimate="8 × wheel rate, ± 30 %",
        ),
    ] = None
    unsprung_mass: Annotated[
        Measured | None,
        Key(
            "all that moves with the wheel, wheel and tire included",
            "mass",
            POSITIVE,
            example="52 kg",
            find="Shipping weights.",
            estimate="10 % of the corner, ± 30 %",
        ),
    ] = None


class Brake(Table):
    """[brake]."""

    effective_radius: Annotated[
        Measured | None,
        Key("axle to the middle of the pads", "length", POSITIVE, example="125 mm", required=True, find="Tape."),
    ] = None
    caliper_position: Annotated[
        Measured | None,
        Key(
            "angle of the caliper from straight up toward the front",
            "angle",
            Bound("within a full turn", -2 * _HALF_TURN, 2 * _HALF_TURN),
            example="-90 deg",
            required=True,
            find="Look from the side.",
        ),
    ] = None
    disc_to_bearing_centre: Annotated[
        Measured | None,
        Key(
            "disc's midplane outboard of the bearing centre: positive",
            "length",
            example="25 mm",
            required=True,
            find="Supplier's drawing.",
        ),
    ] = None


class Spindle(Table):
    """[spindle]."""

    diameter: Annotated[
        Measured | None,
        Key("diameter of the spindle", "length", POSITIVE, example="42 mm", required=True, find="Bearing bore."),
    ] = None


class Joint(Table):
    """[joint]: the wheel fasteners."""

    studs: Annotated[
        Measured | None,
        Key("number of studs or bolts", "count", Bound("from 3 to 20", 3, 20), example="6", required=True),
    ] = None
    thread: Annotated[
        Thread | None, Key("thread of the fasteners", reader=notations.thread, example="M14x1.5", required=True)
    ] = None
    property_class: Annotated[
        str | None,
        Key(
            "property class of ISO 898-1",
            reader=notations.property_class,
            example="10.9",
            required=True,
            find="On the head.",
        ),
    ] = None
    tightening_torque: Annotated[
        Measured | None,
        Key(
            "torque of each fastener",
            "moment",
            POSITIVE,
            example="140 N*m",
            required=True,
            find="The maker's handbook.",
        ),
    ] = None
    nut_factor: Annotated[
        Measured | None, Key("torque over clamp force × diameter", "ratio", POSITIVE, example="0.2")
    ] = None
    torque_scatter: Annotated[
        Measured | None,
        Key(
            "scatter of the clamp force, as a share",
            "ratio",
            Bound("from 0 to below 1", 0, 1, True, False),
            example="0.25",
        ),
    ] = None
    stud_circle: Annotated[
        Measured | None,
        Key("diameter of the circle through the studs", "length", POSITIVE, example="140 mm", required=True),
    ] = None
    face_friction: Annotated[
        Measured | None, Key("friction between the clamped faces", "ratio", POSITIVE, example="0.15")
    ] = None
    engagement: Annotated[
        Measured | None, Key("length of thread engaged", "length", POSITIVE, example="18 mm", find="Turns × pitch.")
    ] = None


class Steering(Table):
    """[steering]."""

    scrub_radius: Annotated[
        Measured | None,
        Key("tire's middle outboard of the steering axis at the ground: positive", "length", example="15 mm"),
    ] = None
    steering_arm: Annotated[Measured | None, Key("steering axis to tie rod", "length", POSITIVE, example="130 mm")] = (
        None
    )


_NOT_BELOW_ZERO_KELVIN = Bound("above absolute zero", 0.0, low_included=False)


class Sealing(Table):
    """[sealing]."""

    hub_temperature: Annotated[
        Measured | None,
        Key("hub's temperature before the ford", "temperature", _NOT_BELOW_ZERO_KELVIN, example="70 degC"),
    ] = None
    water_temperature: Annotated[
        Measured | None, Key("water's temperature", "temperature", _NOT_BELOW_ZERO_KELVIN, example="8 degC")
    ] = None
    depth: Annotated[Measured | None, Key("water above the hub's centre", "length", NOT_NEGATIVE, example="0.3 m")] = (
        None
    )


class Lubrication(Table):
    """[lubrication]."""

    viscosity_ratio: Annotated[
        Measured | None, Key("κ of ISO 281", "ratio", Bound("not below 0.1", 0.1), example="1.5")
    ] = None
    contamination: Annotated[
        str | None,
        Key("contamination class of ISO 281", choices=get_args(Contamination), example="normal cleanliness"),
    ] = None


def _rating(meaning: str, example: str) -> Key:
    return Key(meaning, "mass", POSITIVE, example=example, find="The maker's plate or handbook.")


_TORQUE = Key("the maker's torque for the wheel fasteners", "moment", POSITIVE, example="140 N*m")


class VehicleLimits(Table):
    """[limits] of a vehicle."""

    front_axle_rating: Annotated[Measured | None, _rating("most mass on the front axle", "1350 kg")] = None
    rear_axle_rating: Annotated[Measured | None, _rating("most mass on the rear axle", "1600 kg")] = None
    wheel_rating: Annotated[Measured | None, _rating("most mass on one wheel", "900 kg")] = None
    tire_rating: Annotated[Measured | None, _rating("most mass on one tire", "1000 kg")] = None
    fastener_torque: Annotated[Measured | None, _TORQUE] = None


class TrailerLimits(Table):
    """[limits] of a trailer."""

    axle_rating: Annotated[Measured | None, _rating("most mass on the axle", "900 kg")] = None
    coupling_rating: Annotated[Measured | None, _rating("most mass on the coupling", "100 kg")] = None
    wheel_rating: Annotated[Measured | None, _rating("most mass on one wheel", "600 kg")] = None
    tire_rating: Annotated[Measured | None, _rating("most mass on one tire", "600 kg")] = None
    fastener_torque: Annotated[Measured | None, _TORQUE] = None


_ON_CENTRE = Key(
    "distance to the left of the centre line: positive", "length", example="0 m", find="Tape.", estimate="0 m"
)
_ABOVE_GROUND = Key(
    "height of its middle above the road", "length", NOT_NEGATIVE, example="0.75 m", required=True, find="Tape."
)
_GEAR_NAME = Key("what it is", example="Front winch and mount", required=True)
_GEAR_MASS = Key("its mass", "mass", POSITIVE, example="62 kg", required=True, find="Shipping weight or scales.")


class VehicleGear(Table):
    """[[gear]] of a vehicle."""

    name: Annotated[str | None, _GEAR_NAME] = None
    mass: Annotated[Measured | None, _GEAR_MASS] = None
    behind_front_axle: Annotated[
        Measured | None,
        Key(
            "its middle behind the front axle; negative: ahead",
            "length",
            example="-0.72 m",
            required=True,
            find="Tape along the ground.",
        ),
    ] = None
    left_of_centre: Annotated[Measured | None, _ON_CENTRE] = None
    above_ground: Annotated[Measured | None, _ABOVE_GROUND] = None


class TrailerGear(Table):
    """[[gear]] of a trailer."""

    name: Annotated[str | None, _GEAR_NAME] = None
    mass: Annotated[Measured | None, _GEAR_MASS] = None
    behind_axle: Annotated[
        Measured | None,
        Key(
            "its middle behind the axle; negative: ahead",
            "length",
            example="-0.30 m",
            required=True,
            find="Tape along the ground.",
        ),
    ] = None
    left_of_centre: Annotated[Measured | None, _ON_CENTRE] = None
    above_ground: Annotated[Measured | None, _ABOVE_GROUND] = None


_CASE_KINDS = ("standing", "braking", "driving", "cornering", "side_slope", "two_wheel", "ledge", "drop")
_CASE_NAME = Key("what pages call the case", example="brisk corner", required=True)
_CASE_KIND = Key("kind of case", choices=_CASE_KINDS, example="cornering", required=True)
_G = Bound("above zero and at most 2", 0.0, 2.0, low_included=False)
_BOTH = ("both", "left", "right")


class StandingCase(Table):
    """[[case]] of kind "standing"."""

    name: Annotated[str | None, _CASE_NAME] = None
    kind: Annotated[str | None, _CASE_KIND] = None


class BrakingCase(StandingCase):
    """[[case]] of kind "braking"."""

    braking_g: Annotated[
        Measured | None, Key("deceleration over g", "acceleration", _G, example="0.4", required=True)
    ] = None


class DrivingCase(StandingCase):
    """[[case]] of kind "driving"."""

    driving_g: Annotated[
        Measured | None, Key("acceleration over g", "acceleration", _G, example="0.2", required=True)
    ] = None
    driven: Annotated[
        str | None,
        Key("wheels that drive", choices=("front", "rear", "all"), example="all", required=True),
    ] = None


class CorneringCase(StandingCase):
    """[[case]] of kind "cornering"."""

    lateral_g: Annotated[
        Measured | None, Key("lateral acceleration over g", "acceleration", _G, example="0.3", required=True)
    ] = None
    toward: Annotated[
        str | None, Key("side that the bend turns to", choices=_BOTH, example="both", estimate="both")
    ] = None


class SideSlopeCase(StandingCase):
    """[[case]] of kind "side_slope"."""

    angle: Annotated[
        Measured | None,
        Key(
            "angle of the slope across the vehicle",
            "angle",
            Bound("above 0 and below 90 deg", 0.0, math.pi / 2, False, False),
            example="15 deg",
            required=True,
        ),
    ] = None
    uphill: Annotated[str | None, Key("side that points uphill", choices=_BOTH, example="both", estimate="both")] = None


class TwoWheelCase(StandingCase):
    """[[case]] of kind "two_wheel"."""

    supported: Annotated[
        str | None,
        Key(
            "the two wheels that stand",
            choices=("front_left+rear_right", "front_right+rear_left"),
            example="front_left+rear_right",
            required=True,
        ),
    ] = None


class LedgeCase(StandingCase):
    """[[case]] of kind "ledge"."""

    height: Annotated[
        Measured | None, Key("height of the ledge", "length", POSITIVE, example="120 mm", required=True)
    ] = None


class DropCase(StandingCase):
    """[[case]] of kind "drop"."""

    height: Annotated[
        Measured | None, Key("height of the fall", "length", POSITIVE, example="150 mm", required=True)
    ] = None


CASE_TABLES: dict[str, type[StandingCase]] = {
    "standing": StandingCase,
    "braking": BrakingCase,
    "driving": DrivingCase,
    "cornering": CorneringCase,
    "side_slope": SideSlopeCase,
    "two_wheel": TwoWheelCase,
    "ledge": LedgeCase,
    "drop": DropCase,
}


class DutyEntry(Table):
    """[[duty]]."""

    case: Annotated[str | None, Key("name of a case", example="brisk corner", required=True)] = None
    share: Annotated[Measured | None, Key("share of the distance", "ratio", SHARE, example="0.06", required=True)] = (
        None
    )


_SHARED: dict[str, type[Table]] = {
    "tire": Tire,
    "wheel": Wheel,
    "hub": Hub,
    "suspension": Suspension,
    "brake": Brake,
    "spindle": Spindle,
    "joint": Joint,
    "steering": Steering,
    "sealing": Sealing,
    "lubrication": Lubrication,
}
TABLES: dict[Literal["vehicle", "trailer"], dict[str, type[Table]]] = {
    "vehicle": {"chassis": VehicleChassis, **_SHARED, "limits": VehicleLimits},
    "trailer": {"chassis": TrailerChassis, **_SHARED, "limits": TrailerLimits},
}
BEARINGS: dict[str, type[Table]] = {"two-row ball": BallBearing, "tapered pair": TaperedBearing}
GEAR: dict[Literal["vehicle", "trailer"], type[Table]] = {"vehicle": VehicleGear, "trailer": TrailerGear}

# Ways of saying the same thing: a file gives one of each line. Giving one in a setup drops the
# other that its base gave. With "required", one of them must be there.
ALTERNATIVES: tuple[tuple[tuple[str, ...], ...], ...] = (
    (("chassis.front_axle_mass", "chassis.rear_axle_mass"), ("chassis.total_mass", "chassis.front_share")),
    (("tire.size",), ("tire.free_diameter", "tire.section_width", "tire.rim_diameter")),
    (("wheel.offset",), ("wheel.backspacing",)),
    (
        ("chassis.centre_of_mass_height",),
        ("chassis.static_stability_figure",),
        ("chassis.overall_height",),
    ),
)


@dataclass(frozen=True, slots=True)
class KeyReference:
    """One key as a reference page or a question shows it."""

    dotted: str
    key: Key
    table: str


def key_reference(kind: Literal["vehicle", "trailer"] = "vehicle") -> Iterator[KeyReference]:
    """Yield every key of a vehicle or trailer file, in the order of the format."""
    for name, key in Head.keys().items():
        yield KeyReference(name, key, "")
    for table, model in TABLES[kind].items():
        for name, key in model.keys().items():
            yield KeyReference(f"{table}.{name}", key, table)
        if table == "hub":
            for name, key in (BallBearing.keys() | TaperedBearing.keys()).items():
                yield KeyReference(f"bearing.{name}", key, "bearing")
    for name, key in GEAR[kind].keys().items():
        yield KeyReference(f"gear.{name}", key, "gear")
    for model in CASE_TABLES.values():
        for name, key in model.keys().items():
            if name not in ("name", "kind") or model is StandingCase:
                yield KeyReference(f"case.{name}", key, "case")
    for name, key in DutyEntry.keys().items():
        yield KeyReference(f"duty.{name}", key, "duty")

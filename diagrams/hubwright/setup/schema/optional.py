"""The optional tables, each needed only by the lesson or result that uses it."""

from __future__ import annotations

import math
from typing import Annotated, get_args

from hubwright.quantities import Measured
from hubwright.setup import notations
from hubwright.setup.keys import NOT_NEGATIVE, POSITIVE, Bound, Key, Table
from hubwright.setup.model import Contamination, Thread


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
            Bound("within a full turn", -2 * math.pi, 2 * math.pi),
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

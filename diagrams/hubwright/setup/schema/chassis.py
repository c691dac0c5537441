"""[chassis], [limits] and [[gear]]: what the whole vehicle or trailer weighs, measures and carries."""

from __future__ import annotations

from typing import Annotated

from hubwright.quantities import Measured
from hubwright.setup.keys import NOT_NEGATIVE, POSITIVE, SHARE, Bound, Key, Table


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

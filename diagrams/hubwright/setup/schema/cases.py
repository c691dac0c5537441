"""[[case]] of every kind, and [[duty]]."""

from __future__ import annotations

import math
from typing import Annotated

from hubwright.quantities import Measured
from hubwright.setup.keys import POSITIVE, SHARE, Bound, Key, Table

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

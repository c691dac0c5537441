"""[bearing] of either kind."""

from __future__ import annotations

import math
from typing import Annotated

from hubwright.quantities import Measured
from hubwright.setup.keys import POSITIVE, Bound, Key, Table

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

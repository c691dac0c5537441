"""[tire], [wheel], [hub] and [suspension]: the wheel end that a file describes."""

from __future__ import annotations

from typing import Annotated

from hubwright.quantities import Measured
from hubwright.setup import notations
from hubwright.setup.keys import NOT_NEGATIVE, POSITIVE, Key, Table
from hubwright.setup.notations import TireSize


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
            find="Supplier's drawing, or a replacement unit in the hand, with the brake disc in place if it lies "
            "between flange and wheel. Never dismantle a hub for it.",
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

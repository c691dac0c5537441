"""Every key that a vehicle, setup or trailer file can hold: the one table for checks, questions and pages."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, Literal

from hubwright.setup.keys import Key, Table
from hubwright.setup.schema.bearing import BallBearing, TaperedBearing
from hubwright.setup.schema.cases import (
    CASE_TABLES,
    BrakingCase,
    CorneringCase,
    DrivingCase,
    DropCase,
    DutyEntry,
    LedgeCase,
    SideSlopeCase,
    StandingCase,
    TwoWheelCase,
)
from hubwright.setup.schema.chassis import (
    TrailerChassis,
    TrailerGear,
    TrailerLimits,
    VehicleChassis,
    VehicleGear,
    VehicleLimits,
)
from hubwright.setup.schema.optional import Brake, Joint, Lubrication, Sealing, Spindle, Steering
from hubwright.setup.schema.wheel_end import Hub, Suspension, Tire, Wheel

__all__ = [
    "ALTERNATIVES",
    "BEARINGS",
    "CASE_TABLES",
    "GEAR",
    "TABLES",
    "BallBearing",
    "Brake",
    "BrakingCase",
    "CorneringCase",
    "DrivingCase",
    "DropCase",
    "DutyEntry",
    "Head",
    "Hub",
    "Joint",
    "KeyReference",
    "LedgeCase",
    "Lubrication",
    "Sealing",
    "SideSlopeCase",
    "Spindle",
    "StandingCase",
    "Steering",
    "Suspension",
    "TaperedBearing",
    "Tire",
    "TrailerChassis",
    "TrailerGear",
    "TrailerLimits",
    "TwoWheelCase",
    "VehicleChassis",
    "VehicleGear",
    "VehicleLimits",
    "Wheel",
    "key_reference",
]


class Head(Table):
    """The keys above all tables."""

    name: Annotated[str | None, Key("what pages call this setup", example="Hill wagon", required=True)] = None
    kind: Annotated[str | None, Key("what it is", choices=("vehicle", "trailer", "beam"), example="vehicle")] = None
    extends: Annotated[str | None, Key("the file that this one changes", example="hill-wagon")] = None
    wheel_end: Annotated[
        str | None, Key("the axle whose hub is described", choices=("front", "rear", "both"), example="front")
    ] = None


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

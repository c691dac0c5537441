"""From the tables of a document to a complete `Setup`: impossible values refused, missing ones estimated."""

from __future__ import annotations

from typing import Any, cast

from hubwright.errors import SetupErrors
from hubwright.mechanics import wheel_geometry
from hubwright.quantities import Measured
from hubwright.setup import estimates, model, schema
from hubwright.setup.bearings import completed_bearing, refuse_impossible_bearing
from hubwright.setup.cases import read_cases
from hubwright.setup.document import Document
from hubwright.setup.estimates import Estimate
from hubwright.setup.inputs import InputList
from hubwright.setup.keys import Table
from hubwright.setup.tables import Findings, Tables, read_tables


def build_setup(document: Document) -> model.Setup:
    """Return the setup that a merged document describes.

    Raises
    ------
    SetupErrors
        With every problem of the document.
    """
    findings = Findings(document)
    tables = read_tables(findings)
    cases = read_cases(findings, kind=tables.kind)
    _refuse_impossible_tire(tables.tire, findings)
    refuse_impossible_bearing(tables.bearing, findings)
    inputs = InputList(tables.origins)
    if not findings.problems:
        setup = _completed(document, tables, cases, inputs)
        inputs.refuse_unknown_origins(findings)
    if findings.problems:
        raise SetupErrors(findings.ordered())
    return setup


def _completed(document: Document, tables: Tables, cases: Any, inputs: InputList) -> model.Setup:
    head = tables.head
    chassis: model.VehicleChassis | model.TrailerChassis
    if isinstance(tables.chassis, schema.VehicleChassis):
        chassis = _vehicle_chassis(tables.chassis, inputs)
    else:
        chassis = _trailer_chassis(tables.chassis, inputs)
    tire = _tire(tables.tire, inputs)
    wheel = _wheel(tables.wheel, inputs)
    hub = model.Hub(
        inputs.take("hub.face_to_bearing_centre", tables.hub.face_to_bearing_centre, estimates.FACE_TO_BEARING_CENTRE),
        inputs.take("hub.rotating_mass", tables.hub.rotating_mass, estimates.ROTATING_MASS),
    )
    bearing = completed_bearing(tables.bearing, inputs)
    suspension = _suspension(
        tables.suspension, inputs, own=document.base is None or "suspension.unsprung_mass" in document.own
    )
    optional = {name: _optional(name, table, inputs) for name, table in tables.optional.items()}
    gear = tuple(_gear(index, entry, inputs) for index, entry in enumerate(tables.gear, start=1))
    inputs.found.update(cases.inputs)
    weighed_tire, weighed_wheel = _weighed_masses(document, tire.mass, wheel.mass)
    return model.Setup(
        name=str(head.name),
        kind=tables.kind,
        stem=document.stem,
        wheel_end="both" if tables.kind == "trailer" else cast(model.WheelEnd, head.wheel_end or "front"),
        chassis=chassis,
        tire=tire,
        wheel=wheel,
        hub=hub,
        bearing=bearing,
        suspension=suspension,
        brake=optional.get("brake"),
        spindle=optional.get("spindle"),
        joint=optional.get("joint"),
        steering=optional.get("steering"),
        sealing=optional.get("sealing"),
        lubrication=optional.get("lubrication"),
        limits=optional.get("limits"),
        gear=gear,
        cases=cases.cases,
        duty=cases.duty,
        duty_name=cases.duty_name,
        inputs=inputs.found,
        root_tire_mass=weighed_tire,
        root_wheel_mass=weighed_wheel,
        weighed_as_it_stands=document.weighed_as_it_stands,
        extends=document.extends,
        files=document.files,
        source=document,
    )


def _vehicle_chassis(table: schema.VehicleChassis, inputs: InputList) -> model.VehicleChassis:
    if table.total_mass is not None:
        total = inputs.take("chassis.total_mass", table.total_mass)
        share = inputs.take("chassis.front_share", table.front_share, estimates.FRONT_SHARE)
        shared = inputs.found["chassis.front_share"]
        ends = sorted((total * (shared.low or share), total * (shared.high or share))) if shared.has_range else None
        front, rear = total * share, total * (1 - share)
        parents = ("chassis.total_mass", "chassis.front_share")
        for key, value, note in (
            ("chassis.front_axle_mass", front, "total mass × front share"),
            ("chassis.rear_axle_mass", rear, "total mass × (1 − front share)"),
        ):
            low, high = (
                (None, None) if ends is None else (ends if value is front else (total - ends[1], total - ends[0]))
            )
            inputs.derive(key, value, "kg", parents, note, low=low, high=high)
    else:
        front = inputs.take("chassis.front_axle_mass", table.front_axle_mass)
        rear = inputs.take("chassis.rear_axle_mass", table.rear_axle_mass)
    wheelbase = inputs.take("chassis.wheelbase", table.wheelbase)
    front_track = inputs.take("chassis.front_track", table.front_track)
    if table.rear_track is None:
        rear_track = front_track
        inputs.derive(
            "chassis.rear_track", rear_track, "m", ("chassis.front_track",), "as the front track", assumed=True
        )
    else:
        rear_track = inputs.take("chassis.rear_track", table.rear_track)
    return model.VehicleChassis(
        front,
        rear,
        wheelbase,
        front_track,
        rear_track,
        _height(table, (front_track + rear_track) / 2, ("chassis.front_track", "chassis.rear_track"), inputs),
        inputs.take("chassis.front_roll_share", table.front_roll_share, estimates.FRONT_ROLL_SHARE),
    )


def _trailer_chassis(table: schema.TrailerChassis, inputs: InputList) -> model.TrailerChassis:
    track = inputs.take("chassis.track", table.track)
    return model.TrailerChassis(
        inputs.take("chassis.axle_mass", table.axle_mass),
        inputs.take("chassis.coupling_mass", table.coupling_mass),
        inputs.take("chassis.coupling_ahead_of_axle", table.coupling_ahead_of_axle),
        track,
        _height(table, track, ("chassis.track",), inputs),
    )


def _height(
    table: schema.VehicleChassis | schema.TrailerChassis, track: float, tracks: tuple[str, ...], inputs: InputList
) -> float:
    key = "chassis.centre_of_mass_height"
    if table.static_stability_figure is not None:
        figure = inputs.take("chassis.static_stability_figure", table.static_stability_figure)
        given = table.static_stability_figure
        low, high = (
            estimates.height_from_stability_figure(track=track, static_stability_figure=end) if end else None
            for end in (given.high, given.low)
        )
        return inputs.derive(
            key,
            estimates.height_from_stability_figure(track=track, static_stability_figure=figure),
            "m",
            ("chassis.static_stability_figure", *tracks),
            "track over twice the static stability figure",
            low=low,
            high=high,
            telling=("chassis.static_stability_figure",),
        )
    overall = None
    if table.overall_height is not None:
        overall = inputs.take("chassis.overall_height", table.overall_height)
    return inputs.take(key, table.centre_of_mass_height, estimates.centre_of_mass_height(overall_height=overall))


def _tire_dimensions(table: schema.Tire) -> tuple[float, float, float | None]:
    """Return free diameter, section width and rim diameter; the last None where it is not known."""
    if table.size is not None:
        return table.size.free_diameter, table.size.section_width, table.size.rim_diameter
    diameter, width = cast(Measured, table.free_diameter), cast(Measured, table.section_width)
    return diameter.value, width.value, table.rim_diameter.value if table.rim_diameter else None


def _tire(table: schema.Tire, inputs: InputList) -> model.Tire:
    diameter, width, rim = _tire_dimensions(table)
    if table.size is not None:
        inputs.words("tire.size", table.size.text)
        rim = table.size.rim_diameter
    else:
        inputs.take("tire.free_diameter", table.free_diameter)
        inputs.take("tire.section_width", table.section_width)
        rim = inputs.take(
            "tire.rim_diameter",
            table.rim_diameter,
            estimates.rim_diameter(free_diameter=diameter, section_width=width),
        )
    return model.Tire(
        table.size.text if table.size else None,
        diameter,
        width,
        rim,
        inputs.take(
            "tire.mass",
            table.mass,
            estimates.tire_mass(free_diameter=diameter, rim_diameter=rim, section_width=width),
        ),
        inputs.optional("tire.vertical_stiffness", table.vertical_stiffness),
        inputs.optional("tire.loaded_radius", table.loaded_radius),
    )


def _wheel(table: schema.Wheel, inputs: InputList) -> model.Wheel:
    width = inputs.take("wheel.rim_width", table.rim_width)
    if table.backspacing is not None:
        given = table.backspacing
        inputs.take("wheel.backspacing", given)
        offset, low, high = (
            None if value is None else float(wheel_geometry.offset_from_backspacing(rim_width=width, backspacing=value))
            for value in (given.value, given.low, given.high)
        )
        parents = ("wheel.backspacing", "wheel.rim_width")
        offset = inputs.derive(
            "wheel.offset", cast(float, offset), "m", parents, "from the backspacing", low=low, high=high
        )
    else:
        offset = inputs.take("wheel.offset", table.offset)
    none = Estimate(0.0, None, None, "none stated")
    return model.Wheel(
        width,
        offset,
        inputs.take("wheel.spacer", table.spacer, none),
        inputs.take("wheel.mass", table.mass, estimates.WHEEL_MASS),
    )


def _suspension(table: schema.Suspension | None, inputs: InputList, *, own: bool) -> model.Suspension | None:
    if table is None:
        return None
    return model.Suspension(
        inputs.optional("suspension.wheel_rate", table.wheel_rate),
        inputs.optional("suspension.bump_damping", table.bump_damping),
        inputs.optional("suspension.rebound_damping", table.rebound_damping),
        inputs.take("suspension.droop_travel", table.droop_travel, estimates.TRAVEL),
        inputs.take("suspension.bump_travel", table.bump_travel, estimates.TRAVEL),
        inputs.optional("suspension.bump_stop_stiffness", table.bump_stop_stiffness),
        inputs.optional("suspension.unsprung_mass", table.unsprung_mass),
        own and table.unsprung_mass is not None,
    )


_OPTIONAL: dict[str, type[Any]] = {
    "brake": model.Brake,
    "spindle": model.Spindle,
    "joint": model.Joint,
    "steering": model.Steering,
    "sealing": model.Sealing,
    "lubrication": model.Lubrication,
    "limits": model.Limits,
}


def _optional(name: str, table: Table, inputs: InputList) -> Any:
    """Return an optional table as the model of the same name; both have the same keys."""
    values: dict[str, Any] = {}
    for key, entry in type(table).keys().items():
        value = table.value_of(key)
        if isinstance(value, Measured):
            number = inputs.take(f"{name}.{key}", value, unit=entry.unit)
            values[key] = round(number) if entry.dimension == "count" else number
        else:
            values[key] = value
            if value is not None:
                inputs.words(f"{name}.{key}", value.text if isinstance(value, model.Thread) else str(value))
    return _OPTIONAL[name](**values)


def _gear(index: int, table: schema.VehicleGear | schema.TrailerGear, inputs: InputList) -> model.Gear:
    start = f"gear.{index}"
    key = "behind_front_axle" if isinstance(table, schema.VehicleGear) else "behind_axle"
    middle = Estimate(0.0, None, None, "on the centre line, as nothing else is stated")
    return model.Gear(
        str(table.name),
        inputs.take(f"{start}.mass", table.mass),
        inputs.take(f"{start}.{key}", table.value_of(key)),
        inputs.take(f"{start}.left_of_centre", table.left_of_centre, middle),
        inputs.take(f"{start}.above_ground", table.above_ground),
    )


def _weighed_masses(document: Document, tire_mass: float, wheel_mass: float) -> tuple[float, float]:
    """Return tire and wheel mass of the state in which the axle masses were taken."""
    if document.weighed is None:
        return tire_mass, wheel_mass
    weighed = Findings(document.weighed)
    tables = read_tables(weighed)
    if weighed.problems:  # of the base alone; the merged document replaced them
        return tire_mass, wheel_mass
    unseen = InputList({})
    return _tire(tables.tire, unseen).mass, _wheel(tables.wheel, unseen).mass


def _refuse_impossible_tire(table: schema.Tire, findings: Findings) -> None:
    if table.size is None and (table.free_diameter is None or table.section_width is None):
        return
    diameter, width, rim = _tire_dimensions(table)
    free_radius = diameter / 2
    if rim is not None and rim >= diameter:
        findings.add(
            ("tire", "rim_diameter"),
            needed=f"below the free diameter, {diameter * 1000:.0f} mm",
            given=findings.document.get("tire.rim_diameter"),
            repair=schema.Tire.keys()["rim_diameter"].repair,
        )
    if width >= diameter:
        findings.add(
            ("tire", "section_width"),
            needed=f"below the free diameter, {diameter * 1000:.0f} mm",
            given=findings.document.get("tire.section_width"),
            repair=schema.Tire.keys()["section_width"].repair,
        )
    radius = table.loaded_radius
    if radius is not None and max(radius.value, radius.high or 0) > free_radius:
        findings.add(
            ("tire", "loaded_radius"),
            needed=f"at most the free radius, {free_radius * 1000:.0f} mm",
            given=findings.document.get("tire.loaded_radius"),
            repair="A tire carries its load by becoming lower: measure from the ground to the hub's centre.",
        )

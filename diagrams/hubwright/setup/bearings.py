"""Completing a [bearing] table: a ball bearing from its listing or usual sizes, a tapered pair only as given."""

from __future__ import annotations

import math
from typing import cast

from hubwright.quantities import Measured
from hubwright.setup import estimates, model, schema
from hubwright.setup.estimates import Estimate
from hubwright.setup.inputs import InputList
from hubwright.setup.tables import Findings

_LISTING = ("bore", "outside_diameter", "width")
_SIZES = (
    "balls_per_row",
    "ball_diameter",
    "rollers_per_row",
    "roller_diameter",
    "pitch_diameter",
    "row_spacing",
)


def completed_bearing(
    table: schema.BallBearing | schema.TaperedBearing, inputs: InputList
) -> model.BallBearing | model.TaperedPair:
    """Return the bearing with what is estimated of it."""
    ball = isinstance(table, schema.BallBearing)
    inputs.words("bearing.kind", "two-row ball" if ball else "tapered pair", assumed=table.kind is None)
    inputs.words("bearing.turning_ring", table.turning_ring or "inner", assumed=table.turning_ring is None)
    if isinstance(table, schema.BallBearing):
        return _ball_bearing(table, inputs)
    rollers = inputs.optional("bearing.rollers_per_row", table.rollers_per_row)
    return model.TaperedPair(
        turning_ring=cast(model.TurningRing, table.turning_ring or "inner"),
        rollers_per_row=None if rollers is None else round(rollers),
        roller_diameter=inputs.optional("bearing.roller_diameter", table.roller_diameter),
        roller_length=inputs.optional("bearing.roller_length", table.roller_length),
        pitch_diameter=inputs.optional("bearing.pitch_diameter", table.pitch_diameter),
        contact_angle=inputs.optional("bearing.contact_angle", table.contact_angle),
        row_spacing=inputs.optional("bearing.row_spacing", table.row_spacing),
        preload=inputs.take("bearing.preload", table.preload, Estimate(0.0, None, None, "none stated")),
        bore=inputs.optional("bearing.bore", table.bore),
        outside_diameter=inputs.optional("bearing.outside_diameter", table.outside_diameter),
        width=inputs.optional("bearing.width", table.width),
        dynamic_rating=inputs.optional("bearing.dynamic_rating", table.dynamic_rating),
        static_rating=inputs.optional("bearing.static_rating", table.static_rating),
    )


def _ball_bearing(table: schema.BallBearing, inputs: InputList) -> model.BallBearing:
    balls, diameter, pitch, spacing = _internals(table)
    bore, outside, width = _listing(table, diameter.value, pitch.value, spacing.value)
    for key, value in zip(_LISTING, (bore, outside, width), strict=True):
        given = table.value_of(key)
        if given is not None:
            inputs.take(f"bearing.{key}", given)
        elif _listing_acts(table, key):
            inputs.take(f"bearing.{key}", None, Estimate(value, None, None, "usual hub bearing"))
    return model.BallBearing(
        turning_ring=cast(model.TurningRing, table.turning_ring or "inner"),
        balls_per_row=round(inputs.take("bearing.balls_per_row", table.balls_per_row, balls)),
        ball_diameter=inputs.take("bearing.ball_diameter", table.ball_diameter, diameter),
        pitch_diameter=inputs.take("bearing.pitch_diameter", table.pitch_diameter, pitch),
        contact_angle=inputs.take("bearing.contact_angle", table.contact_angle, estimates.CONTACT_ANGLE),
        row_spacing=inputs.take("bearing.row_spacing", table.row_spacing, spacing),
        inner_conformity=inputs.take("bearing.inner_conformity", table.inner_conformity, estimates.CONFORMITY),
        outer_conformity=inputs.take("bearing.outer_conformity", table.outer_conformity, estimates.CONFORMITY),
        preload=inputs.take("bearing.preload", table.preload, estimates.PRELOAD),
        bore=bore,
        outside_diameter=outside,
        width=width,
        dynamic_rating=inputs.optional("bearing.dynamic_rating", table.dynamic_rating),
        static_rating=inputs.optional("bearing.static_rating", table.static_rating),
    )


def _internals(table: schema.BallBearing) -> tuple[Estimate, Estimate, Estimate, Estimate]:
    """Return balls per row, ball diameter, pitch diameter and row spacing, given or estimated."""
    bore = _or(table.bore, estimates.USUAL_BORE)
    outside = _or(table.outside_diameter, estimates.USUAL_OUTSIDE_DIAMETER)
    width = _or(table.width, estimates.USUAL_WIDTH)
    diameter = _either(table.ball_diameter, estimates.ball_diameter(bore=bore, outside_diameter=outside))
    pitch = _either(table.pitch_diameter, estimates.pitch_diameter(bore=bore, outside_diameter=outside))
    spacing = _either(table.row_spacing, estimates.row_spacing(width=width, ball_diameter=diameter.value))
    balls = _either(
        table.balls_per_row, estimates.balls_per_row(pitch_diameter=pitch.value, ball_diameter=diameter.value)
    )
    return balls, diameter, pitch, spacing


def _listing(table: schema.BallBearing, diameter: float, pitch: float, spacing: float) -> tuple[float, float, float]:
    """Return bore, outside diameter and width for the drawing: the estimates of the internals turned round."""
    section = diameter / 0.31
    bore = _or(
        table.bore, estimates.USUAL_BORE if _listing_acts(table, "bore") else max(pitch - section / 2, pitch / 4)
    )
    outside = _or(
        table.outside_diameter,
        estimates.USUAL_OUTSIDE_DIAMETER if _listing_acts(table, "outside_diameter") else pitch + section / 2,
    )
    width = _or(table.width, estimates.USUAL_WIDTH if _listing_acts(table, "width") else spacing + 1.24 * diameter)
    return bore, outside, width


def _listing_acts(table: schema.BallBearing, key: str) -> bool:
    """Whether an internal dimension is estimated from this value of the listing."""
    if key == "width":
        return table.row_spacing is None
    return table.ball_diameter is None or table.pitch_diameter is None


def refuse_impossible_bearing(table: schema.BallBearing | schema.TaperedBearing, findings: Findings) -> None:
    """Note what no real bearing can be."""
    sizes = ("bearing", *(f"bearing.{key}" for key in (*_LISTING, *_SIZES)))
    if findings.failed.intersection(sizes):
        return
    keys = type(table).keys()
    if isinstance(table, schema.BallBearing):
        missing = [key for key in _LISTING if table.value_of(key) is None]
        if missing and len(missing) < len(_LISTING) and any(_listing_acts(table, key) for key in missing):
            given = next(key for key in _LISTING if key not in missing)
            for key in missing:
                if _listing_acts(table, key):
                    findings.add(("bearing", key), needed=f"given with 'bearing.{given}'", repair=keys[key].repair)
            return
    if table.bore and table.outside_diameter and table.bore.value >= table.outside_diameter.value:
        findings.add(
            ("bearing", "bore"),
            needed=f"below the outside diameter, {table.outside_diameter.value * 1000:.4g} mm",
            given=findings.document.get("bearing.bore"),
            repair=keys["bore"].repair,
        )
        return
    if isinstance(table, schema.BallBearing):
        balls, size, pitch, spacing = (estimate.value for estimate in _internals(table))
        if spacing <= 0:
            findings.add(
                ("bearing", "width"),
                needed=f"above {1.24 * size * 1000:.4g} mm, so that two rows find room",
                given=findings.document.get("bearing.width"),
                repair=keys["width"].repair,
            )
        _refuse_crowding("ball", balls, size, pitch, findings)
    elif table.rollers_per_row and table.roller_diameter and table.pitch_diameter:
        _refuse_crowding(
            "roller", table.rollers_per_row.value, table.roller_diameter.value, table.pitch_diameter.value, findings
        )


def _refuse_crowding(element: str, number: float, size: float, pitch: float, findings: Findings) -> None:
    most = estimates.most_balls(pitch_diameter=pitch, ball_diameter=size)
    if number <= most:
        return
    key = f"{element}s_per_row"
    for candidate in (key, f"{element}_diameter", "pitch_diameter"):
        if findings.document.get(f"bearing.{candidate}") is not None:
            key = candidate
            break
    circle = f"{element}s of {size * 1000:.4g} mm on a pitch circle of {pitch * 1000:.4g} mm"
    needed = {
        f"{element}s_per_row": f"at most {most}: no more {circle} find room",
        f"{element}_diameter": f"at most {pitch * math.sin(math.pi / number) * 1000:.4g} mm: "
        f"{number:.0f} must find room on a pitch circle of {pitch * 1000:.4g} mm",
        "pitch_diameter": f"at least {size / math.sin(math.pi / number) * 1000:.4g} mm: "
        f"{number:.0f} {element}s of {size * 1000:.4g} mm must find room",
    }[key]
    findings.add(("bearing", key), needed=needed, given=findings.document.get(f"bearing.{key}"))


def _or(measured: Measured | None, usual: float) -> float:
    return usual if measured is None else measured.value


def _either(measured: Measured | None, estimate: Estimate) -> Estimate:
    return estimate if measured is None else Estimate(measured.value, measured.low, measured.high, "")

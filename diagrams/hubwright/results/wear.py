"""What loads do to a bearing: life by both methods, and the load, pressure and dent margin of the worst element.

One call takes every case, and with it every draw of the bearing's dimensions: arrays of shape (…, case), where the
bearing's own values are numbers or shaped (…). Row 0 is the outboard one. SI units; lives in revolutions.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from hubwright.errors import MissingDataError
from hubwright.mechanics.bearing_life import row_life, system_life, within_range
from hubwright.mechanics.bearing_rating import Elements, gamma, one_row_dynamic_rating, one_row_static_rating
from hubwright.mechanics.bearing_rows import BallRows, RollerRows
from hubwright.mechanics.constants import Flag, Value
from hubwright.mechanics.contamination import fatigue_load_limit, life_modification
from hubwright.mechanics.equivalent_load import ANGLES, equivalent_load, induced_thrust, load_factors, row_thrusts
from hubwright.mechanics.raceway_life import (
    RacewayRatings,
    ball_raceway_ratings,
    raceway_life,
    roller_raceway_ratings,
    row_stress,
)
from hubwright.mechanics.two_row_bearing import row_loads
from hubwright.mechanics.vector import Vector
from hubwright.results.bearings import bearing_values, missing_dimensions
from hubwright.results.lubrication import Grease
from hubwright.setup.model import BallBearing, TaperedPair

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Carried:
    """What the bearing carries in every case: (…, case); row loads are the lengths across the axis [N, N·m]."""

    force: Vector
    moment: Vector
    outboard: Value
    inboard: Value


@dataclass(frozen=True)
class Wear:
    """Lives [revolutions] and range of validity of every case (…, case); of its rows (…, case, row).

    `life_factor` is the standard's a_ISO of each row and `modified` the detailed life with it; None without grease.
    """

    quick: Array
    detailed: Array
    valid: NDArray[np.bool_]
    equivalent_load: Array  # P [N]
    largest_load: Array  # of one element [N]
    pressure: Array  # of the most loaded element [Pa]
    margin: Array  # static safety s₀ [1]
    element_load: Array  # (…, case, row, element) [N]
    element_angle: Array  # contact angle of each element under load [rad]
    life_factor: Array | None = None
    modified: Array | None = None


def wear(
    bearing: BallBearing | TaperedPair, carried: Carried, *, side: Literal[1, -1], grease: Grease | None = None
) -> Wear:
    """Return lives and worst elements of a bearing in every case; with its grease, lives modified for it too.

    Raises `MissingDataError` where a tapered pair's dimensions are not all given.
    """
    missing = missing_dimensions(bearing)
    ratings = bearing_values(bearing)
    if missing or ratings.dynamic_rating is None or ratings.static_rating is None:
        raise MissingDataError(result="the bearing's life", missing=missing)
    elements: Elements = "balls" if isinstance(bearing, BallBearing) else "rollers"
    dynamic = _by_case(one_row_dynamic_rating(dynamic_rating=ratings.dynamic_rating, elements=elements))
    static = _by_case(one_row_static_rating(static_rating=ratings.static_rating))
    rows = _rows(bearing)
    solved = row_loads(
        rows,
        force_x=carried.force.x,
        force_y=carried.force.y,
        force_z=carried.force.z,
        moment_x=carried.moment.x,
        moment_z=carried.moment.z,
        side=side,
        turning_ring=bearing.turning_ring,
    )
    raceways = _raceways(rows, dynamic)
    detailed = [
        raceway_life(
            element_load=solved.load[..., row, :],
            ratings=raceways,
            elements=elements,
            turning_ring=bearing.turning_ring,
        )
        for row in (0, 1)
    ]
    equivalent = _equivalent(bearing, carried, side, elements)
    quick = [row_life(dynamic_rating=dynamic, equivalent_load=load, elements=elements) for load in equivalent]
    in_range: list[Flag] = [
        within_range(equivalent_load=load, dynamic_rating=dynamic, static_rating=static) for load in equivalent
    ]
    stress = row_stress(rows, element_load=solved.load)
    shape = solved.load.shape[:-2]
    factors = None if grease is None else _life_factors(rows, grease, static, equivalent, elements)
    modified = None
    if factors is not None:
        modified = system_life(
            [factor * life for factor, life in zip(factors, detailed, strict=True)], elements=elements
        )
    return Wear(
        quick=np.broadcast_to(system_life(quick, elements=elements), shape),
        detailed=np.broadcast_to(system_life(detailed, elements=elements), shape),
        valid=np.broadcast_to(in_range[0] & in_range[1], shape),
        equivalent_load=np.stack([np.broadcast_to(load, shape) for load in equivalent], axis=-1),
        largest_load=stress.largest_load,
        pressure=stress.pressure,
        margin=stress.margin,
        element_load=solved.load,
        element_angle=solved.angle,
        life_factor=None if factors is None else np.stack([np.broadcast_to(f, shape) for f in factors], axis=-1),
        modified=None if modified is None else np.broadcast_to(modified, shape),
    )


def _life_factors(
    rows: BallRows | RollerRows,
    grease: Grease,
    static_rating: Value,
    equivalent: tuple[Value, Value],
    elements: Elements,
) -> list[Value]:
    """Return a_ISO of the outboard and the inboard row."""
    limit = fatigue_load_limit(static_rating=static_rating, pitch_diameter=rows.pitch_diameter, elements=elements)
    return [
        life_modification(
            contamination_factor=_by_case(grease.contamination_factor),
            fatigue_load_limit=limit,
            equivalent_load=load,
            viscosity_ratio=_by_case(grease.viscosity_ratio),
            elements=elements,
        )
        for load in equivalent
    ]


def _equivalent(
    bearing: BallBearing | TaperedPair, carried: Carried, side: Literal[1, -1], elements: Elements
) -> tuple[Value, Value]:
    """Return P of the outboard and the inboard row."""
    assert bearing.contact_angle is not None  # missing_dimensions
    angle = _by_case(bearing.contact_angle)
    if elements == "balls":  # a drawn angle may lie a little beyond the standard's table
        angle = np.clip(angle, ANGLES[0], ANGLES[-1])
    factors = load_factors(contact_angle=angle, elements=elements)
    thrusts = row_thrusts(
        induced_outboard=induced_thrust(radial_load=carried.outboard, factors=factors, elements=elements),
        induced_inboard=induced_thrust(radial_load=carried.inboard, factors=factors, elements=elements),
        thrust=-side * carried.force.y,
        turning_ring=bearing.turning_ring,
    )
    return (
        equivalent_load(
            radial_load=carried.outboard, axial_load=thrusts.outboard, factors=factors, own_thrust=thrusts.outboard_own
        ),
        equivalent_load(
            radial_load=carried.inboard, axial_load=thrusts.inboard, factors=factors, own_thrust=thrusts.inboard_own
        ),
    )


def _rows(bearing: BallBearing | TaperedPair) -> BallRows | RollerRows:
    def known(value: Value | None) -> Value:
        assert value is not None  # missing_dimensions
        return _by_case(value)

    if isinstance(bearing, BallBearing):
        return BallRows(
            bearing.balls_per_row,
            ball_diameter=known(bearing.ball_diameter),
            pitch_diameter=known(bearing.pitch_diameter),
            contact_angle=known(bearing.contact_angle),
            row_spacing=known(bearing.row_spacing),
            inner_conformity=known(bearing.inner_conformity),
            outer_conformity=known(bearing.outer_conformity),
            preload=known(bearing.preload),
        )
    assert bearing.rollers_per_row is not None
    return RollerRows(
        bearing.rollers_per_row,
        roller_diameter=known(bearing.roller_diameter),
        roller_length=known(bearing.roller_length),
        pitch_diameter=known(bearing.pitch_diameter),
        contact_angle=known(bearing.contact_angle),
        row_spacing=known(bearing.row_spacing),
        preload=known(bearing.preload),
    )


def _raceways(rows: BallRows | RollerRows, dynamic_rating: Value) -> RacewayRatings:
    if isinstance(rows, BallRows):
        return ball_raceway_ratings(
            dynamic_rating=dynamic_rating,
            balls_per_row=rows.balls_per_row,
            contact_angle=rows.contact_angle,
            gamma=gamma(
                element_diameter=rows.ball_diameter,
                pitch_diameter=rows.pitch_diameter,
                contact_angle=rows.contact_angle,
            ),
            inner_conformity=rows.inner_conformity,
            outer_conformity=rows.outer_conformity,
        )
    return roller_raceway_ratings(
        dynamic_rating=dynamic_rating,
        rollers_per_row=rows.rollers_per_row,
        contact_angle=rows.contact_angle,
        gamma=gamma(
            element_diameter=rows.roller_diameter, pitch_diameter=rows.pitch_diameter, contact_angle=rows.contact_angle
        ),
    )


def _by_case(value: Value) -> Value:
    """Return a value of the bearing with a last axis for the cases, where it is drawn."""
    return value if np.ndim(value) == 0 else np.asarray(value)[..., np.newaxis]

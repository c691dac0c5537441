"""Life from the load of every ball or roller, each raceway by itself, and what the worst element suffers.

Rows as in `two_row_bearing`: element loads (…, row, element), row 0 outboard. Newtons, pascals.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from hubwright.mechanics.bearing_contact import Ring, ball_curvature, point_contact_pressure
from hubwright.mechanics.bearing_life import MILLION
from hubwright.mechanics.bearing_rating import Elements, gamma
from hubwright.mechanics.bearing_rows import BallRows, RollerRows
from hubwright.mechanics.constants import Value
from hubwright.mechanics.equivalent_load import TurningRing
from hubwright.mechanics.roller_contact import line_contact_pressure, roller_curvature_sum

# ISO 76: the pressures at which an element leaves a dent of a ten-thousandth of its diameter (recalled)
DENT_PRESSURE = {"balls": 4200e6, "rollers": 4000e6}


@dataclass(frozen=True)
class RacewayRatings:
    """Load of one element with which a raceway lives a million turns, at the inner and outer ring [N]."""

    inner: Value
    outer: Value


@dataclass(frozen=True)
class RowStress:
    """What the most loaded element of each row suffers: (…, row).

    `pressure` is the larger of the two rings' [Pa]; `margin` is the static safety s₀ [1].
    """

    largest_load: NDArray[np.float64]
    pressure: NDArray[np.float64]
    margin: NDArray[np.float64]


def ball_raceway_ratings(
    *,
    dynamic_rating: Value,
    balls_per_row: Value,
    contact_angle: Value,
    gamma: Value,
    inner_conformity: Value,
    outer_conformity: Value,
) -> RacewayRatings:
    """Return the rating of each raceway of one row of balls.

    The row's rating, taken apart into its two rings.

        Q_ci = C₁/(0.407 Z cos α)·(1 + A^(10/3))^0.3,   Q_ce = C₁/(0.389 Z cos α)·(1 + A^(−10/3))^0.3
        A = 1.044·((1−γ)/(1+γ))^1.72·(rᵢ(2rₑ−1)/(rₑ(2rᵢ−1)))^0.41

    Parameters
    ----------
    dynamic_rating
        C₁ of one row [N].
    balls_per_row
        Z [1].
    contact_angle
        α, nominal [rad].
    gamma
        γ, see `bearing_rating.gamma` [1].
    inner_conformity
        rᵢ, groove radius of the inner ring over ball diameter [1].
    outer_conformity
        rₑ, the same of the outer ring [1].

    Returns
    -------
    RacewayRatings
        Q_ci and Q_ce [N].

    Notes
    -----
    The two factors are the cubic and the 10/3 mean of a load zone of half the ring.

    Examples
    --------
    >>> grooves = dict(inner_conformity=0.52, outer_conformity=0.52)
    >>> ratings = ball_raceway_ratings(dynamic_rating=20e3, balls_per_row=10, contact_angle=0.0, gamma=0.0, **grooves)
    >>> round(float(ratings.inner))  # 20e3/4.07·(1 + 1.044^(10/3))^0.3
    6186

    References
    ----------
    ISO/TS 16281:2008, 4.3 (recalled, document not opened).
    """
    ratio = inner_conformity * (2 * outer_conformity - 1) / (outer_conformity * (2 * inner_conformity - 1))
    A = 1.044 * ((1 - gamma) / (1 + gamma)) ** 1.72 * ratio**0.41
    share = dynamic_rating / (balls_per_row * np.cos(contact_angle))
    return RacewayRatings(
        inner=share / 0.407 * (1 + A ** (10 / 3)) ** 0.3,
        outer=share / 0.389 * (1 + A ** (-10 / 3)) ** 0.3,
    )


def roller_raceway_ratings(
    *, dynamic_rating: Value, rollers_per_row: Value, contact_angle: Value, gamma: Value
) -> RacewayRatings:
    """Return the rating of each raceway of one row of rollers.

    The row's rating, taken apart into its two rings.

        Q_ci = C₁/(0.378 Z cos α)·(1 + A^(9/2))^(2/9),   Q_ce = C₁/(0.364 Z cos α)·(1 + A^(−9/2))^(2/9)
        A = 1.038·((1−γ)/(1+γ))^(143/108)

    Parameters
    ----------
    dynamic_rating
        C₁ of one row [N].
    rollers_per_row
        Z [1].
    contact_angle
        α, half the cup angle [rad].
    gamma
        γ, see `bearing_rating.gamma` [1].

    Returns
    -------
    RacewayRatings
        Q_ci and Q_ce [N].

    Notes
    -----
    The factor 1/0.83 of the sliced method is not applied: one slice sees no edge stress.

    Examples
    --------
    >>> ratings = roller_raceway_ratings(dynamic_rating=20e3, rollers_per_row=10, contact_angle=0.0, gamma=0.0)
    >>> round(float(ratings.outer))  # 20e3/3.64·(1 + 1.038^(−9/2))^(2/9)
    6296

    References
    ----------
    ISO/TS 16281:2008, 5.3 (recalled, document not opened).
    """
    A = 1.038 * ((1 - gamma) / (1 + gamma)) ** (143 / 108)
    share = dynamic_rating / (rollers_per_row * np.cos(contact_angle))
    return RacewayRatings(
        inner=share / 0.378 * (1 + A**4.5) ** (2 / 9),
        outer=share / 0.364 * (1 + A**-4.5) ** (2 / 9),
    )


def raceway_life(
    *,
    element_load: NDArray[np.float64],
    ratings: RacewayRatings,
    elements: Elements,
    turning_ring: TurningRing = "inner",
) -> Value:
    """Return the life of a row from the load of each of its elements.

    Every point of the turning ring meets all the loads in turn, a point of the standing ring always its
    own: their means differ, and each ring lives by its own.

        balls:   [(Q_ci/Q_ei)^(−10/3) + (Q_ce/Q_ee)^(−10/3)]^(−9/10)
        rollers: [(Q_ci/Q_ei)^(−9/2) + (Q_ce/Q_ee)^(−9/2)]^(−8/9)

    with the mean of power 3 (balls) or 4 (rollers) at the turning ring, 10/3 or 9/2 at the standing one.

    Parameters
    ----------
    element_load
        Q of every element of the row: (…, element) [N].
    ratings
        Q_ci and Q_ce of the row, shaped like the rows [N].
    elements
        "balls" or "rollers".
    turning_ring
        Which ring turns with the wheel.

    Returns
    -------
    Value
        Life of the row, infinite without load: (…) [revolutions].

    Notes
    -----
    Against `quick`, the load of every element counts, with its own contact angle and preload.

    Examples
    --------
    >>> ratings = RacewayRatings(inner=1000.0, outer=1e9)  # an outer ring that never fails
    >>> round(float(raceway_life(element_load=np.full(9, 500.0), ratings=ratings, elements="balls")))  # 2³
    8000000

    References
    ----------
    ISO/TS 16281:2008, 4.3 and 5.3 (recalled, document not opened).
    """
    turning_power, standing_power, exponent = (3.0, 10 / 3, 0.9) if elements == "balls" else (4.0, 4.5, 8 / 9)
    turning, standing = _mean(element_load, turning_power), _mean(element_load, standing_power)
    inner, outer = (turning, standing) if turning_ring == "inner" else (standing, turning)
    wear = (inner / ratings.inner) ** standing_power + (outer / ratings.outer) ** standing_power
    with np.errstate(divide="ignore"):
        life: Value = MILLION * np.power(wear, -exponent)
    return life


def row_stress(rows: BallRows | RollerRows, *, element_load: NDArray[np.float64]) -> RowStress:
    """Return load, pressure and dent margin of the most loaded element of each row.

        balls: s₀ = (4200 MPa/p)³;   rollers: s₀ = (4000 MPa/p)²

    One hard knock can dent a raceway that would have run for years.

    Parameters
    ----------
    rows
        Geometry of both rows [m, rad].
    element_load
        Q of every element of both rows: (…, row, element) [N].

    Returns
    -------
    RowStress
        Largest load [N], pressure [Pa] and static safety s₀ [1], each (…, row); infinite without load.

    Notes
    -----
    Curvatures at the nominal contact angle.

    Examples
    --------
    >>> rows = BallRows(10, ball_diameter=0.0127, pitch_diameter=0.062, contact_angle=0.6, row_spacing=0.024)
    >>> stress = row_stress(rows, element_load=np.array([[0.0, 8000.0], [0.0, 1000.0]]))
    >>> round(float(stress.pressure[0] / stress.pressure[1]), 6), round(float(stress.margin[1] / stress.margin[0]), 6)
    (2.0, 8.0)

    References
    ----------
    ISO 76:2006; ISO/TR 10657 (recalled, documents not opened).
    """
    largest: NDArray[np.float64] = element_load.max(axis=-1)
    if isinstance(rows, BallRows):
        inner, outer = _ball_pressure(rows, largest, "inner"), _ball_pressure(rows, largest, "outer")
        power, limit = 3.0, DENT_PRESSURE["balls"]
    else:
        inner, outer = _roller_pressure(rows, largest, "inner"), _roller_pressure(rows, largest, "outer")
        power, limit = 2.0, DENT_PRESSURE["rollers"]
    pressure = np.maximum(inner, outer)
    with np.errstate(divide="ignore"):
        margin = (limit / pressure) ** power
    return RowStress(largest, pressure, margin)


def _ball_pressure(rows: BallRows, largest: NDArray[np.float64], ring: Ring) -> Value:
    ratio = gamma(
        element_diameter=rows.ball_diameter, pitch_diameter=rows.pitch_diameter, contact_angle=rows.contact_angle
    )
    fit = ball_curvature(
        ball_diameter=_by_row(rows.ball_diameter),
        conformity=_by_row(rows.inner_conformity if ring == "inner" else rows.outer_conformity),
        gamma=_by_row(ratio),
        ring=ring,
    )
    return point_contact_pressure(load=largest, curvature=fit)


def _roller_pressure(rows: RollerRows, largest: NDArray[np.float64], ring: Ring) -> Value:
    ratio = gamma(
        element_diameter=rows.roller_diameter, pitch_diameter=rows.pitch_diameter, contact_angle=rows.contact_angle
    )
    curvature = roller_curvature_sum(roller_diameter=_by_row(rows.roller_diameter), gamma=_by_row(ratio), ring=ring)
    return line_contact_pressure(load=largest, roller_length=_by_row(rows.roller_length), curvature_sum=curvature)


def _mean(loads: NDArray[np.float64], power: float) -> NDArray[np.float64]:
    largest = loads.max(axis=-1, keepdims=True)
    share = loads / np.where(largest > 0, largest, 1.0)
    result: NDArray[np.float64] = largest[..., 0] * np.mean(share**power, axis=-1) ** (1 / power)
    return result


def _by_row(value: Value) -> NDArray[np.float64]:
    """Return a value per geometry with a last axis for the rows."""
    return np.asarray(value, dtype=float)[..., np.newaxis]

"""Ratings of balls and rollers: how they grow, what two rows are worth, what the standard does not grant."""

import numpy as np
import pytest
from hypothesis import given
from mechanics_strategies import between

from hubwright.mechanics.ball_rating import (
    ball_dynamic_rating,
    ball_rating_factor,
    ball_static_rating,
    closer_than_the_standard,
)
from hubwright.mechanics.bearing_contact import ball_curvature, point_contact_pressure
from hubwright.mechanics.bearing_rating import effective_spread, gamma, one_row_dynamic_rating, one_row_static_rating
from hubwright.mechanics.roller_contact import line_contact_pressure, roller_curvature_sum
from hubwright.mechanics.roller_rating import roller_dynamic_rating, roller_static_rating

BALLS = {"balls_per_row": 13, "ball_diameter": 0.0127, "pitch_diameter": 0.062, "contact_angle": np.radians(35)}
ROLLERS = {
    "rollers_per_row": 17,
    "roller_diameter": 0.008,
    "roller_length": 0.013,
    "pitch_diameter": 0.055,
    "contact_angle": np.radians(20),
}


def test_one_row_of_two_is_the_row_computed_alone():
    whole, alone = (ball_dynamic_rating(rows=rows, **BALLS) for rows in (2, 1))
    assert one_row_dynamic_rating(dynamic_rating=whole, elements="balls") == pytest.approx(alone)
    whole, alone = (roller_dynamic_rating(rows=rows, **ROLLERS) for rows in (2, 1))
    assert one_row_dynamic_rating(dynamic_rating=whole, elements="rollers") == pytest.approx(alone)
    for rating, sizes in ((ball_static_rating, BALLS), (roller_static_rating, ROLLERS)):
        whole, alone = (rating(rows=rows, **sizes) for rows in (2, 1))
        assert one_row_static_rating(static_rating=whole) == pytest.approx(alone)


@given(between(0.01, 0.1), between(0.03, 0.3), between(5.0, 60.0))
def test_lines_of_contact_meet_the_axis_half_the_effective_spread_from_the_middle(spacing, diameter, degrees):
    # second road: both lines as linear equations in the plane of the axis; a line of contact leans by the contact
    # angle from the plane of its row, towards the axis and away from the other row
    along, across = np.sin(np.radians(degrees)), -np.cos(np.radians(degrees))
    met = [
        np.linalg.solve([[1.0, -side * along], [0.0, -across]], [side * spacing / 2, diameter / 2])[0]
        for side in (1.0, -1.0)
    ]
    spread = effective_spread(row_spacing=spacing, pitch_diameter=diameter, contact_angle=np.radians(degrees))
    assert met[0] - met[1] == pytest.approx(spread)


@given(between(1.1, 1.9))
def test_a_bearing_scaled_in_all_directions_keeps_its_factor(scale):
    # γ does not change, so that only the powers of the size are left: D^1.8, and L^(7/9) D^(29/27)
    larger = {key: value * scale if key.endswith("diameter") else value for key, value in BALLS.items()}
    small, large = (ball_dynamic_rating(rows=2, **sizes) for sizes in (BALLS, larger))
    assert large / small == pytest.approx(scale**1.8)
    longer = {key: value * scale if key.endswith(("diameter", "length")) else value for key, value in ROLLERS.items()}
    ratio = roller_dynamic_rating(rows=2, **longer) / roller_dynamic_rating(rows=2, **ROLLERS)
    assert ratio == pytest.approx(scale ** (7 / 9 + 29 / 27))


def test_the_largest_ball_load_of_a_radial_static_rating_dents():
    # second road: five times the rating over all balls, along the contact line, is 4200 MPa at the worse ring
    rating = ball_static_rating(rows=1, **BALLS)
    largest = 5 * rating / (BALLS["balls_per_row"] * np.cos(BALLS["contact_angle"]))
    ratio = gamma(element_diameter=0.0127, pitch_diameter=0.062, contact_angle=np.radians(35))
    pressures = [
        point_contact_pressure(
            load=largest,
            curvature=ball_curvature(ball_diameter=0.0127, conformity=conformity, gamma=ratio, ring=ring),
        )
        for ring, conformity in (("inner", 0.52), ("outer", 0.53))
    ]
    assert max(pressures) == pytest.approx(4200e6, rel=1e-9)


@pytest.mark.parametrize(("inner", "outer"), [(0.515, 0.52), (0.52, 0.515)])
def test_closer_grooves_raise_the_factor_and_are_told(inner, outer):
    assert closer_than_the_standard(inner_conformity=inner, outer_conformity=outer)
    factor = ball_rating_factor(gamma=0.17, inner_conformity=inner, outer_conformity=outer)
    assert factor > ball_rating_factor(gamma=0.17)


def test_the_standards_own_grooves_are_not_told():
    assert not closer_than_the_standard(inner_conformity=0.52, outer_conformity=0.53)


def test_arrays_and_loops_agree():
    balls = np.array([9, 13, 16])
    diameters = np.array([0.010, 0.0127, 0.030])
    sizes = BALLS | {"balls_per_row": balls, "ball_diameter": diameters, "pitch_diameter": 0.1}
    together = ball_dynamic_rating(rows=2, **sizes), ball_static_rating(rows=2, **sizes)
    for i in range(3):
        one = sizes | {"balls_per_row": int(balls[i]), "ball_diameter": float(diameters[i])}
        assert together[0][i] == pytest.approx(ball_dynamic_rating(rows=2, **one), rel=1e-13)
        assert together[1][i] == pytest.approx(ball_static_rating(rows=2, **one), rel=1e-13)


def test_ratings_by_hand_with_the_printed_factors():
    # fc of 59.9 and 88.7 at γ = 0.2 as printed in ISO 281:2007, Tables 2 and 7 (recalled), bm of Tables 1 and 6
    balls = ball_dynamic_rating(rows=1, balls_per_row=8, ball_diameter=0.01, pitch_diameter=0.05, contact_angle=0.0)
    assert balls == pytest.approx(1.3 * 59.9 * 8 ** (2 / 3) * 10**1.8, rel=1e-3)
    rollers = roller_dynamic_rating(
        rows=1, rollers_per_row=16, roller_diameter=0.01, roller_length=0.02, pitch_diameter=0.05, contact_angle=0.0
    )
    assert rollers == pytest.approx(1.1 * 88.7 * 20 ** (7 / 9) * 16**0.75 * 10 ** (29 / 27), rel=1e-3)


def test_the_largest_roller_load_of_a_static_rating_presses_the_inner_ring_to_its_limit():
    rating = roller_static_rating(rows=1, **ROLLERS)
    largest = 5 * rating / (ROLLERS["rollers_per_row"] * np.cos(ROLLERS["contact_angle"]))
    ratio = gamma(element_diameter=0.008, pitch_diameter=0.055, contact_angle=np.radians(20))
    inner, outer = (
        line_contact_pressure(
            load=largest,
            roller_length=0.013,
            curvature_sum=roller_curvature_sum(roller_diameter=0.008, gamma=ratio, ring=ring),
        )
        for ring in ("inner", "outer")
    )
    # the standard rounds 44.2 to 44, half a percent in load
    assert inner == pytest.approx(4000e6, rel=0.003)
    assert outer < inner

"""Rating factors of ISO 281 and ISO 76 against the values of their tables."""

import pytest
from published_checks import published

from hubwright.mechanics.ball_rating import LARGE_BALL, ball_dynamic_rating, ball_rating_factor, ball_static_factor
from hubwright.mechanics.roller_contact import load_at_line_contact_pressure, roller_curvature_sum
from hubwright.mechanics.roller_rating import STATIC_PRESSURE, roller_rating_factor, roller_static_rating


@published("fc_ball_sr")
def test_fc_of_single_row_and_angular_contact_balls(check):
    check.agrees(ball_rating_factor(gamma=check.si("gamma")))


@published("fc_ball_dr")
def test_fc_of_double_row_deep_groove_balls(check):
    check.agrees(ball_rating_factor(gamma=check.si("gamma"), reduction=0.90))


@published("fc_ball_sa")
def test_fc_of_self_aligning_balls(check):
    gamma = check.si("gamma")
    outer = 0.5 * (1 / gamma + 1)  # the outer raceway is a sphere about the bearing's centre
    check.agrees(ball_rating_factor(gamma=gamma, inner_conformity=0.53, outer_conformity=outer, reduction=1.0))


@published("fc_roller")
def test_fc_of_rollers(check):
    check.agrees(roller_rating_factor(gamma=check.si("gamma")))


@published("C_ball_Dw_switch")
def test_both_powers_of_the_ball_diameter_meet(check):
    assert check.si("Dw") == pytest.approx(LARGE_BALL)
    small, large = (
        ball_dynamic_rating(rows=1, balls_per_row=9, ball_diameter=size, pitch_diameter=5 * size, contact_angle=0.0)
        for size in (LARGE_BALL, LARGE_BALL * (1 + 1e-12))
    )
    assert small != large
    check.agrees(large / small)


@published("f0_ball")
def test_f0_of_deep_groove_and_angular_contact_balls(check):
    check.agrees(ball_static_factor(gamma=check.si("gamma")))


@published("C0_roller_44")
def test_static_coefficient_of_rollers(check):
    assert check.si("p") == pytest.approx(STATIC_PRESSURE)
    length, diameter = 0.012, 0.008
    largest = load_at_line_contact_pressure(
        pressure=check.si("p"),
        roller_length=length,
        curvature_sum=roller_curvature_sum(roller_diameter=diameter, gamma=0.0, ring="inner"),
        youngs_modulus=check.si("E"),
    )
    check.agrees(largest / (5 * length * diameter))
    # and it is what the rating uses, for one roller of a pitch circle without end
    rating = roller_static_rating(
        rows=1, rollers_per_row=1, roller_diameter=diameter, roller_length=length, pitch_diameter=1e9, contact_angle=0.0
    )
    check.agrees(rating / (length * diameter))

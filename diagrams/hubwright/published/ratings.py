"""Rating factors of ISO 281 and ISO 76 against the values of their tables."""

from hubwright.mechanics.ball_rating import LARGE_BALL, ball_dynamic_rating, ball_rating_factor, ball_static_factor
from hubwright.mechanics.roller_contact import load_at_line_contact_pressure, roller_curvature_sum
from hubwright.mechanics.roller_rating import roller_rating_factor, roller_static_rating
from hubwright.published.check import Calculation, Check, Subject


def _single_row(check: Check) -> tuple[float, ...]:
    return (float(ball_rating_factor(gamma=check.si("gamma"))),)


def _double_row(check: Check) -> tuple[float, ...]:
    return (float(ball_rating_factor(gamma=check.si("gamma"), reduction=0.90)),)


def _self_aligning(check: Check) -> tuple[float, ...]:
    gamma = check.si("gamma")
    outer = 0.5 * (1 / gamma + 1)  # the outer raceway is a sphere about the bearing's centre
    return (float(ball_rating_factor(gamma=gamma, inner_conformity=0.53, outer_conformity=outer, reduction=1.0)),)


def _rollers(check: Check) -> tuple[float, ...]:
    return (float(roller_rating_factor(gamma=check.si("gamma"))),)


def _where_powers_meet(check: Check) -> tuple[float, ...]:
    small, large = (
        float(ball_dynamic_rating(rows=1, balls_per_row=9, ball_diameter=D, pitch_diameter=5 * D, contact_angle=0.0))
        for D in (LARGE_BALL, LARGE_BALL * (1 + 1e-12))
    )
    return (large / small,)


def _static_balls(check: Check) -> tuple[float, ...]:
    return (float(ball_static_factor(gamma=check.si("gamma"))),)


def _static_rollers(check: Check) -> tuple[float, ...]:
    length, diameter = 0.012, 0.008
    largest = load_at_line_contact_pressure(
        pressure=check.si("p"),
        roller_length=length,
        curvature_sum=roller_curvature_sum(roller_diameter=diameter, gamma=0.0, ring="inner"),
        youngs_modulus=check.si("E"),
    )
    # and it is what the rating uses, for one roller of a pitch circle without end
    rating = roller_static_rating(
        rows=1, rollers_per_row=1, roller_diameter=diameter, roller_length=length, pitch_diameter=1e9, contact_angle=0.0
    )
    return (float(largest / (5 * length * diameter)), float(rating / (length * diameter)))


SUBJECT = Subject(
    "Ratings",
    (
        Calculation(("fc_ball_sr",), _single_row, (ball_rating_factor,)),
        Calculation(("fc_ball_dr",), _double_row, (ball_rating_factor,)),
        Calculation(("fc_ball_sa",), _self_aligning, (ball_rating_factor,)),
        Calculation(("fc_roller",), _rollers, (roller_rating_factor,)),
        Calculation(("C_ball_Dw_switch",), _where_powers_meet, (ball_dynamic_rating,)),
        Calculation(("f0_ball",), _static_balls, (ball_static_factor,)),
        Calculation(("C0_roller_44",), _static_rollers, (load_at_line_contact_pressure, roller_static_rating)),
    ),
)

"""What the published values rest on: slopes, proof stresses, lengths and constants that the checks do not compute."""

import pytest

from hubwright.mechanics.ball_rating import LARGE_BALL, ball_dynamic_rating
from hubwright.mechanics.beam import PointForce, Support, solve_beam
from hubwright.mechanics.bearing_life import WEIBULL_SLOPE
from hubwright.mechanics.bearing_rating import one_row_dynamic_rating
from hubwright.mechanics.fastener import strength
from hubwright.mechanics.roller_rating import STATIC_PRESSURE
from hubwright.mechanics.wheel_geometry import RIM_FLANGES_TOGETHER
from hubwright.published.check import Check, checks

BY_ID = {check.id: check for check in checks()}


def published(start: str) -> list[Check]:
    return [check for check in checks() if check.id.startswith(start)]


def test_a_cantilever_bends_most_at_its_end() -> None:
    assert published("cant_")
    for check in published("cant_"):
        l, F, EI = (check.si(key) for key in ("l", "F", "EI"))
        beam = solve_beam(length=l, supports=[Support(0.0, "fixed")], loads=[PointForce(l, F)], flexural_rigidity=EI)
        assert beam.maximum_deflection.at == pytest.approx(l)


def test_proof_stresses_of_the_property_classes() -> None:
    assert published("Fp_")
    for check in published("Fp_"):
        _, size, name = check.id.split("_")
        diameter = float(size.split("x")[0].removeprefix("M")) * 1e-3
        assert strength(property_class=name, diameter=diameter).proof == pytest.approx(check.si("Sp"))


def test_slopes_of_systems() -> None:
    assert WEIBULL_SLOPE["balls"] == pytest.approx(BY_ID["sys_ball"].si("e"))
    assert WEIBULL_SLOPE["rollers"] == pytest.approx(BY_ID["sys_roller"].si("e"))


def test_two_rows_bear_what_the_standard_rounds() -> None:
    # 2^0.7, ISO 281 prints 1.625
    assert 1 / one_row_dynamic_rating(dynamic_rating=1.0, elements="balls") == pytest.approx(1.625, abs=0.0005)


def test_two_rim_flanges_are_about_an_inch() -> None:
    check = BY_ID["rim_J_over"]
    assert pytest.approx(2 * check.si("B"), rel=check.rel_tol) == RIM_FLANGES_TOGETHER


def test_the_powers_of_the_ball_diameter_change_at_an_inch() -> None:
    (check,) = published("C_ball_Dw_switch")
    assert check.si("Dw") == pytest.approx(LARGE_BALL)
    small, large = (
        ball_dynamic_rating(rows=1, balls_per_row=9, ball_diameter=size, pitch_diameter=5 * size, contact_angle=0.0)
        for size in (LARGE_BALL, LARGE_BALL * (1 + 1e-12))
    )
    assert small != large


def test_the_static_pressure_of_rollers() -> None:
    assert BY_ID["C0_roller_44"].si("p") == pytest.approx(STATIC_PRESSURE)

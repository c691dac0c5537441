"""Load factors, reliability, systems and worked examples of bearing life against print."""

import numpy as np
import pytest
from published_checks import UNITS, published

from hubwright.mechanics.bearing_life import WEIBULL_SLOPE, duty_life, reliability_factor, row_life, system_life
from hubwright.mechanics.bearing_rating import one_row_dynamic_rating
from hubwright.mechanics.contamination import life_modification
from hubwright.mechanics.equivalent_load import LoadFactors, equivalent_load, load_factors


@published("ac_e_", "ac_X_sr", "ac_Y_sr")
def test_factors_of_angular_contact_balls(check):
    factors = load_factors(contact_angle=check.si("alpha"), elements="balls")
    check.agrees(getattr(factors, check.id[len("ac_")]))


@published("ac_X2_dr", "ac_Y2_dr")
def test_two_rows_of_which_one_carries_the_thrust(check):
    # above e one row carries all: what it counts is set against its own rating, not against that of both,
    # 2^0.7 times as much, which the standard rounds to 1.625
    factors = load_factors(contact_angle=check.si("alpha"), elements="balls")
    assert 1 / one_row_dynamic_rating(dynamic_rating=1.0, elements="balls") == pytest.approx(1.625, abs=0.0005)
    check.agrees(1.625 * (factors.X if check.id.startswith("ac_X2") else factors.Y))


@published("ac_Y1_dr")
def test_two_rows_that_share_the_thrust(check):
    # the lines below and above e meet at e, where X + Y e = 1
    factors = load_factors(contact_angle=check.si("alpha"), elements="balls")
    both_over_one = 1 / one_row_dynamic_rating(dynamic_rating=1.0, elements="balls")
    check.agrees((both_over_one - 1) / factors.e)


@published("dg_e_")
def test_axial_load_counts_from_where_its_line_meets_the_radial_load(check):
    factors = LoadFactors(e=0.0, X=0.56, Y=check.si("Y"))
    near, far = (equivalent_load(radial_load=1.0, axial_load=share, factors=factors) for share in (2.0, 4.0))
    check.agrees(2 - (near - 1) / (far - near) * 2)


@published("aiso_exp_")
def test_dirt_shortens_life_by_the_exponent_of_fatigue(check):
    # at κ = 1 all that stands in the bracket is known: a = 0.1 (1 − film·share)^−n, so two lives give n
    elements = "balls" if check.id.endswith("ball") else "rollers"
    film, inner = ((2.5671 - 1.9987) ** 0.83, 1 / 3) if elements == "balls" else (1.5859 - 1.2348, 0.4)
    factor = life_modification(
        contamination_factor=0.3,
        fatigue_load_limit=900.0,
        equivalent_load=3000.0,
        viscosity_ratio=1.0,
        elements=elements,
    )
    check.agrees(-np.log(factor / 0.1) / np.log(1 - film * (0.3 * 900 / 3000) ** inner))


@published("a1_")
def test_reliability(check):
    check.agrees(reliability_factor(survivors=check.si("S")))


@published("sys_")
def test_two_equal_rows(check):
    elements = {"sys_ball": "balls", "sys_roller": "rollers"}[check.id]
    assert np.isclose(WEIBULL_SLOPE[elements], check.si("e"))
    check.agrees(system_life([1.0, 1.0], elements=elements))


@published("sh114_F", "sh114_L")
def test_deep_groove_bearing_under_radial_and_axial_load(check):
    # factors as printed in the example: F_a/F_r = 0.8 > e, X = 0.56, Y = 1.527
    factors = LoadFactors(e=0.28, X=0.56, Y=1.527)
    P = equivalent_load(radial_load=check.si("Fr"), axial_load=check.si("Fa"), factors=factors)
    if check.id == "sh114_F":
        check.agrees(P)
    else:
        turns = row_life(dynamic_rating=check.si("C10"), equivalent_load=P, elements="balls")
        check.agrees(turns / check.si("n"))


@published("sh116_Feq")
def test_spectrum_of_four_levels(check):
    def numbers(key):
        text, unit = check.inputs[key].rsplit("]", 1)
        return UNITS.Quantity(np.array([float(part) for part in text[1:].split(",")]), unit.strip() or "")

    turns = numbers("t").magnitude * numbers("n").magnitude
    loads = numbers("af*Fe").to("newton").magnitude
    rating = 1e4
    lives = [row_life(dynamic_rating=rating, equivalent_load=load, elements="balls") for load in loads]
    life = duty_life(shares=list(turns / turns.sum()), lives=lives)
    check.agrees(rating / (life / 1e6) ** (1 / 3))

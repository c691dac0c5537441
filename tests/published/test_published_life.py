"""Load factors, reliability, systems and worked examples of bearing life against print."""

import numpy as np
from published_checks import UNITS, published

from hubwright.mechanics.bearing_life import WEIBULL_SLOPE, duty_life, reliability_factor, row_life, system_life
from hubwright.mechanics.equivalent_load import LoadFactors, equivalent_load, load_factors


@published("ac_e_", "ac_X_sr", "ac_Y_sr")
def test_factors_of_angular_contact_balls(check):
    factors = load_factors(contact_angle=check.si("alpha"), elements="balls")
    check.agrees(getattr(factors, check.id[len("ac_")]))


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

"""Load factors, reliability, systems and worked examples of bearing life against print."""

import numpy as np

from hubwright.mechanics.bearing_life import WEIBULL_SLOPE, duty_life, reliability_factor, row_life, system_life
from hubwright.mechanics.bearing_rating import Elements, one_row_dynamic_rating
from hubwright.mechanics.contamination import OUTER, life_modification
from hubwright.mechanics.equivalent_load import LoadFactors, equivalent_load, load_factors
from hubwright.published.check import Calculation, Check, Subject


def _factor(check: Check) -> tuple[float, ...]:
    factors = load_factors(contact_angle=check.si("alpha"), elements="balls")
    return (float(getattr(factors, check.id[len("ac_")])),)


def _one_row_carries(check: Check) -> tuple[float, ...]:
    # above e one row carries all: what it counts is set against its own rating, not against that of both,
    # 2^0.7 times as much, which the standard rounds to 1.625
    factors = load_factors(contact_angle=check.si("alpha"), elements="balls")
    return (1.625 * float(factors.X if check.id.startswith("ac_X2") else factors.Y),)


def _both_rows_carry(check: Check) -> tuple[float, ...]:
    # the lines below and above e meet at e, where X + Y e = 1
    factors = load_factors(contact_angle=check.si("alpha"), elements="balls")
    both_over_one = 1 / one_row_dynamic_rating(dynamic_rating=1.0, elements="balls")
    return (float((both_over_one - 1) / factors.e),)


def _where_thrust_counts(check: Check) -> tuple[float, ...]:
    factors = LoadFactors(e=0.0, X=0.56, Y=check.si("Y"))
    near, far = (float(equivalent_load(radial_load=1.0, axial_load=share, factors=factors)) for share in (2.0, 4.0))
    return (2 - (near - 1) / (far - near) * 2,)


def _outer_exponent(check: Check) -> tuple[float, ...]:
    # at κ = 1 all that stands in the bracket is known: a = 0.1 (1 − film·share)^−n, so a life gives n
    elements: Elements = "balls" if check.id.endswith("ball") else "rollers"
    film, inner = ((2.5671 - 1.9987) ** 0.83, 1 / 3) if elements == "balls" else (1.5859 - 1.2348, 0.4)
    factor = life_modification(
        contamination_factor=0.3,
        fatigue_load_limit=900.0,
        equivalent_load=3000.0,
        viscosity_ratio=1.0,
        elements=elements,
    )
    share = film * (0.3 * 900 / 3000) ** inner
    return (float(-np.log(factor / 0.1) / np.log(1 - share)), OUTER[elements])


def _reliability(check: Check) -> tuple[float, ...]:
    return (float(reliability_factor(survivors=check.si("S"))),)


def _two_equal_rows(check: Check) -> tuple[float, ...]:
    found: dict[str, Elements] = {"sys_ball": "balls", "sys_roller": "rollers"}
    elements = found[check.id]
    assert np.isclose(WEIBULL_SLOPE[elements], check.si("e")), "the check is about another slope"
    return (float(system_life([1.0, 1.0], elements=elements)),)


def _combined_load(check: Check) -> tuple[float, ...]:
    # factors as printed in the example: F_a/F_r = 0.8 > e, X = 0.56, Y = 1.527
    factors = LoadFactors(e=0.28, X=0.56, Y=1.527)
    P = equivalent_load(radial_load=check.si("Fr"), axial_load=check.si("Fa"), factors=factors)
    if check.id == "sh114_F":
        return (float(P),)
    return (float(row_life(dynamic_rating=check.si("C10"), equivalent_load=P, elements="balls")) / check.si("n"),)


def _four_levels(check: Check) -> tuple[float, ...]:
    turns = np.array(check.list_si("t")) * np.array(check.list_si("n"))
    rating = 1e4
    lives = [row_life(dynamic_rating=rating, equivalent_load=load, elements="balls") for load in check.list_si("af*Fe")]
    life = duty_life(shares=list(turns / turns.sum()), lives=lives)
    return (float(rating / (life / 1e6) ** (1 / 3)),)


SUBJECT = Subject(
    "Life",
    (
        Calculation(("ac_e_", "ac_X_sr", "ac_Y_sr"), _factor, (load_factors,)),
        Calculation(("ac_X2_dr", "ac_Y2_dr"), _one_row_carries, (load_factors,)),
        Calculation(("ac_Y1_dr",), _both_rows_carry, (load_factors, one_row_dynamic_rating)),
        Calculation(("dg_e_",), _where_thrust_counts, (equivalent_load,)),
        Calculation(("aiso_exp_",), _outer_exponent, (life_modification,)),
        Calculation(("a1_",), _reliability, (reliability_factor,)),
        Calculation(("sys_",), _two_equal_rows, (system_life,)),
        Calculation(("sh114_F",), _combined_load, (equivalent_load,)),
        Calculation(("sh114_L",), _combined_load, (equivalent_load, row_life)),
        Calculation(("sh116_Feq",), _four_levels, (row_life, duty_life)),
    ),
)

"""Quick life of a pair of rows: equilibrium along the axis, limits, symmetry, duty."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from mechanics_strategies import between
from scipy.optimize import brentq

from hubwright.mechanics.bearing_life import (
    duty_life,
    life_distance,
    reliability_factor,
    row_life,
    system_life,
    within_range,
)
from hubwright.mechanics.equivalent_load import LoadFactors, equivalent_load, induced_thrust, load_factors, row_thrusts

FACTORS = LoadFactors(e=0.95, X=0.37, Y=0.66)
thrusts = between(-5000, 5000)
loads = between(0, 9000)


@given(loads, loads, thrusts, st.sampled_from(["inner", "outer"]))
def test_the_rows_thrusts_balance_the_outer_one_and_none_is_below_its_own(s_a, s_b, k, ring):
    rows = row_thrusts(induced_outboard=s_a, induced_inboard=s_b, thrust=k, turning_ring=ring)
    toward_outboard = 1.0 if ring == "inner" else -1.0
    assert rows.outboard - rows.inboard == pytest.approx(toward_outboard * k, abs=1e-9)
    assert rows.outboard >= s_a - 1e-9
    assert rows.inboard >= s_b - 1e-9
    assert rows.outboard_own != rows.inboard_own


@given(loads, loads, thrusts)
def test_turning_outer_rings_are_the_inner_ones_with_the_thrust_reversed(s_a, s_b, k):
    inner = row_thrusts(induced_outboard=s_a, induced_inboard=s_b, thrust=-k)
    outer = row_thrusts(induced_outboard=s_a, induced_inboard=s_b, thrust=k, turning_ring="outer")
    assert outer.outboard == pytest.approx(inner.outboard, abs=1e-9)
    assert outer.inboard == pytest.approx(inner.inboard, abs=1e-9)


def test_a_row_with_its_own_thrust_counts_its_radial_load_only():
    assert equivalent_load(radial_load=1000.0, axial_load=5000.0, factors=FACTORS, own_thrust=True) == 1000.0


def test_axial_load_counts_only_above_e_and_never_lowers_the_equivalent_load():
    assert equivalent_load(radial_load=1000.0, axial_load=940.0, factors=FACTORS) == 1000.0
    assert equivalent_load(radial_load=1000.0, axial_load=960.0, factors=FACTORS) == pytest.approx(1003.6)
    gentle = LoadFactors(e=0.2, X=0.3, Y=0.5)
    assert equivalent_load(radial_load=1000.0, axial_load=300.0, factors=gentle) == 1000.0


def test_induced_thrust_of_a_tapered_row_is_a_quarter_more_than_its_cone_angle_gives():
    # second road: with Y = 0.4 cot α, F/(2Y) = 1.25 F tan α
    angle = np.radians(20.0)
    factors = load_factors(contact_angle=angle, elements="rollers")
    thrust = induced_thrust(radial_load=1000.0, factors=factors, elements="rollers")
    assert thrust == pytest.approx(1250.0 * np.tan(angle))


@pytest.mark.parametrize("degrees", [19.9, 45.1])
def test_angles_outside_the_table_give_no_factor(degrees):
    assert np.isnan(load_factors(contact_angle=np.radians(degrees), elements="balls").e)


@pytest.mark.parametrize(("elements", "exponent"), [("balls", 3.0), ("rollers", 10 / 3)])
def test_twice_the_load_shortens_life_by_its_power(elements, exponent):
    one, two = (row_life(dynamic_rating=20e3, equivalent_load=P, elements=elements) for P in (2e3, 4e3))
    assert one / two == pytest.approx(2**exponent)


def test_no_load_is_an_infinite_life_and_uses_up_nothing():
    life = row_life(dynamic_rating=20e3, equivalent_load=0.0, elements="balls")
    assert np.isinf(life)
    assert system_life([life, 5e6], elements="balls") == pytest.approx(5e6)
    assert np.isinf(system_life([life, life], elements="balls"))
    assert duty_life(shares=[0.5, 0.5], lives=[life, 5e6]) == pytest.approx(10e6)
    assert np.isinf(duty_life(shares=[1.0], lives=[life]))


@given(between(1, 50), between(1, 50))
def test_the_pair_flakes_as_two_independent_rows_do(first, second):
    # second road: survival exp(−ln(1/0.9)·(L/L10)^e) of both rows multiplied is 0.9 at the pair's life
    slope = 10 / 9
    life = brentq(lambda L: 0.9 ** ((L / first) ** slope + (L / second) ** slope) - 0.9, 1e-3, 100, xtol=1e-12)
    assert system_life([first, second], elements="balls") == pytest.approx(life, rel=1e-9)


@given(between(0.9, 0.9999))
def test_reliability_is_where_the_three_parameter_weibull_leaves_that_many(survivors):
    # second road: survival exp(−((x − 0.05)/η)^1.5), with 0.9 left at x = 1
    eta = 0.95 / np.log(1 / 0.9) ** (1 / 1.5)
    x = reliability_factor(survivors=survivors)
    assert np.exp(-(((x - 0.05) / eta) ** 1.5)) == pytest.approx(survivors, rel=1e-9)


def test_range_ends_at_half_the_dynamic_and_at_the_static_rating():
    assert within_range(equivalent_load=9.9e3, dynamic_rating=20e3, static_rating=12e3)
    assert not within_range(equivalent_load=10.1e3, dynamic_rating=20e3, static_rating=12e3)
    assert not within_range(equivalent_load=9.9e3, dynamic_rating=20e3, static_rating=9e3)


def test_a_duty_drives_each_share_and_uses_up_its_part():
    # by hand: 300 km at a life of 1,000 km and 700 km at 7,000 km use up 0.3 + 0.1 in 1,000 km
    assert duty_life(shares=[0.3, 0.7], lives=[1000.0, 7000.0]) == pytest.approx(2500.0)
    assert life_distance(life=2500.0, rolling_circumference=2.0) == 5000.0


def test_arrays_and_loops_agree():
    radial, k = np.array([500.0, 2000.0, 4000.0]), np.array([-3000.0, 0.0, 1500.0])

    def pair(radial, k):
        factors = load_factors(contact_angle=np.radians(35), elements="balls")
        s = induced_thrust(radial_load=radial, factors=factors, elements="balls")
        rows = row_thrusts(induced_outboard=s, induced_inboard=0.4 * s, thrust=k)
        P = (
            equivalent_load(
                radial_load=radial, axial_load=rows.outboard, factors=factors, own_thrust=rows.outboard_own
            ),
            equivalent_load(
                radial_load=0.4 * radial, axial_load=rows.inboard, factors=factors, own_thrust=rows.inboard_own
            ),
        )
        return system_life(
            [row_life(dynamic_rating=20e3, equivalent_load=p, elements="balls") for p in P], elements="balls"
        )

    together = pair(radial, k)
    for i in range(3):
        assert together[i] == pytest.approx(pair(float(radial[i]), float(k[i])), rel=1e-12)

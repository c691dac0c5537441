"""Hertz contact against quadrature of the elastic half-space, a root finder, and limits."""

import numpy as np
import pytest
from hypothesis import given
from mechanics_strategies import between
from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.special import ellipe, ellipk

from hubwright.mechanics.bearing_contact import (
    Curvature,
    ball_curvature,
    ball_stiffness,
    contact_shape,
    load_at_point_contact_pressure,
    point_contact_approach,
    point_contact_pressure,
    point_contact_semiaxes,
    point_contact_stiffness,
)
from hubwright.mechanics.roller_contact import (
    line_contact_pressure,
    load_at_line_contact_pressure,
    roller_curvature_sum,
    roller_stiffness,
)

curvatures = between(0.0, 0.9999)
BALL = {"ball_diameter": 0.0127, "gamma": 0.17}


@given(between(0.01, 0.9999))
def test_the_ratio_of_the_axes_solves_hertzs_equation(difference):
    def too_long(kappa):
        m = 1 - kappa**-2
        K, E = ellipk(m), ellipe(m)
        return ((kappa**2 + 1) * E - 2 * K) / ((kappa**2 - 1) * E) - difference

    kappa = brentq(too_long, 1 + 1e-4, 1e4, xtol=1e-13, rtol=1e-14)
    shape = contact_shape(curvature_difference=difference)
    assert shape.semimajor / shape.semiminor == pytest.approx(kappa, rel=1e-8)


@given(curvatures)
def test_the_approach_is_the_sinking_of_the_half_space_under_the_patch(difference):
    # second road: both surfaces sink at the middle by (1 − ν²)/(πE) ∫ p/r dA under the half ellipsoid
    # of pressure; along each ray ∫ √(1 − r²/R²) dr = πR/4
    contact = Curvature(sum=250.0, difference=difference)
    a, b = point_contact_semiaxes(load=3000.0, curvature=contact)
    p = point_contact_pressure(load=3000.0, curvature=contact)
    rays, _ = quad(lambda t: a * b / np.hypot(b * np.cos(t), a * np.sin(t)), 0, np.pi / 2, epsabs=0, epsrel=1e-11)
    sinking = 2 * (1 - 0.3**2) / (np.pi * 207e9) * p * np.pi / 4 * 4 * rays
    stiffness = point_contact_stiffness(curvature=contact)
    assert point_contact_approach(load=3000.0, stiffness=stiffness) == pytest.approx(sinking, rel=1e-8)


@given(curvatures)
def test_the_pressure_over_the_patch_is_the_load(difference):
    contact = Curvature(sum=250.0, difference=difference)
    a, b = point_contact_semiaxes(load=3000.0, curvature=contact)
    p = point_contact_pressure(load=3000.0, curvature=contact)
    assert 2 / 3 * np.pi * a * b * p == pytest.approx(3000.0, rel=1e-9)


def test_the_series_for_nearly_round_contacts_meets_the_integrals():
    below, above = (contact_shape(curvature_difference=F) for F in (0.99999e-4, 1.00001e-4))
    assert below.semimajor == pytest.approx(above.semimajor, rel=1e-8)
    assert below.approach == pytest.approx(above.approach, rel=1e-8)


@given(between(0.505, 0.6), between(0.0, 0.35), between(10, 20000))
def test_pressure_and_load_are_each_others_inverse(conformity, gamma, load):
    for ring in ("inner", "outer"):
        fit = ball_curvature(ball_diameter=0.0127, conformity=conformity, gamma=gamma, ring=ring)
        pressure = point_contact_pressure(load=load, curvature=fit)
        assert load_at_point_contact_pressure(pressure=pressure, curvature=fit) == pytest.approx(load)
        strip = {
            "roller_length": 0.01,
            "curvature_sum": roller_curvature_sum(roller_diameter=0.008, gamma=gamma, ring=ring),
        }
        pressure = line_contact_pressure(load=load, **strip)
        assert load_at_line_contact_pressure(pressure=pressure, **strip) == pytest.approx(load)


def test_principal_curvatures_add_up_to_sum_and_difference():
    # second road: the four curvatures one by one; inner ring convex along the rolling direction
    D, f, gamma = 0.0127, 0.52, 0.17
    ball, groove = 2 / D, -1 / (f * D)
    for ring, along in (("inner", 2 * gamma / (1 - gamma) / D), ("outer", -2 * gamma / (1 + gamma) / D)):
        fit = ball_curvature(ball_diameter=D, conformity=f, gamma=gamma, ring=ring)
        assert fit.sum == pytest.approx(2 * ball + groove + along)
        assert fit.difference == pytest.approx(((ball + along) - (ball + groove)) / fit.sum)


def test_a_ball_between_two_raceways_approaches_by_the_sum_of_both():
    inner, outer = (
        point_contact_stiffness(curvature=ball_curvature(conformity=0.52, ring=ring, **BALL))
        for ring in ("inner", "outer")
    )
    both = ball_stiffness(inner_stiffness=inner, outer_stiffness=outer)
    parts = sum(point_contact_approach(load=2000.0, stiffness=K) for K in (inner, outer))
    assert point_contact_approach(load=2000.0, stiffness=both) == pytest.approx(parts)


def test_the_inner_ring_and_a_wider_groove_press_harder():
    def pressure(conformity, ring):
        return point_contact_pressure(load=2000.0, curvature=ball_curvature(conformity=conformity, ring=ring, **BALL))

    assert pressure(0.52, "inner") > pressure(0.52, "outer")
    assert pressure(0.54, "inner") > pressure(0.52, "inner")


def test_no_load_is_no_pressure_and_no_approach():
    fit = ball_curvature(conformity=0.52, ring="inner", **BALL)
    assert point_contact_pressure(load=0.0, curvature=fit) == 0
    assert point_contact_approach(load=0.0, stiffness=1e10) == 0


def test_the_roller_stiffness_is_near_two_contacts_of_palmgrens():
    # Palmgren, Ball and Roller Bearing Engineering (from memory): δ = 3.84e-5 Q^0.9/L^0.8 per contact
    # in N and mm; the two fits are a few percent apart
    length, load = 12.0, 3000.0
    approach = 2 * 3.84e-5 * load**0.9 / length**0.8 * 1e-3
    assert roller_stiffness(roller_length=length * 1e-3) * approach ** (10 / 9) == pytest.approx(load, rel=0.05)


def test_line_contact_is_the_limit_of_a_long_ellipse():
    # per length, an ellipse of axes a ≫ b carries most in its middle: p = 2 Q′/(π b), Q′ = 3Q/(4a) there
    contact = Curvature(sum=250.0, difference=1 - 1e-9)
    a, _ = point_contact_semiaxes(load=3000.0, curvature=contact)
    p = point_contact_pressure(load=3000.0, curvature=contact)
    strip = line_contact_pressure(load=3 * 3000.0 / 4, roller_length=a, curvature_sum=250.0)
    assert strip == pytest.approx(p, rel=1e-3)


def test_arrays_and_loops_agree():
    differences = np.array([0.0, 5e-5, 0.3, 0.93, 0.99999])
    together = contact_shape(curvature_difference=differences)
    for i, difference in enumerate(differences):
        alone = contact_shape(curvature_difference=float(difference))
        assert together.semimajor[i] == pytest.approx(alone.semimajor, rel=1e-13)
        assert together.semiminor[i] == pytest.approx(alone.semiminor, rel=1e-13)
        assert together.approach[i] == pytest.approx(alone.approach, rel=1e-13)

"""Life from element loads against the rating it is made from, quick life, and what dents."""

import dataclasses

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from mechanics_strategies import between

from hubwright.mechanics.ball_rating import ball_dynamic_rating, ball_static_rating
from hubwright.mechanics.bearing_life import row_life, system_life
from hubwright.mechanics.bearing_rating import gamma
from hubwright.mechanics.bearing_rows import INBOARD, OUTBOARD, BallRows, RollerRows
from hubwright.mechanics.raceway_life import (
    RacewayRatings,
    ball_raceway_ratings,
    raceway_life,
    roller_raceway_ratings,
    row_stress,
)
from hubwright.mechanics.roller_rating import roller_dynamic_rating, roller_static_rating
from hubwright.mechanics.two_row_bearing import loads_at_displacement, row_loads

ALPHA = np.radians(35.0)
BALLS = BallRows(13, 0.0127, pitch_diameter=0.062, contact_angle=ALPHA, row_spacing=0.024)
ROLLERS = RollerRows(17, 0.008, 0.012, pitch_diameter=0.055, contact_angle=np.radians(18), row_spacing=0.030)


def ball_ratings(rows, dynamic_rating):
    return ball_raceway_ratings(
        dynamic_rating=dynamic_rating,
        balls_per_row=rows.balls_per_row,
        contact_angle=rows.contact_angle,
        gamma=gamma(
            element_diameter=rows.ball_diameter, pitch_diameter=rows.pitch_diameter, contact_angle=rows.contact_angle
        ),
        inner_conformity=rows.inner_conformity,
        outer_conformity=rows.outer_conformity,
    )


def roller_ratings(rows, dynamic_rating):
    return roller_raceway_ratings(
        dynamic_rating=dynamic_rating,
        rollers_per_row=rows.rollers_per_row,
        contact_angle=rows.contact_angle,
        gamma=gamma(
            element_diameter=rows.roller_diameter, pitch_diameter=rows.pitch_diameter, contact_angle=rows.contact_angle
        ),
    )


def held_row(rows, count, shift):
    """Return element loads (position, element) of the outboard row pushed sideways, and its radial load."""
    turns = np.linspace(0, 2 * np.pi / count, 24, endpoint=False)
    d = np.zeros((24, 5))
    d[:, 0], d[:, 2] = shift * np.sin(turns), shift * np.cos(turns)
    solved = loads_at_displacement(rows, displacement=d)
    psi = 2 * np.pi * np.arange(count) / count
    along = np.cos(psi - turns[:, np.newaxis])
    load = solved.load[:, OUTBOARD]
    return load, np.sum(load * np.cos(rows.contact_angle) * along, axis=-1)


@pytest.mark.parametrize("dynamic_rating", [20e3, 45e3])
def test_half_a_ring_of_balls_lives_as_the_rating_says(dynamic_rating):
    # the raceway ratings are made from it: one row, half its balls loaded, mean over ball position
    load, radial = held_row(BALLS, 13, 1e-9)
    lives = raceway_life(element_load=load, ratings=ball_ratings(BALLS, dynamic_rating), elements="balls")
    basic = row_life(dynamic_rating=dynamic_rating, equivalent_load=radial, elements="balls")
    assert np.mean(lives) == pytest.approx(np.mean(basic), rel=0.003)


def test_half_a_ring_of_rollers_lives_as_long_as_its_rating_at_the_rating_itself():
    # the two ways have the powers 4 and 10/3, so they agree where the load is the rating: a million turns;
    # the exponent 10/9 against the standard's 1.1 and the rounded 0.378 and 0.364 leave about a percent
    rating = 40e3
    load, radial = held_row(ROLLERS, 17, 1e-6)
    at_rating = load * (rating / radial)[:, np.newaxis]
    lives = raceway_life(element_load=at_rating, ratings=roller_ratings(ROLLERS, rating), elements="rollers")
    assert np.mean(lives) == pytest.approx(1e6, rel=0.02)


def test_the_constants_of_the_raceway_ratings_are_the_load_zone_integrals():
    # Harris, Rolling Bearing Analysis (recalled): J_r = 0.2288, J_1 = 0.5625, J_2 = 0.5875 of half a ring of balls
    ratings = ball_raceway_ratings(
        dynamic_rating=1.0,
        balls_per_row=1,
        contact_angle=0.0,
        gamma=0.0,
        inner_conformity=0.52,
        outer_conformity=0.52,
    )
    A = 1.044
    assert ratings.inner / (1 + A ** (10 / 3)) ** 0.3 == pytest.approx(0.5625 / 0.2288, rel=2e-3)
    assert ratings.outer / (1 + A ** (-10 / 3)) ** 0.3 == pytest.approx(0.5875 / 0.2288, rel=2e-3)


def test_the_means_change_places_with_the_turning_ring():
    load = np.array([4000.0, 2500.0, 500.0, 0.0, 0.0, 0.0, 500.0, 2500.0])
    ratings = ball_ratings(dataclasses.replace(BALLS, balls_per_row=8), 20e3)
    inner, outer = (
        raceway_life(element_load=load, ratings=ratings, elements="balls", turning_ring=ring)
        for ring in ("inner", "outer")
    )
    cubic, standing = np.mean(load**3) ** (1 / 3), np.mean(load ** (10 / 3)) ** 0.3
    for life, at_inner, at_outer in ((inner, cubic, standing), (outer, standing, cubic)):
        wear = (ratings.inner / at_inner) ** (-10 / 3) + (ratings.outer / at_outer) ** (-10 / 3)
        assert life == pytest.approx(1e6 * wear**-0.9)
    assert outer < inner  # the weaker inner ring then carries the larger mean


def test_rollers_take_the_fourth_power_mean_at_the_turning_ring():
    load = np.array([4000.0, 2500.0, 500.0, 0.0, 0.0, 0.0, 500.0, 2500.0])
    ratings = roller_ratings(dataclasses.replace(ROLLERS, rollers_per_row=8), 20e3)
    turning, standing = np.mean(load**4) ** (1 / 4), np.mean(load**4.5) ** (1 / 4.5)
    wear = (ratings.inner / turning) ** -4.5 + (ratings.outer / standing) ** -4.5
    assert raceway_life(element_load=load, ratings=ratings, elements="rollers") == pytest.approx(1e6 * wear ** (-8 / 9))


def bearing_life(rows, ratings, elements, load, **options):
    """Return the life of both rows under x, y, z and the moments about x and z."""
    keys = ("force_x", "force_y", "force_z", "moment_x", "moment_z")
    solved = row_loads(rows, **dict(zip(keys, load, strict=True)), **options)
    lives = [
        raceway_life(element_load=solved.load[..., row, :], ratings=ratings, elements=elements, **options)
        for row in (OUTBOARD, INBOARD)
    ]
    return system_life(lives, elements=elements)


BEARINGS = pytest.mark.parametrize(
    ("rows", "ratings", "elements"),
    [(BALLS, ball_ratings(BALLS, 20e3), "balls"), (ROLLERS, roller_ratings(ROLLERS, 20e3), "rollers")],
    ids=["balls", "rollers"],
)


@BEARINGS
@given(
    st.tuples(between(-2e3, 2e3), between(-4e3, 4e3), between(1e3, 9e3), between(-400, 400), between(-200, 200)),
    between(1.02, 3.0),
)
@settings(max_examples=40)
def test_life_falls_when_all_loads_are_scaled_up(rows, ratings, elements, load, factor):
    heavier = [part * factor for part in load]
    assert bearing_life(rows, ratings, elements, heavier) < bearing_life(rows, ratings, elements, load)


@BEARINGS
def test_one_load_alone_may_make_life_longer(rows, ratings, elements):
    # a load line 40 mm outboard tips the hub one way, a cornering force at 0.35 m below it the other way
    weight, cornering = 4000.0, 300.0
    straight = [0.0, 0.0, weight, weight * 0.04, 0.0]
    bend = [0.0, -cornering, weight, weight * 0.04 - cornering * 0.35, 0.0]
    assert bearing_life(rows, ratings, elements, bend) > bearing_life(rows, ratings, elements, straight)


@BEARINGS
def test_turning_outer_rings_live_as_inner_ones_with_thrust_reversed_and_rings_exchanged(rows, ratings, elements):
    load = [600.0, -1500.0, 4000.0, 90.0, -40.0]
    reversed_thrust = [600.0, 1500.0, 4000.0, 90.0, -40.0]
    exchanged = RacewayRatings(inner=ratings.outer, outer=ratings.inner)
    outer = bearing_life(rows, ratings, elements, load, turning_ring="outer")
    assert outer == pytest.approx(bearing_life(rows, exchanged, elements, reversed_thrust), rel=1e-6)
    assert outer != pytest.approx(bearing_life(rows, ratings, elements, load), rel=0.01)


def test_no_load_lives_for_ever():
    life = raceway_life(element_load=np.zeros((2, 13)), ratings=ball_ratings(BALLS, 20e3), elements="balls")
    assert np.isinf(life).all()
    assert np.isinf(row_stress(BALLS, element_load=np.zeros((2, 13))).margin).all()


def test_the_static_rating_is_a_dent_margin_of_one():
    # conformities 0.52 and 0.53 as ISO 76 takes them: five times the mean load is that of 4200 MPa
    rows = dataclasses.replace(BALLS, outer_conformity=0.53)
    rating = ball_static_rating(
        rows=1, balls_per_row=13, ball_diameter=0.0127, pitch_diameter=0.062, contact_angle=ALPHA
    )
    largest = 5 * rating / (13 * np.cos(ALPHA))
    assert row_stress(rows, element_load=np.full((2, 13), largest)).margin == pytest.approx([1.0, 1.0])
    assert row_stress(rows, element_load=np.full((2, 13), largest / 2)).margin == pytest.approx([2.0, 2.0])
    rating = roller_static_rating(
        rows=1,
        rollers_per_row=17,
        roller_diameter=0.008,
        roller_length=0.012,
        pitch_diameter=0.055,
        contact_angle=np.radians(18),
    )
    largest = 5 * rating / (17 * np.cos(np.radians(18)))
    # 44 is a rounded 44.2
    assert row_stress(ROLLERS, element_load=np.full((2, 17), largest / 2)).margin == pytest.approx(
        [2.0, 2.0], rel=0.006
    )


def test_detailed_and_quick_agree_on_a_radial_load_through_the_middle():
    # no outer thrust, no moment: both rows carry half; the contact angle grows with the load, which quick ignores
    rating = ball_dynamic_rating(
        rows=1, balls_per_row=13, ball_diameter=0.0127, pitch_diameter=0.062, contact_angle=ALPHA
    )
    solved = row_loads(BALLS, force_x=0.0, force_y=0.0, force_z=4000.0, moment_x=0.0, moment_z=0.0)
    detailed = raceway_life(element_load=solved.load[OUTBOARD], ratings=ball_ratings(BALLS, rating), elements="balls")
    quick = row_life(dynamic_rating=rating, equivalent_load=2000.0, elements="balls")
    assert detailed == pytest.approx(quick, rel=0.15)


def test_arrays_and_loops_agree():
    sizes = np.array([0.0115, 0.0127])
    rows = dataclasses.replace(BALLS, ball_diameter=sizes)
    loads = np.random.default_rng(2).uniform(0, 3000, (2, 2, 13))
    together = row_stress(rows, element_load=loads)
    for i in range(2):
        alone = row_stress(dataclasses.replace(BALLS, ball_diameter=float(sizes[i])), element_load=loads[i])
        assert together.pressure[i] == pytest.approx(alone.pressure)
    rating = roller_dynamic_rating(
        rows=1, rollers_per_row=17, roller_diameter=0.008, roller_length=0.012, pitch_diameter=0.055, contact_angle=0.3
    )
    lives = raceway_life(element_load=loads[:, 0], ratings=roller_ratings(ROLLERS, rating), elements="rollers")
    for i in range(2):
        alone = raceway_life(element_load=loads[i, 0], ratings=roller_ratings(ROLLERS, rating), elements="rollers")
        assert lives[i] == pytest.approx(alone)

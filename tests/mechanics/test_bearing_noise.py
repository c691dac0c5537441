"""Defect frequencies: sums that hold whatever the geometry, and the turning ring."""

import math

import pytest
from hypothesis import given
from mechanics_strategies import between

from hubwright.mechanics.bearing_noise import defect_frequencies, wheel_frequency

SIZES = {"elements_per_row": 13, "element_diameter": 0.0127, "pitch_diameter": 0.062, "contact_angle": 0.6}


def heard(**changes):
    return defect_frequencies(**{"wheel_frequency": 10.0, **SIZES, **changes})


@given(between(0.004, 0.02), between(0, 0.8), between(1, 40))
def test_both_rings_together_are_struck_by_every_element_in_every_turn(diameter, angle, turns):
    both = heard(element_diameter=diameter, contact_angle=angle, wheel_frequency=turns)
    assert both.outer_ring + both.inner_ring == pytest.approx(13 * turns)
    assert both.inner_ring > both.outer_ring


def test_a_standing_ring_is_struck_by_every_element_in_every_turn_of_the_cage():
    inner, outer = heard(), heard(turning_ring="outer")
    assert inner.outer_ring == pytest.approx(13 * inner.cage)
    assert outer.inner_ring == pytest.approx(13 * outer.cage)
    assert inner.cage + outer.cage == pytest.approx(10.0)
    assert (inner.inner_ring, inner.outer_ring) == (outer.inner_ring, outer.outer_ring)


def test_a_ball_rolls_off_the_outer_raceway_that_the_cage_carries_it_past():
    both = heard(contact_angle=0.0)
    # per second the ball passes f_c turns of the outer raceway's length and rolls on its own; it spins against the cage
    past = both.cage * math.pi * (0.062 + 0.0127)
    assert both.element / 2 == pytest.approx(past / (math.pi * 0.0127))


def test_frequencies_follow_road_speed():
    f = wheel_frequency(speed=20.0, rolling_circumference=2.36)
    assert heard(wheel_frequency=2 * f).outer_ring == pytest.approx(2 * heard(wheel_frequency=f).outer_ring)

"""Steering: the same lever by a cross product, and signs."""

import pytest
from hypothesis import given
from mechanics_strategies import between

from hubwright.mechanics.steering import kick_back_moment, moved_scrub_radius, moved_track, tie_rod_force
from hubwright.mechanics.vector import Vector


@given(between(-8e3, 8e3), between(-0.05, 0.1))
def test_kick_back_is_the_moment_about_an_upright_axis(force, scrub):
    about_axis = Vector(0.0, scrub, -0.37).cross(Vector(force, 0.0, 5000.0)).z
    assert kick_back_moment(longitudinal_force=force, scrub_radius=scrub) == pytest.approx(abs(about_axis))


def test_an_inboard_scrub_radius_may_shrink_to_nothing_on_the_way_out():
    assert moved_scrub_radius(scrub_radius=-0.02, load_line_change=0.02) == 0
    assert moved_scrub_radius(scrub_radius=0.01, load_line_change=0.02) == pytest.approx(0.03)


def test_the_rod_times_its_arm_is_the_moment_and_the_track_grows_on_both_sides():
    assert tie_rod_force(kick_back_moment=80.0, steering_arm=0.16) * 0.16 == pytest.approx(80.0)
    assert moved_track(track=1.6, load_line_change=-0.01) == pytest.approx(1.58)

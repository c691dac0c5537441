"""Studs: there and back, strengths of the classes, and what engagement is enough for."""

import numpy as np
import pytest
from hypothesis import given
from mechanics_strategies import between

from hubwright.errors import ImpossibleError
from hubwright.mechanics.fastener import (
    clamp_force,
    load_share,
    strength,
    stress_area,
    stripping_force,
    stud_force,
    tightening_torque,
)


@given(between(10, 400), between(0.08, 0.4), between(0.008, 0.03))
def test_torque_and_clamp_force_there_and_back(torque, nut_factor, diameter):
    clamp = clamp_force(torque=torque, nut_factor=nut_factor, diameter=diameter)
    assert tightening_torque(clamp_force=clamp, nut_factor=nut_factor, diameter=diameter) == pytest.approx(torque)


@pytest.mark.parametrize("name", ["4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9"])
def test_the_numbers_on_the_head_are_tensile_strength_and_the_share_at_yield(name):
    hundred, tenth = (int(part) for part in name.split("."))
    found = strength(property_class=name, diameter=0.012)
    # the standard's lowest values lie within 5 % over the nominal ones that the numbers stand for
    assert 1.0 <= found.tensile / (hundred * 100e6) <= 1.051
    assert found.yield_ / found.tensile == pytest.approx(tenth / 10, rel=0.02)
    assert found.proof < found.yield_


def test_class_8_8_is_stronger_above_16_mm():
    assert strength(property_class="8.8", diameter=0.016).proof == 580e6
    assert strength(property_class="8.8", diameter=0.018).proof == 600e6


def test_an_unknown_class_is_refused():
    with pytest.raises(ImpossibleError, match=r"'11.9' is no property class"):
        strength(property_class="11.9", diameter=0.012)


# common practice: a diameter of engagement is enough for a steel stud in a nut as strong as it
@pytest.mark.parametrize(("diameter", "pitch"), [(0.012, 0.0015), (0.014, 0.0015), (0.014, 0.002), (0.0127, 0.00127)])
def test_a_diameter_of_thread_outlasts_the_stud_and_a_third_of_it_does_not(diameter, pitch):
    breaks = stress_area(diameter=diameter, pitch=pitch) * 1040e6
    sizes = {"diameter": diameter, "pitch": pitch, "tensile_strength": 1040e6}
    assert stripping_force(engagement=diameter, **sizes) > breaks
    assert stripping_force(engagement=diameter / 3, **sizes) < breaks


def test_springs_side_by_side_share_a_pull_as_the_formula_says():
    k_b, k_m, clamp, pull = 0.8e9, 3.2e9, 50e3, 12e3
    # the stud lengthens and the parts relax by the same way
    way = pull / (k_b + k_m)
    share = load_share(stud_stiffness=k_b, clamped_stiffness=k_m)
    assert stud_force(clamp_force=clamp, outside_pull=pull, load_share=share) == pytest.approx(clamp + k_b * way)


def test_a_stud_of_a_parted_joint_takes_the_whole_pull():
    assert stud_force(clamp_force=1e3, outside_pull=20e3, load_share=0.2) == 20e3


def test_arrays_go_through():
    areas = stress_area(diameter=np.array([0.012, 0.014]), pitch=0.0015)
    assert areas.shape == (2,)

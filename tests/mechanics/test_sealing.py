"""Water at the seals: there and back, the gas law step by step, limits."""

import numpy as np
import pytest
from hypothesis import given
from mechanics_strategies import between

from hubwright.mechanics.sealing import (
    ATMOSPHERE,
    depth_pressure,
    equivalent_depth,
    quench_suction,
    water_life_factor,
)


@given(between(0, 5))
def test_depth_and_pressure_there_and_back(depth):
    assert equivalent_depth(pressure=depth_pressure(depth=depth)) == pytest.approx(depth, abs=1e-12)


def test_ten_metres_of_water_are_about_an_atmosphere():
    # rule of thumb of divers, to 5 %
    assert depth_pressure(depth=10.0) == pytest.approx(ATMOSPHERE, rel=0.05)


@given(between(280, 400), between(273, 310))
def test_the_quenched_hub_holds_the_same_amount_of_air(hot, cold):
    suction = quench_suction(hub_temperature=hot, water_temperature=cold)
    # p V = n R T with n and V as before
    R, V = 8.314, 20e-6
    n = ATMOSPHERE * V / (R * hot)
    assert ATMOSPHERE - suction == pytest.approx(n * R * cold / V)
    assert (suction > 0) == (hot > cold)


def test_a_warm_hub_draws_more_than_the_ford_presses():
    # 65 °C into 8 °C, a quarter of a metre deep
    suction = quench_suction(hub_temperature=338.15, water_temperature=281.15)
    assert suction > 5 * depth_pressure(depth=0.25)


def test_more_water_means_less_life():
    assert np.all(np.diff(water_life_factor(water_content=np.array([25e-6, 100e-6, 400e-6, 1e-3]))) < 0)
    assert water_life_factor(water_content=100e-6) == 1

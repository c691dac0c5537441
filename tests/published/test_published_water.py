"""Water and dirt against handbook values; the outer exponents of the life modification from their theory."""

from published_checks import published

from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.mechanics.contamination import OUTER
from hubwright.mechanics.sealing import equivalent_depth, water_life_factor


@published("hydro_psi")
def test_depth_of_a_pressure(check):
    check.agrees(equivalent_depth(pressure=1.0, density=check.si("gamma") / STANDARD_GRAVITY))


@published("cantley_")
def test_water_in_the_lubricant(check):
    check.agrees(water_life_factor(water_content=check.si("X")))


@published("aiso_exp_")
def test_outer_exponent_of_the_life_modification(check):
    check.agrees(OUTER[f"{check.id[len('aiso_exp_') :]}s"])

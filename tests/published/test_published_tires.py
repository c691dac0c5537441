"""Tire diameters and rim widths against published ones."""

import pytest
from published_checks import published

from hubwright.mechanics.tire_geometry import flotation_free_diameter, free_diameter, section_height
from hubwright.mechanics.wheel_geometry import backspacing

# UN R30 tabulates the rim diameter of a code instead of multiplying by 25.4 mm (recalled)
TABULATED_RIM_DIAMETER = {15: 0.381, 16: 0.406, 17: 0.432}


@published("tyre_D_")
def test_metric_size_with_the_regulations_rounding(check):
    height = section_height(section_width=check.si("S1"), aspect_ratio=check.si("Ra"))
    rim = TABULATED_RIM_DIAMETER[int(check.si("rim code"))]
    # printed with the section height rounded to the millimetre, which the product does not do
    check.agrees(free_diameter(rim_diameter=rim, section_height=round(height, 3)))


@published("tyre_265")
def test_metric_size(check):
    height = section_height(section_width=check.si("S1"), aspect_ratio=check.si("Ra"))
    check.agrees(free_diameter(rim_diameter=check.si("rim"), section_height=height))


@published("flot_D_")
def test_flotation_design_diameter_is_half_an_inch_under_the_code(check):
    nominal = flotation_free_diameter(nominal_diameter_in_inches=check.si("code") / 0.0254)
    check.agrees(nominal - 0.0127)


@published("flot_S_")
def test_flotation_section_width_is_that_of_the_code(check):
    # the product takes the width of the code as it stands, as it takes the diameter
    check.agrees(flotation_free_diameter(nominal_diameter_in_inches=check.si("code") / 0.0254))


@published("rim_J")
def test_two_rim_flanges_are_about_an_inch(check):
    added = 2 * backspacing(rim_width=0.0, offset=0.0)
    assert added == pytest.approx(2 * check.si("B"), rel=check.rel_tol)
    check.agrees(added)

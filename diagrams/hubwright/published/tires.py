"""Tire diameters and rim widths against published ones."""

from hubwright.mechanics.constants import INCH
from hubwright.mechanics.tire_geometry import flotation_free_diameter, free_diameter, section_height
from hubwright.mechanics.wheel_geometry import backspacing
from hubwright.published.check import Calculation, Check, Subject

# UN R30 tabulates the rim diameter of a code instead of multiplying by 25.4 mm (recalled)
TABULATED_RIM_DIAMETER = {15: 0.381, 16: 0.406, 17: 0.432}


def _metric_as_regulated(check: Check) -> tuple[float, ...]:
    height = section_height(section_width=check.si("S1"), aspect_ratio=check.si("Ra"))
    rim = TABULATED_RIM_DIAMETER[int(check.si("rim code"))]
    # printed with the section height rounded to the millimetre, which the product does not do
    return (float(free_diameter(rim_diameter=rim, section_height=round(float(height), 3))),)


def _metric(check: Check) -> tuple[float, ...]:
    height = section_height(section_width=check.si("S1"), aspect_ratio=check.si("Ra"))
    return (float(free_diameter(rim_diameter=check.si("rim"), section_height=height)),)


def _flotation_diameter(check: Check) -> tuple[float, ...]:
    # a yearbook's design diameter is half an inch under the code that the product uses
    return (float(flotation_free_diameter(nominal_diameter_in_inches=check.si("code") / INCH)) - INCH / 2,)


def _flotation_width(check: Check) -> tuple[float, ...]:
    # the product takes the width of the code as it stands, as it takes the diameter
    return (float(flotation_free_diameter(nominal_diameter_in_inches=check.si("code") / INCH)),)


def _flanges(check: Check) -> tuple[float, ...]:
    # of our own two flanges; the printed width of one is no input of ours
    return (2 * float(backspacing(rim_width=0.0, offset=0.0)),)


SUBJECT = Subject(
    "Tires and rims",
    (
        Calculation(("tyre_D_",), _metric_as_regulated, (section_height, free_diameter)),
        Calculation(("tyre_265",), _metric, (section_height, free_diameter)),
        Calculation(("flot_D_",), _flotation_diameter, (flotation_free_diameter,)),
        Calculation(("flot_S_",), _flotation_width, (flotation_free_diameter,)),
        Calculation(("rim_J",), _flanges, (backspacing,)),
    ),
)

"""Defect frequencies, depth and water in the lubricant against measurements and handbooks."""

from hubwright.mechanics.bearing_noise import defect_frequencies
from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.mechanics.sealing import equivalent_depth, water_life_factor
from hubwright.published.check import Calculation, Check, Subject


def _multiple_of_shaft_speed(check: Check) -> tuple[float, ...]:
    heard = defect_frequencies(
        wheel_frequency=1.0,
        elements_per_row=check.si("n"),
        element_diameter=check.si("Bd"),
        pitch_diameter=check.si("Pd"),
        contact_angle=check.si("phi"),
    )
    names = {
        "cwru_bpfi": heard.inner_ring,
        "cwru_bpfo": heard.outer_ring,
        "cwru_ftf": heard.cage,
        "cwru_bsf2": heard.element,
    }
    return (float(names[check.id]),)


def _depth(check: Check) -> tuple[float, ...]:
    return (float(equivalent_depth(pressure=1.0, density=check.si("gamma") / STANDARD_GRAVITY)),)


def _water(check: Check) -> tuple[float, ...]:
    return (float(water_life_factor(water_content=check.si("X"))),)


SUBJECT = Subject(
    "Noise and water",
    (
        Calculation(("cwru_",), _multiple_of_shaft_speed, (defect_frequencies,)),
        Calculation(("hydro_psi",), _depth, (equivalent_depth,)),
        Calculation(("cantley_",), _water, (water_life_factor,)),
    ),
)

"""Defect frequencies against those that an open set of bearing measurements states."""

from published_checks import published

from hubwright.mechanics.bearing_noise import defect_frequencies


@published("cwru_")
def test_multiples_of_shaft_speed(check):
    heard = defect_frequencies(
        wheel_frequency=1.0,
        elements_per_row=check.si("n"),
        element_diameter=check.si("Bd"),
        pitch_diameter=check.si("Pd"),
        contact_angle=check.si("phi"),
    )
    check.agrees(
        {
            "cwru_bpfi": heard.inner_ring,
            "cwru_bpfo": heard.outer_ring,
            "cwru_ftf": heard.cage,
            "cwru_bsf2": heard.element,
        }[check.id]
    )

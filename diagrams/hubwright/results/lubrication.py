"""How clean and how well lubricated a setup's bearing runs, as its file says it; what is not said is left unknown."""

from dataclasses import dataclass

from hubwright.mechanics.constants import Value
from hubwright.mechanics.contamination import contamination_factors
from hubwright.setup.model import Setup

CLEANLINESS = "lubrication.contamination"  # the name by which the place in the band of a class is drawn
MIDDLE = 0.5


@dataclass(frozen=True)
class Grease:
    """Contamination factor e_C and viscosity ratio κ [1]."""

    contamination_factor: Value
    viscosity_ratio: Value


def grease_of(setup: Setup, *, cleanliness: Value = MIDDLE) -> Grease | None:
    """Return what the file says of the grease, or None where it leaves a part of it unsaid.

    A class of the standard is a band; `cleanliness` is the place in it, from 0 at its dirty end to 1 at its clean one.
    """
    lubrication, pitch_diameter = setup.lubrication, setup.bearing.pitch_diameter
    if lubrication is None or pitch_diameter is None:
        return None
    if lubrication.contamination is None or lubrication.viscosity_ratio is None:
        return None
    low, high = contamination_factors(contamination=lubrication.contamination, pitch_diameter=pitch_diameter)
    return Grease(low + cleanliness * (high - low), lubrication.viscosity_ratio)

"""Impact factors and ride rates against worked problems in print."""

from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.mechanics.impact_energy import energy_bound, impact_factor
from hubwright.mechanics.ride import natural_frequency, ride_rate
from hubwright.published.check import Calculation, Check, Subject


def _factor(check: Check) -> tuple[float, ...]:
    if "h/dst" in check.inputs:
        height, deflection = check.si("h/dst"), 1.0
    else:
        height, deflection = check.si("h"), check.si("dst") if "dst" in check.inputs else 1.0
    weight = 5000.0  # any: the bound over it is the factor again
    bound = energy_bound(weight=weight, stiffness=weight / deflection, height=height)
    return (float(impact_factor(height=height, static_deflection=deflection)), float(bound) / weight)


def _ride_rate(check: Check) -> tuple[float, ...]:
    return (float(ride_rate(wheel_rate=check.si("Ks"), tire_stiffness=check.si("Kt"))),)


def _frequency(check: Check) -> tuple[float, ...]:
    return (float(natural_frequency(stiffness=check.si("RR"), mass=check.si("W") / STANDARD_GRAVITY)),)


SUBJECT = Subject(
    "Impact and ride",
    (
        Calculation(("imp_gere_", "imp_ugural", "imp_sudden"), _factor, (impact_factor, energy_bound)),
        Calculation(("ride_front_RR",), _ride_rate, (ride_rate,)),
        Calculation(("ride_front_fn",), _frequency, (natural_frequency,)),
    ),
)

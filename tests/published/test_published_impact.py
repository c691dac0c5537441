"""Impact factors and ride rates against worked problems in print."""

from published_checks import published

from hubwright.mechanics.impact_energy import energy_bound, impact_factor
from hubwright.mechanics.ride import natural_frequency, ride_rate


@published("imp_gere_", "imp_ugural", "imp_sudden")
def test_impact_factor(check):
    if "h/dst" in check.inputs:
        height, deflection = check.si("h/dst"), 1.0
    else:
        height, deflection = check.si("h"), check.si("dst") if "dst" in check.inputs else 1.0
    check.agrees(impact_factor(height=height, static_deflection=deflection))
    weight = 5000.0
    check.agrees(energy_bound(weight=weight, stiffness=weight / deflection, height=height) / weight)


@published("ride_front_RR")
def test_ride_rate(check):
    check.agrees(ride_rate(wheel_rate=check.si("Ks"), tire_stiffness=check.si("Kt")))


@published("ride_front_fn")
def test_frequency_of_the_body(check):
    mass = check.si("W") / 9.80665
    check.agrees(natural_frequency(stiffness=check.si("RR"), mass=mass))

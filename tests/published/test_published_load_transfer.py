"""Axle loads of accelerating vehicles and the wheel at a step against worked examples in print."""

from published_checks import published
from scipy.optimize import brentq

from hubwright.mechanics.load_cases import driving, ledge
from hubwright.mechanics.load_transfer import StandingTrailer, StandingVehicle
from hubwright.mechanics.trailer_weight import TrailerLoads
from hubwright.mechanics.weight import MassPoint, vehicle_loads

OUR_G = 9.80665


def vehicle(weight: float, behind: float, wheelbase: float, height: float) -> StandingVehicle:
    """Return a vehicle of that weight; the examples' own g goes into the weight."""
    mass = MassPoint(weight / OUR_G, behind, 0.0, height)
    sizes = {"wheelbase": wheelbase, "front_track": 1.5, "rear_track": 1.5}
    return StandingVehicle(vehicle_loads([mass], **sizes), mass, front_roll_share=0.5, **sizes)


def axle(case, end: str, component: str) -> float:
    return sum(getattr(case.contact_force[f"{end}_{side}"], component) for side in ("left", "right"))


@published("mk61_")
def test_rear_driven_vehicle_gains_speed_uphill(check):
    acceleration = check.si("v") ** 2 / (2 * check.si("s"))
    slope = check.si("grade")
    cosine = 1 / (1 + slope**2) ** 0.5
    g = 32.2 * 0.3048
    # on a grade the driving force works against M a and the slope's part of the weight alike
    weight = check.si("W") * cosine
    driving_g = (acceleration / g + slope * cosine) / cosine
    wheelbase = check.si("l1") + check.si("l2")
    case = driving(vehicle(weight, check.si("l1"), wheelbase, check.si("h")), driving_g=driving_g, driven="rear")
    check.agrees(
        {
            "mk61_F": axle(case, "rear", "x"),
            "mk61_N1": axle(case, "front", "z"),
            "mk61_N2": axle(case, "rear", "z"),
        }[check.id]
    )


@published("hib_")
def test_rear_wheels_slip(check):
    g = 9.81
    wheelbase = check.si("a_front") + check.si("b_rear")
    car = vehicle(check.si("m") * g, check.si("a_front"), wheelbase, check.si("h"))

    def slip(d: float) -> float:
        case = driving(car, driving_g=d, driven="rear")
        return axle(case, "rear", "x") - check.si("mu_k") * axle(case, "rear", "z")

    d = brentq(slip, 0.0, 1.0, xtol=1e-14)
    case = driving(car, driving_g=d, driven="rear")
    check.agrees({"hib_NA": axle(case, "front", "z"), "hib_NB": axle(case, "rear", "z"), "hib_a": d * g}[check.id])


def at_step(weight: float, radius: float, height: float):
    """Return how one wheel of that load meets the step."""
    cart = StandingTrailer(TrailerLoads(weight, weight, 0.0), MassPoint(2 * weight / OUR_G), 3.0, 1.5)
    return ledge(cart, height=height, loaded_radius={"left": radius, "right": radius}).ledge["left"]


@published("curb_rim")
def test_pull_at_the_top_of_a_roller(check):
    weight, radius, height = check.si("W"), check.si("r"), check.si("h")
    push_at_axle = at_step(weight, radius, height).push
    # the same moment about the edge with the longer lever of the rim's top
    check.agrees(push_at_axle * (radius - height) / (2 * radius - height))


@published("curb_P_eq_W")
def test_step_at_which_the_push_equals_the_weight(check):
    check.agrees(brentq(lambda s: at_step(1.0, 1.0, s).push - check.si("P/W"), 0.01, 0.9))

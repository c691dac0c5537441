"""Axle loads of accelerating vehicles and the wheel at a step against worked examples in print."""

from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.mechanics.contact_forces import LoadCase
from hubwright.mechanics.ledge import highest_ledge
from hubwright.mechanics.load_cases import driving, ledge
from hubwright.mechanics.load_transfer import StandingTrailer, StandingVehicle
from hubwright.mechanics.trailer_weight import TrailerLoads
from hubwright.mechanics.weight import MassPoint, vehicle_loads
from hubwright.published.check import Calculation, Check, Subject


def _vehicle(weight: float, behind: float, wheelbase: float, height: float) -> StandingVehicle:
    """Return a vehicle of that weight; the examples' own g goes into the weight."""
    mass = MassPoint(weight / STANDARD_GRAVITY, behind, 0.0, height)
    loads = vehicle_loads([mass], wheelbase=wheelbase, front_track=1.5, rear_track=1.5)
    return StandingVehicle(loads, mass, front_roll_share=0.5, wheelbase=wheelbase, front_track=1.5, rear_track=1.5)


def _axle(case: LoadCase, end: str, component: str) -> float:
    return sum(float(getattr(case.contact_force[f"{end}_{side}"], component)) for side in ("left", "right"))


def _uphill(check: Check) -> tuple[float, ...]:
    acceleration = check.si("v") ** 2 / (2 * check.si("s"))
    slope = check.si("grade")
    cosine = 1 / (1 + slope**2) ** 0.5
    g = 32.2 * 0.3048
    # on a grade the driving force works against M a and the slope's part of the weight alike
    weight = check.si("W") * cosine
    driving_g = (acceleration / g + slope * cosine) / cosine
    car = _vehicle(weight, check.si("l1"), check.si("l1") + check.si("l2"), check.si("h"))
    case = driving(car, driving_g=driving_g, driven="rear")
    end, component = {"mk61_F": ("rear", "x"), "mk61_N1": ("front", "z"), "mk61_N2": ("rear", "z")}[check.id]
    return (_axle(case, end, component),)


def _slipping(check: Check) -> tuple[float, ...]:
    from scipy.optimize import brentq  # slow to load, and wanted here alone

    g = 9.81
    wheelbase = check.si("a_front") + check.si("b_rear")
    car = _vehicle(check.si("m") * g, check.si("a_front"), wheelbase, check.si("h"))

    def slip(d: float) -> float:
        case = driving(car, driving_g=d, driven="rear")
        return _axle(case, "rear", "x") - check.si("mu_k") * _axle(case, "rear", "z")

    d = float(brentq(slip, 0.0, 1.0, xtol=1e-14))
    case = driving(car, driving_g=d, driven="rear")
    return ({"hib_NA": _axle(case, "front", "z"), "hib_NB": _axle(case, "rear", "z"), "hib_a": d * g}[check.id],)


def _roller(check: Check) -> tuple[float, ...]:
    weight, radius, height = check.si("W"), check.si("r"), check.si("h")
    cart = StandingTrailer(TrailerLoads(weight, weight, 0.0), MassPoint(2 * weight / STANDARD_GRAVITY), 3.0, 1.5)
    push_at_axle = float(ledge(cart, height=height, loaded_radius={"left": radius, "right": radius}).ledge["left"].push)
    # the same moment about the edge with the longer lever of the rim's top
    return (push_at_axle * (radius - height) / (2 * radius - height),)


def _equal_push(check: Check) -> tuple[float, ...]:
    return (float(highest_ledge(friction=check.si("P/W"), loaded_radius=1.0)),)


SUBJECT = Subject(
    "Load transfer, and a wheel at a step",
    (
        Calculation(("mk61_",), _uphill, (vehicle_loads, driving)),
        Calculation(("hib_",), _slipping, (vehicle_loads, driving)),
        Calculation(("curb_rim",), _roller, (ledge,)),
        Calculation(("curb_P_eq_W",), _equal_push, (highest_ledge,)),
    ),
)

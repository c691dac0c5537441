"""How the load of a row spreads over its elements, against the load-zone integrals of a bearing text."""

import numpy as np
from numpy.typing import NDArray

from hubwright.mechanics.bearing_rows import OUTBOARD, BallRows, RollerRows
from hubwright.mechanics.two_row_bearing import loads_at_displacement
from hubwright.published.check import Calculation, Check, Subject

_ALPHA = float(np.radians(30.0))
_MANY = 720  # elements: then a sum over them is the integral over the ring
_BALLS = BallRows(_MANY, 0.01, pitch_diameter=0.06, contact_angle=_ALPHA, row_spacing=0.02)
_ROLLERS = RollerRows(_MANY, 0.008, 0.012, pitch_diameter=0.06, contact_angle=_ALPHA, row_spacing=0.02)
_Array = NDArray[np.float64]


def zone(rows: BallRows | RollerRows, eps: float) -> tuple[_Array, _Array]:
    """Return the loads over the largest of a row whose load zone is eps of its diameter, and cos ψ."""
    across = 1e-9  # small: the contact angle stays
    along = across * (2 * eps - 1) / np.tan(_ALPHA)
    held = loads_at_displacement(rows, displacement=np.array([0.0, -along, across, 0.0, 0.0])).load[OUTBOARD]
    return held / held.max(), np.cos(2 * np.pi * np.arange(held.size) / held.size)


def _radial_integral(loads: _Array, cosines: _Array) -> float:
    return float(np.mean(loads * cosines))


def _integral(check: Check) -> tuple[float, ...]:
    loads, cosines = zone(_BALLS if check.id.startswith("pt_") else _ROLLERS, check.si("eps"))
    return (_radial_integral(loads, cosines) if check.id[3:].startswith("Jr") else float(np.mean(loads)),)


def _largest_of_half_a_ring(check: Check) -> tuple[float, ...]:
    return (1 / _radial_integral(*zone(_BALLS, check.si("eps"))),)


def _largest_of_few(check: Check) -> tuple[float, ...]:
    rows = BallRows(int(check.si("Z")), 0.01, pitch_diameter=0.06, contact_angle=_ALPHA, row_spacing=0.02)
    return (1 / _radial_integral(*zone(rows, 0.5)),)


def _thrust(check: Check) -> tuple[float, ...]:
    loads, cosines = zone(_BALLS if check.id == "fa_half_pt" else _ROLLERS, check.si("eps"))
    return (float(np.mean(loads)) / _radial_integral(loads, cosines),)


def _means(check: Check) -> tuple[float, ...]:
    loads, _ = zone(_BALLS, check.si("eps"))
    power = {"J1_pt": 3.0, "J2_pt": 10 / 3}[check.id]
    return (float(np.mean(loads**power) ** (1 / power)),)


SUBJECT = Subject(
    "Load on every element",
    (
        Calculation(("pt_J", "ln_J"), _integral, (loads_at_displacement,)),
        Calculation(("stribeck_pt",), _largest_of_half_a_ring, (loads_at_displacement,)),
        Calculation(("stribeck_Z",), _largest_of_few, (loads_at_displacement,)),
        Calculation(("fa_half_",), _thrust, (loads_at_displacement,)),
        Calculation(("J1_pt", "J2_pt"), _means, (loads_at_displacement,)),
    ),
)

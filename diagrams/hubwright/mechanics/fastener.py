"""A stud or bolt: stress area, strength, clamp force from torque, thread engagement, share of an outside pull.

Metres, newtons, pascals, N·m.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Literal

import numpy as np

from hubwright.errors import ImpossibleError
from hubwright.mechanics.constants import Value

ThreadForm = Literal["metric", "inch"]
# pitches by which the diameter of the stress area is less than the nominal one
_STRESS_DIAMETER = {"metric": 0.9382, "inch": 0.9743}  # ISO 898-1; ASME B1.1 (both from memory)
_MINOR_DIAMETER = 1.0825  # pitches by which a nut's thread is narrower inside: ISO 68-1 profile of 60°
_STUD_SHARE, _NUT_SHARE = 0.75, 0.875  # of the engaged length in shear at those diameters, same profile
_SHEAR_OVER_TENSILE = 3**-0.5  # von Mises


@dataclass(frozen=True)
class Strength:
    """Lowest tensile and yield strength and proof stress [Pa]."""

    tensile: float
    yield_: float
    proof: float


def strength(*, property_class: str, diameter: float) -> Strength:
    """Return the strengths of a property class.

    The two numbers on the head say tensile strength and the part of it at which the bolt yields.

        class a.b:  R_m ≈ 100 a MPa,    R_e ≈ 0.1 b R_m

    Parameters
    ----------
    property_class
        As on the head, "10.9".
    diameter
        d, nominal [m].

    Returns
    -------
    Strength
        Lowest strengths of the standard [Pa].

    Raises
    ------
    ImpossibleError
        For a class that the standard has not.

    Notes
    -----
    New, unplated, undamaged bolts at room temperature. Studs of other standards have other strengths.

    Examples
    --------
    >>> strength(property_class="10.9", diameter=0.014).proof / 1e6
    830.0

    References
    ----------
    ISO 898-1:2013, Table 3 (from memory), in iso_898_1_strengths.toml.
    """
    for name, up_to, found in _strengths():
        if name == property_class and diameter <= up_to:
            return found
    raise ImpossibleError(f"'{property_class}' is no property class of ISO 898-1")


def stress_area(*, diameter: Value, pitch: Value, form: ThreadForm = "metric") -> Value:
    """Return the area of a threaded bar that carries tension.

    Between the thread's root and its flanks: what the tensile test of a thread finds.

        A_s = π/4 (d − 0.9382 P)²    (inch threads 0.9743)

    Parameters
    ----------
    diameter
        d, nominal [m].
    pitch
        P [m].
    form
        Metric or inch: their standards differ a little.

    Returns
    -------
    Value
        A_s [m²].

    Notes
    -----
    Threads with the 60 degree profile.

    Examples
    --------
    >>> round(float(stress_area(diameter=0.014, pitch=0.0015)) * 1e6)
    125

    References
    ----------
    ISO 898-1, tables of stress areas; ASME B1.1 (both from memory).
    """
    return np.pi / 4 * (diameter - _STRESS_DIAMETER[form] * pitch) ** 2


def clamp_force(*, torque: Value, nut_factor: Value, diameter: Value) -> Value:
    """Return the force that a tightening torque clamps with.

    Some nine tenths of the torque go into friction under the nut and in the thread, so oil, rust or dirt
    there change the clamp force more than the wrench does.

        F = T/(K d)

    Parameters
    ----------
    torque
        T [N·m].
    nut_factor
        K: about 0.2 for dry, plain steel [1].
    diameter
        d, nominal [m].

    Returns
    -------
    Value
        F, of one fastener [N].

    Notes
    -----
    Between fasteners tightened alike F scatters by a quarter and more (common practice).

    Examples
    --------
    >>> round(clamp_force(torque=140.0, nut_factor=0.2, diameter=0.014))
    50000

    References
    ----------
    Shigley, Mechanical Engineering Design, bolted joints (from memory).
    """
    return torque / (nut_factor * diameter)


def tightening_torque(*, clamp_force: Value, nut_factor: Value, diameter: Value) -> Value:
    """Return the torque that a clamp force takes: the same relation turned round.

    What a table of torques is made from.

        T = K F d

    Parameters
    ----------
    clamp_force
        F [N].
    nut_factor
        K [1].
    diameter
        d [m].

    Returns
    -------
    Value
        T [N·m].

    Notes
    -----
    Of the maker's torque there is no second opinion: this one only shows where such numbers come from.

    Examples
    --------
    >>> round(tightening_torque(clamp_force=50e3, nut_factor=0.2, diameter=0.014), 6)
    140.0

    References
    ----------
    See `clamp_force`.
    """
    return clamp_force * nut_factor * diameter


def proof_load(*, stress_area: Value, proof_stress: Value) -> Value:
    """Return the pull that a stud bears without staying longer.

    A clamp force above it has stretched the stud for good.

        F_p = A_s S_p

    Parameters
    ----------
    stress_area
        A_s [m²].
    proof_stress
        S_p [Pa].

    Returns
    -------
    Value
        F_p [N].

    Notes
    -----
    The twist of tightening takes a part of it, left out here.

    Examples
    --------
    >>> round(proof_load(stress_area=100e-6, proof_stress=830e6), 6)
    83000.0

    References
    ----------
    ISO 898-1, tables of proof loads (from memory).
    """
    return stress_area * proof_stress


def stripping_force(*, diameter: Value, pitch: Value, engagement: Value, tensile_strength: Value) -> Value:
    """Return the pull at which the engaged threads shear off.

    Compared with what breaks the stud it says whether enough turns hold. A slip-on spacer takes its
    thickness from them.

        F = min(0.75 π D₁, 0.875 π d) · L · R_m/√3,    D₁ = d − 1.0825 P

    Parameters
    ----------
    diameter
        d, nominal [m].
    pitch
        P [m].
    engagement
        L, length of thread engaged [m].
    tensile_strength
        R_m, of the weaker of stud and nut [Pa].

    Returns
    -------
    Value
        F [N].

    Notes
    -----
    Basic profile, all turns alike and complete. Real ones have tolerances and unfinished ends, and the
    first turns carry most: common practice asks for a full diameter of engagement at least.

    Examples
    --------
    >>> force = stripping_force(diameter=0.014, pitch=0.0015, engagement=0.014, tensile_strength=1040e6)
    >>> round(float(force) / 1e3)  # 0.75 π × 12.376 mm × 14 mm × 1040 MPa/√3
    245

    References
    ----------
    Shear areas of the basic profile, ISO 68-1 and FED-STD-H28 (from memory).
    """
    D1 = diameter - _MINOR_DIAMETER * pitch
    area = np.pi * engagement * np.minimum(_STUD_SHARE * D1, _NUT_SHARE * diameter)
    return area * tensile_strength * _SHEAR_OVER_TENSILE


def load_share(*, stud_stiffness: Value, clamped_stiffness: Value) -> Value:
    """Return the part of an outside pull that a clamped stud feels; the rest only unloads the faces.

    Stiff faces and a slender stud spare the stud: why a joint must be clamped to live.

        C = k_b/(k_b + k_m)

    Parameters
    ----------
    stud_stiffness
        k_b [N/m].
    clamped_stiffness
        k_m, of the clamped parts [N/m].

    Returns
    -------
    Value
        C [1].

    Notes
    -----
    While the faces touch. Once they part, the stud takes all.

    Examples
    --------
    >>> load_share(stud_stiffness=1e9, clamped_stiffness=4e9)
    0.2

    References
    ----------
    Shigley, Mechanical Engineering Design, tension joints (from memory).
    """
    return stud_stiffness / (stud_stiffness + clamped_stiffness)


def stud_force(*, clamp_force: Value, outside_pull: Value, load_share: Value) -> Value:
    """Return the force in a stud whose joint is pulled from outside.

    Enough clamp force keeps it almost steady, and what does not change does not fatigue.

        F_b = max(F_i + C P, P)

    Parameters
    ----------
    clamp_force
        F_i [N].
    outside_pull
        P, on this stud's part of the joint [N].
    load_share
        C [1].

    Returns
    -------
    Value
        F_b [N].

    Notes
    -----
    Elastic joint.

    Examples
    --------
    >>> float(stud_force(clamp_force=50e3, outside_pull=10e3, load_share=0.2))
    52000.0

    References
    ----------
    Shigley, Mechanical Engineering Design, tension joints (from memory).
    """
    return np.maximum(clamp_force + load_share * outside_pull, outside_pull)


@cache
def _strengths() -> tuple[tuple[str, float, Strength], ...]:
    text = resources.files("hubwright.mechanics").joinpath("iso_898_1_strengths.toml").read_text(encoding="utf-8")
    return tuple(
        (
            line["class"],
            line.get("up_to", np.inf) * 1e-3,
            Strength(line["tensile"] * 1e6, line["yield"] * 1e6, line["proof"] * 1e6),
        )
        for line in tomllib.loads(text)["strength"]
    )

"""Stress areas, proof loads, torques and a clamped joint against standards and worked examples in print."""

from hubwright.mechanics.fastener import (
    load_share,
    proof_load,
    strength,
    stress_area,
    stud_force,
    tightening_torque,
)
from hubwright.published.check import Calculation, Check, Subject


def _metric_area(check: Check) -> tuple[float, ...]:
    return (float(stress_area(diameter=check.si("d"), pitch=check.si("P"))),)


def _inch_area(check: Check) -> tuple[float, ...]:
    return (float(stress_area(diameter=check.si("d"), pitch=1 / check.si("tpi"), form="inch")),)


def _proof_load(check: Check) -> tuple[float, ...]:
    _, size, name = check.id.split("_")
    diameter = float(size.split("x")[0].removeprefix("M")) * 1e-3
    proof = strength(property_class=name, diameter=diameter).proof
    return (float(proof_load(stress_area=check.si("As"), proof_stress=proof)),)


def _share(check: Check) -> float:
    return float(load_share(stud_stiffness=check.si("kb"), clamped_stiffness=check.si("km")))


def _load_share(check: Check) -> tuple[float, ...]:
    return (_share(check),)


def _clamped_stress(check: Check) -> tuple[float, ...]:
    pull = 0.0 if check.id == "joint_si" else check.si("P")
    force = stud_force(clamp_force=check.si("Fi"), outside_pull=pull, load_share=_share(check))
    return (float(force) / check.si("At"),)


def _joint_torque(check: Check) -> tuple[float, ...]:
    force, factor, diameter = check.si("Fi"), check.si("K"), check.si("d")
    return (float(tightening_torque(clamp_force=force, nut_factor=factor, diameter=diameter)),)


def _torque(check: Check) -> tuple[float, ...]:
    clamp = check.si("s") * check.si("At")
    return (float(tightening_torque(clamp_force=clamp, nut_factor=check.si("K"), diameter=check.si("D"))),)


SUBJECT = Subject(
    "Threads and the wheel joint",
    (
        Calculation(("As_",), _metric_area, (stress_area,)),
        Calculation(("At_",), _inch_area, (stress_area,)),
        Calculation(("Fp_",), _proof_load, (strength, proof_load)),
        Calculation(("joint_C",), _load_share, (load_share,)),
        Calculation(("joint_si", "joint_sb"), _clamped_stress, (load_share, stud_force)),
        Calculation(("joint_T",), _joint_torque, (tightening_torque,)),
        Calculation(("torque_half20_gr5",), _torque, (tightening_torque,)),
    ),
)

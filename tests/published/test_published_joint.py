"""Stress areas, proof loads, torques and a clamped joint against standards and worked examples in print."""

import pytest
from published_checks import published

from hubwright.mechanics.fastener import (
    load_share,
    proof_load,
    strength,
    stress_area,
    stud_force,
    tightening_torque,
)


@published("As_")
def test_stress_area_of_metric_threads(check):
    check.agrees(stress_area(diameter=check.si("d"), pitch=check.si("P")))


@published("At_")
def test_stress_area_of_inch_threads(check):
    check.agrees(stress_area(diameter=check.si("d"), pitch=1 / check.si("tpi"), form="inch"))


@published("Fp_")
def test_proof_load(check):
    _, size, name = check.id.split("_")
    diameter = float(size.split("x")[0].removeprefix("M")) * 1e-3
    proof = strength(property_class=name, diameter=diameter).proof
    assert proof == pytest.approx(check.si("Sp"))
    check.agrees(proof_load(stress_area=check.si("As"), proof_stress=proof))


@published("joint_")
def test_preloaded_joint(check):
    share = load_share(stud_stiffness=check.si("kb"), clamped_stiffness=check.si("km"))
    preload, area = check.si("Fi"), check.si("At")
    loaded = stud_force(clamp_force=preload, outside_pull=check.si("P"), load_share=share)
    torque = tightening_torque(clamp_force=preload, nut_factor=check.si("K"), diameter=check.si("d"))
    check.agrees({"joint_C": share, "joint_si": preload / area, "joint_sb": loaded / area, "joint_T": torque}[check.id])


@published("torque_half20_gr5")
def test_tightening_torque(check):
    clamp = check.si("s") * check.si("At")
    check.agrees(tightening_torque(clamp_force=clamp, nut_factor=check.si("K"), diameter=check.si("D")))

"""A setup's wheel joint: clamp, slip, threads and bending in every case; what the file does not say is named. SI units.

A margin is capacity over demand. It compares a model with a model: nothing here says that a joint holds.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field

from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.mechanics.fastener import ThreadForm, clamp_force, proof_load, strength, stress_area, stripping_force
from hubwright.mechanics.vector import Vector as MechanicsVector
from hubwright.mechanics.wheel_joint import (
    bending_test_moment,
    face_bending,
    friction_capacity,
    joint_demand,
    series_margin,
)
from hubwright.results.model import CaseResult, Results, Vector
from hubwright.setup.model import Joint


@dataclass(frozen=True)
class Scattered:
    """A value with its ends by the scatter of the clamp force; all alike where the file gives no scatter."""

    value: float
    low: float
    high: float


@dataclass(frozen=True)
class JointCase:
    """One case at the joint: torque to pass with the shear at the stud circle, margin against slip, bending [N·m]."""

    demand: float
    margin: Scattered | None
    bending: float


@dataclass(frozen=True)
class JointResult:
    """The wheel joint; parts are None where `missing` names what the file does not say. Forces of one stud [N]."""

    joints: int  # in a row: a spacer makes two, and the file's one [joint] is assumed to describe both
    clamp: Scattered | None = None
    proof_load: float | None = None
    breaking_load: float | None = None
    stripping_load: float | None = None  # of threads as strong as the stud's
    engaged_turns: float | None = None
    engaged_diameters: float | None = None
    capacity: Scattered | None = None  # torque before slip [N·m]
    test_moment: float | None = None  # rotating-bending test at the wheel's rating: a yardstick for `bending` [N·m]
    cases: Mapping[str, JointCase] = field(default_factory=dict)
    missing: tuple[str, ...] = ()

    @property
    def clamp_over_proof(self) -> Scattered | None:
        """Clamp force over the stud's proof load [1]."""
        return None if self.clamp is None or not self.proof_load else _times(self.clamp, 1 / self.proof_load)

    @property
    def stripping_over_breaking(self) -> float | None:
        """Pull that strips the engaged threads over the one that breaks the stud [1]."""
        return (
            None if self.stripping_load is None or not self.breaking_load else self.stripping_load / self.breaking_load
        )


def joint_result(results: Results) -> JointResult:
    """Return what the wheel joint of a solved setup passes and must pass."""
    setup = results.setup
    joint, test_moment = setup.joint, _test_moment(results)
    missing = [] if test_moment is not None else ["limits.wheel_rating"]
    joints = 2 if setup.wheel.spacer > 0 else 1
    if joint is None:
        return JointResult(joints, test_moment=test_moment, missing=("joint", *missing))
    names = ("nut_factor", "torque_scatter", "face_friction", "engagement")
    missing = [*(f"joint.{name}" for name in names if getattr(joint, name) is None), *missing]
    thread, engagement = joint.thread, joint.engagement
    found = strength(property_class=joint.property_class, diameter=thread.diameter)
    form: ThreadForm = "metric" if thread.text.upper().startswith("M") else "inch"
    area = float(stress_area(diameter=thread.diameter, pitch=thread.pitch, form=form))
    clamp = _clamp(joint)
    capacity = None
    if clamp is not None and joint.face_friction is not None:
        one_newton = friction_capacity(
            studs=joint.studs, clamp_force=1.0, face_friction=joint.face_friction, stud_circle=joint.stud_circle
        )
        capacity = _times(clamp, float(one_newton))
    stripping = None
    if engagement is not None:
        stripping = float(
            stripping_force(
                diameter=thread.diameter, pitch=thread.pitch, engagement=engagement, tensile_strength=found.tensile
            )
        )
    return JointResult(
        joints=joints,
        clamp=clamp,
        proof_load=float(proof_load(stress_area=area, proof_stress=found.proof)),
        breaking_load=area * found.tensile,
        stripping_load=stripping,
        engaged_turns=None if engagement is None else engagement / thread.pitch,
        engaged_diameters=None if engagement is None else engagement / thread.diameter,
        capacity=capacity,
        test_moment=test_moment,
        cases={name: _case(results, case, joint, capacity, joints) for name, case in results.cases.items()},
        missing=tuple(missing),
    )


def _clamp(joint: Joint) -> Scattered | None:
    if joint.nut_factor is None:
        return None
    force = clamp_force(torque=joint.tightening_torque, nut_factor=joint.nut_factor, diameter=joint.thread.diameter)
    scatter = joint.torque_scatter or 0.0
    return Scattered(float(force), float(force * (1 - scatter)), float(force * (1 + scatter)))


def _case(results: Results, case: CaseResult, joint: Joint, capacity: Scattered | None, joints: int) -> JointCase:
    contact = case.free_body.force("contact")
    own = [case.free_body.force(name).force for name in ("weight_wheel", "inertia_wheel")]
    demand = float(
        joint_demand(
            contact_force=_vector(contact.force),
            wheel_force=_vector(own[0]) + _vector(own[1]),
            loaded_radius=results.wheel_geometry.loaded_radius,
            stud_circle=joint.stud_circle,
            ledge_angle=math.atan2(contact.point.x, -contact.point.z),
        )
    )
    # the face of the wheel, not of the hub: a spacer lies between the two
    face = results.side * (results.setup.hub.face_to_bearing_centre + results.setup.wheel.spacer)
    point = _vector(contact.point) - MechanicsVector(0.0, face, 0.0)
    margin = None
    if capacity is not None and demand > 0:
        ends = (capacity.value / demand, capacity.low / demand, capacity.high / demand)
        margin = Scattered(*(float(series_margin([end] * joints)) for end in ends))
    return JointCase(demand, margin, float(face_bending(contact_force=_vector(contact.force), contact_point=point)))


def _test_moment(results: Results) -> float | None:
    limits = results.setup.limits
    if limits is None or limits.wheel_rating is None:
        return None
    return float(
        bending_test_moment(
            wheel_load=limits.wheel_rating * STANDARD_GRAVITY,
            tire_radius=results.wheel_geometry.rolling_circumference / (2 * math.pi),
            offset=results.setup.wheel.offset,
        )
    )


def _times(value: Scattered, factor: float) -> Scattered:
    return Scattered(value.value * factor, value.low * factor, value.high * factor)


def _vector(vector: Vector) -> MechanicsVector:
    return MechanicsVector(*vector.components)

"""Workings of the wheel joint: clamp, friction, what a case asks of it, and its margin."""

import math
from collections.abc import Callable, Mapping

from hubwright.errors import MissingDataError
from hubwright.lessons.blocks import BlockError
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.joint import joint_result


def clamp(results: Results) -> Working:
    """Return how a tightening torque becomes the pull of a stud."""
    joint, found = results.setup.joint, joint_result(results).clamp
    if joint is None or joint.nut_factor is None or found is None:
        raise MissingDataError(result="the clamp force", missing=["joint.nut_factor"])
    return Working(
        what="Clamp force of one stud",
        lines=(Line("F", "T/(K*d)", us="inches_in_a_foot*T/(K*d)"),),
        symbols={
            "F": Symbol("F", "clamp force of one stud", Quantity(found.value, "N")),
            "T": Symbol("T", "tightening torque", Quantity(joint.tightening_torque, "N*m")),
            "K": Symbol("K", "nut factor: friction of thread and seat", Quantity(joint.nut_factor, "1")),
            "d": Symbol("d", "diameter of the thread", Quantity(joint.thread.diameter, "m"), "m"),
        },
        source="Common practice; the nut factor holds friction of thread and seat in one number.",
        function="fastener.clamp_force",
    )


def capacity(results: Results) -> Working:
    """Return the torque that the clamped faces hold by friction."""
    joint, found = results.setup.joint, joint_result(results)
    if joint is None or joint.face_friction is None or found.clamp is None or found.capacity is None:
        raise MissingDataError(result="the friction of the joint", missing=["joint.nut_factor", "joint.face_friction"])
    return Working(
        what="Torque that the clamped faces hold by friction",
        lines=(Line("C", "n*F*m*D/2", us="n*F*m*D/(2*inches_in_a_foot)"),),
        symbols={
            "C": Symbol("C", "torque before the faces slip", Quantity(found.capacity.value, "N*m")),
            "n": Symbol("n", "studs", Quantity(joint.studs, "1", kind="count")),
            "F": Symbol("F", "clamp force of one stud", Quantity(found.clamp.value, "N"), path="fastening.clamp"),
            "m": Symbol(r"\mu", "friction between the faces", Quantity(joint.face_friction, "1")),
            "D": Symbol("D", "diameter of the stud circle", Quantity(joint.stud_circle, "m"), "m"),
        },
        source="All friction at the stud circle; the seats of the nuts and the pilot are left out.",
        function="wheel_joint.friction_capacity",
    )


def clamp_over_proof(results: Results) -> Working:
    """Return the clamp force over the load that the stud is proved with."""
    found = joint_result(results)
    if found.clamp is None or found.proof_load is None or found.clamp_over_proof is None:
        raise MissingDataError(result="the clamp force over the proof load", missing=["joint.nut_factor"])
    share = Quantity(found.clamp_over_proof.value, "1", kind="percent")
    return Working(
        what="Clamp force over proof load",
        lines=(Line("s", "F/P"),),
        symbols={
            "s": Symbol("s", "share of the proof load", share),
            "F": Symbol("F", "clamp force of one stud", Quantity(found.clamp.value, "N"), path="fastening.clamp"),
            "P": Symbol(r"F_\mathrm{p}", "proof load of one stud", Quantity(found.proof_load, "N")),
        },
        source="Proof stress of ISO 898-1 over the stress area of the thread.",
        function="fastener.proof_load",
    )


def demand(results: Results, case: CaseResult) -> Working:
    """Return the torque that the joint must pass in a case, with the shear counted at the stud circle."""
    joint, found = results.setup.joint, joint_result(results).cases.get(case.name)
    if joint is None or found is None:
        raise MissingDataError(result="what the joint must pass", missing=["joint"])
    contact = case.free_body.force("contact")
    own = [case.free_body.force(name).force for name in ("weight_wheel", "inertia_wheel")]
    shear = math.hypot(contact.force.x + sum(each.x for each in own), contact.force.z + sum(each.z for each in own))
    symbols = {
        "T": Symbol("T", "torque that the joint must pass", Quantity(found.demand, "N*m")),
        "V": Symbol("V", "force across the joint: road, weight and inertia of the wheel", Quantity(shear, "N")),
        "D": Symbol("D", "diameter of the stud circle", Quantity(joint.stud_circle, "m"), "m"),
    }
    parts: list[str] = []
    for axis, other in (("z", "x"), ("x", "z")):
        place, force = getattr(contact.point, axis), getattr(contact.force, other)
        if place != 0 and force != 0:
            words = f"contact from the centre, {'upward' if axis == 'z' else 'forward'}"
            symbols[f"r_{axis}"] = Symbol(f"r_{axis}", words, Quantity(place, "m"), "m")
            symbols[f"F_{other}"] = Symbol(
                f"F_{other}", "the road's push on the tire", Quantity(force, "N"), path=f"contact_force.{other}"
            )
            parts.append(f"r_{axis}*F_{other}")
    lines = [Line("T", "V*D/2", us="V*D/2/inches_in_a_foot")]
    if parts:
        turning = contact.point.z * contact.force.x - contact.point.x * contact.force.z
        symbols["M"] = Symbol("M", "turning effect of the road about the axle", Quantity(turning, "N*m"))
        lines = [
            Line("M", " - ".join(parts), us=" - ".join(f"{part}/inches_in_a_foot" for part in parts)),
            Line("T", "abs(M) + V*D/2", us="abs(M) + V*D/2/inches_in_a_foot"),
        ]
    return Working(
        what="Torque that the joint must pass",
        lines=tuple(lines),
        symbols=symbols,
        source="Turning effect about the axle, and the force across as if it met the torque at one stud.",
        function="wheel_joint.joint_demand",
    )


def margin(results: Results, case: CaseResult) -> Working:
    """Return capacity over demand of the joint in a case."""
    found = joint_result(results)
    own = found.cases.get(case.name)
    if own is None or own.margin is None or found.capacity is None:
        raise MissingDataError(result="the margin against slip", missing=["joint.nut_factor", "joint.face_friction"])
    if own.demand <= 0:
        raise BlockError(f"nothing asks for the joint's friction in '{case.name}'")
    return Working(
        what="Capacity over demand of the joint",
        lines=(Line("m", "C/T"),),
        symbols={
            "m": Symbol("m", "capacity over demand, a model over a model", Quantity(own.margin.value, "1")),
            "C": Symbol(
                "C", "torque before the faces slip", Quantity(found.capacity.value, "N*m"), path="fastening.capacity"
            ),
            "T": Symbol("T", "torque to pass", Quantity(own.demand, "N*m"), path="fastening.demand"),
        },
        source="Of two joints in a row the worse counts; here both have the same fasteners and faces.",
        function="wheel_joint.series_margin",
    )


SETUP_WORKINGS: Mapping[str, Callable[[Results], Working]] = {
    "fastening.clamp": clamp,
    "fastening.capacity": capacity,
    "fastening.clamp_over_proof": clamp_over_proof,
}
CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    "fastening.demand": demand,
    "fastening.margin": margin,
}

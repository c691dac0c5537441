"""Hertz contact against the tables of a bearing text and a worked example of two balls."""

from hubwright.mechanics.bearing_contact import (
    Curvature,
    contact_shape,
    point_contact_approach,
    point_contact_pressure,
    point_contact_semiaxes,
    point_contact_stiffness,
)
from hubwright.published.check import Calculation, Check, Subject

_ROUND_UNIT = Curvature(sum=1.0, difference=0.0)  # a* = δ* = 1 and Σρ = 1: what is left is the constant


def _shape(check: Check) -> tuple[float, ...]:
    shape = contact_shape(curvature_difference=check.si("F(rho)"))
    return (float({"a": shape.semimajor, "b": shape.semiminor, "d": shape.approach}[check.id[len("hertz_")]]),)


def _patch_constant(check: Check) -> tuple[float, ...]:
    a, _ = point_contact_semiaxes(
        load=1.0, curvature=_ROUND_UNIT, youngs_modulus=check.si("E"), poissons_ratio=check.si("nu")
    )
    return (float(a),)


def _approach_constant(check: Check) -> tuple[float, ...]:
    stiffness = point_contact_stiffness(
        curvature=_ROUND_UNIT, youngs_modulus=check.si("E"), poissons_ratio=check.si("nu")
    )
    return (float(point_contact_approach(load=1.0, stiffness=stiffness)),)


def _two_balls(check: Check) -> tuple[float, ...]:
    curvature = Curvature(sum=2 / check.si("R1") + 2 / check.si("R2"), difference=0.0)
    E, nu, load = check.si("E"), check.si("nu"), check.si("W")
    if check.id == "sph2_d":
        stiffness = point_contact_stiffness(curvature=curvature, youngs_modulus=E, poissons_ratio=nu)
        return (float(point_contact_approach(load=load, stiffness=stiffness)),)
    if check.id == "sph2_a":
        a, _ = point_contact_semiaxes(load=load, curvature=curvature, youngs_modulus=E, poissons_ratio=nu)
        return (float(a),)
    return (float(point_contact_pressure(load=load, curvature=curvature, youngs_modulus=E, poissons_ratio=nu)),)


SUBJECT = Subject(
    "Contact of balls",
    (
        Calculation(("hertz_astar", "hertz_bstar", "hertz_dstar"), _shape, (contact_shape,)),
        Calculation(("hertz_c_a",), _patch_constant, (point_contact_semiaxes,)),
        Calculation(("hertz_c_d",), _approach_constant, (point_contact_stiffness, point_contact_approach)),
        Calculation(("sph2_a",), _two_balls, (point_contact_semiaxes,)),
        Calculation(("sph2_d",), _two_balls, (point_contact_stiffness, point_contact_approach)),
        Calculation(("sph2_p0",), _two_balls, (point_contact_pressure,)),
    ),
)

"""Hertz contact against the tables of a bearing text and a worked example of two balls."""

from published_checks import published

from hubwright.mechanics.bearing_contact import (
    Curvature,
    contact_shape,
    point_contact_approach,
    point_contact_pressure,
    point_contact_semiaxes,
    point_contact_stiffness,
)


@published("hertz_astar", "hertz_bstar", "hertz_dstar")
def test_shape_of_an_elliptic_contact(check):
    shape = contact_shape(curvature_difference=check.si("F(rho)"))
    check.agrees({"a": shape.semimajor, "b": shape.semiminor, "d": shape.approach}[check.id[len("hertz_")]])


ROUND_UNIT = Curvature(sum=1.0, difference=0.0)  # a* = δ* = 1 and Σρ = 1: what is left is the constant


@published("hertz_c_a")
def test_steel_constant_of_the_patch(check):
    a, _ = point_contact_semiaxes(
        load=1.0, curvature=ROUND_UNIT, youngs_modulus=check.si("E"), poissons_ratio=check.si("nu")
    )
    check.agrees(a)


@published("hertz_c_d")
def test_steel_constant_of_the_approach(check):
    stiffness = point_contact_stiffness(
        curvature=ROUND_UNIT, youngs_modulus=check.si("E"), poissons_ratio=check.si("nu")
    )
    check.agrees(point_contact_approach(load=1.0, stiffness=stiffness))


@published("sph2_")
def test_two_balls(check):
    curvature = Curvature(sum=2 / check.si("R1") + 2 / check.si("R2"), difference=0.0)
    steel = {"curvature": curvature, "youngs_modulus": check.si("E"), "poissons_ratio": check.si("nu")}
    load = check.si("W")
    check.agrees(
        {
            "sph2_a": point_contact_semiaxes(load=load, **steel)[0],
            "sph2_p0": point_contact_pressure(load=load, **steel),
            "sph2_d": point_contact_approach(load=load, stiffness=point_contact_stiffness(**steel)),
        }[check.id]
    )

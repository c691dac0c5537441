"""Solved beams: tables of textbooks, relations of shear and moment; the free body of the wheel end as second road."""

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hubwright.errors import MissingDataError
from hubwright.mechanics.spindle_beam import spindle_beam
from hubwright.results import solve
from hubwright.results.beams import beam_as_json, solve_beam, wheel_end_beam
from hubwright.setup import load_text
from hubwright.setup.model import Beam, DistributedLoad, PointForce, PointMoment, Section, Support
from strategies import setups

SECTION = Section(youngs_modulus=200e9, second_moment=4e-6)


def beam(*, supports: list[Support], loads: list, length: float = 4.0, section: Section | None = SECTION) -> Beam:
    return Beam("Test beam", "test-beam", length, tuple(supports), tuple(loads), section, {}, ())


@pytest.mark.parametrize(
    ("supports", "load", "moment", "deflection"),
    [
        # the usual tables of beams, as in any text on mechanics of materials; from memory
        ([Support(0, "pin"), Support(4, "roller")], PointForce(2.0, -900.0), 900 * 4 / 4, -900 * 4**3 / 48),
        (
            [Support(0, "pin"), Support(4, "roller")],
            DistributedLoad(0, 4, -500.0),
            500 * 4**2 / 8,
            -5 * 500 * 4**4 / 384,
        ),
        ([Support(0, "fixed")], PointForce(4.0, -900.0), -900 * 4, -900 * 4**3 / 3),
        ([Support(0, "fixed")], DistributedLoad(0, 4, -500.0), -500 * 4**2 / 2, -500 * 4**4 / 8),
        ([Support(0, "fixed"), Support(4, "fixed")], PointForce(2.0, -900.0), -900 * 4 / 8, -900 * 4**3 / 192),
    ],
)
def test_maxima_are_those_of_the_tables(supports, load, moment, deflection):
    solved = solve_beam(beam(supports=supports, loads=[load]))
    rigidity = 200e9 * 4e-6
    assert solved.maximum_moment.value == pytest.approx(moment, rel=1e-9)
    assert solved.maximum_deflection is not None
    assert solved.maximum_deflection.value == pytest.approx(deflection / rigidity, rel=1e-9)


@st.composite
def random_beams(draw: st.DrawFn) -> Beam:
    supports = draw(
        st.sampled_from(
            [
                [Support(0, "pin"), Support(4, "roller")],
                [Support(1, "pin"), Support(3, "roller")],
                [Support(4, "fixed")],
                [Support(0, "fixed"), Support(2.5, "roller")],
            ]
        )
    )
    place, size = st.floats(0, 4).map(lambda x: round(x, 3)), st.floats(-5e3, 5e3).map(lambda x: round(x, 1))
    spread = st.tuples(st.integers(0, 19), st.integers(20, 40), size).map(
        lambda t: DistributedLoad(t[0] / 10, t[1] / 10, t[2])
    )
    load = st.one_of(st.builds(PointForce, place, size), st.builds(PointMoment, place, size), spread)
    return beam(supports=supports, loads=draw(st.lists(load, min_size=1, max_size=4)))


def largest_load(case: Beam) -> float:
    """The measure for what is only rounding."""
    sizes = [1e-6]
    for load in case.loads:
        match load:
            case PointForce():
                sizes.append(abs(load.force))
            case PointMoment():
                sizes.append(abs(load.moment))
            case DistributedLoad():
                sizes.append(abs(load.intensity) * 4)
    return max(sizes)


@given(random_beams())
@settings(max_examples=60, deadline=None)
def test_the_moment_grows_by_the_area_under_the_shear(case: Beam):
    curves = solve_beam(case).curves
    size = largest_load(case)
    for i, j in pairwise(range(len(curves.x))):
        if curves.x[j] > curves.x[i]:  # not across a step; the shear is straight between two samples
            area = (curves.x[j] - curves.x[i]) * (curves.shear[i] + curves.shear[j]) / 2
            assert curves.moment[j] - curves.moment[i] == pytest.approx(area, abs=1e-9 * size)


@given(random_beams())
@settings(max_examples=60, deadline=None)
def test_steps_are_the_forces_and_couples_there(case: Beam):
    solved = solve_beam(case)
    curves = solved.curves
    acting = [(load.at, load.force, 0.0) for load in case.loads if isinstance(load, PointForce)]
    acting += [(load.at, 0.0, -load.moment) for load in case.loads if isinstance(load, PointMoment)]
    acting += [(reaction.at, reaction.force, -reaction.moment) for reaction in solved.reactions]
    size = largest_load(case)
    for i, j in pairwise(range(len(curves.x))):
        if curves.x[i] == curves.x[j]:
            here = [each for each in acting if math.isclose(each[0], curves.x[i], abs_tol=1e-12)]
            step = curves.shear[j] - curves.shear[i], curves.moment[j] - curves.moment[i]
            assert step == pytest.approx((sum(f for _, f, _ in here), sum(m for _, _, m in here)), abs=1e-9 * size)


@given(random_beams())
@settings(max_examples=60, deadline=None)
def test_no_sample_exceeds_the_maximum_and_its_place_is_sampled(case: Beam):
    solved = solve_beam(case)
    deflection = solved.deflection
    assert deflection is not None
    assert solved.maximum_deflection is not None
    for values, extreme in (
        (solved.curves.shear, solved.maximum_shear),
        (solved.curves.moment, solved.maximum_moment),
        (deflection, solved.maximum_deflection),
    ):
        assert max(map(abs, values)) == pytest.approx(abs(extreme.value), rel=1e-6, abs=1e-15)


@given(random_beams())
@settings(max_examples=30, deadline=None)
def test_the_beam_stays_on_its_supports(case: Beam):
    solved = solve_beam(case)
    bend = solved.curves.bend_times_stiffness
    for support in case.supports:
        assert np.interp(support.at, solved.curves.x, bend) == pytest.approx(0, abs=1e-9 * largest_load(case) * 4**3)


def test_without_a_section_there_is_a_shape_but_no_deflection():
    solved = solve_beam(beam(supports=[Support(0, "fixed")], loads=[PointForce(4.0, -9.0)], section=None))
    assert solved.deflection is None
    assert solved.slope is None
    assert solved.maximum_deflection is None
    assert min(solved.curves.bend_times_stiffness) == pytest.approx(-9 * 4**3 / 3)


def test_json_gives_value_unit_and_place():
    entry = beam_as_json(solve_beam(beam(supports=[Support(0, "fixed")], loads=[PointForce(4.0, -9.0)])))
    assert entry["reactions"] == [
        {
            "type": "fixed",
            "value": pytest.approx(9.0),
            "unit": "N",
            "at": {"value": 0, "unit": "m"},
            "moment": {"value": pytest.approx(36.0), "unit": "N*m"},
        }
    ]
    assert entry["maximum_moment"] == {"value": pytest.approx(-36.0), "unit": "N*m", "at": {"value": 0, "unit": "m"}}
    assert set(entry["maximum_deflection"]) == {"value", "unit", "at"}


@given(setups())
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_the_rows_push_back_what_the_free_body_of_the_wheel_end_gives_them(setup):
    results = solve(setup)
    for name, case in results.cases.items():
        solved = wheel_end_beam(results, name)
        assert case.row_load is not None
        size = max(abs(case.row_load.outboard.z), abs(case.row_load.inboard.z))
        assert solved.reaction_outboard == pytest.approx(-case.row_load.outboard.z, abs=1e-9 * size)
        assert solved.reaction_inboard == pytest.approx(-case.row_load.inboard.z, abs=1e-9 * size)


@given(setups())
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_bending_is_that_of_the_closed_form_also_where_the_load_is_replaced(setup):
    results = solve(setup)
    for name, case in results.cases.items():
        solved = wheel_end_beam(results, name)
        closed = spindle_beam(
            bearing_force=case.bearing_force.z,
            bearing_moment=case.bearing_moment.x,
            side=results.side,
            effective_spread=solved.spread,
        )
        peak = float(closed.peak_moment)
        assert solved.maximum_moment.value == pytest.approx(peak, rel=1e-9, abs=1e-9 * abs(solved.load) * solved.spread)
        assert solved.overhung == (float(closed.overhang) > 0)
        assert solved.cantilever_moment >= abs(peak) * (1 - 1e-9)


WAGON = """
name = "Level wagon"
chassis = { front_axle_mass = "1000 kg", rear_axle_mass = "900 kg", wheelbase = "2.6 m", front_track = "1.5 m" }
tire = { size = "225/75R16" }
wheel = { rim_width = "7 in", offset = "30 mm" }
"""


def test_left_and_right_wheel_bend_alike():
    setup = load_text(WAGON)
    left, right = (wheel_end_beam(solve(setup, wheel), "standing") for wheel in ("front_left", "front_right"))
    assert left.curves == right.curves


@pytest.mark.parametrize("wheel", ["front_left", "front_right"])
def test_a_load_too_far_out_to_draw_bends_the_spindle_just_as_much_between_the_supports(wheel):
    bend = '[[case]]\nname = "bend"\nkind = "cornering"\nlateral_g = 0.75\ntoward = "right"\n'
    results = solve(load_text(WAGON + bend), wheel)
    moved, case = wheel_end_beam(results, "bend"), results.cases["bend"]
    closed = spindle_beam(
        bearing_force=case.bearing_force.z,
        bearing_moment=case.bearing_moment.x,
        side=results.side,
        effective_spread=moved.spread,
    )
    assert (moved.couple is not None) == (wheel == "front_right")  # the inner wheel has little weight left
    # away from the two supports, where V and M step
    inside = [i for i, x in enumerate(moved.curves.x) if abs(x) < 0.49 * moved.spread]
    assert len(inside) > 10
    for i in inside:
        x = moved.curves.x[i] + moved.spread / 2
        assert moved.curves.shear[i] == pytest.approx(closed.shear(x), rel=1e-9)
        assert moved.curves.moment[i] == pytest.approx(closed.moment(x), rel=1e-6)
        assert moved.curves.bend_times_stiffness[i] == pytest.approx(closed.shape(x), rel=1e-6)


def test_a_bearing_without_rows_says_what_is_missing():
    setup = load_text(WAGON + '[bearing]\nkind = "tapered pair"\n')
    with pytest.raises(MissingDataError, match=r"bearing\.row_spacing"):
        wheel_end_beam(solve(setup), "standing")

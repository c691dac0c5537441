"""The spindle as a beam against the general solver, its limits, and what the bearing rows say."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from mechanics_strategies import between, cases, hubs, vehicles

from hubwright.mechanics.beam import PointForce, Support, solve_beam
from hubwright.mechanics.spindle_beam import SpindleBeam, cantilever_deflection, flexural_rigidity, spindle_beam


@given(between(-0.1, 0.2), between(0.04, 0.1), between(-9000, 9000))
def test_the_closed_form_is_the_general_beam(load_at, spread, load):
    ours = SpindleBeam(load=load, load_at=load_at, spread=spread)
    shift = 0.15  # the general beam starts at its left end
    general = solve_beam(
        length=0.5,
        supports=[Support(shift, "pin"), Support(shift + spread, "roller")],
        loads=[PointForce(shift + load_at, load)],
        flexural_rigidity=1.0,
    )
    assert ours.reaction_outboard == pytest.approx(general.reactions[0].force, abs=1e-6)
    assert ours.reaction_inboard == pytest.approx(general.reactions[1].force, abs=1e-6)
    x = np.linspace(-0.11, 0.31, 43) + 1e-7  # beside the steps
    assert ours.shear(x) == pytest.approx(general.shear(x + shift), abs=1e-6)
    assert ours.moment(x) == pytest.approx(general.moment(x + shift), abs=1e-6)
    assert ours.slope(x, flexural_rigidity=1.0) == pytest.approx(general.slope(x + shift), abs=1e-7)
    assert ours.deflection(x, flexural_rigidity=1.0) == pytest.approx(general.deflection(x + shift), abs=1e-7)
    assert abs(ours.peak_moment) == pytest.approx(abs(general.maximum_moment.value), abs=1e-6)


@given(st.data())
def test_the_supports_push_as_the_bearing_rows_do(data):
    case = data.draw(cases(data.draw(vehicles())))
    hub = data.draw(hubs)
    for wheel, side in (("front_left", 1), ("front_right", -1)):
        end = hub.under(case, wheel)
        if abs(end.bearing_force.z) < 1.0:
            continue
        beam = spindle_beam(
            bearing_force=end.bearing_force.z,
            bearing_moment=end.bearing_moment.x,
            side=side,
            effective_spread=hub.effective_spread,
        )
        assert beam.reaction_outboard == pytest.approx(-end.row_load_outboard.z, rel=1e-9, abs=1e-6)
        assert beam.reaction_inboard == pytest.approx(-end.row_load_inboard.z, rel=1e-9, abs=1e-6)


def test_between_the_pressure_centres_bending_peaks_at_the_load_and_outside_at_the_near_support():
    places = np.array([0.02, -0.03, 0.09])
    beam = SpindleBeam(load=6000.0, load_at=places, spread=0.06)
    assert beam.peak_at == pytest.approx([0.02, 0.0, 0.06])
    # the load times its overhang, whatever the spread
    assert beam.peak_moment == pytest.approx([-6000 * 0.02 * 0.04 / 0.06, 6000 * 0.03, 6000 * 0.03])
    assert beam.overhang == pytest.approx([0.0, 0.03, 0.03])


def test_an_overhung_load_reverses_the_far_row():
    between_rows, overhung = (SpindleBeam(load=6000.0, load_at=a, spread=0.06) for a in (0.01, -0.01))
    assert between_rows.reaction_inboard < 0 < overhung.reaction_inboard


def test_moving_the_load_outboard_lowers_the_bending_while_the_outboard_row_gains():
    centre, outward = (SpindleBeam(load=6000.0, load_at=a, spread=0.06) for a in (0.03, 0.01))
    assert abs(outward.peak_moment) < abs(centre.peak_moment)
    assert abs(outward.reaction_outboard) > abs(centre.reaction_outboard)


def test_a_cantilever_is_the_overhung_spindle_on_supports_close_together():
    overhang, load = 0.05, 5000.0
    limit = cantilever_deflection(load=load, overhang=overhang, flexural_rigidity=20000.0)
    for spread in (1e-2, 1e-4, 1e-6):
        beam = SpindleBeam(load=load, load_at=-overhang, spread=spread)
        tip = beam.deflection(-overhang, flexural_rigidity=20000.0)
        # a²(ℓ + a) against a³
        assert tip / limit == pytest.approx(1 + spread / overhang, rel=1e-6)


def test_a_round_spindles_stiffness_is_the_integral_of_its_strips():
    d = 0.042
    heights = np.linspace(-d / 2, d / 2, 200001)
    strips = heights**2 * 2 * np.sqrt(np.maximum(d**2 / 4 - heights**2, 0))
    second_moment = float(np.sum(strips) * (heights[1] - heights[0]))
    assert flexural_rigidity(diameter=d, youngs_modulus=1.0) == pytest.approx(second_moment, rel=1e-6)
    assert math.isclose(flexural_rigidity(diameter=d), 207e9 * flexural_rigidity(diameter=d, youngs_modulus=1.0))

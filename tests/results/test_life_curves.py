"""Life over what is changed: 1 at the setup's own place, and the same as solving a changed setup by itself."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from hubwright.results import Results, solve
from hubwright.results.life_curves import DUTY, LifeCurves, against_lateral_g, against_load_line, against_wheel_load
from hubwright.setup import load
from hubwright.setup.case_model import Cornering

CONTENT = Path(__file__).parents[2] / "content"
VEHICLES = ("hill-wagon", "supply-van", "kit-trailer")


def solved(vehicle: str) -> Results:
    return solve(load(CONTENT / f"vehicles/{vehicle}.toml"))


def revolutions(results: Results) -> float:
    life = results.life
    assert life is not None
    assert life.duty is not None
    return life.duty.revolutions


def ratio(curves: LifeCurves, name: str, x: float) -> float:
    curve = next(curve for curve in curves.curves if curve.name == name)
    return float(np.interp(x, curves.x, curve.ratio))


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_nothing_changed_is_one(vehicle: str) -> None:
    results = solved(vehicle)
    for curves in (against_load_line(results), against_wheel_load(results), against_lateral_g(results)):
        for curve in curves.curves:
            assert ratio(curves, curve.name, curves.own) == pytest.approx(1.0)
        assert curves.band is not None
        # at its own place a draw is compared with itself
        assert curves.band.at(curves.own) == pytest.approx((1.0, 1.0))
        assert (curves.band.low <= curves.band.high).all()


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_a_point_is_the_life_of_that_setup_by_itself(vehicle: str) -> None:
    results = solved(vehicle)
    setup = results.setup
    wider = solve(replace(setup, wheel=replace(setup.wheel, offset=setup.wheel.offset - 0.025)))
    curves = against_load_line(results)
    # a wheel of less offset stands where a spacer would put it; its lever acts alike
    assert ratio(curves, DUTY, curves.own + 0.025) == pytest.approx(revolutions(wider) / revolutions(results))


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_more_load_means_less_life(vehicle: str) -> None:
    curves = against_wheel_load(solved(vehicle))
    assert (np.diff(curves.x) > 0).all()
    assert (np.diff(curves.curves[0].ratio) < 0).all()
    # near the own load the slope lies about the powers of balls (3) and of rollers in one slice (4)
    power = -np.log(ratio(curves, DUTY, 1.05 * curves.own)) / np.log(1.05)
    assert 2.6 < power < 4.3


def test_a_bend_is_that_bend_solved_by_itself() -> None:
    results = solved("hill-wagon")
    bend = Cornering("bend", "bend", 0.25, "right")
    alone = solve(replace(results.setup, cases=(results.setup.cases[0], bend), duty=())).life
    assert alone is not None
    lives = alone.cases["bend"].detailed, alone.cases["standing"].detailed
    assert lives[0] is not None
    assert lives[1] is not None
    # the left wheel is the outer one in a bend to the right
    assert ratio(against_lateral_g(results), "outer", 0.25) == pytest.approx(lives[0] / lives[1])

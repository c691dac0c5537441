"""The drop: against a general solver, closed forms, energy and limits."""

import dataclasses

import hypothesis.strategies as st
import numpy as np
import pytest
from hypothesis import given, settings
from mechanics_strategies import between
from scipy.integrate import solve_ivp

from hubwright.errors import ImpossibleError
from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.mechanics.impact import QuarterCar, drop, tire_on_rim
from hubwright.mechanics.impact_energy import energy_bound, fall_energy, impact_factor
from hubwright.mechanics.ride import corner_frequencies, natural_frequency, ride_rate

g = STANDARD_GRAVITY
WAGON = QuarterCar(
    sprung_mass=508.0,
    unsprung_mass=52.0,
    turning_mass=40.0,
    tire_stiffness=260e3,
    wheel_rate=28e3,
    bump_damping=1500.0,
    rebound_damping=3000.0,
    droop_travel=0.08,
    bump_travel=0.08,
    bump_stop_stiffness=200e3,
)
# no damping; all travel, so that no stop is met before the spring is slack
SPRINGS = dataclasses.replace(
    WAGON, bump_damping=0.0, rebound_damping=0.0, droop_travel=1.0, bump_travel=9.0, bump_stop_stiffness=0.0
)


def accelerations(car, body, wheel, body_speed, wheel_speed):
    """Return both accelerations by the words of the model, one line for each force."""
    standing = car.sprung_mass * g / car.wheel_rate
    c0 = max(standing - car.droop_travel, 0.0)
    stop = 20 * car.wheel_rate
    compression = c0 - car.wheel_rate * c0 / (car.wheel_rate + stop) + body - wheel
    closing = body_speed - wheel_speed
    strut = max(car.wheel_rate * compression, 0.0)
    strut += (car.bump_damping if closing > 0 else car.rebound_damping) * closing
    strut += car.bump_stop_stiffness * max(compression - standing - car.bump_travel, 0.0)
    strut += stop * min(compression - c0, 0.0)
    tire = car.tire_stiffness * max(wheel, 0.0)
    return g - strut / car.sprung_mass, g + (strut - tire) / car.unsprung_mass, tire


def solved_alone(car, height):
    """Return peak tire and bearing force by scipy's solver."""
    speed = np.sqrt(2 * g * height)
    end = 1.25 / natural_frequency(
        stiffness=ride_rate(wheel_rate=car.wheel_rate, tire_stiffness=car.tire_stiffness), mass=car.sprung_mass
    )

    def rate(_, state):
        body, wheel, _ = accelerations(car, *state)
        return [state[2], state[3], body, wheel]

    course = solve_ivp(rate, (0.0, end), [0.0, 0.0, speed, speed], rtol=1e-7, atol=1e-9, max_step=5e-4).y.T
    parts = [accelerations(car, *state) for state in course]
    tire = np.array([part[2] for part in parts])
    wheel = np.array([part[1] for part in parts])
    return tire.max(), (tire - car.turning_mass * (g - wheel)).max()


CARS = {
    "with stops": WAGON,
    "springs alone": SPRINGS,
    "little travel": dataclasses.replace(WAGON, droop_travel=0.01, bump_travel=0.02),
    "overdamped": dataclasses.replace(WAGON, bump_damping=9000.0, rebound_damping=2000.0),
}


@pytest.mark.parametrize("car", CARS.values(), ids=CARS.keys())
def test_a_stack_of_heights_equals_a_general_solver_run_one_by_one(car):
    heights = np.array([0.0, 0.05, 0.15, 0.6, 1.5])
    together = drop(car, height=heights)
    for place, height in enumerate(heights):
        tire, bearing = solved_alone(car, height)
        assert together.peak_tire_force[place] == pytest.approx(tire, rel=1e-3)
        assert together.peak_bearing_force[place] == pytest.approx(bearing, rel=1e-3)


def test_a_stack_equals_single_drops():
    heights = np.linspace(0.0, 1.0, 5)
    together = drop(WAGON, height=heights)
    for place, height in enumerate(heights):
        alone = drop(WAGON, height=float(height))
        assert together.peak_tire_force[place] == pytest.approx(alone.peak_tire_force, rel=1e-12)
        assert together.at_peak.time[place] == pytest.approx(alone.at_peak.time, rel=1e-9)


def test_many_corners_from_one_height_equal_single_ones():
    stiffnesses = np.array([[200e3], [300e3]])
    rates = np.array([20e3, 28e3, 40e3])
    together = drop(dataclasses.replace(WAGON, tire_stiffness=stiffnesses, wheel_rate=rates), height=0.2)
    assert together.peak_bearing_force.shape == (2, 3)
    alone = drop(dataclasses.replace(WAGON, tire_stiffness=300e3, wheel_rate=20e3), height=0.2)
    assert together.peak_bearing_force[1, 0] == pytest.approx(alone.peak_bearing_force, rel=1e-12)


@pytest.mark.parametrize("car", CARS.values(), ids=CARS.keys())
def test_the_step_matters_less_than_a_thousandth(car):
    heights = np.linspace(0.0, 2.0, 21)
    coarse, fine = drop(car, height=heights), drop(car, height=heights, step=0.05)
    assert coarse.peak_tire_force == pytest.approx(fine.peak_tire_force, rel=1e-3)
    assert coarse.peak_bearing_force == pytest.approx(fine.peak_bearing_force, rel=1e-3)


def test_springs_alone_keep_the_energy():
    height = 0.3
    landed = drop(SPRINGS, height=height)
    hanging = SPRINGS.compression_in_the_air

    def energy(body, wheel, body_speed, wheel_speed):
        c = hanging + body - wheel
        moving = SPRINGS.sprung_mass * body_speed**2 / 2 + SPRINGS.unsprung_mass * wheel_speed**2 / 2
        high = -g * (SPRINGS.sprung_mass * body + SPRINGS.unsprung_mass * wheel)
        strut = SPRINGS.wheel_rate * np.maximum(c, 0) ** 2 / 2 + 20 * SPRINGS.wheel_rate * np.minimum(c, 0) ** 2 / 2
        return moving + high + strut + SPRINGS.tire_stiffness * np.maximum(wheel, 0) ** 2 / 2

    course = energy(landed.body_travel, landed.wheel_travel, landed.body_speed, landed.wheel_speed)
    assert landed.wheel_travel.min() < 0  # the tire has left the ground and thresholds were crossed
    assert course == pytest.approx(float(fall_energy(weight=SPRINGS.standing_load, height=height)), rel=1e-6)


def test_springs_alone_follow_the_closed_form_while_the_tire_is_down():
    m_s, m_u, k, k_t = SPRINGS.sprung_mass, SPRINGS.unsprung_mass, SPRINGS.wheel_rate, SPRINGS.tire_stiffness
    landed = drop(SPRINGS, height=0.3)
    # strut never slack: else the swing is not that of two springs
    down = int(np.argmax((landed.wheel_travel < 0) | (landed.compression < 0)))
    time = landed.time[:down]
    stiffness = np.array([[k, -k], [-k, k + k_t]])
    root_mass = np.sqrt([m_s, m_u])
    squares, shapes = np.linalg.eigh(stiffness / np.outer(root_mass, root_mass))
    # about the standing position: it lies c_standing and F₀/k_t below
    rest = np.array([m_s * g / k + SPRINGS.standing_load / k_t, SPRINGS.standing_load / k_t])
    away = shapes.T @ (root_mass * -rest)
    speed = shapes.T @ (root_mass * np.sqrt(2 * g * 0.3) * np.ones(2))
    omega = np.sqrt(squares)[:, np.newaxis]
    modes = away[:, np.newaxis] * np.cos(omega * time) + speed[:, np.newaxis] / omega * np.sin(omega * time)
    body, wheel = (shapes @ modes) / root_mass[:, np.newaxis] + rest[:, np.newaxis]
    assert np.any(np.diff(landed.tire_force[:down]) < 0)  # the first peak is among them
    assert landed.wheel_travel[:down] == pytest.approx(wheel, abs=1e-9)
    assert landed.body_travel[:down] == pytest.approx(body, abs=1e-9)


@pytest.mark.parametrize("height", [0.0, 0.001, 0.02, 0.3])
def test_a_rigid_strut_lands_as_hard_as_the_bound(height):
    stiff = dataclasses.replace(SPRINGS, wheel_rate=3e8, droop_travel=0.0)
    landed = drop(stiff, height=height)
    δ = stiff.standing_load / stiff.tire_stiffness
    # a strut 1150 times as stiff as the tire: it takes a thousandth of the energy, and its ringing some
    assert landed.peak_tire_force / stiff.standing_load == pytest.approx(1 + np.sqrt(1 + 2 * height / δ), rel=3e-3)


def test_let_down_to_the_road_and_let_go_is_twice_the_weight():
    assert impact_factor(height=0.0, static_deflection=0.02) == 2.0


def test_the_bearing_carries_what_the_contact_leaves_after_weight_and_inertia_of_what_turns():
    landed = drop(WAGON, height=0.15)
    for place in range(len(landed.time)):
        state = (landed.body_travel, landed.wheel_travel, landed.body_speed, landed.wheel_speed)
        _, wheel, tire = accelerations(WAGON, *(part[place] for part in state))
        assert landed.tire_force[place] == pytest.approx(tire, abs=1e-6)
        assert landed.bearing_force[place] == pytest.approx(tire - WAGON.turning_mass * (g - wheel), abs=1e-6)
    peak = landed.at_peak
    assert peak.bearing_force == pytest.approx(
        peak.tire_force - WAGON.turning_mass * (g + peak.wheel_acceleration), abs=1e-9
    )
    assert landed.bearing_force.max() <= landed.peak_bearing_force


def test_the_drop_begins_with_a_strut_in_balance():
    landed = drop(WAGON, height=0.15)
    assert landed.strut_force[0] == pytest.approx(0.0, abs=1e-9)
    assert landed.compression[0] == pytest.approx(20 / 21 * (508.0 * g / 28e3 - 0.08))
    assert landed.body_speed[0] == landed.wheel_speed[0] == pytest.approx(np.sqrt(2 * g * 0.15))


def test_the_drop_ends_near_the_standing_position():
    slow = dataclasses.replace(WAGON, bump_damping=4000.0, rebound_damping=4000.0)
    landed = drop(slow, height=0.05)
    assert landed.compression[-1] == pytest.approx(slow.standing_compression, abs=0.02)
    assert landed.tire_force[-1] == pytest.approx(slow.standing_load, rel=0.1)


@st.composite
def corners(draw):
    """Return corners with every stiffness over two decades."""
    unsprung = draw(between(15, 120))
    return QuarterCar(
        sprung_mass=draw(between(100, 1200)),
        unsprung_mass=unsprung,
        turning_mass=unsprung * draw(between(0.2, 1.0)),
        tire_stiffness=10 ** draw(between(4.5, 6.5)),
        wheel_rate=10 ** draw(between(3.5, 5.5)),
        bump_damping=draw(between(0, 5000)),
        rebound_damping=draw(between(0, 5000)),
        droop_travel=draw(between(0, 0.3)),
        bump_travel=draw(between(0, 0.3)),
        bump_stop_stiffness=10 ** draw(between(4, 6)),
    )


@settings(max_examples=40)
@given(corners(), between(0, 2))
def test_every_drop_is_finite_and_presses(car, height):
    landed = drop(car, height=height)
    for peak in (landed.peak_tire_force, landed.peak_bearing_force, landed.largest_deflection):
        assert np.isfinite(peak)
        assert peak > 0
    assert np.all(np.isfinite(landed.bearing_force))
    assert landed.peak_tire_force >= landed.tire_force.max()
    # standing needs F₀ in the end, so no landing presses less at its hardest
    assert landed.peak_tire_force > 0.99 * car.standing_load


@given(between(0, 2), between(0.001, 1), between(1e3, 1e4), between(1e5, 1e6))
def test_the_bound_grows_with_height(height, more, weight, stiffness):
    low, high = (energy_bound(weight=weight, stiffness=stiffness, height=s) for s in (height, height + more))
    assert high > low >= 2 * weight * (1 - 1e-12)


def test_the_bound_spends_all_energy_in_the_tire():
    W, k, s = 5493.0, 260e3, 0.15
    δ = energy_bound(weight=W, stiffness=k, height=s) / k
    assert k * δ**2 / 2 == pytest.approx(fall_energy(weight=W, height=s + δ), rel=1e-12)


@given(between(50, 900), between(10, 100), between(5e3, 2e5), between(5e4, 1e6))
def test_natural_frequencies_are_the_eigenvalues(m_s, m_u, k, k_t):
    both = corner_frequencies(sprung_mass=m_s, unsprung_mass=m_u, wheel_rate=k, tire_stiffness=k_t)
    matrix = np.array([[k / m_s, -k / m_s], [-k / m_u, (k + k_t) / m_u]])
    assert both == pytest.approx(np.sqrt(np.sort(np.linalg.eigvals(matrix).real)) / (2 * np.pi), rel=1e-6)


def test_a_light_wheel_leaves_the_body_on_the_ride_rate():
    body, _ = corner_frequencies(sprung_mass=500.0, unsprung_mass=1e-3, wheel_rate=30e3, tire_stiffness=270e3)
    assert body == pytest.approx(natural_frequency(stiffness=27e3, mass=500.0), rel=1e-5)


@pytest.mark.parametrize(
    ("change", "reason"),
    [
        ({"sprung_mass": 0.0}, "positive sprung mass"),
        ({"wheel_rate": -1.0}, "positive wheel rate"),
        ({"bump_damping": -1.0}, "bump damping that is not negative"),
    ],
)
def test_what_cannot_be_dropped_is_refused(change, reason):
    with pytest.raises(ImpossibleError, match=reason):
        drop(dataclasses.replace(WAGON, **change), height=0.1)


def test_no_drop_from_below():
    with pytest.raises(ImpossibleError, match="height that is not negative"):
        drop(WAGON, height=-0.1)


def test_the_rim_is_met_past_six_tenths_of_the_section():
    assert list(tire_on_rim(deflection=np.array([0.05, 0.13]), section_height=0.184)) == [False, True]

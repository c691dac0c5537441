"""The two-row bearing: other solvers, closed forms, energy, symmetries, and loads that leave rows empty."""

import dataclasses

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from mechanics_strategies import between
from scipy.optimize import brentq, root

from hubwright.mechanics import ring_equilibrium, two_row_bearing
from hubwright.mechanics.bearing_contact import ball_curvature, ball_stiffness, point_contact_stiffness
from hubwright.mechanics.bearing_rating import effective_spread
from hubwright.mechanics.bearing_rows import INBOARD, OUTBOARD, BallRows, Geometry, RollerRows
from hubwright.mechanics.two_row_bearing import NotConvergedError, loads_at_displacement, row_loads

ALPHA = np.radians(35.0)
BALLS = BallRows(13, 0.0127, pitch_diameter=0.062, contact_angle=ALPHA, row_spacing=0.024)
ROLLERS = RollerRows(17, 0.008, 0.012, pitch_diameter=0.055, contact_angle=np.radians(18), row_spacing=0.030)
KEYS = ("force_x", "force_y", "force_z", "moment_x", "moment_z")
SIZES = np.array([4000.0, 4000.0, 9000.0, 500.0, 300.0])


def under(rows, load, **options):
    """Return the solution for loads (…, 5)."""
    return row_loads(rows, **dict(zip(KEYS, np.moveaxis(np.asarray(load, dtype=float), -1, 0), strict=True)), **options)


def stiffness(rows):
    gamma = rows.ball_diameter * np.cos(rows.contact_angle) / rows.pitch_diameter
    return ball_stiffness(
        **{
            f"{ring}_stiffness": point_contact_stiffness(
                curvature=ball_curvature(
                    ball_diameter=rows.ball_diameter, conformity=conformity, gamma=gamma, ring=ring
                )
            )
            for ring, conformity in (("inner", rows.inner_conformity), ("outer", rows.outer_conformity))
        }
    )


def element_by_element(rows):
    """Return the second road: force and moment on the ring and loads (row, element), from vectors and their products.

    Each element is a point on the ring that moves with it by a cross product; nothing of ours goes in.
    """
    balls = isinstance(rows, BallRows)
    count = rows.balls_per_row if balls else rows.rollers_per_row
    c, s = np.cos(rows.contact_angle), np.sin(rows.contact_angle)
    psi = 2 * np.pi * np.arange(count) / count
    outward = np.stack([np.sin(psi), 0 * psi, np.cos(psi)], axis=-1) * np.ones((2, 1, 1))
    side = np.array([1.0, -1.0])[:, np.newaxis, np.newaxis]
    axis = np.array([0.0, -1.0, 0.0]) * side * np.ones((1, count, 1))  # the way that loads each row
    radius = rows.pitch_diameter / 2
    if balls:
        radius += (rows.inner_conformity - 0.5) * rows.ball_diameter * c
        rest = (rows.inner_conformity + rows.outer_conformity - 1) * rows.ball_diameter
        K = stiffness(rows)
    else:
        K = 35948.0 * (rows.roller_length * 1e3) ** (8 / 9)
    point = radius * outward + np.array([0.0, rows.row_spacing / 2, 0.0]) * side

    def at(displacement):
        moved = displacement[:3] + np.cross([displacement[3], 0.0, displacement[4]], point)
        if balls:
            # the part of the motion across radius and axis slides the ball along its groove
            moved = (
                np.sum(moved * outward, -1, keepdims=True) * outward + np.sum(moved * axis, -1, keepdims=True) * axis
            )
            centres = rest * (c * outward + s * axis) + rows.preload * axis + moved
            length = np.linalg.norm(centres, axis=-1)
            load, line = K * np.maximum(length - rest, 0.0) ** 1.5, centres / length[..., np.newaxis]
        else:
            line = c * outward + s * axis
            approach = np.maximum(np.sum(moved * line, axis=-1) + rows.preload * s, 0.0)
            load = K * (approach * 1e3) ** (10 / 9)
        force = load[..., np.newaxis] * line
        return np.array([*force.sum(axis=(0, 1)), *np.cross(point, force).sum(axis=(0, 1))[[0, 2]]]), load

    return at


def push_back(rows, displacement):
    return element_by_element(rows)(displacement)[0]


def random_loads(count, seed=3):
    return np.random.default_rng(seed).uniform(-1, 1, (count, 5)) * SIZES


@pytest.mark.parametrize("preload", [-30e-6, 0.0, 15e-6])
@pytest.mark.parametrize("rows", [BALLS, ROLLERS], ids=["balls", "rollers"])
def test_a_general_root_finder_comes_to_the_same_loads(rows, preload):
    rows = dataclasses.replace(rows, preload=preload)
    loads = random_loads(60)
    ours = under(rows, loads)
    elements = element_by_element(rows)
    scale = np.array([1, 1, 1, 0.03, 0.03])  # moments over a radius, angles times it
    for i, load in enumerate(loads):
        found = root(
            lambda d, load=load: (elements(d * 1e-5 / scale)[0] - load) / scale / 1000,
            # beside our own answer, so that clearance does not leave it on flat ground
            (ours.displacement[i] * scale + np.array([2e-6, -1e-6, 1e-6, 1e-6, -1e-6])) / 1e-5,
            tol=1e-13,
        )
        held, theirs = elements(found.x * 1e-5 / scale)
        assert held == pytest.approx(load, abs=1e-3)
        assert ours.load[i] == pytest.approx(theirs, abs=1e-6 * ours.load[i].max())


@given(st.tuples(*(between(-1, 1) for _ in range(5))), between(-4e-5, 2e-5))
@settings(max_examples=60)
def test_the_elements_hold_the_load(parts, preload):
    load = np.array(parts) * SIZES
    for rows in (dataclasses.replace(BALLS, preload=preload), dataclasses.replace(ROLLERS, preload=preload)):
        solved = under(rows, load)
        held = push_back(rows, solved.displacement)
        assert held == pytest.approx(load, abs=1e-6 * max(np.abs(load).max(), solved.load.max()) + 1e-6)


def test_no_load_with_clearance_leaves_every_element_empty():
    solved = under(dataclasses.replace(BALLS, preload=-20e-6), np.zeros(5))
    assert solved.load.max() == 0.0


def test_preload_alone_loads_all_balls_alike():
    solved = under(dataclasses.replace(BALLS, preload=10e-6), np.zeros(5))
    A = 0.04 * 0.0127
    approach = np.hypot(A * np.cos(ALPHA), A * np.sin(ALPHA) + 10e-6) - A
    assert solved.load == pytest.approx(np.full((2, 13), stiffness(BALLS) * approach**1.5), rel=1e-6)


@pytest.mark.parametrize("thrust", [200.0, 3000.0, 9000.0])
@pytest.mark.parametrize("clearance", [0.0, 20e-6])
def test_thrust_alone_loads_one_row_at_the_angle_of_a_one_variable_equation(thrust, clearance):
    # Harris: Z K A^1.5 sin α₁ (cos α/cos α₁ − 1)^1.5 is the thrust (recalled)
    solved = under(dataclasses.replace(BALLS, preload=-clearance), [0.0, -thrust, 0.0, 0.0, 0.0])
    A = 0.04 * 0.0127

    def excess(angle):
        return 13 * stiffness(BALLS) * A**1.5 * np.sin(angle) * (np.cos(ALPHA) / np.cos(angle) - 1) ** 1.5 - thrust

    angle = brentq(excess, ALPHA, 1.4, xtol=1e-14)
    assert solved.load[OUTBOARD] == pytest.approx(np.full(13, thrust / 13 / np.sin(angle)), rel=1e-6)
    assert solved.angle[OUTBOARD] == pytest.approx(np.full(13, angle), rel=1e-6)
    assert solved.load[INBOARD].max() == 0.0


def test_a_row_held_against_tilt_has_stribecks_largest_load():
    # Stribeck: the largest of Z balls is Z/Σ cos^2.5 ψ times the mean F/Z cos α; small loads keep the angle
    u = 1e-9
    held = loads_at_displacement(BALLS, displacement=np.array([0.0, 0.0, u, 0.0, 0.0])).load[OUTBOARD]
    psi = 2 * np.pi * np.arange(13) / 13
    radial = np.sum(held * np.cos(ALPHA) * np.cos(psi))
    number = 13 / np.sum(np.maximum(np.cos(psi), 0) ** 2.5)
    assert held.max() == pytest.approx(number * radial / (13 * np.cos(ALPHA)), rel=1e-4)


def test_the_work_of_the_load_is_the_energy_in_the_contacts():
    rows = dataclasses.replace(BALLS, preload=0.0)
    end = random_loads(1)[0]
    # along the path of growing load, W = ∫ F·dd, by parts F·d − ∫ d·dF with Gauss's points
    points, weights = np.polynomial.legendre.leggauss(60)
    shares = ((points + 1) / 2) ** 3  # displacements go with about F^(2/3): smooth in the cube root
    growth = 3 * ((points + 1) / 2) ** 2 * weights / 2
    path = under(rows, shares[:, None] * end).displacement @ end
    final = under(rows, end)
    work = final.displacement @ end - np.sum(path * growth)
    assert work == pytest.approx(float(final.energy), rel=1e-5)


def test_turning_the_load_by_one_ball_turns_the_loads_by_one_ball():
    pitch = 2 * np.pi / 13
    load = random_loads(1)[0]
    x, y, z, m_x, m_z = load
    cos, sin = np.cos(pitch), np.sin(pitch)
    # from up toward the front; force and moment are vectors of the same turning
    turned = [x * cos + z * sin, y, z * cos - x * sin, m_x * cos + m_z * sin, m_z * cos - m_x * sin]
    here, there = under(BALLS, load).load, under(BALLS, turned).load
    assert there == pytest.approx(np.roll(here, 1, axis=-1), abs=1e-6 * here.max())


def test_a_right_wheel_is_the_mirror_image_of_a_left_one():
    x, y, z, m_x, m_z = random_loads(1)[0]
    left = under(BALLS, [x, y, z, m_x, m_z], side=1)
    right = under(BALLS, [x, -y, z, -m_x, -m_z], side=-1)
    assert right.load == pytest.approx(left.load, abs=1e-6)


def test_turning_outer_rings_are_inner_ones_with_the_thrust_reversed():
    x, y, z, m_x, m_z = random_loads(1)[0]
    outer = under(BALLS, [x, y, z, m_x, m_z], turning_ring="outer")
    inner = under(BALLS, [x, -y, z, m_x, m_z])
    assert outer.load == pytest.approx(inner.load, abs=1e-9)


def test_thrust_toward_the_vehicle_loads_the_outboard_row():
    toward_vehicle = under(BALLS, [0.0, -3000.0, 0.0, 0.0, 0.0])
    assert toward_vehicle.load[OUTBOARD].max() > 0
    assert toward_vehicle.load[INBOARD].max() == 0
    stub = under(BALLS, [0.0, -3000.0, 0.0, 0.0, 0.0], turning_ring="outer")
    assert stub.load[OUTBOARD].max() == 0


def test_a_load_outboard_loads_the_outboard_row_at_the_top_and_moments_alone_both_rows_opposite():
    solved = under(BALLS, [0.0, 0.0, 5000.0, 5000.0 * 0.02, 0.0])
    assert solved.load[OUTBOARD].max() > solved.load[INBOARD].max()
    assert np.argmax(solved.load[OUTBOARD]) == 0
    moment = under(BALLS, [0.0, 0.0, 0.0, 200.0, 0.0]).load
    assert np.argmax(moment[OUTBOARD]) == 0
    assert np.argmax(moment[INBOARD]) in (6, 7)


def test_slack_rocks_the_hub_by_the_play_at_both_pressure_centres():
    # closed form: end play δ, whole, is a radial play δ tan α of each row; the hub rocks δ tan α/ℓ to either side
    clearance = 1e-6
    rows = dataclasses.replace(BALLS, balls_per_row=60, preload=-clearance)  # many balls: no corner to rest on
    spread = effective_spread(row_spacing=0.024, pitch_diameter=0.062, contact_angle=ALPHA)
    rock = under(rows, [[0, 0, 0, 1e-6, 0], [0, 0, 0, -1e-6, 0]]).displacement[:, 3]
    # the model takes the grooves' centres in the plane of the ball centres: a lever 0.4 % longer
    assert (rock[0] - rock[1]) / 2 == pytest.approx(2 * clearance * np.tan(ALPHA) / spread, rel=0.006)


def test_one_case_and_many_and_a_geometry_each_agree():
    loads = random_loads(5)
    sizes = np.array([0.0110, 0.0115, 0.0120, 0.0125, 0.0127])
    preload = np.array([-2e-5, -1e-5, 0.0, 1e-5, 2e-5])
    together = under(dataclasses.replace(BALLS, ball_diameter=sizes, preload=preload), loads)
    assert together.load.shape == (5, 2, 13)
    for i, load in enumerate(loads):
        alone = under(dataclasses.replace(BALLS, ball_diameter=float(sizes[i]), preload=float(preload[i])), load)
        assert alone.load.shape == (2, 13)
        assert together.load[i] == pytest.approx(alone.load, abs=1e-6 * alone.load.max())


@pytest.mark.parametrize("batch", [1, 2, 1024])
def test_what_finds_no_equilibrium_names_its_case_and_loads(monkeypatch, batch):
    monkeypatch.setattr(two_row_bearing, "BATCH", batch)
    monkeypatch.setattr(ring_equilibrium, "MOST_STEPS", 1)
    with pytest.raises(NotConvergedError, match=r"rings of case 1 found no equilibrium under 0, 0, 9000 N and 40"):
        under(BALLS, [[0, 0, 0, 0, 0], [0, 0, 9000.0, 40.0, 0]])


@pytest.mark.parametrize("rows", [BALLS, dataclasses.replace(BALLS, preload=np.linspace(-2e-5, 1e-5, 50))])
def test_cases_solved_in_batches_come_out_in_their_order(monkeypatch, rows):
    loads = random_loads(50)
    together = under(rows, loads)
    monkeypatch.setattr(two_row_bearing, "BATCH", 7)
    batched = under(rows, loads)
    assert batched.load == pytest.approx(together.load, abs=1e-6 * together.load.max())
    assert batched.energy == pytest.approx(together.energy, rel=1e-6, abs=1e-9)


def test_no_cases_give_no_loads():
    assert under(BALLS, np.zeros((0, 5))).load.shape == (0, 2, 13)
    assert loads_at_displacement(BALLS, displacement=np.zeros((0, 5))).load.shape == (0, 2, 13)


@pytest.mark.parametrize("newtons", [1e-6, 1e-3, 1.0, 1e5])
def test_loads_of_any_size_are_held(newtons):
    load = np.array([0.3, -0.2, 1.0, 0.02, 0.01]) * newtons
    for rows in (BALLS, ROLLERS):
        assert push_back(rows, under(rows, load).displacement) == pytest.approx(load, abs=1e-4 * newtons)


@pytest.mark.parametrize("preload", [-100e-6, -10e-6, 0.0, 100e-6])
@pytest.mark.parametrize("rows", [BALLS, ROLLERS], ids=["balls", "rollers"])
def test_small_and_large_loads_find_their_way_through_any_clearance(rows, preload):
    # without its line search Newton's method wanders for ever in a good fifth of these
    sizes = 10.0 ** np.random.default_rng(5).uniform(-4, 1, (200, 1))
    loads = random_loads(200, seed=6) * sizes
    solved = under(dataclasses.replace(rows, preload=preload), loads)
    held = solved.load * np.sin(solved.angle)
    assert held[:, INBOARD].sum(axis=-1) - held[:, OUTBOARD].sum(axis=-1) == pytest.approx(
        loads[:, 1], abs=1e-6 * np.abs(loads).max()
    )


@pytest.mark.parametrize("rows", [BALLS, ROLLERS], ids=["balls", "rollers"])
def test_newtons_method_has_the_true_tangent(rows):
    # second road: central differences of the forces; a wrong one would still converge, slowly
    geometry = Geometry.of_rows(dataclasses.replace(rows, preload=30e-6)).raveled(())
    motion = np.array([[4e-6], [9e-6], [7e-6], [3e-6], [5e-6]])
    tangent = geometry.tangent(geometry.contact(motion))[..., 0]
    for i, unit in enumerate(np.eye(5)[..., np.newaxis] * 1e-10):
        ahead, behind = (geometry.forces(geometry.contact(motion + way * unit))[:, 0] for way in (1, -1))
        assert (ahead - behind) / 2e-10 == pytest.approx(tangent[:, i], abs=1e-5 * np.abs(tangent).max())


@given(between(1.05, 3.0))
@settings(max_examples=20)
def test_heavier_loads_of_one_direction_load_the_worst_ball_more(factor):
    load = random_loads(1, seed=8)[0]
    assert under(BALLS, load * factor).load.max() > under(BALLS, load).load.max()

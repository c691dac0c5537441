"""What the bearing costs: cases per second of the vectorised solver beside a loop over a root finder, and draws.

Run `python benchmarks/bearing.py`. One core. The floor is scipy.optimize.root, one case after the other, with the same
expressions set up beforehand (affine maps of the ring's motion to each ball, their analytic Jacobian) and the same
first guess.
"""

import json
import os
import resource
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import root

from hubwright.mechanics.bearing_contact import ball_curvature, ball_stiffness, point_contact_stiffness
from hubwright.mechanics.bearing_rating import gamma
from hubwright.mechanics.bearing_rows import BallRows
from hubwright.mechanics.two_row_bearing import row_loads
from hubwright.results import solve
from hubwright.results.draws import draws_of
from hubwright.results.life import life_of
from hubwright.setup import Setup, load

CONTENT = Path(__file__).resolve().parents[1] / "content"
CASES = 10_000
LOOP_CASES = 500
BALLS = 14
ALPHA = np.radians(35.0)
SIZES = np.array([4000.0, 4000.0, 9000.0, 500.0, 300.0])  # N, N·m
Array = NDArray[np.float64]


def random_loads(count: int) -> Array:
    return np.random.default_rng(1).uniform(-1, 1, (count, 5)) * SIZES


def one_geometry() -> BallRows:
    return BallRows(BALLS, ball_diameter=0.0127, pitch_diameter=0.066, contact_angle=ALPHA, row_spacing=0.024)


def geometry_per_case(count: int) -> BallRows:
    generator = np.random.default_rng(2)

    def about(value: float, share: float) -> Array:
        return value * generator.uniform(1 - share, 1 + share, count)

    return BallRows(
        BALLS,
        ball_diameter=about(0.0127, 0.03),
        pitch_diameter=about(0.066, 0.03),
        contact_angle=about(ALPHA, 0.1),
        row_spacing=about(0.024, 0.1),
        preload=generator.uniform(-15e-6, 15e-6, count),
    )


def seconds(action: Callable[[], object], runs: int = 3) -> float:
    action()
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        action()
        times.append(time.perf_counter() - start)
    return min(times)


def vectorised(rows: BallRows, loads: Array) -> Array:
    x, y, z, about_x, about_z = loads.T
    return row_loads(rows, force_x=x, force_y=y, force_z=z, moment_x=about_x, moment_z=about_z).load


class Loop:
    """One bearing for a general root finder: everything that does not change from case to case worked out before."""

    def __init__(self, rows: BallRows) -> None:
        alpha = float(rows.contact_angle)
        psi = 2 * np.pi * np.arange(rows.balls_per_row) / rows.balls_per_row
        sine, cosine = np.tile(np.sin(psi), 2), np.tile(np.cos(psi), 2)
        self.radius = rows.pitch_diameter / 2 + (rows.inner_conformity - 0.5) * rows.ball_diameter * np.cos(alpha)
        side = np.repeat([1.0, -1.0], rows.balls_per_row)
        lever, one, none = side * rows.row_spacing / 2 / self.radius, np.ones_like(sine), np.zeros_like(sine)
        # of the motions x, y, z and R times the angles about x and z
        self.radial = np.stack([sine, none, cosine, lever * cosine, -lever * sine], axis=-1)
        self.axial = np.stack([none, one, none, -cosine, sine], axis=-1)
        self.rest = (rows.inner_conformity + rows.outer_conformity - 1) * rows.ball_diameter
        self.rest_radial = self.rest * np.cos(alpha)
        self.rest_axial = -side * (self.rest * np.sin(alpha) + rows.preload)
        ratio = gamma(element_diameter=rows.ball_diameter, pitch_diameter=rows.pitch_diameter, contact_angle=alpha)
        rings = {
            f"{ring}_stiffness": point_contact_stiffness(
                curvature=ball_curvature(ball_diameter=rows.ball_diameter, conformity=fit, gamma=ratio, ring=ring)
            )
            for ring, fit in (("inner", rows.inner_conformity), ("outer", rows.outer_conformity))
        }
        self.stiffness = float(ball_stiffness(**rings))

    def balls(self, d: Array) -> tuple[Array, Array, Array, Array]:
        radial, axial = self.radial @ d + self.rest_radial, self.axial @ d + self.rest_axial
        length = np.hypot(radial, axial)
        approach = np.maximum(length - self.rest, 0.0)
        return radial / length, axial / length, self.stiffness * approach**1.5, length

    def forces_and_tangent(self, d: Array, target: Array) -> tuple[Array, Array]:
        c, s, load, length = self.balls(d)
        push = self.radial * c[:, np.newaxis] + self.axial * s[:, np.newaxis]
        across = self.axial * c[:, np.newaxis] - self.radial * s[:, np.newaxis]
        along = 1.5 * np.cbrt(load * self.stiffness**2)
        tangent = push.T @ (push * along[:, np.newaxis]) + across.T @ (across * (load / length)[:, np.newaxis])
        return load @ push - target, tangent

    def solve(self, load: Array) -> tuple[Array, bool]:
        target = load / np.array([1, 1, 1, self.radius, self.radius])
        # all balls loaded alike: a first stiffness of the ring
        size = np.abs(target).max()
        approach = (size / (self.stiffness * BALLS)) ** (2 / 3)
        start = target * approach / size
        # displacements in hundredths of a millimetre and forces in kilonewtons: of one size for the root finder
        unit, weight = 1e-5, 1e-3

        def function(u: Array) -> tuple[Array, Array]:
            force, tangent = self.forces_and_tangent(u * unit, target)
            return force * weight, tangent * weight * unit

        found = root(function, start / unit, jac=True, tol=1e-10)
        return self.balls(found.x * unit)[2], bool(found.success)


def looped(loops: list[Loop], loads: Array) -> tuple[Array, Array]:
    solved = [loop.solve(case) for loop, case in zip(loops, loads, strict=True)]
    return np.array([load for load, _ in solved]), np.array([success for _, success in solved])


def one_of(rows: BallRows, place: int) -> BallRows:
    names = ("ball_diameter", "pitch_diameter", "contact_angle", "row_spacing", "preload")
    return BallRows(rows.balls_per_row, **{name: float(getattr(rows, name)[place]) for name in names})


def solver_figures() -> dict[str, float]:
    loads = random_loads(CASES)
    figures: dict[str, float] = {}
    single = Loop(one_geometry())
    varied = geometry_per_case(CASES)
    for name, rows, loops in (
        ("one geometry", one_geometry(), [single] * LOOP_CASES),
        ("a geometry per case", varied, [Loop(one_of(varied, place)) for place in range(LOOP_CASES)]),
    ):
        fast = CASES / seconds(lambda rows=rows: vectorised(rows, loads))
        slow = LOOP_CASES / seconds(lambda loops=loops: looped(loops, loads[:LOOP_CASES]), runs=1)
        theirs, found = looped(loops, loads[:LOOP_CASES])
        ours = vectorised(rows, loads)[:LOOP_CASES].reshape(LOOP_CASES, -1)
        apart = np.abs(ours - theirs).max(axis=1) / ours.max(axis=1)
        figures[f"{name}: cases per second"] = fast
        figures[f"{name}: loop over root, cases per second"] = slow
        figures[f"{name}: ratio"] = fast / slow
        figures[f"{name}: root found, share"] = float(found.mean())
        figures[f"{name}: largest difference where found"] = float(apart[found].max())
    return figures


def setup_figures() -> dict[str, float]:
    setup = load(CONTENT / "vehicles" / "hill-wagon.toml")
    assert isinstance(setup, Setup)
    results = solve(setup)
    cases = len(results.cases)
    return {
        f"{cases} cases solved with both lives, seconds": seconds(lambda: life_of(solve(setup))),
        f"{cases} cases with 400 draws, seconds": seconds(lambda: draws_of(solve(setup))),
    }


def main() -> None:
    if hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})
    figures = {**solver_figures(), **setup_figures()}
    figures["largest memory, MB"] = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    width = max(map(len, figures))
    for name, value in figures.items():
        print(f"{name:{width}}  {value:12.4g}")
    print(json.dumps({name: float(f"{value:.4g}") for name, value in figures.items()}))


if __name__ == "__main__":
    main()

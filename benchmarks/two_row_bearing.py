"""Times the two-row solver beside a loop over scipy's root finder: `python benchmarks/two_row_bearing.py`.

10,000 random load cases of a bearing of twice 14 balls, on one core; with one geometry, and with one per case.
"""

import os

# one core: the libraries behind numpy read this when they are loaded
os.environ |= {"OMP_NUM_THREADS": "1", "OPENBLAS_NUM_THREADS": "1", "MKL_NUM_THREADS": "1"}

import resource
import sys
import time
from collections.abc import Callable

import numpy as np
from scipy.optimize import root

from hubwright.mechanics.bearing_rows import BallRows, Geometry
from hubwright.mechanics.two_row_bearing import RowLoads, row_loads

CASES, LOOPED = 10_000, 300
SIZES = np.array([4000.0, 4000.0, 9000.0, 500.0, 300.0])  # N and N·m
KEYS = ("force_x", "force_y", "force_z", "moment_x", "moment_z")


def main() -> None:
    random = np.random.default_rng(1)
    loads = random.uniform(-1, 1, (CASES, 5)) * SIZES

    def spread(value: float, share: float) -> np.ndarray:
        return value * (1 + share * random.uniform(-1, 1, CASES))

    angle = np.radians(35)
    one = BallRows(14, 0.0127, pitch_diameter=0.062, contact_angle=angle, row_spacing=0.024)
    each = BallRows(
        14,
        spread(0.0127, 0.06),
        pitch_diameter=spread(0.062, 0.03),
        contact_angle=spread(angle, 0.14),
        row_spacing=spread(0.024, 0.16),
        preload=random.uniform(-15e-6, 15e-6, CASES),
    )
    print("2 × 14 balls, random loads         cases/s   aim      loop/s   ratio   largest difference of a ball's load")
    for name, rows, aim in (("one geometry", one, 40_000), ("a geometry per case", each, 20_000)):
        start = resident()
        ours = under(rows, loads)
        rate = CASES / seconds(lambda rows=rows: under(rows, loads), 5)
        grown = resident() - start
        balls = Balls(rows)
        looped = LOOPED / seconds(lambda balls=balls: [balls.solved(loads[i], i) for i in range(LOOPED)], 1)
        found = [balls.solved(loads[i], i) for i in range(LOOPED)]
        apart = [np.max(np.abs(q - ours.load[i])) / np.max(q) for i, q in enumerate(found) if q is not None]
        print(
            f"{name:<30} {rate:11,.0f} {aim:8,d} {looped:9,.0f} {rate / looped:7.0f}   {max(apart):.0e}"
            f" ({LOOPED - len(apart)} of {LOOPED} not found by the loop), {grown:.0f} MB more"
        )
    print(f"peak memory of the whole program {resident():.0f} MB (aim: under 500 MB)")


class Balls:
    """One case after another by scipy's root finder, with everything that does not move worked out beforehand."""

    def __init__(self, rows: BallRows) -> None:
        geometry = Geometry.of_rows(rows)
        names = ("radius", "lever", "rest_radial", "rest_axial", "rest_length", "preload", "stiffness")
        self.lengths = np.stack([np.broadcast_to(getattr(geometry, name), CASES) for name in names], axis=-1)
        s, c = np.tile(geometry.sines, 2), np.tile(geometry.cosines, 2)
        self.side = np.repeat([1.0, -1.0], geometry.sines.size)
        none = np.zeros_like(s)
        # the motion of every ball's groove centre along radius and axis, per x, y, z, R about x, R about z
        self.radial = np.stack([s, none, c, self.side * c, -self.side * s], axis=-1)
        self.axial = np.stack([none, -self.side, none, self.side * c, -self.side * s], axis=-1)

    def solved(self, load: np.ndarray, case: int) -> np.ndarray | None:
        """Return every ball's load (row, ball), or none where the root finder gives up."""
        radius, lever, rest_radial, rest_axial, rest, preload, K = self.lengths[case]
        target = load / np.array([1, 1, 1, radius, radius])
        size = np.max(np.abs(target))
        radial = self.radial * np.array([1, 1, 1, lever, lever])
        axial = self.axial
        loads = np.empty(len(axial))

        def left_over(d: np.ndarray) -> np.ndarray:
            u = radial @ (d * 1e-5) + rest_radial
            v = axial @ (d * 1e-5) + rest_axial + preload
            length = np.sqrt(u * u + v * v)
            approach = np.maximum(length - rest, 0.0)
            loads[:] = K * approach * np.sqrt(approach)
            return ((loads * u / length) @ radial + (loads * v / length) @ axial - target) / size

        for start in (1.0, 3.0, 0.3):  # tens of micrometres; from some it does not find its way
            found = root(left_over, start * target / size, tol=1e-10)
            if np.max(np.abs(left_over(found.x))) < 1e-7:
                return loads.reshape(2, -1).copy()
        return None


def under(rows: BallRows, loads: np.ndarray) -> RowLoads:
    return row_loads(rows, **dict(zip(KEYS, loads.T, strict=True)))


def seconds(action: Callable[[], object], runs: int) -> float:
    """Return the best of a few runs, in seconds of this process alone."""
    times = []
    for _ in range(runs):
        start = time.process_time()
        action()
        times.append(time.process_time() - start)
    return min(times)


def resident() -> float:
    """Return the largest memory so far [MB]."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / (1e6 if sys.platform == "darwin" else 1e3)


if __name__ == "__main__":
    main()

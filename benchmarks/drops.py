"""Times one drop and 200 at once beside a plain loop over scipy's solver: `python benchmarks/drops.py`."""

import time
from collections.abc import Callable

import numpy as np
from scipy.integrate import solve_ivp

from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.mechanics.impact import QuarterCar, drop

# the hill wagon's front corner
CAR = QuarterCar(
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
HEIGHTS = np.linspace(0.0, 2.0, 200)


def seconds(action: Callable[[], object], runs: int) -> float:
    """Return the best of a few runs."""
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        action()
        times.append(time.perf_counter() - start)
    return min(times)


def loop(heights: np.ndarray) -> np.ndarray:
    """Return the peak tire forces by scipy's solver, one height after another, as one would write it at first."""
    g = STANDARD_GRAVITY
    standing, c0 = float(CAR.standing_compression), float(CAR.droop_compression)
    hanging, stop = float(CAR.compression_in_the_air), 20 * CAR.wheel_rate

    def rate(_: float, state: np.ndarray) -> list[float]:
        body, wheel, body_speed, wheel_speed = state
        compression, closing = hanging + body - wheel, body_speed - wheel_speed
        strut = CAR.wheel_rate * max(compression, 0.0)
        strut += (CAR.bump_damping if closing > 0 else CAR.rebound_damping) * closing
        strut += CAR.bump_stop_stiffness * max(compression - standing - CAR.bump_travel, 0.0)
        strut += stop * min(compression - c0, 0.0)
        tire = CAR.tire_stiffness * max(wheel, 0.0)
        return [body_speed, wheel_speed, g - strut / CAR.sprung_mass, g + (strut - tire) / CAR.unsprung_mass]

    peaks = []
    for height in heights:
        speed = np.sqrt(2 * g * height)
        # the step is held short so that the samples meet the peak within 0.1 %
        course = solve_ivp(rate, (0.0, 1.1), [0.0, 0.0, speed, speed], rtol=1e-6, atol=1e-8, max_step=1e-3)
        peaks.append(CAR.tire_stiffness * max(course.y[1]))
    return np.array(peaks)


def main() -> None:
    one = seconds(lambda: drop(CAR, height=0.15), 10)
    stack = seconds(lambda: drop(CAR, height=HEIGHTS), 3)
    start = time.perf_counter()
    plain = loop(HEIGHTS)
    looped = time.perf_counter() - start
    ours = drop(CAR, height=HEIGHTS)
    half = drop(CAR, height=HEIGHTS, step=0.15)
    apart = np.max(np.abs(ours.peak_tire_force / plain - 1))
    by_step = np.max(np.abs(ours.peak_tire_force / half.peak_tire_force - 1))
    print(f"one drop                     {one * 1e3:8.1f} ms   (aim: under 60 ms)")
    print(f"200 heights, stacked         {stack:8.3f} s    (aim: under 1 s)")
    print(f"200 heights, scipy in a loop {looped:8.3f} s    ({looped / stack:.0f} times as long)")
    print(f"largest difference of a peak tire force from scipy {apart:.1e}, from half the step {by_step:.1e}")


if __name__ == "__main__":
    main()

"""What a whole setup costs: its cases with both lives, and 400 draws of its ranges, after import and on one core.

Run `python benchmarks/bearing.py`. Beside the draws stand their floor, the equilibrium of the rings alone for as many
random cases with a geometry each, and what the same draws take when they are solved one after the other.
"""

import os

# one core: the libraries behind numpy read this when they are loaded
os.environ |= {"OMP_NUM_THREADS": "1", "OPENBLAS_NUM_THREADS": "1", "MKL_NUM_THREADS": "1"}

import dataclasses
import re
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np

from hubwright.mechanics.bearing_rows import BallRows
from hubwright.mechanics.two_row_bearing import row_loads
from hubwright.results import solve
from hubwright.results.comparison import compare
from hubwright.results.draws import DRAWS, drawn_inputs, draws_of
from hubwright.results.life import life_of
from hubwright.setup import Setup, load, load_text, with_inputs

CONTENT = Path(__file__).resolve().parents[1] / "content"
FILE = CONTENT / "vehicles" / "hill-wagon.toml"
ONE_BY_ONE = 20
SIZES = np.array([4000.0, 4000.0, 9000.0, 500.0, 300.0])  # N and N·m


def main() -> None:
    wagon = read(load(FILE))
    # the same without ranges: given ratings, or they would be drawn as computed ones are
    text = re.sub(r" ± [^\"]+", "", FILE.read_text(encoding="utf-8"))
    text = text.replace("preload =", 'dynamic_rating = "59 kN"\nstatic_rating = "50 kN"\npreload =')
    cases = len(solve(wagon).cases)

    fixed = seconds(lambda: life_of(solve(read(load_text(text, "wagon.toml")))))
    print(f"{cases} cases, both lives, no ranges, from the text on    {1e3 * fixed:6.0f} ms   aim 50 ms")

    whole = seconds(lambda: solve(wagon).spans)
    print(f"the same with {DRAWS} draws of the ranges, drops included {1e3 * whole:6.0f} ms   aim 1000 ms")

    results = solve(wagon)
    without = seconds(lambda: draws_of(results))
    floor = seconds(rings(DRAWS * (cases - 1)))  # all but the drop
    print(f"draws without the drop                              {1e3 * without:6.0f} ms")
    print(f"floor: equilibria of as many rings alone            {1e3 * floor:6.0f} ms   {without / floor:.1f} times")

    drawn = drawn_inputs(results)

    def one_by_one() -> None:
        for place in range(ONE_BY_ONE):
            moved = {key: dataclasses.replace(results.inputs[key], value=float(drawn[key][place])) for key in drawn}
            life_of(solve(with_inputs(wagon, moved)))

    alone = seconds(one_by_one, 1) * DRAWS / ONE_BY_ONE
    print(f"as many draws one after the other                   {1e3 * alone:6.0f} ms   {alone / whole:.0f} times")

    winter = read(load(CONTENT / "setups" / "winter-fit-out.toml"))
    pair = seconds(lambda: compare(wagon, winter), 2)
    split = seconds(lambda: compare(wagon, winter).part_spans, 2) - pair
    print(f"two setups compared at both wheels                  {1e3 * pair:6.0f} ms")
    print(f"spans of the split into three changes               {1e3 * split:6.0f} ms")


def read(thing: object) -> Setup:
    assert isinstance(thing, Setup)
    return thing


def rings(number: int) -> Callable[[], object]:
    """Return the solving of so many random cases with a geometry each."""
    random = np.random.default_rng(1)
    loads = random.uniform(-1, 1, (number, 5)) * SIZES

    def about(value: float, share: float) -> np.ndarray:
        return value * (1 + share * random.uniform(-1, 1, number))

    rows = BallRows(
        13,
        about(0.0127, 0.02),
        pitch_diameter=0.062,
        contact_angle=about(np.radians(35), 0.09),
        row_spacing=about(0.024, 0.08),
        preload=random.uniform(-15e-6, 15e-6, number),
    )
    x, y, z, about_x, about_z = loads.T
    return lambda: row_loads(rows, force_x=x, force_y=y, force_z=z, moment_x=about_x, moment_z=about_z)


def seconds(action: Callable[[], object], runs: int = 5) -> float:
    """Return the best of a few runs after a first one, in seconds of this process alone."""
    action()
    times = []
    for _ in range(runs):
        start = time.process_time()
        action()
        times.append(time.process_time() - start)
    return min(times)


if __name__ == "__main__":
    main()

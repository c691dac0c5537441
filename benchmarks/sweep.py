"""Random valid setups through every figure: what a ruler and an eye would object to, with the seed that shows it.

`python benchmarks/sweep.py` draws 1,000 setups, `--setups 10000` for a long night, `--seed 17` one batch again and
`--seed 17 --setup 3` one of its setups, `--figure NAME` one figure of each. Every figure is drawn in both unit systems
and both forms and read back from the written SVG; pictures of failures go to build/sweep/. Exit code 1 if there are
any, or if a figure of the catalogue was never drawn.
"""

import argparse
import math
import sys
import time
import traceback
from collections import Counter
from concurrent.futures import ProcessPoolExecutor, as_completed
from dataclasses import dataclass, field
from multiprocessing import get_context
from typing import Any

import numpy as np
from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis.internal.conjecture import providers
from hypothesis.strategies import SearchStrategy
from of_the_tests import ROOT

from drawing.swept import PICTURES, few_draws, figures_of, picture, scene_or_refusal
from drawing.written_checks import Failure, arrows_crossed, counted, failures_of
from hubwright.drawing import draw, svg_for_page
from hubwright.drawing.marks import Drawing
from hubwright.results import Results, solve
from hubwright.results.beams import BeamResults, solve_beam
from hubwright.results.solve import described_wheels
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.vocabulary import ClosedBody, Units
from scenes.test_beam_alone import beams
from strategies import complete_setups, setups

# Hypothesis also draws numbers that it finds in the modules imported so far: with them a seed would give other setups
# in another process, after another figure, or once a line of code has changed
providers._get_local_constants = lambda: providers._local_constants

BATCH = 20  # setups drawn from one seed
SYSTEMS: tuple[Units, ...] = ("si", "us")
OPEN = 1e-6  # of the largest force, or of the largest moment, that a free body may leave over
KEPT = 6  # pictures of each figure and class of failure in a batch


@dataclass
class Tally:
    """What a batch came to."""

    setups: int = 0
    figures: Counter[str] = field(default_factory=Counter)
    arrows: int = 0
    crossed: int = 0
    dimensions: int = 0
    bodies: int = 0
    failures: Counter[tuple[str, str]] = field(default_factory=Counter)
    failing: Counter[str] = field(default_factory=Counter)
    refused: Counter[str] = field(default_factory=Counter)
    lines: list[str] = field(default_factory=list)

    @property
    def unseen(self) -> list[str]:
        """Return the figures of the catalogue that no setup gave."""
        seen = {name.rsplit(", ", 1)[0] for name in self.figures}
        return [name for name in FIGURES if name not in seen]

    def add(self, other: "Tally") -> None:
        """Take in another batch."""
        self.setups += other.setups
        self.figures += other.figures
        self.arrows += other.arrows
        self.crossed += other.crossed
        self.dimensions += other.dimensions
        self.bodies += other.bodies
        self.failures += other.failures
        self.failing += other.failing
        self.refused += other.refused
        self.lines += other.lines


def drawn_from(strategy: SearchStrategy[Any], number: int, count: int) -> list[Any]:
    """Return the examples that a seed gives: the same ones whenever it is asked."""
    found: list[Any] = []

    @seed(number)
    @settings(
        database=None,
        max_examples=count,
        phases=[Phase.generate],
        deadline=None,
        suppress_health_check=list(HealthCheck),
    )
    @given(strategy)
    def keep(example: Any) -> None:
        found.append(example)

    keep()
    return found[:count]


def batch(number: int, count: int = BATCH, only: int | None = None, names: list[str] | None = None) -> Tally:
    """Draw every figure, or some, of the setups of one seed, or of a single one of them."""
    tally = Tally()
    last: dict[str, Results] = {}
    for index, setup in enumerate(drawn_from(setups() | complete_setups(), number, count)):
        wheels = described_wheels(setup)
        wheel = wheels[index % len(wheels)]
        solved = solve(setup, wheel)
        if only in (None, index):
            tally.setups += 1
            check(tally, solved, number, index, last.get(wheel), names)
        last[wheel] = solved
    if only is None:
        for index, beam in enumerate(drawn_from(beams(), number, max(1, count // 5))):
            check(tally, solve_beam(beam), number, index, None, names)
    return tally


def check(
    tally: Tally,
    solved: Results | BeamResults,
    number: int,
    index: int,
    other: Results | None,
    names: list[str] | None,
) -> None:
    """Draw the figures of one setup and note what is wrong with them."""
    for name, case, make in figures_of(solved, number * BATCH + index, other, names):
        for units in SYSTEMS:
            where = f"seed {number}, setup {index}, {f'{name}, {case}' if case else name}, {units}"
            try:
                scene = scene_or_refusal(name, make, units)
                if scene is None:
                    tally.refused[name] += 1
                    continue
                forms = {"wide": [draw(scene)], "narrow": list(draw(scene, form="narrow"))}
            except Exception:  # a figure that cannot be drawn is a finding like any other
                note(tally, name, Failure("not drawn", traceback.format_exc(limit=-2).strip()), where, None)
                continue
            for body in scene.bodies:  # drawing refused to draw an open one: here is a second road
                tally.bodies += 1
                if failure := left_open(body):
                    note(tally, name, failure, where, None)
            for form, drawings in forms.items():
                for drawing in drawings:
                    svg = svg_for_page(drawing, prefix="f", units_class=units)
                    arrows, dimensions = counted(svg)
                    tally.arrows, tally.dimensions = tally.arrows + arrows, tally.dimensions + dimensions
                    tally.figures[f"{name}, {form}"] += 1
                    tally.crossed += arrows_crossed(svg)
                    failures = failures_of(svg)
                    tally.failing[f"{name}, {form}"] += bool(failures)
                    for failure in failures:
                        note(tally, f"{name}, {form}", failure, f"{where}, {form} {drawing.view}", drawing)


def left_open(body: ClosedBody) -> Failure | None:
    """Return what is wrong with a free body whose forces and moments about its centre leave something over."""
    forces = np.array([force for _, force, _ in body.forces])
    points = np.array([point for _, _, point in body.forces])
    moments = np.array([*np.cross(points - points.mean(axis=0), forces), *(couple for _, couple in body.couples)])
    # the moments are also small where every force passes near the centre: a lever of a millimetre is the measure then
    largest = np.linalg.norm(forces, axis=1).max()
    largest_moment = max(np.linalg.norm(moments, axis=1).max(), 1e-3 * largest)
    force, moment = np.linalg.norm(forces.sum(axis=0)), np.linalg.norm(moments.sum(axis=0))
    if force <= OPEN * largest and moment <= OPEN * largest_moment:
        return None
    return Failure("does not close", f"{force:.3g} N, {moment:.3g} N·m")


def note(tally: Tally, name: str, failure: Failure, where: str, drawing: Drawing | None) -> None:
    """Count a failure, say where it is and keep its picture."""
    tally.failures[name, failure.kind] += 1
    if drawing is None:  # nothing of it was drawn, or what is wrong lies before drawing
        tally.failing[name] += 1
    tally.lines.append(f"{where}: {failure.kind}: {failure.where}")
    if drawing is not None and tally.failures[name, failure.kind] <= KEPT:
        picture(drawing, where, failure)


def report(total: Tally, seconds: float) -> None:
    """Print counts and rates."""
    drawn = sum(total.figures.values())
    print(f"{total.setups} setups, {drawn} drawings in {seconds:.0f} s: {drawn / seconds:.0f} drawings a second")
    print(f"{total.arrows} arrows and {total.dimensions} dimensions measured, {total.bodies} free bodies closed")
    print(f"{total.crossed} leaders cross an arrow on their way (legible over its edge of paper; not a failure)")
    print(f"\n{'figure':<48}{'drawn':>8}{'faulty':>8}{'rate':>9}")
    for name in sorted(total.figures | total.failing):
        count = total.figures[name]
        rate = f"{total.failing[name] / count:9.2%}" if count else ""
        print(f"{name:<48}{count:8}{total.failing[name]:8}{rate}")
    for name, count in sorted(total.refused.items()):
        print(f"{name}: {count} refused in words")
    if total.failures:
        print(f"\n{'figure':<48}{'what':<36}{'times':>6}")
        for (name, kind), count in sorted(total.failures.items(), key=lambda entry: -entry[1]):
            print(f"{name:<48}{kind:<36}{count:6}")
        print()
        for line in total.lines[:40]:
            print(line)
        print(f"all {len(total.lines)} stand in {PICTURES.relative_to(ROOT) / 'failures.txt'}")


def main() -> int:
    """Run the sweep."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--setups", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=None, help="only the batch of this seed")
    parser.add_argument("--setup", type=int, default=None, help="with --seed: only this setup of its batch")
    parser.add_argument("--figure", action="append", choices=list(FIGURES), default=None)
    parser.add_argument("--first", type=int, default=0, help="the first seed")
    parser.add_argument("--minutes", type=float, default=math.inf, help="begin no batch after so long")
    parser.add_argument("--processes", type=int, default=2)
    given_options = parser.parse_args()
    if given_options.setup is not None and given_options.seed is None:
        parser.error("--setup needs --seed")
    for old in (*PICTURES.glob("seed-*.png"), *PICTURES.glob("failures.txt")):
        old.unlink()
    start, total = time.perf_counter(), Tally()
    if given_options.seed is not None:
        total = batch(given_options.seed, only=given_options.setup, names=given_options.figure)
    else:
        seeds = range(given_options.first, given_options.first + -(-given_options.setups // BATCH))
        with ProcessPoolExecutor(given_options.processes, mp_context=get_context("fork")) as pool:
            for done in as_completed([pool.submit(batch, number, names=given_options.figure) for number in seeds]):
                total.add(done.result())
                print(
                    f"{total.setups} setups, {sum(total.failing.values())} faulty drawings", file=sys.stderr, flush=True
                )
                if time.perf_counter() - start > given_options.minutes * 60:
                    pool.shutdown(wait=False, cancel_futures=True)
                    break
    if total.lines:
        PICTURES.mkdir(parents=True, exist_ok=True)
        (PICTURES / "failures.txt").write_text("\n".join(total.lines) + "\n", encoding="utf-8")
    report(total, time.perf_counter() - start)
    unseen = total.unseen if given_options.seed is None and given_options.figure is None else []
    for name in unseen:
        print(f"{name}: never drawn")
    return 1 if total.failures or unseen else 0


if __name__ == "__main__":
    with few_draws():
        sys.exit(main())

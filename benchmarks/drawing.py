"""What drawing costs: milliseconds per figure beside bare matplotlib and beside writing the SVG text alone.

Run `python benchmarks/drawing.py`. The floor "marks written" is the finished display list written as text with nothing
around it; "bare matplotlib" is a Figure without Axes with the same display list as artists (one for a shape or circle,
one for each run of words and for their edge of paper), saved as SVG.
"""

import io
import statistics
import tempfile
import time
from collections.abc import Callable, Iterable
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path
from typing import Any

import matplotlib

from hubwright.drawing import draughting, draw, frames, png, svg_for_page
from hubwright.drawing.marks import Disc, Drawing, Lettering, Mark, Shape, flat
from hubwright.drawing.raster import figure_of
from hubwright.results import solve
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.scenes.vocabulary import Scene
from hubwright.setup import load

CONTENT = Path(__file__).resolve().parents[1] / "content"
VEHICLE = CONTENT / "vehicles" / "hill-wagon.toml"
ROUNDS = 9
# of the table, with the decimals that each shows
COLUMNS = {"labels": 1, "draw": 1, "SVG": 1, "both": 1, "bare": 1, "ratio": 2, "floor": 1, "kB": 1}


def scenes() -> list[Scene]:
    results = solve(load(VEHICLE))
    of_one = {name: figure.cases(results) for name, figure in FIGURES.items() if figure.takes == "results"}
    return [scene_function(name)(results, case=cases[0]) for name, cases in of_one.items() if cases]


def milliseconds(work: Callable[[], object]) -> float:
    """Return what a piece of work takes of a processor, whatever else the machine does."""
    work()
    times = []
    for _ in range(ROUNDS):
        start = time.process_time()
        work()
        times.append(time.process_time() - start)
    return statistics.median(times) * 1e3


def written(marks: Iterable[Mark]) -> str:
    """Return marks as the plainest text that still is a picture: the floor."""
    parts = []
    for mark in marks:
        if isinstance(mark, Shape):
            rings = ("M" + "L".join(f"{x:.1f},{y:.1f}" for x, y in ring.tolist()) for ring in mark.rings)
            parts.append(f'<path d="{"".join(rings)}"/>')
        elif isinstance(mark, Disc):
            parts.append(f'<circle cx="{mark.centre[0]:.1f}" cy="{mark.centre[1]:.1f}" r="{mark.radius:.1f}"/>')
        elif isinstance(mark, Lettering):
            words = "".join(run.text for run in mark.text.runs)
            parts.append(f'<text x="{mark.at[0]:.1f}" y="{mark.at[1]:.1f}">{words}</text>')
    return "<svg>" + "".join(parts) + "</svg>"


def bare_matplotlib(drawing: Drawing) -> None:
    with matplotlib.rc_context({"svg.fonttype": "none", "path.simplify": False}):
        figure_of(drawing, "light", title=False, as_text=True).savefig(io.StringIO(), format="svg")


def label_layout(scene: Scene) -> float:
    """Return what placing the labels takes within a drawing."""
    spent: list[float] = []
    place = draughting.place_labels

    def timed(*given: Any) -> Any:
        start = time.process_time()
        placed = place(*given)
        spent.append(time.process_time() - start)
        return placed

    draughting.place_labels = timed
    try:
        for _ in range(ROUNDS):
            draw(scene)
    finally:
        draughting.place_labels = place
    return statistics.median(spent) * 1e3


def shown(row: Iterable[float]) -> str:
    return "".join(f"{value:8.{places}f}" for value, places in zip(row, COLUMNS.values(), strict=True))


def drawn(_: int) -> int:
    return sum(len(svg_for_page(draw(scene), prefix="f", units_class="si")) for scene in scenes())


if __name__ == "__main__":
    print(f"{'milliseconds':<24}" + "".join(f"{head:>8}" for head in COLUMNS))
    made = scenes()
    rows = []
    for scene in made:
        drawing = draw(scene)
        text = svg_for_page(drawing, prefix="f", units_class="si")
        marks = list(flat([*drawing.groups(), *drawing.foot]))
        laid = milliseconds(lambda s=scene: draw(s))
        svg = milliseconds(lambda d=drawing: svg_for_page(d, prefix="f", units_class="si"))
        bare = milliseconds(lambda d=drawing: bare_matplotlib(d))
        floor = milliseconds(lambda m=marks: written(m))
        row = (label_layout(scene), laid, svg, laid + svg, bare, (laid + svg) / bare, floor, len(text.encode()) / 1e3)
        rows.append(row)
        print(f"{scene.name:<24}{shown(row)}")
    print(f"{'mean':<24}{shown([statistics.mean(column) for column in zip(*rows, strict=True)])}")
    with tempfile.TemporaryDirectory() as folder:
        target = Path(folder) / "a.png"
        for scene in made:
            drawing = draw(scene)
            print(f"{scene.name}: PNG 1920 wide {milliseconds(lambda d=drawing: png(d, target)):.0f} ms")
        (frame,) = frames(made[0], size=(1920, 1080))
        print(f"a frame of 1920x1080: {milliseconds(lambda: png(frame, target, title=False)):.0f} ms")
    with ProcessPoolExecutor(2, mp_context=get_context("fork")) as pool:
        list(pool.map(drawn, range(2)))
        start = time.perf_counter()
        list(pool.map(drawn, range(8)))
        print(f"two processes: {8 * len(made) / (time.perf_counter() - start):.0f} figures a second, scenes included")

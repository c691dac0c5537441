"""Times the whole chain and prints each figure beside its floor in the same run: `python benchmarks/chain.py`."""

import json
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

ROOT = Path(__file__).parents[1]
SCRIPTS = Path(sys.executable).parent


def seconds(action: Callable[[], object], runs: int = 3) -> float:
    """Return the best of a few runs."""
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        action()
        times.append(time.perf_counter() - start)
    return min(times)


def command(*parts: object, cwd: Path = ROOT) -> Callable[[], object]:
    return lambda: subprocess.run([str(part) for part in parts], cwd=cwd, check=True, capture_output=True)


def finished_markdown(place: Path) -> Path:
    """Write the finished pages, figures included, as Markdown for plain MkDocs: the floor of a build."""
    docs = place / "docs"
    built = place / "built"
    command(SCRIPTS / "hubwright", "build", ROOT, "--out", built)()
    for page in built.rglob("*.html"):
        if page.name in ("404.html", "search.html"):
            continue
        body = page.read_text(encoding="utf-8")
        start, end = body.find("<main"), body.find("</main>")
        target = docs / page.relative_to(built).with_suffix(".md")
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(body[start:end], encoding="utf-8")
    (place / "mkdocs.yml").write_text("site_name: floor\ntheme: mkdocs\n", encoding="utf-8")
    return place


def main() -> None:
    rows: list[tuple[str, float, str, float]] = []
    with tempfile.TemporaryDirectory() as scratch:
        place = Path(scratch)
        bare = seconds(command(sys.executable, "-c", "pass"))
        numpy = seconds(command(sys.executable, "-c", "import numpy, pydantic, pint"))
        rows.append(("hubwright --help", seconds(command(SCRIPTS / "hubwright", "--help")), "bare interpreter", bare))
        vehicle = "content/vehicles/hill-wagon.toml"
        solve = seconds(command(SCRIPTS / "hubwright", "solve", vehicle, "--json"))
        rows.append(("hubwright solve --json", solve, "import numpy, pydantic, pint", numpy))

        floor_place = finished_markdown(place / "floor")
        floor = seconds(command(SCRIPTS / "mkdocs", "build", "-q", cwd=floor_place))

        copy = place / "copy"
        shutil.copytree(
            ROOT, copy, ignore=shutil.ignore_patterns(".git", ".venv", "site", "build", ".hubwright", "node_modules")
        )

        def cold() -> None:
            shutil.rmtree(copy / ".hubwright", ignore_errors=True)
            command(SCRIPTS / "hubwright", "build", copy)()

        rows.append(("cold build", seconds(cold), "plain mkdocs build of the finished pages", floor))
        rows.append(("warm build", seconds(command(SCRIPTS / "hubwright", "build", copy)), "the same", floor))
    width = max(len(name) for name, *_ in rows)
    print(f"{'':{width}}  seconds  ratio  floor")
    for name, value, floor_name, floor_value in rows:
        print(f"{name:{width}}  {value:7.3f}  {value / floor_value:5.1f}  {floor_name}: {floor_value:.3f}")
    print(json.dumps({name: round(value, 4) for name, value, *_ in rows}))


if __name__ == "__main__":
    main()

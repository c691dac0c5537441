"""Builds sites to look at: the theme on plain Markdown, the theme with every part filled by hand, the demonstration."""

import os
import subprocess
import sys
import time
from pathlib import Path
from typing import Literal

import pytest

HERE = Path(__file__).parent
Project = Literal["plain", "sample", "demonstration"]
PROJECTS: dict[Project, Path] = {
    "plain": HERE / "theme" / "plain",
    "sample": HERE / "theme" / "sample",
    "demonstration": HERE.parent,
}
PATIENCE = 600  # seconds that one worker waits for the site that another is building


def build(name: Project, target: Path) -> Path:
    """Build a project in strict mode into a directory and return it."""
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--strict"]
    places = ["-f", str(PROJECTS[name] / "mkdocs.yml"), "-d", str(target)]
    run = subprocess.run(command + places, capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stdout + run.stderr
    assert not run.stderr.strip(), run.stderr
    return target


def built(name: Project, factory: pytest.TempPathFactory) -> Path:
    """Return a project built once for a whole test run, however many workers share it."""
    base = factory.getbasetemp()
    shared = base.parent if "PYTEST_XDIST_WORKER" in os.environ else base
    target, done = shared / f"{name}-site", shared / f"{name}-done"
    try:
        (shared / f"{name}-taken").mkdir()
    except FileExistsError:
        until = time.monotonic() + PATIENCE
        while not done.exists() and time.monotonic() < until:
            time.sleep(0.2)
    else:
        try:
            build(name, target)
        finally:
            done.touch()  # also when it failed, so that nobody waits for it
    assert (target / "index.html").is_file(), f"the site '{name}' could not be built, see the test that built it"
    return target


def pages_of(site: Path) -> list[str]:
    """Return the pages of a built site; 404.html stands at any depth, so it only works on the site's own server."""
    return sorted(file.relative_to(site).as_posix() for file in site.rglob("*.html") if file.name != "404.html")

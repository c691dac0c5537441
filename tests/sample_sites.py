"""Builds sites to look at: the theme on plain Markdown, the theme with every part filled by hand, the demonstration."""

import subprocess
import sys
from pathlib import Path
from typing import Literal

HERE = Path(__file__).parent
PROJECTS = {"plain": HERE / "theme" / "plain", "sample": HERE / "theme" / "sample", "demonstration": HERE.parent}


def build(name: Literal["plain", "sample", "demonstration"], target: Path) -> Path:
    """Build a project in strict mode into a directory and return it."""
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--strict"]
    places = ["-f", str(PROJECTS[name] / "mkdocs.yml"), "-d", str(target)]
    run = subprocess.run(command + places, capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stdout + run.stderr
    assert not run.stderr.strip(), run.stderr
    return target

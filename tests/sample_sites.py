"""Builds the two projects that show the theme: one of plain Markdown, one with every part that the plugin fills."""

import subprocess
import sys
from pathlib import Path
from typing import Literal

HERE = Path(__file__).parent / "theme"


def build(name: Literal["plain", "sample"], target: Path) -> Path:
    """Build a project in strict mode into a directory and return it."""
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--strict"]
    places = ["-f", str(HERE / name / "mkdocs.yml"), "-d", str(target)]
    run = subprocess.run(command + places, capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stdout + run.stderr
    assert not run.stderr.strip(), run.stderr
    return target

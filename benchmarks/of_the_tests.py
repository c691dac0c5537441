"""Lets benchmarks use what the tests measure figures with; imported before any of it."""

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path[0] = str(ROOT / "tests")  # in place of this folder, whose drawing.py would hide that of the tests

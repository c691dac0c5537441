"""Runs the mechanics on a setup and holds what comes out."""

from hubwright.results.model import CaseResult, Results
from hubwright.results.solve import default_wheel, described_wheels, solve

__all__ = ["CaseResult", "Results", "default_wheel", "described_wheels", "solve"]

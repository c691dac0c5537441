"""Reads checks.toml and compares a value of ours with a published one."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from pathlib import Path

import pint
import pytest

UNITS = pint.UnitRegistry()


@dataclass(frozen=True)
class Check:
    """One published value, with what it was computed from and where it stands."""

    id: str
    quantity: str
    inputs: dict[str, str]
    expected: float
    unit: str
    rel_tol: float
    source: str
    provenance: str

    def si(self, key: str) -> float:
        """Return an input in SI units."""
        return float(UNITS.Quantity(self.inputs[key]).to_base_units().magnitude)

    def agrees(self, value: float) -> None:
        """Fail unless a value of ours, in SI units, is the published one within its rounding."""
        unit = UNITS.Quantity(1.0, "" if self.unit == "1" else self.unit)
        ours = UNITS.Quantity(float(value), unit.to_base_units().units).to(unit.units).magnitude
        assert ours == pytest.approx(self.expected, rel=self.rel_tol), (
            f"{self.quantity}: {self.source} ({self.provenance}; document not opened) "
            f"says {self.expected} {self.unit}, ours is {ours}"
        )


CHECKS = [
    Check(**entry) for entry in tomllib.loads((Path(__file__).parent / "checks.toml").read_text("utf-8"))["check"]
]


def published(*prefixes: str) -> pytest.MarkDecorator:
    """Return the parametrisation over all checks whose id starts with one of the prefixes."""
    found = [check for check in CHECKS if check.id.startswith(prefixes)]
    assert found, prefixes
    return pytest.mark.parametrize(
        "check", [pytest.param(check, id=f"{check.id} [{check.source}; {check.provenance}]") for check in found]
    )

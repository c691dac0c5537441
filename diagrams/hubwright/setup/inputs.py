"""The list of every value that acts, filled while a setup is put together."""

from __future__ import annotations

from typing import cast

from hubwright.quantities import Measured
from hubwright.setup import schema
from hubwright.setup.estimates import Estimate
from hubwright.setup.keys import Table, nearest
from hubwright.setup.model import Input, Origin
from hubwright.setup.tables import Findings


class InputList:
    """Takes values one by one and notes each with its unit, range and origin."""

    def __init__(self, origins: dict[str, str]) -> None:
        """Begin with the words of [origin] by dotted key."""
        self.found: dict[str, Input] = {}
        self._origins = origins

    def take(self, key: str, measured: Measured | None, estimate: Estimate | None = None, *, unit: str = "") -> float:
        """Return what was given, else the estimate, and note it."""
        unit = unit or _unit(key)
        if measured is not None:
            self.found[key] = Input(measured.value, unit, measured.low, measured.high, self._origin(key))
            return measured.value
        if estimate is None:
            raise AssertionError(f"'{key}' was not given and has no estimate, and nobody refused it")
        self.found[key] = estimate.as_input(unit)
        return estimate.value

    def optional(self, key: str, measured: Measured | None) -> float | None:
        """Return what was given and note it, or None."""
        return None if measured is None else self.take(key, measured)

    def words(self, key: str, text: str, *, assumed: bool = False) -> None:
        """Note a value that is no number."""
        self.found[key] = Input(text, "", None, None, "estimated" if assumed else self._origin(key))

    def derive(
        self,
        key: str,
        value: float,
        unit: str,
        parents: tuple[str, ...],
        note: str,
        *,
        low: float | None = None,
        high: float | None = None,
        assumed: bool = False,
        telling: tuple[str, ...] = (),
    ) -> float:
        """Note a value that follows from others; it is estimated where one of them is, or one of the telling ones."""
        telling = telling or parents
        estimated = assumed or any(self.found[parent].origin == "estimated" for parent in telling)
        origin: Origin = "estimated" if estimated else self.found[telling[0]].origin
        self.found[key] = Input(value, unit, low, high, origin, note, parents)
        return value

    def refuse_unknown_origins(self, findings: Findings) -> None:
        """Note a problem for each key of [origin] that is no input."""
        for key in self._origins:
            # a value that was replaced or dropped may keep its origin in the base
            if key not in self.found and key not in _known_keys():
                path = ("origin", key) if ("origin", key) in findings.document.places else ("origin", *key.split("."))
                close = nearest(key, [*self.found, *_known_keys()])
                repair = f"Perhaps you meant '{close}'." if close else 'Write it like "tire.mass" = "measured".'
                findings.add(path, key=f"origin.{key}", needed="a key of this file", repair=repair)

    def _origin(self, key: str) -> Origin:
        return cast(Origin, self._origins.get(key, "given"))


def _known_keys() -> set[str]:
    return {entry.dotted for kind in schema.TABLES for entry in schema.key_reference(kind)}


def _unit(key: str) -> str:
    table, name = key.split(".")[0], key.split(".")[-1]
    several: dict[str, tuple[type[Table], ...]] = {
        "chassis": (schema.VehicleChassis, schema.TrailerChassis),
        "bearing": (schema.BallBearing, schema.TaperedBearing),
        "gear": (schema.VehicleGear, schema.TrailerGear),
    }
    for model in several.get(table) or (schema.TABLES["vehicle"][table],):
        keys = model.keys()
        if name in keys:
            return keys[name].unit
    raise KeyError(key)

"""What differs between two setups, one change at a time, and setups in between that have some of the changes."""

import dataclasses
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from hubwright.errors import HubwrightError
from hubwright.results.lubrication import grease_of
from hubwright.setup.model import Case, Gear, Setup

_WHEEL = ("rim_width", "offset", "mass")


class NotComparableError(HubwrightError, ValueError):
    """Two setups that share too little to be compared."""


@dataclass(frozen=True)
class Change:
    """One thing that differs: its name, and how to put it into a setup between the two, from the other one.

    Both may hold arrays: the same draws of the base and of the other setup.
    """

    name: str
    kind: str  # tire, wheel, spacer, gear, duty, chassis, hub, bearing, brake, lubrication
    put: Callable[[Setup, Setup], Setup]


def changes_between(base: Setup, other: Setup) -> tuple[Change, ...]:
    """Return everything that differs between two setups and acts on loads and life.

    Raises `NotComparableError` for a vehicle beside a trailer, or for hubs of different axles.
    """
    if base.kind != other.kind:
        raise NotComparableError(f"{base.name} is a {base.kind}, {other.name} a {other.kind}: they cannot be compared")
    changes: list[Change] = []
    if base.tire != other.tire:
        changes.append(Change("tire", "tire", _putting("tire")))
    if any(getattr(base.wheel, name) != getattr(other.wheel, name) for name in _WHEEL):
        changes.append(Change("wheel", "wheel", _wheel_part(*_WHEEL)))
    if base.wheel.spacer != other.wheel.spacer:
        changes.append(Change("spacer", "spacer", _wheel_part("spacer")))
    changes += _gear_changes(base, other)
    weighed = ("chassis", "root_tire_mass", "root_wheel_mass")
    if any(getattr(base, name) != getattr(other, name) for name in weighed):
        changes.append(Change("vehicle", "chassis", _putting(*weighed)))
    for name in ("hub", "bearing", "brake"):
        if getattr(base, name) != getattr(other, name):
            changes.append(Change(name, name, _putting(name)))
    if base.lubrication != other.lubrication and both_greased(base, other):
        changes.append(Change("lubrication", "lubrication", _putting("lubrication")))
    if _duty_acts(base, other):
        changes.append(Change("duty", "duty", _putting("cases", "duty")))
    return tuple(changes)


def both_greased(base: Setup, other: Setup) -> bool:
    """Return whether both files say of dirt and film what the modified life needs."""
    return grease_of(base) is not None and grease_of(other) is not None


def with_all_gear(base: Setup, other: Setup) -> Setup:
    """Return the base setup with the other's own gear in it too, weighing nothing: places for it to be put."""
    mine, theirs = _by_name(base.gear), _by_name(other.gear)
    absent = [dataclasses.replace(item, mass=0.0) for key, item in theirs.items() if key not in mine]
    return dataclasses.replace(base, gear=(*base.gear, *absent))


def stacked(setups: Sequence[Setup]) -> Setup:
    """Return one setup of arrays from setups that differ in the numbers of chassis, wheel, hub and gear alone."""
    first = setups[0]
    return dataclasses.replace(
        first,
        chassis=_stacked([setup.chassis for setup in setups]),
        wheel=_stacked([setup.wheel for setup in setups]),
        hub=_stacked([setup.hub for setup in setups]),
        root_tire_mass=_column([setup.root_tire_mass for setup in setups]),
        root_wheel_mass=_column([setup.root_wheel_mass for setup in setups]),
        gear=tuple(_stacked([setup.gear[place] for setup in setups]) for place in range(len(first.gear))),
    )


def gear_names(setup: Setup) -> set[str]:
    """Return what the gear of a setup is called in changes: the second of two namesakes has its number."""
    return {_called(key) for key in _by_name(setup.gear)}


def common_cases(base: Setup, other: Setup) -> list[str]:
    """Return the names of the cases that both setups have."""
    theirs = {case.name for case in other.cases}
    return [case.name for case in base.cases if case.name in theirs]


def _putting(*names: str) -> Callable[[Setup, Setup], Setup]:
    def put(setup: Setup, other: Setup) -> Setup:
        fields: dict[str, Any] = {name: getattr(other, name) for name in names}
        return dataclasses.replace(setup, **fields)

    return put


def _wheel_part(*names: str) -> Callable[[Setup, Setup], Setup]:
    def put(setup: Setup, other: Setup) -> Setup:
        values: dict[str, Any] = {name: getattr(other.wheel, name) for name in names}
        return dataclasses.replace(setup, wheel=dataclasses.replace(setup.wheel, **values))

    return put


def _by_name(gear: Sequence[Gear]) -> dict[tuple[str, int], Gear]:
    """Return gear by its name, the second of two namesakes by its number."""
    seen: Counter[str] = Counter()
    named: dict[tuple[str, int], Gear] = {}
    for item in gear:
        named[item.name, seen[item.name]] = item
        seen[item.name] += 1
    return named


def _called(key: tuple[str, int]) -> str:
    return key[0] if key[1] == 0 else f"{key[0]} ({key[1] + 1})"


def _gear_changes(base: Setup, other: Setup) -> list[Change]:
    mine, theirs = _by_name(base.gear), _by_name(other.gear)
    places = list(_by_name(with_all_gear(base, other).gear))
    changes = []
    for place, key in enumerate(places):
        if mine.get(key) != theirs.get(key):
            changes.append(Change(_called(key), "gear", _gear_put(place, key)))
    return changes


def _gear_put(place: int, key: tuple[str, int]) -> Callable[[Setup, Setup], Setup]:
    def put(setup: Setup, other: Setup) -> Setup:
        # what the other has no more weighs nothing
        item = _by_name(other.gear).get(key) or dataclasses.replace(setup.gear[place], mass=0.0)
        return dataclasses.replace(setup, gear=(*setup.gear[:place], item, *setup.gear[place + 1 :]))

    return put


def _duty_acts(base: Setup, other: Setup) -> bool:
    mine, theirs = ({case.name: case for case in setup.cases} for setup in (base, other))
    if any(mine[name] != theirs[name] for name in common_cases(base, other)):
        return True
    return _weighted(base, mine) != _weighted(other, theirs)


def _weighted(setup: Setup, cases: dict[str, Case]) -> list[tuple[float, Case]]:
    return sorted(((part.share, cases[part.case]) for part in setup.duty), key=repr)


def _stacked(parts: Sequence[Any]) -> Any:
    values = {
        field.name: _column([getattr(part, field.name) for part in parts]) for field in dataclasses.fields(parts[0])
    }
    return dataclasses.replace(parts[0], **values)


def _column(values: Sequence[Any]) -> Any:
    return values[0] if all(value == values[0] for value in values) else np.array(values)

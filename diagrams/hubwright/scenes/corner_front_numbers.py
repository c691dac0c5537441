"""The forces on the whole vehicle from the rear as printed: one unit, one number of places, and every sum closes.

What is printed adds up, upright and across: gravity's share and what moves make a wheel's load, wheels make sides,
sides and coupling hold weight and inertia, and what moves at the axles is all that moves. Newtons.
"""

import itertools
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property

from hubwright.quantities import System
from hubwright.quantities.formatting import NO_BREAK, Scale, scale_of
from hubwright.scenes.roll_body import RollBody, Wheel

_FINEST = {"kN": 3, "N": 1, "lbf": 1}  # places behind the point
_LIGHT = 10.0  # a weight of fewer units is told with the finest
_HALF = 0.5 + 1e-6  # a unit of the last digit: farther off nothing is that is rounded as usual
_UNUSUAL = 0.5  # by so much farther off a part may be, for a total that is rounded as usual
_ALIKE = 6  # places, in units of the last digit, to which like forces agree

Sums = Mapping[str, Mapping[str, int]]


@dataclass(frozen=True)
class RollNumbers:
    """Every force of one body as printed; their names are like `left z`, `front_left y`, `moved rear` and `held z`."""

    body: RollBody
    units: System
    axles: tuple[str, ...]

    def told(self, name: str) -> str:
        """Return the size of a named force."""
        places, whole = self._whole
        return self._text(abs(whole[name]), places)

    def alone(self, newtons: float) -> str:
        """Return the size of a force that is part of no sum, with the places of the others."""
        places = self._whole[0]
        return self._text(round(abs(newtons) / self._scale.size * 10.0**places), places)

    def _text(self, units: int, places: int) -> str:
        return f"{units * Decimal(10) ** -places:,.{places}f}{NO_BREAK}{self._scale.unit}"

    @property
    def _scale(self) -> Scale:
        return scale_of(self._weight, "force", self.units)

    @property
    def _weight(self) -> float:
        return math.hypot(self.body.weight.y, self.body.weight.z)

    @cached_property
    def _whole(self) -> tuple[int, dict[str, int]]:
        """Return the places, and every force in units of the last: rounded as usual if that closes, else one finer."""
        finest = _FINEST[self._scale.unit]
        light = self._scale.unit == "kN" and self._weight < _LIGHT * self._scale.size
        for places in (finest,) if light else (finest - 1, finest):
            size = self._scale.size * 10.0**-places
            whole: dict[str, int] = {}
            off = 0.0
            for total, (parts, sums) in (("held y", self._across()), ("held z", self._upright())):
                farther, counted = together({name: value / size for name, value in parts.items()}, sums, total)
                off = max(off, farther)
                whole |= counted
            if off <= _HALF:
                break
        return places, whole

    def _across(self) -> tuple[dict[str, float], Sums]:
        parts = {f"{wheel.name} y": wheel.force.y for wheel in self.body.wheels}
        parts["coupling y"] = self.body.coupling.y
        sums = {
            f"{side} y": {f"{wheel.name} y": 1 for wheel in self.body.of_side(side == "left")}
            for side in ("left", "right")
        }
        sums["held y"] = dict.fromkeys(parts, 1)
        return parts, sums

    def _upright(self) -> tuple[dict[str, float], Sums]:
        body = self.body
        parts = {f"{wheel.name} gravity": wheel.standing * wheel.pressing for wheel in body.wheels}
        for axle in self.axles or ("",):
            pair = body.of_axle(axle)
            parts[f"moved {axle}".strip()] = (
                math.fsum(math.copysign(wheel.gained, wheel.gained * wheel.y) for wheel in pair) / 2
            )
        parts["coupling z"] = body.coupling.z
        sums = {f"{wheel.name} z": self._load(wheel) for wheel in body.wheels}
        for side in ("left", "right"):
            sums[f"{side} z"] = _summed(sums[f"{wheel.name} z"] for wheel in body.of_side(side == "left"))
        sums["held z"] = _summed((sums["left z"], sums["right z"], {"coupling z": 1}))
        if self.axles:
            sums["moved"] = {f"moved {axle}": 1 for axle in self.axles}
        return parts, sums

    def _load(self, wheel: Wheel) -> dict[str, int]:
        axle = next((axle for axle in self.axles if wheel.name.startswith(axle)), "")
        return {f"{wheel.name} gravity": 1, f"moved {axle}".strip(): 1 if wheel.y > 0 else -1}


def together(parts: Mapping[str, float], sums: Sums, total: str = "") -> tuple[float, dict[str, int]]:
    """Return parts, rounded up or down, and their sums, so that none is farther off than must be; and how far that is.

    Like parts are rounded alike: what stands level is not told as leaning. The sum named `total`, which readers
    reckon without its parts, is rounded as usual where a part can give way without being much farther off for it.

    Examples
    --------
    >>> together({"a": 1.4, "b": 2.4, "c": 0.1}, {"both": {"a": 1, "b": 1}})[1]
    {'a': 1, 'b': 3, 'c': 0, 'both': 4}
    >>> sums = {"both": {"a": 1, "b": 1}, "all": {"a": 1, "b": 1, "c": 1}}
    >>> together({"a": 0.64, "b": 2.11, "c": 0.67}, sums, "all")[1]
    {'a': 1, 'b': 2, 'c': 0, 'both': 3, 'all': 3}
    """
    values = {name: round(value, _ALIKE) for name, value in parts.items()}
    unlike = sorted(set(values.values()))
    found: tuple[tuple[float, float], float, dict[str, int]] | None = None
    for up in itertools.product(*((0,) if value % 1 == 0 else (0, 1) for value in unlike)):
        rounded = {value: math.floor(value) + more for value, more in zip(unlike, up, strict=True)}
        whole = {name: rounded[value] for name, value in values.items()}
        off = {name: abs(whole[name] - value) for name, value in values.items()}
        for name, signs in sums.items():
            whole[name] = sum(sign * whole[part] for part, sign in signs.items())
            off[name] = abs(whole[name] - math.fsum(sign * values[part] for part, sign in signs.items()))
        farthest = max(off.values(), default=0.0)
        unusual = off[total] + _UNUSUAL if total in off and off[total] > _HALF else 0.0
        worst = round(max(farthest, unusual), _ALIKE), math.fsum(each * each for each in off.values())
        if found is None or worst < found[0]:
            found = worst, farthest, whole
    assert found is not None
    return found[1:]


def _summed(sums: Iterable[Mapping[str, int]]) -> dict[str, int]:
    total: dict[str, int] = {}
    for signs in sums:
        for name, sign in signs.items():
            total[name] = total.get(name, 0) + sign
    return total

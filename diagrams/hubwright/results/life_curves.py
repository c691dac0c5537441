"""How life changes as the load line moves out, the vehicle grows heavier or bends are taken harder.

Ratios of detailed lives to the own life, 1 where nothing is changed; all points are solved in one call. Curves are kept
for a while, because a figure is drawn in both unit systems. SI units.
"""

import dataclasses
import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from hubwright.errors import MissingDataError
from hubwright.results.bearings import missing_dimensions
from hubwright.results.draws import LEAST_SHARE, draws_of, is_drawn, span
from hubwright.results.many import Many, solve_many
from hubwright.results.model import Results
from hubwright.results.wear import Array
from hubwright.setup.model import Case, Cornering, Input, Setup, Side, Standing

DRAWS = 100  # for each point of a band
DUTY = "duty"
_REACH = 0.05  # of the load line to either side [m]
_LOADS = (0.6, 1.5)  # times the vehicle's own mass
_BENDS = 0.5  # lateral g
_MASSES = ("total_mass", "front_axle_mass", "rear_axle_mass", "axle_mass", "coupling_mass")


@dataclass(frozen=True)
class LifeCurve:
    """Life over the own life at every point; NaN where a wheel lifts; `valid` within the range of the life formula."""

    name: str  # a case, or "duty"
    ratio: Array
    valid: NDArray[np.bool_]


@dataclass(frozen=True)
class Band:
    """The 5th and 95th percentile of the first curve's ratio at some points, over the ranges of all inputs."""

    x: Array
    low: Array
    high: Array
    draws: int

    def at(self, x: float) -> tuple[float, float] | None:
        """Return the span at a point, if it is one of the band's own."""
        found = np.flatnonzero(np.isclose(self.x, x))
        return (float(self.low[found[0]]), float(self.high[found[0]])) if found.size else None


@dataclass(frozen=True)
class LifeCurves:
    """Curves over one abscissa, the first with a band where inputs have ranges; `own` is the setup's place on it."""

    x: Array
    curves: tuple[LifeCurve, ...]
    own: float
    looked_at: int  # the place of the point that words speak of
    band: Band | None


@lru_cache(maxsize=8)
def against_load_line(results: Results) -> LifeCurves:
    """Return life over the load line offset [m]: moved by spacer or by wheel, what turns with it staying the same."""
    moves = np.linspace(-_REACH, _REACH, 161)

    def moved(by: Array | float) -> tuple[Setup, dict[str, Input]]:
        setup, inputs = results.setup, dict(results.inputs)
        own = setup.wheel.spacer
        entry = inputs.get("wheel.spacer")
        if entry is not None:
            inputs["wheel.spacer"] = _changed(entry, lambda value: value + by)
        wheel = dataclasses.replace(setup.wheel, spacer=own + by)  # type: ignore[arg-type]
        return dataclasses.replace(setup, wheel=wheel, inputs=inputs), inputs

    own = results.wheel_geometry.load_line_offset
    return _curves(
        results, moves, 0.0, moved, looked_at=120, abscissa=lambda many: own + moves, names=_names(results), every=16
    )


@lru_cache(maxsize=8)
def against_wheel_load(results: Results) -> LifeCurves:
    """Return life over the wheel's standing load [N]: the vehicle's own mass grows, the gear stays as it is."""
    factors = np.round(np.arange(_LOADS[0], _LOADS[1] + 0.01, 0.0125), 9)

    def moved(by: Array | float) -> tuple[Setup, dict[str, Input]]:
        inputs = dict(results.inputs)
        for name in _MASSES:
            entry = inputs.get(f"chassis.{name}")
            if entry is not None:
                inputs[f"chassis.{name}"] = _changed(entry, lambda value: value * by)
        chassis = results.setup.chassis
        masses = {name: getattr(chassis, name) * by for name in _MASSES if hasattr(chassis, name)}
        heavier = dataclasses.replace(chassis, **masses)
        return dataclasses.replace(results.setup, chassis=heavier, inputs=inputs), inputs

    name = f"weight.{results.wheel}"
    return _curves(
        results,
        factors,
        1.0,
        moved,
        looked_at=48,
        abscissa=lambda many: many.values[name],
        names=_names(results)[:1],
        every=8,
    )


@lru_cache(maxsize=8)
def against_lateral_g(results: Results) -> LifeCurves:
    """Return life in a bend over life standing, by the lateral acceleration over g, as outer and as inner wheel."""
    bends = np.linspace(0.0, _BENDS, 201)  # close: where both rows share the load alike, life has a sharp peak
    outer: Side = "right" if results.side > 0 else "left"
    inner: Side = "left" if results.side > 0 else "right"

    def moved(by: Array | float) -> tuple[Setup, dict[str, Input]]:
        inputs = {key: entry for key, entry in results.inputs.items() if not key.startswith(("case.", "duty."))}
        cases: tuple[Case, ...] = (
            Standing("standing", "standing"),
            Cornering("outer", "outer", by, outer),  # type: ignore[arg-type]  # an array for many
            Cornering("inner", "inner", by, inner),  # type: ignore[arg-type]
        )
        return dataclasses.replace(results.setup, cases=cases, duty=(), inputs=inputs), inputs

    return _curves(
        results,
        bends,
        0.0,
        moved,
        looked_at=120,
        abscissa=lambda many: bends,
        names=("outer", "inner"),
        base="standing",
        every=10,
    )


def _curves(
    results: Results,
    points: Array,
    neutral: float,
    moved: Callable[[Array | float], tuple[Setup, dict[str, Input]]],
    *,
    looked_at: int,
    abscissa: Callable[[Many], Array],
    names: tuple[str, ...],
    base: str | None = None,
    every: int,
) -> LifeCurves:
    """Return curves over the points; each over its own value where nothing is moved, or over that of a base case."""
    if results.life is None:
        raise MissingDataError(result="the bearing's life", missing=missing_dimensions(results.setup.bearing))
    many = solve_many(moved(points)[0], results.wheel, len(points))
    still = solve_many(moved(np.array([neutral]))[0], results.wheel, 1)
    curves = []
    for name in names:
        with np.errstate(invalid="ignore", divide="ignore"):
            ratio = np.where(many.stands, _lives(many, name) / _lives(still, base or name)[0], np.nan)
        curves.append(
            LifeCurve(name, np.where(np.isfinite(ratio) & (ratio > 0), ratio, np.nan), _valid(results, many, name))
        )
    x = np.asarray(abscissa(many), dtype=float)
    own = float(np.interp(neutral, points, x))
    places = sorted({*range(0, len(points), every), looked_at, len(points) - 1, *_peak(curves[0].ratio, every)})
    band = _band(results, points, x, neutral, places, moved, names[0], base)
    return LifeCurves(x, tuple(curves), own, looked_at, band)


def _peak(ratio: Array, every: int) -> range:
    """Return places about the peak of a curve, closer than elsewhere: there a band bends most."""
    if not np.isfinite(ratio).any():
        return range(0)
    peak = int(np.nanargmax(ratio))
    if peak in (0, len(ratio) - 1):
        return range(0)
    return range(max(peak - 2 * every, 0), min(peak + 2 * every + 1, len(ratio)), max(every // 5, 1))


def _names(results: Results) -> tuple[str, ...]:
    """Return the duty if there is one, the standing case, and the hardest bend to either side."""
    bends = [case for case in results.setup.cases if isinstance(case, Cornering)]
    hardest: Mapping[str, Cornering] = {case.toward: case for case in sorted(bends, key=lambda case: case.lateral_g)}
    duty = (DUTY,) if results.setup.duty else ()
    return (*duty, "standing", *(hardest[side].name for side in ("left", "right") if side in hardest))


def _lives(many: Many, name: str) -> Array:
    return many.values["life.duty.revolutions" if name == DUTY else f"life.{name}.detailed"]


def _valid(results: Results, many: Many, name: str) -> NDArray[np.bool_]:
    # a case outside the range marks the duty even where its share is small
    chosen = [many.valid[part.case] for part in results.setup.duty] if name == DUTY else [many.valid[name]]
    return np.asarray(np.logical_and.reduce(chosen))


def _band(
    results: Results,
    points: Array,
    x: Array,
    neutral: float,
    chosen: Sequence[int],
    moved: Callable[[Array | float], tuple[Setup, dict[str, Input]]],
    name: str,
    base: str | None,
) -> Band | None:
    if not is_drawn(results):
        return None

    def drawn(by: float) -> Many:
        setup, inputs = moved(by)
        return draws_of(dataclasses.replace(results, setup=setup, inputs=inputs), number=DRAWS)

    still = drawn(neutral)
    places, lows, highs = [], [], []
    for place in chosen:
        many = drawn(float(points[place]))
        with np.errstate(invalid="ignore", divide="ignore"):
            ratio = _lives(many, name) / _lives(still, base or name)
        kept = ratio[still.stands & many.stands & np.isfinite(ratio)]
        if len(kept) >= LEAST_SHARE * DRAWS and math.isfinite(x[place]):
            places.append(place)
            found = span(kept)
            lows.append(found.low)
            highs.append(found.high)
    if len(places) < 2:
        return None
    return Band(x[places], np.array(lows), np.array(highs), DRAWS)


def _changed(entry: Input, change: Callable[[float], Array | float]) -> Input:
    """Return an input with value and range changed alike."""
    assert not isinstance(entry.value, str)
    ends = {"value": entry.value, "low": entry.low, "high": entry.high}
    moved: dict[str, Any] = {name: value if value is None else change(value) for name, value in ends.items()}
    return dataclasses.replace(entry, **moved)

"""Two setups beside each other: ratios of loads and lives with their spans, verdicts, and what each change does.

Both are drawn together: an input that they share has the same value in both in every draw. SI units.
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from hubwright.results.changes import Change, NotComparableError, changes_between, common_cases
from hubwright.results.contributions import Contribution, contributions, solve_between
from hubwright.results.draws import LEAST_SHARE, Span, draws_of, span
from hubwright.results.life import Life
from hubwright.results.lubrication import grease_of
from hubwright.results.many import Many
from hubwright.results.model import Results, Wheel
from hubwright.results.part_spans import PartSpans, Values, part_spans
from hubwright.results.solve import default_wheel, described_wheels, solve
from hubwright.results.wear import Array
from hubwright.setup.model import Cornering, Drop, Setup, SideSlope, TwoWheel

Verdict = Literal["raises", "lowers", "not settled", "unchanged"]
ALIKE = 1e-9  # of a ratio from 1: what rounding leaves
NEAR_ZERO = 1 / 8  # of the effective spread: a moment with a shorter lever is no base for a ratio


@dataclass(frozen=True)
class Compared:
    """A value of the base setup and of the other: their ratio, or where that says nothing their difference.

    A ratio is left out when its base is near zero or the sign changes, in any of the draws too. `span` is that of the
    ratio, else of the difference; None where the ranges do not move it. `growth` is the span of the growth in size
    that the verdict on a difference goes by. `valid` is false where either value lies outside the range of the life
    formula.
    """

    base: float
    other: float
    ratio: float | None
    span: Span | None
    valid: bool = True
    growth: Span | None = None

    @property
    def difference(self) -> float:
        """The other less the base."""
        return self.other - self.base

    @property
    def verdict(self) -> Verdict:
        """What the change does to the size of the value; not settled where the span holds no change."""
        if self.ratio is None:
            neutral, value, span = 0.0, abs(self.other) - abs(self.base), self.growth
        else:
            neutral, value, span = 1.0, self.ratio, self.span
        low, high = (value, value) if span is None else (span.low, span.high)
        scale = max(abs(self.base), abs(self.other)) if self.ratio is None else 1.0
        if max(abs(low - neutral), abs(high - neutral)) <= ALIKE * scale:
            return "unchanged"
        return "raises" if low > neutral else "lowers" if high < neutral else "not settled"


@dataclass(frozen=True)
class Comparison:
    """Another setup beside a base, at the wheel of the analysed axle where the other wears most.

    By case: the load of the worst row, the moment about the vehicle's long axis, and the detailed life. `revolutions`
    and `distance` are those of the duty. The modified ones are lives as dirt and film leave them, where both files say
    enough of that. `parts` splits a ratio into its changes, by the names "distance", "revolutions", "row load, CASE",
    "life, CASE", "modified life, CASE" and "modified distance"; empty where a setup in between cannot stand.
    """

    base: Results
    other: Results
    worst_wheel: Mapping[str, Wheel]  # of "base" and "other"
    changes: tuple[Change, ...]
    row_loads: Mapping[str, Compared]
    moments: Mapping[str, Compared]
    lives: Mapping[str, Compared]
    revolutions: Compared | None
    distance: Compared | None
    modified_lives: Mapping[str, Compared]
    modified_distance: Compared | None
    parts: Mapping[str, tuple[Contribution, ...]]
    warnings: tuple[str, ...]
    draws: int

    @property
    def wheel(self) -> Wheel:
        """The wheel at which both are compared."""
        return self.other.wheel

    @cached_property
    def part_spans(self) -> PartSpans:
        """Spans of the parts, computed when first asked for: each setup between the two is drawn as they are."""
        return part_spans(self.base, self.other, self.changes, {name: _values_of(name) for name in self.parts})


def compare(base: Setup, other: Setup, wheel: Wheel | None = None) -> Comparison:
    """Return two setups compared, at a wheel or else where the other wears most on the analysed axle.

    Raises
    ------
    NotComparableError
        For a vehicle beside a trailer, or hubs of different axles.
    CaseError
        For a case that cannot stand.
    """
    changes = changes_between(base, other)
    wheels = _axle_wheels(base, other) if wheel is None else (wheel,)
    mine, theirs = ([solve(setup, name) for name in wheels] for setup in (base, other))
    worst_mine, worst_theirs = _worst(mine), _worst(theirs)
    base_results, other_results = mine[wheels.index(worst_theirs.wheel)], worst_theirs
    pair = _Pair(base_results, other_results)
    row_loads, moments = pair.row_loads(), pair.moments()
    lives, revolutions, distance = pair.lives("detailed"), pair.duty("revolutions"), pair.duty("distance")
    modified_lives, modified_distance = pair.lives("modified"), pair.duty("modified_distance")
    compared: dict[str, Compared | None] = {
        "distance": distance,
        "revolutions": revolutions,
        "modified distance": modified_distance,
        **{f"row load, {case}": each for case, each in row_loads.items()},
        **{f"life, {case}": each for case, each in lives.items()},
        **{f"modified life, {case}": each for case, each in modified_lives.items()},
    }
    parts = _parts(base, other, changes, other_results.wheel, compared)
    warnings = list(_warnings(base_results, other_results, pair))
    if changes and row_loads and not parts:
        warnings.append("Not split into changes: a setup with only some of them has a case that cannot stand.")
    return Comparison(
        base=base_results,
        other=other_results,
        worst_wheel={"base": worst_mine.wheel, "other": worst_theirs.wheel},
        changes=changes,
        row_loads=row_loads,
        moments=moments,
        lives=lives,
        revolutions=revolutions,
        distance=distance,
        modified_lives=modified_lives,
        modified_distance=modified_distance,
        parts=parts,
        warnings=tuple(warnings),
        draws=int(pair.stands.sum()),
    )


@lru_cache(maxsize=8)
def compare_results(base: Results, other: Results) -> Comparison:
    """Return two solved setups compared at the wheel at which the other is solved; kept for a while for figures."""
    return compare(base.setup, other.setup, other.wheel)


def at_worst_wheel(setup: Setup) -> Results:
    """Return a setup solved at the wheel of the analysed axle that wears most."""
    return _worst([solve(setup, name) for name in _axle_wheels(setup, setup)])


def lopsided_cases(setup: Setup) -> list[str]:
    """Return the cases of a duty whose left and right shares differ, by the name that the file gives them."""
    balance: dict[tuple[str, float], float] = {}
    names: dict[tuple[str, float], str] = {}
    for part in setup.duty:
        case = setup.case(part.case)
        if isinstance(case, Cornering):
            key, left = ("cornering", case.lateral_g), case.toward == "left"
        elif isinstance(case, SideSlope):
            key, left = ("side_slope", case.angle), case.uphill == "left"
        elif isinstance(case, TwoWheel):
            key, left = ("two_wheel", 0.0), case.supported.startswith("front_left")
        else:
            continue
        balance[key] = balance.get(key, 0.0) + (part.share if left else -part.share)
        names.setdefault(key, case.declared)
    return [names[key] for key, value in balance.items() if abs(value) > ALIKE]


class _Pair:
    """Two solved setups and their common draws."""

    def __init__(self, base: Results, other: Results) -> None:
        self.base, self.other = base, other
        self.drawn: tuple[Many, Many] = (draws_of(base), draws_of(other))
        self.stands: NDArray[np.bool_] = self.drawn[0].stands & self.drawn[1].stands
        self.cases = [name for name in common_cases(base.setup, other.setup) if name in base.cases]

    def row_loads(self) -> dict[str, Compared]:
        found = {}
        for case in self.cases:
            radial = [results.cases[case].row_radial_load for results in (self.base, self.other)]
            if radial[0] is None or radial[1] is None or self._is_drop(case):
                continue
            values = [max(rows.outboard, rows.inboard) for rows in radial if rows is not None]
            drawn = [np.maximum(*(many.values[name] for name in _rows(case))) for many in self.drawn]
            found[case] = self._compared(values, drawn)
        return found

    def moments(self) -> dict[str, Compared]:
        found = {}
        for case in self.cases:
            if self._is_drop(case):
                continue
            values = [results.cases[case].bearing_moment.x for results in (self.base, self.other)]
            drawn = [many.values[f"cases.{case}.bearing_moment.x"] for many in self.drawn]
            spread = self.base.bearing.effective_spread
            # beside a spread that is not known any moment may be small
            lever = math.inf if spread is None else NEAR_ZERO * spread
            found[case] = self._compared(values, drawn, least=abs(self.base.cases[case].bearing_force.z) * lever)
        return found

    def lives(self, name: Literal["detailed", "modified"]) -> dict[str, Compared]:
        lives = self._lives()
        if lives is None:
            return {}
        found = {}
        for case in self.cases:
            mine, theirs = (life.cases[case] for life in lives)
            values = [getattr(life, name) for life in (mine, theirs)]
            if None not in values:
                drawn = [many.values[f"life.{case}.{name}"] for many in self.drawn]
                found[case] = self._compared(values, drawn, valid=mine.valid and theirs.valid)
        return found

    def duty(self, name: Literal["revolutions", "distance", "modified_distance"]) -> Compared | None:
        lives = self._lives()
        if lives is None:
            return None
        mine, theirs = (life.duty for life in lives)
        if mine is None or theirs is None:
            return None
        values = [getattr(mine, name), getattr(theirs, name)]
        if None in values:
            return None
        drawn = [many.values[f"life.duty.{name}"] for many in self.drawn]
        return self._compared(values, drawn, valid=mine.valid and theirs.valid)

    def _lives(self) -> tuple[Life, Life] | None:
        mine, theirs = self.base.life, self.other.life
        return None if mine is None or theirs is None else (mine, theirs)

    def _is_drop(self, case: str) -> bool:
        return any(isinstance(results.setup.case(case), Drop) for results in (self.base, self.other))

    def _compared(
        self,
        values: Sequence[float],
        drawn: Sequence[Array],
        *,
        least: float = 0.0,
        valid: bool = True,
    ) -> Compared:
        base, other = (float(value) for value in values)
        mine, theirs = (each[self.stands] for each in drawn)
        enough = self.stands.mean() >= LEAST_SHARE
        comparable = math.isfinite(base) and math.isfinite(other) and base * other > 0 and abs(base) >= least
        if enough and not np.all(mine * theirs > 0):
            comparable = False
        ratio = other / base if comparable else None
        with np.errstate(invalid="ignore"):  # a difference of infinite lives
            spread = theirs / mine if comparable else theirs - mine
            growth = np.abs(theirs) - np.abs(mine)
        found, growing = (_span(values) if enough else None for values in (spread, growth))
        return Compared(base, other, ratio, found, valid, None if comparable else growing)


def _span(values: Array) -> Span | None:
    """Return the span of what is finite, None where nothing moves it."""
    values = values[np.isfinite(values)]
    moves = len(values) > 0 and np.ptp(values) > ALIKE * max(1e-300, float(np.abs(values).max()))
    return span(values) if moves else None


def _values_of(name: str) -> Values:
    """Return by which names of the draws a ratio goes that is split into parts."""
    what, _, case = name.partition(", ")
    if what == "row load":
        return _rows(case)
    if case:
        return f"life.{case}.{'modified' if what == 'modified life' else 'detailed'}"
    return f"life.duty.{what.replace(' ', '_')}"


def _rows(case: str) -> tuple[str, str]:
    return (f"cases.{case}.row_radial_load.outboard", f"cases.{case}.row_radial_load.inboard")


def _axle_wheels(base: Setup, other: Setup) -> tuple[Wheel, ...]:
    """Return the wheels of the axle that both files describe, the left one first."""
    shared = [wheel for wheel in described_wheels(base) if wheel in described_wheels(other)]
    lead = default_wheel(base) if default_wheel(base) in shared else default_wheel(other)
    if lead not in shared:
        raise NotComparableError(f"{base.name} describes another axle's hub than {other.name}: nothing to compare")
    axle = lead.rpartition("_")[0]
    return tuple(wheel for wheel in shared if wheel.rpartition("_")[0] == axle)


def _worst(solved: Iterable[Results]) -> Results:
    """Return the results of the wheel that wears most: by the duty, else standing, else by its load."""

    def strain(results: Results) -> float:
        life = results.life
        if life is not None:
            lived = life.cases["standing"].detailed if life.duty is None else life.duty.revolutions
            if lived:
                return 1 / lived
        return results.weight.wheel_loads[results.wheel]

    # of wheels that wear alike the left one, whatever the last digit says
    found: Results | None = None
    for results in solved:
        if found is None or strain(results) > strain(found) * (1 + ALIKE):
            found = results
    assert found is not None
    return found


def _parts(
    base: Setup,
    other: Setup,
    changes: Sequence[Change],
    wheel: Wheel,
    compared: Mapping[str, Compared | None],
) -> dict[str, tuple[Contribution, ...]]:
    if not changes:
        return {}
    between = solve_between(base, other, changes, wheel)
    if not between.stands:
        return {}
    found = {}
    for name, each in compared.items():
        if each is None or each.ratio is None:
            continue
        values = _values_of(name)
        if isinstance(values, str):
            value = between.values[values]
        else:
            value = np.maximum(*(between.values[row] for row in values))
        if np.isfinite(value).all() and (value > 0).all():
            found[name] = contributions(between, value, changes)
    return found


def _warnings(base: Results, other: Results, pair: _Pair) -> Iterable[str]:
    for setup in {results.setup.name: results.setup for results in (base, other)}.values():
        for case in lopsided_cases(setup):
            yield (
                f"The duty of {setup.name} gives left and right different shares of '{case}': "
                "the wheels of one side wear sooner than those of the other."
            )
    said = [results.setup for results in (base, other) if grease_of(results.setup) is not None]
    if len(said) == 1:
        yield f"Only {said[0].name} says what dirt and film its bearing runs with: they are left out of the lives."
    share = float(pair.stands.mean())
    if share < 1:
        kept = "they are left out of the spans" if share >= LEAST_SHARE else "no span is given"
        yield f"In {100 * (1 - share):.0f} % of the draws a case cannot stand, a wheel lifted for one; {kept}."

"""A beam alone: any mix of supports and loads, its reactions, shear, moment, slope and deflection.

x runs from the left end. Forces, intensities and deflections are positive upward, couples positive
counter-clockwise, V is the sum of the upward forces left of the cut, M is positive when sagging:
dM/dx = V. Metres, newtons, N·m.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np
from numpy.polynomial import Polynomial
from numpy.typing import NDArray

from hubwright.errors import ImpossibleError
from hubwright.mechanics.constants import Value

SupportType = Literal["pin", "roller", "fixed"]


@dataclass(frozen=True)
class Support:
    """A support [m]: pin and roller hold the height, fixed the slope as well."""

    at: float
    type: SupportType


@dataclass(frozen=True)
class PointForce:
    """A force on the beam, upward positive [m, N]."""

    at: float
    force: float


@dataclass(frozen=True)
class PointMoment:
    """A couple on the beam, counter-clockwise positive [m, N·m]."""

    at: float
    moment: float


@dataclass(frozen=True)
class DistributedLoad:
    """A load spread from `start` to `end`, upward positive [m, N/m]; `end_intensity` only where it differs."""

    start: float
    end: float
    intensity: float
    end_intensity: float | None = None


Load: TypeAlias = PointForce | PointMoment | DistributedLoad


@dataclass(frozen=True)
class Reaction:
    """What a support does to the beam: force, upward positive [N], and couple, counter-clockwise positive [N·m]."""

    at: float
    type: SupportType
    force: float
    moment: float


@dataclass(frozen=True)
class Extreme:
    """The value of the largest size, with its sign, and where it stands [m]."""

    value: float
    at: float


@dataclass(frozen=True)
class Segment:
    """A piece of the beam without a step in it; its four polynomials count from its own start.

    `slope` and `deflection` are E·I times slope and deflection.
    """

    start: float
    end: float
    shear: Polynomial
    moment: Polynomial
    slope: Polynomial
    deflection: Polynomial


@dataclass(frozen=True)
class SolvedBeam:
    """A beam with its reactions; x may be a number or an array in [0, length]."""

    length: float
    reactions: tuple[Reaction, ...]
    segments: tuple[Segment, ...]
    flexural_rigidity: float | None = None

    def shear(self, x: Value, *, left_of_steps: bool = False) -> Value:
        """Return V at x [N], at a step the value right of it unless asked otherwise."""
        return self._evaluate("shear", x, left_of_steps)

    def moment(self, x: Value, *, left_of_steps: bool = False) -> Value:
        """Return M at x [N·m], at a step the value right of it unless asked otherwise."""
        return self._evaluate("moment", x, left_of_steps)

    def slope(self, x: Value) -> Value:
        """Return the slope dv/dx at x [rad]."""
        return self._evaluate("slope", x) / self._known_rigidity()

    def deflection(self, x: Value) -> Value:
        """Return the deflection v at x, upward positive [m]."""
        return self._evaluate("deflection", x) / self._known_rigidity()

    def shape(self, x: Value) -> Value:
        """Return E·I times the deflection, for a drawing when E·I is not known [N·m³]."""
        return self._evaluate("deflection", x)

    @property
    def maximum_shear(self) -> Extreme:
        """The shear of the largest size [N]."""
        return self._extreme("shear")

    @property
    def maximum_moment(self) -> Extreme:
        """The bending moment of the largest size [N·m]."""
        return self._extreme("moment")

    @property
    def maximum_deflection(self) -> Extreme:
        """The deflection of the largest size [m]."""
        largest = self._extreme("deflection")
        return Extreme(largest.value / self._known_rigidity(), largest.at)

    def _known_rigidity(self) -> float:
        if self.flexural_rigidity is None:
            raise ImpossibleError("slope and deflection need Young's modulus and the second moment of area")
        return self.flexural_rigidity

    def _evaluate(self, what: str, x: Value, left_of_steps: bool = False) -> Value:
        points: NDArray[np.float64] = np.asarray(x, dtype=float)
        if np.any((points < 0) | (points > self.length)):
            raise ImpossibleError(f"x lies outside the beam of {self.length} m")
        starts = [segment.start for segment in self.segments]
        index = np.searchsorted(starts, points, side="left" if left_of_steps else "right") - 1
        index = np.clip(index, 0, len(starts) - 1)
        result = np.zeros_like(points)
        for i, segment in enumerate(self.segments):
            result = np.where(index == i, getattr(segment, what)(points - segment.start), result)
        return result if result.ndim else float(result)

    def _extreme(self, what: str) -> Extreme:
        found: list[Extreme] = []
        for segment in self.segments:
            curve: Polynomial = getattr(segment, what)
            span = segment.end - segment.start
            places = [0.0, *(t for t in _real_roots(curve.deriv(), span)), span]
            found += [Extreme(float(curve(t)), segment.start + t) for t in places]
        largest = max(abs(extreme.value) for extreme in found)
        # of equal ones the first from the left, whatever the last bits say
        return next(extreme for extreme in found if abs(extreme.value) >= largest * (1 - 1e-12))


def solve_beam(
    *,
    length: float,
    supports: Sequence[Support],
    loads: Sequence[Load],
    flexural_rigidity: float | None = None,
) -> SolvedBeam:
    """Return a straight beam of one section with its reactions and everything that follows from them.

    Determinate or not: the reactions are those with which the deflected beam meets every support.

        M = Σ F⟨x − a⟩ − Σ M₀⟨x − a⟩⁰ + Σ w⟨x − a⟩²/2,    E I v″ = M

    ⟨⟩ counting only when positive, with v = 0 at each support, v′ = 0 at each fixed one, V = M = 0
    beyond the right end.

    Parameters
    ----------
    length
        L, from the left end to the right [m].
    supports
        Where the beam is held; at least two, or one fixed.
    loads
        Point forces [N], couples [N·m] and distributed loads [N/m].
    flexural_rigidity
        E·I [N·m²]; without it there is no slope and no deflection, everything else is the same.

    Returns
    -------
    SolvedBeam
        Reactions [N, N·m], and shear, moment, slope and deflection anywhere.

    Raises
    ------
    ImpossibleError
        When the supports do not hold the beam, two stand at one place, or something lies outside it.

    Notes
    -----
    Small deflections; no shear deformation. Loads across the beam only, so that pin and roller do the
    same. The reactions of an indeterminate beam do not depend on a uniform E·I.

    Examples
    --------
    >>> beam = solve_beam(
    ...     length=4.0, supports=[Support(0.0, "pin"), Support(4.0, "roller")], loads=[PointForce(1.0, -8.0)]
    ... )
    >>> [round(reaction.force, 9) for reaction in beam.reactions]  # 8·3/4 and 8·1/4
    [6.0, 2.0]
    >>> round(beam.maximum_moment.value, 9), round(beam.maximum_moment.at, 9)
    (6.0, 1.0)

    References
    ----------
    Bernoulli's beam with Macaulay's brackets, as in any text on mechanics of materials.
    """
    _check(length, supports, loads)
    terms = [term for load in loads for term in _terms(load)]
    unknowns = [(support.at, 1) for support in supports]
    unknowns += [(support.at, 0) for support in supports if support.type == "fixed"]

    # Unknowns: E·I times height and slope of the left end, then the reactions. Lengths over L and
    # moments over L keep every entry near one, whatever the beam's size.
    rows: list[list[float]] = []
    right: list[float] = []

    def condition(at: float, derivative: int, ends: tuple[float, float]) -> None:
        """Demand that the derivative of E·I·v (2 is M, 3 is V) is zero at a place."""
        rows.append([*ends, *(_bracket((at - a) / length, power + 2 - derivative) for a, power in unknowns)])
        right.append(
            -sum(
                c * length ** (power - 1) * _bracket((at - a) / length, power + 2 - derivative) for c, a, power in terms
            )
        )

    for support in supports:
        condition(support.at, 0, (1.0, support.at / length))
    for support in supports:
        if support.type == "fixed":
            condition(support.at, 1, (0.0, 1.0))
    condition(length, 3, (0.0, 0.0))
    condition(length, 2, (0.0, 0.0))
    height, slope, *reactions = np.linalg.solve(np.array(rows), np.array(right))

    forces = reactions[: len(supports)]
    couples = iter(reactions[len(supports) :])
    found = tuple(
        # a positive bracket term of power 0 lifts M, which a clockwise couple does
        Reaction(
            support.at, support.type, float(force), -float(next(couples)) * length if support.type == "fixed" else 0.0
        )
        for support, force in zip(supports, forces, strict=True)
    )
    terms += [(reaction.force, reaction.at, 1) for reaction in found]
    terms += [(-reaction.moment, reaction.at, 0) for reaction in found if reaction.type == "fixed"]
    segments = _segments(length, terms, float(height) * length**3, float(slope) * length**2)
    return SolvedBeam(length, found, segments, flexural_rigidity)


Term: TypeAlias = tuple[float, float, int]  # coefficient c, place a and power p of c⟨x − a⟩^p/p! in M


def _terms(load: Load) -> list[Term]:
    match load:
        case PointForce(at, force):
            return [(force, at, 1)]
        case PointMoment(at, moment):
            return [(-moment, at, 0)]
        case DistributedLoad(start, end, first, last):
            last = first if last is None else last
            growth = (last - first) / (end - start)
            # what begins at `start` is taken away again from `end` on
            return [(first, start, 2), (growth, start, 3), (-last, end, 2), (-growth, end, 3)]


def _bracket(x: float, power: int) -> float:
    if x < 0 or power < 0:
        return 0.0
    return x**power / math.factorial(power)


def _segments(length: float, terms: list[Term], height: float, slope: float) -> tuple[Segment, ...]:
    steps = sorted({0.0, length, *(at for coefficient, at, _ in terms if coefficient)})
    pieces: list[Segment] = []
    for start, end in itertools.pairwise(steps):
        moment = Polynomial([0.0])
        tail = Polynomial([height + slope * start, slope])
        for coefficient, at, power in terms:
            if at <= start:
                local = Polynomial([start - at, 1.0])
                moment = moment + coefficient * local**power / math.factorial(power)
                tail = tail + coefficient * local ** (power + 2) / math.factorial(power + 2)
        pieces.append(Segment(start, end, moment.deriv(), moment, tail.deriv(), tail))
    return tuple(pieces)


def _real_roots(curve: Polynomial, span: float) -> list[float]:
    """Return where a polynomial is zero strictly inside a segment."""
    # over the segment as [0, 1]
    coefficients = np.asarray(curve.coef, dtype=float) * span ** np.arange(len(curve.coef))
    size = float(np.max(np.abs(coefficients)))
    if size == 0.0:
        return []
    # rounding leaves leading terms that would throw roots anywhere
    trimmed = Polynomial(np.trim_zeros(np.where(np.abs(coefficients) > 1e-13 * size, coefficients, 0.0), "b"))
    roots = trimmed.roots()
    inside = roots.real[(np.abs(roots.imag) < 1e-9) & (roots.real > 0) & (roots.real < 1)]
    return [float(root) * span for root in np.sort(inside)]


def _check(length: float, supports: Sequence[Support], loads: Sequence[Load]) -> None:
    if not length > 0:
        raise ImpossibleError(f"a beam must be longer than nothing (got {length} m)")
    places = [support.at for support in supports]
    if len(set(places)) < len(places):
        raise ImpossibleError("two supports stand at the same place; move one or leave it out")
    if len(places) < 2 and not any(support.type == "fixed" for support in supports):
        raise ImpossibleError(f"{len(places)} support(s) cannot hold the beam; give two, or make one 'fixed'")
    for load in loads:
        if isinstance(load, DistributedLoad):
            if not load.end > load.start:
                raise ImpossibleError(
                    f"a distributed load must end right of its start (got {load.start} to {load.end} m)"
                )
            places += [load.start, load.end]
        else:
            places.append(load.at)
    for place in places:
        if not 0 <= place <= length:
            raise ImpossibleError(f"{place} m lies outside the beam of {length} m")

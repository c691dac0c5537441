"""Lives of a solved setup: every case by both methods, its worst elements, and the life over the duty.

Lives in revolutions, with ten in a hundred such bearings flaked; infinite without load. SI units.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from hubwright.errors import CaseError
from hubwright.mechanics.bearing_life import duty_life, life_distance
from hubwright.mechanics.two_row_bearing import NotConvergedError
from hubwright.mechanics.vector import Vector
from hubwright.results.lubrication import grease_of
from hubwright.results.model import CaseResult, Results, Rows
from hubwright.results.wear import Array, Carried, Wear, wear
from hubwright.setup.model import DutyShare


@dataclass(frozen=True)
class RowElements:
    """Load [N] and contact angle under load [rad] of each element of a row, from straight up toward the front."""

    load: tuple[float, ...]
    angle: tuple[float, ...]


@dataclass(frozen=True)
class CaseLife:
    """What one case does to the bearing. A drop is no fatigue cycle: it has no life."""

    name: str
    quick: float | None
    detailed: float | None
    valid: bool  # within the range of ISO 281; else the load is severe, and a page gives no life
    equivalent_load: Rows  # P [N]
    largest_element_load: Rows  # N
    peak_contact_pressure: Rows  # Pa
    static_safety: Rows  # dent margin s₀; infinite without load
    outboard: RowElements
    inboard: RowElements
    life_factor: Rows | None  # a_ISO for dirt and film; None where the file says too little of them
    modified: float | None  # the detailed life with it


@dataclass(frozen=True)
class CaseDamage:
    """A case's part in a duty: its share of the distance, and of the life that is used up."""

    case: str
    share: float
    damage_share: float


@dataclass(frozen=True)
class DutyLife:
    """Life over the mixture of cases; `valid` is false where one of them is outside the range.

    The modified life is that with the grease's factor in every case; None where the file says too little of it.
    """

    revolutions: float
    distance: float  # m
    valid: bool
    parts: tuple[CaseDamage, ...]
    modified_revolutions: float | None
    modified_distance: float | None  # m


@dataclass(frozen=True)
class Life:
    """Lives of a setup at one wheel end; `duty` is None where the file gives none."""

    cases: Mapping[str, CaseLife]
    duty: DutyLife | None


def life_of(results: Results) -> Life:
    """Return the lives of a solved setup.

    Raises
    ------
    MissingDataError
        Where the file says too little of a tapered pair, with the keys missing.
    CaseError
        Where the rings find no equilibrium, naming the case with its loads, and for a drop in the duty.
    """
    cases = list(results.cases.values())
    side: Literal[1, -1] = 1 if results.side > 0 else -1
    try:
        worn = wear(results.setup.bearing, carried(cases), side=side, grease=grease_of(results.setup))
    except NotConvergedError as error:
        raise CaseError(case=cases[error.case].name, reason=str(error)) from error
    lives = {case.name: _case_life(case, worn, place) for place, case in enumerate(cases)}
    return Life(lives, _duty_life(results, lives))


def carried(cases: Sequence[CaseResult]) -> Carried:
    """Return what the bearing carries in some cases, as arrays with one entry for each."""

    def vector(values: list[tuple[float, float, float]]) -> Vector:
        return Vector(*np.array(values).T)

    radial = [case.row_radial_load or Rows(np.nan, np.nan) for case in cases]  # wear() refuses unknown rows
    return Carried(
        force=vector([each.bearing_force.components for each in cases]),
        moment=vector([each.bearing_moment.components for each in cases]),
        outboard=np.array([rows.outboard for rows in radial]),
        inboard=np.array([rows.inboard for rows in radial]),
    )


def refuse_drops(duty: Sequence[DutyShare], kinds: Mapping[str, str]) -> None:
    """Refuse a duty with a drop in it, which dents rather than wears."""
    for part in duty:
        if kinds.get(part.case) == "drop":
            raise CaseError(case=part.case, reason="a drop dents rather than wears: it has no share of a distance")


def _case_life(case: CaseResult, worn: Wear, place: int) -> CaseLife:
    drop = case.kind == "drop"

    def rows(values: Array) -> Rows:
        return Rows(float(values[place, 0]), float(values[place, 1]))

    def elements(row: int) -> RowElements:
        load, angle = worn.element_load[place, row], worn.element_angle[place, row]
        return RowElements(tuple(load.tolist()), tuple(angle.tolist()))

    return CaseLife(
        name=case.name,
        quick=None if drop else float(worn.quick[place]),
        detailed=None if drop else float(worn.detailed[place]),
        valid=bool(worn.valid[place]),
        equivalent_load=rows(worn.equivalent_load),
        largest_element_load=rows(worn.largest_load),
        peak_contact_pressure=rows(worn.pressure),
        static_safety=rows(worn.margin),
        outboard=elements(0),
        inboard=elements(1),
        life_factor=None if drop or worn.life_factor is None else rows(worn.life_factor),
        modified=None if drop or worn.modified is None else float(worn.modified[place]),
    )


def _duty_life(results: Results, lives: Mapping[str, CaseLife]) -> DutyLife | None:
    duty = results.setup.duty
    if not duty:
        return None
    refuse_drops(duty, {case.name: case.kind for case in results.setup.cases})
    shares = [part.share for part in duty]
    alone = [lives[part.case].detailed or 0.0 for part in duty]
    revolutions = float(duty_life(shares=shares, lives=alone))
    circumference = results.wheel_geometry.rolling_circumference
    greased = [life for life in (lives[part.case].modified for part in duty) if life is not None]
    modified = float(duty_life(shares=shares, lives=greased)) if len(greased) == len(duty) else None
    damage = [share / life for share, life in zip(shares, alone, strict=True)]
    used = sum(damage)
    return DutyLife(
        revolutions=revolutions,
        distance=float(life_distance(life=revolutions, rolling_circumference=circumference)),
        valid=all(lives[part.case].valid for part in duty),
        parts=tuple(
            CaseDamage(part.case, part.share, each / used if used else 0.0)
            for part, each in zip(duty, damage, strict=True)
        ),
        modified_revolutions=modified,
        modified_distance=None
        if modified is None
        else float(life_distance(life=modified, rolling_circumference=circumference)),
    )

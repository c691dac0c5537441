"""Solved beams: a student's beam file, and the wheel end's spindle on its two pressure centres.

Forces and deflections upward positive, couples counter-clockwise, V the upward forces left of the cut, M sagging
positive: dM/dx = V. SI units. The spindle's x runs inboard from the bearing centre.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from hubwright.errors import MissingDataError
from hubwright.mechanics import beam as mechanics
from hubwright.mechanics.beam import Extreme, Segment, SolvedBeam
from hubwright.mechanics.beam import Reaction as BeamReaction
from hubwright.mechanics.spindle_beam import flexural_rigidity
from hubwright.results.export import Json, inputs_as_json
from hubwright.results.model import Results
from hubwright.setup.model import Beam, DistributedLoad, Input, PointForce, PointMoment

__all__ = ["BeamReaction", "BeamResults", "Extreme", "WheelEndBeam", "beam_as_json", "solve_beam", "wheel_end_beam"]

_SAMPLES = 24  # of each piece between two steps
_ROUNDING = 1e-11  # of the load, and of its moment and bend over the whole beam: smaller is nothing but rounding
_FAR = 5.0  # spreads off the centre: farther out the load is shown by its force and couple at the near support

BeamLoad = PointForce | PointMoment | DistributedLoad


@dataclass(frozen=True)
class Curves:
    """What is plotted over x: twice at each step, left and right of it."""

    x: tuple[float, ...]
    shear: tuple[float, ...]
    moment: tuple[float, ...]
    slope_times_stiffness: tuple[float, ...]  # E·I times the slope [N·m²]
    bend_times_stiffness: tuple[float, ...]  # E·I times the deflection [N·m³]


@dataclass(frozen=True)
class BeamResults:
    """A beam with its reactions, its curves, and the largest of each with its place."""

    name: str
    start: float
    end: float
    loads: tuple[BeamLoad, ...]
    reactions: tuple[BeamReaction, ...]
    curves: Curves
    stiffness: float | None  # E·I [N·m²]
    maximum_shear: Extreme
    maximum_moment: Extreme
    maximum_deflection: Extreme | None
    inputs: Mapping[str, Input]

    @property
    def slope(self) -> tuple[float, ...] | None:
        """The slope at x [rad], where E·I is known."""
        if self.stiffness is None:
            return None
        return tuple(value / self.stiffness for value in self.curves.slope_times_stiffness)

    @property
    def deflection(self) -> tuple[float, ...] | None:
        """The deflection at x [m], where E·I is known."""
        if self.stiffness is None:
            return None
        return tuple(value / self.stiffness for value in self.curves.bend_times_stiffness)

    @property
    def point_forces(self) -> tuple[float, ...]:
        """Every force at a point, reactions included [N]."""
        applied = tuple(load.force for load in self.loads if isinstance(load, PointForce))
        return applied + tuple(reaction.force for reaction in self.reactions)


@dataclass(frozen=True)
class WheelEndBeam(BeamResults):
    """The spindle as a beam: held at the two pressure centres, under the vertical bearing force of one case."""

    case: str
    spread: float
    load: float  # B_z, upward on the spindle [N]
    load_place: float  # outboard of the bearing centre; infinite for a couple without force [m]
    couple: float | None  # of the load about the support nearest to it, where the load itself stands too far out
    diameter: float | None
    contact_line: float | None  # lean of the contact lines against the radius: the contact angle [rad]

    @property
    def overhung(self) -> bool:
        """Whether the load stands outside the two pressure centres."""
        return abs(self.load_place) > self.spread / 2

    @property
    def near(self) -> str:
        """The row nearest to the load."""
        return "outboard" if self.load_place >= 0 else "inboard"

    @property
    def reaction_outboard(self) -> float:
        """Force of the outboard row on the spindle, upward positive [N]."""
        return self.reactions[0].force

    @property
    def reaction_inboard(self) -> float:
        """Force of the inboard row on the spindle, upward positive [N]."""
        return self.reactions[1].force

    @property
    def cantilever_moment(self) -> float:
        """What a wall at the support far from the load would hold: the limiting simplification [N·m]."""
        at_near = 0.0 if self.couple is None else abs(self.couple)
        lever = self.spread if self.couple is not None else abs(self.load_place) + self.spread / 2
        return abs(self.load) * lever + at_near


def solve_beam(beam: Beam) -> BeamResults:
    """Return a beam file's beam with its reactions, curves and maxima."""
    section = beam.section
    stiffness = None if section is None else section.youngs_modulus * section.second_moment
    size = _size(beam.loads, beam.length)
    least = _ROUNDING * size
    solved = mechanics.solve_beam(
        length=beam.length,
        supports=[mechanics.Support(support.at, support.type) for support in beam.supports],
        loads=[_mechanical(load) for load in beam.loads],
        flexural_rigidity=stiffness,
    )
    return BeamResults(
        name=beam.name,
        start=0.0,
        end=beam.length,
        loads=beam.loads,
        reactions=solved.reactions,
        curves=_curves(solved, size),
        stiffness=stiffness,
        maximum_shear=_cleared(solved.maximum_shear, least),
        maximum_moment=_cleared(solved.maximum_moment, least * beam.length),
        maximum_deflection=None
        if stiffness is None
        else _cleared(solved.maximum_deflection, least * beam.length**3 / stiffness),
        inputs=beam.inputs,
    )


def wheel_end_beam(results: Results, case: str) -> WheelEndBeam:
    """Return the spindle of the wheel end as a beam, in one case."""
    spread = results.bearing.effective_spread
    if spread is None:
        keys = ["bearing.row_spacing", "bearing.pitch_diameter", "bearing.contact_angle"]
        raise MissingDataError(result="the wheel end as a beam", missing=keys)
    state, half = results.cases[case], spread / 2
    load, moment = state.bearing_force.z, results.side * state.bearing_moment.x  # outboard: positive
    far = abs(moment) > _FAR * spread * abs(load)
    place = moment / load if load else math.copysign(math.inf, moment) if moment else 0.0
    stands = math.copysign(half, place) if far else place
    # inboard is positive along the beam, so a couple outboard of its force turns clockwise as it is seen
    couple = -(moment - load * stands) if far else None
    start, end = min(-half, -stands), max(half, -stands)
    loads: tuple[BeamLoad, ...] = (PointForce(-stands, load),)
    if couple is not None:
        loads += (PointMoment(-stands, couple),)
    spindle = results.setup.spindle
    diameter = None if spindle is None else spindle.diameter
    stiffness = None if diameter is None else float(flexural_rigidity(diameter=diameter))
    length = end - start
    size = _size(loads, length)
    least = _ROUNDING * size
    solved = mechanics.solve_beam(
        length=length,
        supports=[mechanics.Support(-half - start, "pin"), mechanics.Support(half - start, "roller")],
        loads=[_mechanical(each, start) for each in loads],
        flexural_rigidity=stiffness,
    )
    return WheelEndBeam(
        name=results.setup.name,
        start=start,
        end=end,
        loads=loads,
        reactions=tuple(BeamReaction(each.at + start, each.type, each.force, each.moment) for each in solved.reactions),
        curves=_curves(solved, size, start),
        stiffness=stiffness,
        maximum_shear=_cleared(solved.maximum_shear, least, start),
        maximum_moment=_cleared(solved.maximum_moment, least * length, start),
        maximum_deflection=None
        if stiffness is None
        else _cleared(solved.maximum_deflection, least * length**3 / stiffness, start),
        inputs=results.inputs,
        case=case,
        spread=spread,
        load=load,
        load_place=place,
        couple=couple,
        diameter=diameter,
        contact_line=results.setup.bearing.contact_angle,
    )


def beam_as_json(beam: BeamResults) -> Json:
    """Return a solved beam as the JSON of `hubwright solve`."""
    entry: Json = {
        "setup": beam.name,
        "inputs": inputs_as_json(beam.inputs),
        "reactions": [_reaction_as_json(reaction) for reaction in beam.reactions],
        "maximum_shear": _extreme_as_json(beam.maximum_shear, "N"),
        "maximum_moment": _extreme_as_json(beam.maximum_moment, "N*m"),
    }
    if beam.maximum_deflection is not None:
        entry["maximum_deflection"] = _extreme_as_json(beam.maximum_deflection, "m")
    return entry


def _reaction_as_json(reaction: BeamReaction) -> Json:
    entry: Json = {
        "type": reaction.type,
        "value": reaction.force,
        "unit": "N",
        "at": {"value": reaction.at, "unit": "m"},
    }
    if reaction.type == "fixed":
        entry["moment"] = {"value": reaction.moment, "unit": "N*m"}
    return entry


def _extreme_as_json(extreme: Extreme, unit: str) -> Json:
    return {"value": extreme.value, "unit": unit, "at": {"value": extreme.at, "unit": "m"}}


def _mechanical(load: BeamLoad, start: float = 0.0) -> mechanics.Load:
    match load:
        case PointForce():
            return mechanics.PointForce(load.at - start, load.force)
        case PointMoment():
            return mechanics.PointMoment(load.at - start, load.moment)
        case DistributedLoad():
            return mechanics.DistributedLoad(load.start - start, load.end - start, load.intensity)


def _curves(solved: SolvedBeam, size: float, start: float = 0.0) -> Curves:
    """Return x and what is plotted over it, segment by segment, so that steps stand upright."""
    pairs = [(segment, _places(segment)) for segment in solved.segments]
    length = solved.length

    def joined(values: Iterable[NDArray[np.float64]], least: float = 0.0) -> tuple[float, ...]:
        whole = np.concatenate(list(values))
        return tuple(float(value) for value in np.where(np.abs(whole) <= least, 0.0, whole))

    return Curves(
        # the end of a piece is the start of the next to the last bit
        x=joined(np.append(segment.start + at[:-1], segment.end) + start for segment, at in pairs),
        shear=joined((segment.shear(at) for segment, at in pairs), _ROUNDING * size),
        moment=joined((segment.moment(at) for segment, at in pairs), _ROUNDING * size * length),
        slope_times_stiffness=joined((segment.slope(at) for segment, at in pairs), _ROUNDING * size * length**2),
        bend_times_stiffness=joined((segment.deflection(at) for segment, at in pairs), _ROUNDING * size * length**3),
    )


def _size(loads: Iterable[BeamLoad], length: float) -> float:
    """Return the largest load as a force: the measure for what is only rounding [N]."""
    sizes = [0.0]
    for load in loads:
        match load:
            case PointForce():
                sizes.append(abs(load.force))
            case PointMoment():
                sizes.append(abs(load.moment) / length)
            case DistributedLoad():
                sizes.append(abs(load.intensity) * (load.end - load.start))
    return max(sizes)


def _places(segment: Segment) -> NDArray[np.float64]:
    """Return where a segment is sampled: evenly, both ends, and where moment and deflection turn."""
    span = segment.end - segment.start
    even = np.linspace(0.0, span, _SAMPLES)
    roots = np.concatenate([segment.shear.trim().roots(), segment.slope.trim().roots()])
    turns = roots.real[(np.abs(roots.imag) < 1e-9 * span) & (roots.real > 0) & (roots.real < span)]
    # one beside an even place would only double it, and look like a step
    apart = np.min(np.abs(turns[:, None] - even), axis=1, initial=span) > 1e-9 * span
    return np.unique(np.concatenate([even, turns[apart]]))


def _cleared(extreme: Extreme, least: float, start: float = 0.0) -> Extreme:
    """Return an extreme that is zero where it is only rounding, counted from another start."""
    return Extreme(0.0 if abs(extreme.value) <= least else extreme.value, extreme.at + start)

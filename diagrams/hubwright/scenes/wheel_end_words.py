"""The words of the wheel-end section: title, caption, text alternative and steps, all from the numbers.

Directions are words: a force on the hub is so large and points up or down, outboard or inboard, forward or rearward.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from hubwright.quantities import format_quantity, format_terms
from hubwright.quantities.formatting import MINUS
from hubwright.results.model import CaseResult, Results, RowVectors, Vector
from hubwright.scenes.vocabulary import Step, Units

# what is too small to be shown beside the rest
_NOTHING = 1e-6


@dataclass(frozen=True)
class Wording:
    """Numbers of one case in one unit system, as words."""

    results: Results
    state: CaseResult
    units: Units
    schematic: bool
    hanging: bool

    @property
    def largest(self) -> float:
        """Return the measure against which a force is nothing [N]."""
        return self.state.free_body.largest_component

    @property
    def least(self) -> float:
        """Return what a force must exceed to be shown [N], and a moment, as that force at a lever of a metre [N·m]."""
        return _NOTHING * self.largest

    def nothing(self, newtons: float) -> bool:
        """Return whether a force is rounding beside the largest."""
        return abs(newtons) <= self.least

    def force(self, newtons: float) -> str:
        """Return the size of a force."""
        return format_quantity(abs(newtons), "force", self.units)

    def moment(self, newton_metres: float) -> str:
        """Return the size of a moment."""
        return format_quantity(abs(newton_metres), "moment", self.units)

    def length(self, metres: float) -> str:
        """Return a length with its sign."""
        return format_quantity(metres, "small length", self.units)

    def upright(self, newtons: float) -> str:
        """Return up or down."""
        return "up" if newtons > 0 else "down"

    def sideways(self, newtons: float) -> str:
        """Return outboard or inboard."""
        return "outboard" if newtons * self.results.side > 0 else "inboard"

    def fore_and_aft(self, newtons: float) -> str:
        """Return forward or rearward."""
        return "forward" if newtons > 0 else "rearward"

    def ways(self, force: Vector) -> str:
        """Return where a force points, in words."""
        words = [self.upright(force.z)] * (not self.nothing(force.z))
        words += [self.sideways(force.y)] * (not self.nothing(force.y))
        words += [self.fore_and_aft(force.x)] * (not self.nothing(force.x))
        return " and ".join(words)

    def turning(self, moment_x: float) -> str:
        """Return the sense of a moment about x as seen from the rear."""
        return "clockwise" if moment_x > 0 else "counter-clockwise"

    def turning_from_above(self, moment_z: float) -> str:
        """Return the sense of a moment about z as seen from above."""
        return "counter-clockwise" if moment_z > 0 else "clockwise"

    @property
    def wheel(self) -> str:
        """Return the wheel's name."""
        return f"{self.results.wheel.replace('_', ' ')} wheel"

    @property
    def in_plane(self) -> bool:
        """Return whether the load line goes through the bearing centre, as far as lengths are shown."""
        return abs(self.results.wheel_geometry.load_line_offset) < 0.5e-4

    @property
    def load_line(self) -> str:
        """Return where the load line lies."""
        y = self.results.wheel_geometry.load_line_offset
        if self.in_plane:
            return "in the plane of the bearing centre"
        return f"{self.length(abs(y))} {'outboard' if y > 0 else 'inboard'} of the bearing centre"

    def title(self) -> str:
        """Return the result that the figure shows, as one line."""
        F, B, kind = self.state.contact_force, self.state.bearing_force, self.state.kind
        if self.hanging:
            return f"The wheel hangs free: its bearing carries only {self.force(B.z)} of wheel and hub"
        if kind in ("cornering", "side_slope") and not self.nothing(F.y):
            return self._side_force_title()
        if kind == "ledge" and not self.nothing(F.x):
            return f"The edge pushes the wheel up with {self.force(F.z)} and back with {self.force(F.x)}"
        if kind in ("braking", "driving") and not self.nothing(B.x):
            doing = "Braking" if kind == "braking" else "Driving"
            return f"{doing} makes the bearing carry {self.force(B.x)} fore and aft as well"
        return f"The road pushes up {self.load_line}"

    def _side_force_title(self) -> str:
        upright, sideways = self.contact_moments()
        if abs(upright) < 0.02 * abs(sideways):
            return "The side force at the road tips the hub, its load line hardly does"
        if upright * sideways > 0:
            return "The side force at the road tips the hub the same way as the load line"
        if abs(sideways) > abs(upright):
            return "The side force at the road outweighs the load line and tips the hub the other way"
        return "The side force at the road takes part of the load line's moment off the hub"

    def contact_moments(self) -> tuple[float, float]:
        """Return the moments about x of the contact's vertical and of its side force [N·m]."""
        contact = self.state.free_body.force("contact")
        return contact.point.y * contact.force.z, -contact.point.z * contact.force.y

    def caption(self) -> str:
        """Return what is drawn and the numbers that close the body."""
        side = "left" if self.results.side > 0 else "right"
        sentences = [
            f"{self.wheel.capitalize()}, seen from the rear and cut through its axis, outboard to the {side}; "
            f"{self.case_words()}.",
            self._contact_sentence(),
            self._reaction_sentence(),
        ]
        sentences += self._remarks()
        return " ".join(sentence for sentence in sentences if sentence)

    def case_words(self) -> str:
        """Return the case as words."""
        name = self.state.name
        return "standing" if self.state.kind == "standing" else name

    def _contact_sentence(self) -> str:
        F = self.state.contact_force
        if self.hanging:
            return "It does not touch the road."
        where = "edge" if self.state.kind == "ledge" else "road"
        words = [f"up with {self.force(F.z)}"]
        if not self.nothing(F.y):
            words.append(f"{self.sideways(F.y)} with {self.force(F.y)}")
        if not self.nothing(F.x):
            words.append(f"{self.fore_and_aft(F.x)} with {self.force(F.x)}")
        return f"The {where} pushes {_listed(words)}, {self.load_line}."

    def _reaction_sentence(self) -> str:
        B, M = self.state.bearing_force, self.state.bearing_moment
        words = self.directed(Vector(-B.x, -B.y, -B.z))
        sentence = (
            f"The bearing pushes the hub {_listed(words)} and turns it {self.turning(-M.x)} with {self.moment(M.x)}"
            f"{self._from_above(' and, seen from above, ')}"
        )
        rows = self.state.row_load
        if rows is None:
            return sentence + "; where its rows bear is not known, so nothing is said of each."
        parts = [
            f"{size} {self.upright(-row.z)} at the {name} row"
            for size, name, row in zip(self.row_forces(), ("outboard", "inboard"), rows_of(rows), strict=True)
        ]
        return f"{sentence}: {_listed(parts)}."

    def _from_above(self, opening: str) -> str:
        """Return how the bearing turns the hub about the vertical, if it does, behind words that open it."""
        M_z = self.state.bearing_moment.z
        if abs(M_z) <= self.least:
            return ""
        return f"{opening}{self.turning_from_above(-M_z)} with {self.moment(M_z)}"

    def directed(self, force: Vector) -> list[str]:
        """Return the components of a force with direction words, the vertical one first; none that is nothing."""
        words = []
        if not self.nothing(force.z):
            words.append(f"{self.upright(force.z)} with {self.force(force.z)}")
        if not self.nothing(force.y):
            words.append(f"{self.sideways(force.y)} with {self.force(force.y)}")
        if not self.nothing(force.x):
            words.append(f"{self.fore_and_aft(force.x)} with {self.force(force.x)}")
        return words or ["with nothing"]

    def _remarks(self) -> list[str]:
        remarks = []
        couple = next((c.moment.y for c in self.state.free_body.couples if c.name in ("shaft", "brake")), 0.0)
        if abs(couple) > self.least:
            taker = "caliper" if self.results.setup.brake and self.state.kind == "braking" else "shaft or brake"
            remarks.append(f"The {taker} takes {self.moment(couple)} about the axis; the bearing does not.")
        caliper = self.state.free_body.force("caliper").force
        if not (self.nothing(caliper.x) and self.nothing(caliper.z)):
            remarks.append("The caliper's force is drawn on the disc in the cut, its couple left to the brake.")
        if self.state.kind == "side_slope":
            remarks.append(self._slope())
        if self.state.kind == "ledge":
            remarks.append("The edge lies ahead of the cut.")
        if self.schematic:
            remarks.append("Bearing drawn schematically.")
        return remarks

    def _slope(self) -> str:
        """Return how far the picture is tilted: axes are those of the vehicle, in which plumb leans."""
        weight = self.state.free_body.force("weight_wheel").force
        angle = format_quantity(math.atan2(abs(weight.y), -weight.z), "angle", self.units)
        lean = self.sideways(weight.y)
        return f"The slope of {angle} is drawn level, with the vehicle: weights lean {lean}, which is downhill."

    def description(self) -> str:
        """Return the text alternative."""
        lengths = self.results.wheel_geometry
        spread = self.results.bearing.effective_spread
        rows = f" The rows bear {self.length(spread)} apart on the axis." if spread is not None else ""
        spacer = self.results.setup.wheel.spacer
        return (
            f"Section through the {self.wheel} with its free body, {self.case_words()}. {self.caption()} "
            f"The axle stands {format_quantity(lengths.loaded_radius, 'length', self.units)} above the road"
            f"{f', a spacer of {self.length(spacer)} under the wheel' if spacer else ''}.{rows} "
            f"{self.weights()}"
        )

    def weights(self) -> str:
        """Return the weights of the turning parts, and their inertia if they have any."""
        parts = (("weight", "Weights"), ("inertia", "Inertia"))[: 1 if self.still else 2]
        return " ".join(
            f"{name}: tire and wheel {self.weight(f'{kind}_wheel')}, hub {self.weight(f'{kind}_hub')}."
            for kind, name in parts
        )

    def weight(self, name: str) -> str:
        """Return the size of one of the body's weights."""
        force = self.state.free_body.force(name).force
        return self.force((force.x**2 + force.y**2 + force.z**2) ** 0.5)

    def row_forces(self, axis: str = "z", state: CaseResult | None = None) -> tuple[str, str]:
        """Return the sizes of both rows' loads, so shown that they add up to the force on the bearing."""
        rows = (state or self.state).row_load
        assert rows is not None
        return row_sizes([getattr(row, axis) for row in rows_of(rows)], self.units)

    def steps(self, lens_factor: float) -> tuple[Step, ...]:
        """Return the moves in teaching order."""
        B, M, F = self.state.bearing_force, self.state.bearing_moment, self.state.contact_force
        rows = self.state.row_load
        spread = self.results.bearing.effective_spread
        turning = "outer" if self.results.setup.bearing.turning_ring == "outer" else "inner"
        known = (
            "Nothing touches the tire."
            if self.hanging
            else f"The {'edge' if self.state.kind == 'ledge' else 'road'} pushes the tire {_listed(self.directed(F))}."
        )
        upright, sideways = self.contact_moments()
        lever = f"The load line lies {self.load_line}"
        if self.hanging:
            lever += "."
        elif self.nothing(F.y):
            lever += f": the contact force turns about C with {self.moment(upright)}."
        else:
            lever += (
                f": there the vertical force turns with {self.moment(upright)}, "
                f"the side force at the loaded radius with {self.moment(sideways)}."
            )
        others = "weights" if self.still else "weights and the inertia"
        heading = "Add the weights" if self.still else "Add weights and inertia"
        caliper = self.state.free_body.force("caliper").force
        braked = not (self.nothing(caliper.x) and self.nothing(caliper.z))
        if braked:
            heading = "Add weights, inertia and the caliper"
        split = (
            "The pressure centres of the rows are not known: the reaction stays one force and one moment."
            if rows is None or spread is None
            else f"The contact lines meet the axis {self.length(spread)} apart: there the rows push the hub."
        )
        if rows is None:
            solved = f"The force {self.force(B.z)} and the moment {self.moment(M.x)} are what the bearing must give."
        else:
            outboard, inboard = self.row_forces()
            solved = (
                f"Outboard {outboard} {self.upright(-rows.outboard.z)}, inboard "
                f"{inboard} {self.upright(-rows.inboard.z)}: together the force and the moment at C."
            )
        return (
            Step(
                "Isolate",
                f"Cut at the rolling elements: what turns with the {turning} rings is the body, buff.",
                "isolate",
            ),
            Step("Put on the contact force", known, "loads"),
            Step(
                heading,
                f"The {others} of the turning parts, in the lens {longer(lens_factor)}: "
                f"tire and wheel {self.weight('weight_wheel')}, hub {self.weight('weight_hub')}."
                + (" The caliper's friction on the disc is a load too." if braked else ""),
                "loads",
            ),
            Step(
                "Put the bearing's answer at C",
                f"On the hub it is {_listed(self.directed(Vector(-B.x, -B.y, -B.z)))}, "
                f"and a moment of {self.moment(M.x)}, {self.turning(-M.x)}"
                f"{self._from_above(', and seen from above ')}.",
                "reactions",
            ),
            Step("Measure the levers", lever, "dimensions"),
            Step("Find where the rows bear", split, "dimensions"),
            Step("Solve for the rows", solved, "solve"),
        )

    @property
    def still(self) -> bool:
        """Return whether the body is not accelerated."""
        return all(
            self.nothing(part)
            for name in ("inertia_wheel", "inertia_hub")
            for part in self.state.free_body.force(name).force.components
        )


def rows_of(pair: RowVectors) -> tuple[Vector, Vector]:
    """Return what belongs to the outboard and to the inboard row."""
    return pair.outboard, pair.inboard


def row_sizes(loads: Sequence[float], units: Units) -> tuple[str, str]:
    """Return the sizes of the outboard and the inboard row's load, so shown that they add up."""
    first, second = format_terms(loads, "force", units)
    return first.removeprefix(MINUS), second.removeprefix(MINUS)


def longer(times: float) -> str:
    """Return how forces in the lens are drawn beside those of the whole wheel."""
    if times == 1:
        return "to the same scale"
    return f"{times:g} times longer" if times > 1 else f"{times:g} times as long"


def _listed(words: list[str]) -> str:
    return words[0] if len(words) == 1 else ", ".join(words[:-1]) + " and " + words[-1]

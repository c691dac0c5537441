"""The words of the vehicle in a bend or across a slope, all from the numbers."""

import math
from dataclasses import dataclass
from functools import cached_property

from hubwright.quantities import format_quantity, format_terms
from hubwright.results.model import CaseResult, Results
from hubwright.scenes.corner_front_numbers import RollNumbers
from hubwright.scenes.roll_body import RollBody, Wheel
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Point, Step, Units
from hubwright.setup.model import Cornering, SideSlope

_NOTHING = 1e-6


@dataclass(frozen=True)
class RollWording:
    """Numbers of one case of the whole vehicle, as words."""

    results: Results
    state: CaseResult
    body: RollBody
    units: Units

    @cached_property
    def numbers(self) -> RollNumbers:
        """Every force as printed, so that all sums close."""
        return RollNumbers(self.body, self.units, self.axles)

    def told(self, name: str) -> str:
        """Return the size of a force of that name in the numbers."""
        return self.numbers.told(name)

    def length(self, millimetres: float) -> str:
        """Return a length on the vehicle, without sign."""
        return format_quantity(abs(millimetres) / 1e3, "vehicle length", self.units)

    @staticmethod
    def way(newtons: float) -> str:
        """Return left or right."""
        return "left" if newtons > 0 else "right"

    def nothing(self, newtons: float) -> bool:
        """Return whether a force is rounding beside the weight."""
        return abs(newtons) <= _NOTHING * abs(self.body.weight.z)

    def share(self, axle: str) -> str:
        """Return an axle's part of all that moves, so shown that both make the whole."""
        shares = [sum(abs(wheel.gained) for wheel in self.body.of_axle(each)) / 2 for each in self.axles]
        percents = format_terms([share / abs(self.body.moved()) for share in shares], "percent", self.units)
        return percents[self.axles.index(axle)]

    @property
    def pulled(self) -> bool:
        """Return whether anything pulls sideways."""
        return not self.nothing(self.body.inertia.y + self.body.weight.y)

    @property
    def across_step(self) -> int:
        """Return the step in which the road pushes across."""
        return 5 if self.pulled else 4

    @property
    def measured_step(self) -> int:
        """Return the step of the levers."""
        return self.across_step + 1

    @property
    def split_step(self) -> int:
        """Return the step in which each axle stands by itself."""
        return self.across_step + 2

    @property
    def tire(self) -> float:
        """Return how wide a tire is [mm]."""
        return self.results.wheel_geometry.section_width * 1e3

    @property
    def gains(self) -> bool:
        """Return whether it is the left side that gains."""
        return self.body.moved() > 0

    @property
    def axles(self) -> tuple[str, ...]:
        """Return the axles that have views of their own."""
        return () if self.results.setup.kind == "trailer" else ("front", "rear")

    def gained(self, wheel: Wheel) -> str:
        """Return what was moved to or from a wheel."""
        if self.nothing(wheel.gained):
            return "nothing moved"
        axle = wheel.name.partition("_")[0]
        moved = self.told(f"moved {axle}" if axle in self.axles else "moved")
        return f"{moved} {'gained' if wheel.gained > 0 else 'lost'}"

    def title(self) -> str:
        """Return what moves to which side, and how the axles share it."""
        if self.nothing(self.body.moved()):
            return "On the level and straight, nothing moves between left and right"
        where = "across the slope" if self.state.kind == "side_slope" else "in the bend"
        side = "left" if self.gains else "right"
        name = {"side_slope": "downhill", "cornering": "outer"}[self.state.kind]
        shares = [f"{self.told(f'moved {axle}')} at the {axle} axle" for axle in self.axles]
        how = ": " + " and ".join(shares) if shares else "; none of it comes from the coupling"
        return f"{self.told('moved')} moves to the {name} wheels, on the {side}, {where}{how}"

    def caption(self) -> str:
        """Return what is drawn, and what makes the load move."""
        name, kind = plain(self.results.setup.name), self.results.setup.kind
        case = self.results.setup.case(self.state.name)
        sentences = [f"{name}, {plain(self.state.name)}: the whole {kind} from the rear."]
        across = self.body.inertia.y + self.body.weight.y
        height = self.length(self.body.centre[2])
        if isinstance(case, Cornering):
            g = format_quantity(case.lateral_g, "acceleration", self.units)
            sentences.append(
                f"At {g} toward the {case.toward} its inertia, {self.told('held y')}, pulls {self.way(across)} "
                f"{height} above the road."
            )
        elif isinstance(case, SideSlope):
            angle = format_quantity(case.angle, "angle", self.units)
            sentences.append(
                f"On {angle}, uphill to the {case.uphill}, {self.told('held y')} of its weight pulls downhill {height} "
                f"above the road; the picture is tilted with it."
            )
            sentences.append("A vehicle tips well before its static angle: this is no driving limit.")
        else:
            sentences.append("Nothing pulls sideways at its centre of mass.")
        if self.axles and not self.nothing(self.body.moved()):
            estimated = self.results.inputs["chassis.front_roll_share"].origin == "estimated"
            share = "estimated" if estimated else "as given in the file"
            sentences.append(f"Front and rear share by their stiffness in roll, the front's share {share}.")
        if self.axles:
            sentences.append("Marks across the arrows of the axles: where gravity alone would end them.")
        if kind == "trailer":
            sentences.append("The coupling is taken at the height of the road.")
        return " ".join(sentences)

    def description(self) -> str:
        """Return the text alternative."""
        weight = self.body.weight
        level = self.nothing(weight.y)
        told = self.told("held z") if level else self.numbers.alone(math.hypot(weight.y, weight.z))
        sentences = [self.caption(), f"Weight {told} at the centre of mass."]
        if self.state.kind == "side_slope":
            sentences.append(f"Of it {self.told('held z')} presses on the road.")
        for wheel in self.body.wheels:
            across = ""
            if not self.nothing(wheel.force.y):
                across = f" and {self.way(wheel.force.y)} with {self.told(f'{wheel.name} y')}"
            sentences.append(
                f"{wheel.name.replace('_', ' ').capitalize()} wheel: the road pushes up with "
                f"{self.told(f'{wheel.name} z')}{across}; gravity alone would press there with "
                f"{self.told(f'{wheel.name} gravity')}, {self.gained(wheel)}."
            )
        if self.axles:
            sums = [
                f"{side} {self._up_and_across(self.body.summed(side == 'left')[0], side)}" for side in ("left", "right")
            ]
            sentences.append(f"Both axles together, up and across: {', '.join(sums)}.")
        coupling = self.body.coupling
        if not self.nothing(coupling.z):
            held = [f"{'up' if coupling.z > 0 else 'down'} with {self.told('coupling z')}"]
            if not self.nothing(coupling.y):
                held.append(f"to the {self.way(coupling.y)} with {self.told('coupling y')}")
            sentences.append(f"At the coupling the trailer is held {' and '.join(held)}.")
        return " ".join(sentences)

    def _up_and_across(self, force: Point, side: str) -> str:
        told = ((force[1], f"{side} z"), (force[0], f"{side} y"))
        return " and ".join(self.told(name) for newtons, name in told if not self.nothing(newtons))

    def steps(self) -> tuple[Step, ...]:
        """Return the moves in teaching order."""
        across = self.body.inertia.y + self.body.weight.y
        if not self.pulled:
            pull = "Nothing pulls sideways: no inertia across, no slope."
        elif self.state.kind == "side_slope":
            pull = f"The part of the weight along the slope, {self.told('held y')}, pulls downhill."
        else:
            pull = f"The inertia, {self.told('held y')}, pulls {self.way(across)}, out of the bend."
        sides = [f"{self.told(f'{side} z')} on the {side}" for side in ("left", "right")]
        moved = self.body.moved()
        split = (
            "No load moves."
            if self.nothing(moved)
            else f"{self.told('moved')} moves to the {'left' if self.gains else 'right'}: pull times height over track."
        )
        last = "How each wheel stands beside what gravity alone would put there."
        both = "Both axles together" if self.axles else "On the wheels"
        push = []
        if self.pulled:
            way = f"{self.told('held y')} to the {self.way(-across)} in all, against what pulls."
            push = [Step("And push across", way, "reactions")]
        return (
            Step("Draw the vehicle", "From the rear, to scale, on the road.", "isolate"),
            Step("Hang its weight", "At the centre of all masses, gear included.", "loads"),
            Step("Add what pulls sideways", pull, "loads"),
            Step("Let the road push up", f"{both}: {' and '.join(sides)}.", "reactions"),
            *push,
            Step("Measure the levers", split, "dimensions"),
            Step("Split it between the axles" if self.axles else "Compare with gravity alone", last, "solve"),
        )

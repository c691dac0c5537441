"""The words of the vehicle in a bend or across a slope, all from the numbers."""

from dataclasses import dataclass

from hubwright.quantities import format_quantity, format_terms
from hubwright.quantities.formatting import MINUS
from hubwright.results.model import CaseResult, Results
from hubwright.scenes.roll_body import RollBody, Wheel
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Step, Units
from hubwright.setup.model import Cornering, SideSlope

_NOTHING = 1e-6


@dataclass(frozen=True)
class RollWording:
    """Numbers of one case of the whole vehicle, as words."""

    results: Results
    state: CaseResult
    body: RollBody
    units: Units

    def force(self, newtons: float) -> str:
        """Return the size of a force."""
        return format_quantity(abs(newtons), "force", self.units)

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

    def upright(self) -> dict[bool, str]:
        """Return what the road pushes up with on the left (true) and on the right, so that both make the whole."""
        sides = (True, False)
        told = format_terms([self.body.summed(left)[0][1] for left in sides], "force", self.units)
        return {left: text.removeprefix(MINUS) for left, text in zip(sides, told, strict=True)}

    def moved_at(self) -> dict[str, tuple[str, str]]:
        """Return for each axle how much moves there, and its part of all, so that both make the whole."""
        moved = [sum(abs(wheel.gained) for wheel in self.body.of_axle(axle)) / 2 for axle in self.axles]
        shares = [each / abs(self.body.moved()) for each in moved]
        forces, percents = format_terms(moved, "force", self.units), format_terms(shares, "percent", self.units)
        return {axle: (force, percent) for axle, force, percent in zip(self.axles, forces, percents, strict=True)}

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
        moved = self.moved_at()[axle][0] if axle in self.axles else self.force(wheel.gained)
        return f"{moved} {'gained' if wheel.gained > 0 else 'lost'}"

    def title(self) -> str:
        """Return what moves to which side, and how the axles share it."""
        if self.nothing(self.body.moved()):
            return "Standing level, nothing moves between left and right"
        where = "across the slope" if self.state.kind == "side_slope" else "in the bend"
        side = "left" if self.gains else "right"
        name = {"side_slope": "downhill", "cornering": "outer"}[self.state.kind]
        moved = self.force(self.body.moved())
        shares = [f"{text} at the {axle} axle" for axle, (text, _) in self.moved_at().items()]
        how = ": " + " and ".join(shares) if shares else "; the coupling takes no part"
        return f"{moved} moves to the {name} wheels, on the {side}, {where}{how}"

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
                f"At {g} toward the {case.toward} its inertia, {self.force(across)}, pulls {self.way(across)} "
                f"{height} above the road."
            )
        elif isinstance(case, SideSlope):
            angle = format_quantity(case.angle, "angle", self.units)
            sentences.append(
                f"On {angle}, uphill to the {case.uphill}, {self.force(across)} of its weight pulls downhill {height} "
                f"above the road; the picture is tilted with it."
            )
            sentences.append("A vehicle tips well before its static angle: this is no driving limit.")
        else:
            sentences.append("Nothing pulls sideways at its centre of mass.")
        if self.axles and not self.nothing(self.body.moved()):
            estimated = self.results.inputs["chassis.front_roll_share"].origin == "estimated"
            share = "estimated" if estimated else "as given in the file"
            sentences.append(f"Front and rear share by their stiffness in roll, the front's share {share}.")
            sentences.append("Marks across the arrows of the axles: what of gravity stood there before.")
        if kind == "trailer":
            sentences.append("The coupling is taken at the height of the road.")
        return " ".join(sentences)

    def description(self) -> str:
        """Return the text alternative."""
        weight = self.body.weight
        sentences = [
            self.caption(),
            f"Weight {self.force((weight.y**2 + weight.z**2) ** 0.5)} at the centre of mass.",
        ]
        for wheel in self.body.wheels:
            across = (
                ""
                if self.nothing(wheel.force.y)
                else (f" and {self.way(wheel.force.y)} with {self.force(wheel.force.y)}")
            )
            sentences.append(
                f"{wheel.name.replace('_', ' ').capitalize()} wheel: the road pushes up with "
                f"{self.force(wheel.force.z)}{across}; standing {self.force(wheel.standing)}, {self.gained(wheel)}."
            )
        sums = []
        for left, name in ((True, "left"), (False, "right")):
            sideways, up = self.body.summed(left)[0]
            told = ((up, self.upright()[left]), (sideways, self.force(sideways)))
            parts = [text for newtons, text in told if not self.nothing(newtons)]
            sums.append(f"{name} {' and '.join(parts)}")
        sentences.append(f"Both axles together, up and across: {', '.join(sums)}.")
        return " ".join(sentences)

    def steps(self) -> tuple[Step, ...]:
        """Return the moves in teaching order."""
        across = self.body.inertia.y + self.body.weight.y
        if self.nothing(across):
            pull = "Nothing pulls sideways: no inertia across, no slope."
        elif self.state.kind == "side_slope":
            pull = f"The part of the weight along the slope, {self.force(across)}, pulls downhill."
        else:
            pull = f"The inertia, {self.force(across)}, pulls {self.way(across)}, out of the bend."
        sides = [f"{text} on the {'left' if left else 'right'}" for left, text in self.upright().items()]
        moved = self.body.moved()
        split = (
            "No load moves."
            if self.nothing(moved)
            else f"{self.force(moved)} moves to the {'left' if self.gains else 'right'}: pull times height over track."
        )
        last = "How each wheel stands beside its standing load."
        return (
            Step("Draw the vehicle", "From the rear, to scale, on the road.", "isolate"),
            Step("Hang its weight", "At the centre of all masses, gear included.", "loads"),
            Step("Add what pulls sideways", pull, "loads"),
            Step("Let the road push back", f"Both axles together: {' and '.join(sides)}.", "reactions"),
            Step("Measure the levers", split, "dimensions"),
            Step("Split it between the axles" if self.axles else "Compare with standing", last, "solve"),
        )

"""What the figure of a vehicle across a slope says: title, caption, text alternative and steps, from its numbers."""

import math
from dataclasses import dataclass

from hubwright.quantities import format_quantity, format_terms
from hubwright.quantities.formatting import MINUS
from hubwright.scenes.on_slope import OnSlope
from hubwright.scenes.shown import Shown
from hubwright.scenes.vocabulary import Step, Units


@dataclass(frozen=True)
class SlopeWording(Shown):
    """The sentences of a vehicle across a slope."""

    on: OnSlope
    units: Units

    def angle(self, radians: float) -> str:
        """Return an angle as shown."""
        return format_quantity(radians, "angle", self.units)

    @property
    def spare(self) -> str:
        """Return how far inside the weight's line passes, as shown."""
        return format_quantity(self.on.spare / 1e3, "vehicle length", self.units)

    def title(self) -> str:
        """Return the title, made from the two angles and the distance that is left."""
        return (
            f"A side slope of {self.angle(self.on.angle)}: the weight's line passes {self.spare} inside the "
            f"{self.on.wheels}; on {self.angle(self.on.tipping)} nothing of that is left"
        )

    def caption(self) -> str:
        """Return what is drawn, with the warning that an angle of tipping never goes without."""
        return (
            "From the rear, rigid and at rest; the sheet stands plumb. F at wheels is normal force and friction "
            "together. The weight's line meets the road at B; on the static angle it would meet A, on the "
            f"{self.on.edge}, and the slanting line would stand plumb. A {self.on.kind} tips well before that angle: "
            f"springs, a bump, a turn or a load that shifts are left out. Not a driving limit.{self._coupled()}"
        )

    def _coupled(self) -> str:
        return " The coupling is taken at the height of the road." if self.on.held else ""

    def sides(self) -> tuple[tuple[str, float], tuple[str, float]]:
        """Return what stands on the downhill and on the uphill wheels together [N]."""
        left = self.on.downhill > 0
        both = (("downhill", self.on.body.summed(left)[0]), ("uphill", self.on.body.summed(not left)[0]))
        (first, one), (second, other) = both
        return (first, math.hypot(*one)), (second, math.hypot(*other))

    def told(self) -> tuple[str, str, str]:
        """Return what downhill side, uphill side and coupling carry, so shown that they make the weight."""
        (_, low), (_, high) = self.sides()
        on_low, on_high, on_coupling = format_terms([low, high, self.on.held], "force", self.units)
        return on_low, on_high, on_coupling.removeprefix(MINUS)

    def lifting(self) -> str:
        """Return which wheel lifts first, as a sentence, or nothing where all do at once."""
        if self.on.first_lifting is None:
            return ""
        wheel, angle = self.on.first_lifting
        return f"The {wheel} wheel lifts first, at about {self.angle(angle)}."

    def description(self) -> str:
        """Return the text alternative."""
        on, weight = self.on, self.on.body.weight
        low, high, held = self.told()
        sentences = [
            f"{on.name} from the rear across a slope of {self.angle(on.angle)}, its {on.way} side downhill.",
            f"Weight {self.force(math.hypot(weight.y, weight.z))}.",
            f"The plumb line through its centre of mass meets the road at B, {self.spare} inside the {on.wheels}, "
            "measured level to A.",
            f"The road holds the downhill side with {low} and the uphill side with {high}, normal force and friction "
            "together, straight up.",
            f"The coupling holds it {'up' if on.held > 0 else 'down'} with {held}.{self._coupled()}" if on.held else "",
            f"Static tipping angle {self.angle(on.tipping)}.",
            self.lifting(),
            f"A {on.kind} tips well before its static angle; this is no driving limit.",
        ]
        return " ".join(sentence for sentence in sentences if sentence)

    def steps(self) -> tuple[Step, ...]:
        """Return how the figure is built up."""
        low, high, held = self.told()
        coupling = f", the coupling {held}" if self.on.held else ""
        weight = math.hypot(self.on.body.weight.y, self.on.body.weight.z)
        return (
            Step(
                "Stand it across the slope",
                f"The road falls {self.angle(self.on.angle)} to the {self.on.way}.",
                "isolate",
            ),
            Step("Drop the weight's line", f"{self.force(weight)} act plumb at the centre of mass.", "loads"),
            Step(
                "Let the road answer",
                f"The downhill side carries {low}, the uphill side {high}{coupling}. "
                "At wheels that is normal force and friction together.",
                "reactions",
            ),
            Step(
                "Measure what is left",
                f"The line passes {self.spare} inside the {self.on.wheels}: from A to B.",
                "dimensions",
            ),
            Step(
                "Turn it until nothing is left",
                " ".join(
                    sentence
                    for sentence in (
                        f"On the static angle, {self.angle(self.on.tipping)}, B has come to A.",
                        self.lifting(),
                        f"A real {self.on.kind} tips well before that angle.",
                    )
                    if sentence
                ),
                "solve",
            ),
        )

"""The words of the free body in three linked views, all from the numbers."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from hubwright.quantities import Kind, display_sum, format_quantity
from hubwright.quantities.formatting import NO_BREAK, Shown, last_place, scale_of
from hubwright.quantities.printed import places, read, size_of
from hubwright.results.model import Vector
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Step
from hubwright.scenes.wheel_end_actions import Actions
from hubwright.scenes.wheel_end_words import Wording

_NOTHING = 1e-6


@dataclass(frozen=True)
class ViewsWording(Wording):
    """Numbers of one case in three directions, as words."""

    def little(self, value: float) -> bool:
        """Return whether a force, or a moment, is rounding beside the largest force at a lever of a metre."""
        return abs(value) <= _NOTHING * self.largest

    @property
    def load_line(self) -> str:
        """Return where the load line lies, and by what letter the views name the bearing centre."""
        return f"{super().load_line} C"

    def column(self, values: Sequence[float], kind: Kind, named: Sequence[float]) -> list[str]:
        """Return forces or moments with their signs and, behind them, their sum; nothing is 0.

        All end at least where the finest of those does that a label names, and those are as they are there.
        """
        counted = [0.0 if self.little(value) else value for value in values]
        labels = {value: self._last_digit(value, kind) for value in named if not self.little(value)}
        told, total = display_sum(counted, kind, self.units)
        if labels and max(map(abs, counted)) > 0:
            usual = math.floor(math.log10(max(map(abs, counted)) / min(labels.values()) + 0.5)) + 1
            for digits in (usual, usual + 1):
                if self._says_as_much(counted, told, kind, labels):
                    break
                told, total = display_sum(counted, kind, self.units, digits=digits)
        return ["0" if shown.number == "0" else shown.text for shown in (*told, total)]

    def _says_as_much(
        self, values: Sequence[float], told: Sequence[Shown], kind: Kind, labels: Mapping[float, float]
    ) -> bool:
        """Return whether numbers of a sum end where labels do, given their last digits by value, and round alike."""
        size, decimals = size_of(told[0].unit, kind, self.units), max(places(shown.text) for shown in told)
        last = size * 10.0**-decimals if decimals else self._last_digit(max(values, key=abs), kind)
        return last <= min(labels.values()) * 1.001 and all(
            abs(read(shown.text, kind, self.units) - value) <= labels[value] * 0.501
            for value, shown in zip(values, told, strict=True)
            if value in labels
        )

    def _last_digit(self, value: float, kind: Kind) -> float:
        """Return what one more in the last digit of a value is worth where it is shown alone [SI]."""
        scale = scale_of(value, kind, self.units)
        number = value / scale.size
        last = last_place(number, significant=scale.significant, decimals=scale.decimals, least=scale.least)
        return float(scale.size * 10.0**-last)

    def views_title(self, actions: Actions) -> str:
        """Return in which directions the bearing holds how much, and in which nothing."""
        B = actions.bearing.force
        parts = (("upright", B.z), ("across", B.y), ("fore and aft", B.x))
        held = [f"{self.force(value)} {way}" for way, value in parts if not self.nothing(value)]
        free = [way for way, value in parts if self.nothing(value)]
        if not free:
            return f"The bearing holds {listed(held)}"
        return f"The bearing holds {listed(held)}, and nothing {listed(free, 'or')}"

    def views_caption(self, actions: Actions) -> str:
        """Return what is drawn, and what the bearing does not hold."""
        side = "left" if self.results.side > 0 else "right"
        sentences = [
            f"{self.wheel.capitalize()}, {plain(self.case_words())}: the turning parts, cut at the rolling elements, "
            f"from the rear (outboard to the {side}), from outboard and from above.",
            self._contact_sentence(),
        ]
        if self.state.kind == "side_slope" and not self.nothing(actions.weight.force.y):
            sentences.append(self._square_to_the_road(actions.weight.force))
        if actions.caliper is not None:
            sentences.append("The caliper's force stands at its pads; it is what holds the wheel about its axis.")
        elif actions.shaft is not None:
            taker = "brake" if self.state.kind == "braking" else "shaft or brake"
            sentences.append(
                f"The {taker} takes {self.moment(actions.shaft.couple.y)} about the axis; the bearing nothing."
            )
        if not self.nothing(actions.contact.force.y):
            sentences.append("From above, the road's side force is slid along its line, clear of the others.")
        sentences.append("A dot in a ring points at you, a cross away.")
        return " ".join(sentences)

    def _square_to_the_road(self, weight: Vector) -> str:
        """Return how steep the slope is and what it makes of the weight: axes are those of the vehicle."""
        angle = format_quantity(math.atan2(abs(weight.y), -weight.z), "angle", self.units)
        across, along = (f"W {part} φ".replace(" ", NO_BREAK) for part in ("cos", "sin"))
        return (
            f"The sheet stands square to the road, whose slope φ is {angle}: of the weight W, {across} acts square to "
            f"the road and {along} along it, {self.sideways(weight.y)}, which is downhill."
        )

    def views_description(self, actions: Actions) -> str:
        """Return the text alternative."""
        M = actions.bearing.couple
        about = [
            f"{self.moment(value)} about the {name} axis"
            for name, value in (("lengthwise", M.x), ("upright", M.z))
            if not self.little(value)
        ]
        turns = f", with {listed(about)}" if about else ""
        pushes = f"The bearing pushes the hub {listed(self.directed(actions.bearing.force))}{turns}."
        return (
            f"Free body of the {self.wheel} in three views, {plain(self.case_words())}. {self._contact_sentence()} "
            f"{pushes} Weight of the turning parts {self.force(_size(actions.weight.force))}. "
            "All forces and all moments add up to nothing."
        )

    def views_steps(self, actions: Actions) -> tuple[Step, ...]:
        """Return the moves in teaching order."""
        others = "weight" if self.nothing(_size(actions.inertia.force)) else "weight and the inertia"
        caliper = "" if actions.caliper is None else ", and the caliper's force on the disc"
        B, M = actions.bearing.force, actions.bearing.couple
        contact = "An arrow in two views, a ring in the view whose sight it follows."
        if self.hanging:
            contact = "Nothing touches the tire."
        answer = f"On the hub it is {listed(self.directed(B))}"
        about = [
            f"{self.moment(value)} about {{{axis}}}"
            for axis, value in (("x", M.x), ("z", M.z))
            if not self.little(value)
        ]
        return (
            Step(
                "Isolate, three times", "The same turning parts from the rear, from outboard and from above.", "isolate"
            ),
            Step("Put on the contact force", contact, "loads"),
            Step("Add what acts on the masses", f"The {others} of the turning parts{caliper}.", "loads"),
            Step(
                "Put the bearing's answer at C",
                answer + (f", with {listed(about)}." if about else "."),
                "reactions",
            ),
            Step(
                "Measure the levers",
                f"The load line lies {self.load_line}; each lever belongs to two views.",
                "dimensions",
            ),
            Step(
                "Add up",
                "Three sums of forces and three of moments, and each is nothing: the body is in balance.",
                "solve",
            ),
        )


def _size(vector: Vector) -> float:
    return float((vector.x**2 + vector.y**2 + vector.z**2) ** 0.5)


def listed(words: list[str], last: str = "and") -> str:
    """Return words as a list in a sentence."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} {last} {words[-1]}"

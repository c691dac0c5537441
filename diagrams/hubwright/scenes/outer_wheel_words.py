"""The words of the wheel in a corner: title, caption, text alternative and steps, all from the numbers."""

from dataclasses import dataclass

from hubwright.results.model import CaseResult
from hubwright.scenes.corner_moments import Turning, sense, sizes_of
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Step
from hubwright.scenes.wheel_end_words import Wording, rows_of

_NOTHING, _HARDLY = 1e-6, 0.02


@dataclass(frozen=True)
class CornerWording(Wording):
    """Numbers of one wheel in a corner or on a side slope, as words."""

    @property
    def which(self) -> str:
        """Return which of the two wheels this is: the road pushes the outer one (that downhill) inboard."""
        outer = self.state.contact_force.y * self.results.side < 0
        if self.state.kind == "side_slope":
            return "downhill" if outer else "uphill"
        return "outer" if outer else "inner"

    def corner_title(self, turnings: tuple[Turning, ...]) -> str:
        """Return the result: what the side force does beside the load line."""
        side, upright = turnings[0].value, turnings[1].value
        with_side, with_upright, *_ = sizes_of(turnings, self.units)
        if abs(upright) <= _NOTHING * abs(side):
            return (
                f"At the {self.which} wheel the side force turns the hub with {with_side}, "
                "its load line contributes nothing"
            )
        if abs(upright) < _HARDLY * abs(side):
            return (
                f"At the {self.which} wheel the side force turns the hub with {with_side}, "
                f"its load line hardly, with {with_upright}"
            )
        if side * upright > 0:
            return (
                f"At the {self.which} wheel the side force adds {with_side} to the load line's {with_upright}: "
                "the same sense"
            )
        if abs(side) > abs(upright):
            return (
                f"At the {self.which} wheel the side force turns the hub with {with_side}, "
                f"against {with_upright} of its load line"
            )
        return f"At the {self.which} wheel the side force takes {with_side} off the load line's {with_upright}"

    def corner_caption(self, turnings: tuple[Turning, ...]) -> str:
        """Return what is drawn, and how the rows stand beside the standing case."""
        left = "left" if self.results.side > 0 else "right"
        sentences = [
            f"{self.wheel.capitalize()}, seen from the rear, outboard to the {left}; {plain(self.state.name)}.",
            self._contact_sentence(),
            f"About the bearing centre that is {self._chained(turnings)}.",
        ]
        rows = self._rows(self.state)
        standing = self._rows(self.results.cases["standing"])
        if rows and standing:
            sentences.append(f"On the hub the rows push {rows}; standing, {standing}.")
        return " ".join([*sentences, *self._remarks()])

    def corner_description(self, turnings: tuple[Turning, ...]) -> str:
        """Return the text alternative."""
        _, _, weights, bearing = sizes_of(turnings, self.units)
        return (
            f"Section through the {self.wheel} with the moments on its turning parts. {self.corner_caption(turnings)} "
            f"The bearing answers with {bearing}, {sense(turnings[-1].value)}, the weights make {weights}. "
            f"{self.weights()}"
        )

    def _chained(self, turnings: tuple[Turning, ...]) -> str:
        side, upright = turnings[0].value, turnings[1].value
        with_side, with_upright, *_ = sizes_of(turnings, self.units)
        first = f"{with_side} {sense(side)} from the side force"
        if abs(upright) <= _NOTHING * abs(side):
            return f"{first} and nothing from the vertical one"
        return f"{first} and {with_upright} {sense(upright)} from the vertical one"

    def _rows(self, state: CaseResult) -> str:
        """Return how each row pushes the hub up or down."""
        if state.row_load is None:
            return ""
        parts = (
            f"{self.upright(-row.z)} with {size} {name}"
            for size, name, row in zip(
                self.row_forces(state=state), ("outboard", "inboard"), rows_of(state.row_load), strict=True
            )
        )
        return " and ".join(parts)

    def corner_steps(self, turnings: tuple[Turning, ...]) -> tuple[Step, ...]:
        """Return the moves in teaching order."""
        side, upright = turnings[0].value, turnings[1].value
        with_side, with_upright, _, bearing = sizes_of(turnings, self.units)
        rows = self._rows(self.state)
        other = f"{sense(upright)} with {with_upright}" if abs(upright) > _NOTHING * abs(side) else "not at all"
        known = f"They push the hub {rows}." if rows else ""
        where = "At their pressure centres." if rows else "Where they bear is not known here: the moment is one."
        return (
            Step(
                "Isolate",
                "Cut at the rolling elements: what turns is the body; its moments are taken about C.",
                "isolate",
            ),
            Step(
                f"Put on contact force{' and weights' if self.still else ', weights and inertia'}",
                f"{self._contact_sentence()} What is small beside it stands in the lens, drawn longer.",
                "loads",
            ),
            Step("Let the rows push back", where, "reactions"),
            Step(
                "Measure the two levers",
                f"The load line lies {self.load_line}; the road is the loaded radius below.",
                "dimensions",
            ),
            Step(
                "Turn about C",
                f"The side force turns {sense(side)} with {with_side}, the vertical one {other}.",
                "solve",
            ),
            Step(
                "Chain the moments",
                f"Each bar begins where the last one ended; the bearing brings the sum back to zero with "
                f"{bearing}. {known}".strip(),
                "solve",
            ),
        )

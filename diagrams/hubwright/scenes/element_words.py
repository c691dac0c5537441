"""The words of the loads on every element: title, caption, text alternative and what stands beside each section."""

import math
from dataclasses import dataclass

from hubwright.quantities import format_quantity
from hubwright.quantities.formatting import NO_BREAK, Scale, last_place, scale_of
from hubwright.results.model import CaseResult, Results
from hubwright.scenes.row_elements import Element, RowElementsDrawn
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Step, Units

_NOTHING = 1e-6
_UNLOADED = 1e-3  # newtons: of a bearing without load, whose unit is told all the same
_CLOSE = 5e-4  # of a row's load: nearer ones differ by the solver alone
_SMALL = 0.02  # of a row's push: a part below this is left out of words


@dataclass(frozen=True)
class ElementWords:
    """Numbers of one case in one unit system, as words."""

    results: Results
    state: CaseResult
    rows: tuple[RowElementsDrawn, RowElementsDrawn]
    units: Units

    @property
    def largest(self) -> float:
        """The largest load of an element [N]."""
        return max(row.worst.load for row in self.rows)

    @property
    def element(self) -> str:
        """What rolls: ball or roller."""
        return "roller" if self.results.setup.bearing.kind == "tapered pair" else "ball"

    @property
    def worst(self) -> RowElementsDrawn:
        """The row with the most loaded element."""
        return max(self.rows, key=lambda row: row.worst.load)

    def force(self, newtons: float) -> str:
        """Return the size of a force."""
        return format_quantity(abs(newtons), "force", self.units)

    def angle(self, radians: float) -> str:
        """Return an angle."""
        return format_quantity(radians, "angle", self.units)

    @property
    def scale(self) -> Scale:
        """The unit in which the loads of elements are told: that of the largest."""
        return scale_of(max(self.largest, _UNLOADED), "force", self.units)

    def number(self, newtons: float) -> str:
        """Return the load of an element as a bare number, with as many decimals as the largest has."""
        s = self.scale
        largest = max(self.largest, _UNLOADED) / s.size
        places = max(last_place(largest, significant=s.significant, decimals=s.decimals, least=s.least), 0)
        return f"{newtons / s.size:,.{places}f}"

    def load(self, newtons: float) -> str:
        """Return the load of an element with its unit: the same number wherever it stands on the sheet."""
        return f"{self.number(newtons)}{NO_BREAK}{self.scale.unit}"

    def unit(self) -> str:
        """Return in which unit the numbers at the arrows stand."""
        return f"numbers at the arrows in {self.scale.unit}"

    def carries(self, row: RowElementsDrawn) -> int:
        """Return how many elements of a row carry load."""
        return sum(1 for element in row.elements if element.load > _NOTHING * max(self.largest, 1e-9))

    def heading(self, row: RowElementsDrawn) -> str:
        """Return what stands above a row."""
        count, carrying = len(row.elements), self.carries(row)
        name = f"{row.name.capitalize()} row"
        if not carrying:
            return f"{name}: unloaded"
        every = f"all {count}" if carrying == count else f"{carrying} of {count}"
        return f"{name}: {every} {self.element}s carry"

    def beside(self, row: RowElementsDrawn) -> tuple[str, ...]:
        """Return what stands of the most loaded element beside its section."""
        contact = self.angle(self.results.setup.bearing.contact_angle or 0.0)
        if not self.carries(row):
            return f"No {self.element} carries load", f"contact angle {contact}"
        worst = row.worst
        if self.element == "roller":
            lines = [f"contact angle {contact}, whatever the load"]
        else:
            lines = [f"contact angle {self.angle(worst.angle)}, unloaded {contact}"]
        return (
            f"Most loaded: {self.load(worst.load)}",
            self.place(worst),
            *lines,
            f"contact pressure {format_quantity(row.pressure, 'pressure', self.units)}",
            f"dent margin {format_quantity(row.margin, 'ratio', self.units)}",
        )

    def together(self, row: RowElementsDrawn) -> tuple[str, ...]:
        """Return what all elements of a row push the outer ring with."""
        if not self.carries(row):
            return ()
        parts = self._push(row)
        return (f"Together the {self.element}s push the", "outer ring " + parts[0] + ("," if parts[1:] else ""), *(
            part + ("," if number < len(parts) - 1 else "") for number, part in enumerate(parts[1:], start=1)
        ))  # fmt: skip

    def kept_angle(self, row: RowElementsDrawn) -> tuple[str, str] | None:
        """Return a row's load across the axis, and as it is where the contact angle is kept at that without load.

        None where both are alike, as with rollers, whose contact angle no load changes.
        """
        known = self.state.row_radial_load
        if known is None or not self.carries(row):
            return None
        here, kept = math.hypot(row.push.x, row.push.z), getattr(known, row.name)
        told = self.force(here), self.force(kept)
        return None if told[0] == told[1] or abs(here - kept) < _CLOSE * kept else told

    def beside_sum(self, row: RowElementsDrawn) -> tuple[str, ...]:
        """Return why other figures of the case have another load of a row."""
        told = self.kept_angle(row)
        if told is None:
            return ()
        unloaded = self.angle(self.results.setup.bearing.contact_angle or 0.0)
        return (
            f"Across the axis that is {told[0]}. Figures",
            f"that keep the contact angle at {unloaded}",
            f"whatever the load have {told[1]}.",
        )

    def place(self, element: Element) -> str:
        """Return where an element stands."""
        degrees = math.degrees(element.place) % 360
        for at, words in ((0, "straight up"), (90, "straight ahead"), (180, "straight down"), (270, "straight behind")):
            if min(abs(degrees - at), 360 - abs(degrees - at)) < 0.5:
                return words
        side, away = ("ahead of", degrees) if degrees < 180 else ("behind", 360 - degrees)
        if away <= 90:
            return f"{away:.0f}° {side} straight up"
        return f"{180 - away:.0f}° {side} straight down"

    def title(self) -> str:
        """Return the title: the most loaded element, and whether a row is unloaded."""
        if self.largest <= 1e-6:
            return f"No {self.element} carries load"
        row = self.worst
        carries = f"carries {self.load(row.worst.load)}"
        idle = [each.name for each in self.rows if not self.carries(each)]
        if idle:
            return f"The {idle[0]} row is unloaded; in the {row.name} row the most loaded {self.element} {carries}"
        return f"Of {2 * len(row.elements)} {self.element}s the most loaded {carries}, in the {row.name} row"

    def caption(self) -> str:
        """Return the caption."""
        results = self.results
        words = [
            f"{plain(results.setup.name)}, {plain(self.state.name)}: {results.wheel.replace('_', ' ')} wheel.",
            f"Each arrow is what one {self.element} pushes the outer ring with, as long as its whole load along the "
            "contact line.",
            f"Rows seen from the left side. Each section cuts the axis and the row's most loaded {self.element}, "
            f"turned upright into the half, upper or lower, where that {self.element} lies; outboard to the "
            f"{'left' if results.side > 0 else 'right'}. Rigid rings, one "
            f"{self.element} {'straight down' if results.setup.bearing.turning_ring == 'outer' else 'straight up'}."
        ]  # fmt: skip
        return " ".join(words)

    def description(self) -> str:
        """Return the text alternative."""
        results = self.results
        sentences = [
            f"Both rows of the bearing of {plain(results.setup.name)}, {plain(self.state.name)}, "
            f"{results.wheel.replace('_', ' ')} wheel, with {len(self.rows[0].elements)} {self.element}s each."
        ]
        for row in self.rows:
            if not self.carries(row):
                sentences.append(f"The {row.name} row is unloaded.")
                continue
            worst = row.worst
            sentences.append(
                f"In the {row.name} row {self.carries(row)} {self.element}s carry; the most loaded, "
                f"{self.place(worst)}, carries {self.load(worst.load)} at a contact angle of "
                f"{self.angle(worst.angle)}, with a contact pressure of "
                f"{format_quantity(row.pressure, 'pressure', self.units)}."
            )
            sentences.append(f"Together they push the outer ring {' and '.join(self._push(row))}.")
            sentences.append(" ".join(self.beside_sum(row)))
        return " ".join(filter(None, sentences))

    def steps(self) -> tuple[Step, ...]:
        """Return the moves in which the figure is built."""
        turns = "The hub carries the outer rings" if self.results.setup.bearing.turning_ring == "outer" else (
            "The hub carries the inner rings"
        )  # fmt: skip
        return (
            Step("Cut through both rows", f"{turns}; each row is seen along the axis and in section."),
            Step(
                f"Load every {self.element}",
                f"The ring moves until all {self.element}s together hold the load; those on the far side stay free.",
            ),
            Step("Look at the most loaded", "Its load runs along the contact line; it decides pressure and dents."),
            Step("Add them up", "Across the axis they hold the row's load; along it the rows push against each other."),
        )

    def _push(self, row: RowElementsDrawn) -> list[str]:
        push, side = row.push, self.results.side
        size = push.length
        named = (
            (push.z, "up", "down"),
            (push.x, "forward", "rearward"),
            (push.y * side, "outboard", "inboard"),
        )
        return [
            f"{high if value > 0 else low} with {self.force(value)}"
            for value, high, low in named
            if abs(value) > _SMALL * size
        ]

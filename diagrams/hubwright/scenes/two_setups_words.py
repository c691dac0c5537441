"""The words of two setups side by side: what stays, what moves, and the title that follows from it."""

from dataclasses import dataclass

from hubwright.quantities import Kind, format_quantity, format_sums, format_terms
from hubwright.quantities.formatting import MINUS
from hubwright.results.model import CaseResult, Results
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Step, Units
from hubwright.scenes.wheel_end_words import rows_of

ON_MASSES = ("weight", "inertia")
_SAME = 1e-6


@dataclass(frozen=True)
class Compared:
    """One quantity in both setups [SI]; `below` is the word for a value under zero."""

    name: str
    kind: Kind
    first: float
    second: float
    above: str = ""
    below: str = ""
    sizes: tuple[str, str] | None = None  # as shown, where it is a part of a sum

    @property
    def stays(self) -> bool:
        """Return whether both setups have it alike."""
        return abs(self.first - self.second) <= _SAME * max(abs(self.first), abs(self.second), 1e-9)

    def told(self, value: float, units: Units) -> str:
        """Return a value with its direction word."""
        way = self.above if value > 0 else self.below
        if not way or value == 0:
            return self.size(value, units) if self.sizes else format_quantity(value, self.kind, units)
        return f"{self.size(value, units)} {way}"

    def size(self, value: float, units: Units) -> str:
        """Return the size of one of the two values."""
        if self.sizes is not None:
            return self.sizes[0 if value == self.first else 1]
        return format_quantity(abs(value), self.kind, units)


@dataclass(frozen=True)
class TwoWordings:
    """Two solved setups in one case, as words."""

    first: Results
    second: Results
    case: str
    units: Units

    @property
    def states(self) -> tuple[CaseResult, CaseResult]:
        """Return the case in both."""
        return self.first.cases[self.case], self.second.cases[self.case]

    @property
    def names(self) -> tuple[str, str]:
        """Return the names of both setups."""
        return plain(self.first.setup.name), plain(self.second.setup.name)

    @property
    def spacer_changes(self) -> bool:
        """Return whether only one of the two has a spacer, or another one."""
        return not self.geometry()[2].stays

    def geometry(self) -> tuple[Compared, ...]:
        """Return what belongs to the wheel and its place."""
        a, b = self.first, self.second
        g, h = a.wheel_geometry, b.wheel_geometry
        before, after = g.load_line_offset, h.load_line_offset
        # told so that the printed move is what lies between them
        later, earlier = (
            text.removeprefix(MINUS) for text in format_terms([after, -before], "small length", self.units)
        )
        return (
            Compared("load line", "small length", before, after, "outboard", "inboard", (earlier, later)),
            Compared("wheel offset", "small length", g.offset, h.offset),
            Compared("spacer", "small length", a.setup.wheel.spacer, b.setup.wheel.spacer),
            Compared("axle height", "length", g.loaded_radius, h.loaded_radius),
        )

    def loads(self) -> tuple[Compared, ...]:
        """Return what acts on the turning parts; row loads as they push the hub."""
        s, t = self.states
        before, after = self.upright()
        road = before["contact"], after["contact"]
        items = [Compared("road's push", "force", s.contact_force.z, t.contact_force.z, sizes=road)]
        if s.row_load is not None and t.row_load is not None:
            pairs = zip(("outboard", "inboard"), rows_of(s.row_load), rows_of(t.row_load), strict=True)
            for name, r, q in pairs:
                sizes = before[f"row_{name}"], after[f"row_{name}"]
                items.append(Compared(f"{name} row", "force", -r.z, -q.z, "up", "down", sizes))
        else:
            items.append(Compared("bearing moment", "moment", abs(s.bearing_moment.x), abs(t.bearing_moment.x)))
        return tuple(items)

    def upright(self) -> tuple[dict[str, str], dict[str, str]]:
        """Return the sizes of what acts upright on each body, masses taken together, so shown that they cancel."""
        bodies = [_upright(state) for state in self.states]
        told = format_sums([list(parts.values()) for parts in bodies], "force", self.units)
        first, second = (
            {name: text.removeprefix(MINUS) for name, text in zip(parts, texts, strict=True)}
            for parts, texts in zip(bodies, told, strict=True)
        )
        return first, second

    def title(self) -> str:
        """Return what the change does to the load line and to the rows."""
        line, *_ = self.geometry()
        loads = self.loads()
        if all(load.stays for load in loads) and line.stays:
            spacer = self.geometry()[2]
            differs = (
                "the joint differs, the bearing's loads do not"
                if not spacer.stays
                else "nothing differs at the bearing"
            )
            return f"One load line, {line.told(line.second, self.units)}: {differs}"
        worst = max(loads[1:], key=lambda load: max(abs(load.first), abs(load.second)))
        rows = self._pushes(worst)
        if line.stays:
            return f"The load line stays and contributes nothing; {rows}"
        moved = format_quantity(abs(line.second - line.first), "small length", self.units)
        way = "outboard" if line.second > line.first else "inboard"
        return f"The load line moves {moved} {way}; {rows}"

    def _pushes(self, load: Compared) -> str:
        """Return how the heavier row pushes the hub in both setups."""
        if not load.above:
            return f"the {load.name} is {load.told(load.first, self.units)}, then {load.told(load.second, self.units)}"
        first, second = (
            f"{load.above if value > 0 else load.below} with {load.size(value, self.units)}"
            for value in (load.first, load.second)
        )
        if load.stays:
            return f"the {load.name} pushes the hub {first} in both"
        return f"the {load.name} pushes the hub {first}, then {second}"

    def caption(self) -> str:
        """Return what is drawn."""
        a, b = self.names
        wheel = self.first.wheel.replace("_", " ")
        body = self.first.cases[self.case].free_body
        along = any(abs(single.force.x) > 1e-6 * body.largest_component for single in body.forces)
        ringed = " A dot in a ring points at you, a cross away; its number stands with that of the arrow there."
        return (
            f"{wheel.capitalize()} wheel from the rear, {plain(self.case)}. Left: {a}. Right: {b}. Both free bodies at "
            "one scale; the small drawing lays them over one another at the bearing centre C, which does not move."
            f"{ringed if along else ''}"
        )

    def description(self) -> str:
        """Return the text alternative."""
        stays, moves = "; ".join(self.stays()) or "nothing", "; ".join(self.moves()) or "nothing"
        return f"{self.caption()} Stays: {stays}. Moves: {moves}."

    def stays(self) -> list[str]:
        """Return what is alike, as short lines."""
        return [
            f"{item.name} {item.told(item.second, self.units)}"
            for item in (*self.geometry(), *self.loads())
            if item.stays and (item.second or item.name != "spacer")
        ]

    def moves(self) -> list[str]:
        """Return what differs, as short lines: before, then after."""
        return [
            f"{item.name} {self._none(item, item.first)} → {self._none(item, item.second)}"
            for item in (*self.geometry(), *self.loads())
            if not item.stays
        ]

    def _none(self, item: Compared, value: float) -> str:
        return "none" if item.name == "spacer" and not value else item.told(value, self.units)

    def steps(self) -> tuple[Step, ...]:
        """Return the moves in teaching order."""
        a, b = self.names
        return (
            Step("Isolate both", f"The turning parts of {a} and of {b}, at one scale.", "isolate"),
            Step(
                "Put on the contact forces",
                f"{self.loads()[0].told(self.loads()[0].first, self.units)} and "
                f"{self.loads()[0].told(self.loads()[0].second, self.units)} up, and the weights.",
                "loads",
            ),
            Step(
                "Let the bearings answer",
                "; ".join(
                    f"{load.name} {load.told(load.first, self.units)} and {load.told(load.second, self.units)}"
                    for load in self.loads()[1:]
                )
                + ".",
                "reactions",
            ),
            Step("Measure the load lines", self._lines(), "dimensions"),
            Step("Lay one over the other", "At the bearing centre, which stays where it is.", "solve"),
            Step("Say what stays and what moves", f"{len(self.stays())} stay, {len(self.moves())} move.", "solve"),
        )

    def _lines(self) -> str:
        line = self.geometry()[0]
        if line.stays:
            return f"Both lie {line.told(line.second, self.units)}."
        return f"{line.told(line.first, self.units)} and {line.told(line.second, self.units)} of the bearing centre."


def _upright(state: CaseResult) -> dict[str, float]:
    """Return the upright forces on a free body by name, those on its masses taken together [N]."""
    parts: dict[str, float] = {}
    for single in state.free_body.forces:
        name = next((start for start in ON_MASSES if single.name.startswith(start)), single.name)
        parts[name] = parts.get(name, 0.0) + single.force.z
    return parts

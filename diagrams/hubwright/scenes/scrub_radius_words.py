"""What the figure of a moved scrub radius says: its places, its one-sided pull and its sentences, from the numbers."""

from dataclasses import dataclass
from typing import Literal

from hubwright.errors import CaseError, MissingDataError
from hubwright.quantities import Kind, format_quantity
from hubwright.quantities.printed import places, read, with_places
from hubwright.results.model import Results
from hubwright.results.steering import KickBack, SteeringResult, steering_result
from hubwright.scenes.case_choice import case_of
from hubwright.scenes.vocabulary import Step, Units

_LEVER: Kind = "small length"
_MOST_DIGITS = 3  # more than elsewhere: one, as a rule; more where a moment lies between two printed ones
_ALIKE = 0.05e-3  # m: what is nearer is one place


@dataclass(frozen=True)
class ScrubWording:
    """Steering of two setups at one wheel in one case, and the sentences about it; places from the steering axis."""

    base: Results
    other: Results
    before: SteeringResult
    after: SteeringResult
    before_scrub: float  # m, tire's middle outboard of the axis positive
    after_scrub: float
    case: str
    units: Units

    @property
    def side(self) -> int:
        """Return +1 for a left wheel: outboard is +y."""
        return self.base.side

    @property
    def moved(self) -> bool:
        """Return whether the load line is another one."""
        return abs(self.after_scrub - self.before_scrub) > _ALIKE

    @property
    def place_before(self) -> float:
        """Return where the load line stands beside the steering axis, y to the left [mm]."""
        return self.side * self.before_scrub * 1e3

    @property
    def place_after(self) -> float:
        """Return where it stands after the change [mm]."""
        return self.side * self.after_scrub * 1e3

    @property
    def kick_before(self) -> KickBack:
        """Return the pull and what it does, as it is."""
        return self.before.kick_back[self.case]

    @property
    def kick_after(self) -> KickBack:
        """Return the pull and what it does after the change."""
        return self.after.kick_back[self.case]

    @property
    def turning_before(self) -> float:
        """Return the moment about the upward axis, counter-clockwise from above positive [N·m]."""
        return -self.place_before * 1e-3 * self.kick_before.force

    @property
    def turning_after(self) -> float:
        """Return the same after the change [N·m]."""
        return -self.place_after * 1e-3 * self.kick_after.force

    @property
    def when(self) -> dict[str, str]:
        """Return the words for either setup."""
        return {"before": "as it is", "after": "moved" if self.moved else "as it is"}

    @property
    def wheel(self) -> str:
        """Return the wheel in words."""
        return " ".join(reversed(self.base.wheel.split("_")))

    @property
    def pull(self) -> str:
        """Return what makes the pull, in words."""
        braking = self.base.cases[self.case].kind == "braking"
        return "brakes" if braking else "meets a ledge"

    @property
    def finer(self) -> int:
        """Return how many more digits pull and lever have than elsewhere, so that their product is the moment shown."""
        pairs = ((self.kick_before, self.before_scrub), (self.kick_after, self.after_scrub))
        for more in range(_MOST_DIGITS):
            products = (
                _read(k.force, "force", self.units, more) * _read(r, _LEVER, self.units, more) for k, r in pairs
            )
            if all(
                self.moment(product) == self.moment(k.moment) for product, (k, _) in zip(products, pairs, strict=True)
            ):
                return more
        return _MOST_DIGITS

    def force(self, newtons: float) -> str:
        """Return the pull of the road as shown."""
        return _shown(newtons, "force", self.units, self.finer)

    def moment(self, newton_metres: float) -> str:
        """Return a moment as shown."""
        return format_quantity(abs(newton_metres), "moment", self.units)

    def length(self, metres: float) -> str:
        """Return a lever as shown, without its sign."""
        return _shown(metres, _LEVER, self.units, self.finer)

    def at(self, scrub: float) -> str:
        """Return where the axis meets the road, seen from the tire's middle."""
        if abs(scrub) <= _ALIKE:
            return "right under the middle of the tire"
        return f"{self.length(scrub)} {'inboard' if scrub > 0 else 'outboard'} of the middle of the tire"

    def title(self) -> str:
        """Return the title, made from the two levers and moments."""
        turned = self.moment(self.kick_after.moment)
        if not self.moved:
            return (
                f"Scrub radius {self._radius(self.before_scrub)}: if the {self.wheel} wheel alone {self.pull}, "
                f"{turned} turn the steering"
            )
        return (
            f"Scrub radius {self._radius(self.before_scrub)}, and {self._radius(self.after_scrub)} with the load line "
            f"moved: if the {self.wheel} wheel alone {self.pull}, {turned} turn the steering where "
            f"{self.moment(self.kick_before.moment)} did"
        )

    def _radius(self, scrub: float) -> str:
        outboard = min(self.before_scrub, self.after_scrub) < -_ALIKE  # else it goes without saying
        side = f", axis {'inboard' if scrub > 0 else 'outboard'}" if outboard and abs(scrub) > _ALIKE else ""
        return f"{self.length(scrub)}{side}"

    def caption(self) -> str:
        """Return what is drawn and what is left out."""
        colours = "Tires and load lines: grey as it is, orange moved. " if self.moved else ""
        return (
            f"Both front wheels from the front, and the foot of the {self.wheel} one, which alone {self.pull}. "
            f"{colours}The steering axis, from above a circle, is drawn upright; a real one leans, and a bump then has "
            "a longer lever. Clearance at full lock and bump is not looked at."
        )

    def description(self) -> str:
        """Return the text alternative."""
        track = [format_quantity(each.track, "vehicle length", self.units) for each in (self.before, self.after)]
        text = (
            f"The steered axle from the front, and the {self.wheel} wheel at the road from the front and from above. "
            f"The steering axis meets the road {self.at(self.before_scrub)}. Track {track[0]}. "
        )
        if self.moved:
            text += f"With the load line moved it is {self.at(self.after_scrub)}, and the track {track[1]}. "
        return text + " ".join(self.lines()[1:])

    def lines(self) -> tuple[str, ...]:
        """Return a heading, and a line for each of pull, moment and tie rod."""
        pairs = [
            ("Pull of the road", self.force(self.kick_before.force), self.force(self.kick_after.force)),
            ("Turns the steering with", self.moment(self.kick_before.moment), self.moment(self.kick_after.moment)),
        ]
        rods = self.kick_before.tie_rod_force, self.kick_after.tie_rod_force
        if rods[0] is not None and rods[1] is not None:
            one, two = (format_quantity(abs(rod), "force", self.units) for rod in (rods[0], rods[1]))
            pairs.append(("Force in the tie rod", one, two))
        told = [f"{name}: {one}{f', moved {two}' if self.moved else ''}." for name, one, two in pairs]
        return (f"If the {self.wheel} wheel alone {self.pull}", *told)

    def steps(self) -> tuple[Step, ...]:
        """Return how the figure is built up."""
        track = [format_quantity(each.track, "vehicle length", self.units) for each in (self.before, self.after)]
        moved = "Nothing moves here: the load line is where it was."
        if self.moved:
            moved = f"Then the axis meets the road {self.at(self.after_scrub)}, and the track is {track[1]}."
        turned = f"{self.moment(self.kick_before.moment)} turn the steering"
        if self.moved:
            turned += f", and {self.moment(self.kick_after.moment)} with the load line moved"
        return (
            Step("Look at the axle from the front", f"Its track is {track[0]}."),
            Step("Find the steering axis", f"It meets the road {self.at(self.before_scrub)}."),
            Step("Move the load line", moved),
            Step("Pull on one wheel alone", f"The road pulls with {self.force(self.kick_before.force)}."),
            Step("Read the moment", f"{turned}."),
        )


def scrub_wording(base: Results, other: Results, case: str | None, units: Units) -> ScrubWording:
    """Return the steering of two setups in a case that pulls along the road; refuse what has none."""
    if base.wheel != other.wheel:
        raise ValueError(f"two setups are compared at one wheel (got {base.wheel} and {other.wheel})")
    kinds: tuple[Literal["braking"], Literal["ledge"]] = ("braking", "ledge")
    name = case_of(base, case, kinds, "a pull along the road on one wheel").name
    if not base.wheel.startswith("front"):
        raise CaseError(case=name, reason="this figure shows a wheel that steers, and this one does not")
    before, after = steering_result(base, base), steering_result(other, base)
    if before.scrub_radius is None or after.scrub_radius is None:
        raise MissingDataError(result="the figure of the scrub radius", missing=["steering.scrub_radius"])
    if name not in before.kick_back or name not in after.kick_back:
        raise CaseError(case=name, reason="both setups need this case, with a pull along the road")
    return ScrubWording(base, other, before, after, before.scrub_radius, after.scrub_radius, name, units)


def _shown(value: float, kind: Kind, units: Units, more: int) -> str:
    """Return the size of a value with so many more digits than elsewhere."""
    told = format_quantity(abs(value), kind, units)
    return with_places(abs(value), told, places(told) + more, kind, units) if more else told


def _read(value: float, kind: Kind, units: Units, more: int) -> float:
    """Return what a reader takes a value for [SI]."""
    return read(_shown(value, kind, units, more), kind, units)

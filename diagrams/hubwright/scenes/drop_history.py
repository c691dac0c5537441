"""A drop over time: what the tire and the bearing take, beside the standing load, the rim and the energy bound.

The view's abscissa is milliseconds from the first touch, its ordinate newtons.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from hubwright.quantities import format_quantity
from hubwright.results.drops import DropHistory, drop_history
from hubwright.results.model import Results
from hubwright.scenes.case_choice import drop_case
from hubwright.scenes.graph_axes import graph_axes
from hubwright.scenes.shown import Shown
from hubwright.scenes.vocabulary import (
    Column,
    Curve,
    Dot,
    Item,
    Label,
    Line,
    LineStyle,
    Note,
    Scene,
    Step,
    Tone,
    Units,
    View,
)

_SHEET = 310.0
_LEFT, _FOOT = 24.0, 18.0
_WIDE, _TALL = 188.0, 104.0
_COLUMN = 238.0
_SETTLED = 0.06  # of the standing load: what the plot still shows of the swing
_LINES: dict[str, tuple[Tone, bool]] = {"tire": ("load", False), "bearing": ("reaction", True)}  # dashed, or not
_NAMES = {"tire": ("road on tire,", "solid"), "bearing": ("bearing on what turns,", "dashed")}
_ALIKE = 0.005  # of the bound: a peak nearer to it than this is as large


@dataclass(frozen=True)
class DropWording(Shown):
    """The sentences of a drop and of its forces."""

    history: DropHistory
    units: Units

    def time(self, seconds: float) -> str:
        """Return a time as shown."""
        return format_quantity(seconds, "time", self.units)

    def times(self, newtons: float) -> str:
        """Return a force as a multiple of the standing load."""
        return f"{newtons / self.history.standing_load:.1f}"

    @property
    def height(self) -> str:
        """Return the height of the drop as shown."""
        return format_quantity(self.history.height, "small length", self.units)

    def title(self) -> str:
        """Return the title, made from the two peaks."""
        h = self.history
        text = (
            f"A drop of {self.height}: the tire's force peaks at {self.force(h.peak_tire_force)}, "
            f"{self.times(h.peak_tire_force)} times its standing load, the bearing's at "
            f"{self.force(h.peak_bearing_force)}"
        )
        return f"{text}; the tire meets its rim, the real force is higher" if h.tire_on_rim else text

    def caption(self) -> str:
        """Return what is drawn, and what the bound stands for."""
        past = (
            " Past its rim the tire is counted as the same spring, and is far stiffer." if self.bound_past_rim else ""
        )
        return (
            f"Upright forces from the first touch after a drop of {self.height}, one corner as two masses on springs. "
            "Solid curve: the road on the tire, up. Dashed curve: the bearing on what turns, down. The bound is what "
            f"the tire would press with if it alone took up the {self.energy} of the fall.{past}"
        )

    @property
    def bound_past_rim(self) -> bool:
        """Return whether the bound asks for more than the tire has before it meets its rim."""
        return self.history.energy_bound > self.history.rim_force

    def against_bound(self) -> str:
        """Return how the peak of the tire stands to the bound, a sentence: it is no strict ceiling."""
        h = self.history
        peak, share = self.force(h.peak_tire_force), h.peak_tire_force / h.energy_bound
        if share > 1 + _ALIKE:
            return f"Here the tire gets more, {peak}: the body comes down late, on a wheel that is bouncing back."
        if share > 1 - _ALIKE:
            return "Here the tire gets as much: the suspension takes next to nothing of it."
        return f"The suspension leaves {peak} of that to the tire, {format_quantity(share, 'percent', self.units)}."

    @property
    def energy(self) -> str:
        """Return the energy of the fall as shown."""
        return format_quantity(self.history.fall_energy, "energy", self.units)

    def rim(self) -> str:
        """Return how the peak stands to the force at the rim."""
        h = self.history
        if h.tire_on_rim:
            return f"It passes {self.force(h.rim_force)}, at which this tire meets its rim: the real force is higher."
        return f"The tire would meet its rim at {self.force(h.rim_force)}."

    def description(self) -> str:
        """Return the text alternative."""
        h = self.history
        of_tire, of_bearing = (
            f"{self.force(force)}, {self.time(time)} after the first touch"
            for force, time in (
                (h.peak_tire_force, float(h.time[h.tire_force.argmax()])),
                (h.peak_bearing_force, h.peak_time),
            )
        )
        return (
            f"Forces over time after a drop of {self.height}. The tire's peaks at {of_tire}, "
            f"the bearing's at {of_bearing}. "
            f"Standing, the tire carries {self.force(h.standing_load)}. {self.rim()} "
            f"If only the tire gave, the force would be {self.force(h.energy_bound)}. {self.against_bound()}"
        )

    def steps(self) -> tuple[Step, ...]:
        """Return how the figure is built up."""
        h = self.history
        return (
            Step("Start at the first touch", f"Standing, the wheel carries {self.force(h.standing_load)}."),
            Step("Follow the tire", f"Its force rises to {self.force(h.peak_tire_force)}; at zero it leaves the road."),
            Step(
                "Follow the bearing",
                f"Its peak is {self.force(h.peak_bearing_force)}: what turns is pushed by the tire before the bearing.",
            ),
            Step("Mark the rim", self.rim()),
            Step(
                "Compare with the bound",
                f"The fall's {self.energy} are an energy. In the tire alone they would make "
                f"{self.force(h.energy_bound)}. {self.against_bound()}",
            ),
        )


def drop_history_scene(results: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of a drop's forces over time; raises `MissingDataError` without a suspension."""
    history = drop_history(results, drop_case(results, case))
    words = DropWording(history, units)
    levels = (history.peak_tire_force, history.energy_bound, history.rim_force, history.standing_load)
    high = 1.04 * max(levels)
    low = min(0.0, float(history.bearing_force.min()))
    per_mm = (high - low) / _TALL  # the marks are round, not the scale
    end = shown_until(history) * 1e3
    foot = _FOOT - low / per_mm
    view = View("forces over time", (_LEFT, foot), _WIDE / end, vertical_per_mm=per_mm)
    items: list[Item] = [
        *graph_axes(view, end=end, low=low, high=high, kind="force", units=units, step=1),
        *_level(words, view, end, "standing", history.standing_load, 1),
        *_course(words, view, history, end, "tire", 2),
        *_course(words, view, history, end, "bearing", 3),
        *_level(words, view, end, "rim", history.rim_force, 4),
        *_level(words, view, end, "bound", history.energy_bound, 5),
    ]
    top = foot + high / per_mm
    return Scene(
        name="drop-history",
        title=words.title(),
        caption=words.caption(),
        description=words.description(),
        units=units,
        size=(_SHEET, top + 10.0),
        views=(view,),
        items=tuple(items),
        steps=words.steps(),
        columns=(Column("right", _COLUMN, _FOOT, top + 6.0),),
    )


def shown_until(history: DropHistory) -> float:
    """Return the time [s] after which the tire's force stays near the standing load, well past the peak."""
    away = np.flatnonzero(np.abs(history.tire_force - history.standing_load) > _SETTLED * history.standing_load)
    settled = float(history.time[int(away[-1])]) if away.size else 0.0
    return min(max(settled, 2.2 * history.peak_time), float(history.time[-1]))


def _level(words: DropWording, view: View, end: float, name: str, force: float, step: int) -> list[Item]:
    what: dict[str, tuple[tuple[str, ...], LineStyle, Tone]] = {
        "standing": (("standing load",), "thin", "soft"),
        "rim": (("the tire meets its rim,", "common practice"), "centre", "ink"),
        "bound": (("bound by energy:", "only the tire gives"), "hidden", "ink"),
    }
    lines, style, tone = what[name]
    points = ((0.0, force), (end, force))
    label = Label(
        (f"*{words.force(force)}", *lines),
        "right column",
        anchor=(end, force),
        tone=tone,
        size=2.4,
        also=((0.92 * end, force), (0.84 * end, force)),  # where two levels nearly meet
    )
    line = Line(f"level-{name}", view.name, step, points=points, style=style, tone=tone, width=0.35)
    return [line, Note(f"label-{name}", view.name, step, label=label)]


def _course(words: DropWording, view: View, history: DropHistory, end: float, name: str, step: int) -> list[Item]:
    forces = history.tire_force if name == "tire" else history.bearing_force
    tone, dashed = _LINES[name]
    seen = history.time * 1e3 <= end
    points = _points(history.time[seen] * 1e3, forces[seen])
    top = max(points, key=lambda point: point[1])
    peak = history.peak_tire_force if name == "tire" else history.peak_bearing_force
    what, drawn = _NAMES[name]
    lines = (f"*{words.force(peak)}", what, f"{drawn}: peak at {words.time(top[0] / 1e3)}")
    label = Label(lines, "right column", top, tone, 2.6)
    return [
        Curve(
            f"curve-{name}",
            view.name,
            step,
            points=points,
            tone=tone,
            filled=False,
            width=0.6,
            dashed=dashed,
            level=step,
        ),
        Dot(f"peak-{name}", view.name, step, at=top, tone=tone, radius=0.8, level=step + 3),
        Note(f"label-{name}", view.name, step, label=label, level=step),
    ]


def _points(times: NDArray[np.float64], forces: NDArray[np.float64]) -> tuple[tuple[float, float], ...]:
    return tuple((float(t), float(f)) for t, f in zip(np.round(times, 3), np.round(forces, 2), strict=True))

"""Every figure by the name that lessons and the terminal use, what it is made from and which cases it can show.

A scene function takes `(results, *, case="standing", units="si")` and returns a `Scene`. One of a beam takes a solved
beam, one of two setups takes two results, one of data takes named values with their spans.
"""

from collections.abc import Callable
from dataclasses import dataclass
from importlib import import_module
from typing import Literal

from hubwright.results.model import Kind, Results
from hubwright.scenes.vocabulary import Scene

_WHOLE_VEHICLE: tuple[Kind, ...] = ("standing", "braking", "driving", "cornering", "side_slope", "two_wheel")
_SIDEWAYS: tuple[Kind, ...] = ("cornering", "side_slope")
_SEALING = ("sealing.hub_temperature", "sealing.water_temperature", "sealing.depth")


@dataclass(frozen=True)
class Figure:
    """Where a figure's scene function is, what it takes, and the kinds of case that it can show; None: every kind."""

    function: str  # "module:function": a page that shows one figure does not load the modules of all others
    kinds: tuple[Kind, ...] | None = None
    takes: Literal["results", "beam", "two results", "data"] = "results"
    takes_more: bool = False  # of two results: others beside the second
    needs_life: bool = False  # shows nothing where the file says too little of the bearing
    needs: tuple[str, ...] = ()  # dotted keys of the file without which it shows nothing

    def cases(self, results: Results) -> list[str]:
        """Return the cases of a solved setup that this figure can show."""
        if self.needs_life and results.life is None:
            return []
        if any(_of_setup(results, key) in (None, ()) for key in self.needs):
            return []
        return [name for name, case in results.cases.items() if self.kinds is None or case.kind in self.kinds]


def _of_setup(results: Results, key: str) -> object:
    value: object = results.setup
    for part in key.split("."):
        value = getattr(value, part, None)
    return value


FIGURES: dict[str, Figure] = {
    "wheel-end section": Figure("hubwright.scenes.wheel_end_section:wheel_end_section"),
    "wheel end as a beam": Figure("hubwright.scenes.spindle_beam:spindle_beam"),
    "beam alone": Figure("hubwright.scenes.beam_alone:beam_alone", takes="beam"),
    "side view": Figure("hubwright.scenes.side_view:side_view", _WHOLE_VEHICLE),
    "outer wheel in a corner": Figure("hubwright.scenes.outer_wheel_in_corner:outer_wheel_in_corner", _SIDEWAYS),
    "free body in three linked views": Figure("hubwright.scenes.three_views:three_views"),
    "load on every rolling element": Figure("hubwright.scenes.element_loads:element_loads", needs_life=True),
    "rock test": Figure("hubwright.scenes.rock_test:rock_test", ("standing",), needs_life=True),
    "defect frequencies against speed": Figure(
        "hubwright.scenes.defect_frequencies:defect_frequency_lines", ("standing",), needs_life=True
    ),
    "duty and damage": Figure(
        "hubwright.scenes.duty_damage:duty_damage", ("standing",), needs_life=True, needs=("duty",)
    ),
    "life against load line offset": Figure(
        "hubwright.scenes.life_lines:life_against_load_line", ("standing",), needs_life=True
    ),
    "life against wheel load": Figure(
        "hubwright.scenes.life_lines:life_against_wheel_load", ("standing",), needs_life=True
    ),
    "life against lateral g": Figure(
        "hubwright.scenes.life_lines:life_against_lateral_g", ("standing",), needs_life=True
    ),
    "split of a change": Figure("hubwright.scenes.change_split:change_split", takes="two results"),
    "setups compared": Figure("hubwright.scenes.setups_compared:setups_compared", takes="two results", takes_more=True),
    "contact pressure against load": Figure("hubwright.scenes.contact_pressure:contact_pressure", needs_life=True),
    "top view of braking": Figure("hubwright.scenes.braking_top_view:braking_top_view", ("braking", "driving")),
    "front view in a corner": Figure("hubwright.scenes.corner_front_view:corner_front_view", ("standing", *_SIDEWAYS)),
    "pressure to resultant": Figure(
        "hubwright.scenes.pressure_to_resultant:pressure_to_resultant",
        ("standing", "braking", "driving", "cornering", "side_slope"),
    ),
    "two setups under one load line": Figure("hubwright.scenes.two_setups:two_setups", takes="two results"),
    "drop history": Figure("hubwright.scenes.drop_history:drop_history_scene", ("drop",), needs=("suspension",)),
    "wheel at a ledge": Figure("hubwright.scenes.wheel_at_ledge:wheel_at_ledge", ("ledge",)),
    "vehicle on a slope": Figure("hubwright.scenes.vehicle_on_slope:vehicle_on_slope", ("side_slope",)),
    "diagonal support": Figure("hubwright.scenes.diagonal_support:diagonal_support", ("two_wheel",)),
    "scrub radius": Figure(
        "hubwright.scenes.scrub_radius:scrub_radius",
        ("braking", "ledge"),
        takes="two results",
        needs=("steering.scrub_radius",),
    ),
    "joint section": Figure(
        "hubwright.scenes.joint_section:joint_section", needs=("joint.nut_factor", "joint.face_friction")
    ),
    "seal section": Figure("hubwright.scenes.seal_section:seal_section", ("standing",), needs=_SEALING),
    "depth against quench": Figure(
        "hubwright.scenes.depth_against_quench:depth_against_quench", ("standing",), needs=_SEALING
    ),
    "drop sequence": Figure("hubwright.scenes.drop_sequence:drop_sequence", ("drop",), needs=("suspension",)),
    "measuring lengths": Figure("hubwright.scenes.measuring_lengths:measuring_lengths", ("standing",)),
    "measuring weights": Figure("hubwright.scenes.measuring_weights:measuring_weights", ("standing",)),
    "measuring gear": Figure("hubwright.scenes.measuring_gear:measuring_gear", ("standing",)),
    "measuring a tire": Figure("hubwright.scenes.measuring_tire:measuring_tire", ("standing",)),
    "measuring a wheel": Figure("hubwright.scenes.measuring_wheel:measuring_wheel", ("standing",)),
    "measuring a hub": Figure("hubwright.scenes.measuring_hub:measuring_hub", ("standing",)),
    "measuring springs": Figure(
        "hubwright.scenes.measuring_springs:measuring_springs", ("standing",), needs=("suspension",)
    ),
    "comparison bars": Figure("hubwright.scenes.comparison_bars:comparison_bars", takes="data"),
    "sensitivity bars": Figure("hubwright.scenes.sensitivity_bars:sensitivity_bars", takes="data"),
}


def scene_function(name: str) -> Callable[..., Scene]:
    """Return the scene function of a figure's name; a KeyError lists the names there are."""
    if name not in FIGURES:
        raise KeyError(f"no figure is called '{name}'; there are: {', '.join(sorted(FIGURES))}")
    module, function = FIGURES[name].function.split(":")
    scene: Callable[..., Scene] = getattr(import_module(module), function)
    return scene

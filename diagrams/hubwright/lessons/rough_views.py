"""What a lesson may ask about rough ground: slopes, two wheels, ledges, drops, the wheel joint, steering and water.

What a file does not say is None, and its keys are listed under `missing`.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import partial

import numpy as np

from hubwright.lessons.named_values import Leaf, View, constant, subject_of
from hubwright.lessons.words import listed, wheel_words
from hubwright.mechanics.impact import RIM_SHARE_OF_SECTION_HEIGHT
from hubwright.mechanics.impact_energy import energy_bound, fall_energy
from hubwright.mechanics.ledge import highest_ledge as highest_climbed
from hubwright.mechanics.load_cases import Diagonal
from hubwright.mechanics.sealing import water_life_factor
from hubwright.mechanics.wheel_joint import chance_of_either
from hubwright.quantities import Kind, Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.drops import drop_history
from hubwright.results.footing import diagonal_result, drive_at_ledge, ledge_result, slope_result
from hubwright.results.joint import JointResult, Scattered, joint_result
from hubwright.results.steering import SteeringResult, steering_result
from hubwright.results.water import LubricationResult, lubrication_result, sealing_result
from hubwright.setup.model import Drop, Ledge

Names = dict[str, Callable[[], Leaf]]
_DIAGONALS: Mapping[str, tuple[Diagonal, str]] = {
    "front_left": ("front_left+rear_right", "rear_right"),
    "rear_right": ("front_left+rear_right", "front_left"),
    "front_right": ("front_right+rear_left", "rear_left"),
    "rear_left": ("front_right+rear_left", "front_right"),
}


@dataclass(frozen=True)
class Landing:
    """A fall of a wheel's standing load onto its tire alone, for its workings. SI units."""

    results: Results
    height: float
    stiffness: float
    energy: float
    bound: float

    @property
    def weight(self) -> float:
        """Standing load of the wheel [N]."""
        return self.results.weight.wheel_loads[self.results.wheel]


@dataclass(frozen=True)
class Steered:
    """A setup beside the one on which its steering lengths were taken, for its workings."""

    results: Results
    base: Results
    found: SteeringResult


def rough_names(results: Results, label: str) -> Names:
    """Return the names about rough ground of a setup's view."""
    return {
        "footing": lambda: _footing_view(results, f"{label}.footing"),
        "fastening": lambda: _fastening_view(joint_result(results), f"{label}.fastening"),
        "ford": lambda: _ford_view(results, f"{label}.ford"),
        "grease": lambda: _grease_view(lubrication_result(results), f"{label}.grease"),
    }


def rough_case_views(results: Results, cases: Mapping[str, View]) -> None:
    """Give the view of every case what it says about joint, dirt, ledge and drop; None where it says nothing."""
    joints: list[JointResult] = []
    greases: list[LubricationResult] = []

    def joint() -> JointResult:
        if not joints:
            joints.append(joint_result(results))
        return joints[0]

    def grease() -> LubricationResult:
        if not greases:
            greases.append(lubrication_result(results))
        return greases[0]

    for name, view in cases.items():
        view._names["fastening"] = partial(_case_fastening, joint, name, f"{view!r}.fastening")
        view._names["dirt"] = partial(_dirt_view, grease, name, f"{view!r}.dirt")
        view._names["ledge"] = partial(_ledge_view, results, results.cases[name], f"{view!r}.ledge")
        view._names["drop"] = partial(_drop_view, results, results.cases[name], f"{view!r}.drop")


def _footing_view(results: Results, label: str) -> View:
    slope = slope_result(results)
    way, wheel = min(slope.tipping, key=slope.tipping.__getitem__), min(slope.lifting, key=slope.lifting.__getitem__)
    return View(
        label,
        {
            "static_stability_figure": constant(Quantity(slope.static_stability_figure, "1")),
            "tips_at": constant(Quantity(slope.tipping[way], "rad")),
            "tips_toward": constant(way),
            "lifts_at": constant(Quantity(slope.lifting[wheel], "rad")),
            "lifts_first": constant(wheel_words(wheel)),
            "diagonal": lambda: _diagonal_view(results, f"{label}.diagonal"),
        },
        results,
    )


def _diagonal_view(results: Results, label: str) -> View | None:
    """Return the support on the wheel in view and the one across from it; None for a trailer."""
    if results.setup.kind == "trailer":
        return None
    supported, across = _DIAGONALS[results.wheel]
    held = diagonal_result(results, supported)
    third = max((name for name in held.loads if name not in (results.wheel, across)), key=lambda n: held.loads[n])
    loads = {name: Quantity(float(load), "N") for name, load in held.loads.items()}
    return View(
        label,
        {
            "across": constant(wheel_words(across)),
            "third": constant(wheel_words(third)),
            "this_load": constant(loads[results.wheel]),
            "across_load": constant(loads[across]),
            "third_load": constant(loads[third]),
            "third_share": constant(Quantity(float(held.third_share), "1", kind="percent")),
            "off_line": constant(Quantity(abs(float(held.off_line)), "m")),
            "tips_at": constant(Quantity(float(held.tipping_angle), "rad")),
        },
        results,
    )


def _ledge_view(results: Results, case: CaseResult, label: str) -> View | None:
    own = results.setup.case(case.name)
    if not isinstance(own, Ledge):
        return None
    met = ledge_result(results, height=own.height, friction=0.0)
    torque = drive_at_ledge(results, height=own.height, torque=np.zeros(1)).climbs_by_itself
    return View(
        label,
        {
            "height": constant(Quantity(own.height, "m")),
            "angle": constant(Quantity(met.angle, "rad")),
            "normal": constant(Quantity(met.normal, "N")),
            "push": constant(Quantity(met.push, "N")),
            "needed_friction": constant(Quantity(met.needed_friction, "1")),
            "climbing_torque": constant(Quantity(torque, "N*m")),
        },
        (results, case),
    )


def highest_ledge(view: View, friction: Quantity | float) -> Quantity:
    """Return the highest ledge that a driven wheel climbs by itself with so much friction."""
    results = _solved(view)
    radius = results.wheel_geometry.loaded_radius
    return Quantity(float(highest_climbed(friction=float(friction), loaded_radius=radius)), "m")


_DROP: tuple[tuple[str, str, Kind], ...] = (
    ("height", "m", "small length"),
    ("peak_time", "s", "time"),
    ("peak_tire_force", "N", "force"),
    ("peak_bearing_force", "N", "force"),
    ("impact_factor", "1", "ratio"),
    ("standing_load", "N", "force"),
    ("touch_speed", "m/s", "speed"),
    ("fall_energy", "J", "energy"),
    ("energy_bound", "N", "force"),
    ("rim_force", "N", "force"),
    ("body_frequency", "Hz", "frequency"),
    ("wheel_frequency", "Hz", "frequency"),
)


def _drop_view(results: Results, case: CaseResult, label: str) -> View | None:
    if not isinstance(results.setup.case(case.name), Drop):
        return None
    history = drop_history(results, case.name)
    car = history.car
    names: Names = {
        name: constant(Quantity(float(getattr(history, name)), unit, kind=kind)) for name, unit, kind in _DROP
    }
    return View(
        label,
        {
            **names,
            "tire_on_rim": constant(history.tire_on_rim),
            "standing_bearing_force": constant(Quantity(results.cases["standing"].bearing_force.z, "N")),
            "sprung_mass": constant(Quantity(float(car.sprung_mass), "kg")),
            "unsprung_mass": constant(Quantity(float(car.unsprung_mass), "kg")),
            "wheel_rate": constant(Quantity(float(car.wheel_rate), "N/m")),
            "tire_stiffness": constant(Quantity(float(car.tire_stiffness), "N/m")),
            "bump_damping": constant(Quantity(float(car.bump_damping), "N*s/m")),
            "rebound_damping": constant(Quantity(float(car.rebound_damping), "N*s/m")),
        },
        (results, case),
    )


def landing(view: View, height: Quantity, stiffness: Quantity | None = None) -> View:
    """Return a fall of the wheel's standing load from a height [m] onto the tire alone, its own or of a stiffness."""
    results = _solved(view)
    weight, tire = results.weight.wheel_loads[results.wheel], results.setup.tire
    k = _tire_stiffness(results) if stiffness is None else stiffness.value
    s = height.value
    fallen = Landing(
        results,
        s,
        k,
        float(fall_energy(weight=weight, height=s)),
        float(energy_bound(weight=weight, stiffness=k, height=s)),
    )
    return View(
        "the landing",
        {
            "height": constant(Quantity(s, "m")),
            "energy": constant(Quantity(fallen.energy, "J", kind="energy")),
            "bound": constant(Quantity(fallen.bound, "N")),
            "factor": constant(Quantity(fallen.bound / weight, "1")),
            "stiffness": constant(Quantity(k, "N/m")),
            "standing_deflection": constant(Quantity(weight / k, "m")),
            "deflection": constant(Quantity(fallen.bound / k, "m")),
            "rim_force": constant(Quantity(k * RIM_SHARE_OF_SECTION_HEIGHT * tire.section_height, "N")),
            "rim_deflection": constant(Quantity(RIM_SHARE_OF_SECTION_HEIGHT * tire.section_height, "m")),
        },
        fallen,
    )


def _tire_stiffness(results: Results) -> float:
    """Return the stiffness of the tire, given or estimated [N/m]; else what the standing load presses it in by."""
    entry = results.inputs.get("tire.vertical_stiffness")
    if entry is not None and not isinstance(entry.value, str):
        return float(entry.value)
    return results.weight.wheel_loads[results.wheel] / results.wheel_geometry.tire_deflection


def _scattered(value: Scattered | None, unit: str, kind: Kind | None = None) -> Quantity | None:
    if value is None:
        return None
    low, high = (value.low, value.high) if value.low < value.high else (None, None)
    return Quantity(value.value, unit, kind=kind, low=low, high=high)


def _maybe(value: float | None, unit: str, kind: Kind | None = None) -> Quantity | None:
    return None if value is None else Quantity(value, unit, kind=kind)


def _fastening_view(found: JointResult, label: str) -> View:
    return View(
        label,
        {
            "joints": constant(found.joints),
            "clamp": constant(_scattered(found.clamp, "N")),
            "proof_load": constant(_maybe(found.proof_load, "N")),
            "clamp_over_proof": constant(_scattered(found.clamp_over_proof, "1", "percent")),
            "capacity": constant(_scattered(found.capacity, "N*m")),
            "engaged_turns": constant(_maybe(found.engaged_turns, "1")),
            "engaged_diameters": constant(_maybe(found.engaged_diameters, "1")),
            "stripping_over_breaking": constant(_maybe(found.stripping_over_breaking, "1")),
            "test_moment": constant(_maybe(found.test_moment, "N*m")),
            "missing": constant([_key_view(key) for key in found.missing]),
        },
    )


def _case_fastening(joint: Callable[[], JointResult], name: str, label: str) -> View | None:
    """Return what a case asks of the joint; None where the file gives no joint."""
    found = joint().cases.get(name)
    if found is None:
        return None
    return View(
        label,
        {
            "demand": constant(Quantity(found.demand, "N*m")),
            "margin": constant(_scattered(found.margin, "1")),
            "bending": constant(Quantity(found.bending, "N*m")),
        },
    )


def both_joints(chance: Quantity | float) -> Quantity:
    """Return how likely it is that one or both of two joints are at fault, each with this chance."""
    return Quantity(float(chance_of_either(chance=float(chance))), "1", kind="percent")


def steering(view: View, base: View) -> View:
    """Return track, scrub radius and kick-back of a setup whose steering lengths were taken on another."""
    results, before = _solved(view), _solved(base)
    found = steering_result(results, before)
    kicks = [
        View(
            "the kick-back",
            {
                "case": constant(name),
                "force": constant(Quantity(abs(kick.force), "N")),
                "moment": constant(Quantity(kick.moment, "N*m")),
                "tie_rod_force": constant(_maybe(kick.tie_rod_force, "N")),
            },
        )
        for name, kick in found.kick_back.items()
    ]
    return View(
        "the steering",
        {
            "load_line_change": constant(Quantity(found.load_line_change, "m")),
            "track": constant(Quantity(found.track, "m", kind="vehicle length")),
            "scrub_radius": constant(_maybe(found.scrub_radius, "m", "small length")),
            "kicks": constant(kicks),
            "missing": constant([_key_view(key) for key in found.missing]),
        },
        Steered(results, before, found),
    )


def _ford_view(results: Results, label: str) -> View:
    found = sealing_result(results)
    return View(
        label,
        {
            "depth_pressure": constant(_maybe(found.depth_pressure, "Pa", "fluid pressure")),
            "suction": constant(_maybe(found.suction, "Pa", "fluid pressure")),
            "together": constant(_maybe(found.together, "Pa", "fluid pressure")),
            "suction_as_depth": constant(_maybe(found.suction_as_depth, "m", "vehicle length")),
            "suction_over_depth": constant(_maybe(found.suction_over_depth, "1")),
            "missing": constant([_key_view(key) for key in found.missing]),
        },
        results,
    )


def _grease_view(found: LubricationResult, label: str) -> View:
    low, high = (None, None) if found.contamination_factor is None else found.contamination_factor
    return View(
        label,
        {
            "cleanest": constant(_maybe(high, "1")),
            "dirtiest": constant(_maybe(low, "1")),
            "fatigue_load_limit": constant(_maybe(found.fatigue_load_limit, "N")),
            "missing": constant([_key_view(key) for key in found.missing]),
        },
    )


def _dirt_view(grease: Callable[[], LubricationResult], name: str, label: str) -> View | None:
    """Return the factors on life of a case at the dirtier and the cleaner end of the file's class, if known."""
    factor = grease().life_factor.get(name)
    if factor is None:
        return None
    return View(
        label, {"dirtier": constant(Quantity(factor.low, "1")), "cleaner": constant(Quantity(factor.high, "1"))}
    )


def water_factor(share: Quantity | float) -> Quantity:
    """Return how water in the lubricant changes a life, beside a hundred parts in a million: for a share of water."""
    return Quantity(float(water_life_factor(water_content=float(share))), "1")


def _key_view(key: str) -> View:
    return View(key, {"key": constant(key)})


def keys(missing: Iterable[View]) -> str:
    """Return missing keys as code for a sentence: "`joint.nut_factor` and `joint.face_friction`"."""
    return listed(f"`{view.key}`" for view in missing)


def _solved(view: object) -> Results:
    results = subject_of(view) if isinstance(view, View) else None
    if not isinstance(results, Results):
        raise TypeError(f"needs a setup, such as stock, got {view!r}")
    return results


FUNCTIONS: Mapping[str, Callable[..., object]] = {
    function.__name__: function for function in (landing, highest_ledge, steering, both_joints, water_factor, keys)
}

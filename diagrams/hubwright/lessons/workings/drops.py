"""Workings of drops: speed, energy, the force if the tire alone gives, and the peak over the standing load."""

from collections.abc import Callable, Mapping

from hubwright.lessons.rough_views import Landing
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.drops import drop_history


def impact_factor(results: Results, case: CaseResult) -> Working:
    """Return the peak force of the tire over its standing load."""
    history = drop_history(results, case.name)
    return Working(
        what="Peak force of the tire over its standing load",
        lines=(Line("n", "F/F_0"),),
        symbols={
            "n": Symbol("n", "impact factor", Quantity(history.impact_factor, "1")),
            "F": Symbol(r"F_\mathrm{peak}", "largest force of the tire", Quantity(history.peak_tire_force, "N")),
            "F_0": Symbol(
                "F_0", "load of the wheel, standing", Quantity(history.standing_load, "N"), path="weight.this_wheel"
            ),
        },
        source="One corner as two masses on springs, followed through time.",
        function="impact.drop",
    )


def touch_speed(results: Results, case: CaseResult) -> Working:
    """Return how fast a wheel falls when it touches."""
    history = drop_history(results, case.name)
    return Working(
        what="Speed at the touch",
        lines=(Line("v", "sqrt(2*g*s)"),),
        symbols={
            "v": Symbol("v_0", "speed when the tire touches", Quantity(float(history.touch_speed), "m/s"), "in/s"),
            "g": Symbol("g", "acceleration of free fall", Quantity(STANDARD_GRAVITY, "m/s^2")),
            "s": Symbol("s", "height of the fall", Quantity(float(history.height), "m"), "m"),
        },
        source="Free fall from rest.",
        function="impact.drop",
    )


def dropped(results: Results, case: CaseResult) -> Landing:
    """Return the fall of a case onto the tire alone."""
    history = drop_history(results, case.name)
    return Landing(
        results,
        float(history.height),
        float(history.car.tire_stiffness),
        float(history.fall_energy),
        float(history.energy_bound),
    )


def fall_energy(landing: Landing) -> Working:
    """Return the energy of a fall."""
    return Working(
        what="Energy of the fall",
        lines=(Line("E", "W*s", us="W*s/inches_in_a_foot"),),
        symbols={
            "E": Symbol("E", "energy", Quantity(landing.energy, "J", kind="energy")),
            "W": Symbol("W", "load of the wheel, standing", Quantity(landing.weight, "N"), path="weight.this_wheel"),
            "s": Symbol("s", "height of the fall", Quantity(landing.height, "m"), "m"),
        },
        source="Work is force times way. A weight times a height is an energy and no force.",
        function="impact_energy.fall_energy",
    )


def bound(landing: Landing) -> Working:
    """Return the force of a landing if the tire alone takes in the energy."""
    return Working(
        what="Force if the tire alone gives",
        lines=(Line("d", "W/k"), Line("F", "W*(1 + sqrt(1 + 2*s/d))")),
        symbols={
            "F": Symbol("F", "force of the landing", Quantity(landing.bound, "N")),
            "W": Symbol("W", "load of the wheel, standing", Quantity(landing.weight, "N"), path="weight.this_wheel"),
            "s": Symbol("s", "height of the fall", Quantity(landing.height, "m"), "mm"),
            "d": Symbol(
                r"\delta", "how far it presses the tire in, standing",
                Quantity(landing.weight / landing.stiffness, "m"), "mm",
            ),
            "k": Symbol("k", "stiffness of the tire", Quantity(landing.stiffness, "N/m"), "N/mm"),
        },
        source="The fall and the tire's own give feed the tire's spring; rigid above it, no loss.",
        function="impact_energy.energy_bound",
    )  # fmt: skip


def landing_factor(landing: Landing) -> Working:
    """Return the force of a landing over the standing load."""
    return Working(
        what="Force of the landing over the standing load",
        lines=(Line("n", "F/W"),),
        symbols={
            "n": Symbol("n", "times the standing load", Quantity(landing.bound / landing.weight, "1")),
            "F": Symbol("F", "force of the landing", Quantity(landing.bound, "N")),
            "W": _landing_weight(landing),
        },
        source="A ratio.",
        function="impact_energy.impact_factor",
    )


def standing_deflection(landing: Landing) -> Working:
    """Return how far the standing load presses the tire in."""
    return _pressed_in(
        landing, "How far the standing load presses the tire in", landing.weight, _landing_weight(landing)
    )


def deflection(landing: Landing) -> Working:
    """Return how far the landing presses the tire in."""
    force = Symbol("F", "force of the landing", Quantity(landing.bound, "N"))
    return _pressed_in(landing, "How far the landing presses the tire in", landing.bound, force)


def _pressed_in(landing: Landing, what: str, force: float, symbol: Symbol) -> Working:
    return Working(
        what=what,
        lines=(Line("d", "F/k"),),
        symbols={
            "d": Symbol(r"\delta", "how far the tire is pressed in", Quantity(force / landing.stiffness, "m"), "mm"),
            "F": symbol,
            "k": Symbol("k", "stiffness of the tire", Quantity(landing.stiffness, "N/m"), "N/mm"),
        },
        source="The tire gives like a spring.",
        function="impact_energy.energy_bound",
    )


def _landing_weight(landing: Landing) -> Symbol:
    weight = Quantity(landing.weight, "N")
    return Symbol("W", "load of the wheel, standing", weight, path="weight.this_wheel")


CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    "drop.impact_factor": impact_factor,
    "drop.touch_speed": touch_speed,
    "drop.fall_energy": lambda results, case: fall_energy(dropped(results, case)),
    "drop.energy_bound": lambda results, case: bound(dropped(results, case)),
}
LANDING_WORKINGS: Mapping[str, Callable[[Landing], Working]] = {
    "energy": fall_energy,
    "bound": bound,
    "factor": landing_factor,
    "standing_deflection": standing_deflection,
    "deflection": deflection,
}

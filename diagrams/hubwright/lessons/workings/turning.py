"""Workings of turning effects in space: the road's cross product, the bend that balances the load, the caliper."""

from collections.abc import Callable, Mapping
from functools import partial
from typing import Literal

from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.mechanics.free_body import balanced_lateral_g
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results

Axis = Literal["x", "y", "z"]
# each component of r × F from the two others, in turn: x from y and z, y from z and x, z from x and y
_CROSS: Mapping[Axis, str] = {"x": "y*F_z - z*F_y", "y": "z*F_x - x*F_z", "z": "x*F_y - y*F_x"}
_ORDER: Mapping[Axis, tuple[Axis, ...]] = {"x": ("y", "z", "x"), "y": ("z", "x", "y"), "z": ("x", "y", "z")}
_WAYS: Mapping[Axis, str] = {"x": "forward", "y": "to the left", "z": "upward"}


def contact_moment(results: Results, case: CaseResult, axis: Axis) -> Working:
    """Return the cross product of the contact's place and the road's push, the component asked for last."""
    contact = case.free_body.force("contact")
    x, y, z = contact.point.components
    fx, fy, fz = contact.force.components
    moments: dict[Axis, float] = {"x": y * fz - z * fy, "y": z * fx - x * fz, "z": x * fy - y * fx}
    symbols: dict[str, Symbol] = {}
    for one, place, force in zip(_WAYS, (x, y, z), (fx, fy, fz), strict=True):
        symbols[one] = Symbol(one, f"the contact from the bearing centre, {_WAYS[one]}", Quantity(place, "m"), "m")
        symbols[f"F_{one}"] = Symbol(
            f"F_{one}", f"the road's push, {_WAYS[one]}", Quantity(force, "N"), path=f"contact_force.{one}"
        )
        words = f"the road's turning effect about the axis that points {_WAYS[one]}"
        symbols[f"T_{one}"] = Symbol(f"T_{one}", words, Quantity(moments[one], "N*m"))
    return Working(
        what="Turning effect of the road, r × F",
        lines=tuple(Line(f"T_{one}", _CROSS[one], us=f"({_CROSS[one]})/inches_in_a_foot") for one in _ORDER[axis]),
        symbols=symbols,
        source="Cross product of place and force, about the bearing centre. Axes of ISO 8855.",
        function="vector.Vector.cross",
    )


def balanced(results: Results) -> Working:
    """Return at which lateral acceleration the side push takes back what the load does at the outer wheel."""
    geometry = results.wheel_geometry
    balance = balanced_lateral_g(load_line_offset=geometry.load_line_offset, loaded_radius=geometry.loaded_radius)
    return Working(
        what="Bend in which side push and load balance at the outer wheel",
        lines=(Line("n", "y_L/R_l"),),
        symbols={
            "n": Symbol("n", "lateral acceleration over g", Quantity(float(balance), "1", kind="acceleration")),
            "y_L": Symbol(
                "y_L",
                "load line outboard of the bearing centre",
                Quantity(geometry.load_line_offset, "m"),
                "mm",
                "load_line_offset",
            ),
            "R_l": Symbol(
                "R_l", "wheel centre above the road", Quantity(geometry.loaded_radius, "m"), "mm", "loaded_radius"
            ),
        },
        source="The load has the load line as its lever; the side push, n times the load, has the loaded radius.",
        function="free_body.balanced_lateral_g",
    )


def caliper_force(results: Results, case: CaseResult, axis: Literal["x", "z"]) -> Working:
    """Return how hard the caliper pushes on the disc, and the part of it along an axis."""
    brake = results.setup.brake
    push = case.free_body.force("caliper").force
    part = Symbol(f"K_{axis}", f"the caliper's push, {_WAYS[axis]}", Quantity(getattr(push, axis), "N"))
    what = f"Push of the caliper, {_WAYS[axis]}"
    if brake is None or case.kind != "braking":
        return Working(what, (Line("C_a", "0"),), {"C_a": part}, "The caliper pushes only while it brakes.")
    friction = results.wheel_geometry.loaded_radius * abs(case.contact_force.x) / brake.effective_radius
    direction = "-C*cos(t)" if axis == "x" else "C*sin(t)"
    return Working(
        what=what,
        lines=(Line("C", "R_l*abs(F_x)/r"), Line("C_a", direction)),
        symbols={
            "C": Symbol("K", "friction force of the pads on the disc", Quantity(friction, "N")),
            "C_a": part,
            "R_l": Symbol(
                "R_l",
                "wheel centre above the road",
                Quantity(results.wheel_geometry.loaded_radius, "m"),
                "m",
                "loaded_radius",
            ),
            "F_x": Symbol(
                "F_x", "the road's push, forward", Quantity(case.contact_force.x, "N"), path="contact_force.x"
            ),
            "r": Symbol("r", "effective radius of the brake", Quantity(brake.effective_radius, "m"), "m"),
            "t": Symbol(
                r"\theta", "caliper from straight up, toward the front", Quantity(brake.caliper_position, "rad")
            ),
        },
        source="The pads hold back the disc; their push is square to the line from the axle to the caliper.",
        function="free_body.wheel_end",
    )


SETUP_WORKINGS: Mapping[str, Callable[[Results], Working]] = {"balanced_lateral_g": balanced}
CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    **{f"free_body.contact.moment.{axis}": partial(contact_moment, axis=axis) for axis in _WAYS},
    "free_body.caliper.force.x": partial(caliper_force, axis="x"),
    "free_body.caliper.force.z": partial(caliper_force, axis="z"),
}

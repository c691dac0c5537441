"""What a setup looks like to a lesson: every result and input by its name, each a quantity that carries its unit.

A table of the file, a case or a beam is a view of its own.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass

from hubwright.lessons.life_views import case_life_views, life_view
from hubwright.lessons.named_values import Leaf, View, constant, value_at
from hubwright.lessons.rough_views import rough_case_views, rough_names
from hubwright.lessons.symptom_views import own_play
from hubwright.lessons.words import wheel_words
from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.mechanics.free_body import balanced_lateral_g
from hubwright.quantities import Kind, Quantity, adding_up
from hubwright.results import CaseResult, Results
from hubwright.results.beams import BeamResults, solve_beam, wheel_end_beam
from hubwright.results.model import EXTRA_UNITS, SingleForce, Vector
from hubwright.setup.model import Beam, Input, Setup


def case_attribute(name: str) -> str:
    """Return the name under which a lesson finds a case: "brisk corner left" is `brisk_corner_left`."""
    return "".join(character if character.isalnum() else "_" for character in name.lower())


def setup_view(results: Results, label: str) -> View:
    """Return the view of a solved setup."""
    setup = results.setup
    cases = {name: case_view(results, case, f"{label}.{case_attribute(name)}") for name, case in results.cases.items()}
    case_life_views(results, cases)
    rough_case_views(results, cases)
    view = View(label, {}, results)

    def has(path: str) -> bool:
        return value_at(view, path) is not None

    view._names.update(
        {
            **{case_attribute(name): constant(case) for name, case in cases.items()},
            **{
                field.name: constant(Quantity(getattr(results.wheel_geometry, field.name), "m"))
                for field in fields(results.wheel_geometry)
            },
            **{table: _table(setup, results.inputs, table, label) for table in _TABLES},
            "name": constant(setup.name),
            "stem": constant(setup.stem),
            "kind": constant(setup.kind),
            "wheel_words": constant(wheel_words(results.wheel)),
            "wheel_end": constant(setup.wheel_end),
            "balanced_lateral_g": constant(_balanced(results)),
            "weight": lambda: _weight_view(results, f"{label}.weight"),
            "life": lambda: life_view(results, f"{label}.life"),
            "own_end_play": lambda: own_play(results),
            **rough_names(results, label),
            "bearing": lambda: _bearing_view(results, f"{label}.bearing"),
            "gear": lambda: [_gear_view(results, i, f"{label}.gear[{i}]") for i in range(len(setup.gear))],
            "cases": lambda: list(cases.values()),
            "estimated": lambda: [
                _input_view(key, entry) for key, entry in results.inputs.items() if entry.origin == "estimated"
            ],
            "inputs": lambda: [_input_view(key, entry) for key, entry in results.inputs.items()],
            "has": constant(has),
        }
    )
    return view


def _balanced(results: Results) -> Quantity:
    geometry = results.wheel_geometry
    balance = balanced_lateral_g(load_line_offset=geometry.load_line_offset, loaded_radius=geometry.loaded_radius)
    return Quantity(float(balance), "1", kind="acceleration")


def case_view(results: Results, case: CaseResult, label: str) -> View:
    """Return the view of one case."""
    names: dict[str, Callable[[], Leaf]] = {
        "name": constant(case.name),
        "kind": constant(case.kind),
        "contact_force": lambda: _vector_view(case.contact_force, "N", f"{label}.contact_force"),
        "bearing_force": lambda: _vector_view(case.bearing_force, "N", f"{label}.bearing_force"),
        "bearing_moment": lambda: _vector_view(case.bearing_moment, "N*m", f"{label}.bearing_moment"),
        "row_load": constant(None),
        "row_radial_load": constant(None),
        "beam": lambda: _beam_view(results, case, f"{label}.beam"),
        "closure": lambda: View(
            f"{label}.closure",
            {
                "force": constant(Quantity(case.closure.force, "N")),
                "moment": constant(Quantity(case.closure.moment, "N*m")),
            },
        ),
        "free_body": lambda: _free_body_view(case, f"{label}.free_body"),
        **{
            name: constant(value if isinstance(value, bool) else Quantity(value, EXTRA_UNITS[name]))
            for name, value in case.extras.items()
        },
    }  # fmt: skip
    load, radial = case.row_load, case.row_radial_load
    if load is not None and radial is not None:
        rows = {"outboard": (load.outboard, radial.outboard), "inboard": (load.inboard, radial.inboard)}
        told = {
            axis: adding_up(Quantity(getattr(load.outboard, axis), "N"), Quantity(getattr(load.inboard, axis), "N"))
            for axis in ("x", "y", "z")
        }
        names["row_load"] = lambda: View(
            f"{label}.row_load",
            {
                row: constant(View(f"{label}.row_load.{row}", {axis: constant(both[n]) for axis, both in told.items()}))
                for n, row in enumerate(rows)
            },
        )
        names["row_radial_load"] = lambda: View(
            f"{label}.row_radial_load",
            {
                # of a row that is pressed up or down alone it is the same number
                row: constant(abs(told["z"][n]) if abs(vector.z) == size else Quantity(size, "N"))
                for n, (row, (vector, size)) in enumerate(rows.items())
            },
        )
    return View(label, names, (results, case))


_TABLES = (
    "chassis", "tire", "wheel", "hub", "suspension", "brake", "spindle", "joint", "steering", "sealing",
    "lubrication", "limits",
)  # fmt: skip
_UNITS = {
    "kg": "front_axle_mass rear_axle_mass axle_mass coupling_mass mass rotating_mass unsprung_mass front_axle_rating "
    "rear_axle_rating wheel_rating tire_rating axle_rating coupling_rating",
    "1": "front_roll_share inner_conformity outer_conformity nut_factor torque_scatter face_friction viscosity_ratio",
    "N": "dynamic_rating static_rating",
    "N/m": "vertical_stiffness wheel_rate bump_stop_stiffness",
    "N*s/m": "bump_damping rebound_damping",
    "rad": "contact_angle caliper_position",
    "N*m": "tightening_torque fastener_torque",
    "K": "hub_temperature water_temperature",
}
_UNIT_OF = {name: unit for unit, names in _UNITS.items() for name in names.split()}
_KINDS: dict[str, Kind] = {
    "wheelbase": "vehicle length",
    "front_track": "vehicle length",
    "rear_track": "vehicle length",
    "track": "vehicle length",
    "coupling_ahead_of_axle": "vehicle length",
    "centre_of_mass_height": "vehicle length",
    "preload": "deflection",
}


def input_quantity(key: str, entry: Input) -> Quantity | str:
    """Return an input as a quantity with its range, or as words."""
    if isinstance(entry.value, str):
        return entry.value
    name = key.rpartition(".")[2]
    return Quantity(entry.value, entry.unit, kind=_KINDS.get(name), low=entry.low, high=entry.high)


def _table(setup: Setup, inputs: Mapping[str, Input], table: str, label: str) -> Callable[[], Leaf]:
    return lambda: _table_view(getattr(setup, table), inputs, table, label)


def _table_view(content: object, inputs: Mapping[str, Input], table: str, label: str) -> View | None:
    if content is None or not is_dataclass(content):
        return None
    names: dict[str, Callable[[], Leaf]] = {}
    for field in fields(content):
        names[field.name] = constant(
            _field(getattr(content, field.name), field.name, inputs.get(f"{table}.{field.name}"))
        )
    for extra in ("section_height",):
        if hasattr(content, extra):
            names[extra] = constant(Quantity(getattr(content, extra), "m"))
    return View(f"{label}.{table}", names)


def _field(value: object, name: str, entry: Input | None) -> Leaf:
    if value is None or isinstance(value, str | bool | int):
        return value
    if isinstance(value, float):
        low, high = (entry.low, entry.high) if entry else (None, None)
        return Quantity(value, _UNIT_OF.get(name, "m"), kind=_KINDS.get(name), low=low, high=high)
    return str(getattr(value, "text", value))


def _bearing_view(results: Results, label: str) -> View:
    bearing = results.setup.bearing
    view = _table_view(bearing, results.inputs, "bearing", label.rpartition(".")[0])
    assert view is not None
    for field in fields(results.bearing):
        value = getattr(results.bearing, field.name)
        unit = "m" if field.name == "effective_spread" else "N"
        view._names[field.name] = constant(None if value is None else Quantity(value, unit))
    view._names["kind"] = constant(bearing.kind)
    view._names["elements_per_row"] = constant(bearing.elements_per_row)
    view._names["element_diameter"] = constant(
        None if bearing.element_diameter is None else Quantity(bearing.element_diameter, "m")
    )
    return view


def _weight_view(results: Results, label: str) -> View:
    weight = results.weight
    axle_of_wheel = "axle" if results.setup.kind == "trailer" else results.wheel.partition("_")[0]
    names = {_axle_name(axle): load for axle, load in weight.axle_loads.items()}
    names |= {f"bare_{_axle_name(axle)}": load for axle, load in weight.bare_axle_loads.items()}
    names |= dict(weight.wheel_loads)
    names |= {
        "this_wheel": weight.wheel_loads[results.wheel],
        "this_axle": weight.axle_loads[axle_of_wheel],
        "equal_share": weight.equal_share,
        "total": weight.total_mass * STANDARD_GRAVITY,
    }
    leaves: dict[str, Callable[[], Leaf]] = {name: constant(Quantity(load, "N")) for name, load in names.items()}
    leaves["total_mass"] = constant(Quantity(weight.total_mass, "kg"))
    leaves["centre_of_mass_height"] = constant(Quantity(weight.centre_of_mass_height, "m", kind="vehicle length"))
    leaves["centre_of_mass_behind"] = constant(Quantity(weight.centre_of_mass_behind, "m", kind="vehicle length"))
    return View(label, leaves)


def _axle_name(axle: str) -> str:
    return f"{axle}_load" if axle in ("axle", "coupling") else f"{axle}_axle_load"


def _gear_view(results: Results, index: int, label: str) -> View:
    gear = results.setup.gear[index]
    behind = Quantity(gear.behind, "m", kind="vehicle length")
    return View(
        label,
        {
            "name": constant(gear.name),
            "mass": constant(Quantity(gear.mass, "kg")),
            "behind": constant(behind),
            "behind_axle" if results.setup.kind == "trailer" else "behind_front_axle": constant(behind),
            "left_of_centre": constant(Quantity(gear.left_of_centre, "m", kind="vehicle length")),
            "above_ground": constant(Quantity(gear.above_ground, "m", kind="vehicle length")),
        },
    )


def _input_view(key: str, entry: Input) -> View:
    value = input_quantity(key, entry)
    return View(
        key,
        {
            "key": constant(key),
            "value": constant(value),
            "low": constant(None if entry.low is None else Quantity(entry.low, entry.unit)),
            "high": constant(None if entry.high is None else Quantity(entry.high, entry.unit)),
            "origin": constant(entry.origin),
            "note": constant(entry.note),
        },
    )


def _vector_view(vector: Vector, unit: str, label: str) -> View:
    return View(label, {axis: constant(Quantity(getattr(vector, axis), unit)) for axis in ("x", "y", "z")})


def _free_body_view(case: CaseResult, label: str) -> View:
    def single_view(single: SingleForce) -> View:
        name = f"{label}.{single.name}"
        turning = _turning(single.point, single.force)
        return View(
            name,
            {
                "force": constant(_vector_view(single.force, "N", f"{name}.force")),
                "point": constant(_vector_view(single.point, "m", f"{name}.point")),
                "moment": constant(_vector_view(turning, "N*m", f"{name}.moment")),
            },
        )

    return View(label, {single.name: constant(single_view(single)) for single in case.free_body.forces})


def _turning(at: Vector, force: Vector) -> Vector:
    """Return the turning effect of a force about the bearing centre, r × F."""
    return Vector(at.y * force.z - at.z * force.y, at.z * force.x - at.x * force.z, at.x * force.y - at.y * force.x)


def _beam_view(results: Results, case: CaseResult, label: str) -> View | None:
    if results.bearing.effective_spread is None:
        return None
    beam = wheel_end_beam(results, case.name)
    view = _solved_beam(beam, label)
    view._names |= {
        "overhung": constant(beam.overhung),
        "near": constant(beam.near),
        "load": constant(Quantity(beam.load, "N")),
        "load_place": constant(Quantity(beam.load_place, "m") if math.isfinite(beam.load_place) else None),
        "reaction_outboard": constant(Quantity(beam.reaction_outboard, "N")),
        "reaction_inboard": constant(Quantity(beam.reaction_inboard, "N")),
        "cantilever_moment": constant(Quantity(beam.cantilever_moment, "N*m")),
    }
    return view


def beam_view(beam: Beam, label: str) -> View:
    """Return the view of a beam alone."""
    view = _solved_beam(solve_beam(beam), label)
    view._names |= {
        "name": constant(beam.name),
        "stem": constant(beam.stem),
        "kind": constant(beam.kind),
        "length": constant(Quantity(beam.length, "m", kind="vehicle length")),
        "has": constant(lambda path: value_at(view, path) is not None),
    }
    return view


def _solved_beam(beam: BeamResults, label: str) -> View:
    """Return the view of a beam: reactions in the order of the supports, largest values and where they stand."""
    reactions = [
        View(
            f"{label}.reactions[{i}]",
            {
                "at": constant(Quantity(each.at, "m", kind="vehicle length")),
                "type": constant(each.type),
                "force": constant(Quantity(each.force, "N")),
                "moment": constant(Quantity(each.moment, "N*m")),
            },
        )
        for i, each in enumerate(beam.reactions)
    ]
    names: dict[str, Callable[[], Leaf]] = {"reactions": constant(reactions)}
    for name, unit, kind in _EXTREMES:
        extreme = getattr(beam, name)
        names[name] = constant(None if extreme is None else Quantity(extreme.value, unit, kind=kind))
        names[f"{name}_at"] = constant(None if extreme is None else Quantity(extreme.at, "m"))
    return View(label, names, beam)


_EXTREMES: tuple[tuple[str, str, Kind | None], ...] = (
    ("maximum_shear", "N", None),
    ("maximum_moment", "N*m", None),
    ("maximum_deflection", "m", "deflection"),
)

"""Random setups that are physically possible, for tests of what must hold for every setup.

`setups()` draws vehicles and trailers of every sort: both bearing kinds, either turning ring, load
line outboard or inboard, gear anywhere, optional tables there or not, required keys alone or all of
them. Each is written as the data of a file and goes through the same checks. Every case that a drawn
setup holds can be stood in: no wheel lifts.
"""

from __future__ import annotations

import math
import tomllib
from typing import Any, Literal

from hypothesis import strategies as st

from hubwright.setup.building import build_setup
from hubwright.setup.document import Document
from hubwright.setup.model import Setup

Kind = Literal["vehicle", "trailer"]
TIRE_SIZES = (
    "185/75R14",
    "205/65R16",
    "225/75R16C",
    "245/75R16",
    "LT265/75R16 123/120Q",
    "31x10.50R15LT",
    "35x12.50R17LT",
)


def in_unit(low: float, high: float, unit: str, digits: int = 3) -> st.SearchStrategy[str]:
    """Texts such as "31.25 mm", between two values."""
    return st.floats(low, high, allow_nan=False).map(lambda value: f"{value:.{digits}f} {unit}")


def _chassis(kind: Kind, everything: bool) -> st.SearchStrategy[dict[str, Any]]:
    if kind == "trailer":
        return st.fixed_dictionaries(
            {
                "axle_mass": in_unit(300, 1500, "kg"),
                "coupling_mass": in_unit(40, 120, "kg"),
                "coupling_ahead_of_axle": in_unit(2.2, 4.5, "m"),
                "track": in_unit(1.45, 1.9, "m"),
                "centre_of_mass_height": in_unit(0.45, 0.75, "m"),
            }
        )
    weights = st.one_of(
        st.fixed_dictionaries(
            {"front_axle_mass": in_unit(700, 1700, "kg"), "rear_axle_mass": in_unit(600, 1700, "kg")}
        ),
        st.fixed_dictionaries(
            {"total_mass": in_unit(1400, 3400, "kg")}, optional={"front_share": st.floats(0.45, 0.6)}
        ),
    )
    height = st.one_of(
        st.fixed_dictionaries({"centre_of_mass_height": in_unit(0.5, 0.8, "m")}),
        st.fixed_dictionaries({"static_stability_figure": st.floats(1.0, 1.5)}),
        st.fixed_dictionaries({"overall_height": in_unit(1.4, 2.0, "m")}),
        *([] if everything else [st.just({})]),
    )
    lengths = st.fixed_dictionaries(
        {"wheelbase": in_unit(2.2, 4.0, "m"), "front_track": in_unit(1.45, 1.85, "m")},
        optional={"rear_track": in_unit(1.45, 1.85, "m"), "front_roll_share": st.floats(0.45, 0.6)},
    )
    return st.tuples(weights, height, lengths).map(lambda parts: {**parts[0], **parts[1], **parts[2]})


def _tire() -> st.SearchStrategy[dict[str, Any]]:
    by_size = st.fixed_dictionaries({"size": st.sampled_from(TIRE_SIZES)})
    by_tape = st.fixed_dictionaries(
        {
            "free_diameter": in_unit(620, 880, "mm"),
            "section_width": in_unit(180, 300, "mm"),
            "rim_diameter": st.sampled_from(("15 in", "16 in", "17 in")),
        }
    )
    rest = st.fixed_dictionaries(
        {}, optional={"mass": in_unit(8, 30, "kg"), "vertical_stiffness": in_unit(220, 400, "N/mm")}
    )
    return st.tuples(st.one_of(by_size, by_tape), rest).map(lambda parts: {**parts[0], **parts[1]})


@st.composite
def _wheel_and_hub(draw: st.DrawFn) -> dict[str, Any]:
    """Rim, offset and hub face, with the load line from 40 mm inboard to 60 mm outboard."""
    rim_inches = draw(st.sampled_from((5.5, 6.0, 6.5, 7.0, 8.0, 9.0)))
    face = draw(st.floats(30, 55))
    spacer = draw(st.sampled_from((0.0, 0.0, 5.0, 25.0)))
    load_line = draw(st.floats(-40, 60))
    offset = face + spacer - load_line
    wheel: dict[str, Any] = {"rim_width": f"{rim_inches} in"}
    if draw(st.booleans()) and (rim_inches + 1) * 12.7 + offset > 0:
        wheel["backspacing"] = f"{(rim_inches + 1) * 12.7 + offset:.3f} mm"
    else:
        wheel["offset"] = f"{offset:.3f} mm"
    if spacer:
        wheel["spacer"] = f"{spacer} mm"
    if draw(st.booleans()):
        wheel["mass"] = draw(in_unit(5, 18, "kg"))
    hub = {"face_to_bearing_centre": f"{face:.3f} mm"}
    if draw(st.booleans()):
        hub["rotating_mass"] = draw(in_unit(4, 25, "kg"))
    return {"wheel": wheel, "hub": hub}


@st.composite
def _bearing(draw: st.DrawFn, rows_known: bool) -> dict[str, Any]:
    ring = draw(st.sampled_from(("inner", "outer")))
    if draw(st.booleans()):
        kind: dict[str, Any] = {"kind": "two-row ball", "turning_ring": ring}
        how = draw(st.sampled_from(("nothing", "listing", "internals")))
        if how == "listing":
            bore = draw(st.floats(30, 55))
            return kind | {
                "bore": f"{bore:.2f} mm",
                "outside_diameter": f"{bore + draw(st.floats(34, 45)):.2f} mm",
                "width": draw(in_unit(36, 50, "mm")),
            }
        if how == "internals":
            pitch, ball = draw(st.floats(50, 80)), draw(st.floats(9, 15))
            most = math.floor(math.pi * pitch / (1.15 * ball))
            return kind | {
                "pitch_diameter": f"{pitch:.3f} mm",
                "ball_diameter": f"{ball:.3f} mm",
                "balls_per_row": draw(st.integers(max(7, most - 4), most)),
                "contact_angle": draw(in_unit(25, 40, "deg")),
                "row_spacing": draw(in_unit(18, 34, "mm")),
                "inner_conformity": draw(st.sampled_from((0.515, 0.52, 0.53))),
                "outer_conformity": draw(st.sampled_from((0.52, 0.53))),
                "preload": draw(in_unit(-15, 15, "um")),
            }
        return kind
    pair: dict[str, Any] = {"kind": "tapered pair", "turning_ring": ring}
    if not rows_known and draw(st.booleans()):
        return pair
    pitch, roller = draw(st.floats(40, 80)), draw(st.floats(6, 11))
    most = math.floor(math.pi * pitch / (1.12 * roller))
    return pair | {
        "pitch_diameter": f"{pitch:.3f} mm",
        "roller_diameter": f"{roller:.3f} mm",
        "roller_length": draw(in_unit(9, 20, "mm")),
        "rollers_per_row": draw(st.integers(max(8, most - 5), most)),
        "contact_angle": draw(in_unit(10, 20, "deg")),
        "row_spacing": draw(in_unit(28, 60, "mm")),
    }


@st.composite
def _gear(draw: st.DrawFn, kind: Kind) -> list[dict[str, Any]]:
    """Gear light enough, and near enough to the middle, that no wheel comes near lifting."""
    number = draw(st.integers(0, 2))
    along = (-0.3, 0.3) if kind == "trailer" else (-0.8, 2.0)
    key = "behind_axle" if kind == "trailer" else "behind_front_axle"
    return [
        {
            "name": f"Crate {index + 1}",
            "mass": draw(in_unit(1, 90, "kg")),
            key: draw(in_unit(*along, "m")),
            "left_of_centre": draw(in_unit(-0.4, 0.4, "m")),
            "above_ground": draw(in_unit(0.4, 1.0, "m")),
        }
        for index in range(number)
    ]


@st.composite
def _every_case(draw: st.DrawFn, kind: Kind) -> list[dict[str, Any]]:
    """One case of each kind, mild enough for every vehicle drawn here: at most 0.25 g and 10 degrees."""
    side = st.sampled_from(("both", "left", "right"))
    cases: list[dict[str, Any]] = [
        {"name": "stop", "kind": "braking", "braking_g": draw(st.floats(0.05, 0.4))},
        {"name": "bend", "kind": "cornering", "lateral_g": draw(st.floats(0.02, 0.25)), "toward": draw(side)},
        {"name": "slope", "kind": "side_slope", "angle": draw(in_unit(1, 10, "deg")), "uphill": draw(side)},
        {"name": "step", "kind": "ledge", "height": draw(in_unit(10, 120, "mm"))},
    ]
    if kind == "vehicle":
        driven = draw(st.sampled_from(("front", "rear", "all")))
        supported = draw(st.sampled_from(("front_left+rear_right", "front_right+rear_left")))
        cases += [
            {"name": "start", "kind": "driving", "driving_g": draw(st.floats(0.02, 0.3)), "driven": driven},
            {"name": "diagonal", "kind": "two_wheel", "supported": supported},
        ]
    return cases


@st.composite
def _cases(draw: st.DrawFn, kind: Kind) -> list[dict[str, Any]]:
    cases = draw(_every_case(kind))
    return draw(st.lists(st.sampled_from(cases), unique_by=lambda case: case["name"]))


def _tables(kind: Kind) -> dict[str, st.SearchStrategy[Any]]:
    """Every table that a file may leave out."""
    tables: dict[str, st.SearchStrategy[Any]] = {
        "brake": st.fixed_dictionaries(
            {
                "effective_radius": in_unit(90, 150, "mm"),
                "caliper_position": in_unit(-180, 180, "deg"),
                "disc_to_bearing_centre": in_unit(-20, 40, "mm"),
            }
        ),
        "spindle": st.fixed_dictionaries({"diameter": in_unit(28, 55, "mm")}),
        "steering": st.fixed_dictionaries({"scrub_radius": in_unit(-20, 40, "mm")}),
        "sealing": st.fixed_dictionaries(
            {
                "hub_temperature": in_unit(30, 90, "degC"),
                "water_temperature": in_unit(1, 25, "degC"),
                "depth": in_unit(0, 1, "m"),
            }
        ),
        "lubrication": st.fixed_dictionaries(
            {"viscosity_ratio": st.floats(0.2, 4), "contamination": st.just("normal cleanliness")}
        ),
        "limits": st.fixed_dictionaries({"tire_rating": in_unit(600, 1200, "kg")}),
        "joint": st.fixed_dictionaries(
            {
                "studs": st.integers(4, 8),
                "thread": st.sampled_from(("M12x1.5", "M14x1.5", "1/2-20")),
                "property_class": st.just("10.9"),
                "tightening_torque": in_unit(90, 180, "N*m"),
                "stud_circle": in_unit(100, 170, "mm"),
            },
            optional={"nut_factor": st.floats(0.12, 0.25), "face_friction": st.floats(0.1, 0.2)},
        ),
    }
    if kind == "vehicle":
        tables["suspension"] = st.fixed_dictionaries(
            {},
            optional={
                "wheel_rate": in_unit(15, 50, "N/mm"),
                "bump_travel": in_unit(50, 130, "mm"),
                "unsprung_mass": in_unit(30, 60, "kg"),
            },
        )
    return tables


@st.composite
def setup_data(
    draw: st.DrawFn, *, kinds: tuple[Kind, ...] = ("vehicle", "trailer"), rows_known: bool = True
) -> dict[str, Any]:
    """The data of a random vehicle or trailer file, as a TOML reader would give it.

    With `rows_known` a tapered pair always has the geometry of its rows, so that row loads exist.
    """
    kind = draw(st.sampled_from(kinds))
    everything = draw(st.booleans())
    data: dict[str, Any] = {
        "name": "Random setup",
        "kind": kind,
        "chassis": draw(_chassis(kind, everything)),
        "tire": draw(_tire()),
        **draw(_wheel_and_hub()),
        "bearing": draw(_bearing(rows_known)),
        "gear": draw(_gear(kind)),
        "case": draw(_cases(kind)),
        **(draw(st.fixed_dictionaries({}, optional=_tables(kind))) if everything else {}),
    }
    if kind == "vehicle" and draw(st.booleans()):
        data["wheel_end"] = draw(st.sampled_from(("front", "rear", "both")))
    if draw(st.booleans()):
        data["duty"] = draw(st.sampled_from(("mostly highway", "hill roads", "worksite and trail")))
    return data


@st.composite
def complete_setups(draw: st.DrawFn) -> Setup:
    """Random valid setups with every table and a case of every kind, a drop among them: figures leave none out."""
    data = draw(setup_data())
    tables = _tables(data["kind"])
    data |= {name: draw(table) for name, table in tables.items() if name not in data}
    data["joint"] |= {"nut_factor": draw(st.floats(0.12, 0.25)), "face_friction": draw(st.floats(0.1, 0.2))}
    fall = {"name": "fall", "kind": "drop", "height": draw(in_unit(20, 400, "mm"))}
    data["case"] = [*draw(_every_case(data["kind"])), *([fall] if "suspension" in tables else [])]
    data.setdefault("duty", draw(st.sampled_from(("mostly highway", "hill roads", "worksite and trail"))))
    return built(data)


def built(data: dict[str, Any], name: str = "random.toml") -> Setup:
    """The setup that a file with this data describes."""
    return build_setup(Document(name, name.removesuffix(".toml"), data, {}))


def setups(*, kinds: tuple[Kind, ...] = ("vehicle", "trailer"), rows_known: bool = True) -> st.SearchStrategy[Setup]:
    """Random valid setups; every case of each can be stood in."""
    return setup_data(kinds=kinds, rows_known=rows_known).map(built)


def vehicles(*, rows_known: bool = True) -> st.SearchStrategy[Setup]:
    """Random valid two-axle vehicles."""
    return setups(kinds=("vehicle",), rows_known=rows_known)


def trailers(*, rows_known: bool = True) -> st.SearchStrategy[Setup]:
    """Random valid trailers."""
    return setups(kinds=("trailer",), rows_known=rows_known)


def as_toml(data: dict[str, Any]) -> str:
    """The text of a file with this data."""
    lines = [f"{key} = {_literal(value)}" for key, value in data.items() if not isinstance(value, dict | list)]
    for key, value in data.items():
        if isinstance(value, dict):
            lines += [f"[{key}]", *(f"{name} = {_literal(part)}" for name, part in value.items())]
        elif isinstance(value, list):
            for entry in value:
                lines += [f"[[{key}]]", *(f"{name} = {_literal(part)}" for name, part in entry.items())]
    text = "\n".join(lines) + "\n"
    assert tomllib.loads(text) is not None
    return text


def _literal(value: object) -> str:
    return f'"{value}"' if isinstance(value, str) else repr(value)

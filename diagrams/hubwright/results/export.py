"""Results as the one JSON object, the flat CSV rows and their dotted names that scripts rely on."""

import csv
import io
import math
from collections.abc import Iterator, Mapping
from typing import Any

from hubwright.errors import MissingDataError
from hubwright.mechanics.bearing_life import SURVIVORS, reliability_factor
from hubwright.results.bearings import missing_dimensions, rating_remark
from hubwright.results.draws import HIGH, LOW, Span
from hubwright.results.life import CaseLife, DutyLife
from hubwright.results.lubrication import MIDDLE
from hubwright.results.model import EXTRA_UNITS, BearingResult, CaseResult, Results, Rows, RowVectors, Vector, Weight
from hubwright.results.water import lubrication_result
from hubwright.setup.model import Input

Json = dict[str, Any]


def number(value: float | None, unit: str, *, low: float | None = None, high: float | None = None) -> Json | None:
    """Return a number with its SI unit, and its range where one is known; null for what is not known or infinite."""
    if value is None or not math.isfinite(value):
        return None
    entry: Json = {"value": float(value), "unit": unit}
    if low is not None and high is not None and math.isfinite(low) and math.isfinite(high):
        entry |= {"low": float(low), "high": float(high)}
    return entry


def as_json(results: Results) -> Json:
    """Return everything that was solved as one object of plain data, with the spans of what the ranges move."""
    geometry = results.wheel_geometry
    entry = {
        "setup": results.setup.name,
        "wheel": results.wheel,
        "inputs": inputs_as_json(results.inputs),
        "wheel_geometry": {
            name: number(getattr(geometry, name), "m")
            for name in ("free_diameter", "section_width", "loaded_radius", "load_line_offset", "backspacing")
        },
        "weight": weight_as_json(results.weight),
        "cases": _cases(results),
        "bearing": _bearing(results.bearing, rating_remark(results.setup.bearing)),
        **life_as_json(results),
        "lubrication": lubrication_as_json(results),
        "reliability": [
            {"survivors": number(share, "1"), "factor": number(float(reliability_factor(survivors=share)), "1")}
            for share in SURVIVORS
        ],
    }
    if results.spans:
        draws = next(iter(results.spans.values())).draws
        error = math.sqrt(LOW * (1 - LOW) / draws)  # of either percentile, from the number of draws
        entry["spans"] = {"low_percentile": LOW, "high_percentile": HIGH, "percentile_error": error, "draws": draws}
    return _with_spans(entry, results.spans)


def _with_spans(entry: Json, spans: Mapping[str, Span], prefix: str = "") -> Json:
    """Return the object with low and high at every number that has a span."""
    result: Json = {}
    for key, value in entry.items():
        name = f"{prefix}{key}"
        result[key] = value
        if isinstance(value, dict):
            if name in spans and "value" in value:
                found = spans[name]
                result[key] = number(value["value"], value["unit"], low=found.low, high=found.high)
            else:
                result[key] = _with_spans(value, spans, f"{name}.")
    return result


def inputs_as_json(inputs: Mapping[str, Input]) -> Json:
    """Return every value that acts, with its range and where it comes from."""
    return {
        key: {"value": item.value, "unit": item.unit, "low": item.low, "high": item.high, "origin": item.origin}
        for key, item in inputs.items()
    }


def weight_as_json(weight: Weight) -> Json:
    """Return the standing loads of axles (of a trailer: axle and coupling) and wheels."""
    axles = {
        f"{name}_load" if name == "axle" or name == "coupling" else f"{name}_axle_load": load
        for name, load in weight.axle_loads.items()
    }
    return {name: number(load, "N") for name, load in (axles | dict(weight.wheel_loads)).items()}


def _vector(vector: Vector, unit: str) -> Json:
    return {axis: number(getattr(vector, axis), unit) for axis in "xyz"}


def _row_vectors(rows: RowVectors | None) -> Json | None:
    if rows is None:
        return None
    return {
        row: {axis: number(getattr(vector, axis), "N") for axis in "xz"}
        for row, vector in (("outboard", rows.outboard), ("inboard", rows.inboard))
    }


def _rows(rows: Rows | None, unit: str) -> Json | None:
    return None if rows is None else {"outboard": number(rows.outboard, unit), "inboard": number(rows.inboard, unit)}


def _cases(results: Results) -> Json:
    """Return every case of the file in its order; one that lacks data has its kind and the reason alone."""
    solved = {name: _case(case) for name, case in results.cases.items()}
    return {
        case.name: solved.get(case.name) or {"kind": case.kind, "error": results.left_out[case.name]}
        for case in results.setup.cases
    }


def _case(case: CaseResult) -> Json:
    return {
        "kind": case.kind,
        "contact_force": _vector(case.contact_force, "N"),
        "bearing_force": _vector(case.bearing_force, "N"),
        "bearing_moment": _vector(case.bearing_moment, "N*m"),
        "row_load": _row_vectors(case.row_load),
        "row_radial_load": _rows(case.row_radial_load, "N"),
        "closure": {"force": number(case.closure.force, "N"), "moment": number(case.closure.moment, "N*m")},
        **{
            name: value if isinstance(value, bool) else number(value, EXTRA_UNITS[name])
            for name, value in case.extras.items()
        },
    }


def _bearing(bearing: BearingResult, remark: str) -> Json:
    return {
        **({"remark": remark} if remark else {}),
        "dynamic_rating": number(bearing.dynamic_rating, "N"),
        "static_rating": number(bearing.static_rating, "N"),
        "effective_spread": number(bearing.effective_spread, "m"),
    }


def life_as_json(results: Results) -> Json:
    """Return the lives of every case and of the duty; where the file says too little of the bearing, what it lacks."""
    life = results.life
    if life is None:
        error = MissingDataError(result="the bearing's life", missing=missing_dimensions(results.setup.bearing))
        return {"life": None, "life_error": str(error)}
    return {"life": {**{name: _case_life(case) for name, case in life.cases.items()}, "duty": _duty(life.duty)}}


def lubrication_as_json(results: Results) -> Json | None:
    """Return dirt and film as the file says them, with the band of its class; null where it leaves a part unsaid."""
    found = lubrication_result(results)
    if found.contamination_factor is None or found.fatigue_load_limit is None or found.missing:
        return None
    lubrication = results.setup.lubrication
    low, high = found.contamination_factor
    assert lubrication is not None  # nothing is missing
    return {
        "contamination": lubrication.contamination,
        "contamination_factor": number(low + MIDDLE * (high - low), "1", low=low, high=high),
        "viscosity_ratio": number(lubrication.viscosity_ratio, "1"),
        "row_fatigue_load_limit": number(found.fatigue_load_limit, "N"),
    }


def _case_life(case: CaseLife) -> Json:
    # a drop is no fatigue cycle
    lives = {} if case.detailed is None else {"quick": number(case.quick, "1"), "detailed": number(case.detailed, "1")}
    if case.life_factor is not None:
        lives |= {"life_factor": _rows(case.life_factor, "1"), "modified": number(case.modified, "1")}
    return {
        **lives,
        "valid": case.valid,
        "largest_ball_load": _rows(case.largest_element_load, "N"),
        "peak_contact_pressure": _rows(case.peak_contact_pressure, "Pa"),
        "static_safety": _rows(case.static_safety, "1"),
    }


def _duty(duty: DutyLife | None) -> Json | None:
    if duty is None:
        return None
    lives = {"revolutions": number(duty.revolutions, "1"), "distance": number(duty.distance, "m")}
    if duty.modified_revolutions is not None:
        lives |= {
            "modified_revolutions": number(duty.modified_revolutions, "1"),
            "modified_distance": number(duty.modified_distance, "m"),
        }
    return {**lives, "valid": duty.valid}


def flat_rows(entry: Json, prefix: str = "") -> Iterator[tuple[str, Any, str]]:
    """Yield dotted name, value and unit of everything in such an object, in its order."""
    for key, value in entry.items():
        name = f"{prefix}.{key}" if prefix else key
        if isinstance(value, dict) and "value" in value and "unit" in value:
            yield name, value["value"], value["unit"]
            yield from (
                (f"{name}.{end}", value[end], value["unit"]) for end in ("low", "high") if value.get(end) is not None
            )
            # a beam's values have a place, and a wall's force a moment
            yield from flat_rows({part: item for part, item in value.items() if isinstance(item, dict)}, name)
        elif isinstance(value, list):
            yield from flat_rows({str(number): item for number, item in enumerate(value, start=1)}, name)
        elif isinstance(value, dict):
            yield from flat_rows(value, name)
        else:
            yield name, value, ""


def as_csv(entry: Json) -> str:
    """Return such an object as comma-separated rows of name, value and unit."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(("name", "value", "unit"))
    writer.writerows(("" if cell is None else cell for cell in row) for row in flat_rows(entry))
    return out.getvalue()

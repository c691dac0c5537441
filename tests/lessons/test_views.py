"""What a lesson finds behind a name: the values of `solve`, with units, ranges and variants."""

from pathlib import Path

import pytest
from lesson_sites import TRAILER, WAGON, rendered

from hubwright.lessons.named_values import View, names_of, value_at
from hubwright.lessons.views import setup_view
from hubwright.quantities import Quantity
from hubwright.results import solve
from hubwright.results.export import as_json
from hubwright.setup import load_text
from hubwright.setup.model import Setup


def view_of(text: str) -> tuple[View, dict[str, object]]:
    setup = load_text(text, "test.toml")
    assert isinstance(setup, Setup)
    results = solve(setup)
    return setup_view(results, "stock"), as_json(results)


def numbers(entry: object, path: str = "") -> list[tuple[str, float, str]]:
    """Every number of the JSON contract, by its dotted path."""
    if isinstance(entry, dict) and {"value", "unit"} <= set(entry):
        return [(path, entry["value"], entry["unit"])]
    if isinstance(entry, dict):
        return [found for key, value in entry.items() for found in numbers(value, f"{path}.{key}" if path else key)]
    return []


@pytest.mark.parametrize("text", [WAGON, TRAILER], ids=["vehicle", "trailer"])
def test_every_number_of_solve_is_a_name_in_a_lesson_with_the_same_value_and_unit(text: str) -> None:
    view, entry = view_of(text)
    places = {"wheel_geometry": view, "weight": view.weight, "bearing": view.bearing}
    checked = 0
    for part, inner in places.items():
        for path, value, unit in numbers(entry[part]):
            found = value_at(inner, path)  # type: ignore[arg-type]
            assert isinstance(found, Quantity), path
            assert (found.value, found.unit) == (value, unit)
            checked += 1
    for name, case in entry["cases"].items():  # type: ignore[attr-defined]
        for path, value, unit in numbers(case):
            found = value_at(view, f"{name.replace(' ', '_')}.{path}")
            assert isinstance(found, Quantity), path
            assert (found.value, found.unit) == (value, unit)
            checked += 1
    assert checked >= 25


def test_inputs_carry_their_range_and_words_stay_words() -> None:
    view, _ = view_of(WAGON)
    face = value_at(view, "hub.face_to_bearing_centre")
    assert isinstance(face, Quantity)
    assert (face.value, face.low, face.high) == pytest.approx((0.042, 0.038, 0.046))
    assert value_at(view, "tire.size") == "245/75R16"
    assert value_at(view, "bearing.balls_per_row") == 13
    assert value_at(view, "bearing.kind") == "two-row ball"
    assert value_at(view, "wheel_words") == "left front"


def test_what_is_estimated_is_listed_with_its_range() -> None:
    view, _ = view_of(TRAILER)
    found = {str(value_at(one, "key")): one for one in view.estimated}  # type: ignore[union-attr, arg-type]
    face = found["hub.face_to_bearing_centre"]
    assert isinstance(value_at(face, "low"), Quantity)
    assert value_at(face, "origin") == "estimated"
    assert "tire.size" not in found


def test_a_table_that_the_file_does_not_have_is_none_and_can_be_asked_for() -> None:
    view, _ = view_of(WAGON)
    assert value_at(view, "brake") is None
    has = view.has
    assert callable(has)
    assert not has("brake")
    assert not has("steering.scrub_radius")
    assert has("spindle.diameter")
    assert not has("spindel")


def test_the_beam_of_the_wheel_end_is_that_of_statics() -> None:
    view, _ = view_of(WAGON)
    beam = value_at(view, "standing.beam")
    assert isinstance(beam, View)
    load, moment = value_at(view, "standing.bearing_force.z"), value_at(view, "standing.bearing_moment.x")
    spread = value_at(view, "bearing.effective_spread")
    assert isinstance(load, Quantity)
    assert isinstance(moment, Quantity)
    assert isinstance(spread, Quantity)
    a = moment.value / load.value
    assert value_at(beam, "overhung") is (abs(a) > spread.value / 2)
    peak = value_at(beam, "maximum_moment")
    assert isinstance(peak, Quantity)
    # a load between two supports: F·b·c/ℓ at the load
    assert abs(peak.value) == pytest.approx(load.value * (spread.value / 2 - a) * (spread.value / 2 + a) / spread.value)
    deflection = value_at(beam, "maximum_deflection")
    assert isinstance(deflection, Quantity)
    assert deflection.kind == "deflection"


def test_names_are_those_of_the_thing() -> None:
    view, _ = view_of(TRAILER)
    assert {"axle_load", "coupling_load", "left", "right", "this_wheel", "this_axle"} <= set(names_of(view.weight))  # type: ignore[arg-type]
    assert "standing" in names_of(view)


def test_a_variant_changes_what_follows_from_its_value_and_nothing_else(tmp_path: Path) -> None:
    state, text = rendered(
        tmp_path,
        """\
        {% set t = given("25 mm") %}{% set wide = vary(stock, {"wheel.spacer": t}) %}
        {{ (wide.load_line_offset - stock.load_line_offset - t) | abs < 0.001 * t }}
        {{ wide.weight.this_wheel == stock.weight.this_wheel }}
        {{ vary(stock, {"wheel.spacer": stock.wheel.spacer}).load_line_offset == stock.load_line_offset }}
        """,
    )
    assert [str(problem) for problem in state.problems] == []
    assert text.split() == ["True", "True", "True"]


def test_every_setup_of_the_site_goes_by_its_stem(tmp_path: Path) -> None:
    state, text = rendered(
        tmp_path, "{{ wagon.name }}, {{ kit_trailer.name }}, {{ stock.name }}, {{ setups | length }}"
    )
    assert not state.problems
    assert text == "Test wagon, Test trailer, Test wagon, 2"

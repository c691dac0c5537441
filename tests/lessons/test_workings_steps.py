"""The steps before a working: each number put in leads to the working that explains it, told once on a page."""

import re
from pathlib import Path
from typing import get_args

import pytest
from hypothesis import HealthCheck, given, settings
from lesson_sites import rendered
from test_workings import FILES, solved, workings

from hubwright.lessons.reference_pages import formulas
from hubwright.lessons.rough_views import landing, steering
from hubwright.lessons.views import setup_view
from hubwright.lessons.workings import CASE_WORKINGS, SETUP_WORKINGS, working_of
from hubwright.lessons.workings.catalogue import explained
from hubwright.lessons.workings.left_out import left_out
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.lessons.workings.shown import Shown
from hubwright.quantities import Quantity, System
from hubwright.results import solve
from hubwright.setup import vary
from hubwright.setup.model import Setup
from strategies import setups
from wagon_text import WAGON as WHOLE_WAGON


@settings(max_examples=10, deadline=None, suppress_health_check=list(HealthCheck))
@given(setups())
def test_a_number_put_in_is_that_of_the_working_that_explains_it(setup: Setup) -> None:
    for path, made, _ in workings(solve(setup)):
        for name in made.term_names():
            symbol = made.symbols[name]
            before = explained(made, symbol.path) if symbol.path else None
            if before is not None:
                assert before.result.value.value == pytest.approx(symbol.value.value, rel=1e-9, abs=1e-9), (path, name)


def test_the_bearing_force_leads_back_to_the_scales() -> None:
    made: Working | None = working_of(setup_view(solved(FILES["wagon"]), "stock"), "standing.row_load.outboard.z")
    way = ["bearing_force.z", "contact_force.z", "weight.this_wheel", "weight.this_axle"]
    for step in way:
        assert made is not None
        paths = {made.symbols[name].path for name in made.term_names()}
        assert step in paths
        made = explained(made, step)
    assert made is not None
    assert "scales" in made.source.lower()


def test_a_page_tells_each_working_once_and_links_to_it_after_that(tmp_path: Path) -> None:
    state, _ = rendered(
        tmp_path,
        '{{ working(stock, "standing.bearing_force.z") }}\n\n{{ working(stock, "standing.bearing_moment.x") }}\n\n'
        '{{ working(stock, "load_line_offset") }}\n\n'
        '{{ working(vary(stock, {"wheel.spacer": "5 mm"}), "load_line_offset") }}',
    )
    assert not state.problems
    html = "".join(state.late.values())
    ids = re.findall(r'id="(working-[^"]+)"', html)
    assert len(ids) == len(set(ids))
    assert ids[0] == "working-standing-bearing-force-z"
    assert html.count('id="working-standing-contact-force-z"') == 1
    assert '<p class="told"><a href="#working-standing-contact-force-z">' in html
    assert {"working-load-line-offset", "working-load-line-offset-2"} <= set(ids)
    assert set(re.findall(r'href="#([^"]+)"', html)) <= set(ids)


def test_every_working_names_a_formula_that_has_a_page() -> None:
    named = set()
    for text in (*FILES.values(), WHOLE_WAGON):
        named |= {made.function for _, made, _ in workings(solved(text)) if made.function}
    assert len(named) > 15
    assert named <= set(formulas())


def test_every_working_says_what_it_leaves_out() -> None:
    kinds = ("standing", "braking", "driving", "cornering", "side_slope", "two_wheel", "ledge", "drop")
    for path in SETUP_WORKINGS:
        assert left_out(path, None), path
    for path in CASE_WORKINGS:
        assert all(left_out(path, kind).endswith(".") for kind in kinds), path


WANTED = (
    "load_line_offset loaded_radius free_diameter weight.this_wheel weight.this_axle weight.equal_share "
    "bearing.effective_spread bearing.dynamic_rating bearing.static_rating life.row_rating "
    "footing.tips_at footing.static_stability_figure fastening.clamp fastening.capacity ford.suction "
    "ford.depth_pressure"
)
WANTED_OF_A_CASE = (
    "contact_force.x contact_force.y contact_force.z bearing_force.z bearing_moment.x bearing_moment.y "
    "bearing_moment.z "
    "row_load.outboard.z row_load.inboard.z row_radial_load.outboard beam.maximum_moment beam.maximum_shear "
    "beam.maximum_deflection life.equivalent_load.outboard life.quick life.detailed life.dent_margin "
    "ledge.push ledge.needed_friction drop.energy_bound drop.impact_factor fastening.demand fastening.margin"
)


def test_every_result_that_lessons_rest_on_has_its_working() -> None:
    assert set(WANTED.split()) <= set(SETUP_WORKINGS)
    assert set(WANTED_OF_A_CASE.split()) <= set(CASE_WORKINGS)


def test_the_scrub_radius_moves_with_the_load_line() -> None:
    base = solved(WHOLE_WAGON + '[steering]\nscrub_radius = "12 mm"\n')
    spaced = solve(vary(base.setup, {"wheel.spacer": "25 mm"}))
    view = steering(setup_view(spaced, "variant"), setup_view(base, "stock"))
    made = working_of(view, "scrub_radius")
    assert made.value_of(made.lines[-1]) == pytest.approx(0.012 + 0.025 - base.setup.wheel.spacer)
    grown = working_of(view, "track")
    assert grown.value_of(grown.lines[-1]) == pytest.approx(1.60 + 2 * (0.025 - base.setup.wheel.spacer))


def test_a_landing_has_its_workings() -> None:
    stock = setup_view(solved(FILES["wagon"]), "stock")
    fall = landing(stock, Quantity(0.3, "m"), Quantity(260e3, "N/m"))
    made = working_of(fall, "bound")
    weight = solved(FILES["wagon"]).weight.wheel_loads["front_left"]
    # the tire's energy at its deepest is the fall's and its own: k x²/2 = W (s + x)
    deepest = made.value_of(made.lines[-1]) / 260e3
    assert 260e3 * deepest**2 / 2 == pytest.approx(weight * (0.3 + deepest))


def difference(a: float, b: float) -> Working:
    symbols = {name: Symbol(name, name, Quantity(value, "m")) for name, value in (("c", a - b), ("a", a), ("b", b))}
    return Working("difference", (Line("c", "a - b"),), symbols, "arithmetic")


@pytest.mark.parametrize(("a", "b"), [(1.2345678, 1.2345), (5.4999951, 5.4), (0.30000449, 0.1)])
@pytest.mark.parametrize("system", get_args(System))
def test_a_shown_sum_gives_its_shown_result(a: float, b: float, system: System) -> None:
    shown = Shown(difference(a, b), system)
    # what a reader's calculator makes of the two numbers, rounded like the result
    reader = float(shown.number("a")) - float(shown.number("b"))
    assert reader == pytest.approx(float(shown.number("c")), rel=0.5e-3)
    assert f"{reader:.3e}" == f"{float(shown.number('c')):.3e}"


def test_numbers_get_more_digits_only_where_the_sum_needs_them() -> None:
    assert Shown(difference(5.12345678, 1.0), "si").number("a") == "5.1235"
    assert len(Shown(difference(1.2345678, 1.2345), "si").number("a")) > len("1.2346")


def test_what_cancels_is_nothing() -> None:
    shown = Shown(difference(0.3, 0.1 + 0.2), "si")
    assert shown.number("c") == "0"
    assert shown.number("a") == "0.3"


def test_a_line_with_a_wrong_conversion_does_not_hold() -> None:
    stock = setup_view(solved(FILES["wagon"]), "stock")
    made = working_of(stock, "standing.bearing_moment.x")
    assert Shown(made, "us").holds()
    line = made.lines[-1]
    broken = Working(made.what, (Line(line.name, line.expression),), made.symbols, made.source)
    assert not Shown(broken, "us").holds()


def test_the_quick_life_is_the_cube_rule_by_hand() -> None:
    results = solved(FILES["wagon"])
    made = working_of(setup_view(results, "stock"), "standing.life.quick")
    assert results.life is not None
    assert results.bearing.dynamic_rating is not None
    rating = results.bearing.dynamic_rating / 2**0.7
    loads = results.life.cases["standing"].equivalent_load
    rows = [(rating / load) ** 3 for load in (loads.outboard, loads.inboard)]
    both = sum(row ** (-10 / 9) for row in rows) ** (-9 / 10)
    assert made.value_of(made.lines[-1]) == pytest.approx(both, rel=1e-9)


def test_a_life_is_not_told_in_the_heading(tmp_path: Path) -> None:
    state, _ = rendered(tmp_path, '{{ working(stock, "standing.life.detailed") }}')
    html = "".join(state.late.values())
    head = re.sub("<[^>]+>", "", html.split("</summary>")[0].split("<summary>")[1])
    assert not re.search(r"\d", head)
    assert "no digit more" in html

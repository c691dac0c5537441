"""The numbers that a working puts in give the result that it shows, in both unit systems."""

import math
import re
from pathlib import Path
from typing import Literal, get_args

import pytest
from hypothesis import HealthCheck, given, settings
from lesson_sites import TRAILER, WAGON, problems, rendered

from hubwright.errors import MissingDataError
from hubwright.lessons.course import noise, play, play_from_tread
from hubwright.lessons.named_values import value_at
from hubwright.lessons.views import setup_view
from hubwright.lessons.workings import CASE_WORKINGS, SETUP_WORKINGS, working_of
from hubwright.lessons.workings import expression as written
from hubwright.lessons.workings.model import Working
from hubwright.lessons.workings.sentence import CAUTION
from hubwright.lessons.workings.shown import Shown
from hubwright.lessons.workings.symptoms import NOISE_WORKINGS
from hubwright.quantities import Quantity, System
from hubwright.results import Results, solve
from hubwright.setup import load_text
from hubwright.setup.model import Setup
from strategies import setups

FILES = {"wagon": WAGON, "trailer": TRAILER}


def solved(text: str, wheel: Literal["front_left", "front_right"] | None = None) -> Results:
    setup = load_text(text, "test.toml")
    assert isinstance(setup, Setup)
    return solve(setup, wheel)


def workings(results: Results) -> list[tuple[str, Working, Quantity]]:
    """Every working that this setup has, with the path and the result that it explains."""
    stock = setup_view(results, "stock")
    found = []
    for view, paths in [(stock, SETUP_WORKINGS), *((case, CASE_WORKINGS) for case in stock.cases)]:  # type: ignore[union-attr]
        for path in paths:
            result = value_at(view, path)
            if isinstance(result, Quantity):
                found.append((f"{view!r}.{path}", working_of(view, path), result))
    return found


def agrees(path: str, made: Working, result: Quantity) -> None:
    """Recompute every line from the rounded numbers that the page shows, as a reader with a calculator would."""
    assert made.result.value.value == pytest.approx(result.value, rel=1e-9, abs=1e-9), path
    for system in get_args(System):
        shown = Shown(made, system)
        for line in made.lines:
            told = shown.number(line.name)
            assert shown.reached(line) == pytest.approx(float(told), abs=half_a_unit(told, made)), (path, system)


def half_a_unit(told: str, made: Working) -> float:
    """Half a unit of the last digit of a number that may have lost zeros at its end."""
    if float(told) == 0:
        return 1e-3
    digits = max(len(told.replace("-", "").replace(".", "").strip("0")), made.digits)
    return 0.5000001 * 10.0 ** (math.floor(math.log10(abs(float(told)))) + 1 - digits)


@pytest.mark.parametrize("name", FILES)
def test_the_numbers_put_in_give_every_result(name: str) -> None:
    made = workings(solved(FILES[name]))
    assert len(made) > 20
    for path, working, result in made:
        agrees(path, working, result)


def test_workings_hold_at_a_right_wheel() -> None:
    for path, working, result in workings(solved(WAGON, "front_right")):
        agrees(path, working, result)


@settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))
@given(setups())
def test_every_working_explains_its_result_for_any_setup(setup: Setup) -> None:
    for path, working, result in workings(solve(setup)):
        agrees(path, working, result)


@settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))
@given(setups())
def test_workings_of_play_and_noise_explain_their_results_for_any_setup(setup: Setup) -> None:
    stock = setup_view(solve(setup), "stock")
    rocked, felt = play(stock, Quantity(1e-4, "m")), play_from_tread(stock, Quantity(2e-3, "m"))
    heard = noise(stock, Quantity(20.0, "m/s"))
    assert rocked is not None
    assert felt is not None
    for view, paths in ((rocked, ("tread_travel",)), (felt, ("end_play",)), (heard, tuple(NOISE_WORKINGS))):
        for path in paths:
            result = value_at(view, path)
            assert isinstance(result, Quantity)
            agrees(path, working_of(view, path), result)


def test_the_distance_of_a_duty_is_told_to_one_digit_when_opened_and_with_its_span(tmp_path: Path) -> None:
    state, _ = rendered(tmp_path, '{{ working(vary(stock, {"duty": "hill roads"}), "life.duty.distance") }}')
    (html,) = state.late.values()
    summary, _, opened = html.partition("</summary>")
    assert not re.search(r"\d", re.sub("<[^>]+>", "", summary))
    assert re.search(r"About <[^>]+><[^>]+>[1-9][0,]+\skm", opened)
    assert "The ranges of the inputs spread it from" in opened
    assert CAUTION in opened


def test_the_tipping_moment_is_that_of_paper_and_pencil() -> None:
    stock = setup_view(solved(WAGON.split("[[gear]]")[0]), "stock")
    made = working_of(stock, "standing.bearing_moment.x")
    road = 1120 * 9.80665 / 2
    assert made.value_of(made.lines[-1]) == pytest.approx(0.012 * road - 0.012 * 26 * 9.80665 - 0.042 * 14 * 9.80665)
    assert made.lines[-1].expression == "y_w*contact_z - y_w*weight_wheel_z - y_f*weight_hub_z"


def test_a_working_on_a_page_has_formula_numbers_and_result_in_both_systems(tmp_path: Path) -> None:
    state, _ = rendered(tmp_path, '{{ working(stock, "load_line_offset") }}')
    (html,) = state.late.values()
    assert html.startswith('<details class="worked" id="working-load-line-offset"')
    for words in ("Formula", "With", "Put in", "Comes to", "From"):
        assert f"<dt>{words}</dt>" in html
    assert '<div class="si"><div class="eq run"><math' in html
    assert '<div class="us"><div class="eq run"><math' in html
    assert "wheel_geometry.load_line_offset" in html


def test_a_working_that_disagrees_with_the_result_is_a_problem(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from hubwright.lessons.workings import wheel

    def wrong(results: Results) -> Working:
        made = wheel.load_line_offset(results)
        return Working(made.what, (type(made.lines[0])("y_L", "y_f - t - e - e"),), made.symbols, made.source)

    monkeypatch.setitem(SETUP_WORKINGS, "load_line_offset", wrong)  # type: ignore[arg-type]
    (problem,) = problems(tmp_path, '\n{{ working(stock, "load_line_offset") }}')
    assert problem == "content/page.md:2: the working of 'load_line_offset' comes to -0.018, the result is 0.012"


def test_a_bearing_that_says_too_little_names_what_is_missing() -> None:
    text = TRAILER.replace('row_spacing = "46 mm"\n', "")
    with pytest.raises(MissingDataError, match=r"the effective spread needs 'bearing.row_spacing'"):
        working_of(setup_view(solved(text), "stock"), "bearing.effective_spread")


@pytest.mark.parametrize(
    ("expression", "latex"),
    [
        ("a + b - c", "A + B - C"),
        ("a - (b + c)", r"A - \left(B + C\right)"),
        ("(a + b)*c", r"\left(A + B\right) \, C"),
        ("a/b + c**2", r"\frac{A}{B} + C^{2}"),
        ("(a/b)**2", r"\left(\frac{A}{B}\right)^{2}"),
        ("s*tan(a)", r"S \, \tan A"),
        ("sqrt(a**2 + b**2)", r"\sqrt{A^{2} + B^{2}}"),
    ],
)
def test_expressions_as_latex(expression: str, latex: str) -> None:
    assert written.latex(expression, {name: name.upper() for name in "abcs"}) == latex


def test_a_negative_number_put_in_gets_brackets() -> None:
    assert (
        written.latex("a - b*c", {"a": "1", "b": "-2", "c": "-3"}, times=r"\times")
        == r"1 - \left({-2}\right) \times \left({-3}\right)"
    )


def test_a_minus_before_the_first_factor_needs_no_brackets() -> None:
    assert written.latex("-a*b + c", {"a": "n", "b": "F", "c": "C"}) == r"{-n} \, F + C"
    assert written.latex("a*b", {"a": "-2", "b": "-3"}, times=r"\times") == r"{-2} \times \left({-3}\right)"

"""Any valid setup gives figures to which a ruler and an eye object nothing; `benchmarks/sweep.py` tries thousands."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, assume, given, reject, settings
from hypothesis import strategies as st

from drawing.example_scene import every_item
from drawing.swept import few_draws, figures_of, picture, scene_or_refusal
from drawing.written_checks import failures_of
from hubwright.drawing import draw, svg_for_page
from hubwright.results import Results, solve
from hubwright.results.beams import BeamResults, solve_beam
from hubwright.results.solve import described_wheels
from hubwright.scenes import vocabulary as v
from hubwright.scenes.catalogue import FIGURES
from hubwright.setup import Beam, Setup
from scenes.test_beam_alone import beams
from strategies import complete_setups, setups

# No shrinking: a failure names its picture, and drawing a few hundred smaller ones would take minutes.
FEW = settings(
    max_examples=6,
    deadline=None,
    derandomize=True,
    phases=(Phase.explicit, Phase.generate),
    suppress_health_check=(HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much),
)
OF_SETUPS = sorted(name for name, figure in FIGURES.items() if figure.takes != "beam")
OF_THE_WHOLE = ("scrub radius",)  # what only a file with every table gives
OF_BEAMS = sorted(name for name, figure in FIGURES.items() if figure.takes == "beam")


@pytest.fixture(autouse=True, scope="module")
def quick_bands() -> Iterator[None]:
    """Bands from few draws of the inputs."""
    with few_draws():
        yield


@pytest.mark.parametrize("name", OF_SETUPS)
@given(choice=st.data())
@FEW
def test_figures_of_any_setup_are_clear_and_to_scale(name: str, choice: Any) -> None:
    setup: Setup = choice.draw(complete_setups() if name in OF_THE_WHOLE else complete_setups() | setups())
    wheel = choice.draw(st.sampled_from(described_wheels(setup)))
    other = None
    if FIGURES[name].takes == "two results":
        second: Setup = choice.draw(setups())
        other = solve(second, wheel) if wheel in described_wheels(second) else None
    check(name, solve(setup, wheel), choice, other)


@pytest.mark.parametrize("name", OF_BEAMS)
@given(beam=beams(), choice=st.data())
@FEW
def test_figures_of_any_beam_are_clear_and_to_scale(name: str, beam: Beam, choice: Any) -> None:
    check(name, solve_beam(beam), choice)


def check(name: str, solved: Results | BeamResults, choice: Any, other: Results | None = None) -> None:
    """Draw a figure in one case, system and both forms; a failure says which and where its picture is."""
    drawn = list(figures_of(solved, choice.draw(st.integers(0, 11)), other, [name]))
    assume(drawn)
    ((_, case, make),) = drawn
    units: v.Units = choice.draw(st.sampled_from(("si", "us")))
    scene = scene_or_refusal(name, make, units)
    if scene is None:
        reject()
    for drawing in (draw(scene), *draw(scene, form="narrow")):
        failures = failures_of(svg_for_page(drawing, prefix="f", units_class=units))
        where = f"suite, {name}, {case}, {units}, {f'narrow {drawing.view}' if drawing.view else 'wide'}"
        assert not failures, f"{where}: {failures}; see {picture(drawing, where, failures[0])}"


def kinds(scene: v.Scene) -> set[str]:
    return {failure.kind for failure in failures_of(written(scene))}


def written(scene: v.Scene) -> str:
    return svg_for_page(draw(scene), prefix="f", units_class="si")


def with_words(*words: v.Words) -> v.Scene:
    scene = every_item()
    return replace(scene, items=(*scene.items, *words))


def test_the_checks_see_words_on_words_and_beyond_the_frame() -> None:
    first = v.Words("first", "", at_sheet=(40.0, 35.0), lines=("one stands here",))
    assert "words overlap" in kinds(with_words(first, replace(first, name="second", at_sheet=(42.0, 36.0))))
    assert "words leave the frame" in kinds(with_words(replace(first, at_sheet=(-3.0, 35.0))))
    assert "words leave the frame" in kinds(with_words(replace(first, at_sheet=(300.0, 190.0))))
    over = with_words(replace(first, at_sheet=(96.0, 112.0), lines=("over the arrow",)))
    assert "words on an arrow" in {failure.kind for failure in failures_of(written(over)) if "first" in failure.where}


def test_the_checks_see_lengths_that_are_not_to_scale() -> None:
    svg = written(every_item())
    for key, kind in (("newtons", "arrow not to scale"), ("mm", "dimension not to scale")):
        start = svg.index(f' data-{key}="') + len(f' data-{key}="')
        value = float(svg[start : svg.index('"', start)])
        told = svg[:start] + f"{value * 1.01:.9g}" + svg[svg.index('"', start) :]
        assert kind in {failure.kind for failure in failures_of(told)}


def test_the_checks_see_bars_and_arrows_that_do_not_say_what_they_are() -> None:
    svg = written(every_item())
    start = svg.index(' data-value="') + len(' data-value="')
    value = float(svg[start : svg.index('"', start)])
    for told in (1.02 * value, -value):
        wrong = svg[:start] + f"{told:.9g}" + svg[svg.index('"', start) :]
        assert "bar not to scale" in {failure.kind for failure in failures_of(wrong)}
    start = svg.index(' data-x1="', svg.index(' data-newtons="'))
    assert "arrow without ends" in {failure.kind for failure in failures_of(svg[:start] + svg[svg.index(">", start) :])}


def test_the_checks_see_leaders_that_cross() -> None:
    leaders = "".join(
        f'<g data-name="label-{name}"><path class="s-soft" d="{path}"/></g>'
        for name, path in (("a", "M100,100L300,300"), ("b", "M100,300L300,100"))
    )
    view = f'<g data-name="step-1"><g data-name="view-a">{leaders}</g></g>'
    (failure,) = failures_of(f'<svg viewBox="0 0 400 400" data-mm-per-unit="0.1">{view}</svg>')
    assert failure.kind == "leaders cross"

"""Duty and damage: bars as long as their shares, both adding up to the whole, damage by share over life."""

import re
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hubwright.drawing import draw
from hubwright.errors import MissingDataError
from hubwright.results import described_wheels, solve
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.duty_damage import duty_damage
from hubwright.scenes.vocabulary import Bar, Line, Note, Scene
from hubwright.setup import load
from hubwright.setup.model import Setup
from scene_checks import SLOW, check_scene, check_written_scales
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
VEHICLES = ("hill-wagon", "supply-van", "kit-trailer")


def shares(scene: Scene, what: str) -> list[float]:
    return [bar.end for bar in scene.items if isinstance(bar, Bar) and bar.name.startswith(f"bar-{what}-")]


@pytest.mark.parametrize("vehicle", VEHICLES)
@pytest.mark.parametrize("units", ["si", "us"])
def test_damage_is_share_over_life(vehicle: str, units) -> None:
    setup = load(CONTENT / f"vehicles/{vehicle}.toml")
    for wheel in described_wheels(setup):
        results = solve(setup, wheel)
        scene = duty_damage(results, units=units)
        check_scene(scene)
        assert check_written_scales(scene) == 2 * len(setup.duty) + 2  # and the key
        life = results.life
        assert life is not None
        rates = [part.share / (life.cases[part.case].detailed or 0.0) for part in setup.duty]
        assert shares(scene, "distance") == pytest.approx([part.share for part in setup.duty])
        assert shares(scene, "damage") == pytest.approx([rate / sum(rates) for rate in rates])
        assert sum(shares(scene, "damage")) == pytest.approx(1.0)


@given(chosen=setups(), data=st.data())
@SLOW
def test_every_valid_setup_with_a_duty_has_its_figure(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen, data.draw(st.sampled_from(described_wheels(chosen))))
    if FIGURES["duty and damage"].cases(results):
        check_scene(duty_damage(results))
    elif not chosen.duty and results.life is not None:
        with pytest.raises(MissingDataError, match="'duty'"):
            duty_damage(results)


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_shares_add_up_as_they_are_printed_and_have_like_digits(vehicle: str) -> None:
    scene = duty_damage(solve(load(CONTENT / f"vehicles/{vehicle}.toml")))
    told = [bar.label.lines[-1] for bar in scene.items if isinstance(bar, Bar) and bar.label is not None]
    columns = list(zip(*([Decimal(number) for number in re.findall(r"[\d.]+", line)] for line in told), strict=True))
    assert [sum(column) for column in columns] == [100, 100]
    assert len({number.as_tuple().exponent for column in columns for number in column}) == 1


def test_both_forms_show_which_bar_is_which() -> None:
    scene = duty_damage(solve(load(CONTENT / "vehicles/hill-wagon.toml")))
    assert [bar.is_open for bar in scene.items if isinstance(bar, Bar) and bar.view == "key"] == [True, False]
    (drawing,) = draw(scene, form="narrow")
    assert any("open bars: share of the distance" in text.words for text in drawing.texts)
    assert not any(isinstance(item, Line) for item in drawing.scene.items)  # a grid would run through words


@pytest.mark.parametrize("vehicle", VEHICLES)
def test_what_covers_a_distance_rolls_straight_and_each_number_stands_once(vehicle: str) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    scene = duty_damage(results)
    labels = [bar.label.lines for bar in scene.items if isinstance(bar, Bar) and bar.label is not None]
    assert len(labels) == len(results.setup.duty)
    for part, lines in zip(results.setup.duty, labels, strict=True):
        stands = results.cases[part.case].kind == "standing" and part.case != "straight running"
        assert lines[0] == (f"straight, as {part.case}" if stands else part.case)
        assert "of the distance" in lines[-1]
    assert not any(isinstance(item, Note) for item in scene.items)
    assert " way" not in f"{scene.title} {scene.caption} {scene.description}"

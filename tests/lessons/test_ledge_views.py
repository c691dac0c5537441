"""A driven wheel at a ledge, as a lesson asks for it: moments about the edge, and the two ends."""

import math

import pytest
from lesson_sites import WAGON

from hubwright.lessons.ledge_views import driven_at_ledge
from hubwright.lessons.named_values import View
from hubwright.lessons.views import setup_view
from hubwright.quantities import Quantity
from hubwright.results import Results, solve
from hubwright.setup import load_text
from hubwright.setup.model import Setup


@pytest.fixture(scope="module")
def results() -> Results:
    setup = load_text(WAGON, "wagon.toml")
    assert isinstance(setup, Setup)
    return solve(setup)


@pytest.fixture(scope="module")
def edge(results: Results) -> View:
    return setup_view(results, "stock").stone_ledge  # type: ignore[return-value]


def value(view: View, name: str) -> float:
    found = getattr(view, name)
    assert isinstance(found, Quantity)
    return found.value


@pytest.mark.parametrize("share", [0, 1 / 3, 2 / 3, 1])
def test_moments_about_the_edge_balance(results: Results, edge: View, share: float) -> None:
    radius, height = results.wheel_geometry.loaded_radius, 0.080
    load = results.weight.wheel_loads["front_left"]
    driven = driven_at_ledge(edge, share)
    chord = math.sqrt(radius**2 - (radius - height) ** 2)
    about = value(driven, "push") * (radius - height) + value(driven, "torque")
    assert about == pytest.approx(load * chord)


def test_without_torque_it_is_pushed_and_with_all_of_it_climbs_by_friction(results: Results, edge: View) -> None:
    idle, alone = driven_at_ledge(edge, 0), driven_at_ledge(edge, 1)
    assert value(idle, "push") == pytest.approx(results.cases["stone ledge"].extras["push"])
    assert value(idle, "needed_friction") == 0
    assert value(alone, "push") == pytest.approx(0.0, abs=1e-6)
    # the tangent of the contact's slant, from its cosine
    radius = results.wheel_geometry.loaded_radius
    cosine = (radius - 0.080) / radius
    assert value(alone, "needed_friction") == pytest.approx(math.sqrt(1 - cosine**2) / cosine)


def test_another_case_is_refused(results: Results) -> None:
    view = setup_view(results, "stock")
    with pytest.raises(TypeError, match="a case of the kind ledge"):
        driven_at_ledge(view.standing, 1)  # type: ignore[arg-type]

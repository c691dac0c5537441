"""Every free body is built up as a teacher draws it: isolate, known loads, unknown reactions, dimensions, solve."""

from itertools import pairwise
from pathlib import Path

import pytest

from drawing.test_demonstration_figures import FILES, scenes
from hubwright.results import solve
from hubwright.scenes.two_setups import two_setups
from hubwright.scenes.vocabulary import PHASES, AngularDimension, Dimension, Force, Moment, Normal, Scene
from hubwright.setup import Setup, load

CONTENT = Path(__file__).parents[2] / "content"
IN_ORDER = PHASES.index


def bodies() -> list[Scene]:
    found = [scene for file in FILES for scene in scenes(file, "si")]
    pair = [load(CONTENT / name) for name in ("vehicles/hill-wagon.toml", "setups/winter-fit-out.toml")]
    assert all(isinstance(setup, Setup) for setup in pair)
    found.append(two_setups(*(solve(setup, "front_left") for setup in pair)))  # type: ignore[arg-type]
    return [scene for scene in found if scene.bodies]


@pytest.fixture(scope="module")
def every_body() -> list[Scene]:
    return bodies()


def test_every_free_body_has_the_five_phases_in_their_order(every_body: list[Scene]) -> None:
    assert len({scene.name for scene in every_body}) >= 11
    for scene in every_body:
        phases = [step.phase for step in scene.steps]
        assert None not in phases, scene.name
        assert all(IN_ORDER(a) <= IN_ORDER(b) for a, b in pairwise(p for p in phases if p)), scene.name
        assert set(phases) == set(PHASES), scene.name


def test_layers_hold_what_their_phase_says(every_body: list[Scene]) -> None:
    for scene in every_body:
        for item in scene.items:
            phase = scene.steps[item.step - 1].phase
            where = f"{scene.name}: {item.name}"
            if isinstance(item, Force | Normal) and item.role != "reaction":
                assert phase in ("loads", "solve"), where
            if isinstance(item, Force | Normal | Moment) and item.role == "reaction":
                assert phase in ("reactions", "solve"), where
            if isinstance(item, Dimension | AngularDimension):
                assert phase in ("dimensions", "solve"), where

"""A drop in three instants: wheel and body where the course has them, at one scale."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from dropped import DROPPED, demonstration, drops
from hubwright.errors import MissingDataError
from hubwright.results import Results
from hubwright.results.drops import drop_history
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.drop_sequence import drop_sequence, instants
from hubwright.scenes.vocabulary import Part
from scene_checks import check_scene, check_written_scales, is_round

SLOW = settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))


@given(results=drops(), units=st.sampled_from(("si", "us")))
@SLOW
def test_every_drop_has_its_figure(results: Results, units) -> None:
    scene = drop_sequence(results, units=units)
    check_scene(scene)
    assert is_round(scene.views[0].newtons_per_mm or 0.0)


@pytest.mark.parametrize("file", DROPPED)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn_to_scale(file: str, units) -> None:
    scene = drop_sequence(demonstration(file), units=units)
    check_scene(scene)
    assert check_written_scales(scene) >= 4


def test_the_tire_is_squeezed_by_its_force_over_its_stiffness() -> None:
    # hill wagon: 260 N/mm; what is missing of the circle's radius below the axle is the deflection
    history = drop_history(demonstration(DROPPED[0]), "drop off a rock")
    deepest = instants(history)[1]
    assert deepest.wheel == pytest.approx(deepest.tire / 260.0)
    assert deepest.body == pytest.approx(history.body_travel.max() * 1e3)


def test_nothing_is_drawn_below_the_road() -> None:
    scene = drop_sequence(demonstration(DROPPED[0]))
    parts = [item for item in scene.items if isinstance(item, Part)]
    assert min(point[1] for part in parts for ring in part.rings for point in ring) >= 0.0


def test_without_springs_there_is_none() -> None:
    trailer = demonstration("vehicles/kit-trailer.toml")
    with pytest.raises(MissingDataError, match="suspension"):
        drop_sequence(trailer)
    assert FIGURES["drop sequence"].cases(trailer) == []

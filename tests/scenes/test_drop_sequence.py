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
from hubwright.scenes.vocabulary import Callout, Damper, Note, Part, Spring
from scene_checks import check_scene, check_written_scales, is_round

SLOW = settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))


@given(results=drops(), units=st.sampled_from(("si", "us")))
@SLOW
def test_every_drop_has_its_figure(results: Results, units) -> None:
    scene = drop_sequence(results, units=units)
    check_scene(scene)
    assert is_round(scene.view("deepest").newtons_per_mm or 0.0)


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


def test_springs_and_dampers_reach_from_the_wheel_to_the_body() -> None:
    results = demonstration(DROPPED[0])
    scene = drop_sequence(results)
    radius = results.wheel_geometry.free_diameter * 500.0
    for instant in instants(drop_history(results, "drop off a rock")):
        (foot,) = {
            min(z for _, z in part.rings[0])
            for part in scene.items
            if isinstance(part, Part) and part.name == f"part-body-{instant.name}"
        }
        for item in scene.items:
            if isinstance(item, Spring | Damper) and item.view == instant.name:
                assert (item.start[1], item.end[1]) == pytest.approx((radius - instant.wheel, foot))


def test_the_model_says_what_the_drop_is_computed_with() -> None:
    scene = drop_sequence(demonstration(DROPPED[0]))
    said = {item.label.lines for item in scene.items if isinstance(item, Note) and item.view == "model"}
    assert ("tire", "260\u00a0N/mm") in said  # content/vehicles/hill-wagon.toml
    assert len(said) == 5


def test_a_tire_on_its_rim_is_remarked_at_its_place() -> None:
    results = demonstration(DROPPED[0])
    history = drop_history(results, "drop off a rock")
    remarks = [item for item in drop_sequence(results).items if isinstance(item, Callout)]
    assert bool(remarks) == history.tire_on_rim


def test_without_springs_there_is_none() -> None:
    trailer = demonstration("vehicles/kit-trailer.toml")
    with pytest.raises(MissingDataError, match="suspension"):
        drop_sequence(trailer)
    assert FIGURES["drop sequence"].cases(trailer) == []

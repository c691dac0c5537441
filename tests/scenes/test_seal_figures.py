"""Water at the seal: both pressures as hydrostatics and the gas law give them, drawn at one scale."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dropped import demonstration
from hubwright.errors import MissingDataError
from hubwright.results import solve
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.depth_against_quench import depth_against_quench
from hubwright.scenes.seal_section import seal_section
from hubwright.scenes.vocabulary import Bar, Force, Note, Part, Point, Scene
from hubwright.setup import vary
from scene_checks import SLOW, check_scene, is_round
from strategies import built, setup_data

HILL = "vehicles/hill-wagon.toml"


@given(
    data=setup_data(rows_known=False),
    hub=st.floats(-20.0, 120.0),
    water=st.floats(-2.0, 30.0),
    depth=st.floats(0.0, 1.5),
    units=st.sampled_from(("si", "us")),
)
@SLOW
def test_every_ford_has_its_figures(data, hub: float, water: float, depth: float, units) -> None:
    data["sealing"] = {
        "hub_temperature": f"{hub:.1f} degC",
        "water_temperature": f"{water:.1f} degC",
        "depth": f"{depth:.3f} m",
    }
    results = solve(built(data))
    section = seal_section(results, units=units)
    check_scene(section)
    assert is_round(section.view("seal").newtons_per_mm or 0.0)
    check_scene(depth_against_quench(results, units=units))


@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn(units) -> None:
    results = demonstration(HILL)
    check_scene(seal_section(results, units=units))
    check_scene(depth_against_quench(results, units=units))


def test_arrows_and_bars_are_the_formulas() -> None:
    # ρ g d of 0.25 m; p(1 − T₂/T₁) from 65 °C to 8 °C at one standard atmosphere, on a square centimetre
    results = demonstration(HILL)
    depth, suction = 1000 * 9.80665 * 0.25, 101325 * (1 - 281.15 / 338.15)
    forces = {item.name: item.vector[0] for item in seal_section(results).items if isinstance(item, Force)}
    assert forces["force-depth-1"] == pytest.approx(depth * 1e-4)
    assert forces["force-suction-1"] == pytest.approx(suction * 1e-4)
    # and on a US sheet on a square inch, of 25.4 mm a side
    scene = seal_section(results, units="us")
    forces = {item.name: item.vector[0] for item in scene.items if isinstance(item, Force)}
    assert forces["force-depth-1"] == pytest.approx(depth * 0.0254**2)
    assert "square inch" in scene.caption
    assert "in²" in scene.scale_bars[0].caption
    bars = [item.end for item in depth_against_quench(results).items if isinstance(item, Bar)]
    assert bars == pytest.approx([depth, suction])


def seal_faces(scene: Scene, height: float) -> tuple[float, float]:
    """Where the outer and the inner face of shell and lip lie at a height."""
    places: list[float] = []
    for part in scene.items:
        if isinstance(part, Part) and part.name in ("part-shell", "part-lip"):
            ring = part.rings[0]
            places += [x for a, b in zip(ring, (*ring[1:], ring[0]), strict=True) for x in crossing(a, b, height)]
    return min(places), max(places)


def crossing(a: Point, b: Point, height: float) -> list[float]:
    if (a[1] > height) == (b[1] > height):
        return []
    return [a[0] + (height - a[1]) / (b[1] - a[1]) * (b[0] - a[0])]


@pytest.mark.parametrize(("water", "warm"), [("8 degC", False), ("80 degC", True)])
def test_a_pressure_ends_on_the_face_that_it_presses_and_a_suction_begins_on_the_one_that_it_pulls(water, warm) -> None:
    scene = seal_section(solve(vary(demonstration(HILL).setup, {"sealing.water_temperature": water})))
    arrows = [item for item in scene.items if isinstance(item, Force)]
    assert len(arrows) == 10
    for arrow in arrows:
        outer, inner = seal_faces(scene, arrow.at[1])
        outside = arrow.name.startswith("force-depth")
        assert abs(arrow.at[0] - (outer if outside else inner)) < 0.8
        assert outer > arrow.at[0] if outside else inner < arrow.at[0]
        assert arrow.tip_at_point is (outside or warm)
        assert (arrow.vector[0] > 0) is (outside or not warm)
    assert ("suction pulls" in scene.caption) is not warm


def test_no_leader_runs_along_an_arrow_and_the_depth_is_told() -> None:
    scene = seal_section(demonstration(HILL))
    heights = {item.at[1] for item in scene.items if isinstance(item, Force)}
    notes = {item.name: item.label for item in scene.items if isinstance(item, Note)}
    for name in ("label-seal", "label-depth", "label-suction"):
        anchor = notes[name].anchor
        assert anchor is not None
        assert min(abs(anchor[1] - height) for height in heights) > 2.0
    assert notes["label-depth"].lines[1].startswith("250\u00a0mm of water")


def test_a_frozen_hub_is_told_in_words() -> None:
    sealing = {"sealing.hub_temperature": "-12 degC", "sealing.water_temperature": "-1.5 degC"}
    results = solve(vary(demonstration(HILL).setup, sealing))
    for scene in (seal_section(results), depth_against_quench(results)):
        check_scene(scene)
        assert "goes in at minus 12" in scene.description


def test_what_is_missing_is_named() -> None:
    van = demonstration("vehicles/supply-van.toml")
    for name, figure in (("seal section", seal_section), ("depth against quench", depth_against_quench)):
        with pytest.raises(MissingDataError, match=r"sealing\.depth"):
            figure(van)
        assert FIGURES[name].cases(van) == []

"""Water at the seal: both pressures as hydrostatics and the gas law give them, drawn at one scale."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from dropped import demonstration
from hubwright.errors import MissingDataError
from hubwright.results import solve
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.depth_against_quench import depth_against_quench
from hubwright.scenes.seal_section import seal_section
from hubwright.scenes.vocabulary import Bar, Force
from hubwright.setup import vary
from scene_checks import check_scene, is_round
from strategies import built, setup_data

SLOW = settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
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

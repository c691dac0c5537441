"""The wheel joint: clamp, capacity and demand as the handbook formulas give them, in cautious words."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from matplotlib.path import Path

from dropped import CONTENT, demonstration
from hubwright.errors import MissingDataError
from hubwright.results import solve
from hubwright.scenes.catalogue import FIGURES
from hubwright.scenes.joint_section import joint_section
from hubwright.scenes.vocabulary import Bar, Dot, Force, Line, Note, Part, Scene
from hubwright.scenes.wheel_end_parts.assembly import assembly
from hubwright.scenes.wheel_end_parts.measures import measures
from hubwright.scenes.wheel_end_parts.wheel import stud_section
from hubwright.setup import load
from scene_checks import SLOW, check_scene, check_written_scales, is_round
from strategies import built, setup_data

FILES = ("vehicles/hill-wagon.toml", "setups/winter-fit-out.toml", "setups/winter-offset-wheels.toml")


def planes(scene: Scene) -> list[Line]:
    return [item for item in scene.items if isinstance(item, Line) and item.name.startswith("slip-plane")]


def clamping(scene: Scene, name: str) -> list[Force]:
    return [item for item in scene.items if isinstance(item, Force) and item.name.startswith(f"force-{name}")]


@given(
    data=setup_data(rows_known=False),
    studs=st.integers(4, 8),
    thread=st.sampled_from(("M12x1.5", "M14x1.5", "1/2-20")),
    torque=st.floats(80, 200),
    circle=st.floats(98, 165),
    scatter=st.sampled_from((0.0, 0.1, 0.35)),
    units=st.sampled_from(("si", "us")),
)
@SLOW
def test_every_joint_has_its_figure(data, studs, thread, torque, circle, scatter, units) -> None:
    data["joint"] = {
        "studs": studs,
        "thread": thread,
        "property_class": "10.9",
        "tightening_torque": f"{torque:.1f} N*m",
        "stud_circle": f"{circle:.1f} mm",
        "nut_factor": 0.2,
        "torque_scatter": scatter,
        "face_friction": 0.15,
    }
    scene = joint_section(solve(built(data)), units=units)
    check_scene(scene)
    assert is_round(scene.view("joint").newtons_per_mm or 0.0)


@pytest.mark.parametrize("file", FILES)
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn_to_scale(file: str, units) -> None:
    results = demonstration(file)
    for case in results.cases:
        scene = joint_section(results, case=case, units=units)
        check_scene(scene)
        assert check_written_scales(scene) >= 2


def test_clamp_and_capacity_are_those_of_the_formulas() -> None:
    # T/(K d) with 150 N·m, 0.2, 14 mm; six studs × friction 0.15 × half of 140 mm
    scene = joint_section(demonstration(FILES[0]))
    clamp = 150 / (0.2 * 0.014)
    for name in ("nut", "head"):
        assert abs(sum(force.vector[0] for force in clamping(scene, name))) == pytest.approx(clamp)
    capacity = next(item for item in scene.items if isinstance(item, Bar) and item.name == "bar-capacity")
    assert capacity.end == pytest.approx(6 * clamp * 0.15 * 0.070)
    assert capacity.span == pytest.approx((0.75 * capacity.end, 1.25 * capacity.end))


@pytest.mark.parametrize("wheel", ["front_left", "front_right"])
def test_nut_and_head_press_on_the_clamped_parts_beside_the_stud(wheel: str) -> None:
    results = solve(load(CONTENT / FILES[0]), wheel)
    scene = joint_section(results)
    parts = assembly(measures(results))
    stud, mount = stud_section(parts.measures, parts.mount), parts.mount
    for name, face, inboard in (("nut", stud.seat, True), ("head", mount.flange_back, False)):
        for force in clamping(scene, name):
            assert results.side * force.at[0] == pytest.approx(face)  # where the head of the arrow ends
            assert (results.side * force.vector[0] < 0) is inboard
            assert mount.stud < abs(force.at[1] - mount.bolt) < mount.stud + 3.5


def test_the_key_names_what_the_section_shows() -> None:
    scene = joint_section(demonstration(FILES[0]))
    assert [entry.text for entry in scene.key] == ["clamp force", "slip plane", "clamped parts", "stands still"]
    assert "slip plane" in [entry.kind for entry in scene.key]
    assert {item.tone for item in planes(scene)} == {"reaction"}
    assert not any(item.tone == "moment" for item in scene.items if isinstance(item, Dot | Line))
    assert all(force.role == "applied" for force in scene.items if isinstance(force, Force))


@pytest.mark.parametrize("file", FILES)
def test_every_part_that_the_section_cuts_at_the_stud_is_named_within_it(file: str) -> None:
    results = demonstration(file)
    scene = joint_section(results)
    cut = {item.name.removeprefix("part-joint-"): item.rings for item in scene.items if isinstance(item, Part)}
    parts = {
        "hub": "hub",
        "wheel": "wheel-disc",
        "disc": "brake-disc",
        "nut": "wheel-nuts",
        "stud": "studs",
        "carrier": "knuckle",
        "spacer": "spacer",
    }
    notes = {item.name.removeprefix("label-part-"): item.label.anchor for item in scene.items if isinstance(item, Note)}
    for name, part in parts.items():
        assert (name in notes) is (part in cut)
        if name in notes:
            assert sum(Path(ring).contains_point(notes[name]) for ring in cut[part]) % 2 == 1
    x0, y0, x1, y1 = scene.view("joint").frame or (0.0,) * 4
    x, y = scene.view("joint").on_sheet(notes["carrier"] or (0.0, 0.0))
    assert x0 < x < x1
    assert y0 < y < y1


def test_a_clamp_force_is_named_at_its_tail_outside_the_nut() -> None:
    results = demonstration(FILES[0])
    scene = joint_section(results)
    view = scene.view("joint")
    named = next(force for force in clamping(scene, "nut") if force.label)
    nut = next(item for item in scene.items if isinstance(item, Part) and item.name == "part-joint-wheel-nuts")
    tail = view.on_sheet(named.at)[0] - abs(named.vector[0]) / (view.newtons_per_mm or 1.0)
    assert tail < min(view.on_sheet(point)[0] for ring in nut.rings for point in ring)


def test_the_face_under_the_same_studs_that_is_not_counted_is_named() -> None:
    with_disc = joint_section(demonstration(FILES[0]))
    face = next(item for item in with_disc.items if isinstance(item, Note) and item.name == "label-disc-face")
    assert face.label.lines[-1] == "not counted"
    for text in (with_disc.caption, with_disc.description):
        assert "The face between brake disc and hub flange" in text


def test_a_spacer_makes_two_joints() -> None:
    assert len(planes(joint_section(demonstration(FILES[0])))) == 1
    spaced = planes(joint_section(demonstration(FILES[1])))
    assert abs(spaced[0].points[0][0] - spaced[1].points[0][0]) == pytest.approx(25.0)


def test_the_joint_of_a_spacer_is_said_to_be_assumed() -> None:
    bare, spaced = (joint_section(demonstration(file)) for file in FILES[:2])
    for text in (spaced.caption, spaced.description):
        assert "the file says nothing: it is counted with the same fasteners" in text
    assert "in each of two joints" in spaced.title
    assert "spacer" not in bare.caption + bare.description + bare.title


def test_words_are_cautious() -> None:
    scene = joint_section(demonstration(FILES[0]))
    assert "does not say that a joint holds" in scene.caption
    assert "maker" in scene.caption


def test_what_is_missing_is_named() -> None:
    van = demonstration("vehicles/supply-van.toml")
    assert FIGURES["joint section"].cases(van) == []
    with pytest.raises(MissingDataError, match="joint"):
        joint_section(van)

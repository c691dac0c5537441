"""The vehicle from the rear: closed in every direction, load transfer as the textbook says, words of the numbers."""

import re
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hubwright.drawing import draw
from hubwright.drawing.closure import left_over
from hubwright.drawing.faces import line
from hubwright.errors import CaseError
from hubwright.results import Results, solve
from hubwright.scenes.corner_front_lines import width
from hubwright.scenes.corner_front_numbers import together
from hubwright.scenes.corner_front_outline import crossed
from hubwright.scenes.corner_front_view import corner_front_view
from hubwright.scenes.roll_body import RollBody, roll_body
from hubwright.scenes.vocabulary import Dot, Force, Note, Scene
from hubwright.setup import load
from hubwright.setup.model import Setup, VehicleChassis
from scene_checks import SLOW, check_scene, check_written_scales, is_round
from strategies import setups

AXLES = ("front", "rear")
CONTENT = Path(__file__).parents[2] / "content"
KINDS = ("standing", "cornering", "side_slope")
G = 9.80665  # standard gravity, CGPM 1901


def shown(results: Results) -> list[str]:
    return [name for name, state in results.cases.items() if state.kind in KINDS]


def forces(results: Results, case: str) -> dict[str, Force]:
    return {item.name: item for item in corner_front_view(results, case=case).items if isinstance(item, Force)}


@given(chosen=setups(rows_known=False), data=st.data())
@SLOW
def test_every_valid_setup_has_its_figure(chosen: Setup, data: st.DataObject) -> None:
    results = solve(chosen)
    case = data.draw(st.sampled_from(shown(results)))
    scene = corner_front_view(results, case=case, units=data.draw(st.sampled_from(("si", "us"))))
    check_scene(scene)
    assert is_round(scene.view("vehicle").newtons_per_mm or 0.0)


@given(chosen=setups(rows_known=False))
@SLOW
def test_the_body_closes_in_all_six_equations(chosen: Setup) -> None:
    results = solve(chosen)
    for case in shown(results):
        force, moment, largest, largest_moment = left_over(roll_body(results, results.cases[case]).closed())
        assert force <= 1e-9 * largest
        assert moment <= 1e-9 * largest_moment


@given(chosen=setups(rows_known=False))
@SLOW
def test_what_moves_times_the_tracks_is_the_pull_times_its_height(chosen: Setup) -> None:
    results = solve(chosen)
    for case in shown(results):
        body = roll_body(results, results.cases[case])
        pull = body.inertia.y + body.weight.y
        held = sum(wheel.gained * wheel.y for wheel in body.wheels)  # N·mm
        assert held == pytest.approx(pull * body.centre[2], abs=1e-6 * abs(body.weight.z) * 1e3)


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
@pytest.mark.parametrize("units", ["si", "us"])
def test_the_demonstration_is_drawn_to_scale(vehicle: str, units) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    for case in shown(results):
        scene = corner_front_view(results, case=case, units=units)
        check_scene(scene)
        assert check_written_scales(scene) >= 5


def test_sides_are_the_sums_of_their_wheels() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    state = results.cases["brisk corner right"]
    drawn = forces(results, "brisk corner right")
    contacts = state.wheel_contacts
    assert drawn["reaction-left"].vector[1] == pytest.approx(contacts["front_left"].z + contacts["rear_left"].z)
    assert drawn["reaction-front_left"].vector[1] == pytest.approx(contacts["front_left"].z)


def test_cornering_moves_load_as_the_textbook_says() -> None:
    # n M g h over the track; the front axle takes its share
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    state, chassis = results.cases["brisk corner right"], results.setup.chassis
    assert isinstance(chassis, VehicleChassis)
    body = roll_body(results, state)
    moved = 0.3 * results.weight.total_mass * G * results.weight.centre_of_mass_height / chassis.front_track
    assert body.moved() == pytest.approx(moved)
    front = body.of_axle("front")[0].gained
    assert front == pytest.approx(chassis.front_roll_share * moved)


def test_the_slope_pulls_downhill_and_presses_less() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    drawn = forces(results, "cross slope left")
    weight = results.weight.total_mass * G
    # 15 degrees: sin 0.2588, cos 0.9659 (four-figure tables)
    assert drawn["force-weight-y"].vector[0] == pytest.approx(-0.2588 * weight, rel=2e-4)
    assert drawn["force-weight-z"].vector[1] == pytest.approx(-0.9659 * weight, rel=1e-4)


def test_titles_name_the_side_that_gains() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    assert "outer wheels, on the left" in corner_front_view(results, case="brisk corner right").title
    assert "downhill wheels, on the right" in corner_front_view(results, case="cross slope left").title
    assert "nothing moves" in corner_front_view(results, case="standing").title
    trailer = solve(load(CONTENT / "vehicles/kit-trailer.toml"))
    assert "none of it comes from the coupling" in corner_front_view(trailer, case="brisk corner left").title


def test_cases_along_the_road_are_refused() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    with pytest.raises(CaseError, match="round a bend"):
        corner_front_view(results, case="firm braking")


def printed(scene: Scene, symbol: str) -> Fraction:
    """Return the one number that a scene's labels print behind a symbol, exactly, and without its sign."""
    lines = [
        " ".join(item.label.lines).replace("*", "")
        for item in scene.items
        if isinstance(item, Force | Note) and item.label is not None
    ]
    found = [line.split(f"{symbol} = ")[1].replace("\xa0", " ").split() for line in lines if f"{symbol} = " in line]
    assert len(found) == 1, (symbol, lines)
    number, unit = found[0][:2]
    assert unit in {"N", "kN", "lbf"}
    return Fraction(number.replace(",", ""))


def read_sums(scene: Scene, body: RollBody) -> None:
    """The numbers of a scene's labels add up, upright and across, for the whole and for each side."""
    drawn = {item.name: item for item in scene.items if isinstance(item, Force)}
    nothing = 1e-6 * abs(body.weight.z)

    def of(name: str, symbol: str, axis: int) -> Fraction:
        """Return a printed number with the sign of its arrow."""
        return printed(scene, symbol) if drawn[name].vector[axis] > 0 else -printed(scene, symbol)

    def coupled(name: str, symbol: str, axis: int) -> Fraction:
        return of(name, symbol, axis) if name in drawn else Fraction(0)

    sloped = "{W} cos {φ}" if abs(body.weight.y) > nothing else "{W}"
    upright = [of(f"reaction-{side}", f"{{N|{side}}}", 1) for side in ("left", "right")]
    upright.append(coupled("reaction-coupling", "{N|coupling}", 1))
    assert sum(upright) == printed(scene, sloped)
    pull = next((name for name in ("force-inertia", "force-weight-y") if name in drawn), None)
    if pull is not None:
        across = [of(f"reaction-{side}-across", f"{{S|{side}}}", 0) for side in ("left", "right")]
        across.append(coupled("reaction-coupling-across", "{S|coupling}", 0))
        assert sum(across) == -of(pull, "{M a}" if pull == "force-inertia" else "{W} sin {φ}", 0)
    read_wheels(scene, pull is not None)


def joined(lines: tuple[str, ...]) -> tuple[str, ...]:
    """The lines of a label whose first may be broken before its equals sign."""
    return (f"{lines[0]} {lines[1].removeprefix('*')}", *lines[2:]) if lines[1].startswith("*=") else lines


def read_wheels(scene: Scene, across: bool) -> None:
    """Wheels make their side, and what moves at the axles is what the title says moves."""
    notes = {item.name: item.label.lines for item in scene.items if isinstance(item, Note)}
    wheels = {name: joined(lines) for name, lines in notes.items() if name.startswith(("label-front_", "label-rear_"))}

    def number(line: str) -> Fraction:
        return Fraction(line.split(" = ")[-1].replace("\xa0", " ").split()[0].strip("*").replace(",", ""))

    if not wheels:
        return
    for side in ("left", "right"):
        of_side = [lines for name, lines in wheels.items() if name.endswith(side)]
        assert sum(number(lines[0]) for lines in of_side) == printed(scene, f"{{N|{side}}}")
        if across:
            pushed = [
                number(item.label.lines[0])
                for item in scene.items
                if isinstance(item, Force)
                and item.label
                and item.name in (f"reaction-{side}-{a}-across" for a in AXLES)
            ]
            assert sum(pushed) == printed(scene, f"{{S|{side}}}")
            moved = [number(lines[1]) for lines in of_side if "nothing" not in lines[1]]
            if len(moved) == 2:
                assert sum(moved) == number(notes[f"label-{side}"][2]) == number(scene.title)


@given(chosen=setups(rows_known=False), units=st.sampled_from(("si", "us")))
@SLOW
def test_what_the_labels_say_adds_up_in_every_direction(chosen: Setup, units) -> None:
    results = solve(chosen)
    for case in shown(results):
        scene = corner_front_view(results, case=case, units=units)
        read_sums(scene, roll_body(results, results.cases[case]))


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
@pytest.mark.parametrize("units", ["si", "us"])
def test_labels_of_the_demonstration_add_up_as_well(vehicle: str, units) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    for case in shown(results):
        read_sums(corner_front_view(results, case=case, units=units), roll_body(results, results.cases[case]))


@given(
    values=st.lists(st.floats(-50.0, 50.0), min_size=2, max_size=6),
)
def test_parts_and_sums_are_hardly_off(values: list[float]) -> None:
    parts = {str(n): value for n, value in enumerate(values)}
    off, whole = together(parts, {"all": dict.fromkeys(parts, 1)})
    assert all(abs(whole[name] - value) < 1 + 1e-5 for name, value in parts.items())
    assert whole["all"] == sum(whole[name] for name in parts)
    assert abs(whole["all"] - sum(values)) <= off + 1e-5
    usual = sum(round(value) for value in values)
    if abs(usual - sum(values)) < 0.49:
        assert off <= 0.5 + 1e-5


@given(values=st.lists(st.floats(-50.0, 50.0), min_size=3, max_size=6, unique_by=lambda value: round(value, 6)))
def test_a_total_known_by_itself_is_rounded_as_usual(values: list[float]) -> None:
    parts = {str(n): value for n, value in enumerate(values)}
    sums = {"pair": {"0": 1, "1": 1}, "all": dict.fromkeys(parts, 1)}
    _, whole = together(parts, sums, "all")
    assert abs(whole["all"] - sum(values)) <= 0.5 + 1e-5


def test_the_pull_in_a_corner_is_what_a_reader_reckons() -> None:
    # by hand: 0.3 of the weight of 2,130 kg is 6,266.4 N
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    for case in ("brisk corner left", "brisk corner right"):
        assert printed(corner_front_view(results, case=case, units="si"), "{M a}") == Fraction("6.266")


def test_the_text_alternative_names_what_the_marks_show() -> None:
    results = solve(load(CONTENT / "vehicles/hill-wagon.toml"))
    said = corner_front_view(results, case="cross slope right").description.replace("\xa0", " ")
    wheel = re.search(
        r"Front left wheel: the road pushes up with ([\d.]+) kN .*?gravity alone would press there with ([\d.]+) kN, "
        r"([\d.]+) kN gained",
        said,
    )
    assert wheel is not None
    up, gravity, gained = map(Fraction, wheel.groups())
    assert gravity + gained == up
    # 15 degrees: cos 0.9659 (four-figure tables)
    assert float(gravity) == pytest.approx(0.9659 * results.weight.wheel_loads["front_left"] / 1e3, rel=1e-3)


@pytest.mark.parametrize("way", ["left", "right"])
def test_no_edge_strikes_the_words_inside_a_trailer(way: str) -> None:
    results = solve(load(CONTENT / "vehicles/kit-trailer.toml"))
    scene = corner_front_view(results, case=f"cross slope {way}", units="us")
    view = scene.view("vehicle")
    struck = [text for text in draw(scene).texts if "plumb" in text.words or "sin" in text.words]
    assert len(struck) == 2
    for text in struck:
        x0, y0, x1, y1 = text.box
        one, other = (
            ((view.origin[0] - x) / view.scale, (y - view.origin[1]) / view.scale) for x, y in ((x0, y0), (x1, y1))
        )
        assert not crossed(results, one, other)


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
@pytest.mark.parametrize("units", ["si", "us"])
def test_a_number_stands_on_the_line_of_its_symbol(vehicle: str, units) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    for case in shown(results):
        scene = corner_front_view(results, case=case, units=units)
        labels = [item.label for item in scene.items if isinstance(item, Force | Note) and item.label is not None]
        lines = [text for label in labels for text in label.lines]
        assert not [text for text in lines if text.endswith("=")]
        # only the two parts of a weight on a slope have too long symbols for the room beside them
        broken = [label.lines[0] for label in labels if any(text.startswith(("=", "*=")) for text in label.lines)]
        assert all("φ" in text for text in broken), (case, broken)


@pytest.mark.parametrize(
    "text",
    ["*{W} = 20.888 kN", "*{W} cos {φ} = 1,639 lbf", "*{N|coupling} = 169.1 lbf", "{S|coupling} = 0.188 kN"],
)
def test_room_is_reckoned_for_words_hardly_wider_than_they_are(text: str) -> None:
    real = line(text, 2.5).width
    assert real <= width(text, 2.5) <= 1.13 * real


def test_the_key_names_inertia_only_where_it_is_drawn() -> None:
    for vehicle in ("hill-wagon", "supply-van", "kit-trailer"):
        results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
        for case in shown(results):
            scene = corner_front_view(results, case=case)
            drawn = any(item.name == "force-inertia" for item in scene.items)
            assert ("inertia" in scene.key[0].text) == drawn, case


@pytest.mark.parametrize("case", ["easy bend right", "brisk corner left", "cross slope left"])
def test_what_pulls_sideways_leaves_the_mark_of_the_centre_of_mass_whole(case: str) -> None:
    scene = corner_front_view(solve(load(CONTENT / "vehicles/hill-wagon.toml")), case=case)
    (mark,) = (item for item in scene.items if isinstance(item, Dot) and item.kind == "centre of mass")
    pull = next(item for item in scene.items if item.name in ("force-inertia", "force-weight-y"))
    assert isinstance(pull, Force)
    assert pull.gap >= mark.radius

"""Figures written from the terminal: forms, sizes, steps, the same bytes twice, and errors that say what there is."""

import re
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree

import pytest
from click.testing import CliRunner, Result
from matplotlib.image import imread

from drawing.read_back import read
from hubwright.cli import main
from hubwright.drawing import frames, svg_file
from hubwright.drawing.frames import SAFE
from hubwright.places import data_directory
from hubwright.results import solve
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.scenes.vocabulary import Scene
from hubwright.setup import Setup, load

VEHICLE = data_directory("content") / "vehicles" / "hill-wagon.toml"
BEAM = data_directory("content") / "beams" / "plank-bridge.toml"


def export(*arguments: object) -> Result:
    return CliRunner().invoke(main, ["export", *(str(argument) for argument in arguments)])


def section() -> Scene:
    setup = load(VEHICLE)
    assert isinstance(setup, Setup)
    return scene_function("wheel-end section")(solve(setup))


@pytest.mark.parametrize("form", ["svg", "outlined", "pdf", "png", "html"])
def test_files_are_the_same_bytes_twice(form: str, tmp_path: Path) -> None:
    for folder in ("first", "second"):
        result = export(VEHICLE, "--figure", "side view", "--form", form, "--out", tmp_path / folder)
        assert result.exit_code == 0, result.stderr
    (first,), (second,) = ((tmp_path / folder).iterdir() for folder in ("first", "second"))
    assert first.name == second.name
    assert first.read_bytes() == second.read_bytes()


def test_all_figures_of_a_file_are_written_in_both_units(tmp_path: Path) -> None:
    for units in ("si", "us"):
        result = export(VEHICLE, "--figure", "all", "--units", units, "--out", tmp_path)
        assert result.exit_code == 0, result.stderr
    of_a_vehicle = [name for name, figure in FIGURES.items() if figure.takes == "results"]
    assert len(list(tmp_path.glob("*-si.svg"))) == len(of_a_vehicle) == len(list(tmp_path.glob("*-us.svg")))
    assert export(BEAM, "--figure", "all", "--out", tmp_path).exit_code == 0
    assert (tmp_path / "plank-bridge-beam-alone-si.svg").is_file()


def test_several_setups_are_set_against_one(tmp_path: Path) -> None:
    others = [data_directory("content") / "setups" / f"{stem}.toml" for stem in ("winter-fit-out", "summer-fit-out")]
    against = [part for other in others for part in ("--against", other)]
    done = export(VEHICLE, "--figure", "setups compared", *against, "--out", tmp_path)
    assert done.exit_code == 0
    (picture,) = tmp_path.glob("*.svg")
    assert "summer fit-out" in picture.read_text(encoding="utf-8")
    refused = export(VEHICLE, "--figure", "split of a change", *against, "--out", tmp_path)
    assert refused.exit_code == 2
    assert "name one file with --against" in refused.stderr


def test_two_setups_are_set_against_one_another(tmp_path: Path) -> None:
    other = data_directory("content") / "setups" / "winter-offset-wheels.toml"
    arguments = ("--figure", "two setups under one load line", "--against", other, "--out", tmp_path)
    assert export(VEHICLE, *arguments).exit_code == 0
    (written,) = tmp_path.iterdir()
    assert "Hill wagon, winter fit-out with offset wheels" in written.read_text(encoding="utf-8")
    assert export(BEAM, *arguments).exit_code == 2


def test_steps_are_pictures_of_a_film(tmp_path: Path) -> None:
    arguments = (VEHICLE, "--figure", "side-view", "--steps", "--form", "png", "--sheet", "dark", "--out", tmp_path)
    assert export(*arguments).exit_code == 0
    pictures = sorted(tmp_path.iterdir())
    assert len(pictures) >= 4
    for picture in pictures:
        assert imread(picture).shape[:2] == (1080, 1920)


def pieces(svg: str) -> list[str]:
    """What a frame draws besides its caption and the key of its step."""
    root = ElementTree.fromstring(svg)
    foot = next(child for child in root if child.get("data-name") == "foot")
    foot[:] = [child for child in foot if child.get("data-name") not in ("key", "caption")]
    layers = [child for child in root if (child.get("data-name") or "").startswith("step-")]
    return [ElementTree.tostring(element, encoding="unicode") for element in (*layers, foot)]


@pytest.mark.parametrize("size", [(1920, 1080), (1080, 1920), (1000, 1000)])
def test_nothing_that_stood_moves_from_frame_to_frame(size: tuple[int, int]) -> None:
    written = [svg_file(frame, title=False, pixels=size) for frame in frames(section(), size=size, steps=True)]
    assert len(written) == 7
    for earlier, later in pairwise(written):
        *stood, foot = pieces(earlier)
        *stands, same_foot = pieces(later)
        assert stands[: len(stood)] == stood
        assert len(stands) == len(stood) + 1
        assert same_foot == foot


@pytest.mark.parametrize("size", [(1920, 1080), (3840, 2160), (1080, 1920)])
@pytest.mark.parametrize("steps", [True, False])
def test_captions_are_large_and_words_stay_where_every_screen_shows_them(size: tuple[int, int], steps: bool) -> None:
    for frame in frames(section(), size=size, steps=steps):
        root = ElementTree.fromstring(svg_file(frame, title=False, pixels=size))
        assert (root.get("width"), root.get("height")) == tuple(map(str, size))
        _, _, width, height = (float(number) for number in (root.get("viewBox") or "").split())
        assert width / height == pytest.approx(size[0] / size[1], rel=1e-3)
        (caption,) = [group for group in root.iter() if group.get("data-name") == "caption"]
        set_in = {float(text.get("font-size") or 0) for text in caption if "Schola" in (text.get("font-family") or "")}
        assert set_in
        assert min(set_in) >= 0.03 * height
        for box in (text.box for text in frame.texts):
            left, right = box[0] / frame.size[0], box[2] / frame.size[0]
            low, high = box[1] / frame.size[1], box[3] / frame.size[1]
            assert min(left, low) >= SAFE - 1e-3
            assert max(right, high) <= 1 - SAFE + 1e-3


def test_a_frame_keeps_the_scales_that_it_states() -> None:
    (frame,) = frames(section(), size=(1080, 1920))
    figure = read(svg_file(frame, title=False, pixels=(1080, 1920)))
    forces = [group for group in figure.of("force-", "reaction-") if "data-x1" in group.data]
    assert len(forces) >= 5
    for group in forces:
        stated = float(group.data["data-newtons"]) / float(group.view["data-newtons-per-mm"])
        assert group.length() * figure.mm_per_unit == pytest.approx(stated, rel=0.005), group.name


def test_a_snippet_stands_alone_and_keeps_to_itself(tmp_path: Path) -> None:
    assert export(VEHICLE, "--figure", "all", "--form", "html", "--units", "us", "--out", tmp_path).exit_code == 0
    for file in tmp_path.iterdir():
        text = file.read_text(encoding="utf-8")
        assert not re.search(r"(?:href|src)\s*[=:]|<script|var\(", text.replace("src:url(data:", ""))
        (svg,) = re.findall(r"<svg.*?</svg>", text, re.DOTALL)
        root = ElementTree.fromstring(svg)
        assert all((element.get("id") or file.stem).startswith(file.stem) for element in root.iter())
        (rule,) = re.findall(r"^(.*)text\{", "".join(root.itertext()), re.MULTILINE)
        assert rule == f"#{file.stem} "  # the words of other drawings on the page keep their own spaces
        assert root.get("role") == "img"
        if 'data-newtons="' in text:
            assert "lbf" in text
            assert text.count("<tr>") >= 3, "a head, and every force in a row"


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (("--figure", "sid view"), "no figure is called 'sid view'; perhaps you meant 'side view'"),
        (("--figure", "side view", "--case", "standin"), "no case is called 'standin'; perhaps you meant 'standing'"),
        (("--figure", "outer wheel in a corner", "--case", "standing"), "cannot show the case 'standing'"),
        (("--figure", "beam alone"), "is drawn from a beam file"),
        (("--figure", "side view", "--size", "19x8"), "'19x8' is no size; write width x height"),
        (("--figure", "side view", "--form", "html", "--size", "800x600"), "leave --size out"),
    ],
)
def test_what_there_is_not_ends_with_2_and_what_there_is(
    arguments: tuple[str, ...], message: str, tmp_path: Path
) -> None:
    result = export(VEHICLE, *arguments, "--out", tmp_path)
    assert result.exit_code == 2
    assert message in result.stderr
    assert not list(tmp_path.iterdir())

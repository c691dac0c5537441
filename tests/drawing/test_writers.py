"""Pictures and files come out whole, the same in every run, and in every theme."""

import os
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from matplotlib.image import imread

from drawing.example_scene import every_item
from hubwright.drawing import Theme, draw, pdf, png, svg_file, svg_for_page
from hubwright.drawing.palette import colours

SCRIPT = """
import hashlib, sys
from drawing.example_scene import every_item
from hubwright.drawing import draw, svg_file, svg_for_page
drawing = draw(every_item())
text = svg_for_page(drawing, prefix="f", units_class="si") + svg_file(drawing) + svg_file(drawing, outlined=True)
print(hashlib.sha256(text.encode()).hexdigest())
"""


def test_svg_is_the_same_in_every_process() -> None:
    def digest(seed: str) -> str:
        environment = os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": str(Path(__file__).parents[1])}
        done = subprocess.run(
            [sys.executable, "-c", SCRIPT], env=environment, capture_output=True, text=True, check=True
        )
        return done.stdout

    assert digest("1") == digest("2")


def test_pictures_and_pages_are_the_same_twice(tmp_path: Path) -> None:
    for name, write in (("a.png", png), ("a.pdf", pdf)):
        for folder in ("first", "second"):
            (tmp_path / folder).mkdir(exist_ok=True)
            write(draw(every_item()), tmp_path / folder / name)
        assert (tmp_path / "first" / name).read_bytes() == (tmp_path / "second" / name).read_bytes()


@pytest.mark.parametrize("theme", ["light", "dark", "transparent"])
def test_a_picture_has_the_width_asked_for_and_the_paper_of_its_theme(theme: Theme, tmp_path: Path) -> None:
    png(draw(every_item()), tmp_path / "a.png", width_px=960, theme=theme)
    picture = imread(tmp_path / "a.png")
    assert picture.shape[1] == 960
    corner = np.round(picture[2, 2] * 255).astype(int)
    if theme == "transparent":
        assert corner[3] == 0
    else:
        paper = colours(theme)["paper"]
        assert tuple(corner[:3]) == tuple(int(paper[i : i + 2], 16) for i in (1, 3, 5))


def test_a_picture_without_title_is_the_drawing_area_alone(tmp_path: Path) -> None:
    width, height = every_item().size
    png(draw(every_item()), tmp_path / "bare.png", width_px=620, title=False)
    png(draw(every_item()), tmp_path / "titled.png", width_px=620)
    bare, titled = imread(tmp_path / "bare.png"), imread(tmp_path / "titled.png")
    assert bare.shape[0] == pytest.approx(620 * height / width, abs=1)
    assert titled.shape[0] > bare.shape[0] + 20


def test_colours_of_the_theme_are_written_out() -> None:
    dark = svg_file(draw(every_item()), theme="dark")
    assert colours("dark")["load"] in dark
    assert colours("light")["load"] not in dark


def test_units_class_is_on_the_root() -> None:
    assert 'class="hub-figure us"' in svg_for_page(draw(every_item()), prefix="f", units_class="us")

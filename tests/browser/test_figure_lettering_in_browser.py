"""A real browser sets the words of figures as wide as the layout measured them."""

from pathlib import Path
from typing import Any

import pytest

from drawing.example_scene import every_item
from drawing.page_faces import font_faces
from hubwright.drawing import draw, svg_for_page
from hubwright.drawing.faces import web_font_file
from hubwright.drawing.marks import Group, Lettering
from hubwright.drawing.palette import css

pytestmark = pytest.mark.browser


def widths_of(group: Group) -> list[tuple[str, float]]:
    found = []
    for child in group.children:
        if isinstance(child, Group):
            found += widths_of(child)
        elif isinstance(child, Lettering):
            found.append(("".join(run.text for run in child.text.runs), child.text.width))
    return found


def test_words_are_as_wide_as_measured(browser: Any, tmp_path: Path) -> None:
    drawing = draw(every_item())
    rules = font_faces(lambda face: web_font_file(face).as_uri())
    figure = svg_for_page(drawing, prefix="f", units_class="si")
    page_file = tmp_path / "page.html"
    page_file.write_text(f"<!doctype html><meta charset=utf-8><style>{rules}{css()}</style>{figure}", encoding="utf-8")
    page = browser.new_page()
    page.goto(page_file.as_uri())
    page.evaluate("document.fonts.ready")
    measured: list[list[Any]] = page.evaluate(
        "Array.from(document.querySelectorAll('svg text'), t => [t.textContent, t.getComputedTextLength()])"
    )
    page.close()
    laid_out = [pair for group in (*drawing.groups(), *drawing.foot) for pair in widths_of(group)]
    assert len(measured) == len(laid_out) > 30
    for (words, width), (shown, units) in zip(laid_out, measured, strict=True):
        assert shown == words
        assert units * 0.1 == pytest.approx(width, rel=0.01), words

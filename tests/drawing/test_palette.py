"""Contrast after WCAG 2.2: text 4.5 : 1 (criterion 1.4.3), arrows and lines that mean something 3 : 1 (1.4.11)."""

import re
from collections.abc import Iterable
from itertools import product

import pytest

from contrast import contrast
from hubwright.drawing import draw
from hubwright.drawing.marks import Disc, Group, Lettering, Mark, Shape
from hubwright.drawing.palette import TOKENS, Theme, colours, css, text_token
from hubwright.places import data_directory
from hubwright.results import solve
from hubwright.scenes.catalogue import FIGURES, scene_function
from hubwright.scenes.vocabulary import Tone
from hubwright.setup import Setup, load

TONES: tuple[Tone, ...] = ("ink", "soft", "faint", "load", "reaction", "moment", "changed", "before")
THEMES: tuple[Theme, ...] = ("light", "dark", "print", "transparent")


@pytest.mark.parametrize(("theme", "tone"), list(product(THEMES, TONES)))
def test_words_stand_out_from_the_paper(theme: Theme, tone: Tone) -> None:
    palette = colours(theme)
    assert contrast(palette[text_token(tone)], palette["paper"]) >= 4.5


@pytest.mark.parametrize(("theme", "tone"), [pair for pair in product(THEMES, TONES) if pair[1] != "faint"])
def test_arrows_and_lines_stand_out_from_the_paper(theme: Theme, tone: Tone) -> None:
    palette = colours(theme)
    assert contrast(palette[tone], palette["paper"]) >= 3.0


@pytest.mark.parametrize(("theme", "material"), [pair for pair in product(THEMES, TOKENS) if pair[1].startswith("m-")])
def test_outlines_stand_out_from_what_they_enclose(theme: Theme, material: str) -> None:
    palette = colours(theme)
    if (theme, material) == ("dark", "m-ball"):  # pale balls on a dark sheet stand out from their rings instead
        assert contrast(palette[material], palette["m-turning"]) >= 3.0
    elif material != "m-rubber-2":  # treads and beads: a darker tint inside the rubber, not an outline of its own
        assert contrast(palette["ink"], palette[material]) >= 3.0


def colours_of(marks: Iterable[Mark]) -> tuple[set[str], set[str]]:
    """The tokens in which words are written, and those in which arrows are painted."""
    words: set[str] = set()
    arrows: set[str] = set()
    for mark in marks:
        if isinstance(mark, Lettering):
            words.add(mark.colour)
        elif isinstance(mark, Group):
            inner_words, inner_arrows = colours_of(mark.children)
            words |= inner_words
            arrows |= inner_arrows
            if mark.name.startswith(("force-", "reaction-", "moment-")):
                painted = [each for each in mark.children if isinstance(each, Shape | Disc)]
                arrows |= {token for each in painted for token in (each.fill, each.line) if token}
    return words, arrows - {"paper"}  # the paper-coloured edge sets an arrow off from what it crosses


@pytest.mark.parametrize("theme", THEMES)
def test_what_figures_write_and_point_with_stands_out(theme: Theme) -> None:
    palette = colours(theme)
    setup = load(data_directory("content") / "vehicles" / "hill-wagon.toml")
    assert isinstance(setup, Setup)
    results = solve(setup)
    for name, figure in FIGURES.items():
        for case in figure.cases(results)[:1] if figure.takes == "results" else ():
            drawing = draw(scene_function(name)(results, case=case))
            words, arrows = colours_of([*drawing.groups(), *drawing.foot])
            assert words
            for tokens, least in ((words, 4.5), (arrows, 3.0)):
                for token in tokens:
                    assert contrast(palette[token], palette["paper"]) >= least, (name, token)


def test_the_style_sheet_has_a_rule_for_every_token_and_both_sheets() -> None:
    rules = css()
    for name, (light, dark) in TOKENS.items():
        assert f"--hub-{name}:light-dark({light},{dark})" in rules
        assert f".f-{name}{{fill:var(--hub-{name})}}" in rules
        assert f".s-{name}{{stroke:var(--hub-{name})}}" in rules
    assert "http" not in rules
    printed = re.search(r"@media print\{\.hub-figure\{(.*?)\}\}", rules)
    assert printed
    assert "--hub-paper:#ffffff" in printed[1]

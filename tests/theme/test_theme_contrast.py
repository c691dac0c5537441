"""Contrast of the theme’s colours, by the measure of the accessibility guideline."""

import re
from pathlib import Path

import pytest

TOKENS = (Path(__file__).parents[2] / "site_templates" / "assets" / "tokens.css").read_text(encoding="utf-8")
TEXT = ("ink", "ink-2", "act", "load-text", "react-text", "moment-text")
LINES = ("rule", "load", "react", "moment", "changed")


def sheets() -> dict[str, dict[str, str]]:
    twins = re.findall(r"--([\w-]+):light-dark\((#\w+),(#\w+)\)", TOKENS)
    light = {name: day for name, day, _ in twins}
    paper = re.findall(r"--([\w-]+):(#\w{3,6})", TOKENS[TOKENS.index("@media print") :])
    return {"light": light, "dark": {name: night for name, _, night in twins}, "print": light | dict(paper)}


def luminance(colour: str) -> float:
    digits = colour[1:] if len(colour) == 7 else "".join(2 * d for d in colour[1:])
    channels = [int(digits[i : i + 2], 16) / 255 for i in (0, 2, 4)]
    # WCAG 2.2, relative luminance; 0.04045 is the corrected threshold of IEC 61966-2-1
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(first: str, second: str) -> float:
    bright, dim = sorted((luminance(first), luminance(second)), reverse=True)
    return (bright + 0.05) / (dim + 0.05)


def test_the_measure_agrees_with_the_examples_of_the_guideline() -> None:
    # WCAG 2.2 glossary: from 1 to 21; #767676 on white is the well-known edge of 4.5:1
    assert contrast("#fff", "#000") == pytest.approx(21)
    assert contrast("#ffffff", "#ffffff") == 1
    assert contrast("#767676", "#ffffff") >= 4.5 > contrast("#777777", "#ffffff")


@pytest.mark.parametrize("sheet", ["light", "dark", "print"])
def test_text_reads_at_four_and_a_half_to_one_on_paper_and_panel(sheet: str) -> None:
    colours = sheets()[sheet]
    low = {
        (name, ground): ratio
        for name in TEXT
        for ground in ("paper", "panel")
        if (ratio := contrast(colours[name], colours[ground])) < 4.5
    }
    assert low == {}
    assert contrast(colours["act-on"], colours["act"]) >= 4.5
    assert contrast(colours["paper"], colours["ink"]) >= 4.5  # the pressed switch


@pytest.mark.parametrize("sheet", ["light", "dark", "print"])
def test_arrows_and_control_edges_show_at_three_to_one(sheet: str) -> None:
    colours = sheets()[sheet]
    assert {name: ratio for name in LINES if (ratio := contrast(colours[name], colours["paper"])) < 3} == {}


def test_browsers_without_twins_get_the_light_sheet() -> None:
    plain = dict(re.findall(r"--([\w-]+):(#\w{6})", TOKENS[: TOKENS.index("@supports")]))
    assert plain == sheets()["light"]

"""Contrast of the theme’s colours, by the measure of the accessibility guideline."""

import re
from pathlib import Path

import pytest

from contrast import contrast

TOKENS = (Path(__file__).parents[2] / "site_templates" / "assets" / "tokens.css").read_text(encoding="utf-8")
TEXT = ("ink", "ink-2", "act", "load-text", "react-text", "moment-text")
LINES = ("rule", "load", "react", "moment", "changed")


def sheets() -> dict[str, dict[str, str]]:
    twins = re.findall(r"--([\w-]+):light-dark\((#\w+),(#\w+)\)", TOKENS)
    light = {name: day for name, day, _ in twins}
    paper = re.findall(r"--([\w-]+):(#\w{3,6})", TOKENS[TOKENS.index("@media print") :])
    return {"light": light, "dark": {name: night for name, _, night in twins}, "print": light | dict(paper)}


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

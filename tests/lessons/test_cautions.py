"""A page names the hazards of what it draws, and its cautions stand where they are read."""

from pathlib import Path
from typing import get_args

import pytest
from lesson_sites import problems

from hubwright.lessons.cautions import SHOWN, Hazard
from hubwright.scenes.catalogue import FIGURES

FRONT = "---\ntitle: What?\nlesson: 1\nhazards: [{}]\n---\nText.\n\n{{{{ figure({}) }}}}\n"
DRAWN = [
    ('"rock test", stock', "lifting, bearing check"),
    ('"defect frequencies against speed", stock', "bearing check"),
    ('"vehicle on a slope", stock, case="cross slope left"', "slopes drops and corners"),
    ('"wheel at a ledge", stock, case="stone ledge"', "slopes drops and corners"),
    ('"outer wheel in a corner", stock, case="brisk corner left"', "slopes drops and corners"),
    ('"two setups under one load line", stock, stock', "wheel fasteners"),
    ('"measuring weights", stock', "measuring"),
]


@pytest.mark.parametrize(("figure", "hazards"), DRAWN)
def test_a_page_names_the_hazards_of_what_it_draws(figure: str, hazards: str, tmp_path: Path) -> None:
    found = problems(tmp_path, FRONT.format("gear", figure))
    assert [one for one in found if f"add {hazards} to its 'hazards'" in one and one.startswith("content/page.md:4: ")]
    assert problems(tmp_path, FRONT.format(hazards, figure)) == []


def test_figures_of_hazards_are_figures_and_hazards_have_cautions() -> None:
    assert set(SHOWN) <= set(FIGURES)
    assert {hazard for hazards in SHOWN.values() for hazard in hazards} <= set(get_args(Hazard))
    # lifting, fasteners, bearing check, slope and drop: each has a figure that asks for it
    assert {"lifting", "wheel fasteners", "bearing check", "slopes drops and corners"} <= {
        hazard for hazards in SHOWN.values() for hazard in hazards
    }


def test_a_lesson_cannot_hide_its_cautions_below(tmp_path: Path) -> None:
    page = "---\ntitle: What?\nlesson: 1\nhazards: [lifting]\n---\nText.\n\n## One\n\nLift it.\n\n{{ cautions() }}\n"
    assert [one.partition(";")[0] for one in problems(tmp_path, page)] == [
        "content/page.md:12: the cautions of a lesson stand before its first section"
    ]

"""What leaves a page by its copy buttons: LaTeX that renders, plain text that a calculator with units follows."""

import math
import re
from pathlib import Path
from typing import Any, get_args

import numpy as np
import pint
import pytest
from lesson_sites import rendered
from matplotlib.mathtext import MathTextParser
from test_workings import FILES, solved, workings

from hubwright.lessons.answer_sentence import answer_sentence
from hubwright.lessons.views import setup_view
from hubwright.lessons.workings import working_of
from hubwright.lessons.workings.model import Working
from hubwright.lessons.workings.notation import latex_copy, plain_copy
from hubwright.lessons.workings.sentence import in_one_sentence
from hubwright.quantities import Quantity, System
from hubwright.results import solve
from hubwright.setup import vary
from wagon_text import WAGON as WHOLE_WAGON

PINT = pint.UnitRegistry()
FUNCTIONS = {
    "sqrt": np.sqrt, "tan": np.tan, "sin": np.sin, "cos": np.cos, "atan": np.arctan, "acos": np.arccos,
    "abs": abs, "pi": math.pi,
}  # fmt: skip
_ATOM = r"[A-Za-z]+(?:\^(?:\([\d/]+\)|-?[\d.]+))?"
_UNIT = rf"(?:\(in/s\)/mph|million turns|{_ATOM}(?:[*/]{_ATOM})*)"
_NUMBER = re.compile(rf"(?<![\w.])(\d+(?:\.\d+)?)(?: ({_UNIT}))?")


def every_working() -> list[Any]:
    found = {}
    for name, text in {**FILES, "whole wagon": WHOLE_WAGON}.items():
        for path, made, _ in workings(solved(text)):
            found[f"{name} {path}"] = made
    return [pytest.param(made, id=path) for path, made in found.items()]


EVERY = every_working()


def evaluated(line: str) -> Any:
    """The value of a line of plain text, its units worked out by pint."""

    def quantity(match: re.Match[str]) -> str:
        number, unit = match[1], match[2]
        return f"Q({number}, {unit!r})" if unit and unit != "million turns" else number

    code = _NUMBER.sub(quantity, line).replace("^", "**")
    return eval(code, {"__builtins__": {}}, {"Q": lambda n, u: PINT.Quantity(n, u.replace("^", "**")), **FUNCTIONS})


@pytest.mark.parametrize("system", get_args(System))
@pytest.mark.parametrize("made", EVERY)
def test_plain_text_comes_to_its_result_units_included(made: Working, system: System) -> None:
    lines = plain_copy(made, system).split("\n")
    puts = [place for place, line in enumerate(lines) if line.startswith("  = ")]
    assert len(puts) == 2 * len(made.lines)
    for place in puts[::2]:
        if lines[place] == "  = 0":  # nothing acts
            assert lines[place + 1].split()[1] == "0"
            continue
        reached, told = (PINT.Quantity(evaluated(lines[at][4:])).to_base_units() for at in (place, place + 1))
        over = reached / told if told.magnitude else reached / PINT.Quantity(1.0, told.units)
        # powers such as 7/9 and 29/27 leave their rounding in the dimensions
        assert all(abs(power) < 1e-9 for power in over.dimensionality.values()), lines[place]
        digits = max(made.digits, len(re.sub(r"\D", "", lines[place + 1].split()[1]).strip("0")))
        shown = abs(float(lines[place + 1].split()[1]))
        half = 0.500001 * 10 ** (math.floor(math.log10(shown)) + 1 - digits) / shown if shown else 1e-3
        assert abs(over.magnitude - bool(shown)) <= half, (lines[place], lines[place + 1])


@pytest.mark.parametrize("system", get_args(System))
@pytest.mark.parametrize("made", EVERY)
def test_latex_renders(made: Working, system: System) -> None:
    text = latex_copy(made, system)
    head, body = text.split("\\begin{aligned}\n")
    assert body.isascii(), "a LaTeX file may not take other characters in a formula"
    assert head == f"% {made.what}\n"
    parser: Any = MathTextParser("path")
    for line in body.removesuffix("\n\\end{aligned}").split("\\\\\n"):
        parser.parse(f"${line.replace('&', '').strip()}$")  # raises where it is no formula


def test_a_wrong_line_of_plain_text_would_be_noticed() -> None:
    made = working_of(setup_view(solved(FILES["wagon"]), "stock"), "standing.row_load.outboard.z")
    put, told = plain_copy(made, "us").split("\n")[-2:]
    assert evaluated(put[4:]).to("lbf").magnitude == pytest.approx(evaluated(told[4:]).magnitude, rel=1e-3)
    assert evaluated(put[4:].replace("12 in/ft", "1 in/ft")).to("lbf").magnitude != pytest.approx(
        evaluated(told[4:]).magnitude, rel=1e-3
    )


def test_a_sentence_names_setup_case_span_and_what_it_leaves_out() -> None:
    stock = setup_view(solved(FILES["wagon"]), "stock")
    told = in_one_sentence(working_of(stock, "standing.bearing_moment.x"), "si")
    # the file's mounting face has a range, 42 mm ± 4 mm, which is worth 4 mm of road less wheel and hub
    assert re.fullmatch(
        r"Tipping moment on the hub, for “Test wagon”, left front wheel, standing: M_x = [\d.]+ N·m "
        r"\(span [\d.]+ to [\d.]+ N·m over the ranges of the inputs\); leaves out the wheel's gyroscopic moment, "
        r"camber, and the patch's shift under the rim\.",
        told,
    ), told
    assert "lbf·ft" in in_one_sentence(working_of(stock, "standing.bearing_moment.x"), "us")


def test_a_sentence_about_a_changed_setup_says_what_was_changed() -> None:
    results = solve(vary(solved(FILES["wagon"]).setup, {"wheel.spacer": "25 mm"}))
    told = in_one_sentence(working_of(setup_view(results, "variant"), "load_line_offset"), "si")
    assert "“Test wagon” with wheel.spacer = 25 mm, left front wheel" in told


def test_a_life_is_told_to_one_digit_with_what_it_does_not_say() -> None:
    made = working_of(setup_view(solved(FILES["wagon"]), "stock"), "standing.life.detailed")
    for text in (in_one_sentence(made, "si"), plain_copy(made, "si").split("\n")[-1]):
        assert re.search(r"\b[1-9]0* million turns", text), text
    assert "no digit more. One in ten" in in_one_sentence(made, "si")
    assert r"&\approx " in latex_copy(made, "si")


def test_a_short_answer_is_one_sentence_with_its_setup(tmp_path: Path) -> None:
    state, text = rendered(
        tmp_path,
        "---\ntitle: How hard?\n---\n"
        '{% call answer("Standing", [("pushes up", stock.standing.contact_force.z, "push")]) %}\nSo.\n{% endcall %}',
    )
    assert not state.problems
    told = re.search(r'data-sentence-us="([^"]*)"', text)
    assert told is not None
    assert re.fullmatch(
        r"How hard\? Standing, for “Test wagon”, left front wheel: [\d,]+ lbf pushes up\. A simplified model; .*:",
        told[1],
    ), told[1]
    assert 'id="short-answer"' in text


def test_a_short_answer_tells_the_span_of_a_value_that_has_one() -> None:
    value = Quantity(5000.0, "N", low=4000.0, high=6000.0)
    assert "5 kN (span 4 to 6 kN) up" in answer_sentence("", "Standing", [("up", value)], "", "si")

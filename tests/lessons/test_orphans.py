"""Orphan numbers: what states a result without computing it is found, and innocent words pass."""

import pytest

from hubwright.lessons.orphans import orphans


@pytest.mark.parametrize(
    "text",
    [
        "12 mm", "12mm", "5.1 kN", "−5 mm", "1,200 lb", "½ in", '8"', "0.4 g", "35°", "35 degrees", "245 mm.",
        "25-mm spacer",
        "30 %", "30 percent", "thirty per cent", "80 ft-lb", "110 N·m", "260 N/mm", "10 km/h",
        "12 in outboard", "12&nbsp;mm",
        "**12** mm", "<b>12</b> mm", "twelve millimetres", "Twelve millimeters", "half an inch",
        "a quarter of an inch",
        "a tenth of a millimetre", "six hundred newtons", "twenty-five kilograms", "a dozen pounds",
        "hundreds of newtons",
        "three times", "3 times", "3.5×", "two and a half times", "twice", "thrice", "triples", "doubled",
        "doubling", "halves",
        "a double load", "threefold", "20 to one", "two to one", "3:1", "half as much again", "half as much",
        "a third more",
        "two thirds of the weight", "a quarter less", "as much again",
    ],
)  # fmt: skip
def test_finds_a_number_that_states_a_result(text: str) -> None:
    assert orphans(f"It is {text}, they say.")


@pytest.mark.parametrize(
    "text",
    [
        "two rows", "one wheel", "four wheels", "13 balls a row", "lesson 7", "lesson 7 in the course", "Figure 4.1",
        "half shaft", "half of it", "second person", "one second", "a third party", "ISO 8855:2011",
        "ISO 281:2007 in part",
        "in 1901", "7th edition, 2012", "M14x1.5", "245/75R16", "double-row bearing", "at all times", "one in ten",
        "`12 mm`", '<img alt="x" width="12 mm">', "[a link](12mm.md)", "quarter-car", "a fifth wheel", "two supports",
    ],
)  # fmt: skip
def test_passes_innocent_words(text: str) -> None:
    assert orphans(f"It is {text}, they say.") == []


def test_passes_numbers_of_lists_and_headings() -> None:
    assert orphans("## 4.1 Heading\n\n1. one item\n2. another\n") == []


def test_code_blocks_are_no_prose() -> None:
    assert orphans("```sh\ncut 12 mm\n```\nand 13 mm") == orphans("\n\n\nand 13 mm")


def test_lines_are_those_of_the_file_across_front_matter_and_multi_line_tags() -> None:
    source = (
        "---\ntitle: A 12 mm thing\nlesson: 3\nhazards: [13 mm]\nsummary: >\n  it is\n  5 kN\n---\n"
        'Fine. {{ note("assumed", "it is 3 mm") }}\n'
        '{% call answer(\n  "tag 9 mm",\n  [("words", given("4 mm"), "push")],\n) %}now 7 mm{% endcall %}\n'
    )
    assert [(orphan.line, orphan.text) for orphan in orphans(source)] == [
        (2, "12 mm"),
        (7, "5 kN"),
        (9, "3 mm"),
        (11, "9 mm"),
        (13, "7 mm"),
    ]


def test_strings_of_givens_claims_and_data_are_exempt_and_alternatives_are_not() -> None:
    assert orphans('{{ given("25 mm") }} {{ claim("three times", r, between=(2, 4), otherwise="5 mm") }}') == []
    assert orphans('{% set wide = vary(stock, {"wheel.spacer": "25 mm"}) %}{{ table["12 mm"] }}') == []
    assert [orphan.text for orphan in orphans('{{ "twice" if a > b else "5 mm" }}')] == ["twice", "5 mm"]


def test_a_computed_number_before_a_unit_is_no_orphan_and_does_not_join_words() -> None:
    assert orphans("{{ load | number }} kN on two {{ kind }} kN") == []


def test_a_comment_is_no_prose() -> None:
    assert orphans("{# 12 mm #}<!-- 12 mm -->") == []

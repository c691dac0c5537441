"""The HTML of the blocks, as a browser's parser would see it after Markdown."""

from pathlib import Path
from textwrap import dedent
from xml.etree import ElementTree

import markdown
import pytest
from lesson_sites import problems, rendered

from hubwright.lessons.cautions import ALWAYS, CAUTIONS, LAST, caution_texts
from hubwright.lessons.environment import marked, unmarked
from hubwright.lessons.page_state import PageState
from hubwright.lessons.sections import LessonExtension

FRONT = "---\ntitle: What is it?\nlesson: 4\n---\n"


def html_of(directory: Path, text: str) -> tuple[PageState, ElementTree.Element]:
    """A page's state and its HTML, which must be well formed."""
    state, source = rendered(directory, dedent(text))
    assert [str(problem) for problem in state.problems] == []
    extension = LessonExtension()
    extension.page = state
    html = markdown.markdown(source, extensions=["tables", "toc", "md_in_html", "attr_list", "smarty", extension])
    html = state.put_back(state.put_back(html), late=True)
    whole = html.replace("&nbsp;", " ").replace("<br>", "<br/>")
    return state, ElementTree.fromstring(f"<main>{whole}</main>")


def text_of(element: ElementTree.Element | None) -> str:
    assert element is not None
    return " ".join("".join(element.itertext()).replace("\u00a0", " ").replace("\u2060", "").split())


def test_the_opening_holds_mark_title_and_answer(tmp_path: Path) -> None:
    numeral = '("pushes up", stock.standing.bearing_force.z, "push")'
    text = '{% call answer("The short answer", [' + numeral + "]) %}\nA *sentence*.\n{% endcall %}\n"
    _, page = html_of(tmp_path, FRONT + text + "\nText.\n\n## One\n\nMore.\n")
    opening = page[0]
    assert (opening.tag, opening.get("class")) == ("header", "opening")
    assert [text_of(part) for part in opening[:2]] == ["4", "What is it?"]
    answer = opening[2]
    assert answer.get("class") == "answer"
    assert text_of(answer.find("dl/div/dt")) == "pushes up"
    assert answer.find("dl/div/dd/span/span[@class='us']/small") is not None
    assert answer.find("p/em") is not None


def test_sections_are_numbered_and_named_by_their_headings(tmp_path: Path) -> None:
    _, page = html_of(tmp_path, FRONT + "Before.\n\n## One thing\n\nText.\n\n## Another\n\nText.\n")
    sections = page.findall("section")
    assert [text_of(section.find("span")) for section in sections] == ["4.1", "4.2"]
    for section in sections:
        heading = section.find("h2")
        assert heading is not None
        assert section.get("aria-labelledby") == heading.get("id")


def test_a_page_that_is_no_lesson_has_no_numbers_in_its_margin(tmp_path: Path) -> None:
    _, page = html_of(tmp_path, "# Home\n\n## One\n\nText.\n")
    assert page.find("section/span") is None


def test_notes_get_letters_and_return_in_the_lists_at_the_end(tmp_path: Path) -> None:
    text = """\
        ## One
        A sentence.
        {{ note("assumed", "Nothing *bends*.") }}
        {{ note("source", "The law of the lever.", "lever") }}
        """
    _, page = html_of(tmp_path, FRONT + dedent(text))
    paragraph = page.find("section/p")
    assert paragraph is not None
    rings = paragraph.findall("span/a[@class='ring']")
    assert [ring.get("href") for ring in rings] == ["#note-a", "#note-b"]
    sides = paragraph.findall("span[@class='side']")
    assert [side.get("id") for side in sides] == ["note-a", "note-b"]
    assert text_of(sides[1]) == "bSource The law of the lever. [1]"
    titles = [text_of(heading) for heading in page.findall("section/h2")]
    assert titles == ["One", "What was assumed", "Sources"]
    assert text_of(page.findall("section/ul")[-1]) == "1Archimedes, On the equilibrium of planes."


def test_the_closure_table_adds_up_and_names_every_force(tmp_path: Path) -> None:
    _, page = html_of(tmp_path, "{{ closure_table(stock.standing) }}")
    rows = page.findall(".//tbody/tr")
    assert [text_of(row[0]) for row in rows] == [
        "The road", "Weight of tire and wheel", "Weight of hub and disc", "Outboard row", "Inboard row",
    ]  # fmt: skip
    for system, decimals in (("si", 3), ("us", 1)):
        values = [
            text_of(row.find(f"td/span/span[@class='{system}']")).replace("−", "-").replace(",", "") for row in rows
        ]
        # five numbers rounded once each
        assert sum(map(float, values)) == pytest.approx(0.0, abs=5 * 0.5 * 10**-decimals)


def test_a_claim_box_holds_the_claim_and_markdown(tmp_path: Path) -> None:
    _, page = html_of(
        tmp_path, '{% call claim_box("It cannot.") %}\nIt **can**.\n\n| a | b |\n|---|---:|\n| 1 | 2 |\n{% endcall %}\n'
    )
    box = page.find("div[@class='claim']")
    assert box is not None
    assert text_of(box.find("blockquote")) == "“It cannot.”"
    assert box.find("p/strong") is not None
    table = box.find("div[@class='tablewrap']/table")
    assert table is not None
    assert [cell.get("class") for cell in table.findall(".//th")] == [None, "n"]


def test_no_element_has_an_inline_style(tmp_path: Path) -> None:
    _, page = html_of(
        tmp_path, '| a |\n|--:|\n| 1 |\n\n{{ working(stock, "loaded_radius") }}\n{{ closure_table(stock.standing) }}'
    )
    assert [element.tag for element in page.iter() if element.get("style")] == []


def test_cautions_stand_before_the_first_section_unless_the_lesson_places_them(tmp_path: Path) -> None:
    hazards = FRONT.replace("---\n", "---\nhazards: [lifting]\n", 1)
    _, page = html_of(tmp_path, hazards + "Text.\n\n## One\n\nText.\n")
    tags = [element.tag for element in page]
    assert tags.index("aside") < tags.index("section")
    _, page = html_of(tmp_path, hazards + "Text.\n\n{{ cautions() }}\n\nMore.\n\n## One\n\nText.\n")
    tags = [element.tag for element in page]
    assert tags.count("aside") == 1
    assert tags.index("p") < tags.index("aside") < tags.index("section")


@pytest.mark.parametrize("hazard", CAUTIONS)
def test_a_site_adds_cautions_and_drops_none(hazard: str) -> None:
    texts = caution_texts([hazard], ["Mind the dog."])
    assert texts == [*ALWAYS, *CAUTIONS[hazard], "Mind the dog.", LAST]


def test_a_line_of_block_tags_does_not_split_a_paragraph() -> None:
    assert unmarked(
        marked("One.\n{% if x %}\nTwo.\n{% endif %}\nThree.\n").replace("{% if x %}", "").replace("{% endif %}", "")
    ) == ("One.\nTwo.\nThree.\n")


def test_a_mark_never_lands_inside_a_tag(tmp_path: Path) -> None:
    text = "A.\n{% set x = [\n  1,\n  2,\n] %}\nB {{ x[\n0] }}.\n"
    assert problems(tmp_path, text) == []
    assert rendered(tmp_path, text)[1] == "A.\nB 1.\n"

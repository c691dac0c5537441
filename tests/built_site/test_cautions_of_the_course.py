"""Every lesson carries the cautions of its hazards before its first section, and no page promises what none can."""

import re
from html import unescape
from pathlib import Path

import yaml

import sample_sites
from hubwright.lessons.cautions import ALWAYS, CAUTIONS, LAST
from hubwright.lessons.wording import forbidden_words

LESSONS = Path(__file__).parents[2] / "content" / "lessons"
QUOTED = re.compile(r'<aside class="caution".*?</aside>|<p class="limits">.*?</p>|<blockquote>.*?</blockquote>', re.S)


def text_of(html: str) -> str:
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", html)).replace("’", "'").split())


def test_the_cautions_of_a_lesson_come_before_its_first_section(demonstration: Path) -> None:
    lessons = sorted(LESSONS.glob("*.md"))
    assert lessons
    for source in lessons:
        hazards = yaml.safe_load(source.read_text(encoding="utf-8").split("---")[1])["hazards"]
        assert hazards, source.name
        page = (demonstration / "lessons" / source.with_suffix(".html").name).read_text(encoding="utf-8")
        box = page[page.index('<aside class="caution"') : page.index("</aside>", page.index('<aside class="caution"'))]
        assert page.index(box) < page.index("<section"), source.name
        for caution in (*ALWAYS, *(text for hazard in hazards for text in CAUTIONS[hazard]), LAST):
            assert " ".join(caution.split()) in text_of(box), (source.name, caution)


def test_no_page_promises_what_no_page_can(demonstration: Path) -> None:
    promised = {}
    for path in sample_sites.pages_of(demonstration):
        page = (demonstration / path).read_text(encoding="utf-8")
        main = QUOTED.sub(" ", page[page.index("<main") : page.index("</main>")])
        if found := [one.word for one in forbidden_words(text_of(main))]:
            promised[path] = found
    assert promised == {}

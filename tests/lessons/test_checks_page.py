"""The page of sources and checks tells what the data of the tests say, and what our functions give now."""

import re
import tomllib
from collections import Counter
from html import unescape
from pathlib import Path

import pytest
from lesson_sites import write_docs, write_site

import hubwright.published
from hubwright.lessons import check_groups, checks_page
from hubwright.lessons.course import Course
from hubwright.lessons.drawings import Undrawn
from hubwright.lessons.generated_page import Site
from hubwright.lessons.page_state import PageState
from hubwright.lessons.site_build import build_site
from hubwright.published import ratings
from hubwright.published.check import Calculation, Check

DATA = tomllib.loads((Path(hubwright.published.__file__).parent / "checks.toml").read_text("utf-8"))["check"]


def body(tmp_path: Path, states: dict[str, PageState] | None = None) -> str:
    course = Course.read(write_docs(tmp_path), in_view="wagon", shown="content")
    page = PageState(file="generated")
    text = checks_page.body(page, Site(course, Undrawn(), states=states or {}))
    return page.put_back(page.put_back(text), late=True)


def text_of(html: str) -> str:
    return unescape(re.sub(r"<[^>]+>", " ", html))


def test_the_counts_are_those_of_the_data(tmp_path: Path) -> None:
    html = body(tmp_path)
    kinds = Counter(entry["provenance"] for entry in DATA)
    said = text_of(html)
    assert f"{len(DATA)} values from print" in said
    assert f"{len(DATA)} of {len(DATA)} agree" in said
    for words, kind in (("Recomputed", "recomputed"), ("From memory", "from memory"), ("A second road", "theory")):
        assert f"<dt>{words}: {kinds[kind]}</dt>" in html
    assert "No document was opened" in said


def test_every_value_stands_as_printed_beside_ours(tmp_path: Path) -> None:
    html = body(tmp_path)
    assert len(re.findall(r'<th[^>]* scope="row">', html)) == len(DATA)
    for entry in DATA:
        assert unescape(entry["quantity"]) in unescape(html)
        assert entry["source"].lower() in text_of(html).lower()
    row = next(row for row in html.split("<tr") if "rear normal force" in row and "3220" in row)
    cells = [text_of(cell).strip() for cell in re.findall(r"<td.*?</td>", row)]
    # 3220 lbf, 30 mi/h in 200 ft up a grade of 1 in 10: N2 by hand
    a, g, theta = 44.0**2 / 400, 32.2, 0.1
    cosine = 1 / (1 + theta**2) ** 0.5
    force = 3220 * (a / g + theta * cosine)
    N2 = (3220 * cosine * 60 + force * 24) / 120
    assert re.search(r"Printed\s+1,763 lbf", cells[0])
    ours = re.search(r"Ours\s+([\d,.]+) lbf", cells[1])
    assert ours is not None
    assert float(ours[1].replace(",", "")) == pytest.approx(N2, rel=1e-5)


def test_a_function_that_drifts_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def off(check: Check) -> tuple[float, ...]:
        return tuple(value * 1.01 for value in right.values(check))

    right = next(each for each in ratings.SUBJECT.calculations if each.ids == ("fc_roller",))
    wrong = Calculation(right.ids, off, right.functions)
    monkeypatch.setattr(check_groups, "calculation_of", lambda check: wrong if right.covers(check) else found(check))
    monkeypatch.setattr(check_groups, "computed", lambda check: check_groups.calculation_of(check).values(check))
    subject = type(ratings.SUBJECT)(ratings.SUBJECT.words, (*ratings.SUBJECT.calculations, wrong))
    monkeypatch.setattr(check_groups, "SUBJECTS", (*check_groups.SUBJECTS, subject))
    check_groups.groups.cache_clear()
    try:
        html = body(tmp_path)
    finally:
        monkeypatch.undo()
        check_groups.groups.cache_clear()
    rollers = sum(entry["id"].startswith("fc_roller") for entry in DATA)
    assert f"{len(DATA) - rollers} of {len(DATA)} agree" in text_of(html)
    assert "do not all agree" in html


found = check_groups.calculation_of


def test_sources_name_the_pages_that_cite_them(tmp_path: Path) -> None:
    citing = PageState(file="content/lessons/one.md", lesson=1, title="Why does it hum?", sources=["lever"])
    html = body(tmp_path, {"lessons/one.md": citing})
    assert 'In <a href="/lessons/one.md">1. Why does it hum?</a>' in html
    assert "Not cited." in body(tmp_path)


def test_what_rests_on_practice_or_memory_is_told_by_the_formulas_own_words(tmp_path: Path) -> None:
    html = body(tmp_path)
    practice = text_of(html.split('id="practice"')[1].split("</details>")[0])
    memory = text_of(html.split('id="memory"')[1].split("</details>")[0])
    # two flanges of half an inch and 0.93 of the free radius are common practice; 35948 is from memory
    assert "wheel_geometry.RIM_FLANGES_TOGETHER" in practice
    assert "tire_geometry.USUAL_LOADED_SHARE" in practice
    assert "roller_contact.ROLLER_COEFFICIENT" in memory


def test_a_built_site_lists_sources_after_its_lessons(tmp_path: Path) -> None:
    lesson = (
        "---\ntitle: Why does it hum?\nlesson: 1\n---\nIt hums. {{ note('source', 'A lever.', 'lever') }}\n\n"
        "{{ working(stock, 'standing.bearing_force.z') }}\n"
    )
    site = build_site(write_site(tmp_path, hum=lesson))
    html = (site / "checks.html").read_text("utf-8")
    assert '<a href="hum.html">1. Why does it hum?</a>' in html
    working = (site / "hum.html").read_text("utf-8")
    assert 'href="reference/free_body.html#wheel_end"' in working
    assert '<h2 id="wheel_end">' in (site / "reference" / "free_body.html").read_text("utf-8")
    assert ".md" not in re.sub(r"<code>.*?</code>", "", html.split("<main")[1].split("</main>")[0])

"""The theme’s sample in a real browser: units, notes, steps, search, keyboard, dark, paper."""

import re
from collections.abc import Callable
from itertools import pairwise
from typing import Any

import pytest

pytestmark = pytest.mark.browser
Visiting = Callable[..., Any]
PAGES = ("index.html", "lessons/1.html", "reports/yard-gate.html")


@pytest.fixture(params=["sample_folder", "sample_server"])
def origin(request: pytest.FixtureRequest) -> str:
    return str(request.getfixturevalue(request.param))


def test_the_unit_switch_turns_text_tables_and_figures_and_is_remembered(visit: Visiting, origin: str) -> None:
    seen = visit(origin)
    page = seen.go("lessons/1.html")
    si, us = page.locator(".big .si, .wide svg.si, table .si"), page.locator(".big .us, .wide svg.us, table .us")
    assert (si.first.is_visible(), us.first.is_visible()) == (True, False)
    assert page.locator(".wide svg.si").is_visible()
    page.get_by_label("US", exact=True).check(force=True)
    assert not any(one.is_visible() for one in si.all())
    assert page.locator(".wide svg.us").is_visible()
    assert page.locator("tbody .us").first.is_visible()
    page = seen.go("reports/yard-gate.html")
    assert page.get_by_text("66 lb", exact=True).is_visible()
    assert not page.get_by_text("30 kg", exact=True).is_visible()
    assert page.get_by_label("US", exact=True).is_checked()


def test_units_turn_with_the_keyboard_and_focus_is_seen(visit: Visiting, sample_folder: str) -> None:
    page = visit(sample_folder).go("lessons/1.html")
    page.get_by_label("SI", exact=True).focus()
    page.keyboard.press("ArrowRight")
    assert page.evaluate("document.documentElement.dataset.units") == "us"
    assert page.locator(".either label:has(:focus-visible)").evaluate("e => getComputedStyle(e).outlineWidth") == "3px"


def test_dark_is_switched_and_remembered_and_paper_stays_light(visit: Visiting, sample_folder: str) -> None:
    seen = visit(sample_folder)
    page = seen.go("lessons/1.html")
    ground = "getComputedStyle(document.body).backgroundColor"
    light = page.evaluate(ground)
    page.get_by_role("button", name="Dark").click()
    page = seen.go("index.html")
    assert page.evaluate(ground) != light
    assert page.get_by_role("button", name="Dark").get_attribute("aria-pressed") == "true"
    page.emulate_media(media="print")
    assert page.evaluate(ground) == "rgb(255, 255, 255)"


def test_no_console_message_and_no_foreign_request_under_a_strict_policy(visit: Visiting, origin: str) -> None:
    seen = visit(origin)
    for path in PAGES:
        seen.go(path)
    assert seen.console == []
    assert seen.foreign() == []
    assert any("schola-regular" in url for url in seen.asked)  # the listening works


@pytest.mark.parametrize("width", [360, 768, 1056, 1280, 1600])
@pytest.mark.parametrize("path", PAGES)
def test_nothing_scrolls_sideways(visit: Visiting, sample_folder: str, path: str, width: int) -> None:
    page = visit(sample_folder, width=width).go(path)
    for _ in ("si", "us"):
        for fold in page.locator("details").all():
            fold.evaluate("fold => { fold.open = true; }")
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        page.get_by_label("US", exact=True).check(force=True)


@pytest.mark.parametrize("width", [1056, 1280, 1600])
def test_margin_notes_neither_overlap_nor_open_gaps(visit: Visiting, sample_folder: str, width: int) -> None:
    page = visit(sample_folder, width=width).go("lessons/1.html")
    box = "all => all.map(e => e.getBoundingClientRect()).map(b => [b.top, b.bottom, b.left, b.right])"
    notes = page.locator(".side").evaluate_all(box)
    texts = page.locator("section:has(#s11) > p").evaluate_all(box)
    assert len(notes) == 3
    assert all(after[0] >= before[1] for before, after in pairwise(notes))
    assert min(note[2] for note in notes) >= max(text[3] for text in texts)
    assert max(note[3] for note in notes) <= page.locator("main").evaluate_all(box)[0][3] + 1
    # paragraphs follow one another at their own distance, however tall the notes beside them are
    assert all(0 < after[0] - before[1] < 20 for before, after in pairwise(texts))
    table = page.locator(".tablewrap.wide").bounding_box()
    assert table["y"] >= notes[-1][1]


def test_on_a_phone_a_ring_opens_its_note_and_shuts_it(visit: Visiting, sample_folder: str) -> None:
    page = visit(sample_folder, width=360).go("lessons/1.html")
    ring, note = page.locator("#ref-a"), page.locator("#note-a")
    assert not note.is_visible()
    ring.focus()
    page.keyboard.press("Enter")
    assert note.is_visible()
    assert ring.get_attribute("aria-expanded") == "true"
    ring.click()
    assert not note.is_visible()
    assert page.locator(".narrow svg.si").is_visible()
    assert not page.locator(".plate > .wide").is_visible()


def test_a_figure_is_built_up_with_buttons_and_arrow_keys(visit: Visiting, sample_folder: str) -> None:
    page = visit(sample_folder).go("lessons/1.html")

    def shown() -> list[str]:
        layers = page.locator(".wide svg.si .layer").evaluate_all(
            "all => all.filter(e => getComputedStyle(e).visibility === 'visible').map(e => e.dataset.name.slice(-1))"
        )
        return list(layers)

    assert shown() == ["1", "2", "3"]
    page.get_by_role("button", name="Step 1").click()
    assert shown() == ["1"]
    page.keyboard.press("ArrowRight")
    assert shown() == ["1", "2"]
    assert page.locator(".build li.now").inner_text().endswith("Hang its weight on.")
    assert page.get_by_role("status").first.inner_text().startswith("Step 2 of 3.")
    page.keyboard.press("End")
    assert shown() == ["1", "2", "3"]
    page.keyboard.press("Home")
    page.get_by_role("button", name="Back").click(force=True)  # marked as having nothing to do
    assert shown() == ["1"]


def test_a_word_is_found_over_http(visit: Visiting, sample_server: str) -> None:
    seen = visit(sample_server)
    page = seen.go("search.html")
    page.get_by_label("Word or words").fill("hinges")
    page.locator(".found a").first.wait_for()
    assert any("lessons/1.html" in url for url in page.locator(".found a").evaluate_all("all => all.map(a => a.href)"))
    assert seen.console == []
    page.get_by_label("Word or words").fill("zebra")
    assert page.locator(".found li").count() == 0
    assert page.locator("#found-count").inner_text().startswith("Nothing")


def test_without_script_both_units_and_the_whole_figure_stand(visit: Visiting, sample_folder: str) -> None:
    page = visit(sample_folder, script=False).go("lessons/1.html")
    assert page.locator(".answer p .si").is_visible()
    assert page.locator(".answer p .us").is_visible()
    assert page.locator(".wide svg.si").is_visible()
    assert not page.locator(".wide svg.us").is_visible()
    assert page.locator(".build li").count() == sum(one.is_visible() for one in page.locator(".build li").all()) == 3
    assert page.locator(".side").first.is_visible()
    assert not page.get_by_role("button", name="Dark").is_visible()


def test_paper_has_no_navigation_and_keeps_working_notes_and_cautions(visit: Visiting, sample_folder: str) -> None:
    page = visit(sample_folder, width=700).go("lessons/1.html")
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    page.emulate_media(media="print")
    for selector in (".bar", ".course-nav", ".onward", ".build .row", ".entry", ".skip"):
        assert not page.locator(selector).first.is_visible(), selector
    for selector in (
        ".caution",
        ".side >> nth=1",
        ".worked dl",
        ".estimated table",
        ".wide svg.si",
        ".titleblock",
        ".limits",
    ):
        assert page.locator(selector).first.is_visible(), selector


def test_a_short_lesson_prints_on_few_sheets(visit: Visiting, sample_folder: str) -> None:
    pdf = visit(sample_folder).go("lessons/1.html").pdf(prefer_css_page_size=True)
    sheets = len(re.findall(rb"/Type\s*/Page\b", pdf))
    assert 1 <= sheets <= 3

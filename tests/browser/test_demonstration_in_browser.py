"""The demonstration in a real browser: units, search, steps of figures, no script, dark, phone."""

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import sample_sites
from browser.folded_pages import choose, unfolded

pytestmark = pytest.mark.browser
# what stands in rings or on dimension lines, and is to be looked up in the key
LETTERS = ".narrow svg:visible .layer.fresh :is([data-name^=label],[data-name^=dimension]):not(.elsewhere) text"
# rings of notes that begin a line, parted from the word that they stand at
RINGS_ALONE = """() => [...document.querySelectorAll('main p a.ring, main li a.ring')]
    .filter(ring => ring.getClientRects().length
      && ring.getBoundingClientRect().left - ring.closest('p, li').getBoundingClientRect().left < 6)
    .map(ring => ring.id || ring.getAttribute('href'))"""
Visiting = Callable[..., Any]


def test_no_page_scrolls_sideways_or_parts_a_ring_from_its_word_under_a_strict_content_security_policy(
    visit: Visiting, demonstration: Path, server: str
) -> None:
    seen, paths = visit(server), sample_sites.pages_of(demonstration)
    wrong = []
    widths = [360, 768, 1600]
    # a phone shows every page, wider screens one of each folder's alike
    first_of_folder = {path.rpartition("/")[0]: path for path in reversed(paths)}.values()
    seldom = [path for path in paths if path.startswith("reference/") and path not in first_of_folder]
    for path in sorted(paths, key=seldom.__contains__):
        page = unfolded(seen.go(path), path, paths)
        widths.reverse()  # a new width is what takes longest
        for width in [360] if path in seldom else widths:
            page.set_viewport_size({"width": width, "height": 800})
            for units in ("si", "us"):
                choose(page, units)
                if page.evaluate("document.documentElement.scrollWidth") > width:
                    wrong.append((path, units, width))
                wrong += [(path, units, width, ring) for ring in page.evaluate(RINGS_ALONE)]
    assert wrong == []
    assert seen.console == []
    assert seen.foreign() == []


def test_the_unit_switch_turns_every_number_and_figure_of_a_lesson_and_is_remembered(
    visit: Visiting, demonstration: Path, folder: str
) -> None:
    seen = visit(folder)
    lesson = next(path for path in sample_sites.pages_of(demonstration) if path.startswith("lessons/04"))
    page = seen.go(lesson)
    page.get_by_label("US", exact=True).check(force=True)
    for path in (lesson, "index.html", "reports/hill-wagon.html"):
        page = seen.go(path)
        page.evaluate("document.querySelectorAll('details').forEach(fold => { fold.open = true; })")
        shown = "all => all.filter(e => e.getClientRects().length > 0).length"
        assert page.locator(".si").evaluate_all(shown) == 0, path
        assert page.locator(".us").evaluate_all(shown) > 0, path
    page = seen.go(lesson)
    assert page.locator(".fig svg.us").first.is_visible()
    assert not page.locator(".fig svg.si").first.is_visible()


def test_a_word_is_found_in_the_site_opened_from_a_folder(visit: Visiting, folder: str) -> None:
    seen = visit(folder)
    page = seen.go("search.html")
    page.get_by_label("Word or words").fill("outboard")
    page.locator(".found a").first.wait_for()
    page.locator(".found a").first.click()
    page.wait_for_load_state("load")
    assert "outboard" in page.locator("main").inner_text().lower()
    assert seen.console == []


def test_text_is_found_in_the_unit_system_that_the_reader_chose(visit: Visiting, folder: str) -> None:
    seen = visit(folder)
    page = seen.go("search.html")
    page.get_by_label("Word or words").fill("load line")
    page.locator(".found a").first.wait_for()
    said = " ".join(page.locator(".found p").all_inner_texts())
    assert " mm" in said
    assert not re.search(r"\d\s?mm\d", said)  # two systems run together
    page.get_by_label("US", exact=True).check(force=True)
    said = " ".join(page.locator(".found p").all_inner_texts())
    assert " in" in said
    assert " mm" not in said


@pytest.mark.parametrize("width", [360, 1280])
def test_every_figure_with_steps_is_built_up_by_buttons_and_arrow_keys(
    visit: Visiting, demonstration: Path, folder: str, width: int
) -> None:
    seen = visit(folder, width=width)
    built = 0
    for path in sample_sites.pages_of(demonstration):
        if not path.startswith(("lessons/", "index")):
            continue
        page = seen.go(path)
        for figure in page.locator("figure[data-build]").all():
            last = figure.locator(".build li").count()
            assert figure.get_attribute("data-step") == str(last), path
            figure.get_by_role("button", name="Back", exact=True).click()
            assert figure.get_attribute("data-step") == str(last - 1), path
            page.keyboard.press("Home")
            assert figure.get_attribute("data-step") == "1", path
            now = figure.locator(".build li.now")
            assert now.count() == 1
            assert now.is_visible()
            hidden = figure.locator("svg:visible .layer.later").count()
            assert hidden > 0, path
            page.keyboard.press("ArrowRight")
            assert figure.get_attribute("data-step") == "2", path
            page.keyboard.press("End")
            assert figure.locator("svg .later").count() == 0, path
            built += 1
    assert built >= 10


def test_without_script_every_figure_is_finished_and_every_step_is_told(
    visit: Visiting, demonstration: Path, folder: str
) -> None:
    seen = visit(folder, script=False)
    for path in ("lessons/04-road-and-hub.html", "index.html"):
        page = seen.go(path)
        assert page.locator(".plate svg.si").first.is_visible()
        assert page.locator("svg .later").count() == 0
        steps = page.locator("figure[data-build]").first.locator(".build li").all()
        assert len(steps) > 3
        assert all(step.is_visible() for step in steps)


@pytest.mark.parametrize("path", ["lessons/06-braking-and-corners.html", "reports/hill-wagon.html", "index.html"])
def test_the_dark_sheet_is_dark_in_text_and_figures(visit: Visiting, folder: str, path: str) -> None:
    page = visit(folder, dark=True).go(path)
    colour = "e => getComputedStyle(e).color.match(/\\d+/g).slice(0, 3).map(Number)"
    assert min(page.locator("main p").first.evaluate(colour)) > 128
    ground = page.evaluate("getComputedStyle(document.body).backgroundColor.match(/\\d+/g).map(Number)")
    assert max(ground) < 64
    stroke = "e => getComputedStyle(e).stroke.match(/\\d+/g).slice(0, 3).map(Number)"
    assert min(page.locator("svg:visible .s-ink").first.evaluate(stroke)) > 128
    # the twin in the other system refers to parts that are not shown: they take its colours all the same
    page.get_by_label("US", exact=True).check(force=True)
    used = page.locator("svg.us:visible use").first
    assert used.evaluate("e => e.getBoundingClientRect().width") > 20


def test_on_a_phone_a_step_shows_one_view_with_at_most_three_letters_and_their_key(
    visit: Visiting, demonstration: Path, folder: str
) -> None:
    seen = visit(folder, width=360)
    crowded = []
    for path in sample_sites.pages_of(demonstration):
        if not path.startswith(("lessons/", "index")):
            continue
        page = seen.go(path)
        for figure in page.locator("figure[data-build]").all():
            figure.get_by_role("button", name="Back", exact=True).focus()
            page.keyboard.press("Home")
            for step in range(1, figure.locator(".build li").count()):
                views = figure.locator(".narrow svg:visible")
                # a capital in a ring is the mark of a detail, whose drawing is named by it
                rung = [text for text in figure.locator(LETTERS).all_text_contents() if len(text) < 3]
                letters = [text for text in rung if not text.isupper()]
                rings = figure.locator(".key li:visible .ring").all_inner_texts()
                if views.count() != 1 or len(letters) > 3 or sorted(letters) != sorted(rings):
                    crowded.append((path, figure.get_attribute("id"), step, letters, rings))
                buttons = figure.locator(".build .row").bounding_box()
                figure.locator(".narrow svg:visible").first.scroll_into_view_if_needed()
                assert figure.locator(".build .row").bounding_box()["y"] >= 0, path  # stays within reach
                assert buttons["width"] <= 360
                page.keyboard.press("ArrowRight")
    assert crowded == []

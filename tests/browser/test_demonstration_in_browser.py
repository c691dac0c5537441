from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

import sample_sites
from browser.local_server import serving

pytestmark = pytest.mark.browser
Visiting = Callable[..., Any]


@pytest.fixture(scope="session")
def demonstration(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return sample_sites.build("demonstration", tmp_path_factory.mktemp("demonstration") / "site")


@pytest.fixture(scope="session")
def folder(demonstration: Path) -> str:
    return demonstration.as_uri() + "/"


@pytest.fixture(scope="session")
def server(demonstration: Path) -> Iterator[str]:
    with serving(demonstration) as origin:
        yield origin


def pages(site: Path) -> list[str]:
    # 404.html stands at any depth, so it only works on the site's own server
    return sorted(str(file.relative_to(site)) for file in site.rglob("*.html") if file.name != "404.html")


@pytest.mark.parametrize("width", [360, 768, 1600])
def test_no_page_scrolls_sideways_or_talks_to_the_console_or_to_another_host(
    visit: Visiting, demonstration: Path, folder: str, width: int
) -> None:
    seen = visit(folder, width=width)
    sideways = []
    for path in pages(demonstration):
        page = seen.go(path)
        for units in ("SI", "US"):
            page.get_by_label(units, exact=True).check(force=True)
            page.evaluate("document.querySelectorAll('details').forEach(fold => { fold.open = true; })")
            if page.evaluate("document.documentElement.scrollWidth") > width:
                sideways.append((path, units))
    assert sideways == []
    assert seen.console == []
    assert seen.foreign() == []


def test_a_strict_content_security_policy_holds_on_every_page(
    visit: Visiting, demonstration: Path, server: str
) -> None:
    seen = visit(server)
    for path in pages(demonstration):
        seen.go(path)
    assert seen.console == []
    assert seen.foreign() == []


def test_the_unit_switch_turns_every_number_and_figure_of_a_lesson_and_is_remembered(
    visit: Visiting, demonstration: Path, folder: str
) -> None:
    seen = visit(folder)
    lesson = next(path for path in pages(demonstration) if path.startswith("lessons/04"))
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


def test_margin_notes_of_every_lesson_neither_overlap_nor_open_gaps(
    visit: Visiting, demonstration: Path, folder: str
) -> None:
    seen = visit(folder)
    for path in pages(demonstration):
        page = seen.go(path)
        boxes = page.locator(".side").evaluate_all(
            "all => all.map(e => e.getBoundingClientRect()).map(b => [b.top, b.bottom])"
        )
        assert all(after[0] >= before[1] for before, after in pairwise(boxes)), path
        gaps = page.locator("section > p + p").evaluate_all(
            "all => all.map(p => [p.previousElementSibling, p].map(e => e.getBoundingClientRect()))"
            ".map(([before, after]) => after.top - before.bottom)"
        )
        assert all(0 <= gap < 30 for gap in gaps), path


def test_a_word_is_found_in_the_site_opened_from_a_folder(visit: Visiting, folder: str) -> None:
    seen = visit(folder)
    page = seen.go("search.html")
    page.get_by_label("Word or words").fill("outboard")
    page.locator(".found a").first.wait_for()
    page.locator(".found a").first.click()
    page.wait_for_load_state("load")
    assert "outboard" in page.locator("main").inner_text().lower()
    assert seen.console == []

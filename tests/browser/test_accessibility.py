"""axe-core finds no violation on any page, on the light and on the dark sheet, with everything folded open."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe

import sample_sites
from browser.folded_pages import unfolded

pytestmark = pytest.mark.browser
Visiting = Callable[..., Any]

SHARES = 4  # so that workers can look at the pages side by side
STANDARDS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
RULES = {"runOnly": STANDARDS, "resultTypes": ["violations"]}
# colours are all that differs on the dark sheet
CONTRAST = {"runOnly": {"type": "rule", "values": ["color-contrast"]}, "resultTypes": ["violations"]}
SHEETS = {"light": RULES, "dark": CONTRAST}
# A drawing is one picture with a name and a description; axe cannot judge the thousands of lines within it, and the
# contrast of its words is computed in tests/drawing.
DRAWN = "document.querySelectorAll('svg > g, svg > defs').forEach(each => each.remove())"
BAD = "<img src='x.png'><table><tr><th></th><td>1</td></tr></table><svg role='img'><g></g></svg>"


IS_IN = "typeof axe === 'object'"


def violations(page: Any, options: dict[str, Any]) -> list[str]:
    page.evaluate(DRAWN)
    checker = Axe("null") if page.evaluate(IS_IN) else Axe()  # put into a page once: it is long
    found = checker.run(page, options=options).response["violations"]
    return [f"{one['id']}: {node['target']} {node['html'][:100]!r}" for one in found for node in one["nodes"]]


@pytest.mark.parametrize("share", range(SHARES))
def test_no_page_has_a_violation(visit: Visiting, demonstration: Path, folder: str, share: int) -> None:
    seen = visit(folder)
    wrong: dict[object, list[str]] = {}
    paths = sample_sites.pages_of(demonstration)
    for path in paths[share::SHARES]:
        page = unfolded(seen.go(path), path, paths)
        for sheet, rules in SHEETS.items():
            page.emulate_media(color_scheme=sheet)
            if found := violations(page, rules):
                wrong[path, sheet] = found
    assert wrong == {}


@pytest.mark.parametrize("step", [1, 2])
def test_a_figure_under_way_on_a_phone_has_no_violation(visit: Visiting, folder: str, step: int) -> None:
    page = visit(folder, width=360).go("lessons/04-road-and-hub.html")
    for _ in range(step):
        page.get_by_role("button", name="Back").first.click()
    assert violations(page, RULES) == []


def test_axe_sees_what_it_is_there_to_see(visit: Visiting, folder: str) -> None:
    page = visit(folder).go("glossary.html")
    page.evaluate("html => document.querySelector('main').insertAdjacentHTML('beforeend', html)", BAD)
    found = {one.partition(":")[0] for one in violations(page, RULES)}
    assert found >= {"image-alt", "empty-table-header", "svg-img-alt"}
    page.evaluate("document.querySelector('main p').style.color = '#bbb'")
    assert any(one.startswith("color-contrast") for one in violations(page, CONTRAST))

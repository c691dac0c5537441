"""axe-core finds no violation on any page, on either sheet, everything folded open; and pages keep to themselves."""

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
# from a folder axe cannot load style sheets once more, and none of its rules here needs that
QUIET = {"resultTypes": ["violations"], "preload": False}
RULES = {"runOnly": STANDARDS, "rules": {"color-contrast": {"enabled": False}}, **QUIET}
CONTRAST = {"runOnly": {"type": "rule", "values": ["color-contrast"]}, **QUIET}
# A drawing is one picture with a name and a description; axe cannot judge the thousands of lines within it, and the
# contrast of its words is computed in tests/drawing.
DRAWN = "document.querySelectorAll('svg > g, svg > defs').forEach(each => each.remove())"
BAD = "<img src='x.png'><table><tr><th></th><td>1</td></tr></table><svg role='img'><g></g></svg>"


IS_IN = "typeof axe === 'object'"

# Contrast takes axe most of its time, word by word, and follows from how words are set: their colour, size and weight,
# the first ground behind them, and whether they are taken out of the flow. It sees one word of those set alike on both
# sheets, whatever the page; every word of one page of each folder.
HOW_SET = """() => {
  const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let word = words.nextNode(); word; word = words.nextNode()) {
    if (!word.data.trim()) continue;
    const style = getComputedStyle(word.parentElement);
    const set = [style.color, style.fontSize, style.fontWeight, style.visibility, style.opacity];
    for (let each = word.parentElement; each; each = each.parentElement) {
      const behind = getComputedStyle(each);
      set.push(behind.opacity, behind.position);
      if (behind.backgroundColor !== 'rgba(0, 0, 0, 0)' || behind.backgroundImage !== 'none') {
        set.push(behind.backgroundColor, behind.backgroundImage);
        break;
      }
    }
    word.howSet = (word.howSet || '') + set.join('|') + (word.parentElement.checkVisibility() ? '' : 'hidden');
  }
}"""
ONE_OF_EACH = """known => {
  const seen = new Set(known), words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let word = words.nextNode(); word; word = words.nextNode()) {
    if (seen.has(word.howSet)) word.data = ' ';
    else if (word.howSet) seen.add(word.howSet);
  }
  return [...seen];
}"""


def violations(page: Any, options: dict[str, Any]) -> list[str]:
    page.evaluate(DRAWN)
    checker = Axe("null") if page.evaluate(IS_IN) else Axe()  # put into a page once: it is long
    found = checker.run(page, options=options).response["violations"]
    return [f"{one['id']}: {node['target']} {node['html'][:100]!r}" for one in found for node in one["nodes"]]


def faint(page: Any, known: set[str] | None = None) -> list[str]:
    """Return words of too little contrast on either sheet, but of no known kind; leaves the page light.

    One word of each other kind is left on the page, and its kind is known from then on.
    """
    known = set() if known is None else known
    for sheet in ("light", "dark"):
        page.emulate_media(color_scheme=sheet)
        page.evaluate(HOW_SET)
    kinds = set(page.evaluate(ONE_OF_EACH, sorted(known)))
    found = [] if kinds == known else [f"dark: {one}" for one in violations(page, CONTRAST)]
    page.emulate_media(color_scheme="light")
    if kinds != known:
        found += [f"light: {one}" for one in violations(page, CONTRAST)]
    known |= kinds
    return found


@pytest.mark.parametrize("share", range(SHARES))
def test_no_page_has_a_violation_or_talks_to_console_or_another_host(
    visit: Visiting, demonstration: Path, folder: str, share: int
) -> None:
    seen = visit(folder)
    wrong: dict[str, list[str]] = {}
    known: set[str] = set()
    paths = sample_sites.pages_of(demonstration)
    first_of_folder = {path.rpartition("/")[0]: path for path in reversed(paths)}.values()
    for path in paths[share::SHARES]:
        page = unfolded(seen.go(path), path, paths)
        found = violations(page, RULES)
        if path in first_of_folder:
            found += violations(page, CONTRAST)
        if found := found + faint(page, known):
            wrong[path] = found
    assert wrong == {}
    # of every page opened from a folder
    assert seen.console == []
    assert seen.foreign() == []


@pytest.mark.parametrize("step", [1, 2])
def test_a_figure_under_way_on_a_phone_has_no_violation(visit: Visiting, folder: str, step: int) -> None:
    page = visit(folder, width=360).go("lessons/04-road-and-hub.html")
    for _ in range(step):
        page.get_by_role("button", name="Back").first.click()
    assert violations(page, RULES) == []
    assert violations(page, CONTRAST) == []
    assert faint(page) == []


def test_axe_sees_what_it_is_there_to_see(visit: Visiting, folder: str) -> None:
    page = visit(folder).go("glossary.html")
    page.evaluate("html => document.querySelector('main').insertAdjacentHTML('beforeend', html)", BAD)
    found = {one.partition(":")[0] for one in violations(page, RULES)}
    assert found >= {"image-alt", "empty-table-header", "svg-img-alt"}
    page.evaluate("document.querySelector('main p').style.color = '#bbb'")
    assert any(one.startswith("color-contrast") for one in violations(page, CONTRAST))


@pytest.mark.parametrize(("sheet", "colours"), [("dark", "#111, #444"), ("light", "#bbb, #ddd")])
def test_axe_sees_one_faint_word_on_one_sheet(visit: Visiting, folder: str, sheet: str, colours: str) -> None:
    seen = visit(folder)
    page = seen.go("glossary.html")
    known: set[str] = set()
    assert faint(page, known) == []
    page = seen.go("glossary.html")
    page.evaluate(f"[...document.querySelectorAll('main p')].at(-1).style.color = 'light-dark({colours})'")
    (found,) = faint(page, known)
    assert found.startswith(f"{sheet}: color-contrast")

"""Side notes never cover one another, stay on the sheet, and never push the text apart: on screen and on paper."""

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import sample_sites
from browser.folded_pages import choose

pytestmark = pytest.mark.browser
Visiting = Callable[..., Any]

WIDTHS = (1100, 1280, 1440, 1600)
PAPER = 673  # px: A4 less its margins
SHARES = 2  # so that two workers can look at the pages side by side
# Every note with its box, the box of the sheet, and the white between each block of text and the next below it.
MEASURE = """() => {
  const box = e => {
    const b = e.getBoundingClientRect();
    return [b.left, b.top + scrollY, b.right, b.bottom + scrollY];
  };
  const seen = e => e.getClientRects().length && getComputedStyle(e).visibility !== 'hidden';
  const main = document.querySelector('main');
  const blocks = [...main.querySelectorAll(':scope > *, section > *')]
    .filter(e => seen(e) && !e.matches('section, .mark, span, script'));
  document.querySelectorAll('.fig > .plate').forEach(e => blocks.push(e.previousElementSibling, e));
  const gaps = [];
  blocks.forEach((e, i) => {
    const next = blocks[i + 1];
    if (next && next.parentElement === e.parentElement)
      gaps.push([Math.round(box(next)[1] - box(e)[3]), e.tagName, next.tagName + '.' + next.className]);
  });
  const notes = [...main.querySelectorAll('.side')].filter(seen).map(e => [e.id, ...box(e)]);
  const text = [...main.querySelectorAll('p, li, .tablewrap, .plate, figcaption, .build, .worked, .claim, .caution')]
    .filter(e => seen(e) && !e.closest('.side')).map(e => [e.tagName + '.' + e.className, ...box(e)]);
  return { notes, text, gaps, sheet: box(document.querySelector('.sheet')) };
}"""
WHITE = 64  # px: the white around a figure or the head of a section is less, a gap that a note opens is more


def wrong_with(found: Any) -> list[str]:
    wrong = []
    notes = found["notes"]
    for name, left, top, right, bottom in notes:
        if right > found["sheet"][2] + 1 or left < found["sheet"][0]:
            wrong.append(f"{name} leaves the sheet")
        for other, left_, top_, right_, bottom_ in (*notes, *found["text"]):
            apart = right <= left_ + 1 or right_ <= left + 1 or bottom <= top_ + 1 or bottom_ <= top + 1
            within = other.startswith(("P.", "LI.")) and top_ - 1 <= top <= bottom_ and left < right_
            if other != name and not apart and not within:
                wrong.append(f"{name} covers {other}")
    wrong += [f"{gap} px between {one} and {other}" for gap, one, other in found["gaps"] if gap > WHITE]
    return wrong


def has_notes(page: Path) -> bool:
    return re.search(r'class="[^"]*\bside\b', page.read_text(encoding="utf-8")) is not None


@pytest.mark.parametrize("share", range(SHARES))
def test_notes_of_every_page_neither_overlap_nor_open_gaps(
    visit: Visiting, demonstration: Path, folder: str, share: int
) -> None:
    seen = visit(folder)
    wrong, notes, widths = [], 0, list(WIDTHS)
    for path in [path for path in sample_sites.pages_of(demonstration) if has_notes(demonstration / path)][
        share::SHARES
    ]:
        page = seen.go(path)
        assert page.locator(".side").count() > 0, path
        widths.reverse()  # a new width is what takes longest
        for width in widths:
            page.set_viewport_size({"width": width, "height": 900})
            for units in ("si", "us"):
                choose(page, units)
                found = page.evaluate(MEASURE)
                notes += len(found["notes"])
                wrong += [f"{path}, {units}, {width} px: {one}" for one in wrong_with(found)]
    assert wrong == []
    assert notes > 100


def test_notes_of_every_lesson_keep_their_places_on_paper(visit: Visiting, demonstration: Path, folder: str) -> None:
    seen = visit(folder, width=PAPER)
    wrong, notes = [], 0
    for path in sample_sites.pages_of(demonstration):
        if not path.startswith("lessons/"):
            continue
        page = seen.go(path)
        page.emulate_media(media="print")
        found = page.evaluate(MEASURE)
        notes += len(found["notes"])
        wrong += [f"{path}: {one}" for one in wrong_with(found)]
    assert wrong == []
    assert notes > 50


def test_on_a_phone_every_note_is_folded_until_its_ring_is_touched(
    visit: Visiting, demonstration: Path, folder: str
) -> None:
    seen = visit(folder, width=360)
    for path in sample_sites.pages_of(demonstration):
        if not path.startswith("lessons/"):
            continue
        page = seen.go(path)
        assert [note for note in page.locator(".side").all() if note.is_visible()] == [], path
        ring = page.locator("a.ring").first
        ring.click()
        assert page.locator(ring.get_attribute("href")).is_visible(), path

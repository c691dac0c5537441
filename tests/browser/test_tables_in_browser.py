"""Tables of lessons on a phone: what does not fit scrolls, and no word is torn apart letter by letter."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import sample_sites

pytestmark = pytest.mark.browser
# the words of at most a dozen letters that stand on more than one line
TORN = """() => {
  const torn = [];
  for (const cell of document.querySelectorAll("main .tablewrap :is(td, th)")) {
    const walk = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
    for (let text = walk.nextNode(); text; text = walk.nextNode()) {
      for (const word of text.data.matchAll(/\\p{L}{2,12}/gu)) {
        const range = document.createRange();
        range.setStart(text, word.index);
        range.setEnd(text, word.index + word[0].length);
        if (new Set([...range.getClientRects()].map(box => Math.round(box.top))).size > 1) torn.push(word[0]);
      }
    }
  }
  return torn;
}"""


def test_no_word_of_a_lessons_table_is_torn_on_a_phone(
    visit: Callable[..., Any], demonstration: Path, folder: str
) -> None:
    seen = visit(folder, width=360)
    torn = {}
    for path in sample_sites.pages_of(demonstration):
        if path.startswith("lessons/"):
            words = seen.go(path).evaluate(TORN)
            if words:
                torn[path] = words
    assert torn == {}

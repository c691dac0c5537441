"""Every word of the site, the README and the developers' pages is in Hunspell's dictionary or in the project's list."""

import re
from html.parser import HTMLParser
from pathlib import Path

import pytest
from hunspell import Hunspell

import sample_sites

ROOT = Path(__file__).parents[2]
OWN_WORDS = Path(__file__).parent / "words.txt"
SKIPPED = {"script", "style", "code", "pre", "math", "i", "var", "kbd", "svg"}
TOLD = {"title", "desc"}  # of a drawing: its text alternative
WORD = re.compile(r"(?<![\w’'./-])[A-Za-z][a-z]{2,}(?:[’'][a-z]+)?(?!\w|[./]\w)")


class Prose(HTMLParser):
    """Gathers the words that a reader of a page reads or hears."""

    def __init__(self) -> None:
        super().__init__()
        self.text: list[str] = []
        self.within: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.text += [f"\n{value}\n" for name, value in attrs if name in ("aria-label", "title", "content") and value]
        self.text.append("\n")
        if tag in SKIPPED | TOLD:
            self.within.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        pass

    def handle_endtag(self, tag: str) -> None:
        if tag in self.within:
            del self.within[self.within.index(tag) :]

    def handle_data(self, data: str) -> None:
        if not self.within or self.within[-1] in TOLD:
            self.text.append(data)


def words_of(html: str) -> set[str]:
    prose = Prose()
    prose.feed(html)
    return set(WORD.findall(re.sub(r"https?://\S+", " ", "".join(prose.text))))


def words_of_markdown(text: str) -> set[str]:
    for what in (r"^```.*?^```", r"`[^`]*`", r"\]\([^)]*\)", r"<!--.*?-->"):
        text = re.sub(what, " ", text, flags=re.M | re.S)
    return set(WORD.findall(text))


@pytest.fixture(scope="session")
def unknown() -> object:
    """A function that gives the words that neither dictionary nor list knows."""
    dictionary = Hunspell("en_US")
    own = set(OWN_WORDS.read_text(encoding="utf-8").split())

    def unknown(words: set[str]) -> list[str]:
        return sorted(
            word
            for word in (one.replace("’", "'") for one in words)
            if not {word, word.lower()} & own and not dictionary.spell(word)
        )

    return unknown


def test_the_checker_sees_a_slip(unknown: object) -> None:
    assert unknown(words_of("<p>The bearring is worn.</p><svg><desc>A whel.</desc><text>xyzzy</text></svg>")) == [  # type: ignore[operator]
        "bearring",
        "whel",
    ]


def test_every_word_of_every_page_is_spelled_right(demonstration: Path, unknown: object) -> None:
    wrong = {}
    for path in sample_sites.pages_of(demonstration):
        if found := unknown(words_of((demonstration / path).read_text(encoding="utf-8"))):  # type: ignore[operator]
            wrong[path] = found
    assert wrong == {}


@pytest.mark.parametrize("name", ["README.md", "DEVELOPERS.md", "CHANGELOG.md", "site_templates/README.md"])
def test_every_word_of_the_readmes_is_spelled_right(name: str, unknown: object) -> None:
    assert unknown(words_of_markdown((ROOT / name).read_text(encoding="utf-8"))) == []  # type: ignore[operator]


def test_the_list_of_own_words_is_sorted_and_needed() -> None:
    own = OWN_WORDS.read_text(encoding="utf-8").split()
    assert own == sorted(set(own))
    dictionary = Hunspell("en_US")
    assert [word for word in own if dictionary.spell(word)] == []

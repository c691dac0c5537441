"""Reads a built page as a browser would not: every tag must be closed, every attribute is kept for a closer look."""

from dataclasses import dataclass, field
from functools import cache
from html.parser import HTMLParser
from pathlib import Path

VOID = frozenset(["area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"])


@dataclass(frozen=True)
class Element:
    """A start tag and where it stands."""

    tag: str
    attributes: dict[str, str | None]
    line: int
    within: tuple[str, ...]


@dataclass
class Page(HTMLParser):
    """A page's elements, its text inside script and style, and what is wrong with its tags."""

    elements: list[Element] = field(default_factory=list)
    wrong: list[str] = field(default_factory=list)
    raw_text: list[str] = field(default_factory=list)
    _open: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        HTMLParser.__init__(self, convert_charrefs=True)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = [name for name, _ in attrs]
        if len(names) != len(set(names)):
            self.wrong.append(f"line {self.getpos()[0]}: <{tag}> has an attribute twice")
        if tag in {"p", "div", "section", "table", "ul", "ol", "figure", "aside"} and "p" in self._open:
            self.wrong.append(f"line {self.getpos()[0]}: <{tag}> inside <p>")
        self.elements.append(Element(tag, dict(attrs), self.getpos()[0], tuple(self._open)))
        if tag not in VOID:
            self._open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self._open.pop()

    def handle_endtag(self, tag: str) -> None:
        if self._open and self._open[-1] == tag:
            self._open.pop()
        else:
            self.wrong.append(f"line {self.getpos()[0]}: </{tag}> closes {self._open[-1:] or 'nothing'}")

    def handle_data(self, data: str) -> None:
        if self._open and self._open[-1] in {"script", "style"} and data.strip():
            self.raw_text.append(data)

    def close(self) -> None:
        super().close()
        if self._open:
            self.wrong.append(f"never closed: {self._open}")


@cache
def read(file: Path) -> Page:
    """Read a page."""
    page = Page()
    page.feed(file.read_text(encoding="utf-8"))
    page.close()
    return page


def problems(page: Page) -> list[str]:
    """Return what is wrong with a page: tags, ids, references, what a strict content security policy forbids."""
    wrong = list(page.wrong)
    ids = [one.attributes["id"] for one in page.elements if one.attributes.get("id")]
    wrong += [f"id '{one}' stands twice" for one in {one for one in ids if ids.count(one) > 1}]
    wrong += [f"inline text in script or style: {text[:40]!r}" for text in page.raw_text]
    for one in page.elements:
        for name, value in one.attributes.items():
            place = f"line {one.line}: <{one.tag} {name}>"
            if name.startswith("on") or name == "style":
                wrong.append(f"{place} is inline script or style")
            if name in {"aria-labelledby", "aria-describedby", "aria-controls", "for"}:
                wrong += [
                    f"{place} names '{ref}', which is not here" for ref in (value or "").split() if ref not in ids
                ]
            if name in {"src", "href", "action", "data-index"} and _leaves(one, value or ""):
                wrong.append(f"{place} asks another host: {value}")
            if name == "href" and one.tag == "a" and (value or "").startswith("#") and value[1:] not in ids:
                wrong.append(f"{place} leads to '{value}', which is not here")
        if one.tag == "style":
            wrong.append(f"line {one.line}: <style>")
    return wrong


def _leaves(element: Element, url: str) -> bool:
    # a link may lead elsewhere, a page may not ask elsewhere for anything; canonical is never fetched
    asks = element.tag not in {"a", "form"} and element.attributes.get("rel") != "canonical"
    return asks and (url.startswith("//") or "://" in url)

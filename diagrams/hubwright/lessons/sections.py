"""The Markdown extension that gives a lesson its shape: opening, numbered sections, notes with their rings."""

import re
from xml.etree import ElementTree

from markdown import Extension, Markdown
from markdown.inlinepatterns import InlineProcessor
from markdown.treeprocessors import Treeprocessor
from markupsafe import Markup

from hubwright.lessons.blocks import NOTE_CLOSE, NOTE_OPEN
from hubwright.lessons.markdown_tables import as_the_theme_has_it
from hubwright.lessons.page_state import Note, PageState


class LessonExtension(Extension):
    """Shapes the page at hand; the plugin sets `page` before each one."""

    def __init__(self) -> None:
        """Start without a page."""
        super().__init__()
        self.page: PageState | None = None

    def extendMarkdown(self, md: Markdown) -> None:
        """Register the marks of notes and the shaping of the tree."""
        if self.page is None:
            return
        md.inlinePatterns.register(_NoteMark(self.page, md), "hubwright-note", 195)
        # after the ids of headings are set (toc, 5), before the text of headings is read (-1)
        md.treeprocessors.register(_Shape(self.page, md), "hubwright-shape", 1)


class _NoteMark(InlineProcessor):
    """Turns the mark of a note into its ring, which stays on the line of the word before it."""

    def __init__(self, page: PageState, md: Markdown) -> None:
        super().__init__(f"([A-Za-z0-9]{{0,20}}[.,;:!?)]?)\\s*{NOTE_OPEN}(\\d+){NOTE_CLOSE}", md)
        self.page = page

    def handleMatch(self, m: re.Match[str], data: str) -> tuple[str, int, int]:  # type: ignore[override]
        html = note_html(self.page.notes[int(m.group(2))], after=m.group(1))
        return self.md.htmlStash.store(str(html)), m.start(0), m.end(0)


def note_html(note: Note, *, after: str = "") -> Markup:
    """Return the end of a sentence with the ring of a note, and right after it the note, which stands in the margin."""
    return Markup(
        '<span class="keep">{4}\u2060<a class="ring" href="#note-{0}" id="ref-{0}" aria-label="Note {0}: {1}">{0}</a>'
        "</span>"
        '<span class="side" id="note-{0}" role="note">'
        '<span class="tag"><span class="ring" aria-hidden="true">{0}</span>{2}</span> {3}</span>'
    ).format(note.letter, note.kind, note.kind.capitalize(), note.html, after)


class _Shape(Treeprocessor):
    """Wraps the opening and the sections."""

    def __init__(self, page: PageState, md: Markdown) -> None:
        super().__init__(md)
        self.page = page

    def run(self, root: ElementTree.Element) -> None:
        """Shape the tree in place."""
        for table in list(root.iter("table")):
            as_the_theme_has_it(table)
        _wrap_tables(root)
        children = list(root)
        for child in children:
            root.remove(child)
        self._sections(root, children)

    def _sections(self, root: ElementTree.Element, children: list[ElementTree.Element]) -> None:
        lesson = self.page.lesson
        holder, count = root, 0
        if lesson is not None:
            children = self._opening(root, children, lesson)
        for child in children:
            if child.tag == "h2":
                count += 1
                holder = ElementTree.SubElement(root, "section", {"aria-labelledby": child.get("id", "")})
                holder.text = holder.tail = "\n"
                if lesson is not None:
                    mark = ElementTree.SubElement(holder, "span", {"class": "mark", "aria-hidden": "true"})
                    mark.text, mark.tail = f"{lesson}.{count}", "\n"
            holder.append(child)

    def _opening(
        self, root: ElementTree.Element, children: list[ElementTree.Element], lesson: int
    ) -> list[ElementTree.Element]:
        """Put mark, title and the short answer into the header; return what is left."""
        header = ElementTree.SubElement(root, "header", {"class": "opening"})
        header.text = header.tail = "\n"
        mark = ElementTree.SubElement(header, "span", {"class": "mark", "aria-hidden": "true"})
        mark.text, mark.tail = str(lesson), "\n"
        first = children[0] if children and children[0].tag == "h1" else None
        if first is None:
            first = ElementTree.Element("h1")
            first.text, first.tail = self.md.htmlStash.store(self.page.title), "\n"
        header.append(first)
        rest = [child for child in children if child is not first]
        if rest and rest[0].get("class") == "answer":
            header.append(rest.pop(0))
        return rest


def _wrap_tables(parent: ElementTree.Element) -> None:
    """Give each Markdown table the box in which it scrolls on a phone."""
    for index, child in enumerate(list(parent)):
        if child.tag != "table":
            _wrap_tables(child)
        elif parent.get("class", "").split()[:1] != ["tablewrap"]:
            box = ElementTree.Element("div", {"class": "tablewrap"})
            box.tail, child.tail = child.tail, "\n"
            parent[index] = box
            box.append(child)

"""The Markdown extension that gives tables the theme's classes, where Markdown itself writes inline styles."""

from xml.etree import ElementTree

from markdown import Extension, Markdown
from markdown.treeprocessors import Treeprocessor


class ThemeTables(Extension):
    """Makes tables that hold under a strict content policy and have no empty heading."""

    def extendMarkdown(self, md: Markdown) -> None:
        """Register the change of tables, after Markdown has made them."""
        md.treeprocessors.register(_Tables(md), "hubwright-tables", 2)


class _Tables(Treeprocessor):
    def run(self, root: ElementTree.Element) -> None:
        """Change every table in place."""
        for table in root.iter("table"):
            as_the_theme_has_it(table)


def as_the_theme_has_it(table: ElementTree.Element) -> None:
    """Turn inline styles into the theme's class for numbers, and a heading without words into a plain cell."""
    for cell in table.iter():
        if "right" in cell.attrib.pop("style", ""):
            cell.set("class", "n")
        if cell.tag == "th" and not len(cell) and not (cell.text or "").strip():
            cell.tag = "td"

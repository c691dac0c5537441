"""The pictures with which pages are shared: one for each page with a figure, kept between builds like the drawings."""

import posixpath
import shutil
from collections.abc import Mapping
from pathlib import Path

from hubwright.lessons.drawings import Drawings
from hubwright.lessons.numbers import plain
from hubwright.lessons.page_state import PageState
from hubwright.scenes.vocabulary import Scene

FOLDER = "previews"


def preview_path(source: str) -> str:
    """Return the path of a page's picture below the site, from the page's path below docs_dir.

    Examples
    --------
    >>> preview_path("lessons/04-road-and-hub.md")
    'previews/lessons/04-road-and-hub.png'
    """
    return posixpath.join(FOLDER, posixpath.splitext(source)[0] + ".png")


def write_previews(pages: Mapping[str, PageState], drawings: Drawings, site: Path, *, course: str) -> None:
    """Write the pictures of pages, by their paths below docs_dir, into a built site."""
    for source, page in pages.items():
        if page.hero is None:
            continue
        tag = f"Lesson {page.lesson}" if page.lesson is not None else ""
        words = {"tag": tag, "title": plain(page.title), "course": course}
        target = site / preview_path(source)
        target.parent.mkdir(parents=True, exist_ok=True)
        if drawings.directory is None:
            _paint(page.hero, target, words)
            continue
        kept = drawings.directory / f"{drawings.key(page.hero, words)}.png"
        if not kept.is_file():
            kept.parent.mkdir(parents=True, exist_ok=True)
            fresh = kept.with_suffix(".new.png")  # swapped in whole, so that a build cut short leaves no half file
            _paint(page.hero, fresh, words)
            fresh.replace(kept)
        shutil.copyfile(kept, target)


def _paint(scene: Scene, target: Path, words: Mapping[str, str]) -> None:
    from hubwright import drawing  # matplotlib is slow to load, and is not needed where every picture is kept

    drawing.preview(drawing.draw(scene), target, tag=words["tag"], title=words["title"], course=words["course"])

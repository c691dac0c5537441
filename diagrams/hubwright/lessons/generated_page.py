"""What a generated page is, and what of the site it is made from."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import partial
from typing import Literal

from hubwright.lessons.branding import Branding
from hubwright.lessons.course import Course
from hubwright.lessons.drawings import Drawings
from hubwright.lessons.page_state import PageState
from hubwright.lessons.practice import Practice


@dataclass(frozen=True)
class Site:
    """What a page can be made from: the solved course, the drawings, and what the site's owner set."""

    course: Course
    drawings: Drawings
    cautions: tuple[str, ...] = ()  # the site's own, beside the built-in ones
    branding: Branding = field(default_factory=Branding)
    practice: Practice | None = None
    teachers_key: bool = True
    states: Mapping[str, PageState] = field(default_factory=dict)  # of the pages rendered before, by path


@dataclass(frozen=True)
class GeneratedPage:
    """A page made from data; `write` returns its Markdown, with finished HTML set aside on the page's state."""

    path: str  # below docs_dir, such as "reports/hill-wagon.md"
    title: str
    kind: Literal["report", "sheet", "page"]  # the class of the page and its template's parts
    write: Callable[[PageState], str]
    mark: str = ""  # its letter and number in the course's list and title block
    stem: str | None = None  # the setup that it is about; else the one in view
    listed: bool = True  # in the course's list of pages
    searched: bool = True  # in the search index
    summary: str = ""

    @property
    def source(self) -> str:
        """Return the page's front matter, from which MkDocs takes the title."""
        title = self.title.replace("\\", "\\\\").replace('"', '\\"')
        return f'---\ntitle: "{title}"\nkind: {self.kind}\n---\n'


def page_of_each_setup(
    site: Site,
    *,
    folder: str,
    title: str,
    kind: Literal["report", "sheet", "page"],
    mark: str,
    body: Callable[..., str],
    listed: bool = False,
    searched: bool = True,
) -> list[GeneratedPage]:
    """Return a page for each vehicle and setup; `body(page, stem=..., site=...)` writes it."""
    return [
        GeneratedPage(
            path=f"{folder}/{stem}.md",
            title=f"{title}: {results.setup.name}",
            kind=kind,
            write=partial(body, stem=stem, site=site),
            mark=f"{mark}{number}",
            stem=stem,
            listed=listed,
            searched=searched,
        )
        for number, (stem, results) in enumerate(site.course.results.items(), 1)
    ]

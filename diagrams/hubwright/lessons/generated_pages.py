"""Pages that a site has without anybody writing them: what each is called, where it stands, and what makes its body.

A kind of page is one module with a function `pages(site)`; naming that function in `MAKERS` is all the plugin needs.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from hubwright.lessons import (
    checks_page,
    comparison_page,
    customer_sheet,
    practice_pages,
    reference_pages,
    reports,
    worked_results,
)
from hubwright.lessons.generated_page import GeneratedPage, Site

MAKERS: tuple[Callable[[Site], Iterable[GeneratedPage]], ...] = (
    reports.pages,
    worked_results.pages,
    customer_sheet.pages,
    comparison_page.pages,
    practice_pages.pages,
    reference_pages.pages,
    checks_page.pages,
)


@dataclass(frozen=True)
class GeneratedPages:
    """The generated pages of a site by their path below docs_dir."""

    by_path: dict[str, GeneratedPage]

    @classmethod
    def of(cls, site: Site) -> "GeneratedPages":
        """Gather the pages of every kind."""
        return cls({page.path: page for make in MAKERS for page in make(site)})

    def at(self, path: str) -> GeneratedPage | None:
        """Return the page at a path, None if somebody wrote that page."""
        return self.by_path.get(path)

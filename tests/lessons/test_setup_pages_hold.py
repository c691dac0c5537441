"""Reports, sheets, comparisons and the page about finding numbers hold for any setup, and say what its numbers say."""

import dataclasses
import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, assume, given, settings

from hubwright.errors import CaseError, SetupErrors
from hubwright.lessons.comparison_page import comparison_body
from hubwright.lessons.course import Course
from hubwright.lessons.customer_sheet import sheet_body
from hubwright.lessons.drawings import Undrawn
from hubwright.lessons.generated_page import Site
from hubwright.lessons.numbers import plain
from hubwright.lessons.page_state import PageState
from hubwright.lessons.pages import Renderer
from hubwright.lessons.reports import report_body
from hubwright.lessons.setup_family import compared
from hubwright.lessons.views import setup_view
from hubwright.results import solve
from hubwright.results.comparison import Compared
from hubwright.setup import vary
from hubwright.setup.model import Setup
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
FIND = CONTENT / "find-your-numbers.md"


def course_of(*found: Setup) -> Course:
    course = Course.read(CONTENT, in_view=found[0].stem, folders=())
    for setup in found:
        course.results[setup.stem] = solve(setup)
        course.views[setup.stem] = setup_view(course.results[setup.stem], setup.stem)
    return course


def text_of(page: PageState, body: str) -> str:
    html = page.put_back(page.put_back(body), late=True)
    return " ".join(plain(re.sub(r'<span class="of".*?</span></span>|</(td|th|p|li|dt|dd|h1|h2)>', " ", html)).split())


# No shrinking: a failure names its setup, and rendering a few hundred smaller ones would take minutes.
@settings(
    max_examples=8,
    deadline=None,
    phases=(Phase.explicit, Phase.reuse, Phase.generate),
    suppress_health_check=list(HealthCheck),
)
@given(setup=setups(rows_known=False))
def test_pages_about_a_setup_and_one_that_changes_it_hold(setup: Setup) -> None:
    base = dataclasses.replace(setup, stem="base", extends=())
    try:
        spaced = vary(setup, {"wheel.spacer": "22 mm", "wheel.mass": "13 kg"})
    except (SetupErrors, CaseError):
        assume(False)
        return
    other = dataclasses.replace(spaced, name=f"{setup.name}, changed", stem="other", extends=("base",))
    try:
        course = course_of(base, other)
    except CaseError:  # the changed setup lifts a wheel in one of its cases
        assume(False)
        return
    site = Site(course, Undrawn())
    pages = [PageState(file="x.md", built="25 November 2026") for _ in range(4)]
    report, sheet, alone, comparison = (
        text_of(pages[0], report_body(pages[0], "other", site)),
        text_of(pages[1], sheet_body(pages[1], "other", site)),
        text_of(pages[2], sheet_body(pages[2], "base", site)),
        text_of(pages[3], comparison_body(pages[3], "base", ["other"], site)),
    )
    for told in (report, sheet, comparison):
        assert not re.search(r"\d\s*(million\s+)?revolutions", told)
    assert "Nothing is changed" in alone
    pair = compared(course, "other")
    if pair is None:
        return
    assert "spacers of 22" in sheet
    standing = pair.row_loads.get("standing")
    if standing is None:
        assert "does not say enough of the bearing to tell its rows apart" in sheet
    else:
        check_told(standing, sheet)
    for name, each in pair.row_loads.items():
        if each.verdict == "not settled":
            assert f"the load in {name}" in comparison


def check_told(each: Compared, sheet: str) -> None:
    """Check that the ratio that a sheet tells is that of the numbers, to the digits that it shows."""
    found = re.search(r"Standing, the load of the harder loaded row (.*?)(;|\. )", sheet)
    assert found is not None
    if each.ratio is None:
        assert "goes from" in found[1]
    elif each.verdict == "unchanged":
        assert found[1] == "stays as it was"
    else:
        told = re.match(r"is ([\d.]+) times what it was", found[1])
        assert told is not None
        half = 0.5 * 10.0 ** -len(told[1].partition(".")[2])
        assert float(told[1]) == pytest.approx(each.ratio, abs=1.001 * half)


@settings(
    max_examples=8,
    deadline=None,
    phases=(Phase.explicit, Phase.reuse, Phase.generate),
    suppress_health_check=list(HealthCheck),
)
@given(setup=setups(rows_known=False))
def test_finding_numbers_holds_for_any_setup(setup: Setup) -> None:
    renderer = Renderer(course_of(setup), Undrawn())
    state, _ = renderer.page(FIND.read_text(encoding="utf-8"), FIND.name)
    assert [str(problem) for problem in state.problems] == []


def test_the_page_about_finding_numbers_names_no_demonstration() -> None:
    assert (
        re.findall(r"\bhill\b|wagon|winch|rescue|supply van|kit trailer", FIND.read_text(encoding="utf-8"), re.I) == []
    )

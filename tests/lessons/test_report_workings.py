"""The standing loads of a report open to their workings: with copies, each once, with the report's numbers."""

import re

import pytest
from lesson_sites import write_docs

from hubwright.lessons.course import Course
from hubwright.lessons.page_state import PageState
from hubwright.lessons.report_workings import workings
from hubwright.quantities import format_quantity
from hubwright.results import Results


@pytest.fixture(scope="module")
def course(tmp_path_factory: pytest.TempPathFactory) -> Course:
    return Course.read(write_docs(tmp_path_factory.mktemp("docs")), in_view="wagon", shown="content")


def told(results: Results) -> str:
    return str(workings(PageState(file="reports/x.md"), results))


@pytest.mark.parametrize("stem", ["wagon", "kit-trailer"])
def test_the_standing_load_of_each_row_opens_to_its_working(course: Course, stem: str) -> None:
    results = course.results[stem]
    html = told(results).replace("\u00a0", " ")
    rows = results.cases["standing"].row_load
    assert rows is not None
    for row in (rows.outboard.z, rows.inboard.z):
        assert format_quantity(abs(row), "force", "si").replace("\u00a0", " ") in html
    idents = re.findall(r'<details class="worked" id="([^"]+)" data-latex-si=', html)
    assert len(idents) == len(set(idents)) >= 4

"""Every load of a report opens to its working: in each case, with copies, each once, and with the report's numbers."""

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
def test_each_case_opens_to_the_load_of_each_row(course: Course, stem: str) -> None:
    results = course.results[stem]
    html = told(results).replace("\u00a0", " ")
    for name, case in results.cases.items():
        assert f"<h3>{name[:1].upper() + name[1:]}</h3>" in html
        assert case.row_load is not None
        for row in (case.row_load.outboard.z, case.row_load.inboard.z):
            assert format_quantity(abs(row), "force", "si").replace("\u00a0", " ") in html, name
    idents = re.findall(r'<details class="worked" id="([^"]+)" data-latex-si=', html)
    assert len(idents) == len(set(idents)) >= 4 * len(results.cases)

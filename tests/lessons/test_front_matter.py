"""A page whose front matter cannot be read is told of with its line, not rendered without it."""

from pathlib import Path

import pytest
from lesson_sites import problems, rendered, write_site

from hubwright.lessons.check import check_site
from hubwright.lessons.site_build import BuildFailedError, build_site

COLON_IN_TEXT = '---\ntitle: "Which end?"\nsummary: The short answer: the front\nlesson: 3\n---\n# Which end?\n'


@pytest.mark.parametrize(
    ("page", "message"),
    [
        (
            COLON_IN_TEXT,
            "content/page.md:3: the front matter cannot be read: mapping values are not allowed here. "
            "Put the text of 'summary' in quotes: it holds ': '.",
        ),
        ("---\ntitle: [a, b\nlesson: 3\n---\ntext\n", "content/page.md:3: the front matter cannot be read"),
        ("---\ntitle: Which end?\n\ntext\n", "content/page.md:1: the front matter has no end"),
        ("---\n- lesson\n- 3\n---\ntext\n", "content/page.md:2: the front matter must give keys"),
    ],
)
def test_the_message_names_file_and_line(tmp_path: Path, page: str, message: str) -> None:
    (problem,) = problems(tmp_path, page)
    assert problem.startswith(message)


def test_a_rule_at_the_top_of_a_page_is_no_front_matter(tmp_path: Path) -> None:
    state, text = rendered(tmp_path, "---\n\n# After a rule\n")
    assert not state.problems
    assert text.startswith("---")


def test_a_build_fails_and_check_lists_it(tmp_path: Path) -> None:
    site = write_site(tmp_path, broken=COLON_IN_TEXT)
    with pytest.raises(BuildFailedError, match=r"content/broken\.md:3: the front matter cannot be read"):
        build_site(site)
    assert any(str(each).startswith("content/broken.md:3: the front matter") for each in check_site(site))

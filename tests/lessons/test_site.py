"""A tiny site, built with MkDocs as any reader would get it."""

import json
import re
from pathlib import Path

import pytest
from click.testing import CliRunner
from lesson_sites import WAGON, write_site

from hubwright.cli import main
from hubwright.lessons import drawings
from hubwright.lessons.check import check_site
from hubwright.lessons.site_build import BuildFailedError, build_site

LESSON = """\
---
title: What stands {{ side(stock.load_line_offset) }}?
lesson: 4
summary: It is {{ stock.load_line_offset | show }}.
hazards: [lifting]
---
{% call answer("The short answer", [("pushes up", stock.standing.bearing_force.z, "push")]) %}
It pushes.
{% endcall %}

{{ figure("wheel-end section", stock, steps=true) }}

## Where it runs

The load line runs {{ stock.load_line_offset | show }} outboard. [Home](../index.md)

{{ working(stock, "load_line_offset") }}
"""


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    directory = write_site(tmp_path_factory.mktemp("tiny"), **{"lessons/04-road": LESSON})
    return build_site(directory)


def test_a_lesson_quotes_its_numbers_in_both_systems_and_draws_both_figures(built: Path) -> None:
    page = (built / "lessons/04-road.html").read_text(encoding="utf-8")
    assert (
        '<span class="q"><span class="si">12\u00a0mm</span><span class="us">0.47\u00a0in</span></span> outboard' in page
    )
    wide = page[page.index('<div class="wide">') : page.index('<div class="narrow">')]
    assert re.findall(r'<svg [^>]*class="hub-figure (si|us)"', wide) == ["si", "us"]
    assert '<ul class="key" aria-label="Key to figure 4.1">' in page
    assert "data-set-aside" not in page
    assert "<h1>What stands outboard?</h1>" in page
    assert '<meta name="description" content="It is 12 mm (0.47 in).">' in page


def test_no_id_occurs_twice_on_a_page(built: Path) -> None:
    page = (built / "lessons/04-road.html").read_text(encoding="utf-8")
    ids = re.findall(r'\sid="([^"]+)"', page)
    assert len(ids) == len(set(ids))
    assert "fig-4-1-si-title" in ids


def test_the_search_index_reads_the_prose_and_no_drawing(built: Path) -> None:
    index = json.loads((built / "search/search_index.json").read_text(encoding="utf-8"))
    text = " ".join(entry["text"] for entry in index["docs"])
    assert "The load line runs" in text
    assert "Outer ring" not in text
    script = (built / "search/search_index.js").read_text(encoding="utf-8")
    assert json.loads(script.removeprefix("window.searchIndex = ").rstrip().removesuffix(";")) == index


def test_every_vehicle_has_its_report_with_inputs_cases_and_limits_line(built: Path) -> None:
    wagon = (built / "reports/wagon.html").read_text(encoding="utf-8")
    assert "Not compared with any limit." in wagon
    assert "Brisk corner left" in wagon
    assert "hub.face_to_bearing_centre" in wagon
    assert "38 to 46\u00a0mm" in wagon
    trailer = (built / "reports/kit-trailer.html").read_text(encoding="utf-8")
    assert "estimated" in trailer
    assert "Coupling" in trailer


def test_the_rules_of_the_figures_are_written(built: Path) -> None:
    assert ".hub-figure" in (built / "assets/figures.css").read_text(encoding="utf-8")


def test_a_build_is_repeatable(built: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1700000000")
    pages = []
    for name in ("a", "b"):
        directory = write_site(tmp_path / name, **{"lessons/04-road": LESSON})
        pages.append((build_site(directory) / "lessons/04-road.html").read_text(encoding="utf-8"))
    assert pages[0] == pages[1]
    assert "14 November 2023" in pages[0]


def test_a_figure_is_drawn_once_and_kept_for_the_next_build(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    calls = []
    honest = drawings.draw
    monkeypatch.setattr(drawings, "draw", lambda scene: calls.append(scene.units) or honest(scene))
    twice = LESSON + '\n{{ figure("wheel-end section", wagon) }}\n'
    directory = write_site(tmp_path, **{"lessons/04-road": twice})
    (directory / "content/vehicles/kit-trailer.toml").unlink()
    page = (build_site(directory) / "lessons/04-road.html").read_text(encoding="utf-8")
    assert page.count("<figure ") == 2
    assert sorted(calls) == ["si", "us"]  # the report of the same setup shows it as well
    build_site(directory)
    assert sorted(calls) == ["si", "us"]


def test_a_failed_build_tells_everything_and_leaves_the_last_site(tmp_path: Path) -> None:
    directory = write_site(tmp_path, **{"lessons/04-road": LESSON})
    site = build_site(directory)
    before = {path: path.read_bytes() for path in site.rglob("*") if path.is_file()}
    (directory / "content/lessons/04-road.md").write_text(
        LESSON + "\nIt is 12 mm.\n\n{{ stok.name }}\n", encoding="utf-8"
    )
    (directory / "content/index.md").write_text("# Home\n\nIt triples.\n", encoding="utf-8")
    with pytest.raises(BuildFailedError) as caught:
        build_site(directory)
    message = str(caught.value)
    assert "content/lessons/04-road.md:19: orphan number '12 mm'" in message
    assert "content/lessons/04-road.md:21: 'stok' is not defined. Perhaps you meant 'stock'." in message
    assert "content/index.md:3: orphan number 'triples'" in message
    assert {path: path.read_bytes() for path in site.rglob("*") if path.is_file()} == before
    assert [path.name for path in directory.iterdir() if path.name.startswith(".site")] == []
    result = CliRunner().invoke(main, ["build", str(directory)])
    assert result.exit_code == 2
    assert "'stok' is not defined" in result.stderr


def test_check_finds_the_same_without_building(tmp_path: Path) -> None:
    directory = write_site(tmp_path, **{"lessons/04-road": LESSON + "\nIt is 12 mm.\n"})
    assert [str(problem) for problem in check_site(directory) if problem.fails] == [
        "content/lessons/04-road.md:19: orphan number '12 mm': compute it, or mark it with given(\"…\") if it is data"
    ]
    assert not (directory / "site").exists()
    assert not (directory / ".hubwright").exists()
    (directory / "content/lessons/04-road.md").write_text(LESSON, encoding="utf-8")
    assert "<svg" in (build_site(directory) / "lessons/04-road.html").read_text(encoding="utf-8")  # in one process


def test_check_tells_setup_files_lines(tmp_path: Path) -> None:
    directory = write_site(tmp_path, **{"lessons/04-road": LESSON})
    path = directory / "content/vehicles/wagon.toml"
    path.write_text(WAGON.replace('offset = "30 mm"', 'offset = "30 kg"'), encoding="utf-8")
    failures = [str(problem) for problem in check_site(directory) if problem.fails]
    assert failures == [
        "content/vehicles/wagon.toml:15: 'wheel.offset' must be a length (got '30 kg'). Write it like '30 mm'."
    ]


def test_the_command_exits_with_two_where_something_is_wrong(tmp_path: Path) -> None:
    directory = write_site(tmp_path, **{"lessons/04-road": LESSON + "\nIt doubles.\n"})
    result = CliRunner().invoke(main, ["check", str(directory)])
    assert result.exit_code == 2
    assert "content/lessons/04-road.md:19: orphan number 'doubles'" in result.output


def test_a_setup_in_view_that_is_not_there(tmp_path: Path) -> None:
    directory = write_site(tmp_path, setup="waggon")
    failures = [str(problem) for problem in check_site(directory) if problem.fails]
    assert failures[0] == "mkdocs.yml: 'setup: waggon' names no vehicle or setup file; there are: kit-trailer, wagon"


def test_a_load_above_its_limit_comes_first_and_says_what_to_do(tmp_path: Path) -> None:
    directory = write_site(tmp_path, **{"lessons/04-road": LESSON})
    path = directory / "content/vehicles/wagon.toml"
    path.write_text(WAGON + '[limits]\nfront_axle_rating = "1100 kg"\nrear_axle_rating = "1500 kg"\n', encoding="utf-8")
    site = build_site(directory)
    page = (site / "reports/wagon.html").read_text(encoding="utf-8")
    warning = page.index("Above the limit given: do not drive on this setup; ask a qualified person.")
    assert warning < page.index("Row loads, standing")
    assert "within" not in page[warning : page.index("Row loads, standing")]
    lesson = (site / "lessons/04-road.html").read_text(encoding="utf-8")
    assert lesson.index("Above the limit given: do not drive on this setup") < lesson.index("The short answer")


def test_a_lesson_without_limits_says_so(built: Path) -> None:
    assert "Not compared with any limit." in (built / "lessons/04-road.html").read_text(encoding="utf-8")


def test_a_load_below_its_limit_stands_beside_it_without_a_judgement(tmp_path: Path) -> None:
    directory = write_site(tmp_path)
    path = directory / "content/vehicles/wagon.toml"
    path.write_text(WAGON + '[limits]\nfront_axle_rating = "1400 kg"\n', encoding="utf-8")
    page = (build_site(directory) / "reports/wagon.html").read_text(encoding="utf-8")
    assert "1,400\u00a0kg" in page
    assert "bove the limit given" not in page

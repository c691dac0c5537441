"""A trailer whose file says nothing of its springs: its drop is refused with the reason, everything else works."""

import csv
import io
import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from hubwright.cli import main
from hubwright.lessons.check import check_site
from hubwright.lessons.site_build import build_site

TRAILER = Path(__file__).parents[1] / "content" / "vehicles" / "kit-trailer.toml"
CASE = "drop off a kerb"
FALL = f'[[case]]\nname = "{CASE}"\nkind = "drop"\nheight = "60 mm"\n'
REASON = (
    f"the drop '{CASE}' needs 'suspension', which the file does not give. Nothing is estimated for a trailer's springs"
)
PAGE = """\
# Rough ground

{{ stock.standing.contact_force.z | show }} stand here{% if stock.suspension is none %}, without springs{% endif %}.
"""


def hubwright(*arguments: object) -> Result:
    return CliRunner().invoke(main, [str(argument) for argument in arguments])


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("trailer") / "kit-trailer.toml"
    path.write_text(f"{TRAILER.read_text(encoding='utf-8')}\n{FALL}", encoding="utf-8")
    return path


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory, file: Path) -> Path:
    directory = tmp_path_factory.mktemp("site")
    for name, text in (
        ("mkdocs.yml", "site_name: A trailer\ndocs_dir: content\ntheme: {name: hubwright}\n"
         "use_directory_urls: false\nplugins: [search, {hubwright: {setup: kit-trailer}}]\n"),
        ("content/index.md", PAGE),
        ("content/vehicles/kit-trailer.toml", file.read_text(encoding="utf-8")),
    ):  # fmt: skip
        (directory / name).parent.mkdir(parents=True, exist_ok=True)
        (directory / name).write_text(text, encoding="utf-8")
    return directory


def test_the_json_gives_the_drop_its_reason_and_all_else_its_numbers(file: Path) -> None:
    result = hubwright("solve", file, "--json")
    assert (result.exit_code, result.stderr) == (0, "")
    entry = json.loads(result.stdout)
    assert entry["cases"].pop(CASE) == {"kind": "drop", "error": REASON}
    bare = json.loads(hubwright("solve", TRAILER, "--json").stdout)
    assert entry["cases"] == bare["cases"]
    assert entry["life"] == bare["life"]


def test_rows_and_table_name_it_too(file: Path) -> None:
    rows = list(csv.reader(io.StringIO(hubwright("solve", file, "--csv").stdout)))
    assert [f"cases.{CASE}.error", REASON, ""] in rows
    table = " ".join(hubwright("solve", file).stdout.split())
    assert f"case '{CASE}' is not in these tables: {REASON}" in table


def test_it_is_compared_and_drawn_without_the_drop(file: Path, tmp_path: Path) -> None:
    assert hubwright("compare", TRAILER, file).exit_code == 0
    drawn = hubwright("export", file, "--figure", "wheel-end section", "--out", tmp_path)
    assert drawn.exit_code == 0, drawn.stderr
    refused = hubwright("export", file, "--figure", "drop history", "--case", CASE, "--out", tmp_path)
    assert (refused.exit_code, refused.stderr.strip()) == (2, REASON)


def test_the_check_of_a_site_tells_of_it_and_does_not_fail(site: Path) -> None:
    found = [problem for problem in check_site(site) if "left out" in problem.reason]
    assert [str(problem) for problem in found] == [
        f"content/vehicles/kit-trailer.toml: note: the case '{CASE}' is left out: {REASON}"
    ]
    assert hubwright("check", site).exit_code == 0


def test_the_report_on_the_site_says_why_it_is_not_there(site: Path) -> None:
    report = (build_site(site) / "reports" / "kit-trailer.html").read_text(encoding="utf-8")
    assert f"Not here: <i>{CASE}</i>, {REASON.replace(chr(39), '&#39;')}." in report
    assert "Stone ledge" in report

"""The Nu HTML checker finds nothing on any page: elements, attributes, ARIA, SVG and MathML as the standards have them.

`npm install --prefix build/tools vnu-jar` brings it; it needs Java.
"""

import json
import os
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest

import sample_sites

ROOT = Path(__file__).parents[2]
BESIDE = ROOT / "build" / "tools" / "node_modules" / "vnu-jar" / "build" / "dist" / "vnu.jar"


@pytest.fixture(scope="session")
def checker() -> list[str]:
    """The command that checks files; without it tests are skipped, unless HUBWRIGHT_REQUIRE_HTML_CHECKER=1."""
    java, jar = shutil.which("java"), Path(os.environ.get("HUBWRIGHT_HTML_CHECKER", BESIDE))
    if java is None or not jar.is_file():
        reason = f"no Java, or no checker at {jar}: npm install --prefix build/tools vnu-jar"
        if os.environ.get("HUBWRIGHT_REQUIRE_HTML_CHECKER") == "1":
            pytest.fail(reason)
        pytest.skip(reason)
    return [java, "-jar", str(jar), "--format", "json", "--stdout"]


def messages(checker: list[str], files: list[Path]) -> list[str]:
    run = subprocess.run([*checker, *map(str, files)], capture_output=True, text=True, check=False)
    found: list[dict[str, Any]] = json.loads(run.stdout)["messages"]
    return [
        f"{Path(one.get('url', '')).name}:{one.get('lastLine')}: {one['message']} {one.get('extract', '')[:120]!r}"
        for one in found
        if one["type"] == "error" or one.get("subType") == "warning"
    ]


def test_every_page_of_the_demonstration_is_valid(checker: list[str], demonstration: Path) -> None:
    pages = [demonstration / path for path in sample_sites.pages_of(demonstration)]
    assert len(pages) > 20
    assert messages(checker, [*pages, demonstration / "404.html"]) == []


def test_the_checker_sees_what_it_is_there_to_see(checker: list[str], tmp_path: Path) -> None:
    file = tmp_path / "page.html"
    file.write_text(
        '<!doctype html><html lang="en"><title>x</title><dl><div><svg viewBox="0 0 1 1"></svg></div></dl>'
        '<p id="a" role="none">x</p><p id="a">y</p></html>',
        encoding="utf-8",
    )
    found = "\n".join(messages(checker, [file]))
    assert "Element “svg” not allowed" in found
    assert "Duplicate ID" in found

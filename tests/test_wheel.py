"""The built wheel works after a plain install: a new site from it builds, solves and has no dead link."""

import json
import os
import subprocess
import sys
import venv
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest

ROOT = Path(__file__).parents[1]
pytestmark = pytest.mark.wheel


def run(*command: object, cwd: Path) -> str:
    environment = {k: v for k, v in os.environ.items() if k not in ("PYTHONPATH", "VIRTUAL_ENV")}
    done = subprocess.run(
        [str(part) for part in command], cwd=cwd, env=environment, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, f"{command}\n{done.stdout}\n{done.stderr}"
    return done.stdout


class Links(HTMLParser):
    """Collects the links and the ids of a page."""

    def __init__(self) -> None:
        super().__init__()
        self.targets: list[str] = []
        self.ids: set[str] = set()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        for name, value in attrs:
            if value and name in ("href", "src"):
                self.targets.append(value)
            elif value and name == "id":
                self.ids.add(value)


def read(page: Path) -> Links:
    links = Links()
    links.feed(page.read_text(encoding="utf-8"))
    return links


def dead_links(site: Path) -> list[str]:
    pages = {page: read(page) for page in site.rglob("*.html")}
    dead = []
    for page, links in pages.items():
        for target in links.targets:
            parts = urlsplit(target)
            if parts.scheme or parts.netloc:
                continue
            base = site if parts.path.startswith("/") else page.parent
            found = (base / unquote(parts.path).lstrip("/")).resolve() if parts.path else page
            if found.is_dir():
                found /= "index.html"
            if not found.exists() or (
                parts.fragment and found in pages and unquote(parts.fragment) not in pages[found].ids
            ):
                dead.append(f"{page.relative_to(site)}: {target}")
    return dead


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the scripts directory of a clean environment with the freshly built wheel in it."""
    place = tmp_path_factory.mktemp("wheel")
    run(sys.executable, "-m", "build", "--wheel", "--outdir", place / "dist", ROOT, cwd=place)
    venv.create(place / "env")
    scripts = place / "env" / ("Scripts" if os.name == "nt" else "bin")
    (wheel,) = (place / "dist").glob("*.whl")
    pip = (sys.executable, "-m", "pip", "--python", scripts / "python")  # installs there without being there
    run(*pip, "install", "-q", "--no-compile", wheel, cwd=place)
    return scripts


def test_an_installed_hubwright_starts_builds_and_solves(installed: Path, tmp_path: Path) -> None:
    run(installed / "hubwright", "new", "my-site", "--yes", cwd=tmp_path)
    run(installed / "hubwright", "build", "my-site", cwd=tmp_path)
    site = tmp_path / "my-site" / "site"
    assert (site / "index.html").exists()
    assert dead_links(site) == []

    vehicle = next((tmp_path / "my-site" / "content" / "vehicles").glob("*.toml"))
    solved = json.loads(run(installed / "hubwright", "solve", vehicle, "--json", cwd=tmp_path))
    push = solved["cases"]["standing"]["contact_force"]["z"]["value"]
    assert push == pytest.approx(1120 * 9.80665 / 2)
    pages = "".join(page.read_text(encoding="utf-8") for page in (site / "lessons").rglob("*.html"))
    assert "5.49" in pages, "the lessons quote the road's push of 5.49 kN"

    again = subprocess.run(
        [installed / "hubwright", "new", "my-site", "--yes"], cwd=tmp_path, capture_output=True, text=True, check=False
    )
    assert again.returncode == 2
    assert "choose a new directory" in again.stderr

"""A first visit to any page weighs little: page, styles, scripts and faces together, compressed as a server would."""

import gzip
import re
from pathlib import Path

import sample_sites
from theme import page_reading

FIRST_VISIT = 300_000  # bytes, all faces and both unit systems of all figures included
SCRIPTS = 30_000  # bytes as they stand
FACES = re.compile(r"fonts/([\w-]+\.woff2)")


def squeezed(file: Path) -> int:
    data = file.read_bytes()
    return len(data) if file.suffix == ".woff2" else len(gzip.compress(data, 6))


def asked_for(page: Path) -> set[Path]:
    """The files that a page names, and the faces that its stylesheets name."""
    files = set()
    for one in page_reading.read(page).elements:
        wanted = one.attributes.get("src") if one.tag in ("script", "img") else None
        if one.tag == "link" and one.attributes.get("rel") == "stylesheet":
            wanted = one.attributes.get("href")
        if wanted:
            files.add((page.parent / wanted).resolve())
    for sheet in [file for file in files if file.suffix == ".css"]:
        fonts = sheet.parent.parent / "fonts"
        files |= {fonts / name for name in FACES.findall(sheet.read_text(encoding="utf-8"))}
    return files


def test_a_first_visit_stays_light(demonstration: Path) -> None:
    weights = {}
    for path in sample_sites.pages_of(demonstration):
        page = demonstration / path
        if path != "search.html":  # brings the search engine and the index, which nobody loads to read
            weights[path] = sum(squeezed(file) for file in {page, *asked_for(page)})
    assert {path: weight for path, weight in weights.items() if weight >= FIRST_VISIT} == {}
    assert max(weights.values()) > 150_000  # faces and figures were counted


def test_scripts_stay_small(demonstration: Path) -> None:
    for path in sample_sites.pages_of(demonstration):
        if path != "search.html":
            scripts = [file for file in asked_for(demonstration / path) if file.suffix == ".js"]
            assert sum(file.stat().st_size for file in scripts) < SCRIPTS, path

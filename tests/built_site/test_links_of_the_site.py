"""Every internal link, anchor and file that a page names is there, and nothing on a page is inline or foreign."""

import re
from pathlib import Path
from urllib.parse import unquote, urldefrag, urlsplit

import sample_sites
from theme import page_reading


def test_every_link_and_anchor_of_every_page_leads_somewhere(demonstration: Path) -> None:
    read = {path: page_reading.read(demonstration / path) for path in sample_sites.pages_of(demonstration)}
    ids = {path: {one.attributes.get("id") for one in page.elements} for path, page in read.items()}
    dead, followed = [], 0
    for path, page in read.items():
        for one in page.elements:
            for name in ("href", "src", "data-index"):
                url, anchor = urldefrag(one.attributes.get(name) or "")
                if urlsplit(url).scheme or (not url and not anchor):
                    continue
                place = (demonstration / path).parent / unquote(urlsplit(url).path)
                target = (place if url else demonstration / path).resolve()
                followed += 1
                if not target.is_file():
                    dead.append(f"{path}: {name} {one.attributes[name]}")
                elif anchor and target.suffix == ".html":
                    there = target.relative_to(demonstration.resolve()).as_posix()
                    if there in ids and unquote(anchor) not in ids[there]:
                        dead.append(f"{path}: no '{anchor}' on {there}")
    assert dead == []
    assert followed > 1000


def test_every_page_is_well_formed_and_holds_nothing_inline_or_foreign(demonstration: Path) -> None:
    wrong = {
        path: found
        for path in sample_sites.pages_of(demonstration)
        if (found := page_reading.problems(page_reading.read(demonstration / path)))
    }
    assert wrong == {}


def test_no_stylesheet_or_script_asks_another_host(demonstration: Path) -> None:
    for file in [*demonstration.rglob("*.css"), *(demonstration / "assets").rglob("*.js")]:
        text = file.read_text(encoding="utf-8").replace("http://www.w3.org/", "")
        assert not re.search(r"https?://|url\(\s*[\"']?//", text), file.name


def test_nothing_of_the_machine_that_built_the_site_is_in_it(demonstration: Path) -> None:
    for file in demonstration.rglob("*"):
        if file.suffix in {".html", ".css", ".js", ".json", ".xml"}:
            found = re.search(r"file:///|/home/\w|/tmp/|/root/", file.read_text(encoding="utf-8"))
            assert not found, (file.name, found and found[0])

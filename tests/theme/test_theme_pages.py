"""Pages of the theme as files: well formed, linked, with nothing inline or foreign, with and without the plugin."""

import gzip
import re
from pathlib import Path
from urllib.parse import unquote, urlsplit

import page_reading
import pytest

import sample_sites

THEME = Path(__file__).parents[2] / "site_templates"


@pytest.fixture(scope="session")
def plain_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return sample_sites.built("plain", tmp_path_factory)


@pytest.fixture(scope="session")
def sample_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return sample_sites.built("sample", tmp_path_factory)


@pytest.fixture(params=["plain_site", "sample_site"])
def site(request: pytest.FixtureRequest) -> Path:
    built = request.getfixturevalue(request.param)
    assert isinstance(built, Path)
    return built


def pages(site: Path) -> list[Path]:
    return sorted(site.rglob("*.html"))


def text(site: Path, name: str) -> str:
    return (site / name).read_text(encoding="utf-8")


def test_every_page_is_well_formed_and_holds_nothing_inline_or_foreign(site: Path) -> None:
    wrong = {file.name: found for file in pages(site) if (found := page_reading.problems(page_reading.read(file)))}
    assert wrong == {}
    assert len(pages(site)) >= 5


def test_page_reading_sees_what_it_is_there_to_see() -> None:
    page = page_reading.Page()
    page.feed(
        '<p id="a">x<div style="color:red"></p><a href="#none" onclick="x()">y</a>'
        '<img src="https://host.example/x.png"><b>'
    )
    page.close()
    found = "\n".join(page_reading.problems(page))
    for part in (
        "<div> inside <p>",
        "</p> closes",
        "style> is inline",
        "onclick> is inline",
        "'#none'",
        "another host",
        "never closed",
    ):
        assert part in found


def test_every_link_leads_to_a_file_of_the_site(site: Path) -> None:
    missing = []
    for file in pages(site):
        if file.name == "404.html":  # stands at any depth, so its links begin at the root of the server
            continue
        for one in page_reading.read(file).elements:
            for name in ("href", "src"):
                url = urlsplit(one.attributes.get(name) or "")
                if url.path and not url.scheme and not (file.parent / unquote(url.path)).resolve().is_file():
                    missing.append((file.name, one.attributes[name]))
    assert missing == []


def test_no_style_sheet_asks_another_host(site: Path) -> None:
    for file in (site / "assets").glob("*.css"):
        for target in re.findall(r"url\(([^)]*)\)|@import\s+(\S+)", file.read_text(encoding="utf-8")):
            wanted = "".join(target).strip("\"'")
            assert (file.parent / wanted).resolve().is_file(), f"{file.name}: {wanted}"


def test_a_plain_project_gets_its_title_its_pages_and_no_setup(plain_site: Path) -> None:
    page = text(plain_site, "hinges.html")
    assert re.search("<h1>Hinges &(amp;)? pins</h1>", page)
    assert "<title>Hinges &amp; pins · What holds the gate</title>" in page
    assert '<a href="latch.html">Latch</a>' in page
    assert 'rel="next"' in page
    assert "Setup in view" not in page
    assert 'name="units"' not in page
    assert "Estimated" not in page
    assert text(plain_site, "index.html").count("<h1") == 1


def test_the_course_scale_links_lessons_that_are_there_and_only_names_the_others(sample_site: Path) -> None:
    page = text(sample_site, "lessons/1.html")
    scale = page[page.index('<ol class="scale">') : page.index("</ol>")]
    assert scale.count("<a ") == 2
    assert scale.count("not yet available") == 2
    assert scale.count('aria-current="page"') == 1
    onward = page[page.index('class="onward"') :]
    assert 'href="2.html" rel="next"' in onward
    assert 'rel="prev"' not in onward


def test_title_block_limits_and_estimated_values_stand_on_a_lesson(sample_site: Path) -> None:
    page = text(sample_site, "lessons/1.html")
    for words in (
        "gate.example/<wbr>course/<wbr>lessons/<wbr>1.html",
        "Yard gate, oak",
        "1 of 4",
        "1 March 2026",
        "1 estimated value in",
        "hinge.spread",
    ):
        assert words in page
    assert all("A simplified teaching model" in file.read_text(encoding="utf-8") for file in pages(sample_site))
    assert '@bottom-left{content:"gate.example' in text(sample_site, "assets/paper.css")


def test_scripts_are_small_and_the_theme_leaves_room_for_figures(sample_site: Path) -> None:
    scripts = [sample_site / "assets" / name for name in ("page.js", "search.js")]
    assert sum(file.stat().st_size for file in scripts) < 30_000
    # 300 kB is what a first visit to a lesson may weigh, figures included
    shared = [*(sample_site / "assets").glob("*.css"), *scripts, *(sample_site / "fonts").glob("*.woff2")]
    assert sum(len(gzip.compress(file.read_bytes())) for file in shared) < 220_000


def test_fonts_that_the_style_sheet_names_come_with_their_licences(sample_site: Path) -> None:
    named = set(re.findall(r"fonts/([\w-]+\.woff2)", text(sample_site, "assets/tokens.css")))
    assert named == {file.name for file in (sample_site / "fonts").glob("*.woff2")}
    licences = {file.name for file in (sample_site / "fonts").glob("LICENSE-*")}
    assert licences == {"LICENSE-texgyre.txt", "LICENSE-routed-gothic.txt"}


def test_no_template_carries_a_machine_path_or_a_foreign_name() -> None:
    for file in [*THEME.glob("*.html"), *(THEME / "partials").glob("*.html"), *(THEME / "assets").iterdir()]:
        content = re.sub(r"'https?://'", "", file.read_text(encoding="utf-8"))  # what the title block strips off
        assert not re.search(r"file:|/home/|https?://(?!www\.w3\.org)", content), file.name

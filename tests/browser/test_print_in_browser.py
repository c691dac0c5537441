"""Customer sheets and setup reports on paper: how many pages, nothing split, nothing that only a screen needs."""

import re
from collections.abc import Callable
from pathlib import Path
from textwrap import dedent
from typing import Any

import pytest

from hubwright.lessons.site_build import build_site

pytestmark = pytest.mark.browser
Visiting = Callable[..., Any]
FORMATS = ("A4", "Letter")
_LONG = "An item with a rather long name, number"
MINIMAL = """\
name = "A vehicle of which its owner knows only what must be known, with a long name"
[chassis]
total_mass = "2400 kg"
wheelbase = "2.90 m"
front_track = "1.60 m"
[tire]
size = "35x12.50R17LT"
[wheel]
rim_width = "8 in"
offset = "10 mm"
[limits]
front_axle_rating = "1200 kg"
rear_axle_rating = "1000 kg"
wheel_rating = "500 kg"
tire_rating = "500 kg"
"""
CASES = """
[[case]]
name = "a brisk corner on the way up to the quarry"
kind = "cornering"
lateral_g = 0.3
[[case]]
name = "firm braking"
kind = "braking"
braking_g = 0.4
[[case]]
name = "a drop"
kind = "drop"
height = "100 mm"
"""


def _crowded() -> str:
    gear = "".join(
        f"""\
        [[gear]]
        name = "{_LONG} {number}"
        mass = "30 kg"
        behind_front_axle = "{number - 2}.35 m"
        left_of_centre = "0.2{number} m"
        above_ground = "0.9 m"
        """
        for number in range(1, 9)
    )
    return (
        'extends = "minimal"\nname = "The same vehicle with everything on it that anybody could think of, and more"\n'
        '[tire]\nsize = "33x12.50R15"\nmass = "30 kg"\n'
        '[wheel]\nrim_width = "9 in"\noffset = "-20 mm"\nspacer = "30 mm"\nmass = "14 kg"\n' + dedent(gear)
    )


@pytest.fixture(scope="module")
def crowded(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site with the fullest sheets that its files can make."""
    directory = tmp_path_factory.mktemp("crowded")
    (directory / "content" / "vehicles").mkdir(parents=True)
    (directory / "content" / "setups").mkdir()
    (directory / "content" / "vehicles" / "minimal.toml").write_text(MINIMAL + CASES, encoding="utf-8")
    (directory / "content" / "setups" / "crowded.toml").write_text(_crowded(), encoding="utf-8")
    (directory / "content" / "index.md").write_text("# Home\n", encoding="utf-8")
    (directory / "content" / "mark.svg").write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><rect width="40" height="20"/></svg>',
        encoding="utf-8",
    )
    settings = """\
        site_name: Test course
        docs_dir: content
        use_directory_urls: false
        theme: {name: hubwright}
        plugins:
          - search
          - hubwright:
              setup: minimal
              shop: A shop with a name that is not short either
              contact: At the end of the long road, behind the gate; ask for the one with the tape
              logo: mark.svg
              prepared_by: Somebody
              cautions:
                - A caution of our own, of the length that such cautions tend to have when a careful person writes them.
        """
    (directory / "mkdocs.yml").write_text(dedent(settings), encoding="utf-8")
    return build_site(directory)


def pages_on_paper(page: Any, size: str) -> int:
    """Return how many pages a printer would fill."""
    data = page.pdf(format=size)
    return len(re.findall(rb"/Type\s*/Page\b(?!s)", data))


@pytest.mark.parametrize("size", FORMATS)
@pytest.mark.parametrize("units", ["SI", "US"])
def test_every_sheet_of_the_demonstration_is_one_page(
    visit: Visiting, demonstration: Path, folder: str, size: str, units: str
) -> None:
    seen = visit(folder)
    sheets = sorted((demonstration / "sheets").glob("*.html"))
    assert len(sheets) >= 6
    for sheet in sheets:
        page = seen.go(f"sheets/{sheet.name}")
        page.get_by_label(units, exact=True).check(force=True)
        assert pages_on_paper(page, size) == 1, sheet.name


@pytest.mark.parametrize("size", FORMATS)
@pytest.mark.parametrize("stem", ["minimal", "crowded"])
def test_the_fullest_sheet_is_one_page_too(visit: Visiting, crowded: Path, size: str, stem: str) -> None:
    page = visit(crowded.as_uri() + "/").go(f"sheets/{stem}.html")
    assert pages_on_paper(page, size) == 1


def test_a_full_sheet_shows_its_warning_before_its_figure_and_its_logo(visit: Visiting, crowded: Path) -> None:
    page = visit(crowded.as_uri() + "/").go("sheets/crowded.html")
    page.emulate_media(media="print")
    tops = {
        name: page.locator(name).first.bounding_box()["y"]
        for name in (".sheet-head", ".over", ".sheet-figure", ".sheet-foot")
    }
    assert tops[".sheet-head"] < tops[".over"] < tops[".sheet-figure"] < tops[".sheet-foot"]
    assert page.evaluate("document.querySelector('.logo').naturalWidth") > 0
    assert page.locator(".bar, .course-nav, .titleblock, .estimated, .onward, .ways").evaluate_all(
        "all => all.every(one => one.getClientRects().length === 0)"
    )


def test_a_sheet_holds_everything_between_its_margins(visit: Visiting, crowded: Path) -> None:
    # the narrower of the two papers less both margins of the sheet: 210 mm - 24 mm
    seen = visit(crowded.as_uri() + "/", width=round(186 / 25.4 * 96))
    page = seen.go("sheets/crowded.html")
    page.emulate_media(media="print")
    assert page.evaluate("document.documentElement.scrollWidth") <= round(186 / 25.4 * 96)


@pytest.fixture
def grey(visit: Visiting, folder: str) -> Any:
    page = visit(folder).go("sheets/winter-fit-out.html")
    page.emulate_media(media="print")
    return page


def test_loads_and_reactions_of_a_grey_print_differ_in_more_than_colour(grey: Any) -> None:
    # loads have solid shafts, reactions open ones: their fills differ in lightness
    fills = grey.evaluate(
        """() => Object.fromEntries(['force', 'reaction'].map(kind => [kind,
            [...document.querySelectorAll(`.sheet-figure svg.si [data-name^="${kind}-"] path`)]
              .slice(0, 8).map(path => getComputedStyle(path).fill)]))"""
    )
    assert fills["force"]
    assert fills["reaction"]
    assert set(fills["reaction"]) - set(fills["force"])


@pytest.mark.parametrize("size", FORMATS)
def test_a_report_prints_on_few_pages_with_its_cautions_and_without_navigation(
    visit: Visiting, folder: str, size: str
) -> None:
    page = visit(folder).go("reports/winter-fit-out.html")
    assert 3 <= pages_on_paper(page, size) <= 6
    page.emulate_media(media="print")
    assert page.locator(".caution").first.is_visible()
    assert not page.locator(".bar").first.is_visible()
    assert not page.locator(".ways").first.is_visible()


@pytest.mark.parametrize("path", ["reports/winter-fit-out.html", "find-your-numbers.html", "compare/hill-wagon.html"])
def test_no_figure_and_no_block_is_split_between_pages(visit: Visiting, folder: str, path: str) -> None:
    page = visit(folder).go(path)
    page.emulate_media(media="print")
    kept = page.locator(".fig, .caution, .report section.block:not(:has(.inputs))").evaluate_all(
        "all => all.map(one => getComputedStyle(one).breakInside)"
    )
    assert kept
    assert set(kept) <= {"avoid", "avoid-page"}
    # else a figure could not be kept whole: the shorter paper less its margins
    room = (279.4 - 32) / 25.4 * 96
    heights = page.locator(".fig").evaluate_all("all => all.map(one => one.getBoundingClientRect().height)")
    assert max(heights) < room


@pytest.mark.parametrize("width", [360, 768, 1280])
def test_rows_become_blocks_on_a_phone_and_stay_rows_elsewhere(visit: Visiting, folder: str, width: int) -> None:
    page = visit(folder, width=width).go("reports/winter-fit-out.html")
    row = page.locator(".cases tbody tr").first
    assert row.evaluate("one => getComputedStyle(one).display") == ("block" if width < 700 else "table-row")
    label = page.locator(".cases tbody .of").first
    assert label.is_visible() == (width < 700)
    assert page.evaluate("document.documentElement.scrollWidth") <= width

"""Copies of workings, short answers and links in a real browser: over HTTP, from a folder, without script, on paper."""

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from browser.local_server import serving
from hubwright.lessons.site_build import build_site
from lessons.lesson_sites import write_site

pytestmark = pytest.mark.browser
Visiting = Callable[..., Any]
ADDRESS = "https://bearing-course.example/"
LESSON = """\
---
title: "What does the road do?"
lesson: 1
---
{% call answer("The short answer, standing", [("pushes up", stock.standing.contact_force.z, "push")]) %}
Standing only.
{% endcall %}

## How it comes about

{{ working(stock, "standing.row_load.outboard.z") }}

{{ figure("wheel-end section", stock) }}
"""
ROW = "#working-standing-row-load-outboard-z"


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return build_site(write_site(tmp_path_factory.mktemp("copies"), more=f"site_url: {ADDRESS}\n", road=LESSON))


@pytest.fixture(scope="module")
def folder(site: Path) -> str:
    return site.as_uri() + "/"


@pytest.fixture(scope="module")
def server(site: Path) -> Iterator[str]:
    with serving(site) as origin:
        yield origin


def opened(page: Any) -> Any:
    page.locator(f"{ROW} > summary").click()
    return page


def copied(page: Any) -> str:
    return str(page.evaluate("navigator.clipboard.readText()"))


def test_a_working_copies_as_latex_plain_text_sentence_and_link(visit: Visiting, server: str) -> None:
    seen = visit(server)
    page = opened(seen.go("road.html"))
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    row = page.locator(f"{ROW} > .copies")
    row.get_by_role("button", name="as LaTeX").click()
    page.get_by_text("Copied", exact=True).wait_for()
    assert copied(page).startswith("% Load on the outboard row, upward\n\\begin{aligned}")
    assert copied(page).endswith(f"% {ADDRESS}road.html{ROW}")
    row.get_by_role("button", name="as plain text").click()
    page.wait_for_function("navigator.clipboard.readText().then(text => text.includes('F_A,z = B_z/2 + M_x'))")
    assert "N*m/(" in copied(page)
    page.get_by_label("US", exact=True).check(force=True)
    row.get_by_role("button", name="as one sentence").click()
    page.wait_for_function("navigator.clipboard.readText().then(text => text.includes('leaves out'))")
    assert " lbf" in copied(page)
    assert "“Test wagon”, left front wheel, standing" in copied(page)
    assert copied(page).endswith(f"{ADDRESS}road.html{ROW}")
    row.get_by_role("button", name="Copy link to").click()
    page.wait_for_function(f"navigator.clipboard.readText().then(text => text === '{ADDRESS}road.html{ROW}')")
    assert seen.console == []


def test_figures_and_the_short_answer_have_a_link_that_the_keyboard_reaches(visit: Visiting, server: str) -> None:
    page = visit(server).go("road.html")
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    link = page.get_by_role("button", name="Copy link to figure 1.1")
    link.focus()
    page.keyboard.press("Enter")
    page.wait_for_function(f"navigator.clipboard.readText().then(text => text === '{ADDRESS}road.html#fig-1-1')")
    answer = page.locator(".answer .copies")
    answer.get_by_role("button", name="Copy the short answer as one sentence").press("Space")
    page.wait_for_function("navigator.clipboard.readText().then(text => text.startsWith('What does the road do?'))")
    assert copied(page).endswith(f"{ADDRESS}road.html#short-answer")
    assert page.locator("#short-answer, #fig-1-1").count() == 2


@pytest.mark.parametrize("width", [360, 1280])
def test_a_refused_clipboard_leaves_the_text_selected_in_a_box(visit: Visiting, folder: str, width: int) -> None:
    seen = visit(folder, width=width)
    page = opened(seen.go("road.html"))
    page.evaluate("() => { navigator.clipboard.writeText = () => Promise.reject(new Error('refused')); }")
    row = page.locator(f"{ROW} > .copies")
    row.get_by_role("button", name="as plain text").click()
    box = page.locator(f"{ROW} > .copy-box textarea")
    box.wait_for()
    value, selected = box.evaluate("box => [box.value, box.value.slice(box.selectionStart, box.selectionEnd)]")
    assert value == selected
    assert "F_A,z = B_z/2 + M_x" in value
    assert page.evaluate("document.activeElement.localName") == "textarea"
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    page.get_by_role("button", name="Close").click()
    assert box.count() == 0
    assert page.evaluate("document.activeElement.getAttribute('aria-label')").endswith("as plain text")
    assert seen.console == []


def test_an_address_opens_the_folds_around_what_it_names(visit: Visiting, folder: str) -> None:
    page = visit(folder).go("road.html#working-weight-this-axle")
    assert page.locator("#working-weight-this-axle").get_attribute("open") is not None
    assert page.locator(ROW).get_attribute("open") is not None
    assert page.locator("#working-weight-this-axle > dl").is_visible()


def test_a_working_leads_to_the_page_of_its_formula(visit: Visiting, folder: str) -> None:
    page = opened(visit(folder).go("road.html"))
    page.locator(f"{ROW} > dl .formula-link").click()
    page.wait_for_url("**/reference/free_body.html#wheel_end")
    assert page.locator("[id=wheel_end]").is_visible()


def test_without_script_there_is_no_button_that_does_nothing(visit: Visiting, folder: str) -> None:
    page = visit(folder, script=False).go("road.html")
    assert page.locator(".copies").count() == 0
    page.locator(f"{ROW} > summary").click()
    assert page.locator(f"{ROW} > dl").is_visible()


def test_paper_shows_no_button_and_no_steps_before(visit: Visiting, folder: str) -> None:
    page = visit(folder).go("road.html")
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    page.emulate_media(media="print")
    for copies in page.locator(".copies, .before").all():
        assert not copies.is_visible()
    assert page.locator(f"{ROW} > dl").is_visible()


@pytest.mark.parametrize("width", [360, 1600])
def test_checks_and_formulas_fit_and_talk_to_nobody(visit: Visiting, folder: str, width: int) -> None:
    seen = visit(folder, width=width)
    for path in ("checks.html", "reference/index.html", "reference/ball_rating.html", "reference/load_cases.html"):
        page = seen.go(path)
        page.evaluate("document.querySelectorAll('details').forEach(fold => { fold.open = true; })")
        assert page.evaluate("document.documentElement.scrollWidth") <= width, path
    assert seen.console == []
    assert seen.foreign() == []

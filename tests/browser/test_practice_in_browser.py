"""Practice problems in a browser: what the answer box says of right and wrong answers, variants, workings, print."""

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

pytestmark = pytest.mark.browser
HERE = Path(__file__).parent
Visiting = Callable[..., Any]

VEHICLE = (HERE.parents[1] / "content" / "vehicles" / "hill-wagon.toml").read_text(encoding="utf-8")
SETTINGS = """\
site_name: Practice
docs_dir: content
use_directory_urls: false
theme: {name: hubwright}
plugins:
  - search
  - hubwright: {setup: wagon}
"""
HEAD = "---\ntitle: {title}\nlesson: 4\nlevel: one formula\nvariants:\n  n: [1 kN, 2 kN, 3 kN, 4 kN, 5 kN]\n---\n"
TAIL = """
What is it with {{{{ n }}}}?

## Nudge

Add {{{{ n }}}}.

## Another nudge

Now.

## Working

It was {said}.
"""
# question: what it asks for
PROBLEMS = {
    # 3,400 N in the first variant
    "force": (
        '{{ answer_is(n * 3.4, right="Well *done*.") }}{{ slip(n * 2.5, "You left <b>one</b> out.") }}',
        "{{ (n * 3.4) | show }}",
    ),
    # 12.5 mm inboard
    "length": (
        '{% set y = stock.wheel.offset * (n / n) * (-12.5 / 30) %}{{ answer_is(y, ways=["outboard", "inboard"]) }}'
        '{{ slip(y * 3, "That is all three.") }}',
        "{{ y | show }}",
    ),
    "inch": ('{{ answer_is(stock.wheel.offset * (n / n) * (12.7 / 30)) }}', "{{ stock.wheel.offset | show }}"),
    # 57 N m
    "moment": ('{{ answer_is(n * stock.wheel.offset * 1.9) }}', "{{ (n * stock.wheel.offset) | show }}"),
    "nothing": ('{{ answer_is(n - n) }}{{ slip(n, "It cancels.") }}', "{{ (n - n) | show }}"),
    "percent": ('{{ answer_is(given("27 %") * (n / n), kind="percent") }}', "{{ n }}"),
    "choice": (
        '{{ option("Up", n < given("1.5 kN"), "It is more than that.") }}'
        '{{ option("Down with " ~ n, n > given("1.5 kN"), "It is less than that.") }}',
        "{{ n }}",
    ),
}  # fmt: skip


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> str:
    """A site of seven problems, opened from its folder."""
    root = tmp_path_factory.mktemp("practice")
    for name, text in {
        "mkdocs.yml": SETTINGS,
        "content/index.md": '# Home\n\n{{ practice_problems("force", "choice") }}\n',
        "content/vehicles/wagon.toml": VEHICLE,
        **{
            f"content/practice/{stem}.md": HEAD.format(title=stem.capitalize()) + asks + TAIL.format(said=said)
            for stem, (asks, said) in PROBLEMS.items()
        },
    }.items():
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_text(text, encoding="utf-8")
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--strict", "-f", str(root / "mkdocs.yml")]
    run = subprocess.run([*command, "-d", str(root / "site")], capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stdout + run.stderr
    return (root / "site").as_uri() + "/"


ANSWERS = [
    ("force", "3.4 kN", "", "That is it. Well done."),
    ("force", "3,400 N", "", "That is it."),
    ("force", "3 400 newtons", "", "That is it."),
    ("force", "3,4 kN", "", "That is it."),  # decimal comma
    ("force", "3,400 kN", "", "That is it."),  # a comma may be read both ways, and one reading is right
    ("force", "764 lbf", "", "That is it."),  # 3400 N / 4.448 N
    ("force", "764 pounds", "", "That is it."),
    ("force", "346.7 kgf", "", "That is it."),
    ("force", "+3.4e3 N", "", "That is it."),
    ("force", "−3.4 kN", "", "Right size, wrong sign."),
    ("force", "3.4 N", "", "Right number, wrong unit. It would be right in kN."),
    ("force", "764 kN", "", "Right number, wrong unit. It would be right in lbf."),
    ("force", "3.4 kN·m", "", "Right number, wrong unit. “kN·m” goes with a torque or moment;"),
    ("force", "764 lb", "", "That is it."),  # the trade's pound, meant as a force
    ("force", "346 kg", "", "Wrong unit. “kg” goes with a mass; the question asks for a force."),
    ("force", "3.4", "", "The number is right. Say in which unit: kN."),
    ("force", "12", "", "With its unit, please. Write it with its unit: N, kN, lbf."),
    ("force", "6.8 kN", "", "Twice the answer."),
    ("force", "1.7 kN", "", "Half the answer."),
    ("force", "2.5 kN", "", "Nearly. You left one out."),
    ("force", "3.33 kN", "", "Very near."),
    ("force", "3.2 kN", "", "Within a tenth. Too small by about 6 %."),
    ("force", "4.4 kN", "", "Not yet. Too large by about 30 %."),
    ("force", "10 kN", "", "Not yet. Too large, by a factor of about 3."),
    ("force", "34 kN", "", "The digits are right. Too large: look at the decimal point, and at kilo and milli."),
    ("force", "0 N", "", "Not yet. Too small"),
    ("force", "3.4 furlongs", "", "A unit that is known here, please."),
    ("force", "3.4 <b>kN</b>", "", "A unit that is known here, please."),
    ("force", "much", "", "A number, please."),
    ("force", "", "", "A number, please."),
    ("length", "12.5 mm", "inboard", "That is it."),
    ("length", "12.5 mm", "outboard", "Right size, the other way."),
    ("length", "12.5 mm", "", "And which way, please?"),
    ("length", "-12.5 mm", "inboard", "The size alone, please."),
    ("length", "37.5 mm", "inboard", "Nearly. That is all three."),
    ("length", "0.49 in", "inboard", "That is it."),
    ("inch", "1/2 in", "", "That is it."),
    ("inch", '½"', "", "That is it."),
    ("inch", "0.5 inches", "", "That is it."),
    ("inch", "12,7 mm", "", "That is it."),
    ("inch", "1 1/2 in", "", "Not yet. Too large, by a factor of about 3."),
    ("inch", "0' 1/2\"", "", "That is it."),
    ("inch", "1 in", "", "Twice the answer."),
    ("moment", "57 N m", "", "That is it."),
    ("moment", "57 Nm", "", "That is it."),
    ("moment", "57 N·m", "", "That is it."),
    ("moment", "42 ft-lb", "", "That is it."),
    ("moment", "42 ftlb", "", "That is it."),
    ("moment", "42 lbf·ft", "", "That is it."),
    ("moment", "42 lb-ft", "", "That is it."),
    ("moment", "504.5 in-lbs", "", "That is it."),
    ("moment", "0.057 kNm", "", "That is it."),
    ("moment", "57 N", "", "Right number, wrong unit. “N” goes with a force; the question asks for a torque"),
    ("moment", "57 N/m", "", "Right number, wrong unit. “N/m” goes with a stiffness"),
    ("nothing", "0", "", "That is it."),
    ("nothing", "0 kN", "", "That is it."),
    ("nothing", "0.0 lbf", "", "That is it."),
    ("nothing", "1 kN", "", "Nearly. It cancels."),
    ("nothing", "0.3 kN", "", "Not yet. Too large."),
    ("percent", "27 %", "", "That is it."),
    ("percent", "27 percent", "", "That is it."),
    ("percent", "0.27", "", "That is it."),
    ("percent", "27", "", "Right number, wrong unit. It would be right in %."),
]  # fmt: skip


@pytest.fixture(scope="module")
def collection(browser: Any, site: str) -> Any:
    """The collection opened once, with what its console says."""
    context = browser.new_context()
    page = context.new_page()
    page.console = []  # what it says
    page.on("console", lambda message: page.console.append(message.text))
    page.on("pageerror", lambda error: page.console.append(str(error)))
    page.goto(site + "practice.html")
    yield page
    context.close()


def answer(page: Any, stem: str, text: str, way: str = "") -> str:
    """What is said of an answer."""
    form = page.locator(f"#practice-{stem}")
    form.get_by_label("Your answer").fill(text)
    if way or stem == "length":
        form.get_by_label("Which way").select_option(way or "…")
    form.locator("output").evaluate("output => output.textContent = ''")
    form.get_by_role("button", name="Check it").click()
    form.locator("output:not(:empty)").wait_for()
    return said(form)


def said(form: Any) -> str:
    """What stands below an answer."""
    return text_of(form.locator("output"))


def text_of(element: Any) -> str:
    """A text as it is read, with plain spaces."""
    return " ".join(str(element.inner_text()).split())


@pytest.mark.parametrize(("stem", "text", "way", "reply"), ANSWERS)
def test_the_answer_box_says(collection: Any, stem: str, text: str, way: str, reply: str) -> None:
    assert answer(collection, stem, text, way).startswith(reply)
    assert collection.console == []


def test_what_is_wanting_is_marked_and_gets_the_focus(collection: Any) -> None:
    answer(collection, "force", "much")
    box = collection.locator("#practice-force").get_by_label("Your answer")
    assert box.get_attribute("aria-invalid") == "true"
    assert box.evaluate("box => box === document.activeElement")
    answer(collection, "force", "3.4 kN")
    assert box.get_attribute("aria-invalid") is None
    output = collection.locator("#practice-force output")
    assert output.get_attribute("data-state") == "right"
    assert collection.locator("#practice-force").get_by_role("status").count() == 1


VARIANTS = (
    (2, "6.8 kN", "6.80 kN"),
    (3, "10.2 kN", "10.2 kN"),
    (4, "13.6 kN", "13.6 kN"),
    (5, "17 kN", "17 kN"),
    (1, "3.4 kN", "3.40 kN"),
)


def test_another_variant_changes_question_nudges_answer_and_working(visit: Visiting, site: str) -> None:
    seen = visit(site)
    page = seen.go("practice.html")
    form = page.locator("#practice-force")
    for number, force, shown in VARIANTS:
        form.get_by_role("button", name="Another variant").press("Enter")
        page.wait_for_function(
            "n => document.querySelector('#practice-force [data-which]').textContent == n", arg=number
        )
        assert f"What is it with {number} kN?" in text_of(form.locator(".question"))
        assert answer(page, "force", force) == "That is it. Well done."
        form.get_by_text("A nudge", exact=True).click()
        assert text_of(form.locator("[data-nudge]").first).endswith(f"Add {number} kN.")
        form.get_by_text("The working").click()
        form.locator("[data-working] p").wait_for()
        assert text_of(form.locator("[data-working] p")) == f"It was {shown}."
    assert seen.console == []
    assert seen.foreign() == []


def test_a_choice_says_why_not(visit: Visiting, site: str) -> None:
    page = visit(site).go("practice.html")
    form = page.locator("#practice-choice")

    def checked() -> str:
        form.get_by_role("button", name="Check it").click()
        page.wait_for_timeout(100)
        return said(form)

    assert checked() == "Choose one, please."
    form.get_by_label("Down with 1 kN").check()
    assert checked() == "Not that one. It is less than that."
    form.get_by_label("Up").check()
    assert checked() == "That is it."
    form.get_by_role("button", name="Another variant").click()
    form.get_by_label("Down with 2 kN").check()
    assert checked() == "That is it."


def test_the_answer_box_works_with_the_keyboard_alone(visit: Visiting, site: str) -> None:
    page = visit(site).go("practice.html")
    box = page.locator("#practice-force").get_by_label("Your answer")
    box.focus()
    page.keyboard.type("3.4 kN")
    page.keyboard.press("Enter")
    page.locator("#practice-force output[data-state=right]").wait_for()
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "Check it"


def test_it_works_on_another_page_and_in_us_units(visit: Visiting, site: str) -> None:
    seen = visit(site, width=360)
    page = seen.go("index.html")
    page.locator("input[value=us]").evaluate("box => box.click()")
    form = page.locator("#practice-force")
    assert "What is it with 225 lbf?" in text_of(form.locator(".question"))
    form.get_by_text("The working").click()
    form.locator("[data-working] p").wait_for()
    assert text_of(form.locator("[data-working] p")) == "It was 764 lbf."
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    assert form.locator("..").get_by_role("link", name="Practice problems").count() == 1


def test_without_a_script_the_problems_read_whole(visit: Visiting, site: str) -> None:
    page = visit(site, script=False).go("practice.html")
    form = page.locator("#practice-force")
    assert "What is it with 1 kN" in text_of(form)
    assert not form.get_by_role("button").first.is_visible()
    assert not form.get_by_label("Your answer").is_visible()
    assert page.get_by_text("The key has them all.").is_visible()
    form.get_by_text("A nudge", exact=True).click()
    assert form.locator("[data-nudge] div").first.is_visible()
    page.get_by_role("link", name="the key").click()
    assert "3.40 kN" in text_of(page.locator("#practice-force .solution").first)


def test_on_paper_there_is_room_for_an_answer_and_no_box(visit: Visiting, site: str) -> None:
    page = visit(site).go("practice.html")
    page.emulate_media(media="print")
    form = page.locator("#practice-force")
    assert not form.get_by_label("Your answer").is_visible()
    assert not form.get_by_text("A nudge", exact=True).is_visible()
    assert not form.get_by_role("button").first.is_visible()
    height = form.evaluate("form => parseFloat(getComputedStyle(form, '::after').height)")
    assert height > 50
    assert not page.locator("#practice-choice input").first.is_visible()
    assert page.locator("#practice-choice").get_by_text("Down with 1 kN").is_visible()


def test_the_key_is_not_found_by_the_search(visit: Visiting, site: str) -> None:
    page = visit(site).go("search.html")
    found = page.evaluate("window.searchIndex || null") or page.evaluate(
        """() => new Promise(done => { const s = document.createElement('script'); s.src = 'search/search_index.js';
        s.onload = () => done(window.searchIndex); document.head.append(s); })"""
    )
    locations = {entry["location"] for entry in found["docs"]}
    assert "practice.html" in locations
    assert not any(location.startswith("practice-key") for location in locations)

"""The reference pages hold every public formula as its docstring has it, and no link of theirs leads nowhere."""

import gzip
import importlib
import inspect
import pkgutil
import re
from collections.abc import Iterator
from html import unescape
from typing import Any

import pytest

import hubwright.mechanics
from hubwright.lessons.docstrings import read_docstring
from hubwright.lessons.formula_text import formula_html
from hubwright.lessons.page_state import PageState
from hubwright.lessons.reference_links import FOLDER
from hubwright.lessons.reference_pages import INDEX, formulas, module_body, modules, pages


def public_things() -> Iterator[tuple[str, str, Any]]:
    """Every public function and class of the mechanics, found without the pages' own listing."""
    for module in pkgutil.iter_modules(hubwright.mechanics.__path__):
        loaded = importlib.import_module(f"hubwright.mechanics.{module.name}")
        for name, thing in inspect.getmembers(loaded, lambda each: inspect.isfunction(each) or inspect.isclass(each)):
            if not name.startswith("_") and thing.__module__ == loaded.__name__:
                yield module.name, name, thing


THINGS = {f"{module}.{name}": (module, name, thing) for module, name, thing in public_things()}
FUNCTIONS = {key: each for key, each in THINGS.items() if inspect.isfunction(each[2])}


def body(name: str) -> str:
    page = PageState(file="generated")
    text = module_body(page, modules()[name])
    return page.put_back(page.put_back(text), late=True)


BODIES = {name: body(name) for name in modules()}


def text_of(html: str) -> str:
    return unescape(re.sub(r"<[^>]+>", "", html))


@pytest.mark.parametrize("key", THINGS)
def test_every_public_function_and_class_has_its_place(key: str) -> None:
    module, name, _ = THINGS[key]
    assert f'<h2 id="{name}">' in BODIES[module]


@pytest.mark.parametrize("key", FUNCTIONS)
def test_a_page_says_what_the_docstring_says(key: str) -> None:
    module, name, thing = FUNCTIONS[key]
    start = BODIES[module].index(f'<h2 id="{name}">')
    entry = BODIES[module][start:].split('class="formula-entry"')[0]
    said = re.sub(r"[\s_^`]", "", text_of(entry))
    doc = inspect.getdoc(thing) or ""
    for parameter in inspect.signature(thing).parameters:
        assert parameter in text_of(entry)
    for line in doc.split("\n"):
        for word in re.findall(r"[a-z]{3,}", line):
            if "---" not in line and line not in ("Parameters", "Returns", "Raises", "Notes", "Examples", "References"):
                assert word in said, (word, line)


@pytest.mark.parametrize("key", FUNCTIONS)
def test_an_example_stands_as_it_is_run(key: str) -> None:
    module, _, thing = FUNCTIONS[key]
    doc = inspect.getdoc(thing) or ""
    lines = [line.strip() for line in doc.split("\n") if line.strip().startswith(">>>")]
    said = text_of(BODIES[module])
    for line in lines:
        assert line in said


def test_no_link_leads_nowhere() -> None:
    places = {f"/{FOLDER}/{name}.md": set(re.findall(r'id="([^"]+)"', html)) for name, html in BODIES.items()}
    links = [link for html in BODIES.values() for link in re.findall(r'href="([^"]+)"', html)]
    assert len(links) > len(BODIES)
    for link in links:
        page, _, place = link.partition("#")
        if page in ("index.md", "/checks.md"):
            continue
        assert place in places[page], link


def test_a_page_is_light() -> None:
    assert max(len(gzip.compress(html.encode())) for html in BODIES.values()) < 20_000


def test_there_is_a_page_for_each_module_and_one_that_lists_them() -> None:
    made = pages(None)  # type: ignore[arg-type]  # nothing of the site goes into them
    assert [page.path for page in made if page.listed] == [INDEX]
    assert {page.path for page in made} == {INDEX, *(f"{FOLDER}/{name}.md" for name in modules())}
    page = PageState(file="generated")
    listed = page.put_back(made[0].write(page))
    for module, name, _ in FUNCTIONS.values():
        assert f'href="/{FOLDER}/{module}.md#{name}"' in listed


@pytest.mark.parametrize(
    ("line", "html"),
    [
        ("P = X F + Y F_a", "<i>P</i> = <i>X</i> <i>F</i> + <i>Y</i> <i>F</i><sub>a</sub>"),
        ("C/2^(7/9)", "<i>C</i>/2<sup>7/9</sup>"),
        ("(1 + A^(−10/3))^0.3", "(1 + <i>A</i><sup>−10/3</sup>)<sup>0.3</sup>"),
        ("((1−γ)/(1+γ))^1.72", "((1−<i>γ</i>)/(1+<i>γ</i>))<sup>1.72</sup>"),
        ("Q₁ = Kδ²", "<i>Q</i><sub>1</sub> = <i>Kδ</i><sup>2</sup>"),
        ("tan φ < 1 or cos φ", "tan <i>φ</i> &lt; 1 or cos <i>φ</i>"),
        ("ΔF_front = total/4", "Δ<i>F</i><sub>front</sub> = total/4"),
        ("rim_width + 25.4 mm", "rim_width + 25.4 mm"),
        ("C0 = f0·N (N, mm)", "<i>C</i>0 = <i>f</i>0·<i>N</i> (N, mm)"),
    ],
)
def test_a_formula_is_set_from_its_text(line: str, html: str) -> None:
    assert formula_html(line) == html


@pytest.mark.parametrize("key", [key for key, each in formulas().items() if each.docstring.formula])
def test_setting_a_formula_loses_nothing_of_it(key: str) -> None:
    plain = str.maketrans("₀₁₂₃ᵢₑⱼ⁰²³⁴ⁿ", "0123iej0234n", " _^()")
    for line in formulas()[key].docstring.formula:
        set_text = text_of(str(formula_html(line)))
        assert set_text.translate(plain) == line.translate(plain)


def test_a_docstring_is_read_in_its_parts() -> None:
    doc = read_docstring(
        "Return a thing.\n\nIt matters.\n\n    y = x\n    z = y\n\nwith x long.\n\nParameters\n----------\nx\n"
        "    what it is [m];\n    more.\nz : float\n    other [N].\n\nExamples\n--------\n>>> 1 +\n... 2\n3\n"
    )
    assert doc.summary == "Return a thing."
    assert [(part.is_formula, part.lines) for part in doc.body] == [
        (False, ("It matters.",)),
        (True, ("y = x", "z = y")),
        (False, ("with x long.",)),
    ]
    assert [(each.name, each.text) for each in doc.entries("Parameters")] == [
        ("x", "what it is [m]; more."),
        ("z : float", "other [N]."),
    ]
    assert doc.sections["Examples"] == ">>> 1 +\n... 2\n3"

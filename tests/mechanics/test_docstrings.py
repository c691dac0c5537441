"""Every public formula of the mechanics carries its sections and its units."""

import importlib
import inspect
import pkgutil
import re

import pytest

import hubwright.mechanics

SECTIONS = ["Parameters", "Returns", "Notes", "Examples", "References"]
PLUMBING = {"constants", "vector", "contact_forces"}  # no formulas


def public_formulas():
    for module in pkgutil.iter_modules(hubwright.mechanics.__path__):
        if module.name in PLUMBING:
            continue
        loaded = importlib.import_module(f"hubwright.mechanics.{module.name}")
        for name, function in inspect.getmembers(loaded, inspect.isfunction):
            if function.__module__ == loaded.__name__ and not name.startswith("_"):
                yield pytest.param(function, id=f"{module.name}.{name}")


FORMULAS = list(public_formulas())


def section(doc: str, title: str) -> str:
    """Return the text under a heading up to the next one."""
    found = re.search(rf"^{title}\n-{{3,}}\n(.*?)(?=^\w[\w ]*\n-{{3,}}\n|\Z)", doc, re.DOTALL | re.MULTILINE)
    return found.group(1) if found else ""


@pytest.mark.parametrize("function", FORMULAS)
def test_every_public_formula_has_its_sections(function):
    doc = inspect.getdoc(function) or ""
    assert re.match(r"Return .*\.\n", doc), "one sentence that says what it returns"
    assert re.search(r"^ {4}\S.*$", doc.split("Parameters\n")[0], re.MULTILINE), "the formula, indented by four"
    for title in SECTIONS:
        assert section(doc, title).strip(), title
    if re.search(r"^\s+raise \w", inspect.getsource(function), re.MULTILINE):
        assert section(doc, "Raises").strip(), "Raises"


@pytest.mark.parametrize("function", FORMULAS)
def test_every_parameter_and_every_result_of_a_formula_is_described_with_its_unit(function):
    doc = inspect.getdoc(function) or ""
    described = re.findall(r"^(\w+)\n((?: {4}.*\n?)+)", section(doc, "Parameters"), re.MULTILINE)
    assert [name for name, _ in described] == list(inspect.signature(function).parameters)
    annotations = inspect.get_annotations(function)
    for name, text in described:
        # a choice of words has no unit, nor has what is made of parts that carry their own
        if re.search(r"Value|float|int|Vector|Literal\[1", str(annotations[name])):
            assert re.search(r"\[[^\]]+\]", text), name
    assert re.search(r"\[[^\]]+\]", section(doc, "Returns")), "unit of the result"


@pytest.mark.parametrize("function", FORMULAS)
def test_physical_arguments_are_keyword_only(function):
    # what is acted on (a body, a list of masses, a solved beam) may stand first without a name
    for parameter in inspect.signature(function).parameters.values():
        assert parameter.kind is not inspect.Parameter.VAR_KEYWORD
        if parameter.kind is not inspect.Parameter.KEYWORD_ONLY:
            assert not re.search(r"^(Value|float)", str(parameter.annotation)), parameter.name


def test_formulas_are_found():
    assert len(FORMULAS) > 30

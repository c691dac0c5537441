"""Imports run one way through the package, and heavy libraries stay where they belong."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "diagrams" / "hubwright"

# Each may import itself and what stands before it.
ORDER = ("places", "errors", "quantities", "mechanics", "published", "setup", "results", "scenes", "drawing", "lessons")
ALONE = {
    "__init__": (),
    "theme": ("places",),
    "new_site": ("places", "errors", "quantities", "setup"),
    "export": ("errors", "setup", "results", "scenes", "drawing"),
}
ONLY_HERE = {
    "matplotlib": ("drawing",),
    "pint": ("quantities",),
    "jinja2": ("lessons",),
    "markdown": ("lessons",),
    "mkdocs": ("lessons",),
    "click": ("cli", "lessons"),
}

FILES = sorted(PACKAGE.rglob("*.py"))


def imported(file: Path) -> list[str]:
    names: list[str] = []
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{file}: relative import"
            names.append(node.module or "")
    return names


def area(file: Path) -> str:
    return file.relative_to(PACKAGE).parts[0].removesuffix(".py")


@pytest.mark.parametrize("file", FILES, ids=lambda file: str(file.relative_to(PACKAGE)))
def test_imports_run_one_way(file: Path) -> None:
    here = area(file)
    if here == "cli":
        return
    allowed = ALONE[here] if here in ALONE else ORDER[: ORDER.index(here) + 1]
    inner = {name.split(".")[1] for name in imported(file) if name.startswith("hubwright.")}
    assert inner <= {*allowed, here}, f"{here} may not import {inner - {*allowed, here}}"


@pytest.mark.parametrize("file", FILES, ids=lambda file: str(file.relative_to(PACKAGE)))
def test_heavy_libraries_stay_where_they_belong(file: Path) -> None:
    for name in imported(file):
        homes = ONLY_HERE.get(name.split(".")[0])
        assert homes is None or area(file) in homes, f"{name} belongs to {homes}"


def test_mechanics_needs_neither_files_nor_units() -> None:
    for file in (PACKAGE / "mechanics").glob("*.py"):
        outside = {name.split(".")[0] for name in imported(file)} - set(sys.stdlib_module_names)
        assert outside <= {"hubwright", "numpy", "scipy"}, file.name


@pytest.mark.parametrize("arguments", [["--help"], ["solve", "content/vehicles/hill-wagon.toml", "--json"]])
def test_the_terminal_loads_neither_matplotlib_nor_mkdocs(arguments: list[str]) -> None:
    code = (
        "import sys\nfrom hubwright.cli import main\n"
        f"try:\n    main({arguments!r})\nexcept SystemExit as end:\n    assert not end.code, end.code\n"
        "slow = {'matplotlib', 'mkdocs', 'scipy.optimize'} & set(sys.modules)\nassert not slow, slow\n"
    )
    run = subprocess.run(
        [sys.executable, "-c", code], cwd=PACKAGE.parents[1], capture_output=True, text=True, check=False
    )
    assert run.returncode == 0, run.stderr


@pytest.mark.parametrize("file", FILES, ids=lambda file: str(file.relative_to(PACKAGE)))
def test_each_file_says_in_its_first_sentence_what_it_holds(file: Path) -> None:
    text = ast.get_docstring(ast.parse(file.read_text(encoding="utf-8")))
    assert text
    assert text.split("\n\n")[0].rstrip().endswith((".", ":")), text.splitlines()[0]
    assert len(file.read_text(encoding="utf-8").splitlines()) <= 400, "split it"

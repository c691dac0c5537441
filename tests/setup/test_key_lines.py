"""Lines of keys, beside the standard TOML reader, which must know the same keys."""

import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given

from hubwright.setup.lines import key_lines
from strategies import as_toml, setup_data

CONTENT = Path(__file__).parents[2] / "content"


def all_paths(data: Any, start: tuple[str | int, ...] = ()) -> set[tuple[str | int, ...]]:
    entries = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    found = set()
    for key, value in entries:
        found |= {(*start, key)} | all_paths(value, (*start, key))
    return found


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("a = 1\n\n# b = 2\nb = 3", {("a",): 1, ("b",): 4}),
        ("[t]\nx = 1\n[t.u]\ny = 2", {("t",): 1, ("t", "x"): 2, ("t", "u"): 3, ("t", "u", "y"): 4}),
        ("a.b = 1\na.c = 2", {("a",): 1, ("a", "b"): 1, ("a", "c"): 2}),
        ("\"a.b\" = 1\n'c d' = 2", {("a.b",): 1, ("c d",): 2}),
        ("t = { x = 1, y = { z = '}' } }", {("t",): 1, ("t", "x"): 1, ("t", "y"): 1, ("t", "y", "z"): 1}),
        ("a = [\n 1, # ]\n '2',\n]\nb = 1", {("a",): 1, ("a", 0): 2, ("a", 1): 3, ("b",): 5}),
        ('a = """\nb = 1\n"""\nc = 2', {("a",): 1, ("c",): 4}),
        ("a = '''\nb = \"\n'''\r\nc = 2", {("a",): 1, ("c",): 4}),
        ('a = "x # \\" y" # z\nb = 1', {("a",): 1, ("b",): 2}),
        (
            "[[g]]\nm = 1\n[[g]]\nm = 2\n[g.k]\nn = 3",
            {
                ("g",): 1,
                ("g", 0): 1,
                ("g", 0, "m"): 2,
                ("g", 1): 3,
                ("g", 1, "m"): 4,
                ("g", 1, "k"): 5,
                ("g", 1, "k", "n"): 6,
            },
        ),
        (
            "[ a . 'b' ]\nx = 1979-05-27T07:32:00Z\ny = inf",
            {("a",): 1, ("a", "b"): 1, ("a", "b", "x"): 2, ("a", "b", "y"): 3},
        ),
    ],
)
def test_every_key_has_the_line_where_it_first_stands(text, lines):
    assert key_lines(text) == lines
    assert set(lines) == all_paths(tomllib.loads(text))


@pytest.mark.parametrize("path", sorted(CONTENT.glob("[vsb]*/*.toml")), ids=lambda path: path.stem)
def test_the_demonstration_files_have_a_line_for_every_key(path):
    text = path.read_text(encoding="utf-8")
    lines = key_lines(text)
    assert set(lines) == all_paths(tomllib.loads(text))
    for key, line in lines.items():
        if isinstance(key[-1], str):
            assert key[-1] in text.splitlines()[line - 1]


@given(setup_data())
def test_any_setup_has_a_line_for_every_key(data):
    text = as_toml(data)
    assert set(key_lines(text)) == all_paths(tomllib.loads(text))

"""Whole messages of what goes wrong in a lesson, with the line of the file."""

import dataclasses
from pathlib import Path

import pytest
from lesson_sites import problems, rendered

from hubwright.lessons import figures
from hubwright.lessons.wording import forbidden_words

FRONT = "---\ntitle: What?\nlesson: 4\n---\n"


def test_a_missing_name_offers_the_nearest(tmp_path: Path) -> None:
    assert problems(tmp_path, FRONT + "Text.\n\n{{ stock.standing.bearing_momentum.x | show }}\n") == [
        "content/page.md:7: stock.standing has no 'bearing_momentum'. "
        "Perhaps you meant 'bearing_moment' or 'bearing_force'."
    ]


def test_an_undefined_name_offers_the_nearest(tmp_path: Path) -> None:
    assert problems(tmp_path, FRONT + "\n{{ stok.name }}\n") == [
        "content/page.md:6: 'stok' is not defined. Perhaps you meant 'stock'."
    ]


def test_a_value_that_the_file_does_not_give(tmp_path: Path) -> None:
    assert problems(tmp_path, FRONT + "{{ stock.brake.effective_radius | show }}\n") == [
        "content/page.md:5: there is no value before '.effective_radius': this setup's file does not give it. "
        'Ask has("…") first.'
    ]


def test_arithmetic_of_unlike_things(tmp_path: Path) -> None:
    assert problems(tmp_path, FRONT + "{{ (stock.loaded_radius + stock.tire.mass) | show }}\n") == [
        "content/page.md:5: cannot add m and kg: the units differ in kind"
    ]


def test_a_bare_quantity_is_to_be_shown(tmp_path: Path) -> None:
    assert problems(tmp_path, FRONT + "{{ stock.load_line_offset }}\n") == [
        "content/page.md:5: 12\u00a0mm is a quantity; write it with '| show', so that both unit systems get it"
    ]


def test_a_syntax_error_has_its_line(tmp_path: Path) -> None:
    assert problems(tmp_path, FRONT + "One.\n{% if %}\n") == [
        "content/page.md:6: Expected an expression, got 'end of statement block'"
    ]


def test_a_failed_claim_in_a_tied_lesson(tmp_path: Path) -> None:
    text = (
        FRONT.replace("lesson: 4", "tied_to: wagon")
        + '\n{{ claim("nearly a third more", 0.41, between=(0.27, 0.33)) }}\n'
    )
    assert problems(tmp_path, text) == [
        "content/page.md:6: claim 'nearly a third more' fails: the number is 0.410, not between 0.270 and 0.330"
    ]


def test_a_claim_that_holds_prints_its_words_and_one_that_does_not_its_others(tmp_path: Path) -> None:
    call = '{{ claim("nearly a third more", RATIO, between=(0.27, 0.33), otherwise="more") }}'
    for ratio, words in (("0.3", "nearly a third more"), ("0.5", "more")):
        state, text = rendered(tmp_path, call.replace("RATIO", ratio))
        assert not state.problems
        assert text.strip() == words


def test_a_claim_for_any_setup_needs_other_words(tmp_path: Path) -> None:
    assert problems(tmp_path, '{{ claim("a third more", 0.3, between=(0.27, 0.33)) }}') == [
        "content/page.md:1: claim 'a third more': a lesson that is tied to no setup needs otherwise=\"…\""
    ]


def test_an_orphan_number_of_prose_and_of_front_matter(tmp_path: Path) -> None:
    text = "---\ntitle: What are 12 mm?\n---\nIt carries\ntwice the load.\n"
    advice = 'compute it, or mark it with given("…") if it is data'
    assert problems(tmp_path, text) == [
        f"content/page.md:2: orphan number '12 mm': {advice}",
        f"content/page.md:5: orphan number 'twice': {advice}",
    ]


def test_an_open_free_body_fails_where_its_figure_stands(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    honest = figures.scenes_of

    def opened(name: str, solved: object, *, case: str) -> list[object]:
        scenes = honest(name, solved, case=case)
        body = scenes[0].body
        assert body is not None
        lost = dataclasses.replace(body, forces=body.forces[1:])
        return [dataclasses.replace(scene, body=lost) for scene in scenes]

    monkeypatch.setattr(figures, "scenes_of", opened)
    (problem,) = problems(tmp_path, FRONT + '\n\n{{ figure("wheel-end section", stock) }}\n')
    assert problem.startswith("content/page.md:7: the free body of '")
    assert "does not close: its forces leave" in problem


def test_an_unknown_figure_working_source_case_and_hazard(tmp_path: Path) -> None:
    for call, message in (
        ('figure("wheel section", stock)', "no figure is called 'wheel section'; there are: "),
        (
            'figure("wheel-end section", stock, case="jump")',
            "figure(\"wheel-end section\", …): this setup has no case 'jump'; it has: ",
        ),
        (
            'working(stock.standing, "bearing_moment.w")',
            "there is no working of 'bearing_moment.w' of a case. Perhaps you meant ",
        ),
        (
            'note("source", "Levers.", "archimedes")',
            "no source is called 'archimedes' in sources.toml; there are: lever",
        ),
        ('vary(stock, {"wheel.spacr": "25 mm"})', "'wheel.spacr'"),
    ):
        (problem,) = problems(tmp_path, FRONT + "{{ " + call + " }}\n")
        assert problem.startswith("content/page.md:5: ")
        assert message in problem
    (problem,) = problems(tmp_path, "---\ntitle: What?\nhazards: [lifts]\n---\nText.\n")
    assert problem.startswith("content/page.md:3: no caution is called 'lifts'; there are: lifting, ")


def test_several_problems_of_a_page_are_all_told(tmp_path: Path) -> None:
    text = '{{ claim("a", 2, between=(0, 1)) }}\n\n12 mm\n\n{{ nothing }}\n'
    lines = [problem.split(":")[1] for problem in problems(tmp_path, text)]
    assert sorted(lines) == ["1", "3", "5"]


def test_a_lesson_cannot_reach_into_python(tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, "{{ stock.__class__.__mro__ }}\n")
    assert problem.startswith("content/page.md:1: ")


def test_promises_are_noted_and_denials_are_not() -> None:
    text = "This is safe.\nIt does not say that it is legal.\nNo problem.\nSafer, the maker guarantees."
    assert [warned.word for warned in forbidden_words(text)] == ["safe", "No problem", "Safer", "guarantees"]

"""The command line: exit codes, what is printed where, and the answers that `new` takes."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from hubwright.cli import main
from hubwright.new_site import UNKNOWN, VEHICLE, demonstration_answers, questions, vehicle_file
from hubwright.setup import load_text

CONTENT = Path(__file__).parents[1] / "content"


def hubwright(*arguments: object, answers: str | None = None) -> Result:
    return CliRunner().invoke(main, [str(argument) for argument in arguments], input=answers)


@pytest.mark.parametrize("file", sorted(CONTENT.glob("vehicles/*.toml")) + sorted(CONTENT.glob("setups/*.toml")))
@pytest.mark.parametrize("form", ["--json", "--csv", "--units=si", "--units=us"])
def test_every_demonstration_file_solves_in_every_form(file: Path, form: str) -> None:
    result = hubwright("solve", file, form)
    assert result.exit_code == 0, result.stderr
    assert result.stderr == ""
    if form == "--json":
        entry = json.loads(result.stdout)
        for case in entry["cases"].values():
            assert case["closure"]["force"]["value"] < 1e-6


@pytest.mark.parametrize("file", sorted(CONTENT.glob("beams/*.toml")))
def test_beams_solve(file: Path) -> None:
    entry = json.loads(hubwright("solve", file, "--json").stdout)
    assert entry["reactions"]
    for name in ("maximum_shear", "maximum_moment"):
        assert set(entry[name]) == {"value", "unit", "at"}
    assert hubwright("solve", file).exit_code == 0


def test_a_wrong_file_prints_all_problems_on_standard_error_only(tmp_path: Path) -> None:
    file = tmp_path / "wrong.toml"
    file.write_text('name = "Wrong"\n[wheel]\noffset = "30 kg"\nrim_widht = "7 in"\n', encoding="utf-8")
    result = hubwright("solve", file, "--json")
    assert result.exit_code == 2
    assert result.stdout == ""
    assert "wrong.toml:3: 'wheel.offset' must be a length (got '30 kg')" in result.stderr
    assert "rim_width" in result.stderr


def test_a_missing_file_is_one_clear_sentence(tmp_path: Path) -> None:
    result = hubwright("solve", tmp_path / "nowhere.toml")
    assert result.exit_code == 2
    assert "nowhere.toml" in result.stderr
    assert "Traceback" not in result.stderr


def test_a_case_that_cannot_stand_exits_with_2_and_names_the_case(tmp_path: Path) -> None:
    file = tmp_path / "tall.toml"
    file.write_text(
        vehicle_file(demonstration_answers())
        + '\n[[case]]\nname = "hairpin"\nkind = "cornering"\nlateral_g = 1.5\ntoward = "left"\n',
        encoding="utf-8",
    )
    result = hubwright("solve", file)
    assert result.exit_code == 2
    assert result.stdout == ""
    assert "case 'hairpin'" in result.stderr


def test_another_wheel_gets_its_weights_and_the_reason_for_the_rest() -> None:
    entry = json.loads(hubwright("solve", CONTENT / "vehicles/hill-wagon.toml", "--json", "--wheel=rear_left").stdout)
    assert entry["weight"]["rear_left"]["value"] > 0
    assert "cases" not in entry
    assert "rear left" in entry["error"]
    entry = json.loads(hubwright("solve", CONTENT / "vehicles/hill-wagon.toml", "--json", "--wheel=front_right").stdout)
    assert entry["wheel"] == "front_right"
    assert entry["cases"]["standing"]["row_load"]


def test_new_asks_at_most_ten_questions_whatever_is_known() -> None:
    for known in (True, False):
        answers: dict[str, str] = {}
        while left := [question for question in questions(answers) if question.key not in answers]:
            answers[left[0].key] = left[0].demonstration if known or left[0].needed else UNKNOWN
        assert len(answers) <= 10
        load_text(vehicle_file(answers), "answers.toml")


def test_every_question_says_where_to_look_and_takes_its_own_example() -> None:
    for question in VEHICLE:
        assert question.where.endswith(".")
        assert question.problem(question.demonstration) is None
        assert question.problem(question.example.split(" or ")[0]) is None


def test_new_asks_again_until_the_answer_can_be_used(tmp_path: Path) -> None:
    given = ["Camp cart", "don't know", "2000 N", "4700 lb", "110 in", "63 in", "245/75R16", "7 in", "ET30", "?", "?"]
    result = hubwright("new", tmp_path / "site", answers="\n".join(given) + "\n")
    assert result.exit_code == 0, result.output
    assert "must be a mass" in result.output
    setup = load_text((tmp_path / "site/content/vehicles/camp-cart.toml").read_text(encoding="utf-8"), "camp-cart.toml")
    assert setup.wheel.offset == pytest.approx(0.030)
    assert setup.inputs["hub.face_to_bearing_centre"].origin == "estimated"
    assert "1. hubwright check" in result.output


def test_new_touches_nothing_that_exists(tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("mine", encoding="utf-8")
    result = hubwright("new", tmp_path, "--yes")
    assert result.exit_code == 2
    assert [path.name for path in tmp_path.iterdir()] == ["notes.txt"]

"""What lessons may ask of life, play and noise: ratios with spans and verdicts, and no life as one number."""

import math
from collections.abc import Iterator
from pathlib import Path

import pytest
from lesson_sites import TRAILER, WAGON, problems

from hubwright.lessons.course import Course, noise, play, play_from_tread
from hubwright.lessons.life_views import life_left
from hubwright.lessons.named_values import View, names_of, subject_of, value_at
from hubwright.lessons.views import setup_view
from hubwright.quantities import Quantity
from hubwright.results import Results, solve
from hubwright.setup import load_text, vary
from hubwright.setup.model import Setup

CONTENT = Path(__file__).parents[2] / "content"
BLANK = ("rollers_per_row", "roller_diameter", "roller_length", "pitch_diameter", "contact_angle", "row_spacing")


def solved(text: str, changes: dict[str, object] | None = None) -> Results:
    setup = load_text(text, "test.toml")
    assert isinstance(setup, Setup)
    return solve(vary(setup, changes) if changes else setup)


def without_rows() -> str:
    return "\n".join(line for line in TRAILER.splitlines() if line.partition(" ")[0] not in BLANK)


@pytest.fixture(name="course")
def empty_course() -> Course:
    return Course.read(CONTENT, in_view="none", folders=())


def leaves(view: View) -> Iterator[Quantity]:
    for name in names_of(view):
        value = getattr(view, name)
        for each in value if isinstance(value, list) else [value]:
            if isinstance(each, View):
                yield from leaves(each)
            elif isinstance(each, Quantity):
                yield each


def test_no_name_of_a_life_or_a_comparison_is_a_life_or_a_distance_of_its_own(course: Course) -> None:
    results = solved(WAGON, {"duty": "hill roads"})
    stock = setup_view(results, "stock")
    far = course.vary(stock, {"wheel.spacer": "25 mm"})
    compared = course.compare(stock, far)
    assert results.life is not None
    assert results.life.duty is not None
    kept = [one.detailed for one in results.life.cases.values()] + [one.quick for one in results.life.cases.values()]
    kept += [results.life.duty.revolutions, results.life.duty.distance]
    found = [leaf for view in (stock.life, compared, *(case.life for case in stock.cases)) for leaf in leaves(view)]  # type: ignore[arg-type, union-attr]
    assert len(found) > 100
    for leaf in found:
        assert not any(math.isclose(leaf.value, value, rel_tol=1e-6) for value in kept if value)


def test_a_setup_beside_itself_has_ratio_one_no_span_and_no_parts(course: Course) -> None:
    stock = setup_view(solved(WAGON, {"duty": "hill roads"}), "stock")
    compared = course.compare(stock, stock)
    assert value_at(compared, "distance.ratio") == Quantity(1.0, "1")
    assert value_at(compared, "distance.words") == "does not change"
    assert value_at(compared, "parts") == []
    assert course.compare(stock, stock) is compared  # drawn once


def test_the_ratio_of_a_comparison_carries_its_span_and_the_words_of_its_verdict(course: Course) -> None:
    stock = setup_view(solved(WAGON, {"duty": "hill roads"}), "stock")
    heavier = course.compare(stock, course.vary(stock, {"hub.face_to_bearing_centre": "70 mm"}))
    ratio, words = value_at(heavier, "distance.ratio"), value_at(heavier, "distance.words")
    assert isinstance(ratio, Quantity)
    assert ratio.low is not None
    assert ratio.high is not None
    assert ratio.low <= ratio.value <= ratio.high
    expected = "raises" if ratio.low > 1 else "lowers" if ratio.high < 1 else "these data do not settle which way"
    assert words == expected


def test_a_figure_of_a_comparison_shows_both_setups_at_the_wheel_compared(course: Course) -> None:
    box = {
        "name": "Box",
        "mass": "150 kg",
        "behind_front_axle": "0 m",
        "left_of_centre": "-0.7 m",
        "above_ground": "1 m",
    }
    stock = setup_view(solved(WAGON, {"duty": "hill roads"}), "stock")
    compared = course.compare(stock, course.vary(stock, {"gear": [box]}))
    assert compared.wheel_words == "right front"
    before, after = subject_of(compared.before), subject_of(compared.after)  # type: ignore[arg-type]
    assert isinstance(before, Results)
    assert isinstance(after, Results)
    assert (before.wheel, after.wheel) == ("front_right", "front_right")
    assert len(after.setup.gear) == len(before.setup.gear) + 1
    assert compared.splits


def test_lives_with_dirt_and_film_are_compared_where_the_file_tells_of_them(course: Course) -> None:
    grease = {"lubrication": {"viscosity_ratio": 1.0, "contamination": "typical contamination"}}
    silent = setup_view(solved(WAGON, {"duty": "hill roads"}), "stock")
    greased = setup_view(solved(WAGON, {"duty": "hill roads", **grease}), "stock")
    assert course.compare(silent, course.vary(silent, {"wheel.spacer": "25 mm"})).modified_distance is None
    ratio = value_at(
        course.compare(greased, course.vary(greased, {"wheel.spacer": "25 mm"})), "modified_distance.ratio"
    )
    assert isinstance(ratio, Quantity)
    assert ratio.low is not None


def test_the_shares_of_wear_add_up_and_the_worst_case_is_the_largest() -> None:
    stock = setup_view(solved(WAGON, {"duty": "hill roads"}), "stock")
    parts = value_at(stock, "life.duty.parts")
    assert isinstance(parts, list)
    wears = [part.damage_share.value for part in parts]  # type: ignore[union-attr]
    assert sum(wears) == pytest.approx(1)
    assert value_at(stock, "life.duty.worst.damage_share") == max(wears)


def test_a_pair_without_data_has_no_life_no_play_and_only_the_wheels_turns() -> None:
    stock = setup_view(solved(without_rows()), "stock")
    assert value_at(stock, "life.known") is False
    assert value_at(stock, "life.duty") is None
    assert value_at(stock, "standing.life") is None
    assert play(stock, Quantity(1e-4, "m")) is None
    heard = noise(stock, Quantity(20.0, "m/s"))
    assert value_at(heard, "outer_ring") is None
    circumference = value_at(stock, "rolling_circumference")
    assert isinstance(circumference, Quantity)
    assert value_at(heard, "wheel") == Quantity(20.0 / circumference.value, "Hz")


def test_play_from_the_tread_leads_back_to_the_travel() -> None:
    stock = setup_view(solved(WAGON), "stock")
    travel = Quantity(1.5e-3, "m")
    felt = play_from_tread(stock, travel)
    assert felt is not None
    end_play = value_at(felt, "end_play")
    assert isinstance(end_play, Quantity)
    back = play(stock, end_play)
    assert back is not None
    assert value_at(back, "tread_travel").value == pytest.approx(travel.value)  # type: ignore[union-attr]


def test_the_cube_rule_is_that_of_paper_and_pencil() -> None:
    assert life_left(1.0, 3).value == 1 / 8  # twice the load, an eighth of the life
    assert life_left(Quantity(0.1, "1"), Quantity(10 / 3, "1")).value == pytest.approx(1.1 ** (-10 / 3))


def test_a_change_with_which_a_wheel_lifts_does_not_stand(course: Course) -> None:
    stock = setup_view(solved(WAGON, {"case": [{"name": "bend", "kind": "cornering", "lateral_g": 0.3}]}), "stock")
    assert course.stands(stock, {"wheel.spacer": "25 mm"})
    assert not course.stands(stock, {"chassis.centre_of_mass_height": "5 m"})


def test_calls_with_the_wrong_thing_say_what_they_need(tmp_path: Path) -> None:
    (one,) = problems(tmp_path, '{{ play(stock, given("3 kg")) }}')
    (other,) = problems(tmp_path, "{{ compare(stock, 3) }}")
    assert one == "content/page.md:1: play needs a quantity in m, got Quantity(3.0, 'kg')"
    assert other == "content/page.md:1: compare needs a setup, such as stock, got 3"

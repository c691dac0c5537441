"""Cases and duties of a file."""

import pytest
from setup_texts import least, messages, setup_of

from hubwright.setup import named_duties
from hubwright.setup.model import Braking, Cornering, Standing

BEND = '[[case]]\nname = "bend"\nkind = "cornering"\nlateral_g = 0.3\n'
FALL = '[[case]]\nname = "fall"\nkind = "drop"\nheight = "150 mm"\n'


def share(case, value):
    return f'[[duty]]\ncase = "{case}"\nshare = {value}\n'


def test_standing_is_always_there():
    alone = (Standing("standing", "standing"),)
    assert setup_of(least()).cases == alone
    assert setup_of(least('[[case]]\nname = "standing"\nkind = "standing"')).cases == alone


def test_both_makes_two_cases_and_shares_the_distance_evenly():
    setup = setup_of(least(BEND, share("standing", 0.9), share("bend", 0.1)))
    assert setup.cases[1:] == (
        Cornering("bend left", "bend", 0.3, "left"),
        Cornering("bend right", "bend", 0.3, "right"),
    )
    assert [(entry.case, entry.share) for entry in setup.duty] == [
        ("standing", 0.9),
        ("bend left", 0.05),
        ("bend right", 0.05),
    ]
    assert setup.inputs["case.bend.lateral_g"].value == 0.3


def test_one_side_keeps_its_name_and_can_be_shared_alone():
    one = setup_of(least(BEND + 'toward = "left"\n'))
    assert [case.name for case in one.cases] == ["standing", "bend"]
    half = setup_of(least(BEND, share("bend left", 1)))
    assert [(entry.case, entry.share) for entry in half.duty] == [("bend left", 1)]


@pytest.mark.parametrize("name", sorted(named_duties()))
def test_named_duties_bring_their_cases_and_sum_to_one(name):
    for trailer in (False, True):
        text = least(trailer=trailer).replace("\n", f'\nduty = "{name}"\n', 1)
        setup = setup_of(text)
        assert setup.duty_name == name
        assert sum(entry.share for entry in setup.duty) == pytest.approx(1)
        assert {entry.case for entry in setup.duty} <= {case.name for case in setup.cases}
        assert "invented" in next(entry.note for key, entry in setup.inputs.items() if key.startswith("duty."))


def test_the_three_duties_of_the_format_are_there():
    assert sorted(named_duties()) == ["hill roads", "mostly highway", "worksite and trail"]


def test_a_files_own_case_wins_over_that_of_a_named_duty():
    own = '[[case]]\nname = "firm braking"\nkind = "braking"\nbraking_g = 0.5\n'
    setup = setup_of(least(own).replace("\n", '\nduty = "hill roads"\n', 1))
    assert [case for case in setup.cases if isinstance(case, Braking)] == [Braking("firm braking", "firm braking", 0.5)]


@pytest.mark.parametrize(
    ("more", "expected"),
    [
        (
            BEND + share("standing", 0.5) + share("bend", 0.4),
            "19: 'duty.share' must be shares of distance that sum to 1 (got 0.9). Add 0.1.",
        ),
        (
            BEND + share("bent", 1),
            "20: 'duty.1.case' must be the name of a case of this file (got 'bent'). Perhaps you meant 'bend'.",
        ),
        (
            FALL + share("fall", 1),
            "20: 'duty.1.case' must be no drop (got 'fall'). "
            "A drop dents rather than wears: it has no share of a distance.",
        ),
        (
            share("standing", 0.5) + share("standing", 0.5),
            "19: 'duty.2.case' must be named once (got 'standing'). Add the shares together.",
        ),
        (
            BEND + BEND,
            "20: 'case.2.name' must be a name of its own (got 'bend'). 'bend left' is taken in line 16.",
        ),
        (
            BEND.replace("bend", "standing"),
            "16: 'case.1.name' must be another name (got 'standing'). "
            "'standing' is always there and stands for itself.",
        ),
        (
            BEND.replace("cornering", "corner"),
            "17: 'case.1.kind' must be 'standing', 'braking', 'driving', 'cornering', 'side_slope', 'two_wheel', "
            "'ledge' or 'drop' (got 'corner'). Perhaps you meant 'cornering'.",
        ),
        (
            BEND.replace("lateral_g = 0.3", ""),
            "15: 'case.1.lateral_g' must be given. Write it like 0.3.",
        ),
        (
            BEND + 'toward = "up"\n',
            "19: 'case.1.toward' must be 'both', 'left' or 'right' (got 'up'). Write it like 'both'.",
        ),
        (
            BEND.replace("0.3", '"3 m"'),
            "18: 'case.1.lateral_g' must be a number of g (got '3 m'). Write it like 0.3.",
        ),
    ],
)
def test_problems_of_cases_and_duties(more, expected):
    assert messages(least(more)) == [expected]


def test_an_unknown_named_duty_lists_those_there_are():
    text = least().replace("\n", '\nduty = "hill road"\n', 1)
    assert messages(text) == [
        "2: 'duty' must be a named duty (got 'hill road'). Perhaps you meant 'hill roads'. "
        "Known: 'mostly highway', 'hill roads', 'worksite and trail'; or write [[duty]] tables."
    ]


@pytest.mark.parametrize(
    ("case", "reason"),
    [
        ('kind = "driving"\ndriving_g = 0.1\ndriven = "all"', "A trailer drives no wheel."),
        ('kind = "two_wheel"\nsupported = "front_left+rear_right"', "A trailer has no second axle to stand on."),
    ],
)
def test_a_trailer_cannot_have_every_case(case, reason):
    (message,) = messages(least(f'[[case]]\nname = "x"\n{case}', trailer=True))
    assert message.startswith("18: 'case.1.kind' must be a case that a trailer can have (got '")
    assert message.endswith(reason)


@pytest.mark.parametrize("springs", ["", '[suspension]\nwheel_rate = "20 N/mm"\n'])
def test_a_drop_of_a_trailer_is_read_with_springs_and_without(springs):
    # without, solving leaves that one case out and says why
    assert messages(least(FALL + springs, trailer=True)) == []

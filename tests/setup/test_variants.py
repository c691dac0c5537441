"""Changing a setup by keys, and moving single values."""

import pytest
from hypothesis import given
from setup_texts import LEAST, least, setup_of

from hubwright.errors import SetupErrors
from hubwright.setup import vary, with_inputs
from strategies import setups


def test_a_variant_follows_the_rules_of_extending():
    base = setup_of(least('mass = "9 kg"').replace('size = "245/75R16"', 'size = "245/75R16"\nmass = "17 kg"'))
    winch = {"name": "Winch", "mass": "62 kg", "behind_front_axle": "-0.7 m", "above_ground": "0.8 m"}
    changed = vary(
        base,
        {"wheel.spacer": "25 mm", "tire": {"size": "265/75R16", "mass": "20 kg"}, "gear": [winch]},
        name="With spacers",
    )
    assert (changed.name, changed.wheel.spacer, changed.tire.size) == ("With spacers", 0.025, "265/75R16")
    assert (changed.corner_mass_change, changed.gear[0].behind) == (3, -0.7)
    assert (base.wheel.spacer, base.gear) == (0, ())
    assert vary(changed, {"wheel.spacer": "0 mm"}).gear == changed.gear


def test_a_variant_is_checked_like_a_file():
    with pytest.raises(SetupErrors) as caught:
        vary(setup_of(LEAST), {"wheel.spacer": "25 kg", "wheel.ofset": "3 mm"})
    assert str(caught.value).splitlines() == [
        "least (changed): 'wheel.ofset' must be a key that [wheel] can hold. Perhaps you meant 'wheel.offset'.",
        "least (changed): 'wheel.spacer' must be a length (got '25 kg'). Write it like '25 mm'.",
    ]


@given(setups())
def test_changing_nothing_changes_nothing(setup):
    same = vary(setup, {})
    assert (same.chassis, same.tire, same.wheel, same.cases, same.inputs) == (
        setup.chassis,
        setup.tire,
        setup.wheel,
        setup.cases,
        setup.inputs,
    )
    assert same.corner_mass_change == 0


@given(setups())
def test_every_number_can_be_put_back_where_it_was(setup):
    for key, entry in setup.inputs.items():
        if not isinstance(entry.value, str):
            assert with_inputs(setup, {key: entry.value}) == setup


def test_moving_a_value_moves_what_follows_from_it():
    text = LEAST.replace('front_axle_mass = "1000 kg"\nrear_axle_mass = "800 kg"', 'total_mass = "2000 kg"')
    text = text.replace('front_track = "1.5 m"', 'front_track = "1.5 m"\nstatic_stability_figure = 1.25')
    text = text.replace('offset = "30 mm"', 'backspacing = "130 mm"')
    setup = setup_of(text)
    moved = with_inputs(setup, {"chassis.front_share": 0.5, "chassis.front_track": 1.6, "wheel.backspacing": 0.140})
    assert (moved.chassis.front_axle_mass, moved.chassis.rear_axle_mass) == (1000, 1000)
    assert moved.chassis.rear_track == 1.6
    assert moved.chassis.centre_of_mass_height == pytest.approx(0.64)
    assert moved.wheel.offset - setup.wheel.offset == pytest.approx(0.010)
    assert moved.inputs["chassis.front_axle_mass"].value == 1000


def test_moving_the_tires_mass_does_not_make_it_heavier_than_when_weighed():
    setup = setup_of(LEAST)
    assert with_inputs(setup, {"tire.mass": 30.0}).corner_mass_change == 0
    other = vary(setup, {"tire.mass": "20 kg"})
    assert with_inputs(other, {"tire.mass": 21.0}).corner_mass_change == pytest.approx(other.corner_mass_change + 1)


def test_cases_and_shares_can_be_moved():
    bend = '[[case]]\nname = "bend"\nkind = "cornering"\nlateral_g = 0.3\n[[duty]]\ncase = "bend"\nshare = 1\n'
    moved = with_inputs(setup_of(least(bend)), {"case.bend.lateral_g": 0.2, "duty.bend.share": 0.8})
    assert [case.lateral_g for case in moved.cases[1:]] == [0.2, 0.2]
    assert [entry.share for entry in moved.duty] == [0.4, 0.4]


def test_an_unknown_key_is_refused():
    with pytest.raises(KeyError):
        with_inputs(setup_of(LEAST), {"wheel.ofset": 0.03})

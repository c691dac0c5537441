"""What each input does to a result by itself: by hand, in order, and beside the span of the draws."""

import math
from pathlib import Path

import numpy as np
import pytest

from hubwright.results import Results, solve
from hubwright.results.draws import draws_of
from hubwright.results.sensitivity import what_matters
from hubwright.setup import load, load_text

VEHICLES = Path(__file__).parents[2] / "content" / "vehicles"
SETUPS = VEHICLES.parent / "setups"
ONE_RANGE = """\
name = "One range"
[chassis]
front_axle_mass = "1000 kg"
rear_axle_mass = "1000 kg"
wheelbase = "2.5 m"
front_track = "1.5 m"
centre_of_mass_height = "0.6 m"
front_roll_share = 0.5
[tire]
size = "205/65R16"
mass = "10 kg"
vertical_stiffness = "200 N/mm"
[wheel]
rim_width = "6 in"
offset = "30 mm"
mass = "8 kg"
[hub]
face_to_bearing_centre = "40 mm ± 5 mm"
rotating_mass = "10 kg"
[bearing]
kind = "two-row ball"
balls_per_row = 13
ball_diameter = "12 mm"
pitch_diameter = "60 mm"
contact_angle = "35 deg"
row_spacing = "24 mm"
inner_conformity = 0.52
outer_conformity = 0.52
preload = "0 um"
dynamic_rating = "50 kN"
static_rating = "40 kN"
"""


def wagon() -> Results:
    return solve(load(VEHICLES / "hill-wagon.toml"))


def test_the_only_input_with_a_range_makes_the_whole_span() -> None:
    results = solve(load_text(ONE_RANGE, "one-range.toml"))
    (alone,) = what_matters(results, "worst row load")
    assert alone.key == "hub.face_to_bearing_centre"
    # the percentiles of 400 draws lie within a few ranks of those of the range
    assert alone.share == pytest.approx(1.0, abs=0.05)


def test_the_ends_follow_from_the_lever_rule() -> None:
    # vertical: row A carries B_z/2 + B_z y/ℓ, with y moved from its value by 0.9 of ± 5 mm (mechanics.md, Free body)
    results = solve(load_text(ONE_RANGE, "one-range.toml"))
    (alone,) = what_matters(results, "worst row load")
    state, spread = results.cases["standing"], results.bearing.effective_spread
    assert spread is not None
    lever = state.bearing_moment.x / state.bearing_force.z
    # of the contact force alone the lever moves: the weight of tire and wheel moves with it, that of the hub does too
    contact, wheel = state.contact_force.z, (10.0 + 8.0) * 9.80665
    moved = 0.0045 * (contact - wheel - 10.0 * 9.80665) / state.bearing_force.z
    given = 0.5 + lever / spread
    assert alone.high == pytest.approx((0.5 + (lever + moved) / spread) / given, rel=1e-9)
    assert alone.low == pytest.approx((0.5 + (lever - moved) / spread) / given, rel=1e-9)


def test_what_matters_most_comes_first_and_what_plays_no_part_has_none() -> None:
    found = what_matters(wagon(), "worst row load")
    shares = [one.share for one in found]
    assert shares == sorted(shares, reverse=True)
    idle = {one.key: one for one in found}
    # standing, neither the height of the centre of mass nor the tire's stiffness reaches the rows
    assert idle["chassis.centre_of_mass_height"].share == 0
    assert idle["tire.vertical_stiffness"].share == 0


def test_parts_squared_come_to_about_the_whole_where_inputs_act_alone() -> None:
    # independent even inputs: variances of the logarithm add, and widths go roughly as deviations
    found = what_matters(wagon(), "worst row load")
    assert math.sqrt(sum(one.share**2 for one in found)) == pytest.approx(1.0, abs=0.1)


def test_a_rating_that_both_setups_share_cancels_in_the_ratio_of_their_lives() -> None:
    base = wagon()
    other = solve(load(SETUPS / "winter-fit-out.toml"))
    alone = {one.key: one for one in what_matters(base, "life")}
    ratio = {one.key: one for one in what_matters(other, "life ratio", beside=base)}
    assert alone["bearing.dynamic_rating"].share > 0.5
    assert ratio["bearing.dynamic_rating"].share < 1e-6


def test_a_count_of_balls_runs_through_whole_numbers() -> None:
    text = ONE_RANGE.replace("balls_per_row = 13\n", 'bore = "40 mm"\noutside_diameter = "80 mm"\nwidth = "40 mm"\n')
    text = text.replace('ball_diameter = "12 mm"\n', "").replace('dynamic_rating = "50 kN"\n', "")
    results = solve(load_text(text, "counted.toml"))
    found = {one.key: one for one in what_matters(results, "life")}
    assert found["bearing.balls_per_row"].share > 0.01  # a ball more carries more


def test_nothing_is_told_of_a_bearing_that_the_file_does_not_describe() -> None:
    text = ONE_RANGE.partition("[bearing]")[0] + '[bearing]\nkind = "tapered pair"\n'
    assert what_matters(solve(load_text(text, "plain.toml")), "worst row load") == ()


def test_a_ratio_needs_the_setup_beside_it() -> None:
    assert what_matters(wagon(), "life ratio") == ()


def test_the_whole_span_is_that_of_the_draws() -> None:
    results = wagon()
    drawn = draws_of(results)
    rows = [drawn.values[f"cases.standing.row_radial_load.{row}"] for row in ("outboard", "inboard")]
    low, high = np.quantile(np.maximum(*rows)[drawn.stands], (0.05, 0.95))
    first = what_matters(results, "worst row load")[0]
    assert math.log(first.high / first.low) == pytest.approx(first.share * math.log(high / low), rel=1e-9)

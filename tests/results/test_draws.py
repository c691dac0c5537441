"""Draws of the inputs within their ranges: arrays against one setup at a time, and what spans must do."""

import dataclasses
from functools import partial
from typing import cast

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings

import wagon_text
from hubwright.results import life, solve
from hubwright.results.bearings import missing_dimensions
from hubwright.results.draws import drawn_inputs, draws_of, span, spans_of, uniform
from hubwright.results.export import as_json, flat_rows
from hubwright.results.lubrication import grease_of
from hubwright.results.model import Results
from hubwright.setup import Setup, load_text, vary, with_inputs
from strategies import setups

WAGON = """
name = "Test wagon"
[chassis]
front_axle_mass = "1120 kg ± 20 kg"
rear_axle_mass = "1010 kg"
wheelbase = "2.78 m"
front_track = "1.60 m ± 0.02 m"
centre_of_mass_height = "0.69 m ± 0.05 m"
front_roll_share = "0.55 ± 0.07"
[tire]
size = "245/75R16"
mass = "17 kg ± 2 kg"
vertical_stiffness = "260 N/mm ± 10 %"
[wheel]
rim_width = "7 in"
backspacing = "131.6 mm ± 2 mm"
mass = "9 kg"
[hub]
face_to_bearing_centre = "42 mm ± 3 mm"
rotating_mass = "14 kg"
[bearing]
kind = "two-row ball"
balls_per_row = "13 ± 1"
ball_diameter = "12.7 mm ± 2 %"
pitch_diameter = "62 mm"
contact_angle = "35 deg ± 3 deg"
row_spacing = "24 mm"
preload = "0 um ± 15 um"
dynamic_rating = "60 kN"
static_rating = "50 kN"
[[gear]]
name = "winch"
mass = "62 kg ± 5 kg"
behind_front_axle = "-0.72 m"
above_ground = "0.75 m"
[[case]]
name = "corner"
kind = "cornering"
lateral_g = "0.3 ± 0.05"
[[case]]
name = "step"
kind = "ledge"
height = "80 mm ± 10 mm"
[[case]]
name = "fall"
kind = "drop"
height = "150 mm ± 20 mm"
[lubrication]
viscosity_ratio = "1.6 ± 0.4"
contamination = "slight contamination"
[[duty]]
case = "standing"
share = 0.8
[[duty]]
case = "corner"
share = 0.2
"""
# each value as given: no range, nothing estimated
FIXED = wagon_text.WAGON.replace("[tire]", 'rear_track = "1.60 m"\n[tire]') + wagon_text.FIXED_BALLS


def solved(text: str) -> Results:
    return solve(cast(Setup, load_text(text, "wagon.toml")))


def numbers(results: Results) -> dict[str, float]:
    """Everything that `solve` prints as one number, without the spans."""
    spans, results.__dict__["spans"] = results.__dict__.get("spans"), {}
    found = {name: value for name, value, unit in flat_rows(as_json(results)) if unit}
    results.__dict__["spans"] = spans
    return found


def test_arrays_give_what_one_setup_at_a_time_gives(monkeypatch: pytest.MonkeyPatch) -> None:
    results = solved(WAGON)
    count = 6
    drawn, inputs = draws_of(results, number=count, drops=True), drawn_inputs(results, number=count, drops=True)
    assert len(set(inputs["bearing.balls_per_row"])) > 1  # draws of several groups
    names = [name for name in drawn.values if name.split(".")[0] != "inputs"]
    for place in range(count):
        values = {key: dataclasses.replace(results.inputs[key], value=float(inputs[key][place])) for key in inputs}
        balls = dataclasses.replace(values["bearing.balls_per_row"], value=int(inputs["bearing.balls_per_row"][place]))
        setup = with_inputs(results.setup, {**values, "bearing.balls_per_row": balls})
        cleanliness = float(uniform("lubrication.contamination", count)[place])
        monkeypatch.setattr(life, "grease_of", partial(grease_of, cleanliness=cleanliness))
        alone = numbers(solve(setup))
        assert set(names) - {"cases.fall.tire_on_rim"} <= set(alone)
        for name in set(names) & set(alone):
            # the solver of the rings ends a ten-billionth off, at another place alone and together
            scale = max(abs(alone[name]), 1e-3)
            assert drawn.values[name][place] == pytest.approx(alone[name], rel=1e-7, abs=1e-9 * scale), name


def test_every_number_that_the_ranges_move_is_printed_with_its_span() -> None:
    entry = as_json(solved(WAGON))
    assert entry["weight"]["front_left"]["low"] < entry["weight"]["front_left"]["high"]
    for part in ("revolutions", "distance"):
        found = entry["life"]["duty"][part]
        assert found["low"] < found["value"] < found["high"]
    assert "low" not in entry["wheel_geometry"]["free_diameter"]  # nothing moves it
    assert entry["wheel_geometry"]["load_line_offset"]["low"] < entry["wheel_geometry"]["load_line_offset"]["high"]
    assert entry["bearing"]["effective_spread"]["low"] > 0.05
    assert entry["cases"]["step"]["push"]["low"] < entry["cases"]["step"]["push"]["value"]
    assert entry["spans"]["draws"] == 400


def test_what_cancels_to_nothing_but_rounding_has_no_span() -> None:
    # pushed over an edge by the vehicle, no torque is on the wheel
    spans = solved(WAGON).spans
    assert "cases.step.push" in spans
    assert "cases.step.bearing_moment.y" not in spans
    assert not [name for name, found in spans.items() if 0 < abs(found.high) < 1e-9]


def test_draws_are_the_same_each_time() -> None:
    first, second = (draws_of(solved(WAGON), number=20) for _ in range(2))
    np.testing.assert_array_equal(first.values["life.duty.distance"], second.values["life.duty.distance"])


def test_inputs_are_drawn_evenly_within_their_ranges() -> None:
    inputs = drawn_inputs(solved(WAGON), number=4000)
    face = inputs["hub.face_to_bearing_centre"]
    assert face.min() >= 0.039
    assert face.max() <= 0.045
    # of an even distribution: mean in the middle, standard deviation width/√12; four standard errors
    assert face.mean() == pytest.approx(0.042, abs=4 * 0.006 / np.sqrt(12 * 4000))
    assert face.std() == pytest.approx(0.006 / np.sqrt(12), rel=0.04)
    counts = np.unique(inputs["bearing.balls_per_row"], return_counts=True)
    assert list(counts[0]) == [12, 13, 14]
    assert (abs(counts[1] / 4000 - 1 / 3) < 0.03).all()


def test_inputs_are_drawn_by_themselves() -> None:
    inputs = drawn_inputs(solved(WAGON), number=4000)
    correlation = np.corrcoef(inputs["hub.face_to_bearing_centre"], inputs["chassis.front_roll_share"])[0, 1]
    assert abs(correlation) < 4 / np.sqrt(4000)


def test_what_follows_from_a_drawn_value_moves_with_it_and_is_not_drawn_again() -> None:
    results = solved(WAGON)
    assert results.inputs["wheel.offset"].has_range
    inputs = drawn_inputs(results, number=50)
    assert "wheel.offset" not in inputs
    values = draws_of(results, number=50).values
    # 8 in flange to flange: offset is backspacing less half of it
    offset = inputs["wheel.backspacing"] - 0.1016
    np.testing.assert_allclose(
        values["wheel_geometry.load_line_offset"], inputs["hub.face_to_bearing_centre"] - offset, atol=1e-12
    )


def test_drawn_shares_of_a_duty_sum_to_one() -> None:
    text = WAGON.replace("share = 0.8", 'share = "0.8 ± 0.1"').replace("share = 0.2", 'share = "0.2 ± 0.1"')
    drawn = draws_of(solved(text), number=30)
    inputs = drawn_inputs(solved(text), number=30)
    corner = inputs["duty.corner.share"] / (inputs["duty.corner.share"] + inputs["duty.standing.share"])
    standing, left, right = (
        drawn.values[f"life.{case}.detailed"] for case in ("standing", "corner left", "corner right")
    )
    expected = 1 / ((1 - corner) / standing + corner / 2 / left + corner / 2 / right)
    np.testing.assert_allclose(drawn.values["life.duty.revolutions"], expected, rtol=1e-9)


def test_setups_share_the_draws_of_an_input_and_gear_goes_by_its_name() -> None:
    box = WAGON.replace("[[gear]]", '[[gear]]\nname = "box"\nmass = "40 kg ± 4 kg"\nbehind_front_axle = "1.5 m"\n'
                                    'above_ground = "1 m"\n[[gear]]', 1)  # fmt: skip
    alone, with_box = drawn_inputs(solved(WAGON), number=10), drawn_inputs(solved(box), number=10)
    np.testing.assert_array_equal(alone["gear.1.mass"], with_box["gear.2.mass"])
    np.testing.assert_array_equal(alone["bearing.preload"], with_box["bearing.preload"])
    assert not np.array_equal(uniform("gear.box.mass", 10), uniform("gear.winch.mass", 10))


def test_heavier_tires_are_weighed_against_the_same_draw_of_those_that_they_replace() -> None:
    """Both masses are estimated by one rule: where it is 10 % off, so is their difference."""
    base = cast(Setup, load_text(FIXED.replace('mass = "17 kg"\n', ""), "wagon.toml"))
    larger = solve(vary(base, {"tire.size": "265/75R16"}))
    mass = drawn_inputs(larger, number=30)["tire.mass"]
    change = draws_of(larger, number=30).values["weight.front_left"] - 1120 * 9.80665 / 2
    ratio = larger.setup.root_tire_mass / larger.setup.tire.mass
    np.testing.assert_allclose(change, mass * (1 - ratio) * 9.80665, rtol=1e-9)


def test_nothing_with_a_range_means_no_spans() -> None:
    results = solved(FIXED)
    assert results.spans == {}
    assert "spans" not in as_json(results)


def test_computed_ratings_are_drawn_within_a_fifth() -> None:
    results = solved(FIXED.replace('dynamic_rating = "60 kN"\n', ""))
    rating = results.bearing.dynamic_rating
    assert rating is not None
    spans = results.spans
    # 5th and 95th percentile of an even distribution between 0.8 and 1.2
    assert spans["bearing.dynamic_rating"].low / rating == pytest.approx(0.82, abs=0.02)
    assert spans["bearing.dynamic_rating"].high / rating == pytest.approx(1.18, abs=0.02)
    life = spans["life.standing.detailed"]
    assert life.high / life.low == pytest.approx((1.18 / 0.82) ** 3, rel=0.15)
    assert not [name for name in spans if name.startswith("cases.")]


@pytest.mark.parametrize(
    ("narrow", "wide", "name"),
    [
        ("42 mm ± 3 mm", "42 mm ± 6 mm", "cases.standing.bearing_moment.x"),
        ("42 mm ± 3 mm", "42 mm ± 6 mm", "life.standing.detailed"),
        ("0 um ± 15 um", "0 um ± 30 um", "life.standing.detailed"),
        ("35 deg ± 3 deg", "35 deg ± 6 deg", "bearing.effective_spread"),
        ("0.55 ± 0.07", "0.55 ± 0.14", "life.corner left.detailed"),
        ("0.3 ± 0.05", "0.3 ± 0.10", "life.duty.distance"),
        ("150 mm ± 20 mm", "150 mm ± 40 mm", "cases.fall.peak_tire_force"),
        ("1.6 ± 0.4", "1.6 ± 0.8", "life.standing.life_factor.outboard"),
    ],
)
def test_a_wider_range_widens_spans(narrow: str, wide: str, name: str) -> None:
    one, other = (solved(text).spans[name] for text in (WAGON, WAGON.replace(narrow, wide)))
    assert other.high - other.low > one.high - one.low


def test_the_suspensions_ranges_move_drops_alone() -> None:
    text = FIXED + '[[case]]\nname = "fall"\nkind = "drop"\nheight = "150 mm"\n[suspension]\n'
    given = 'bump_damping = "1500 N*s/m"\nrebound_damping = "3000 N*s/m"\nbump_stop_stiffness = "200 N/mm"\n'
    given += 'droop_travel = "80 mm"\nbump_travel = "80 mm"\nunsprung_mass = "52 kg"\n'
    results = solved(text + given + 'wheel_rate = "28 N/mm ± 6 N/mm"\n')
    spans = results.spans
    assert {name.split(".")[1] for name in spans} == {"fall"}
    extras = results.cases["fall"].extras
    for name in ("peak_tire_force", "peak_bearing_force", "impact_factor"):
        found = spans[f"cases.fall.{name}"]
        assert found.low < extras[name] < found.high
    # a stiffer spring passes the wheel's stop sooner and presses harder: the ends are those of the range, nearly
    ends = [
        solved(text + given + f'wheel_rate = "{rate} N/mm"\n').cases["fall"].extras["peak_tire_force"]
        for rate in (22.6, 33.4)
    ]
    found = spans["cases.fall.peak_tire_force"]
    assert sorted(ends) == pytest.approx([found.low, found.high], rel=0.01)
    assert solved(text + given + 'wheel_rate = "28 N/mm"\n').spans == {}


def test_a_drop_in_the_draws_leaves_bodies_out_that_weigh_nothing() -> None:
    text = FIXED + '[[case]]\nname = "fall"\nkind = "drop"\nheight = "150 mm"\n'
    drawn = draws_of(solved(text + '[suspension]\nunsprung_mass = "500 kg ± 200 kg"\n'), drops=True)
    # the corner stands with 560 kg
    assert 0.2 < 1 - drawn.stands.mean() < 0.5


def test_a_span_is_what_ranks_say() -> None:
    found = span(np.random.default_rng(1).permutation(np.arange(1.0, 401.0)))
    assert (found.low, found.high, found.draws) == (20.0, 380.0, 400)
    # a standard deviation of the rank is √(400·0.05·0.95) = 4.36, of the values here the same
    assert found.low_error == pytest.approx(4.36, abs=0.5)
    assert found.high_error == pytest.approx(4.36, abs=0.5)


def test_the_sampling_error_of_a_span_is_that_of_repeated_draws() -> None:
    found = [span(np.random.default_rng(seed).normal(size=400)) for seed in range(200)]
    scatter = np.std([each.low for each in found])
    assert np.mean([each.low_error for each in found]) == pytest.approx(scatter, rel=0.25)


def test_lives_without_end_have_a_rank_too() -> None:
    found = span(np.array([1.0] * 90 + [np.inf] * 10))
    assert (found.low, found.high) == (1.0, np.inf)


def test_draws_in_which_a_wheel_lifts_are_left_out() -> None:
    # the inner front wheel loses 0.55·2192 kg·0.95·0.69/1.60 = 494 kg of its 599: drawn high, all of them
    text = WAGON.replace('"0.3 ± 0.05"', '"0.95 ± 0.2"')
    results = solved(text)
    drawn = draws_of(results)
    assert 0.5 < drawn.stands.mean() < 1
    assert results.spans["life.corner left.detailed"].draws == drawn.stands.sum()


def test_a_trailer_with_rollers_is_drawn_too() -> None:
    text = """
name = "Cart"
kind = "trailer"
[chassis]
axle_mass = "610 kg ± 30 kg"
coupling_mass = "65 kg"
coupling_ahead_of_axle = "2.90 m"
track = "1.62 m"
centre_of_mass_height = "0.72 m ± 0.08 m"
[tire]
size = "185/75R14"
[wheel]
rim_width = "5.5 in"
offset = "20 mm"
[bearing]
kind = "tapered pair"
turning_ring = "outer"
rollers_per_row = "17 ± 1"
roller_diameter = "7.2 mm"
roller_length = "12.5 mm ± 1 mm"
pitch_diameter = "44 mm"
contact_angle = "13 deg"
row_spacing = "46 mm"
[[case]]
name = "corner"
kind = "cornering"
lateral_g = 0.25
"""
    spans = spans_of(solved(text))
    assert "weight.coupling_load" not in spans  # its mass was given, and the wheels stay those weighed
    assert spans["weight.axle_load"].low < 610 * 9.80665 < spans["weight.axle_load"].high
    # the loaded radius, which nobody gave, is drawn as well
    assert spans["wheel_geometry.loaded_radius"].low < spans["wheel_geometry.loaded_radius"].high
    assert spans["life.corner left.detailed"].low > 0


@given(setups(rows_known=False))
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_every_setup_has_lives_and_spans_or_says_why(setup: Setup) -> None:
    results = solve(setup)
    life = results.life
    assert (life is None) == bool(missing_dimensions(setup.bearing))
    drawn = draws_of(results, number=12)
    assert all(np.isfinite(value[drawn.stands]).all() for name, value in drawn.values.items() if "life" not in name)
    if life is not None:
        lived = [value[drawn.stands] for name, value in drawn.values.items() if name.endswith((".quick", ".detailed"))]
        assert all((each > 0).all() for each in lived)

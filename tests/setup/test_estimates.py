"""What is filled in where a file is silent, by the table of estimates of the project; numbers by hand."""

import math

import pytest
from hypothesis import given
from setup_texts import LEAST, LEAST_TRAILER, least, setup_of

from hubwright.setup.estimates import late_estimates, most_balls
from hubwright.setup.model import BallBearing
from strategies import setups


def ranges(setup, key):
    entry = setup.inputs[key]
    return pytest.approx((entry.value, entry.low, entry.high), rel=1e-9)


@pytest.mark.parametrize(
    ("key", "value", "low", "high"),
    [
        ("chassis.centre_of_mass_height", 0.65, 0.65 * 0.85, 0.65 * 1.15),
        ("chassis.front_roll_share", 0.55, 0.45, 0.65),
        ("wheel.mass", 9, 6, 12),
        ("hub.face_to_bearing_centre", 0.042, 0.034, 0.050),
        ("hub.rotating_mass", 13, 9, 17),
        # 42, 82, 40 mm: Dw = 0.31·40 = 12.4 mm, rows 40 − 1.24·12.4 mm apart, Z = ⌊π·62/(1.18·12.4)⌋ = ⌊13.3⌋
        ("bearing.ball_diameter", 0.0124, 0.0124 * 0.94, 0.0124 * 1.06),
        ("bearing.row_spacing", 0.024624, 0.020624, 0.028624),
        ("bearing.balls_per_row", 13, 12, 14),
        ("bearing.contact_angle", math.radians(35), math.radians(30), math.radians(40)),
        ("bearing.preload", 0, -15e-6, 15e-6),
        ("suspension.bump_travel", 0.080, 0.056, 0.104),
        ("suspension.droop_travel", 0.080, 0.056, 0.104),
    ],
)
def test_the_least_file_is_filled_in_with_ranges(key, value, low, high):
    entry = setup_of(LEAST).inputs[key]
    assert entry.origin == "estimated"
    assert (entry.value, entry.low, entry.high) == pytest.approx((value, low, high), abs=1e-12)


def test_a_tires_mass_is_that_of_its_ring():
    """245/75R16: π/4·(0.7739² − 0.4064²)·0.245·200 kg = 16.7 kg."""
    entry = setup_of(LEAST).inputs["tire.mass"]
    expected = math.pi / 4 * (0.7739**2 - 0.4064**2) * 0.245 * 200
    assert (entry.value, entry.low, entry.high) == pytest.approx((expected, 0.8 * expected, 1.2 * expected))


def test_a_total_mass_is_shared_with_the_range_of_the_share():
    text = LEAST.replace('front_axle_mass = "1000 kg"\nrear_axle_mass = "800 kg"', 'total_mass = "2000 kg"')
    setup = setup_of(text)
    front, share = setup.inputs["chassis.front_axle_mass"], setup.inputs["chassis.front_share"]
    assert (front.value, front.low, front.high) == pytest.approx((1100, 940, 1260))
    assert (share.value, share.low, share.high, share.origin) == (0.55, 0.47, 0.63, "estimated")
    assert front.derived_from == ("chassis.total_mass", "chassis.front_share")
    assert setup.chassis.front_axle_mass + setup.chassis.rear_axle_mass == pytest.approx(2000)


def test_a_published_stability_figure_gives_the_height():
    """h = t/(2 SSF): 1.5 m/(2·1.25) = 0.6 m; what was given is not called estimated."""
    setup = setup_of(LEAST.replace("[tire]", "static_stability_figure = 1.25\n[tire]"))
    assert setup.chassis.centre_of_mass_height == pytest.approx(0.6)
    assert setup.inputs["chassis.centre_of_mass_height"].origin == "given"


def test_the_roofs_height_gives_a_narrower_range():
    entry = setup_of(LEAST.replace("[tire]", 'overall_height = "2 m"\n[tire]')).inputs["chassis.centre_of_mass_height"]
    assert (entry.value, entry.low, entry.high) == pytest.approx((0.78, 0.702, 0.858))


def test_the_rear_track_is_the_front_track():
    setup = setup_of(LEAST)
    assert setup.chassis.rear_track == 1.5
    assert setup.inputs["chassis.rear_track"].derived_from == ("chassis.front_track",)


def test_a_listing_gives_the_inside_of_a_ball_bearing():
    """45, 84, 42 mm: Dw = 0.31·39 = 12.09, Dpw = 64.5, rows 42 − 14.99, Z = ⌊π·64.5/14.27⌋ = 14."""
    text = least('[bearing]\nbore = "45 mm"\noutside_diameter = "84 mm"\nwidth = "42 mm"')
    bearing = setup_of(text).bearing
    assert isinstance(bearing, BallBearing)
    found = (bearing.ball_diameter, bearing.pitch_diameter, bearing.row_spacing, bearing.balls_per_row)
    assert found == pytest.approx((0.01209, 0.0645, 0.042 - 1.24 * 0.01209, 14))


def test_given_internals_are_not_called_estimated():
    text = least(
        '[bearing]\nballs_per_row = 13\nball_diameter = "12.7 mm"\npitch_diameter = "62 mm"\nrow_spacing = "24 mm"'
    )
    inputs = setup_of(text).inputs
    assert inputs["bearing.ball_diameter"].origin == "given"
    assert "bearing.bore" not in inputs  # only drawn, does not act


def test_a_tapered_pair_is_not_estimated():
    bearing = setup_of(least('[bearing]\nkind = "tapered pair"')).bearing
    assert (bearing.pitch_diameter, bearing.elements_per_row, bearing.contact_angle) == (None, None, None)


def test_a_trailer_without_suspension_has_none():
    assert setup_of(LEAST_TRAILER).suspension is None
    assert setup_of(LEAST_TRAILER).wheel_end == "both"


def test_given_measured_and_data_sheet_values_are_told_apart():
    text = least('mass = "9 kg ± 1 kg"\n[origin]\nwheel.mass = "data sheet"\n"chassis.wheelbase" = "measured"')
    inputs = setup_of(text).inputs
    assert (inputs["wheel.mass"].origin, inputs["wheel.mass"].low) == ("data sheet", 8)
    assert inputs["chassis.wheelbase"].origin == "measured"
    assert inputs["wheel.offset"].origin == "given"


@pytest.mark.parametrize(("pitch", "ball", "most"), [(2.0, 1.0, 6), (1.0, 1.0, 1), (62.0, 12.7, 15)])
def test_balls_that_touch_fill_the_pitch_circle(pitch, ball, most):
    """Six balls of half the pitch diameter: a hexagon. 62 and 12.7: 180°/asin(12.7/62) = 15.2."""
    assert most_balls(pitch_diameter=pitch, ball_diameter=ball) == most


def late(**changes):
    given = {
        "standing_load": 5000.0,
        "free_diameter": 0.8,
        "loaded_radius": None,
        "vertical_stiffness": None,
        "wheel_rate": None,
        "bump_damping": None,
        "rebound_damping": None,
        "bump_stop_stiffness": None,
        "unsprung_mass": None,
    }
    return late_estimates(**(given | changes))


def test_late_estimates_give_the_ride_frequency_and_damping_ratio_back():
    """Second road: an oscillator of the estimated spring, damper and sprung mass."""
    found = {key: entry.value for key, entry in late().items()}
    sprung = 5000 / 9.80665 - found["suspension.unsprung_mass"]
    frequency = math.sqrt(found["suspension.wheel_rate"] / sprung) / (2 * math.pi)
    mean = (found["suspension.bump_damping"] + found["suspension.rebound_damping"]) / 2
    ratio = mean / (2 * math.sqrt(found["suspension.wheel_rate"] * sprung))
    assert (frequency, ratio) == pytest.approx((1.3, 0.3))
    assert found["suspension.rebound_damping"] == pytest.approx(2 * found["suspension.bump_damping"])
    assert found["suspension.bump_stop_stiffness"] == pytest.approx(8 * found["suspension.wheel_rate"])


def test_a_measured_radius_gives_the_stiffness():
    """5000 N over 400 − 380 mm."""
    entry = late(loaded_radius=0.380)["tire.vertical_stiffness"]
    assert (entry.value, entry.low, entry.high) == pytest.approx((250e3, 187.5e3, 312.5e3))
    assert "tire.loaded_radius" not in late(loaded_radius=0.380)


def test_without_either_the_radius_is_a_share_and_its_range_that_of_the_stiffness():
    """0.93·400 = 372 mm; a quarter softer gives 28/0.75 = 37.3 mm, a quarter stiffer 28/1.25 = 22.4 mm."""
    entry = late()["tire.loaded_radius"]
    assert (entry.value, entry.low, entry.high) == pytest.approx((0.372, 0.4 - 0.028 / 0.75, 0.4 - 0.028 / 1.25))


def test_a_heavier_wheel_leaves_the_sprung_mass_as_it_was():
    before, after = late(), late(standing_load=5000 + 5 * 9.80665, corner_mass_change=5.0)
    assert after["suspension.wheel_rate"].value == pytest.approx(before["suspension.wheel_rate"].value)


def test_what_is_given_is_not_estimated():
    given = dict.fromkeys(
        ("vertical_stiffness", "wheel_rate", "bump_damping", "rebound_damping", "bump_stop_stiffness"), 1e4
    )
    assert late(**given, unsprung_mass=50.0) == {}


@given(setups())
def test_every_input_of_any_setup_lies_in_its_range_and_acts(setup):
    for key, entry in setup.inputs.items():
        if entry.has_range:
            assert entry.low <= entry.value <= entry.high, key
        assert entry.origin in ("given", "measured", "data sheet", "estimated")
        assert (entry.unit == "") == isinstance(entry.value, str), key

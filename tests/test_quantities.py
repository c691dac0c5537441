"""Reading, calculating with and showing values with units.

Exact factors: international yard and pound agreement of 1959 (inch 25.4 mm, pound 0.45359237 kg);
standard gravity 9.80665 m/s2; both also as in NIST SP 811, appendix B.
"""

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hubwright.errors import DimensionError, HubwrightError, QuantityError
from hubwright.quantities import (
    DIMENSIONS,
    KINDS,
    Quantity,
    display,
    format_number,
    format_quantity,
    format_range,
    parse,
)

INCH = 0.0254
POUND = 0.45359237
POUND_FORCE = POUND * 9.80665


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("text", "dimension", "value"),
    [
        ('8"', "length", 8 * INCH),
        ("8″", "length", 8 * INCH),
        ("8 1/2 in", "length", 8.5 * INCH),
        ("8-1/2 in", "length", 8.5 * INCH),
        ("8½ in", "length", 8.5 * INCH),
        ("1/2 in", "length", 0.5 * INCH),
        ("7.5in", "length", 7.5 * INCH),
        ("9' 2 1/2\"", "length", 110.5 * INCH),
        ("5 ft 3 in", "length", 63 * INCH),
        ("5 ft", "length", 60 * INCH),
        ("30 MM", "length", 0.030),
        ("15 µm", "length", 15e-6),
        ("15 μm", "length", 15e-6),
        ("15um", "length", 15e-6),
        ("−0.72 m", "length", -0.72),
        ("–0.72 m", "length", -0.72),
        ("2,78 m", "length", 2.78),
        ("0,690 m", "length", 0.690),
        ("1,120 kg", "mass", 1120),
        ("1 120 kg", "mass", 1120),
        ("1\u202f120 kg", "mass", 1120),
        ("1.120,5 kg", "mass", 1120.5),
        ("1,120.5 kg", "mass", 1120.5),
        ("1.12e3 kg", "mass", 1120),
        ("2400 lbs", "mass", 2400 * POUND),
        ("2400 lb.", "mass", 2400 * POUND),
        ("2400 Lbs", "mass", 2400 * POUND),
        ("1.1 t", "mass", 1100),
        ("300 lbf", "force", 300 * POUND_FORCE),
        ("3 kN", "force", 3000),
        ("100 kgf", "force", 980.665),
        ("110 N·m", "moment", 110),
        ("110 N⋅m", "moment", 110),
        ("110 N m", "moment", 110),
        ("110 Nm", "moment", 110),
        ("80 ft-lb", "moment", 80 * 12 * INCH * POUND_FORCE),
        ("80 ft*lb", "moment", 80 * 12 * INCH * POUND_FORCE),
        ("80 lb-ft", "moment", 80 * 12 * INCH * POUND_FORCE),
        ("80 lbf*ft", "moment", 80 * 12 * INCH * POUND_FORCE),
        ("960 in-lbs", "moment", 80 * 12 * INCH * POUND_FORCE),
        ("260 N/mm", "stiffness", 260e3),
        ("150 lb/in", "stiffness", 150 * POUND_FORCE / INCH),
        ("2 kg/mm", "stiffness", 2 * 9806.65),
        ("1500 N*s/m", "damping", 1500),
        ("1500 Ns/m", "damping", 1500),
        ("30 psi", "pressure", 30 * POUND_FORCE / INCH**2),
        ("207 GPa", "pressure", 207e9),
        ("180 deg", "angle", math.pi),
        ("180°", "angle", math.pi),
        ("180 degrees", "angle", math.pi),
        ("20 degC", "temperature", 293.15),
        ("20 °C", "temperature", 293.15),
        ("68 °F", "temperature", 293.15),
        ("90 km/h", "speed", 25),
        ("80 cm^4", "second_moment", 80e-8),
        ("80 cm⁴", "second_moment", 80e-8),
        (0.55, "ratio", 0.55),
        ("55 %", "ratio", 0.55),
        ("0,55", "ratio", 0.55),
        ("0.3 g", "acceleration", 0.3),
        (13, "count", 13),
    ],
)
def test_what_people_write_is_understood(text, dimension, value):
    assert parse(text, dimension).value == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "dimension", "low", "high"),
    [
        ("42 mm ± 4 mm", "length", 0.038, 0.046),
        ("42 mm +- 4 mm", "length", 0.038, 0.046),
        ("42 mm +/- 4 mm", "length", 0.038, 0.046),
        ("42 ± 4 mm", "length", 0.038, 0.046),
        ("42 mm ± 4", "length", 0.038, 0.046),
        ("40 mm ± 10 %", "length", 0.036, 0.044),
        ("4 cm ± 4 mm", "length", 0.036, 0.044),
        ("-40 mm ± 10 %", "length", -0.044, -0.036),
        ("0 um ± 15 um", "length", -15e-6, 15e-6),
        ("20 degC ± 5 degC", "temperature", 288.15, 298.15),
        ("0.55 ± 0.10", "ratio", 0.45, 0.65),
        ("13 ± 1", "count", 12, 14),
    ],
)
def test_a_stated_range_is_kept(text, dimension, low, high):
    measured = parse(text, dimension)
    assert measured.low == pytest.approx(low, abs=1e-12)
    assert measured.high == pytest.approx(high, abs=1e-12)


def test_without_a_stated_range_there_is_none():
    measured = parse("42 mm", "length")
    assert (measured.low, measured.high) == (None, None)


@pytest.mark.parametrize(
    ("given", "dimension", "message"),
    [
        ("30 kg", "length", "must be a length (got '30 kg'). Write it like '30 mm'."),
        (30, "length", "must be a length with its unit (got 30). Write it like '30 mm'."),
        ("30", "length", "must be a length with its unit (got '30'). Write it like '30 mm'."),
        ("2400 lbf", "mass", "must be a mass (got '2400 lbf'). Write it like '2400 lb'."),
        ("300 lb", "force", "must be a force (got '300 lb'). Write it like '300 lbf'."),
        (
            "2,780 m",
            "length",
            "must be a length with one reading (got '2,780 m'). Write it like '2.780 m' or '2780 m'.",
        ),
        (
            "42 mm ± -4 mm",
            "length",
            "must be a length with a positive range (got '42 mm ± -4 mm'). Write it like '30 mm'.",
        ),
        ("12,34,567 N", "force", "must be a force (got '12,34,567 N'). Write it like '5 kN'."),
        (True, "ratio", "must be a number without a unit (got true). Write it like 0.55."),
        (13.5, "count", "must be a whole number (got 13.5). Write it like 13."),
        ("1/0 in", "length", "must be a length (got '1/0 in'). Write it like '30 mm'."),
        ("1e999 kg", "mass", "must be a mass, finite (got '1e999 kg'). Write it like '17 kg'."),
        ("42 mm 10", "length", "must be a length (got '42 mm 10'). Write it like '30 mm'."),
        ("", "angle", "must be an angle (got ''). Write it like '35 deg'."),
    ],
)
def test_what_is_not_understood_gets_the_repair(given, dimension, message):
    with pytest.raises(QuantityError, match=f"^{re.escape(message)}$"):
        parse(given, dimension)


@given(st.text(max_size=30), st.sampled_from(sorted(DIMENSIONS)))
def test_any_text_is_a_value_or_a_quantity_error(text, dimension):
    try:
        value = parse(text, dimension).value
    except QuantityError:
        return  # any other error would be ours
    assert math.isfinite(value)


@given(st.floats(-1e6, 1e6).filter(lambda value: abs(value) > 1e-3))
def test_a_number_reads_as_it_was_written(value):
    assert parse(f"{value!r} mm", "length").value == pytest.approx(value / 1000, rel=1e-12)


def test_an_error_is_a_value_error_and_keeps_its_facts():
    with pytest.raises(ValueError, match="must be a length") as caught:
        parse("30 kg", "length")
    assert isinstance(caught.value, HubwrightError)
    assert (caught.value.needed, caught.value.given) == ("a length", "30 kg")


def test_a_force_times_a_lever_is_a_moment_and_over_it_a_ratio():
    moment = Quantity(5000, "N") * Quantity(0.012, "m")
    assert (moment.value, moment.unit) == (60, "N*m")
    ratio = moment / Quantity(30, "N*m")
    assert (float(ratio), ratio.unit) == (2, "1")


@pytest.mark.parametrize(
    ("left", "operation", "right", "unit"),
    [
        ("N", "/", "m^2", "Pa"),
        ("N", "/", "m", "N/m"),
        ("kg", "*", "m/s^2", "N"),
        ("m", "/", "s", "m/s"),
        ("1", "/", "s", "Hz"),
    ],
)
def test_units_combine_as_in_si(left, operation, right, unit):
    a, b = Quantity(6, left), Quantity(2, right)
    assert (a * b if operation == "*" else a / b).unit == unit


def test_unlike_quantities_do_not_add_or_compare():
    force, length = Quantity(5, "N"), Quantity(1, "m")
    with pytest.raises(DimensionError, match=r"^cannot add N and m: the units differ in kind$"):
        force + length
    with pytest.raises(DimensionError, match=r"^cannot compare N and m: the units differ in kind$"):
        force < length  # noqa: B015
    with pytest.raises(TypeError, match=r"^cannot add N and a plain number: the units differ in kind$"):
        force + 1
    with pytest.raises(DimensionError, match=r"^cannot take as a plain number a quantity in N$"):
        float(force)


def test_every_quantity_compares_with_zero():
    assert Quantity(-3, "N*m") < 0
    assert Quantity(3, "N*m") >= 0
    assert sum([Quantity(1, "N"), Quantity(2, "N")], start=Quantity(0, "N")) == Quantity(3, "N")
    assert sum([Quantity(1, "N"), Quantity(2, "N")]) == Quantity(3, "N")


def test_a_range_turns_round_with_the_sign():
    turned = -Quantity(2, "m", low=1, high=4)
    assert (turned.low, turned.high) == (-4, -1)
    across = abs(Quantity(-1, "m", low=-3, high=2))
    assert (across.value, across.low, across.high) == (1, 0, 3)


@pytest.mark.parametrize(
    ("value", "kind", "si", "us"),
    [
        # US texts by hand: 5099.4/4.4482 = 1146.4; 57.1·0.73756 = 42.1; 25/25.4 = 0.984; …
        (5099.4, "force", "5.10 kN", "1,146 lbf"),
        (999.7, "force", "1.00 kN", "225 lbf"),
        (-255.2, "force", "−255 N", "−57 lbf"),
        (0.0, "force", "0 N", "0 lbf"),
        (57.1, "moment", "57.1 N·m", "42.1 lbf·ft"),
        (1234.0, "moment", "1.23 kN·m", "910 lbf·ft"),
        (0.025, "small length", "25 mm", "0.98 in"),
        (0.0127, "small length", "12.7 mm", "0.50 in"),
        (0.0007, "small length", "0.70 mm", "0.028 in"),
        (2.78, "vehicle length", "2.78 m", "109.4 in"),
        (17.0, "mass", "17 kg", "37 lb"),
        (1120.0, "mass", "1,120 kg", "2,469 lb"),
        (260e3, "stiffness", "260 N/mm", "1,480 lbf/in"),
        (math.radians(35), "angle", "35°", "35°"),
        (1.82e9, "pressure", "1,820 MPa", "264 ksi"),
        (9810.0, "fluid pressure", "9.81 kPa", "1.42 psi"),
        (12e-6, "deflection", "12 µm", "0.0005 in"),
        (7.62e-6, "deflection", "7.6 µm", "0.0003 in"),
        (1.324, "ratio", "1.32", "1.32"),
        (0.317, "percent", "32 %", "32 %"),
        (0.3, "acceleration", "0.30 g", "0.30 g"),
        (25.0, "speed", "90 km/h", "56 mph"),
        (293.15, "temperature", "20 °C", "68 °F"),
        (34.5e6, "distance", "30,000 km", "20,000 mi"),
    ],
)
def test_values_are_shown_as_users_of_each_system_would_write_them(value, kind, si, us):
    assert plain(format_quantity(value, kind, "si")) == si
    assert plain(format_quantity(value, kind, "us")) == us


def test_number_and_unit_stay_on_one_line():
    assert format_quantity(5099.4, "force", "si") == "5.10\u00a0kN"


def test_number_and_unit_can_be_taken_apart():
    shown = display(-5099.4, "force", "si")
    assert (shown.number, shown.unit) == ("−5.10", "kN")


def test_rounding_up_to_a_new_digit_keeps_the_number_of_digits():
    assert format_number(9.996) == "10.0"
    assert format_number(0.09996) == "0.100"


def test_a_range_stands_in_one_unit():
    assert plain(format_range(0.4, 1.6, "length", "si")) == "0.40 to 1.60 m"


@given(st.floats(-1e9, 1e9), st.sampled_from(sorted(KINDS)), st.sampled_from(("si", "us")))
def test_any_value_of_any_kind_can_be_shown_without_a_negative_zero(value, kind, system):
    number = display(value, kind, system).number
    assert number
    if number.startswith("−"):
        assert any(digit in number for digit in "123456789")

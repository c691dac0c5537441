"""Notations of the trade; diameters done by hand from the codes."""

import pytest
from setup_texts import least, messages, setup_of

from hubwright.errors import QuantityError
from hubwright.setup.notations import property_class, rim_width, thread, tire_size, wheel_offset


@pytest.mark.parametrize(
    ("code", "diameter", "width", "rim"),
    [
        # metric: rim·25.4 + 2·width·aspect; flotation: inches as they stand
        ("245/75R16", 16 * 25.4 + 2 * 0.75 * 245, 245, 16),
        ("LT265/75R16 123/120Q", 16 * 25.4 + 2 * 0.75 * 265, 265, 16),
        ("P245/75 R16", 16 * 25.4 + 2 * 0.75 * 245, 245, 16),
        ("245/75-16", 16 * 25.4 + 2 * 0.75 * 245, 245, 16),
        ("lt 245 / 75 r 16", 16 * 25.4 + 2 * 0.75 * 245, 245, 16),
        ("235/65ZR17 104W XL", 17 * 25.4 + 2 * 0.65 * 235, 235, 17),
        ("225/75R16C 118/116R", 16 * 25.4 + 2 * 0.75 * 225, 225, 16),
        ("35x12.50R17LT", 35 * 25.4, 12.5 * 25.4, 17),
        ("33X12.5 R15", 33 * 25.4, 12.5 * 25.4, 15),
        ("33×12,50-15", 33 * 25.4, 12.5 * 25.4, 15),
        ("LT31x10.50R15 109Q", 31 * 25.4, 10.5 * 25.4, 15),
    ],
)
def test_tire_codes_are_read_as_people_write_them(code, diameter, width, rim):
    size = tire_size(code)
    assert size.text == code
    assert size.free_diameter == pytest.approx(diameter / 1000)
    assert size.section_width == pytest.approx(width / 1000)
    assert size.rim_diameter == pytest.approx(rim * 0.0254)


@pytest.mark.parametrize("code", ["245-75", "7.50R16", "245/75R160", "30 kg", "", 16, "12x33R15"])
def test_a_code_that_says_too_little_gets_the_repair(code):
    with pytest.raises(QuantityError, match=r"Write it like '245/75R16' or '33x12\.50R15', or give"):
        tire_size(code)


@pytest.mark.parametrize(
    ("text", "value"), [("ET30", 0.030), ("et 30", 0.030), ("ET-12", -0.012), ("ET +5", 0.005), ("30 mm", 0.030)]
)
def test_offsets_are_understood_with_and_without_their_mark(text, value):
    assert wheel_offset(text).value == pytest.approx(value)


@pytest.mark.parametrize(("text", "inches"), [("7J", 7), ("7 1/2 JJ", 7.5), ("6,5J", 6.5), ("7 in", 7), ('8"', 8)])
def test_rim_widths_are_understood_with_their_flange_letter(text, inches):
    assert rim_width(text).value == pytest.approx(inches * 0.0254)


@pytest.mark.parametrize(
    ("text", "diameter", "pitch"),
    [
        ("M14x1.5", 14, 1.5),
        ("m12 × 1,25", 12, 1.25),
        ("1/2-20", 12.7, 25.4 / 20),
        ("9/16 - 18 UNF", 14.2875, 25.4 / 18),
    ],
)
def test_threads_are_read(text, diameter, pitch):
    found = thread(text)
    assert (found.diameter * 1000, found.pitch * 1000) == (pytest.approx(diameter), pytest.approx(pitch))


@pytest.mark.parametrize("text", ["M14", "14 mm", "1/0-20", "M1x2", 14])
def test_a_thread_without_its_pitch_gets_the_repair(text):
    with pytest.raises(QuantityError, match=r"Write it like 'M14x1\.5' or '1/2-20'\.$"):
        thread(text)


def test_a_property_class_may_lack_its_quotes():
    assert property_class(10.9) == property_class("10.9") == "10.9"
    with pytest.raises(QuantityError, match=r"must be a property class of ISO 898-1 \(got '11'\)"):
        property_class("11")


def test_notations_work_in_a_file():
    setup = setup_of(least('offset = "ET25"', without="offset"))
    assert setup.wheel.offset == pytest.approx(0.025)
    setup = setup_of(least('rim_width = "7J"', without="rim_width"))
    assert setup.wheel.rim_width == pytest.approx(7 * 0.0254)


def test_a_tire_of_unknown_size_can_be_given_by_tape():
    text = least(
        '[tire]\nfree_diameter = "30 in"\nsection_width = "10 in"\nrim_diameter = "15 in"', without=r"\[tire|size"
    )
    tire = setup_of(text).tire
    assert (tire.size, tire.section_height) == (None, pytest.approx(7.5 * 0.0254))
    assert messages(text.replace('section_width = "10 in"\n', "")) == [
        "13: 'tire.section_width' must be given with 'tire.free_diameter'. Write it like '245 mm'."
    ]

"""Numbers of a page in both unit systems, and data that print as they were written."""

import pytest

from hubwright.lessons.numbers import Given, given, number, plain, show, show_range, unit
from hubwright.quantities import Quantity

NB = "\u00a0"


def test_a_number_stands_in_both_unit_systems() -> None:
    assert show(Quantity(5099.4, "N")) == (
        f'<span class="q"><span class="si">5.10{NB}kN</span><span class="us">1,146{NB}lbf</span></span>'
    )


def test_digits_and_kind_can_be_asked_for() -> None:
    assert plain(show(Quantity(5099.4, "N"), digits=2)) == f"5.1{NB}kN (1,100{NB}lbf)"
    assert plain(show(Quantity(2.78, "m"), kind="vehicle length")) == f"2.78{NB}m (109.4{NB}in)"


def test_number_and_unit_apart_make_the_whole() -> None:
    force = Quantity(5099.4, "N")
    assert (plain(number(force)), plain(unit(force))) == ("5.10 (1,146)", "kN (lbf)")


def test_a_plain_number_is_shown_once() -> None:
    assert show(13) == '<span class="q">13</span>'
    assert show(Quantity(1.5, "1")) == '<span class="q">1.50</span>'


def test_a_range_is_shown_and_an_exact_value_has_none() -> None:
    assert plain(show_range(Quantity(0.042, "m", low=0.038, high=0.046))) == f"38 to 46{NB}mm (1.50 to 1.81{NB}in)"
    assert show_range(Quantity(0.042, "m")) == ""


@pytest.mark.parametrize(
    ("text", "shown", "value", "si"),
    [
        ("25 mm", f"25{NB}mm (0.98{NB}in)", 0.025, "m"),
        ("1 in", f"25.4{NB}mm (1{NB}in)", 0.0254, "m"),
        ("35 deg", f"35{NB}deg", 0.6108652, "rad"),
        ("60 kg", f"60{NB}kg (132{NB}lb)", 60.0, "kg"),
        ("0.4 g", f"0.4{NB}g", 0.4, "1"),
        ("30 %", f"30{NB}%", 0.3, "1"),
    ],
)
def test_a_given_prints_as_written_and_calculates(text: str, shown: str, value: float, si: str) -> None:
    quantity = given(text)
    assert isinstance(quantity, Given)
    assert plain(str(quantity)) == shown
    assert quantity.value == pytest.approx(value, rel=1e-6)
    assert quantity.unit == si


def test_a_given_that_is_no_quantity_prints_as_written() -> None:
    assert plain(str(given("two rows"))) == "two rows"

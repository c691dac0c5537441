"""Sums as they are printed: the parts add up to the total, and no part is off by a unit of its last digit."""

import itertools
import math
from decimal import Decimal

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from hubwright.quantities import KINDS, Kind, Quantity, Shown, System, adding_up, display, display_sum, display_terms
from hubwright.quantities.formatting import Scale
from hubwright.quantities.sums import apportioned, format_sums, format_terms, multiplied

SUMMED: tuple[Kind, ...] = (
    "force", "moment", "mass", "length", "small length", "vehicle length", "percent", "count", "energy", "time",
)  # fmt: skip
sizes = st.floats(1e-3, 1e6) | st.floats(-1e6, -1e-3) | st.just(0.0)
several = st.lists(sizes, min_size=2, max_size=6)


def read(shown: Shown) -> Decimal:
    """Return the number that is printed."""
    return Decimal(shown.number.replace(",", "").replace("\u2212", "-"))


def scale_of(shown: Shown, kind: Kind, system: System) -> Scale:
    """Return the unit that is printed."""
    return next(scale for scale in KINDS[kind][0 if system == "si" else 1] if scale.unit == shown.unit)


@given(several, st.sampled_from(SUMMED), st.sampled_from(["si", "us"]))
def test_printed_parts_add_up_to_the_printed_total(parts, kind, system):
    shown, total = display_sum(parts, kind, system)
    assert sum(read(part) for part in shown) == read(total)
    assert {part.unit for part in shown} == {total.unit}


@given(several, st.sampled_from(SUMMED), st.sampled_from(["si", "us"]))
def test_the_total_is_shown_as_anywhere_else(parts, kind, system):
    whole = math.fsum(parts)
    assume(abs(whole) > 1e-6 * max(map(abs, parts)))
    assert display_sum(parts, kind, system)[1] == display(whole, kind, system)


@given(several, st.sampled_from(SUMMED), st.sampled_from(["si", "us"]))
def test_no_part_is_off_by_a_unit_of_the_last_digit(parts, kind, system):
    shown, total = display_sum(parts, kind, system)
    scale = scale_of(total, kind, system)
    whole = abs(float(read(total)))
    decimals = max(len(each.number.partition(".")[2]) for each in (*shown, total))
    # 1,150 lbf·ft is told to tens
    tens = 10.0 ** (math.floor(math.log10(whole)) + 1 - scale.significant) if whole >= 1000 else 0.0
    last_digit = max(10.0**-decimals, tens)
    for part, told in zip(parts, shown, strict=True):
        assert abs(float(read(told)) - part / scale.size) < last_digit * (1 + 1e-9)


@given(st.lists(st.floats(-20, 20), min_size=1, max_size=5))
def test_no_other_neighbours_come_closer(parts):
    total = round(math.fsum(parts))
    told = apportioned(parts, total)
    assert sum(told) == total
    neighbours = itertools.product(*((math.floor(part), math.floor(part) + 1) for part in parts))
    off = min(
        math.fsum(abs(whole - part) for whole, part in zip(choice, parts, strict=True))
        for choice in neighbours
        if sum(choice) == total
    )
    assert math.fsum(abs(whole - part) for whole, part in zip(told, parts, strict=True)) == pytest.approx(off, abs=1e-9)


@given(several, st.sampled_from(["si", "us"]))
def test_a_sum_that_holds_is_left_as_it_is(parts, system):
    shown, total = display_terms(parts, "force", system)
    alone = tuple(display(part, "force", system) for part in parts)
    size = {each.unit: scale_of(each, "force", system).size for each in (*alone, total)}
    told = sum(read(each) * Decimal(repr(size[each.unit])) for each in alone)
    if told == read(total) * Decimal(repr(size[total.unit])):
        assert shown == alone


def test_terms_finer_than_their_total_stay_as_they_are():
    shown, total = display_terms([5099.4, 392.3], "force", "si")
    assert [part.text for part in (*shown, total)] == ["5.10\xa0kN", "392\xa0N", "5.49\xa0kN"]


def test_terms_that_would_not_add_up_get_one_more_digit():
    shown, total = display_terms([3764.7, 1334.6], "force", "si")
    assert [part.number for part in (*shown, total)] == ["3.765", "1.335", "5.10"]
    assert display(1334.6, "force", "si").number == "1.33"


def test_what_is_whole_elsewhere_gets_a_decimal_too():
    pound = 4.4482216152605
    shown, total = display_terms([846.4 * pound, 300.45 * pound], "force", "us")
    assert [part.number for part in (*shown, total)] == ["846.4", "300.4", "1,147"]
    shown, total = display_terms([0.142, 0.114, 0.364, 0.38], "percent", "si")
    assert [part.number for part in (*shown, total)] == ["14.2", "11.4", "36.4", "38", "100"]


@given(several, st.sampled_from(SUMMED), st.sampled_from(["si", "us"]))
def test_a_term_rounds_to_what_it_is_elsewhere_unless_one_more_digit_does_not_do(parts, kind, system):
    shown = display_terms(parts, kind, system)[0]
    if shown != display_sum(parts, kind, system)[0]:
        for part, told in zip(parts, shown, strict=True):
            size = scale_of(told, kind, system).size
            last_digit = 10.0 ** -len(told.number.partition(".")[2])
            significant = 10.0 ** (math.floor(math.log10(abs(part / size))) - 2) if part else 0.0
            assert abs(float(read(told)) - part / size) <= max(last_digit, significant) / 2 * (1 + 1e-6)


def test_forces_that_cancel_get_a_digit_more_where_their_rounding_does_not():
    shown, total = display_sum([5491.72, -392.27, -5099.45], "force", "us")
    assert [part.number for part in (*shown, total)] == ["1,234.6", "\u221288.2", "\u22121,146.4", "0"]


@given(several, st.sampled_from(SUMMED), st.sampled_from(["si", "us"]))
def test_terms_add_up_to_their_total_as_far_as_it_is_told(parts, kind, system):
    shown, total = display_terms(parts, kind, system)
    told = sum(read(part) * Decimal(repr(scale_of(part, kind, system).size)) for part in shown)
    scale = scale_of(total, kind, system)
    half = Decimal(repr(scale.size)) * Decimal(10) ** -len(total.number.partition(".")[2]) / 2
    if abs(read(total)) >= 1000:  # 1,150 lbf·ft is told to tens
        half *= 10 ** max(0, len(str(abs(int(read(total))))) - scale.significant)
    assert abs(told - read(total) * Decimal(repr(scale.size))) <= half * (1 + Decimal("1e-9"))


def test_like_halves_stay_alike():
    shown, total = display_terms([0.64, 0.33, 0.015, 0.015], "percent", "si")
    assert [part.number for part in (*shown, total)] == ["64", "33", "1.5", "1.5", "100"]
    shown, total = display_terms([2546.7, 2546.7], "force", "si")
    assert [part.number for part in (*shown, total)] == ["2.547", "2.547", "5.09"]


def test_what_cancels_adds_up_to_nothing():
    shown, total = display_sum([2514.3, -1203.4, -1310.9], "force", "si")
    assert [part.number for part in shown] == ["2.51", "\u22121.20", "\u22121.31"]
    assert total.text == "0\xa0kN"


def test_digits_asked_for_hold_for_the_total():
    *parts, total = adding_up(Quantity(20.46, "kg"), Quantity(11.96, "kg"), Quantity(9.94, "kg"), digits=3)
    assert [part.shown("si").number for part in (*parts, total)] == ["20.5", "12.0", "9.94", "42.4"]


def test_quantities_of_a_sum_calculate_as_before():
    first, second, total = adding_up(Quantity(3764.5, "N"), Quantity(1334.6, "N"))
    assert (first.value, second.value, total.value) == (3764.5, 1334.6, 5099.1)
    assert first.shown("si").number == "3.764"
    assert second.shown("si").number == "1.335"
    assert (second * 1).shown("si").number == "1.33"


@given(st.lists(st.floats(0.3, 3.0), min_size=2, max_size=4))
def test_printed_factors_multiply_to_the_printed_whole_where_neighbours_can(factors):
    whole = round(math.prod(factors), 2)
    told = multiplied(factors, [2] * len(factors), whole, 2)
    assert all(abs(one - factor) < 0.01 + 1e-9 for one, factor in zip(told, factors, strict=True))
    neighbours = itertools.product(*((math.floor(f * 100) / 100, math.floor(f * 100 + 1) / 100) for f in factors))
    can = any(abs(math.prod(choice) - whole) < 0.005 - 1e-9 for choice in neighbours)
    assert not can or abs(math.prod(told) - whole) < 0.005 + 1e-9


def test_factors_that_multiply_as_rounded_are_left_as_they_are():
    assert multiplied([1.251, 1.302], [2, 2], 1.63, 2) == [1.25, 1.3]


def test_sums_side_by_side_have_one_number_of_digits() -> None:
    # one closes in whole pounds, 1,235 = 764 + 383 + 88; the other, with a like term, does not, 1,235 ≠ 1,200 − 54 + 88
    pound = 4.4482216152605
    before = [1234.6 * pound, -763.5 * pound, -382.9 * pound, -88.2 * pound]
    after = [1234.6 * pound, -1200.1 * pound, 53.7 * pound, -88.2 * pound]
    first, second = format_sums([before, after], "force", "us")
    assert first[0] == second[0] == "1,234.6\u00a0lbf"
    assert first[3] == second[3]
    assert format_sums([before], "force", "us") == [format_terms(before, "force", "us")]

"""Words made from numbers: true to the ratio, the sign and the span that they tell."""

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hubwright.errors import DimensionError
from hubwright.lessons import words
from hubwright.lessons.numbers import plain
from hubwright.quantities import Quantity

RATIOS = st.floats(0.08, 60.0)
# what the words say, read back by a table of English, not by the code under test
SAID = {
    "a twentieth": 1 / 20, "a tenth": 0.1, "an eighth": 1 / 8, "a sixth": 1 / 6, "a fifth": 0.2,
    "a quarter": 0.25, "a third": 1 / 3,
    "three tenths": 0.3, "two fifths": 0.4, "half": 0.5, "three fifths": 0.6, "two thirds": 2 / 3,
    "three quarters": 0.75,
    "four fifths": 0.8, "nine tenths": 0.9, "": 1.0, "just": 1.0, "one and a half times": 1.5, "twice": 2.0,
    "two and a half times": 2.5, "three times": 3.0, "four times": 4.0, "five times": 5.0, "six times": 6.0,
    "seven times": 7.0,
    "eight times": 8.0, "nine times": 9.0, "ten times": 10.0, "eleven times": 11.0, "twelve times": 12.0,
}  # fmt: skip


def said(text: str) -> float:
    text = text.removeprefix("about").strip()
    number = re.fullmatch(r"([\d.,]+) times", text)
    return float(number[1].replace(",", "")) if number else SAID[text]


@given(RATIOS)
def test_times_says_the_ratio_within_five_percent(ratio: float) -> None:
    assert said(words.times(ratio)) == pytest.approx(ratio, rel=0.051)


@given(RATIOS)
def test_times_claims_exactness_only_within_half_a_percent(ratio: float) -> None:
    text = words.times(ratio)
    if not text.startswith("about") and not text[0].isdigit():
        assert said(text) == pytest.approx(ratio, rel=0.0051)


@given(RATIOS)
def test_as_much_says_the_ratio(ratio: float) -> None:
    text = words.as_much(ratio)
    if text.endswith("half as much again"):
        meant = 1.5
    elif text.endswith(" more"):
        meant = 1 + said(text.removesuffix(" more"))
    elif text.endswith(" less"):
        meant = 1 - said(text.removesuffix(" less"))
    else:
        meant = said(text.removesuffix(" as much"))
    assert meant == pytest.approx(ratio, rel=0.051)
    if ratio > 1.03:
        assert "less" not in text
    if ratio < 0.97:
        assert "more" not in text


@pytest.mark.parametrize("ratio", [0.0, -2.0, math.nan])
def test_a_ratio_without_words_is_refused_with_advice(ratio: float) -> None:
    with pytest.raises(words.WordsError, match="Ask 'comparable"):
        words.times(ratio)


@pytest.mark.parametrize(
    ("offset", "text"), [(0.012, "outboard"), (-0.012, "inboard"), (0.0, "on centre"), (4e-5, "on centre")]
)
def test_side(offset: float, text: str) -> None:
    assert words.side(Quantity(offset, "m")) == text


@given(st.floats(-1e4, 1e4), st.floats(-1e4, 1e4))
def test_more_or_less_agrees_with_the_order_of_the_numbers(a: float, b: float) -> None:
    text = words.more_or_less(a, b)
    assert {"more than": a > b, "less than": a < b, "as much as": math.isclose(a, b, rel_tol=0.0051)}[text] or a == b


def test_comparing_a_force_with_a_length_is_refused() -> None:
    with pytest.raises(DimensionError, match="cannot compare N and m"):
        words.more_or_less(Quantity(1, "N"), Quantity(1, "m"))


@pytest.mark.parametrize(
    ("low", "high", "text"),
    [(1.1, 1.4, "raises"), (0.6, 0.9, "lowers"), (0.9, 1.2, "may raise or lower"), (None, None, "raises")],
)
def test_verdict_settles_only_what_the_span_settles(low: float | None, high: float | None, text: str) -> None:
    assert words.verdict(Quantity(1.2, "1", low=low, high=high)) == text


def test_verdict_of_no_change() -> None:
    assert words.verdict(1.0) == "does not change"


@given(st.floats(-1e6, 1e6), st.floats(-1e6, 1e6), st.floats(1.0, 1e6))
def test_comparable_refuses_a_change_of_sign_and_a_base_near_zero(a: float, b: float, scale: float) -> None:
    allowed = words.comparable(a, b, scale)
    assert allowed == ((a > 0 and b >= scale / 8) or (a < 0 and b <= -scale / 8))


@given(st.integers(0, 40))
def test_counted_has_the_right_plural(count: int) -> None:
    text = words.counted(count, "wheel")
    assert text.endswith("wheel") == (count == 1)


def test_lists() -> None:
    assert words.listed(["a"]) == "a"
    assert words.listed(["a", "b", "c"]) == "a, b and c"


@given(st.floats(0.1, 1e5), st.sampled_from(["kg", "N", "N*m"]))
def test_an_everyday_measure_comes_to_what_it_is_compared_with(value: float, unit: str) -> None:
    text = plain(words.everyday(Quantity(value, unit))).replace("\u00a0", " ")
    mass = float(re.search(r" of ([\d.,]+) kg", text).group(1))  # type: ignore[union-attr]
    each = {"kg": mass, "N": mass * 9.80665, "N*m": mass * 9.80665 * (1.0 if " bar" in text else 0.7)}[unit]
    if "less than one" in text:
        assert value < each
        return
    number = text.removeprefix("the weight of ").split()[0]
    count = words.COUNTS.index(number) if number in words.COUNTS else int(number.replace(",", ""))
    assert count * each == pytest.approx(value, rel=0.34)
    assert text.endswith("each") or ", " in text or count == 1
    assert ("each" in text) == (count > 1)


def test_everyday_measures_do_not_cut_people_in_halves() -> None:
    assert plain(words.everyday(Quantity(38.0, "kg"))).startswith("the weight of two bags of cement of 25")
    assert plain(words.everyday(Quantity(9.0, "kg"))).startswith("the weight of one full bucket of water of 10")

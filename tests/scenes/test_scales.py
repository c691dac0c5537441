"""Round scales: always from the series, never too small a room, never coarser than needed."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hubwright.scenes.scales import DRAWING_SCALES, drawing_scale, round_down, round_scale, round_up

POSITIVE = st.floats(1e-6, 1e9)


def leading_digit(value: float) -> float:
    return float(f"{value:.6e}".split("e")[0])


@given(POSITIVE)
def test_rounding_stays_in_the_series_and_within_one_step(value: float):
    up, down = round_up(value), round_down(value)
    assert leading_digit(up) in (1.0, 2.0, 5.0)
    assert leading_digit(down) in (1.0, 2.0, 5.0)
    assert down <= value * (1 + 1e-8)
    assert up >= value * (1 - 1e-8)
    assert up / down <= 2.5 * (1 + 1e-12)


@given(POSITIVE, st.floats(1, 100))
def test_the_largest_force_fits_its_room_and_fills_two_fifths_of_it(largest: float, room: float):
    drawn = largest / round_scale(largest, room)
    assert 0.4 * room * (1 - 1e-8) <= drawn <= room * (1 + 1e-8)


def test_nothing_to_draw_has_a_scale_all_the_same():
    assert round_scale(0.0, 20.0) > 0


@given(st.floats(1, 1e5), st.floats(10, 300))
def test_the_drawing_scale_is_the_largest_that_fits(extent: float, room: float):
    scale, written = drawing_scale(extent, room)
    sheet, real = (int(part) for part in written.split(" : "))
    assert scale == pytest.approx(sheet / real)
    smallest = min(a / b for a, b in DRAWING_SCALES)
    assert extent * scale <= room * (1 + 1e-12) or math.isclose(scale, smallest)
    larger = [a / b for a, b in DRAWING_SCALES if a / b > scale * (1 + 1e-12)]
    assert all(extent * other > room for other in larger)

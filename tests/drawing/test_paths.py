"""Short path data says what the points said: nothing lost by more than the tolerance, every step where it belongs."""

import re
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hubwright.drawing.geometry import Array, arc
from hubwright.drawing.paths import seen, short_paths

COORDINATES = st.floats(-400, 400).map(lambda value: round(value, 2))
RINGS = st.lists(st.lists(st.tuples(COORDINATES, COORDINATES), min_size=1, max_size=40), min_size=1, max_size=5)


def distance(point: Array, line: Array) -> float:
    """The way from a point to the nearest place of a line of straight pieces."""
    if len(line) == 1:
        return float(np.hypot(*(point - line[0])))
    nearest = np.inf
    for a, b in pairwise(line):
        length = float((b - a) @ (b - a))
        share = min(1.0, max(0.0, float((point - a) @ (b - a)) / length)) if length else 0.0
        nearest = min(nearest, float(np.hypot(*(point - a - share * (b - a)))))
    return nearest


def read(path: str) -> list[Array]:
    """Pen positions of relative path data, by the rules of SVG: after z the pen is back at the ring's start."""
    rings, pen = [], np.zeros(2)
    for piece in re.findall(r"m[^m]*", path):
        numbers = [float(text) for text in re.findall(r"-?(?:\d+\.?\d*|\.\d+)", piece)]
        ring = pen + np.cumsum(np.array(numbers).reshape(-1, 2), axis=0)
        rings.append(ring)
        pen = ring[0] if piece.endswith("z") else ring[-1]
    return rings


@settings(max_examples=200, deadline=None)
@given(RINGS, st.floats(0.0, 30.0))
def test_what_goes_lies_within_the_tolerance_of_what_stays(rings: list[list[tuple[float, float]]], near: float) -> None:
    lines = [np.array(ring) for ring in rings]
    ends = np.cumsum([len(line) for line in lines])
    kept = set(seen(np.concatenate(lines), ends, near).tolist())
    first = 0
    for line in lines:
        stays = line[[i for i in range(len(line)) if first + i in kept]]
        assert stays[0].tolist() == line[0].tolist()
        assert stays[-1].tolist() == line[-1].tolist()
        assert max(distance(point, stays) for point in line) <= near + 1e-9
        first += len(line)


@settings(max_examples=200, deadline=None)
@given(st.lists(st.tuples(RINGS, st.booleans()), min_size=1, max_size=4))
def test_steps_lead_to_every_point(paths: list[tuple[list[list[tuple[float, float]]], bool]]) -> None:
    given_paths = [([np.array(ring) for ring in rings], closed) for rings, closed in paths]
    for (rings, closed), written in zip(given_paths, short_paths(given_paths, lambda p: p, unseen=-1.0), strict=True):
        assert written.count("z") == (len(rings) if closed else 0)
        for ring, found in zip(rings, read(written), strict=True):
            assert found == pytest.approx(ring, abs=0.251)  # half of a half


def test_a_circle_loses_most_of_its_points() -> None:
    circle = arc((0.0, 0.0), 100.0, 0.0, 360.0, step=0.5)
    kept = seen(circle, np.array([len(circle)]), 0.2)
    assert len(kept) < len(circle) / 4

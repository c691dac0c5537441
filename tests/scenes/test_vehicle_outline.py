"""Circles of a vehicle seen from outside: so many points that no corner shows on the sheet."""

import math
from itertools import pairwise

import pytest

from dropped import CONTENT
from hubwright.results import solve
from hubwright.scenes.measuring_springs import measuring_springs
from hubwright.scenes.measuring_tire import measuring_tire
from hubwright.scenes.vocabulary import Part, Scene
from hubwright.setup import load

SEEN = 0.03  # sheet mm by which a corner may stand out of its circle: a tenth of the outline's width


@pytest.mark.parametrize("vehicle", ["hill-wagon", "supply-van", "kit-trailer"])
def test_no_circle_shows_its_corners(vehicle: str) -> None:
    results = solve(load(CONTENT / f"vehicles/{vehicle}.toml"))
    figures = [measuring_tire, *([measuring_springs] if results.setup.suspension else [])]
    for figure in figures:
        assert max(bulges(figure(results))) < SEEN, figure.__name__


def bulges(scene: Scene) -> list[float]:
    """By how much a circle through three points in a row leaves the sides between them, flat of the road aside."""
    found = []
    for item in scene.items:
        if not isinstance(item, Part):
            continue
        scale = scene.view(item.view).scale
        for ring in item.rings:
            sides = [math.dist(a, b) for a, b in pairwise(ring)]
            radius = max(x for x, _ in ring)
            usual = sorted(sides)[len(sides) // 2]
            found.append(scale * (radius - math.sqrt(radius**2 - usual**2 / 4)))
    return found

"""The life modification: its limits, that its pieces join, and that cleaner and thicker is better."""

from itertools import pairwise
from typing import get_args

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from mechanics_strategies import between

from hubwright.errors import ImpossibleError
from hubwright.mechanics.contamination import contamination_factors, fatigue_load_limit, life_modification
from hubwright.setup.model import Contamination

ELEMENTS = st.sampled_from(["balls", "rollers"])
CLASSES = get_args(Contamination)


def factor(**changes):
    sizes = {"contamination_factor": 0.5, "fatigue_load_limit": 500.0, "equivalent_load": 4000.0}
    return float(life_modification(**{**sizes, "viscosity_ratio": 1.0, "elements": "balls", **changes}))


@pytest.mark.parametrize("size", [0.06, 0.12])
def test_classes_go_from_clean_to_dirty_in_order(size):
    bands = [contamination_factors(contamination=name, pitch_diameter=size) for name in CLASSES]
    assert all(low <= high for low, high in bands)
    assert bands[0] == (1.0, 1.0)
    assert bands[-1] == (0.0, 0.0)
    for (low, _), (_, high) in pairwise(bands[1:]):
        assert 0 <= low - high <= 0.1 + 1e-12


def test_an_unknown_class_is_refused():
    with pytest.raises(ImpossibleError, match="'muddy' is no contamination class"):
        contamination_factors(contamination="muddy", pitch_diameter=0.06)


@given(ELEMENTS, between(0.1, 4))
def test_dirt_that_one_feels_leaves_a_tenth(elements, kappa):
    assert factor(contamination_factor=0.0, viscosity_ratio=kappa, elements=elements) == pytest.approx(0.1)


@given(ELEMENTS, between(0.3, 4))
def test_a_load_under_the_limit_has_the_cap(elements, kappa):
    assert factor(contamination_factor=1.0, equivalent_load=1.0, viscosity_ratio=kappa, elements=elements) == 50
    assert factor(equivalent_load=0.0, viscosity_ratio=kappa, elements=elements) == 50


@pytest.mark.parametrize("elements", ["balls", "rollers"])
@pytest.mark.parametrize("kappa", [0.4, 1.0])
def test_the_pieces_join(kappa, elements):
    below, above = (factor(viscosity_ratio=kappa * (1 + e), elements=elements) for e in (-1e-9, 1e-9))
    # the standard's constants have five digits
    assert below == pytest.approx(above, rel=1e-3)


@given(ELEMENTS, between(0.1, 1), between(0.1, 4), between(500, 20000), between(1.01, 2))
def test_cleaner_thicker_or_less_loaded_is_no_worse(elements, dirt, kappa, load, more):
    here = {"contamination_factor": dirt, "viscosity_ratio": kappa, "equivalent_load": load, "elements": elements}
    base = factor(**here)
    slack = base * (1 - 1e-3)  # where the pieces of κ join
    assert factor(**{**here, "contamination_factor": dirt * more}) >= base
    assert factor(**{**here, "viscosity_ratio": kappa * more}) >= slack
    assert factor(**{**here, "equivalent_load": load * more}) <= base


def test_the_limit_is_a_part_of_the_static_rating():
    small = {"pitch_diameter": 0.08}
    assert np.allclose(fatigue_load_limit(static_rating=np.array([22e3, 44e3]), elements="balls", **small), [1e3, 2e3])
    assert float(fatigue_load_limit(static_rating=8.2e3, elements="rollers", **small)) == pytest.approx(1e3)


@pytest.mark.parametrize(("elements", "exponent"), [("balls", 0.5), ("rollers", 0.3)])
def test_above_a_tenth_of_a_metre_the_limit_falls_behind_the_rating(elements, exponent):
    # ISO 281:2007, Annex B (from memory); the two rules have to join at the border
    limit = fatigue_load_limit(static_rating=1e4, pitch_diameter=np.array([0.1, 0.1 + 1e-12, 0.2]), elements=elements)
    assert limit[1] == pytest.approx(limit[0])
    assert limit[2] / limit[0] == pytest.approx(0.5**exponent)


def test_many_bearings_have_each_the_band_of_their_size():
    low, high = contamination_factors(contamination="high cleanliness", pitch_diameter=np.array([0.06, 0.12]))
    assert low.tolist() == [0.6, 0.8]
    assert high.tolist() == [0.8, 0.9]

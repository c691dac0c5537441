"""The span of a drop's peaks as a lesson asks for it: around its value, by the ranges that act in a drop."""

import pytest
from lesson_sites import WAGON

from hubwright.lessons.drop_spans import drop_span
from hubwright.lessons.named_values import View
from hubwright.lessons.views import setup_view
from hubwright.quantities import Quantity
from hubwright.results import Results, solve
from hubwright.setup import load_text
from hubwright.setup.model import Setup

FALL = '[[case]]\nname = "fall"\nkind = "drop"\nheight = "150 mm"\n'


@pytest.fixture(scope="module")
def results() -> Results:
    setup = load_text(WAGON + FALL, "wagon.toml")
    assert isinstance(setup, Setup)
    return solve(setup)


def fall(results: Results) -> View:
    return setup_view(results, "stock").fall  # type: ignore[return-value]


def value(view: View | None, name: str) -> Quantity:
    found = getattr(view, name)
    assert isinstance(found, Quantity)
    return found


def test_the_span_lies_around_the_value_of_the_case(results: Results) -> None:
    found = drop_span(fall(results))
    for name in ("peak_tire_force", "peak_bearing_force", "impact_factor"):
        peak = value(found, name)
        assert peak.value == results.cases["fall"].extras[name]
        assert peak.low is not None
        assert peak.high is not None
        assert peak.low < peak.value < peak.high


KNOWN = """
[suspension]
wheel_rate = "28 N/mm{range}"
bump_damping = "1500 N*s/m"
rebound_damping = "3000 N*s/m"
droop_travel = "80 mm"
bump_travel = "80 mm"
bump_stop_stiffness = "200 N/mm"
unsprung_mass = "52 kg"
"""


def known(text: str) -> Results:
    setup = load_text(WAGON + FALL + KNOWN.format(range=text), "wagon.toml")
    assert isinstance(setup, Setup)
    return solve(setup)


def test_a_known_suspension_narrows_the_span(results: Results) -> None:
    spread = [value(drop_span(fall(each)), "peak_tire_force") for each in (results, known(" ± 5 %"))]
    assert spread[1].high - spread[1].low < spread[0].high - spread[0].low  # type: ignore[operator]


def test_where_nothing_that_acts_in_a_drop_has_a_range_there_is_no_span() -> None:
    assert drop_span(fall(known(""))) is None


def test_another_case_is_refused(results: Results) -> None:
    with pytest.raises(TypeError, match="a case of the kind drop"):
        drop_span(setup_view(results, "stock").standing)  # type: ignore[arg-type]

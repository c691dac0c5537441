"""Every published value against what our functions give, as the page of sources and checks shows it."""

import sys
from collections import Counter
from collections.abc import Callable
from types import FrameType
from typing import Any

import pytest

from hubwright.published.catalogue import SUBJECTS, calculation_of, computed
from hubwright.published.check import Calculation, Check, checks
from hubwright.quantities.any_unit import from_si, in_si, list_in_si

CALCULATIONS = [each for subject in SUBJECTS for each in subject.calculations]


@pytest.mark.parametrize(
    "check", [pytest.param(check, id=f"{check.id} [{check.source}; {check.provenance}]") for check in checks()]
)
def test_our_value_is_the_published_one_within_its_rounding(check: Check) -> None:
    for value in computed(check):
        ours = check.in_its_unit(value)
        assert ours == pytest.approx(check.expected, rel=check.tolerance), (
            f"{check.quantity}: {check.source} ({check.provenance}; document not opened) "
            f"says {check.expected} {check.unit}, ours is {ours}"
        )


def test_every_calculation_has_a_check_and_every_check_one_calculation() -> None:
    used = {id(calculation_of(check)) for check in checks()}
    assert used == {id(each) for each in CALCULATIONS}
    assert len({check.id for check in checks()}) == len(checks())


@pytest.mark.parametrize("calculation", CALCULATIONS, ids=lambda each: " ".join(each.ids))
def test_a_calculation_calls_the_functions_that_it_names(calculation: Calculation) -> None:
    check = next(each for each in checks() if calculation_of(each) is calculation)
    called = Counter[str]()

    def note(frame: FrameType, event: str, _: Any) -> None:
        if event == "call":
            called[f"{frame.f_globals.get('__name__', '')}.{frame.f_code.co_qualname}"] += 1

    before = sys.getprofile()
    sys.setprofile(note)
    try:
        calculation.values(check)
    finally:
        sys.setprofile(before)
    for function in calculation.functions:
        name = f"{function.__module__}.{function.__qualname__}"
        assert called[name] or called[f"{name}.__init__"] or any(one.startswith(f"{name}.") for one in called), name


@pytest.mark.parametrize("calculation", CALCULATIONS, ids=lambda each: " ".join(each.ids))
def test_a_value_that_is_off_by_twice_the_rounding_is_noticed(calculation: Calculation) -> None:
    check = next(each for each in checks() if calculation_of(each) is calculation)
    for value in computed(check):
        assert check.agrees(value)
        assert not check.agrees(value * (1 + 2.5 * check.tolerance))
        assert not check.agrees(value * (1 - 2.5 * check.tolerance))


def test_a_wider_tolerance_says_why() -> None:
    wider = [check for check in checks() if check.allowed]
    assert wider
    for check in wider:
        assert check.because
        assert check.rel_tol < check.allowed < 0.02


def test_values_are_told_as_their_source_prints_them() -> None:
    printed = {check.id: check.printed for check in checks()}
    # as the tables and examples print them, the zero at the end included
    assert printed["ac_X2_dr_20"] == "0.70"
    assert printed["mk61_N1"] == "1,441"
    assert printed["hib_NA"] == "6.88"
    assert printed["Fp_M12x1.5_10.9"] == "73,100"


@pytest.mark.parametrize(
    ("read", "text", "value"),
    [
        (in_si, "32.2 ft/s**2", 32.2 * 0.3048),
        (in_si, "10 %", 0.1),
        (list_in_si, "[1, 2] lbf", [4.4482216152605, 8.896443230521]),
    ],
)
def test_units_of_printed_sources(read: Callable[[str], Any], text: str, value: object) -> None:
    assert read(text) == pytest.approx(value, rel=1e-12)
    assert from_si(1.0, "1") == 1.0

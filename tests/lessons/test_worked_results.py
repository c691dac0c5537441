"""A setup's results, worked out on a page of their own: each comes to its result, and a ratio to that of two setups."""

import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from lesson_sites import TRAILER, WAGON, write_docs
from markupsafe import Markup
from test_workings import agrees, solved

from hubwright.lessons.course import Course
from hubwright.lessons.drawings import Undrawn
from hubwright.lessons.generated_page import Site
from hubwright.lessons.named_values import value_at
from hubwright.lessons.page_state import PageState
from hubwright.lessons.views import setup_view
from hubwright.lessons.worked_results import Ways, pages, worked
from hubwright.lessons.workings import refuse_disagreement
from hubwright.quantities import Quantity
from hubwright.results import Results, solve
from hubwright.results.comparison import compare
from hubwright.setup import vary
from hubwright.setup.model import Setup
from strategies import setups

NO_SHRINKING = [Phase.explicit, Phase.reuse, Phase.generate]  # a setup takes a second
DUTY = 'duty = "mostly highway"\n'


def explain_their_results(results: Results) -> int:
    """Check every working of a setup against the result that lessons show; return how many there were."""
    stock = setup_view(results, "stock")
    cases = value_at(stock, "cases")
    assert isinstance(cases, list)
    views = {"": stock, **{str(value_at(view, "name")): view for view in cases}}
    checked = 0
    for (case, path), made in worked(results, None).items():
        result = value_at(views[case], path)
        refuse_disagreement(made, result)
        if made.digits:  # else nothing is stated: a life outside the formula's range
            # a life has no name in lessons, lest it be stated: its working comes to what the solver has
            agrees(f"{case}.{path}", made, result if isinstance(result, Quantity) else made.result.value)
        checked += 1
    return checked


@pytest.mark.parametrize("text", [WAGON, TRAILER])
def test_what_is_worked_out_comes_to_the_results(text: str) -> None:
    assert explain_their_results(solved(text)) > 30


@settings(max_examples=10, deadline=None, suppress_health_check=list(HealthCheck), phases=NO_SHRINKING)
@given(setups())
def test_what_is_worked_out_comes_to_the_results_of_any_setup(setup: Setup) -> None:
    explain_their_results(solve(setup))


def test_every_wheel_and_the_centre_of_mass_are_those_of_paper_and_pencil() -> None:
    # by hand: 50 kg 0.695 m ahead of the front axle and 0.40 m left, wheelbase 2.78 m, track 1.60 m
    made = worked(solved(WAGON), None)
    front, rear = (1120 + 50 * 1.25) * 9.80665, (1010 - 50 * 0.25) * 9.80665
    by_hand = {
        "weight.this_wheel": front / 2 + 50 * 1.25 * 9.80665 * 0.40 / 1.60,
        "weight.front_right": front / 2 - 50 * 1.25 * 9.80665 * 0.40 / 1.60,
        "weight.total_mass": 2180.0,
        "weight.centre_of_mass_behind": 2.78 * rear / (front + rear),
        "weight.centre_of_mass_height": (2130 * 0.69 + 50 * 0.8) / 2180,
    }
    for path, expected in by_hand.items():
        working = made["", path]
        assert working.value_of(working.lines[-1]) == pytest.approx(expected), path


def test_ratios_are_worked_out_from_both_setups() -> None:
    base = solved(DUTY + WAGON).setup
    other = vary(base, {"wheel.spacer": "25 mm", "tire.size": "265/75R16"})
    compared = compare(base, other)
    made = worked(compared.other, compared)
    for name, each in compared.row_loads.items():
        agrees(name, made[name, "beside.row_load"], Quantity(each.ratio or 0.0, "1"))
    for name, each in compared.lives.items():
        assert each.ratio is not None
        agrees(name, made[name, "beside.life"], Quantity(each.ratio, "1"))
    assert compared.distance is not None
    agrees("duty", made["", "beside.duty"], Quantity(compared.distance.ratio or 0.0, "1"))
    assert len(made["", "beside.duty"].lines) == 3


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Site:
    docs: Path = write_docs(tmp_path_factory.mktemp("docs"))
    return Site(Course.read(docs, in_view="wagon", shown="content"), Undrawn())


@pytest.mark.parametrize("stem", ["wagon", "kit-trailer"])
def test_a_page_has_each_working_once_where_links_lead(site: Site, stem: str) -> None:
    (page,) = [page for page in pages(site) if page.stem == stem]
    state = PageState(file=page.path)
    page.write(state)
    assert state.problems == []
    (html,) = [str(part) for part in state.late.values()]
    assert len([part for part in state.early.values() if "<h1>" in part]) == 1
    idents = re.findall(r'<details class="worked" id="([^"]+)" data-latex-si=', html)
    assert len(idents) == len(set(idents))
    ways = Ways.of(site, stem)
    assert set(ways.places.values()) == set(idents)
    # a number put in leads back to where it is told, not to a second telling within
    assert '<div class="before"' in html
    assert not re.search(r'<div class="before">(?:(?!</div>).)*<details', html, re.S)


def test_a_number_without_a_working_is_no_link(site: Site) -> None:
    ways = Ways.of(site, "wagon")
    assert "<a " not in ways.link(Markup("5"), "drop.peak", "standing")
    assert "#working-standing-contact-force-z" in ways.link(Markup("5"), "contact_force.z", "standing")

"""How results come about: formula, symbols, numbers put in, result and source of each, for the page."""

from collections.abc import Callable, Mapping

from markupsafe import Markup

from hubwright.lessons.blocks import BlockError
from hubwright.lessons.environment import nearest
from hubwright.lessons.named_values import View, names_of, subject_of, value_at
from hubwright.lessons.page_state import PageState
from hubwright.lessons.rough_views import Landing
from hubwright.lessons.symptom_views import Heard, Played
from hubwright.lessons.workings import bearing, contact, life, loads, rough, symptoms, turning, wheel
from hubwright.lessons.workings.html import working_html
from hubwright.lessons.workings.model import Working
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results

SETUP_WORKINGS: Mapping[str, Callable[[Results], Working]] = {
    **wheel.WORKINGS,
    **loads.SETUP_WORKINGS,
    **bearing.SETUP_WORKINGS,
    **turning.SETUP_WORKINGS,
    **life.SETUP_WORKINGS,
    **rough.SETUP_WORKINGS,
}
CASE_WORKINGS: Mapping[str, Callable[[Results, CaseResult], Working]] = {
    **contact.CASE_WORKINGS,
    **loads.CASE_WORKINGS,
    **bearing.CASE_WORKINGS,
    **turning.CASE_WORKINGS,
    **life.CASE_WORKINGS,
    **rough.CASE_WORKINGS,
}
AGREES = 1e-9  # relative: the expression of a working against the result it explains


def working(page: PageState, view: View, path: str) -> Markup:
    """Return the working of a result, folded: formula, numbers put in, what they come to, and the source."""
    subject = subject_of(view) if isinstance(view, View) else None
    if isinstance(subject, Results) and path in life.FOLDED:
        return page.set_aside(life.FOLDED[path](subject), late=True)
    made = working_of(view, path)
    return page.set_aside(working_html(made), late=True)


def working_of(view: View, path: str) -> Working:
    """Return the working of the result at a path of a setup, a case, a play or a noise."""
    subject = subject_of(view) if isinstance(view, View) else None
    first, _, rest = path.partition(".")
    if isinstance(subject, Results) and rest and first in names_of(view):
        inner = getattr(view, first)
        if isinstance(inner, View) and isinstance(subject_of(inner), tuple):
            return working_of(inner, rest)
    if isinstance(subject, tuple):
        if path not in CASE_WORKINGS:
            raise BlockError(f"there is no working of '{path}' of a case.{nearest(path, list(CASE_WORKINGS))}")
        made = CASE_WORKINGS[path](*subject)
    elif isinstance(subject, Results):
        if path not in SETUP_WORKINGS:
            raise BlockError(f"there is no working of '{path}' of a setup.{nearest(path, list(SETUP_WORKINGS))}")
        made = SETUP_WORKINGS[path](subject)
    elif isinstance(subject, Played) and path in symptoms.PLAY_WORKINGS:
        made = symptoms.PLAY_WORKINGS[path](subject)
    elif isinstance(subject, Heard) and path in symptoms.NOISE_WORKINGS:
        made = symptoms.NOISE_WORKINGS[path](subject)
    elif isinstance(subject, Landing) and path in rough.LANDING_WORKINGS:
        made = rough.LANDING_WORKINGS[path](subject)
    else:
        raise BlockError(f"working needs a setup or a case, such as stock.standing, got {view!r}")
    _refuse_disagreement(made, value_at(view, path), path)
    return made


def _refuse_disagreement(made: Working, result: object, path: str) -> None:
    if not isinstance(result, Quantity):
        return
    for line in made.lines:
        symbol = made.symbols[line.name]
        reached = made.value_of(line)
        scale = max(abs(symbol.value.value), 1e-3)
        if abs(reached - symbol.value.value) > AGREES * scale:
            raise BlockError(f"the working of '{path}' comes to {reached:.6g}, the result is {symbol.value.value:.6g}")
    if abs(made.result.value.value - result.value) > AGREES * max(abs(result.value), 1e-3):
        raise BlockError(
            f"the working of '{path}' explains {made.result.value.value:.6g}, the result is {result.value:.6g}"
        )

"""How results come about: formula, symbols, numbers put in, result and source of each, for the page."""

from markupsafe import Markup

from hubwright.lessons.blocks import BlockError
from hubwright.lessons.environment import nearest
from hubwright.lessons.named_values import View, names_of, subject_of, value_at
from hubwright.lessons.page_state import PageState
from hubwright.lessons.rough_views import Landing, Steered
from hubwright.lessons.symptom_views import Heard, Played
from hubwright.lessons.workings import distance, drops, steering, symptoms
from hubwright.lessons.workings.catalogue import CASE_WORKINGS, SETUP_WORKINGS, completed, of_case, of_setup
from hubwright.lessons.workings.html import working_html
from hubwright.lessons.workings.model import Working
from hubwright.quantities import Quantity
from hubwright.results import Results

__all__ = ["CASE_WORKINGS", "SETUP_WORKINGS", "working", "working_of"]

AGREES = 1e-9  # relative: the expression of a working against the result it explains


def working(page: PageState, view: View, path: str) -> Markup:
    """Return the working of a result, folded: formula, numbers put in, what they come to, and the source."""
    subject = subject_of(view) if isinstance(view, View) else None
    if isinstance(subject, Results) and path == distance.PATH:
        return page.set_aside(distance.distance_html(page, subject), late=True)
    made = working_of(view, path)
    return page.set_aside(working_html(page, made), late=True)


def working_of(view: View, path: str) -> Working:
    """Return the working of the result at a path of a setup, a case, a play, a noise, a landing or a steering."""
    subject = subject_of(view) if isinstance(view, View) else None
    first, _, rest = path.partition(".")
    if isinstance(subject, Results) and rest and first in names_of(view):
        inner = getattr(view, first)
        if isinstance(inner, View) and isinstance(subject_of(inner), tuple):
            return working_of(inner, rest)
    if isinstance(subject, tuple):
        if path not in CASE_WORKINGS:
            raise BlockError(f"there is no working of '{path}' of a case.{nearest(path, list(CASE_WORKINGS))}")
        results, case = subject
        made = of_case(results, case, path)
    elif isinstance(subject, Results):
        if path not in SETUP_WORKINGS:
            raise BlockError(f"there is no working of '{path}' of a setup.{nearest(path, list(SETUP_WORKINGS))}")
        made = of_setup(subject, path)
    elif isinstance(subject, Played) and path in symptoms.PLAY_WORKINGS:
        made = completed(symptoms.PLAY_WORKINGS[path](subject), f"play.{path}", subject.results)
    elif isinstance(subject, Heard) and path in symptoms.NOISE_WORKINGS:
        made = completed(symptoms.NOISE_WORKINGS[path](subject), f"noise.{path}", subject.results)
    elif isinstance(subject, Landing) and path in drops.LANDING_WORKINGS:
        made = completed(drops.LANDING_WORKINGS[path](subject), f"landing.{path}", subject.results)
    elif isinstance(subject, Steered) and path in steering.WORKINGS:
        made = completed(steering.WORKINGS[path](subject), f"steering.{path}", subject.results)
    else:
        raise BlockError(f"working needs a setup or a case, such as stock.standing, got {view!r}")
    refuse_disagreement(made, value_at(view, path))
    return made


def refuse_disagreement(made: Working, result: object) -> None:
    """Refuse a working whose lines do not come to its numbers, or that explains another number than the result."""
    for line in made.lines:
        symbol = made.symbols[line.name]
        reached = made.value_of(line)
        scale = max(abs(symbol.value.value), 1e-3)
        if abs(reached - symbol.value.value) > AGREES * scale:
            raise BlockError(
                f"the working of '{made.path}' comes to {reached:.6g}, the result is {symbol.value.value:.6g}"
            )
    if not isinstance(result, Quantity):
        return
    if abs(made.result.value.value - result.value) > AGREES * max(abs(result.value), 1e-3):
        raise BlockError(
            f"the working of '{made.path}' explains {made.result.value.value:.6g}, the result is {result.value:.6g}"
        )

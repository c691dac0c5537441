"""The working of a duty's distance: one digit, its span, and what it does not say, in the opened working alone."""

from typing import get_args

from markupsafe import Markup

from hubwright.lessons.blocks import BlockError
from hubwright.lessons.mathml import equation, mathml
from hubwright.lessons.numbers import NO_BREAK, attribute, both, show
from hubwright.lessons.page_state import PageState
from hubwright.lessons.reference_links import reference_link
from hubwright.lessons.workings.html import TURNOVER, place
from hubwright.lessons.workings.sentence import CAUTION, setup_words
from hubwright.quantities import Quantity, System, format_range
from hubwright.results import Results

PATH = "life.duty.distance"


def distance_html(page: PageState, results: Results) -> Markup:
    """Return the distance of a duty, folded: formula, one digit, its span, and what it does not say."""
    life = results.life
    if life is None or life.duty is None:
        raise BlockError("the working of 'life.duty.distance' needs a duty and a bearing whose rows are known")
    duty = life.duty
    terms = Markup('<table class="terms"><tbody>{}</tbody></table>').format(
        Markup("").join(
            Markup('<tr><td>{}</td><th scope="row">{}</th><td class="n">{}</td></tr>').format(
                mathml(symbol, "inline"), words, value
            )
            for symbol, words, value in (
                ("q_i", "share of the distance in each case", Markup("as in the table")),
                ("L_i", "turns that this case alone would allow", Markup("from the load on every element")),
                ("U", "distance in one turn", show(Quantity(results.wheel_geometry.rolling_circumference, "m"))),
            )
        )
    )
    formula = equation(r"\frac{1}{L} = \sum_i \frac{q_i}{L_i}") + equation(r"s = L \, U")
    parts = [("Formula", formula), ("With", terms), ("Comes to", _distance(results)), ("From", _FROM)]
    rows = Markup("").join(Markup("<div><dt>{}</dt><dd>{}</dd></div>").format(*part) for part in parts)
    ident = place(page, (id(results), "", PATH), PATH)
    return Markup(
        '<details class="worked" id="{}"{}><summary><span class="what">Distance over this duty{}</span>{}</summary>\n'
        "<dl>{}</dl></details>"
    ).format(ident, _copies(results), "" if duty.valid else ": not stated", TURNOVER, rows)


_FROM = Markup("Wear adds up whatever its order (Palmgren, Miner); lives by ISO/TS 16281. {}").format(
    reference_link("bearing_life.duty_life")
)


def _copies(results: Results) -> Markup:
    """Return the sentence that the page's button copies."""
    return Markup("").join(
        Markup(' data-sentence-{}="{}"').format(system, attribute(_sentence(results, system)))
        for system in get_args(System)
    )


def _sentence(results: Results, system: System) -> str:
    assert results.life is not None
    duty = results.life.duty
    assert duty is not None
    where = setup_words(results)
    if not duty.valid:
        return f"Distance over the duty: not stated, a case is outside the range of ISO 281, for {where}."
    about = Quantity(duty.distance, "m", kind="distance").shown(system).text
    found = results.spans.get(PATH)
    over = "" if found is None else f" (span {format_range(found.low, found.high, 'distance', system)})"
    return f"Distance over the duty: about {about}{over}, for {where}. {CAUTION}".replace(NO_BREAK, " ")


def _distance(results: Results) -> Markup:
    assert results.life is not None
    duty = results.life.duty
    assert duty is not None
    if not duty.valid:
        return Markup("<p>A case of this duty is outside the range of ISO 281: severe. No distance is stated.</p>")
    about = show(Quantity(duty.distance, "m", kind="distance"))
    found = results.spans.get("life.duty.distance")
    if found is None:
        span = Markup("No span is known: nothing that this duty needs has a range in the file.")
    else:
        ends = both(*(format_range(found.low, found.high, "distance", system) for system in get_args(System)))
        span = Markup("The ranges of the inputs spread it from {}.").format(ends)
    return Markup("<p>About {}, and no digit more. {} {}</p>").format(about, span, CAUTION)

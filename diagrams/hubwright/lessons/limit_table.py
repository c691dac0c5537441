"""Standing loads beside the limits that a file gives, and what is said before all else where one is exceeded."""

from markupsafe import Markup

from hubwright.lessons.numbers import show
from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.quantities import Quantity
from hubwright.results import Results
from hubwright.setup.model import Limits

NOTHING_GIVEN = "not compared with any limit"
ABOVE = "above the limit given: do not drive on this setup; ask a qualified person"
KEPT = "The loads of the other cases are not compared with any limit."


def limits_are_exceeded(results: Results) -> bool:
    """Return whether something stands on this setup that is above the limit given for it."""
    return any(load.value > limit.value for _, load, limit in limit_rows(results))


def warning_above_limits() -> Markup:
    """Return the sentence that comes before every number of a setup above its limits."""
    return Markup('<p class="over"><b>{}.</b></p>\n').format(ABOVE.capitalize())


def limits(results: Results) -> Markup:
    """Return each load beside the limit that the file gives for it, or that none is given.

    A load above its limit comes first, with what to do.
    """
    rows = limit_rows(results)
    if not rows:
        return Markup("<p>{}.</p>").format(NOTHING_GIVEN.capitalize())
    lines = Markup("").join(
        Markup('<tr><th scope="row">{}</th><td class="n">{}</td><td class="n">{}</td><td>{}</td></tr>').format(
            words, show(load), show(limit), Markup("<b>{}</b>").format("above") if load.value > limit.value else ""
        )
        for words, load, limit in rows
    )
    warning = warning_above_limits() if limits_are_exceeded(results) else ""
    return Markup(
        '{}<div class="tablewrap"><table><caption>Standing loads beside the limits that the file gives.</caption>'
        '<thead><tr><th scope="col">Load</th><th scope="col" class="n">Stands with</th>'
        '<th scope="col" class="n">Limit given</th><td></td></tr></thead><tbody>{}</tbody></table></div>\n'
        "<p>{}</p>"
    ).format(warning, lines, KEPT)


def limit_rows(results: Results) -> list[tuple[str, Quantity, Quantity]]:
    """Return what stands beside a limit: words, load and limit, both as masses."""
    given = results.setup.limits
    if given is None:
        return []
    weight = results.weight
    heaviest = max(weight.wheel_loads.values())
    pairs = [
        (f"{axle} axle" if axle not in ("axle", "coupling") else axle, load, _limit_of(given, axle))
        for axle, load in weight.axle_loads.items()
    ]
    pairs += [
        ("heaviest wheel, wheel rating", heaviest, given.wheel_rating),
        ("heaviest wheel, tire rating", heaviest, given.tire_rating),
    ]
    return [
        (words.capitalize(), Quantity(load / STANDARD_GRAVITY, "kg"), Quantity(limit, "kg"))
        for words, load, limit in pairs
        if limit is not None
    ]


def _limit_of(limits: Limits, axle: str) -> float | None:
    return {
        "front": limits.front_axle_rating,
        "rear": limits.rear_axle_rating,
        "axle": limits.axle_rating,
        "coupling": limits.coupling_rating,
    }[axle]

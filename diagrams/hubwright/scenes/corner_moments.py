"""The moments about the bearing centre that a wheel in a corner has, each from its force and its lever."""

from dataclasses import dataclass

from hubwright.quantities import display_terms
from hubwright.quantities.formatting import MINUS
from hubwright.results.model import CaseResult
from hubwright.scenes.vocabulary import Units


@dataclass(frozen=True)
class Turning:
    """One moment about the bearing centre on the turning body; seen from the rear, counter-clockwise positive [N·m]."""

    name: str
    symbol: str
    value: float
    reaction: bool = False


def corner_moments(state: CaseResult) -> tuple[Turning, ...]:
    """Return side force, vertical force, weights with inertia, and the bearing's answer, in this order.

    Summed from the single forces of the free body; a moment about x that is positive turns clockwise as seen from
    the rear.
    """
    body = state.free_body
    contact = body.force("contact")

    def about_x(names: tuple[str, ...], kind: str) -> float:
        return sum(
            single.point.y * single.force.z - single.point.z * single.force.y
            for single in body.forces
            if single.name.startswith(names) and single.kind == kind
        )

    answer = about_x(("",), "reaction") + sum(couple.moment.x for couple in body.couples)
    return (
        Turning("side", "{F|y} · {R|l}", contact.point.z * contact.force.y),
        Turning("upright", "{F|z} · {y|L}", -contact.point.y * contact.force.z),
        Turning("weights", "weights", -about_x(("weight", "inertia"), "applied")),
        Turning("bearing", "bearing {M|x}", -answer, reaction=True),
    )


def sizes_of(turnings: tuple[Turning, ...], units: Units) -> tuple[str, ...]:
    """Return the sizes of the moments, so shown that the others add up to the bearing's."""
    parts, total = display_terms([turning.value for turning in turnings[:-1]], "moment", units)
    return tuple(shown.text.removeprefix(MINUS) for shown in (*parts, total))


def ends_of(turnings: tuple[Turning, ...]) -> list[float]:
    """Return where each bar of the chain ends that begins where the one before ended; the last ends at zero."""
    total, ends = 0.0, []
    for turning in turnings:
        total += turning.value
        ends.append(total)
    return ends


def sense(turning: float) -> str:
    """Return the sense of a moment, counter-clockwise positive."""
    return "counter-clockwise" if turning > 0 else "clockwise"

"""What a lesson may ask about life and comparisons: shares and ratios with spans, never a life by itself.

No name here leads to one life as one number: a page states ratios. A distance stands only in an opened working.
"""

import math
from collections.abc import Callable, Mapping
from functools import partial

import numpy as np

from hubwright.lessons.named_values import Leaf, View, constant
from hubwright.lessons.words import wheel_words
from hubwright.mechanics.bearing_life import LOAD_EXPONENT, MILLION, SURVIVORS, WEIBULL_SLOPE, reliability_factor
from hubwright.mechanics.bearing_rating import Elements, one_row_dynamic_rating
from hubwright.quantities import Quantity, adding_up
from hubwright.results import CaseResult, Results
from hubwright.results.bearings import rating_remark
from hubwright.results.comparison import ALIKE, Compared, Comparison, lopsided_cases
from hubwright.results.contributions import Contribution
from hubwright.results.draws import HIGH, LEAST_SHARE, LOW, draws_of, is_drawn, span
from hubwright.results.life import CaseLife, RowElements
from hubwright.results.model import Rows
from hubwright.results.wear import Array

VERDICTS: Mapping[str, str] = {
    "raises": "raises",
    "lowers": "lowers",
    "not settled": "these data do not settle which way",
    "unchanged": "does not change",
}
_NOTHING = 1e-6  # of the largest load of an element: what the solver leaves on one that is free


def elements_of(results: Results) -> Elements:
    """Return what rolls in a setup's bearing."""
    return "balls" if results.setup.bearing.kind == "two-row ball" else "rollers"


def life_left(more: Quantity | float, exponent: Quantity | float) -> Quantity:
    """Return the part of a life that is left when the load grows by a share."""
    return Quantity((1 + float(more)) ** -float(exponent), "1", kind="percent")


def life_view(results: Results, label: str) -> View:
    """Return what may be said of a setup's life; what a file that says too little leaves unknown is None."""
    elements, slope = elements_of(results), WEIBULL_SLOPE[elements_of(results)]
    return View(
        label,
        {
            "known": lambda: results.life is not None,
            "elements": constant(elements),
            "exponent": constant(Quantity(LOAD_EXPONENT[elements], "1")),
            "distance_at_rating": constant(
                Quantity(MILLION * results.wheel_geometry.rolling_circumference, "m", kind="distance")
            ),
            "row_rating": lambda: _row_rating(results),
            "rating_remark": constant(rating_remark(results.setup.bearing)),
            "duty": lambda: _duty_view(results, f"{label}.duty"),
            "reliability": constant([_survivors_view(share, f"{label}.reliability") for share in SURVIVORS]),
            # the two-parameter Weibull law that the combined life of rows rests on too
            "half_gone": constant(Quantity((math.log(0.5) / math.log(0.9)) ** (1 / slope), "1")),
        },
    )


def _row_rating(results: Results) -> Quantity | None:
    rating = results.bearing.dynamic_rating
    if rating is None:
        return None
    return Quantity(float(one_row_dynamic_rating(dynamic_rating=rating, elements=elements_of(results))), "N")


def case_life_views(results: Results, cases: Mapping[str, View]) -> None:
    """Give the view of every case its name `life`; the draws behind all of them are made once, when asked for."""
    drawn: list[Mapping[str, Array]] = []

    def lives() -> Mapping[str, Array]:
        if not drawn:
            drawn.append(_drawn_lives(results))
        return drawn[0]

    for name, view in cases.items():
        view._names["life"] = partial(_case_life_view, results, results.cases[name], lives, f"{view!r}.life")


def _drawn_lives(results: Results) -> Mapping[str, Array]:
    if not is_drawn(results):
        return {}
    many = draws_of(results)
    if many.stands.mean() < LEAST_SHARE:
        return {}
    return {name: value[many.stands] for name, value in many.values.items() if name.endswith(".detailed")}


def _case_life_view(
    results: Results,
    case: CaseResult,
    lives: Callable[[], Mapping[str, Array]],
    label: str,
) -> View | None:
    life = results.life
    if life is None:
        return None
    mine, standing = life.cases[case.name], life.cases["standing"]

    def wear() -> Leaf:
        """Return how many turns standing one turn in this case is worth."""
        if not mine.valid or not standing.valid or not mine.detailed or not standing.detailed:
            return None
        if not (np.isfinite(mine.detailed) and np.isfinite(standing.detailed)):
            return None
        ratio = standing.detailed / mine.detailed
        drawn = lives()
        if not drawn:
            return Quantity(ratio, "1")
        found = span(drawn["life.standing.detailed"] / drawn[f"life.{case.name}.detailed"])
        if found.high - found.low <= ALIKE * found.high:
            return Quantity(ratio, "1")
        return Quantity(ratio, "1", low=found.low, high=found.high)

    return View(
        label,
        {
            "valid": constant(mine.valid),
            "wear": wear,
            "worst_row": constant("outboard" if _worst(mine) is mine.outboard else "inboard"),
            "most_loaded": constant(Quantity(max(_worst(mine).load), "N")),
            "pressure": constant(Quantity(_larger(mine.peak_contact_pressure), "Pa")),
            "dent_margin": constant(Quantity(min(mine.static_safety.outboard, mine.static_safety.inboard), "1")),
            "loaded": lambda: View(
                f"{label}.loaded",
                {
                    "outboard": constant(_loaded(mine, mine.outboard.load)),
                    "inboard": constant(_loaded(mine, mine.inboard.load)),
                },
            ),
            **{
                name: partial(_rows_view, getattr(mine, name), unit, f"{label}.{name}")
                for name, unit in (
                    ("equivalent_load", "N"),
                    ("largest_element_load", "N"),
                    ("peak_contact_pressure", "Pa"),
                )
            },
        },
    )


def _worst(life: CaseLife) -> RowElements:
    return life.outboard if max(life.outboard.load) >= max(life.inboard.load) else life.inboard


def _larger(rows: Rows) -> float:
    return max(rows.outboard, rows.inboard)


def _loaded(life: CaseLife, loads: tuple[float, ...]) -> int:
    largest = _larger(life.largest_element_load)
    return sum(1 for load in loads if load > _NOTHING * max(largest, 1e-9))


def _rows_view(rows: Rows, unit: str, label: str) -> View:
    return View(
        label,
        {
            "outboard": constant(Quantity(rows.outboard, unit)),
            "inboard": constant(Quantity(rows.inboard, unit)),
            "larger": constant(Quantity(_larger(rows), unit)),
            "worst_row": constant("outboard" if rows.outboard >= rows.inboard else "inboard"),
        },
    )


def _survivors_view(share: float, label: str) -> View:
    return View(
        label,
        {
            "survivors": constant(Quantity(share, "1", kind="percent")),
            "factor": constant(Quantity(float(reliability_factor(survivors=share)), "1")),
        },
    )


def _duty_view(results: Results, label: str) -> View | None:
    life = results.life
    duty = None if life is None else life.duty
    if life is None or duty is None:
        return None
    shares = adding_up(*(Quantity(part.share, "1", kind="percent") for part in duty.parts))
    damage = adding_up(*(Quantity(part.damage_share, "1", kind="percent") for part in duty.parts))
    parts = [
        View(
            f"{label}.parts[{place}]",
            {
                "name": constant(part.case),
                "share": constant(shares[place]),
                "damage_share": constant(damage[place]),
                "valid": constant(life.cases[part.case].valid),
            },
        )
        for place, part in enumerate(duty.parts)
    ]
    worst = max(range(len(parts)), key=lambda place: duty.parts[place].damage_share)
    return View(
        label,
        {
            "valid": constant(duty.valid),
            "name": constant(results.setup.duty_name),
            "parts": constant(parts),
            "worst": constant(parts[worst]),
            "lopsided": constant(bool(lopsided_cases(results.setup))),
        },
    )


def comparison_view(comparison: Comparison, label: str) -> View:
    """Return two setups compared: ratios with spans and verdicts, and what each change does to them."""
    rows = {name: _compared_view(each, "N", f"{label}.row_loads") for name, each in comparison.row_loads.items()}
    lives = {name: _life_ratio_view(each, f"{label}.lives") for name, each in comparison.lives.items()}
    distance = comparison.distance

    def parts(name: str) -> list[View]:
        return [_part_view(part, f"{label}.parts") for part in comparison.parts.get(name, ())]

    return View(
        label,
        {
            "wheel_words": constant(wheel_words(comparison.wheel)),
            "changes": constant([View(f"{label}.changes", {"name": constant(c.name)}) for c in comparison.changes]),
            "row_load": lambda: rows.get("standing"),
            "life": lambda: lives.get("standing"),
            "distance": lambda: None if distance is None else _life_ratio_view(distance, f"{label}.distance"),
            "cases": lambda: [
                View(
                    f"{label}.cases", {"name": constant(name), "row_load": constant(rows[name]), "life": constant(one)}
                )
                for name, one in lives.items()
                if name in rows
            ],
            # both as they are at the wheel compared, for a figure of two setups
            "before": constant(View(f"{label}.before", {}, comparison.base)),
            "after": constant(View(f"{label}.after", {}, comparison.other)),
            # whether the figure that splits the change has anything to show
            "splits": constant(bool(comparison.parts.get("row load, standing"))),
            "modified_distance": lambda: (
                None
                if comparison.modified_distance is None
                else _life_ratio_view(comparison.modified_distance, f"{label}.modified_distance")
            ),
            "parts": lambda: parts("distance"),
            "parts_of_row_load": lambda: parts("row load, standing"),
            "parts_of_life": lambda: parts("life, standing"),
            "draws": constant(comparison.draws),
            "low_percentile": constant(Quantity(LOW, "1", kind="percent")),
            "high_percentile": constant(Quantity(HIGH, "1", kind="percent")),
            "warnings": constant([View(warning, {"text": constant(warning)}) for warning in comparison.warnings]),
        },
        comparison,
    )


def _ratio_names(each: Compared) -> dict[str, Callable[[], Leaf]]:
    low, high = (None, None) if each.span is None else (each.span.low, each.span.high)
    ratio = None if each.ratio is None else Quantity(each.ratio, "1", low=low, high=high)
    return {
        "ratio": constant(ratio),
        "valid": constant(each.valid),
        "verdict": constant(each.verdict),
        "words": constant(VERDICTS[each.verdict]),
        "has_span": constant(each.span is not None),
        "error": constant(None if each.span is None else Quantity(max(each.span.low_error, each.span.high_error), "1")),
    }


def _life_ratio_view(each: Compared, label: str) -> View:
    """Return the ratio of two lives; the lives themselves have no name."""
    return View(label, _ratio_names(each))


def _compared_view(each: Compared, unit: str, label: str) -> View:
    return View(
        label,
        {
            **_ratio_names(each),
            "base": constant(Quantity(each.base, unit)),
            "other": constant(Quantity(each.other, unit)),
            "difference": constant(Quantity(each.difference, unit)),
        },
    )


def _part_view(part: Contribution, label: str) -> View:
    return View(
        label,
        {
            "name": constant(part.change),
            "kind": constant(part.kind),
            "factor": constant(Quantity(part.factor, "1")),
            "nothing": constant(part.nothing),
        },
    )

"""Shares of the distance and of the life used up, side by side for every case of a duty.

The view's abscissa is a share, its ordinate sheet millimetres.
"""

import textwrap
from collections.abc import Sequence

from hubwright.errors import MissingDataError
from hubwright.quantities.sums import apportioned
from hubwright.results.life import CaseDamage, DutyLife
from hubwright.results.model import Results
from hubwright.scenes.chart_rows import grid_lines
from hubwright.scenes.plot_frame import even_marks
from hubwright.scenes.row_elements import life_known
from hubwright.scenes.scales import round_up
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Axis, Bar, Item, Label, Scene, Step, Units, View, Words

_WIDTH, _FOOT, _HEAD = 310.0, 20.0, 15.0
_LEFT, _RIGHT, _NAMES = 92.0, 288.0, 82.0
_PITCH, _THICK = 16.0, 4.4
_LETTERS = 40
_SWATCH, _EVEN = 9.0, 1e-6  # length of a bar of the key; of a percent


def duty_damage(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of a duty's shares and the damage of each: all cases of the duty, whichever is asked."""
    duty = life_known(results, "the damage of a duty").duty
    if duty is None:
        raise MissingDataError(result="the damage of a duty", missing=["duty"])
    largest = max(max(part.share, part.damage_share) for part in duty.parts)
    step = round_up(largest / 5)
    reach = min(1.0, step * -(-largest // step)) if largest < 1 else 1.0
    high = _FOOT + _PITCH * len(duty.parts)
    view = View("shares", (_LEFT, 0.0), (_RIGHT - 22.0 - _LEFT) / reach, vertical_per_mm=1.0)
    key = View("key", (_LEFT, high + 6.0), 1.0, vertical_per_mm=1.0, heading="Key")
    marks = tuple((at, f"{text}\u00a0%") for at, text in even_marks(0.0, reach, unit=0.01, about=5))
    items: list[Item] = [
        *grid_lines("grid", "shares", marks, (_FOOT, high)),
        Axis(
            "axis-share",
            "shares",
            at=_FOOT,
            end=reach,
            marks=marks,
            title="open bars: share of the distance; full bars: of the damage",
        ),
        Axis("axis-zero", "shares", direction="vertical", start=_FOOT, end=high),
        *_key(high),
    ]
    told = _told(duty)
    for number, part in enumerate(duty.parts):
        name = _name(results, part)
        items += _row(view, part, number + 1, high - _PITCH * (number + 0.5), name, told[number])
    return Scene(
        name="duty-damage",
        title=_title(results, duty),
        caption=_caption(results, duty),
        description=_description(results, duty),
        units=units,
        size=(_WIDTH, high + _HEAD),
        views=(view, key),
        items=tuple(items),
        steps=(
            Step("Share out the distance", "How much of the distance the vehicle goes in each case."),
            Step("Ask what each uses up", "A case wears by its share over the life that it would allow alone."),
        ),
    )


def _told(duty: DutyLife) -> list[tuple[str, str]]:
    """Return each case's share of the distance and of the damage in percent; both columns add up to the whole.

    Tenths where the distance is shared out in tenths, or a share would be nothing without them.
    """
    distance, damage = [part.share for part in duty.parts], [part.damage_share for part in duty.parts]
    tenths = any(abs(100 * share - round(100 * share)) > _EVEN for share in distance)
    tenths = tenths or any(0 < share < 0.01 for share in (*distance, *damage))
    return list(zip(percents(distance, tenths=tenths), percents(damage, tenths=tenths), strict=True))


def _name(results: Results, part: CaseDamage) -> str:
    """Return what a case of the duty is called; what stands covers no distance, so it is what rolls straight on."""
    name = plain(part.case)
    rolls = results.cases[part.case].kind != "standing" or "straight" in name.lower()
    return name if rolls else f"straight, as {name}"


def _row(view: View, part: CaseDamage, number: int, middle: float, name: str, told: tuple[str, str]) -> list[Item]:
    """Return both bars of a case, and on the left its name with both numbers."""
    names = textwrap.wrap(name, _LETTERS) or [""]
    numbers = f"{told[0]} of the distance, {told[1]} of the damage"
    up = _THICK / 2 + 0.3
    label = Label((*names, numbers), "left", size=2.3, nudge=(_NAMES - view.origin[0] + 1.6, -up))
    items: list[Item] = []
    for what, share, step, at in (
        ("distance", part.share, 1, middle + up),
        ("damage", part.damage_share, 2, middle - up),
    ):
        first = what == "distance"
        items.append(
            Bar(
                f"bar-{what}-{number}",
                "shares",
                step,
                end=share,
                at=at,
                thick=_THICK,
                tone="before" if first else "ink",
                is_open=first,
                label=label if first else None,
            )
        )
    return items


def _key(high: float) -> list[Item]:
    """Return at the head which bar is which; on a phone the axis says it."""
    items: list[Item] = []
    for step, (what, text, off) in enumerate(
        (("distance", "share of the distance", 0.0), ("damage", "share of the life that is used up", 78.0)), 1
    ):
        first = what == "distance"
        at = (_LEFT + off + _SWATCH + 2.0, high + 6.0 - 1.2)
        items += [
            Bar(
                f"key-{what}",
                "key",
                step,
                start=off,
                end=off + _SWATCH,
                thick=_THICK * 0.7,
                tone="before" if first else "ink",
                is_open=first,
                wide_only=True,
            ),
            Words(f"words-{what}", "", step, at_sheet=at, lines=(text,), size=2.4),
        ]
    return items


def percents(shares: Sequence[float], *, tenths: bool) -> list[str]:
    """Return shares of a whole in percent, all to one last digit, so that they add up as they are printed.

    >>> percents([0.334, 0.333, 0.333], tenths=False), percents([0.0003, 0.6137, 0.386], tenths=True)
    (['34\\xa0%', '33\\xa0%', '33\\xa0%'], ['under 0.1\\xa0%', '61.4\\xa0%', '38.6\\xa0%'])
    """
    fine = 1000 if tenths else 100
    numbers = apportioned([share * fine for share in shares], round(sum(shares) * fine))
    return [
        f"under {100 / fine:g}\u00a0%" if share > 0 and not number else f"{100 * number / fine:.{int(tenths)}f}\u00a0%"
        for share, number in zip(shares, numbers, strict=True)
    ]


def _title(results: Results, duty: DutyLife) -> str:
    worst, (distance, damage) = max(zip(duty.parts, _told(duty), strict=True), key=lambda pair: pair[0].damage_share)
    name = _name(results, worst)
    if len(duty.parts) == 1:
        return f"All of the distance is {name}"
    shares = f"{distance} of the distance, {damage} of the damage"
    return f"{name[:1].upper()}{name[1:]}: {shares}"


def _caption(results: Results, duty: DutyLife) -> str:
    words = (
        f"{plain(results.setup.name)}: {results.wheel.replace('_', ' ')} wheel, duty as given. "
        "Open bars: share of the distance; full bars: of the damage. "
        "Damage is what a case uses up of the bearing's fatigue life, summed by Palmgren and Miner."
    )
    if not duty.valid:
        words += " One case at least loads the bearing beyond the range of the life formula: its part is a rough one."
    return words


def _description(results: Results, duty: DutyLife) -> str:
    told = "; ".join(
        f"{_name(results, part)} {distance} of the distance and {damage} of the damage"
        for part, (distance, damage) in zip(duty.parts, _told(duty), strict=True)
    )
    return f"Two bars for each case of the duty of {plain(results.setup.name)}: {told}."

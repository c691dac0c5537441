"""Each axle of a vehicle in a bend by itself, seen from the rear, and how what pushes across is shown.

Views as in `corner_front_view`.
"""

from collections.abc import Iterable
from typing import Literal

from hubwright.results.model import Results
from hubwright.scenes.corner_front_lines import equation, largest
from hubwright.scenes.corner_front_outline import axle_seen, wheels_seen
from hubwright.scenes.corner_front_words import RollWording
from hubwright.scenes.roll_body import Wheel
from hubwright.scenes.small_forces import is_small, length
from hubwright.scenes.vocabulary import LENGTH_OFF_SCALE, NOT_TO_SCALE, Force, Item, Label, Line, Note, View, Words

_INWARD, _APART = 3.4, 6.0  # from a wheel's arrow to its words, and what these leave of the half between two wheels
_UPRIGHT = "{F|z}"
_SIZES = 2.4, 2.2  # of the words of upright forces, if possible the first
_ABOVE_ROAD, _LEAST_ACROSS = 1.8, 2.0  # words of what pushes across; a shorter arrow is lost on the line of the road


def axles(words: RollWording, results: Results, views: tuple[View, ...]) -> list[Item]:
    """Return each axle by itself: the road on its wheels, and marks where the standing loads would end."""
    items: list[Item] = []
    step = words.split_step
    wheels = [(wheel, view) for view in views for wheel in words.body.of_axle(view.name)]
    size = largest(
        ((f"*{_UPRIGHT} = {words.told(f'{wheel.name} z')}", _room(wheel, view)) for wheel, view in wheels), _SIZES
    )
    for view in views:
        pair = words.body.of_axle(view.name)
        places = tuple(wheel.y for wheel in pair)
        items += [axle_seen(results, view.name, places, step), *wheels_seen(results, view.name, places, step)]
        top = view.origin[1] + results.wheel_geometry.free_diameter * 1e3 * view.scale + 4.0
        moved = sum(abs(wheel.gained) for wheel in pair) / 2
        heading = f"*{view.heading}"
        items.append(
            Words(
                f"words-{view.name}", view.name, step, at_sheet=(view.origin[0], top), lines=(heading,), align="centre"
            )
        )
        told = (
            "nothing moved"
            if words.nothing(moved) or words.nothing(words.body.moved())
            else f"{words.told(f'moved {view.name}')} moved, {words.share(view.name)} of all"
        )
        at = (view.origin[0], top - 5.0)
        items.append(
            Words(
                f"words-{view.name}-2",
                view.name,
                step,
                at_sheet=at,
                lines=(told,),
                size=2.3,
                tone="soft",
                align="centre",
            )
        )
        for wheel in pair:
            items += _one_wheel(words, wheel, view, size)
    return items


def least_across(forces: Iterable[float], view: View) -> float:
    """Return how long the shortest arrow of what pushes across is that is to scale.

    Where one would be lost on the line of the road, others as short are not to scale either, so that sizes do not seem
    the other way round.
    """
    per_mm = view.newtons_per_mm or 1.0
    lost = any(is_small(force, per_mm, least=_LEAST_ACROSS) for force in forces)
    return LENGTH_OFF_SCALE if lost else _LEAST_ACROSS


def _room(wheel: Wheel, view: View) -> float:
    """Return how wide the words beside a wheel's arrow may be: those of both wheels stand between them."""
    return abs(wheel.y) * view.scale - _APART


def _one_wheel(words: RollWording, wheel: Wheel, view: View, size: float) -> list[Item]:
    step = words.split_step
    left = wheel.y > 0
    side = "left" if left else "right"
    inner: Literal["left", "right"] = "right" if left else "left"
    assert view.newtons_per_mm is not None
    level = -wheel.standing * wheel.pressing / view.newtons_per_mm / view.scale
    reach = 3.2 / view.scale
    told = words.told(f"{wheel.name} z")
    lines = (*equation(_UPRIGHT, told, _room(wheel, view), size=size), words.gained(wheel))
    items: list[Item] = [
        Force(
            f"reaction-{wheel.name}",
            view.name,
            step,
            at=(wheel.y, 0.0),
            vector=(0.0, wheel.force.z),
            role="reaction",
            level=5,
        ),
        Line(
            f"standing-{wheel.name}",
            view.name,
            step,
            points=((wheel.y - reach, level), (wheel.y + reach, level)),
            style="outline",
            tone="ink",
            width=0.35,
            level=7,
        ),
        Note(
            f"label-{wheel.name}",
            view.name,
            step,
            label=Label(
                lines,
                inner,
                anchor=(wheel.y, -10.5 / view.scale),
                tone="reaction",
                size=size,
                nudge=(_INWARD if inner == "right" else -_INWARD, -0.5),
            ),
        ),
    ]
    if not words.nothing(wheel.force.y):
        name, at = f"reaction-{side}-{view.name}-across", (wheel.y, wheel.force.y)
        across = f"{{F|y}} = {words.told(f'{wheel.name} y')}"
        least = least_across((each.force.y for each in words.body.wheels), view)
        items.append(pushed_across(name, view, step, at, across, inner, words.tire / 2, size=2.2, least=least))
    return items


def pushed_across(
    name: str,
    view: View,
    step: int,
    at: tuple[float, float],
    told: str,
    aside: Literal["left", "right"],
    edge: float,
    *,
    size: float,
    least: float,
) -> Force:
    """Return what the road pushes a wheel or a side with across, `at` a place; its words above the road.

    They stand beside the tire, whose edge is so far from the place; an arrow shorter than the least is not to scale.
    """
    y, newtons = at
    way = 1.0 if aside == "left" else -1.0
    per_mm = view.newtons_per_mm or 1.0
    small = is_small(newtons, per_mm, least=least)
    reach = length(newtons, per_mm, least=least) if newtons * way > 0 else 0.0
    beside = max(edge * view.scale + 1.0 - reach, 0.0)
    to = RollWording.way(newtons)
    lines = (told, f"{to}, {NOT_TO_SCALE}" if small else f"to the {to}")
    above = _ABOVE_ROAD + 0.86 * size * len(lines)  # half of what they take
    label = Label(lines, aside, tone="reaction", size=size, nudge=(-way * beside, above))
    return Force(
        name,
        view.name,
        step,
        at=(y, 0.0),
        vector=(newtons, 0.0),
        role="reaction",
        tip_at_point=False,
        level=6,
        label=label,
        to_scale=not small,
    )

"""What a setup file changes, in words that a vehicle's owner reads: made from both setups, never typed."""

from collections.abc import Callable, Iterable

from markupsafe import Markup, escape

from hubwright.lessons.numbers import show
from hubwright.quantities import Quantity
from hubwright.results.changes import Change, changes_between
from hubwright.setup.model import Gear, Setup

_NOTHING = 1e-9


def changes_in_words(base: Setup, other: Setup) -> list[Markup]:
    """Return one phrase for each thing that differs and acts on loads or life; each begins with a small letter."""
    return [phrase for change in changes_between(base, other) for phrase in _phrases(change, base, other)]


def _phrases(change: Change, base: Setup, other: Setup) -> Iterable[Markup]:
    if change.kind == "gear":
        return [_gear(change.name, base, other)]
    return _WORDS[change.kind](base, other)


def _tire(base: Setup, other: Setup) -> list[Markup]:
    mine, theirs = base.tire, other.tire
    phrases = []
    if mine.size != theirs.size or abs(mine.free_diameter - theirs.free_diameter) > _NOTHING:
        phrases.append(
            Markup("tires {} in place of {}").format(
                theirs.size or show(Quantity(theirs.free_diameter, "m")),
                mine.size or show(Quantity(mine.free_diameter, "m")),
            )
        )
    if abs(theirs.mass - mine.mass) > _NOTHING:
        phrases.append(Markup("each tire {}").format(_heavier(theirs.mass - mine.mass)))
    return phrases or [Markup("other values for the tires")]


def _wheel(base: Setup, other: Setup) -> list[Markup]:
    mine, theirs = base.wheel, other.wheel
    phrases = []
    if abs(theirs.offset - mine.offset) > _NOTHING:
        phrases.append(
            Markup("wheels of {} offset in place of {}").format(
                show(Quantity(theirs.offset, "m")), show(Quantity(mine.offset, "m"))
            )
        )
    if abs(theirs.rim_width - mine.rim_width) > _NOTHING:
        phrases.append(
            Markup("rims {} wide in place of {}").format(
                show(Quantity(theirs.rim_width, "m")), show(Quantity(mine.rim_width, "m"))
            )
        )
    if abs(theirs.mass - mine.mass) > _NOTHING:
        phrases.append(Markup("each wheel {}").format(_heavier(theirs.mass - mine.mass)))
    return phrases


def _heavier(difference: float) -> Markup:
    return Markup("{} {}").format(show(Quantity(abs(difference), "kg")), "heavier" if difference > 0 else "lighter")


def _spacer(base: Setup, other: Setup) -> list[Markup]:
    mine, theirs = base.wheel.spacer, other.wheel.spacer
    if theirs <= 0:
        return [Markup("without the spacers of {}").format(show(Quantity(mine, "m")))]
    before = Markup(" in place of {}").format(show(Quantity(mine, "m"))) if mine > 0 else Markup("")
    return [Markup("spacers of {}{} between hub and wheel").format(show(Quantity(theirs, "m")), before)]


def _gear(name: str, base: Setup, other: Setup) -> Markup:
    plain = name.rpartition(" (")[0] or name
    here, there = (_named(name, setup) for setup in (base, other))
    words = escape(plain[:1].lower() + plain[1:] if plain[1:2].islower() else plain)
    if there is None or there.mass <= 0:
        return Markup("without {}").format(words)
    where = _where(there, other.kind)
    if here is None:
        return Markup("{}, {}, {}").format(words, show(Quantity(there.mass, "kg")), where)
    return Markup("{} changed: {}, {}").format(words, show(Quantity(there.mass, "kg")), where)


def _named(name: str, setup: Setup) -> Gear | None:
    """Return the item of that name; the second of two namesakes goes by its number."""
    seen: dict[str, int] = {}
    for item in setup.gear:
        seen[item.name] = seen.get(item.name, 0) + 1
        if name == (item.name if seen[item.name] == 1 else f"{item.name} ({seen[item.name]})"):
            return item
    return None


def _where(item: Gear, kind: str) -> Markup:
    axle = "the front axle" if kind == "vehicle" else "the axle"
    if abs(item.behind) < 0.005:
        along = Markup("over {}").format(axle)
    else:
        length = show(Quantity(abs(item.behind), "m", kind="vehicle length"))
        along = Markup("{} {} {}").format(length, "behind" if item.behind > 0 else "ahead of", axle)
    if abs(item.left_of_centre) < 0.005:
        return along
    aside = show(Quantity(abs(item.left_of_centre), "m", kind="vehicle length"))
    return Markup("{}, {} {} of the middle").format(along, aside, "left" if item.left_of_centre > 0 else "right")


def _chassis(base: Setup, other: Setup) -> list[Markup]:
    if base.chassis == other.chassis:  # the tires and wheels on it when it was weighed
        return [Markup("weighed on other tires or wheels")]
    return [
        Markup("other weights or dimensions of the {} itself").format(
            "trailer" if other.kind == "trailer" else "vehicle"
        )
    ]


_WORDS: dict[str, Callable[[Setup, Setup], list[Markup]]] = {
    "tire": _tire,
    "wheel": _wheel,
    "spacer": _spacer,
    "chassis": _chassis,
    "hub": lambda base, other: [Markup("another hub")],
    "bearing": lambda base, other: [Markup("another bearing")],
    "brake": lambda base, other: [Markup("another brake")],
    "duty": lambda base, other: [Markup("another mixture of cases to drive through")],
}

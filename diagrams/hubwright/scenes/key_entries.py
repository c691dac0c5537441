"""The entries of a key that depend on what a scene draws: the couples, and what stands still."""

from collections.abc import Iterable

from hubwright.scenes.vocabulary import Item, KeyEntry, Moment, Part

_ON_HUB = " on hub"  # ends the words at a couple that say whose it is


def moment_entries(
    items: Iterable[Item], *, load: str = "moment of a load", reaction: str = "moment of the bearing"
) -> tuple[KeyEntry, ...]:
    """Return an entry for the couples of loads and one for those of reactions, each only if it is drawn.

    Where words at the reactions say whose they are, as in "shaft on hub", the entry says so too.
    """
    couples = [item for item in items if isinstance(item, Moment) and item.newton_metres]
    answers = [item for item in couples if item.role == "reaction"]
    said = [item.label.lines[-1] for item in answers if item.label is not None and item.label.lines]
    takers = sorted({text.removesuffix(_ON_HUB) for text in said if text.endswith(_ON_HUB)})
    if takers:
        reaction = f"moment of the {takers[0]}" if len(takers) == 1 else f"moments of {' and '.join(takers)}"
    entries = (
        (bool(answers), KeyEntry("reaction moment", reaction)),
        (len(answers) < len(couples), KeyEntry("moment", load)),
    )
    return tuple(entry for drawn, entry in entries if drawn)


def standing_entries(items: Iterable[Item]) -> tuple[KeyEntry, ...]:
    """Return an entry for the parts that stand still, if any is drawn cut."""
    cut = any(isinstance(item, Part) and item.material.startswith("fixed") and item.hatch is not None for item in items)
    return (KeyEntry("fixed", "stands still"),) if cut else ()

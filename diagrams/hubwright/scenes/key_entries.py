"""The entries of a key that depend on what a scene draws: the couples."""

from collections.abc import Iterable

from hubwright.scenes.vocabulary import Item, KeyEntry, Moment


def moment_entries(
    items: Iterable[Item], *, load: str = "moment of a load", reaction: str = "moment of the bearing"
) -> tuple[KeyEntry, ...]:
    """Return an entry for the couples of loads and one for those of reactions, each only if it is drawn."""
    roles = {item.role == "reaction" for item in items if isinstance(item, Moment) and item.newton_metres}
    entries = ((True, KeyEntry("reaction moment", reaction)), (False, KeyEntry("moment", load)))
    return tuple(entry for answers, entry in entries if answers in roles)

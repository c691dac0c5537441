"""What a key of a setup file means, in the words of the table of keys."""

from functools import lru_cache
from typing import Literal

from hubwright.setup.keys import Key
from hubwright.setup.model import Setup
from hubwright.setup.schema import BEARINGS, CASE_TABLES, key_reference


@lru_cache
def _keys(kind: Literal["vehicle", "trailer"], bearing: str) -> dict[str, Key]:
    """Return every key by its dotted name; of the bearing those of its kind."""
    found = {entry.dotted: entry.key for entry in key_reference(kind) if entry.table != "bearing"}
    return found | {f"bearing.{name}": key for name, key in BEARINGS[bearing].keys().items()}


def key_of(setup: Setup, dotted: str) -> Key | None:
    """Return the key behind a dotted name of an input: "gear.1.mass" is the key "gear.mass"; None where it is none."""
    keys = _keys(setup.kind, setup.bearing.kind)
    table, _, rest = dotted.partition(".")
    name, _, last = rest.rpartition(".")
    if table == "case":  # the height of a ledge is not that of a fall; a case on "both" sides was made into two
        kinds = (case.kind for case in setup.cases if name in (case.name, case.name.rpartition(" ")[0]))
        of_kind = (CASE_TABLES[kind].keys().get(last) for kind in kinds)
        return next((key for key in of_kind if key), keys.get(f"case.{last}"))
    return keys.get(dotted) or keys.get(f"{table}.{last}")


def meaning(setup: Setup, dotted: str) -> str:
    """Return what an input says, in a few words: "height of the centre of mass above the road"."""
    table, _, rest = dotted.partition(".")
    name = rest.rpartition(".")[0]
    if table == "duty":
        return f"share of the distance: {name}"
    key = key_of(setup, dotted)
    words = key.meaning if key else dotted
    if table == "gear":
        return f"{setup.gear[int(name) - 1].name}: {words}"
    return f"{name}: {words}" if table == "case" else words


def short_meaning(setup: Setup, dotted: str) -> str:
    """Return what an input says without its explanation: "mass on the front axle"."""
    words = meaning(setup, dotted)
    if dotted.partition(".")[0] in ("gear", "case", "duty"):
        return words
    return words.partition(":")[0].partition(",")[0].partition(";")[0]

"""Reading a file with all that it extends into one merged document that still knows each key's line."""

from __future__ import annotations

import copy
import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from hubwright.errors import Problem, SetupErrors, SetupFileError
from hubwright.setup.lines import Path as KeyPath
from hubwright.setup.lines import key_lines
from hubwright.setup.schema import ALTERNATIVES

_TIRE_DIMENSIONS = ("size", "free_diameter", "section_width", "rim_diameter", "loaded_radius")
_AXLE_MASSES = ("front_axle_mass", "rear_axle_mass", "total_mass", "axle_mass", "coupling_mass")
_WITHIN_TABLES = ("gear", "case", "duty", "support", "load")


@dataclass(frozen=True, slots=True)
class Place:
    """Where a key was written."""

    file: str
    line: int | None
    path: Path | None = None


@dataclass(slots=True)
class Document:
    """Merged tables, the place of every key, and what the last file said itself."""

    name: str  # of the last file, as shown in messages
    stem: str
    data: dict[str, Any]
    places: dict[KeyPath, Place]
    own: frozenset[str] = frozenset()  # dotted keys that the last file gives itself
    path: Path | None = None
    base: Document | None = None
    files: tuple[Path, ...] = ()
    extends: tuple[str, ...] = ()
    weighed: Document | None = field(default=None)  # the state whose axle masses count; None: this one

    def place(self, path: KeyPath) -> Place:
        """Return where a key, or else the table around it, was written."""
        while path:
            if path in self.places:
                return self.places[path]
            path = path[:-1]
        return Place(self.name, None, self.path)

    def problem(self, path: KeyPath, *, needed: str, given: object = None, repair: str = "", key: str = "") -> Problem:
        """Return a problem with the key at this path."""
        place = self.place(path)
        return Problem(place.file, place.line, key or dotted(path), needed, given, repair, place.path)

    def get(self, key: str) -> object:
        """Return what was written for a dotted key of a plain table."""
        here: object = self.data
        for part in key.split("."):
            here = here.get(part) if isinstance(here, dict) else None
        return here

    @property
    def weighed_as_it_stands(self) -> bool:
        """Whether the last file gives axle masses of its own, or is the only one."""
        return self.weighed is None


def dotted(path: KeyPath) -> str:
    """Return a path as it is shown: entries of arrays count from 1."""
    return ".".join(str(part + 1) if isinstance(part, int) else part for part in path)


def read_document(path: Path) -> Document:
    """Return the merged document of a file and of all that it extends.

    Raises
    ------
    SetupFileError
        When the file cannot be read.
    SetupErrors
        When a file is no TOML, or a file that it extends is missing or extends it in turn.
    """
    return _read(path, ())


def document_from_text(text: str, name: str, *, beside: Path | None = None) -> Document:
    """Return the merged document of a text; what it extends is looked for from the folder `beside`."""
    data, lines = _parsed(text, name, None)
    return _extended(data, lines, name=name, path=None, folder=beside, children=())


def changed_document(base: Document, changes: Mapping[str, Any], *, name: str) -> Document:
    """Return a document with changes on top, by the rules of `extends`.

    Changes are dotted keys ("wheel.spacer") or nested tables, with values as in a file.
    """
    data: dict[str, Any] = {}
    for key, value in changes.items():
        here = data
        *tables, last = key.split(".")
        for table in tables:
            here = here.setdefault(table, {})
        if isinstance(value, Mapping) and isinstance(here.get(last), dict):
            here[last].update(copy.deepcopy(dict(value)))
        else:
            here[last] = copy.deepcopy(value)
    data, _ = _british(data, {})
    places = {path: Place(name, None) for path in _paths(data)}
    return _merged(base, Document(name, base.stem, data, places))


def _read(path: Path, children: tuple[Path, ...]) -> Document:
    try:
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        reason = "is not a text in UTF-8" if isinstance(error, UnicodeDecodeError) else (error.strerror or str(error))
        raise SetupFileError(f"{path}: cannot be read: {reason}") from None
    data, lines = _parsed(text, path.name, path)
    return _extended(data, lines, name=path.name, path=path, folder=path.parent, children=children)


def _extended(
    data: dict[str, Any],
    lines: dict[KeyPath, int],
    *,
    name: str,
    path: Path | None,
    folder: Path | None,
    children: tuple[Path, ...],
) -> Document:
    """Return the document of one file's data, merged onto what it extends."""
    places = {key: Place(name, line, path) for key, line in lines.items()}
    stem = name.removesuffix(".toml")
    own = Document(name, stem, data, places, _own_keys(data), path, files=(path,) if path else ())
    extends = data.pop("extends", None)
    if extends is None:
        return own
    line = ("extends",)
    if not isinstance(extends, str) or not extends.strip():
        raise SetupErrors(
            [own.problem(line, needed="the name of a file", given=extends, repair="Write it like 'hill-wagon'.")]
        )
    base_path = _base_path(own, extends.strip(), folder)
    trail = (*children, path.resolve()) if path else children
    if base_path.resolve() in trail:
        circle = " → ".join(file.stem for file in (*trail, base_path))
        raise SetupErrors(
            [
                own.problem(
                    line, needed="free of circles", given=extends, repair=f"The files extend each other: {circle}."
                )
            ]
        )
    return _merged(_read(base_path, trail), own)


def _base_path(own: Document, extends: str, folder: Path | None) -> Path:
    file = extends if extends.endswith(".toml") else f"{extends}.toml"
    looked = [] if folder is None else [folder / file, folder.parent / "vehicles" / file]
    if "/" in file or "\\" in file:
        looked = []
    for candidate in looked:
        # a setup may be named like its vehicle: it does not extend itself
        if candidate.is_file() and (own.path is None or candidate.resolve() != own.path.resolve()):
            return candidate
    if own.path is not None and own.path in looked:
        circle = f"The files extend each other: {own.stem} → {own.stem}."
        raise SetupErrors([own.problem(("extends",), needed="free of circles", given=extends, repair=circle)])
    where = (
        f"beside this file as '{file}' and as '../vehicles/{file}'"
        if looked
        else "nowhere: a name without folders is needed"
    )
    raise SetupErrors(
        [
            own.problem(
                ("extends",),
                needed="the name of a file that exists",
                given=extends,
                repair=f"It was looked for {where}.",
            )
        ]
    )


def _parsed(text: str, name: str, path: Path | None) -> tuple[dict[str, Any], dict[KeyPath, int]]:
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        message = str(error)
        found = re.search(r"\(at line (\d+)", message)
        lines = text.splitlines() or [""]
        line = int(found[1]) if found else len(lines)
        reason = re.sub(r"\s*\(at .*\)$", "", message)
        given = lines[min(line, len(lines)) - 1].strip()
        repair = f'{reason}. Texts and values with units stand in quotes: offset = "30 mm".'
        raise SetupErrors([Problem(name, line, "", "valid TOML", given, repair, path)]) from None
    except RecursionError:
        raise SetupErrors([Problem(name, None, "", "valid TOML", None, "Tables are nested too deep.", path)]) from None
    return _british(data, key_lines(text))


def _british(data: dict[str, Any], lines: dict[KeyPath, int]) -> tuple[dict[str, Any], dict[KeyPath, int]]:
    """Return data and lines with `center` in keys spelt `centre`; a key given both ways stays and is refused."""

    def renamed(value: Any) -> Any:
        if isinstance(value, dict):
            names = {key: _spelt(key) if _spelt(key) == key or _spelt(key) not in value else key for key in value}
            return {names[key]: renamed(part) for key, part in value.items()}
        return [renamed(part) for part in value] if isinstance(value, list) else value

    result: dict[str, Any] = {key: renamed(value) for key, value in data.items()}
    if "origin" in result and isinstance(result["origin"], dict):
        result["origin"] = {_spelt(key): value for key, value in result["origin"].items()}
    spelt: dict[KeyPath, int] = {}
    for path, line in lines.items():
        spelt.setdefault(tuple(_spelt(part) if isinstance(part, str) else part for part in path), line)
    return result, {**lines, **spelt}


def _spelt(key: str) -> str:
    return re.sub(r"(^|_|\.)center(?=_|$|\.)", r"\1centre", key)


def _own_keys(data: Mapping[str, Any]) -> frozenset[str]:
    return frozenset(dotted(path) for path in _paths(data))


def _paths(data: Mapping[str, Any], start: KeyPath = ()) -> list[KeyPath]:
    found: list[KeyPath] = []
    for key, value in data.items():
        path = (*start, key)
        found.append(path)
        if isinstance(value, Mapping):
            found += _paths(value, path)
        elif isinstance(value, list):
            for index, entry in enumerate(value):
                found.append((*path, index))
                if isinstance(entry, Mapping):
                    found += _paths(entry, (*path, index))
    return found


def _merged(base: Document, own: Document) -> Document:
    """Return the base with the keys of its extension: gear adds, cases and duty replace, the rest overwrites."""
    data = copy.deepcopy(base.data)
    places = dict(base.places)
    own_keys = _own_keys(own.data)
    _drop_replaced(data, own.data)
    for key, value in own.data.items():
        if key == "origin":
            continue
        here = data.get(key)
        if key == "gear" and isinstance(here, list) and isinstance(value, list):
            shift = len(here)
            here.extend(copy.deepcopy(value))
            _move(places, own.places, key, shift)
            continue
        if isinstance(here, dict) and isinstance(value, dict):
            here.update(copy.deepcopy(value))
        else:
            data[key] = copy.deepcopy(value)
            for path in [path for path in places if path[0] == key]:
                del places[path]
        places.update({path: place for path, place in own.places.items() if path[0] == key})
    _merge_origins(data, own, own_keys, places)
    return Document(
        own.name,
        own.stem,
        data,
        places,
        own_keys,
        own.path,
        base,
        (*own.files, *base.files),
        (base.stem, *base.extends),
        None if any(f"chassis.{mass}" in own_keys for mass in _AXLE_MASSES) else (base.weighed or base),
    )


def _move(places: dict[KeyPath, Place], own: Mapping[KeyPath, Place], key: str, shift: int) -> None:
    for path, place in own.items():
        if path[0] == key and len(path) > 1 and isinstance(path[1], int):
            places[(key, path[1] + shift, *path[2:])] = place


def _drop_replaced(data: dict[str, Any], own: Mapping[str, Any]) -> None:
    """Take out of the base what the extension says in another way."""
    tire, own_tire = data.get("tire"), own.get("tire")
    if isinstance(tire, dict) and isinstance(own_tire, dict) and {"size", "free_diameter"} & own_tire.keys():
        for key in _TIRE_DIMENSIONS:
            tire.pop(key, None)
    bearing, own_bearing = data.get("bearing"), own.get("bearing")
    if isinstance(bearing, dict) and isinstance(own_bearing, dict):
        kind = own_bearing.get("kind")
        if kind is not None and kind != bearing.get("kind", "two-row ball"):
            bearing.clear()
    for ways in ALTERNATIVES:
        given = [any(_has(own, key) for key in way) for way in ways]
        # a share alone refines a total mass, it does not replace axle masses
        leading = [_has(own, way[0]) or (len(way) == 2 and ways.index(way) == 0 and _has(own, way[1])) for way in ways]
        for way, is_given in zip(ways, given, strict=True):
            if not is_given and any(leading):
                for key in way:
                    _take(data, key)


def _merge_origins(data: dict[str, Any], own: Document, own_keys: frozenset[str], places: dict[KeyPath, Place]) -> None:
    origins = data.get("origin")
    flat = flat_origins(origins) if isinstance(origins, dict) else {}
    kept = {key: word for key, word in flat.items() if key not in own_keys and _exists(data, key)}
    new = own.data.get("origin")
    if isinstance(new, dict):
        kept.update(flat_origins(new))
    elif new is not None:
        data["origin"] = new
        return
    places.update({path: place for path, place in own.places.items() if path[0] == "origin"})
    if kept:
        data["origin"] = kept


def flat_origins(table: Mapping[str, Any], start: str = "") -> dict[str, Any]:
    """Return an [origin] table with dotted keys, however it was nested."""
    flat: dict[str, Any] = {}
    for key, value in table.items():
        name = f"{start}{key}"
        if isinstance(value, Mapping):
            flat.update(flat_origins(value, f"{name}."))
        else:
            flat[name] = value
    return flat


def _exists(data: Mapping[str, Any], key: str) -> bool:
    return _has(data, key) or key.split(".")[0] in _WITHIN_TABLES


def _has(data: Mapping[str, Any], key: str) -> bool:
    table, _, name = key.partition(".")
    here = data.get(table)
    return isinstance(here, Mapping) and name in here


def _take(data: dict[str, Any], key: str) -> None:
    table, _, name = key.partition(".")
    if isinstance(data.get(table), dict):
        data[table].pop(name, None)

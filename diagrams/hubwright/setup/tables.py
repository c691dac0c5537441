"""Reading the tables of a document through the schema: every key checked, every problem collected."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal, TypeVar

from pydantic import ValidationError

from hubwright.errors import Problem, QuantityError
from hubwright.setup import schema
from hubwright.setup.document import Document, flat_origins
from hubwright.setup.keys import Key, Table, nearest
from hubwright.setup.lines import Path as KeyPath

AnyTable = TypeVar("AnyTable", bound=Table)
_ORIGINS = ("given", "measured", "data sheet", "estimated")
_NEEDED_TABLES = ("chassis", "tire", "wheel")
_FILLED_TABLES = ("hub", "suspension")  # there is an estimate for each key
_LISTS = ("gear", "case", "duty")
_EVERY_TABLE: dict[str, type[Table]] = {
    **schema.TABLES["trailer"],
    **schema.TABLES["vehicle"],
    "bearing": schema.BallBearing,
}
_EVERY_KEY = {table: model.keys() for table, model in _EVERY_TABLE.items()}


@dataclass(slots=True)
class Findings:
    """The problems of one document, and the keys that could not be read."""

    document: Document
    problems: list[Problem] = field(default_factory=list)
    failed: set[str] = field(default_factory=set)

    def add(self, path: KeyPath, *, needed: str, given: object = None, repair: str = "", key: str = "") -> None:
        """Note a problem."""
        self.problems.append(self.document.problem(path, needed=needed, given=given, repair=repair, key=key))

    def ordered(self) -> list[Problem]:
        """Return the problems by file, this file first, and line."""
        files = [self.document.name, *(file.name for file in self.document.files)]
        return sorted(
            self.problems,
            key=lambda problem: (
                files.index(problem.file) if problem.file in files else len(files),
                problem.line or 0,
                problem.key,
            ),
        )


@dataclass(slots=True)
class Tables:
    """All tables of a vehicle or trailer as read; None where left out or unreadable."""

    kind: Literal["vehicle", "trailer"]
    head: schema.Head
    chassis: schema.VehicleChassis | schema.TrailerChassis
    tire: schema.Tire
    wheel: schema.Wheel
    hub: schema.Hub
    bearing: schema.BallBearing | schema.TaperedBearing
    suspension: schema.Suspension | None
    optional: dict[str, Table]  # brake, spindle, joint, steering, sealing, lubrication, limits
    gear: list[schema.VehicleGear | schema.TrailerGear]
    origins: dict[str, str]


def read_tables(findings: Findings) -> Tables:
    """Return the tables of a vehicle or trailer; problems go to the findings."""
    data = findings.document.data
    given_kind = data.get("kind", "vehicle")
    kind: Literal["vehicle", "trailer"] = "trailer" if str(given_kind).strip().casefold() == "trailer" else "vehicle"
    models = schema.TABLES[kind]
    valid = [*schema.Head.keys(), *models, "bearing", *_LISTS, "origin"]
    for key in data:
        if key not in valid:
            _refuse_unknown((key,), valid, findings, where="this file")
    head_data = {key: data[key] for key in data if key in schema.Head.keys()}  # noqa: SIM118  (a classmethod)
    head = read_table(schema.Head, head_data, (), findings)
    if kind == "trailer" and head.wheel_end is not None:
        findings.add(("wheel_end",), needed="left out for a trailer", given=head.wheel_end, repair="It has one axle.")
    read: dict[str, Table] = {}
    for name, model in models.items():
        if name in data and (data[name] != {} or name in (*_NEEDED_TABLES, *_FILLED_TABLES)):
            read[name] = read_table(model, data[name], (name,), findings)
        elif name in _NEEDED_TABLES:
            read[name] = read_table(model, {}, (name,), findings)
        elif name in _FILLED_TABLES and not (kind == "trailer" and name == "suspension"):
            read[name] = model()
    _check_alternatives(findings)
    bearing_data = data.get("bearing", {})
    bearing_kind = bearing_data.get("kind", "two-row ball") if isinstance(bearing_data, dict) else "two-row ball"
    bearing_model = schema.BEARINGS.get(" ".join(str(bearing_kind).split()).casefold(), schema.BallBearing)
    return Tables(
        kind=kind,
        head=head,
        chassis=read["chassis"],  # type: ignore[arg-type]  # the model of each name is that of schema.TABLES
        tire=read["tire"],  # type: ignore[arg-type]
        wheel=read["wheel"],  # type: ignore[arg-type]
        hub=read["hub"],  # type: ignore[arg-type]
        bearing=read_table(bearing_model, bearing_data, ("bearing",), findings),  # type: ignore[arg-type]
        suspension=read.get("suspension"),  # type: ignore[arg-type]
        optional={name: table for name, table in read.items() if name not in (*_NEEDED_TABLES, *_FILLED_TABLES)},
        gear=read_list(schema.GEAR[kind], "gear", findings),  # type: ignore[arg-type]
        origins=_origins(findings),
    )


def read_table(model: type[AnyTable], raw: object, path: KeyPath, findings: Findings) -> AnyTable:
    """Return a table as read; a key with a problem is noted and left out."""
    if not isinstance(raw, dict):
        name = path[0] if path else ""
        findings.add(path, needed="a table", given=raw, repair=f"Put its keys below a line {_brackets(path)}.")
        findings.failed.add(str(name))
        return model()
    keys = model.keys()
    good = dict(raw)
    try:
        table = model.model_validate(good)
    except ValidationError as errors:
        for error in errors.errors(include_url=False):
            name = str(error["loc"][0])
            good.pop(name, None)
            findings.failed.add(_dotted((*path, name)))
            cause = error.get("ctx", {}).get("error")
            if error["type"] == "extra_forbidden":
                _refuse_unknown((*path, name), list(keys), findings, where=_brackets(path) if path else "this file")
            elif isinstance(cause, QuantityError):
                findings.add((*path, name), needed=cause.needed, given=cause.given, repair=cause.repair)
            else:  # our keys raise nothing else
                findings.add((*path, name), needed=keys[name].phrase, given=raw[name], repair=keys[name].repair)
        table = model.model_validate(good)
    for name, key in keys.items():
        if key.required and name not in raw:
            _refuse_missing((*path, name), key, findings)
    return table


def read_list(model: type[AnyTable], name: str, findings: Findings) -> list[AnyTable]:
    """Return the entries of an array of tables as read."""
    raw = findings.document.data.get(name, [])
    if not isinstance(raw, list):
        findings.add((name,), needed="a list of tables", given=raw, repair=f"Begin each entry with a line [[{name}]].")
        findings.failed.add(name)
        return []
    return [read_table(model, entry, (name, index), findings) for index, entry in enumerate(raw)]


def _brackets(path: KeyPath) -> str:
    return f"[[{path[0]}]]" if len(path) > 1 else f"[{path[0]}]"


def _dotted(path: KeyPath) -> str:
    return ".".join(str(part) for part in path)


def _refuse_unknown(path: KeyPath, valid: list[str], findings: Findings, *, where: str) -> None:
    name = str(path[-1])
    findings.failed.add(_dotted(path))
    elsewhere = {key: table for table, keys in _EVERY_KEY.items() for key in keys if key not in valid}
    close = nearest(name, [*valid, *elsewhere])
    prefix = ".".join(str(part + 1) if isinstance(part, int) else part for part in path[:-1])
    if close is None:
        repair = f"Known there: {', '.join(sorted(valid))}."
    elif close in elsewhere:
        repair = f"Perhaps you meant '{close}' of [{elsewhere[close]}]."
    else:
        repair = f"Perhaps you meant '{prefix}.{close}'." if prefix else f"Perhaps you meant '{close}'."
    findings.add(path, needed=f"a key that {where} can hold", repair=repair)


def _lower(text: str) -> str:
    return text[:1].lower() + text[1:]


def _refuse_missing(path: KeyPath, key: Key, findings: Findings) -> None:
    name = _dotted(path)
    instead = ""
    for ways in schema.ALTERNATIVES:
        mine = next((way for way in ways if name in way), None)
        if mine is None:
            continue
        others = [way for way in ways if way is not mine]
        if any(findings.document.get(other) is not None for way in others for other in way):
            return
        if not any(findings.document.get(part) is not None for part in mine):
            instead = "".join(f", or '{way[0]}' instead" for way in others)
    findings.add(
        path,
        needed=f"given{instead}",
        repair=f"{key.repair} {'Where to find it: ' if key.find else ''}{_lower(key.find)}".strip(),
    )


def _check_alternatives(findings: Findings) -> None:
    document = findings.document
    for ways in schema.ALTERNATIVES:
        given = [[key for key in way if document.get(key) is not None] for way in ways]
        present = [keys for keys in given if keys]
        for keys in present[1:]:
            first = present[0][0]
            place = document.place(tuple(first.split(".")))
            findings.add(
                tuple(keys[0].split(".")),
                needed=f"left out where '{first}' is given{f' (line {place.line})' if place.line else ''}",
                given=document.get(keys[0]),
                repair="Both say the same: keep the one that was measured.",
            )
    for one, other in (
        ("chassis.front_share", "chassis.total_mass"),
        ("tire.free_diameter", "tire.section_width"),
        ("tire.section_width", "tire.free_diameter"),
    ):
        if document.get(one) is not None and document.get(other) is None and not _other_way(document, one):
            table, name = other.split(".")
            key = (schema.VehicleChassis if table == "chassis" else schema.Tire).keys()[name]
            findings.add((table, name), needed=f"given with '{one}'", repair=key.repair)


def _other_way(document: Document, key: str) -> bool:
    return any(
        document.get(other) is not None
        for ways in schema.ALTERNATIVES
        if any(key in way for way in ways)
        for way in ways
        if key not in way
        for other in way
    )


def _origins(findings: Findings) -> dict[str, str]:
    raw = findings.document.data.get("origin", {})
    if not isinstance(raw, dict):
        findings.add(("origin",), needed="a table", given=raw, repair="Put its keys below a line [origin].")
        return {}
    origins = {}
    for name, word in flat_origins(raw).items():
        if word in _ORIGINS:
            origins[name] = str(word)
        else:
            path: KeyPath = ("origin", name)
            if path not in findings.document.places:
                path = ("origin", *name.split("."))
            findings.add(
                path,
                key=f"origin.{name}",
                needed="'measured', 'data sheet' or 'estimated'",
                given=word,
                repair=f'Write it like "{name}" = "measured".',
            )
    return origins

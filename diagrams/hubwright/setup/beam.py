"""Reading a beam file: a beam alone, with supports and loads, for a student."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import Field

from hubwright.errors import SetupErrors
from hubwright.quantities import Measured
from hubwright.setup import model
from hubwright.setup.document import Document
from hubwright.setup.keys import POSITIVE, Key, Table, nearest
from hubwright.setup.lines import Path as KeyPath
from hubwright.setup.tables import Findings, read_list, read_table


class BeamHead(Table):
    """The keys above all tables."""

    name: Annotated[str | None, Key("what pages call this beam", example="Shelf", required=True)] = None
    kind: Annotated[str | None, Key("what it is", choices=("beam",), example="beam", required=True)] = None
    length: Annotated[
        Measured | None, Key("length of the beam", "length", POSITIVE, example="1.2 m", required=True)
    ] = None


class BeamSupport(Table):
    """[[support]]."""

    at: Annotated[Measured | None, Key("distance from the left end", "length", example="0.2 m", required=True)] = None
    type: Annotated[
        str | None, Key("kind of support", choices=("pin", "roller", "fixed"), example="pin", required=True)
    ] = None


class BeamLoad(Table):
    """[[load]]: `at` with `force` or `moment`, or `from`, `to` and `intensity`."""

    at: Annotated[Measured | None, Key("distance from the left end", "length", example="0.5 m")] = None
    force: Annotated[Measured | None, Key("force, upward positive", "force", example="-5 kN")] = None
    moment: Annotated[Measured | None, Key("couple, counterclockwise positive", "moment", example="200 N*m")] = None
    start: Annotated[
        Measured | None, Key("where the load begins, from the left end", "length", example="0.2 m"), Field(alias="from")
    ] = None
    to: Annotated[Measured | None, Key("where the load ends", "length", example="0.8 m")] = None
    intensity: Annotated[Measured | None, Key("force per length, upward positive", "intensity", example="-2 kN/m")] = (
        None
    )


class BeamSection(Table):
    """[section]."""

    youngs_modulus: Annotated[
        Measured | None, Key("Young's modulus", "pressure", POSITIVE, example="207 GPa", required=True)
    ] = None
    second_moment: Annotated[
        Measured | None, Key("second moment of area", "second_moment", POSITIVE, example="8 cm^4", required=True)
    ] = None


_LOADS: tuple[tuple[str, ...], ...] = (("at", "force"), ("at", "moment"), ("from", "to", "intensity"))


def build_beam(document: Document) -> model.Beam:
    """Return the beam that a document describes.

    Raises
    ------
    SetupErrors
        With every problem of the document.
    """
    findings = Findings(document)
    data = document.data
    valid = [*BeamHead.keys(), "support", "load", "section"]
    for key in data:
        if key not in valid:
            close = nearest(key, valid)
            repair = f"Perhaps you meant '{close}'." if close else f"Known there: {', '.join(sorted(valid))}."
            findings.add((key,), needed="a key that a beam file can hold", repair=repair)
    head = read_table(BeamHead, {key: data[key] for key in data if key in BeamHead.keys()}, (), findings)  # noqa: SIM118
    supports = read_list(BeamSupport, "support", findings)
    entries = read_list(BeamLoad, "load", findings)
    section = read_table(BeamSection, data["section"], ("section",), findings) if "section" in data else None
    for index, entry in enumerate(entries):
        _check_load(index, entry, findings)
    _check_places(head, supports, entries, findings)
    if not any(key.startswith("support") for key in findings.failed):
        _check_supports(supports, findings)
    if findings.problems:
        raise SetupErrors(findings.ordered())
    inputs: dict[str, model.Input] = {}

    def number(key: str, measured: Measured | None, unit: str) -> float:
        if measured is None:
            raise AssertionError(f"'{key}' was not given and nobody refused it")
        inputs[key] = model.Input(measured.value, unit, measured.low, measured.high)
        return measured.value

    return model.Beam(
        name=str(head.name),
        stem=document.stem,
        length=number("length", head.length, "m"),
        supports=tuple(
            model.Support(number(f"support.{index}.at", entry.at, "m"), entry.type)  # type: ignore[arg-type]  # a choice
            for index, entry in enumerate(supports, start=1)
        ),
        loads=tuple(_load(index, entry, number) for index, entry in enumerate(entries, start=1)),
        section=None
        if section is None
        else model.Section(
            number("section.youngs_modulus", section.youngs_modulus, "Pa"),
            number("section.second_moment", section.second_moment, "m^4"),
        ),
        inputs=inputs,
        files=document.files,
    )


def _load(index: int, entry: BeamLoad, number: Any) -> model.PointForce | model.PointMoment | model.DistributedLoad:
    start = f"load.{index}"
    if entry.intensity is not None:
        return model.DistributedLoad(
            number(f"{start}.from", entry.start, "m"),
            number(f"{start}.to", entry.to, "m"),
            number(f"{start}.intensity", entry.intensity, "N/m"),
        )
    at = number(f"{start}.at", entry.at, "m")
    if entry.force is not None:
        return model.PointForce(at, number(f"{start}.force", entry.force, "N"))
    return model.PointMoment(at, number(f"{start}.moment", entry.moment, "N*m"))


def _check_load(index: int, entry: BeamLoad, findings: Findings) -> None:
    raw = findings.document.data["load"][index]
    if not isinstance(raw, dict) or any(key.startswith(f"load.{index}.") for key in findings.failed):
        return
    if tuple(sorted(raw)) not in {tuple(sorted(way)) for way in _LOADS}:
        findings.add(
            ("load", index),
            needed="one load",
            given=", ".join(raw) or "nothing",
            repair="Give 'at' with 'force' or with 'moment', or 'from' and 'to' with 'intensity'.",
        )
    elif entry.start is not None and entry.to is not None and entry.start.value >= entry.to.value:
        findings.add(("load", index, "to"), needed="further along the beam than 'from'", given=raw["to"])


def _check_places(head: BeamHead, supports: list[BeamSupport], loads: list[BeamLoad], findings: Findings) -> None:
    if head.length is None:
        return
    places: list[tuple[KeyPath, Measured | None]] = [
        *((("support", index, "at"), entry.at) for index, entry in enumerate(supports)),
        *(
            (("load", index, key), entry.value_of(key))
            for index, entry in enumerate(loads)
            for key in ("at", "from", "to")
        ),
    ]
    for path, place in places:
        if place is not None and not -1e-12 <= place.value <= head.length.value * (1 + 1e-12):
            written = findings.document.data[str(path[0])][path[1]][path[2]]
            findings.add(path, needed=f"on the beam, from 0 to {head.length.value:.6g} m", given=written)


def _check_supports(supports: list[BeamSupport], findings: Findings) -> None:
    places = [entry.at.value for entry in supports if entry.at is not None]
    for index, place in enumerate(places):
        if place in places[:index]:
            findings.add(
                ("support", index, "at"),
                needed="at a place of its own",
                given=findings.document.data["support"][index]["at"],
            )
    if not any(entry.type == "fixed" for entry in supports) and len(supports) < 2:
        findings.add(
            ("support",),
            needed="one fixed support, or two supports",
            given=len(supports),
            repair="With fewer the beam falls or turns over.",
        )

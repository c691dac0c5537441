"""Load cases and duties of a file: read, checked, "both" made into two, named duties looked up."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Any, Literal

from hubwright.quantities import Measured
from hubwright.setup import schema
from hubwright.setup.keys import nearest
from hubwright.setup.lines import Path as KeyPath
from hubwright.setup.model import (
    Braking,
    Case,
    Cornering,
    Driving,
    Drop,
    DutyShare,
    Input,
    Ledge,
    Side,
    SideSlope,
    Standing,
    TwoWheel,
)
from hubwright.setup.tables import Findings, read_list, read_table

STANDING = Standing("standing", "standing")
_SHARES_TOLERANCE = 1e-6
_UNITS = {"angle": "rad", "height": "m"}


@dataclass(frozen=True, slots=True)
class CasesAndDuty:
    """Cases with "standing" first, the duty over them, and the inputs that they hold."""

    cases: tuple[Case, ...]
    duty: tuple[DutyShare, ...]
    duty_name: str | None
    inputs: dict[str, Input]


@cache
def named_duties() -> dict[str, list[dict[str, Any]]]:
    """Return the duties that can be named, each with its cases and shares as a file would write them."""
    text = resources.files("hubwright.setup").joinpath("named_duties.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def read_cases(findings: Findings, *, kind: Literal["vehicle", "trailer"]) -> CasesAndDuty:
    """Return the cases and the duty of a document; problems go to the findings."""
    data = findings.document.data
    inputs: dict[str, Input] = {}
    cases: list[Case] = [STANDING]
    raw = data.get("case", [])
    if isinstance(raw, list):
        for index, entry in enumerate(raw):
            cases += _read_case(entry, ("case", index), findings, inputs)
    else:
        findings.add(("case",), needed="a list of tables", given=raw, repair="Begin each entry with a line [[case]].")
    _refuse_doubles(findings, raw)
    if kind == "trailer":
        _refuse_for_trailer(cases, findings)
    duty = data.get("duty")
    if isinstance(duty, str):
        return _named_duty(duty, cases, findings, inputs)
    shares = _read_duty(cases, findings, inputs) if duty is not None else ()
    return CasesAndDuty(tuple(cases), shares, None, inputs)


def _read_case(entry: object, path: KeyPath, findings: Findings, inputs: dict[str, Input]) -> list[Case]:
    raw_kind = entry.get("kind") if isinstance(entry, dict) else None
    model = schema.CASE_TABLES.get(str(raw_kind).strip().casefold())
    if model is None:
        # only name and kind can be judged without knowing the kind
        known = {key: entry[key] for key in ("name", "kind") if key in entry} if isinstance(entry, dict) else entry
        read_table(schema.StandingCase, known, path, findings)
        return []
    before = len(findings.problems)
    table = read_table(model, entry, path, findings)
    if len(findings.problems) > before:
        return []
    return _cases_of(table, inputs)


def _cases_of(table: schema.StandingCase, inputs: dict[str, Input], note: str = "") -> list[Case]:
    """Return one case, or two where a side is "both"."""
    name, kind = str(table.name), table.kind
    for key, value in ((key, table.value_of(key)) for key in type(table).keys()):  # noqa: SIM118
        if isinstance(value, Measured):
            inputs[f"case.{name}.{key}"] = Input(
                value.value, _UNITS.get(key, "1"), value.low, value.high, "estimated" if note else "given", note
            )

    def number(key: str) -> float:
        value: Measured = table.value_of(key)
        return value.value

    if kind == "standing":
        return [] if name == "standing" else [Standing(name, name)]
    if kind == "braking":
        return [Braking(name, name, number("braking_g"))]
    if kind == "driving":
        return [Driving(name, name, number("driving_g"), table.value_of("driven"))]
    if kind == "two_wheel":
        return [TwoWheel(name, name, table.value_of("supported"))]
    if kind == "ledge":
        return [Ledge(name, name, number("height"))]
    if kind == "drop":
        return [Drop(name, name, number("height"))]
    side: Side | Literal["both"] = table.value_of("toward" if kind == "cornering" else "uphill") or "both"
    sides: tuple[Side, ...] = ("left", "right") if side == "both" else (side,)
    names = [f"{name} {one}" if side == "both" else name for one in sides]
    if kind == "cornering":
        return [Cornering(one, name, number("lateral_g"), way) for one, way in zip(names, sides, strict=True)]
    return [SideSlope(one, name, number("angle"), way) for one, way in zip(names, sides, strict=True)]


def _refuse_doubles(findings: Findings, raw: object) -> None:
    seen: dict[str, int | None] = {}
    for index, entry in enumerate(raw if isinstance(raw, list) else []):
        if not isinstance(entry, dict) or not isinstance(entry.get("name"), str):
            continue
        name = entry["name"].strip()
        names = [name]
        side = {"cornering": "toward", "side_slope": "uphill"}.get(str(entry.get("kind")))
        if side and entry.get(side, "both") == "both":
            names = [f"{name} left", f"{name} right"]
        path: KeyPath = ("case", index, "name")
        if name == "standing" and entry.get("kind") != "standing":
            findings.add(
                path, needed="another name", given=name, repair="'standing' is always there and stands for itself."
            )
        if "duty" in names:
            findings.add(
                path,
                needed="another name",
                given=name,
                repair="'duty' is what all cases of a duty are called together.",
            )
        double = next((one for one in (*names, name) if one in seen), None)
        if double:
            line = seen[double]
            findings.add(
                path,
                needed="a name of its own",
                given=name,
                repair=f"'{double}' is taken{f' in line {line}' if line else ''}.",
            )
        line = findings.document.place(path).line
        seen.update(dict.fromkeys((*names, name), line))


def _refuse_for_trailer(cases: list[Case], findings: Findings) -> None:
    # a drop without [suspension] lacks data and is not wrong: solving leaves that case out and says why
    reasons = {
        "driving": "A trailer drives no wheel.",
        "two_wheel": "A trailer has no second axle to stand on.",
    }
    raw = findings.document.data.get("case")
    for index, entry in enumerate(raw if isinstance(raw, list) else []):
        kind = entry.get("kind") if isinstance(entry, dict) else None
        if kind in reasons and any(case.declared == entry.get("name") for case in cases):
            findings.add(
                ("case", index, "kind"), needed="a case that a trailer can have", given=kind, repair=reasons[kind]
            )


def _named_duty(duty: str, cases: list[Case], findings: Findings, inputs: dict[str, Input]) -> CasesAndDuty:
    duties = named_duties()
    name = " ".join(duty.split()).casefold()
    if name not in duties:
        close = nearest(name, duties)
        known = ", ".join(f"'{one}'" for one in duties)
        repair = f"Perhaps you meant '{close}'. " if close else ""
        findings.add(
            ("duty",), needed="a named duty", given=duty, repair=f"{repair}Known: {known}; or write [[duty]] tables."
        )
        return CasesAndDuty(tuple(cases), (), None, inputs)
    shares: list[DutyShare] = []
    for entry in duties[name]:
        own = [case for case in cases if case.declared == entry["name"] or case.name == entry["name"]]
        if not own:
            values = {key: value for key, value in entry.items() if key != "share"}
            table = schema.CASE_TABLES[entry["kind"]].model_validate(values)
            own = _cases_of(table, inputs, note=f"of the invented duty '{name}'")
            cases = [*cases, *own]
        share = float(entry["share"])
        inputs[f"duty.{entry['name']}.share"] = Input(
            share, "1", None, None, "estimated", f"of the invented duty '{name}'"
        )
        shares += [DutyShare(case.name, share / len(own)) for case in own]
    return CasesAndDuty(tuple(cases), tuple(shares), name, inputs)


def _read_duty(cases: list[Case], findings: Findings, inputs: dict[str, Input]) -> tuple[DutyShare, ...]:
    raw = findings.document.data["duty"]
    raw_cases = findings.document.data.get("case")
    # a case that could not be read is a problem already: do not call it unknown as well
    unread = {
        str(entry.get("name")).strip()
        for entry in (raw_cases if isinstance(raw_cases, list) else [])
        if isinstance(entry, dict)
    }
    entries = read_list(schema.DutyEntry, "duty", findings)
    readable = isinstance(raw, list) and all(entry.share is not None for entry in entries)
    shares: list[DutyShare] = []
    for index, entry in enumerate(entries):
        if entry.case is None or entry.share is None:
            continue
        path: KeyPath = ("duty", index, "case")
        named = [case for case in cases if case.name == entry.case]
        named = named or [case for case in cases if case.declared == entry.case]
        if not named and entry.case not in unread:
            known = [*dict.fromkeys(name for case in cases for name in (case.declared, case.name))]
            close = nearest(entry.case, known)
            hint = f"Perhaps you meant '{close}'." if close else f"Known: {', '.join(known)}."
            own = findings.document.name
            if findings.document.place(path).file != own and "case" in findings.document.own:
                hint = f"{own} replaces all cases: repeat this one there, or give it [[duty]] tables of its own."
            findings.add(path, needed="the name of a case of this file", given=entry.case, repair=hint)
        if any(isinstance(case, Drop) for case in named):
            findings.add(
                path,
                needed="no drop",
                given=entry.case,
                repair="A drop dents rather than wears: it has no share of a distance.",
            )
        if any(share.case == case.name for case in named for share in shares):
            findings.add(path, needed="named once", given=entry.case, repair="Add the shares together.")
        inputs[f"duty.{entry.case}.share"] = Input(entry.share.value, "1", entry.share.low, entry.share.high)
        shares += [DutyShare(case.name, entry.share.value / len(named)) for case in named]
    total = sum(entry.share.value for entry in entries if entry.share is not None)
    if readable and abs(total - 1) > _SHARES_TOLERANCE:
        findings.add(
            ("duty",),
            key="duty.share",
            needed="shares of distance that sum to 1",
            given=float(f"{total:.6g}"),
            repair=f"{'Take away' if total > 1 else 'Add'} {abs(1 - total):.6g}.",
        )
    return tuple(shares)

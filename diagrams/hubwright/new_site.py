"""Starts a site about somebody's own vehicle: at most ten questions, then a small complete site that builds at once."""

import re
import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from string import Template

from hubwright.errors import HubwrightError, QuantityError
from hubwright.places import data_directory
from hubwright.quantities import DimensionName, parse

UNKNOWN = "don't know"


class SiteExistsError(HubwrightError, FileExistsError):
    """A directory that holds something already; nothing in it was touched."""


@dataclass(frozen=True)
class Question:
    """One thing that an owner can find out, and where."""

    key: str  # dotted key of the vehicle file
    text: str
    where: str
    example: str
    dimension: DimensionName | None  # None: words, or a size code
    needed: bool
    demonstration: str

    def problem(self, answer: str) -> str | None:
        """Return what is wrong with an answer, None when it can be used."""
        if answer == UNKNOWN:
            return f"this one cannot be estimated. {self.where}" if self.needed else None
        if not answer:
            return f"write it like {self.example}" + ("" if self.needed else f", or {UNKNOWN}")
        if self.dimension is not None and not (self.key == "wheel.offset" and answer.upper().startswith("ET")):
            try:
                parse(answer, self.dimension)
            except QuantityError as error:
                return str(error)
        return None


_NAME = Question(
    "name", "What do you call it?", "Any name that your readers know it by.", "Hill wagon", None, True, "Hill wagon"
)
_TIRE = Question(
    "tire.size", "Tire size", "On the sidewall, such as 245/75R16 or 33x12.50R15.", "245/75R16", None, True, "245/75R16"
)
_RIM = Question(
    "wheel.rim_width",
    "Rim width between the bead seats",
    "Cast or stamped into the wheel: the first number of a code such as 7Jx16.",
    "7 in",
    "length",
    True,
    "7 in",
)
_OFFSET = Question(
    "wheel.offset",
    "Offset of the wheel (mounting face outboard of the rim's centreline is positive)",
    "Cast or stamped into the wheel as ET with a number in millimetres.",
    "ET30 or 30 mm",
    "length",
    True,
    "30 mm",
)
_HEIGHT = Question(
    "chassis.overall_height",
    "Overall height, for an estimate of where the centre of mass lies",
    "A tape or the owner's papers. Never lift an axle to find it.",
    "1.75 m",
    "length",
    False,
    "1.77 m",
)

_FACE = Question(
    "hub.face_to_bearing_centre",
    "Hub's mounting face, outboard of the middle between the bearing's rows",
    "A supplier's drawing, or a replacement unit in the hand, with the brake disc in place if it lies between flange "
    "and wheel. Never dismantle a hub for it.",
    "42 mm",
    "length",
    False,
    "42 mm",
)

VEHICLE: tuple[Question, ...] = (
    _NAME,
    Question(
        "chassis.front_axle_mass",
        "Mass on the front axle, ready to drive",
        "A public scale, front wheels alone on it, driver aboard.",
        "1120 kg or 2470 lb",
        "mass",
        False,
        "1120 kg",
    ),
    Question(
        "chassis.rear_axle_mass",
        "Mass on the rear axle, ready to drive",
        "The same scale, rear wheels alone on it.",
        "1010 kg or 2230 lb",
        "mass",
        False,
        "1010 kg",
    ),
    Question(
        "chassis.total_mass",
        "Mass of the whole vehicle, ready to drive",
        "A public scale, or the owner's papers plus driver and load.",
        "2130 kg or 4700 lb",
        "mass",
        True,
        "2130 kg",
    ),
    Question(
        "chassis.wheelbase",
        "Wheelbase, from front to rear wheel centre",
        "The owner's papers, or a tape along the ground.",
        "2.78 m or 109 in",
        "length",
        True,
        "2.78 m",
    ),
    Question(
        "chassis.front_track",
        "Front track, from tread middle to tread middle",
        "The owner's papers, or a tape across the front tires.",
        "1.60 m or 63 in",
        "length",
        True,
        "1.60 m",
    ),
    _TIRE,
    _RIM,
    _OFFSET,
    _HEIGHT,
    _FACE,
)  # fmt: skip


def questions(answers: Mapping[str, str]) -> tuple[Question, ...]:
    """Return what to ask, given what was answered so far: the whole mass only where an axle is not known."""
    axles = [answers.get(f"chassis.{axle}_axle_mass") for axle in ("front", "rear")]
    whole_needed = UNKNOWN in axles
    return tuple(
        question
        for question in VEHICLE
        if not (question.key == "chassis.total_mass" and not whole_needed)
        and not (question.key == "chassis.rear_axle_mass" and axles[0] == UNKNOWN)
    )


def demonstration_answers() -> dict[str, str]:
    """Return the answers of the demonstration's wagon."""
    answers: dict[str, str] = {}
    for question in questions(answers):
        answers[question.key] = question.demonstration
    return answers


def refuse_existing(directory: Path) -> None:
    """Refuse a directory that holds anything, so that nothing is ever overwritten."""
    if directory.exists() and (not directory.is_dir() or any(directory.iterdir())):
        raise SiteExistsError(f"{directory}: there is something here already; choose a new directory")


def write_site(directory: Path, answers: Mapping[str, str]) -> list[Path]:
    """Write a complete site about the vehicle of the answers; return the files that are the owner's to edit.

    Nothing that exists is overwritten: a directory that holds anything is refused.
    """
    from hubwright.setup import load_text

    refuse_existing(directory)
    name = answers["name"].strip()
    stem = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-") or "vehicle"
    vehicle = vehicle_file(answers)
    load_text(vehicle, f"{stem}.toml")  # refuses what no vehicle can be, before anything is written

    demonstration = data_directory("content")
    templates = demonstration / "new_site"
    words = {"name": name, "stem": stem}
    written: dict[Path, str] = {
        directory / "content" / "vehicles" / f"{stem}.toml": vehicle,
        directory / "content" / "setups" / f"{stem}-with-spacers.toml": _filled(templates / "with-spacers.toml", words),
        directory / "mkdocs.yml": _filled(templates / "mkdocs.yml", words),
        directory / "content" / "index.md": (templates / "index.md").read_text(encoding="utf-8"),
    }
    for path, text in written.items():
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="\n")
    for shared in ("lessons", "practice", "beams"):
        shutil.copytree(demonstration / shared, directory / "content" / shared)
    for shared in ("sources.toml", "glossary.toml", "glossary.md", "find-your-numbers.md"):
        shutil.copy(demonstration / shared, directory / "content" / shared)
    return list(written)


def vehicle_file(answers: Mapping[str, str]) -> str:
    """Return the text of a vehicle file with the answers, and what was not known as a remark where it belongs."""
    lines = [f"name = {_quoted(answers['name'].strip())}", ""]
    table = ""
    asked = sorted(
        VEHICLE[1:], key=lambda question: ("chassis", "tire", "wheel", "hub").index(question.key.split(".")[0])
    )
    for question in asked:
        answer = answers.get(question.key)
        if answer is None:
            continue
        head, key = question.key.split(".")
        if head != table:
            lines += [*([""] if table else []), f"[{head}]"]
            table = head
        remark = f"  # {question.text[0].lower()}{question.text[1:]}"
        if answer == UNKNOWN:
            lines.append(
                f"# {key} = {_quoted(question.example)}  # not known yet, so it is estimated. {question.where}"
            )
        else:
            lines.append(f"{key} = {_quoted(answer)}{remark}")
    return "\n".join(lines) + "\n"


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _filled(template: Path, words: Mapping[str, str]) -> str:
    return Template(template.read_text(encoding="utf-8")).substitute(words)

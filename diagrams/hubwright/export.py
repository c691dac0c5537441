"""Writes any figure of a file, whole or step by step, in any form: what `hubwright export` does."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Literal, get_args

from hubwright.drawing import Theme, draw, frames, pdf, png, svg_file
from hubwright.drawing.marks import Drawing
from hubwright.drawing.snippet import snippet
from hubwright.errors import ChoiceError
from hubwright.results.beams import BeamResults, solve_beam
from hubwright.results.model import Results, Wheel
from hubwright.results.solve import check_wheel, solve
from hubwright.scenes.catalogue import FIGURES, Figure, scene_function
from hubwright.scenes.vocabulary import Scene, Step, Units
from hubwright.setup import Beam, load

Form = Literal["svg", "outlined", "pdf", "png", "html"]
Sheet = Literal["light", "dark", "transparent"]
ALL = "all"
FILM: tuple[int, int] = (1920, 1080)
_SMALLEST, _LARGEST = 320, 16_384  # pixels of a side
_SUFFIX: dict[Form, str] = {"svg": "svg", "outlined": "svg", "pdf": "pdf", "png": "png", "html": "html"}
_NEEDS = {
    "beam": "a beam file",
    "results": "a vehicle or setup file",
    "two results": "two files (FILE and --against)",
    "data": "a series",
}


@dataclass(frozen=True, slots=True)
class Wish:
    """How figures are to be written."""

    form: Form = "svg"
    size: tuple[int, int] | None = None  # pixels; none: the sheet's own size, or that of a film for steps
    steps: bool = False
    title: bool = True
    sheet: Sheet = "light"


@dataclass(frozen=True, slots=True)
class Pair:
    """A solved setup and the one that it is compared against, with others for a figure that takes more."""

    first: Results
    second: Results
    more: tuple[Results, ...] = ()


def export(
    file: Path,
    *,
    figure: str,
    case: str | None,
    wheel: str | None,
    units: Units,
    wish: Wish,
    out: Path,
    against: Sequence[Path] = (),
) -> tuple[list[Path], list[str]]:
    """Write a figure, or all that the file can show, and return the files and what was left out.

    A figure of two setups shows this file and then the one that it is compared `against`; some take more of those.
    Raises `ChoiceError` for a figure or case that there is not, and whatever reading and solving the file raises.
    """
    if wish.form == "html" and wish.size is not None:
        reason = "a snippet is as wide as the page it stands on; leave --size out, or choose another --form"
        raise ChoiceError(what="size", given="html", known=(), reason=reason)
    solved = _solved(file, wheel)
    others = [_solved(other, wheel) for other in against]
    scenes, left_out = _scenes(_pair(solved, *others) if others else solved, figure, case, units)
    out.mkdir(parents=True, exist_ok=True)
    written: list[Path] = []
    for scene, words in scenes:
        name = "-".join(part for part in (file.stem, scene.name, words, units) if part)
        name += "" if wish.sheet == "light" else f"-{wish.sheet}"
        written += _write(scene, out, re.sub(r"[^A-Za-z0-9_-]+", "-", name), wish)
    return written, left_out


def read_size(text: str) -> tuple[int, int]:
    """Return the width and height that a text such as "1920x1080" says, in pixels."""
    found = re.fullmatch(r"\s*(\d+)\s*[x×*]\s*(\d+)\s*", text)
    size = (int(found[1]), int(found[2])) if found else (0, 0)
    if not all(_SMALLEST <= side <= _LARGEST for side in size):
        raise ChoiceError(
            what="size",
            given=text,
            known=(),
            reason=f"'{text}' is no size; write width x height in pixels, {_SMALLEST} to {_LARGEST}, such as 1920x1080",
        )
    return size


def _solved(file: Path, wheel: str | None) -> Results | BeamResults:
    thing = load(file)
    if isinstance(thing, Beam):
        return solve_beam(thing)
    if wheel is not None:
        check_wheel(thing, wheel)
    return solve(thing, next((known for known in get_args(Wheel) if known == wheel), None))


def _pair(*solved: Results | BeamResults) -> Pair:
    setups = [each for each in solved if isinstance(each, Results)]
    if len(setups) < len(solved):
        raise ChoiceError(what="file", given="", known=(), reason="--against compares two setups, not beams")
    first, second, *more = setups
    return Pair(first, second, tuple(more))


def _scenes(
    solved: Results | BeamResults | Pair, figure: str, case: str | None, units: Units
) -> tuple[list[tuple[Scene, str]], list[str]]:
    """Return the scenes asked for, each with the case that it shows, and why others are left out."""
    first = solved.first if isinstance(solved, Pair) else solved
    if isinstance(first, Results) and case is not None and case not in first.cases:
        reason = first.left_out.get(case, "")
        raise ChoiceError(what="case", given=case, known=() if reason else first.cases, reason=reason)
    if figure != ALL:
        name = _figure_name(figure)
        return [_scene(solved, name, FIGURES[name], case, units)], []
    scenes, left_out = [], []
    for name, entry in FIGURES.items():
        try:
            scenes.append(_scene(solved, name, entry, case, units))
        except ChoiceError as error:
            if error.what == "case":  # one that needs another sort of file is not missed
                left_out.append(str(error))
    return scenes, left_out


def _figure_name(given: str) -> str:
    """Return the name of a figure, also from a spelling such as "side-view"."""
    wanted = re.sub(r"[\s_-]+", " ", given.strip().casefold())
    for name in FIGURES:
        if wanted == re.sub(r"[\s_-]+", " ", name.casefold()):
            return name
    raise ChoiceError(what="figure", given=given, known=(*FIGURES, ALL))


def _scene(
    solved: Results | BeamResults | Pair, name: str, entry: Figure, case: str | None, units: Units
) -> tuple[Scene, str]:
    takes = "beam" if isinstance(solved, BeamResults) else "two results" if isinstance(solved, Pair) else "results"
    if entry.takes != takes:
        reason = f"the figure '{name}' is drawn from {_NEEDS[entry.takes]}, not from {_NEEDS[takes]}"
        raise ChoiceError(what="figure", given=name, known=(), reason=reason)
    if isinstance(solved, BeamResults):
        return scene_function(name)(solved, units=units), ""
    if isinstance(solved, Pair):
        if solved.more and not entry.takes_more:
            reason = f"the figure '{name}' is drawn from {_NEEDS[entry.takes]}: name one file with --against"
            raise ChoiceError(what="figure", given=name, known=(), reason=reason)
        others = [entry.cases(each) for each in (solved.second, *solved.more)]
        possible = [each for each in entry.cases(solved.first) if all(each in cases for cases in others)]
    else:
        possible = entry.cases(solved)
    if not possible:
        kinds = " or ".join(entry.kinds or ()).replace("_", " ")
        wanted = [f"a case of {kinds}"] if kinds else []
        wanted += [f"'{key}'" for key in entry.needs]
        wanted += ["dimensions of the bearing's rows"] if entry.needs_life else []
        lack = " and ".join(wanted)
        reason = f"the figure '{name}' needs {lack}, which the file does not give"
        raise ChoiceError(what="case", given=case or "", known=(), reason=reason)
    if case is not None and case not in possible:
        reason = f"the figure '{name}' cannot show the case '{case}'"
        raise ChoiceError(what="case", given=case, known=possible, reason=reason)
    shown = case or possible[0]
    results = (solved.first, solved.second, *solved.more) if isinstance(solved, Pair) else (solved,)
    return scene_function(name)(*results, case=shown, units=units), shown


def _write(scene: Scene, out: Path, name: str, wish: Wish) -> Iterator[Path]:
    """Write the pictures of a scene one by one."""
    size = wish.size or (FILM if wish.steps else None)
    whole = size is None or wish.form == "html"
    drawn: tuple[Drawing, ...] = (
        _on_sheet(scene, steps=wish.steps)
        if whole
        else frames(scene, size=size or FILM, title=wish.title, steps=wish.steps)
    )
    for number, drawing in enumerate(drawn, 1):
        stem = f"{name}-step-{number}" if wish.steps else name
        if not whole and size is not None:
            stem += f"-{size[0]}x{size[1]}"
        path = out / f"{stem}{'-outlined' if wish.form == 'outlined' else ''}.{_SUFFIX[wish.form]}"
        step = scene.steps[number - 1] if wish.steps and number <= len(scene.steps) else None
        _write_one(drawing, path, wish, size=None if whole else size, step=step)
        yield path


def _on_sheet(scene: Scene, *, steps: bool) -> tuple[Drawing, ...]:
    drawing = draw(scene)
    return tuple(drawing.up_to(layer.step) for layer in drawing.layers) if steps else (drawing,)


def _write_one(drawing: Drawing, path: Path, wish: Wish, *, size: tuple[int, int] | None, step: Step | None) -> None:
    title = wish.title and size is None  # a frame carries its own
    theme: Theme = "print" if wish.form == "pdf" and wish.sheet == "light" and size is None else wish.sheet
    if wish.form == "png":
        png(drawing, path, width_px=size[0] if size else FILM[0], theme=theme, title=title)
    elif wish.form == "pdf":
        pdf(drawing, path, theme=theme, title=title)
    elif wish.form == "html":
        path.write_text(snippet(drawing, prefix=path.stem, theme=theme, title=title, step=step), encoding="utf-8")
    else:
        text = svg_file(drawing, theme=theme, outlined=wish.form == "outlined", title=title, pixels=size)
        path.write_text(text, encoding="utf-8")

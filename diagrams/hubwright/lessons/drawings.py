"""Drawings of scenes for pages: each distinct one drawn once, and kept for the next build."""

import hashlib
import json
from dataclasses import asdict, dataclass
from pathlib import Path

from hubwright import __version__
from hubwright.scenes.vocabulary import Scene

ID = "FIGURE"  # every id of a drawing begins with it, where a page puts its own


@dataclass(frozen=True, slots=True)
class Letter:
    """A letter in a ring on a narrow drawing, what it stands for and the step in which it appears."""

    letter: str
    lines: tuple[str, ...]
    step: int


@dataclass(frozen=True, slots=True)
class Drawn:
    """A scene as SVG: one wide drawing, and narrow ones with the key to their letters."""

    wide: str
    narrow: tuple[str, ...] = ()
    key: tuple[Letter, ...] = ()


class Drawings:
    """Draws scenes, each distinct one once, and keeps the drawings in a directory for the next build."""

    def __init__(self, directory: Path | None) -> None:
        """Keep drawings in a directory, or for this build only."""
        self.directory = directory
        self._drawn: dict[str, Drawn] = {}
        self._code = ""

    def drawn(self, scene: Scene) -> Drawn:
        """Return the drawings of a scene."""
        key = self.key(scene)
        if key not in self._drawn:
            file = self.directory / f"{key}.json" if self.directory else None
            self._drawn[key] = (_read(file) if file else None) or draw(scene)
            if file and not file.is_file():
                _write(file, self._drawn[key])
        return self._drawn[key]

    def key(self, *parts: object) -> str:
        """Return the name under which a drawing of a scene, and of whatever else goes into it, is kept."""
        text = "\n".join([__version__, self._drawing_code(), *map(repr, parts)])
        return hashlib.sha256(text.encode()).hexdigest()[:32]

    def _drawing_code(self) -> str:
        """Return a mark of the drawing code, so that a changed pen draws anew."""
        if not self._code:
            import hubwright.drawing

            code = sorted(Path(hubwright.drawing.__file__).parent.rglob("*.py"))
            self._code = hashlib.sha256(b"".join(file.read_bytes() for file in code)).hexdigest()
        return self._code


class Undrawn(Drawings):
    """Draws nothing: for checking a site, which needs the scenes and not their pictures."""

    def __init__(self) -> None:
        """Keep nothing."""
        super().__init__(None)

    def drawn(self, scene: Scene) -> Drawn:
        """Return empty drawings."""
        return Drawn("")


def draw(scene: Scene) -> Drawn:
    """Return the drawings of a scene."""
    from hubwright import drawing  # matplotlib's metrics are slow to load, and checking a site draws nothing

    narrow = drawing.draw(scene, form="narrow")
    return Drawn(
        wide=drawing.svg_for_page(drawing.draw(scene), prefix=ID, units_class=scene.units),
        narrow=tuple(
            drawing.svg_for_page(one, prefix=f"{ID}-n{n}", units_class=scene.units) for n, one in enumerate(narrow, 1)
        ),
        key=tuple(Letter(entry.letter, entry.lines, entry.step) for one in narrow for entry in one.balloons),
    )


def _read(file: Path) -> Drawn | None:
    """Return the drawings kept in a file; a file that cannot be used is drawn again."""
    try:
        kept = json.loads(file.read_text(encoding="utf-8"))
        key = tuple(Letter(entry["letter"], tuple(entry["lines"]), entry["step"]) for entry in kept["key"])
        return Drawn(kept["wide"], tuple(kept["narrow"]), key)
    except (OSError, ValueError, LookupError, TypeError):
        return None


def _write(file: Path, drawn: Drawn) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    fresh = file.with_suffix(".new")  # swapped in whole, so that a build cut short leaves no half file
    fresh.write_text(json.dumps(asdict(drawn), ensure_ascii=False), encoding="utf-8")
    fresh.replace(file)

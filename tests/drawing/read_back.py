"""Reads figures back from the written SVG alone, as someone with a ruler would; imports nothing of hubwright."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from xml.etree import ElementTree

NUMBER = r"-?\d+(?:\.\d+)?"


@dataclass
class ReadGroup:
    """A named group with its data, the view that it lies in and the points of its paths, in user units."""

    name: str
    data: dict[str, str]
    view: dict[str, str]
    step: int
    paths: list[list[tuple[float, float]]] = field(default_factory=list)
    words: list[str] = field(default_factory=list)

    def length(self) -> float:
        x1, y1, x2, y2 = (float(self.data[f"data-{key}"]) for key in ("x1", "y1", "x2", "y2"))
        return float(((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5)

    def extent_along(self) -> float:
        """Return how far the paths of the group reach along the line from first to second end."""
        x1, y1, x2, y2 = (float(self.data[f"data-{key}"]) for key in ("x1", "y1", "x2", "y2"))
        length = self.length()
        along = [((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / length for path in self.paths for x, y in path]
        return max(along) - min(along)


@dataclass
class ReadFigure:
    """A figure as read from its file."""

    mm_per_unit: float
    layers: list[str]
    groups: list[ReadGroup]
    ids: list[str]

    def of(self, *prefixes: str) -> Iterator[ReadGroup]:
        return (group for group in self.groups if group.name.startswith(prefixes))


def local(tag: str) -> str:
    return tag.rsplit("}", 1)[-1]


def read(svg: str) -> ReadFigure:
    root = ElementTree.fromstring(svg)
    layers = [child for child in root if (child.get("data-name") or "").startswith("step-")]
    groups: list[ReadGroup] = []
    for layer in layers:
        step = int((layer.get("data-name") or "").removeprefix("step-"))
        for view in layer:
            for element in view:
                group = ReadGroup(element.get("data-name") or "", dict(element.attrib), dict(view.attrib), step)
                for inner in element.iter():
                    # the paper-coloured edge under an arrow is no part of it
                    if local(inner.tag) == "path" and "paper" not in (inner.get("class") or "").replace(
                        "f-paper s-r", ""
                    ):
                        group.paths.append(points(inner.get("d") or ""))
                    if local(inner.tag) == "text":
                        group.words.append("".join(inner.itertext()))
                groups.append(group)
    ids = [element.get("id") or "" for element in root.iter() if element.get("id")]
    return ReadFigure(
        float(root.get("data-mm-per-unit") or 0), [layer.get("data-name") or "" for layer in layers], groups, ids
    )


def points(path: str) -> list[tuple[float, float]]:
    return [(float(x), float(y)) for x, y in re.findall(rf"({NUMBER}),({NUMBER})", path)]

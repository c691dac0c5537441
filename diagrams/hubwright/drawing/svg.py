"""The writer of SVG: inline for pages (colours by class, text as text) and self-contained files (colours resolved).

One user unit is a tenth of a sheet millimetre, so that two decimals are finer than any printer. An own writer, because
groups carry names, data and classes, which matplotlib's cannot, and because it is some ten times faster
(`benchmarks/drawing.py`).
"""

from __future__ import annotations

import base64
import re
from collections.abc import Sequence
from xml.etree import ElementTree as ET

import numpy as np

from hubwright.drawing.faces import Face, plain, web_font_file
from hubwright.drawing.geometry import Array, rounded_box
from hubwright.drawing.heading import Heading, heading
from hubwright.drawing.marks import FRAME_RADIUS, Disc, Drawing, Group, Lettering, Mark, Shape, flat
from hubwright.drawing.outlines import outline
from hubwright.drawing.palette import FACE_RULES, Theme, colours
from hubwright.drawing.paths import short_paths

UNIT = 0.1  # sheet millimetres per user unit
_PER_MM = 1 / UNIT
_UNSEEN = 0.25  # user units: a bend that nobody sees
_FAMILY: dict[Face, tuple[str, dict[str, str]]] = {
    "lettering": ("Hub Lettering", {}),
    "narrow": ("Hub Lettering Narrow", {}),
    "serif": ("Hub Schola", {}),
    "bold": ("Hub Schola", {"font-weight": "700"}),
    "symbol": ("Hub Schola", {"font-style": "italic"}),
    "mathematics": ("Hub Schola Math", {}),
}
_CLASS_OF: dict[str, str] = {**{face: face for face in FACE_RULES}, "mathematics": "serif"}


def svg_for_page(drawing: Drawing, *, prefix: str, units_class: str) -> str:
    """Return a figure as inline SVG: classes for colours and faces, ids under a prefix, a title and a description.

    The rules for its classes are `palette.css()`; `units_class` ("si", "us") lets the page show one of two twins.
    """
    writer = _Writer(drawing, prefix=prefix)
    root = writer.root(height=drawing.size[1])
    root.set("class", f"hub-figure {units_class}".strip())
    writer.body(root)
    return _text_of(root)


def svg_in_place(drawing: Drawing, *, prefix: str, theme: Theme = "light") -> str:
    """Return a figure as inline SVG for any page: resolved colours, its faces within it, ids under a prefix."""
    writer = _Writer(drawing, prefix=prefix, palette=colours(theme))
    root = writer.root(height=drawing.size[1])
    root.set("id", prefix)
    root.set("width", "100%")
    ET.SubElement(root, "style").text = _font_faces(writer.faces_of(None), within=f"#{prefix} ")
    writer.ground(root, theme, drawing.size)
    writer.body(root)
    return _text_of(root)


def svg_file(
    drawing: Drawing,
    *,
    theme: Theme = "light",
    outlined: bool = False,
    title: bool = True,
    pixels: tuple[int, int] | None = None,
) -> str:
    """Return a figure as a file that stands alone: resolved colours, its faces within it, or its text as outlines.

    It is as large as its sheet, or as a picture of so many pixels.
    """
    head = heading(drawing.scene, drawing.size[0]) if title else None
    writer = _Writer(drawing, prefix="", palette=colours(theme), outlined=outlined)
    total = drawing.size[1] + (head.height if head else 0.0)
    root = writer.root(height=total)
    wide, high = (f"{drawing.size[0]:g}mm", f"{total:g}mm") if pixels is None else map(str, pixels)
    root.set("width", wide)
    root.set("height", high)
    if not outlined:
        style = ET.SubElement(root, "style")
        style.text = _font_faces(writer.faces_of(head))
    writer.ground(root, theme, (drawing.size[0], total))
    if head:
        writer.heading(root, head, total)
    writer.body(root)
    return '<?xml version="1.0" encoding="UTF-8"?>\n' + _text_of(root) + "\n"


class _Writer:
    """Marks to elements, with y turned to run down from the top of the drawing area."""

    def __init__(
        self, drawing: Drawing, *, prefix: str, palette: dict[str, str] | None = None, outlined: bool = False
    ) -> None:
        self.drawing = drawing
        self.prefix = f"{prefix}-" if prefix else ""
        self.palette = palette or {}
        self.by_class = palette is None
        self.outlined = outlined
        self.top = drawing.size[1]
        self._ids: set[str] = set()
        self._short: dict[tuple[int, bool], str] = {}

    def root(self, *, height: float) -> ET.Element:
        """Return the root with its scale, title and description."""
        width = self.drawing.size[0]
        self.top = height
        root = ET.Element(
            "svg",
            {
                "xmlns": "http://www.w3.org/2000/svg",
                "viewBox": f"0 0 {_number(width * _PER_MM)} {_number(height * _PER_MM)}",
                "role": "img",
                "aria-labelledby": f"{self.prefix}title {self.prefix}desc",
                "data-mm-per-unit": f"{UNIT:g}",
                "data-figure": self.drawing.scene.name,
                "fill": "none",
                "stroke-linecap": "round",
                "stroke-linejoin": "round",
            },
        )
        ET.SubElement(root, "title", {"id": f"{self.prefix}title"}).text = plain(self.drawing.scene.title)
        ET.SubElement(root, "desc", {"id": f"{self.prefix}desc"}).text = plain(self.drawing.scene.description)
        if self.drawing.frames:
            definitions = ET.SubElement(root, "defs")
            for name, frame in self.drawing.frames.items():
                (short,) = short_paths([((rounded_box(frame, FRAME_RADIUS),), True)], self._turned, unseen=_UNSEEN)
                clip = ET.SubElement(definitions, "clipPath", {"id": self._clip_id(name)})
                ET.SubElement(clip, "path", {"d": short})
        return root

    def ground(self, root: ET.Element, theme: Theme, size: tuple[float, float]) -> None:
        """Write the paper, unless what lies below is to show."""
        if theme != "transparent":
            box = {"width": _number(size[0] * _PER_MM), "height": _number(size[1] * _PER_MM)}
            ET.SubElement(root, "rect", {**box, "fill": self.palette["paper"]})

    def body(self, root: ET.Element) -> None:
        """Write the layers, then the strip at the foot."""
        self._short = self._short_paths()
        for layer in self.drawing.layers:
            name = f"step-{layer.step}"
            element = ET.SubElement(root, "g", {**self._named(name), "class": f"layer {name}"})
            for view in layer.views:
                data = {f"data-{key}": value for key, value in view.data}
                within = ET.SubElement(element, "g", {"data-name": f"view-{view.view}", "data-view": view.view, **data})
                for group in view.children:
                    self.group(within, group)
        if self.drawing.foot:
            foot = ET.SubElement(root, "g", self._named("foot"))
            for group in self.drawing.foot:
                self.group(foot, group)

    def heading(self, root: ET.Element, head: Heading, total: float) -> None:
        """Write title and caption above the drawing."""
        element = ET.SubElement(root, "g", self._named("heading"))
        for lettering in head.lines(total):
            self.mark(element, lettering)

    def faces_of(self, head: Heading | None) -> set[Face]:
        """Return the faces that the text of the drawing uses, and its heading if it has one."""
        marks = flat([*self.drawing.groups(), *self.drawing.foot, *(head.lines(0.0) if head else [])])
        return {run.face for mark in marks if isinstance(mark, Lettering) for run in mark.text.runs}

    def group(self, parent: ET.Element, group: Group) -> None:
        """Write a named group with its data; end points are user units, tail first."""
        attributes = self._named(group.name)
        for key, value in group.data:
            attributes[f"data-{key}"] = value
        if group.ends is not None:
            x1, y1, x2, y2 = group.ends
            ends = (x1 * _PER_MM, (self.top - y1) * _PER_MM, x2 * _PER_MM, (self.top - y2) * _PER_MM)
            for key, number in zip(("x1", "y1", "x2", "y2"), ends, strict=True):
                attributes[f"data-{key}"] = _number(number, 4)
        if group.centre is not None:
            attributes["data-cx"] = _number(group.centre[0] * _PER_MM, 4)
            attributes["data-cy"] = _number((self.top - group.centre[1]) * _PER_MM, 4)
        if group.clip is not None:
            attributes["clip-path"] = f"url(#{self._clip_id(group.clip)})"
        element = ET.SubElement(parent, "g", attributes)
        for child in group.children:
            self.mark(element, child)

    def mark(self, parent: ET.Element, mark: Mark) -> None:
        """Write one mark."""
        if isinstance(mark, Group):
            self.group(parent, mark)
        elif isinstance(mark, Shape):
            self._shape(parent, mark)
        elif isinstance(mark, Disc):
            self._disc(parent, mark)
        else:
            self._lettering(parent, mark)

    def _shape(self, parent: ET.Element, shape: Shape) -> None:
        if not shape.rings:
            return
        attributes = {"d": self._path(shape.rings, closed=shape.closed, exact=shape.exact)}
        self._paint(attributes, shape.fill, shape.line, shape.width)
        if shape.fill and len(shape.rings) > 1:
            attributes["fill-rule"] = "evenodd"
        if shape.line:
            if shape.dashes:
                attributes["stroke-dasharray"] = " ".join(_number(dash * _PER_MM) for dash in shape.dashes)
            if shape.cap == "butt":
                attributes["stroke-linecap"] = "butt"
            if shape.mitred:
                attributes["stroke-linejoin"] = "miter"
        ET.SubElement(parent, "path", attributes)

    def _disc(self, parent: ET.Element, disc: Disc) -> None:
        attributes = {
            "cx": _number(disc.centre[0] * _PER_MM),
            "cy": _number((self.top - disc.centre[1]) * _PER_MM),
            "r": _number(disc.radius * _PER_MM),
        }
        self._paint(attributes, disc.fill, disc.line, disc.width)
        ET.SubElement(parent, "circle", attributes)

    def _lettering(self, parent: ET.Element, lettering: Lettering) -> None:
        x, y = lettering.at[0] * _PER_MM, (self.top - lettering.at[1]) * _PER_MM
        if self.outlined:
            rings, attributes = outline(lettering), {}
            if lettering.halo:
                attributes = {"d": rings.path(self.top, _PER_MM), "stroke": self.palette["paper"], "fill": "none"}
                attributes["stroke-width"] = _number(lettering.halo * _PER_MM)
                ET.SubElement(parent, "path", attributes)
            ET.SubElement(parent, "path", {"d": rings.path(self.top, _PER_MM), "fill": self.palette[lettering.colour]})
            return
        attributes = {"x": _number(x), "y": _number(y)}
        self._paint(attributes, lettering.colour, None, 0.0)
        if lettering.rotation:
            attributes["transform"] = f"rotate({-lettering.rotation:g} {_number(x)} {_number(y)})"
        if lettering.halo:
            attributes["stroke-width"] = _number(lettering.halo * _PER_MM)
            if self.by_class:
                attributes["class"] += " s-paper halo"
            else:
                attributes |= {"stroke": self.palette["paper"], "paint-order": "stroke"}
        runs = lettering.text.runs
        text = ET.SubElement(parent, "text", attributes)
        if len(runs) == 1 and runs[0].rise == 0:
            self._face(text, runs[0].face, runs[0].em)
            text.text = runs[0].text
            return
        text.set("xml:space", "preserve")
        level = 0.0
        for run in runs:
            span = ET.SubElement(text, "tspan")
            self._face(span, run.face, run.em)
            if run.rise != level:
                span.set("dy", _number((level - run.rise) * _PER_MM))
                level = run.rise
            span.text = run.text

    def _face(self, element: ET.Element, face: Face, em: float) -> None:
        element.set("font-size", _number(em * _PER_MM))
        if self.by_class:
            element.set("class", f"{element.get('class', '')} t-{_CLASS_OF[face]}".strip())
            return
        family, more = _FAMILY[face]
        element.set("font-family", f"'{family}', {'sans-serif' if 'Lettering' in family else 'serif'}")
        for key, value in more.items():
            element.set(key, value)

    def _paint(self, attributes: dict[str, str], fill: str | None, line: str | None, width: float) -> None:
        if self.by_class:
            classes = [f"f-{fill}"] if fill else []
            classes += [f"s-{line}"] if line else []
            if classes:
                attributes["class"] = " ".join(classes)
        else:
            if fill:
                attributes["fill"] = self.palette[fill]
            if line:
                attributes["stroke"] = self.palette[line]
        if line:
            attributes["stroke-width"] = _number(width * _PER_MM)

    def _path(self, rings: Sequence[Array], *, closed: bool, exact: bool) -> str:
        """Return rings as path data: to the letter where a ruler reads them, else as short as the eye allows."""
        if not exact:
            return self._short[id(rings), closed]
        points = np.concatenate(rings) if len(rings) > 1 else rings[0]
        numbers = [f"{x:g},{y:g}" for x, y in np.round(self._turned(points), 2).tolist()]
        end, pieces, first = "Z" if closed else "", [], 0
        for ring in rings:
            last = first + len(ring)
            pieces.append(f"M{'L'.join(numbers[first:last])}{end}")
            first = last
        return "".join(pieces)

    def _short_paths(self) -> dict[tuple[int, bool], str]:
        """Return the path data of all that no ruler reads, by its rings: a filling and its outline share theirs."""
        marks = flat([*self.drawing.groups(), *self.drawing.foot])
        shapes = [mark for mark in marks if isinstance(mark, Shape) and mark.rings and not mark.exact]
        kept = {(id(shape.rings), shape.closed): (shape.rings, shape.closed) for shape in shapes}
        return dict(zip(kept, short_paths(list(kept.values()), self._turned, unseen=_UNSEEN), strict=True))

    def _turned(self, points: Array) -> Array:
        turned: Array = (points * (1.0, -1.0) + (0.0, self.top)) * _PER_MM + 0.0
        return turned

    def _named(self, name: str) -> dict[str, str]:
        slug = re.sub(r"[^A-Za-z0-9_-]+", "-", name)
        identity, count = f"{self.prefix}{slug}", 1
        while identity in self._ids:
            count += 1
            identity = f"{self.prefix}{slug}-{count}"
        self._ids.add(identity)
        return {"id": identity, "data-name": name}

    def _clip_id(self, view: str) -> str:
        return f"{self.prefix}clip-{re.sub(r'[^A-Za-z0-9_-]+', '-', view)}"


def _number(value: float, places: int = 2) -> str:
    text = f"{value:.{places}f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _text_of(root: ET.Element) -> str:
    return ET.tostring(root, encoding="unicode", short_empty_elements=True)


def _font_faces(faces: set[Face], *, within: str = "") -> str:
    rules = []
    for face in sorted(faces):
        family, more = _FAMILY[face]
        data = base64.b64encode(web_font_file(face).read_bytes()).decode("ascii")
        extra = "".join(f"{key}:{value};" for key, value in more.items())
        source = f"url(data:font/woff2;base64,{data}) format('woff2')"
        rules.append(f"@font-face{{font-family:'{family}';{extra}src:{source}}}")
    return "\n".join(rules) + f"\n{within}text{{white-space:pre}}"

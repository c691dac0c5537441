"""What must hold of every written figure, read from its SVG: words, leaders, arrows and dimensions on the sheet.

Sheet millimetres, y down from the top as in the file. Widths of words are measured with the shipped faces.
"""

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import combinations, pairwise
from xml.etree import ElementTree

from hubwright.drawing import svg_for_page
from hubwright.drawing.faces import Face, advance, covers
from hubwright.drawing.marks import Drawing
from hubwright.scenes.vocabulary import NOT_TO_SCALE

Box = tuple[float, float, float, float]
Segment = tuple[float, float, float, float]
TOUCH = 0.3  # mm that boxes of words may share: their corners hold no ink
SCALE = 0.005  # how far a length may be off what it stands for
_TURNED = 0.1  # degrees that an angle may be off
_STEP = 0.003  # mm: what the file's decimals leave open at the ends of a short arrow
_CAP, _DROP = 0.722, 0.217  # of the em: height of capitals, depth of descenders
_PATH = re.compile(r"([MLHVZmlhvz])|(-?(?:\d+\.?\d*|\.\d+)(?:e-?\d+)?)")
_TURN = re.compile(r"rotate\((-?[\d.]+)")
_ARROWS = ("force-", "reaction-", "moment-")
_NEAR = 0.4  # mm between a leader and where another one ends: the radius of its dot
_ALONG = 3.0  # mm for which a leader may run beside an arrow or a load line, nearer than _NEAR
# what words stand on by no means, by how the names of its groups begin
_KEPT_CLEAR = {
    **dict.fromkeys(_ARROWS, "an arrow"),
    "dimension-": "a dimension",
    "edge-": "a frame",
    "point-": "a point",
    "spring-": "a spring",
    "damper-": "a damper",
    "support-": "a support",
    "bar-": "a bar",
    "part-beam": "a beam",
}
# groups whose lines anything is asked of: those of parts, most of them, are not read
_MEASURED = (*_KEPT_CLEAR, "label-", "line-load-line")
_LENGTHS = {"data-newtons", "data-mm", "data-degrees", "data-value"}
_FACES: tuple[Face, ...] = ("lettering", "narrow", "serif", "bold", "symbol")


@dataclass(frozen=True)
class Failure:
    """Something that must not be in a figure: its class, and the groups that it befalls."""

    kind: str
    where: str


@dataclass
class _Group:
    name: str
    data: dict[str, str]
    scales: dict[str, str]
    words: list[Box] = field(default_factory=list)
    strokes: list[list[tuple[float, float]]] = field(default_factory=list)  # lines that are not filled
    outlines: list[list[tuple[float, float]]] = field(default_factory=list)  # of what is filled
    inked: list[tuple[float, float]] = field(default_factory=list)
    rings: list[Box] = field(default_factory=list)
    discs: list[Box] = field(default_factory=list)
    texts: list[str] = field(default_factory=list)

    @property
    def pieces(self) -> list[Segment]:
        """Return the straight pieces of everything that is inked."""
        return [(*a, *b) for line in (*self.strokes, *self.outlines) for a, b in pairwise(line)]

    @property
    def is_force(self) -> bool:
        return self.name.startswith(("force-", "reaction-"))


def wrong_with(drawing: Drawing) -> list[Failure]:
    """Return what a ruler and an eye would object to in a drawing as pages carry it."""
    return failures_of(svg_for_page(drawing, prefix="f", units_class="si"))


def failures_of(svg: str) -> list[Failure]:
    """Return what a ruler and an eye would object to in a written figure."""
    unit, (width, height), groups = _written(svg)
    found = [*_words(groups, (0.0, 0.0, width, height)), *_leaders(groups)]
    for group in groups:
        found += _lengths(group, unit, (width, height))
        found += _bar(group, unit)
        found += _angle(group, unit)
    return [*found, *_off_scale(groups)]


def arrows_crossed(svg: str) -> int:
    """Return how many leaders cross an arrow that is not their own: legible, but the fewer the better."""
    _, _, groups = _written(svg)
    arrows = [(group.name, group.pieces) for group in groups if group.is_force]
    count = 0
    for group in groups:
        if group.name.startswith("label-"):
            owner = group.name.removeprefix("label-")
            mine = (owner, *(prefix + owner for prefix in _ARROWS))
            leader = [(*a, *b) for stroke in group.strokes for a, b in pairwise(stroke)]
            crossed = (any(_cross(a, b) for a in leader for b in inked) for name, inked in arrows if name not in mine)
            count += any(crossed)
    return count


def counted(svg: str) -> tuple[int, int]:
    """Return how many arrows and dimensions of a figure a ruler or a protractor can check."""
    return svg.count('data-newtons="'), svg.count('data-mm="') + svg.count('data-degrees="')


@lru_cache(maxsize=1)  # several questions are asked of one figure
def _written(svg: str) -> tuple[float, tuple[float, float], list[_Group]]:
    """Return millimetres per unit, the size of the sheet, and what is drawn."""
    root = ElementTree.fromstring(svg)
    unit = float(root.attrib["data-mm-per-unit"])
    width, height = (float(number) * unit for number in root.attrib["viewBox"].split()[2:])
    return unit, (width, height), list(_groups(root, unit))


def _groups(root: ElementTree.Element, unit: float) -> Iterator[_Group]:
    for layer in root:
        if layer.get("data-name") == "foot":
            yield from (_read(element, {}, unit) for element in layer)
        elif (layer.get("data-name") or "").startswith("step-"):
            for view in layer:
                yield from (_read(element, dict(view.attrib), unit) for element in view)


def _read(element: ElementTree.Element, scales: dict[str, str], unit: float) -> _Group:
    group = _Group(element.get("data-name") or "", dict(element.attrib), scales)
    measured = group.name.startswith(_MEASURED) or not _LENGTHS.isdisjoint(element.attrib)
    for mark in element.iter():
        tag, classes = mark.tag.rsplit("}", 1)[-1], (mark.get("class") or "").split()
        if tag == "text":
            group.words.append(_text_box(mark, unit))
            group.texts.append("".join(mark.itertext()))
        elif tag == "circle":
            x, y, r = (float(mark.get(key) or 0) * unit for key in ("cx", "cy", "r"))
            group.discs.append((x - r, y - r, x + r, y + r))
            if "f-paper" in classes:
                group.rings.append(group.discs[-1])
        elif tag == "path" and measured:
            lines = list(_polylines(mark.get("d") or "", unit))
            filled = any(name.startswith("f-") for name in classes)
            if "s-paper" in classes:
                continue  # the edge that keeps a line clear of what it crosses
            group.inked += [point for points in lines for point in points]
            (group.outlines if filled else group.strokes).extend(lines)
            if filled and "f-paper" in classes and group.name.startswith("label-"):  # the frame of a remark
                group.rings += [_around(points) for points in lines]
    return group


def _polylines(path: str, unit: float) -> Iterator[list[tuple[float, float]]]:
    """Yield the straight lines of path data: absolute or relative moves, lines, levels and uprights."""
    tokens = _PATH.findall(path)
    command, x, y, i = "M", 0.0, 0.0, 0
    points: list[tuple[float, float]] = []
    while i < len(tokens):
        if tokens[i][0]:
            command, i = tokens[i][0], i + 1
            if command in "Zz":
                points.append(points[0])
                x, y = points[0][0] / unit, points[0][1] / unit
            continue
        first = float(tokens[i][1])
        base = (x, y) if command.islower() else (0.0, 0.0)
        if command in "Hh":
            x, i = base[0] + first, i + 1
        elif command in "Vv":
            y, i = base[1] + first, i + 1
        else:
            x, y, i = base[0] + first, base[1] + float(tokens[i + 1][1]), i + 2
        if command in "Mm":
            if len(points) > 1:
                yield points
            points = []
            command = "l" if command == "m" else "L"
        points.append((x * unit, y * unit))
    if len(points) > 1:
        yield points


def _text_box(text: ElementTree.Element, unit: float) -> Box:
    """Return the upright box around a line of words, level or turned."""
    runs = [(text.text or "", text.attrib), *((span.text or "", span.attrib) for span in text)]
    width, size = 0.0, 0.0
    for words, attributes in runs:
        if words:
            em = float(attributes.get("font-size") or text.get("font-size") or 0) * unit
            width += sum(advance(piece, face) for piece, face in _in_faces(words, attributes.get("class", ""))) * em
            size = max(size, em)
    x, y = float(text.get("x") or 0) * unit, float(text.get("y") or 0) * unit
    turned = _TURN.search(text.get("transform") or "")
    angle = math.radians(float(turned[1])) if turned else 0.0
    corners = [(0.0, _DROP * size), (width, _DROP * size), (0.0, -_CAP * size), (width, -_CAP * size)]
    xs = [x + a * math.cos(angle) - b * math.sin(angle) for a, b in corners]
    ys = [y + a * math.sin(angle) + b * math.cos(angle) for a, b in corners]
    return min(xs), min(ys), max(xs), max(ys)


def _in_faces(words: str, classes: str) -> Iterator[tuple[str, Face]]:
    """Yield words with their face; a character that it lacks comes from the next of its list, as in a browser."""
    wished = next((face for face in _FACES if f"t-{face}" in classes.split()), "lettering")
    pieces: list[tuple[str, Face]] = []
    for character in words:
        held: tuple[Face, ...] = (wished, "serif", "mathematics")
        face = next((one for one in held if covers(one, character)), wished)
        if pieces and pieces[-1][1] == face:
            pieces[-1] = (pieces[-1][0] + character, face)
        else:
            pieces.append((character, face))
    yield from pieces


def _words(groups: list[_Group], sheet: Box) -> Iterator[Failure]:
    texts = [(group, box) for group in groups for box in (*group.words, *_balloons(group))]
    for group, box in texts:
        if box[0] < 0 or box[1] < 0 or box[2] > sheet[2] or box[3] > sheet[3]:
            yield Failure("words leave the frame", group.name)
    for (first, box), (second, other) in combinations(texts, 2):
        if first is not second and _share(box, other):
            yield Failure("words overlap", f"{first.name} / {second.name}")
    for group in groups:
        kind = next((kind for prefix, kind in _KEPT_CLEAR.items() if group.name.startswith(prefix)), None)
        if kind is None:
            continue
        pieces = group.pieces
        reach = _around([point for line in (*group.strokes, *group.outlines) for point in line]) if pieces else None
        for other, box in texts:
            if other is group or not (group.discs or (reach is not None and _near(reach, box))):
                continue
            on = _in_ring if box in other.rings else _through
            if any(on(piece, box) for piece in pieces) or any(_share(disc, box) for disc in group.discs):
                yield Failure(f"words on {kind}", f"{other.name} / {group.name}")


def _balloons(group: _Group) -> list[Box]:
    return group.rings if group.name.startswith("label-") and group.words else []


def _leaders(groups: list[_Group]) -> Iterator[Failure]:
    leaders = [
        (group, (*a, *b))
        for group in groups
        if group.name.startswith("label-")
        for stroke in group.strokes
        for a, b in pairwise(stroke)
    ]
    for (first, piece), (second, other) in combinations(leaders, 2):
        if first is not second and _cross(piece, other):
            yield Failure("leaders cross", f"{first.name} / {second.name}")
    ends = {group.name: group.strokes[-1][-1] for group, _ in leaders}
    # a leader may cross an arrow or a load line, with its edge of paper, but not run along it
    straight = [(group, group.pieces) for group in groups if group.is_force or group.name.startswith("line-load-line")]
    for group, piece in leaders:
        owner = group.name.removeprefix("label-")
        mine = (owner, *(prefix + owner for prefix in _ARROWS))  # a note may name an arrow
        for other in groups:
            if other is not group and other.name != owner and any(_through(piece, box) for box in other.words):
                yield Failure("leader through words", f"{group.name} / {other.name}")
        for other, inked in straight:
            if other.name not in mine and any(_beside(piece, edge) > _ALONG for edge in inked):
                yield Failure("leader along a line", f"{group.name} / {other.name}")
        for name, end in ends.items():
            if math.dist(end, ends[group.name]) > _NEAR and _off(end, piece) < _NEAR:
                yield Failure("leader past another's end", f"{group.name} / {name}")


def _lengths(group: _Group, unit: float, size: tuple[float, float]) -> Iterator[Failure]:
    for key, scale, kind in (("newtons", "newtons-per-mm", "arrow"), ("mm", "mm-per-mm", "dimension")):
        if f"data-{key}" not in group.data:
            continue
        if "data-x1" not in group.data:
            if group.inked:
                yield Failure(f"{kind} without ends", group.name)
            continue
        x1, y1, x2, y2 = _ends(group, unit)
        drawn = math.hypot(x2 - x1, y2 - y1)
        stated = float(group.data[f"data-{key}"]) / float(group.scales[f"data-{scale}"])
        if abs(drawn - stated) > SCALE * stated + _STEP:
            yield Failure(f"{kind} not to scale", f"{group.name}: {drawn:.3f} mm for {stated:.3f} mm")
        if drawn > 0 and group.inked:
            along = [((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / drawn for x, y in group.inked]
            reach = max(along) - min(along)
            if kind == "arrow" and abs(reach - drawn) > SCALE * drawn + 0.02:
                yield Failure("arrow drawn otherwise than it says", f"{group.name}: {reach:.3f} mm, {drawn:.3f} mm")
        if not (0 <= min(x1, x2) <= max(x1, x2) <= size[0] and 0 <= min(y1, y2) <= max(y1, y2) <= size[1]):
            yield Failure(f"{kind} leaves the frame", group.name)


def _bar(group: _Group, unit: float) -> Iterator[Failure]:
    """Yield a bar that is longer or shorter than its value, or runs the other way."""
    if "data-value" not in group.data:
        return
    x1, _, x2, _ = _ends(group, unit)
    stated = float(group.data["data-value"]) / float(group.scales["data-mm-per-mm"])
    stated *= -1.0 if group.scales.get("data-abscissa") == "leftward" else 1.0
    if abs(x2 - x1 - stated) > SCALE * abs(stated) + _STEP:
        yield Failure("bar not to scale", f"{group.name}: {x2 - x1:.3f} mm for {stated:.3f} mm")
    xs = [x for line in group.outlines for x, _ in line]
    if xs and (abs(min(xs) - min(x1, x2)) > 0.02 or abs(max(xs) - max(x1, x2)) > 0.02):
        yield Failure("bar drawn otherwise than it says", f"{group.name}: from {min(xs):.3f} to {max(xs):.3f} mm")


def _angle(group: _Group, unit: float) -> Iterator[Failure]:
    """Yield an angle that is not the one between the ends of its arc, or whose ends are not on what is drawn."""
    if "data-degrees" not in group.data:
        return
    x, y = (float(group.data[f"data-c{axis}"]) * unit for axis in "xy")
    x1, y1, x2, y2 = _ends(group, unit)
    turned = math.degrees(math.atan2(y2 - y, x2 - x) - math.atan2(y1 - y, x1 - x))
    drawn, stated = abs((turned + 180) % 360 - 180), float(group.data["data-degrees"])
    if abs(drawn - stated) > _TURNED:
        yield Failure("angle not as it says", f"{group.name}: {drawn:.2f}° for {stated:.2f}°")
    if abs(math.hypot(x1 - x, y1 - y) - math.hypot(x2 - x, y2 - y)) > 0.02:
        yield Failure("arc not round its vertex", group.name)
    for end in ((x1, y1), (x2, y2)):
        if min(math.dist(end, point) for point in group.inked) > 0.02:
            yield Failure("arc not drawn to its end", group.name)


def _off_scale(groups: list[_Group]) -> Iterator[Failure]:
    """Yield arrows that state no force, lie in the picture and do not say that they are not to scale."""
    said = {group.name.removeprefix("label-"): " ".join(group.texts) for group in groups if group.texts}
    for group in groups:
        if not group.is_force or not group.inked or "data-newtons" in group.data or "data-sight" in group.data:
            continue
        words = said.get(group.name, "")
        lettered = len(words) <= 2 and bool(words)  # on a narrow sheet the key says it
        if group.data.get("data-scale") != "none" or not (NOT_TO_SCALE in words or lettered):
            yield Failure("arrow silently not to scale", group.name)


def _around(points: list[tuple[float, float]]) -> Box:
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _ends(group: _Group, unit: float) -> Segment:
    x1, y1, x2, y2 = (float(group.data[f"data-{key}"]) * unit for key in ("x1", "y1", "x2", "y2"))
    return x1, y1, x2, y2


def _near(a: Box, b: Box) -> bool:
    """Return whether two boxes meet or nearly so."""
    return min(a[2], b[2]) - max(a[0], b[0]) > -1.0 and min(a[3], b[3]) - max(a[1], b[1]) > -1.0


def _share(a: Box, b: Box) -> bool:
    return min(a[2], b[2]) - max(a[0], b[0]) > TOUCH and min(a[3], b[3]) - max(a[1], b[1]) > TOUCH


def _through(segment: Segment, box: Box) -> bool:
    """Return whether a segment runs through a box that is smaller by what may touch (Liang and Barsky's clipping)."""
    x0, y0, x1, y1 = box[0] + TOUCH, box[1] + TOUCH, box[2] - TOUCH, box[3] - TOUCH
    if x0 >= x1 or y0 >= y1:
        return False
    start, end = 0.0, 1.0
    dx, dy = segment[2] - segment[0], segment[3] - segment[1]
    for step, room in ((-dx, segment[0] - x0), (dx, x1 - segment[0]), (-dy, segment[1] - y0), (dy, y1 - segment[1])):
        if step == 0:
            if room < 0:
                return False
        elif step < 0:
            start = max(start, room / step)
        else:
            end = min(end, room / step)
    return start < end


def _in_ring(segment: Segment, box: Box) -> bool:
    """Return whether a line passes through the circle in a box."""
    return _off(((box[0] + box[2]) / 2, (box[1] + box[3]) / 2), segment) < (box[2] - box[0]) / 2 - TOUCH


def _off(point: tuple[float, float], piece: Segment) -> float:
    """Return how far a point lies off a segment."""
    (px, py), (x0, y0, x1, y1) = point, piece
    dx, dy = x1 - x0, y1 - y0
    length = dx * dx + dy * dy
    share = 0.0 if length == 0 else min(1.0, max(0.0, ((px - x0) * dx + (py - y0) * dy) / length))
    return math.hypot(px - x0 - share * dx, py - y0 - share * dy)


def _beside(a: Segment, b: Segment) -> float:
    """Return for how long a segment runs within _NEAR of another."""
    length = math.hypot(a[2] - a[0], a[3] - a[1])
    if math.dist(b[:2], b[2:]) < _ALONG or not _near(_around([a[:2], a[2:]]), _around([b[:2], b[2:]])):
        return 0.0
    count = int(length / 0.25)
    places = ((a[0] + (a[2] - a[0]) * i / count, a[1] + (a[3] - a[1]) * i / count) for i in range(count + 1))
    return 0.25 * sum(_off(place, b) < _NEAR for place in places) if count and _parallel(a, b) else 0.0


def _parallel(a: Segment, b: Segment) -> bool:
    ax, ay, bx, by = a[2] - a[0], a[3] - a[1], b[2] - b[0], b[3] - b[1]
    return abs(ax * by - ay * bx) < 0.2 * math.hypot(ax, ay) * math.hypot(bx, by)


def _cross(a: Segment, b: Segment) -> bool:
    """Return whether two segments cross at an inner point of both."""

    def side(s: Segment, x: float, y: float) -> float:
        return (s[2] - s[0]) * (y - s[1]) - (s[3] - s[1]) * (x - s[0])

    return side(a, *b[:2]) * side(a, *b[2:]) < -1e-9 and side(b, *a[:2]) * side(b, *a[2:]) < -1e-9

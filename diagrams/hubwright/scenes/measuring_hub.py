"""Hub and bearing as a unit in the hand: mounting face to the middle between the rows, and what a listing gives.

Section in real millimetres from the bearing centre: ISO y and z, seen from the rear.
"""

from typing import Literal

from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.scenes.scales import drawing_scale
from hubwright.scenes.vocabulary import (
    Column,
    Dimension,
    Dot,
    Item,
    Label,
    Line,
    Note,
    Part,
    Point,
    ScaleBar,
    Scene,
    Step,
    Units,
    View,
)
from hubwright.scenes.wheel_end_parts.assembly import Assembly, assembly
from hubwright.scenes.wheel_end_parts.measures import measures
from hubwright.scenes.wheel_end_solids import points_of, solids

_WIDTH, _FOOT, _HEAD, _ROW, _TALL = 310.0, 26.0, 10.0, 8.0, 112.0
_BESIDE = 34.0  # sheet mm from the unit to the words beside it, over dimensions and their words
_UNIT = ("hub", "inner-rings", "outer-rings", "balls", "rollers", "seals", "hub-seal")
_SCALES = ((2, 1), (3, 2), (1, 1), (4, 5), (2, 3), (1, 2), (1, 3), (1, 4))
_LONGEST = 30.0  # sheet mm that the words of a bearing's size may need
_WITH_DISC = "Measured with the brake disc in place on the flange: a bare flange lies back by its thickness there. "
_SAME = 0.05  # mm between a listed size and the drawn one


def measuring_hub(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of the hub unit with what is measured on it or listed; the case plays no part."""
    parts = assembly(measures(results))
    m, bearing, side = parts.measures, parts.bearing, results.side
    rings = [points_of(ring, 1) for piece in parts.pieces if piece.name in _UNIT for ring in piece.rings]
    ends = [point[0] for ring in rings for point in ring]
    radius = max(abs(point[1]) for ring in rings for point in ring)
    scale, ratio = drawing_scale(max(2 * radius, 0.8 * (max(ends) - min(ends))), _TALL, _SCALES)
    rows = 3 if m.bearing.row_spacing else 2
    view = View("hub", (_WIDTH / 2, _FOOT + 2 * _ROW + radius * scale + 6.0), scale, mirrored=True)
    above = view.on_sheet((0.0, radius))[1] + 4.0
    below = view.on_sheet((0.0, -radius))[1] - 6.0
    without = tuple(piece.name for piece in parts.pieces if piece.name not in _UNIT)
    items: list[Item] = solids(parts, view.name, side, "detail", without=(*without, *_strokes(parts)))
    edges = min(ends) * side, max(ends) * side
    items += _centre(view, radius, edges)
    hat = _hat(parts, view, radius, side)
    items += hat
    face = side * m.face
    if abs(m.face) > _SAME:
        items.append(
            _across(view, "face", 1, face, 0.0, above, f"mounting face {_mm(abs(m.face), units)}", height=0.6 * radius)
        )
    spacing = results.setup.bearing.row_spacing
    if spacing is not None:
        half = side * spacing * 1e3 / 2
        text = f"rows {_mm(spacing * 1e3, units)} apart"
        items.append(_across(view, "rows", 2, half, -half, below, text, height=-m.bearing.pitch / 2))
    items += _listed(results, view, bearing.bore, bearing.outside, min(ends) * side, units)
    items += [
        _note(
            "face", ("mounting face:", "the wheel bears here"), (face, 0.75 * radius), "left" if side > 0 else "right"
        ),
        _note("middle", ("middle between the rows",), (0.0, 0.97 * radius), "right" if side > 0 else "left"),
    ]
    if hat:
        lines = ("brake disc,", "in place on the flange")
        at = (side * (m.face - 0.5 * parts.mount.hat), -0.75 * radius)
        items.append(_note("disc", lines, at, "left" if side > 0 else "right"))
    where = "outboard" if m.face > 0 else "inboard"
    title = f"The mounting face lies {_mm(abs(m.face), units)} {where} of the middle between the rows"
    return Scene(
        name="measuring-hub",
        title=title,
        caption="From a supplier’s drawing, or on a replacement unit in the hand: never by taking a hub apart. "
        f"{_WITH_DISC if hat else ''}Outboard is the side of the mounting face here; sizes of the bearing are in any "
        "listing.",
        description=f"{title}. {_WITH_DISC if hat else ''}".strip(),
        units=units,
        size=(_WIDTH, above + (rows - 2) * _ROW + _HEAD + 4.0),
        views=(view,),
        items=tuple(items),
        steps=(
            Step("Find the mounting face", "The face on which the wheel, or a spacer, bears."),
            Step("Find the middle of the rows", "Half way between both rows of balls or rollers."),
        ),
        columns=(
            Column("left", max(48.0, view.on_sheet((max(edges), 0.0))[0] - _BESIDE), _FOOT, above),
            Column("right", min(262.0, view.on_sheet((min(edges), 0.0))[0] + _BESIDE), _FOOT, above),
        ),
        scale_bars=(ScaleBar("hub", "length", f"Hub {ratio}"),),
        axes="rear",
    )


def _mm(length: float, units: Units) -> str:
    return format_quantity(length / 1e3, "length", units)


def _strokes(parts: Assembly) -> tuple[str, ...]:
    """Return the lines on parts that are not shown."""
    return tuple(stroke.name for stroke in parts.strokes)


def _centre(view: View, radius: float, ends: tuple[float, float]) -> list[Item]:
    """Return the centre lines; the axis ends just off the unit, before the dimensions beside it."""
    over = 3.0 / view.scale
    reach, (first, last) = radius + over, sorted(ends)
    return [
        Line("middle", view.name, 1, points=((0.0, -reach), (0.0, reach)), style="centre", tone="soft", level=18.0),
        Line(
            "axis",
            view.name,
            1,
            points=((first - over, 0.0), (last + over, 0.0)),
            style="centre",
            tone="soft",
            level=18.0,
        ),
        Dot("centre", view.name, 1, at=(0.0, 0.0), radius=0.9, level=20.0),
    ]


def _hat(parts: Assembly, view: View, radius: float, side: int) -> list[Item]:
    """Return the hat of a brake disc between flange and wheel, as it would lie on the unit."""
    flange = [point for piece in parts.pieces if piece.name == "hub" for ring in piece.rings for point in ring]
    front = max(float(a) for a, r in flange if abs(r) > 0.75 * radius)
    face, high = parts.measures.face, 0.96 * radius
    if parts.measures.disc_radius is None or face - front < 1.0:
        return []
    low = parts.mount.spigot + 0.6
    items: list[Item] = []
    for name, way in (("upper", 1.0), ("lower", -1.0)):
        ring = tuple((side * a, way * r) for a, r in ((front, low), (face, low), (face, high), (front, high)))
        items.append(
            Part(
                f"part-hat-{name}",
                view.name,
                1,
                rings=(ring,),
                material="turning-2",
                hatch=-45.0,
                outline=0.25,
                level=16.0,
            )
        )
    return items


def _across(
    view: View, name: str, step: int, first: float, last: float, line: float, text: str, *, height: float
) -> Dimension:
    start, end = sorted((first, last), reverse=True)
    return Dimension(
        f"dimension-{name}",
        view.name,
        step,
        start=(start, height),
        end=(end, height),
        line_at=line,
        text=text,
        side="start",
    )


def _listed(results: Results, view: View, bore: float, outside: float, inner: float, units: Units) -> list[Item]:
    """Return bore and outside diameter where the drawing has the sizes of the file."""
    bearing = results.setup.bearing
    edge = view.on_sheet((inner, 0.0))[0]
    way = 1.0 if edge > view.origin[0] else -1.0
    items: list[Item] = []
    row = 0
    for name, words, listed, drawn in (
        ("bore", "bore", bearing.bore, bore),
        ("outside", "outside", bearing.outside_diameter, outside),
    ):
        if listed is None or abs(2 * drawn - listed * 1e3) > _SAME:
            continue
        text = f"{words} {_mm(listed * 1e3, units)}"
        if 2 * drawn * view.scale < _LONGEST:
            continue  # its words would run over a neighbour; the page beside names it
        row += 1
        items.append(
            Dimension(
                f"dimension-{name}",
                view.name,
                2,
                start=(0.0, -drawn),
                end=(0.0, drawn),
                direction="vertical",
                line_at=edge + way * (4.0 + row * _ROW),
                text=text,
                side="start",
            )
        )
    return items


def _note(name: str, lines: tuple[str, ...], at: Point, side: Literal["left", "right"]) -> Note:
    label = Label(
        lines,
        "left column" if side == "left" else "right column",
        anchor=at,
        tone="soft",
        size=2.4,
        leader_dot=True,
    )
    return Note(f"label-{name}", "hub", 1, label=label)

"""A wheel end in section with its free body: the whole wheel, the bearing as a detail, and the bridge between them.

Views look forward from the rear: first axis ISO y (to the left on the sheet), second z, real millimetres from the
bearing centre.
"""

from typing import Literal

import numpy as np

from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.scenes.vocabulary import (
    Dimension,
    Dot,
    Item,
    KeyEntry,
    Line,
    Part,
    Point,
    ScaleBar,
    Scene,
    Units,
    View,
)
from hubwright.scenes.wheel_end_forces import (
    Drawn,
    closed_body,
    contact_items,
    locating_items,
    pressure_centres,
    reaction_items,
    row_items,
    small_items,
)
from hubwright.scenes.wheel_end_layout import BRIDGE, HEIGHT, ROWS, SPREAD_ROW, WIDTH, layout
from hubwright.scenes.wheel_end_notes import notes
from hubwright.scenes.wheel_end_parts.assembly import Assembly, assembly
from hubwright.scenes.wheel_end_parts.measures import measures
from hubwright.scenes.wheel_end_parts.outlines import Ring
from hubwright.scenes.wheel_end_words import Wording

_OUTLINES = {
    "whole": {"outline": 0.2, "fine": 0.13, "none": 0.0},
    "detail": {"outline": 0.35, "fine": 0.18, "none": 0.0},
}
_PITCH = {"whole": 0.62, "detail": 1.5}
_LEVER_LEVEL = 19.0


def wheel_end_section(
    results: Results,
    *,
    case: str = "standing",
    units: Units = "si",
    force_scale: float | None = None,
    sheet_scale: tuple[int, int] | None = None,
) -> Scene:
    """Return the scene of one wheel end in one case.

    `force_scale` [N per sheet millimetre] and `sheet_scale` (such as 1 : 5 as a pair) hold two figures to one scale.
    """
    state = results.cases[case]
    hanging = state.contact_force.z <= 1e-9 * abs(state.bearing_force.z)
    parts = assembly(measures(results, hanging=hanging))
    words = Wording(results, state, units, parts.measures.bearing.schematic, hanging)
    sheet = layout(results, state, parts, force_scale=force_scale, sheet_scale=sheet_scale)
    drawn = Drawn(sheet, parts, words)
    items = [
        *_solids(parts, sheet.whole, sheet.side),
        *_solids(parts, sheet.detail, sheet.side),
        *locating_items(drawn),
        *_axes(drawn),
        *contact_items(drawn, 2),
        *_levers(drawn, 3),
        *small_items(drawn, 4),
        *reaction_items(drawn, 5),
        *pressure_centres(drawn, 6),
        *_spread(drawn, 6),
        *row_items(drawn, 7),
        *_bridge(drawn, 7),
    ]
    items += notes(drawn, items)
    same = "Forces, both views"
    key = [
        KeyEntry("load", "load"),
        KeyEntry("reaction", "reaction"),
        KeyEntry("moment", "moment"),
        KeyEntry("load line", "load line"),
        KeyEntry("turning", "turns: the body"),
        KeyEntry("fixed", "stands still"),
    ]
    return Scene(
        name="wheel-end-section",
        title=words.title(),
        caption=words.caption(),
        description=words.description(),
        units=units,
        size=(WIDTH, HEIGHT),
        views=(sheet.whole, sheet.detail, sheet.lens, View("sheet", (0.0, 0.0), 1.0)),
        items=tuple(items),
        steps=words.steps(sheet.lens_factor),
        columns=sheet.columns(),
        scale_bars=(
            ScaleBar("whole", "length", f"Whole wheel {sheet.whole_ratio}"),
            ScaleBar("detail", "length", f"Detail {sheet.detail_ratio}"),
            ScaleBar("whole", "force", same),
        ),
        key=tuple(key),
        axes="rear",
        body=closed_body(words),
    )


def _solids(parts: Assembly, view: View, side: int) -> list[Item]:
    """Return every part of a view with its hatching, then the lines on and beyond them."""
    items: list[Item] = []
    for piece in parts.pieces:
        if piece.extent == "whole" and view.name != "whole":
            continue
        outline = _OUTLINES[view.name][piece.edge]
        if piece.name == "tire":
            outline *= 2
        items.append(
            Part(
                f"part-{view.name}-{piece.name}",
                view.name,
                1,
                rings=tuple(_points(ring, side) for ring in piece.rings),
                material=piece.material,
                hatch=None if piece.hatch is None else piece.hatch * side,
                hatch_pitch=_PITCH[view.name] * piece.pitch,
                outline=outline,
                level=piece.level,
            )
        )
    for stroke in parts.strokes:
        if stroke.extent == "both" or view.name == "whole":
            items.append(
                Line(
                    f"line-{view.name}-{stroke.name}",
                    view.name,
                    1,
                    points=_points(stroke.points, side),
                    style=stroke.style,
                    tone=stroke.tone,
                    level=stroke.level,
                )
            )
    return items


def _points(ring: Ring, side: int) -> tuple[Point, ...]:
    """Return outline points in the view's axes; a hundredth of a millimetre is finer than any print."""
    rounded = np.round(ring * np.array([side, 1.0]), 3) + 0.0
    return tuple((float(y), float(z)) for y, z in rounded)


def _axes(d: Drawn) -> list[Item]:
    """Return the spindle axis in both views and the centre line of the bearing."""
    m, sheet = d.parts.measures, d.layout
    y, half = sheet.side * m.load_line, d.parts.below.half_width
    past = 6.0 / sheet.whole.scale
    frame = sheet.detail.frame
    assert frame is not None
    middle = sheet.detail.origin
    across = [((x - middle[0]) / -sheet.detail.scale, 0.0) for x in (frame[0] - 3.0, frame[2] + 3.0)]
    return [
        Line(
            "axis-whole",
            "whole",
            1,
            points=((y + half + past, 0.0), (y - half - past, 0.0)),
            style="centre",
            tone="soft",
            level=_LEVER_LEVEL,
        ),
        Line(
            "axis-detail",
            "detail",
            1,
            points=tuple(across),
            style="centre",
            tone="soft",
            clipped=False,
            level=_LEVER_LEVEL,
        ),
    ]


def _levers(d: Drawn, step: int) -> list[Item]:
    """Return load lines, centre plane and the dimensions that give the levers."""
    sheet, m, words = d.layout, d.parts.measures, d.words
    geometry = words.results.wheel_geometry
    side, detail = sheet.side, sheet.detail
    frame = detail.frame
    assert frame is not None
    top = (frame[3] - detail.origin[1]) / detail.scale
    low = (frame[1] - detail.origin[1]) / detail.scale
    y_L, face, seat = side * m.load_line, side * m.face, side * m.wheel_face
    rows = _rows(d)
    past = 1.3
    last = max(rows["load-line"], rows["offset"]) + past

    def up(y: float, sheet_y: float) -> tuple[Point, Point]:
        return (y, top + 0.5 / detail.scale), (y, (sheet_y - detail.origin[1]) / detail.scale)

    items: list[Item] = [
        Line(
            "load-line-whole",
            "whole",
            step,
            points=((y_L, -m.loaded_radius), (y_L, m.free_radius)),
            style="centre",
            tone="load",
            width=0.25,
            extend=2.5,
            level=_LEVER_LEVEL,
        ),
        Line(
            "load-line-detail",
            "detail",
            step,
            points=((y_L, low - 2.0 / detail.scale), (y_L, (last - detail.origin[1]) / detail.scale)),
            style="centre",
            tone="load",
            width=0.25,
            clipped=False,
            level=_LEVER_LEVEL,
        ),
        Line(
            "centre-plane",
            "detail",
            step,
            points=((0.0, low), (0.0, (max(rows["face"], rows["load-line"]) + past - detail.origin[1]) / detail.scale)),
            style="centre",
            tone="soft",
            clipped=False,
            level=_LEVER_LEVEL - 0.5,
        ),
        Line(
            "extension-face",
            "detail",
            step,
            points=up(face, rows["face"] + past),
            tone="soft",
            width=0.18,
            clipped=False,
        ),
    ]
    if m.spacer > 0 or m.offset:
        reach = max(rows["offset"] if m.offset else 0.0, rows["face"] if m.spacer > 0 else 0.0)
        items.append(
            Line(
                "extension-wheel-face",
                "detail",
                step,
                points=up(seat, reach + past),
                tone="soft",
                width=0.18,
                clipped=False,
            )
        )

    def dimension(
        name: str, start: float, end: float, row: str, text: str, prefer: Literal["auto", "start", "end"] = "auto"
    ) -> Dimension:
        return Dimension(
            name,
            "detail",
            step,
            start=(start, top),
            end=(end, top),
            line_at=rows[row],
            text=text,
            side=prefer,
            extension=(False, False),
            level=_LEVER_LEVEL,
        )

    if abs(m.load_line) > 0.05:
        text = f"load line {{y|L}} = {words.length(abs(geometry.load_line_offset))}"
        text += " outboard" if m.load_line > 0 else " inboard"
        items.append(dimension("load-line-offset", y_L, 0.0, "load-line", text, "end" if m.load_line > 0 else "start"))
    if abs(m.offset) > 0.05:
        items.append(dimension("offset", seat, y_L, "offset", f"offset {words.length(geometry.offset)}", "start"))
    if abs(m.face) > 0.05:
        text = f"hub face {words.length(words.results.setup.hub.face_to_bearing_centre)}"
        items.append(dimension("hub-face", face, 0.0, "face", text, "end"))
    if m.spacer > 0.05:
        text = f"spacer {words.length(words.results.setup.wheel.spacer)}"
        items.append(dimension("spacer", seat, face, "face", text, "start"))
    if not words.hanging:
        items.append(_loaded_radius(d, step))
    items.append(
        Dot(
            "load-line-on-axis",
            "detail",
            step,
            at=(y_L, 0.0),
            kind="ring",
            tone="load",
            radius=0.7,
            level=_LEVER_LEVEL + 0.5,
        )
    )
    return items


def _rows(d: Drawn) -> dict[str, float]:
    """Return in which row each dimension above the detail stands; those that overlap stand in different rows."""
    m = d.parts.measures
    # the offset runs from the wheel's face to the load line: beside the load line's own only if both run outboard
    beside = m.offset >= 0 and m.load_line >= 0
    return {"load-line": ROWS[0], "face": ROWS[1], "offset": ROWS[0] if beside else ROWS[2]}


def _loaded_radius(d: Drawn, step: int) -> Item:
    m, sheet = d.parts.measures, d.layout
    inboard = sheet.wheel_x + sheet.side * (d.parts.below.half_width * sheet.whole.scale + 7.0)
    x = min(inboard, sheet.x(131.5)) if sheet.side > 0 else max(inboard, sheet.x(131.5))
    y = sheet.side * m.load_line
    edge = y - sheet.side * (d.parts.below.tread_half_width + 15.0 / sheet.whole.scale)
    text = format_quantity(d.words.results.wheel_geometry.loaded_radius, "length", d.words.units)
    return Dimension(
        "loaded-radius",
        "whole",
        step,
        start=(y, 0.0),
        end=(edge, -m.loaded_radius),
        direction="vertical",
        line_at=x,
        text=f"loaded radius {{R|l}} = {text}",
        extension=(False, True),
        level=_LEVER_LEVEL,
    )


def _spread(d: Drawn, step: int) -> list[Item]:
    """Return the effective spread between the two pressure centres, below the detail."""
    spread = d.words.results.bearing.effective_spread
    if spread is None:
        return []
    detail, side = d.layout.detail, d.layout.side
    frame = detail.frame
    assert frame is not None
    half = side * spread * 1e3 / 2
    low = (frame[1] - detail.origin[1]) / detail.scale
    foot = (SPREAD_ROW - 1.3 - detail.origin[1]) / detail.scale
    items: list[Item] = [
        Line(
            f"extension-spread-{name}",
            "detail",
            step,
            points=((y, -1.5 / detail.scale), (y, foot)),
            tone="faint",
            width=0.18,
            clipped=False,
            level=8.0,
        )
        for name, y in (("outboard", half), ("inboard", -half))
    ]
    text = f"{{ℓ}} = {d.words.length(spread)}"
    if spread * 1e3 * detail.scale > 46:
        text = "effective spread " + text
    items.append(
        Dimension(
            "effective-spread",
            "detail",
            step,
            start=(half, low),
            end=(-half, low),
            line_at=SPREAD_ROW,
            text=text,
            extension=(False, False),
            level=_LEVER_LEVEL,
        )
    )
    return items


def _bridge(d: Drawn, step: int) -> list[Item]:
    first, second = d.words.bridge()
    if not first:
        return []
    return [
        d.layout.prose("bridge-force", step, (138.0, BRIDGE), first, 2.3),
        d.layout.prose("bridge-moment", step, (220.0, BRIDGE), second, 2.3),
    ]

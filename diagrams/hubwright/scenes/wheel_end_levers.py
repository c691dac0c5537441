"""The lengths of the wheel-end section: load line, centre plane, and the dimensions that give the levers."""

from typing import Literal

from hubwright.quantities import format_quantity
from hubwright.scenes.vocabulary import Dimension, Dot, Item, Line
from hubwright.scenes.wheel_end_drawn import MM, Drawn
from hubwright.scenes.wheel_end_layout import ROWS, SPREAD_ROW

LEVEL = 19.0  # over the parts, under the forces
_PAST = 1.3  # sheet millimetres by which lines run on beyond the dimensions that they bear
_LEAST = 0.05  # mm: a shorter length has no dimension


def levers(d: Drawn, step: int) -> list[Item]:
    """Return load lines, centre plane and the dimensions that give the levers."""
    m = d.parts.measures
    items: list[Item] = [*_upright_lines(d, step), *_extensions(d, step), *_above_the_detail(d, step)]
    if not d.words.hanging:
        items.append(_loaded_radius(d, step))
    if m.load_line < d.parts.axle_end:  # farther outboard stand words
        at = (d.layout.side * m.load_line, 0.0)
        items.append(Dot("load-line-on-axis", "detail", step, at=at, kind="ring", tone="load", level=LEVEL + 0.5))
    return items


def _upright_lines(d: Drawn, step: int) -> list[Line]:
    """Return the load line in the whole wheel and in the detail, and the centre plane."""
    m, rows = d.parts.measures, _rows(d)
    detail, frame = d.layout.detail, _frame(d)
    y_L, low = d.layout.side * m.load_line, _height(d, frame[1])
    return [
        Line(
            "load-line-whole",
            "whole",
            step,
            points=((y_L, -m.loaded_radius), (y_L, m.free_radius)),
            style="centre",
            tone="load",
            width=0.25,
            extend=2.5,
            level=LEVEL,
        ),
        Line(
            "load-line-detail",
            "detail",
            step,
            points=(
                (y_L, low - 2.0 / detail.scale),
                (y_L, _height(d, max(rows["load-line"], rows["offset"]) + _PAST)),
            ),
            style="centre",
            tone="load",
            width=0.25,
            clipped=False,
            level=LEVEL,
        ),
        Line(
            "centre-plane",
            "detail",
            step,
            points=((0.0, low), (0.0, _height(d, max(rows["face"], rows["load-line"]) + _PAST))),
            style="centre",
            tone="soft",
            clipped=False,
            level=LEVEL - 0.5,
        ),
    ]


def _extensions(d: Drawn, step: int) -> list[Line]:
    """Return the extension lines of hub face and wheel face, from the detail up through the rows they belong to."""
    m, rows, side = d.parts.measures, _rows(d), d.layout.side
    reaches = [("face", m.face, rows["face"])]
    if m.spacer > 0 or m.offset:
        reach = max(rows["offset"] if m.offset else 0.0, rows["face"] if m.spacer > 0 else 0.0)
        reaches.append(("wheel-face", m.wheel_face, reach))
    start = _height(d, _frame(d)[3]) + 0.5 / d.layout.detail.scale
    return [
        Line(
            f"extension-{name}",
            "detail",
            step,
            points=((side * y, start), (side * y, _height(d, row + _PAST))),
            tone="soft",
            width=0.18,
            clipped=False,
        )
        for name, y, row in reaches
    ]


def _above_the_detail(d: Drawn, step: int) -> list[Dimension]:
    """Return offset, hub face, spacer and load line as dimensions in their rows; what is next to nothing has none."""
    m, words, side = d.parts.measures, d.words, d.layout.side
    geometry, setup = words.results.wheel_geometry, words.results.setup
    rows, top = _rows(d), _height(d, _frame(d)[3])
    y_L, face, seat = side * m.load_line, side * m.face, side * m.wheel_face

    def dimension(
        name: str, start: float, end: float, row: str, text: str, prefer: Literal["auto", "start", "end"]
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
            level=LEVEL,
        )

    items: list[Dimension] = []
    if abs(m.load_line) > _LEAST:
        text = f"load line {{y|L}} = {words.length(abs(geometry.load_line_offset))}"
        text += " outboard" if m.load_line > 0 else " inboard"
        items.append(dimension("load-line-offset", y_L, 0.0, "load-line", text, "end" if m.load_line > 0 else "start"))
    if abs(m.offset) > _LEAST:
        items.append(dimension("offset", seat, y_L, "offset", f"offset {words.length(geometry.offset)}", "start"))
    if abs(m.face) > _LEAST:
        text = f"hub face {words.length(setup.hub.face_to_bearing_centre)}"
        items.append(dimension("hub-face", face, 0.0, "face", text, "end"))
    if m.spacer > _LEAST:
        items.append(dimension("spacer", seat, face, "face", f"spacer {words.length(setup.wheel.spacer)}", "start"))
    return items


def _frame(d: Drawn) -> tuple[float, float, float, float]:
    frame = d.layout.detail.frame
    assert frame is not None
    return frame


def _height(d: Drawn, sheet_y: float) -> float:
    """Return where a height of the sheet lies in the detail."""
    return (sheet_y - d.layout.detail.origin[1]) / d.layout.detail.scale


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
        level=LEVEL,
    )


def effective_spread(d: Drawn, step: int) -> list[Item]:
    """Return the effective spread between the two pressure centres, below the detail."""
    spread = d.words.results.bearing.effective_spread
    if spread is None:
        return []
    detail, half = d.layout.detail, d.layout.side * spread * MM / 2
    low, foot = _height(d, _frame(d)[1]), _height(d, SPREAD_ROW - _PAST)
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
    if spread * MM * detail.scale > 46:
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
            level=LEVEL,
        )
    )
    return items

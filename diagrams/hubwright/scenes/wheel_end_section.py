"""A wheel end in section with its free body: the whole wheel, the bearing as a detail, and the bridge between them.

Views look forward from the rear: first axis ISO y (to the left on the sheet), second z, real millimetres from the
bearing centre.
"""

from hubwright.results.model import Results
from hubwright.scenes.key_entries import moment_entries
from hubwright.scenes.vocabulary import (
    Item,
    KeyEntry,
    Line,
    ScaleBar,
    Scene,
    Units,
    View,
)
from hubwright.scenes.wheel_end_bridge import bridge
from hubwright.scenes.wheel_end_drawn import Drawn, closed_body
from hubwright.scenes.wheel_end_layout import BRIDGE, HEIGHT, WIDTH, layout
from hubwright.scenes.wheel_end_levers import LEVEL, effective_spread, levers
from hubwright.scenes.wheel_end_loads import contact_items, small_items
from hubwright.scenes.wheel_end_notes import notes
from hubwright.scenes.wheel_end_parts.assembly import assembly
from hubwright.scenes.wheel_end_parts.measures import measures
from hubwright.scenes.wheel_end_reactions import locating_items, pressure_centres, reaction_items, row_items
from hubwright.scenes.wheel_end_solids import solids
from hubwright.scenes.wheel_end_words import Wording


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
    parts = assembly(measures(results, hanging=state.hanging))
    words = Wording(results, state, units, parts.measures.bearing.schematic, state.hanging)
    sheet = layout(results, state, parts, force_scale=force_scale, sheet_scale=sheet_scale)
    drawn = Drawn(sheet, parts, words)
    items = [
        *solids(parts, "whole", sheet.side, "whole"),
        *solids(parts, "detail", sheet.side, "detail"),
        *locating_items(drawn),
        *axes(drawn),
        *contact_items(drawn, 2),
        *small_items(drawn, 3),
        *reaction_items(drawn, 4),
        *levers(drawn, 5),
        *pressure_centres(drawn, 6),
        *effective_spread(drawn, 6),
        *row_items(drawn, 7),
        *_bridge(drawn, 7),
    ]
    items += notes(drawn, items)
    key = [
        KeyEntry("load", "load"),
        KeyEntry("reaction", "reaction"),
        *moment_entries(items),
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
            ScaleBar("lens", "length", f"Weights {sheet.lens_ratio}"),
            ScaleBar("whole", "force", "Forces, both views"),
        ),
        key=tuple(key),
        axes="rear",
        body=closed_body(words.state.free_body),
    )


def axes(d: Drawn) -> list[Item]:
    """Return the spindle axis in the whole wheel and in the detail."""
    m, sheet = d.parts.measures, d.layout
    y, half = sheet.side * m.load_line, d.parts.below.half_width
    past = 6.0 / sheet.whole.scale
    frame = sheet.detail.frame
    assert frame is not None
    # outboard it ends at the shaft's end, inboard at the frame: words stand there, whose leaders it would look like
    inboard = frame[2] if sheet.side > 0 else frame[0]
    scale = sheet.detail.scale
    ends = (sheet.side * (d.parts.axle_end + 1.0 / scale), (inboard - sheet.detail.origin[0]) / -scale)
    across = [(end, 0.0) for end in ends]
    return [
        Line(
            "axis-whole",
            "whole",
            1,
            points=((y + half + past, 0.0), (y - half - past, 0.0)),
            style="centre",
            tone="soft",
            level=LEVEL,
        ),
        Line(
            "axis-detail",
            "detail",
            1,
            points=tuple(across),
            style="centre",
            tone="soft",
            clipped=False,
            level=LEVEL,
        ),
    ]


def _bridge(d: Drawn, step: int) -> list[Item]:
    first, second = bridge(d.words)
    if not first:
        return []
    return [
        d.layout.prose("bridge-force", step, (138.0, BRIDGE), first, 2.3),
        d.layout.prose("bridge-moment", step, (220.0, BRIDGE), second, 2.3),
    ]

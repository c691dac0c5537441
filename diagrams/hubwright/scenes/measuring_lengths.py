"""Wheelbase, track and height: where a tape goes along and across a vehicle or trailer.

Side view in real millimetres: x forward from the front axle (a trailer: from its axle); rear view: y to the left from
the middle plane. z up from the road.
"""

from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.scenes.corner_front_outline import axle_seen, rear_outline
from hubwright.scenes.scales import drawing_scale
from hubwright.scenes.vehicle_seen import outline_of, vehicle_seen
from hubwright.scenes.vocabulary import (
    Dimension,
    Dot,
    Ground,
    Item,
    Label,
    Line,
    Note,
    ScaleBar,
    Scene,
    Step,
    Units,
    View,
)
from hubwright.setup.model import TrailerChassis

_WIDTH, _FOOT, _HEAD = 310.0, 24.0, 18.0
_SIDE, _REAR = (18.0, 176.0), (204.0, 294.0)  # room of the two views on the sheet
_ROW = 9.0
_GROUND = 60.0  # mm of ground beside the tires


def measuring_lengths(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of where to measure wheelbase, track and height; the case plays no part."""
    outline, chassis = outline_of(results), results.setup.chassis
    tracks = _tracks(results)
    width = max(tracks) + 2.4 * results.wheel_geometry.section_width * 1e3
    scale = min(
        drawing_scale(outline.front - outline.rear, _SIDE[1] - _SIDE[0])[0],
        drawing_scale(width, _REAR[1] - _REAR[0])[0],
        drawing_scale(outline.top, 95.0)[0],
    )
    road = _FOOT + 2 * _ROW + 4.0
    middle = sum(_SIDE) / 2 + scale * (outline.front + outline.rear) / 2
    side = View("side", (middle, road), scale, mirrored=True, heading="From the side")
    rear = View("rear", (sum(_REAR) / 2, road), scale, mirrored=True, heading="From the rear")
    items = [*vehicle_seen(results, outline, side), *_behind(results, rear, tracks, width)]
    along = _along(results, side, units)
    items += along
    items += _across(results, rear, tracks, units)
    items += _height(results, rear, width, units)
    top = side.on_sheet((0.0, outline.top))[1]
    trailer = isinstance(chassis, TrailerChassis)
    title = "Tape along the ground, tape across the tires"
    base = "from the axle to the coupling" if trailer else "from front to rear wheel centre"
    return Scene(
        name="measuring-lengths",
        title=title,
        caption=f"Left: {base}, brought down to the ground. Right: from the middle of one tread to that of the other; "
        "the tape lies from an edge of one tire to the same edge of the other, which is the same length."
        f"{_front(tracks, units)}",
        description=f"{title}. {_told(results, units)}",
        units=units,
        size=(_WIDTH, top + _HEAD),
        views=(side, rear),
        items=tuple(items),
        steps=(
            Step("Stand it level", "Wheels straight, on firm level ground."),
            Step("Measure along", f"The length {base}, along the ground."),
            Step("Measure across", "From the outer edge of one tread to the inner edge of the other."),
            Step("Read the height", "The roof by tape; the centre of mass is not measured."),
        ),
        scale_bars=(ScaleBar("side", "length", f"Both views 1 : {1 / scale:.0f}"),),
    )


def _tracks(results: Results) -> tuple[float, ...]:
    chassis = results.setup.chassis
    if isinstance(chassis, TrailerChassis):
        return (chassis.track * 1e3,)
    return chassis.front_track * 1e3, chassis.rear_track * 1e3


def metres(length: float, units: Units) -> str:
    """Return a vehicle's length, given in millimetres."""
    return format_quantity(length / 1e3, "vehicle length", units)


def _behind(results: Results, view: View, tracks: tuple[float, ...], width: float) -> list[Item]:
    wide = tracks[-1]
    items: list[Item] = [*rear_outline(results, view.name), axle_seen(results, view.name, (wide / 2, -wide / 2), 1)]
    reach = width / 2 + _GROUND
    items.append(Ground("ground-rear", view.name, start=(reach, 0.0), end=(-reach, 0.0)))
    return items


def _along(results: Results, view: View, units: Units) -> list[Item]:
    chassis, radius = results.setup.chassis, results.wheel_geometry.loaded_radius * 1e3
    if isinstance(chassis, TrailerChassis):
        length, far, words = chassis.coupling_ahead_of_axle * 1e3, chassis.coupling_ahead_of_axle * 1e3, "coupling"
    else:
        length, far, words = chassis.wheelbase * 1e3, -chassis.wheelbase * 1e3, "wheelbase"
    low = view.origin[1] - _ROW - 3.0
    items: list[Item] = []
    for name, x in (("axle", 0.0), (words, far)):
        high = radius if name != "coupling" else 430.0
        points = ((x, high), (x, 0.0))
        items.append(Line(f"plumb-{name}", view.name, 2, points=points, style="centre", tone="soft", level=1.0))
        items.append(Dot(f"centre-{name}", view.name, 2, at=(x, high), radius=0.8, level=1.2))
    items.append(
        Dimension(
            f"dimension-{words}",
            view.name,
            2,
            start=(max(0.0, far), 0.0),
            end=(min(0.0, far), 0.0),
            line_at=low,
            text=f"{'wheelbase' if words == 'wheelbase' else 'axle to coupling'} {metres(length, units)}",
            side="start",
        )
    )
    return items


def _across(results: Results, view: View, tracks: tuple[float, ...], units: Units) -> list[Item]:
    width = results.wheel_geometry.section_width * 1e3
    half, tread = tracks[-1] / 2, 0.42 * width
    different = len(tracks) == 2 and tracks[0] != tracks[1]
    named = "rear track" if different else "track"
    low = view.origin[1] - _ROW - 3.0
    items: list[Item] = [
        Line(f"middle-{name}", view.name, 3, points=((y, 0.0), (y, width)), style="centre", tone="soft", level=1.0)
        for name, y in (("left", half), ("right", -half))
    ]
    for name, shift, line, text in (
        ("track", 0.0, low, f"{named} {metres(tracks[-1], units)}"),
        ("track-by-edges", tread, low - _ROW, "the same, edge to edge"),
    ):
        start, end = (half + shift, 0.0), (-half + shift, 0.0)
        items.append(Dimension(f"dimension-{name}", view.name, 3, start=start, end=end, line_at=line, text=text))
    return items


def _front(tracks: tuple[float, ...], units: Units) -> str:
    """Return the sentence on the front track, which the view from the rear does not show."""
    if len(tracks) == 1:
        return ""
    return f" The front track is {'the same' if tracks[0] == tracks[1] else metres(tracks[0], units)}."


def _height(results: Results, view: View, width: float, units: Units) -> list[Item]:
    chassis = results.setup.chassis
    centre = chassis.centre_of_mass_height * 1e3
    right = view.on_sheet((-width / 2, 0.0))[0] + 6.0
    return [
        Dot("centre-of-mass", view.name, 4, at=(0.0, centre), kind="centre of mass", radius=1.4, level=2.0),
        Dimension(
            "dimension-centre-of-mass",
            view.name,
            4,
            start=(-width / 2 - _GROUND, 0.0),  # the ground goes on to the line
            end=(0.0, centre),
            direction="vertical",
            line_at=right,
            text=metres(centre, units),
        ),
        Note(
            "label-centre-of-mass",
            view.name,
            4,
            label=Label(
                ("centre of mass",), place="above", anchor=(0.0, centre), tone="soft", size=2.1, nudge=(0.0, 0.6)
            ),
        ),
    ]


def _told(results: Results, units: Units) -> str:
    chassis, tracks = results.setup.chassis, _tracks(results)
    if isinstance(chassis, TrailerChassis):
        length = f"axle to coupling {metres(chassis.coupling_ahead_of_axle * 1e3, units)}"
    else:
        length = f"wheelbase {metres(chassis.wheelbase * 1e3, units)}"
    across = " and ".join(metres(track, units) for track in dict.fromkeys(tracks))
    height = metres(chassis.centre_of_mass_height * 1e3, units)
    return f"Here: {length}, track {across}, centre of mass {height} above the road."

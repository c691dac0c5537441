"""The wheel from outboard beside the top view of braking: the caliper at its place, and what it holds."""

import math
from itertools import pairwise

from hubwright.quantities import format_quantity
from hubwright.scenes.braking_sheet import INSET_X, Sheet
from hubwright.scenes.braking_words import UPRIGHT
from hubwright.scenes.linked_views import arc
from hubwright.scenes.small_forces import visible
from hubwright.scenes.vehicle_outline import circle, standing_tire
from hubwright.scenes.vocabulary import (
    AngularDimension,
    Dimension,
    Dot,
    Force,
    Ground,
    Item,
    Label,
    LeaderDimension,
    Line,
    Note,
    Part,
    Point,
)

_ARC = 9.0
_POSITION = 0.62  # radius of the arc that tells the caliper's place, over its distance from the axis


def wheel_from_outboard(sheet: Sheet) -> list[Item]:
    """Return tire, wheel and hub as seen from outboard, on the road."""
    m = sheet.parts.measures
    low = sheet.results.wheel_geometry.loaded_radius * 1e3
    tire = standing_tire(free_radius=m.free_radius, loaded_radius=low, at=0.0)
    rim, nave = circle((0.0, 0.0), m.rim_radius), circle((0.0, 0.0), sheet.parts.mount.flange_radius)
    ends = (-m.free_radius - 40.0, -low), (m.free_radius + 40.0, -low)
    return [
        Part(
            "part-inset-tire",
            "inset",
            rings=(tuple((x, z - low) for x, z in tire), rim),
            material="rubber",
            outline=0.35,
        ),
        Part("part-inset-wheel", "inset", rings=(rim,), material="ghost", outline=0.2, level=0.1),
        Part("part-inset-hub", "inset", rings=(nave,), material="turning", outline=0.2, level=0.2),
        Dot("centre-inset", "inset", at=(0.0, 0.0), radius=0.6, level=26.0),
        Ground("ground", "inset", start=ends[0], end=ends[1]),
    ]


def loaded_radius(sheet: Sheet, step: int) -> Item:
    """Return the lever of the force along the road about the wheel's axis."""
    m, words = sheet.parts.measures, sheet.words
    radius = format_quantity(sheet.results.wheel_geometry.loaded_radius, "length", words.units)
    low = sheet.results.wheel_geometry.loaded_radius * 1e3
    edge = m.free_radius + 45.0
    return Dimension(
        "dimension-loaded-radius",
        "inset",
        step,
        start=(edge, -low),
        end=(0.0, 0.0),
        direction="vertical",
        line_at=sheet.x(INSET_X - (m.free_radius + 60.0) * sheet.inset.view.scale),
        text=f"{{R|l}} = {radius}",
        extension=(False, True),
    )


def caliper(sheet: Sheet, step: int) -> list[Item]:
    """Return the force along the road and the caliper's, which balance about the axis, as seen from outboard."""
    words, view = sheet.words, sheet.inset.view
    items = _along_the_road(sheet, 2)
    pads, brake = sheet.actions.caliper, sheet.results.setup.brake
    if pads is None or brake is None:
        shaft = sheet.actions.shaft
        if shaft is not None:
            lines = (f"*{{M|y}} = {words.moment(shaft.couple.y)}", shaft.what)
            label = Label(lines, sheet.column(outboard=False), tone="moment", size=2.5)
            items += arc(sheet.inset, shaft, 4, label, least=sheet.least, radius=_ARC)
        return items
    x, z = sheet.inset.point(pads.point)
    long = (x * x + z * z) ** 0.5
    along, across = (x / long, z / long), (-z / long, x / long)
    corners = [
        (x + a * along[0] * 26.0 + b * across[0] * 42.0, z + a * along[1] * 26.0 + b * across[1] * 42.0)
        for a, b in ((-1, -1), (1, -1), (1, 1), (-1, 1))
    ]
    disc = circle((0.0, 0.0), max(sheet.parts.measures.disc_radius or 0.0, long + 10.0))
    size = (pads.force.x**2 + pads.force.z**2) ** 0.5
    items += [
        Line("disc", "inset", 1, points=(*disc, disc[0]), style="hidden", tone="soft", width=0.18, level=0.3),
        Line("caliper", "inset", 1, points=(*corners, corners[0]), style="phantom", level=0.4),
        Note("label-caliper", "inset", 5, label=_name(corners, sheet)),
        LeaderDimension(
            "dimension-effective-radius",
            "inset",
            5,
            end=(x, z),
            measures="radius",
            level=19.0,
        ),
        *_position(sheet, brake.caliper_position, (x, z)),
    ]
    if not words.nothing(size):
        label = Label(
            (f"*{{K}} = {words.force(size)}", "caliper on disc"), sheet.column(outboard=False), tone="load", size=2.5
        )
        force = Force(
            "force-caliper-inset",
            "inset",
            step,
            at=(x, z),
            vector=(pads.force.x, pads.force.z),
            tip_at_point=False,
            label=label,
            level=23.0,
        )
        items.append(visible(force, view))
    return items


def _name(corners: list[Point], sheet: Sheet) -> Label:
    """Return the name of the caliper's outline and where it stands, its leader to a corner or the middle of an edge.

    Leaders of their own, from radius and angle, would run through the outline.
    """
    brake, units = sheet.results.setup.brake, sheet.words.units
    assert brake is not None
    lines = ["caliper", f"at {{r|m}} = {format_quantity(brake.effective_radius, 'small length', units)}"]
    angle = brake.caliper_position
    if _is_turned(angle):
        lines[1] += ","
        lines.append(f"{format_quantity(abs(angle), 'angle', units)} off upright")
    edges = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in pairwise((*corners, corners[0]))]
    place = sheet.column(outboard=False)
    # the corner highest up, away from the arrow of the force
    first, *others = sorted((*corners, *edges), key=lambda point: -point[1])
    return Label(tuple(lines), place, anchor=first, also=tuple(others), tone="soft", size=2.4)


def _along_the_road(sheet: Sheet, step: int) -> list[Item]:
    """Return the force along the road, if there is any."""
    contact = sheet.actions.contact
    if sheet.words.nothing(contact.force.x):
        return []
    force = Force(
        "force-contact-x-inset",
        "inset",
        step,
        at=sheet.inset.point(contact.point),
        vector=(contact.force.x, 0.0),
        tip_at_point=False,
        label=Label((f"*{{F|x}} = {sheet.words.force(contact.force.x)}",), "below", tone="load", size=2.5),
        level=23.0,
    )
    return [visible(force, sheet.inset.view)]


def _position(sheet: Sheet, angle: float, at: Point) -> list[Item]:
    """Return where round the axis the caliper stands, counted from straight up toward the front."""
    if not _is_turned(angle):  # words say it
        return []
    far = math.hypot(*at)
    upright = Line(
        "upright", "inset", 5, points=((0.0, 0.0), (0.0, 0.8 * far)), style="centre", tone="soft", level=19.0
    )
    turned = AngularDimension(
        "dimension-caliper-position",
        "inset",
        5,
        start=(0.0, far),
        end=at,
        radius=_POSITION * far * sheet.inset.view.scale,
        level=19.0,
    )
    return [upright, turned]


def _is_turned(angle: float) -> bool:
    """Return whether a caliper stands neither above nor below the axle."""
    return abs(math.sin(angle)) >= UPRIGHT
